import { languageOf } from '../../terms/languages.ts';
import type { Language } from '../../terms/languages.ts';
import { english } from './en/index.ts';
import { german } from './de/index.ts';
import type { Words } from './en/index.ts';

const CATALOGUES: Readonly<Record<Language, Words>> = { en: english, de: german };

/** Words of a language tag; English for a tag that `check` refuses. */
export function wordsFor(language: string): Words {
  return CATALOGUES[languageOf(language) ?? 'en'];
}

/** Name of a trait: from the catalogue where it always exists, else its key as the trial wrote it. */
export function traitName(key: string, words: Words): string {
  return words.traits[key] ?? key.replaceAll('_', ' ');
}
