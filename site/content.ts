import type { GardenAdvice } from '../src/decide/adviseGarden.ts';
import type { SeasonComparisons } from '../src/analyse/compareSeason.ts';
import type { PublishedLines } from '../src/present/linesDocument.ts';
import type { AdviceSource } from '../src/present/nextSeason/source.ts';
import type { Ongoing } from '../src/present/pages/ongoing.ts';
import type { Stand } from '../src/present/pages/stands.ts';
import type { SeasonSeen } from '../src/analyse/seen.ts';
import type { ClassReport } from '../src/present/classReport.ts';
import type { FrontPage } from '../src/present/frontPage.ts';
import type { PictureWords } from '../src/present/tables.ts';
import type { Download } from '../src/present/downloadTable.ts';
import type { ClassAdviceWords } from '../src/present/nextSeason/classAdvice.ts';
import type { WeightsContent } from '../src/present/nextSeason/weights.ts';
import type { Writing } from '../src/present/numbers.ts';
import type { SeasonKey } from '../src/terms/ids.ts';
import type { Problem } from '../src/terms/problem.ts';
import type { Trial } from '../src/terms/trial.ts';

type BySeason<T> = ReadonlyMap<SeasonKey, T>;

/** Drawings of a season that are not charts. */
export interface SeasonPictures {
  /** Where the plantings stood; null where it was not recorded. */
  readonly map: PictureWords | null;
  /** The fruit of every class, as measured. */
  readonly fruits: ReadonlyMap<string, PictureWords>;
}

/** What every page takes: the records and what stands in its head and foot. */
export interface FrameContent {
  /** Gardens of a club that show their page, by their codes. */
  readonly gardens: ReadonlyMap<string, GardenAdvice>;
  readonly trial: Trial;
  readonly seasons: readonly SeasonSeen[];
  readonly writing: Writing;
  /** Null where no season is recorded. */
  readonly next: NextContent | null;
  /** The season that is not over, as it stands; null where all are. */
  readonly ongoing: Ongoing | null;
  /** Pages of the grower's own: address part, title. */
  readonly ownPages: readonly { readonly key: string; readonly title: string }[];
}

/** A page with the grower's own words. */
export interface WrittenContent extends FrameContent {
  /** The grower's words as HTML, by content path without `.md`. */
  readonly words: ReadonlyMap<string, string>;
}

/** The pages of crosses and seed, and what leads to them. */
export interface CrossContent extends FrameContent {
  readonly lines: PublishedLines;
}

/** A page that shows varieties as they stand for next season. */
export interface StandContent extends FrameContent {
  /** Every variety as it stands for next season, by id. */
  readonly stands: ReadonlyMap<string, Stand>;
}

/** A page that sets what is new beside what has returned. */
export interface BesideContent extends StandContent {
  readonly compared: BySeason<SeasonComparisons>;
}

/** A page that advises. */
export interface AdviceContent extends BesideContent, CrossContent, WrittenContent {
  /** What the pages advise from; null where no season is recorded. */
  readonly advice: AdviceSource | null;
  readonly front: FrontPage | null;
}

/** The handout. */
export interface HandoutContent extends AdviceContent {
  /** The site's address as a QR code; null without an address. */
  readonly qr: string | null;
}

/** The page of the data. */
export interface DataContent extends FrameContent {
  readonly downloads: readonly Download[];
}

/** The page of a class in a season: its data lie beside it. */
export interface ClassContent extends BesideContent, DataContent {
  /** What the pages advise from; null where no season is recorded. */
  readonly advice: AdviceSource | null;
}

/** The page of a class with every figure. */
export interface ClassFiguresContent extends ClassContent {
  /** Charts by season and class. */
  readonly figures: BySeason<ReadonlyMap<string, readonly PictureWords[]>>;
  /** What is said of a class in a season, by the same keys. */
  readonly reports: BySeason<ReadonlyMap<string, ClassReport>>;
  readonly pictures: BySeason<SeasonPictures>;
}

/** The page of a season. */
export interface SeasonContent extends ClassFiguresContent, CrossContent, WrittenContent {}

/** The page of the notes on the records. */
export interface NotesContent extends FrameContent {
  readonly problems: readonly Problem[];
}

/** What all pages together are made from. */
export type SiteContent = HandoutContent & SeasonContent & NotesContent;

/** What the pages about next season are made from. */
export interface NextContent {
  readonly season: number;
  readonly classes: readonly ClassAdviceWords[];
  readonly figures: ReadonlyMap<string, readonly PictureWords[]>;
  /** How much varieties and seasons differ, a sentence a trait. */
  readonly spread: readonly string[];
  readonly weights: WeightsContent;
}

export interface Page {
  /** Address from the root, ending in `/`; empty for the front page. */
  readonly address: string;
  readonly title: string;
  /** Made when it is first asked for: the preview makes only the pages that are looked at. */
  readonly html: string;
}

/** A part of a page about a season. */
export interface SeasonPart<Content extends FrameContent = SeasonContent> {
  readonly content: Content;
  readonly seen: SeasonSeen;
  readonly root: string;
}
