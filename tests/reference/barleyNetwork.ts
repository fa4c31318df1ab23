import type { GardenClass } from '../../src/analyse/expected/gardenCells.ts';
import { referenceRows } from './read.ts';

const values = referenceRows('gardens/o2_barley_network').map((row) => ({
  variety: row['variety']!,
  garden: row['garden']!,
  season: Number(row['season']),
  theta: Number(row['theta']),
  variance: 0,
}));

/** Reference case o2: six gardens, two seasons, ten varieties. */
export const barleyNetwork = {
  classId: 'all',
  varieties: [...new Set(values.map(({ variety }) => variety))].toSorted(),
  values,
} satisfies GardenClass;
