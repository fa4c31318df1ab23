import type { Settings } from '../../terms/settings.ts';

/** One method: in words, in mathematics, with what it assumes, where it fails and where it comes from. */
export interface Method {
  readonly id: string;
  readonly title: string;
  readonly words: readonly string[];
  /** Formulas as HTML of our own: variables in italics, indices as sub- and superscripts. */
  readonly formulas: readonly string[];
  readonly assumes: string;
  readonly limits: string;
  readonly source: string;
}

const v = (name: string, index = '', power = ''): string =>
  `<var>${name}</var>${index === '' ? '' : `<sub>${index}</sub>`}${power === '' ? '' : `<sup>${power}</sup>`}`;

/** Every method behind the figures, with this trial's settings in the text. */
export function methods(settings: Settings): readonly Method[] {
  const level = `${settings.interval * 100} %`;
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
      formulas: [],
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
        'A picking that was counted but not weighed takes the mean fruit weight of its planting, else of its variety; a planting with more than a quarter of its fruits unweighed has no yield.',
        settings.scale === 'ratio'
          ? 'This trial uses the ratio scale: quasi-likelihood with a logarithmic link, variety + block, one fit a season over all classes. The variance of a weight grows with the square of its mean, that of a number with its mean. Without blocks the estimate is total over plants, exactly.'
          : 'This trial uses the difference scale: weighted least squares, variety + block, one fit a season over all classes.',
        `Plants side by side are alike. A planting of ${v('w')} plants has the variance below with a spot correlation ${v('ρ')} of ${rho}, a setting; where the plants of a variety stand together, the squared standard error of a variety with ${v('n')} plantings is multiplied besides. With ${v('ρ')} = 0 both would be the textbook’s.`,
      ],
      formulas:
        settings.scale === 'ratio'
          ? [
              `log ${v('μ', 'ij')} = ${v('variety', 'i')} + ${v('block', 'j')}`,
              `Var(weight) = ${v('φ')} ${v('μ', '', '2')} (${v('ρ')} + (1 − ${v('ρ')}) / ${v('w')}), &nbsp; Var(fruits) = ${v('φ')} ${v('μ')} (${v('ρ')} + (1 − ${v('ρ')}) / ${v('w')})`,
              `${v('φ')} = Σ (${v('y')} − ${v('μ')})<sup>2</sup> / variance function / df, &nbsp; CV = 100 √${v('φ')} a plant`,
              `interval: exp( log ${v('μ')} ± ${v('t', 'df')} · se ), &nbsp; together: se<sup>2</sup> × (1 + ${v('n')}${v('ρ')} / (1 − ${v('ρ')}))`,
            ]
          : [
              `${v('y', 'ij')} = ${v('variety', 'i')} + ${v('block', 'j')} + error, &nbsp; Var = ${v('σ', '', '2')} (${v('ρ')} + (1 − ${v('ρ')}) / ${v('w')})`,
              `interval: mean ± ${v('t', 'df')} · se, &nbsp; LSD = ${v('t', 'df')} √(2 MS / ${v('r')}), &nbsp; CV = 100 √MS / mean`,
              `together: se<sup>2</sup> × (1 + ${v('n')}${v('ρ')} / (1 − ${v('ρ')}))`,
            ],
      assumes:
        'One spread for all varieties and classes on the scale used; blocks add up without interaction. A block enters when every planting has one and each class hangs together through them; else where plants stand (ground, bed, pot, bag) takes its place where it connects a class.',
      limits: `With single plants of high spread the intervals are somewhat too narrow: see “How often the intervals hold” below. A variety of which nothing was picked has the estimate 0 without an interval.${settings.scale === 'difference' ? ' The LSD is printed only where replication is equal and F is significant.' : ''}`,
      source:
        'McCullagh & Nelder (1989) Generalized Linear Models ch. 8-9; Gomez & Gomez (1984) Statistical Procedures for Agricultural Research ch. 2; Searle, Speed & Milliken (1980) Am. Stat. 34:216 for means over blocks; Liang & Zeger (1986) Biometrika 73:13 for the variance',
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
      formulas: [
        `separated: |difference| &gt; ${v('q', '')}(${level}; ${v('k')}, df) / √2 · sed`,
        `against the check: difference ± ${v('d')}(${level}; correlations, df) · sed`,
        `F = (${v('Lm')})′ (${v('L')} Cov ${v('L')}′)<sup>−1</sup> (${v('Lm')}) / (${v('k')} − 1)`,
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
        `Days from ${settings.firstRipeFrom === 'sown' ? 'sowing' : 'planting out'} to the first ripe picking or note, whichever is earlier. A planting not ripe by the season’s end is unripe until then: it is not missing, and the last day is not its date. One lost to disease, pests or weakness can never ripen and stays unripe to the end of the curve; one lost by accident leaves at its removal.`,
        'Median seen: Kaplan-Meier, the first day on which half of the plantings had ripe fruit, with log-log limits. “Not reached” where fewer than half ripened.',
        'Model: log-normal accelerated failure time, a median for each variety, one spread for the season. A fruit found ripe ripened after the last look at an unripe plant, or after the look before by the season’s rhythm, whichever is later.',
      ],
      formulas: [
        `${v('S')}(${v('t')}) = Π (1 − ${v('d', 'i')} / ${v('n', 'i')}), &nbsp; limits: ${v('S')}(${v('t')})<sup>exp(± ${v('z')} se / log ${v('S')})</sup>`,
        `log ${v('T')} = ${v('variety', 'i')} + ${v('σ')} ${v('ε')}; &nbsp; likelihood Φ((log ${v('R')} − ${v('m')})/${v('σ')}) − Φ((log ${v('L')} − ${v('m')})/${v('σ')})`,
        `se × √(${v('n')} / (${v('n')} − ${v('p')})), &nbsp; ${v('t')} on ${v('n')} − ${v('p')} degrees of freedom`,
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
      formulas: [
        method === 1
          ? `max(0, (${v('T', 'max')} + ${v('T', 'min')}) / 2 − base), the mean capped`
          : `(${v('T', 'max')} + ${v('T', 'min')}) / 2 − base, both temperatures first brought between base and cap`,
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
      formulas: [
        `score = ${v('taster', 'j')} + ${v('variety', 'i')} + error; &nbsp; interval: mean ± ${v('t', 'df')} · se, cut to the scale`,
        `${v('W')} = 12 ${v('S')} / (${v('m', '', '2')}(${v('n', '', '3')} − ${v('n')}) − ${v('m')} Σ(${v('t', '', '3')} − ${v('t')}))`,
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
      formulas: [`mean ± ${v('t', 'df')} · se`],
      assumes: 'One spread for all varieties.',
      limits: 'Fruits of one plant are not replicates: n counts plantings.',
      source: 'Gomez & Gomez (1984) ch. 2',
    },
    {
      id: 'shares',
      title: 'Shares',
      words: [
        'Germinated, cropped at all, ripe by the end, off-type, unexpectedly hot: always k of n. For cropped and ripe only plantings of a single plant count.',
      ],
      formulas: [
        `(${v('k')} + ${v('z', '', '2')}/2 ± ${v('z')} √(${v('k')}(${v('n')} − ${v('k')})/${v('n')} + ${v('z', '', '2')}/4)) / (${v('n')} + ${v('z', '', '2')})`,
      ],
      assumes: 'Seeds and plants are independent of each other.',
      limits: '4 of 10 means anything from 17 to 69 % (95 %).',
      source: 'Wilson (1927) J. Am. Stat. Assoc. 22:209',
    },
    {
      id: 'claims',
      title: 'The packet’s claim',
      words: [
        'The claimed days or size against the interval seen: outside only where the whole interval is; inside where the estimate is; else not enough to tell. Claimed heat is in Scoville units of dry fruit, which tasters’ points cannot be turned into.',
      ],
      formulas: [],
      assumes: 'The claim is meant for conditions like these.',
      limits: 'Sixteen Scoville units to a part per million of capsaicinoids is the usual conversion of laboratories.',
      source: 'AOAC 995.03 for heat',
    },
    {
      id: 'power',
      title: 'What this trial could have seen',
      words: [
        'The difference that two varieties with the class’s median number of plantings must show to be separated (two-sided, by themselves) in four of five such seasons.',
      ],
      formulas: [
        `power = E<sub>s</sub>[ Φ(${v('δ')} − ${v('t')}${v('s')}) + Φ(−${v('δ')} − ${v('t')}${v('s')}) ] = 0.8, &nbsp; df · ${v('s', '', '2')} chi-square`,
      ],
      assumes: 'The season’s spread is the true one.',
      limits: 'Letters ask for more than this, since they guard all pairs at once.',
      source: 'Cohen (1988) Statistical Power Analysis for the Behavioral Sciences',
    },
    {
      id: 'expected',
      title: 'Expected next season',
      words: [
        'All seasons together. Each season’s estimate enters with its own standard error, widened for being estimated from few degrees of freedom; with two or fewer it is borrowed from the other seasons, and where no season has one it is assumed: a coefficient of variation of 40 % a plant for yield and fruits (common practice, no source), 15 % a planting for days, a fifth of the scale for a rating, 20 % for a measure (from memory). The page says of which variety.',
        'A variety’s part is pulled toward its class: the further, the fewer its plants and seasons and the more one variety changes from season to season. How far is printed with every expected value.',
        'Yield, fruits and days work on logarithms, ratings and measures as they are, shares from 0 to 1. A yield of nothing enters as the log of half the smallest planting of the class, with a margin as wide as its distance from the class; a variety that never ripened as later than the season’s end, with the spread of the season.',
        'The expected value is the variety’s in an average season, its interval a prediction: the change from season to season is in it. Good and bad years as such are not.',
      ],
      formulas: [
        `${v('θ', 'is')} = ${v('m', 'cs')} + ${v('v', 'i')} + ${v('w', 'is')} + ${v('e', 'is')}, &nbsp; ${v('v')} ~ N(0, ${v('σ', 'v', '2')}), ${v('w')} ~ N(0, ${v('σ', 'w', '2')}), ${v('e')} ~ N(0, se<sup>2</sup>)`,
        `se<sup>2</sup> × df / (df − 2); &nbsp; ${v('m')} flat; &nbsp; ${v('σ', 'v')} ~ half-normal(${v('A')}), ${v('σ', 'w')} ~ half-normal(${v('A')}/2)`,
        `given ${v('σ', 'v')}, ${v('σ', 'w')}: ${v('v', 'i')} = ${v('h', 'i')} × weighted mean of (${v('θ', 'is')} − ${v('m', 'cs')}), &nbsp; ${v('h', 'i')} = ${v('σ', 'v', '2')}${v('a', 'i')} / (1 + ${v('σ', 'v', '2')}${v('a', 'i')}), &nbsp; ${v('a', 'i')} = Σ 1 / (se<sup>2</sup> + ${v('σ', 'w', '2')})`,
        `${v('A')}: 0.5 on logarithms, a quarter of the scale for ratings, 0.25 for shares, the SD of the variety means for measures`,
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
        `Share at least ${settings.verdicts.keepFrom}: keep. Reaches the bar in less than ${settings.verdicts.dropBelow} of the seasons: drop. Share under ${settings.verdicts.dropBelow}, though it reaches the bar more often: no room. Else: try again. Within 0.01 of a limit the page says “on the edge”.`,
        'The list fills the spots in order of share, except with a variety that is to be dropped; the sum of the shares is how many of it are expected to be right.',
        'A limit that must not be missed fails a drawn season in which it is missed. On a trait never recorded for a variety it counts as not tested: not failed, but no keep. Where fruit was counted, the upper Wilson limit of k of n has to keep the limit.',
        'What one more season would settle: the score above what earns a spot is taken as normal, and another season with so many plants narrows the variety’s own part of it.',
        'Last winter’s advice: the same rule on the seasons before the last, judged by what the last one showed.',
      ],
      formulas: [
        `points = 100 (value − bad) / (good − bad), cut to 0 and 100; &nbsp; score = Σ weight · points / Σ weight`,
        `share = seasons in which it earns a spot / seasons drawn`,
        `settled: Φ((${v('μ')} − ${v('z', 'keep')} ${v('τ', '1')}) / ${v('δ')}) + Φ((${v('z', 'drop')} ${v('τ', '1')} − ${v('μ')}) / ${v('δ')}), &nbsp; ${v('δ', '', '2')} = ${v('τ', '', '2')} − ${v('τ', '1', '2')}`,
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

/** This trial’s settings, as the methods page prints them. */
export function settingsRows(settings: Settings): readonly (readonly [string, string])[] {
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
          `looks every ${own.lookEvery} days; harvests ${own.harvestsComplete ? 'complete' : 'partial'}${own.layout === null ? '' : `; layout ${own.layout}`}`,
        ] as const,
    ),
  ];
}
