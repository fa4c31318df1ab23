import type { ProblemLog } from '../terms/problem.ts';

// A spreadsheet's handle drawn down fills a column with one value, or with values a step apart, over the records that
// stood there. How unlikely a run must be to be told: common practice, no source.

const SHORTEST = 5;
const UNLIKELY = 1e-5;
/** A long series catches the eye though it be of small whole numbers, such as 1 to 9. */
const LONG_SERIES = 8;
const UNLIKELY_SERIES = 1e-3;

interface Run {
  readonly kind: 'same' | 'series';
  readonly length: number;
  readonly line: number;
  readonly value: number;
}

interface Column {
  last: number;
  step: number;
  /** Rows in the run of equal values, and in that of equal steps, which end at the last row. */
  same: number;
  series: number;
  sameLine: number;
  seriesLine: number;
  values: number;
  /** Rows like the one before; rows a like step from the one before as that was. */
  equals: number;
  steps: number;
  rises: number;
  falls: number;
  decimals: number;
  readonly counts: Map<number, number>;
  readonly stepCounts: Map<number, number>;
  readonly runs: Run[];
}

/** The figures of a table's columns as its rows go by. */
export interface FillWatch {
  readonly columns: Map<string, Column>;
}

export const watchFills = (): FillWatch => ({ columns: new Map() });

function newColumn(): Column {
  return {
    last: NaN,
    step: NaN,
    same: 0,
    series: 0,
    sameLine: 0,
    seriesLine: 0,
    values: 0,
    equals: 0,
    steps: 0,
    rises: 0,
    falls: 0,
    decimals: 0,
    counts: new Map(),
    stepCounts: new Map(),
    runs: [],
  };
}

const MOST_COUNTED = 10_000;

function endSame(own: Column): void {
  if (own.same >= SHORTEST) own.runs.push({ kind: 'same', length: own.same, line: own.sameLine, value: own.last });
}

function endSeries(own: Column): void {
  if (own.series + 1 >= SHORTEST)
    own.runs.push({ kind: 'series', length: own.series + 1, line: own.seriesLine, value: own.step });
}

/** Steps of figures with decimals are equal to rounding. */
const roundedStep = (step: number): number => Math.round(step * 1e6) / 1e6;

function countIn(counts: Map<number, number>, value: number): void {
  const known = counts.get(value);
  if (known !== undefined) counts.set(value, known + 1);
  else if (counts.size < MOST_COUNTED) counts.set(value, 1);
}

/** Takes the next row's figure of a column; null ends a run. */
export function see({ columns }: FillWatch, name: string, value: number | null, line: number): void {
  let own = columns.get(name);
  if (!own) columns.set(name, (own = newColumn()));
  if (value === null) {
    endSame(own);
    endSeries(own);
    Object.assign(own, { last: NaN, step: NaN, same: 0, series: 0 });
    return;
  }
  own.values++;
  if (!Number.isInteger(value)) own.decimals++;
  const step = roundedStep(value - own.last);
  countIn(own.counts, value);
  if (step !== 0 && !Number.isNaN(step)) countIn(own.stepCounts, step);
  if (step === 0) {
    own.equals++;
    own.same++;
  } else {
    endSame(own);
    own.same = 1;
    own.sameLine = line;
    if (step > 0) own.rises++;
    else if (step < 0) own.falls++;
  }
  if (step !== 0 && step === own.step) {
    own.steps++;
    own.series++;
  } else {
    endSeries(own);
    own.series = step === 0 || Number.isNaN(step) ? 0 : 1;
    own.seriesLine = line - 1;
  }
  own.step = step;
  own.last = value;
}

/** A figure with at least two digits that mean something: 57, 8.1; not 4, 50 or 100, which repeat by themselves. */
function isExact(value: number, { decimals, values }: Column): boolean {
  // In a column of decimals 5 is 5.0.
  if (4 * decimals > values) return true;
  return String(Math.abs(value)).replace('.', '').replace(/^0+/, '').replace(/0+$/, '').length >= 2;
}

/** How often a run so long is to be expected among the column's rows by chance. */
function expected({ kind, length, value }: Run, own: Column): number {
  const rest = own.values - length + 2;
  // Chance of a row like the one before it, or of a step like the step before.
  const inside = length - (kind === 'same' ? 1 : 2);
  const again = ((kind === 'same' ? own.equals : own.steps) - inside + 1) / rest;
  // Chance of this value, or this step, to begin with.
  const times = (kind === 'same' ? own.counts : own.stepCounts).get(value) ?? 0;
  const first = (times - (kind === 'same' ? length : length - 1) + 1) / rest;
  return own.values * Math.min(1, first) * Math.min(1, kind === 'same' ? Math.max(again, first) : again) ** inside;
}

/** Warns of runs that hardly came about by themselves. */
export function reportFills({ columns }: FillWatch, file: string, log: ProblemLog): void {
  for (const [column, own] of columns) {
    endSame(own);
    endSeries(own);
    // In a sheet sorted by this column equal figures stand together.
    const isSorted = own.rises === 0 || own.falls === 0;
    for (const run of own.runs) {
      if (run.kind === 'same' && (isSorted || !isExact(run.value, own))) continue;
      const isLong = run.kind === 'series' && run.length >= LONG_SERIES;
      if (expected(run, own) > (isLong ? UNLIKELY_SERIES : UNLIKELY)) continue;
      const place = { file, line: run.line, column: 1 };
      const facts = { column, rows: String(run.length) };
      log.add(run.kind === 'same' ? 'filled-down' : 'filled-series', place, String(run.value), facts);
    }
  }
}
