import type { VarietyAdvice } from '../../decide/adviseVariety.ts';
import type { Verdict } from '../../decide/verdict.ts';
import type { ClassOutcome } from '../../decide/nextSeason.ts';
import { pointsOf } from '../../decide/points.ts';
import { otherUnits, plainUnits } from '../units.ts';
import { traitFacts } from '../../terms/traits.ts';
import { goalWords } from '../pages/goalWords.ts';
import { barValue, expectedIn, of100 } from './source.ts';
import type { AdviceSource } from './source.ts';
import { first, given, keyed, nth } from '../../numerics/element.ts';

/** A reason as results.json gives it. */
export interface ReasonWords {
  readonly trait: string;
  readonly effect: number;
  readonly text: string;
}

/** Everything said of one variety's verdict. */
export interface AdviceWords {
  readonly variety: string;
  readonly verdict: Verdict;
  readonly share: number;
  /** `93 of 100`. */
  readonly shareText: string;
  /** The verdict with its share, what it rests on where that is one-sided first. */
  readonly sentence: string;
  readonly reasons: readonly ReasonWords[];
  /** The largest reason on the verdict's side, and a larger one against it. */
  readonly chief: readonly string[];
  /** Doubts and what would settle them. */
  readonly more: readonly string[];
}

/**
 * A value and the bar's with so many digits as tell them apart, at most two more than their intervals warrant.
 *
 * @returns  both as they are first written where even these do not tell them apart
 */
function toldApart(
  write: (more: number) => readonly [value: string, bar: string],
): readonly [value: string, bar: string] {
  const isApart = ([value, bar]: readonly [string, string]): boolean =>
    plainUnits(value) !== plainUnits(bar) && otherUnits(value) !== otherUnits(bar);
  return [0, 1, 2].map(write).find(isApart) ?? write(0);
}

function reasonWords(source: AdviceSource, outcome: ClassOutcome, own: VarietyAdvice): readonly ReasonWords[] {
  const { words, number, trait: name } = source.writing;
  const isBar = outcome.case.bar === 'check' && own.variety === outcome.case.checkVariety;
  // The bar is rounded as the class's first variety is, so that it reads the same beside each.
  const leader = nth(given(outcome.advice).varieties, 0).variety;
  const gaveNothing = keyed(outcome.basis, own.variety).gaveNothing !== null;
  return own.reasons.map(({ trait, effect }) => {
    const expected = expectedIn(source.next, trait, outcome.classId, own.variety);
    const bar = barValue(source, outcome, trait);
    if (!expected || bar === null || isBar) return { trait, effect, text: words.nextSeason.isBar };
    const unit = traitFacts(trait, source.trial.settings.traits).unit;
    const like = expectedIn(source.next, trait, outcome.classId, leader) ?? expected;
    const [value, barText] = toldApart((more) => [
      source.writing.alike(expected.estimate, expected, unit, more),
      source.writing.alike(bar, like, unit, more),
    ]);
    const points = `${effect < 0 ? '−' : '+'}${number(Math.abs(effect), 1)}`;
    const isCheck = outcome.case.bar === 'check';
    const heading = goalWords(source, trait, effect, { estimate: expected.estimate, bar, gaveNothing });
    const facts = [name(trait), value, barText, points, isCheck] as const;
    const say = words.nextSeason;
    if (Math.abs(effect) < 0.05) return { trait, effect, text: say.reasonEqual(name(trait), value) };
    if (plainUnits(value) === plainUnits(barText)) return { trait, effect, text: say.reasonSpread(...facts) };
    const goal = first(given(outcome.advice).goals, (one) => one.trait === trait);
    // By the values alone it could be the other way: points end where the range does.
    const isOwn = Math.sign(pointsOf(goal.range, expected.estimate) - pointsOf(goal.range, bar)) === Math.sign(effect);
    return {
      trait,
      effect,
      text: isOwn ? say.reason(heading, value, barText, points, isCheck) : say.reasonCut(...facts),
    };
  });
}

/** The limits that decided the verdict, or kept it from being a keep: they come first. */
function limitReasons(source: AdviceSource, outcome: ClassOutcome, own: VarietyAdvice): readonly ReasonWords[] {
  if (!own.decidedByLimit) return [];
  const { words, percent, number, trait: name } = source.writing;
  const say = words.nextSeason;
  const counted = (outcome.limits.get(own.variety) ?? []).flatMap(({ trait, k, n, limit, outcome: found }) => {
    const facts = [trait === 'off_type', number(k), number(n), percent(limit, 0)] as const;
    const text = found === 'missed' ? say.limitMissed(...facts) : say.limitOpen(...facts);
    return found === 'kept' ? [] : [{ trait, effect: 0, text }];
  });
  const drawn = outcome.case.must.flatMap(({ trait }, m) =>
    nth(own.missed, m) > 0
      ? [{ trait, effect: 0, text: say.limitDrawn(name(trait), of100(nth(own.missed, m), source)) }]
      : [],
  );
  return [...counted, ...drawn];
}

function chiefReasons(source: AdviceSource, own: VarietyAdvice, reasons: readonly ReasonWords[]): readonly string[] {
  const [largest] = reasons;
  if (!largest) return [];
  const isFor = own.verdict === 'keep' || own.leans === 'up';
  const side = reasons.find(({ effect }) => (isFor ? effect >= 0.05 : effect <= -0.05));
  // Against the bar nothing speaks against a variety for which others leave no room.
  if (!side || side === largest || own.verdict === 'no-room') return [largest.text];
  return [side.text, source.writing.words.nextSeason.against(largest.text)];
}

/** What would turn the verdict, and what would settle it. */
function doubts({ writing }: AdviceSource, own: VarietyAdvice, isListed: boolean): readonly string[] {
  const say = writing.words.nextSeason;
  const turns = own.fragile.map(({ trait, factor, verdict }) =>
    say.fragile(writing.trait(trait), factor === 2, say.verdict[verdict]),
  );
  const lines = [turns.length > 0 ? say.fragileAll(turns) : say.firm];
  if (own.settles.length > 0) {
    const most = nth(own.settles, -1).chance;
    lines.push(
      most < 0.1
        ? say.notSoon(isListed)
        : say.settles(own.settles.map(({ plants, chance }) => say.settlesWith(writing.percent(chance, 0), plants))),
    );
    if (most >= 0.1 && most < 0.5) lines.push(say.notByPlants);
  }
  return lines;
}

/** Borrowed errors and values that stand for something else. */
function provisos({ next, writing }: AdviceSource, outcome: ClassOutcome, variety: string): readonly string[] {
  const say = writing.words.nextSeason;
  const values = outcome.case.goals.flatMap(({ trait }) =>
    keyed(next.forecasts, trait)
      .values.values.filter((value) => value.variety === variety)
      .map((value) => ({ trait, ...value })),
  );
  const years = (mark: string): readonly string[] => [
    ...new Set(values.filter((value) => value.mark === mark).map(({ year }) => String(year))),
  ];
  const borrowed = [
    ...new Set(values.filter(({ mark }) => mark === 'borrowed' || mark === 'assumed').map(({ trait }) => trait)),
  ];
  return [
    ...(borrowed.length > 0 ? [say.assumed(borrowed.map(writing.trait))] : []),
    ...(years('nothing-picked').length > 0 ? [say.nothingPicked(years('nothing-picked'))] : []),
    ...(years('later-than').length > 0 ? [say.laterThan(years('later-than'))] : []),
  ];
}

/** A variety's verdict in words. */
export function adviceWords(source: AdviceSource, outcome: ClassOutcome, own: VarietyAdvice): AdviceWords {
  const { writing, seasons } = source;
  const say = writing.words.nextSeason;
  const basis = keyed(outcome.basis, own.variety);
  const lastYear = nth(seasons, -1).season.year;
  const { said, gaveNothing, neverRipe } = basis;
  const rests = [
    said?.answer === 'no' ? say.saidNo(said.n, String(said.year)) : null,
    gaveNothing === null ? null : say.gaveNothing(String(gaveNothing)),
    neverRipe === null || gaveNothing !== null ? null : say.neverRipe(String(neverRipe)),
    basis.onlyContainers ? say.onlyContainers : null,
    basis.onlyTopped ? say.onlyTopped : null,
    basis.lastGrown < lastYear ? say.notGrown(String(basis.lastGrown)) : null,
  ].filter((text) => text !== null);
  const verdict = say.share(say.verdict[own.verdict], of100(own.share, source));
  const notes = [
    own.isWanted && said ? say.wanted(said.seasons) : null,
    own.leans === null ? null : say.leans[own.leans],
    own.isOnTheEdge && !own.isWanted ? say.edge : null,
    own.untested ? say.untested : null,
    given(outcome.advice).varieties.length === 1 ? say.alone : null,
  ].filter((text) => text !== null);
  const limits = limitReasons(source, outcome, own);
  const ofTraits = reasonWords(source, outcome, own);
  return {
    variety: own.variety,
    verdict: own.verdict,
    share: own.share,
    shareText: of100(own.share, source),
    sentence: `${[...rests, writing.words.capital([verdict, ...notes].join('; '))].join(' ')}.`,
    reasons: [...limits, ...ofTraits],
    chief: [...limits.map(({ text }) => text), ...chiefReasons(source, own, ofTraits)],
    more: [
      ...doubts(source, own, given(outcome.advice).list.includes(own.variety)),
      ...provisos(source, outcome, own.variety),
    ],
  };
}
