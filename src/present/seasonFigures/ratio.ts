import type { ChartSource, Figure } from './figure.ts';

/** Yield of each variety over that of the check variety, each ratio with its own joint interval. */
export function ratioFigure({ seen, compared, trial, classId, writing }: ChartSource): Figure | null {
  const model = seen.models.get('yield');
  const against = compared.get('yield')?.get(classId)?.againstCheck;
  if (!against || !model || model.family === 'gaussian') return null;
  const own = new Map(seen.varieties.map((v) => [v.variety.id, v]));
  const checkName = own.get(against.checkVariety)?.variety.name ?? against.checkVariety;
  const { number } = writing;
  const times = (value: number): string => number(value, value < 10 ? 2 : 1);
  const rows = against.varieties
    .map(({ variety, estimate, low, high, p }) => ({
      name: own.get(variety)!.variety.name,
      group: own.get(variety)!.status,
      estimate,
      low,
      high,
      p,
      written: `${times(estimate)} (${times(low)} to ${times(high)})`,
    }))
    .toSorted((a, b) => b.estimate - a.estimate);
  const apart = rows.filter(({ low, high }) => low > 1 || high < 1);
  const names = apart.map(({ name, estimate }) => `${name} (${estimate > 1 ? 'more' : 'less'})`).join(', ');
  const title =
    apart.length === 0
      ? `No variety is separated from ${checkName} in yield in this trial`
      : `Separated from ${checkName} in yield: ${names}`;
  const percent = number(trial.settings.interval * 100);
  return {
    id: `ratio-${classId}`,
    title,
    measure: `Yield per plant as a multiple of ${checkName}, the check variety (line at 1); ${percent} % intervals that hold jointly (Dunnett). Diamond: new. Circle: returning.`,
    chart: {
      kind: 'dots',
      axis: 'less than the check  ←  times its yield  →  more',
      rows,
      plants: [],
      zero: false,
      ratioTo: checkName,
    },
    head: ['Variety', 'Status', `Times the yield of ${checkName} (${percent} % interval)`, 'p'],
    rows: rows.map((row) => [row.name, row.group, row.written, row.p < 0.001 ? 'below 0.001' : number(row.p, 3)]),
  };
}
