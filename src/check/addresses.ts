import { csvCell } from '../terms/csvCell.ts';
import { openLog } from '../terms/problem.ts';
import type { Problem } from '../terms/problem.ts';
import { decodeText } from '../read/decode.ts';
import type { SourceFile } from '../read/decode.ts';

const HEADER = 'address,title';

/** Addresses published before, with the line of each. */
function published(
  ledger: SourceFile,
): readonly { readonly address: string; readonly title: string; readonly line: number }[] {
  const decoded = decodeText(ledger.bytes);
  if (decoded.kind !== 'text') return [];
  return decoded.text.split(/\r?\n/).flatMap((text, i) => {
    const match = /^([^,\s]*),(.*)$/.exec(text);
    return i === 0 || !match ? [] : [{ address: match[1]!, title: match[2]!, line: i + 1 }];
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
 * @param ledger   data/addresses.csv, null before the first build
 * @param pages    addresses and titles of the build
 * @param mayDrop  true where the grower said that lost addresses may go
 */
export function keepAddresses(
  ledger: SourceFile | null,
  pages: readonly { readonly address: string; readonly title: string }[],
  mayDrop: boolean,
): Ledger {
  const log = openLog();
  const titles = new Map(pages.map(({ address, title }) => [`/${address}`, title]));
  for (const { address, line } of ledger ? published(ledger) : []) {
    if (titles.has(address) || mayDrop) continue;
    log.add('address-lost', { file: ledger!.path, line, column: 1 }, address, { address });
  }
  const rows = [...titles]
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([address, title]) => `${address},${csvCell(title)}`);
  return { text: `${[HEADER, ...rows].join('\n')}\n`, problems: log.problems() };
}
