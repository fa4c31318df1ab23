import { plantModel, ratingModels } from '../../analyse/traitsSeen.ts';
import type { SeasonSeen } from '../../analyse/seen.ts';
import type { PlantModel } from '../../analyse/plantTypes.ts';
import type { RatingModel } from '../../analyse/ratings.ts';
import type { Estimate } from '../../terms/estimate.ts';
import type { ChartSource, Figure } from './figure.ts';

interface Figured extends Estimate {
  readonly estimate: number;
}

interface Point {
  readonly name: string;
  readonly group: 'new' | 'returning';
  readonly x: Figured;
  readonly y: Figured;
}

/** Varieties of the class that have both figures. */
function pointsOf(seen: SeasonSeen, classId: string, yields: PlantModel, rated: RatingModel): readonly Point[] {
  return seen.varieties.flatMap(({ variety, status }): readonly Point[] => {
    const [x, y] = [yields.estimates.get(variety.id), rated.estimates.get(variety.id)];
    if (variety.classId !== classId || !x || !y || x.estimate === null || y.estimate === null) return [];
    const both = { x: { ...x, estimate: x.estimate }, y: { ...y, estimate: y.estimate } };
    return [{ name: variety.name, group: status, ...both }];
  });
}

/** Yield against the first rating with a good direction: what has both, and what has one at the cost of the other. */
export function tradeOffFigure({ seen, trial, classId, writing }: ChartSource): Figure | null {
  const yields = plantModel(seen, 'yield');
  const rated = ratingModels(seen).find(([, { trait }]) => trait.better === 'higher');
  if (!yields || !rated) return null;
  const [key, model] = rated;
  const points = pointsOf(seen, classId, yields, model);
  if (points.length < 3) return null;
  const { tradeOff: say } = writing.words.charts;
  const { tables, status } = writing.words;
  const gram = writing.shown(1, 'g').unit;
  const shown = (value: number): number => writing.shown(value, 'g').value;
  const middle = (of: (point: Point) => number): number =>
    points.reduce((sum, point) => sum + of(point), 0) / points.length;
  const [meanX, meanY] = [middle(({ x }) => x.estimate), middle(({ y }) => y.estimate)];
  const both = points.filter(({ x, y }) => x.estimate > meanX && y.estimate > meanY).map(({ name }) => name);
  const level = writing.percent(trial.settings.interval);
  const axisY = tables.ratingScale(writing.trait(key), String(model.trait.from), String(model.trait.to));
  return {
    id: `tradeoff-${classId}`,
    title: both.length === 0 ? say.none(writing.trait(key)) : say.both(writing.words.listed(both), writing.trait(key)),
    measure: say.measure(writing.trait(key), level),
    chart: {
      kind: 'scatter',
      axisX: writing.words.charts.yieldAxis(gram),
      axisY,
      rows: points.map(({ name, group, x, y }) => ({
        name,
        group,
        status: status[group],
        x: shown(x.estimate),
        lowX: shown(x.low ?? x.estimate),
        highX: shown(x.high ?? x.estimate),
        y: y.estimate,
        lowY: y.low ?? y.estimate,
        highY: y.high ?? y.estimate,
        written: `${writing.interval(x, 'g')}; ${writing.interval(y, 'points')}`,
      })),
    },
    head: [tables.variety, tables.status, writing.words.variety.yield, axisY],
    rows: points.map(({ name, group, x, y }) => [
      name,
      status[group],
      writing.interval(x, 'g'),
      writing.interval(y, 'points'),
    ]),
  };
}
