import { LISTS } from '../present/columnsList.ts';
import { columnsText } from '../present/columnsText.ts';
import { nearestName } from '../terms/names.ts';

/** `keeprow columns [TABLE]`: every table, column, event and setting in a line. Returns the exit code. */
export function runColumns(name: string | null, isJson: boolean): number {
  const wanted = name?.replace(/\.csv$/, '').toLowerCase() ?? null;
  const lists = wanted === null ? LISTS : LISTS.filter((list) => list.name === wanted);
  if (lists.length === 0) {
    const names = LISTS.map((list) => list.name);
    const near = nearestName(wanted ?? '', names);
    process.stderr.write(
      `keeprow: there is no table ${name}${near === null ? `; there are ${names.join(', ')}` : `; did you mean ${near}?`}\n`,
    );
    return 2;
  }
  process.stdout.write(isJson ? `${JSON.stringify(lists, null, 1)}\n` : columnsText(lists));
  return 0;
}
