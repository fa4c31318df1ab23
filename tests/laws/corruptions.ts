import { seasonSeen } from '../../src/analyse/seen.ts';
import { sortFiles } from '../../src/records/folder.ts';
import { checkTrial } from '../../src/records/trial.ts';
import { randomStream } from '../../src/numerics/random.ts';
import type { Problem } from '../../src/terms/problem.ts';

/** A sound trial without a single problem: every table, a few rows each. */
const SOUND: Readonly<Record<string, string>> = {
  'data/trial.yaml':
    'title: Slope\nclasses:\n  a: {check_variety: one}\n  b: {}\ntraits:\n  flavour: {kind: rating, from: 1, to: 9, better: higher}\n  length: {kind: measure, unit: cm, better: higher}\nseasons: {2026: {transplanted: 2026-05-20, harvests: complete, look_every: 5}}\n',
  'data/varieties.csv': 'variety,name,class,claim_days\none,One,a,70\ntwo,Two,a,80\nthree,Three,b,75\n',
  'data/2026/plantings.csv':
    'planting,variety,plants,bed,removed,cause\np1,one,1,x,,\np2,one,2,y,,\np3,two,1,x,,\np4,two,1,y,2026-09-10,frost\np5,three,1,x,,\np6,three,1,y,,\n',
  'data/2026/harvests.csv':
    'date,planting,fruits,weight_g\n2026-08-01,p1,3,120\n2026-08-03,p2,7,300\n2026-08-05,p3,2,90\n2026-08-09,p4,4,150\n2026-08-12,p1,5,230\n2026-08-14,p5,20,180\n2026-08-15,p6,16,150\n2026-08-21,p2,6,280\n2026-08-23,p3,4,170\n2026-09-02,p5,11,104\n2026-09-05,p4,3,128\n2026-09-08,p6,13,121\n',
  'data/2026/observations.csv':
    'date,planting,event,count,of\n2026-07-20,p1,unripe,,\n2026-07-22,p3,unripe,,\n2026-08-02,p5,hot,1,6\n2026-08-20,p2,off-type,1,2\n',
  'data/2026/ratings.csv':
    'date,taster,variety,flavour,blind\n2026-09-01,Ada,one,7,yes\n2026-09-01,Ada,two,5,yes\n2026-09-01,Ada,three,4,yes\n2026-09-01,Ben,one,8,yes\n2026-09-01,Ben,two,4,yes\n2026-09-01,Ben,three,5,yes\n',
  'data/2026/measurements.csv':
    'date,planting,length_cm\n2026-08-12,p1,9.5\n2026-08-12,p2,10.1\n2026-08-14,p3,7.2\n2026-08-14,p4,7.9\n2026-08-15,p5,3.1\n2026-08-15,p6,3.4\n',
  'data/2026/germination.csv': 'variety,sown,seeds,germinated\none,2026-03-01,12,11\ntwo,2026-03-01,10,7\n',
  'data/2026/weather.csv': 'date,tmin_c,tmax_c\n2026-05-20,9,20\n2026-05-21,10,22\n2026-05-22,11,19\n',
};
const PATHS = Object.keys(SOUND);

export interface Corruption {
  readonly what: 'byte' | 'cut line' | 'cut file' | 'line gone' | 'cells swapped' | 'heads swapped' | 'row doubled';
  readonly path: string;
  /** The line that was hurt, from 1. */
  readonly line: number;
  readonly bytes: Uint8Array;
}

/** Corruption number so-and-so, the same for the same number. */
export function corruption(number: number): Corruption {
  const { uniform } = randomStream(`corruption ${number}`);
  const below = (n: number): number => Math.floor(uniform() * n);
  const path = PATHS[below(PATHS.length)]!;
  const text = SOUND[path]!;
  const lines = text.split('\n').slice(0, -1);
  const at = below(lines.length);
  const made = (what: Corruption['what'], line: number, own: readonly string[]): Corruption => ({
    what,
    path,
    line,
    bytes: Buffer.from(`${own.join('\n')}\n`),
  });
  const kind = below(7);
  const isTable = path.endsWith('.csv');
  if (kind === 0 || (!isTable && kind > 3)) {
    const bytes = Buffer.from(text);
    const i = below(bytes.length);
    bytes[i] = uniform() < 0.5 ? bytes[i]! ^ (1 << below(8)) : below(256);
    return { what: 'byte', path, line: text.slice(0, i).split('\n').length, bytes };
  }
  if (kind === 1)
    return made(
      'cut line',
      at + 1,
      lines.map((line, i) => (i === at ? line.slice(0, below(line.length + 1)) : line)),
    );
  if (kind === 2) {
    const end = 1 + below(text.length - 1);
    return {
      what: 'cut file',
      path,
      line: text.slice(0, end).split('\n').length,
      bytes: Buffer.from(text.slice(0, end)),
    };
  }
  if (kind === 3)
    return made(
      'line gone',
      at + 1,
      lines.filter((_, i) => i !== at),
    );
  if (kind === 6) return made('row doubled', at + 2, [...lines.slice(0, at + 1), ...lines.slice(at)]);
  const width = lines[0]!.split(',').length;
  const [a, b] = [below(width), below(width)];
  const swapped = (line: string): string => {
    const cells = line.split(',');
    [cells[a], cells[b]] = [cells[b]!, cells[a]!];
    return cells.join(',');
  };
  if (kind === 5) return made('heads swapped', 1, [swapped(lines[0]!), ...lines.slice(1)]);
  return made(
    'cells swapped',
    at + 1,
    lines.map((line, i) => (i === at ? swapped(line) : line)),
  );
}

interface Outcome {
  readonly problems: readonly Problem[];
  readonly figures: string | null;
}

function outcome(changed: Pick<Corruption, 'path' | 'bytes'> | null): Outcome {
  const files = PATHS.map((path) => ({
    path,
    bytes: changed?.path === path ? changed.bytes : new TextEncoder().encode(SOUND[path]),
  }));
  const { trial, problems } = checkTrial(sortFiles(files, [], true));
  if (!trial) return { problems, figures: null };
  const maps = (_: string, value: unknown): unknown => (value instanceof Map ? [...value] : value);
  const seen = trial.seasons.map((season) => {
    const { varieties, traits, yields } = seasonSeen(trial, season);
    const own = varieties.map(({ variety: { id, classId, claimDays }, status, shares, ripening, ...rest }) => [
      id,
      classId,
      claimDays,
      status,
      shares,
      ripening?.median,
      rest.plantsSetOut,
      rest.ripeningDegreeDays?.median,
    ]);
    return [own, traits, yields];
  });
  return { problems, figures: JSON.stringify(seen, maps) };
}

let base: Outcome | null = null;

/** What became of a corrupted trial. */
export type Verdict =
  | { readonly kind: 'same figures' | 'told in place' | 'thrown' }
  | { readonly kind: 'told elsewhere' | 'a valid record' | 'unexplained'; readonly how: string };

/** What of a table reads otherwise, in a word. */
function difference({ path, bytes, what }: Corruption): string | null {
  const [was, is] = [SOUND[path]!, Buffer.from(bytes).toString('latin1')].map((text) =>
    text.split('\n').filter((line) => line !== ''),
  );
  if (!path.endsWith('.csv')) return 'a setting became another';
  if (what === 'cut file' || what === 'line gone' || is!.length === was!.length - 1) return 'a line gone';
  if (what === 'row doubled') return 'a row doubled';
  const changed = was!.flatMap((line, i) => (is![i] === line ? [] : [i]));
  if (changed.length !== 1 || is!.length !== was!.length) return null;
  const [before, after] = [was![changed[0]!]!.split(','), is![changed[0]!]!.split(',')];
  const columns = before.flatMap((cell, i) => (after[i] === cell ? [] : [was![0]!.split(',')[i]!]));
  if (changed[0] === 0) return 'two heads swapped';
  if (after.length !== before.length) return null;
  if (columns.length === 2) return `two cells of a row swapped`;
  return columns.length === 1 ? `one ${columns[0]} became another` : null;
}

/** Reads a corrupted trial and says what became of it. */
export function judge(own: Corruption): Verdict {
  base ??= outcome(null);
  if (base.problems.length > 0) throw new Error(`the sound trial has a problem: ${base.problems[0]!.code}`);
  let found: Outcome;
  try {
    found = outcome(own);
  } catch {
    return { kind: 'thrown' };
  }
  const isInPlace = found.problems.some(({ places }) =>
    places.some(({ file, line }) => file === own.path && (line === null || Math.abs(line - own.line) <= 1)),
  );
  if (isInPlace) return { kind: 'told in place' };
  if (found.figures === base.figures) return { kind: 'same figures' };
  const how = difference(own);
  const [first] = found.problems;
  if (first)
    return { kind: 'told elsewhere', how: `${how ?? own.what} in ${own.path.split('/').at(-1)}: ${first.code}` };
  return how === null ? { kind: 'unexplained', how: own.what } : { kind: 'a valid record', how };
}
