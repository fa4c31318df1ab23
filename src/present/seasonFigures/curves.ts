import type { VarietySeen } from '../../analyse/seen.ts';
import type { ChartSource, Figure } from './figure.ts';

/** Curves of plantings with ripe fruit, the earliest variety on top; plantings still unripe are told at the edge. */
export function ripeningFigure({ seen, classId, writing, trial }: ChartSource): Figure | null {
  const grown = seen.varieties.filter(({ variety, ripening }) => variety.classId === classId && ripening !== null);
  if (grown.length === 0) return null;
  const middle = (v: VarietySeen): number => v.ripening!.median.estimate ?? Infinity;
  const sorted = grown.toSorted((a, b) => middle(a) - middle(b) || (a.variety.name < b.variety.name ? -1 : 1));
  const from = trial.settings.firstRipeFrom === 'sown' ? 'sowing' : 'planting out';
  const strips = sorted.map(({ variety, status, ripening }) => {
    const { ripe, unripe, steps } = ripening!;
    const first = steps.find(({ events }) => events > 0);
    return {
      name: status === 'new' ? `${variety.name}, new` : variety.name,
      group: status,
      note: `${ripe} of ${ripe + unripe} ripe`,
      steps: first
        ? [{ x: first.time, share: 0 }, ...steps.map(({ time, survival }) => ({ x: time, share: 1 - survival }))]
        : [{ x: steps[0]!.time, share: 0 }],
    };
  });
  const unripe = sorted.filter((v) => v.ripening!.unripe > 0);
  const earliest = sorted[0]!;
  const title = `${earliest.variety.name} ripened first${unripe.length === 0 ? '; every planting had ripe fruit by the end' : `; plantings without ripe fruit at the end: ${unripe.map((v) => `${v.variety.name} ${v.ripening!.unripe}`).join(', ')}`}`;
  return {
    id: `ripening-${classId}`,
    title: middle(earliest) === Infinity ? 'In no variety did half of the plantings ripen' : title,
    measure: `Share of plantings with ripe fruit by days from ${from} (Kaplan-Meier); the top of each strip is all of them.`,
    chart: { kind: 'strips', axis: `days from ${from}`, strips },
    head: [
      'Variety',
      'Status',
      'Ripe by the end',
      `Median days to first ripe fruit (${writing.number(trial.settings.interval * 100)} % interval)`,
    ],
    rows: sorted.map(({ variety, status, ripening }) => [
      variety.name,
      status,
      `${ripening!.ripe} of ${ripening!.ripe + ripening!.unripe}`,
      ripening!.median.estimate === null ? 'not reached' : writing.interval(ripening!.median, 'd'),
    ]),
  };
}

/** Weighed yield of each variety, added up through the season. */
export function cumulativeFigure({ seen, classId, writing }: ChartSource): Figure | null {
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
    },
    head: ['Variety', 'Plantings', 'Weighed by the last picking'],
    rows: table,
  };
}
