/**
 * Variance of a variety's mean of plants that stand in clumps; variance of one plant 1.
 *
 * @param correlation  of plants side by side, 0 to 1
 * @source methods page A1; reference case o07
 */
export const clumpVariance = (plants: number, clumps: number, correlation: number): number =>
  (correlation + ((1 - correlation) * clumps) / plants) / clumps;
