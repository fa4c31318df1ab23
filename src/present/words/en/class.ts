import { listed, capital } from './shared.ts';

export const report = {
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
};

export const charts = {
  drawnOf: (drawn: string, all: string) =>
    `Drawn are the first ${drawn} of ${all} varieties; all stand in the tables of this page.`,
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
    allRipe: (isWhole: boolean) => `every planting${isWhole ? '' : ' not lost by accident'} had ripe fruit by the end`,
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
};
