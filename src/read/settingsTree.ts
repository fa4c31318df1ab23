import { isAlias, isMap, isScalar, isSeq, LineCounter, parseDocument } from 'yaml';
import type { Document, Node as YamlNode } from 'yaml';
import type { Place } from '../terms/place.ts';
import { nth } from '../numerics/element.ts';

/** A settings file as a tree with places; nothing is judged. */
export type SettingsNode =
  | { readonly kind: 'map'; readonly place: Place; readonly entries: readonly SettingsEntry[] }
  | { readonly kind: 'list'; readonly place: Place; readonly items: readonly SettingsNode[] }
  | {
      readonly kind: 'scalar';
      readonly place: Place;
      readonly value: string | number | boolean | null;
      readonly text: string;
    };

export interface SettingsEntry {
  readonly key: string;
  readonly place: Place;
  readonly node: SettingsNode;
}

export type SettingsFault = { readonly kind: 'fault'; readonly place: Place; readonly detail: string };

const DEEPEST = 20;
/** Settings of a thousand classes are shorter. */
const LONGEST = 200_000;

/**
 * Reads a YAML file into a tree with places.
 *
 * @param file  its path, for places
 * @param text  the file
 * @returns     the tree, or the first thing that keeps it from being one
 */
export function readSettingsTree(file: string, text: string): SettingsNode | SettingsFault {
  const lines = new LineCounter();
  const at = (offset: number): Place => {
    const { line, col } = lines.linePos(offset);
    return { file, line: Math.max(1, line), column: Math.max(1, col) };
  };
  if (text.length > LONGEST)
    return { kind: 'fault', place: at(0), detail: `the file is over ${LONGEST / 1000},000 characters long` };
  const document: Document.Parsed = parseDocument(text, { lineCounter: lines, prettyErrors: false });
  const fault = document.errors[0];
  if (fault) return { kind: 'fault', place: at(fault.pos[0]), detail: nth(fault.message.split('\n'), 0) };
  let tooDeep: Place | null = null;
  const visit = (node: YamlNode | null, depth: number, place: Place): SettingsNode => {
    const here = node?.range ? at(node.range[0]) : place;
    if (depth > DEEPEST || isAlias(node)) {
      tooDeep ??= here;
      return { kind: 'scalar', place: here, value: null, text: '' };
    }
    if (isMap(node)) {
      const entries = node.items.map((pair) => {
        const keyNode = pair.key as YamlNode;
        const keyPlace = keyNode.range ? at(keyNode.range[0]) : here;
        const key = isScalar(keyNode) ? (keyNode.source ?? String(keyNode.value)) : '';
        return { key, place: keyPlace, node: visit(pair.value as YamlNode | null, depth + 1, keyPlace) };
      });
      return { kind: 'map', place: here, entries };
    }
    if (isSeq(node)) {
      return { kind: 'list', place: here, items: node.items.map((item) => visit(item as YamlNode, depth + 1, here)) };
    }
    const value: unknown = isScalar(node) ? node.value : null;
    const plain = typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean' ? value : null;
    return { kind: 'scalar', place: here, value: plain, text: isScalar(node) ? (node.source ?? String(value)) : '' };
  };
  const tree = visit(document.contents, 0, at(0));
  if (tooDeep)
    return {
      kind: 'fault',
      place: tooDeep,
      detail: 'anchors, aliases and more than 20 levels are not used in settings',
    };
  return tree;
}
