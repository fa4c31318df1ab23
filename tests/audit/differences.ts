export interface Difference {
  /** What kind of figure it is. */
  readonly kind: string;
  readonly path: string;
  readonly ours: unknown;
  readonly theirs: unknown;
  /** Distance in units of what is tolerated; infinite where only one side has a figure. */
  readonly size: number;
}

/** What only one of the two says: F of ratings, what a prediction rests on, a CV of fruit numbers. */
const NOT_COUNTED = /\/flavour\/f\/|\/recorded$|\/fruits\/cv$/u;

type Tree = Readonly<Record<string, unknown>>;

/**
 * What a kind of figure may differ by: relative to the figure, or to its interval. R's multivariate t is right to about
 * 1e-4; its curves of p are to the same.
 */
const TOLERANCES: readonly (readonly [kind: string, path: RegExp, relative: number, absolute: number])[] = [
  ['shares', /^shares\//u, 0, 0.02],
  ['expected', /^next\//u, 2e-3, 2e-3],
  ['against the check', /\/against\//u, 2e-3, 1e-3],
  ['p', /\/p$/u, 1e-3, 1e-6],
  ['curves', /\/curves\//u, 1e-9, 1e-9],
  ['first ripe', /\/first_ripe\//u, 2e-5, 1e-6],
  ['estimates', /\/estimate$/u, 1e-6, 1e-9],
  ['intervals', /\/(?:low|high)$/u, 2e-5, 1e-6],
  ['other figures', /^/u, 1e-5, 1e-8],
];

function isTree(value: unknown): value is Tree {
  return value !== null && typeof value === 'object' && !Array.isArray(value);
}

/** An empty tree and no tree say the same: nothing. */
function isNothing(value: unknown): boolean {
  if (isTree(value) && 'estimate' in value && value['estimate'] === null) return true;
  return value === null || value === undefined || (isTree(value) && Object.values(value).every(isNothing));
}

function pairs(value: unknown): string | null {
  if (!Array.isArray(value)) return null;
  return value
    .map((pair: unknown) => (Array.isArray(pair) ? (pair as string[]).toSorted().join(' ') : String(pair)))
    .toSorted()
    .join(', ');
}

function walk(ours: unknown, theirs: unknown, path: string, found: Difference[]): void {
  if (NOT_COUNTED.test(path)) return;
  const [kind, , relative, absolute] = TOLERANCES.find(([, pattern]) => pattern.test(path))!;
  if (path.includes('/separated/')) {
    const [a, b] = [pairs(ours) ?? '', pairs(theirs) ?? ''];
    found.push({ kind: 'letters', path, ours: a, theirs: b, size: a === b ? 0 : Infinity });
  } else if (isTree(ours) && isTree(theirs)) {
    for (const key of new Set([...Object.keys(ours), ...Object.keys(theirs)]))
      if (key !== 'note') walk(ours[key], theirs[key], path === '' ? key : `${path}/${key}`, found);
  } else if (typeof ours === 'number' && typeof theirs === 'number') {
    const size = Math.abs(ours - theirs) / (absolute + relative * Math.abs(theirs));
    found.push({ kind, path, ours, theirs, size });
  } else if (isNothing(ours) && isNothing(theirs)) found.push({ kind, path, ours: null, theirs: null, size: 0 });
  else found.push({ kind: `${kind}, one side only`, path, ours, theirs, size: Infinity });
}

/** Every figure of both counts beside the other, with its distance. */
export function differences(ours: unknown, theirs: unknown): readonly Difference[] {
  const found: Difference[] = [];
  walk(ours, theirs, '', found);
  return found;
}
