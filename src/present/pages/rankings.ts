import { FEWEST_MEMBERS } from '../../analyse/rankingsSeen.ts';
import type { RankingSeen } from '../../analyse/rankingsSeen.ts';
import { nameLookup } from '../../terms/trial.ts';
import type { Trial } from '../../terms/trial.ts';
import type { Writing } from '../numbers.ts';
import { of100 } from './crossWords.ts';

/** What members preferred, as it is read. */
export interface RankingWords {
  readonly title: string;
  readonly sentences: readonly string[];
  readonly caption: string;
  readonly head: readonly string[];
  /** Empty where too few answered to tell of. */
  readonly rows: readonly RankingRow[];
}

/** A variety's row; its answers in parts only where as many gave them as may be told of. */
export interface RankingRow {
  readonly variety: string;
  readonly cells: readonly string[];
  readonly parts: {
    readonly counts: readonly [first: number, between: number, last: number];
    readonly text: string;
  } | null;
}

export function rankingWords(
  { trait, members, sent, varieties }: RankingSeen,
  trial: Trial,
  writing: Writing,
): RankingWords {
  const say = writing.words.rankings;
  const name = nameLookup(trial.varieties);
  const [best] = varieties;
  return {
    title: say.title(writing.trait(trait)),
    sentences: [
      say.lead(String(members), String(sent)),
      ...(best
        ? [say.best(name(best.variety), of100(best.beforeMiddle), of100(best.low), of100(best.high))]
        : [members < FEWEST_MEMBERS ? say.few : say.alike]),
      ...(members < sent ? [say.silent] : []),
    ],
    caption: say.caption(writing.percent(trial.settings.interval)),
    head: say.head,
    rows: varieties.map((own): RankingRow => {
      const { answers, first, last } = own;
      const counts = [first, answers - first - last, last] as const;
      return {
        variety: own.variety,
        cells: [
          name(own.variety),
          String(answers),
          say.range(of100(own.beforeMiddle), of100(own.low), of100(own.high)),
        ],
        parts: answers < FEWEST_MEMBERS ? null : { counts, text: counts.join(' · ') },
      };
    }),
  };
}
