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
  readonly rows: readonly (readonly string[])[];
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
    rows: varieties.map((own) => [
      name(own.variety),
      String(own.answers),
      say.range(of100(own.beforeMiddle), of100(own.low), of100(own.high)),
    ]),
  };
}
