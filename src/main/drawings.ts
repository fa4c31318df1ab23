import type { SeasonComparisons } from '../analyse/compareSeason.ts';
import type { SeasonSeen } from '../analyse/seen.ts';
import { drawPlane, drawRows } from './draw.ts';
import { isRowChart } from '../present/charts/kinds.ts';
import { fruitFigure } from '../present/fruitDrawing.ts';
import { gardenMap } from '../present/gardenMap.ts';
import { seasonWriting } from '../present/seasonWriting.ts';
import { writingOf } from '../present/numbers.ts';
import type { Writing } from '../present/numbers.ts';
import { narrowWidth } from '../present/charts/text.ts';
import { classFigures } from '../present/seasonFigures/class.ts';
import type { Figure } from '../present/seasonFigures/figure.ts';
import type { PictureWords } from '../present/tables.ts';
import { pictureInBothUnits, plainUnits } from '../present/units.ts';
import type { SeasonKey } from '../terms/ids.ts';
import type { SeasonPictures, SiteContent } from '../../site/content.ts';
import type { Settings } from '../terms/settings.ts';
import type { Trial } from '../terms/trial.ts';
import { nth } from '../numerics/element.ts';

const WIDE = 560;

/** A season as seen, with its comparisons. */
export interface Compared {
  readonly seen: SeasonSeen;
  readonly compared: SeasonComparisons;
}

/** Draws figures in the site's units and, where it makes a difference, in the other ones. */
export async function drawAll(
  here: readonly Figure[],
  there: readonly Figure[],
  language: string,
): Promise<readonly PictureWords[]> {
  const drawn: PictureWords[] = [];
  const draw = async (figure: Figure, mark: string): Promise<PictureWords> => {
    const { id, chart } = figure;
    const width = narrowWidth(chart);
    // Rows are drawn in a moment and need not be kept; Vega takes its time.
    if (isRowChart(chart)) return { ...figure, drawn: () => drawRows(chart, WIDE, width, language) };
    const drawing = {
      wide: await drawPlane(chart, WIDE, `${id}-${mark}w`, language),
      narrow: await drawPlane(chart, width, `${id}-${mark}n`, language),
    };
    return { ...figure, drawn: () => drawing };
  };
  for (const [i, figure] of here.entries()) {
    const own = await draw(figure, '');
    const isSame = plainUnits(JSON.stringify(figure.chart)) === plainUnits(JSON.stringify(nth(there, i).chart));
    drawn.push(isSame ? own : pictureInBothUnits(own, await draw(nth(there, i), 'x')));
  }
  return drawn;
}

/** The trial as a site in the other system of units would show it. */
export function inOtherUnits(trial: Trial): { readonly trial: Trial; readonly writing: Writing } {
  const settings: Settings = { ...trial.settings, units: trial.settings.units === 'us' ? 'metric' : 'us' };
  return { trial: { ...trial, settings }, writing: writingOf(settings) };
}

/** Every chart of the seasons by `year/class`, in both systems of units. */
export async function drawFigures(trial: Trial, seasons: readonly Compared[]): Promise<SiteContent['figures']> {
  const here = { trial, writing: writingOf(trial.settings) };
  const there = inOtherUnits(trial);
  const drawn = new Map<SeasonKey, ReadonlyMap<string, readonly PictureWords[]>>();
  for (const { seen, compared } of seasons) {
    const own = new Map<string, readonly PictureWords[]>();
    for (const classId of trial.settings.classes.keys()) {
      const source = { seen, compared, classId };
      const figures = await drawAll(
        classFigures({ ...source, ...here, writing: seasonWriting(here.writing, seen.season) }),
        classFigures({ ...source, ...there, writing: seasonWriting(there.writing, seen.season) }),
        trial.settings.language,
      );
      own.set(classId, figures);
    }
    drawn.set(seen.season.key, own);
  }
  return drawn;
}

/** Drawings that are not charts: where the plantings stood, and the fruit of every class. */
export function drawings(trial: Trial, seasons: readonly SeasonSeen[]): SiteContent['pictures'] {
  const writing = writingOf(trial.settings);
  const other = inOtherUnits(trial);
  const pictures = new Map<SeasonKey, SeasonPictures>();
  for (const seen of seasons) {
    const map = gardenMap(seen, trial, writing);
    const fruits = new Map<string, PictureWords>();
    for (const classId of trial.settings.classes.keys()) {
      const fruit = fruitFigure(seen, trial, classId, writing);
      const there = fruitFigure(seen, other.trial, classId, other.writing);
      if (fruit && there) fruits.set(classId, pictureInBothUnits(fruit, there));
    }
    pictures.set(seen.season.key, { map, fruits });
  }
  return pictures;
}
