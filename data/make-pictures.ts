/**
 * Draws the demo's pictures of fruit into content/photos: `npx tsx data/make-pictures.ts`. Invented, as the varieties
 * are: whole fruit and halves on a board, drawn from the outlines and measures of the site.
 */
import { mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { h } from 'preact';
import { render } from 'preact-render-to-string';
import sharp from 'sharp';
import { FruitPicture } from '../site/bench/fruit.tsx';
import type { Fruit } from '../src/present/pages/fruit.ts';

const root = resolve(import.meta.dirname, '..');

const STYLE = `
.edge{fill:none;stroke:#3a2a1c;stroke-width:1.2;stroke-linejoin:round}.shade{fill:#000;opacity:.2}.light{fill:#fff;opacity:.5}
.ribs{fill:none;stroke:#000;stroke-opacity:.32;stroke-width:1.2;stroke-linecap:round}
.stem{fill:none;stroke:#5c7a3a;stroke-width:3.5;stroke-linecap:round}.leaf{fill:#5c7a3a;stroke:#3a2a1c}
.flesh{fill:none;stroke:#fff;stroke-opacity:.45}.seed{fill:#f4e6b8;stroke:#8a7440;stroke-width:.5}`;

/** A fruit's drawing with its foot at (x, y), `scale` px a centimetre, turned by some degrees. */
function placed(fruit: Fruit, id: string, [x, y]: readonly [number, number], scale: number, turn: number): string {
  const svg = render(h(FruitPicture, { fruit, id }));
  const [, w = 0, height = 0] = (/viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? []).map(Number);
  const inner = svg.replace(/^<svg[^>]*>|<\/svg>$/g, '');
  const k = scale / 20;
  const shadow = `<ellipse cx="${x}" cy="${y + 6}" rx="${(w * k) / 2.1}" ry="${scale * 0.35}" fill="#000" opacity=".28"/>`;
  return `${shadow}<g transform="translate(${x - (w * k) / 2} ${y - height * k}) rotate(${turn} ${(w * k) / 2} ${height * k}) scale(${k})">${inner}</g>`;
}

/** A cut half, seen from above: wall, chambers and seeds. */
function half([x, y]: readonly [number, number], r: number, colour: string, chambers: number): string {
  const parts = Array.from({ length: chambers }, (_, i) => {
    const angle = (2 * Math.PI * i) / chambers - Math.PI / 2;
    const [cx, cy] = [x + r * 0.46 * Math.cos(angle), y + r * 0.46 * Math.sin(angle)];
    const seeds = Array.from({ length: 7 }, (__, s) => {
      const turn = angle + (s - 3) * 0.16;
      const far = r * (0.26 + 0.07 * (s % 3));
      return `<ellipse class="seed" cx="${x + far * Math.cos(turn)}" cy="${y + far * Math.sin(turn)}" rx="${r * 0.045}" ry="${r * 0.032}"/>`;
    }).join('');
    return `<circle cx="${cx}" cy="${cy}" r="${r * 0.36}" fill="#000" opacity=".16"/>${seeds}`;
  }).join('');
  return `<ellipse cx="${x}" cy="${y + r * 0.16}" rx="${r}" ry="${r}" fill="#000" opacity=".25"/><circle cx="${x}" cy="${y}" r="${r}" fill="${colour}" stroke="#3a2a1c" stroke-width="1.5"/><circle cx="${x}" cy="${y}" r="${r * 0.9}" class="flesh" stroke-width="${r * 0.12}"/>${parts}`;
}

function board(content: string): string {
  const grain = Array.from(
    { length: 9 },
    (_, i) =>
      `<path d="M60 ${250 + i * 46}C300 ${236 + i * 46 + (i % 3) * 9} 640 ${268 + i * 46} 900 ${244 + i * 46 + (i % 2) * 12}" stroke="#7a5733" stroke-opacity=".35" stroke-width="${1 + (i % 3)}" fill="none"/>`,
  ).join('');
  return `<svg xmlns="http://www.w3.org/2000/svg" width="960" height="520" viewBox="10 176 940 509"><style>${STYLE}</style><rect width="960" height="720" fill="#2c3b38"/><path d="M0 110H960M0 676H960" stroke="#fff" stroke-opacity=".06" stroke-width="24"/><rect x="40" y="226" width="880" height="430" rx="26" fill="#a9804f"/><rect x="40" y="226" width="880" height="430" rx="26" fill="none" stroke="#5f4325" stroke-width="4"/>${grain}${content}</svg>`;
}

const fruit = (form: Fruit['form'], length: number, width: number, colour: string): Fruit => ({
  form,
  length,
  width,
  measured: 2026,
  colour,
});

const PICTURES: Readonly<Record<string, string>> = {
  'marrow-lantern-halved': board(
    placed(fruit('block', 9.6, 8.1, '#c1272d'), 'a', [230, 590], 30, -4) +
      placed(fruit('block', 9.1, 7.8, '#b3202a'), 'b', [470, 600], 30, 5) +
      half([740, 470], 128, '#c1272d', 4),
  ),
  'wren-hill-basket': board(
    placed(fruit('block', 8.2, 7.2, '#e6b21e'), 'a', [190, 560], 27, -12) +
      placed(fruit('block', 8.4, 7.1, '#edbd2b'), 'b', [390, 530], 27, 4) +
      placed(fruit('block', 8, 7.4, '#e2ab14'), 'c', [590, 560], 27, -3) +
      placed(fruit('block', 7.8, 7, '#c9c13a'), 'd', [780, 600], 27, 14),
  ),
  'quarry-bell-weighed': board(
    placed(fruit('block', 10.6, 8.8, '#7d1420'), 'a', [270, 610], 33, -2) +
      placed(fruit('block', 10.2, 9, '#8a1722'), 'b', [640, 610], 33, 6),
  ),
};

mkdirSync(join(root, 'content/photos'), { recursive: true });
for (const [name, svg] of Object.entries(PICTURES))
  await sharp(Buffer.from(svg))
    .webp({ quality: 82 })
    .toFile(join(root, `content/photos/${name}.webp`));
