import { detectableDifference } from '../../analyse/detectable.ts';
import type { PlantModel } from '../../analyse/plantModel.ts';
import type { VarietySeen } from '../../analyse/seen.ts';
import { fText, lettersNote, lettersOf, variety } from './source.ts';
import type { Source } from './source.ts';
import type { TableWords } from '../tables.ts';

function cullsCell(source: Source, { variety: { id } }: VarietySeen): string {
  const units = source.seen.season.yieldUnits.filter((unit) => unit.variety === id && unit.cause !== 'accident');
  if (!units.some(({ pickings }) => pickings.some(({ hasCulls }) => hasCulls))) return '';
  const plants = units.reduce((sum, unit) => sum + unit.plants, 0);
  const culls = units.reduce((sum, unit) => sum + (source.seen.yields.get(unit.id)?.cullFruits ?? 0), 0);
  return source.writing.number(culls / plants, 1);
}

function modelMean(model: PlantModel, own: readonly VarietySeen[]): number | null {
  const values = own.map((v) => model.estimates.get(v.variety.id)?.estimate ?? null).filter((value) => value !== null);
  return values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;
}

function yieldFoot(source: Source, model: PlantModel): readonly string[] {
  const { writing, own, seen, trial, classId } = source;
  const mean = modelMean(model, own);
  const lsd = model.lsd.get(classId) ?? null;
  const cv = model.cvPercent === null ? '' : `CV ${writing.number(model.cvPercent)} % a plant`;
  const n = own.reduce((sum, v) => sum + (model.estimates.get(v.variety.id)?.n ?? 0), 0);
  const line = [
    mean === null ? '' : `Mean of the varieties ${writing.quantity(mean, 'g')}`,
    `n ${n}`,
    cv,
    fText(model.f.get(classId), writing),
    lsd === null ? '' : `LSD ${writing.quantity(lsd, 'g')}`,
  ];
  const units = seen.season.yieldUnits
    .filter(
      (unit) =>
        own.some((v) => v.variety.id === unit.variety) &&
        unit.cause !== 'accident' &&
        seen.yields.get(unit.id)?.grams != null,
    )
    .map((planting) => ({
      planting,
      classId,
      plants: planting.plants,
      y: seen.yields.get(planting.id)!.grams! / planting.plants,
    }));
  const seenBy = detectableDifference(model, units, trial.settings.interval, trial.settings.spotCorrelation);
  const power = seenBy
    ? [
        model.family === 'gaussian'
          ? `With ${writing.number(seenBy.plantings, seenBy.plantings % 1 === 0 ? 0 : 1)} plantings a variety this trial could see a difference of ${writing.quantity(seenBy.difference, 'g')} in 4 of 5 such seasons; smaller ones stay hidden.`
          : `With ${writing.number(seenBy.plantings, seenBy.plantings % 1 === 0 ? 0 : 1)} plantings a variety this trial could see one that gives ${writing.number(seenBy.difference, 1)} times another in 4 of 5 such seasons; smaller differences stay hidden.`,
      ]
    : [];
  return [line.filter((part) => part !== '').join('; ') + '.', ...lettersNote(source, 'yield'), ...power];
}

export function yieldTable(source: Source): TableWords | null {
  const { seen, own, writing } = source;
  const model = seen.models.get('yield');
  const fruits = seen.models.get('fruits');
  const early = seen.models.get('early_yield');
  if (!model && !fruits) return null;
  const figure = (of: PlantModel | undefined, id: string, unit: string): string => {
    const estimate = of?.estimates.get(id);
    return estimate ? writing.interval(estimate, unit) : 'not recorded';
  };
  const rank = (v: VarietySeen): number => (model ?? fruits)!.estimates.get(v.variety.id)?.estimate ?? -1;
  return {
    caption: `Usable yield per plant set out, with ${source.percent} intervals; n counts plantings`,
    head: [
      'Variety',
      'n',
      `Weight`,
      '',
      ...(early ? [`Weight to ${seen.season.earlyUntil === null ? '' : writing.date(seen.season.earlyUntil)}`] : []),
      'Fruits',
      '',
      'Culls',
    ],
    rows: own
      .toSorted((a, b) => rank(b) - rank(a))
      .map((v) => {
        const { id } = v.variety;
        return [
          variety(v),
          String((model ?? fruits)!.estimates.get(id)?.n ?? 0),
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
