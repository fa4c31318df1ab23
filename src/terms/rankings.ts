import type { VarietyId } from './ids.ts';
import type { Place } from './place.ts';

/** What a member was sent: a variety under a label. */
export interface Sent {
  readonly garden: string;
  readonly variety: VarietyId;
  /** As it stands on the packet; null where it is the variety's own name. */
  readonly label: string | null;
  readonly place: Place;
}

/** What a member preferred of what was sent: groups, the best first; those of a group are alike. */
export interface Answer {
  readonly garden: string;
  readonly trait: string;
  readonly order: readonly (readonly VarietyId[])[];
}
