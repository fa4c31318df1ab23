import { english } from './english.ts';
import type { Words } from './english.ts';

/** Words of a language tag; English where there is no translation. */
export function wordsFor(_language: string): Words {
  return english;
}

/** Name of a trait: from the catalogue where it always exists, else its key as the trial wrote it. */
export function traitName(key: string, words: Words): string {
  return words.traits[key] ?? key.replaceAll('_', ' ');
}
