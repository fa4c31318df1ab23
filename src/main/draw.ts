import * as vega from 'vega';
import { compile } from 'vega-lite';
import type { Chart } from '../present/charts/kinds.ts';
import { plainUnits } from '../present/units.ts';
import { specification } from '../present/charts/specification.ts';

/** Charts of one kind and size share a specification, which is compiled once. */
const runtimes = new Map<string, vega.Runtime>();

/** Charts of this build and of the one before, by what is drawn: the same chart is the same picture. */
let drawings = new Map<string, string>();
let drawnBefore = new Map<string, string>();

/** Takes over what another run has drawn. */
export function addDrawings(own: ReadonlyMap<string, string>): void {
  for (const [key, svg] of own) drawings.set(key, svg);
}

/** What this build has drawn. */
export const drawnLast = (): ReadonlyMap<string, string> => drawings;

/** Begins a build: what neither it nor the one before has drawn is forgotten. */
export function beginDrawings(): void {
  drawnBefore = drawings;
  drawings = new Map();
}

/**
 * Draws a chart as SVG text.
 *
 * @param chart   its rows and words
 * @param width   width of the plot in px
 * @param prefix  makes ids unique on a page
 * @throws Error if Vega warns: a misspelt field must not become an empty chart
 */
export async function drawChart(chart: Chart, width: number, prefix: string): Promise<string> {
  const text = plainUnits(JSON.stringify(chart));
  const key = `${width} ${text}`;
  const drawn = drawings.get(key) ?? drawnBefore.get(key) ?? (await draw(JSON.parse(text) as Chart, width, prefix));
  drawings.set(key, drawn);
  return drawn.replace(/\b(id="|url\(#|href="#)/g, `$1${prefix}-`);
}

async function draw(chart: Chart, width: number, prefix: string): Promise<string> {
  const fail = (...messages: readonly unknown[]): never => {
    throw new Error(`chart ${prefix}: ${messages.map(String).join(' ')}`);
  };
  const logger = { warn: fail, error: fail, info: () => logger, debug: () => logger, level: () => 0 };
  const { spec, data } = specification(chart, width);
  const key = JSON.stringify(spec);
  const runtime = runtimes.get(key) ?? vega.parse(compile(spec, { logger: logger }).spec);
  runtimes.set(key, runtime);
  vega.resetSVGDefIds();
  const view = new vega.View(runtime, { renderer: 'none' });
  for (const [name, rows] of Object.entries(data))
    view.data(
      name,
      rows.map((row) => ({ ...row })),
    );
  const svg = await view.toSVG();
  view.finalize();
  return svg;
}
