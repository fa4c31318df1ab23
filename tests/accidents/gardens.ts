import { csvText } from '../../src/terms/csv.ts';
import { randomStream } from '../../src/numerics/random.ts';
import { chanceOf } from './sheets.ts';
import type { Sheet } from './sheets.ts';

// Random gardens as growers keep them, without a slip: whatever a check says of them is a false alarm.

interface Crop {
  readonly species: string;
  /** Grams of a fruit, grams of a plant, from smallest to largest variety. */
  readonly fruit: readonly [number, number];
  readonly plant: readonly [number, number];
  readonly firstRipe: readonly [number, number];
}

const CROPS: Readonly<Record<string, Crop>> = {
  sweet: { species: 'Capsicum annuum', fruit: [40, 220], plant: [500, 2500], firstRipe: [70, 105] },
  hot: { species: 'Capsicum chinense', fruit: [2, 15], plant: [100, 900], firstRipe: [80, 130] },
  salad: { species: 'Solanum lycopersicum', fruit: [60, 350], plant: [1000, 5000], firstRipe: [60, 85] },
  cherry: { species: 'Solanum lycopersicum', fruit: [6, 25], plant: [800, 3000], firstRipe: [52, 70] },
  aubergine: { species: 'Solanum melongena', fruit: [80, 450], plant: [600, 3000], firstRipe: [60, 90] },
  cucumber: { species: 'Cucumis sativus', fruit: [60, 500], plant: [1500, 7000], firstRipe: [45, 60] },
  squash: { species: 'Cucurbita pepo', fruit: [200, 6000], plant: [2000, 15_000], firstRipe: [48, 100] },
};
const NAMES =
  'Ada Thorn,Berwick Moss,Corin Lamb,Dilys Frame,Edda Pike,Finn Oakes,Tim Ash,Tom Ash,Kim Rowe,Jan Ott,Jo Lunn,Jon Lunn,Anne Bell,Anna Beck,Hanna Beck,Max Stone'.split(
    ',',
  );
const SHORT = 'Tim,Tom,Ada,Kim,Jan,Jo,Mia,Max,T1,T2,T3,T4'.split(',');
const BEDS = ['bed A', 'bed B', 'long bed', 'tunnel 1', 'tunnel 2', 'west bed', 'east bed', 'north', 'south'];
const iso = (time: number): string => new Date(time).toISOString().slice(0, 10);
const DAY = 86_400_000;

interface Kept {
  readonly hasFruits: boolean;
  readonly hasWeights: boolean;
  readonly step: number;
  readonly unit: 'g' | 'oz' | 'kg';
  readonly every: number;
}

/** Random garden number so-and-so as a trial's files, the same for the same number. */
export function cleanGarden(index: number): Map<string, string> {
  const chance = chanceOf(`clean garden ${index}`);
  const { below, pick, uniform } = chance;
  const { normal } = randomStream(`clean garden ${index} normal`);
  const between = (low: number, high: number): number => low + (high - low) * uniform();
  const logBetween = ([low, high]: readonly [number, number]): number => low * (high / low) ** uniform();
  const classes = Object.keys(CROPS).filter(() => uniform() < 0.4);
  if (classes.length === 0) classes.push('sweet');
  const years = [2023, 2024, 2025, 2026].slice(-1 - below(4));
  const cv = between(0.2, 0.6);
  const together = 1 + below(4);
  const varieties = classes.flatMap((id) =>
    Array.from({ length: 2 + below(7) }, (_, i) => ({
      id: `${id}-${i}`,
      crop: id,
      fruit: logBetween(CROPS[id]!.fruit),
      plant: logBetween(CROPS[id]!.plant),
      days: between(...CROPS[id]!.firstRipe),
      flavour: between(3, 8),
      shape: between(1, 3),
      from: i === 0 ? years[0]! : pick(years),
    })),
  );
  const people = (uniform() < 0.5 ? NAMES : SHORT).toSorted(() => uniform() - 0.5).slice(0, 2 + below(7));
  const kept: Kept = {
    hasFruits: uniform() < 0.85,
    hasWeights: uniform() < 0.85,
    step: pick([1, 1, 1, 5, 10]),
    unit: pick(['g', 'g', 'g', 'oz', 'kg']),
    every: 3 + below(8),
  };
  const files = new Map<string, string>();
  const put = (path: string, rows: Sheet): void => void files.set(path, csvText(rows));
  files.set(
    'trial.yaml',
    `title: Garden ${index}\nclasses:\n${classes.map((id) => `  ${id}: {}\n`).join('')}traits:\n  flavour: {kind: rating, from: 1, to: 9, better: higher}\n  fruit_length: {kind: measure, unit: cm}\n  fruit_width: {kind: measure, unit: cm}\n  lobes: {kind: measure, unit: lobes}\nseasons:\n${years.map((year) => `  ${year}: {sown: ${year}-03-01, transplanted: ${year}-05-20, harvests: complete}\n`).join('')}`,
  );
  put('varieties.csv', [
    ['variety', 'class', 'species'],
    ...varieties.map(({ id, crop }) => [id, crop, CROPS[crop]!.species]),
  ]);
  const isByPlot = uniform() < 0.4;
  for (const year of years) {
    const start = Date.UTC(year, 4, 20);
    const end = Date.UTC(year, 9, 20);
    const season = Math.exp(0.2 * normal());
    const plantings: Sheet = [['planting', 'variety', 'plants', 'bed', 'block', 'row', 'column', 'removed', 'cause']];
    const harvests: [number, string[]][] = [];
    const measures: Sheet = [['date', 'planting', 'fruit_length_cm', 'fruit_width_cm', 'lobes']];
    const looks: [number, string[]][] = [];
    const grown = varieties.filter(({ from }) => from <= year);
    if (grown.length === 0) continue;
    const beds = BEDS.toSorted(() => uniform() - 0.5).slice(0, 1 + below(3));
    let spot = 0;
    for (const own of grown) {
      const size = own.fruit * Math.exp(0.1 * normal());
      const first = own.days * Math.exp(0.05 * normal());
      for (let i = 0; i < together; i++) {
        const id = `${own.id}-p${i}`;
        const plants = uniform() < 0.2 ? 1 + below(4) : 1;
        const gone = uniform() < 0.06 ? start + Math.round(between(20, 120)) * DAY : null;
        plantings.push([
          id,
          own.id,
          String(plants),
          pick(beds),
          `row ${1 + i}`,
          isByPlot ? String(1 + Math.floor(spot / 9)) : '',
          isByPlot ? String(1 + (spot++ % 9)) : '',
          gone === null ? '' : iso(gone),
          gone === null ? '' : pick(['disease', 'pest', 'weak', 'accident']),
        ]);
        const yielded = own.plant * season * Math.exp(cv * normal() - (cv * cv) / 2) * plants;
        const each = size * Math.exp(0.15 * normal());
        const ripe = start + Math.round(first * Math.exp(0.1 * normal())) * DAY;
        const visits = Array.from({ length: 40 }, (_, k) => ripe + k * kept.every * DAY + below(2) * DAY).filter(
          (day) => day < end && (gone === null || day < gone),
        );
        if (uniform() < 0.3 && (kept.hasFruits || kept.hasWeights))
          looks.push([ripe - (8 + below(6)) * DAY, [id, 'unripe']]);
        for (const day of visits) {
          const fruits = Math.round((yielded / visits.length / each) * Math.exp(0.4 * normal()));
          if (fruits < 1) continue;
          const grams = Math.max(
            kept.step,
            Math.round((fruits * each * Math.exp((0.15 * normal()) / Math.sqrt(fruits))) / kept.step) * kept.step,
          );
          const weight = { g: String(grams), oz: (grams / 28.3495).toFixed(1), kg: (grams / 1000).toFixed(2) }[
            kept.unit
          ];
          if (Number(weight) === 0) continue;
          harvests.push([day, [id, kept.hasFruits ? String(fruits) : '', kept.hasWeights ? weight : '']]);
          if (uniform() < 0.1) {
            const length = (each * own.shape * 1.9) ** (1 / 3) * Math.exp(0.1 * normal()) * 1.4;
            const width = (length / own.shape) * Math.exp(0.08 * normal());
            measures.push([iso(day), id, length.toFixed(1), width.toFixed(1), String(2 + below(3))]);
          }
        }
      }
    }
    put(`${year}/plantings.csv`, plantings);
    const dated = (rows: [number, string[]][]): Sheet =>
      rows.toSorted(([a], [b]) => a - b).map(([day, cells]) => [iso(day), ...cells]);
    if ((kept.hasFruits || kept.hasWeights) && harvests.length > 0)
      put(`${year}/harvests.csv`, [['date', 'planting', 'fruits', `weight_${kept.unit}`], ...dated(harvests)]);
    if (looks.length > 0) put(`${year}/observations.csv`, [['date', 'planting', 'event'], ...dated(looks)]);
    if (measures.length > 1 && kept.hasFruits)
      put(`${year}/measurements.csv`, [measures[0]!, ...measures.slice(1).toSorted(([a], [b]) => (a! < b! ? -1 : 1))]);
    if (uniform() < 0.7) {
      const ratings: Sheet = [['date', 'taster', 'variety', 'flavour', 'again']];
      for (const taster of people) {
        const lean = 0.8 * normal();
        for (const own of grown) {
          if (grown.length > 2 && uniform() < 0.1) continue;
          const score = Math.round(Math.min(9, Math.max(1, own.flavour + lean + normal())));
          ratings.push([`${year}-09-12`, taster, own.id, String(score), score > 5 ? 'yes' : 'no']);
        }
      }
      if (ratings.length > 1) put(`${year}/ratings.csv`, ratings);
    }
    if (uniform() < 0.6) {
      const weather: Sheet = [['date', 'tmin_c', 'tmax_c']];
      const digits = uniform() < 0.3 ? 0 : 1;
      const from = Date.UTC(year, pick([0, 3, 4]), 1);
      for (let day = from; day <= end + below(40) * DAY; day += DAY) {
        if (uniform() < 0.01) continue;
        const low = 8 + 6 * Math.sin(((day - Date.UTC(year, 3, 20)) / DAY / 365) * 2 * Math.PI) + 2.5 * normal();
        weather.push([iso(day), low.toFixed(digits), (low + 6 + 5 * uniform() + Math.abs(normal())).toFixed(digits)]);
      }
      put(`${year}/weather.csv`, weather);
    }
  }
  return files;
}
