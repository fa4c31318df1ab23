import type { SeasonSeen } from '../analyse/seen.ts';
import { isoDate } from '../terms/day.ts';
import type { Trial } from '../terms/trial.ts';
import { seasonTraits } from './results.ts';

type Cell = string | number | null;

export interface Download {
  /** Address from the site's root. */
  readonly path: string;
  readonly title: string;
  readonly columns: readonly (readonly [name: string, meaning: string])[];
  readonly rows: readonly (readonly Cell[])[];
}

/** Text that a spreadsheet program could take for a formula gets an apostrophe in front. */
function safe(text: string): string {
  return /^[=+\-@\t\r]/.test(text) && !/^[+-]?\d/.test(text) ? `'${text}` : text;
}

/** RFC 4180 text of a download; nothing recorded is an empty cell. */
export function downloadText({ columns, rows }: Download): string {
  const cell = (value: Cell): string => {
    const text = value === null ? '' : typeof value === 'number' ? String(value) : safe(value);
    return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
  };
  return [columns.map(([name]) => name), ...rows].map((row) => row.map(cell).join(',')).join('\r\n') + '\r\n';
}

function figuresDownload(trial: Trial, seasons: readonly SeasonSeen[]): Download {
  const rows = seasons.flatMap((seen) =>
    seen.varieties.flatMap((own) =>
      Object.entries(seasonTraits(seen, own, trial)).map(([trait, figure]): readonly Cell[] => [
        seen.season.year,
        own.variety.id,
        own.variety.name,
        own.variety.classId,
        own.status,
        trait,
        figure.unit,
        figure.n,
        figure.estimate ?? figure.median ?? null,
        figure.low,
        figure.high,
        figure.method,
      ]),
    ),
  );
  return {
    path: 'figures.csv',
    title: 'Every figure of every season',
    columns: [
      ['season', 'year'],
      ['variety', 'id'],
      ['name', 'shown name'],
      ['class', 'class id'],
      ['status', 'new or returning in that season'],
      ['trait', 'what was measured'],
      ['unit', 'unit of the figures'],
      ['n', 'plantings; tasters for ratings; answers for yes-no traits'],
      ['estimate', 'estimate; the median for first_ripe'],
      ['low', `lower end of the ${trial.settings.interval * 100} % interval`],
      ['high', `upper end of the ${trial.settings.interval * 100} % interval`],
      ['method', 'see the methods page'],
    ],
    rows,
  };
}

function plantingsDownload(seen: SeasonSeen): Download {
  const ripe = new Map(seen.ripening.map((own) => [own.unit.id, own.ripe]));
  return {
    path: `${seen.season.year}/plantings.csv`,
    title: `Plantings of ${seen.season.year}`,
    columns: [
      ['planting', 'id in the season'],
      ['variety', 'id'],
      ['plants', 'plants set out'],
      ['bed', 'where it stood'],
      ['block', 'replicate'],
      ['transplanted', 'date'],
      ['removed', 'date'],
      ['cause', 'why removed'],
      ['yield_g', 'usable yield per plant, grams'],
      ['fruits', 'usable fruits per plant'],
      ['first_ripe', 'days to first ripe fruit'],
    ],
    rows: seen.season.yieldUnits.map((unit) => {
      const own = seen.yields.get(unit.id);
      const each = (value: number | null | undefined): number | null =>
        value === null || value === undefined ? null : value / unit.plants;
      const date = (day: typeof unit.removed): string | null => (day === null ? null : isoDate(day));
      return [
        unit.id,
        unit.variety,
        unit.plants,
        unit.bed,
        unit.block,
        date(unit.transplanted),
        date(unit.removed),
        unit.cause,
        each(own?.grams),
        each(own?.fruits),
        ripe.get(unit.id) ?? null,
      ];
    }),
  };
}

function harvestsDownload(seen: SeasonSeen): Download | null {
  const rows = seen.season.yieldUnits.flatMap((unit) =>
    unit.pickings.flatMap(({ day, ripe, green, cullFruits, hasCulls }) =>
      (
        [
          ['ripe', ripe],
          ['green', green],
        ] as const
      )
        .filter(([stage, picked]) => picked.fruits > 0 || picked.grams > 0 || (stage === 'ripe' && hasCulls))
        .map(([stage, picked]): readonly Cell[] => [
          day === null ? null : isoDate(day),
          unit.id,
          picked.fruits,
          picked.grams,
          stage,
          stage === 'ripe' && hasCulls ? cullFruits : null,
        ]),
    ),
  );
  if (rows.length === 0) return null;
  return {
    path: `${seen.season.year}/harvests.csv`,
    title: `Pickings of ${seen.season.year}, added up by planting and day`,
    columns: [
      ['date', 'day'],
      ['planting', 'id in the season'],
      ['fruits', 'usable fruits'],
      ['weight_g', 'usable weight, grams'],
      ['stage', 'ripe or green'],
      ['unusable_fruits', 'culls'],
    ],
    rows,
  };
}

/** Tables of the data page. */
export function downloadsOf(trial: Trial, seasons: readonly SeasonSeen[]): readonly Download[] {
  return [
    figuresDownload(trial, seasons),
    ...seasons.flatMap((seen) =>
      [plantingsDownload(seen), harvestsDownload(seen)].filter((download) => download !== null),
    ),
  ];
}
