import type { CrossFamily, CrossPlant } from '../../analyse/lines/crosses.ts';
import type { CrossReport } from '../../decide/lines/crossReport.ts';
import type { Trial } from '../../terms/trial.ts';
import type { Writing } from '../numbers.ts';

/** A share as a whole number of 100, never 0 or 100. */
export const of100 = (share: number): string => String(Math.min(99, Math.max(1, Math.round(100 * share))));

/** A cross with what it is worded with. */
export interface CrossSource {
  readonly report: CrossReport;
  readonly trial: Trial;
  readonly writing: Writing;
}

/** A section of a cross's page: its heading and sentences; empty ones are left out. */
export interface CrossSection {
  readonly id: string;
  readonly title: string;
  readonly sentences: readonly string[];
  /** What belongs in the margin. */
  readonly margin: string;
}

/** `F3`, `BC1`; the family's name where its generation is not known. */
export function generationName({ variety, generation }: CrossFamily, { words }: Writing): string {
  if (variety.isBackcross) return words.lines.backcross;
  return generation === null ? variety.name : words.lines.generation(String(generation));
}

/** What a plant is called on the page: the end of its id where its family's id is before it. */
export function plantName({ planting }: CrossPlant): string {
  const { id, variety } = planting;
  if (String(id) === variety) return '1';
  return id.startsWith(`${variety}-`) ? id.slice(variety.length + 1) : id;
}

/** What a plant of the newest families is called: with its family where there are several. */
export const namedIn = ({ advice }: CrossReport, plant: CrossPlant): string =>
  (advice?.families.length ?? 1) > 1 ? plant.planting.id : plantName(plant);

/** `6 dark, 2 green`, in the order of the settings. */
export function countsText(counts: ReadonlyMap<string, number> | undefined, states: readonly string[]): string {
  return states
    .flatMap((state) => ((counts?.get(state) ?? 0) > 0 ? [`${counts?.get(state)} ${state}`] : []))
    .join(', ');
}
