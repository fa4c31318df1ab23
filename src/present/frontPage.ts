import { ripeningModel } from '../analyse/traitsSeen.ts';
import { judgeClaim } from '../analyse/claims.ts';
import type { SeasonComparisons } from '../analyse/compareSeason.ts';
import type { SeasonSeen } from '../analyse/seen.ts';
import type { Verdict } from '../decide/verdict.ts';
import { nameOf, of100 } from './nextSeason/source.ts';
import type { AdviceSource } from './nextSeason/source.ts';

/** The season in one screen: what to grow again, what surprised, what is still open. */
export interface FrontPage {
  readonly lead: string;
  readonly again: readonly string[];
  readonly surprised: readonly string[];
  readonly open: readonly string[];
}

/** Varieties of a verdict, a line a class. */
function byClass(source: AdviceSource, verdict: Verdict, withShare: boolean): readonly string[] {
  const { next, trial, writing } = source;
  const { front } = writing.words;
  return next.classes.flatMap(({ classId, advice }) => {
    const names = (advice?.varieties ?? [])
      .filter((own) => own.verdict === verdict)
      .map(({ variety, share }) => {
        const name = nameOf(source, variety);
        return withShare ? front.perhaps(name, of100(share, source)) : name;
      });
    const className = trial.settings.classes.get(classId)?.name ?? classId;
    return names.length > 0 ? [front.inClass(className, names.join(', '))] : [];
  });
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

/** What the front page says of the last season. */
export function frontPage(source: AdviceSource, compared: SeasonComparisons): FrontPage {
  const { seasons, writing } = source;
  const seen = seasons.at(-1)!;
  const { front } = writing.words;
  const count = (n: number): string => writing.number(n);
  const drop = byClass(source, 'drop', false);
  const noRoom = byClass(source, 'no-room', false);
  return {
    lead: front.lead(
      count(seen.varieties.length),
      count(seen.varieties.filter(({ status }) => status === 'new').length),
      count(seen.varieties.reduce((sum, { plantsSetOut }) => sum + plantsSetOut, 0)),
      String(seen.season.year),
    ),
    again: byClass(source, 'keep', true),
    surprised: [...newKeeps(source, seen), ...yieldSurprises(source, compared), ...ripeningSurprises(source, seen)],
    open: [
      ...byClass(source, 'try-again', true),
      ...(noRoom.length > 0 ? [front.noRoom(noRoom.join(' ').replace(/\.$/, ''))] : []),
      ...(drop.length > 0 ? [front.gone(drop.join(' ').replace(/\.$/, ''))] : []),
    ],
  };
}
