import { judgeClaim } from '../../analyse/claims.ts';
import { CLAIM, fText, lettersNote, lettersOf, variety } from './source.ts';
import type { Source } from './source.ts';
import type { TableWords } from '../tables.ts';

export function measureTable(source: Source): TableWords | null {
  const { own, writing, seen, trial, classId } = source;
  const keys = [...trial.settings.traits.values()].filter(
    (trait) => trait.kind === 'measure' && own.some((v) => seen.models.get(trait.key)?.estimates.has(v.variety.id)),
  );
  if (keys.length === 0) return null;
  const measured = own.filter((v) => keys.some(({ key }) => seen.models.get(key)?.estimates.has(v.variety.id)));
  return {
    caption: `Measurements, means of plantings with ${source.percent} intervals`,
    head: ['Variety', ...keys.flatMap(({ key }) => [key.replaceAll('_', ' '), ''])],
    rows: measured.map((v) => [
      variety(v),
      ...keys.flatMap((trait) => {
        const estimate = seen.models.get(trait.key)?.estimates.get(v.variety.id);
        const unit = trait.kind === 'measure' ? trait.unit : 'points';
        const claim = v.variety.claimMeasures.get(trait.key);
        const verdict =
          claim === undefined || !estimate
            ? ''
            : `; claimed ${writing.quantity(claim, unit)}: ${CLAIM[judgeClaim([claim, claim], estimate)]}`;
        return [
          estimate ? `${writing.interval(estimate, unit)}; n ${estimate.n}${verdict}` : 'not recorded',
          lettersOf(source, trait.key, v.variety.id),
        ];
      }),
    ]),
    foot: [
      keys
        .map(({ key }) => `${key.replaceAll('_', ' ')}: ${fText(seen.models.get(key)?.f.get(classId), writing)}`)
        .join('; ') + '.',
      ...lettersNote(source, keys[0]!.key),
    ],
  };
}
