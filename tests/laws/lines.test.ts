import { describe, expect, it } from 'vitest';
import { lineProblems } from '../../src/decide/lines/crossReport.ts';
import { publishedLines } from '../../src/present/publishedLines.ts';
import { writingOf } from '../../src/present/numbers.ts';
import { crossSections, leadOf } from '../../src/present/pages/lines.ts';
import { lotCells } from '../../src/present/pages/seed.ts';
import { seasonSeen } from '../../src/analyse/seen.ts';
import { check } from '../sites/folder.ts';
import type { Folder } from '../sites/folder.ts';

const STATES = 'dark,dark,green,dark,dark,green,dark,dark'.split(',');
const plants = (family: string, n: number): string =>
  Array.from({ length: n }, (_, i) => `${family}-${i + 1},${family},1`).join('\n');
const rows = (family: string, day: string, states: readonly string[]): string =>
  states.map((state, i) => `${day},${family}-${i + 1},,,${state}`).join('\n');

/** A grower's F2 and the F3 of one plant, in two seasons, with the seed between them. */
const folder = (language: string, more: Folder = {}): Folder => ({
  'trial.yaml': `title: Slope\nlanguage: ${language}\nclasses: {hot: {name: Hot, line_plants: 10}}\ntraits: {leaf: {kind: state, states: [green, dark], hot: {good: dark}}}\ngoals: {hot: {leaf: 2, yield: 1}}\n`,
  'varieties.csv':
    'variety,name,class,species,kind,mother,father,from,generation\na,Aldersop,hot,Capsicum annuum,,,,,\nx2,Cross F2,hot,Capsicum annuum,line,a,unknown,,F2\nx3,Cross F3,hot,Capsicum annuum,line,,,2025/x2-1,\n',
  '2025/plantings.csv': `planting,variety,plants\n${plants('x2', 8)}\na,a,2\n`,
  '2025/measurements.csv': `date,planting,variety,plants,leaf\n${rows('x2', '2025-08-20', STATES)}\n`,
  '2026/plantings.csv': `planting,variety,plants\n${plants('x3', 6)}\na,a,2\n`,
  '2026/measurements.csv': `date,planting,variety,plants,leaf\n${rows('x3', '2026-08-20', Array(6).fill('dark'))}\n`,
  'seeds.csv':
    'lot,variety,from,saved,seeds,pollination\ns1,x3,2025/x2-1,2025-09-20,60,open\ns2,,2026/x3-2,2026-09-20,40,bagged\n',
  ...more,
});

function told(own: Folder) {
  const { trial, problems } = check(own);
  if (!trial) throw new Error(JSON.stringify(problems));
  const seasons = trial.seasons.map((season) => seasonSeen(trial, season));
  const lines = publishedLines(trial, seasons, null);
  const writing = writingOf(trial.settings);
  const sentences = lines.crosses.flatMap((report) => {
    const source = { report, trial, writing };
    return [leadOf(source), ...crossSections(source).flatMap(({ sentences: all, margin }) => [...all, margin])];
  });
  return { lines, sentences, cells: (lines.seed?.lots ?? []).map((lot) => lotCells(lot, writing)) };
}

describe('what is said of a cross and of seed', () => {
  it.each(['en', 'de'])(
    'in %s claims no more than it can: no ratio as the right one, nothing stable, no 0 or 100 of 100',
    (language) => {
      const { sentences, cells } = told(folder(language));
      expect(sentences.length).toBeGreaterThan(4);
      for (const text of [...sentences, ...cells.flat()]) {
        expect(text).not.toMatch(/\bis 3:1|\bist 3:1|stable|stabil|\ba variety\b|eine Sorte\b/);
        expect(text).not.toMatch(/(?<![\d.,])(?:0|100) (?:of|von) 100|undefined|NaN|null|\.\.|\(\)|[-−]0(?![.,\d])/);
      }
    },
  );

  it('a cross has one page for all its families, and carries plants of the newest', () => {
    const { lines } = told(folder('en'));
    expect(lines.crosses.map(({ cross }) => [cross.id, cross.families.map(({ variety }) => variety.id)])).toEqual([
      ['x2', ['x2', 'x3']],
    ]);
    const [report] = lines.crosses;
    expect(report!.newest!.variety.id).toBe('x3');
    expect(report!.advice!.plants).toHaveLength(6);
    expect(report!.advice!.carry.length).toBeGreaterThan(0);
    expect(report!.mixed!.selfed).toBe(0.25);
    // Its mother stood open, and peppers take up to 42 of 100.
    expect(report!.mixed!.most).toBeCloseTo(0.6259, 4);
    expect(report!.offTypes).toEqual([{ trait: 'leaf', k: 0, n: 6, atMost: 1 - 0.05 ** (1 / 6), allowed: 1 }]);
  });

  it('the order of rows and the names of states change nothing', () => {
    const figures = (own: Folder) => {
      const [report] = told(own).lines.crosses;
      return report!.advice!.plants.map(({ plant, trueFor, wanted }) => [
        plant.planting.id,
        trueFor.get('leaf'),
        wanted?.chance,
      ]);
    };
    const plain = folder('en');
    const turned = { ...plain };
    for (const name of ['2025/measurements.csv', '2026/measurements.csv'] as const) {
      const [head, ...lines] = plain[name]!.trim().split('\n');
      turned[name] = [head, ...lines.toReversed()].join('\n');
    }
    const renamed = Object.fromEntries(
      Object.entries(plain).map(([path, text]) => [path, text.replaceAll('dark', 'ink')]),
    );
    expect(figures(turned)).toEqual(figures(plain));
    expect(figures(renamed)).toEqual(figures(plain));
  });

  it('a family unlike its mother, and sowings of a lot that disagree, are told', () => {
    const own = folder('en', {
      '2026/measurements.csv': `date,planting,variety,plants,leaf\n${rows('x3', '2026-08-20', Array(6).fill('green'))}\n`,
      '2026/germination.csv': 'lot,sown,seeds,germinated\ns1,2026-03-01,12,12\ns1,2026-03-02,12,2\n',
    });
    const { trial } = check(own);
    const problems = lineProblems(trial!, told(own).lines.crosses);
    expect(problems.map(({ code, found }) => `${code} ${found}`)).toEqual(
      expect.arrayContaining(['family-unlike x3', 'tests-disagree s1']),
    );
  });

  it('several rows of a tray are one: the plants set out are taken from it once', () => {
    const tray = (rowsOf: string): string =>
      `date,planting,variety,plants,leaf\n${rows('x2', '2025-08-20', STATES)}\n${rowsOf}`;
    const rest = (text: string) => {
      const [report] = told(folder('en', { '2025/measurements.csv': text })).lines.crosses;
      return report!.traits[0]!.genes!.pedigree.f2.counts;
    };
    // Of 2 green and 6 dark set out, beside 10 green and 20 dark in the tray.
    expect(rest(tray('2025-05-01,,x2,10,green\n2025-05-01,,x2,20,dark\n'))).toEqual([8, 14]);
    expect(rest(tray('2025-05-01,,x2,10,green\n2025-05-01,,x2,8,dark\n2025-05-02,,x2,12,dark\n'))).toEqual([8, 14]);
  });

  it('old seed asks for a test, and what is short for more', () => {
    const { lines } = told(
      folder('en', {
        'seeds.csv': 'lot,variety,from,saved,seeds\ns1,x3,2025/x2-1,2025-09-20,60\nold,a,,2015,100\nfew,a,,2026,1\n',
      }),
    );
    expect(lines.seed!.lots.map(({ lot, act }) => [lot.id, act])).toEqual([
      ['s1', 'sow'],
      ['old', 'test'],
      ['few', 'save'],
    ]);
  });

  it('seed is not told where the grower hides it', () => {
    const hidden = folder('en');
    const { lines } = told({ ...hidden, 'trial.yaml': `${hidden['trial.yaml']}publish: {hide: [seed]}\n` });
    expect(lines.seed).toBeNull();
  });
});

describe('what another record changes', () => {
  it('seed of a flower crossed by hand is no selfed generation: its plants are counted, no gene is told', () => {
    const seeds = (pollination: string): Folder => ({
      'seeds.csv': `lot,from,saved,seeds,pollination,father\ns1,2025/x2-1,2025-09-20,60,${pollination}\n`,
      '2026/plantings.csv': `planting,variety,plants,lot\n${Array.from({ length: 6 }, (_, i) => `x3-${i + 1},x3,1,s1`).join('\n')}\na,a,2,\n`,
    });
    const [selfed] = told(folder('en', seeds('hand,2025/x2-1'))).lines.crosses;
    expect(selfed!.traits[0]!.genes).not.toBeNull();
    const [crossed] = told(folder('en', seeds('hand,a'))).lines.crosses;
    expect(crossed!.traits[0]!.genes).toBeNull();
    expect(crossed!.mixed).toBeNull();
    expect(crossed!.cross.families.map(({ generation }) => generation)).toEqual([2, null]);
  });
  it('soil is warm after its first whole week at the mean asked for, by a day with a chance after three springs', () => {
    const weather = (year: number, warm: number): string => {
      const from = Date.UTC(year, 3, 1);
      const rows = Array.from({ length: 60 }, (_, i) => {
        const day = new Date(from + i * 864e5).toISOString().slice(0, 10);
        return `${day},5,15,${i < warm ? 10 : 18}`;
      });
      return `date,tmin_c,tmax_c,soil_c\n${rows.join('\n')}\n`;
    };
    const years = [2024, 2025, 2026];
    const dates = (least: number) => {
      const own = folder('en', {
        'trial.yaml': `title: Slope\nclasses: {hot: {name: Hot, soil_min_c: ${least}}}\ntraits: {leaf: {kind: state, states: [green, dark]}}\n`,
        ...Object.fromEntries(years.map((year, i) => [`${year}/weather.csv`, weather(year, 20 + 5 * i)])),
        '2024/plantings.csv': 'planting,variety,plants\na,a,2\n',
      });
      return told(own).lines.seed!.dates[0]!.warm;
    };
    // Six days at 18 and one at 10 are 16.9 on average: the week ends on the sixth warm day.
    const { seen, dates: ahead } = dates(16)!;
    expect(seen.map(({ day }) => new Date(day * 864e5).toISOString().slice(5, 10))).toEqual([
      '04-26',
      '05-01',
      '05-06',
    ]);
    // Days 117 (of a leap year), 121 and 126 of the year: 121.3 on average, the 122nd is 2 May.
    expect(ahead.map(({ chance }) => chance)).toEqual([0.5, 0.25, 0.1]);
    expect(new Date(ahead[0]!.day * 864e5).toISOString().slice(5, 10)).toBe('05-02');
    expect(ahead[2]!.day).toBeGreaterThan(ahead[1]!.day);
    expect(dates(9)).toBeNull();
  });
});
