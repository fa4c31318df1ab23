import type { Plan } from '../../decide/plan/planned.ts';
import { isoDate, isoDateOrNull } from '../../terms/day.ts';

/** The plan as another program reads it. */
export function planDocument({ plan }: { readonly plan: Plan }): string {
  const document = {
    format: 'keeprow-plan/1',
    season: plan.year,
    classes: plan.classes.map(({ classId, places, spots, varieties, free, cut, waiting, layout, dates, tells }) => ({
      class: classId,
      places,
      spots,
      free,
      left_out_of_list: cut,
      waiting,
      blocks: layout.sizes,
      average_variance: layout.variance?.average ?? null,
      average_variance_without_blocks: layout.variance?.without ?? null,
      residual_df: tells?.df ?? null,
      detectable_ratio: tells?.ratio ?? null,
      sow: isoDateOrNull(dates.sow),
      pot_on: isoDateOrNull(dates.potOn),
      harden_off: isoDateOrNull(dates.hardenOff),
      plant_out: isoDateOrNull(dates.plantOut),
      frost_after: dates.frost,
      varieties: varieties.map(({ variety, kind, plants, share, ahead, seeds, settles }) => ({
        variety,
        kind,
        plants,
        share,
        settles,
        ripe_expected: ahead ? isoDate(ahead.expected) : null,
        ripe_in_time: ahead?.chance ?? null,
        plant_out_at_latest: ahead ? isoDate(ahead.latest) : null,
        seeds: seeds.seeds,
        at_hand: seeds.atHand,
        buy: seeds.buy,
      })),
    })),
    frost: plan.frost && {
      springs: plan.frost.risk.springs,
      middle: plan.frost.risk.middle,
      scale: plan.frost.risk.scale,
      df: plan.frost.risk.df,
      safe: isoDate(plan.frost.safe),
    },
  };
  return `${JSON.stringify(document, null, 1)}\n`;
}
