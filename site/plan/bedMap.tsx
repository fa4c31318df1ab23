import type { JSX } from 'preact';
import type { PlannedRow } from '../../src/decide/plan/planned.ts';
import { marksOf } from '../../src/present/gardenMap.ts';
import { fruitOf } from '../../src/present/pages/fruit.ts';
import type { PlanWords } from '../../src/present/plan/sentences.ts';
import { nameLookup } from '../../src/terms/trial.ts';
import type { Bed } from '../../src/terms/plan.ts';
import { FruitPicture } from '../bench/fruit.tsx';

/** Room of a printed side within its margins, mm, less what stands beside and above the map. */
const ROOM = { A4: [178, 225], Letter: [184, 207] } as const;
/** Least and greatest cell, mm. */
const [LEAST, MOST] = [12, 24] as const;
const FRUIT_PART = 0.56;
/** A fruit with its stem is so many times as high as without. */
const STEM = 1.3;

/** Marks of the varieties that are grown, by their ids. */
export function planMarks({ plan, trial }: PlanWords): ReadonlyMap<string, string> {
  const name = nameLookup(trial.varieties);
  const ids = [...new Set(plan.rows.map(({ variety }) => variety))].toSorted();
  const marks = marksOf(ids.map(name));
  return new Map(ids.map((id) => [id, marks.get(name(id)) ?? id]));
}

interface Part {
  readonly bed: Bed;
  readonly rows: readonly [from: number, to: number];
  readonly columns: readonly [from: number, to: number];
  readonly cell: number;
}

/** Equal parts of a number, none over the most. */
function parts(total: number, most: number): readonly (readonly [number, number])[] {
  const count = Math.ceil(total / most);
  return Array.from({ length: count }, (_, i) => [
    Math.floor((i * total) / count) + 1,
    Math.floor(((i + 1) * total) / count),
  ]);
}

/** A bed in as many parts as it needs with cells that a plant's mark fits in. */
export function bedParts(bed: Bed, paper: 'A4' | 'Letter'): readonly Part[] {
  const [width, height] = ROOM[paper];
  return parts(bed.rows, Math.floor(height / LEAST)).flatMap((rows) =>
    parts(bed.columns, Math.floor(width / LEAST)).map((columns) => {
      const cell = Math.min(MOST, width / (columns[1] - columns[0] + 1), height / (rows[1] - rows[0] + 1));
      return { bed, rows, columns, cell: Math.floor(10 * Math.max(LEAST, cell)) / 10 };
    }),
  );
}

const range = ([from, to]: readonly [number, number]): readonly number[] =>
  Array.from({ length: to - from + 1 }, (_, i) => from + i);

/** Places of a bed that a row takes: of a clump all of them. */
export function placesTaken(rows: readonly PlannedRow[], bed: Bed): ReadonlyMap<string, PlannedRow> {
  const taken = new Map<string, PlannedRow>();
  for (const own of rows) {
    if (own.spot?.bed.id !== bed.id) continue;
    let { row, column } = own.spot;
    for (let n = 0; n < own.plants; n++) {
      taken.set(`${row}/${column}`, own);
      row++;
      if (row > bed.rows) [row, column] = [1, column + 1];
    }
  }
  return taken;
}

/** Which part of a bed it is; empty for a whole one. */
function partName({ bed, rows, columns }: Part, say: PlanWords['writing']['words']['plan']): string {
  return [
    ...(columns[1] - columns[0] + 1 < bed.columns ? [say.part(...columns)] : []),
    ...(rows[1] - rows[0] + 1 < bed.rows ? [say.rowsPart(...rows)] : []),
  ].join(', ');
}

/** A plant in its cell: its fruit, its variety's mark and its number. */
function PlantInCell({
  words: { trial, seasons },
  own,
  mark,
  scale,
  id,
}: {
  readonly words: PlanWords;
  readonly own: PlannedRow;
  readonly mark: string;
  /** mm of a centimetre of fruit. */
  readonly scale: number;
  readonly id: string;
}): JSX.Element {
  const variety = trial.varieties.find((one) => one.id === own.variety);
  const fruit = variety && fruitOf(variety, seasons, trial);
  const number = own.id.startsWith(`${own.variety}-`) ? own.id.slice(own.variety.length + 1) : '';
  return (
    <>
      {fruit ? (
        <span class="fr" style={`font-size:${Math.round(100 * scale) / 100}mm`}>
          <FruitPicture fruit={fruit} id={`${id}-${own.id}`} />
        </span>
      ) : null}
      <b>{mark}</b> {number}
    </>
  );
}

/** One scale for all fruit of a map, mm of a cm: the tallest with its stem fits into a cell. */
function scaleOf({ trial, seasons }: PlanWords, taken: ReadonlyMap<string, PlannedRow>, cell: number): number {
  const grown = new Set([...taken.values()].map(({ variety }) => variety));
  const heights = trial.varieties
    .filter(({ id }) => grown.has(id))
    .map((own) => fruitOf(own, seasons, trial))
    .map(({ form, length, width }) => (form === 'cluster' ? 2 : 1) * Math.max(length, width));
  return (FRUIT_PART * cell) / (STEM * Math.max(6, ...heights));
}

/** A part of a bed, a cell a place: fruit, mark and number of the plant; thick lines part blocks. */
export function BedMap({
  words,
  part,
  id,
}: {
  readonly words: PlanWords;
  readonly part: Part;
  readonly id: string;
}): JSX.Element {
  const { plan, writing } = words;
  const say = writing.words.plan;
  const { bed, rows, columns, cell } = part;
  const marks = planMarks(words);
  const taken = placesTaken(plan.rows, bed);
  const blockAt = (row: number, column: number): string | null => taken.get(`${row}/${column}`)?.block ?? null;
  const named = partName(part, say);
  const scale = scaleOf(words, taken, cell);
  return (
    <table class="bedmap" style={`--cell:${cell}mm`}>
      <caption>
        {say.bed(bed.id, named)} · {say.north[bed.north]}
      </caption>
      <thead>
        <tr>
          <td></td>
          {range(columns).map((column) => (
            <th scope="col">{column}</th>
          ))}
        </tr>
      </thead>
      <tbody>
        {range(rows).map((row) => (
          <tr>
            <th scope="row">{row}</th>
            {range(columns).map((column) => {
              const own = taken.get(`${row}/${column}`);
              const block = blockAt(row, column);
              const edges = [
                row === 1 || blockAt(row - 1, column) !== block ? 'bt' : '',
                column === 1 || blockAt(row, column - 1) !== block ? 'bl' : '',
                row === bed.rows ? 'bb' : '',
                column === bed.columns ? 'br' : '',
              ].filter((edge) => edge !== '');
              if (!own) return <td class={['none', ...edges].join(' ')}></td>;
              return (
                <td class={edges.join(' ')}>
                  <PlantInCell words={words} own={own} mark={marks.get(own.variety) ?? ''} scale={scale} id={id} />
                </td>
              );
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** What the marks stand for. */
export function MarkKey({ words }: { readonly words: PlanWords }): JSX.Element {
  const name = nameLookup(words.trial.varieties);
  const marks = [...planMarks(words)].map(([id, mark]) => `${mark} ${name(id)}`);
  return (
    <p class="s">
      {words.writing.words.plan.mapNote} {marks.join(', ')}.
    </p>
  );
}
