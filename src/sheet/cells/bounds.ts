import { nth } from '../../numerics/element.ts';

/** A value of which only a limit is known, or that it was too small to tell. */
export type Bound =
  | { readonly kind: 'below' | 'above'; readonly limit: string }
  | { readonly kind: 'trace'; readonly limit: '' };

const INITIALS = new Set([...'<>≤≥tTsS'].map((sign) => sign.charCodeAt(0)));
const TRACE = /^(?:trace|traces|tr\.?|spur|spuren)$/i;

/** False for nearly every cell: one that cannot be a limit or a trace. */
export function mayBeBound(cell: string): boolean {
  const first = cell.charCodeAt(0);
  // Digits begin most cells.
  return (first < 48 || first > 57) && INITIALS.has(cell.trimStart().charCodeAt(0));
}

/** A cell such as <5, > 20 g or trace; null for anything else. The limit is the text after the sign. */
export function parseBound(text: string): Bound | null {
  if (!INITIALS.has(text.charCodeAt(0))) return null;
  if (TRACE.test(text)) return { kind: 'trace', limit: '' };
  const limited = /^(<=?|>=?|≤|≥)\s*(\S.*)$/.exec(text);
  if (!limited) return null;
  return { kind: '<≤'.includes(nth(nth(limited, 1), 0)) ? 'below' : 'above', limit: nth(limited, 2) };
}
