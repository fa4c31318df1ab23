/** Letters that hardly belong into a record: control characters, letters lost, Greek and Cyrillic, the backslash. */
// oxlint-disable-next-line no-control-regex -- these are looked for
export const ODD_LETTERS = /[\\\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u0370-\u052f\ufffd]/;

/** A quotation mark in the middle of a word, of a cell that none stands about. */
export const STRAY_QUOTE = /\p{L}"(?![",;|\t\r\n]|$)/mu;

/** Marks that nobody sees: widths of nothing, directions of writing, soft hyphens, byte order marks. */
export const INVISIBLES = /[\u00ad\u200b-\u200f\u202a-\u202e\u2060-\u2064\ufeff]/g;

/**
 * A name without what people write differently: case, accents, blanks, quotes, hyphens, underscores.
 * Two names with the same fold are the same name.
 */
export function foldName(name: string): string {
  return name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/ß/g, 'ss')
    .replace(INVISIBLES, '')
    .replace(/[\s\p{Pd}\p{Pi}\p{Pf}'"`´_]/gu, '');
}

/** A planting's id as ids are compared: without regard to case, or to how accents are put together. */
export function foldId(id: string): string {
  return id.normalize('NFC').toLowerCase();
}

/** A column's name as the contract compares it: case and the choice of blank, hyphen or underscore do not count. */
export function foldHeader(name: string): string {
  return name
    .normalize('NFC')
    .replace(INVISIBLES, '')
    .trim()
    .toLowerCase()
    .replace(/[\s\u00a0_-]+/g, '_');
}

/** Edits (letters put in, taken out, changed, or two neighbours swapped) between two words, at most `limit` + 1. */
function editDistance(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) > limit) return limit + 1;
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      let best = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + change);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) best = Math.min(best, before[j - 2]! + 1);
      row.push(best);
    }
    before = last;
    last = row;
  }
  return last[b.length]!;
}

/**
 * The nearest of some names, at most two edits away, one in a word of up to five letters.
 *
 * @returns the name, or null if none is near or two are equally near
 * @source Damerau (1964), Commun. ACM 7:171, for the edits counted
 */
export function nearestName(word: string, names: Iterable<string>): string | null {
  const folded = foldName(word);
  const limit = folded.length <= 5 ? 1 : 2;
  let best = limit + 1;
  let nearest: string | null = null;
  for (const name of names) {
    const distance = editDistance(folded, foldName(name), limit);
    if (distance < best) {
      best = distance;
      nearest = name;
    } else if (distance === best && best <= limit) {
      nearest = nearest !== null && foldName(nearest) === foldName(name) ? nearest : null;
    }
  }
  return best <= limit ? nearest : null;
}
