import type { SeasonSeen } from '../analyse/seen.ts';
import type { Estimate } from '../terms/estimate.ts';
import type { Chart, DotRow } from './charts.ts';
import type { Writing } from './numbers.ts';

/** A chart with the words around it and its table. */
export interface Figure {
  readonly id: string;
  readonly title: string;
  readonly measure: string;
  readonly chart: Chart;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

function found(list: readonly DotRow[], what: string, lowerIsBetter: boolean): string {
  const [first, second] = list;
  if (!first) return `No ${what} was recorded`;
  if (!second) return `${first.name} is the only variety with ${what} on record`;
  return `${first.name} has the ${lowerIsBetter ? 'lowest' : 'highest'} estimate of ${what} in this trial`;
}

interface Measured {
  readonly id: string;
  readonly what: string;
  readonly axis: string;
  readonly unit: string;
  readonly zero: boolean;
  readonly lowerIsBetter: boolean;
  readonly estimateOf: (variety: string) => Estimate | null;
  readonly plantsOf: (variety: string) => readonly number[];
}

function dotFigure(seen: SeasonSeen, classId: string, own: Measured, writing: Writing, level: number): Figure | null {
  const convert = (value: number): number => writing.shown(value, own.unit).value;
  const rows: DotRow[] = [];
  const plants: { name: string; value: number }[] = [];
  for (const { variety, status } of seen.varieties) {
    if (variety.classId !== classId) continue;
    const estimate = own.estimateOf(variety.id);
    if (!estimate || estimate.estimate === null) continue;
    const [low, high] = [estimate.low, estimate.high].map((value) => (value === null ? null : convert(value)));
    rows.push({
      name: variety.name,
      group: status,
      estimate: convert(estimate.estimate),
      low: low ?? null,
      high: high ?? null,
      written: writing.interval(estimate, own.unit),
    });
    for (const value of own.plantsOf(variety.id)) plants.push({ name: variety.name, value: convert(value) });
  }
  if (rows.length === 0) return null;
  rows.sort(
    (a, b) => (own.lowerIsBetter ? a.estimate - b.estimate : b.estimate - a.estimate) || (a.name < b.name ? -1 : 1),
  );
  const nOf = new Map(seen.varieties.map(({ variety }) => [variety.name, own.estimateOf(variety.id)?.n ?? 0]));
  const percent = writing.number(level * 100, (level * 100) % 1 === 0 ? 0 : 1);
  return {
    id: `${own.id}-${classId}`,
    title: found(rows, own.what, own.lowerIsBetter),
    measure: `${own.axis}; marks are estimates, bars ${percent} % intervals, grey ticks the plants. Diamond: new. Circle: returning.`,
    chart: { kind: 'dots', axis: own.axis, rows, plants, zero: own.zero },
    head: ['Variety', 'Status', 'n', `${own.axis} (${percent} % interval)`],
    rows: rows.map((row) => [row.name, row.group, String(nOf.get(row.name)), row.written]),
  };
}

function ripeningFigure(seen: SeasonSeen, classId: string, writing: Writing): Figure | null {
  const rows: { name: string; x: number; y: number }[] = [];
  const table: string[][] = [];
  for (const { variety, ripening } of seen.varieties) {
    if (variety.classId !== classId || !ripening) continue;
    let share = 0;
    const start = Math.max(0, (ripening.steps.find(({ events }) => events > 0)?.time ?? 0) - 1);
    rows.push({ name: variety.name, x: start, y: 0 });
    for (const step of ripening.steps) {
      share = 1 - step.survival;
      rows.push({ name: variety.name, x: step.time, y: share });
    }
    const n = ripening.ripe + ripening.unripe;
    table.push([
      variety.name,
      `${ripening.ripe} of ${n}`,
      ripening.median.estimate === null ? 'not reached' : writing.interval(ripening.median, 'd'),
    ]);
  }
  if (rows.length === 0) return null;
  return {
    id: `ripening-${classId}`,
    title: 'How the plants came to their first ripe fruit',
    measure: 'Share of plantings with ripe fruit by days from planting out',
    chart: { kind: 'steps', axisX: 'days from planting out', axisY: 'plantings with ripe fruit', rows, share: true },
    head: ['Variety', 'Ripe by the end', 'Median days to first ripe fruit (interval)'],
    rows: table,
  };
}

function cumulativeFigure(seen: SeasonSeen, classId: string, writing: Writing): Figure | null {
  const rows: { name: string; x: number; y: number }[] = [];
  const table: string[][] = [];
  const start = seen.season.firstDay ?? 0;
  for (const { variety } of seen.varieties) {
    if (variety.classId !== classId) continue;
    const units = seen.season.yieldUnits.filter((unit) => unit.variety === variety.id && unit.cause !== 'accident');
    const plants = units.reduce((sum, unit) => sum + unit.plants, 0);
    const byDay = new Map<number, number>();
    for (const unit of units) {
      for (const { day, ripe, green } of unit.pickings) {
        if (day !== null) byDay.set(day, (byDay.get(day) ?? 0) + ripe.grams + green.grams);
      }
    }
    if (byDay.size === 0 || plants === 0) continue;
    let total = 0;
    for (const day of [...byDay.keys()].toSorted((a, b) => a - b)) {
      total += byDay.get(day)! / plants;
      rows.push({ name: variety.name, x: day - start, y: writing.shown(total, 'g').value });
    }
    table.push([variety.name, String(units.length), writing.quantity(total, 'g')]);
  }
  if (rows.length === 0) return null;
  const unit = writing.shown(1, 'g').unit;
  return {
    id: `cumulative-${classId}`,
    title: 'How the yield came in through the season',
    measure: `Weighed usable yield per plant set out, ${unit}, added up from picking to picking; not an estimate, so without interval`,
    chart: {
      kind: 'steps',
      axisX: 'days from the first sowing or planting out',
      axisY: `${unit} per plant`,
      rows,
      share: false,
    },
    head: ['Variety', 'Plantings', 'Weighed by the last picking'],
    rows: table,
  };
}

/** Charts of a class in a season, in the order growers ask. */
export function classFigures(seen: SeasonSeen, classId: string, writing: Writing, level: number): readonly Figure[] {
  const gram = writing.shown(1, 'g').unit;
  const measured: Measured[] = [];
  const yields = seen.models.get('yield');
  if (yields) {
    measured.push({
      id: 'yield',
      what: 'yield per plant',
      axis: `usable yield, ${gram} per plant`,
      unit: 'g',
      zero: true,
      lowerIsBetter: false,
      estimateOf: (id) => yields.estimates.get(id) ?? null,
      plantsOf: (id) =>
        seen.season.yieldUnits.flatMap((unit) => {
          const grams =
            unit.variety === id && unit.cause !== 'accident' ? (seen.yields.get(unit.id)?.grams ?? null) : null;
          return grams === null ? [] : [grams / unit.plants];
        }),
    });
  }
  for (const [key, model] of seen.ratings) {
    measured.push({
      id: `rating-${key}`,
      what: key.replaceAll('_', ' '),
      axis: `${key.replaceAll('_', ' ')}, ${model.trait.from} to ${model.trait.to}`,
      unit: 'points',
      zero: false,
      lowerIsBetter: model.trait.better === 'lower',
      estimateOf: (id) => model.estimates.get(id) ?? null,
      plantsOf: () => [],
    });
  }
  const figures = measured.map((own) => dotFigure(seen, classId, own, writing, level));
  const [first, ...others] = figures;
  return [
    first ?? null,
    ripeningFigure(seen, classId, writing),
    ...others,
    cumulativeFigure(seen, classId, writing),
  ].filter((figure) => figure !== null);
}
