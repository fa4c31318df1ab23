import type { SeasonSeen } from '../../analyse/seen.ts';
import type { Standing } from '../../decide/verdict.ts';
import { isLine } from '../../terms/trial.ts';
import type { Trial, Variety } from '../../terms/trial.ts';
import { leadPhoto } from '../../records/content.ts';
import type { Content } from '../../records/content.ts';
import type { MadePhoto } from '../growersWords.ts';
import { of100 } from '../nextSeason/source.ts';
import type { AdviceSource } from '../nextSeason/source.ts';
import { fruitOf } from './fruit.ts';
import type { Fruit } from './fruit.ts';

/** The club's photo of a variety, with the grower's caption. */
export interface StandPhoto {
  readonly made: MadePhoto;
  readonly caption: string;
}

/** The photos that stand for varieties: of each the first in the words about it. */
export function standPhotos(content: Content, photos: ReadonlyMap<string, MadePhoto>): ReadonlyMap<string, StandPhoto> {
  return new Map(
    [...content].flatMap(([page, text]): readonly (readonly [string, StandPhoto])[] => {
      const lead = page.startsWith('varieties/') ? leadPhoto(text) : null;
      const made = lead ? photos.get(lead.name) : undefined;
      return lead && made ? [[page.slice('varieties/'.length), { made, caption: lead.caption }]] : [];
    }),
  );
}

/** A variety as it stands on the bench. */
export interface Stand {
  readonly variety: Variety;
  readonly fruit: Fruit;
  /** Null where its words have none. */
  readonly photo: StandPhoto | null;
  readonly standing: Standing;
  /** Share of simulated seasons in which it earns a spot; null without a verdict. */
  readonly share: number | null;
  readonly shareText: string | null;
  readonly isListed: boolean;
  /** The last season in which it was grown; null where it never was. */
  readonly lastGrown: number | null;
}

/** Every variety as it stands, by id. */
export function standsOf(
  trial: Trial,
  seasons: readonly SeasonSeen[],
  advice: AdviceSource | null,
  photos: ReadonlyMap<string, StandPhoto>,
): ReadonlyMap<string, Stand> {
  const advised = new Map(
    advice?.next.classes.flatMap((outcome) =>
      (outcome.advice?.varieties ?? []).map((own) => [own.variety, { own, list: outcome.advice!.list }] as const),
    ),
  );
  return new Map(
    trial.varieties.map((variety): [string, Stand] => {
      const found = advised.get(variety.id);
      const grown = seasons.filter(({ varieties }) => varieties.some((own) => own.variety.id === variety.id));
      return [
        variety.id,
        {
          variety,
          fruit: fruitOf(variety, seasons, trial),
          photo: photos.get(variety.id) ?? null,
          standing: found ? found.own.verdict : isLine(variety) ? 'line' : 'none',
          share: found?.own.share ?? null,
          shareText: found && advice ? of100(found.own.share, advice) : null,
          isListed: found?.list.includes(variety.id) ?? false,
          lastGrown: grown.at(-1)?.season.year ?? null,
        },
      ];
    }),
  );
}
