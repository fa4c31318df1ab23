import type { ClassSettings, Scale } from '../../terms/settings.ts';
import type { SettingsNode } from '../../read/settingsTree.ts';
import { below, takeKnown, takeMap, takeNumber, takeText, takeWord } from './take.ts';
import type { Taking } from './take.ts';
import { nth } from '../../numerics/element.ts';

const KEYS = [
  'name',
  'check_variety',
  'spots',
  'scale',
  'bar',
  'lines',
  'line_plants',
  'sow_weeks_before',
  'soil_min_c',
  'places',
  'newcomers',
];
const KEY = /^[a-z0-9][a-z0-9_-]*$/;

export interface ClassesTaken {
  readonly classes: ReadonlyMap<string, ClassSettings>;
  readonly scale: Scale;
}

/** The `classes` part of trial.yaml. All classes share one scale. */
export function takeClasses(node: SettingsNode | undefined, taking: Taking): ClassesTaken {
  const classes = new Map<string, ClassSettings>();
  const scales = new Map<Scale, SettingsNode>();
  for (const [id, entry] of takeMap(node, taking)) {
    const at = below(taking, id);
    if (!KEY.test(id)) {
      const expected = 'lower-case letters, digits, hyphens and underscores';
      taking.log.add('setting-unfit', entry.place, id, { setting: at.path, expected });
      continue;
    }
    const entries = takeKnown(entry.node, KEYS, at);
    const scaleNode = entries.get('scale')?.node;
    const scale = takeWord(scaleNode, ['ratio', 'difference'] as const, below(at, 'scale')) ?? 'ratio';
    if (!scales.has(scale)) scales.set(scale, scaleNode ?? entry.node);
    classes.set(id, {
      id,
      name: takeText(entries.get('name')?.node, below(at, 'name')) ?? id,
      checkVariety: takeText(entries.get('check_variety')?.node, below(at, 'check_variety')),
      spots: takeNumber(entries.get('spots')?.node, { from: 0, to: 100_000, whole: true }, below(at, 'spots')),
      bar: takeWord(entries.get('bar')?.node, ['newcomer', 'check'] as const, below(at, 'bar')) ?? 'newcomer',
      linesCompete:
        takeWord(entries.get('lines')?.node, ['compete', 'advise'] as const, below(at, 'lines')) === 'compete',
      linePlants:
        takeNumber(entries.get('line_plants')?.node, { from: 1, to: 1000, whole: true }, below(at, 'line_plants')) ??
        12,
      sowWeeksBefore: takeNumber(
        entries.get('sow_weeks_before')?.node,
        { from: 0, to: 30 },
        below(at, 'sow_weeks_before'),
      ),
      soilMinC: takeNumber(entries.get('soil_min_c')?.node, { from: -5, to: 40 }, below(at, 'soil_min_c')),
      places: takeNumber(entries.get('places')?.node, { from: 0, to: 100_000, whole: true }, below(at, 'places')),
      newcomers: takeNumber(
        entries.get('newcomers')?.node,
        { from: 0, to: 100_000, whole: true },
        below(at, 'newcomers'),
      ),
    });
  }
  if (scales.size > 1) {
    const other = nth([...scales], 1);
    taking.log.add('scales-mixed', other[1].place, other[0]);
  }
  return { classes, scale: [...scales.keys()][0] ?? 'ratio' };
}
