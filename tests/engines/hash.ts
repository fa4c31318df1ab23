import { createHash } from 'node:crypto';
import type { TotalRow } from '../../src/main/engines/statement.ts';

/** A result as one figure. */
export const hashOf = (rows: readonly TotalRow[]): string =>
  createHash('sha256')
    .update(rows.map((row) => row.join(',')).join('\n'))
    .digest('hex')
    .slice(0, 16);
