import type { TopLevelSpec } from 'vega-lite';

/** A Vega-Lite specification and the data it draws, by name. */
export interface Drawing {
  readonly spec: TopLevelSpec;
  readonly data: Readonly<Record<string, readonly object[]>>;
}

export const FONT = 'system-ui, "Segoe UI", Roboto, "Helvetica Neue", Arial, sans-serif';
export const INK = 'var(--ink)';
export const CONFIG = {
  background: 'transparent',
  font: FONT,
  axis: {
    labelColor: INK,
    titleColor: INK,
    domainColor: 'var(--rule)',
    tickColor: 'var(--rule)',
    grid: false,
    labelFontSize: 13,
    titleFontSize: 13,
    titleFontWeight: 'normal',
    labelLimit: 0,
    labelSeparation: 6,
    titleLimit: 0,
  },
  view: { stroke: null },
} as const;

export const COLOUR = {
  condition: { test: "datum.group === 'new'", value: 'var(--new)' },
  value: 'var(--returning)',
} as const;

/** Narrower charts leave the written values to the table beside them. */
export const ROOM_FOR_VALUES = 400;
