import { classCautions } from '../analyse/cautions.ts';
import type { ClassComparisons } from '../analyse/comparisons.ts';
import type { SeasonComparisons } from '../analyse/compareSeason.ts';
import type { SeasonSeen } from '../analyse/seen.ts';
import type { Trial } from '../terms/trial.ts';
import { entriesTable } from './classTables/entries.ts';
import { measureTable } from './classTables/measures.ts';
import { ripeningTable } from './classTables/ripening.ts';
import type { Source } from './classTables/source.ts';
import { tastingTable } from './classTables/tasting.ts';
import { yieldTable } from './classTables/yields.ts';
import type { Writing } from './numbers.ts';
import type { TableWords } from './tables.ts';
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
  const say = (what: string, isRatio: boolean, c: NonNullable<ClassComparisons['newAgainstReturning']>): string => {
    const figure = `${writing.number(c.estimate, 2)} (${writing.number(c.low, 2)} to ${writing.number(c.high, 2)})`;
    const apart =
      c.p < 1 - source.trial.settings.interval
        ? 'they are separated in this trial'
        : 'they are not separated in this trial';
    return isRatio
      ? `${what} of the new varieties over the returning ones: ${figure} times; ${apart}.`
      : `${what} of the new varieties less that of the returning ones: ${figure}; ${apart}.`;
  };
  const sentences: string[] = [];
  for (const [trait, byClass] of compared) {
    const contrast = byClass.get(classId)?.newAgainstReturning;
    const model = source.seen.models.get(trait);
    if (
      !contrast ||
      trait === 'fruits' ||
      trait === 'early_yield' ||
      source.trial.settings.traits.get(trait)?.kind === 'measure'
    )
      continue;
    const what =
      trait === 'yield'
        ? 'Yield'
        : trait === 'first_ripe'
          ? 'Days to first ripe fruit'
          : trait.replaceAll('_', ' ').replace(/^./, (c) => c.toUpperCase());
    sentences.push(say(what, trait === 'first_ripe' || (model !== undefined && model.family !== 'gaussian'), contrast));
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
  const level = trial.settings.interval * 100;
  const source: Source = {
    trial,
    seen,
    compared,
    classId,
    writing,
    own,
    percent: `${writing.number(level, level % 1 === 0 ? 0 : 1)} %`,
  };
  const names = new Map(trial.varieties.map(({ id, name }) => [id, name]));
  return {
    findings: newBesideReturning(source),
    tables: [
      entriesTable(source),
      yieldTable(source),
      ripeningTable(source),
      measureTable(source),
      tastingTable(source),
    ].filter((table) => table !== null),
    cautions: classCautions(trial, seen, classId).map((caution) =>
      cautionText(
        caution,
        (id) => names.get(id) ?? id,
        (value) => writing.number(value),
      ),
    ),
  };
}
