import { ROOM_FOR_VALUES } from './config.ts';
import { FONT_SIZE, textWidth } from './text.ts';

/** Where an axis ends and what is written under it. */
export interface Axis {
  /** Place of a value, px from the left end. */
  readonly at: (value: number) => number;
  readonly ticks: readonly { readonly value: number; readonly label: string }[];
}

const RATIOS = [0.1, 0.25, 0.5, 1, 2, 4, 10];
/** Ends of a logarithmic axis lie so far outside the values, px. */
const PADDING = 12;
const GAP = 8;

/** Distance of round ticks: 1, 2 or 5 times a power of ten, so that about `count` fit between two values. */
function stepBetween(low: number, high: number, count: number): number {
  const rough = (high - low) / count;
  const power = 10 ** Math.floor(Math.log10(rough));
  const error = rough / power;
  // Halfway between two steps on a logarithmic scale.
  const factor = error >= Math.sqrt(50) ? 10 : error >= Math.sqrt(10) ? 5 : error >= Math.SQRT2 ? 2 : 1;
  return factor * power;
}

/** The values with ends moved outward to round numbers. */
function roundEnds(low: number, high: number): readonly [low: number, high: number] {
  let ends: [number, number] = [low, high];
  for (let before = 0, i = 0; i < 10 && ends[1] > ends[0]; i++) {
    const step = stepBetween(ends[0], ends[1], 10);
    if (step === before) break;
    ends = [Math.floor(ends[0] / step + 1e-9) * step, Math.ceil(ends[1] / step - 1e-9) * step];
    before = step;
  }
  return ends;
}

type Ticks = Axis['ticks'];
type WriteNumber = (value: number, decimals?: number) => string;

function fits(ticks: Ticks, at: Axis['at']): boolean {
  return ticks.every(({ value, label }, i) => {
    const before = ticks[i - 1];
    if (!before) return true;
    return at(value) - at(before.value) >= (textWidth(label, FONT_SIZE) + textWidth(before.label, FONT_SIZE)) / 2 + GAP;
  });
}

function roundTicks(low: number, high: number, count: number, number: WriteNumber): Ticks {
  if (high <= low) return [{ value: low, label: number(low) }];
  const step = stepBetween(low, high, count);
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, i) => {
    const value = Number(((first + i) * step).toFixed(decimals));
    return { value, label: number(value, decimals) };
  });
}

/**
 * A plain axis that holds all values, with round ends and at most about so many ticks whose labels do not touch.
 *
 * @param values  what it must hold, at least one
 * @param width   px
 * @param number  writes a tick in the site's language
 */
export function plainAxis(values: readonly number[], width: number, number: WriteNumber, most = 5): Axis {
  const [low, high] = roundEnds(Math.min(...values), Math.max(...values));
  const at = (value: number): number => (high > low ? ((value - low) / (high - low)) * width : width / 2);
  for (let count = most; count > 1; count--) {
    const ticks = roundTicks(low, high, count, number);
    if (fits(ticks, at)) return { at, ticks };
  }
  return { at, ticks: roundTicks(low, high, 1, number).slice(0, 1) };
}

/** An axis from 0 to 100 with ticks at every fifth of it, at the middle alone where it is narrow. */
export function hundredAxis(width: number, number: (value: number) => string): Axis {
  const ticks = width > ROOM_FOR_VALUES ? [0, 20, 40, 60, 80, 100] : [0, 50, 100];
  return {
    at: (value) => (value / 100) * width,
    ticks: ticks.map((value) => ({ value, label: number(value) })),
  };
}

/** A logarithmic axis of ratios, all above 0, with ticks at quarters, halves, doubles and the like. */
export function ratioAxis(values: readonly number[], width: number, number: WriteNumber): Axis {
  const logs = values.map(Math.log);
  const [low, high] = [Math.min(...logs), Math.max(...logs)];
  const at = (value: number): number =>
    high > low ? PADDING + ((Math.log(value) - low) / (high - low)) * (width - 2 * PADDING) : width / 2;
  const ticks = RATIOS.filter((value) => at(value) >= 0 && at(value) <= width).map((value) => ({
    value,
    label: number(value, value === 0.25 ? 2 : value < 1 ? 1 : 0),
  }));
  // 1 stays: of a crowded axis every second tick from there.
  const one = ticks.findIndex(({ value }) => value === 1);
  return { at, ticks: fits(ticks, at) ? ticks : ticks.filter((_, i) => (i - one) % 2 === 0) };
}
