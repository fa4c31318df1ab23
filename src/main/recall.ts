import { createHash } from 'node:crypto';
import { serialize } from 'node:v8';
import type { Recall } from '../terms/recall.ts';

/** Results by the digest of a work's name and its whole input. */
export type Remembered = ReadonlyMap<string, unknown>;

export interface Memory {
  readonly recall: Recall;
  /** Begins a run: what neither it nor the one before has used is forgotten. */
  readonly begin: () => void;
  /** True where anything is remembered from a run before. */
  readonly isWarm: () => boolean;
  /** Takes over what another thread, or a run before, has worked out. */
  readonly add: (entries: Remembered) => void;
  /** What this run has used. */
  readonly entries: () => Remembered;
}

/** Opens a memory of results, two runs deep. */
export function openMemory(): Memory {
  let now = new Map<string, unknown>();
  let before = new Map<string, unknown>();
  return {
    recall(name, input, work) {
      const key = createHash('sha256').update(name).update('\0').update(serialize(input)).digest('base64');
      const result = now.has(key) ? now.get(key) : before.has(key) ? before.get(key) : work(input);
      now.set(key, result);
      // The same name and the same bytes of input: the work that made it was the same.
      return result as ReturnType<typeof work>;
    },
    begin() {
      before = now;
      now = new Map();
    },
    isWarm: () => before.size > 0,
    add: (entries) => entries.forEach((result, key) => now.set(key, result)),
    entries: () => now,
  };
}
