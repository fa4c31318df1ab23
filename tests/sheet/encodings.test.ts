import { describe, expect, it } from 'vitest';
import { sortFiles } from '../../src/records/folder.ts';
import { checkTrial } from '../../src/records/trial.ts';

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

/** A folder whose table of varieties has these bytes. */
function checked(varieties: Uint8Array) {
  const files = {
    'data/trial.yaml': utf8('title: Letters\n'),
    'data/varieties.csv': varieties,
    'data/2026/totals.csv': utf8('variety,plants,again\na,3,yes\nb,2,no\n'),
  };
  const found = Object.entries(files).map(([path, bytes]) => ({ path, bytes }));
  const { trial, problems } = checkTrial(sortFiles(found, [], true));
  return {
    names: trial?.varieties.map(({ name }) => name),
    problems: problems.map(({ code, places: [place] }) => `${code}:${place?.line}`),
  };
}

const TABLE = 'variety,name\na,Grün\nb,Blé – été\n';

describe('letters of a table', () => {
  it('are read from UTF-8 with and without a mark, and from UTF-16 with one', () => {
    const utf16 = (bigEndian: boolean): Uint8Array => {
      const bytes = Buffer.from(`\ufeff${TABLE}`, 'utf16le');
      return new Uint8Array(bigEndian ? bytes.swap16() : bytes);
    };
    for (const bytes of [utf8(TABLE), utf8(`\ufeff${TABLE}`), utf16(false), utf16(true)])
      expect(checked(bytes)).toEqual({ names: ['Grün', 'Blé – été'], problems: [] });
  });
  it('are read from Windows-1252, and that is said at the first of them', () => {
    // ü 0xfc, é 0xe9, – 0x96 in Windows-1252 (Unicode Consortium, CP1252.TXT)
    const codes: Readonly<Record<string, number>> = { ü: 0xfc, é: 0xe9, '–': 0x96 };
    const bytes = Uint8Array.from([...TABLE].map((letter) => codes[letter] ?? letter.charCodeAt(0)));
    expect(checked(bytes)).toEqual({ names: ['Grün', 'Blé – été'], problems: ['read-as-windows:2'] });
  });
  it('are refused where UTF-8 is broken, or a byte stands for nothing', () => {
    const broken = Uint8Array.from([...utf8(TABLE), ...utf8('c,'), 0xfc, 10]);
    expect(checked(broken).problems).toContain('not-utf8:4');
    const unused = Uint8Array.from([...utf8('variety,name\na,'), 0x81, 10]);
    expect(checked(unused).problems).toContain('not-utf8:2');
  });
});
