import type { RankingSeen } from '../analyse/rankingsSeen.ts';
import type { SeasonSeen } from '../analyse/seen.ts';
import { rankings } from '../analyse/traitsSeen.ts';

function rankingDocument({ trait, classId, members, sent, ties, worstError, varieties }: RankingSeen) {
  return {
    trait,
    class: classId,
    method: 'plackett-luce' as const,
    members,
    sent,
    ties,
    worst_error: worstError,
    varieties: varieties.map((own) => ({
      variety: own.variety,
      answers: own.answers,
      log_worth: own.logWorth,
      quasi_variance: own.quasiVariance,
      before_middle: own.beforeMiddle,
      low: own.low,
      high: own.high,
    })),
  };
}

/** What members preferred in a season, as it is published. */
export const rankingsDocument = (seen: SeasonSeen) => rankings(seen).map(rankingDocument);
