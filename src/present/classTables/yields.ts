import { cullsOf, meanOfEstimates } from '../../analyse/summaries.ts';
import { plantModel } from '../../analyse/traitsSeen.ts';
import { isHighCv } from '../../analyse/cautions.ts';
import { detectableDifference } from '../../analyse/detectable.ts';
import type { PlantModel } from '../../analyse/plantTypes.ts';
import type { VarietySeen } from '../../analyse/seen.ts';
import { fText, lettersNote, lettersOf, variety } from './source.ts';
import type { Source } from './source.ts';
import type { Writing } from '../numbers.ts';
import type { TableWords } from '../tables.ts';
import { given } from '../../numerics/element.ts';

function cullsCell({ seen, writing }: Source, { variety: { id } }: VarietySeen): string {
  const culls = cullsOf(seen, id);
  return culls === null ? '' : writing.number(culls.fruits, 1);
}

/** A multiple with as many digits as tell it from 1. */
function timesText(times: number, { number }: Writing): string {
  return number(times, times >= 1.05 ? 1 : times >= 1.005 ? 2 : 3);
}

/** A variety that would have to give so many times another's is no help to a reader. */
const MOST_TIMES = 100;

/** What the class's plantings could have told apart; nothing where that is no help. */
function powerLine({ writing, own, seen, trial, classId }: Source, model: PlantModel): readonly string[] {
  const { tables: say } = writing.words;
  // Of a club the gardens that it would take are told instead.
  if (model.factor === 'garden') return [];
  const units = seen.season.yieldUnits
    .filter(
      (unit) =>
        own.some((v) => v.variety.id === unit.variety) &&
        (model.estimates.get(unit.variety)?.estimate ?? 0) > 0 &&
        unit.cause !== 'accident',
    )
    .flatMap((planting) => {
      const grams = seen.yields.get(planting.id)?.grams ?? null;
      return grams === null ? [] : [{ planting, classId, plants: planting.plants, y: grams / planting.plants }];
    });
  const compares = own.filter((v) => (model.estimates.get(v.variety.id)?.estimate ?? 0) > 0).length > 1;
  const found = compares && detectableDifference(model, units, trial.settings.interval, trial.settings.spotCorrelation);
  // Plants all alike: what their letters could tell apart is then less than is ever written.
  // Beyond so many times nothing is told: letters then tell nothing apart.
  const isTold = (difference: number): boolean =>
    model.family === 'gaussian' ? difference > 0 : difference > 1.0005 && difference < MOST_TIMES;
  if (!found || !isTold(found.difference)) return [];
  const plantings = writing.number(found.plantings, found.plantings % 1 === 0 ? 0 : 1);
  return [
    model.family === 'gaussian'
      ? say.power(plantings, writing.quantity(found.difference, 'g'))
      : say.powerRatio(plantings, timesText(found.difference, writing)),
  ];
}

function yieldFoot(source: Source, model: PlantModel): readonly string[] {
  const { writing, own, classId } = source;
  const mean = meanOfEstimates(
    model,
    own.map((v) => v.variety.id),
  );
  const lsd = model.lsd.get(classId) ?? null;
  const { figure } = writing.words;
  const cv = model.cvPercent === null || (mean ?? 0) <= 0 ? '' : figure.cv(writing.number(model.cvPercent));
  const n = own.reduce((sum, v) => sum + (model.estimates.get(v.variety.id)?.n ?? 0), 0);
  const line = [
    mean === null ? '' : figure.mean(writing.quantity(mean, 'g')),
    figure.n(String(n)),
    cv,
    fText(model.f.get(classId), writing),
    lsd === null ? '' : figure.lsd(writing.quantity(lsd, 'g')),
  ];
  return [
    line.filter((part) => part !== '').join('; ') + '.',
    ...earlyFoot(source),
    ...lettersNote(source, 'yield'),
    ...powerLine(source, model),
  ];
}

/** Coefficient of variation of the early weights, which many zeros make large. */
function earlyFoot({ seen, own, writing, trial, classId }: Source): readonly string[] {
  const model = plantModel(seen, 'early_yield');
  const cv = model?.cvPercent ?? null;
  const layout = model?.layouts.get(classId);
  const { earlyUntil } = seen.season;
  const plantings = seen.season.plantings.filter(({ variety: id }) => own.some((v) => v.variety.id === id));
  if (cv === null || earlyUntil === null) return [];
  return [
    writing.words.tables.earlyCv(
      writing.date(earlyUntil),
      writing.number(cv),
      isHighCv(cv, plantings, layout, trial.settings.spotCorrelation),
    ),
  ];
}

export function yieldTable(source: Source): TableWords | null {
  const { seen, own, writing } = source;
  const model = plantModel(seen, 'yield');
  const fruits = plantModel(seen, 'fruits');
  const early = plantModel(seen, 'early_yield');
  if (!model && !fruits) return null;
  const { tables: say } = writing.words;
  const figure = (of: PlantModel | undefined, id: string, unit: string): string => {
    const estimate = of?.estimates.get(id);
    return estimate ? writing.interval(estimate, unit) : writing.words.figure.notRecorded;
  };
  const rank = (v: VarietySeen): number => given(model ?? fruits).estimates.get(v.variety.id)?.estimate ?? -1;
  return {
    caption: say.yields(source.percent),
    head: [
      say.variety,
      'n',
      say.weight,
      '',
      ...(early ? [say.weightTo(seen.season.earlyUntil === null ? '' : writing.date(seen.season.earlyUntil))] : []),
      say.fruits,
      '',
      say.culls,
    ],
    rows: own
      .toSorted((a, b) => rank(b) - rank(a))
      .map((v) => {
        const { id } = v.variety;
        return [
          variety(v),
          String(given(model ?? fruits).estimates.get(id)?.n ?? 0),
          figure(model, id, 'g'),
          lettersOf(source, 'yield', id),
          ...(early ? [figure(early, id, 'g')] : []),
          figure(fruits, id, 'fruits'),
          lettersOf(source, 'fruits', id),
          cullsCell(source, v),
        ];
      }),
    ...(model ? { foot: yieldFoot(source, model) } : {}),
  };
}
