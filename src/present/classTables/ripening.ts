import { judgeClaim } from '../../analyse/claims.ts';
import type { RipeningModel } from '../../analyse/ripeningModel.ts';
import type { VarietySeen } from '../../analyse/seen.ts';
import { CLAIM, fText, lettersNote, lettersOf, variety } from './source.ts';
import type { Source } from './source.ts';
import type { TableWords } from '../tables.ts';

/** The packet's days and how they stand to what was seen; empty without a claim. */
function claim(v: VarietySeen, model: RipeningModel | null): string {
  const [low, high] = v.variety.claimDays ?? [null, null];
  const estimate = model?.estimates.get(v.variety.id);
  if (low === null || !estimate) return '';
  const said = low === high ? `${low}` : `${low} to ${high}`;
  const verdict = CLAIM[judgeClaim([low, high], estimate)]
    .replace('below', 'earlier than')
    .replace('above', 'later than');
  return `${said}: ${verdict}`;
}

export function ripeningTable(source: Source): TableWords | null {
  const { own, writing, seen, trial, classId } = source;
  const grown = own.filter(({ ripening }) => ripening !== null);
  if (grown.length === 0) return null;
  const model = seen.ripeningModel;
  const hasClaims = grown.some((v) => v.variety.claimDays !== null) && trial.settings.firstRipeFrom === 'transplanted';
  const hasDegreeDays = grown.some((v) => v.ripeningDegreeDays !== null);
  const { baseC, capC, method } = trial.settings.degreeDays;
  const rank = (v: VarietySeen): number =>
    model?.estimates.get(v.variety.id)?.estimate ?? v.ripening?.median.estimate ?? Infinity;
  return {
    caption: `Days from ${trial.settings.firstRipeFrom === 'sown' ? 'sowing' : 'planting out'} to the first ripe fruit, with ${source.percent} intervals`,
    head: [
      'Variety',
      'Ripe by the end',
      'Model',
      '',
      'Median seen',
      ...(hasDegreeDays ? ['Median, degree days'] : []),
      ...(hasClaims ? ['Packet’s claim'] : []),
    ],
    rows: grown
      .toSorted((a, b) => rank(a) - rank(b))
      .map((v) => {
        const { ripe, unripe, median } = v.ripening!;
        const estimate = model?.estimates.get(v.variety.id);
        const heat = v.ripeningDegreeDays?.median;
        return [
          variety(v),
          `${ripe} of ${ripe + unripe}`,
          estimate ? (estimate.estimate === null ? 'none ripened' : writing.interval(estimate, 'd')) : '',
          lettersOf(source, 'first_ripe', v.variety.id),
          median.estimate === null ? 'not reached' : writing.interval(median, 'd'),
          ...(hasDegreeDays
            ? [heat ? (heat.estimate === null ? 'not reached' : writing.number(heat.estimate)) : '']
            : []),
          ...(hasClaims ? [claim(v, model)] : []),
        ];
      }),
    foot: [
      ...(model ? [`${fText(model.f.get(classId), writing)}; n counts plantings.`] : []),
      `A planting found ripe may have been ripe for up to ${seen.season.lookEvery} days; the model counts that, the median does not.`,
      ...(hasDegreeDays
        ? [
            `Degree days over ${baseC} °C${capC === null ? '' : `, capped at ${capC} °C`}, method ${method} of McMaster & Wilhelm (1997).`,
          ]
        : []),
      ...lettersNote(source, 'first_ripe'),
    ],
  };
}
