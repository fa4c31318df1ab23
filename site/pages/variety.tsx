import { addresses, wordsOf } from '../../src/terms/addresses.ts';
import { isHot } from '../../src/analyse/summaries.ts';
import { ratingModels } from '../../src/analyse/traitsSeen.ts';
import type { JSX } from 'preact';
import type { SeasonSeen, VarietySeen } from '../../src/analyse/seen.ts';
import { isLine } from '../../src/terms/trial.ts';
import type { Variety } from '../../src/terms/trial.ts';
import { Advice } from '../advice.tsx';
import type { Page, SiteContent } from '../content.ts';
import { to } from '../layout.tsx';
import { page, percent, Words } from '../page.tsx';
import { Table } from '../parts.tsx';
import { figuresOf } from '../seasonTables.tsx';

/** The verdict on a variety, or why it has none; null where it was never grown. */
function adviceOf({ next, writing }: SiteContent, variety: Variety, root: string): JSX.Element | null {
  const own = next?.classes.find(({ classId }) => classId === variety.classId);
  if (!next || !own) return null;
  const say = writing.words.nextSeason;
  const advice = own.varieties.find((one) => one.variety === variety.id);
  const excluded = own.excluded.find((one) => one.variety === variety.id);
  if (!advice && !excluded) return null;
  return (
    <section aria-labelledby="advice">
      <h2 id="advice">{say.advice(String(next.season))}</h2>
      {advice ? <Advice advice={advice} /> : <p>{say.noAdvice(excluded!.text)}</p>}
      <p>
        <a href={to(root, addresses.nextSeason)}>{say.inFull(String(next.season))}</a>
      </p>
    </section>
  );
}

/** Parents, other names and the source of its seed, as far as they are published. */
function identity({ trial, writing }: SiteContent, variety: Variety): string {
  const { variety: say } = writing.words;
  const name = (id: string | null): string => trial.varieties.find((own) => own.id === id)?.name ?? say.unknownParent;
  const show = trial.settings.publish.show;
  return [
    variety.mother === null && variety.father === null ? '' : say.parents(name(variety.mother), name(variety.father)),
    variety.alsoKnownAs.length > 0 ? say.alsoKnownAs(variety.alsoKnownAs.join(', ')) : '',
    variety.source !== null && show.includes('source') ? say.source(variety.source) : '',
    variety.notes !== null && show.includes('notes') ? variety.notes : '',
  ]
    .filter((text) => text !== '')
    .join(' ');
}

/** People's cautions where they belong: hot fruit, fruit of an unknown cross. */
function cautionsOf({ seasons, writing, trial }: SiteContent, variety: Variety): readonly string[] {
  const { variety: say } = writing.words;
  const isUnknownCross = isLine(variety) && (variety.mother === null || variety.father === null);
  return [...(isHot(variety, seasons, trial) ? [say.hotCaution] : []), ...(isUnknownCross ? [say.crossCaution] : [])];
}

interface Grown {
  readonly seen: SeasonSeen;
  readonly v: VarietySeen;
}

/** Shares of its seeds and plants in every season, k of n. */
function Shares({
  content,
  grown,
}: {
  readonly content: SiteContent;
  readonly grown: readonly Grown[];
}): JSX.Element | null {
  const { writing } = content;
  const { variety: say, tables, figure } = writing.words;
  const shares = grown.flatMap(({ seen, v }) =>
    Object.entries(v.shares).map(([key, share]) => [
      String(seen.season.year),
      say.share[key as keyof typeof say.share],
      figure.kOfN(String(share.k), String(share.n)),
      share.low === null || share.high === null
        ? ''
        : figure.range(writing.percent(share.low, 0), writing.percent(share.high, 0)),
    ]),
  );
  if (shares.length === 0) return null;
  return (
    <section aria-labelledby="shares">
      <h2 id="shares">{say.shares}</h2>
      <Table
        caption={say.sharesCaption(percent(content))}
        head={[tables.season, say.shareOf, say.kOfN, say.interval]}
        rows={shares}
      />
    </section>
  );
}

export function varietyPage(content: SiteContent, variety: Variety): Page {
  const grown = content.seasons.flatMap((seen) =>
    seen.varieties.filter((v) => v.variety.id === variety.id).map((v) => ({ seen, v })),
  );
  const { writing, trial } = content;
  const className = trial.settings.classes.get(variety.classId)?.name ?? variety.classId;
  const { variety: say, tables } = writing.words;
  const last = grown.at(-1)?.seen;
  const rating = last && ratingModels(last)[0]?.[0];
  const cautions = cautionsOf(content, variety);
  const expected = content.varietyFigures.get(variety.id) ?? [];
  return page(content, addresses.variety(variety.id), variety.name, (root) => (
    <>
      <p>
        {className}
        {variety.generation === null ? '' : `, ${say.generation(variety.generation)}`}. {say.seenIn(grown.length)}{' '}
        {identity(content, variety)}
      </p>
      {adviceOf(content, variety, root)}
      <Words html={content.words.get(wordsOf.variety(variety.id))} root={root} />
      <h2>{say.bySeason}</h2>
      <Table
        caption={say.bySeasonCaption(percent(content))}
        head={[
          tables.season,
          tables.status,
          tables.plantsSetOut,
          say.yield,
          say.median,
          say.rating(rating === undefined ? '' : writing.trait(rating)),
        ]}
        rows={grown.map(({ seen, v }) => [
          <a href={to(root, addresses.season(seen.season.key))}>{seen.season.year}</a>,
          ...figuresOf(content, seen, v),
        ])}
      />
      <Shares content={content} grown={grown} />
      {expected.length === 0 ? null : (
        <>
          <h2>{say.beside}</h2>
          <ul class="plain">
            {expected.map(({ id, title }) => (
              <li>
                <a href={`${to(root, addresses.nextSeason)}#${id}`}>{title}</a>
              </li>
            ))}
          </ul>
        </>
      )}
      {cautions.map((text) => (
        <p class="caution">{text}</p>
      ))}
    </>
  ));
}
