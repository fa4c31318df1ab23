import { listed } from './shared.ts';

const plants = (n: number): string => (n === 1 ? 'one plant' : `${n} plants`);

/** Words of next season's plan and its sheets. */
export const plan = {
  title: (year: string) => `The plan for ${year}`,
  lead: (count: string, varieties: number, fresh: number) =>
    `${count} plants of ${varieties} ${varieties === 1 ? 'variety' : 'varieties'}${fresh === 0 ? '' : `, ${fresh} of them new`}. Anything may be moved by hand: what stands in plantings.csv stays.`,
  sheets: 'Sheets to print',
  who: 'Who, and how many',
  listed: (name: string, n: number, share: string) =>
    `${name}: ${plants(n)}. It earns a spot in ${share} of 100 simulated seasons.`,
  wished: (name: string, n: number) => `${name}: ${plants(n)}.`,
  fresh: (name: string, n: number) => `${name}: new, ${plants(n)}. A first look: what does well gets more next year.`,
  line: (name: string, n: number) => `${name}: ${plants(n)} of a cross; look at each by itself.`,
  isCheck: 'It is the check variety.',
  settles: (chance: string) => `Its season settles whether to keep it in ${chance} of 100.`,
  waiting: (names: readonly string[]) => `Waiting for another year: ${listed(names)}.`,
  cut: (names: readonly string[]) => `On the list, but without a place: ${listed(names)}.`,
  freePlaces: (n: number) => (n === 1 ? 'One place stays free.' : `${n} places stay free.`),
  tells: 'What it can tell',
  ratio: (name: string, percent: string) =>
    `${name}: a difference of ${percent} in yield between two varieties is told four times in five, if plants differ as they did.`,
  noRatio: (name: string) => `${name}: how much plants differ is not known yet, so neither is what will be told.`,
  blocks: (n: number, within: string, without: string, df: number) =>
    n === 1
      ? `One block; average variance of a difference ${within} (of one plant 1); ${df} degrees of freedom.`
      : `${n} blocks; average variance of a difference ${within}, without blocks ${without} (of one plant 1); ${df} degrees of freedom.`,
  everyBlock: 'Every variety stands in every block.',
  together: (one: string, two: string) =>
    `Where plants of a variety stand side by side, each has two clumps: less to write down. Six plants in one clump tell as much as ${one} that stand apart, in two clumps as much as ${two}.`,
  apart: 'Where plants of a variety stand apart it is since neighbours resemble each other: label each twice.',
  firstLook: 'One plant is a first look, not a judgement: at_least in wishes.csv asks for more.',
  map: 'Where they stand',
  bed: (bed: string, part: string) => (part === '' ? bed : `${bed}, ${part}`),
  part: (from: number, to: number) => `columns ${from} to ${to}`,
  rowsPart: (from: number, to: number) => `rows ${from} to ${to}`,
  north: { top: 'north ↑', bottom: 'north ↓', left: 'north ←', right: 'north →' },
  mapNote: 'A thick line parts blocks; a cell has the row and column of the table.',
  dates: 'When',
  datesCaption: 'Sowing, raising and planting out',
  datesHead: ['Class', 'Sow (± 1 week)', 'Pot on', 'Harden off', 'Plant out', 'Frost after, of 100'],
  noDates: 'No day of planting out is known: set plan.plant_out in trial.yaml.',
  frost: (chance: string, day: string, safe: string, risk: string) =>
    `Planted out on ${day}, a frost follows in ${chance} of 100 springs; in no more than ${risk} of 100 from ${safe} on.`,
  frostFrom: (springs: number, hasStated: boolean) =>
    `From ${springs === 0 ? 'the day stated' : `${springs === 1 ? 'one spring' : `${springs} springs`} recorded${hasStated ? ' and the day stated' : ''}`}, taking springs to differ as they do in one cool country. It is the thermometer’s frost: ask neighbours too.`,
  unseen: (n: number) =>
    n === 1
      ? 'One spring shows no frost since its record began: it counts as late as it can be.'
      : `${n} springs show no frost since their records began: they count as late as they can be.`,
  ripe: 'First ripe fruit',
  ripeHead: ['Variety', 'Expected', 'Ripe in time, of 100', 'Plant out at the latest', 'In the warmth of'],
  ofClass: (day: string) => `${day} (its class’s middle)`,
  packet: (days: string) => `packet: ${days} days`,
  inWarmth: (day: string, year: string) => `${year}: ${day}`,
  seed: 'Seed',
  seedCaption: 'Seed for the plants that are planned',
  seedHead: ['Variety', 'Plants', 'Sow', 'At hand', 'Buy', 'Lots'],
  seedNote:
    'Seeds for the plants and one spare for every four, with a chance of 95 of 100, from what came up so far; seed nobody tested is taken to come up four times in five, loosely.',
  saving: (names: readonly string[]) =>
    `${listed(names)}: seed is to be saved, so ${names.length === 1 ? 'it is' : 'they are'} moved towards the middle of the class as far as blocks allow. Bag a flower or cage the plant: no distance in a garden keeps pollen out.`,
  cautions: {
    hot: 'Seedlings and fruit of hot varieties: gloves, nothing near the eyes, no children.',
    treated: 'Treated seed is not food: gloves, and out of reach of children.',
    local: 'Planting out depends on the place: ask growers nearby.',
  },
  tasting: 'Tasting',
  tastingText: (tasters: number, samples: string, day: string) =>
    `${tasters} ${tasters === 1 ? 'taster' : 'tasters'}, ${samples} each${day === '' ? '' : `, on ${day}`}. Codes stand on the ballots; the key is the last sheet.`,
  samples: (n: number) => (n === 1 ? '1 sample' : `${n} samples`),
  files: 'To go on',
  filesText: (year: string) =>
    `The tables of ${year} lie beside this page. keeprow plan --take puts them into data/${year}, and changes nothing that stands there.`,
  label: { place: 'place', pot: 'pot' },
  picking: 'Picking',
  pickingHead: ['Plant', 'Place'],
  pickingNote: 'In walking order. Fruits and weight, a column a day.',
  looks: 'Looks',
  looksHead: ['Plant', 'Place', 'First flower', 'First set', 'First ripe', 'Lost, and why'],
  looksNote: 'A column a look: tick it while all fruit is unripe.',
  measuring: 'Measuring',
  ballot: (name: string) => `Ballot: ${name}`,
  ballotHead: ['Order', 'Code'],
  again: 'Again?',
  key: 'Key of the tasting: for whoever serves',
  keyHead: ['Code', 'Variety'],
  checklist: 'What to do when',
  todo: {
    sow: (names: readonly string[]) => `Sow ${listed(names)}.`,
    potOn: (names: readonly string[]) => `Pot on ${listed(names)}.`,
    hardenOff: (names: readonly string[]) => `Harden off ${listed(names)}.`,
    plantOut: (names: readonly string[]) => `Plant out ${listed(names)}: two labels each.`,
    look: (days: number) => `First look for ripe fruit, then every ${days === 1 ? 'day' : `${days} days`}.`,
    taste: 'Tasting.',
    end: 'Strip everything; mark green fruit as green.',
  },
  published: {
    title: (year: string) => `What will be grown in ${year}`,
    lead: (count: number, varieties: number) =>
      `${count} plants of ${varieties} ${varieties === 1 ? 'variety' : 'varieties'} are planned.`,
    of: (name: string, n: number) => `${name} (${n})`,
  },
};
