import { readFileSync } from 'node:fs';
import type { Folder } from '../sites/folder.ts';

const table = (name: string): string =>
  readFileSync(new URL(`./k04_season/${name}`, import.meta.url), 'utf8');
const SHEETS = ['plantings', 'harvests', 'observations', 'ratings', 'measurements', 'weather', 'germination'] as const;

/** One way to read the tables of k04_season. */
export interface Reading {
  readonly scale: 'ratio' | 'difference';
  readonly layout: 'together' | 'spread';
  readonly lookEvery: number;
  /** Columns of plantings.csv that this reading does without. */
  readonly without: readonly string[];
  readonly method?: 1 | 2;
  /** Plantings that this reading does without: those that gave nothing. */
  readonly drop?: readonly string[];
}

function dropColumns(text: string, names: readonly string[]): string {
  const rows = text.trim().split('\n').map((line) => line.split(','));
  const kept = rows[0]!.flatMap((name, i) => (names.includes(name) ? [] : [i]));
  return rows.map((row) => kept.map((i) => row[i]).join(',')).join('\n') + '\n';
}

/** The trial folder of k04_season under a reading. */
export function folderOf({ scale, layout, lookEvery, without, method = 2, drop = [] }: Reading): Folder {
  const kept = (text: string): string =>
    text
      .split('\n')
      .filter((line) => !line.split(',').some((cell) => drop.includes(cell)))
      .join('\n');
  const sheets = SHEETS.map((name) => [`2026/${name}.csv`, kept(table(`2026/${name}.csv`))] as const);
  return {
    'trial.yaml': `title: Second count
season_end: 10-31
degree_days: {base_c: 10, cap_c: 30, method: ${method}}
classes:
  sweet: {check_variety: amber, scale: ${scale}}
  hot: {check_variety: gorse, scale: ${scale}}
traits:
  flavour: {kind: rating, from: 1, to: 9, better: higher}
  crisp: {kind: rating, from: 1, to: 5, better: higher}
  length: {kind: measure, unit: cm, better: higher}
seasons: {2026: {harvests: complete, layout: ${layout}, look_every: ${lookEvery}, early_until: 2026-08-15}}
`,
    'varieties.csv': table('varieties.csv'),
    ...Object.fromEntries(sheets),
    '2026/plantings.csv': dropColumns(kept(table('2026/plantings.csv')), without),
  };
}

export const READINGS: Readonly<Record<string, Reading>> = {
  blocks: { scale: 'ratio', layout: 'spread', lookEvery: 7, without: ['stands_in'] },
  whole: { scale: 'ratio', layout: 'spread', lookEvery: 7, without: ['stands_in'], drop: ['p9', 'p16'] },
  plain: { scale: 'ratio', layout: 'together', lookEvery: 0, without: ['block', 'stands_in'] },
  difference: { scale: 'difference', layout: 'spread', lookEvery: 7, without: ['stands_in'] },
  stands: { scale: 'difference', layout: 'together', lookEvery: 0, without: ['block'] },
};

