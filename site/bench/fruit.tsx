import type { JSX } from 'preact';
import type { Stand } from '../../src/present/pages/stands.ts';
import type { Fruit, FruitForm } from '../../src/present/pages/fruit.ts';

/** One outline in units of px: its body from the top of the stem at (0, −length) to its foot at (0, 0). */
interface Outline {
  readonly body: string;
  /** Furrows of a block. */
  readonly ribs?: string;
  readonly light: string;
  readonly shade: string;
  /** Where the stem stands. */
  readonly top: number;
  readonly cap: 'stalk' | 'star';
}

const short = (value: number): number => Math.round(value * 10) / 10;

/** A path of which every number is a share of the fruit's width or length: `x` and `y` alternate. */
function path(width: number, length: number, commands: string): string {
  let isX = true;
  return commands.replace(/-?\d*\.?\d+|[A-Z]/g, (token) => {
    if (/[A-Z]/.test(token)) {
      isX = true;
      return token;
    }
    const value = short(Number(token) * (isX ? width : length));
    isX = !isX;
    return String(value);
  });
}

const BODIES: Readonly<Record<FruitForm, Omit<Outline, 'cap'>>> = {
  block: {
    body: 'M0 -.93C.14 -1.02 .52 -1 .5 -.74C.49 -.48 .43 -.22 .37 -.07C.31 .025 .18 .015 .13 -.025C.08 .01 -.08 .01 -.13 -.025C-.18 .015 -.31 .025 -.37 -.07C-.43 -.22 -.49 -.48 -.5 -.74C-.52 -1 -.14 -1.02 0 -.93Z',
    ribs: 'M.06 -.9C.24 -.7 .2 -.25 .13 -.03M-.06 -.9C-.24 -.7 -.2 -.25 -.13 -.03',
    light: 'M-.4 -.78C-.36 -.88 -.3 -.88 -.28 -.84C-.32 -.66 -.31 -.48 -.29 -.36C-.36 -.44 -.42 -.64 -.4 -.78Z',
    shade:
      'M.5 -.74C.49 -.48 .43 -.22 .37 -.07C.34 -.02 .28 .004 .22 0C.36 -.2 .42 -.55 .4 -.92C.48 -.88 .51 -.82 .5 -.74Z',
    top: 0.93,
  },
  horn: {
    body: 'M-.5 -.9C-.56 -.55 -.1 -.2 .3 0C.5 -.2 .56 -.55 .5 -.9C.4 -.98 -.4 -.98 -.5 -.9Z',
    light: 'M-.32 -.86C-.34 -.6 -.06 -.35 .1 -.2C.02 -.4 -.16 -.65 -.15 -.88C-.22 -.9 -.3 -.9 -.32 -.86Z',
    shade: 'M.5 -.9C.56 -.55 .5 -.2 .3 0C.3 -.25 .32 -.55 .28 -.945C.38 -.94 .46 -.93 .5 -.9Z',
    top: 0.93,
  },
  round: {
    body: 'M0 -.93C.2 -1.05 .5 -.96 .5 -.5C.5 -.12 .26 0 0 0C-.26 0 -.5 -.12 -.5 -.5C-.5 -.96 -.2 -1.05 0 -.93Z',
    light: 'M-.36 -.62C-.33 -.78 -.24 -.84 -.2 -.82C-.28 -.7 -.3 -.6 -.29 -.45C-.34 -.48 -.37 -.55 -.36 -.62Z',
    shade: 'M.5 -.5C.5 -.12 .26 0 0 0C.2 -.08 .38 -.22 .4 -.8C.47 -.72 .5 -.62 .5 -.5Z',
    top: 0.94,
  },
  plum: {
    body: 'M0 -.97C.3 -1.02 .5 -.8 .5 -.5C.5 -.2 .3 0 0 0C-.3 0 -.5 -.2 -.5 -.5C-.5 -.8 -.3 -1.02 0 -.97Z',
    light: 'M-.36 -.6C-.34 -.76 -.26 -.84 -.2 -.82C-.28 -.68 -.3 -.5 -.28 -.36C-.34 -.42 -.37 -.5 -.36 -.6Z',
    shade: 'M.5 -.5C.5 -.2 .3 0 0 0C.2 -.08 .38 -.3 .38 -.82C.46 -.74 .5 -.62 .5 -.5Z',
    top: 0.97,
  },
  cluster: {
    body: 'M0 -.95C.26 -1.03 .5 -.84 .5 -.5C.5 -.16 .28 0 0 0C-.28 0 -.5 -.16 -.5 -.5C-.5 -.84 -.26 -1.03 0 -.95Z',
    light: 'M-.36 -.6C-.33 -.78 -.24 -.84 -.18 -.8C-.27 -.7 -.3 -.6 -.28 -.45C-.34 -.48 -.37 -.53 -.36 -.6Z',
    shade: 'M.5 -.5C.5 -.16 .28 0 0 0C.2 -.08 .37 -.25 .38 -.82C.46 -.74 .5 -.62 .5 -.5Z',
    top: 0.95,
  },
  long: {
    body: 'M-.1 -.98C.25 -1 .5 -.95 .5 -.8C.52 -.6 .46 -.4 .5 -.2C.54 -.05 .3 0 .05 0C-.25 0 -.44 -.06 -.46 -.2C-.54 -.4 -.46 -.6 -.5 -.8C-.5 -.93 -.3 -.97 -.1 -.98Z',
    light: 'M-.34 -.84C-.36 -.6 -.4 -.4 -.32 -.2C-.22 -.4 -.26 -.6 -.2 -.88C-.26 -.9 -.32 -.88 -.34 -.84Z',
    shade: 'M.5 -.8C.52 -.6 .46 -.4 .5 -.2C.54 -.05 .3 0 .1 0C.34 -.2 .32 -.6 .3 -.95C.42 -.93 .5 -.88 .5 -.8Z',
    top: 0.98,
  },
  pear: {
    body: 'M0 -.97C.2 -1 .3 -.88 .28 -.7C.26 -.55 .5 -.48 .5 -.26C.5 -.06 .26 0 0 0C-.26 0 -.5 -.06 -.5 -.26C-.5 -.48 -.26 -.55 -.28 -.7C-.3 -.88 -.2 -1 0 -.97Z',
    light:
      'M-.18 -.84C-.2 -.7 -.2 -.6 -.3 -.46C-.36 -.36 -.38 -.3 -.36 -.22C-.28 -.34 -.1 -.55 -.1 -.84C-.12 -.9 -.17 -.88 -.18 -.84Z',
    shade:
      'M.28 -.7C.26 -.55 .5 -.48 .5 -.26C.5 -.06 .26 0 .02 0C.3 -.1 .36 -.3 .24 -.46C.14 -.6 .18 -.8 .17 -.94C.27 -.9 .29 -.8 .28 -.7Z',
    top: 0.97,
  },
  plain: {
    body: 'M0 -1C.36 -1 .5 -.78 .5 -.5C.5 -.22 .36 0 0 0C-.36 0 -.5 -.22 -.5 -.5C-.5 -.78 -.36 -1 0 -1Z',
    light: 'M-.36 -.55C-.35 -.74 -.28 -.84 -.2 -.86C-.28 -.7 -.3 -.55 -.28 -.4C-.34 -.43 -.37 -.48 -.36 -.55Z',
    shade: 'M.5 -.5C.5 -.22 .36 0 .04 0C.28 -.1 .38 -.4 .36 -.88C.46 -.78 .5 -.64 .5 -.5Z',
    top: 1,
  },
};

/** Which forms have a star of sepals. */
const STARS: ReadonlySet<FruitForm> = new Set(['round', 'plum', 'cluster']);

/** Stem and calyx at the top of a fruit; `c` is their size. */
function Cap({ form, top, c }: { readonly form: FruitForm; readonly top: number; readonly c: number }): JSX.Element {
  const p = (...values: readonly number[]): string => values.map(short).join(' ');
  if (STARS.has(form))
    return (
      <>
        <path
          d={`M${p(0, top)}l${p(-c * 1.5, c * 0.55)}l${p(c * 0.95, -c * 0.15)}l${p(-c * 0.2, c * 0.95)}l${p(c * 0.75, -c * 0.75)}l${p(c * 0.75, c * 0.75)}l${p(-c * 0.2, -c * 0.95)}l${p(c * 0.95, c * 0.15)}Z`}
          class="leaf"
        />
        <path d={`M${p(0, top)}q${p(c * 0.1, -c * 0.7, c * 0.5, -c * 1.1)}`} class="stem" />
      </>
    );
  return (
    <>
      <path d={`M${p(0, top)}q${p(-c * 0.1, -c * 1.1, c * 0.7, -c * 1.9)}`} class="stem" />
      <path
        d={`M${p(-c * 1.15, top + c * 0.42)}q${p(c * 1.15, -c * 1.5, c * 2.3, 0)}q${p(-c * 1.15, c * 0.62, -c * 2.3, 0)}Z`}
        class="leaf"
      />
    </>
  );
}

/** Hatching lines across a body of this size, for a colour that is not known. */
function hatch(width: number, length: number): string {
  const lines: string[] = [];
  const step = Math.max(5, width / 7);
  for (let x = -width; x < width; x += step) lines.push(`M${short(x)} 0l${short(length * 0.3)} ${short(-length)}`);
  return lines.join('');
}

/** One fruit with its foot at (x, y), px. */
function One({
  fruit: { form, length, width, colour },
  k,
  id,
  x,
  y,
}: {
  readonly fruit: Fruit;
  readonly k: number;
  readonly id: string;
  readonly x: number;
  readonly y: number;
}): JSX.Element {
  const [w, l] = [width * k, length * k];
  const { body, ribs, light, shade, top } = BODIES[form];
  const outline = path(w, l, body);
  const c = Math.max(2.4, Math.min(w * 0.2, k * 1.1));
  return (
    <g transform={`translate(${short(x)} ${short(y)})`}>
      <path d={outline} class={colour === null ? 'bare' : undefined} fill={colour ?? undefined} />
      {colour === null ? (
        <>
          <clipPath id={`cut-${id}`}>
            <path d={outline} />
          </clipPath>
          <path d={hatch(w, l)} clip-path={`url(#cut-${id})`} class="hatch" />
        </>
      ) : (
        <>
          <path d={path(w, l, shade)} class="shade" />
          <path d={path(w, l, light)} class="light" />
          {ribs === undefined ? null : <path d={path(w, l, ribs)} class="ribs" />}
        </>
      )}
      <path d={outline} class="edge" />
      <Cap form={form} top={-l * top} c={c} />
    </g>
  );
}

/** Resolution of the drawing: px a centimetre of its own coordinates. */
const K = 20;

/**
 * A fruit to scale: an em is a centimetre, so that the page's font size sets the scale of a whole bench.
 *
 * @param id     makes the drawing's parts unique on the page
 * @param label  what it shows, for readers who do not see it; without it the drawing is ornament
 */
export function FruitPicture({
  fruit,
  id,
  label,
}: {
  readonly fruit: Fruit;
  readonly id: string;
  readonly label?: string;
}): JSX.Element {
  const isCluster = fruit.form === 'cluster';
  const w = fruit.width * K * (isCluster ? 1.9 : 1) + 8;
  const stem = Math.max(10, Math.min(fruit.width * K * 0.2, K * 1.1) * 2.2);
  const h = fruit.length * K * (isCluster ? 1.75 : 1) + stem + 3;
  const says = label === undefined ? { 'aria-hidden': 'true' as const } : { role: 'img' as const, 'aria-label': label };
  const [middle, foot] = [w / 2, h - 2];
  const [dx, dy] = [fruit.width * K * 0.45, fruit.length * K * 0.72];
  return (
    <svg
      class="fruit"
      width={`${short(w) / K}em`}
      height={`${short(h) / K}em`}
      viewBox={`0 0 ${short(w)} ${short(h)}`}
      {...says}
    >
      {isCluster ? (
        <>
          <path d={`M${short(middle)} 2v${short(h * 0.5)}`} class="stem" />
          <One fruit={fruit} k={K} id={`${id}-a`} x={middle + dx} y={foot - dy} />
          <One fruit={fruit} k={K} id={`${id}-b`} x={middle - dx} y={foot - dy * 0.85} />
          <One fruit={fruit} k={K} id={`${id}-c`} x={middle + dx * 0.1} y={foot} />
        </>
      ) : (
        <One fruit={fruit} k={K} id={id} x={middle} y={foot} />
      )}
    </svg>
  );
}

/** Side of a photo in a list, em. */
const PHOTO = 11;

/** The club's photo of a variety where there is one, else its fruit to scale. For lists; a photo has no scale. */
export function StandPicture({
  stand: { variety, fruit, photo },
  root,
  prefix,
}: {
  readonly stand: Stand;
  readonly root: string;
  readonly prefix: string;
}): JSX.Element {
  if (!photo) return <FruitPicture fruit={fruit} id={`${prefix}-${variety.id}`} />;
  return (
    <svg class="fruit" width={`${PHOTO}em`} height={`${PHOTO}em`} viewBox="0 0 100 100" aria-hidden="true">
      <image href={`${root}${photo.made.small}`} width="100" height="100" preserveAspectRatio="xMidYMid slice" />
    </svg>
  );
}
