import { grouped } from '../terms/groups.ts';
import type { SeasonSeen } from '../analyse/seen.ts';
import { nameLookup } from '../terms/trial.ts';
import type { Planting, Season, Trial } from '../terms/trial.ts';
import type { Writing } from './numbers.ts';
import { ownPart } from './withheld.ts';
import { svgText } from './svgText.ts';
import type { PictureWords } from './tables.ts';
import { first, keyed } from '../numerics/element.ts';

const CELL = 36;
const HEAD = 20;
const GAP = 18;

interface Placed extends Planting {
  readonly row: number;
  readonly column: number;
}

interface Bed {
  readonly name: string;
  readonly plantings: readonly Placed[];
}

const isPlaced = (own: Planting): own is Placed => own.row !== null && own.column !== null;

/** Beds whose plantings all have a row and a column. */
function bedsOf(season: Season): readonly Bed[] {
  return [...grouped(season.plantings, ({ bed }) => bed ?? '')]
    .map(([name, plantings]) => ({ name, plantings: plantings.filter(isPlaced), all: plantings.length }))
    .filter(({ plantings, all }) => plantings.length === all);
}

/** A short mark for each name, no two the same: its initials, else its first letters, else with a number. */
export function marksOf(names: readonly string[]): ReadonlyMap<string, string> {
  const marks = new Map<string, string>();
  const taken = new Set<string>();
  for (const name of names) {
    const words = name.split(/\s+/);
    const initials = words
      .map((word) => word[0])
      .join('')
      .slice(0, 3);
    const letters = [...name.replace(/\s+/g, '')];
    const choices = [
      ...(words.length > 1 ? [initials] : []),
      letters.slice(0, 2).join(''),
      letters.slice(0, 3).join(''),
      ...Array.from({ length: names.length }, (_, i) => `${letters.slice(0, 2).join('')}${i + 2}`),
    ].map((mark) => mark.toUpperCase());
    const mark = first(choices, (one) => !taken.has(one));
    taken.add(mark);
    marks.set(name, mark);
  }
  return marks;
}

/** How the cells of a map are marked and named. */
interface Marking {
  readonly nameOf: (variety: string) => string;
  readonly marks: ReadonlyMap<string, string>;
  readonly colourOf: (variety: string) => string | null;
  readonly cell: number;
}

function drawBed({ name, plantings }: Bed, x: number, y: number, { nameOf, marks, colourOf, cell }: Marking): string {
  const top = Math.min(...plantings.map(({ row }) => row));
  const left = Math.min(...plantings.map(({ column }) => column));
  const [kept, lost]: [string[], string[]] = [[], []];
  const cells = plantings.map((own) => {
    const [cx, cy] = [x + (own.column - left) * cell, y + HEAD + (own.row - top) * cell];
    const isLost = own.removed !== null && own.cause !== 'season-end' && own.cause !== 'frost';
    const colour = colourOf(own.variety);
    const outline = `M${cx + 1.5} ${cy + 1.5}h${cell - 3}v${cell - 3}h${3 - cell}z`;
    (isLost ? lost : kept).push(outline);
    const dot =
      colour === null
        ? ''
        : `<circle cx="${cx + cell / 2}" cy="${cy + 8}" r="3.5" fill="${colour}" stroke="var(--ink)"/>`;
    return `${dot}<text x="${cx + cell / 2}" y="${cy + cell / 2 + 10}" font-size="12.5" text-anchor="middle"${isLost ? ' text-decoration="line-through"' : ''}>${svgText(keyed(marks, nameOf(own.variety)))}</text>`;
  });
  return `<text x="${x}" y="${y + 14}" font-size="13">${svgText(name)}</text><path d="${kept.join('')}" fill="none" stroke="var(--rule)"/>${lost.length > 0 ? `<path d="${lost.join('')}" fill="none" stroke="var(--rule)" stroke-dasharray="3 3"/>` : ''}${cells.join('')}`;
}

function draw(beds: readonly Bed[], room: number, marking: Marking, title: string): string {
  const { cell } = marking;
  let [x, y, rowHeight, widest] = [0, 0, 0, 0];
  const parts: string[] = [];
  for (const bed of beds) {
    const span = (of: (own: Placed) => number): number =>
      Math.max(...bed.plantings.map(of)) - Math.min(...bed.plantings.map(of)) + 1;
    const width = span(({ column }) => column) * cell;
    const height = span(({ row }) => row) * cell + HEAD;
    if (x > 0 && x + width > room) [x, y, rowHeight] = [0, y + rowHeight + GAP, 0];
    parts.push(drawBed(bed, x, y, marking));
    x += width + GAP;
    widest = Math.max(widest, x - GAP);
    rowHeight = Math.max(rowHeight, height);
  }
  const height = y + rowHeight + 4;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${widest}" height="${height}" viewBox="0 0 ${widest} ${height}" role="img" aria-label="${svgText(title)}" fill="var(--ink)" font-family="system-ui, sans-serif">${parts.join('')}</svg>`;
}

/** Where every planting stood, from beds, rows and columns; null where they were not recorded. */
export function gardenMap(seen: SeasonSeen, trial: Trial, writing: Writing): PictureWords | null {
  const beds = bedsOf(ownPart(seen.season, trial));
  if (beds.length === 0) return null;
  const nameOf = nameLookup(trial.varieties);
  const { map: say, tables, variety } = writing.words;
  const title = say.title(String(seen.season.year));
  const plantings = beds.flatMap((bed) => bed.plantings);
  const grown = [...new Set(plantings.map((own) => nameOf(own.variety)))].toSorted();
  const marks = marksOf(grown);
  const colours = new Map<string, string | null>(trial.varieties.map(({ id, colourRipe }) => [id, colourRipe]));
  const marking = { nameOf, marks, colourOf: (id: string): string | null => colours.get(id) ?? null };
  return {
    id: 'garden-map',
    title,
    measure: `${say.measure} ${grown.map((name) => `${keyed(marks, name)} ${name}`).join(', ')}.`,
    drawn: () => ({
      wide: draw(beds, 900, { ...marking, cell: CELL }, title),
      narrow: draw(beds, 290, { ...marking, cell: 27 }, title),
    }),
    head: [say.bed, say.row, say.column, tables.variety, say.planting],
    rows: plantings.map((own) => [
      own.bed ?? '',
      String(own.row),
      String(own.column),
      nameOf(own.variety),
      String(own.id) === own.variety ? variety.first : own.id,
    ]),
  };
}
