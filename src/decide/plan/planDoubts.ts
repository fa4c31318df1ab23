import { isoDate } from '../../terms/day.ts';
import { plantsIn } from '../../terms/lines.ts';
import type { ProblemLog } from '../../terms/problem.ts';
import { fixedRows } from './asked.ts';
import type { PlanSource } from './asked.ts';
import { inYear, seasonEnd } from './dates.ts';
import { planFile } from './fixedPlaces.ts';
import type { ClassPlan, Plan } from './planned.ts';
import { touching } from './stretches.ts';
import type { Stretch } from './stretches.ts';

/** Of 100, never 0 or 100 but for what is impossible. */
const of100 = (chance: number): string =>
  chance === 0 ? '0' : String(Math.min(99, Math.max(1, Math.round(100 * chance))));

/** A variety is late where half of it is ripe in time with less than this. */
const LATE_BELOW = 0.5;

function reportClass(own: ClassPlan, source: PlanSource, log: ProblemLog): void {
  const { classId, varieties, cut, waiting, layout } = own;
  const at = planFile(source.year);
  const listed = varieties.filter(({ kind }) => kind === 'tried');
  if (cut.length > 0)
    log.add('plan-list-cut', at, cut.join(', '), {
      class: classId,
      held: String(listed.length),
      listed: String(listed.length + cut.length),
      waiting: cut.join(', '),
      more: String(2 * cut.length),
    });
  const fresh = varieties.filter(({ kind }) => kind === 'newcomer').length;
  if (waiting.length > 0)
    log.add('plan-newcomers-wait', at, waiting.join(', '), {
      class: classId,
      waiting: String(waiting.length),
      all: String(fresh + waiting.length),
    });
  const total = plantsIn(layout.plants);
  const [most] = [...layout.besides].toSorted(([, a], [, b]) => b - a);
  const plants = varieties.find(({ variety }) => variety === most?.[0])?.plants ?? 0;
  if (most && !source.hasBegun)
    log.add('plan-side-by-side', at, most[0], {
      class: classId,
      variety: [...layout.besides.keys()].join(', '),
      plants: String(plants),
      places: String(total),
      pairs: String([...layout.besides.values()].reduce((sum, own) => sum + own, 0)),
    });
  if (layout.tallOver > 0 && !source.hasBegun)
    log.add('plan-tall-too-many', at, classId, { class: classId, over: String(layout.tallOver) });
  const check = source.trial.settings.classes.get(classId)?.checkVariety ?? null;
  const hasCheck = varieties.some(({ variety }) => variety === check);
  if (!hasCheck && listed.length < 2 && source.trial.seasons.length > 0)
    log.add('plan-check-missing', at, classId, { class: classId });
}

function reportVarieties(own: ClassPlan, source: PlanSource, log: ProblemLog): void {
  const at = planFile(source.year);
  const end = isoDate(seasonEnd(source));
  for (const { variety, plants, seeds, ahead } of own.varieties) {
    if (seeds.atHand !== null && seeds.chanceAtHand !== null && seeds.atHand < seeds.seeds)
      log.add('plan-seed-short', at, variety, {
        hand: String(seeds.atHand),
        needed: String(seeds.seeds),
        plants: String(plants),
        chance: of100(seeds.chanceAtHand),
      });
    if (ahead && !ahead.isClass && ahead.chance < LATE_BELOW)
      log.add('plan-late', at, variety, { day: end, chance: of100(ahead.chance) });
  }
}

function reportFrost({ frost, classes }: Plan, source: PlanSource, log: ProblemLog): void {
  if (!frost) return;
  const at = planFile(source.year);
  const [first] = classes.flatMap(({ dates }) => (dates.plantOut !== null && dates.frost !== null ? [dates] : []));
  if (first?.frost != null && first.plantOut !== null && first.frost > source.trial.settings.plan.frostRisk)
    log.add('plan-frost', at, isoDate(first.plantOut), {
      chance: of100(first.frost),
      safe: isoDate(frost.safe),
      risk: of100(source.trial.settings.plan.frostRisk),
    });
  if (frost.disagrees && frost.stated !== null && frost.recorded !== null)
    log.add('plan-frost-disagree', at, '', {
      stated: isoDate(inYear(frost.stated, source.year)).slice(5),
      recorded: isoDate(inYear(frost.recorded, source.year)).slice(5),
    });
}

/** What a plan is to be told of, beside its errors. */
export function reportDoubts(source: PlanSource, plan: Plan, stretches: readonly Stretch[], log: ProblemLog): void {
  for (const own of plan.classes) {
    reportClass(own, source, log);
    reportVarieties(own, source, log);
  }
  for (const pair of source.trial.settings.plan.keepApart) {
    const times = touching(stretches, [pair]);
    if (times > 0)
      log.add('plan-apart-broken', planFile(source.year), pair.join(', '), {
        classes: pair.join(', '),
        times: String(times),
      });
  }
  reportFrost(plan, source, log);
  for (const { classId, samples, varieties } of plan.tasting?.flights ?? [])
    if (samples < 2 && varieties > 1)
      log.add('plan-tasters-few', planFile(source.year), classId, { class: classId, samples: String(samples) });
  const fixed = [...fixedRows(source).values()].flat().length;
  if (fixed > 0 && fixed === plan.rows.length) log.add('plan-all-fixed', planFile(source.year));
  else if (fixed > 0) log.add('plan-kept', planFile(source.year), '', { rows: String(fixed) });
}
