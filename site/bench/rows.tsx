import type { JSX } from 'preact';

/** A value's place on a row, per cent of its width. */
const place = (value: number, from: number, to: number): number =>
  Math.round(Math.max(0, Math.min(100, (100 * (value - from)) / (to - from))) * 100) / 100;

export interface StripProps {
  readonly from: number;
  readonly to: number;
  readonly estimate: number | null;
  readonly low?: number | null;
  readonly high?: number | null;
  /** What it is set against, a broken line. */
  readonly bar?: number | null;
  readonly colour?: string | null;
  /** The others, small and hollow. */
  readonly others?: readonly number[];
  /** Single plants, thin ticks. */
  readonly plants?: readonly number[];
  readonly isLarge?: boolean;
}

/** A dot with its interval on a full scale, in per cent of the width: one drawing serves every screen. */
export function Strip(props: StripProps): JSX.Element {
  const { from, to, estimate, low = null, high = null, bar = null, colour = null, others = [], plants = [] } = props;
  const x = (value: number): string => `${place(value, from, to)}%`;
  const h = props.isLarge ? 22 : 18;
  const y = h / 2;
  return (
    <svg class="strip" width="100%" height={h} aria-hidden="true">
      {bar === null ? null : <line x1={x(bar)} x2={x(bar)} y1="0" y2={h} class="bar" />}
      {others.map((other) => (
        <circle cx={x(other)} cy={y} r="3" class="other" />
      ))}
      {plants.map((plant) => (
        <line x1={x(plant)} x2={x(plant)} y1={y - 5} y2={y + 5} class="tick" />
      ))}
      {low === null || high === null ? null : <line x1={x(low)} x2={x(high)} y1={y} y2={y} class="ci" />}
      {estimate === null ? null : (
        <circle cx={x(estimate)} cy={y} r={props.isLarge ? 6.5 : 5} class="dot" fill={colour ?? 'var(--paper)'} />
      )}
    </svg>
  );
}

/** Parts of a whole beside one another, from dark to pale. */
export function Parts({ counts }: { readonly counts: readonly number[] }): JSX.Element {
  const total = counts.reduce((sum, own) => sum + own, 0);
  const share = (upTo: number): number => (100 * counts.slice(0, upTo).reduce((sum, own) => sum + own, 0)) / total;
  return (
    <svg class="share" width="100%" height="14" aria-hidden="true">
      {counts.map((count, i) =>
        count === 0 ? null : (
          <rect
            x={`${two(share(i))}%`}
            width={`${two((100 * count) / total)}%`}
            y="0.5"
            height="13"
            fill-opacity={two(1 - (0.92 * i) / (counts.length - 1))}
          />
        ),
      )}
    </svg>
  );
}

export interface BarsProps {
  readonly values: readonly number[];
  readonly max: number;
  readonly height: number;
  readonly colour?: string | null;
  /** Marks its value above the bar. */
  readonly marked?: { readonly at: number; readonly text: string } | null;
  /** A point on the foot with its interval, in steps of the bars. */
  readonly foot?: { readonly estimate: number; readonly low: number | null; readonly high: number | null } | null;
}

const two = (value: number): number => Math.round(value * 100) / 100;

/** Bars of equal steps as one path, a step a unit wide, from `base` upwards. */
function barsPath(values: readonly number[], base: number, tall: (value: number) => number): string {
  return values
    .map((value, i) => (value > 0 ? `M${two(i + 0.06)} ${base}v${-Math.max(1, tall(value))}h.88V${base}z` : ''))
    .join('');
}

/** Bars of equal steps along time: one path, stretched to the width there is. */
export function Bars({ values, max, height, colour, marked = null, foot = null }: BarsProps): JSX.Element {
  const step = 100 / values.length;
  const room = marked ? 18 : 0;
  const tall = (value: number): number => Math.round((value / max) * (height - 2) * 10) / 10;
  const x = (at: number): string => `${two(Math.max(-1, Math.min(100, at * step)))}%`;
  const base = room + height;
  const most = values.map((value, i) => (marked?.at === i ? value : 0));
  return (
    <svg class="bars" width="100%" height={base + 8} aria-hidden="true">
      <svg width="100%" height={base} viewBox={`0 0 ${values.length} ${base}`} preserveAspectRatio="none">
        <path
          d={barsPath(values, base, tall)}
          class={colour === undefined ? 'tops' : 'own'}
          fill={colour ?? undefined}
        />
        {marked ? <path d={barsPath(most, base, tall)} class="most" /> : null}
      </svg>
      {marked ? (
        <text x={x(marked.at + 0.5)} y={base - tall(values[marked.at]!) - 5} text-anchor="middle" class="t b">
          {marked.text}
        </text>
      ) : null}
      {foot ? (
        <>
          {foot.low === null || foot.high === null ? null : (
            <line x1={x(foot.low)} x2={x(foot.high)} y1={base + 0.5} y2={base + 0.5} class="span" />
          )}
          <svg x={x(foot.estimate)} y={base} class="point">
            <path d="M0 -3l5 8h-10z" />
          </svg>
        </>
      ) : null}
    </svg>
  );
}

/** Words along an axis of equal steps. */
export function TimeAxis({
  marks,
  steps,
}: {
  readonly marks: readonly { readonly at: number; readonly text: string }[];
  readonly steps: number;
}): JSX.Element {
  const x = (at: number): string => `${Math.round((10000 * at) / steps) / 100}%`;
  return (
    <svg class="axis" width="100%" height="20" aria-hidden="true">
      {marks.map(({ at, text }) => (
        <>
          <line x1={x(at)} x2={x(at)} y1="0" y2="6" class="base" />
          <text x={x(at)} dx="3" y="17" class="t m">
            {text}
          </text>
        </>
      ))}
    </svg>
  );
}
