/**
 * Stage two over very many gardens: npm run bench:network [estimates …, 1e4 1e5 1e6]. Prints the processor time of each
 * step and the largest memory so far; nothing is asserted. Invented gardens with ten varieties each, in two of three seasons.
 */
import type { GardenValue } from '../../src/analyse/expected/gardenCells.ts';
import { cellMeans, errorDraws, networkGiven } from '../../src/analyse/expected/gardenNetwork.ts';
import { networkOf } from '../../src/analyse/expected/networkRows.ts';
import { likeliestByReml } from '../../src/analyse/expected/gardenReml.ts';
import { randomStream } from '../../src/numerics/random.ts';

const EACH = 5;
const SEASONS = [2024, 2025, 2026];
const VARIETIES = new Map([
  [1e4, 100],
  [1e5, 400],
  [1e6, 1000],
]);

function invented(estimates: number, varieties: number): readonly GardenValue[] {
  const { normal, uniform } = randomStream('network');
  const v = Array.from({ length: varieties }, () => 0.3 * normal());
  const w = v.map(() => SEASONS.map(() => 0.2 * normal()));
  const values: GardenValue[] = [];
  for (let g = 0; values.length < estimates; g++) {
    const grown = [...new Set(Array.from({ length: EACH }, () => Math.floor(varieties * uniform())))];
    const u = grown.map(() => 0.2 * normal());
    for (const s of [g % 3, (g + 1) % 3]) {
      const level = 0.4 * normal();
      grown.forEach((i, k) => {
        const theta = level + v[i]! + w[i]![s]! + u[k]! + 0.235 * normal() + 0.25 * normal();
        values.push({ variety: `v${i}`, garden: `g${g}`, season: SEASONS[s]!, theta, variance: 0.0625 });
      });
    }
  }
  return values;
}

const sizes = process.argv.slice(2).map(Number);
for (const estimates of sizes.length > 0 ? sizes : VARIETIES.keys()) {
  const varieties = VARIETIES.get(estimates) ?? 100;
  const own = {
    classId: 'all',
    varieties: Array.from({ length: varieties }, (_, i) => `v${i}`),
    values: invented(estimates, varieties),
  };
  const told: string[] = [];
  const timed = <T>(what: string, work: () => T): T => {
    const { user, system } = process.cpuUsage();
    const made = work();
    const spent = process.cpuUsage();
    told.push(`${what} ${((spent.user + spent.system - user - system) / 1e6).toFixed(2)} s`);
    return made;
  };
  const network = timed('sort', () => networkOf(own));
  const { spreads } = timed('REML', () => likeliestByReml([own], 0.5, null));
  const given = networkGiven(network, spreads);
  timed('solve', () => cellMeans(given, network.theta));
  timed('ten draws', () => errorDraws(given, 'bench', 10));
  const peak = (process.resourceUsage().maxRSS / 1024).toFixed(0);
  const found = Object.values(spreads).map((sd) => sd.toFixed(3));
  process.stdout.write(
    `${estimates} estimates, ${network.varietyOf.length} cells: ${told.join(', ')}; ${peak} MB; spreads ${found.join(' ')}\n`,
  );
}
