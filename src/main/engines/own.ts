import { createReadStream } from 'node:fs';
import { parse } from 'csv-parse';
import { EngineFault, inOrder } from './statement.ts';
import type { Engine, TotalRow } from './statement.ts';

/** What is kept of a planting while its rows are read. */
interface Sum {
  rows: number;
  fruits: number | null;
  mg: number | null;
  first: string;
}

interface Columns {
  readonly region: number;
  readonly garden: number;
  readonly season: number;
  readonly planting: number;
  readonly date: number;
  readonly fruits: number;
  readonly weight: number;
  /** Milligrams in a unit of the column. */
  readonly unit: number;
}

function columnsOf(header: readonly string[], file: string): Columns {
  const names = header.map((name) => name.trim().toLowerCase());
  const at = (name: string): number => names.indexOf(name);
  for (const name of ['garden', 'season', 'planting', 'date'])
    if (at(name) < 0) throw new EngineFault(`${file} has no column ${name}`);
  const [mg, grams] = [at('weight_mg'), at('weight_g')];
  if (mg < 0 && grams < 0 && at('fruits') < 0)
    throw new EngineFault(`${file} has neither weight_g, weight_mg nor fruits`);
  return {
    region: at('region'),
    garden: at('garden'),
    season: at('season'),
    planting: at('planting'),
    date: at('date'),
    fruits: at('fruits'),
    weight: mg >= 0 ? mg : grams,
    unit: mg >= 0 ? 1 : 1000,
  };
}

/** A whole number of units; null where nothing is written. */
function whole(text: string | undefined, unit: number, where: () => string): number | null {
  if (text === undefined || text === '') return null;
  const value = Number(text) * unit;
  const near = Math.round(value);
  if (!(Math.abs(value - near) < 1e-6) || near < 0 || !Number.isSafeInteger(near))
    throw new EngineFault(`${where()}: ${text} is no number that can be added up exactly`);
  return near;
}

const ISO = /^\d{4}-\d{2}-\d{2}$/;

async function addFile(file: string, sums: Map<string, Sum>): Promise<void> {
  const parser = createReadStream(file).pipe(parse({ bom: true, skip_empty_lines: true, relax_column_count: true }));
  let columns: Columns | null = null;
  let line = 0;
  for await (const record of parser as AsyncIterable<readonly string[]>) {
    line++;
    if (!columns) {
      columns = columnsOf(record, file);
      continue;
    }
    const where = (): string => `${file}, row ${line}`;
    const cell = (at: number): string => (at < 0 ? '' : (record[at] ?? ''));
    const key = `${cell(columns.region)}\u0000${cell(columns.garden)}\u0000${cell(columns.season)}\u0000${cell(columns.planting)}`;
    const fruits = whole(cell(columns.fruits), 1, where);
    const mg = whole(cell(columns.weight), columns.unit, where);
    const date = cell(columns.date);
    if (date !== '' && !ISO.test(date)) throw new EngineFault(`${where()}: ${date} is no day such as 2026-08-03`);
    let sum = sums.get(key);
    if (!sum) sums.set(key, (sum = { rows: 0, fruits: null, mg: null, first: '' }));
    sum.rows++;
    if (fruits !== null) sum.fruits = (sum.fruits ?? 0) + fruits;
    if (mg !== null) sum.mg = (sum.mg ?? 0) + mg;
    if (date !== '' && ((fruits ?? 0) > 0 || (mg ?? 0) > 0) && (sum.first === '' || date < sum.first)) sum.first = date;
  }
}

/** Keeprow's own reader: CSV tables, row by row, with the same result as an engine's. */
export function ownReader(files: readonly string[]): Engine {
  return {
    name: 'own reader',
    async totals() {
      const sums = new Map<string, Sum>();
      for (const file of files) await addFile(file, sums);
      const text = (value: number | null): string => (value === null ? '' : String(value));
      const rows = [...sums].map(([key, { rows: count, fruits, mg, first }]): TotalRow => [
        ...key.split('\u0000'),
        String(count),
        text(fruits),
        text(mg),
        first,
      ]);
      return inOrder(rows);
    },
  };
}
