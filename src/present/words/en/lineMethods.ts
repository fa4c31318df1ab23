import type { Method } from '../methods.ts';

/** Methods behind the pages of crosses and of seed. */
export const lineMethods: readonly Method[] = [
  {
    id: 'genes',
    title: 'Genes of a cross',
    words: [
      'Of the genes in which two parents differ, half as many are mixed in each selfed generation as in the one before. Where flowers stood open, seed may be of foreign pollen: the share is then given for the most that the species takes, as if that pollen differed in every gene.',
      'Counts of an F2 are set against the ratios that one gene or two give. A ratio is named while its exact P-value is at least 0.05 and the F1 and the parents, where they were seen, allow it. A tray of seedlings replaces the plants that came from it. No ratio is said to be the right one.',
      'How a plant breeds is worked out from the whole pedigree by peeling: one gene (prior 0.6), two genes (0.3) or none of these (0.1), ratios of as many genes alike and the ways of assigning states alike; genes are not linked, parents true. The priors are a judgement. A plant is called wrongly with the chance of the settings. “Breeds true” is the chance among the gene models; what is said of next year’s plants has “none of these” with every share of offspring alike.',
      'The chance of at least one wanted plant is worked out within each model and genotype and then averaged; the shares of several traits are multiplied. Seed of squash and melon from open flowers, more than four states and backcrosses are counted only.',
      'Off-types: the upper limit of their share is exact and one-sided (95 %).',
    ],
    assumes: 'Selfed seed; genes that are not linked; states that are called alike by everyone.',
    limits:
      'Wrong calls hurt most: where 8 plants of 100 are called wrongly and 2 are assumed, of plants said to breed true in 92 of 100 78 do. How much is in the table “Whether forecasts for crosses keep their word”.',
    source:
      'Falconer & Mackay (1996) Introduction to Quantitative Genetics; Elston & Stewart (1971) Hum. Hered. 21:523; Clopper & Pearson (1934) Biometrika 26:404; UPOV test guidelines for off-types',
  },
  {
    id: 'passed-on',
    title: 'Which plants of a cross to carry',
    words: [
      'The variance of a line’s single plants is set against that of the single plants of fixed varieties beside them, on the working scale of the trait: a ratio with its F interval. Fixed varieties of the class count; of all classes where there are too few and the scale is logarithmic.',
      'How much of a plant’s deviation is inherited has a prior that is low for yield, days and ratings and open for measures, and takes in every season in which the cross stood beside fixed varieties. What is passed on is that share of the plant’s deviation from its sisters. Plants are ranked by the points of the class’s goals; points of a state are its share of offspring. The chance to be truly among the best is counted in draws.',
      'As many mothers are named as come within 3 % of the best number: by the value of the plant that would finally be chosen, or by the chance of a wanted plant where that asks for more.',
      'What last year’s choice gave is the difference to the same check variety in both seasons; a share that comes back is told only from six families on.',
      'The chance that one of so many plants passes a measured threshold is not told: in trials of the rule 63 of 100 were said and 88 happened.',
    ],
    assumes: 'Traits are independent; a line and the fixed varieties stand alike.',
    limits: 'With ten plants the inherited share is hardly known. One outlying plant can make a line seem to vary.',
    source: 'Falconer & Mackay (1996) ch. 8–11; Ben Chaim & Paran (2000) for what fruit size passes on',
  },
  {
    id: 'seed',
    title: 'Seed, and when to sow',
    words: [
      'Germination is thought to fall with age on the probit scale: from a start that differs from lot to lot, by a speed that differs too and is slower in the cold. Tests and sowings of a lot are taken in with what seeds of one sowing have in common. Seeds to sow are the fewest that give the plants wanted with the chance of the settings, everything that is not known included. Sowings on paper and in soil count alike.',
      'The chance of a frost after a day is a prediction from the last frosts of at least three springs whose weather begins 14 days before and has no longer gap than three days after. Sowing lies as many weeks before as the class says.',
    ],
    assumes: 'Seed kept dry; loss with age as of pepper seed where nothing else is known.',
    limits:
      'A lot that ages twice as fast as thought gives too few plants; a fresh test cures that. The last frost depends on the place.',
    source:
      'Ellis & Roberts (1980) Ann. Bot. 45:13; Demir et al. (2009) HortScience 44:1679; Yildirim et al. (2020) Not. Bot. Horti Agrobot. 48(3)',
  },
];

/** How the forecasts fared in random crosses. */
export const lineForecasts = {
  title: 'Whether forecasts for crosses keep their word',
  text: 'Random crosses were drawn from known genes, forecast, and judged by the offspring that were then drawn: of 100, what was said and what happened. An F2 of 12 plants with an F3 of 8; 10 plants beside 18 degrees of freedom of fixed varieties; a lot of which 20 seeds were tested.',
  caption: 'Said → happened, of 100',
  head: ['Rule', 'Said → happened'],
  /** Names of the rows; those not named stand as they are. */
  rules: {
    'spread of 8 plants, 0 inherited': 'spread of 8 plants, nothing inherited: limits that hold; shown to vary',
    'spread of 8 plants, 0.5 inherited': 'the same, half inherited',
    'spread of 8 plants, 0.8 inherited': 'the same, four fifths inherited',
    'truly the best, 0.1 inherited': 'truly the best of ten, a tenth inherited; passed on, in SDs of a plant',
    'truly the best, 0.3 inherited': 'the same, three tenths inherited',
    'truly the best, 0.6 inherited': 'the same, six tenths inherited',
    'the same, ageing twice as fast': 'the same, of seed that ages twice as fast',
  } as Readonly<Record<string, string>>,
};
