/**
 * The whole site of large trials, cold: npm run bench:scale [varieties x seasons …], such as 100x10 1000x10. Prints
 * processor time, peak memory, the site's size and how both grow; nothing is asserted. Invented trials: five classes,
 * three plants of a variety with six pickings each, three tasters.
 */
import { mkdirSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { randomStream } from '../../src/numerics/random.ts';
import { runOnce } from './paired.ts';

const command = resolve(import.meta.dirname, '../../dist/src/main/keeprow.js');
const CLASSES = ['sweet', 'hot', 'salad', 'cherry', 'frying'];
const LAST = 2026;
const given = process.argv.slice(2).filter((own) => /^\d+x\d+$/.test(own));
const SIZES = given.length > 0 ? given : ['100x10', '300x10', '1000x10', '100x40'];

const day = (year: number, n: number): string =>
  new Date(Date.UTC(year, 4, 20) + 86_400_000 * n).toISOString().slice(0, 10);

/** A trial folder with so many varieties, all of them grown in each of so many seasons. */
function trialOf(varieties: number, seasons: number): string {
  const folder = mkdtempSync(join(tmpdir(), 'keeprow-scale-'));
  const { normal } = randomStream(`${varieties}x${seasons}`);
  const years = Array.from({ length: seasons }, (_, i) => LAST - seasons + 1 + i);
  const ids = Array.from({ length: varieties }, (_, i) => `v${String(i).padStart(4, '0')}`);
  const own = ids.map(() => ({ level: 7 + 0.3 * normal(), days: 75 + 8 * normal(), taste: 5.5 + normal() }));
  const data = join(folder, 'data');
  mkdirSync(data, { recursive: true });
  const spots = Math.ceil(varieties / 15);
  writeFileSync(
    join(data, 'trial.yaml'),
    [
      'title: Collection',
      'place: Marrowdale',
      `classes: {${CLASSES.map((id) => `${id}: {name: ${id}, spots: ${spots}}`).join(', ')}}`,
      'traits: {taste: {kind: rating, from: 1, to: 9, better: higher}, crunch: {kind: rating, from: 1, to: 9, better: higher}}',
      `goals: {${CLASSES.map((id) => `${id}: {yield: 3, first_ripe: 1, taste: 2, crunch: 1}`).join(', ')}}`,
      `seasons: {${years.map((year) => `${year}: {transplanted: ${year}-05-20, finished: yes}`).join(', ')}}`,
      '',
    ].join('\n'),
  );
  writeFileSync(
    join(data, 'varieties.csv'),
    `variety,name,class\n${ids.map((id, i) => `${id},Row ${i},${CLASSES[i % CLASSES.length]}`).join('\n')}\n`,
  );
  for (const year of years) {
    const [plantings, harvests, ratings] = [
      ['planting,variety'],
      ['date,planting,fruits,weight_g'],
      ['date,taster,variety,taste,crunch'],
    ];
    ids.forEach((id, i) => {
      const { level, days, taste } = own[i]!;
      const here = level + 0.15 * normal();
      for (let p = 1; p <= 3; p++) {
        plantings.push(`${id}-${p},${id}`);
        const total = Math.exp(here + 0.3 * normal());
        const first = Math.round(days + 4 * normal());
        for (let k = 0; k < 6; k++) {
          const fruits = Math.max(1, Math.round(total / 6 / 80));
          harvests.push(`${day(year, first + 9 * k)},${id}-${p},${fruits},${Math.round(total / 6)}`);
        }
        const score = (): number => Math.min(9, Math.max(1, Math.round(taste + 1.2 * normal())));
        ratings.push(`${day(year, 100)},T${p},${id},${score()},${score()}`);
      }
    });
    mkdirSync(join(data, String(year)));
    writeFileSync(join(data, String(year), 'plantings.csv'), `${plantings.join('\n')}\n`);
    writeFileSync(join(data, String(year), 'harvests.csv'), `${harvests.join('\n')}\n`);
    writeFileSync(join(data, String(year), 'ratings.csv'), `${ratings.join('\n')}\n`);
  }
  return folder;
}

const found: { varieties: number; seasons: number; busy: number; megabytes: number }[] = [];
process.stdout.write('varieties x seasons    CPU, s   wall, s   peak, MB   site, MB   largest page, kB\n');
for (const size of SIZES) {
  const [varieties, seasons] = size.split('x').map(Number) as [number, number];
  const folder = trialOf(varieties, seasons);
  const out = join(folder, 'site');
  const { busy, seconds, megabytes } = runOnce({
    what: size,
    args: [command, 'build', folder, '--out', out, '--quiet'],
  });
  const files = readdirSync(out, { recursive: true, encoding: 'utf8' }).map((name) => ({
    name,
    size: statSync(join(out, name)).size,
  }));
  const largest = Math.max(...files.filter(({ name }) => name.endsWith('.html')).map((own) => own.size)) / 1000;
  const whole = files.reduce((sum, own) => sum + own.size, 0) / 1e6;
  found.push({ varieties, seasons, busy, megabytes });
  const cells = [busy.toFixed(1), seconds.toFixed(1), megabytes.toFixed(0), whole.toFixed(0), largest.toFixed(0)];
  process.stdout.write(`${size.padEnd(19)} ${cells.map((own) => own.padStart(10)).join('')}\n`);
  rmSync(folder, { recursive: true });
}
const [first, last] = [found[0], found.findLast(({ seasons }) => seasons === found[0]?.seasons)];
if (first && last && last.varieties > first.varieties) {
  const power = (of: 'busy' | 'megabytes'): string =>
    (Math.log(last[of] / first[of]) / Math.log(last.varieties / first.varieties)).toFixed(2);
  process.stdout.write(
    `from ${first.varieties} to ${last.varieties} varieties: CPU as n^${power('busy')}, memory as n^${power('megabytes')}\n`,
  );
}
