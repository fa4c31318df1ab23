/** `a`, `a and b`, `a, b and c`. */
export function listed(names: readonly string[]): string {
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

/** First letter as a capital. */
export function capital(text: string): string {
  return text.replace(/^./u, (letter) => letter.toUpperCase());
}

export const traits = {
  yield: 'yield',
  early_yield: 'early yield',
  fruits: 'fruits',
  first_ripe: 'days to first ripe fruit',
  again: 'would be grown again',
  heat: 'heat',
  flavour: 'flavour',
} as Readonly<Record<string, string>>;

export const frame = {
  skip: 'To the content',
  pages: 'Pages',
  morePages: 'More pages',
  description: (title: string) =>
    `${title}: what each variety did, how sure that is, and what to grow again. Figures with their intervals, charts and open data.`,
  feed: 'News of the trial',
  toUs: 'Show ounces and inches',
  toMetric: 'Show grams and centimetres',
  marks: 'Arrow keys walk through the marks.',
  footer: 'Made with Keeprow from the trial’s own records. Figures are for these plants in these seasons.',
  nav: {
    front: 'Front page',
    seasons: 'All seasons',
    data: 'Data',
    notes: 'Notes on the data',
    glossary: 'Glossary',
    methods: 'Methods',
  },
};

export const status = { new: 'new', returning: 'returning' };

export const figure = {
  notRecorded: 'not recorded',
  notReached: 'not reached',
  notKnown: 'not known',
  noneRipened: 'none ripened',
  allLost: (n: string) => `all ${n} lost by accident`,
  notTasted: 'not tasted',
  n: (n: string) => `n ${n}`,
  kOfN: (k: string, n: string) => `${k} of ${n}`,
  interval: (middle: string, low: string, high: string) => `${middle} (${low} to ${high})`,
  range: (low: string, high: string) => `${low} to ${high}`,
  units: { d: 'days' } as Readonly<Record<string, string>>,
  /** The same of one of them. */
  unitsOfOne: { d: 'day' } as Readonly<Record<string, string>>,
  p: (p: string) => `p ${p}`,
  pBelow: (p: string) => `below ${p}`,
  f: (value: string, df1: string, df2: string, p: string) => `F ${value} on ${df1} and ${df2} df, ${p}`,
  noF: 'F not to be had',
  cv: (cv: string) => `CV ${cv} % a plant`,
  lsd: (value: string) => `LSD ${value}`,
  mean: (value: string) => `Mean of the varieties ${value}`,
  letters: (level: string) => `Varieties that share a letter are not separated in this trial (Tukey-Kramer, ${level}).`,
};

export const tables = {
  sameAsTable: 'The same as a table',
  csv: 'The figures as CSV',
  variety: 'Variety',
  status: 'Status',
  season: 'Season',
  plantsSetOut: 'Plants set out',
  plantings: 'Plantings',
  entries: 'Entries',
  kind: 'Kind',
  kinds: { 'open-pollinated': 'open-pollinated', hybrid: 'hybrid', line: 'line', unknown: '' },
  seedFrom: 'Seed from',
  lostByAccident: (n: number) => `(${n} lost by accident)`,
  yields: (level: string) => `Usable yield per plant set out, with ${level} intervals; n counts plantings`,
  weight: 'Weight',
  weightTo: (date: string) => `Weight to ${date}`,
  earlyCv: (date: string, cv: string, isWide: boolean) =>
    `Weight to ${date}: CV ${cv} % a plant${isWide ? '; with so much spread differences are hard to see, and its intervals are somewhat too narrow' : ''}.`,
  fruits: 'Fruits',
  culls: 'Culls',
  power: (plantings: string, difference: string) =>
    `With ${plantings} planting${plantings === '1' ? '' : 's'} a variety, letters tell a difference of ${difference} apart in 4 of 5 such seasons; smaller ones stay hidden.`,
  powerRatio: (plantings: string, times: string) =>
    `With ${plantings} planting${plantings === '1' ? '' : 's'} a variety, letters tell one that gives ${times} times another apart in 4 of 5 such seasons; smaller differences stay hidden.`,
  ripening: (isSown: boolean, level: string) =>
    `Days from ${isSown ? 'sowing' : 'planting out'} to the first ripe fruit, with ${level} intervals`,
  ripeByEnd: 'Ripe by the end',
  model: 'Model',
  medianSeen: 'Median of these plantings',
  medianDegreeDays: 'Median, degree days',
  claim: 'Packet’s claim',
  claimed: (range: string, verdict: string) => `${range}: ${verdict}`,
  claimedMeasure: (value: string, verdict: string) => `claimed ${value}: ${verdict}`,
  claims: {
    inside: 'as claimed',
    'seen-lower': 'below the claim',
    'seen-higher': 'above the claim',
    'cannot-tell': 'not enough to tell',
  },
  claimsOfDays: {
    inside: 'as claimed',
    'seen-lower': 'earlier than the claim',
    'seen-higher': 'later than the claim',
    'cannot-tell': 'not enough to tell',
  },
  countsPlantings: 'n counts plantings.',
  looks: (days: number) =>
    `${days === 0 ? 'The day on which a planting was found ripe counts as the day it ripened.' : `A planting found ripe may have been ripe for up to ${days === 1 ? 'a day' : `${days} days`}; the model counts that, the median does not.`} The interval is the model’s: a few plantings alone cannot bound their median.`,
  degreeDays: (base: string, cap: string | null, method: number) =>
    `Degree days over ${base} °C${cap === null ? '' : `, capped at ${cap} °C`}, method ${method} of McMaster & Wilhelm (1997).`,
  measures: (level: string) => `Measurements, means of plantings with ${level} intervals`,
  tasting: (level: string) => `Tasting, with ${level} intervals; n counts tasters`,
  ratingScale: (trait: string, from: string, to: string) => `${trait}, ${from} to ${to}`,
  again: 'would grow it again',
  claimedHeat: 'Claimed heat',
  shu: (value: string) => `${value} SHU`,
  shuUpTo: (value: string) => `up to ${value} SHU`,
  shuFrom: (value: string) => `${value} SHU or more`,
  onePerson: 'one person’s taste',
  tasters: (n: number) => `${n} tasters`,
  kendall: (w: string) => `Kendall’s W ${w}`,
  theseTasters: 'The intervals are for these tasters, not for people at large.',
  heatNote: 'Claimed heat is in Scoville units of dry fruit; tasters’ points cannot be turned into them.',
};
