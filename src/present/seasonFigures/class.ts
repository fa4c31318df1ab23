import { limited } from './limited.ts';
import { drawnYields } from '../../analyse/summaries.ts';
import { plantModel, ratingModels } from '../../analyse/traitsSeen.ts';
import type { Estimate } from '../../terms/estimate.ts';
import type { DotRow } from '../charts/kinds.ts';
import { withN } from '../classTables/source.ts';
import { cumulativeFigure, ripeningFigure } from './curves.ts';
import type { ChartSource, Figure } from './figure.ts';
import { found } from './found.ts';
import { ratioFigure } from './ratio.ts';
import { scoresFigure } from './scores.ts';
import { tradeOffFigure } from './tradeOff.ts';

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
  const convert = (value: number): number => writing.shown(value, own.unit).value;
  const rows: (DotRow & { readonly id: string; readonly n: number; readonly interval: string })[] = [];
  const plants: { name: string; value: number }[] = [];
  for (const { variety, status } of seen.varieties) {
    if (variety.classId !== classId) continue;
    const estimate = own.estimateOf(variety.id);
    if (!estimate || estimate.estimate === null) continue;
    const [low, high] = [estimate.low, estimate.high].map((value) => (value === null ? null : convert(value)));
    rows.push({
      id: variety.id,
      name: variety.name,
      group: status,
      status: writing.words.status[status],
      estimate: convert(estimate.estimate),
      low: low ?? null,
      high: high ?? null,
      written: withN(writing.interval(estimate, own.unit), estimate.n, writing),
      interval: writing.interval(estimate, own.unit),
      n: estimate.n,
    });
    for (const value of own.plantsOf(variety.id)) plants.push({ name: variety.name, value: convert(value) });
  }
  if (rows.length === 0) return null;
  rows.sort(
    (a, b) => (own.lowerIsBetter ? a.estimate - b.estimate : b.estimate - a.estimate) || (a.name < b.name ? -1 : 1),
  );
  const percent = writing.percent(trial.settings.interval);
  const { charts: say, tables } = writing.words;
  return {
    id: `${own.id}-${classId}`,
    title: found(
      rows,
      { what: own.what, isLowest: own.lowerIsBetter },
      compared.get(own.trait)?.get(classId),
      say.found,
    ),
    measure: say.dots(own.axis, percent, plants.length > 0),
    chart: { kind: 'dots', axis: own.axis, rows, plants, zero: own.zero, ratioTo: null },
    head: [tables.variety, tables.status, 'n', say.dotsHead(own.axis, percent)],
    rows: rows.map((row) => [row.name, row.status, String(row.n), row.interval]),
  };
}

/** Charts of a class in a season, in the order growers ask. */
export function classFigures(source: ChartSource): readonly Figure[] {
  const { seen, writing } = source;
  const gram = writing.shown(1, 'g').unit;
  const measured: Measured[] = [];
  const yields = plantModel(seen, 'yield');
  if (yields) {
    measured.push({
      id: 'yield',
      trait: 'yield',
      what: writing.words.charts.yieldWhat,
      axis: writing.words.charts.yieldAxis(gram),
      unit: 'g',
      zero: true,
      lowerIsBetter: false,
      estimateOf: (id) => yields.estimates.get(id) ?? null,
      plantsOf: (id) => drawnYields(seen, id),
    });
  }
  for (const [key, model] of ratingModels(seen)) {
    measured.push({
      id: `rating-${key}`,
      trait: key,
      what: writing.trait(key),
      axis: writing.words.tables.ratingScale(writing.trait(key), String(model.trait.from), String(model.trait.to)),
      unit: 'points',
      zero: false,
      lowerIsBetter: model.trait.better === 'lower',
      estimateOf: (id) => {
        const estimate = model.estimates.get(id);
        return estimate ? { ...estimate, n: estimate.tasters } : null;
      },
      plantsOf: () => [],
    });
  }
  const figures = measured.map((own) => dotFigure(source, own));
  const [first, ...others] = figures;
  const scores = ratingModels(seen)
    .map(([key]) => key)
    .map((key) => scoresFigure(source, key));
  const rest = [...others, ...scores, tradeOffFigure(source), cumulativeFigure(source)];
  return [first ?? null, ratioFigure(source), ripeningFigure(source), ...rest].flatMap((figure) =>
    figure ? [limited(figure, writing)] : [],
  );
}
