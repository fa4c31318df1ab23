import * as vega from 'vega';
import { compile } from 'vega-lite';
import type { TopLevelSpec } from 'vega-lite';
import type { Drawing } from '../present/charts/config.ts';
import type { Chart } from '../present/charts/kinds.ts';
import { dots } from '../present/charts/dots.ts';
import { FONT_SIZE, textWidth } from '../present/charts/text.ts';
import { numberWriter } from '../present/numbers.ts';
import { plainUnits } from '../present/units.ts';
import { specification } from '../present/charts/specification.ts';

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

/** A specification whose numbers are written in a language. */
function inLanguage(spec: TopLevelSpec, language: string): TopLevelSpec {
  const parts = new Intl.NumberFormat(language).formatToParts(1234567.8);
  const part = (type: string, otherwise: string): string => parts.find((one) => one.type === type)?.value ?? otherwise;
  const [decimal, thousands] = [part('decimal', '.'), part('group', '')];
  const number = { decimal, thousands, grouping: [3], currency: ['', ''] as [string, string] };
  return { ...spec, config: { ...spec.config, locale: { number } } };
}

/**
 * Draws a chart as SVG text.
 *
 * @param chart     its rows and words
 * @param width     width of the plot in px
 * @param prefix    makes ids unique on a page
 * @param language  of the numbers at its axes
 * @throws Error if Vega warns: a misspelt field must not become an empty chart
 */
export async function drawChart(chart: Chart, width: number, prefix: string, language: string): Promise<string> {
  const text = plainUnits(JSON.stringify(chart));
  const parsed = <Kind extends Chart>(_own: Kind): Kind => JSON.parse(text) as Kind;
  if (chart.kind === 'dots') return dots(parsed(chart), width, numberWriter(language));
  const key = `${width} ${language} ${text}`;
  const drawn =
    drawings.get(key) ?? drawnBefore.get(key) ?? (await draw(specification(parsed(chart), width), prefix, language));
  drawings.set(key, drawn);
  return drawn.replace(/\b(id="|url\(#|href="#)/g, `$1${prefix}-`);
}

async function draw({ spec: own, data }: Drawing, prefix: string, language: string): Promise<string> {
  const fail = (...messages: readonly unknown[]): never => {
    throw new Error(`chart ${prefix}: ${messages.map(String).join(' ')}`);
  };
  const logger = { warn: fail, error: fail, info: () => logger, debug: () => logger, level: () => 0 };
  const spec = inLanguage(own, language);
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
