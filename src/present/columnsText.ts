import { LISTS } from './columnsList.ts';
import type { ListedTable } from './listedTable.ts';
import { nth } from '../numerics/element.ts';

/** Lists in words for a terminal: what each table is, its columns with an example, * before those it must have. */
export function columnsText(lists: readonly ListedTable[]): string {
  const parts = lists.map(({ name, is, entries }) => {
    const width = Math.max(...entries.map((own) => own.name.length));
    const lines = entries.map(
      (own) =>
        `  ${own.isNeeded ? '*' : ' '} ${own.name.padEnd(width)}  ${own.is}${own.example === '' ? '' : ` (${own.example})`}`,
    );
    return `${name}: ${is}\n${lines.join('\n')}\n`;
  });
  return `${parts.join('\n')}\n* must be there. A column for every trait that trial.yaml declares may stand in totals, ratings and measurements.\n`;
}

/** The same as Markdown, for the guide beside the demo's data. */
export function columnsMarkdown(): string {
  const parts = LISTS.map(({ name, is, entries }) => {
    const lines = entries.map(
      (own) =>
        `| ${own.isNeeded ? `**${own.name}**` : own.name} | ${own.is} | ${own.example === '' ? '' : `\`${own.example}\``} |`,
    );
    return `## ${name}\n${nth(is, 0).toUpperCase()}${is.slice(1)}.\n\n| | what it is | example |\n| --- | --- | --- |\n${lines.join('\n')}\n`;
  });
  return `# Tables, columns and settings\nMade by \`npm run columns\` from the list behind \`keeprow columns\`; bold must be there.\n\n${parts.join('\n')}`;
}
