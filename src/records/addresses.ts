import { csvText, unformula } from '../terms/csv.ts';
import type { Place } from '../terms/place.ts';
import { openLog } from '../terms/problem.ts';
import type { Problem, ProblemLog } from '../terms/problem.ts';
import type { Settings } from '../terms/settings.ts';
import type { SourceFile } from '../read/decode.ts';
import { openKnown } from '../sheet/columns.ts';
import { neededIn, placeIn } from '../sheet/row.ts';
import { rowsOf } from '../sheet/rows.ts';

const SPEC = { required: [['address']], columns: ['address', 'title'], quantities: [] } as const;

/** Addresses published before; what of the ledger cannot be read is reported. */
function published(
  ledger: SourceFile,
  settings: Settings,
  log: ProblemLog,
): readonly { readonly address: string; readonly place: Place }[] {
  const known = openKnown(ledger, SPEC, { log, limited: [], settings });
  return [...(known ? rowsOf(known) : [])].flatMap((row) => {
    const address = neededIn(row, 'address');
    const place = placeIn(row, 'address');
    if (address === null) return [];
    if (address.startsWith('/')) return [{ address, place }];
    log.add('address-unfit', place, address);
    return [];
  });
}

export interface Ledger {
  /** The ledger as it is to be written. */
  readonly text: string;
  /** Addresses published before that would lead nowhere. */
  readonly problems: readonly Problem[];
}

/**
 * Sets the pages of a build against the addresses published before: an address once published stays.
 *
 * @param ledger    data/addresses.csv, null before the first build
 * @param settings  the trial's
 * @param pages     addresses and titles of the build
 * @param mayDrop   true where the grower said that lost addresses may go
 */
export function keepAddresses(
  ledger: SourceFile | null,
  settings: Settings,
  pages: readonly { readonly address: string; readonly title: string }[],
  mayDrop: boolean,
): Ledger {
  const log = openLog();
  const titles = new Map(pages.map(({ address, title }) => [`/${address}`, title]));
  for (const { address, place } of ledger ? published(ledger, settings, log) : []) {
    if (!titles.has(address) && !mayDrop) log.add('address-lost', place, address, { address });
  }
  const rows = [...titles].toSorted(([a], [b]) => (a < b ? -1 : 1));
  return { text: csvText([['address', 'title'], ...rows.map((row) => row.map(unformula))]), problems: log.problems() };
}
