import { plantModel } from '../../analyse/traitsSeen.ts';
import { judgeClaim } from '../../analyse/claims.ts';
import { fText, lettersNote, lettersOf, variety, withN } from './source.ts';
import type { Source } from './source.ts';
import type { TableWords } from '../tables.ts';
import { nth } from '../../numerics/element.ts';

export function measureTable(source: Source): TableWords | null {
  const { own, writing, seen, trial, classId } = source;
  const { tables: say, figure } = writing.words;
  const keys = [...trial.settings.traits.values()].filter(
    (trait) => trait.kind === 'measure' && own.some((v) => plantModel(seen, trait.key)?.estimates.has(v.variety.id)),
  );
  if (keys.length === 0) return null;
  const measured = own.filter((v) => keys.some(({ key }) => plantModel(seen, key)?.estimates.has(v.variety.id)));
  return {
    caption: say.measures(source.percent),
    head: [say.variety, ...keys.flatMap(({ key }) => [writing.trait(key), ''])],
    rows: measured.map((v) => [
      variety(v),
      ...keys.flatMap((trait) => {
        const estimate = plantModel(seen, trait.key)?.estimates.get(v.variety.id);
        const unit = trait.kind === 'measure' ? trait.unit : 'points';
        const claim = v.variety.claimMeasures.get(trait.key);
        const verdict =
          claim === undefined || !estimate
            ? ''
            : `; ${say.claimedMeasure(writing.quantity(claim, unit), say.claims[judgeClaim([claim, claim], estimate)])}`;
        return [
          estimate ? `${withN(writing.interval(estimate, unit), estimate.n, writing)}${verdict}` : figure.notRecorded,
          lettersOf(source, trait.key, v.variety.id),
        ];
      }),
    ]),
    foot: [
      keys
        .map(({ key }) => `${writing.trait(key)}: ${fText(plantModel(seen, key)?.f.get(classId), writing)}`)
        .join('; ') + '.',
      ...lettersNote(source, nth(keys, 0).key),
    ],
  };
}
