import { answersTo, plantModel, ripeningModel } from '../analyse/traitsSeen.ts';
import type { SeasonSeen } from '../analyse/seen.ts';
import { afresh } from '../terms/recall.ts';
import type { Recall } from '../terms/recall.ts';
import type { ClassSettings, Settings } from '../terms/settings.ts';
import { plantingsOf } from '../terms/ofVariety.ts';
import type { Trial } from '../terms/trial.ts';
import { adviseClass } from './adviseClass.ts';
import type { ClassAdvice } from './adviseClass.ts';
import { candidatesOf } from './candidates.ts';
import type { NoCandidate } from './candidates.ts';
import type { ClassCase } from './cases.ts';
import { forecastsOf } from './forecasts.ts';
import type { Forecast } from './forecasts.ts';
import { goalsOf, mustOf } from './goals.ts';
import { limitsOf } from './must.ts';
import type { CountedLimit } from './must.ts';
import { keyed, nth } from '../numerics/element.ts';

/** What a verdict rests on, where that is one-sided. */
export interface Basis {
  readonly onlyContainers: boolean;
  readonly onlyTopped: boolean;
  /** What was said of growing it again when it was last asked, by everyone who answered; null where they differed. */
  readonly said: {
    readonly answer: 'yes' | 'no';
    readonly n: number;
    readonly year: number;
    readonly seasons: number;
  } | null;
  /** The last season in which it was grown, if it gave nothing then. */
  readonly gaveNothing: number | null;
  /** The same if no planting of it ripened. */
  readonly neverRipe: number | null;
  /** The last season in which it was grown, and in how many it was. */
  readonly lastGrown: number;
  readonly seasons: number;
}

export interface ClassOutcome {
  readonly classId: string;
  readonly case: ClassCase;
  /** Null where nothing that counts was recorded, or nobody competes. */
  readonly advice: ClassAdvice | null;
  readonly goalsAreDefault: boolean;
  /** Fruits stand in for the yield, which was hardly weighed. */
  readonly countsOnly: boolean;
  readonly unrecorded: readonly string[];
  readonly excluded: readonly { readonly variety: string; readonly why: NoCandidate }[];
  /** The bar was to be the check variety, but it has no records. */
  readonly barFellBack: boolean;
  /** Most varieties have two seasons or more: newcomers look better than they are. */
  readonly mostlySurvivors: boolean;
  readonly basis: ReadonlyMap<string, Basis>;
  /** Limits that counted fruit decide, by variety. */
  readonly limits: ReadonlyMap<string, readonly CountedLimit[]>;
}

/** Advice on the season after the last one recorded. */
export interface NextSeason {
  readonly season: number;
  readonly forecasts: ReadonlyMap<string, Forecast>;
  readonly classes: readonly ClassOutcome[];
}

/** How many seasons in a row everyone said the same of growing a variety again, up to the last answers. */
function saidOf(grown: readonly SeasonSeen[], variety: string): Basis['said'] {
  const asked = grown.flatMap((seen) => {
    const share = answersTo(seen, 'again')?.get(variety);
    return share && share.n > 0 ? [{ year: seen.season.year, ...share }] : [];
  });
  const last = asked.at(-1);
  if (!last || (last.k > 0 && last.k < last.n)) return null;
  const answer = last.k === 0 ? 'no' : 'yes';
  const isSame = ({ k, n }: { readonly k: number; readonly n: number }): boolean => k === (answer === 'no' ? 0 : n);
  const other = asked.toReversed().findIndex((own) => !isSame(own));
  return { answer, n: last.n, year: last.year, seasons: other < 0 ? asked.length : other };
}

/** So many seasons of nothing but yes are a wish to be kept; one no of all is enough. */
const SEASONS_WANTED = 3;

function wantedOf({ said }: Basis): 'yes' | 'no' | null {
  if (said === null) return null;
  return said.answer === 'no' || said.seasons >= SEASONS_WANTED ? said.answer : null;
}

function basisOf(seasons: readonly SeasonSeen[], variety: string): Basis {
  const grown = seasons.filter(({ season }) => plantingsOf(season, variety).length > 0);
  const last = nth(grown, -1);
  const ripening = last.varieties.find((own) => own.variety.id === variety)?.ripening;
  const plantings = grown.flatMap(({ season }) => plantingsOf(season, variety));
  return {
    onlyContainers: plantings.every(({ standsIn }) => standsIn === 'pot' || standsIn === 'bag'),
    onlyTopped: plantings.every(({ topped }) => topped === true),
    said: saidOf(grown, variety),
    gaveNothing: plantModel(last, 'yield')?.estimates.get(variety)?.estimate === 0 ? last.season.year : null,
    neverRipe:
      ripening !== null && ripening !== undefined && ripening.ripe === 0 && ripening.accidents < ripening.unripe
        ? last.season.year
        : null,
    lastGrown: last.season.year,
    seasons: grown.length,
  };
}

/** Spots of a class: as set, else as many as varieties it grew when it was last grown. */
function spotsOf(own: ClassSettings, seasons: readonly SeasonSeen[]): number {
  const count = ({ varieties }: SeasonSeen): number =>
    varieties.filter(({ variety }) => variety.classId === own.id).length;
  return own.spots ?? seasons.map(count).findLast((n) => n > 0) ?? 0;
}

/** Part of a variety's squared standard error that its plants share, in one plant's: as the class stood last. */
function togetherOf(seasons: readonly SeasonSeen[], classId: string, spotCorrelation: number): number {
  const layouts = seasons.flatMap((seen) => {
    const layout = plantModel(seen, 'yield')?.layouts.get(classId) ?? ripeningModel(seen)?.layouts.get(classId);
    return layout === undefined ? [] : [layout];
  });
  return (layouts.at(-1) ?? 'together') === 'together' ? spotCorrelation / (1 - spotCorrelation) : 0;
}

interface Known {
  readonly candidates: ReturnType<typeof candidatesOf>;
  readonly forecasts: ReadonlyMap<string, Forecast>;
  readonly withDetail: boolean;
  readonly recall: Recall;
}

/** Advice for a class, which rests on the class, its traits' values and the settings alone. */
function recalledAdvice(
  own: ClassCase,
  forecasts: ReadonlyMap<string, Forecast>,
  { verdicts, interval }: Settings,
  withDetail: boolean,
  recall: Recall,
): ClassAdvice {
  const traits = new Set([...own.goals, ...own.must].map(({ trait }) => trait));
  const values = [...traits].map((trait) => {
    const forecast = forecasts.get(trait);
    return forecast ? [forecast.own, forecast.gardens?.classes ?? null] : null;
  });
  return recall('advice', { own, values, interval, verdicts, withDetail }, (input) =>
    adviseClass(input.own, forecasts, input.verdicts, input.withDetail),
  );
}

function classOutcome(
  trial: Trial,
  seasons: readonly SeasonSeen[],
  own: ClassSettings,
  { candidates, forecasts, withDetail, recall }: Known,
): ClassOutcome {
  const { settings } = trial;
  const values = new Map([...forecasts].map(([trait, forecast]) => [trait, forecast.values]));
  const { goals, areDefault, countsOnly, unrecorded } = goalsOf(own.id, settings, values);
  const must = mustOf(own.id, settings);
  const hasCheck = candidates.some(({ variety }) => variety.id === own.checkVariety);
  const barFellBack = own.bar === 'check' && !hasCheck;
  const basis = new Map(candidates.map(({ variety }) => [variety.id, basisOf(seasons, variety.id)]));
  const isKnown = (id: string): boolean =>
    goals.some(({ trait }) => keyed(values, trait).values.some(({ variety }) => variety === id));
  const reasons = new Map(
    candidates.map(({ variety: { id }, excluded }) => [id, excluded ?? (isKnown(id) ? null : ('untried' as const))]),
  );
  const found = new Map(
    candidates.map(({ variety: { id } }) => [id, limitsOf(seasons, id, must, values, settings)] as const),
  );
  const competitors = candidates.map(({ variety: { id } }) => {
    const { untested, missed, counted } = keyed(found, id);
    return { id, competes: reasons.get(id) === null, untested, missed, counted, wanted: wantedOf(keyed(basis, id)) };
  });
  const bar = barFellBack ? 'newcomer' : own.bar;
  const spots = spotsOf(own, seasons);
  const { checkVariety } = own;
  const together = togetherOf(seasons, own.id, settings.spotCorrelation);
  const made: ClassCase = { classId: own.id, spots, bar, checkVariety, competitors, goals, must, together };
  const canAdvise = goals.length > 0 && spots > 0 && competitors.some(({ competes }) => competes);
  const repeated = [...basis.values()].filter((one) => one.seasons >= 2).length;
  return {
    classId: own.id,
    case: made,
    advice: canAdvise ? recalledAdvice(made, forecasts, settings, withDetail, recall) : null,
    goalsAreDefault: areDefault,
    countsOnly,
    unrecorded,
    excluded: [...reasons].flatMap(([variety, why]) => (why === null ? [] : [{ variety, why }])),
    barFellBack,
    mostlySurvivors: repeated > basis.size / 2,
    basis,
    limits: new Map([...found].map(([id, { counts }]) => [id, counts])),
  };
}

/**
 * Verdicts and lists for the season after the last of `seasons`.
 *
 * @param seasons     what was seen, in order of years, at least one
 * @param withDetail  false leaves out what is expected of each variety, what turns a verdict and what would settle it
 * @param recall      gives what was worked out before
 * @source methods page B and C
 */
export function adviseNextSeason(
  trial: Trial,
  seasons: readonly SeasonSeen[],
  withDetail = true,
  recall = afresh,
): NextSeason {
  const season = nth(seasons, -1).season.year + 1;
  const classes = [...trial.settings.classes.values()];
  const candidates = new Map(classes.map((own) => [own.id, candidatesOf(trial, seasons, own, season)]));
  const grown = new Map([...candidates].map(([id, list]) => [id, list.map(({ variety }) => variety.id)]));
  const forecasts = forecastsOf(trial, seasons, grown, withDetail, recall);
  const outcomes = classes
    .filter(({ id }) => keyed(candidates, id).length > 0)
    .map((own) => {
      const known = { candidates: keyed(candidates, own.id), forecasts, withDetail, recall };
      return classOutcome(trial, seasons, own, known);
    });
  return { season, forecasts, classes: outcomes };
}
