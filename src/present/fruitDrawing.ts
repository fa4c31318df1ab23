import { plantModel } from '../analyse/traitsSeen.ts';
import type { SeasonSeen } from '../analyse/seen.ts';
import type { Trial, Variety } from '../terms/trial.ts';
import type { Writing } from './numbers.ts';
import { svgText } from './svgText.ts';
import type { PictureWords } from './tables.ts';
import { nth } from '../numerics/element.ts';

const PER_CM = 14;
const GAP = 22;
const TOP = 26;
const RULER = 34;
const LABEL = 15;

interface Fruit {
  readonly variety: Variety;
  /** Measured means, cm. */
  readonly length: number;
  readonly width: number;
}

/** A measure of lengths in cm; null where it was not taken. */
function lengthOf(seen: SeasonSeen, trial: Trial, key: string, variety: string): number | null {
  const trait = trial.settings.traits.get(key);
  const value = plantModel(seen, key)?.estimates.get(variety)?.estimate ?? null;
  if (value === null || trait?.kind !== 'measure' || value <= 0) return null;
  return trait.unit === 'mm' ? value / 10 : trait.unit === 'cm' ? value : null;
}

function fruitsOf(seen: SeasonSeen, trial: Trial, classId: string): readonly Fruit[] {
  return seen.varieties
    .filter(({ variety }) => variety.classId === classId)
    .flatMap(({ variety }): readonly Fruit[] => {
      const length = lengthOf(seen, trial, 'fruit_length', variety.id);
      const width = lengthOf(seen, trial, 'fruit_width', variety.id);
      return length === null || width === null ? [] : [{ variety, length, width }];
    })
    .toSorted((a, b) => b.length - a.length || (a.variety.name < b.variety.name ? -1 : 1));
}

const at = (x: number): string => String(Math.round(x * 10) / 10);

/** Outline of a fruit hanging from its stem: round where it is as wide as long, the longer the more it tapers. */
export function outline(x: number, y: number, length: number, width: number): string {
  const [half, ratio] = [width / 2, length / width];
  const tip = half * Math.max(0.12, Math.min(1, 1.35 - 0.35 * ratio));
  const shoulder = y + Math.min(length * 0.28, half);
  return [
    `M${at(x)} ${at(y)}`,
    `C${at(x + half * 0.75)} ${at(y - half * 0.08)} ${at(x + half)} ${at(y + half * 0.2)} ${at(x + half)} ${at(shoulder)}`,
    `C${at(x + half)} ${at(y + length * 0.7)} ${at(x + tip)} ${at(y + length)} ${at(x)} ${at(y + length)}`,
    `C${at(x - tip)} ${at(y + length)} ${at(x - half)} ${at(y + length * 0.7)} ${at(x - half)} ${at(shoulder)}`,
    `C${at(x - half)} ${at(y + half * 0.2)} ${at(x - half * 0.75)} ${at(y - half * 0.08)} ${at(x)} ${at(y)}Z`,
  ].join('');
}

/** One fruit: its ripe colour, a sliver of the unripe one at the stem, the stem itself. */
export function fruitShapes(
  { variety, length, width }: Fruit,
  x: number,
  y: number,
  id: string,
  scale: number,
): string {
  const [l, w] = [length * scale, width * scale];
  const path = outline(x, y, l, w);
  const ripe = variety.colourRipe ?? 'var(--muted)';
  const unripe = variety.colourUnripe ?? ripe;
  const sliver = Math.max(3, Math.min(l * 0.14, w * 0.3));
  return (
    `<clipPath id="${id}"><path d="${path}"/></clipPath>` +
    `<path d="${path}" fill="${ripe}" stroke="var(--ink)" stroke-width="1"/>` +
    `<rect x="${at(x - w / 2 - 1)}" y="${at(y - w * 0.1)}" width="${at(w + 2)}" height="${at(sliver + w * 0.1)}" fill="${unripe}" clip-path="url(#${id})"/>` +
    `<path d="M${at(x)} ${at(y)}q2 -7 6 -9" fill="none" stroke="var(--ink)" stroke-width="2.5" stroke-linecap="round"/>`
  );
}

/** Ruler below all fruits: a tick a centimetre (or inch), a number every five (or each). */
function ruler(width: number, y: number, isInches: boolean): string {
  const step = isInches ? PER_CM * 2.54 : PER_CM;
  const count = Math.floor(width / step);
  const every = isInches ? 1 : 5;
  const ticks = Array.from({ length: count + 1 }, (_, i) => {
    const isLong = i % every === 0;
    const text = isLong
      ? `<text x="${at(i * step + 1)}" y="${y + 22}" font-size="12" text-anchor="${i === 0 ? 'start' : 'middle'}">${i}</text>`
      : '';
    return `<path d="M${at(i * step + 0.5)} ${y}v${isLong ? 9 : 5}" stroke="var(--rule)"/>${text}`;
  });
  return `<path d="M0 ${y}h${width}" stroke="var(--rule)"/>${ticks.join('')}`;
}

/** Fruits side by side in lines that fit the width. */
function lines(fruits: readonly Fruit[], room: number): readonly (readonly Fruit[])[] {
  const rows: Fruit[][] = [[]];
  let used = 0;
  for (const fruit of fruits) {
    const needed = cellWidth(fruit);
    if (used + needed > room && nth(rows, -1).length > 0) {
      rows.push([]);
      used = 0;
    }
    nth(rows, -1).push(fruit);
    used += needed;
  }
  return rows;
}

function cellWidth({ width, variety }: Fruit): number {
  return Math.max(width * PER_CM, variety.name.length * 7.2) + GAP;
}

function drawing(fruits: readonly Fruit[], room: number, prefix: string, isInches: boolean, title: string): string {
  const rows = lines(fruits, room);
  const parts: string[] = [];
  let y = TOP;
  rows.forEach((row, r) => {
    let x = 0;
    const tallest = Math.max(...row.map(({ length }) => length * PER_CM));
    row.forEach((fruit, i) => {
      const cell = cellWidth(fruit);
      parts.push(fruitShapes(fruit, x + (cell - GAP) / 2, y, `${prefix}-${r}-${i}`, PER_CM));
      parts.push(
        `<text x="${at(x + (cell - GAP) / 2)}" y="${at(y + tallest + LABEL + 4)}" font-size="12.5" text-anchor="middle">${svgText(fruit.variety.name)}</text>`,
      );
      x += cell;
    });
    y += tallest + LABEL + GAP + 10;
  });
  const longest = Math.max(...fruits.flatMap(({ length, width }) => [length, width]));
  const height = Math.ceil(y + RULER);
  const rulerWidth = Math.min(room, Math.ceil((longest + 1) * PER_CM));
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${room}" height="${height}" viewBox="0 0 ${room} ${height}" role="img" aria-label="${svgText(title)}" fill="var(--ink)" font-family="system-ui, sans-serif">${parts.join('')}${ruler(rulerWidth, Math.round(y), isInches)}</svg>`;
}

/** Every variety's fruit of a class drawn from its measured length and width, on one ruler; null without measures. */
export function fruitFigure(seen: SeasonSeen, trial: Trial, classId: string, writing: Writing): PictureWords | null {
  const fruits = fruitsOf(seen, trial, classId);
  if (fruits.length === 0) return null;
  const { fruit: say } = writing.words;
  const isInches = trial.settings.units === 'us';
  const id = `fruit-${classId}`;
  const ruled = isInches ? 'in' : 'cm';
  const longest = nth(fruits, 0);
  const title = say.title(longest.variety.name, writing.quantity(longest.length, 'cm'));
  return {
    id,
    title,
    measure: say.measure(isInches),
    drawn: () => ({
      wide: drawing(fruits, 640, `${id}-${ruled}-w`, isInches, title),
      narrow: drawing(fruits, 280, `${id}-${ruled}-n`, isInches, title),
    }),
    head: [writing.words.tables.variety, say.length, say.width, say.ripe],
    rows: fruits.map(({ variety, length, width }) => [
      variety.name,
      writing.quantity(length, 'cm'),
      writing.quantity(width, 'cm'),
      variety.colourRipe ?? writing.words.figure.notRecorded,
    ]),
  };
}

/** The first fruits of a season as shapes in a row, for the picture that stands for the site elsewhere. */
export function fruitRow(seen: SeasonSeen, trial: Trial, room: number, base: number): string {
  const all = [...trial.settings.classes.keys()].flatMap((id) => fruitsOf(seen, trial, id).slice(0, 4));
  const scale = 22;
  let x = 0;
  return all
    .map((fruit, i) => {
      const width = fruit.width * scale;
      if (x + width > room) return '';
      const shape = fruitShapes(fruit, x + width / 2, base - fruit.length * scale, `og-${i}`, scale);
      x += width + 20;
      return shape;
    })
    .join('');
}
