import { sownOf } from '../../terms/record.ts';
import { everySeason } from '../../terms/trial.ts';
import { wishOf } from './asked.ts';
import type { PlanSource } from './asked.ts';
import type { SeedsAhead } from './planned.ts';
import { chanceOfPlants, seedsNeeded } from './seeds.ts';

/** Seed for the plants of a variety: what came up of it so far, what is at hand. */
export function seedsAhead(source: PlanSource, variety: string, plants: number): SeedsAhead {
  const { trial } = source;
  const seasons = everySeason(trial);
  const lots = trial.lots.filter((lot) => lot.variety === variety && !lot.isGone);
  const batches = seasons.flatMap(({ seedBatches }) => seedBatches.filter((own) => own.variety === variety));
  const counted = {
    germinated: batches.reduce((sum, own) => sum + own.germinated, 0),
    of: batches.reduce((sum, own) => sum + own.seeds, 0),
  };
  const needed = seedsNeeded(plants, counted);
  const left = lots.flatMap(({ id, seeds }) => (seeds === null ? [] : [Math.max(0, seeds - sownOf(id, seasons))]));
  const atHand = wishOf(source, variety)?.seeds ?? (left.length > 0 ? left.reduce((sum, own) => sum + own, 0) : null);
  return {
    ...needed,
    atHand,
    chanceAtHand: atHand === null ? null : chanceOfPlants(plants, atHand, counted),
    buy: Math.max(0, needed.seeds - (atHand ?? 0)),
    lots: lots.map(({ id }) => id),
    wholeLot: lots.find(({ id, seeds }) => seeds !== null && seeds - sownOf(id, seasons) >= needed.seeds)?.id ?? null,
  };
}
