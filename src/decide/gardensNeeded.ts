import { mean } from 'simple-statistics';
import type { Forecast } from './forecasts.ts';

/** Gardens a variety should be grown in to see a difference, by its size. */
export interface GardensNeeded {
  readonly classId: string;
  /** Gardens of a variety of the class in its last season, on average. */
  readonly now: number;
  /** For a difference of a fifth, and of two fifths. */
  readonly forFifth: number;
  readonly forTwoFifths: number;
}

/** From so many gardens a variety on another season tells more than more gardens. @source gardens page 2.3 */
export const GARDENS_ENOUGH = 10;

/** (z₀.₉₇₅ + z₀.₈)² · 2: a two-sided test at 5 of 100, found in 80 of 100. @source gardens page 2.3 */
const POWER = 15.7;

/**
 * Gardens a variety needs for a difference to be seen in one season.
 *
 * @param spreads    σ_u, σ_r, and the squared CV of plants with how many plants a garden has
 * @param k          varieties a garden grows, of all
 * @param log        the difference, as a logarithm
 */
export function gardensFor(
  {
    withGarden,
    rest,
    plantVariance,
    plants,
  }: { withGarden: number; rest: number; plantVariance: number; plants: number },
  { k, all }: { readonly k: number; readonly all: number },
  log: number,
): number {
  const efficiency = ((1 - 1 / k) * all) / (all - 1);
  return Math.ceil((POWER * (withGarden ** 2 + rest ** 2 + plantVariance / plants)) / (efficiency * log ** 2));
}

/** What more gardens would tell of a class's yields; null where no garden grew two varieties of it last. */
export function gardensNeeded(gardens: NonNullable<Forecast['gardens']>, classId: string): GardensNeeded | null {
  const own = gardens.classes.find((one) => one.classId === classId);
  if (!own) return null;
  const last = own.values.reduce((most, { season }) => Math.max(most, season), 0);
  const values = own.values.filter(({ season }) => season === last);
  const count = (of: (value: (typeof values)[number]) => string): number[] => {
    const counts = new Map<string, number>();
    for (const value of values) counts.set(of(value), (counts.get(of(value)) ?? 0) + 1);
    return [...counts.values()];
  };
  const [byGarden, byVariety] = [count(({ garden }) => garden), count(({ variety }) => variety)];
  const k = mean(byGarden);
  if (byVariety.length < 2 || k <= 1) return null;
  // A yield of nothing is placed with a variance that says how far it is, not how many plants it had.
  const known = values.map(({ variance }) => variance).filter((own) => own <= gardens.plantVariance);
  if (known.length === 0) return null;
  const plants = gardens.plantVariance / mean(known);
  const { withGarden, rest } = gardens.expected;
  const spreads = { withGarden, rest, plantVariance: gardens.plantVariance, plants };
  const design = { k, all: byVariety.length };
  return {
    classId,
    now: mean(byVariety),
    forFifth: gardensFor(spreads, design, Math.log(1.2)),
    forTwoFifths: gardensFor(spreads, design, Math.log(1.4)),
  };
}
