import type { Verdict } from '../../../decide/verdict.ts';
import type { NoCandidate } from '../../../decide/candidates.ts';
import { listed, capital } from './shared.ts';

const verdict: Readonly<Record<Verdict, string>> = {
  keep: 'keep',
  drop: 'drop',
  'no-room': 'no room',
  'try-again': 'try again',
};

const whyNot: Readonly<Record<NoCandidate, string>> = {
  retired: 'retired',
  'early-line': 'a line before F5: advice there is on plants, not on the line',
  'followed-by-descendant': 'a later generation of it was grown',
  untried: 'nothing that counts was recorded of it: it is still untried',
};

/** What an expected value is set against. */
const besides = (isCheck: boolean): string => (isCheck ? 'the check variety' : 'an average one');

export const nextSeason = {
  title: (year: string) => `Next season, ${year}`,
  nav: 'Next season',
  intro: (simulations: string, seed: string) =>
    `${simulations} next seasons were drawn from everything recorded so far (seed ${seed}). A variety earns a spot in one of them if it is among the best of its class for the spots there are, and at least as good as the bar. How often it does is its share.`,
  average:
    'Expected values are a variety’s own in an average season. Good and bad years as such are not in the intervals; they hardly touch the comparison of varieties.',
  independent: 'Traits are drawn independently of one another, given the records: an assumption.',
  verdict,
  verdictHead: 'Verdict',
  goals: (goals: readonly string[]) => `What counts: ${listed(goals)}.`,
  goalWeight: (trait: string, weight: string) => `${trait} (weight ${weight})`,
  defaultGoals: (goals: readonly string[]) => `No goals are set for this class: ${listed(goals)} count equally.`,
  unrecorded: (traits: readonly string[]) =>
    `${capital(listed(traits))} would count too, but nobody recorded it in this class; it is not in the score.`,
  bar: {
    newcomer: 'The bar is an untried variety in the middle of the class.',
    check: (name: string) => `The bar is ${name}, the check variety.`,
    fellBack: 'The check variety has no records here, so the bar is an untried variety in the middle of the class.',
  },
  spots: (n: number) => (n === 1 ? 'There is one spot.' : `There are ${n} spots.`),
  survivors:
    'Most varieties here were kept for two seasons or more: where only survivors were recorded, the class looks better than a newcomer is, and newcomers look too good.',
  one: 'One variety alone cannot be compared: its share says no more than the toss of a coin.',
  empty: 'Nothing that counts was recorded in this class, so there is no verdict.',
  list: (names: readonly string[], spots: number, right: string) =>
    names.length === 0
      ? 'No variety is worth a spot more than a newcomer would be.'
      : `The list for ${spots === 1 ? 'the spot' : `the ${spots} spots`}${names.length === 1 ? '' : ', in order of share'}: ${listed(names)}. ${names.length === 1 ? `It earns its spot in ${right} simulated seasons` : `Expect about ${right} of these ${names.length} to earn their spot`}.`,
  left: (n: number) => (n === 1 ? 'One spot is left for a newcomer.' : `${n} spots are left for newcomers.`),
  gain: (points: string) =>
    `The list is expected to score ${points} points of 100 more a spot than varieties in the middle of their class.`,
  table: {
    caption: (level: string) =>
      `Verdicts in order of share; expected values in an average season with ${level} prediction intervals`,
    variety: 'Variety',
    share: 'Earns a spot',
    above: 'Reaches the bar',
    seasons: 'Seasons',
  },
  of100: (n: string) => `${n} of 100`,
  moreThan99: 'more than 99 of 100',
  fewerThan1: 'fewer than 1 of 100',
  share: (word: string, share: string) => `${word}: earns a spot in ${share} simulated seasons`,
  countsOnly: 'The number of fruits stands in for their weight, which was hardly recorded.',
  wanted: (seasons: number) =>
    `kept because everyone who answered wanted to grow it again, ${seasons} seasons in a row, and there is a spot for it`,
  saidNo: (n: number, year: string) =>
    n === 1
      ? `The one person who answered in ${year} would not grow it again.`
      : `None of the ${n} who answered in ${year} would grow it again.`,
  gaveNothing: (year: string) => `In ${year} it gave nothing.`,
  neverRipe: (year: string) => `In ${year} none of it ripened.`,
  limitMissed: (isOffType: boolean, k: string, n: string, limit: string) =>
    `${k} of ${n} were ${isOffType ? 'off type' : 'hot'}: more than the limit of ${limit} leaves room for.`,
  limitOpen: (isOffType: boolean, k: string, n: string, limit: string) =>
    `${k} of ${n} were ${isOffType ? 'off type' : 'hot'}: too few were looked at to show that the limit of ${limit} is kept.`,
  limitDrawn: (trait: string, share: string) => `${capital(trait)} misses its limit in ${share} simulated seasons.`,
  leans: { up: 'leaning to keep', down: 'leaning to drop' },
  edge: 'just at the limit',
  untested: 'the records do not show that it keeps a limit that must not be missed, so it cannot be a keep',
  alone: 'alone in its class: no more than the toss of a coin',
  must: (trait: string, least: string | null, most: string | null) =>
    `Must not be missed: ${trait}${least === null ? '' : ` at least ${least}`}${most === null ? '' : ` at most ${most}`}.`,
  seenNothing: 'nothing picked',
  seenNoneRipe: 'none ripened',
  onlyContainers: 'Known from containers only.',
  onlyTopped: 'Known from topped plants only.',
  notGrown: (year: string) => `Last grown in ${year}; it stands on its older seasons.`,
  reason: (heading: string, value: string, bar: string, points: string, isCheck: boolean) =>
    `${heading}: ${value}, ${besides(isCheck)} ${bar} (${points} points).`,
  against: (text: string) => `Against that: ${text}`,
  reasonCut: (trait: string, value: string, bar: string, points: string, isCheck: boolean) =>
    `${capital(trait)}: ${value}, ${besides(isCheck)} ${bar}; but what lies outside the range that counts makes it ${points} points.`,
  reasonSpread: (trait: string, value: string, _bar: string, points: string, isCheck: boolean) =>
    `${capital(trait)}: ${value}, as ${besides(isCheck)}; how far it may lie from that makes it ${points} points.`,
  reasonEqual: (trait: string, value: string) =>
    `${capital(trait)}: ${value}, no different from what it is set against.`,
  isBar: 'It is the check variety itself.',
  fragile: (trait: string, isDoubled: boolean, word: string) =>
    `with ${trait} counting ${isDoubled ? 'twice as much' : 'half as much'} it would be “${word}”`,
  fragileAll: (parts: readonly string[]) => `The verdict is fragile: ${listed(parts)}.`,
  firm: 'No weight, halved or doubled, turns the verdict.',
  settles: (chances: readonly string[]) => `One more season would settle it with chance ${listed(chances)}.`,
  settlesWith: (chance: string, plants: number) => `${chance} (${plants === 1 ? '1 plant' : `${plants} plants`})`,
  notByPlants: 'Even six plants settle it in fewer than half of such seasons: it takes several.',
  notSoon: (isListed: boolean) =>
    `Neither more plants nor one more season is likely to settle it: ${isListed ? 'it is about as good as a newcomer would be, so grow it if you like it' : 'give its spot to a newcomer, unless you like it'}.`,
  own: (percent: string) =>
    `${percent} of its distance from the class comes from its own records, the rest is pulled to the class.`,
  assumed: (traits: readonly string[]) =>
    `The error of ${listed(traits)} is borrowed or assumed in at least one season.`,
  nothingPicked: (years: readonly string[]) =>
    `In ${listed(years)} nothing was picked: it enters as half the smallest plant of the class, with a wide margin.`,
  laterThan: (years: readonly string[]) =>
    `In ${listed(years)} none ripened: it enters as later than the season’s end.`,
  excluded: 'Not in the competition',
  whyNot,
  goalsTable: {
    caption:
      'Points run straight from bad to good; the score is the weighted mean of the points. A part below 0 speaks against the rest',
    trait: 'What counts',
    weight: 'Weight',
    bad: '0 points',
    good: '100 points',
    part: 'Part of the score’s variance',
  },
  given: 'as set',
  fromClass: 'from the class',
  ofScale: 'the end of its scale',
  lastWinter: {
    head: (year: string) => `What the same rule would have said before ${year}`,
    keeps: (advised: number, grown: number, earned: number) =>
      advised === 0
        ? 'It would have kept none for certain.'
        : `Of ${advised} it would have kept, ${grown} ${grown === 1 ? 'was' : 'were'} grown and ${earned} earned a spot by what was seen.`,
    list: (advised: number, grown: number, earned: number) =>
      `Of ${advised} on its list, ${grown} ${grown === 1 ? 'was' : 'were'} grown and ${earned} earned a spot.`,
    caution: 'What was seen carries its own error: a good variety can miss its spot in one season.',
  },
  charts: {
    shares: (word: string, names: readonly string[], year: string) =>
      names.length === 0
        ? `Nothing in this class is a sure keep for ${year}`
        : `${capital(word)} in ${year}: ${listed(names)}`,
    sharesMeasure: (simulations: string, keep: string, drop: string) =>
      `Bars: of 100 simulated seasons, those in which a variety earns a spot (of ${simulations} drawn). Thin line: reaches the bar. Lines at ${drop} and ${keep}: drop below, keep from.`,
    sharesAxis: 'of 100 simulated seasons',
    expected: (trait: string, names: readonly string[], others: number) =>
      `Expected ${trait} in an average season: ${names.join(', ')}${others === 0 ? '' : `, and ${others} more`}`,
    expectedMeasure: (axis: string, level: string) =>
      `${axis}; marks: expected in an average season, bars: ${level} prediction intervals, grey ticks: seasons as seen. Thin line: the pull from its own mean toward the class. Diamond: new in the last season. Circle: returning.`,
    newcomer: 'newcomer',
    status: 'Status',
    expectedHead: (axis: string, level: string) => `${axis}, expected (${level} prediction interval)`,
    seenHead: 'Seen, season by season',
    ownHead: 'From its own records',
  },
  spread: (trait: string, between: string, season: string) =>
    `${capital(trait)}: varieties differ by ${between}, one variety from season to season by ${season} (standard deviations).`,
  advice: (year: string) => `Advice for ${year}`,
  inFull: (year: string) => `The advice for ${year} in full`,
  noAdvice: (why: string) => `No verdict: ${why}.`,
};

export const yourWeights = {
  title: 'Your own weights',
  nav: 'Your own weights',
  intro:
    'What matters to you may not be what mattered to the club. Move the weights and the spots, and the same simulated seasons are counted again here in the page.',
  noScript: 'Without JavaScript this page shows the verdicts with the club’s own weights.',
  class: (name: string) => `${name}: weights and spots`,
  weightOf: (trait: string) => `Weight of ${trait}`,
  spots: 'Spots',
  reset: 'Back to the club’s weights',
  link: 'A link that carries these weights',
  none: 'Every weight is 0: nothing counts, so there is no verdict.',
  counted: (simulations: string) => `Counted over ${simulations} simulated seasons with these weights.`,
  caption: 'Verdicts with these weights',
  listHead: 'On the list',
  yes: 'yes',
  no: '',
};
