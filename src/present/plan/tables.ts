import type { Plan, PlannedRow } from '../../decide/plan/planned.ts';
import { csvText, unformula } from '../../terms/csv.ts';
import { isoDate } from '../../terms/day.ts';
import type { Trial } from '../../terms/trial.ts';

type Cells = readonly (string | number | null)[];

const text = (rows: readonly Cells[]): string =>
  csvText(
    rows.map((row) =>
      row.map((cell) => (cell === null ? '' : typeof cell === 'number' ? String(cell) : unformula(cell))),
    ),
  );

const HEAD = ['planting', 'variety', 'plants', 'bed', 'block', 'row', 'column', 'stands_in', 'container_l'] as const;

function rowCells({ id, variety, plants, spot, block }: PlannedRow): Cells {
  const bed = spot?.bed ?? null;
  return [
    id,
    variety,
    plants,
    bed?.id ?? null,
    block,
    spot?.row ?? null,
    spot?.column ?? null,
    bed?.standsIn ?? null,
    bed?.containerL ?? null,
  ];
}

/** Names under which a plan's tables stand in a season's folder. */
export type PlanTable =
  | 'plantings.csv'
  | 'ratings.csv'
  | 'germination.csv'
  | 'harvests.csv'
  | 'observations.csv'
  | 'measurements.csv';

/** Rows of plantings.csv, the header first. */
export const plantingRows = ({ rows }: Pick<Plan, 'rows'>): readonly Cells[] => [HEAD, ...rows.map(rowCells)];

function ratingRows({ tasting }: Plan, { settings }: Trial): readonly Cells[] {
  const traits = [...settings.traits].filter(([, { kind }]) => kind === 'rating').map(([key]) => key);
  const day = tasting?.day ? isoDate(tasting.day) : null;
  const rows = (tasting?.tasters ?? []).flatMap(({ name, samples }) =>
    samples.map(({ order, code, variety }): Cells => [
      ...(day === null ? [] : [day]),
      name,
      order,
      code,
      variety,
      'yes',
      ...traits.map(() => null),
    ]),
  );
  const head = [...(day === null ? [] : ['date']), 'taster', 'order', 'code', 'variety', 'blind', ...traits];
  return [head, ...rows];
}

function germinationRows({ classes }: Plan): readonly Cells[] {
  const rows = classes.flatMap(({ varieties, dates }) =>
    dates.sow === null
      ? []
      : varieties.map(({ variety, seeds }): Cells => [
          variety,
          seeds.wholeLot,
          dates.sow === null ? null : isoDate(dates.sow),
          seeds.seeds,
          null,
        ]),
  );
  return [['variety', 'lot', 'sown', 'seeds', 'germinated'], ...rows];
}

/** Headers of the tables that are filled in through the season. */
function emptyTables({ settings }: Trial): readonly (readonly [PlanTable, readonly Cells[]])[] {
  const measures = [...settings.traits].flatMap(([key, trait]) => (trait.kind === 'measure' ? [key] : []));
  const states = [...settings.states.keys()];
  return [
    ['harvests.csv', [['date', 'planting', 'fruits', 'weight_g', 'stage', 'notes']]],
    ['observations.csv', [['date', 'planting', 'event', 'count', 'of', 'notes']]],
    ...(measures.length + states.length === 0
      ? []
      : [['measurements.csv', [['date', 'planting', ...measures, ...states, 'notes']]] as const]),
  ];
}

/** The tables of next season's folder, by name. */
export function seasonTables(plan: Plan, trial: Trial): ReadonlyMap<PlanTable, string> {
  const tables: (readonly [PlanTable, readonly Cells[]])[] = [
    ['plantings.csv', plantingRows(plan)],
    ...(plan.tasting ? [['ratings.csv', ratingRows(plan, trial)] as const] : []),
    ['germination.csv', germinationRows(plan)],
    ...emptyTables(trial),
  ];
  return new Map(tables.map(([name, rows]) => [name, text(rows)]));
}

/** What is to be sown and bought, a row a variety. */
export function shoppingTable({ classes }: Plan, { varieties }: Trial): string {
  const source = (id: string): string | null => varieties.find((own) => own.id === id)?.source ?? null;
  const rows = classes.flatMap((own) =>
    own.varieties.map(({ variety, plants, seeds }): Cells => [
      variety,
      plants,
      seeds.seeds,
      seeds.atHand,
      seeds.buy,
      seeds.lots.join('; '),
      source(variety),
    ]),
  );
  return text([['variety', 'plants', 'sow', 'at_hand', 'buy', 'lots', 'source'], ...rows]);
}

/** Which code stands for which variety: for whoever serves, never published. */
export function tastingKey({ tasting }: Plan): string {
  const codes = new Map(
    (tasting?.tasters ?? []).flatMap(({ samples }) => samples.map(({ code, variety }) => [code, variety])),
  );
  return text([['code', 'variety'], ...[...codes].toSorted(([a], [b]) => (a < b ? -1 : 1))]);
}
