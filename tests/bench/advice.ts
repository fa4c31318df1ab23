/**
 * Time and memory of stage two and the verdicts as the number of varieties grows: npm run bench:advice.
 * Nothing is asserted. Invented gardens from a seeded generator.
 */
import { randomStream } from '../../src/numerics/random.ts';
import { expectedTrait } from '../../src/analyse/expected/expectedTrait.ts';
import type { ClassValues } from '../../src/analyse/expected/posterior.ts';
import { adviseClass } from '../../src/decide/adviseClass.ts';
import type { ClassCase, TraitCase } from '../../src/decide/cases.ts';

const SETTINGS = { keepFrom: 0.8, dropBelow: 0.2, simulations: 20_000, seed: 1 };

function garden(n: number, seasons: number, trait: string): TraitCase {
  const r = randomStream(`${n}/${seasons}/${trait}`);
  const varieties = Array.from({ length: n }, (_, i) => {
    const v = 0.3 * r.normal();
    const theta = (): number => 7 + v + 0.15 * r.normal() + 0.2 * r.normal();
    const values = Array.from({ length: seasons }, (__, season) => ({ season, theta: theta(), variance: 0.04 }));
    return { id: `v${i}`, values };
  });
  const classes: readonly ClassValues[] = [{ classId: 'c', seasons, varieties }];
  const nextSeason = { variance: { c: 0.16 }, perPlant: true };
  return { trait, scale: 'log', better: 'higher', ends: null, priorScale: 0.5, classes, nextSeason };
}

function measure(n: number, seasons: number, traits: number): { readonly stageTwo: number; readonly verdicts: number } {
  const cases = Array.from({ length: traits }, (_, t) => garden(n, seasons, `t${t}`));
  const start = performance.now();
  const forecasts = new Map(
    cases.map((own) => [own.trait, { own, expected: expectedTrait(own.classes, own.priorScale, 0.95) }]),
  );
  const middle = performance.now();
  const own: ClassCase = {
    classId: 'c',
    spots: Math.ceil(n / 3),
    bar: 'newcomer',
    checkVariety: null,
    competitors: cases[0]!.classes[0]!.varieties.map(({ id }) => ({
      id,
      competes: true,
      untested: false,
      missed: false,
      counted: [],
      wanted: null,
    })),
    goals: cases.map(({ trait }, t) => ({ trait, weight: t + 1, good: null, bad: null })),
    must: [],
    together: 0,
  };
  adviseClass(own, forecasts, SETTINGS);
  return { stageTwo: (middle - start) / 1000, verdicts: (performance.now() - middle) / 1000 };
}

measure(10, 2, 2);
console.log('varieties  seasons  traits   stage two    verdicts       both');
const both = new Map<number, number>();
for (const [n, seasons, traits] of [
  [30, 5, 5],
  [30, 10, 5],
  [100, 10, 5],
  [300, 10, 5],
  [1000, 10, 5],
] as const) {
  const { stageTwo, verdicts } = measure(n, seasons, traits);
  if (seasons === 10) both.set(n, stageTwo + verdicts);
  const cells = [n, seasons, traits].map((x) => String(x).padStart(8)).join(' ');
  console.log(
    `${cells}  ${[stageTwo, verdicts, stageTwo + verdicts].map((s) => `${s.toFixed(2)} s`.padStart(10)).join('  ')}`,
  );
}
const [few, many] = [both.get(30)!, both.get(1000)!];
console.log(
  `growth from 30 to 1,000 varieties: as n to the power ${(Math.log(many / few) / Math.log(1000 / 30)).toFixed(2)}`,
);
console.log(`memory at its peak: ${Math.round(process.resourceUsage().maxRSS / 1024)} MB`);
