import type { JSX } from 'preact';
import { someCrossed } from '../../src/analyse/lines/generations.ts';
import { of100 } from '../../src/present/pages/crossWords.ts';
import { addresses } from '../../src/terms/addresses.ts';
import { isLine } from '../../src/terms/trial.ts';
import { plantingsOf } from '../../src/terms/ofVariety.ts';
import type { Variety } from '../../src/terms/trial.ts';
import type { CrossContent } from '../content.ts';
import { to } from '../layout.tsx';

/** What an odd plant among a variety's may be, and what would tell; null where none was noted. */
export function OddPlant({
  content,
  variety,
  root,
}: {
  readonly content: CrossContent;
  readonly variety: Variety;
  readonly root: string;
}): JSX.Element | null {
  const { trial, writing } = content;
  const { odd: say } = writing.words.lines;
  const season = trial.seasons.findLast((one) =>
    plantingsOf(one, variety.id).some(({ events }) => events.some(({ event }) => event === 'off-type')),
  );
  if (!season || isLine(variety)) return null;
  const own = plantingsOf(season, variety.id);
  const n = own.reduce((sum, { plants }) => sum + plants, 0);
  const k = own
    .flatMap(({ events }) => events.filter(({ event }) => event === 'off-type'))
    .reduce((sum, { count }) => sum + (count ?? 1), 0);
  const range = trial.settings.outcrossing.get((variety.species ?? '').toLowerCase());
  const followed = content.lines.crosses.find(({ cross }) =>
    cross.families.some(({ variety: line }) => line.from.some((plant) => plant.variety === variety.id)),
  );
  return (
    <section aria-labelledby="odd">
      <h2 id="odd">{say.title}</h2>
      <p>
        {say.seen(String(k), String(n))}{' '}
        {range
          ? say.crossed(String(n), of100(someCrossed(range[0], n)), of100(someCrossed(range[1], n)))
          : say.unknownRate}{' '}
        {followed ? (
          <>
            {say.followed} <a href={to(root, addresses.line(followed.cross.id))}>{followed.cross.name}</a>
          </>
        ) : (
          say.tell
        )}
      </p>
    </section>
  );
}
