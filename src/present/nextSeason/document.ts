import type { VarietyAdvice } from '../../decide/adviseVariety.ts';
import type { ClassOutcome } from '../../decide/nextSeason.ts';
import type { GardenAdvice } from '../../decide/adviseGarden.ts';
import { gardensNeeded } from '../../decide/gardensNeeded.ts';
import { traitFacts } from '../../terms/traits.ts';
import type { AdvisedDocument, ClassAdviceDocument, NextSeasonDocument } from '../publication/schemaAdvice.ts';
import { plainUnits } from '../units.ts';
import { expectedIn, whenceOf } from './source.ts';
import type { AdviceSource } from './source.ts';
import { adviceWords } from './varietyAdvice.ts';
import { keyed } from '../../numerics/element.ts';

function expectedDocument({ next, trial }: AdviceSource, classId: string, trait: string, variety: string) {
  const { own, ...figure } = expectedIn(next, trait, classId, variety)!;
  const values = keyed(next.forecasts, trait).values.values.filter((value) => value.variety === variety);
  return {
    ...figure,
    unit: traitFacts(trait, trial.settings.traits).publishedUnit,
    assumed_se: values.some(({ mark }) => mark === 'borrowed' || mark === 'assumed'),
    own_share: own.ownShare,
    seasons: values.map(({ year, theta, variance, mark }) => ({
      season: year,
      value: theta,
      se: Math.sqrt(variance),
      mark,
    })),
  };
}

function varietyDocument(source: AdviceSource, outcome: ClassOutcome, own: VarietyAdvice): AdvisedDocument {
  const { classId, basis, case: made } = outcome;
  return {
    variety: own.variety,
    verdict: own.verdict,
    share: own.share,
    above_bar: own.above,
    on_the_edge: own.isOnTheEdge,
    leans: own.leans,
    settles: own.settles,
    fragile: own.fragile,
    untested: own.untested,
    decided_by_limit: own.decidedByLimit,
    wanted: own.isWanted,
    seasons: keyed(basis, own.variety).seasons,
    last_grown: keyed(basis, own.variety).lastGrown,
    expected: Object.fromEntries(
      made.goals.map(({ trait }) => [trait, expectedDocument(source, classId, trait, own.variety)]),
    ),
    reasons: adviceWords(source, outcome, own).reasons.map((reason) => ({ ...reason, text: plainUnits(reason.text) })),
  };
}

function classDocument(source: AdviceSource, outcome: ClassOutcome): ClassAdviceDocument {
  const { advice, classId } = outcome;
  const winter = source.winters.find((own) => own.classId === classId);
  return {
    spots: outcome.case.spots,
    bar: outcome.case.bar,
    goals: (advice?.goals ?? []).map((goal) => ({
      trait: goal.trait,
      weight: goal.weight,
      ...goal.range,
      given: (['good', 'bad'] as const).some((end) => whenceOf(source.trial, classId, goal, end) === 'set'),
      part_of_variance: goal.partOfVariance,
      cut_off: goal.cutOff,
    })),
    goals_are_default: outcome.goalsAreDefault,
    fruits_for_yield: outcome.countsOnly,
    list: advice?.list ?? [],
    expected_right: advice?.expectedRight ?? 0,
    newcomer_spots: advice?.newcomerSpots ?? outcome.case.spots,
    gain: advice?.gain ?? null,
    not_competing: outcome.excluded,
    last_winter: winter ? { season: winter.season, keeps: winter.keeps, list: winter.list } : null,
    varieties: (advice?.varieties ?? []).map((own) => varietyDocument(source, outcome, own)),
  };
}

/** What is published of a club beside its verdicts. */
function clubDocument(
  { next }: AdviceSource,
  gardens: ReadonlyMap<string, GardenAdvice>,
): Pick<NextSeasonDocument, 'gardens' | 'gardens_needed'> {
  const yields = next.forecasts.get('yield')?.gardens ?? null;
  if (!yields) return {};
  const needed = next.classes.flatMap(({ classId }) => gardensNeeded(yields, classId) ?? []);
  return {
    gardens: [...gardens.values()].map(({ garden, classes }) => ({
      garden,
      classes: Object.fromEntries(
        classes.map(({ classId, varieties }) => [
          classId,
          varieties.map(({ variety, here, club }) => ({
            variety,
            verdict: here.verdict,
            share: here.share,
            club_verdict: club.verdict,
            club_share: club.share,
          })),
        ]),
      ),
    })),
    gardens_needed: Object.fromEntries(
      needed.map(({ classId, now, forFifth, forTwoFifths }) => [
        classId,
        { now, for_fifth: forFifth, for_two_fifths: forTwoFifths },
      ]),
    ),
  };
}

const SCALES = { log: 'log', plain: 'as it is', worth: 'log worth' } as const;

/** `next_season` of results.json. */
export function nextSeasonDocument(
  source: AdviceSource,
  gardens: ReadonlyMap<string, GardenAdvice>,
): NextSeasonDocument {
  const { next, trial } = source;
  return {
    season: next.season,
    simulations: trial.settings.verdicts.simulations,
    spread: Object.fromEntries(
      [...next.forecasts].map(([trait, { expected, values, gardens: over }]) => [
        trait,
        {
          between_varieties: expected.between,
          variety_by_season: expected.withSeason,
          ...(over ? { variety_by_garden: over.expected.withGarden, rest: over.expected.rest } : {}),
          working_scale: SCALES[values.scale],
          prior_scale: values.priorScale,
        },
      ]),
    ),
    classes: Object.fromEntries(next.classes.map((outcome) => [outcome.classId, classDocument(source, outcome)])),
    ...clubDocument(source, gardens),
  };
}
