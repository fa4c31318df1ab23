import { detectableNoncentrality } from '../../numerics/power.ts';
import { studentizedRangeQuantile } from '../../numerics/range.ts';
import { plantModel } from '../../analyse/traitsSeen.ts';
import { nth } from '../../numerics/element.ts';
import { openLog, severityOf } from '../../terms/problem.ts';
import type { ProblemLog } from '../../terms/problem.ts';
import { plantsIn } from '../../terms/lines.ts';
import type { Bed } from '../../terms/plan.ts';
import { settlesWith } from '../adviseVariety.ts';
import type { VarietyAdvice } from '../adviseVariety.ts';
import { askedOf, fixedRows, grownOf, allPlants, placesOf, sizeOf, wishOf } from './asked.ts';
import type { PlanSource } from './asked.ts';
import { bedsOf, oneRow } from './beds.ts';
import { classDates, frostAhead, varietyAhead } from './dates.ts';
import type { FrostAhead } from './dates.ts';
import { fixedPlants, planFile, wishedPlaces } from './fixedPlaces.ts';
import { layoutOf } from './layout.ts';
import type { ClassLayout } from './layoutTypes.ts';
import { plantsOfEach } from './plants.ts';
import type { PlantsAsked, PlantsGiven } from './plants.ts';
import type { ClassPlan, MadePlan, Plan, PlannedVariety } from './planned.ts';
import { reportDoubts } from './planDoubts.ts';
import { rowsOf } from './planRows.ts';
import { seedsAhead } from './seedsAhead.ts';
import { stretchesOf } from './stretches.ts';
import type { FixedPlant, Stretch } from './stretches.ts';
import { tastingOf } from './tasting.ts';

interface Shared {
  readonly classId: string;
  readonly asked: PlantsAsked;
  readonly given: PlantsGiven;
  readonly grown: ReadonlyMap<string, number>;
}

/** What ratio of yields a class's layout tells with 80 % power, at the spread of plants seen last. */
function tellsOf({ trial, seasons }: PlanSource, layout: ClassLayout, varieties: number): ClassPlan['tells'] {
  const plants = layout.plants.length;
  const df = plants - varieties - layout.sizes.length + 1;
  const model = seasons.map((seen) => plantModel(seen, 'yield')).findLast((own) => own?.dispersion != null);
  if (!layout.variance || df < 1 || varieties < 2 || !model?.dispersion || model.family !== 'gamma') return null;
  const unit = model.scales?.get(layout.classId) ?? 1;
  const critical = studentizedRangeQuantile(trial.settings.interval, varieties, df) / Math.SQRT2;
  const needed =
    detectableNoncentrality(0.8, df, critical) * Math.sqrt(model.dispersion * unit * layout.variance.average);
  return { df, ratio: Math.exp(needed) };
}

const KINDS = { tried: 0, newcomer: 1, line: 2 } as const;

function classPlan(
  source: PlanSource,
  { classId, asked, given, grown }: Shared,
  layout: ClassLayout,
  frost: FrostAhead | null,
): ClassPlan {
  const dates = classDates(source, classId, frost);
  const outcome = source.next?.classes.find((own) => own.classId === classId);
  const { verdicts } = source.trial.settings;
  const varieties = asked.varieties
    .filter(({ variety }) => grown.has(variety))
    .toSorted(
      (a, b) =>
        KINDS[a.kind] - KINDS[b.kind] ||
        (b.share ?? 0) - (a.share ?? 0) ||
        (a.kind === 'newcomer' ? 0 : a.variety < b.variety ? -1 : 1),
    )
    .map(({ variety, kind, share, isCheck }): PlannedVariety => {
      const plants = grown.get(variety) ?? 0;
      const advice: VarietyAdvice | undefined = outcome?.advice?.varieties.find((own) => own.variety === variety);
      return {
        variety,
        kind,
        plants,
        isCheck,
        share: outcome?.advice ? share : null,
        ahead: varietyAhead(source, variety, dates),
        seeds: seedsAhead(source, variety, plants),
        settles: advice?.learning ? settlesWith(advice, plants, verdicts) : null,
      };
    });
  const { places, spots } = asked;
  const { free, cut, waiting } = given;
  return {
    classId,
    places,
    spots,
    varieties,
    free,
    cut,
    waiting,
    layout,
    dates,
    tells: tellsOf(source, layout, grown.size),
  };
}

/** Reports wishes for fewer plants than rows of plantings.csv fix. */
function reportWishes(source: PlanSource, log: ProblemLog): void {
  const rows = fixedRows(source);
  for (const { variety, plants, atMost, isRefused, place } of source.trial.wishes.get(source.year) ?? []) {
    const fixed = plantsIn(rows.get(variety) ?? []);
    const least = plants ?? atMost ?? (isRefused ? 0 : null);
    if (fixed === 0 || least === null || fixed <= least) continue;
    const said = plants !== null ? `plants ${plants}` : isRefused ? 'grow no' : `at_most ${atMost}`;
    log.add('plan-wish-contradicts', place, variety, { against: `${said}, plantings.csv ${fixed}` });
  }
}

/** Plants of each class; reported where wishes are too many. */
function shareOut(source: PlanSource, beds: readonly Bed[], log: ProblemLog): readonly Shared[] {
  const classes = [...source.trial.settings.classes.values()];
  const places = placesOf(source, beds, classes);
  return classes.flatMap((own, i): readonly Shared[] => {
    const asked = askedOf(source, own, nth(places, i));
    const given = plantsOfEach(asked);
    if (given.short > 0) {
      const wished = asked.varieties.filter((one) => one.plants !== null || one.atLeast !== null);
      log.add('plan-too-many', planFile(source.year), own.id, {
        wished: String(asked.places + given.short),
        places: String(asked.places),
        short: String(given.short),
        varieties: (wished.length > 0 ? wished : asked.varieties.filter(({ isCheck }) => isCheck))
          .map(({ variety }) => variety)
          .join(', '),
      });
    }
    const grown = grownOf(asked, given.plants);
    return given.short > 0 || grown.size === 0 ? [] : [{ classId: own.id, asked, given, grown }];
  });
}

/** Places of the classes along the beds; reported where they do not fit. */
function stretches(
  source: PlanSource,
  beds: readonly Bed[],
  shared: readonly Shared[],
  fixed: readonly FixedPlant[],
  log: ProblemLog,
) {
  const found = stretchesOf({
    beds,
    plants: shared.map(({ classId, grown }) => ({ classId, plants: allPlants(grown) })),
    fixed,
    keepApart: source.trial.settings.plan.keepApart,
  });
  if (found) return found;
  const all = beds.reduce((sum, bed) => sum + sizeOf(bed), 0);
  const [largest] = shared.toSorted((a, b) => allPlants(b.grown) - allPlants(a.grown));
  log.add('plan-class-no-place', planFile(source.year), largest?.classId ?? '', {
    class: largest?.classId ?? '',
    plants: String(largest ? allPlants(largest.grown) : 0),
    places: String(
      Math.max(0, all - shared.reduce((sum, own) => sum + (own === largest ? 0 : allPlants(own.grown)), 0)),
    ),
  });
  return null;
}

/** Where the plants of each class stand. */
function layoutsOf(
  source: PlanSource,
  shared: readonly Shared[],
  found: readonly Stretch[],
  fixed: readonly FixedPlant[],
) {
  const { plan } = source.trial.settings;
  return found.map((stretch) => {
    const grown = shared.find(({ classId }) => classId === stretch.classId)?.grown ?? new Map<string, number>();
    return layoutOf({
      stretch,
      varieties: [...grown].map(([variety, plants]) => {
        const wish = wishOf(source, variety);
        return { variety, plants, isTall: wish?.isTall ?? false, savesSeed: wish?.savesSeed ?? false };
      }),
      fixed: fixed.filter(({ classId }) => classId === stretch.classId),
      layout: plan.layout,
      stream: `${plan.seed}/plan/${source.year}/${stretch.classId}`,
    });
  });
}

/**
 * Next season's trial: plants of each variety, where each stands, when it is sown, how much seed, and a tasting.
 *
 * @source methods page, plan
 */
export function makePlan(source: PlanSource): MadePlan {
  const log = openLog();
  const known = bedsOf(source);
  if (!source.hasBegun) reportWishes(source, log);
  const shared = shareOut(source, known, log);
  const total = shared.reduce((sum, { grown }) => sum + allPlants(grown), 0);
  const beds = known.length > 0 ? known : [oneRow(Math.max(1, total))];
  const own = fixedPlants(source, beds, log);
  const wished = wishedPlaces(
    source,
    beds,
    shared.map(({ classId, grown }) => [classId, grown] as const),
    own,
    log,
  );
  const fixed = [...own, ...wished];
  const hasError = (): boolean => log.problems().some((own) => severityOf(own) === 'error');
  const found = hasError() ? null : stretches(source, beds, shared, fixed, log);
  if (!found) return { plan: null, problems: log.problems().filter((own) => severityOf(own) === 'error') };
  const layouts = layoutsOf(source, shared, found, fixed);
  const frost = frostAhead(source);
  const classes = shared.map((one) =>
    classPlan(
      source,
      one,
      nth(
        layouts.filter(({ classId }) => classId === one.classId),
        0,
      ),
      frost,
    ),
  );
  const plan: Plan = {
    year: source.year,
    beds,
    classes,
    rows: rowsOf(source, beds, layouts),
    frost,
    tasting: tastingOf(
      source,
      shared.map(({ classId, grown }) => [classId, [...grown.keys()]] as const),
    ),
  };
  reportDoubts(source, plan, found, log);
  return { plan, problems: log.problems() };
}
