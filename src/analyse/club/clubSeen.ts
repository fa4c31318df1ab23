import { isOfClub } from '../../terms/gardens.ts';
import { pickingsOf } from '../../terms/record.ts';
import { classLookup } from '../../terms/trial.ts';
import type { Season, Trial } from '../../terms/trial.ts';
import { answersTo, plantModel } from '../traitsSeen.ts';
import type { SeasonSeen } from '../seen.ts';
import type { Unit } from '../units.ts';
import { groupsSeen } from './groups.ts';
import type { GroupsSeen } from './groups.ts';
import { returnsOf } from './returns.ts';
import type { Returns } from './returns.ts';

/** A variety as the club's gardens saw it. */
export interface ClubVariety {
  readonly variety: string;
  readonly returns: Returns;
}

/** A class as the club's gardens saw it. */
export interface ClubClass {
  readonly classId: string;
  readonly varieties: readonly ClubVariety[];
  /** Varieties that gardens join, the largest part first. */
  readonly parts: readonly (readonly string[])[];
  /** Gardens with one variety of the class, and gardens that gave nothing of it. */
  readonly lone: number;
  readonly empty: number;
  readonly groups: readonly GroupsSeen[];
}

/** A season of several gardens, over all of them. */
export interface ClubSeen {
  /** Gardens that were sent anything, those of which records came, those that tell a difference. */
  readonly sent: number;
  readonly received: number;
  readonly counted: number;
  readonly classes: readonly ClubClass[];
}

/** Yields of a class's varieties, garden by garden, per plant. */
function unitsOf({ season, yields }: SeasonSeen, classId: string, classOf: (id: string) => string): readonly Unit[] {
  return season.yieldUnits.flatMap((planting) => {
    const grams = yields.get(planting.id)?.grams ?? null;
    if (grams === null || planting.cause === 'accident' || classOf(planting.variety) !== classId) return [];
    return [{ planting, classId, y: grams / planting.plants, plants: planting.plants }];
  });
}

/** Gardens of which something of a variety was recorded, by variety. */
function gardensByVariety({ plantings }: Season): ReadonlyMap<string, ReadonlySet<string>> {
  const gardens = new Map<string, Set<string>>();
  for (const { garden, variety } of plantings) gardens.set(variety, (gardens.get(variety) ?? new Set()).add(garden));
  return gardens;
}

function classSeen(trial: Trial, seen: SeasonSeen, classId: string): ClubClass {
  const { settings } = trial;
  const { season } = seen;
  const classOf = classLookup(trial.varieties);
  const grown = gardensByVariety(season);
  const model = plantModel(seen, 'yield') ?? plantModel(seen, 'fruits');
  const varieties = seen.varieties
    .filter(({ variety }) => variety.classId === classId)
    .map(({ variety: { id } }): ClubVariety => {
      const gardens = grown.get(id) ?? new Set<string>();
      const given = new Set(season.sent.filter(({ variety }) => variety === id).map(({ garden }) => garden));
      const asked = new Set([...given, ...gardens]);
      const again = answersTo(seen, 'again')?.get(id);
      const received = [...asked].filter((garden) => gardens.has(garden)).length;
      const returns = returnsOf(asked.size, received, again?.k ?? 0, again?.n ?? 0, settings.interval);
      return { variety: id, returns };
    });
  const units = unitsOf(seen, classId, classOf);
  const options = {
    family: 'gamma' as const,
    level: settings.interval,
    spotCorrelation: settings.spotCorrelation,
    gardenCorrelation: settings.gardens.correlation,
    isYield: true,
    withBlocks: true,
  };
  const left = model?.leftOut?.get(classId);
  return {
    classId,
    varieties,
    parts: model?.parts?.get(classId) ?? [],
    lone: left?.lone ?? 0,
    empty: left?.empty ?? 0,
    groups: (['region', 'setting'] as const).flatMap(
      (kind) => groupsSeen(kind, units, trial.gardens, settings.gardens.least, options) ?? [],
    ),
  };
}

/** Gardens that tell a difference between two varieties of a class. */
function counted({ season }: SeasonSeen, classOf: (id: string) => string): number {
  const varieties = new Map<string, Set<string>>();
  for (const unit of season.yieldUnits) {
    if (unit.cause === 'accident' || pickingsOf(unit).length === 0) continue;
    const key = `${unit.garden}\n${classOf(unit.variety)}`;
    varieties.set(key, (varieties.get(key) ?? new Set()).add(unit.variety));
  }
  return new Set([...varieties].filter(([, { size }]) => size > 1).map(([key]) => key.split('\n')[0])).size;
}

/**
 * A season of several gardens as a club: what was sent and came back, what hangs together, what groups of gardens show.
 *
 * @returns  null for a season of one garden
 * @source gardens page 2.1, 2.3 and 4
 */
export function clubSeen(trial: Trial, seen: SeasonSeen): ClubSeen | null {
  const { season } = seen;
  if (!isOfClub(season)) return null;
  const classes = [...trial.settings.classes.keys()].filter((id) =>
    seen.varieties.some(({ variety }) => variety.classId === id),
  );
  const sent = new Set([...season.sent.map(({ garden }) => garden), ...season.gardens]);
  return {
    sent: sent.size,
    received: season.gardens.length,
    counted: counted(seen, classLookup(trial.varieties)),
    classes: classes.map((id) => classSeen(trial, seen, id)),
  };
}
