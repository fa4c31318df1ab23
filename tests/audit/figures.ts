import { plantModel, ratingModel, ripeningModel } from '../../src/analyse/traitsSeen.ts';
import { compareSeason } from '../../src/analyse/compareSeason.ts';
import type { SeasonComparisons } from '../../src/analyse/compareSeason.ts';
import type { ClassF } from '../../src/analyse/plantTypes.ts';
import { seasonSeen } from '../../src/analyse/seen.ts';
import type { SeasonSeen } from '../../src/analyse/seen.ts';
import { adviseNextSeason } from '../../src/decide/nextSeason.ts';
import type { Estimate } from '../../src/terms/estimate.ts';
import { check } from '../sites/folder.ts';
import type { Folder } from '../sites/folder.ts';

// What the program says of a trial, in the form in which audit.R says it.

interface Fit {
  readonly estimates: ReadonlyMap<string, Estimate>;
  readonly residualDf: number;
  readonly dispersion: number | null;
  readonly cv?: number | null;
  readonly f?: ReadonlyMap<string, ClassF | null>;
  readonly lsd?: ReadonlyMap<string, number | null>;
}

function limits({ n, estimate, low, high }: Estimate) {
  return { n, estimate, low, high };
}

/** Pairs that share no letter. */
function separated(letters: ReadonlyMap<string, string>): readonly string[] {
  const list = [...letters];
  return list.flatMap(([a, own], i) =>
    list
      .slice(i + 1)
      .flatMap(([b, other]) => ([...own].some((x) => other.includes(x)) ? [] : [[a, b].toSorted().join(' ')])),
  );
}

function fitFigures(
  fit: Fit | undefined,
  byClass: SeasonComparisons extends ReadonlyMap<string, infer C> ? C | undefined : never,
) {
  if (!fit || fit.estimates.size === 0) return null;
  const classes = [...(byClass ?? [])];
  return {
    df: fit.residualDf,
    dispersion: fit.dispersion,
    cv: fit.cv ?? null,
    varieties: Object.fromEntries([...fit.estimates].map(([id, own]) => [id, limits(own)])),
    f: Object.fromEntries(fit.f ?? []),
    lsd: Object.fromEntries(fit.lsd ?? []),
    separated: Object.fromEntries(classes.map(([id, { letters }]) => [id, separated(letters)])),
    against: Object.fromEntries(
      classes.map(([id, { againstCheck }]) => [
        id,
        Object.fromEntries((againstCheck?.varieties ?? []).map(({ variety, ...own }) => [variety, own])),
      ]),
    ),
    fresh: Object.fromEntries(classes.map(([id, { newAgainstReturning }]) => [id, newAgainstReturning])),
  };
}

function seasonFigures(seen: SeasonSeen, compared: SeasonComparisons) {
  const model = (trait: string) => {
    const own = plantModel(seen, trait);
    return fitFigures(own && { ...own, cv: own.cvPercent }, compared.get(trait));
  };
  return {
    yield: model('yield'),
    fruits: model('fruits'),
    length: model('length'),
    first_ripe: fitFigures(ripeningModel(seen) ?? undefined, compared.get('first_ripe')),
    flavour: fitFigures(ratingModel(seen, 'flavour'), compared.get('flavour')),
    curves: Object.fromEntries(
      seen.varieties.flatMap(({ variety: { id }, ripening }) =>
        ripening
          ? [
              [
                id,
                {
                  ripe: ripening.ripe,
                  unripe: ripening.unripe,
                  median: ripening.median.estimate,
                  low: ripening.median.low,
                  high: ripening.median.high,
                },
              ],
            ]
          : [],
      ),
    ),
  };
}

/** Every figure of a trial of the audit. */
export function figuresOf(folder: Folder) {
  const { trial } = check(folder);
  if (!trial) throw new Error('a trial of the audit has an error');
  const seasons = trial.seasons.map((season) => seasonSeen(trial, season));
  const next = adviseNextSeason(trial, seasons);
  return {
    seasons: Object.fromEntries(
      seasons.map((seen) => [String(seen.season.year), seasonFigures(seen, compareSeason(trial, seen))]),
    ),
    next: Object.fromEntries(
      [...next.forecasts]
        .filter(([trait]) => ['yield', 'flavour', 'first_ripe'].includes(trait))
        .map(([trait, { expected }]) => [
          trait,
          {
            between: expected.between,
            season: expected.withSeason,
            classes: Object.fromEntries(expected.classes.map(({ classId, classMean }) => [classId, classMean])),
            varieties: Object.fromEntries(
              expected.classes.flatMap(({ varieties }) =>
                varieties.map(({ variety, mean, low, high }) => [variety, { mean, low, high }]),
              ),
            ),
          },
        ]),
    ),
    shares: Object.fromEntries(
      next.classes.map(({ classId, advice }) => [
        classId,
        Object.fromEntries((advice?.varieties ?? []).map(({ variety, share, above }) => [variety, { share, above }])),
      ]),
    ),
  };
}
