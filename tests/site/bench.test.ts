import type { VNode } from 'preact';
import { render } from 'preact-render-to-string';
import { describe, expect, it } from 'vitest';
import { FruitPicture } from '../../site/bench/fruit.tsx';
import { Bars, Strip, TimeAxis } from '../../site/bench/rows.tsx';
import { SeasonBySeason } from '../../site/bench/seasons.tsx';
import { ColourDot, Dots, Seeds, Stake, Verdict } from '../../site/bench/signs.tsx';
import type { Fruit } from '../../src/present/pages/fruit.ts';

const html = (node: VNode | null): string => (node === null ? '' : render(node));
const numbers = (text: string): readonly number[] => (text.match(/-?\d+(?:\.\d+)?/g) ?? []).map(Number);
const attribute = (text: string, name: string): readonly string[] =>
  [...text.matchAll(new RegExp(` ${name}="([^"]*)"`, 'g'))].map(([, value]) => value!);

describe('a fruit', () => {
  const block: Fruit = { form: 'block', length: 8, width: 6, measured: 2026, colour: '#c0281f' };
  const draw = (fruit: Fruit, label?: string) =>
    html(FruitPicture({ fruit, id: 'f', ...(label === undefined ? {} : { label }) }));
  const em = (text: string, name: string): number => Number(attribute(text, name)[0]!.replace('em', ''));

  it('is drawn in its measured size: an em is a centimetre', () => {
    const [one, two] = [draw(block), draw({ ...block, length: 16, width: 12 })];
    // 8 px of 20 to the centimetre are left for the edge.
    expect(em(one, 'width')).toBeCloseTo(6 + 0.4, 9);
    expect(em(two, 'width')).toBeCloseTo(12 + 0.4, 9);
    const body = (text: string): number =>
      Math.max(...numbers(/class="edge"/.test(text) ? attribute(text, 'd').at(0)! : '').map(Math.abs));
    expect(body(two) / body(one)).toBeCloseTo(2, 2);
  });
  it('lies in its drawing, whatever its form', () => {
    for (const form of ['block', 'horn', 'round', 'plum', 'cluster', 'long', 'pear', 'plain'] as const) {
      const text = draw({ ...block, form });
      const [, , w, h] = numbers(attribute(text, 'viewBox')[0]!);
      for (const [, x, y, d] of text.matchAll(/translate\(([\d.-]+) ([\d.-]+)\)"><path d="([^"]*)"/g)) {
        // Ends of the curves alone: their handles may lie outside.
        const ends = d!.split(/[A-Z]/).flatMap((part) => {
          const found = numbers(part);
          return found.length < 2 ? [] : [[found.at(-2)! + Number(x), found.at(-1)! + Number(y)] as const];
        });
        expect([form, ends.every(([ex, ey]) => ex >= 0 && ex <= w! && ey >= 0 && ey <= h! + 3)]).toEqual([form, true]);
      }
    }
  });
  it('wears its ripe colour, or is hatched where it is not known', () => {
    expect(draw(block)).toContain('fill="#c0281f"');
    expect(draw(block)).not.toContain('hatch');
    expect(draw({ ...block, colour: null })).toContain('class="hatch"');
    expect(draw({ ...block, colour: null })).toContain('clip-path="url(#cut-f)"');
  });
  it('is ornament unless it has words', () => {
    expect(draw(block)).toContain('aria-hidden="true"');
    expect(draw(block, 'Wren Hill, 8 cm long')).toContain('role="img" aria-label="Wren Hill, 8 cm long"');
  });
});

describe('a strip', () => {
  it('has its dot, its interval and its bar where the values lie, cut to the scale', () => {
    const text = html(Strip({ from: 0, to: 10, estimate: 5, low: 2.5, high: 12, bar: 7.5, plants: [1] }));
    expect(text).toContain('<line x1="75%" x2="75%" y1="0" y2="18" class="bar"');
    expect(text).toContain('x1="25%" x2="100%" y1="9" y2="9" class="ci"');
    expect(text).toContain('<circle cx="50%"');
    expect(text).toContain('x1="10%" x2="10%" y1="4" y2="14" class="tick"');
  });
  it('has no interval where there is none, and no dot without an estimate', () => {
    const text = html(Strip({ from: 0, to: 10, estimate: null, low: null, high: null }));
    expect(text).not.toContain('class="ci"');
    expect(text).not.toContain('<circle');
  });
});

describe('bars', () => {
  it('are as tall as their values, and the largest is told', () => {
    const text = html(Bars({ values: [10, 0, 40], max: 40, height: 42, marked: { at: 2, text: '40 g' } }));
    const [all] = attribute(text, 'd');
    expect([...all!.matchAll(/v(-[\d.]+)h/g)].map(([, value]) => Number(value))).toEqual([-10, -40]);
    expect([...all!.matchAll(/M([\d.]+) /g)].map(([, value]) => Number(value))).toEqual([0.06, 2.06]);
    expect(text).toContain('>40 g</text>');
  });
  it('have the first ripe fruit at its place along them', () => {
    const text = html(Bars({ values: [1, 1, 1, 1], max: 1, height: 20, foot: { estimate: 2, low: 1, high: 3 } }));
    expect(text).toContain('x1="25%" x2="75%"');
    expect(text).toContain('<svg x="50%"');
  });
  it('have words along their axis at the same places', () => {
    const text = html(TimeAxis({ steps: 4, marks: [{ at: 1, text: 'Aug' }] }));
    expect(text).toContain('x1="25%"');
    expect(text).toContain('>Aug</text>');
  });
});

describe('signs', () => {
  it('tell verdicts apart without colour', () => {
    const all = (['keep', 'try-again', 'no-room', 'drop', 'line'] as const).map((standing) =>
      html(Stake({ standing })),
    );
    expect(new Set(all).size).toBe(5);
    expect(html(Verdict({ standing: 'keep', word: 'keep' }))).toMatch(/class="v keep".*keep<\/span>$/);
  });
  it('fill a seed for five seasons of a hundred', () => {
    for (const [share, full] of [
      [0, 0],
      [0.94, 19],
      [1, 20],
    ] as const)
      expect(html(Seeds({ share })).match(/class="full"/g)?.length ?? 0).toBe(full);
  });
  it('count k of n as far as an eye can', () => {
    expect(html(Dots({ k: 3, n: 5 }))).toContain('●●●<span class="m">○○</span>');
    expect(Dots({ k: 30, n: 50 })).toBeNull();
  });
  it('show a colour that is not known as none', () => {
    expect(html(ColourDot({ colour: null }))).toContain('fill="none"');
    expect(html(ColourDot({ colour: '#fff' }))).toContain('fill="#fff"');
  });
});

describe('the seasons of a variety', () => {
  const point = { low: null, high: null, text: '5' };
  const picture = {
    trait: 'flavour',
    title: 'Flavour',
    years: ['2025', '2026?'],
    own: [{ ...point, at: 0, estimate: 2 }],
    others: [],
    band: [],
    next: { ...point, at: 1, estimate: 8, text: '8' },
    from: 2,
    to: 8,
    isLowerBetter: false,
  };
  const heights = (text: string): readonly number[] =>
    [...text.matchAll(/cy="([\d.]+)" r="5.5"/g)].map(([, y]) => Number(y));
  it('put what is better higher', () => {
    const [seen, next] = heights(html(SeasonBySeason({ picture, colour: '#f00' })));
    expect(seen).toBeGreaterThan(next!);
    const [early, late] = heights(
      html(SeasonBySeason({ picture: { ...picture, isLowerBetter: true }, colour: '#f00' })),
    );
    expect(early).toBeLessThan(late!);
  });
  it('say their figures to those who do not see them, and leave what is expected hollow', () => {
    const text = html(SeasonBySeason({ picture, colour: '#f00' }));
    expect(text).toContain('aria-label="Flavour: 2025 5; 2026? 8"');
    expect(text.match(/fill="#f00"/g)).toHaveLength(1);
  });
});
