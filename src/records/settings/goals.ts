import { nearestName } from '../../terms/names.ts';
import { goodStates } from '../../terms/lines.ts';
import type { StateTrait } from '../../terms/lines.ts';
import type { ClassSettings } from '../../terms/settings.ts';
import { builtInTraits, countedShares } from '../../terms/traits.ts';
import type { DeclaredTrait } from '../../terms/traits.ts';
import type { SettingsNode } from '../../read/settingsTree.ts';
import { below, takeKnown, takeMap, takeNumber } from './take.ts';
import type { Taking } from './take.ts';

type Classes = ReadonlyMap<string, ClassSettings>;
type Traits = ReadonlyMap<string, DeclaredTrait>;

function isKnownTrait(key: string, traits: Traits): boolean {
  return traits.has(key) || (builtInTraits as readonly string[]).includes(key);
}

function* byClass(node: SettingsNode | undefined, classes: Classes, taking: Taking) {
  for (const [id, entry] of takeMap(node, taking)) {
    if (classes.size > 0 && !classes.has(id)) {
      const near = nearestName(id, classes.keys());
      taking.log.add('setting-unknown', entry.place, id, {
        setting: taking.path,
        keys: [...classes.keys()].join(', '),
        ...(near === null ? {} : { near }),
      });
      continue;
    }
    yield { id, entry, at: below(taking, id) };
  }
}

function unknownTrait(key: string, place: Parameters<Taking['log']['add']>[1], traits: Traits, taking: Taking): void {
  const names = [...builtInTraits, ...traits.keys()];
  const near = nearestName(key, names);
  taking.log.add('trait-unknown-in-goals', place, key, {
    setting: taking.path,
    traits: names.join(', '),
    ...(near === null ? {} : { near }),
  });
}

export interface GoalsTaken {
  readonly goals: ReadonlyMap<string, ReadonlyMap<string, number>>;
  readonly stateGoals: ReadonlyMap<string, ReadonlyMap<string, number>>;
}

/** The `goals` part: what counts in a class, and how much. */
export function takeGoals(
  node: SettingsNode | undefined,
  classes: Classes,
  traits: Traits,
  states: ReadonlyMap<string, StateTrait>,
  taking: Taking,
): GoalsTaken {
  const goals = new Map<string, ReadonlyMap<string, number>>();
  const stateGoals = new Map<string, ReadonlyMap<string, number>>();
  for (const { id, entry, at } of byClass(node, classes, taking)) {
    const weights = new Map<string, number>();
    const ofStates = new Map<string, number>();
    for (const [key, goal] of takeMap(entry.node, at)) {
      const state = states.get(key);
      if (state) {
        if (goodStates(state, id) === null)
          taking.log.add('goal-on-state-without-good', goal.place, key, {
            state: state.states.join(' or '),
            class: id,
          });
        const weight = takeNumber(goal.node, { from: 0, to: 1000 }, below(at, key));
        if (weight !== null) ofStates.set(key, weight);
        continue;
      }
      if (!isKnownTrait(key, traits)) {
        unknownTrait(key, goal.place, traits, at);
        continue;
      }
      if (traits.get(key)?.better === 'none')
        taking.log.add('goal-without-direction', goal.place, key, { setting: at.path });
      const weight = takeNumber(goal.node, { from: 0, to: 1000 }, below(at, key));
      if (weight !== null) weights.set(key, weight);
    }
    goals.set(id, weights);
    if (ofStates.size > 0) stateGoals.set(id, ofStates);
  }
  return { goals, stateGoals };
}

/** The `must` part: what must not be missed. */
export function takeMust(
  node: SettingsNode | undefined,
  classes: Classes,
  traits: Traits,
  taking: Taking,
): ReadonlyMap<string, ReadonlyMap<string, { readonly atMost: number | null; readonly atLeast: number | null }>> {
  const must = new Map<string, ReadonlyMap<string, { atMost: number | null; atLeast: number | null }>>();
  const any = { from: -Infinity, to: Infinity };
  for (const { id, entry, at } of byClass(node, classes, taking)) {
    const limits = new Map<string, { atMost: number | null; atLeast: number | null }>();
    for (const [key, limit] of takeMap(entry.node, at)) {
      if (!isKnownTrait(key, traits) && !(countedShares as readonly string[]).includes(key)) {
        unknownTrait(key, limit.place, traits, at);
        continue;
      }
      const here = below(at, key);
      const own = takeKnown(limit.node, ['at_most', 'at_least'], here);
      limits.set(key, {
        atMost: takeNumber(own.get('at_most')?.node, any, below(here, 'at_most')),
        atLeast: takeNumber(own.get('at_least')?.node, any, below(here, 'at_least')),
      });
    }
    must.set(id, limits);
  }
  return must;
}
