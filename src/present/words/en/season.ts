import { listed } from './shared.ts';

export const season = {
  title: (year: string) => `Season ${year}`,
  place: 'Place',
  varieties: 'Varieties',
  counts: (varieties: string, fresh: string, plants: string, plantings: string) =>
    `${varieties}, ${fresh} of them new; ${plants} plants in ${plantings} plantings`,
  sown: 'Sown',
  plantedOut: 'Planted out',
  lastDay: 'Last day of recording',
  beds: 'Beds',
  blocks: 'Blocks',
  block: { block: 'in the model', 'stands-in': 'containers and ground in the model', none: 'none in the model' },
  lost: 'Lost by accident',
  weather: 'Weather',
  weatherText: (days: string, mean: string, nights: string, cold: string, rain: string) =>
    `${days} days recorded: mean ${mean}, ${nights} nights under ${cold}, ${rain} of rain.`,
  one: 'One season: these figures say what these plants did in it.',
  together: (rho: string, classes: readonly string[]) =>
    `Plants of a variety stood together${classes.length === 0 ? '' : ` (${listed(classes)})`}, so variety and place cannot be told apart fully; intervals are widened for a spot correlation of ${rho}.`,
  toHandout: 'The handout for the club evening',
};

export const seasons = {
  title: 'All seasons',
  every: 'Every variety ever grown',
  varieties: (n: string) => `${n} ${n === '1' ? 'variety' : 'varieties'}`,
  none: 'No season is recorded yet.',
  inFull: (year: string) => `The ${year} season in full`,
};

export const fruit = {
  title: (name: string, length: string) => `Fruit to scale; the longest mean is ${name}’s, ${length}`,
  measure: (isInches: boolean) =>
    `From mean length and width of the season; a mark is ${isInches ? 'an inch' : 'a centimetre'}. Colours: ripe, with the unripe one at the stem.`,
  length: 'Length',
  width: 'Width',
  ripe: 'Ripe colour',
};

export const map = {
  title: (year: string) => `Where the plantings stood in ${year}`,
  measure: 'As recorded, not to scale; broken outline: lost.',
  bed: 'Bed',
  row: 'Row',
  column: 'Column',
  planting: 'Planting',
};
