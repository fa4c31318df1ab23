import type { JSX } from 'preact';
import type { SeasonPicture, SeasonPoint } from '../../src/present/pages/bySeason.ts';

const TALL = 120;
const PAD = 14;

/** Where a season and a value lie: across in per cent, down in px; what is better lies higher. */
interface Plane {
  readonly x: (at: number) => string;
  readonly y: (value: number) => number;
}

function planeOf({ years, from, to, isLowerBetter }: SeasonPicture): Plane {
  const step = 100 / years.length;
  const share = (value: number): number => (value - from) / (to - from || 1);
  return {
    x: (at) => `${Math.round((at + 0.35) * step * 100) / 100}%`,
    y: (value) => Math.round((PAD + (isLowerBetter ? share(value) : 1 - share(value)) * (TALL - 2 * PAD)) * 10) / 10,
  };
}

/** The other varieties, faint. */
function Others({
  lines,
  plane: { x, y },
}: {
  readonly lines: SeasonPicture['others'];
  readonly plane: Plane;
}): JSX.Element {
  return (
    <>
      {lines.map((line) =>
        line.map((point, i) => {
          const before = line[i - 1];
          return (
            <>
              {before ? (
                <line x1={x(before.at)} x2={x(point.at)} y1={y(before.estimate)} y2={y(point.estimate)} class="faint" />
              ) : null}
              <circle cx={x(point.at)} cy={y(point.estimate)} r="2.5" class="other" />
            </>
          );
        }),
      )}
    </>
  );
}

/** Where a class of many stands: from its lowest to its highest, and the middle half. */
function Band({ band, plane: { x, y } }: { readonly band: SeasonPicture['band']; readonly plane: Plane }): JSX.Element {
  const bar = (at: number, [from, to]: readonly [number, number], look: string): JSX.Element => (
    <line x1={x(at)} x2={x(at)} y1={y(from)} y2={y(to)} class={look} />
  );
  return (
    <>
      {band.map(({ at, ends, half }) => (
        <>
          {bar(at, ends, 'range')}
          {bar(at, half, 'range half')}
        </>
      ))}
    </>
  );
}

/** A point of the variety itself with its interval; hollow and broken where it is expected. */
function Own({
  point: { at, estimate, low, high, text },
  plane: { x, y },
  fill,
  isAhead,
  isTold,
}: {
  readonly point: SeasonPoint;
  readonly plane: Plane;
  readonly fill: string;
  readonly isAhead: boolean;
  readonly isTold: boolean;
}): JSX.Element {
  // Above the interval, which would strike it through.
  const above = low === null || high === null ? y(estimate) - 10 : Math.max(11, Math.min(y(low), y(high)) - 4);
  return (
    <>
      {low === null || high === null ? null : (
        <line x1={x(at)} x2={x(at)} y1={y(low)} y2={y(high)} class={isAhead ? 'bar' : 'ci'} />
      )}
      <circle cx={x(at)} cy={y(estimate)} r="5.5" class="dot" fill={fill} />
      {isTold ? (
        <text
          x={x(at)}
          dx={isAhead ? 0 : -9}
          y={isAhead ? above : y(estimate) + 4}
          text-anchor={isAhead ? 'middle' : 'end'}
          class="t b"
        >
          {text}
        </text>
      ) : null}
    </>
  );
}

/** One goal through the seasons: seen, expected, and the others; the newest and the next figure in words. */
export function SeasonBySeason({
  picture,
  colour,
}: {
  readonly picture: SeasonPicture;
  readonly colour: string | null;
}): JSX.Element {
  const { title, years, own, others, band, next } = picture;
  const plane = planeOf(picture);
  const step = 100 / years.length;
  const points = [...own, ...(next ? [next] : [])];
  const label = `${title}: ${points.map(({ at, text }) => `${years[at]} ${text}`).join('; ')}`;
  return (
    <figure>
      <figcaption>
        <b>{title}</b>
      </figcaption>
      <svg class="strip" width="100%" height={TALL + 22} role="img" aria-label={label}>
        <rect class="ahead" x={`${(years.length - 1) * step}%`} y="0" width={`${step}%`} height={TALL} />
        <Others lines={others} plane={plane} />
        <Band band={band} plane={plane} />
        {points.map((point) => (
          <Own
            point={point}
            plane={plane}
            fill={point === next ? 'var(--paper)' : (colour ?? 'var(--paper)')}
            isAhead={point === next}
            isTold={point === next || point === own.at(-1)}
          />
        ))}
        <line x1="0" x2="100%" y1={TALL + 0.5} y2={TALL + 0.5} class="edge" />
        {years.map((year, at) => (
          <text x={plane.x(at)} y={TALL + 18} text-anchor="middle" class="t m">
            {year}
          </text>
        ))}
      </svg>
    </figure>
  );
}
