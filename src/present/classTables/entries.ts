import type { Source } from './source.ts';
import { variety } from './source.ts';
import type { TableWords } from '../tables.ts';

export function entriesTable({ own, trial }: Source): TableWords {
  const showSource = trial.settings.publish.show.includes('source');
  const kind = { 'open-pollinated': 'open-pollinated', hybrid: 'hybrid', line: 'line', unknown: '' } as const;
  return {
    caption: 'Entries',
    head: ['Variety', 'Status', 'Kind', 'Plants set out', 'Plantings', ...(showSource ? ['Seed from'] : [])],
    rows: own.map((v) => [
      variety(v),
      v.status,
      `${kind[v.variety.kind]}${v.variety.generation === null ? '' : ` F${v.variety.generation}`}`,
      String(v.plantsSetOut),
      `${v.plantings}${v.plantingsExcluded > 0 ? ` (${v.plantingsExcluded} lost by accident)` : ''}`,
      ...(showSource ? [v.variety.source ?? ''] : []),
    ]),
  };
}
