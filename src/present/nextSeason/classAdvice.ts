import { addresses } from '../../terms/addresses.ts';
import type { ClassAdvice } from '../../decide/adviseClass.ts';
import type { LastWinter } from '../../decide/lastWinter.ts';
import type { ClassOutcome } from '../../decide/nextSeason.ts';
import type { Limit } from '../../terms/traits.ts';
import type { TableWords } from '../tables.ts';
import { traitFacts } from '../../terms/traits.ts';
import { expectedIn, nameOf, of100, quantityOf, whenceOf } from './source.ts';
import type { AdviceSource, Whence } from './source.ts';
import { adviceWords } from './varietyAdvice.ts';
import type { AdviceWords } from './varietyAdvice.ts';
import { keyed } from '../../numerics/element.ts';

/** Everything the pages say of a class's next season. */
export interface ClassAdviceWords {
  readonly classId: string;
  readonly name: string;
  /** What counts, the bar, the spots. */
  readonly rule: readonly string[];
  /** The list and what it is expected to give; empty without advice. */
  readonly list: readonly string[];
  readonly verdicts: TableWords | null;
  readonly score: TableWords | null;
  readonly varieties: readonly AdviceWords[];
  readonly excluded: readonly { readonly variety: string; readonly text: string }[];
  readonly lastWinter: readonly string[];
}

function ruleWords(source: AdviceSource, outcome: ClassOutcome): readonly string[] {
  const { words, number, trait } = source.writing;
  const say = words.nextSeason;
  const { advice } = outcome;
  if (!advice) return [say.empty];
  const goals = advice.goals.map((goal) =>
    outcome.goalsAreDefault
      ? trait(goal.trait)
      : say.goalWeight(trait(goal.trait), number(goal.weight, goal.weight % 1 === 0 ? 0 : 1)),
  );
  const { bar, checkVariety } = outcome.case;
  return [
    outcome.goalsAreDefault ? say.defaultGoals(goals) : say.goals(goals),
    ...(outcome.countsOnly ? [say.countsOnly] : []),
    ...(outcome.unrecorded.length > 0 ? [say.unrecorded(outcome.unrecorded.map(trait))] : []),
    bar === 'check' && checkVariety !== null
      ? say.bar.check(nameOf(source, checkVariety))
      : outcome.barFellBack
        ? say.bar.fellBack
        : say.bar.newcomer,
    ...outcome.case.must.map(({ trait: key, atMost, atLeast }) => {
      const limit = (value: number | null): string | null => (value === null ? null : quantityOf(source, key, value));
      return say.must(trait(key), limit(atLeast), limit(atMost));
    }),
    say.spots(advice.spots),
    ...(advice.varieties.length === 1 ? [say.one] : []),
    ...(outcome.mostlySurvivors ? [say.survivors] : []),
  ];
}

function listWords(source: AdviceSource, advice: ClassAdvice): readonly string[] {
  const { words, number } = source.writing;
  const say = words.nextSeason;
  const names = advice.list.map((id) => nameOf(source, id));
  const left = advice.newcomerSpots;
  return [
    say.list(
      names,
      advice.spots,
      names.length === 1 ? of100(advice.expectedRight, source) : number(advice.expectedRight, 1),
    ),
    ...(left > 0 ? [say.left(left)] : []),
    ...(advice.gain === null || Number(advice.gain.toFixed(1)) <= 0 ? [] : [say.gain(number(advice.gain, 1))]),
  ];
}

function verdictTable(source: AdviceSource, outcome: ClassOutcome, advice: ClassAdvice): TableWords {
  const { writing, trial, next } = source;
  const say = writing.words.nextSeason;
  const rows = advice.varieties.map((own) => [
    { text: nameOf(source, own.variety), page: addresses.variety(own.variety) },
    say.verdict[own.verdict],
    of100(own.share, source),
    of100(own.above, source),
    String(keyed(outcome.basis, own.variety).seasons),
    ...advice.goals.map(({ trait }) => {
      const expected = expectedIn(next, trait, outcome.classId, own.variety);
      return expected ? writing.interval(expected, traitFacts(trait, trial.settings.traits).unit) : '';
    }),
  ]);
  return {
    caption: say.table.caption(writing.percent(trial.settings.interval)),
    head: [
      say.table.variety,
      say.verdictHead,
      say.table.share,
      say.table.above,
      say.table.seasons,
      ...advice.goals.map(({ trait }) => writing.words.capital(writing.trait(trait))),
    ],
    rows,
  };
}

function scoreTable(source: AdviceSource, classId: string, advice: ClassAdvice): TableWords {
  const { writing } = source;
  const say = writing.words.nextSeason;
  const limit = (trait: string, value: Limit, whence: Whence): string => {
    const text =
      typeof value === 'number'
        ? quantityOf(source, trait, value)
        : value.map((x) => quantityOf(source, trait, x)).join(' / ');
    return `${text} (${{ set: say.given, class: say.fromClass, scale: say.ofScale }[whence]})`;
  };
  return {
    caption: say.goalsTable.caption,
    head: [say.goalsTable.trait, say.goalsTable.weight, say.goalsTable.bad, say.goalsTable.good, say.goalsTable.part],
    rows: advice.goals.map((goal) => [
      writing.words.capital(writing.trait(goal.trait)),
      writing.number(goal.weight, goal.weight % 1 === 0 ? 0 : 1),
      limit(goal.trait, goal.range.bad, whenceOf(source.trial, classId, goal, 'bad')),
      limit(goal.trait, goal.range.good, whenceOf(source.trial, classId, goal, 'good')),
      writing.percent(goal.partOfVariance, 0),
    ]),
  };
}

function winterWords({ writing }: AdviceSource, own: LastWinter | undefined): readonly string[] {
  if (!own) return [];
  const say = writing.words.nextSeason.lastWinter;
  const { keeps, list } = own;
  return [
    say.keeps(keeps.advised.length, keeps.grown.length, keeps.earned.length),
    say.list(list.advised.length, list.grown.length, list.earned.length),
  ];
}

/** A class's next season in words. */
export function classAdviceWords(source: AdviceSource, outcome: ClassOutcome): ClassAdviceWords {
  const { advice, classId, excluded } = outcome;
  const say = source.writing.words.nextSeason;
  const varieties = advice?.varieties.map((own) => adviceWords(source, outcome, own)) ?? [];
  return {
    classId,
    name: source.trial.settings.classes.get(classId)?.name ?? classId,
    rule: ruleWords(source, outcome),
    list: advice ? listWords(source, advice) : [],
    verdicts: advice ? verdictTable(source, outcome, advice) : null,
    score: advice ? scoreTable(source, classId, advice) : null,
    varieties,
    excluded: excluded.map(({ variety, why }) => ({ variety, text: say.whyNot[why] })),
    lastWinter: winterWords(
      source,
      source.winters.find((one) => one.classId === classId),
    ),
  };
}
