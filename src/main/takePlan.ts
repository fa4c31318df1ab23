import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plan } from '../decide/plan/planned.ts';
import { plantingRows, seasonTables } from '../present/plan/tables.ts';
import { openTable } from '../read/table.ts';
import { nth } from '../numerics/element.ts';
import type { Trial } from '../terms/trial.ts';
import { addRows } from './addRows.ts';
import { say } from './tellProblems.ts';
import type { Telling } from './tellProblems.ts';
import { writeWhole } from './writeWhole.ts';

/** Rows of the proposal in the columns that a table has; null where it cannot hold them. */
function fitting(bytes: Uint8Array, rows: readonly (readonly string[])[]) {
  const known = openTable({ path: 'plantings.csv', bytes });
  if ('kind' in known) return null;
  const [head = [], ...body] = rows;
  const kept = head.flatMap((name, i) => (known.columns.includes(name) ? [i] : []));
  const lost = head.filter((name, i) => !known.columns.includes(name) && body.some((row) => nth(row, i) !== ''));
  // One plant a row is what a table without the column says.
  const hasClumps = lost.includes('plants') && body.some((row) => nth(row, head.indexOf('plants')) !== '1');
  if (hasClumps) return null;
  return { rows: rows.map((row) => kept.map((i) => nth(row, i))), lost: lost.filter((name) => name !== 'plants') };
}

/** Appends the proposal's rows below the grower's own; no byte of theirs changes. Null where that cannot be. */
function addPlantings(path: string, plan: Plan): number | null {
  const bytes = readFileSync(path);
  const cells = plantingRows({ rows: plan.rows.filter(({ fixed }) => fixed === null) });
  const fit = fitting(
    bytes,
    cells.map((row) => row.map((cell) => (cell === null ? '' : String(cell)))),
  );
  const added = fit && addRows('plantings', bytes, fit.rows);
  if (!fit || !added || added.kind === 'refused') {
    say(`nothing is added to ${path}: ${added?.kind === 'refused' ? added.why : 'it has no column plants'}`);
    return null;
  }
  if (added.text !== '') writeWhole(path, Buffer.concat([bytes, Buffer.from(added.text)]));
  if (fit.lost.length > 0) say(`${path} has no column ${fit.lost.join(', ')}: what the plan says there is left out`);
  return added.rows;
}

/** Puts a plan's tables where they are absent, and its rows below those of plantings.csv. Returns the exit code. */
export function takePlan(folder: string, plan: Plan, trial: Trial, telling: Telling): number {
  const into = join(folder, 'data', String(plan.year));
  mkdirSync(into, { recursive: true });
  const written: string[] = [];
  let code = 0;
  for (const [name, text] of seasonTables(plan, trial)) {
    const path = join(into, name);
    if (!existsSync(path)) {
      writeFileSync(path, text, { flag: 'wx' });
      written.push(name);
    } else if (name === 'plantings.csv') {
      const rows = addPlantings(path, plan);
      if (rows === null) code = 2;
      else if (rows > 0) written.push(name);
    }
  }
  if (!telling.quiet && !telling.json)
    process.stdout.write(
      written.length > 0 ? `Taken into ${into}: ${written.join(', ')}\n` : `Nothing new to take into ${into}\n`,
    );
  return code;
}
