/** Writes data/COLUMNS.md from the list behind `keeprow columns`: npm run columns. A test holds the two alike. */
import { writeFileSync } from 'node:fs';
import { columnsMarkdown } from '../src/present/columnsText.ts';

writeFileSync(new URL('COLUMNS.md', import.meta.url), columnsMarkdown());
