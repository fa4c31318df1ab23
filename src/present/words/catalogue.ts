import { english } from './english.ts';
import { german } from './german.ts';
import type { Words } from './english.ts';

/** Translations by the first part of a language tag. */
const TRANSLATIONS: Readonly<Record<string, Words>> = { en: english, de: german };

/** Words of a language tag; English where there is no translation. */
export function wordsFor(language: string): Words {
  return TRANSLATIONS[language.toLowerCase().split('-')[0] ?? ''] ?? english;
}

/** Name of a trait: from the catalogue where it always exists, else its key as the trial wrote it. */
export function traitName(key: string, words: Words): string {
  return words.traits[key] ?? key.replaceAll('_', ' ');
}
