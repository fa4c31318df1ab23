import type { JSX } from 'preact';
import type { Standing } from '../../src/decide/verdict.ts';

const LABEL = 'M1.5 1.5h9v10l-4.5 6l-4.5 -6z';

/** What a plant label is filled with, so that the verdict holds without colour. */
function Filling({ standing }: { readonly standing: Standing }): JSX.Element | null {
  switch (standing) {
    case 'keep':
      return <path d={LABEL} fill="currentColor" />;
    case 'try-again':
      return <path d="M1.5 9h9v2.5l-4.5 6l-4.5 -6z" fill="currentColor" />;
    case 'drop':
      return <path d="M2.5 3l7 8M9.5 3l-7 8" stroke="currentColor" stroke-width="1.6" />;
    case 'no-room':
      return null;
    default:
      return <path d="M3.5 5h5M3.5 8h5" stroke="currentColor" stroke-width="1.2" />;
  }
}

/** A plant label: filled for keep, half for try again, empty for no room, crossed for drop, dotted for the rest. */
export function Stake({ standing, size = 1 }: { readonly standing: Standing; readonly size?: number }): JSX.Element {
  const isLine = standing === 'line' || standing === 'none';
  return (
    <svg class="stake" width={12 * size} height={19 * size} viewBox="0 0 12 19" aria-hidden="true">
      <Filling standing={standing} />
      <path
        d={LABEL}
        fill="none"
        stroke="currentColor"
        stroke-width="1.5"
        stroke-linejoin="round"
        stroke-dasharray={isLine ? '2 2' : undefined}
      />
    </svg>
  );
}

/** The sign with its word. */
export function Verdict({
  standing,
  word,
  size,
}: {
  readonly standing: Standing;
  readonly word: string;
  readonly size?: number;
}): JSX.Element {
  return (
    <span class={`v ${standing}`}>
      <Stake standing={standing} {...(size === undefined ? {} : { size })} />
      {word}
    </span>
  );
}

const SEEDS = 20;

/** Twenty seeds in a row, each five seasons of a hundred; ornament beside the figure in words. */
export function Seeds({ share, step = 8.2 }: { readonly share: number; readonly step?: number }): JSX.Element {
  const full = Math.round(share * SEEDS);
  return (
    <svg class="seeds" width={SEEDS * step} height="11" viewBox={`0 0 ${SEEDS * step} 11`} aria-hidden="true">
      {Array.from({ length: SEEDS }, (_, i) => (
        <path
          transform={`translate(${Math.round((i + 0.5) * step * 10) / 10} 5.5)`}
          d="M0 -4.4C2.9 -2.6 3 2.6 0 4.4C-3 2.6 -2.9 -2.6 0 -4.4Z"
          class={i < full ? 'full' : 'empty'}
        />
      ))}
    </svg>
  );
}

/** k of n as dots, as far as they can be counted at a glance; ornament beside the figure in words. */
export function Dots({ k, n }: { readonly k: number; readonly n: number }): JSX.Element | null {
  if (n > 40) return null;
  return (
    <span class="ofs" aria-hidden="true">
      {'●'.repeat(k)}
      <span class="m">{'○'.repeat(n - k)}</span>
    </span>
  );
}

/** A ripe colour as a dot; empty where it is not known. */
export function ColourDot({ colour }: { readonly colour: string | null }): JSX.Element {
  return (
    <svg class="colour" width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
      <circle cx="6" cy="6" r="5" fill={colour ?? 'none'} />
    </svg>
  );
}
