import type { JSX } from 'preact';
import { gramsByDay } from '../../src/analyse/summaries.ts';
import { plantModel, ripeningModel } from '../../src/analyse/traitsSeen.ts';
import type { SeasonSeen } from '../../src/analyse/seen.ts';
import { byWeek, dayWriting, monthMarks, startOf, weeksPicked } from '../../src/present/pages/days.ts';
import type { Weeks } from '../../src/present/pages/days.ts';
import { addresses } from '../../src/terms/addresses.ts';
import { Bars, TimeAxis } from '../bench/rows.tsx';
import type { SeasonPart, StandContent } from '../content.ts';
import { to } from '../layout.tsx';
import { classesOf } from '../seasonTables.tsx';
import { WeatherRows } from './weather.tsx';

/** One variety's season: weekly pickings in its colour, the first ripe fruit with its interval below them. */
function GlanceRow({
  content,
  seen,
  root,
  id,
  weeks,
  max,
}: SeasonPart<StandContent> & { readonly id: string; readonly weeks: Weeks; readonly max: number }): JSX.Element {
  const { variety } = content.stands.get(id)!;
  const { writing, trial } = content;
  const own = byWeek(weeks, gramsByDay(seen, id));
  const model = ripeningModel(seen)?.estimates.get(id);
  const start = startOf(seen, [id], trial.settings);
  const at = (days: number | null): number | null =>
    days === null || start === null ? null : (start + days - weeks.first) / 7;
  const estimate = model?.estimate ?? null;
  const yields = plantModel(seen, 'yield')?.estimates.get(id);
  return (
    <tr>
      <th scope="row">
        <a href={to(root, addresses.variety(id))}>{variety.name}</a>
      </th>
      <td>
        <Bars
          values={own}
          max={max}
          height={22}
          colour={variety.colourRipe}
          foot={
            estimate === null || start === null
              ? null
              : { estimate: at(estimate)!, low: at(model!.low), high: at(model!.high) }
          }
        />
      </td>
      <td class="num r">
        {estimate === null || start === null ? '' : dayWriting(trial.settings).short(start + estimate)}
      </td>
      <td class="num r b">{yields && yields.estimate !== null ? writing.parted(yields, 'g')[0] : ''}</td>
    </tr>
  );
}

/** True where anything was weighed by day. */
export const hasGlance = (seen: SeasonSeen): boolean =>
  seen.varieties.some(({ variety }) => gramsByDay(seen, variety.id).length > 0);

/** Weather above, weekly pickings of every variety below, on one time axis; null where nothing was weighed by day. */
export function Glance({ content, seen, root }: SeasonPart<StandContent>): JSX.Element | null {
  const { writing, trial } = content;
  const say = writing.words.bench.season;
  const weeks = weeksPicked(seen);
  if (!weeks) return null;
  const part = { content, seen, root, weeks };
  const classes = classesOf(content, seen).map((own) => {
    const ids = seen.varieties.filter(({ variety }) => variety.classId === own.id).map(({ variety }) => variety.id);
    const ripe = (id: string): number => ripeningModel(seen)?.estimates.get(id)?.estimate ?? Infinity;
    const max = Math.max(0, ...ids.flatMap((id) => byWeek(weeks, gramsByDay(seen, id))));
    return { ...own, max, ids: ids.toSorted((a, b) => ripe(a) - ripe(b)) };
  });
  return (
    <section aria-labelledby="glance">
      <h2 id="glance">{say.glanceTitle}</h2>
      <p class="m">{say.glanceNote}</p>
      <table class="gl">
        <caption class="vh">{say.glanceCaption(String(seen.season.year))}</caption>
        <colgroup>
          <col class="a" />
          <col />
          <col class="b" />
          <col class="b" />
        </colgroup>
        <thead>
          <tr>
            <td></td>
            <td>
              <TimeAxis steps={weeks.count} marks={monthMarks(weeks, dayWriting(trial.settings).month)} />
            </td>
            <th scope="col" class="r">
              {say.firstRipe}
            </th>
            <th scope="col" class="r">
              {say.aPlant}
            </th>
          </tr>
        </thead>
        <WeatherRows content={content} season={seen.season} weeks={weeks} />
        {classes
          .filter(({ max }) => max > 0)
          .map(({ id, name, ids, max }) => (
            <tbody>
              <tr class="g">
                <th colSpan={4} scope="rowgroup">
                  <a href={`#class-${id}`}>{name}</a> <span>{say.tallest(writing.quantity(max, 'g', 0))}</span>
                </th>
              </tr>
              {ids.map((one) => (
                <GlanceRow {...part} id={one} max={max} />
              ))}
            </tbody>
          ))}
      </table>
    </section>
  );
}
