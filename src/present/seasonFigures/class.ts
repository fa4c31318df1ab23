import type { Estimate } from '../../terms/estimate.ts';
import type { DotRow } from '../charts/kinds.ts';
import { cumulativeFigure, ripeningFigure } from './curves.ts';
import type { ChartSource, Figure } from './figure.ts';
import { ratioFigure } from './ratio.ts';

/** The finding: which variety is first, and how many are not separated from it. */
function found(list: readonly DotRow[], own: Measured, letters: ReadonlyMap<string, string> | null): string {
  const [first, ...others] = list;
  if (!first) return `No ${own.what} was recorded`;
  if (others.length === 0) return `${first.name} is the only variety with ${own.what} on record`;
  const order = own.lowerIsBetter ? 'lowest' : 'highest';
  const best = letters?.get(first.name);
  if (best === undefined || best === '') return `${first.name} has the ${order} estimate of ${own.what} in this trial`;
  const alike = others.filter(({ name }) => [...(letters!.get(name) ?? '')].some((letter) => best.includes(letter)));
  if (alike.length === 0) return `${first.name} has the ${order} ${own.what}, separated from all others in this trial`;
  if (alike.length === others.length)
    return `${first.name} has the ${order} estimate of ${own.what}; no variety is separated from it in this trial`;
  return `${first.name} has the ${order} estimate of ${own.what}; ${alike.map(({ name }) => name).join(', ')} ${alike.length === 1 ? 'is' : 'are'} not separated from it`;
}

interface Measured {
  readonly id: string;
  readonly trait: string;
  readonly what: string;
  readonly axis: string;
  readonly unit: string;
  readonly zero: boolean;
  readonly lowerIsBetter: boolean;
  readonly estimateOf: (variety: string) => Estimate | null;
  readonly plantsOf: (variety: string) => readonly number[];
}

function dotFigure({ seen, compared, trial, classId, writing }: ChartSource, own: Measured): Figure | null {
  const level = trial.settings.interval;
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
  const byId = compared.get(own.trait)?.get(classId)?.letters;
  const letters = byId
    ? new Map(seen.varieties.map(({ variety }) => [variety.name, byId.get(variety.id) ?? '']))
    : null;
  const percent = writing.number(level * 100, (level * 100) % 1 === 0 ? 0 : 1);
  return {
    id: `${own.id}-${classId}`,
    title: found(rows, own, letters),
    measure: `${own.axis}; marks are estimates, bars ${percent} % intervals, grey ticks the plants. Diamond: new. Circle: returning.`,
    chart: { kind: 'dots', axis: own.axis, rows, plants, zero: own.zero, ratioTo: null },
    head: ['Variety', 'Status', 'n', `${own.axis} (${percent} % interval)`],
    rows: rows.map((row) => [row.name, row.group, String(nOf.get(row.name)), row.written]),
  };
}

/** Charts of a class in a season, in the order growers ask. */
export function classFigures(source: ChartSource): readonly Figure[] {
  const { seen, writing } = source;
  const gram = writing.shown(1, 'g').unit;
  const measured: Measured[] = [];
  const yields = seen.models.get('yield');
  if (yields) {
    measured.push({
      id: 'yield',
      trait: 'yield',
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
      trait: key,
      what: key.replaceAll('_', ' '),
      axis: `${key.replaceAll('_', ' ')}, ${model.trait.from} to ${model.trait.to}`,
      unit: 'points',
      zero: false,
      lowerIsBetter: model.trait.better === 'lower',
      estimateOf: (id) => model.estimates.get(id) ?? null,
      plantsOf: () => [],
    });
  }
  const figures = measured.map((own) => dotFigure(source, own));
  const [first, ...others] = figures;
  return [first ?? null, ratioFigure(source), ripeningFigure(source), ...others, cumulativeFigure(source)].filter(
    (figure) => figure !== null,
  );
}
