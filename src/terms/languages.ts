/** Languages that the pages and messages are written in, by the first part of their tag. A new one: words/README.md. */
export const LANGUAGES = ['en', 'de'] as const;

export type Language = (typeof LANGUAGES)[number];

/** The language of a tag (`de-AT` is `de`); null where there are no words of it. */
export function languageOf(tag: string): Language | null {
  const first = tag.toLowerCase().split('-')[0];
  return LANGUAGES.find((own) => own === first) ?? null;
}
