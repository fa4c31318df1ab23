import { plantModel } from '../../analyse/traitsSeen.ts';
import type { VarietySeen } from '../../analyse/seen.ts';
import { pText, withN } from '../classTables/source.ts';
import type { ChartSource, Figure } from './figure.ts';
import { keyed } from '../../numerics/element.ts';

/** Yield of each variety over that of the check variety, each ratio with its own joint interval. */
export function ratioFigure({ seen, compared, trial, classId, writing }: ChartSource): Figure | null {
  const model = plantModel(seen, 'yield');
  const against = compared.get('yield')?.get(classId)?.againstCheck;
  if (!against || !model || model.family === 'gaussian') return null;
  const own = new Map<string, VarietySeen>(seen.varieties.map((v) => [v.variety.id, v]));
  const checkName = own.get(against.checkVariety)?.variety.name ?? against.checkVariety;
  const { number, words } = writing;
  const { ratio: say } = words.charts;
  const times = (value: number): string => number(value, value < 10 ? 2 : 1);
  const rows = against.varieties
    .map(({ variety, estimate, low, high, p }) => ({
      name: keyed(own, variety).variety.name,
      group: keyed(own, variety).status,
      status: words.status[keyed(own, variety).status],
      estimate,
      low,
      high,
      p,
      written: withN(
        low === null || high === null
          ? times(estimate)
          : words.figure.interval(times(estimate), times(low), times(high)),
        model.estimates.get(variety)?.n ?? 0,
        writing,
      ),
    }))
    .toSorted((a, b) => b.estimate - a.estimate);
  const apart = rows.filter(({ p }) => p < 1 - trial.settings.interval);
  const names = apart.map(({ name, estimate }) => (estimate > 1 ? say.more(name) : say.less(name)));
  const percent = writing.percent(trial.settings.interval);
  return {
    id: `ratio-${classId}`,
    title: apart.length === 0 ? say.none(checkName) : say.some(checkName, names),
    measure: say.measure(checkName, percent),
    chart: {
      kind: 'dots',
      axis: say.axis,
      rows,
      plants: [],
      zero: false,
      ratioTo: checkName,
    },
    head: [words.tables.variety, words.tables.status, say.head(checkName, percent), 'p'],
    rows: rows.map((row) => [row.name, row.status, row.written, pText(row.p, writing)]),
  };
}
