import type { StateTrait } from '../../terms/lines.ts';
import { nearestName } from '../../terms/names.ts';
import type { SettingsNode } from '../../read/settingsTree.ts';
import { below, takeKnown, takeList, takeNumber, takeText, unfit } from './take.ts';
import type { Taking } from './take.ts';

/** Most states of a trait. */
const MOST_STATES = 8;

/** One state or a list of them; a word that is none of the states is reported. */
function takeGood(node: SettingsNode | undefined, states: readonly string[], taking: Taking): readonly string[] | null {
  if (!node) return null;
  const words = node.kind === 'list' ? takeList(node, taking) : [takeText(node, taking)].filter((own) => own !== null);
  const known = (words ?? []).filter((word) => {
    if (states.includes(word)) return true;
    const near = nearestName(word, states);
    taking.log.add('good-not-a-state', node.place, word, {
      states: states.join(', '),
      ...(near === null ? {} : { near }),
    });
    return false;
  });
  return known.length > 0 ? known : null;
}

/**
 * A trait of kind `state`.
 *
 * @returns  null where it has no states that can be used
 */
export function takeState(
  key: string,
  node: SettingsNode,
  classes: readonly string[],
  taking: Taking,
): StateTrait | null {
  const entries = takeKnown(node, ['kind', 'states', 'called_wrong', 'good', ...classes], taking);
  const states = takeList(entries.get('states')?.node, below(taking, 'states'));
  if (!entries.has('states')) {
    taking.log.add('setting-missing', node.place, key, { setting: `${taking.path}.states` });
    return null;
  }
  const isFit = states !== null && states.length >= 2 && states.length <= MOST_STATES;
  if (!isFit || new Set(states).size < states.length) {
    const list = entries.get('states')?.node ?? node;
    if (states !== null) unfit(list, below(taking, 'states'), 'a list of 2 to 8 different words');
    return null;
  }
  const wrong = takeNumber(
    entries.get('called_wrong')?.node,
    { from: 0, to: 0.5, open: true },
    below(taking, 'called_wrong'),
  );
  const good = new Map<string, readonly string[]>();
  const all = takeGood(entries.get('good')?.node, states, below(taking, 'good'));
  if (all) good.set('*', all);
  for (const id of classes) {
    const entry = entries.get(id);
    if (!entry) continue;
    const at = below(taking, id);
    const own = takeGood(takeKnown(entry.node, ['good'], at).get('good')?.node, states, below(at, 'good'));
    if (own) good.set(id, own);
  }
  return { key, states, calledWrong: wrong ?? 0.02, good };
}
