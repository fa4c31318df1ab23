import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { growersWords } from '../../src/present/growersWords.ts';

// commonmark-spec 0.31.2 (CC BY-SA 4.0): the examples of the CommonMark specification.
interface Example {
  readonly number: number;
  readonly section: string;
  readonly markdown: string;
  readonly html: string;
}
const { tests } = createRequire(import.meta.url)('commonmark-spec') as { readonly tests: readonly Example[] };

/** Raw HTML is shown as text, never passed on. */
const RAW_HTML = new Set([
  21,
  31,
  ...Array.from({ length: 44 }, (_, i) => 148 + i),
  201,
  308,
  309,
  344,
  475,
  476,
  477,
  491,
  494,
  524,
  536,
  613,
  614,
  615,
  616,
  617,
  623,
  625,
  626,
  627,
  628,
  629,
  630,
  631,
  642,
  643,
]);
/** An image is a photo of the trial folder, or its description alone. */
const IMAGES = new Set([517, 520, 531, ...Array.from({ length: 18 }, (_, i) => 572 + i), 591]);

const tabs = (text: string): string => text.replaceAll('→', '\t');
/** HTML has no slash in an empty element and no meaning in a line end there. */
const plain = (html: string): string =>
  html.replaceAll(/<(br|hr) \/>/g, '<$1>').replaceAll('<blockquote>\n</blockquote>', '<blockquote></blockquote>');
const shown = (markdown: string): string =>
  growersWords(new Map([['page', tabs(markdown)]]), { advice: null, pictures: new Map(), photos: new Map() }).get(
    'page',
  )!;

describe('the grower’s words as CommonMark', () => {
  it.each(
    tests
      .filter(({ number }) => !RAW_HTML.has(number) && !IMAGES.has(number))
      .map((own) => [own.number, own.section, own] as const),
  )('example %i, %s', (_, __, { markdown, html }) => {
    expect(shown(markdown)).toBe(plain(tabs(html)));
  });
  it('leaves no tag of the examples with raw HTML standing, and no image', () => {
    expect(tests).toHaveLength(652);
    for (const { number, markdown } of tests) {
      if (!RAW_HTML.has(number) && !IMAGES.has(number)) continue;
      expect(shown(markdown)).not.toMatch(/<(?!\/?(?:p|a|em|strong|code|pre|ul|ol|li|h[1-6]|blockquote|hr|br)\b)/);
    }
  });
});
