import type { JSX } from 'preact';
import { someCrossed } from '../../src/analyse/lines/generations.ts';
import { of100 } from '../../src/present/pages/crossWords.ts';
import { isLine } from '../../src/terms/trial.ts';
import type { Variety } from '../../src/terms/trial.ts';
import type { SiteContent } from '../content.ts';

/** What an odd plant among a variety's may be, and what would tell; null where none was noted. */
export function OddPlant({
  content,
  variety,
}: {
  readonly content: SiteContent;
  readonly variety: Variety;
}): JSX.Element | null {
  const { trial, writing } = content;
  const { odd: say } = writing.words.lines;
  const season = trial.seasons.findLast(({ plantings }) =>
    plantings.some((own) => own.variety === variety.id && own.events.some(({ event }) => event === 'off-type')),
  );
  if (!season || isLine(variety)) return null;
  const own = season.plantings.filter((planting) => planting.variety === variety.id);
  const n = own.reduce((sum, { plants }) => sum + plants, 0);
  const k = own
    .flatMap(({ events }) => events.filter(({ event }) => event === 'off-type'))
    .reduce((sum, { count }) => sum + (count ?? 1), 0);
  const range = trial.settings.outcrossing.get((variety.species ?? '').toLowerCase());
  return (
    <section aria-labelledby="odd">
      <h2 id="odd">{say.title}</h2>
      <p>
        {say.seen(String(k), String(n))}{' '}
        {range
          ? say.crossed(String(n), of100(someCrossed(range[0], n)), of100(someCrossed(range[1], n)))
          : say.unknownRate}{' '}
        {say.tell}
      </p>
    </section>
  );
}
