import { gramsByDay } from '../../analyse/summaries.ts';
import { yieldUnitsOf } from '../../terms/ofVariety.ts';
import { ripeningModel } from '../../analyse/traitsSeen.ts';
import type { RipeningCurve } from '../../analyse/ripening.ts';
import type { VarietySeen } from '../../analyse/seen.ts';
import { medianText, modelText, ripeByEnd } from '../classTables/ripening.ts';
import type { ChartSource, Figure } from './figure.ts';
import { found } from './found.ts';
import type { Writing } from '../numbers.ts';
import { nth } from '../../numerics/element.ts';

interface Grown extends Pick<VarietySeen, 'variety' | 'status'> {
  readonly ripening: RipeningCurve;
}

/** A variety's curve as it is drawn. */
function stripOf({ variety, status, ripening }: Grown, writing: Writing) {
  const { ripening: say } = writing.words.charts;
  const { steps } = ripening;
  const first = steps.find(({ events }) => events > 0);
  const byEnd = ripeByEnd(ripening, writing);
  return {
    name: status === 'new' ? say.newName(variety.name) : variety.name,
    group: status,
    note: ripening.ripe + ripening.unripe === ripening.accidents ? byEnd : say.ripe(byEnd),
    steps: first
      ? [{ x: first.time, share: 0 }, ...steps.map(({ time, survival }) => ({ x: time, share: 1 - survival }))]
      : [{ x: nth(steps, 0).time, share: 0 }],
  };
}

/** Curves of plantings with ripe fruit, the earliest variety on top; plantings still unripe are told at the edge. */
export function ripeningFigure({ seen, compared, classId, writing, trial }: ChartSource): Figure | null {
  const grown = seen.varieties.flatMap(({ variety, status, ripening }) =>
    variety.classId === classId && ripening !== null ? [{ variety, status, ripening }] : [],
  );
  if (grown.length === 0) return null;
  const model = ripeningModel(seen);
  const middle = ({ variety, ripening }: Grown): number =>
    model?.estimates.get(variety.id)?.estimate ?? ripening.median.estimate ?? Infinity;
  const sorted = grown.toSorted((a, b) => middle(a) - middle(b) || (a.variety.name < b.variety.name ? -1 : 1));
  const isSown = trial.settings.firstRipeFrom === 'sown';
  const { status: statusWord, tables, charts } = writing.words;
  const { ripening: say } = charts;
  const strips = sorted.map((own) => stripOf(own, writing));
  const late = sorted.flatMap(({ variety, ripening }) => {
    const n = ripening.unripe - ripening.accidents;
    return n > 0 ? [`${variety.name} ${n}`] : [];
  });
  const ranked = sorted.flatMap((v) => {
    const estimate = middle(v);
    return estimate === Infinity ? [] : [{ ...v.variety, estimate }];
  });
  const first = found(
    ranked,
    { what: say.what, isLowest: true },
    compared.get('first_ripe')?.get(classId),
    charts.found,
  );
  const title = `${first}; ${late.length === 0 ? say.allRipe(sorted.every((v) => v.ripening.accidents === 0)) : say.unripe(late.join(', '))}`;
  return {
    id: `ripening-${classId}`,
    title: middle(nth(sorted, 0)) === Infinity ? say.half : title,
    measure: say.measure(isSown),
    chart: { kind: 'strips', axis: say.axis(isSown), strips },
    head: [tables.variety, tables.status, tables.ripeByEnd, say.model, say.median],
    rows: sorted.map(({ variety, status, ripening }) => [
      variety.name,
      statusWord[status],
      ripeByEnd(ripening, writing),
      modelText(model?.estimates.get(variety.id), ripening, writing),
      medianText(ripening, writing),
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
    const days = gramsByDay(seen, variety.id);
    if (days.length === 0) continue;
    let total = 0;
    for (const { day, grams } of days) {
      total += grams;
      rows.push({ name: variety.name, x: day - start, y: writing.shown(total, 'g').value });
    }
    table.push([variety.name, String(yieldUnitsOf(seen, variety.id).length), writing.quantity(total, 'g')]);
  }
  if (rows.length === 0) return null;
  const unit = writing.shown(1, 'g').unit;
  const { cumulative: say } = writing.words.charts;
  const { tables } = writing.words;
  return {
    id: `cumulative-${classId}`,
    title: say.title,
    measure: say.measure(unit),
    chart: {
      kind: 'steps',
      axisX: say.axisX,
      axisY: say.axisY(unit),
      rows,
    },
    head: [tables.variety, tables.plantings, say.weighed],
    rows: table,
  };
}
