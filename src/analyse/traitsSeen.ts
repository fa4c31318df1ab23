import type { Share } from '../terms/estimate.ts';
import type { PlantModel } from './plantTypes.ts';
import type { RatingModel } from './ratings.ts';
import type { RankingSeen } from './rankingsSeen.ts';
import type { Ripening } from './ripening.ts';
import type { RipeningModel } from './ripeningModel.ts';

/** What can be seen of a trait in a season, by what was recorded of it. */
export type TraitSeen =
  | {
      /** Yield, fruits or a measure of plants. `ratio`: on the ratio scale, which stage two takes; null for measures. */
      readonly kind: 'plants';
      readonly model: PlantModel;
      readonly ratio: PlantModel | null;
    }
  | { readonly kind: 'rating'; readonly model: RatingModel }
  | { readonly kind: 'answers'; readonly shares: ReadonlyMap<string, Share> }
  /** What members preferred, class by class. */
  | { readonly kind: 'ranking'; readonly classes: readonly RankingSeen[] }
  | {
      /** Days to first ripe fruit, planting by planting; no model where none ripened. */
      readonly kind: 'ripening';
      readonly plantings: readonly Ripening[];
      readonly model: RipeningModel | null;
    };

/** A season's traits by key, `first_ripe` among them, in the order in which they are told. */
export type TraitsSeen = ReadonlyMap<string, TraitSeen>;

interface Holder {
  readonly traits: TraitsSeen;
}

type Kind = TraitSeen['kind'];
type OfKind<K extends Kind> = Extract<TraitSeen, { readonly kind: K }>;

function seenAs<K extends Kind>({ traits }: Holder, key: string, kind: K): OfKind<K> | undefined {
  const seen = traits.get(key);
  return seen?.kind === kind ? (seen as OfKind<K>) : undefined;
}

function allOf<K extends Kind>({ traits }: Holder, kind: K): readonly (readonly [key: string, seen: OfKind<K>])[] {
  return [...traits].flatMap(([key, seen]) => (seen.kind === kind ? [[key, seen as OfKind<K>] as const] : []));
}

/** Model of yield, fruits or a measure; undefined where nothing of it was seen. */
export const plantModel = (seen: Holder, key: string): PlantModel | undefined => seenAs(seen, key, 'plants')?.model;

/** The same on the ratio scale, whatever scale is published; undefined for measures, which have none. */
export const ratioModel = (seen: Holder, key: string): PlantModel | undefined =>
  seenAs(seen, key, 'plants')?.ratio ?? undefined;

/** Model of a rating; undefined where nobody scored it. */
export const ratingModel = (seen: Holder, key: string): RatingModel | undefined => seenAs(seen, key, 'rating')?.model;

/** Shares of "yes" by variety; undefined where nobody was asked. */
export const answersTo = (seen: Holder, key: string): ReadonlyMap<string, Share> | undefined =>
  seenAs(seen, key, 'answers')?.shares;

/** What members preferred of a trait, class by class; empty where nobody was asked. */
export const rankedIn = (seen: Holder, key: string): readonly RankingSeen[] =>
  seenAs(seen, key, 'ranking')?.classes ?? [];

/** The same of every trait, in the order in which they are told. */
export const rankings = (seen: Holder): readonly RankingSeen[] =>
  allOf(seen, 'ranking').flatMap(([, { classes }]) => classes);

/** Days to first ripe fruit, planting by planting; empty where nobody recorded ripening. */
export const ripenings = (seen: Holder): readonly Ripening[] => seenAs(seen, 'first_ripe', 'ripening')?.plantings ?? [];

/** Model of the days to first ripe fruit; null where no planting ripened. */
export const ripeningModel = (seen: Holder): RipeningModel | null =>
  seenAs(seen, 'first_ripe', 'ripening')?.model ?? null;

/** Every model of plants by trait. */
export const plantModels = (seen: Holder): readonly (readonly [key: string, model: PlantModel])[] =>
  allOf(seen, 'plants').map(([key, { model }]) => [key, model]);

/** Every model of a rating by trait. */
export const ratingModels = (seen: Holder): readonly (readonly [key: string, model: RatingModel])[] =>
  allOf(seen, 'rating').map(([key, { model }]) => [key, model]);

/** Every question's shares of "yes" by trait. */
export const answers = (seen: Holder): readonly (readonly [key: string, shares: ReadonlyMap<string, Share>])[] =>
  allOf(seen, 'answers').map(([key, { shares }]) => [key, shares]);
