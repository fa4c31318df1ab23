import { ratingModel } from '../../analyse/traitsSeen.ts';
import { classScores, tastersAmong } from '../classTables/source.ts';
import type { ChartSource, Figure } from './figure.ts';

/** Raw scores of a rating, variety by variety: how far the tasters were of one mind. */
export function scoresFigure({ seen, trial, classId, writing }: ChartSource, key: string): Figure | null {
  const model = ratingModel(seen, key);
  if (!model) return null;
  const { from, to } = model.trait;
  const { scores: say } = writing.words.charts;
  const { tables, figure } = writing.words;
  const own = seen.varieties.filter(({ variety }) => variety.classId === classId);
  const given = classScores({ seen, own }, key);
  const rows = own.flatMap(({ variety }) => {
    const scores = given.filter((score) => score.variety === variety.id).map(({ score }) => score);
    if (scores.length === 0) return [];
    const counts = new Map<number, number>();
    for (const score of scores) counts.set(score, (counts.get(score) ?? 0) + 1);
    const parts = [...counts]
      .toSorted(([a], [b]) => a - b)
      .map(([score, count]) => ({
        score,
        count,
        shade: (score - from) / (to - from),
        written: say.part(
          writing.number(score, score % 1 === 0 ? 0 : 1),
          figure.kOfN(String(count), String(scores.length)),
        ),
      }));
    const mean = scores.reduce((sum, score) => sum + score, 0) / scores.length;
    return [{ name: variety.name, parts, mean, written: figure.n(String(scores.length)) }];
  });
  if (rows.length === 0) return null;
  rows.sort((a, b) => b.mean - a.mean || (a.name < b.name ? -1 : 1));
  const trait = writing.trait(key);
  const isBlind = given.every((score) => score.isBlind === true);
  return {
    id: `scores-${key}-${classId}`,
    title: say.title(trait, model.kendallW === null ? null : writing.number(model.kendallW, 2)),
    measure: say.measure(trait, String(from), String(to), tastersAmong(given), isBlind),
    chart: { kind: 'stacks', axis: say.axis, rows: rows.map(({ name, parts, written }) => ({ name, parts, written })) },
    head: [
      tables.variety,
      'n',
      trial.settings.traits.has(key) ? tables.ratingScale(trait, String(from), String(to)) : trait,
    ],
    rows: rows.map(({ name, parts, written }) => [name, written, parts.map((part) => part.written).join('; ')]),
  };
}
