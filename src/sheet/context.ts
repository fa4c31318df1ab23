import type { SeedLot } from '../terms/lines.ts';
import type { ProblemLog } from '../terms/problem.ts';
import type { Settings } from '../terms/settings.ts';
import type { LimitedValue, Remark } from '../terms/trial.ts';
import type { DateReader } from './cells/dates.ts';

/** Finds gardens by their codes, however they are written. */
export interface GardenRegistry {
  /** Code of the trial's own garden. */
  readonly own: string;
  /** The code that a text is written for; null for one that gardens.csv does not have. */
  readonly find: (text: string) => string | null;
  readonly nearest: (text: string) => string | null;
}

/** What every rule needs: where problems go, how dates are written, and the trial's settings. */
export interface CheckContext {
  readonly log: ProblemLog;
  readonly dates: DateReader;
  readonly settings: Settings;
  /** Figures of which only a limit was written, added as the tables of a season are read. */
  readonly limited: LimitedValue[];
  /** Seed lots by their folded ids. */
  readonly lots: ReadonlyMap<string, SeedLot>;
  /** What rows say beside their records, as far as it is published; added like the limits. */
  readonly remarks: Remark[];
  readonly gardens: GardenRegistry;
  /** Garden of a member's own tables; null where rows name theirs, or are the trial's own. */
  readonly garden: string | null;
}
