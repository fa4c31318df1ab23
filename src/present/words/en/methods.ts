import type { Settings } from '../../../terms/settings.ts';
import { variable as v } from '../methods.ts';
import { lineForecasts, lineMethods } from './lineMethods.ts';
import { planMethods } from './planMethods.ts';
import type { Method } from '../methods.ts';

/** Every method behind the figures, with a trial's settings in the text. */
function all(settings: Settings): readonly Method[] {
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
        'Yield and fruits enter as the ratio scale has them, whichever scale the season’s tables use. Yield, fruits and days work on logarithms, ratings and measures as they are, shares from 0 to 1, what members preferred on logarithms of worths. A yield of nothing enters as the log of half the smallest planting of the class, with a margin as wide as its distance from the class, unless the class gave nothing at all, which tells its varieties from nothing; a variety that never ripened as later than the season’s end, with the spread of the season.',
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
        `${settings.verdicts.simulations} next seasons are drawn with seed ${settings.verdicts.seed}: spreads, class means and varieties jointly, and a new season for each variety and trait. They come in pairs that lie opposite each other and one from each part of their range, so that chance alone moves a share by a third of a hundredth at the most (standard error, with as many as are drawn by default). Values become points from 0 to 100, straight from bad to good and flat outside; where no range is set it runs over the class’s middle less and plus two standard deviations between varieties, so that the weights weigh what they say. The score is the weighted mean of the points.`,
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
    ...lineMethods,
    ...planMethods,
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

export const methods = {
  title: 'Methods',
  all,
  formulas: {
    variety: 'variety',
    block: 'block',
    garden: 'garden',
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
      '0.5 on logarithms, a quarter of the scale for ratings, 0.25 for shares, 1 for what members prefer, the SD of the variety means for measures',
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
  lineForecasts,
  kept: {
    title: 'Whether the shares keep their word',
    text: 'Gardens were drawn with known truths (yield, flavour and first ripe fruit as goals; 1 to 5 seasons, 5 to 30 varieties, 1 to 6 plants), advised, and judged by the next season that was then drawn. In the model a variety said to earn a spot in 85 of 100 seasons earns it in about 86, and no tenth of the shares is off by more than 3. Where varieties differ more or less than assumed, over one to five seasons the shares are off by up to 4; after a single season they are too cautious by up to 9 (σ_w is a third of σ_v there: what is said to be 85 is earned in 86 to 94). Where varieties change from season to season as much as they differ, which one season cannot show, they promise too much: of what is said to be 85, 73 is earned over one to five seasons and 66 after a single one. Where traits pull against each other, high shares promise up to 6 too much; where they go together, up to 8 too little. The list was in no setting shown to be worse than either simple rule.',
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
};
