import { crossTraits, isUnexpected } from '../../analyse/lines/crossGenes.ts';
import type { CrossTrait } from '../../analyse/lines/crossGenes.ts';
import { crossesOf } from '../../analyse/lines/crosses.ts';
import type { Cross, CrossFamily, CrossPlant } from '../../analyse/lines/crosses.ts';
import { crossSpreads, newestFamilies } from '../../analyse/lines/crossSpread.ts';
import type { CrossSpread } from '../../analyse/lines/crossSpread.ts';
import { mixedShare, mixedThrough } from '../../analyse/lines/generations.ts';
import { offTypesAllowed, offTypesAtMost } from '../../analyse/lines/offTypes.ts';
import { plantValues } from '../../analyse/lines/plantValues.ts';
import { responseOf } from '../../analyse/lines/response.ts';
import type { Response } from '../../analyse/lines/response.ts';
import type { SeasonSeen } from '../../analyse/seen.ts';
import { sharesAgreeP } from '../../numerics/multinomial.ts';
import { sowingDates } from '../../analyse/seed/sowing.ts';
import { afresh } from '../../terms/recall.ts';
import { fileOnly } from '../../terms/place.ts';
import { openLog } from '../../terms/problem.ts';
import type { Settings } from '../../terms/settings.ts';
import type { Problem } from '../../terms/problem.ts';
import { traitFacts } from '../../terms/traits.ts';
import { everySeason } from '../../terms/trial.ts';
import type { Trial } from '../../terms/trial.ts';
import type { NextSeason } from '../nextSeason.ts';
import { adviseCross } from './carry.ts';
import type { CrossAdvice, CrossBasis } from './carry.ts';
import { outlookOf } from './outlook.ts';
import type { Outlook } from './outlook.ts';

/** Plants of a family that differ from the rest in a trait. */
export interface OffTypes {
  readonly trait: string;
  readonly k: number;
  readonly n: number;
  /** Upper limit of their share, one-sided, 95 %. */
  readonly atMost: number;
  readonly allowed: number;
}

/** Everything that is told of a cross. */
export interface CrossReport {
  readonly cross: Cross;
  /** Share of the genes still mixed in the newest family, and with as much foreign pollen as the species takes. */
  readonly mixed: { readonly selfed: number; readonly most: number | null } | null;
  readonly newest: CrossFamily | null;
  readonly traits: readonly CrossTrait[];
  readonly spreads: readonly CrossSpread[];
  readonly advice: CrossAdvice | null;
  readonly offTypes: readonly OffTypes[];
  readonly responses: readonly (Response & { readonly trait: string; readonly check: string })[];
  readonly outlook: Outlook | null;
}

function offTypesOf(family: CrossFamily | null): readonly OffTypes[] {
  return [...(family?.counts ?? [])].flatMap(([trait, states]) => {
    const counts = [...states.values()];
    const n = counts.reduce((sum, own) => sum + own, 0);
    const k = n - Math.max(...counts);
    return n < 2 ? [] : [{ trait, k, n, atMost: offTypesAtMost(k, n), allowed: offTypesAllowed(n) }];
  });
}

function responsesOf(
  { cross, newest, spreads }: Pick<CrossReport, 'cross' | 'newest' | 'spreads'>,
  seasons: readonly SeasonSeen[],
  trial: Trial,
): CrossReport['responses'] {
  if (!newest) return [];
  const check = trial.settings.classes.get(cross.classId)?.checkVariety ?? null;
  const before = newest.mothers[0];
  const family = cross.families.find(({ plants }) => before !== undefined && plants.includes(before));
  const [then, now] = [before?.year, newest.years.at(-1)].map((year) =>
    seasons.find(({ season }) => season.year === year),
  );
  if (check === null || !family || !then || !now) return [];
  return spreads.flatMap(({ trait }) => {
    const isLog = traitFacts(trait, trial.settings.traits).scale === 'log';
    const of = (seen: SeasonSeen, variety: string): readonly number[] =>
      plantValues(seen, trait, trial)
        .filter((own) => own.variety === variety)
        .map(({ value }) => (isLog ? Math.log(value) : value));
    const own = responseOf(
      { line: of(then, family.variety.id), check: of(then, check) },
      { line: of(now, newest.variety.id), check: of(now, check) },
      trial.settings.interval,
    );
    return own ? [{ ...own, trait, check }] : [];
  });
}

function mixedOf(cross: Cross, newest: CrossFamily | null, settings: Settings): CrossReport['mixed'] {
  const generation = newest?.generation ?? null;
  if (generation === null || newest?.variety.isBackcross === true) return null;
  const range = settings.outcrossing.get((cross.species ?? '').toLowerCase());
  // Whether foreign pollen could come, from the F1's flowers on: as recorded on the way to the family, else it could.
  const steps: boolean[] = [];
  for (let own: CrossFamily | undefined = newest ?? undefined; own && steps.length < generation - 1;) {
    steps.unshift(own.mayBeCrossed);
    const [mother]: readonly CrossPlant[] = own.mothers;
    own = mother && cross.families.find(({ plants }) => plants.includes(mother));
  }
  while (steps.length < generation - 1) steps.unshift(true);
  const most = steps.includes(true) && range ? mixedThrough(steps.map((isOpen) => (isOpen ? range[1] : 0))) : null;
  return { selfed: mixedShare(generation), most };
}

/**
 * What is told of every cross of a trial.
 *
 * @param next    advice of next season, for the range of points of its classes; null without a season
 * @param recall  gives what was worked out before
 */
export function crossReports(
  trial: Trial,
  seasons: readonly SeasonSeen[],
  next: NextSeason | null,
  recall = afresh,
): readonly CrossReport[] {
  const { settings } = trial;
  return crossesOf(trial).map((cross): CrossReport => {
    const traits = crossTraits(cross, trial);
    const spreads = crossSpreads(cross, seasons, trial, settings.interval);
    const ofClass = next?.classes.find(({ classId }) => classId === cross.classId)?.advice ?? null;
    const goals = ofClass?.goals ?? [];
    const dropped = (ofClass?.varieties ?? []).flatMap((own) => (own.verdict === 'drop' ? [own.variety] : []));
    const report = reportOf({ cross, traits, spreads, goals, settings, recall, dropped });
    return { ...report, responses: responsesOf(report, seasons, trial) };
  });
}

interface ReportBasis extends CrossBasis {
  /** Varieties whose verdict is drop. */
  readonly dropped: readonly string[];
}

function reportOf({ dropped, ...basis }: ReportBasis): Omit<CrossReport, 'responses'> {
  const { cross, traits, spreads, settings } = basis;
  const advice = adviseCross(basis);
  const newest = advice?.family ?? newestFamilies(cross).at(-1) ?? null;
  const offTypes = offTypesOf(newest);
  const most = offTypes.length === 0 ? null : Math.max(...offTypes.map(({ atMost }) => atMost));
  return {
    cross,
    mixed: mixedOf(cross, newest, settings),
    newest,
    traits,
    spreads,
    advice,
    offTypes,
    outlook: advice && outlookOf(advice, traits, most, dropped.includes(advice.family.variety.id)),
  };
}

/** Fewest plants of a family that is said to be unlike its mother. */
const FEWEST_UNLIKE = 4;

function familyProblems({ cross, traits }: CrossReport, log: ReturnType<typeof openLog>): void {
  for (const family of cross.families) {
    const [mother] = family.mothers;
    if (!mother || family.mothers.length > 1) continue;
    for (const { trait, seen, genes } of traits)
      for (const plant of family.plants) {
        const state = plant.states.get(trait.key);
        if (!genes || state === undefined || !isUnexpected(genes, plant, seen.indexOf(state))) continue;
        log.add('offspring-unexpected', plant.planting.place, state, { mother: mother.planting.id, trait: trait.key });
      }
    const compared = traits.filter(({ trait }) => mother.states.has(trait.key) && family.counts.has(trait.key));
    const isUnlike = compared.every(({ trait }) => {
      const counts = family.counts.get(trait.key);
      const total = [...(counts?.values() ?? [])].reduce((sum, own) => sum + own, 0);
      return total >= FEWEST_UNLIKE && (counts?.get(mother.states.get(trait.key) ?? '') ?? 0) === 0;
    });
    if (compared.length > 0 && isUnlike)
      log.add('family-unlike', family.variety.place, family.variety.id, { mother: mother.planting.id });
  }
}

/** Sowings of a lot in one season that differ more than chance does. @source methods page L12 */
const DISAGREE_BELOW = 0.025;

/** What in the records of crosses and seed only their analysis shows to be doubtful. */
export function lineProblems(trial: Trial, reports: readonly CrossReport[]): readonly Problem[] {
  const log = openLog();
  for (const report of reports) {
    familyProblems(report, log);
    const bare = report.spreads.filter(({ fixed }) => fixed === null).map(({ trait }) => trait);
    if (bare.length > 0 && report.newest)
      log.add('too-few-checks', report.newest.variety.place, report.cross.id, { trait: bare.join(', ') });
  }
  const [dates] = sowingDates(trial);
  if (dates && dates.dates.length === 0)
    log.add('frost-years-few', fileOnly('data'), '', { years: dates.seen.map(({ year }) => year).join(', ') || '0' });
  for (const lot of trial.lots) {
    for (const { seedBatches } of everySeason(trial)) {
      const own = seedBatches.filter((batch) => batch.lot === lot.id);
      if (own.length < 2) continue;
      const p = sharesAgreeP(
        own.map(({ germinated }) => germinated),
        own.map(({ seeds }) => seeds),
      );
      const counts = own.map(({ germinated, seeds }) => `${germinated}/${seeds}`).join(', ');
      if (p < DISAGREE_BELOW) log.add('tests-disagree', lot.place, lot.id, { counts });
    }
  }
  return log.problems();
}
