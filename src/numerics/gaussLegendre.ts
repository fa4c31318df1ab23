import { notConverged } from './notConverged.ts';

/** Nodes and weights of a quadrature rule. */
export interface QuadratureRule {
  readonly nodes: readonly number[];
  readonly weights: readonly number[];
}

const rules = new Map<number, QuadratureRule>();

/** Legendre polynomial of degree n and its derivative at x, by the three-term recurrence. */
function legendre(n: number, x: number): readonly [value: number, slope: number] {
  let [before, value] = [1, x];
  for (let k = 2; k <= n; k++) [before, value] = [value, ((2 * k - 1) * x * value - (k - 1) * before) / k];
  return [value, (n * (x * value - before)) / (x * x - 1)];
}

/**
 * Gauss-Legendre rule on [0, 1].
 *
 * @param n  number of nodes ≥ 2
 * @returns  nodes in increasing order with weights that sum to 1; exact for polynomials up to degree 2n - 1
 * @throws NotConverged if Newton's method does not find a node
 * @source Abramowitz & Stegun (1964) 25.4.29
 */
export function gaussLegendre(n: number): QuadratureRule {
  const known = rules.get(n);
  if (known) return known;
  const pairs = Array.from({ length: n }, (_, i): readonly [number, number] => {
    let x = Math.cos((Math.PI * (n - i - 0.25)) / (n + 0.5));
    for (let step = 0; ; step++) {
      if (step > 100) notConverged('the nodes of a quadrature rule');
      const [value, slope] = legendre(n, x);
      const change = value / slope;
      x -= change;
      if (Math.abs(change) < 1e-15) break;
    }
    const [, slope] = legendre(n, x);
    return [(1 + x) / 2, 1 / ((1 - x * x) * slope * slope)];
  });
  const rule = { nodes: pairs.map(([node]) => node), weights: pairs.map(([, weight]) => weight) };
  rules.set(n, rule);
  return rule;
}
