import type { JSX } from 'preact';
import type { SeasonSeen, VarietySeen } from '../../src/analyse/seen.ts';
import { gramsByDay } from '../../src/analyse/summaries.ts';
import { answersTo, plantModel } from '../../src/analyse/traitsSeen.ts';
import { byWeek, dayWriting, weeksPicked } from '../../src/present/pages/days.ts';
import { seasonWriting } from '../../src/present/seasonWriting.ts';
import { addresses } from '../../src/terms/addresses.ts';
import type { Variety } from '../../src/terms/trial.ts';
import { Bars } from '../bench/rows.tsx';
import { Dots } from '../bench/signs.tsx';
import type { AdviceContent } from '../content.ts';
import { to } from '../layout.tsx';
import { percent } from '../page.tsx';

export interface VarietyPart {
  readonly content: AdviceContent;
  readonly variety: Variety;
  /** Seasons in which it was grown, oldest first. */
  readonly grown: readonly { readonly seen: SeasonSeen; readonly v: VarietySeen }[];
  readonly root: string;
}

/** Its pickings week by week in its last season; null where nothing was weighed by day. */
export function Picked({ content, variety, grown }: VarietyPart): JSX.Element | null {
  const last = grown.at(-1);
  if (!last) return null;
  const { writing, trial } = content;
  const say = writing.words.bench.variety;
  const days = gramsByDay(last.seen, variety.id);
  const weeks = weeksPicked(last.seen);
  if (!weeks || days.length === 0) return null;
  const sums = byWeek(weeks, days);
  const most = Math.max(...sums);
  if (most <= 0) return null;
  const { short } = dayWriting(trial.settings);
  const yields = plantModel(last.seen, 'yield')?.estimates.get(variety.id);
  return (
    <div>
      <h2>{say.picked(String(last.seen.season.year))}</h2>
      {yields ? <p class="m">{say.pickedNote(writing.interval(yields, 'g'))}</p> : null}
      <Bars
        values={sums}
        max={most}
        height={84}
        colour={variety.colourRipe}
        marked={{ at: sums.indexOf(most), text: writing.quantity(most, 'g', 0) }}
      />
      <p class="s m ax" aria-hidden="true">
        {[0, Math.floor(weeks.count / 2), weeks.count - 1].map((week) => (
          <span>{short(weeks.first + 7 * week)}</span>
        ))}
      </p>
    </div>
  );
}

/** k of n of its last season, each with dots and interval; null without any. */
export function HowMany({ content, variety, grown }: VarietyPart): JSX.Element | null {
  const last = grown.at(-1);
  if (!last) return null;
  const { writing } = content;
  const say = seasonWriting(writing, last.seen.season).words.bench.variety;
  const again = answersTo(last.seen, 'again')?.get(variety.id);
  const { germinated, cropped, ripe_by_end: ripe, off_type: offType, hot } = last.v.shares;
  const shares = [
    [say.seeds, germinated],
    [say.cropped, cropped],
    [say.ripe, ripe],
    [say.offType, offType],
    [say.hot, hot],
    [say.again, again],
  ] as const;
  const shown = shares.flatMap(([text, share]) => (share && share.n > 0 ? [{ text, share }] : []));
  if (shown.length === 0) return null;
  const { figure } = writing.words;
  return (
    <div>
      <h2>{say.howMany}</h2>
      <p class="m">{say.howManyNote(percent(content))}</p>
      <ul class="many">
        {shown.map(({ text, share: { k, n, low, high } }) => (
          <li>
            <Dots k={k} n={n} />
            <span>
              <b class="num">{figure.kOfN(String(k), String(n))}</b> {text(n)}{' '}
              {low === null || high === null ? null : (
                <span class="m">({figure.range(writing.number(100 * low, 0), writing.percent(high, 0))})</span>
              )}
            </span>
          </li>
        ))}
      </ul>
    </div>
  );
}

/** The way to the page of the cross that a line belongs to; null for other varieties. */
export function CrossOf({
  content,
  variety,
  root,
}: {
  readonly content: AdviceContent;
  readonly variety: Variety;
  readonly root: string;
}): JSX.Element | null {
  const report = content.lines.crosses.find(({ cross }) => cross.families.some((own) => own.variety.id === variety.id));
  if (!report) return null;
  return (
    <p>
      <a href={to(root, addresses.line(report.cross.id))}>{content.writing.words.lines.title(report.cross.name)}</a>
    </p>
  );
}
