import { ripeningModel } from '../analyse/traitsSeen.ts';
import { judgeClaim } from '../analyse/claims.ts';
import type { SeasonComparisons } from '../analyse/compareSeason.ts';
import type { SeasonSeen } from '../analyse/seen.ts';
import { nameOf, of100 } from './nextSeason/source.ts';
import type { AdviceSource } from './nextSeason/source.ts';
import { nth } from '../numerics/element.ts';

/** What the front page and the handout tell of the last season. */
export interface FrontPage {
  readonly surprised: readonly string[];
}

function ripeningSurprises({ trial, writing }: AdviceSource, seen: SeasonSeen): readonly string[] {
  const { front, figure } = writing.words;
  return seen.varieties.flatMap(({ variety }) => {
    const claim = variety.claimDays;
    const estimate = ripeningModel(seen)?.estimates.get(variety.id);
    if (!claim || !estimate || trial.settings.firstRipeFrom !== 'transplanted') return [];
    const verdict = judgeClaim(claim, estimate);
    if (verdict !== 'seen-higher' && verdict !== 'seen-lower') return [];
    const claimed = claim[0] === claim[1] ? String(claim[0]) : figure.range(String(claim[0]), String(claim[1]));
    const say = verdict === 'seen-higher' ? front.later : front.earlier;
    return [say(variety.name, writing.interval(estimate, 'd'), claimed)];
  });
}

function yieldSurprises(source: AdviceSource, compared: SeasonComparisons): readonly string[] {
  const { number, words } = source.writing;
  return [...(compared.get('yield')?.values() ?? [])].flatMap(({ againstCheck }) =>
    (againstCheck?.varieties ?? []).flatMap(({ variety, estimate, low, high }) => {
      if (source.trial.settings.scale !== 'ratio' || low === null || high === null || low <= 1) return [];
      const text = words.figure.interval(number(estimate, 2), number(low, 2), number(high, 2));
      return words.front.more(nameOf(source, variety), nameOf(source, againstCheck!.checkVariety), text);
    }),
  );
}

function newKeeps(source: AdviceSource, seen: SeasonSeen): readonly string[] {
  const isNew = new Set<string>(
    seen.varieties.filter(({ status }) => status === 'new').map(({ variety }) => variety.id),
  );
  return source.next.classes.flatMap(({ advice }) =>
    (advice?.varieties ?? [])
      .filter(({ variety, verdict }) => verdict === 'keep' && isNew.has(variety))
      .map(({ variety, share }) => source.writing.words.front.newKeep(nameOf(source, variety), of100(share, source))),
  );
}

/** What stood out in the last season: newcomers that are kept, yields beyond the check's, packets that were wrong. */
export function frontPage(source: AdviceSource, compared: SeasonComparisons): FrontPage {
  const seen = nth(source.seasons, -1);
  return {
    surprised: [...newKeeps(source, seen), ...yieldSurprises(source, compared), ...ripeningSurprises(source, seen)],
  };
}
