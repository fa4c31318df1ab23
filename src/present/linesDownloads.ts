import { sowingRows } from '../analyse/seed/sowing.ts';
import { isoDateOrNull } from '../terms/day.ts';
import { named } from './downloadTable.ts';
import type { Cell, DataWords, Download } from './downloadTable.ts';
import type { PublishedLines } from './linesDocument.ts';

/** Plants of crosses with what they showed, a row a state. */
function plantsDownload({ crosses }: PublishedLines, say: DataWords): Download | null {
  const rows = crosses.flatMap(({ cross }) =>
    cross.families.flatMap(({ variety, generation, plants }) =>
      plants.flatMap(({ year, planting, states }) =>
        [...states].map(([trait, state]): readonly Cell[] => [
          cross.id,
          variety.id,
          generation,
          year,
          planting.id,
          trait,
          state,
        ]),
      ),
    ),
  );
  if (rows.length === 0) return null;
  const columns = named(['line', 'variety', 'generation', 'season', 'planting', 'trait', 'state'], say);
  return { path: 'plants.csv', title: say.plants, columns, rows };
}

function lotsDownload({ seed }: PublishedLines, say: DataWords): Download | null {
  if (!seed) return null;
  const rows = seed.lots.map(({ lot, variety, age, left, tested, expected, plants, seeds, act }): readonly Cell[] => [
    lot.id,
    variety?.id ?? null,
    age,
    left,
    tested?.k ?? null,
    tested?.n ?? null,
    expected.mean,
    expected.low,
    expected.high,
    plants,
    seeds,
    act,
  ]);
  const names = [
    'lot',
    'variety',
    'age',
    'left',
    'germinated',
    'sown_seeds',
    'expected',
    'low',
    'high',
    'plants',
    'seeds',
    'act',
  ];
  return { path: 'seed_lots.csv', title: say.lots, columns: named(names, say), rows };
}

function sowingDownload({ seed }: PublishedLines, say: DataWords): Download | null {
  const rows = (seed?.dates ?? []).flatMap((own) =>
    sowingRows(own).map(({ chance, out, sow, warm }): readonly Cell[] => [
      own.classId,
      chance,
      isoDateOrNull(out),
      isoDateOrNull(sow),
      isoDateOrNull(warm),
    ]),
  );
  if (rows.length === 0) return null;
  return {
    path: 'sowing.csv',
    title: say.sowing,
    columns: named(['class', 'frost_chance', 'plant_out', 'sow', 'soil_warm'], say),
    rows,
  };
}

/** Tables of crosses and seed; those without a row are left out. */
export const linesDownloads = (lines: PublishedLines, say: DataWords): readonly Download[] =>
  [plantsDownload(lines, say), lotsDownload(lines, say), sowingDownload(lines, say)].filter((own) => own !== null);
