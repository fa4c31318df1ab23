import * as vega from 'vega';
import { compile } from 'vega-lite';
import type { TopLevelSpec } from 'vega-lite';
import type { Drawing } from '../present/charts/config.ts';
import type { Chart, PlaneChart, RowChart } from '../present/charts/kinds.ts';
import { FONT_SIZE, textWidth } from '../present/charts/text.ts';
import { numberWriter } from '../present/numbers.ts';
import type { Drawn } from '../present/tables.ts';
import { plainUnits } from '../present/units.ts';
import { rowChart, specification } from '../present/charts/specification.ts';

// Without a browser Vega takes texts for wider than they are, and leaves so much room that a phone must shrink the chart.
vega.textMetrics.width = (item, text) => textWidth(String(text ?? item.text ?? ''), item.fontSize ?? FONT_SIZE);

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

/** How numbers are written, by language. */
const writers = new Map<string, ReturnType<typeof numberWriter>>();

function writerOf(language: string): ReturnType<typeof numberWriter> {
  const writer = writers.get(language) ?? numberWriter(language);
  writers.set(language, writer);
  return writer;
}

const locales = new Map<string, object>();

/** The same for Vega's axes. */
function localeOf(language: string): object {
  const known = locales.get(language);
  if (known) return known;
  const parts = new Intl.NumberFormat(language).formatToParts(1234567.8);
  const part = (type: string, otherwise: string): string => parts.find((one) => one.type === type)?.value ?? otherwise;
  const [decimal, thousands] = [part('decimal', '.'), part('group', '')];
  const locale = { number: { decimal, thousands, grouping: [3], currency: ['', ''] } };
  locales.set(language, locale);
  return locale;
}

/** A chart as it is drawn: without the marks of its quantities, which its words have. */
const plainOf = (chart: Chart): string => plainUnits(JSON.stringify(chart));

/** Draws a chart of rows as SVG text, in two widths. */
export function drawRows(chart: RowChart, wide: number, narrow: number, language: string): Drawn {
  const plain = JSON.parse(plainOf(chart)) as RowChart;
  const drawn = (width: number): string => rowChart(plain, width, writerOf(language));
  return { wide: drawn(wide), narrow: drawn(narrow) };
}

/**
 * Draws a chart with two axes as SVG text.
 *
 * @param chart     its rows and words
 * @param width     width of the plot in px
 * @param prefix    makes ids unique on a page
 * @param language  of the numbers at its axes
 * @throws Error if Vega warns: a misspelt field must not become an empty chart
 */
export async function drawPlane(chart: PlaneChart, width: number, prefix: string, language: string): Promise<string> {
  const text = plainOf(chart);
  const key = `${width} ${language} ${text}`;
  const drawn =
    drawings.get(key) ??
    drawnBefore.get(key) ??
    (await draw(specification(JSON.parse(text) as PlaneChart, width), prefix, language));
  drawings.set(key, drawn);
  return drawn.replace(/\b(id="|url\(#|href="#)/g, `$1${prefix}-`);
}

async function draw({ spec: own, data }: Drawing, prefix: string, language: string): Promise<string> {
  const fail = (...messages: readonly unknown[]): never => {
    throw new Error(`chart ${prefix}: ${messages.map(String).join(' ')}`);
  };
  const logger = { warn: fail, error: fail, info: () => logger, debug: () => logger, level: () => 0 };
  const spec = { ...own, config: { ...own.config, locale: localeOf(language) } } as TopLevelSpec;
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
