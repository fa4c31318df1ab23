const plants = (n: string): string => `${n} plant${n === '1' ? '' : 's'}`;
const years = (n: string): string => `${n} year${n === '1' ? '' : 's'}`;

/** Words about crosses and seed. */
export const lines = {
  title: (name: string) => `${name}: from generation to generation`,
  list: 'Crosses',
  listNote: 'Every plant of a young cross is different: what they showed, and which to go on with.',
  generation: (g: string) => `F${g}`,
  backcross: 'BC1',
  plants,
  mixed: (g: string, share: string) =>
    `${g}: ${share} of the genes in which the parents differ are still mixed, on average.`,
  mixedUpTo: (g: string, share: string, most: string) =>
    `${g}: ${share} of the genes in which the parents differ are still mixed, on average; up to ${most} if flowers stood open.`,
  carry: (names: string, each: string, one: boolean) =>
    one ? `Carry ${names} forward; sow for ${each} plants.` : `Carry ${names} forward; sow for ${each} plants of each.`,
  nothingToChoose: 'No plant stood by itself, so there is none to choose.',
  pedigree: 'Where it comes from',
  pedigreeNote:
    'Columns are generations. A line leads from the plant whose seed was saved to its family; dashed where the flower stood open or nobody wrote it down, double where seed was mixed.',
  unknown: 'unknown',
  from: (name: string) => `from ${name}`,
  bulk: (n: string) => `seed of ${n} plants mixed`,
  openFlower: 'open or unknown pollen',
  counted: (list: string) => list,
  plantByPlant: 'Plant by plant',
  fruits: (worn: string) =>
    `Fruit to one scale, by each plant’s own length and width${worn === '' ? '; its colour was not written down' : `, in the colour of: ${worn}`}.`,
  seenIn: (g: string, year: string) => `The ${g} of ${year}: what was seen, and what is expected of its offspring.`,
  plant: 'Plant',
  thePlant: (name: string) => `plant ${name}`,
  seen: (trait: string) => `${trait}, seen`,
  expectedOf: (trait: string) => `${trait}, passed on`,
  trueFor: (trait: string) => `${trait} breeds true`,
  of100: (n: string) => `${n} of 100`,
  seedSaved: 'Seed saved',
  bestOf: 'Truly among the best three',
  wantedShare: 'Offspring as wanted',
  above: (percent: string) => `${percent} above its sisters`,
  below: (percent: string) => `${percent} below its sisters`,
  alike: 'like its sisters',
  unchanged: 'no different',
  atMost: 'What is passed on is the most to be hoped for: selfing keeps all of one part and half of the other.',
  told: 'What its plants tell',
  genes: 'One gene or more?',
  ratio: (counts: string, name: string, others: string) =>
    others === '' ? `${counts} fits ${name}.` : `${counts} fits ${name}, and ${others}.`,
  moreRatios: (n: string) => `${n} other ratio${n === '1' ? '' : 's'}`,
  noRatio: (counts: string) => `${counts} fits none of the ratios that one or two genes give.`,
  moreSeedlings: 'Thirty seedlings of the F2 in a tray would tell more.',
  breeds: (names: string, g: string, state: string, n: string, one: boolean) =>
    one
      ? `Plant ${names} of the ${g} breeds true for ${state} in ${n} of 100.`
      : `Plants ${names} of the ${g} each breed true for ${state} in ${n} of 100.`,
  unlessCrossed: (names: string) => `Seed of plant ${names} was from open flowers: that holds unless it was crossed.`,
  margin: (list: string) => `What is left to each by all that was seen, of 100: ${list}.`,
  noneOfThese: 'none of these',
  countsOnly: (trait: string, counts: string) => `${trait}: ${counts}. Nothing can be told of its genes from that.`,
  next: 'Next year',
  nextPlants: (plant: string, wanted: string, n: string, chance: string) =>
    `Of ${n} plants from ${plant} at least one is ${wanted} in ${chance} of 100.`,
  needed: (plant: string, list: string) => `To have one as wanted, grow of ${plant}: ${list}.`,
  neededFor: (chance: string, n: string) => `${plants(n)} for ${chance} of 100`,
  notWithAny: (chance: string) => `${chance} of 100 not with any number: the plant may lack it`,
  split: (n: string, mothers: string, chance: string) =>
    `${n} plants split over ${mothers} mothers: ${chance} of 100 that at least one is as wanted.`,
  ifUnlinked: 'That holds if the genes are not linked.',
  asGood: (most: string) => `Seed split over up to ${most} of the best plants would do about as well.`,
  uniform: 'Uniform?',
  offTypes: (trait: string, k: string, n: string, upper: string, allowed: string) =>
    `${trait}: ${k} of ${n} ${k === '1' ? 'differs' : 'differ'} from the rest; up to ${upper} of such plants may (one-sided, 95 %). Where one in a hundred is allowed, ${n} plants may have ${allowed}.`,
  twentyPass: 'Twenty plants pass a line with a tenth off-types 39 times in 100.',
  spread: (trait: string, ratio: string, low: string, high: string, shown: boolean) =>
    `${trait}: ${ratio} times (${low} to ${high}) the spread of fixed varieties: ${shown ? 'it varies more than they do' : 'not shown to vary'}.`,
  oneOutlier: 'One outlying plant can do this.',
  noFixed: (trait: string) =>
    `${trait}: too few single plants of fixed varieties stood there, so nothing is said of its spread.`,
  response: 'What last year’s choice gave',
  gained: (trait: string, estimate: string, low: string, high: string, check: string) =>
    `${trait}, set against ${check} in both years: ${estimate} (${low} to ${high}).`,
  outlook: 'Stop or keep?',
  outlooks: {
    stop: 'The wanted plants are to be had in fewer than 5 of 100 from the seed there is: its room is better given to another.',
    drop: 'Stop: its newest family earns no spot beside the fixed varieties, and from the F5 on little more is to be chosen.',
    settled: 'Settled in what was looked at: as wanted, alike, over two seasons and more.',
    'go-on': 'Go on: nothing here says to stop, and it is not settled in what was looked at.',
  },
  choose: {
    within: 'In this generation sisters still differ: choose plants.',
    between: 'From the F4 on sisters are much alike: choose between families.',
  },
  cautions: {
    unknownPollen: 'The pollen parent is not known: do not taste fruit of an ornamental or wild nightshade cross.',
    bitter: 'A bitter fruit of the squash family: spit it out and do not eat it; cooking does not help.',
    hot: 'A parent is hot: any fruit may be. Gloves, nothing near the eyes, no children.',
    sharing: 'Check the local rules before sharing seed of named or hybrid parents; offspring of early seed will vary.',
  },
  sheet: 'Plant list and labels to print',
  sheetTitle: (name: string) => `${name}: plant list and labels`,
  label: { lot: 'Lot', from: 'from', saved: 'saved', pollination: 'flower' },
  stateOf: (trait: string) => trait,
  pollination: {
    open: 'open',
    bagged: 'bagged',
    caged: 'caged',
    hand: 'by hand',
    unknown: 'not known',
  },
  odd: {
    title: 'An odd plant in the packet',
    seen: (k: string, n: string) => `${k} of ${plants(n)} did not look like the rest.`,
    crossed: (n: string, low: string, high: string) =>
      `Of ${n} seeds from open flowers at least one is crossed in ${low} to ${high} of 100.`,
    unknownRate: 'How often this species crosses in open flowers is not known here.',
    followed: 'Seed of it was sown; what came of it:',
    tell: 'A cross, a stray seed and a sport cannot be told apart this year. Bag one of its flowers and sow 11 seeds: were it a cross with the odd look dominant, the usual look returns in 95 of 100.',
  },
  seed: {
    title: 'Seed',
    lead: (n: string, sow: string, short: string) =>
      `${n} lot${n === '1' ? '' : 's'}: ${sow} ready to sow${short === '0' ? '' : `, ${short} to test, to save or to buy`}.`,
    head: [
      'Lot',
      'What grows',
      'What to do',
      'Seeds to sow',
      'Left',
      'Age next spring',
      'Came up',
      'Expected next spring',
    ],
    caption: 'Seed put by',
    age: (n: string) => years(n),
    noAge: 'year not known',
    notTested: 'not tested',
    between: (low: string, high: string) => `${low} to ${high} %`,
    up: (k: string, n: string, range: string) => `${k} of ${n} (${range})`,
    seedsFor: (seeds: string, wanted: string) => `${seeds} for ${plants(wanted)}`,
    tooMany: (wanted: string) => `over 200 for ${plants(wanted)}`,
    act: { sow: 'sow', test: 'test 10 on paper first', save: 'save or buy more', gone: 'gone' },
    certainty: (share: string) =>
      `Seeds to sow give the plants wanted with a chance of ${share}. Old seed without a fresh test is a guess: the range says how wide.`,
    saving: 'Saving seed',
    savingText:
      'Bag a flower or cage the plant first: distance alone is no promise, since bees carry pollen by very different amounts from place to place. Growers’ guides ask for some metres to 15 m between home plots, 90 to 300 m with five plants or more, and seed growers for 400 m between sweet peppers and 1.6 km between hot and sweet. To keep a mixed variety save from 5 to 20 plants; of a line one plant is a choice, not a fault. Crossing never changes this year’s fruit, only what grows from its seed.',
    mothers: (lot: string, n: string, effective: string) =>
      `${lot} is of ${n} plants: as good as ${effective} mothers if all gave as much, as fewer if not.`,
    treated: 'Treated seed is not food: gloves, and out of reach of children.',
    dates: 'When to sow',
    datesNote:
      'From the last frost of the springs in the weather records. The last frost depends on the place: ask neighbours too.',
    datesHead: ['Class', 'Chance of frost after', 'Plant out', 'Sow'],
    few: (list: string) => `Too few springs are recorded for a chance of frost. Last frost seen: ${list}.`,
    soil: (name: string, least: string, dates: string) =>
      `${name}: the soil has had a week of ${least} or more ${dates}.`,
    byThen: (chance: string, day: string) => `by ${day} in ${chance} springs of 100`,
    soilSeen: (name: string, least: string, days: string) =>
      `${name}: the soil had its first week of ${least} or more on ${days}.`,
    noneSeen: 'No spring is recorded well enough to show its last frost.',
    link: 'Seed put by, and when to sow',
    short: (n: string) => `${n} seed lot${n === '1' ? '' : 's'} to test, to save or to buy.`,
  },
};
