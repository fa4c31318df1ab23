import type { ClassCase } from '../../decide/cases.ts';
import type { WeightsData } from '../../decide/weightsPage.ts';
import { nameOf, of100 } from './source.ts';
import type { AdviceSource } from './source.ts';
import { given } from '../../numerics/element.ts';

/** A row of the table with the club's own weights; earned and above are counts of simulated seasons. */
export interface WeightsRow {
  readonly variety: string;
  readonly name: string;
  readonly verdict: string;
  readonly earned: number;
  readonly above: number;
  readonly shareText: string;
  readonly aboveText: string;
  readonly isListed: boolean;
}

export interface WeightsContent {
  readonly cases: readonly ClassCase[];
  readonly advice: ReadonlyMap<string, readonly WeightsRow[]>;
  /** Stage two's figures and the words the script needs, as JSON. */
  readonly json: string;
}

/** What the script of the page reads. */
export interface WeightsDocument extends WeightsData {
  readonly language: string;
  readonly names: Readonly<Record<string, string>>;
  readonly words: {
    readonly verdict: Readonly<Record<string, string>>;
    /** `{n}` stands for the number. */
    readonly of100: string;
    readonly moreThan99: string;
    readonly fewerThan1: string;
    readonly yes: string;
    readonly no: string;
    readonly none: string;
    readonly counted: string;
  };
}

/** Ten digits are enough for the same counts, and half as long to load. */
const shorter = (_key: string, value: unknown): unknown =>
  typeof value === 'number' ? Number(value.toPrecision(10)) : value;

/** Stage two's figures, and the club's own verdicts, for the page where readers set their own weights. */
export function weightsContent(source: AdviceSource): WeightsContent {
  const { next, trial, writing } = source;
  const say = writing.words;
  // Verdicts over gardens rest on figures of single gardens, which are not published.
  const isOverGardens = (trait: string): boolean => (next.forecasts.get(trait)?.gardens ?? null) !== null;
  const advised = next.classes.filter(
    ({ advice, case: own }) => advice !== null && !own.goals.some(({ trait }) => isOverGardens(trait)),
  );
  const cases = advised.map((outcome) => outcome.case);
  const needed = new Set(cases.flatMap(({ goals, must }) => [...goals, ...must].map(({ trait }) => trait)));
  const traits = [...next.forecasts].filter(([trait]) => needed.has(trait)).map(([, { own }]) => own);
  const { simulations } = trial.settings.verdicts;
  const document: WeightsDocument = {
    settings: trial.settings.verdicts,
    traits,
    classes: cases,
    language: trial.settings.language,
    names: Object.fromEntries(
      cases.flatMap(({ competitors }) => competitors.map(({ id }) => [id, nameOf(source, id)])),
    ),
    words: {
      verdict: say.nextSeason.verdict,
      of100: say.nextSeason.of100('{n}'),
      moreThan99: say.nextSeason.moreThan99,
      fewerThan1: say.nextSeason.fewerThan1,
      yes: say.yourWeights.yes,
      no: say.yourWeights.no,
      none: say.yourWeights.none,
      counted: say.yourWeights.counted(writing.number(simulations)),
    },
  };
  const advice = new Map(
    advised.map(({ classId, advice: own }) => [
      classId,
      given(own).varieties.map((one) => ({
        variety: one.variety,
        name: nameOf(source, one.variety),
        verdict: say.nextSeason.verdict[one.verdict],
        earned: one.share * simulations,
        above: one.above * simulations,
        shareText: of100(one.share, source),
        aboveText: of100(one.above, source),
        isListed: given(own).list.includes(one.variety),
      })),
    ]),
  );
  return { cases, advice, json: JSON.stringify(document, shorter) };
}
