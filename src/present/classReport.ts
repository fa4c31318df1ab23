import { plantModel } from '../analyse/traitsSeen.ts';
import { classCautions } from '../analyse/cautions.ts';
import type { ClassComparisons } from '../analyse/comparisons.ts';
import type { SeasonComparisons } from '../analyse/compareSeason.ts';
import type { SeasonSeen } from '../analyse/seen.ts';
import { nameLookup } from '../terms/trial.ts';
import type { Trial } from '../terms/trial.ts';
import { entriesTable } from './classTables/entries.ts';
import { measureTable } from './classTables/measures.ts';
import { ripeningTable } from './classTables/ripening.ts';
import type { Source } from './classTables/source.ts';
import { tastingTable } from './classTables/tasting.ts';
import { yieldTable } from './classTables/yields.ts';
import type { Writing } from './numbers.ts';
import type { TableWords } from './tables.ts';
import { traitFacts } from '../terms/traits.ts';
import { cautionText } from './words/cautions.ts';

/** Everything a class's part of the season page says. */
export interface ClassReport {
  readonly findings: readonly string[];
  readonly tables: readonly TableWords[];
  readonly cautions: readonly string[];
}

/** New beside returning in a sentence for each trait that has the contrast. */
function newBesideReturning(source: Source): readonly string[] {
  const { compared, classId, writing } = source;
  const say = (trait: string, isRatio: boolean, c: NonNullable<ClassComparisons['newAgainstReturning']>): string => {
    const { report, figure, capital } = writing.words;
    const what = capital(writing.trait(trait));
    const apart = c.p < 1 - source.trial.settings.interval ? report.apart : report.notApart;
    if (!isRatio)
      return report.difference(what, writing.interval(c, traitFacts(trait, source.trial.settings.traits).unit), apart);
    const times = (value: number): string => writing.number(value, 2);
    return report.ratio(what, figure.interval(times(c.estimate), times(c.low!), times(c.high!)), apart);
  };
  const sentences: string[] = [];
  for (const [trait, byClass] of compared) {
    const contrast = byClass.get(classId)?.newAgainstReturning;
    const model = plantModel(source.seen, trait);
    if (
      !contrast ||
      contrast.low === null ||
      trait === 'fruits' ||
      trait === 'early_yield' ||
      source.trial.settings.traits.get(trait)?.kind === 'measure'
    )
      continue;
    sentences.push(
      say(trait, trait === 'first_ripe' || (model !== undefined && model.family !== 'gaussian'), contrast),
    );
  }
  return sentences;
}

/** A class's part of the season page: findings, the tables in the trade's order, what limits them. */
export function classReport(
  trial: Trial,
  seen: SeasonSeen,
  compared: SeasonComparisons,
  classId: string,
  writing: Writing,
): ClassReport {
  const own = seen.varieties.filter((v) => v.variety.classId === classId);
  const source: Source = {
    trial,
    seen,
    compared,
    classId,
    writing,
    own,
    percent: writing.percent(trial.settings.interval),
  };
  const nameOf = nameLookup(trial.varieties);
  return {
    findings: newBesideReturning(source),
    tables: [
      entriesTable(source),
      yieldTable(source),
      ripeningTable(source),
      measureTable(source),
      tastingTable(source),
    ].filter((table) => table !== null),
    cautions: classCautions(trial, seen, classId).map((caution) => cautionText(caution, nameOf, writing)),
  };
}
