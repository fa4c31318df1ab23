import type { Source } from './source.ts';
import { variety } from './source.ts';
import type { TableWords } from '../tables.ts';

export function entriesTable({ own, trial, writing }: Source): TableWords {
  const { tables: say, status } = writing.words;
  const showSource = trial.settings.publish.show.includes('source');
  return {
    caption: say.entries,
    head: [say.variety, say.status, say.kind, say.plantsSetOut, say.plantings, ...(showSource ? [say.seedFrom] : [])],
    rows: own.map((v) => [
      variety(v),
      status[v.status],
      `${say.kinds[v.variety.kind]}${v.variety.generation === null ? '' : ` F${v.variety.generation}`}`,
      String(v.plantsSetOut),
      `${v.plantings}${v.plantingsExcluded > 0 ? ` ${say.lostByAccident(v.plantingsExcluded)}` : ''}`,
      ...(showSource ? [v.variety.source ?? ''] : []),
    ]),
  };
}
