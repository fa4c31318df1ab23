import { builtInTraits } from '../../terms/traits.ts';
import type { Better, DeclaredTrait } from '../../terms/traits.ts';
import type { StateTrait } from '../../terms/lines.ts';
import type { TraitRange } from '../../terms/settings.ts';
import type { SettingsNode } from '../../read/settingsTree.ts';
import { unitOf } from '../../sheet/cells/units.ts';
import { below, takeKnown, takeLimit, takeMap, takeNumber, takeText, takeWord, unfit } from './take.ts';
import type { Taking } from './take.ts';
import { takeState } from './states.ts';
import { keyed } from '../../numerics/element.ts';

export interface TraitSettings {
  /** Traits of which every plant shows one of a few states. */
  readonly states: ReadonlyMap<string, StateTrait>;
  readonly traits: ReadonlyMap<string, DeclaredTrait>;
  readonly ranges: ReadonlyMap<string, ReadonlyMap<string, TraitRange>>;
}

const BETTER = ['higher', 'lower', 'between', 'none'] as const;
const KEY = /^[a-z][a-z0-9_]*$/;

/** Unit a declared measure is stored in, and what one declared unit is in it; other units are kept as they are. */
function measureUnit(unit: string): { readonly unit: string; readonly factor: number } {
  if (unit === 'mm') return { unit: 'mm', factor: 1 };
  const length = unitOf('length', unit);
  if (length) return { unit: 'cm', factor: length.factor };
  const mass = unitOf('mass', unit);
  if (mass) return { unit: 'g', factor: mass.factor };
  return { unit, factor: 1 };
}

function scaled(limit: ReturnType<typeof takeLimit>, factor: number): ReturnType<typeof takeLimit> {
  if (limit === null || typeof limit === 'number') return limit === null ? null : limit * factor;
  return [limit[0] * factor, limit[1] * factor];
}

function takeRange(entries: ReturnType<typeof takeMap>, factor: number, taking: Taking): TraitRange {
  const good = takeLimit(entries.get('good')?.node, below(taking, 'good'));
  const bad = takeLimit(entries.get('bad')?.node, below(taking, 'bad'));
  return { good: scaled(good, factor), bad: scaled(bad, factor) };
}

/** `{good, bad}` for all classes, or a map of classes with `{good, bad}` each. */
function takeRanges(
  node: SettingsNode,
  classes: readonly string[],
  factor: number,
  taking: Taking,
): ReadonlyMap<string, TraitRange> {
  const all = takeMap(node, taking);
  const ranges = new Map<string, TraitRange>();
  if (all.has('good') || all.has('bad')) ranges.set('*', takeRange(all, factor, taking));
  for (const [key, entry] of all) {
    if (!classes.includes(key)) continue;
    const at = below(taking, key);
    ranges.set(key, takeRange(takeKnown(entry.node, ['good', 'bad'], at), factor, at));
  }
  return ranges;
}

function takeDeclared(
  key: string,
  node: SettingsNode,
  classes: readonly string[],
  taking: Taking,
): DeclaredTrait | null {
  const known = ['kind', 'from', 'to', 'better', 'unit', 'good', 'bad', ...classes];
  const entries = takeKnown(node, known, taking);
  const kind = takeWord(
    entries.get('kind')?.node,
    ['rating', 'yes-no', 'measure', 'state'] as const,
    below(taking, 'kind'),
  );
  if (!entries.has('kind')) taking.log.add('setting-missing', node.place, key, { setting: `${taking.path}.kind` });
  const better: Better = takeWord(entries.get('better')?.node, BETTER, below(taking, 'better')) ?? 'none';
  if (kind === 'yes-no') return { key, kind, better: better === 'none' && !entries.has('better') ? 'higher' : better };
  if (kind === 'rating') {
    const limits = { from: -1000, to: 1000 };
    const from = takeNumber(entries.get('from')?.node, limits, below(taking, 'from'));
    const to = takeNumber(entries.get('to')?.node, limits, below(taking, 'to'));
    if (!entries.has('from') || !entries.has('to')) {
      taking.log.add('setting-missing', node.place, key, {
        setting: `${taking.path}.${entries.has('from') ? 'to' : 'from'}`,
      });
      return null;
    }
    if (from === null || to === null) return null;
    if (from >= to) {
      unfit(keyed(entries, 'to').node, below(taking, 'to'), `a number over ${from}`);
      return null;
    }
    return { key, kind, from, to, better };
  }
  if (kind === 'measure') {
    const unit = takeText(entries.get('unit')?.node, below(taking, 'unit'));
    if (!entries.has('unit')) taking.log.add('setting-missing', node.place, key, { setting: `${taking.path}.unit` });
    return unit === null ? null : { key, kind, better, ...measureUnit(unit) };
  }
  return null;
}

/** True for a trait that says it is of a kind. */
const isOfKind = (node: SettingsNode, kind: string): boolean =>
  node.kind === 'map' &&
  node.entries.some(({ key, node: own }) => key === 'kind' && own.kind === 'scalar' && own.text === kind);

/**
 * The `traits` part of trial.yaml.
 *
 * @param node     the part, undefined where it is absent
 * @param classes  class ids, which may stand below a trait for ranges by class
 */
export function takeTraits(node: SettingsNode | undefined, classes: readonly string[], taking: Taking): TraitSettings {
  const traits = new Map<string, DeclaredTrait>([['again', { key: 'again', kind: 'yes-no', better: 'higher' }]]);
  const ranges = new Map<string, ReadonlyMap<string, TraitRange>>();
  const states = new Map<string, StateTrait>();
  for (const [key, entry] of takeMap(node, taking)) {
    const at = below(taking, key);
    if ((builtInTraits as readonly string[]).includes(key)) {
      takeKnown(entry.node, ['good', 'bad', 'better', ...classes], at);
      ranges.set(key, takeRanges(entry.node, classes, 1, at));
      continue;
    }
    if (!KEY.test(key) || key === '__proto__' || key === 'constructor') {
      taking.log.add('setting-unfit', entry.place, key, {
        setting: at.path,
        expected: 'lower-case letters, digits and underscores, a letter first',
      });
      continue;
    }
    if (isOfKind(entry.node, 'ranking')) {
      takeKnown(entry.node, ['kind', 'good', 'bad', ...classes], at);
      traits.set(key, { key, kind: 'ranking', better: 'higher' });
      ranges.set(key, takeRanges(entry.node, classes, 1, at));
      continue;
    }
    if (isOfKind(entry.node, 'state')) {
      const own = takeState(key, entry.node, classes, at);
      if (own) states.set(key, own);
      continue;
    }
    const trait = takeDeclared(key, entry.node, classes, at);
    if (!trait) continue;
    traits.set(key, trait);
    ranges.set(key, takeRanges(entry.node, classes, trait.kind === 'measure' ? trait.factor : 1, at));
  }
  return { traits, ranges, states };
}
