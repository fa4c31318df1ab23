import { normalQuantile } from '../numerics/normal.ts';
import { nth } from '../numerics/element.ts';
import { quasiVariances } from '../numerics/quasiVariances.ts';
import { ifConverged } from '../numerics/notConverged.ts';
import { fitRankings } from '../numerics/rankings.ts';
import type { Ranking } from '../numerics/rankings.ts';
import type { Answer } from '../terms/rankings.ts';
import { fromWorking } from '../terms/scales.ts';
import { rankedTraits } from '../terms/traits.ts';
import { classLookup } from '../terms/trial.ts';
import type { Season, Trial } from '../terms/trial.ts';

/** A variety among those that members ranked. */
export interface RankedVariety {
  readonly variety: string;
  /** Members who had it among those they answered about. */
  readonly answers: number;
  /** Of them, those who put it first, alone or with others, and those who put it last; not where all was alike. */
  readonly first: number;
  readonly last: number;
  readonly logWorth: number;
  readonly quasiVariance: number;
  /** Share in which it is before one of worth 1, with its interval. */
  readonly beforeMiddle: number;
  readonly low: number;
  readonly high: number;
}

/** What members preferred in a class. */
export interface RankingSeen {
  readonly trait: string;
  readonly classId: string;
  readonly members: number;
  /** Members who were sent two of the class or more; as many as answered where nothing tells it. */
  readonly sent: number;
  /** Worths of ties of two, three … beside a single one's. */
  readonly ties: readonly number[];
  /** Largest relative error of a standard error of a difference by quasi-variances. */
  readonly worstError: number;
  /** The most preferred first; empty where fewer members answered than may be told of. */
  readonly varieties: readonly RankedVariety[];
}

/** A group of so many members may be told of: fewer could be known by their answer. */
export const FEWEST_MEMBERS = 5;

/** Where all that were sent were always alike, a tie's worth has no end. */
const MOST_TIES = 1e6;

const share = (logWorth: number): number => fromWorking('worth', logWorth);

/**
 * The fit of worths. Where all that members were sent was always alike to some of them, the worth of such a tie has no
 * end, and those answers say nothing of any order: then the others are fitted without them.
 */
function fittedOrNone(rankings: readonly Ranking[], varieties: number): ReturnType<typeof fitRankings> | null {
  const withOrder = rankings.filter(({ length }) => length > 1);
  for (const own of [rankings, withOrder]) {
    if (own.length === 0) continue;
    const fit = ifConverged(() => fitRankings(own, varieties, true));
    if (fit) return fit;
  }
  return null;
}

/** Answers with the varieties of one class alone; those that tell nothing then are left out. */
function ofClass(answers: readonly Answer[], isIn: (variety: string) => boolean): readonly Answer[] {
  return answers
    .map((own) => ({ ...own, order: own.order.map((group) => group.filter(isIn)).filter(({ length }) => length > 0) }))
    .filter(({ order }) => order.flat().length > 1);
}

function membersSent({ sent }: Season, isIn: (variety: string) => boolean): number {
  const given = new Map<string, number>();
  for (const { garden, variety } of sent) if (isIn(variety)) given.set(garden, (given.get(garden) ?? 0) + 1);
  return [...given.values()].filter((count) => count > 1).length;
}

/**
 * What members of a club preferred of the varieties they were sent, trait by trait and class by class: worths with ties,
 * half a win and half a loss of each against a middling one.
 *
 * @source methods page; Plackett (1975), Davidson (1970), Firth & de Menezes (2004); reference cases o3 to o5
 */
export function rankingsSeen(season: Season, trial: Trial): readonly RankingSeen[] {
  const classOf = classLookup(trial.varieties);
  const z = normalQuantile((1 + trial.settings.interval) / 2);
  return rankedTraits(trial.settings.traits).flatMap((trait) =>
    [...trial.settings.classes.keys()].flatMap((classId): readonly RankingSeen[] => {
      const isIn = (variety: string): boolean => classOf(variety) === classId;
      const answers = ofClass(
        season.answers.filter((own) => own.trait === trait),
        isIn,
      );
      if (answers.length === 0) return [];
      const ids = [...new Set(answers.flatMap(({ order }) => order.flat() as string[]))].toSorted();
      const members = answers.length;
      const found = { trait, classId, members, sent: Math.max(members, membersSent(season, isIn)) };
      if (members < FEWEST_MEMBERS) return [{ ...found, ties: [], worstError: 0, varieties: [] }];
      const rankings = answers.map(({ order }) => order.map((group) => group.map((id) => ids.indexOf(id))));
      const fit = fittedOrNone(rankings, ids.length);
      if (!fit) return [{ ...found, ties: [], worstError: 0, varieties: [] }];
      const { logWorths, covariance, ties } = fit;
      const { variances, worst } = quasiVariances(covariance);
      const varieties = ids.map((variety, i): RankedVariety => {
        const [logWorth, quasiVariance] = [nth(logWorths, i), nth(variances, i)];
        const half = z * Math.sqrt(quasiVariance);
        const holds = (group: readonly string[]): boolean => group.includes(variety);
        const asked = answers.filter(({ order }) => order.some(holds));
        const apart = asked.filter(({ order }) => order.length > 1);
        return {
          variety,
          answers: asked.length,
          first: apart.filter(({ order }) => holds(nth(order, 0))).length,
          last: apart.filter(({ order }) => holds(nth(order, -1))).length,
          logWorth,
          quasiVariance,
          beforeMiddle: share(logWorth),
          low: share(logWorth - half),
          high: share(logWorth + half),
        };
      });
      const ordered = varieties.toSorted((a, b) => b.logWorth - a.logWorth || (a.variety < b.variety ? -1 : 1));
      return [
        {
          ...found,
          ties: ties.map((own) => Math.min(own, MOST_TIES)),
          worstError: Math.max(...worst.map(Math.abs)),
          varieties: ordered,
        },
      ];
    }),
  );
}
