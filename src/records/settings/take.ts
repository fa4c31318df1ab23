import { nearestName } from '../../terms/names.ts';
import type { Place } from '../../terms/place.ts';
import type { ProblemLog } from '../../terms/problem.ts';
import { dayOf } from '../../terms/day.ts';
import type { Day } from '../../terms/day.ts';
import type { SettingsNode } from '../../read/settingsTree.ts';

/** What a value of the settings is read with: where it stands in words, and the log for what is wrong. */
export interface Taking {
  readonly log: ProblemLog;
  /** The setting's path, such as `classes.sweet.spots`. */
  readonly path: string;
}

/** The setting below this one. */
export function below(taking: Taking, key: string): Taking {
  return { log: taking.log, path: taking.path === '' ? key : `${taking.path}.${key}` };
}

function unfit(node: SettingsNode, { log, path }: Taking, expected: string): null {
  const found = node.kind === 'scalar' ? node.text : node.kind === 'map' ? '{ … }' : '[ … ]';
  log.add('setting-unfit', node.place, found, { setting: path, expected });
  return null;
}

/** Entries of a map by key; a node that is no map is reported and empty. */
export function takeMap(node: SettingsNode | undefined, taking: Taking): ReadonlyMap<string, Entry> {
  const entries = new Map<string, Entry>();
  if (!node || (node.kind === 'scalar' && node.value === null)) return entries;
  if (node.kind !== 'map') {
    unfit(node, taking, 'settings below it, one on a line');
    return entries;
  }
  for (const entry of node.entries) entries.set(entry.key, entry);
  return entries;
}

export interface Entry {
  readonly key: string;
  readonly place: Place;
  readonly node: SettingsNode;
}

/** A map whose keys are all known; an unknown key is an error that offers the nearest. */
export function takeKnown(
  node: SettingsNode | undefined,
  keys: readonly string[],
  taking: Taking,
): ReadonlyMap<string, Entry> {
  const entries = takeMap(node, taking);
  for (const entry of entries.values()) {
    if (keys.includes(entry.key)) continue;
    const near = nearestName(entry.key, keys);
    taking.log.add('setting-unknown', entry.place, entry.key, {
      setting: taking.path,
      keys: keys.join(', '),
      ...(near === null ? {} : { near }),
    });
  }
  return entries;
}

/** Some text; numbers and truth values are taken as they are written. */
export function takeText(node: SettingsNode | undefined, taking: Taking): string | null {
  if (!node) return null;
  if (node.kind !== 'scalar' || node.value === null) return unfit(node, taking, 'text');
  return node.text.trim() === ''
    ? unfit(node, taking, 'text')
    : typeof node.value === 'string'
      ? node.value
      : node.text;
}

export interface NumberLimits {
  readonly from: number;
  readonly to: number;
  readonly whole?: boolean;
  /** The ends themselves do not count. */
  readonly open?: boolean;
}

export function takeNumber(node: SettingsNode | undefined, limits: NumberLimits, taking: Taking): number | null {
  if (!node) return null;
  const { from, to, whole = false, open = false } = limits;
  const value = node.kind === 'scalar' ? node.value : null;
  const inside = typeof value === 'number' && (open ? value > from && value < to : value >= from && value <= to);
  if (inside && (!whole || Number.isInteger(value))) return value;
  const kind = whole ? 'a whole number' : 'a number';
  const range = to === Infinity ? `of ${from} or more` : open ? `between ${from} and ${to}` : `from ${from} to ${to}`;
  return unfit(node, taking, from === -Infinity ? kind : `${kind} ${range}`);
}

export function takeWord<W extends string>(
  node: SettingsNode | undefined,
  words: readonly W[],
  taking: Taking,
): W | null {
  if (!node) return null;
  const text = node.kind === 'scalar' ? node.text : '';
  const word = words.find((w) => w === text);
  return word ?? unfit(node, taking, words.join(' or '));
}

/** An ISO date. */
export function takeDay(node: SettingsNode | undefined, taking: Taking): Day | null {
  if (!node) return null;
  const match = node.kind === 'scalar' ? /^(\d{4})-(\d{2})-(\d{2})$/.exec(node.text) : null;
  const day = match ? dayOf(Number(match[1]), Number(match[2]), Number(match[3])) : null;
  return day ?? unfit(node, taking, 'a date such as 2026-05-20');
}

/** One number, or two in order. */
export function takeLimit(node: SettingsNode | undefined, taking: Taking): number | readonly [number, number] | null {
  if (!node) return null;
  if (node.kind === 'scalar' && typeof node.value === 'number') return node.value;
  if (node.kind === 'list' && node.items.length === 2) {
    const [a, b] = node.items.map((item) =>
      item.kind === 'scalar' && typeof item.value === 'number' ? item.value : null,
    );
    if (typeof a === 'number' && typeof b === 'number' && a < b) return [a, b];
  }
  return unfit(node, taking, 'a number, or two numbers in order such as [12, 18]');
}

export function takeList(node: SettingsNode | undefined, taking: Taking): readonly string[] | null {
  if (!node) return null;
  if (node.kind === 'list') {
    return node.items.map((item) => takeText(item, taking)).filter((item) => item !== null);
  }
  return unfit(node, taking, 'a list such as [source, notes]');
}

export { unfit };
