import type { SeasonSeen, VarietySeen } from '../src/analyse/seen.ts';
import { withN } from '../src/present/classTables/source.ts';
import type { SiteContent } from './content.ts';

export function figuresOf(content: SiteContent, seen: SeasonSeen, own: VarietySeen): readonly string[] {
  const { writing } = content;
  const { id } = own.variety;
  const { figure } = writing.words;
  const yields = seen.models.get('yield')?.estimates.get(id);
  const median = own.ripening?.median;
  const flavour = [...seen.ratings.values()][0];
  const rating = flavour?.estimates.get(id);
  return [
    writing.words.status[own.status],
    `${own.plantsSetOut}`,
    yields ? withN(writing.interval(yields, 'g'), yields.n, writing) : figure.notRecorded,
    median
      ? withN(median.estimate === null ? figure.notReached : writing.interval(median, 'd'), median.n, writing)
      : figure.notRecorded,
    rating ? withN(writing.interval(rating, 'points'), rating.n, writing) : figure.notRecorded,
  ];
}

export function classesOf(content: SiteContent, seen: SeasonSeen) {
  const grown = new Set(seen.varieties.map(({ variety }) => variety.classId));
  return [...content.trial.settings.classes.values()].filter(({ id }) => grown.has(id));
}
