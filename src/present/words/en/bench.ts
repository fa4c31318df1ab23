import type { Standing } from '../../../decide/verdict.ts';
import { capital, listed } from './shared.ts';

const NUMBERS =
  'no one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty'.split(
    ' ',
  );

/** A number of things in words up to twenty. */
const count = (n: number): string => NUMBERS[n] ?? String(n);
const s = (n: number): string => (n === 1 ? '' : 's');
const are = (n: number): string => (n === 1 ? 'is' : 'are');

const standing: Readonly<Record<Standing, string>> = {
  keep: 'keep',
  'try-again': 'try again',
  'no-room': 'no room',
  drop: 'drop',
  line: 'young line',
  none: 'no verdict',
};

/** Words of the show bench: front page, season, class, variety, list, handout. */
export const bench = {
  count,
  standing,
  nav: {
    season: (year: string) => `${year} season`,
    next: (year: string) => `Grow in ${year}`,
    varieties: 'Varieties',
    handout: 'Handout',
    about: 'About the figures',
    more: 'More pages',
    weights: 'Set your own weights',
    words: 'Words explained',
    data: 'The data',
    notes: 'Notes on the data',
    seasons: 'All seasons',
  },
  ongoing: {
    title: (year: string) => `${year} so far`,
    planted: (plants: number, kinds: number) =>
      `${plants} plant${s(plants)} of ${count(kinds)} ${kinds === 1 ? 'variety' : 'varieties'} ${plants === 1 ? 'stands' : 'stand'} out.`,
    first: (name: string, day: string) => `The first ripe fruit was of ${name}, on ${day}.`,
    noneRipe: 'No ripe fruit is recorded yet.',
    picked: (amount: string, day: string) => `${amount} picked up to ${day}.`,
    notYet: 'The season is not over: nothing of it enters a figure or a verdict yet.',
    notYetWith: (year: string) =>
      `The season is not over: nothing of it enters a figure or a verdict yet, and the advice for ${year} stands as it was in winter.`,
    caption: (className: string) => `${className}: what stands and what was picked`,
    head: ['variety', 'plants', 'planted out', 'first ripe', 'picked to date'],
    notYetRipe: 'not yet',
    variety: (year: string, plants: number, ripe: string, picked: string) =>
      `In ${year} so far: ${[`${plants} plant${s(plants)}`, ...(ripe === '' ? ['no ripe fruit yet'] : [`first ripe on ${ripe}`]), ...(picked === '' ? [] : [`${picked} picked`])].join(', ')}; none of this is in the figures below.`,
  },
  isNew: 'new',
  /** A fruit for those who do not see it. */
  fruit: (name: string, colour: string, size: string | null) =>
    `${name}${colour === '' ? '' : `, ${colour}`}${size === null ? '' : `, ${size} long`}`,
  emptyPlace: 'room for a newcomer',
  front: {
    headline: (year: string, total: number, keep: number, tries: number) => {
      if (total === 0) return `${year}: nothing on the list yet`;
      const parts = [
        ...(keep > 0 ? [`${count(keep)} to keep`] : []),
        ...(tries > 0 ? [`${count(tries)} to try again`] : []),
      ];
      return `${capital(count(total))} to grow in ${year}: ${parts.join(', ')}`;
    },
    scale: (year: string) => `Drawn to one scale, as measured in ${year}.`,
    scaleUnmeasured: 'Fruit nobody measured is drawn in a usual size.',
    planting: 'The planting list',
    toHandout: 'The handout, two sides',
    spots: (className: string, n: number) => `${className}, ${count(n)} spot${s(n)}`,
    free: (n: number) => `${capital(count(n))} spot${s(n)} left for newcomers.`,
    key: (simulations: string) =>
      `: the next season was played ${simulations} times from all our records, and this is how often the variety earned one of its spots.`,
    keyKeep: (from: string) => `in ${from} of 100 or more.`,
    keyTry: 'below that: on the list because nothing better is known yet.',
    how: 'How this is worked out',
    picked: (when: string) => `Most was picked in the week of ${when}`,
    pickedNote: (plants: string, total: string) =>
      `Usable weight picked a week, ${plants === '1' ? 'from the one plant' : `all ${plants} plants`}: ${total} in all`,
    pickedLabel: (from: string, to: string, most: string, when: string) =>
      `Weight picked in each week from ${from} to ${to}; most in the week of ${when}, ${most}.`,
    toSeason: (year: string) => `The ${year} season, variety by variety`,
    packet: (late: number, early: number, all: number) =>
      late === 0 && early === 0
        ? `${all === 1 ? 'The packet’s' : `All ${count(all)} packets’`} days are borne out, or cannot be told`
        : late >= early
          ? `${capital(count(late))} of ${count(all)} ripened later than ${late === 1 ? 'its packet says' : 'their packets say'}`
          : `${capital(count(early))} of ${count(all)} ripened sooner than ${early === 1 ? 'its packet says' : 'their packets say'}`,
    packetNote: (level: string) => `Days from planting out to the first ripe fruit; line: ${level} interval`,
    packetHead: 'packet',
    seenHead: 'seen',
    packetKey: '┃ packet   ● seen',
    late: (days: string) => `${days} days late`,
    early: (days: string) => `${days} days early`,
    asClaimed: 'as claimed',
    cannotTell: 'cannot tell',
    surprise: 'The season’s surprise',
    newKeep: (name: string) => `${name} is new, and goes straight in`,
    allAbout: (name: string) => `All about ${name}`,
    every: (year: string) => `Every variety of ${year}`,
    allEver: (n: number) => `${n === 1 ? 'The one variety' : `All ${n} varieties`} of all seasons, in one list`,
    sure: 'How sure is this?',
    sureText: (level: string) =>
      `A few plants each tell a lot about some things and little about others. Where a figure has a bracket, the truth is likely to lie inside it: ${level} of 100 brackets made like this hold it.`,
    winter: (year: string, listed_: number, grown: number, earned: number) =>
      grown === 0
        ? `Of the ${count(listed_)} on the list for ${year} none was grown, so last winter’s advice cannot be judged.`
        : `Last winter’s list for ${year} named ${count(listed_)}; ${count(grown)} ${grown === 1 ? 'was' : 'were'} grown, and ${earned === 0 ? 'none' : count(earned)} of them earned ${earned === 1 ? 'its' : 'a'} spot.`,
  },
  season: {
    title: (year: string) => `The ${year} season`,
    crosses: (list: string) => `crosses: ${list}`,
    crossOf: (name: string, plants: number) => `${name} (${plants === 1 ? '1 plant' : plants})`,
    facts: (varieties: number, fresh: number, plants: string, days: number) =>
      [
        `${varieties} ${varieties === 1 ? 'variety' : 'varieties'}${fresh > 0 ? `, ${fresh} of them new` : ''}`,
        `${plants} plant${plants === '1' ? '' : 's'}`,
        ...(days > 0 ? [`${days} picking day${s(days)}`] : []),
      ].join(' · '),
    sown: (date: string) => `sown ${date}`,
    plantedOut: (date: string) => `planted out ${date}`,
    lastDay: (date: string) => `last recorded ${date}`,
    contents: 'On this page',
    glance: 'The season at a glance',
    glanceTitle: 'Week by week',
    glanceNote:
      'Bars: usable weight picked a week, a plant, in the ripe fruit’s colour; each class to itself. ▲ first ripe fruit of a typical plant, its interval.',
    glanceCaption: (year: string) => `Pickings week by week, first ripe fruit and yield of every variety in ${year}`,
    tallest: (weight: string) => `tallest bar ${weight}`,
    firstRipe: 'first ripe',
    aPlant: 'a plant',
    warmth: 'Warmth',
    warmthNote: 'mean night to mean day',
    rain: 'Rain',
    readKey: 'How to read the next charts.',
    readKeyText: (level: string) =>
      `The dot is the best estimate, the line its ${level} interval, a thin tick one plant. Two varieties with a letter in common cannot be told apart in this trial (Tukey-Kramer).`,
    beds: 'Where they stood',
    allFigures: (className: string) => `All figures of the ${className.toLowerCase()}`,
    fold: (n: number) => `All ${n} varieties`,
  },
  matrix: {
    order: (trait: string) => `In order of ${trait}`,
    yield: (unit: string) => `Yield, ${unit} a plant`,
    fruits: 'Fruits a plant',
    rating: (trait: string, from: string, to: string) => `${capital(trait)}, ${from} to ${to}`,
    firstRipe: 'First ripe fruit',
    more: 'more is better →',
    less: '← less is better',
    sooner: '← sooner is better',
    day: (day: string, range: string) => `, day ${day}${range === '' ? '' : ` (${range})`}`,
    caption: (className: string, year: string, level: string) =>
      `${className} in ${year}: what was seen, each with its ${level} interval`,
  },
  say: {
    most: (names: readonly string[], figure: string) => `${listed(names)} gave most, ${figure} a plant.`,
    mostFruits: (names: readonly string[], figure: string) => `${listed(names)} gave most, ${figure} fruits a plant.`,
    tasted: (names: readonly string[], figure: string, to: string) =>
      `${listed(names)} tasted best, ${figure} of ${to}.`,
    rated: (names: readonly string[], trait: string, figure: string, to: string) =>
      `${listed(names)} had the best ${trait}, ${figure} of ${to}.`,
    ripe: (names: readonly string[], date: string) =>
      `${listed(names)} ${names.length === 1 ? 'was' : 'were'} ripe first, about ${date}.`,
    only: (name: string) => `${name} was the only one of its class, so there is nothing to compare it with.`,
    nothing: 'Nothing was recorded that could be compared.',
    behind: (trait: string, names: readonly string[], top: string, n: number) =>
      `In ${trait} ${listed(names)} ${are(n)} behind ${top} beyond chance.`,
    many: (n: number) => `${count(n)} others`,
    noneApart: (trait: string) => `No difference in ${trait} is beyond chance.`,
  },
  fresh: {
    title: 'New beside returning',
    news: 'new',
    returning: 'returning',
    gave: (percent: string, isMore: boolean) =>
      `New ones gave ${percent} % ${isMore ? 'more' : 'less'} than returning ones`,
    ripened: (percent: string, isMore: boolean) =>
      `New ones took ${percent} % ${isMore ? 'longer' : 'less time'} to ripen than returning ones`,
    points: (trait: string, points: string, isMore: boolean) =>
      `New ones had ${points} points ${isMore ? 'more' : 'less'} in ${trait} than returning ones`,
    alike: (trait: string) => `New and returning ones are alike in ${trait}`,
    range: (low: string, high: string) => `(${low} to ${high})`,
    less: (percent: string) => `${percent} % less`,
    more: (percent: string) => `${percent} % more`,
    clear: 'beyond chance',
    luck: 'it may be luck',
  },
  klass: {
    asCsv: 'The figures behind the charts, as CSV:',
    figures: 'All figures and tests',
    pairs: 'Which pairs differ beyond chance',
    pairsNote: (trait: string) =>
      `● clear: they differ in ${trait} beyond chance (Tukey-Kramer). ○ not clear: it may be luck.`,
    pairsMany: 'With so many varieties the pairs are in the file figures.csv.',
    clear: 'clear',
    notClear: 'not clear',
    figuresTitle: (className: string, year: string) => `${className} ${year}: all figures`,
    back: (className: string) => `Back to the ${className.toLowerCase()}`,
    verdicts: (year: string) => `For ${year}`,
  },
  variety: {
    kinds: { 'open-pollinated': 'open-pollinated', hybrid: 'hybrid', line: 'a line', unknown: '' },
    grownIn: (n: number) => (n === 0 ? 'not grown yet' : `grown in ${count(n)} season${s(n)}`),
    firstOf: (n: number, className: string, year: string, what: readonly string[]) =>
      `Of the ${count(n)} ${className.toLowerCase()} of ${year} it ${listed(what)}.`,
    bits: { yield: 'gave most', flavour: 'tasted best', first_ripe: 'was ripe first' } as Readonly<
      Record<string, string>
    >,
    verdict: {
      keep: (year: string) => `Keep it in ${year}`,
      'try-again': (year: string) => `Try it again in ${year}`,
      'no-room': (year: string) => `Good, but no room in ${year}`,
      drop: (year: string) => `Drop it in ${year}`,
    },
    onList: 'It is on the list because nothing better is known yet.',
    notOnList: (n: number): string =>
      n === 1
        ? 'It is not on the list: its spot goes to another or to a newcomer.'
        : 'It is not on the list: the spots go to others or to newcomers.',
    odds: (spots: number, share: string) =>
      `It earned ${spots === 1 ? 'the one spot' : `one of the ${count(spots)} spots`} in ${share} next seasons played from all our records.`,
    how: 'How',
    why: { keep: 'Why keep it', drop: 'Why drop it', other: 'What speaks for it and against it' },
    whyNote: (isCheck: boolean, bar: string) =>
      `What to expect of it in an average season, beside ${isCheck ? `${bar}, the check variety` : 'an average newcomer to its class'}.`,
    firm: 'The verdict stays if any one goal counts half or double.',
    counts: (weight: string) => `counts ${weight}`,
    itself: (name: string, level: string) => `${name} with its ${level} interval`,
    others: 'the others',
    average: 'an average newcomer',
    check: (name: string) => name,
    expected: 'expected',
    against: 'against ← score → for',
    points: (points: string) => `${points} points`,
    goal: {
      noYield: 'Gave nothing when last grown',
      yield: (size: number) =>
        Math.abs(size) < 1
          ? 'Gives about as much'
          : `Gives ${Math.abs(size) < 5 ? 'a little ' : ''}${size > 0 ? 'more' : 'less'}`,
      first_ripe: (size: number, days: string) =>
        Math.abs(size) < 1 || days === '0'
          ? 'Ripens about when others do'
          : `Ripens ${days} day${days === '1' ? '' : 's'} ${size > 0 ? 'sooner' : 'later'}`,
      flavour: (size: number) =>
        Math.abs(size) < 1
          ? 'Tastes about as good'
          : `Tastes ${Math.abs(size) < 5 ? 'a little ' : ''}${size > 0 ? 'better' : 'worse'}`,
      ranked: (trait: string, size: number) =>
        Math.abs(size) < 1
          ? `${capital(trait)}: put before a middling one about as often`
          : `${capital(trait)}: put before a middling one ${Math.abs(size) < 5 ? 'a little ' : ''}${size > 0 ? 'more' : 'less'} often`,
      other: (trait: string, size: number) =>
        Math.abs(size) < 1
          ? `${capital(trait)}: about as good`
          : `${capital(trait)}: ${Math.abs(size) < 5 ? 'a little ' : ''}${size > 0 ? 'better' : 'worse'}`,
    },
    beside: (value: string) => `set against ${value}`,
    bySeason: 'Season by season',
    bySeasonNote: (isMany: boolean) =>
      `Filled: seen, with its interval. Hollow: expected in an average season. ${isMany ? 'Broad and faint: its class, from the lowest to the highest; darker: the middle half of it.' : 'Faint: the others of its class.'}`,
    nextMark: (year: string) => `${year}?`,
    picked: (year: string) => `Picked in ${year}`,
    pickedNote: (total: string) => `Usable weight a plant, week by week: ${total} in all.`,
    howMany: 'How many of how many',
    howManyNote: (level: string) => `In brackets the ${level} interval (Wilson).`,
    seeds: (n: number) => `seed${s(n)} came up`,
    cropped: (n: number) => `plant${s(n)} gave fruit`,
    ripe: (n: number) => `plant${s(n)} had ripe fruit by the end`,
    offType: (n: number) => `plant${s(n)} ${n === 1 ? 'was' : 'were'} off type`,
    hot: (n: number) => `plant${s(n)} had unexpectedly hot fruit`,
    again: (n: number) => `taster${s(n)} would grow it again`,
    packet: 'The packet’s claims',
    claimDays: (claimed: string, seen: string, verdict: string) =>
      `It claims ${claimed} days to the first ripe fruit; seen ${seen}: ${verdict}.`,
    besides: (className: string) => `Beside the other ${className.toLowerCase()}`,
    besidesNote: (name: string, year: string) =>
      `${name} in ${year} compared with each. ● clear: beyond chance in this trial (Tukey-Kramer). ○ not clear: it may be luck.`,
    comparedWith: 'compared with',
    itGave: 'it gave',
    itsRating: (trait: string) => `its ${trait} was`,
    itWasRipe: 'it was ripe',
    more: (percent: string) => `${percent} % more`,
    less: (percent: string) => `${percent} % less`,
    times: (times: string) => `${times} times as much`,
    same: 'the same',
    higher: (points: string) => `${points} higher`,
    lower: (points: string) => `${points} lower`,
    sooner: (days: string) => `${days} day${days === '1' ? '' : 's'} sooner`,
    later: (days: string) => `${days} day${days === '1' ? '' : 's'} later`,
    sameDay: 'at the same time',
    clear: 'clear',
    notClear: 'not clear',
    all: 'All figures',
    seen: 'Seen, season by season, with intervals and n',
    expectedTable: 'What the verdict rests on',
    plants: 'Its plants',
    asCsv: 'The same figures as CSV',
    plantNotes: 'Written down of its plants',
    lifeSize: 'Life size in print.',
    notGrown: 'It has not been grown in this trial yet.',
  },
  varieties: {
    title: 'All varieties',
    note: (n: number) => `${n === 1 ? 'The one variety' : `All ${n} varieties`} ever grown, by class, A to Z.`,
    filter: 'Show only names with',
    none: 'No variety has this in its name.',
    figures: (level: string) =>
      `Yield, first ripe fruit and the tasters’ score are of its newest season; intervals of ${level} are on its page.`,
    lastGrown: (year: string) => `last grown ${year}`,
    never: 'never grown',
  },
  next: {
    title: (year: string) => `What to grow in ${year}`,
    lead: (spots: number, named: number) =>
      `${capital(count(named))} ${named === 1 ? 'variety' : 'varieties'} for ${count(spots)} spot${s(spots)}, in order of share; the broken line is where the spots end.`,
    ends: 'here the spots end',
    more: (n: number) =>
      n === 1
        ? 'one more stands in the table below and on its own page'
        : `${n} more stand in the table below and on their own pages`,
    how: 'How it is counted',
    figures: 'Figures and tables',
    advice: 'In words',
    winter: 'Last winter’s advice, checked',
  },
  handout: {
    title: (year: string) => `What to grow in ${year}`,
    lead: (total: number, spots: number, keep: number, tries: number) =>
      `${capital(count(total))} ${total === 1 ? 'variety' : 'varieties'} for ${count(spots)} spot${s(spots)}: ${keep === 0 ? 'none' : count(keep)} to keep, ${tries === 0 ? 'none' : count(tries)} to try again. Fruit drawn to one scale.`,
    key: (simulations: string) =>
      `Each filled seed is five of a hundred next seasons, played ${simulations} times from all records, in which the variety earned a spot. Above the broken line it is on the list.`,
    did: (year: string) => `What they did in ${year}`,
    didNote: 'A plant’s usable yield, its first ripe fruit and the tasters’ score.',
    between: 'likely between',
    likely: (level: string) =>
      `“Likely between”: of 100 such ranges ${level} hold the truth. Two ranges that overlap may still differ: the letters on the season’s page say so. Each variety had a few plants in one summer.`,
    plants: 'plants',
    yield: 'yield',
    firstRipe: 'first ripe',
    surprises: 'Surprises',
  },
};
