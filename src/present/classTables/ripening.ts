import { ripeningModel } from '../../analyse/traitsSeen.ts';
import { judgeClaim } from '../../analyse/claims.ts';
import type { Estimate } from '../../terms/estimate.ts';
import type { RipeningModel } from '../../analyse/ripeningModel.ts';
import type { RipeningCurve } from '../../analyse/ripening.ts';
import type { VarietySeen } from '../../analyse/seen.ts';
import { fText, lettersNote, lettersOf, variety } from './source.ts';
import type { Source } from './source.ts';
import type { Writing } from '../numbers.ts';
import type { TableWords } from '../tables.ts';

/** The packet's days and how they stand to what was seen; empty without a claim. */
function claim(v: VarietySeen, model: RipeningModel | null, { words }: Writing): string {
  const [low, high] = v.variety.claimDays ?? [null, null];
  const estimate = model?.estimates.get(v.variety.id);
  if (low === null || !estimate) return '';
  const said = low === high ? `${low}` : words.figure.range(String(low), String(high));
  return words.tables.claimed(said, words.tables.claimsOfDays[judgeClaim([low, high], estimate)]);
}

/** True where no planting was left to ripen: accidents took them all before. */
function isAllLost({ ripe, unripe, accidents }: RipeningCurve): boolean {
  return ripe === 0 && unripe === accidents;
}

/** `3 of 4` plantings ripe by the end, without those lost by accident; or that accidents took them all. */
export function ripeByEnd(curve: RipeningCurve, { words, number }: Writing): string {
  const { ripe, unripe, accidents } = curve;
  if (isAllLost(curve)) return words.figure.allLost(number(accidents));
  return words.figure.kOfN(number(ripe), number(ripe + unripe - accidents));
}

/** Days to first ripe fruit by the model. */
export function modelText(estimate: Estimate | undefined, curve: RipeningCurve, writing: Writing): string {
  if (!estimate || isAllLost(curve)) return '';
  return estimate.estimate === null ? writing.words.figure.noneRipened : writing.interval(estimate, 'd');
}

/** A median of days; its limits only where it has both, which a few plantings cannot give. */
export function medianText(curve: RipeningCurve, writing: Writing): string {
  const { median } = curve;
  const { estimate, low, high } = median;
  if (isAllLost(curve)) return '';
  if (estimate === null) return writing.words.figure.notReached;
  return low === null || high === null ? writing.quantity(estimate, 'd') : writing.interval(median, 'd');
}

function heatText(degreeDays: number | null, { words, number }: Writing): string {
  return degreeDays === null ? words.figure.notReached : number(degreeDays);
}

export function ripeningTable(source: Source): TableWords | null {
  const { own, writing, seen, trial, classId } = source;
  const grown = own.flatMap((v) => (v.ripening === null ? [] : [{ v, curve: v.ripening }]));
  if (grown.length === 0) return null;
  const model = ripeningModel(seen);
  const hasClaims =
    grown.some(({ v }) => v.variety.claimDays !== null) && trial.settings.firstRipeFrom === 'transplanted';
  const hasDegreeDays = grown.some(({ v }) => v.ripeningDegreeDays !== null);
  const { baseC, capC, method } = trial.settings.degreeDays;
  const { tables: say } = writing.words;
  const rank = (v: VarietySeen): number =>
    model?.estimates.get(v.variety.id)?.estimate ?? v.ripening?.median.estimate ?? Infinity;
  return {
    caption: say.ripening(trial.settings.firstRipeFrom === 'sown', source.percent),
    head: [
      say.variety,
      say.ripeByEnd,
      say.model,
      '',
      say.medianSeen,
      ...(hasDegreeDays ? [say.medianDegreeDays] : []),
      ...(hasClaims ? [say.claim] : []),
    ],
    rows: grown
      .toSorted((a, b) => rank(a.v) - rank(b.v))
      .map(({ v, curve }) => {
        const estimate = model?.estimates.get(v.variety.id);
        const heat = v.ripeningDegreeDays?.median;
        return [
          variety(v),
          ripeByEnd(curve, writing),
          modelText(estimate, curve, writing),
          lettersOf(source, 'first_ripe', v.variety.id),
          medianText(curve, writing),
          ...(hasDegreeDays ? [heat && !isAllLost(curve) ? heatText(heat.estimate, writing) : ''] : []),
          ...(hasClaims ? [claim(v, model, writing)] : []),
        ];
      }),
    foot: [
      ...(model ? [`${fText(model.f.get(classId), writing)}; ${say.countsPlantings}`] : []),
      say.looks(seen.season.lookEvery),
      ...(hasDegreeDays
        ? [say.degreeDays(writing.number(baseC), capC === null ? null : writing.number(capC), method)]
        : []),
      ...lettersNote(source, 'first_ripe'),
    ],
  };
}
