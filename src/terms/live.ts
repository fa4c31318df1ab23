/** A live figure or chart in the grower's words: `{yield of quarry-bell in 2026}`, `{chart yield of sweet in 2026}`. */
export interface LiveReference {
  /** The whole text between and with its braces. */
  readonly text: string;
  readonly index: number;
  readonly kind: 'figure' | 'expected' | 'verdict' | 'share' | 'chart';
  /** Trait of a figure, or kind of a chart; empty for verdict and share. */
  readonly what: string;
  /** Variety, or class of a chart, as written. */
  readonly of: string;
  readonly year: number | null;
}

const PATTERN = /\{\s*([a-z][a-z0-9_ -]*?)\s+of\s+([^{}]+?)(?:\s+in\s+(\d{4}))?\s*\}/giu;

/** Charts that the grower's words can name, for a class and season; those of `expected` and `shares` need no year. */
export const LIVE_CHARTS = ['yield', 'ratio', 'ripening', 'cumulative', 'fruit', 'tradeoff', 'shares'] as const;

/** Every live reference of a text, in order. */
export function liveReferences(text: string): readonly LiveReference[] {
  return [...text.matchAll(PATTERN)].map((match): LiveReference => {
    const [whole, said = '', of = '', year] = match;
    const [first = '', ...rest] = said.toLowerCase().split(/\s+/);
    const base = { text: whole, index: match.index, of: of.trim(), year: year === undefined ? null : Number(year) };
    if (first === 'chart' || first === 'expected') return { ...base, kind: first, what: rest.join('_') };
    if (said === 'verdict' || said === 'share') return { ...base, kind: said, what: '' };
    return { ...base, kind: 'figure', what: said.toLowerCase().replaceAll(' ', '_') };
  });
}

/** Name of a photo as the folder has it, from its address in the text: `photos/bed%201.jpg` is `bed 1.jpg`. */
export function photoName(address: string): string {
  const name = address.replace(/^(?:\.\.?\/)*photos\//, '').normalize('NFC');
  try {
    return decodeURIComponent(name).normalize('NFC');
  } catch {
    return name;
  }
}
