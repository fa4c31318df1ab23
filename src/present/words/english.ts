import type { Verdict } from '../../decide/verdict.ts';
import type { Settings } from '../../terms/settings.ts';
import { variable as v } from './methods.ts';
import type { Method } from './methods.ts';
import type { NoCandidate } from '../../decide/candidates.ts';
import type { ProblemCode } from '../../terms/problemCodes.ts';

/** Texts of every problem: what is wrong, what was expected, how to mend it. */
export type ProblemTexts = Readonly<Record<ProblemCode, readonly [problem: string, expected: string, mend: string]>>;

/** `a`, `a and b`, `a, b and c`. */
function listed(names: readonly string[]): string {
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

/** First letter as a capital. */
function capital(text: string): string {
  return text.replace(/^./u, (letter) => letter.toUpperCase());
}

/** Every method behind the figures, with a trial's settings in the text. */
function methods(settings: Settings): readonly Method[] {
  const rho = settings.spotCorrelation;
  const { baseC, capC, method } = settings.degreeDays;
  return [
    {
      id: 'units',
      title: 'What is counted once',
      words: [
        'The unit of every comparison is a planting: one plant, or plants of one variety recorded together. Several pickings of a planting, several fruits measured from it, and several scores of one taster for one variety are not replicates; they are added up or averaged to their unit first.',
        'Figures here are seen: one season, these plants, nothing borrowed from other seasons.',
      ],
      assumes: 'Plantings are alike but for variety and place.',
      limits:
        'All plants of a variety in one bed, topped beside untopped, or pots beside open ground cannot be taken apart afterwards; the season page names it where it is seen.',
      source: 'Hurlbert (1984) Ecol. Monogr. 54:187, on pseudo-replication',
    },
    {
      id: 'yield',
      title: 'Yield and fruits per plant',
      words: [
        'Usable weight (or number) of a planting over the season, ripe and green, divided by the plants set out. Plants that died count. Plants lost by accident do not. A planting without a picking yielded 0 only where it was lost, removed early, noted as giving nothing, or every picking of the season was recorded; else its yield is not known.',
        'A picking that was counted but not weighed takes the mean fruit weight of its planting; a planting with more than a quarter of its fruits unweighed has no yield. Of a figure written as below a limit (&lt;5) half the limit counts (common practice, no source); a trace counts as picked and adds nothing; over a limit (&gt;20) leaves that figure of the planting unknown; no mean is made with a measure or score of which only a limit is known. Nothing recorded (an empty cell, NA) is never a zero, and 0 always is one.',
        settings.scale === 'ratio'
          ? 'This trial uses the ratio scale: quasi-likelihood with a logarithmic link, variety + block, one fit a season over all classes. The variance of a weight grows with the square of its mean; that of a number with its mean and, where plants differ more than chance lets them, with the square of it: by variety, so that few large fruits and many small ones are each judged by their own. Without blocks the estimate is total over plants, exactly. A class of which a planting gave nothing has no blocks in its model, with a note, nor have early weights: on this scale a block that gave nothing has no estimate.'
          : 'This trial uses the difference scale: weighted least squares, variety + block, one fit a season over all classes.',
        `Plants side by side are alike. A planting of ${v('w')} plants has the variance below with a spot correlation ${v('ρ')} of ${rho}, a setting; where the plants of a variety stand together, the squared standard error of a variety, from the textbook’s variance, is multiplied by what its ${v('n')} plants there ask for. They stand together in a class that neither blocks nor rows and columns show apart, unless the settings say so. With ${v('ρ')} = 0 both would be the textbook’s.`,
      ],
      assumes: `One spread for all varieties and classes on the scale used${settings.scale === 'ratio' ? ', for numbers one way in which it grows with their size' : ''}; blocks add up without interaction. A block enters when every planting has one and each class hangs together through them; else where plants stand (ground, bed, pot, bag) takes its place where it connects a class.`,
      limits: `With single plants of high spread the intervals are somewhat too narrow: see “How often the intervals hold” below. A variety of which nothing was picked has the estimate 0 without an interval.${settings.scale === 'difference' ? ' The LSD is printed only where replication is equal and F is significant.' : ''}`,
      source:
        'McCullagh & Nelder (1989) Generalized Linear Models ch. 8-9; Gomez & Gomez (1984) Statistical Procedures for Agricultural Research ch. 2; Searle, Speed & Milliken (1980) Am. Stat. 34:216 for means over blocks; Liang & Zeger (1986) Biometrika 73:13 for the variance; Breslow (1984) Appl. Stat. 33:38 for the dispersion of numbers',
    },
    {
      id: 'comparisons',
      title: 'Comparisons within a class',
      words: [
        'All pairs: Tukey-Kramer. Two varieties share a letter if and only if they are not separated in this trial; a is the best. Each class is lettered by itself, with the season’s pooled spread.',
        'Against the check variety: Dunnett, two-sided, with the correlations that the comparisons really have. The intervals hold jointly.',
        'New against returning: the mean of the class’s new varieties less that of its returning ones, each variety counting once. It speaks of these varieties, not of new varieties in general.',
        'F: whether the varieties of the class differ at all (Wald, pooled error).',
      ],
      assumes: 'As for the estimates.',
      limits:
        'Not separated does not mean equal: with few plants large differences stay hidden, and the foot of the yield table says which.',
      source:
        'Tukey (1953); Kramer (1956) Biometrics 12:307; Piepho (2004) J. Comput. Graph. Stat. 13:456 for the letters; Dunnett (1964) Biometrics 20:482; Genz & Bretz (2009) for general correlations',
    },
    {
      id: 'first-ripe',
      title: 'Days to the first ripe fruit',
      words: [
        `Days from ${settings.firstRipeFrom === 'sown' ? 'sowing' : 'planting out'} to the first ripe picking or note, whichever is earlier. A planting not ripe by the season’s end is unripe until then: it is not missing, and the last day is not its date. That holds for every planting with any record in a season in which anybody recorded ripening; one without a record, or with ripe fruit and no date, is not known. One lost to disease, pests or weakness can never ripen and stays unripe to the end of the curve; one lost by accident or killed by frost leaves at that day.`,
        'Median seen: Kaplan-Meier, the first day on which more than half of the plantings had ripe fruit; where exactly half had, the middle to the next of them. Its log-log limits stand in the open data; on the pages only where both exist, at 95 % from seven plantings on: from two or three plantings it cannot be told how late the median may be, and the model’s interval has to say it. “Not reached” where fewer than half ripened. Plantings lost by accident do not count among those ripe by the end.',
        'Model: log-normal accelerated failure time, a median for each variety, one spread for the season. A fruit found ripe ripened after the last look at an unripe plant, or after the look before by the season’s rhythm, whichever is later. Where plantings differ by less than the days between looks, the looks are the interval.',
      ],
      assumes: 'The same spread of log days for all varieties; looks do not depend on ripeness.',
      limits:
        'The first ripe fruit of a planting of several plants is the earliest of theirs: larger plantings look earlier for that reason alone. A variety of which nothing ripened has no estimate.',
      source:
        'Kaplan & Meier (1958) J. Am. Stat. Assoc. 53:457; Brookmeyer & Crowley (1982) Biometrics 38:29; Aalen & Johansen (1978) Scand. J. Stat. 5:141; Kalbfleisch & Prentice (2002) The Statistical Analysis of Failure Time Data',
    },
    {
      id: 'degree-days',
      title: 'Degree days',
      words: [
        `The same days on a clock of warmth: base ${baseC} °C, ${capC === null ? 'no cap' : `cap ${capC} °C`}, method ${method}. A gap of up to three days in the weather is bridged; over a longer one there are no degree days.`,
      ],
      assumes: 'Growth rises in a straight line between base and cap.',
      limits:
        'Published base temperatures of peppers run from 9 to 18 °C, so degree days are a rough clock, no better than ten per cent.',
      source:
        'McMaster & Wilhelm (1997) Agric. For. Meteorol. 87:291; base temperatures: Dickson et al. (2024) HortScience 59:1293 and HortTechnology 35:671 (2025)',
    },
    {
      id: 'ratings',
      title: 'Ratings',
      words: [
        'Scores of one taster for one variety are averaged to a cell; then taster + variety by least squares on the cells. A taster who is generous everywhere moves nothing, and varieties tasted by different tasters stay comparable as long as the table hangs together. The estimate is the mean over all tasters of the season.',
        'With one taster the tasting date takes the taster’s place where dates and varieties hang together; else there is a mean and no interval.',
        'Kendall’s W says how far the tasters agree on the order: 1 wholly, 0 not at all; only where every taster scored every variety.',
        'A yes-no question (would you grow it again) is a share: k of n answers.',
      ],
      assumes: 'Steps of the scale are about equal; tasters differ in generosity, not in order.',
      limits:
        'The interval is for these tasters, not for people at large: with three tasters a 95 % interval holds what people at large would say in about 84 of 100. Not separated by eight tasters is the usual outcome.',
      source:
        'Searle, Speed & Milliken (1980) Am. Stat. 34:216; Kendall & Babington Smith (1939) Ann. Math. Stat. 10:275',
    },
    {
      id: 'measurements',
      title: 'Measurements',
      words: [
        'Fruits of one planting are averaged to the planting; then variety + block by least squares. Where a fruit was measured under its variety’s name only, the variety counts as one unit.',
      ],
      assumes: 'One spread for all varieties of a class; between classes it goes with the class’s mean.',
      limits: 'Fruits of one plant are not replicates: n counts plantings.',
      source: 'Gomez & Gomez (1984) ch. 2',
    },
    {
      id: 'shares',
      title: 'Shares',
      words: [
        'Germinated, cropped at all, ripe by the end, off-type, unexpectedly hot: always k of n. For cropped and ripe only plantings of a single plant count.',
      ],
      assumes: 'Seeds and plants are independent of each other.',
      limits: '4 of 10 means anything from 17 to 69 % (95 %).',
      source: 'Wilson (1927) J. Am. Stat. Assoc. 22:209',
    },
    {
      id: 'claims',
      title: 'The packet’s claim',
      words: [
        'The claimed days or size against the interval seen: as claimed where the whole interval lies within the claim or at most a tenth beyond it (common practice, no source); else outside where the whole interval is; else not enough to tell. Claimed heat is in Scoville units of dry fruit, which tasters’ points cannot be turned into.',
      ],
      assumes: 'The claim is meant for conditions like these.',
      limits: 'Sixteen Scoville units to a part per million of capsaicinoids is the usual conversion of laboratories.',
      source:
        'Schuirmann (1987) J. Pharmacokinet. Biopharm. 15:657 for likeness shown by an interval within a margin; AOAC 995.03 for heat',
    },
    {
      id: 'power',
      title: 'What this trial could have seen',
      words: [
        'The difference that two varieties with the class’s median number of plantings must show to be separated (two-sided, by themselves) in four of five such seasons.',
      ],
      assumes: 'The season’s spread is the true one.',
      limits: 'Letters ask for more than this, since they guard all pairs at once.',
      source: 'Cohen (1988) Statistical Power Analysis for the Behavioral Sciences',
    },
    {
      id: 'expected',
      title: 'Expected next season',
      words: [
        'All seasons together. Each season’s estimate enters with its own standard error, widened for being estimated from few degrees of freedom; with two or fewer it is borrowed from the other seasons, and where no season has one it is assumed: a coefficient of variation of 40 % a plant for yield and fruits (common practice, no source), 15 % a planting for days, a fifth of the scale for a rating, 20 % for a measure (from memory). Plants recorded together, or standing together, count in such an error as in the yield’s variance. The page says of which variety.',
        'A variety’s part is pulled toward its class: the further, the fewer its plants and seasons and the more one variety changes from season to season. How far is printed with every expected value.',
        'Yield and fruits enter as the ratio scale has them, whichever scale the season’s tables use. Yield, fruits and days work on logarithms, ratings and measures as they are, shares from 0 to 1. A yield of nothing enters as the log of half the smallest planting of the class, with a margin as wide as its distance from the class, unless the class gave nothing at all, which tells its varieties from nothing; a variety that never ripened as later than the season’s end, with the spread of the season.',
        'The expected value is the variety’s in an average season, its interval a prediction: the change from season to season is in it. Good and bad years as such are not.',
      ],
      assumes:
        'Varieties and seasons deviate as normal distributions do, with the same two spreads in all classes; a season known only from totals is as good as its standard error says.',
      limits:
        'The class’s middle is that of the varieties once tried and recorded: where only survivors were written down, newcomers look better than they are, and the page says so.',
      source:
        'Piepho et al. (2012) Biom. J. 54:844 for two stages; Gelman (2006) Bayesian Anal. 1:515 for the priors; Patterson & Thompson (1971) Biometrika 58:545. Integrated directly on a grid, the same every time',
    },
    {
      id: 'verdicts',
      title: 'Verdicts',
      words: [
        `${settings.verdicts.simulations} next seasons are drawn with seed ${settings.verdicts.seed}: spreads, class means and varieties jointly, and a new season for each variety and trait. Values become points from 0 to 100, straight from bad to good and flat outside; where no range is set it runs over the class’s middle less and plus two standard deviations between varieties, so that the weights weigh what they say. The score is the weighted mean of the points.`,
        'A variety earns a spot in a drawn season if it is among the best of its class for the spots there are, and at least as good as the bar: an untried variety in the middle of the class, or the check variety. Those tied at the last spot share it.',
        `Share at least ${settings.verdicts.keepFrom}: keep. Reaches the bar in less than ${settings.verdicts.dropBelow} of the seasons: drop. Share under ${settings.verdicts.dropBelow}, though it reaches the bar more often: no room. Else: try again. Where either share lies within 0.01 of its limit the page says “on the edge”.`,
        'The list fills the spots in order of share, with varieties alone that reach the bar in at least half of the seasons and do not lean to “drop”; the spots that are left are for newcomers. The sum of the shares is how many of the list are expected to be right.',
        'What everyone who answered wants to grow again, three seasons in a row, is kept where there are spots for all of its kind; what everyone who answered would not grow again is no keep and not on the list. Where nobody set goals and fruits were counted but hardly weighed, their number counts in place of their weight.',
        'A limit that must not be missed fails a drawn season in which it is missed. On a trait never recorded for a variety it counts as not tested: not failed, but no keep. Where fruit was counted, the count alone decides, whatever the scores say: the upper Wilson limit of k of n has to keep the limit; a limit on heat itself lets one minus “keep from” of the fruit be hot.',
        'What one more season would settle: the score above what earns a spot is taken as normal, and another season with so many plants, standing as the class stood last, narrows the variety’s own part of it.',
        'Last winter’s advice: the same rule on the seasons before the last, judged by what the last one showed.',
      ],
      assumes:
        'Given the records, traits are independent of one another: how much that matters is in the table “Whether the shares keep their word”.',
      limits:
        'A typical home trial leaves most varieties at “try again”: a few plants and one or two summers do not decide more. The list is there for that.',
      source:
        'Derringer & Suich (1980) J. Qual. Technol. 12:214 for points, averaged arithmetically; Raiffa & Schlaifer (1961) Applied Statistical Decision Theory ch. 5 for what another season settles; Wilson (1927)',
    },
  ];
}

/** A trial's settings, as the methods page prints them. */
function settingsRows(settings: Settings): readonly (readonly [string, string])[] {
  const { baseC, capC, method } = settings.degreeDays;
  return [
    ['interval', `${settings.interval * 100} %`],
    ['scale', settings.scale],
    ['spot_correlation', String(settings.spotCorrelation)],
    ['first_ripe_from', settings.firstRipeFrom],
    ['degree_days', `base ${baseC} °C, ${capC === null ? 'no cap' : `cap ${capC} °C`}, method ${method}`],
    ...[...settings.classes.values()].map(
      (own) => [`class ${own.id}`, `${own.name}; check variety ${own.checkVariety ?? 'none'}`] as const,
    ),
    ...[...settings.seasons].map(
      ([year, own]) =>
        [
          `season ${year}`,
          `${own.lookEvery === 0 ? 'ripening noted on its day' : `looks every ${own.lookEvery === 1 ? 'day' : `${own.lookEvery} days`}`}; harvests ${own.harvestsComplete ? 'complete' : 'partial'}${own.layout === null ? '' : `; layout ${own.layout}`}`,
        ] as const,
    ),
  ];
}

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

/** Every word of the site in English. A translation is one file of the same shape. */
export const english = {
  listed,
  capital,
  traits: {
    yield: 'yield',
    early_yield: 'early yield',
    fruits: 'fruits',
    first_ripe: 'days to first ripe fruit',
    again: 'would be grown again',
    heat: 'heat',
    flavour: 'flavour',
  } as Readonly<Record<string, string>>,
  frame: {
    skip: 'To the content',
    pages: 'Pages',
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
  },
  status: { new: 'new', returning: 'returning' },
  figure: {
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
    p: (p: string) => `p ${p}`,
    pBelow: (p: string) => `below ${p}`,
    f: (value: string, df1: string, df2: string, p: string) => `F ${value} on ${df1} and ${df2} df, ${p}`,
    noF: 'F not to be had',
    cv: (cv: string) => `CV ${cv} % a plant`,
    lsd: (value: string) => `LSD ${value}`,
    mean: (value: string) => `Mean of the varieties ${value}`,
    letters: (level: string) =>
      `Varieties that share a letter are not separated in this trial (Tukey-Kramer, ${level}).`,
  },
  tables: {
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
      `With ${plantings} plantings a variety, letters tell a difference of ${difference} apart in 4 of 5 such seasons; smaller ones stay hidden.`,
    powerRatio: (plantings: string, times: string) =>
      `With ${plantings} plantings a variety, letters tell one that gives ${times} times another apart in 4 of 5 such seasons; smaller differences stay hidden.`,
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
  },
  report: {
    ratio: (what: string, figure: string, apart: string) =>
      `${what} of the new varieties over the returning ones: ${figure} times; ${apart}.`,
    difference: (what: string, figure: string, apart: string) =>
      `${what} of the new varieties less that of the returning ones: ${figure}; ${apart}.`,
    apart: 'taken alone, they are separated in this trial',
    notApart: 'they are not separated in this trial',
    cautions: {
      'no-residual-df': () =>
        'One planting of each variety: there is nothing to tell a variety from its spot by, so the figures have no intervals. Two plantings of a few varieties would give them.',
      'single-plantings': (names: string) =>
        `${names} stood in a single planting; the spread between plants is borrowed from the other varieties.`,
      'one-bed': (names: string) => `All plants of ${names} stood in one bed: variety and bed cannot be told apart.`,
      'without-blocks': () =>
        'Blocks are left out of the yields of this class, since a planting in them gave nothing: each figure is total over plants.',
      'mixed-topped': () =>
        'Some plants were topped and some were not; topping delays the first fruit, and the figures mix both.',
      'only-topped': () => 'All plants were topped: the figures hold for topped plants.',
      'mixed-stands': (isAdjusted: boolean): string =>
        isAdjusted
          ? 'Some plants stood in containers and some in the ground; the estimates of yield and fruits are worked out as if each variety had stood in every kind of place alike, so they are not its total over its plants.'
          : 'Some plants stood in containers and some in the ground, and the varieties cannot be compared within either: variety and container are mixed up.',
      'only-pots': () => 'All plants stood in containers: the figures hold for containers.',
      'unequal-plantings': () =>
        'Plantings differ in their number of plants. The first ripe fruit of a larger planting comes earlier for that reason alone.',
      'not-blind': (known: string | null, scores: string) =>
        known === null
          ? 'The tasters knew what they tasted, or it was not recorded that they did not.'
          : `${known} of ${scores} scores were not given blind.`,
      'high-cv': (cv: string) =>
        `Plants of one variety differed much among themselves (CV ${cv} %): differences between varieties are hard to see.`,
      'class-sizes-differ': () =>
        'One mean square is pooled over classes of very different yield; the ratio scale would suit this trial better.',
    },
  },
  charts: {
    yieldWhat: 'yield per plant',
    yieldAxis: (unit: string) => `usable yield, ${unit} per plant`,
    found: {
      none: (what: string) => `No ${what} was recorded`,
      level: (what: string, names: readonly string[] | null, isLowest: boolean) =>
        names === null
          ? `${capital(what)}: all alike in this trial`
          : `${listed(names)} share the ${isLowest ? 'lowest' : 'highest'} estimate of ${what}`,
      only: (name: string, what: string) => `${name} is the only variety with ${what} on record`,
      first: (name: string, isLowest: boolean, what: string) =>
        `${name} has the ${isLowest ? 'lowest' : 'highest'} estimate of ${what} in this trial`,
      apart: (name: string, isLowest: boolean, what: string, isAll: boolean) =>
        `${name} has the ${isLowest ? 'lowest' : 'highest'} estimate of ${what}, separated from all others${isAll ? '' : ' that can be compared'} in this trial`,
      noneApart: (name: string, isLowest: boolean, what: string) =>
        `${name} has the ${isLowest ? 'lowest' : 'highest'} estimate of ${what}; no variety is separated from it in this trial`,
      alike: (name: string, isLowest: boolean, what: string, others: readonly string[]) =>
        `${name} has the ${isLowest ? 'lowest' : 'highest'} estimate of ${what}; ${others.join(', ')} ${others.length === 1 ? 'is' : 'are'} not separated from it`,
    },
    dots: (axis: string, level: string, hasTicks: boolean) =>
      `${axis}; marks are estimates, bars ${level} intervals${hasTicks ? ', grey ticks the plantings' : ''}. Diamond: new. Circle: returning.`,
    dotsHead: (axis: string, level: string) => `${axis} (${level} interval)`,
    ratio: {
      none: (check: string) => `No variety is separated from ${check} in yield in this trial`,
      some: (check: string, names: readonly string[]) => `Separated from ${check} in yield: ${names.join(', ')}`,
      more: (name: string) => `${name} (more)`,
      less: (name: string) => `${name} (less)`,
      measure: (check: string, level: string) =>
        `Yield per plant as a multiple of ${check}, the check variety (line at 1); ${level} intervals that hold jointly (Dunnett). Diamond: new. Circle: returning.`,
      axis: 'less than the check  ←  times its yield  →  more',
      head: (check: string, level: string) => `Times the yield of ${check} (${level} interval)`,
    },
    ripening: {
      newName: (name: string) => `${name}, new`,
      ripe: (share: string) => `${share} ripe`,
      what: 'days to first ripe fruit',
      allRipe: (isWhole: boolean) =>
        `every planting${isWhole ? '' : ' not lost by accident'} had ripe fruit by the end`,
      unripe: (list: string) => `plantings without ripe fruit at the end: ${list}`,
      half: 'In no variety did half of the plantings ripen',
      measure: (isSown: boolean) =>
        `Share of plantings with ripe fruit by days from ${isSown ? 'sowing' : 'planting out'} (Kaplan-Meier); the top of each strip is all of them.`,
      axis: (isSown: boolean) => `days from ${isSown ? 'sowing' : 'planting out'}`,
      model: 'Days to first ripe fruit, model',
      median: 'Median days to first ripe fruit',
    },
    tradeOff: {
      both: (names: string, trait: string) =>
        `Estimates above the class’s middle in both yield and ${trait}: ${names}; the crosses say how sure`,
      none: (trait: string) => `No estimate is above the class’s middle in both yield and ${trait}`,
      measure: (trait: string, level: string) =>
        `Yield per plant against ${trait}; crosses are ${level} intervals of each. Diamond: new. Circle: returning.`,
    },
    scores: {
      title: (trait: string, w: string | null) =>
        w === null
          ? `How the scores of ${trait} were spread`
          : `How the scores of ${trait} were spread (Kendall’s W ${w})`,
      measure: (trait: string, from: string, to: string, tasters: number, isBlind: boolean) =>
        `Raw scores of ${trait} by ${tasters === 1 ? 'one taster' : `${tasters} tasters`}${isBlind ? ', blind' : ''}, from ${from} (pale) to ${to} (dark); not freed of the tasters’ generosity.`,
      axis: 'share of the scores',
      part: (score: string, count: string) => `${score}: ${count}`,
    },
    cumulative: {
      title: 'How the yield came in through the season',
      measure: (unit: string) =>
        `Weighed usable yield per plant set out, ${unit}, added up from picking to picking; not an estimate, so without interval`,
      axisX: 'days from the first sowing or planting out',
      axisY: (unit: string) => `${unit} per plant`,
      weighed: 'Weighed by the last picking',
    },
  },
  season: {
    title: (year: string) => `Season ${year}`,
    place: 'Place',
    notStated: 'not stated',
    varieties: 'Varieties',
    counts: (varieties: string, fresh: string, plants: string, plantings: string) =>
      `${varieties}, ${fresh} of them new; ${plants} plants in ${plantings} plantings`,
    sown: 'Sown',
    plantedOut: 'Planted out',
    lastDay: 'Last day of recording',
    beds: 'Beds',
    pickingDays: 'Picking days',
    noPickings: 'none recorded',
    blocks: 'Blocks',
    block: { block: 'in the model', 'stands-in': 'containers and ground in the model', none: 'none in the model' },
    lost: 'Lost by accident',
    notInYields: (n: string) => `${n}, not in the yields`,
    weather: 'Weather',
    weatherText: (days: string, mean: string, nights: string, cold: string, rain: string) =>
      `${days} days recorded: mean ${mean}, ${nights} nights under ${cold}, ${rain} of rain.`,
    one: 'One season: these figures say what these plants did in it.',
    together: (rho: string, classes: readonly string[]) =>
      `Plants of a variety stood together${classes.length === 0 ? '' : ` (${listed(classes)})`}, so variety and place cannot be told apart fully; intervals are widened for a spot correlation of ${rho}.`,
    toMap: 'Where they stood',
    toHandout: 'The handout for the club evening',
  },
  variety: {
    first: 'first',
    generation: (f: number) => `F${f} line`,
    seenIn: (n: number) => `Seen in ${n} season${n === 1 ? '' : 's'}.`,
    beside: 'Beside the others of its class',
    bySeason: 'Season by season',
    bySeasonCaption: (level: string) => `Seen, with ${level} intervals`,
    yield: 'Yield per plant',
    median: 'Days to first ripe, model',
    rating: (trait: string) => `Tasters’ ${trait}`,
    shares: 'Shares',
    sharesCaption: (level: string) => `k of n, with ${level} intervals (Wilson)`,
    shareOf: 'Share of',
    kOfN: 'k of n',
    interval: 'Interval',
    share: {
      germinated: 'seeds germinated',
      cropped: 'plants cropped at all',
      ripe_by_end: 'plants ripe by the season’s end',
      off_type: 'plants off-type',
      hot: 'plants with unexpectedly hot fruit',
    },
    resultsCaption: (level: string) => `Results with ${level} intervals; n counts plantings, for ratings tasters`,
    movedTo: (name: string) => `This variety has a new address: ${name}.`,
    parents: (mother: string, father: string) => `A cross of ${mother} and ${father}.`,
    unknownParent: 'an unknown parent',
    source: (from: string) => `Seed from ${from}.`,
    alsoKnownAs: (names: string) => `Also known as ${names}.`,
    hotCaution:
      'Hot fruit burns skin and eyes. Wear gloves to pick and cut it, keep it from children, and wash hands before touching the face.',
    crossCaution:
      'Fruit of an unknown cross should not be eaten before it is known what it is a cross of: relatives of these plants can be bitter or poisonous.',
  },
  seasons: {
    title: 'All seasons',
    every: 'Every variety ever grown',
    varieties: (n: string) => `${n} varieties`,
    none: 'No season is recorded yet.',
    inFull: (year: string) => `The ${year} season in full`,
  },
  data: {
    title: 'Data',
    intro:
      'Every figure of this site stands in one file with full precision, in grams, centimetres, millimetres and days:',
    licence: (licence: string) => `Licence of the data: ${licence}.`,
    rows: (n: string) => `${n} rows, CSV in UTF-8. An empty cell is a figure that is not known.`,
    columns: (path: string) => `Columns of ${path}`,
    column: 'Column',
    meaning: 'Meaning',
    figures: 'Every figure of every season',
    plantings: (year: string) => `Plantings of ${year}`,
    harvests: (year: string) => `Pickings of ${year}, added up by planting and day`,
    ratings: (year: string) => `Scores and answers of ${year}`,
    measurements: (year: string) => `Measured values of ${year}`,
    meanings: {
      taster: 'who gave it, by code, initials or name, as the trial publishes people',
      score: 'as it was given; 1 and 0 for yes and no',
      blind: 'yes where the taster did not know the variety',
      value: 'as it was measured, in the unit beside it',
      season: 'year',
      variety: 'id',
      name: 'shown name',
      class: 'class id',
      status: 'new or returning in that season',
      trait: 'what was measured',
      unit: 'unit of the figures',
      n: 'plantings; tasters for ratings; answers for yes-no traits',
      estimate: 'estimate; first_ripe has two rows, the median of the plantings and the model’s',
      low: 'lower end of the interval',
      high: 'upper end of the interval',
      method: 'see the methods page',
      planting: 'id in the season',
      plants: 'plants set out',
      bed: 'where it stood',
      block: 'replicate',
      transplanted: 'date',
      removed: 'date',
      cause: 'why removed',
      yield_g: 'usable yield per plant, grams',
      fruits: 'usable fruits',
      fruits_per_plant: 'usable fruits per plant',
      first_ripe: 'days to first ripe fruit',
      date: 'day',
      weight_g: 'usable weight, grams',
      stage: 'ripe or green',
      unusable_fruits: 'culls',
    } as Readonly<Record<string, string>>,
    more: 'Descriptions for machines',
    cite: 'How to cite',
  },
  notes: {
    title: 'Notes on the data',
    none: 'The checks found nothing doubtful in the records.',
    places: (n: number) => `${n} places`,
    explained: 'Every message, explained',
    explainedIntro:
      'What the checks can say. Errors keep a site from being built, so only warnings and notes can stand above.',
    expected: 'Expected',
    mend: 'To mend',
    severity: { error: 'error', warning: 'warning', note: 'note' },
    near: (name: string) => `${name}, perhaps; else `,
    limited: (season: string, below: number, above: number, traces: number) =>
      `Figures of ${season} that are no plain numbers: below a limit ${below}, over a limit ${above}, traces ${traces}. How they count stands under their messages.`,
  },
  fruit: {
    title: (name: string, length: string) => `Fruit to scale; the longest mean is ${name}’s, ${length}`,
    measure: (isInches: boolean) =>
      `From mean length and width of the season; a mark is ${isInches ? 'an inch' : 'a centimetre'}. Colours: ripe, with the unripe one at the stem.`,
    length: 'Length',
    width: 'Width',
    ripe: 'Ripe colour',
  },
  map: {
    title: (year: string) => `Where the plantings stood in ${year}`,
    measure: 'Rows and columns as recorded, not to scale; broken outline: lost.',
    bed: 'Bed',
    row: 'Row',
    column: 'Column',
    planting: 'Planting',
  },
  front: {
    lead: (varieties: string, fresh: string, plants: string, year: string) =>
      `${varieties} varieties in ${year}, ${fresh} of them new, on ${plants} plants.`,
    again: (year: string) => `To grow again in ${year}`,
    againNone: 'Nothing is a sure keep yet.',
    surprised: 'What surprised',
    surprisedNone: 'Nothing stood out from its claim or its check variety.',
    open: 'Still open',
    openNone: 'Nothing: every verdict is settled.',
    later: (name: string, seen: string, claimed: string) =>
      `${name} ripened later than its packet says: ${seen}, claimed ${claimed}.`,
    earlier: (name: string, seen: string, claimed: string) =>
      `${name} ripened earlier than its packet says: ${seen}, claimed ${claimed}.`,
    more: (name: string, check: string, figure: string) => `${name} gave ${figure} times the yield of ${check}.`,
    newKeep: (name: string, share: string) =>
      `${name}, grown for the first time, earns its spot in ${share} simulated seasons.`,
    perhaps: (name: string, share: string) => `${name} (${share})`,
    gone: (names: string) => `Not to be grown again: ${names}.`,
    noRoom: (names: string) => `Good enough, but without room: ${names}.`,
    inClass: (className: string, names: string) => `${className}: ${names}.`,
    read: 'Read on',
  },
  /** What is wrong, what was expected, how to mend it. {facts} are filled in. */
  problems: {
    'no-data-folder': [
      'there is no data folder here',
      'a folder data/ with trial.yaml and varieties.csv',
      'start one with: keeprow new DIR',
    ],
    'missing-settings': [
      'the settings file is missing',
      'data/trial.yaml with at least a title',
      'write a file data/trial.yaml with a line such as title: Our trial',
    ],
    'missing-varieties': [
      'the table of varieties is missing',
      'data/varieties.csv with a column variety',
      'write one row for each variety ever grown',
    ],
    'no-seasons': [
      'there is no season',
      'a folder data/2026 (its year) with plantings.csv or totals.csv',
      'make a folder named by the year and put the tables of the season in it',
    ],
    'missing-plantings': [
      'the season has neither plantings nor totals',
      'plantings.csv or totals.csv',
      'write plantings.csv with a row a planting, or totals.csv with a row a variety',
    ],
    'not-a-year': [
      'a season folder is not named by a year',
      'a folder name of four digits, such as 2026',
      'rename the folder to the year of the season',
    ],
    'file-name-near': [
      'a file is named nearly like a table, and was not read',
      '{near}',
      'rename it to {near}, or leave it if it is not meant',
    ],
    'file-unreadable': [
      'the file cannot be read: {reason}',
      'a file that this user may read',
      'check the rights of the file',
    ],
    'outside-folder': [
      'a link leads out of the trial folder',
      'files inside the folder',
      'copy the file into the folder in place of the link',
    ],
    'file-changed': [
      'the file changed while it was read',
      'a file that keeps still',
      'run the command again once the file is saved',
    ],
    'file-twice': ['the table is there twice, also as {other}', 'each table once', 'keep one of them'],
    'workbook-unreadable': [
      'the workbook cannot be read: {detail}',
      'a workbook as .xlsx or .ods without a password',
      'open it in the spreadsheet program and save it again, or save its sheets as CSV',
    ],
    'sheet-unknown': [
      'the sheet is none of the tables and was left alone',
      'a sheet named {tables}, in a workbook of its season (data/2026.xlsx) or with its year (2026 harvests)',
      'rename the sheet if it holds one of them',
    ],
    'not-text': [
      'the file is not text',
      'a table saved as CSV',
      'open it in the program that made it and save it as CSV, UTF-8',
    ],
    'read-as-windows': [
      'the text is not UTF-8 and was read as Windows-1252',
      'UTF-8',
      'look whether letters with accents are right, and save the file as UTF-8',
    ],
    'not-utf8': ['the text is not UTF-8', 'UTF-8', 'save the table again and choose UTF-8 as its encoding'],
    'empty-table': ['the table has no rows', 'a header and at least one row', 'fill in the table, or remove the file'],
    'quote-open': [
      'a quotation mark is opened and never closed',
      'a closing " before the end of the cell',
      'close the quotation, or write "" for a mark that belongs to the text',
    ],
    'quote-stray': [
      'a quotation mark stands where none can be',
      'a cell wholly inside quotation marks, or without them at its start',
      'put the whole cell into quotation marks and double those inside',
    ],
    'cell-too-large': [
      'a row is over a million characters long',
      'a row of a record sheet',
      'look for a quotation mark that is never closed, or a file that is not a table',
    ],
    'too-many-columns': ['the table has too many columns', 'at most 1,000 columns', 'check how the table was exported'],
    'header-empty': [
      'a column without a title has values in it, which were not used',
      'a title in the header',
      'give the column a title, or empty it',
    ],
    'rows-before-header': [
      'rows above the header were left out',
      'the header in the first row',
      'look whether nothing of the table is among them, or remove them',
    ],
    'header-repeated': [
      'the header stands again among the rows; it was left out',
      'the header once, at the top',
      'remove the second header',
    ],
    'units-row': [
      'the row below the header was read as units',
      'a unit in the header, as weight_g',
      'write the units into the header if this is not what is meant',
    ],
    'units-differ': [
      'the header and the row below it name different units',
      'one unit for a column',
      'correct the one that is wrong',
    ],
    'unit-unlike-heading': [
      'the cell says its own unit, which is not that of the heading',
      "the unit of the heading, or the cell's own where it is meant",
      "nothing, if the unit is meant: the cell's own counts",
    ],
    'total-row': [
      'the row looks like a total and was left out',
      'records only, no sums of them',
      'remove it; name what it is about if it is a record',
    ],
    'header-twice': ['two columns have the same title', 'each title once', 'rename or remove one of them'],
    'column-missing': [
      'a column is missing',
      'a column {column}',
      'add the column {column}; the header found is shown above',
    ],
    'column-near': [
      'a column has a title nearly like a known one, and was not used',
      '{near}',
      'rename it to {near}, or leave it if it is not meant',
    ],
    'column-unknown': [
      'columns that are not part of the records were left alone',
      'known columns',
      'nothing to do; publish.show in trial.yaml can publish them',
    ],
    'unit-unknown': [
      'the unit in the title is not known',
      'one of {units} after the name',
      'write the title with a known unit, such as weight_g',
    ],
    'row-too-long': [
      'the row has more cells than the header ({cells} for {columns})',
      '{columns} cells',
      'put text with commas into quotation marks, or add a column',
    ],
    'row-too-short': [
      'the row has fewer cells than the header ({cells} for {columns})',
      '{columns} cells',
      'fill up the row with empty cells, and check that its last value is whole',
    ],
    'table-without-rows': [
      'the table has a header and no records',
      'a row a record',
      'add the records, or delete the file where there are none',
    ],
    'last-line-open': [
      'the last line has no end: the file may have been cut short',
      'a line end after the last record',
      'look whether the last record is whole, and save the file again',
    ],
    'letter-lost': [
      'a letter was lost when the file passed from one encoding to another',
      'the letter itself where � stands',
      'write the letter again and save as UTF-8',
    ],
    'control-character': [
      'the cell holds a character that no one sees and no one types',
      'letters, digits and marks',
      'delete the cell and type it again',
    ],
    'backslash-in-cell': [
      'the cell holds a backslash, as some programs write before a comma or quotation mark',
      'the value alone; a cell with a comma stands in quotation marks',
      'delete the backslash',
    ],
    'quote-in-cell': [
      'a quotation mark stands alone in a word',
      'none, or one before and one after the words',
      'delete it',
    ],
    'scripts-mixed': [
      'a word is written with letters of two scripts, some of which only look alike',
      'one script in a word',
      'type the word again',
    ],
    'value-missing': ['{column} is empty', 'a value', 'fill in {column}'],
    'date-unreadable': [
      '{column} is not a date',
      'a date such as 2026-08-03 or 3 Aug 2026',
      'write the date as year-month-day',
    ],
    'date-ambiguous': [
      'the date can be read in two ways: {dayFirst} or {monthFirst}',
      'a date such as 2026-08-03',
      'write it as year-month-day, or set dates: day-first or dates: month-first in trial.yaml',
    ],
    'date-impossible': ['there is no such day', 'a day of the calendar', 'correct the date'],
    'spreadsheet-error': [
      'the cell holds an error of a spreadsheet, not a value',
      'a value',
      'mend the cell in the spreadsheet and save the table again',
    ],
    'column-too-narrow': [
      'the cell was saved as number signs: its column was too narrow to show the value',
      'the value itself',
      'widen the column in the spreadsheet and save the table again',
    ],
    'cell-formula': [
      'the cell holds a formula, not its result',
      'the result',
      'save the table with results in place of formulas',
    ],
    'number-scientific': [
      'the number was shortened by a spreadsheet; its last digits may be lost',
      'the number with all its digits',
      'format the column as a plain number or as text and save the table again',
    ],
    'became-a-date': [
      'this is a date where {column} stands: a spreadsheet may have made it from a fraction or a code',
      '{column}',
      'write the value again and format the column as text before saving',
    ],
    'date-serial': [
      'this is a day number of a spreadsheet, not a date',
      'a date such as 2026-08-03; the number would be {first} if days are counted from 1900, {second} if from 1904',
      'format the column as a date, year first, and save the table again',
    ],
    'date-column-unit': [
      'a column headed by a day holds bare numbers: fruits or a weight?',
      'fruits or a unit after the day, as "{title} fruits" or "{title} g", or the unit in the cell',
      'say in the heads of these columns what was counted or weighed',
    ],
    'number-unreadable': [
      '{column} is not a number',
      'digits with at most one decimal point, such as 4.2',
      'write the number without words, blanks or thousands marks',
    ],
    'number-ambiguous': [
      'a comma may be a decimal mark or part of a thousand',
      'a number such as 1.234 or 1234',
      'write thousands without a mark, and decimals with a point',
    ],
    'quantity-unreadable': [
      '{quantity} cannot be read',
      'a number, with a unit of {units} if it differs from the header',
      'write it such as 340, 340 g or 1 lb 3 oz; NA if it was not taken',
    ],
    'unit-missing': [
      '{quantity} has no unit',
      'a unit in the title or in the cell: {units}',
      'write the unit into the title, such as weight_g',
    ],
    'quantity-twice': ['{quantity} is given twice in a row', 'one of its columns filled', 'empty one of the two'],
    'number-negative': ['{column} is below 0', '0 or more', 'correct the number'],
    'not-whole': ['{column} is not a whole number', 'a whole number', 'correct the number'],
    'value-below': [
      '{column} is given as below a limit; half the limit is counted',
      'a number',
      'write the value if it is known',
    ],
    'value-trace': [
      '{column} is given as a trace; it counts as picked, with nothing added',
      'a number',
      'write the value if it is known',
    ],
    'value-above': [
      '{column} is given as over a limit; what it came to is unknown, so the planting leaves that figure',
      'a number',
      'write the value if it is known',
    ],
    'bound-unused': [
      '{column} is given as a limit or a trace; it is kept, but no mean is made with it',
      'a number',
      'write the value if it is known',
    ],
    'plants-zero': ['a number of plants or seeds is 0', '1 or more', 'correct the number, or remove the row'],
    'word-unknown': ['{column} has a word that is not one of its words', '{words}', 'write one of the words expected'],
    'year-unreadable': ['{column} is not a year', 'a year of four digits', 'write the year, such as 2024'],
    'id-unfit': [
      'the id cannot stand in a page address',
      'lower-case letters, digits and single hyphens, at most 80, no device name',
      'choose another id and write the full name in the column name',
    ],
    'colour-unknown': [
      '{column} is not a colour that can be drawn',
      'a colour word such as red or dark green, or #c0281f',
      'write a colour word',
    ],
    'variety-twice': [
      'a variety stands twice',
      'each id once (first on line {line})',
      'remove one row, or give one of them another id',
    ],
    'variety-name-twice': [
      'two varieties have the same name but for case, blanks or accents',
      'names that differ from those of {other}',
      'rename one of them',
    ],
    'unknown-variety': [
      'no variety has this name',
      'an id or name of varieties.csv',
      'correct the name, or add the variety to varieties.csv',
    ],
    'planting-twice': [
      'a planting id stands twice in the season',
      'each id once (first on line {line})',
      'give one of them another id',
    ],
    'spot-twice': [
      '{other} stands in row {row}, column {column} too, at the same time',
      'one planting on a spot, or the first one removed before',
      'correct row or column, or enter when the first was removed',
    ],
    'bed-near': [
      'this bed is named almost like another: {near}',
      'one spelling for one bed',
      'write {near}, if it is the same bed',
    ],
    'block-near': [
      'this block is named almost like another: {near}',
      'one spelling for one block; two spellings are two blocks to the comparison',
      'write {near}, if it is the same block',
    ],
    'taster-near': [
      'this taster is named almost like another: {near}',
      'one spelling for one person; two spellings count as two tasters',
      'write {near}, if it is the same person',
    ],
    'unknown-planting': ['no planting of this season has this id', 'an id of plantings.csv', 'correct the id'],
    'planting-of-other-season': [
      'the planting belongs to season {season}',
      'a planting of this season',
      'move the row to season {season}, or correct the id',
    ],
    'planting-and-variety-differ': [
      'the planting {planting} is of another variety',
      '{variety}',
      'correct the planting or the variety',
    ],
    'neither-planting-nor-variety': [
      'the row names neither a planting nor a variety',
      'one of the two',
      'fill in planting or variety',
    ],
    'variety-not-in-season': [
      'the variety was not grown in this season',
      'a variety of plantings.csv or totals.csv',
      'add the planting, or correct the name',
    ],
    'unknown-class': [
      'the class is not one of the settings',
      '{classes}',
      'correct the class, or add it to classes in trial.yaml',
    ],
    'unknown-trait': ['the trait is not declared', '{traits}', 'correct the name, or declare the trait in trial.yaml'],
    'row-twice': [
      'the same row stands twice in {table}; both count',
      'each record once',
      'remove one of them if it was written twice',
    ],
    'former-id-taken': ['a former id is in use', 'an id that no other variety has', 'remove it, or correct it'],
    'outside-season': [
      'the date lies outside its season',
      'a day from {from} to {to}',
      'correct the date, or set the end of the season in trial.yaml',
    ],
    'outside-season-note': [
      'the date lies outside its season',
      'a day from {from} to {to}',
      'nothing to do if it is right',
    ],
    'date-unlike-neighbours': [
      'the date is {days} days from those of the rows around it, in a table that goes by date',
      "a date between its neighbours'",
      'look whether day, month or year slipped; it counts as it stands',
    ],
    'date-missing': [
      'a picking without a date, where others have one',
      'a date in each row, also where several pickings were on one day',
      'enter the date; until then the picking counts in the totals and not for ripening',
    ],
    'sown-earlier-year': [
      'sown in an earlier year',
      'a sowing in the year of the season',
      'nothing to do for overwintered plants',
    ],
    'picked-before-transplanting': [
      'the date is before the planting was set out',
      'a day from {transplanted}',
      'correct one of the two dates',
    ],
    'picked-after-removal': [
      'the date is after the planting was removed',
      'a day up to {removed}',
      'correct one of the two dates',
    ],
    'dates-out-of-order': ['{column} comes before {before}', 'dates in order', 'correct one of the two dates'],
    'score-outside-scale': [
      'the score of {trait} lies outside its scale',
      'a number from {from} to {to}',
      'correct the score, or the scale in trial.yaml',
    ],
    'germinated-over-seeds': ['more germinated than were sown', 'at most {seeds}', 'correct one of the two numbers'],
    'count-over-of': ['more were counted than there were', 'at most {of}', 'correct count or of'],
    'tmin-over-tmax': ['the lowest temperature is over the highest', 'at most {tmax}', 'correct one of the two'],
    'weather-day-twice': ['a day stands twice in the weather', 'each day once', 'remove one of the rows'],
    'weather-half': [
      'a day of the weather without its {column}',
      'the lowest and the highest temperature of the day',
      'enter {column}; until then the day counts as missing',
    ],
    'weather-of-other-year': [
      "weather of a day that is not in the season's year",
      'days from {from} to {to}',
      'move the rows into the season of their year',
    ],
    'weather-gap': [
      '{days} days of the weather are missing, from {from} to {to}',
      'every day from planting out to the last picking; up to three missing ones are filled in',
      'enter the days; until then degree days across them are not known',
    ],
    'weather-unlikely': [
      'half of the days while plants stood out had their highest temperature on one side of this',
      'days of a growing season, in the unit of the heading',
      'look at the unit in the heading: tmax_c or tmax_f',
    ],
    'temperature-implausible': [
      'no air is that warm or cold (°C)',
      '-90 to 60 °C',
      'check the unit in the title: tmax_c or tmax_f',
    ],
    'claim-reversed': ['the upper claim is below the lower', '{low} or more', 'swap the two'],
    'cause-without-removal': [
      'a cause without the date of removal',
      'a date in removed',
      'fill in removed, or empty cause',
    ],
    'weight-and-fruits-disagree': [
      'one of fruits and weight is 0, the other is not; the 0 was taken as not recorded',
      'both 0 or neither',
      'write NA for what was not recorded',
    ],
    'picking-empty': [
      'a picking without any figure was left out',
      'fruits, a weight, or both',
      'fill it in; 0 if nothing was found',
    ],
    'picking-unlike-others': [
      "the picking is {times} times the median of the planting's others",
      'pickings of one planting that are more alike',
      'look whether a digit or a unit slipped; it counts as it stands',
    ],
    'fruit-unlike-others': [
      'a fruit of this picking weighs {times} times the usual one of its variety',
      'about as much weight for each fruit as in the other pickings',
      'look at the number and at the decimal point; a figure that is right may stay',
    ],
    'picked-often-a-day': [
      'the planting was picked three times or more on one day, one row after the other',
      'a row a picking',
      'look whether the name of the planting, or the date, was drawn down over others',
    ],
    'filled-down': [
      '{rows} rows from here have the same figure in {column}',
      'figures as they were read off',
      'look whether the cell was drawn down over others',
    ],
    'filled-series': [
      'the figures of {column} go on by equal steps over {rows} rows from here',
      'figures as they were read off',
      'look whether a series was drawn down over others',
    ],
    'records-swapped': [
      'the fruits of {first} weigh what those of {secondVariety} do, and those of {second} what those of {firstVariety} do',
      "fruits that resemble their own variety's",
      'look whether the records of the two plantings were swapped; they count as they stand',
    ],
    'unit-seems-wrong': [
      'a fruit of this picking weighs about {factor} times the median of the variety: {units}',
      'fruits that resemble the others of the variety',
      'look whether the weight is in another unit; it counts as it stands',
    ],
    'figure-absurd': [
      'no plant bears so much',
      'at most {fruit} a fruit and {plant} a plant',
      'look at the unit in the heading and at the decimal point; where gourds or melons were grown, enter their species in varieties.csv',
    ],
    'figure-unlikely': [
      'hardly any plant bears so much',
      'a {of} as heavy as it was',
      'look at the unit in the heading and at the decimal point; where gourds or melons were grown, enter their species in varieties.csv',
    ],
    'weights-unlike-seasons': [
      'fruit of the same varieties weigh {times} times what they weighed in {others}',
      'fruit of one variety of about one weight every season',
      'look at the unit in the heading of the weights, of {season} and of {others}: 28 is an ounce, 454 a pound, 1,000 a kilogram',
    ],
    'weights-unlike-size': [
      'the fruit weigh {density} g for each cubic centimetre of their measured length and width',
      'about 0.2 g for hollow pods to 1 g for tomatoes',
      'look at the units in the headings of weight, length and width',
    ],
    'weights-not-of-fruits': [
      'weights and numbers of fruit do not go together',
      'more weight where more fruit were picked',
      'look whether one column has slipped by a row, or was sorted without the others',
    ],
    'fruits-not-of-variety': [
      'fruit of one variety are of all sizes, as if the varieties were mixed up',
      'fruit of one variety of about one weight',
      'look whether the column of plantings has slipped by a row, or was sorted without the others',
    ],
    'measure-zero': [
      'a {trait} of nothing was hardly measured',
      'the value, or NA where it was not measured',
      'write NA, or the value',
    ],
    'measure-absurd': [
      'nothing in a bed is so large ({trait})',
      'a value as it was measured',
      'look at the unit in the heading and at the decimal point',
    ],
    'measure-unlike-others': [
      '{times} times the usual {trait} of this variety or class',
      'a value like those of other fruit',
      'look at the decimal point and the unit; a value that is right may stay',
    ],
    'measures-unlike-seasons': [
      '{trait} of the same varieties is {times} times what it was in {others}',
      'values of one variety of about one size every season',
      'look at the unit in the heading, of {season} and of {others}: 2.5 is an inch, 10 a millimetre or a lost decimal point',
    ],
    'measures-not-of-variety': [
      'values of {trait} of one variety are of all sizes, as if the varieties were mixed up',
      'values of one variety of about one size',
      'look whether a column has slipped by a row, or was sorted without the others',
    ],
    'fruits-and-weight-swapped': [
      'fruits and weight look exchanged: {fruits} fruits of {grams} g together',
      'a weight in grams and a number of fruits, each in its column',
      "look whether the two stand in each other's column; they count as they stand",
    ],
    'all-on-one-day': [
      'every picking of the season is on one day',
      'the day of each picking',
      'look whether the day is that of picking and not of writing; first ripe fruit rests on it',
    ],
    'generation-unknown': ['the generation cannot be read', 'F1, F2, F3 …', 'write the generation as F and a number'],
    'generation-order': [
      'the generation does not follow that of its parent {parent}',
      '{expected}',
      'correct generation or from',
    ],
    'parent-loop': [
      'a variety descends from itself',
      'parents that are older: {loop}',
      'correct mother, father or from',
    ],
    'line-without-generation': ['a line has no generation', 'F1, F2, F3 …', 'fill in generation'],
    'from-unknown': [
      'the planting that the seed came from is not known',
      'season/planting, such as 2025/p17',
      'correct from',
    ],
    'first-grown-after-season': [
      'first_grown is later than a season in which it grew',
      '{season} or earlier',
      'correct first_grown',
    ],
    'event-unknown': [
      'an event that has no meaning to the figures is kept as a note',
      'first-ripe, unripe, lost …',
      'nothing to do',
    ],
    'event-near': [
      'an event is written nearly like a known one, and was kept as a note',
      '{near}',
      'write {near} if that is meant',
    ],
    'yield-not-recorded': [
      'nothing was picked and nothing says why; the yield counts as not recorded',
      'a picking, an event nothing-picked or lost, or harvests: complete for the season',
      'record what happened; it is not taken as 0',
    ],
    'ripening-not-dated': [
      'ripe fruit was picked, but without a date: when it ripened is not known',
      'a date beside a ripe picking, or an event first-ripe',
      'write the date of the first ripe fruit, or leave its ripening out',
    ],
    'ripening-not-recorded': [
      'nothing is recorded of this planting, in a season in which ripening was',
      'a first ripe day, a look, or when and why it was removed',
      'add what is known; until then it does not enter the days to first ripe fruit',
    ],
    'fruits-not-recorded': [
      'some pickings were weighed but not counted; the planting has no number of fruits',
      'fruits in every picking',
      'fill in fruits where it is known',
    ],
    'unweighed-fruits': [
      '{unweighed} of {fruits} fruits were not weighed; the mean fruit weight was used',
      'a weight in every picking',
      'nothing to do',
    ],
    'too-many-unweighed': [
      '{unweighed} of {fruits} fruits were not weighed ({percent} %); the planting has no yield',
      'at most a quarter unweighed',
      'fill in weights where they are known',
    ],
    'no-start-date': [
      'days to first ripe fruit cannot be counted without {column}',
      'a date in {column}',
      'fill it in, or give one for the season in trial.yaml',
    ],
    'block-left-out': [
      'the blocks were left out of the analysis',
      'a block for every planting, and varieties that share blocks within each class',
      'fill in block for every planting',
    ],
    'scores-by-one-taster': [
      'all scores are by one taster',
      'two tasters or more',
      'nothing to do; it is one person’s taste',
    ],
    'taster-one-score': [
      'one taster gave {scores} varieties the same score for {trait}',
      'scores that tell varieties apart',
      'look whether a column was filled down; the scores count as they stand',
    ],
    'totals-and-plantings': [
      'a variety is in plantings.csv and in totals.csv',
      'one of the two',
      'remove it from one of them',
    ],
    'totals-and-ratings': [
      'scores in totals.csv stand beside ratings.csv',
      'one of the two',
      'move the scores to ratings.csv',
    ],
    'totals-and-harvests': [
      '{planting} has totals and pickings: they would count twice',
      'either a total or dated pickings of a planting',
      'take the planting out of totals.csv or season.csv into plantings.csv, or take its pickings out',
    ],
    'yaml-unreadable': [
      'the settings cannot be read: {detail}',
      'YAML',
      'check indentation, colons and quotation marks near this place',
    ],
    'setting-unknown': ['an unknown setting', '{keys}', 'correct the name'],
    'setting-missing': ['the setting {setting} is missing', 'a value', 'add it'],
    'setting-unfit': ['the setting {setting} cannot be used', '{expected}', 'correct the value'],
    'trait-unknown-in-goals': [
      '{setting} names a trait that is not declared',
      '{traits}',
      'correct the name, or declare the trait under traits',
    ],
    'goal-without-direction': [
      'a goal is set for a trait without a good direction',
      'better: higher, lower or between',
      'give the trait a direction, or remove the goal',
    ],
    'scales-mixed': ['classes have different scales', 'one scale for all classes', 'write the same scale everywhere'],
    'check-variety-elsewhere': [
      'the check variety of {class} is of class {other}',
      'a variety of class {class}',
      'correct check_variety',
    ],
    'range-cuts-off': [
      'the range of {trait} in class {class} cuts off {percent} % of the expected values',
      'good and bad far enough apart that most values fall between them',
      'widen good and bad of {trait}, or leave them out: they are then worked out from the class',
    ],
    'season-setting-unused': [
      'settings are given for a season without a folder',
      'a folder data/ of that year',
      'correct the year, or remove the setting',
    ],
    'content-unreadable': ['the text cannot be read', 'Markdown in UTF-8', 'save it again as UTF-8'],
    'front-matter': [
      'the page starts with a block of settings, which is not read and never run',
      'words in Markdown from the first line on',
      'remove the block between its marks',
    ],
    'content-unused': [
      'a text belongs to no page',
      'content/index.md, content/seasons/YEAR.md, content/varieties/ID.md or content/pages/NAME.md',
      'rename it',
    ],
    'live-unknown': [
      'a live figure names “{said}”, which the records do not have',
      '{names}',
      'correct the name, or write the sentence without the live figure',
    ],
    'photo-missing': [
      'there is no such photo',
      'a file of content/photos, as in ![what it shows](photos/bed.jpg)',
      'put the photo into content/photos, or correct its name',
    ],
    'photo-unreadable': [
      'a photo cannot be read: {reason}',
      'a JPEG, PNG, WebP, AVIF, TIFF or GIF',
      'save it again as JPEG, or remove it',
    ],
    'photo-without-text': [
      'a photo has no words for those who cannot see it',
      'what it shows, between the square brackets',
      'write ![what it shows](photos/name.jpg)',
    ],
    'address-lost': [
      'an address published before would lead nowhere: {address}',
      'the page it had, or a variety that names it in former_ids',
      'put the variety or season back, add its id to former_ids of its successor, or delete the line of data/addresses.csv',
    ],
    'address-unfit': [
      'this is not the address of a page',
      'an address as a build wrote it, such as /2026/',
      'put the address back as it was, or delete the line',
    ],
  } as ProblemTexts,
  methods: {
    title: 'Methods',
    all: methods,
    formulas: {
      variety: 'variety',
      block: 'block',
      weight: 'weight',
      fruits: 'fruits',
      'such that': 'such that',
      variance: 'variance',
      where: 'where',
      'does with': 'does with',
      'at most 1, that is the variance of a number': 'at most 1, that is the variance of a number',
      weights: 'weights',
      CV: 'CV',
      'a plant': 'a plant',
      interval: 'interval',
      together: 'together',
      with: 'with',
      error: 'error',
      mean: 'mean',
      LSD: 'LSD',
      MS: 'MS',
      and: 'and',
      separated: 'separated',
      difference: 'difference',
      'against the check': 'against the check',
      correlations: 'correlations',
      limits: 'limits',
      likelihood: 'likelihood',
      on: 'on',
      'degrees of freedom': 'degrees of freedom',
      'plants of the variety': 'plants of the variety',
      base: 'base',
      'the mean capped': 'the mean capped',
      'both temperatures first brought between base and cap': 'both temperatures first brought between base and cap',
      score: 'score',
      taster: 'taster',
      'cut to the scale': 'cut to the scale',
      power: 'power',
      '0.8': '0.8',
      'chi-square': 'chi-square',
      flat: 'flat',
      'half-normal': 'half-normal',
      given: 'given',
      'weighted mean of': 'weighted mean of',
      'its values':
        '0.5 on logarithms, a quarter of the scale for ratings, 0.25 for shares, the SD of the variety means for measures',
      points: 'points',
      value: 'value',
      bad: 'bad',
      good: 'good',
      'cut to 0 and 100': 'cut to 0 and 100',
      'score of all': 'score',
      'weight of a goal': 'weight',
      share: 'share',
      'seasons in which it earns a spot': 'seasons in which it earns a spot',
      'seasons drawn': 'seasons drawn',
      settled: 'settled',
      keep: 'keep',
      drop: 'drop',
    } as Readonly<Record<string, string>>,
    settings: settingsRows,
    settingsTitle: 'Settings of this trial',
    settingsCaption: 'Settings that the figures rest on',
    setting: 'Setting',
    value: 'Value',
    assumes: 'Assumes',
    limits: 'Limits',
    source: 'Source',
    cover: {
      title: 'How often the intervals hold',
      text: 'Random gardens were drawn from known truths, 2,000 a setting with 14 varieties, and the share of 95 % intervals that hold the truth was counted, with the share of gardens without any real difference in which letters separate something. Where plants stand together and their places differ as much as the plants themselves, the assumed spot correlation of 0.2 is too small and the intervals are too narrow; where places do not differ at all, they are too wide. At a coefficient of variation of 60 % and few plants they hold in 91 to 93 of 100, and letters separate equal varieties in 9 to 12 of 100 gardens where plants are spread.',
      caption: 'Cover of 95 % intervals in per cent, and gardens in which letters separate equal varieties',
      /** Words of the rows; those not named stand as they are. */
      values: {} as Readonly<Record<string, string>>,
      head: ['Trait', 'Plants a variety', 'CV of a plant', 'CV of a spot', 'Layout', 'Cover', 'Letters separate'],
    },
    kept: {
      title: 'Whether the shares keep their word',
      text: 'Gardens were drawn with known truths (yield, flavour and first ripe fruit as goals; 1 to 5 seasons, 5 to 30 varieties, 1 to 6 plants), advised, and judged by the next season that was then drawn. In the model a variety said to earn a spot in 80 of 100 seasons earns it in about 80, and no tenth of the shares is off by more than 2. The shares are then too cautious where varieties change less from season to season than assumed and the records are few: after a single season of varieties that differ by 15 or 30 %, what is said to be 75 is earned in about 92 of 100, and what is said to be 15 in fewer than 10; over two seasons they are off by up to 10, over one to five by up to 8. Where traits pull against each other, or varieties differ twice as much as assumed, high shares promise up to 4 too much. The list was in no setting shown to be worse than either simple rule.',
      tenthsCaption: 'Drawn from the model: shares said and earned, in 100 seasons',
      /** Names of the gardens; those not named stand as they are. */
      gardens: {} as Readonly<Record<string, string>>,
      tenthsHead: ['Share', 'Said / earned'],
      caption:
        'Largest distance between said and earned in any tenth; points a spot that the list gives above two simple rules; verdicts in per cent',
      head: [
        'Gardens',
        'Number',
        'Brier score',
        'Largest distance, at shares',
        'Against what beat the check this year',
        'Against the highest means',
        'Keep / try again / no room / drop',
      ],
    },
  },
  handout: {
    title: (year: string) => `The ${year} trial on two sides`,
    intro: (place: string, date: string) => `${place === '' ? '' : `${place}. `}Recorded to ${date}.`,
    verdicts: (year: string, simulations: string) =>
      `What to grow in ${year}: of 100 simulated seasons (${simulations} drawn from all records), those in which a variety earns one of its class’s spots. Each filled square is five of them.`,
    older: 'Advice stands on the handout of the last season only.',
    class: 'Class',
    howToRead: (of100: string) =>
      `An interval in brackets is made so that it holds what it is about in ${of100} of 100 such trials; n says how many plantings, or tasters, stand behind a figure. Whether two varieties are separated in this trial is said by the letters on the season’s page, not by whether their intervals overlap. One summer is one summer.`,
    cautions:
      'Hot peppers burn skin and eyes: gloves, and away from children. Fruit of unknown crosses is not for eating. Peppers and tomatoes are preserved by tested recipes only. Treated seed is not for eating or feeding.',
    site: 'Everything in full:',
  },
  glossary: {
    title: 'Glossary',
    terms: [
      ['Variety', 'What is compared: a cultivar, a hybrid or a line in progress.'],
      ['Planting', 'The unit of every comparison: one plant, or plants of one variety recorded together.'],
      ['Class', 'Varieties that compete for the same spots, such as sweet peppers.'],
      ['Check variety', 'The known standard of a class, grown each year to compare with.'],
      ['New, returning', 'New in its first season of the trial; returning in every later one.'],
      ['Block', 'Plantings grouped because their places are alike.'],
      ['n', 'How many plantings (or tasters, or seeds) a figure rests on.'],
      ['Interval', 'From where to where the true figure may well lie, given these plants.'],
      [
        'Prediction interval',
        'From where to where a variety’s own mean may well lie in an average next season; a good or bad year, and which plants you happen to raise, come on top.',
      ],
      ['CV', 'Coefficient of variation: how much plants of one variety differ, in per cent of their mean.'],
      ['Letters', 'Two varieties that share a letter are not separated in this trial.'],
      ['LSD', 'Least significant difference: the smallest difference of two means that counts as separated.'],
      ['F', 'Whether the varieties of a class differ at all.'],
      ['Median days', 'The day by which half of the plantings had a ripe fruit.'],
      ['Degree days', 'Days counted by their warmth above a base temperature.'],
      ['Seen', 'What this season’s plants did.'],
      ['Expected', 'What an average next season is likely to bring, from all seasons together.'],
      ['Pull', 'How far an expected value is drawn to its class because the records are thin.'],
      ['Spot', 'A place for one variety of a class next season.'],
      ['Bar', 'What a variety must reach to earn a spot: a newcomer in the middle of its class, or the check variety.'],
      ['Share', 'Of 100 simulated next seasons, those in which a variety earns a spot.'],
      ['Score', 'Weighted mean of the points, 0 to 100, that a variety gets for what counts.'],
      ['Keep, drop, no room, try again', 'The four verdicts; the methods page says where their limits lie.'],
      ['Line', 'A cross in progress, generation by generation (F2, F3 …).'],
      ['Cull', 'A fruit that cannot be used.'],
    ] as readonly (readonly [string, string])[],
  },
  nextSeason: {
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
        : `The list for ${spots === 1 ? 'the spot' : `the ${spots} spots`}${names.length === 1 ? '' : ', in order of share'}: ${listed(names)}. ${names.length === 1 ? `It earns its spot in ${right} simulated seasons` : `Of these ${names.length}, ${right} ${right === '1.0' ? 'is' : 'are'} expected to be right`}.`,
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
    edge: 'on the edge: another seed could turn it',
    untested: 'the records do not show that it keeps a limit that must not be missed, so it cannot be a keep',
    alone: 'alone in its class: no more than the toss of a coin',
    must: (trait: string, least: string | null, most: string | null) =>
      `Must not be missed: ${trait}${least === null ? '' : ` at least ${least}`}${most === null ? '' : ` at most ${most}`}.`,
    seenNothing: 'nothing picked',
    seenNoneRipe: 'none ripened',
    onlyContainers: 'Known from containers only.',
    onlyTopped: 'Known from topped plants only.',
    notGrown: (year: string) => `Last grown in ${year}; it stands on its older seasons.`,
    reason: (trait: string, value: string, bar: string, points: string, isFor: boolean) =>
      `${capital(trait)}: ${value} expected, ${bar} for the bar; ${points} points ${isFor ? 'for' : 'against'} it.`,
    against: (text: string) => `Against that: ${text}`,
    reasonCut: (trait: string, value: string, bar: string, points: string, isFor: boolean) =>
      `${capital(trait)}: ${value} expected, ${bar} for the bar; but what lies outside the range that counts makes it ${points} points ${isFor ? 'for' : 'against'} it.`,
    reasonSpread: (trait: string, value: string, _bar: string, points: string, isFor: boolean) =>
      `${capital(trait)}: ${value} expected, as for the bar; how far it may lie from that makes it ${points} points ${isFor ? 'for' : 'against'} it.`,
    reasonEqual: (trait: string, value: string) => `${capital(trait)}: ${value} expected, no different from the bar.`,
    isBar: 'It is the bar itself.',
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
  },
  yourWeights: {
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
  },
};

/** The words of one language. */
export type Words = typeof english;
