import { plantModel, ratingModels, ripeningModel } from '../src/analyse/traitsSeen.ts';
import type { SeasonSeen, VarietySeen } from '../src/analyse/seen.ts';
import { medianText } from '../src/present/classTables/ripening.ts';
import type { Estimate } from '../src/terms/estimate.ts';
import { withN } from '../src/present/classTables/source.ts';
import type { FrameContent } from './content.ts';

/** Days to first ripe fruit by the model, which can bound them; the median of the plantings where it has none. */
function ripeText({ ripening }: VarietySeen, model: Estimate | undefined, writing: FrameContent['writing']): string {
  const { figure } = writing.words;
  if (!ripening) return figure.notRecorded;
  const { median, ripe } = ripening;
  if (ripe === 0 && ripening.unripe === ripening.accidents) return figure.allLost(writing.number(ripening.accidents));
  if (model && model.estimate !== null) return withN(writing.interval(model, 'd'), model.n, writing);
  return withN(ripe === 0 ? figure.noneRipened : medianText(ripening, writing), median.n, writing);
}

export function figuresOf(content: FrameContent, seen: SeasonSeen, own: VarietySeen): readonly string[] {
  const { writing } = content;
  const { id } = own.variety;
  const { figure } = writing.words;
  const yields = plantModel(seen, 'yield')?.estimates.get(id);
  const model = ripeningModel(seen)?.estimates.get(id);
  const flavour = ratingModels(seen).map(([, model]) => model)[0];
  const rating = flavour?.estimates.get(id);
  return [
    writing.words.status[own.status],
    `${own.plantsSetOut}`,
    yields ? withN(writing.interval(yields, 'g'), yields.n, writing) : figure.notRecorded,
    ripeText(own, model, writing),
    rating ? withN(writing.interval(rating, 'points'), rating.tasters, writing) : figure.notRecorded,
  ];
}

export function classesOf(content: FrameContent, seen: SeasonSeen) {
  const grown = new Set<string>(seen.varieties.map(({ variety }) => variety.classId));
  return [...content.trial.settings.classes.values()].filter(({ id }) => grown.has(id));
}
