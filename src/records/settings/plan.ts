import type { SettingsNode } from '../../read/settingsTree.ts';
import { dayOf } from '../../terms/day.ts';
import type { DayOfYear, PlanSettings } from '../../terms/plan.ts';
import { below, takeKnown, takeMap, takeNumber, takeWord, unfit } from './take.ts';
import type { Taking } from './take.ts';

const KEYS = [
  'season',
  'seed',
  'layout',
  'plants',
  'keep_apart',
  'plant_out',
  'raise_weeks',
  'last_frost',
  'frost_risk',
  'tasting',
  'paper',
  'label_mm',
  'newcomer_plants',
];

/** `05-20`. */
function takeDayOfYear(node: SettingsNode | undefined, taking: Taking): DayOfYear | null {
  if (!node) return null;
  const match = node.kind === 'scalar' ? /^(\d{1,2})-(\d{1,2})$/.exec(node.text) : null;
  const [month, date] = [Number(match?.[1]), Number(match?.[2])];
  if (match && dayOf(2023, month, date) !== null) return { month, date };
  return unfit(node, taking, 'month and day such as 05-20');
}

/** Pairs of classes that are not to stand beside each other. */
function takePairs(
  node: SettingsNode | undefined,
  classes: readonly string[],
  taking: Taking,
): PlanSettings['keepApart'] {
  if (!node) return [];
  const expected = `pairs of classes, such as [[hot, sweet]]; the classes are ${classes.join(', ')}`;
  if (node.kind !== 'list') {
    unfit(node, taking, expected);
    return [];
  }
  return node.items.flatMap((item): PlanSettings['keepApart'] => {
    const [a, b, ...more] =
      item.kind === 'list' ? item.items.map((own) => (own.kind === 'scalar' ? own.text : '')) : [];
    if (a !== undefined && b !== undefined && more.length === 0 && classes.includes(a) && classes.includes(b))
      return [[a, b]];
    unfit(item, taking, expected);
    return [];
  });
}

function takeRaiseWeeks(node: SettingsNode | undefined, classes: readonly string[], taking: Taking) {
  const weeks = new Map<string, number>();
  for (const [id, entry] of takeMap(node, taking)) {
    const here = below(taking, id);
    if (!classes.includes(id)) {
      unfit(entry.node, here, `one of the classes: ${classes.join(', ')}`);
      continue;
    }
    const own = takeNumber(entry.node, { from: 0, to: 30 }, here);
    if (own !== null) weeks.set(id, own);
  }
  return weeks;
}

function takeLastFrost(node: SettingsNode | undefined, taking: Taking): PlanSettings['lastFrost'] {
  const own = takeKnown(node, ['day', 'later_in'], taking);
  const day = takeDayOfYear(own.get('day')?.node, below(taking, 'day'));
  const laterIn = takeNumber(own.get('later_in')?.node, { from: 0, to: 1, open: true }, below(taking, 'later_in'));
  return day && { day, laterIn: laterIn ?? 0.5 };
}

const TASTING = { tasters: 8, samples: 5 } as const;

function takeTasting(node: SettingsNode | undefined, taking: Taking): PlanSettings['tasting'] {
  const own = takeKnown(node, ['day', 'tasters', 'samples'], taking);
  const count = (key: 'tasters' | 'samples', to: number): number =>
    takeNumber(own.get(key)?.node, { from: 1, to, whole: true }, below(taking, key)) ?? TASTING[key];
  return {
    day: takeDayOfYear(own.get('day')?.node, below(taking, 'day')),
    tasters: count('tasters', 500),
    samples: count('samples', 100),
  };
}

const LABEL = [60, 20] as const;

function takeLabel(node: SettingsNode | undefined, taking: Taking): readonly [number, number] {
  if (!node) return LABEL;
  const [width, height] =
    node.kind === 'list' ? node.items.map((own) => (own.kind === 'scalar' ? Number(own.value) : Number.NaN)) : [];
  const isFit = (size: number | undefined): size is number => size !== undefined && size >= 10 && size <= 180;
  if (isFit(width) && isFit(height)) return [width, height];
  unfit(node, taking, 'width and height in mm, from 10 to 180, such as [60, 20]');
  return LABEL;
}

/** The `plan` part of trial.yaml. */
export function takePlan(node: SettingsNode | undefined, classes: readonly string[], taking: Taking): PlanSettings {
  const own = takeKnown(node, KEYS, taking);
  const entry = (key: string): readonly [SettingsNode | undefined, Taking] => [own.get(key)?.node, below(taking, key)];
  const [seasonNode, atSeason] = entry('season');
  const [seedNode, atSeed] = entry('seed');
  const [riskNode, atRisk] = entry('frost_risk');
  const [newNode, atNew] = entry('newcomer_plants');
  return {
    season: takeNumber(seasonNode, { from: 1900, to: 2200, whole: true }, atSeason),
    seed: takeNumber(seedNode, { from: 0, to: 2 ** 31 - 1, whole: true }, atSeed) ?? 1,
    layout: takeWord(entry('layout')[0], ['spread', 'together'] as const, entry('layout')[1]) ?? 'spread',
    plants: takeWord(entry('plants')[0], ['by-share', 'equal'] as const, entry('plants')[1]) ?? 'by-share',
    keepApart: takePairs(entry('keep_apart')[0], classes, entry('keep_apart')[1]),
    plantOut: takeDayOfYear(...entry('plant_out')),
    raiseWeeks: takeRaiseWeeks(entry('raise_weeks')[0], classes, entry('raise_weeks')[1]),
    lastFrost: takeLastFrost(...entry('last_frost')),
    frostRisk: takeNumber(riskNode, { from: 0, to: 1, open: true }, atRisk) ?? 0.1,
    tasting: takeTasting(...entry('tasting')),
    paper: takeWord(entry('paper')[0], ['A4', 'Letter'] as const, entry('paper')[1]) ?? 'A4',
    labelMm: takeLabel(...entry('label_mm')),
    newcomerPlants: takeNumber(newNode, { from: 1, to: 50, whole: true }, atNew) ?? 1,
  };
}
