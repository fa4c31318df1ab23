import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { command, copyOfDemo } from './demoFolder.ts';

const run = (args: readonly string[], more: object = {}) =>
  spawnSync(process.execPath, [command, ...args], { encoding: 'utf8', ...more });

function bytesOf(site: string): ReadonlyMap<string, string> {
  const files = readdirSync(site, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return new Map(
    files
      .map(
        (entry) =>
          [
            join(entry.parentPath, entry.name).slice(site.length),
            readFileSync(join(entry.parentPath, entry.name), 'base64'),
          ] as const,
      )
      .toSorted(([a], [b]) => (a < b ? -1 : 1)),
  );
}

interface Advised {
  readonly variety: string;
  readonly verdict: string;
  readonly share: number;
  readonly above_bar: number;
  readonly expected: Readonly<Record<string, { estimate: number; low: number; high: number; unit: string }>>;
  readonly reasons: readonly { trait: string; effect: number; text: string }[];
}

describe('the demo trial', () => {
  const folder = copyOfDemo();
  it('builds a site whose results carry n and intervals', () => {
    const built = run(['build', folder]);
    expect(built.stderr).toBe('');
    expect(built.status).toBe(0);
    const results = JSON.parse(readFileSync(join(folder, '_site/results.json'), 'utf8'));
    expect(results.seasons.map(({ season }: { season: number }) => season)).toEqual([2023, 2024, 2025, 2026]);
    const yields = results.seasons[3].varieties.map(
      ({ traits }: { traits: Record<string, { n: number; low: number; estimate: number; high: number }> }) =>
        traits['yield']!,
    );
    expect(yields.length).toBeGreaterThan(20);
    for (const { n, low, estimate, high } of yields) {
      expect(n).toBeGreaterThan(0);
      expect(low).toBeLessThan(estimate);
      expect(high).toBeGreaterThan(estimate);
    }
    const { next_season: next } = results;
    expect(next).toMatchObject({ season: 2027, simulations: 20_000 });
    for (const own of Object.values(next.classes) as readonly {
      spots: number;
      list: readonly string[];
      expected_right: number;
      varieties: readonly Advised[];
    }[]) {
      const shares = own.varieties.map(({ share }) => share);
      expect(shares).toEqual(shares.toSorted((a, b) => b - a));
      const sum = shares.reduce((total, share) => total + share, 0);
      expect(sum).toBeLessThanOrEqual(own.spots + 1e-9);
      const fit = own.varieties
        .filter(({ verdict, above_bar: above }) => verdict !== 'drop' && above >= 0.5)
        .map(({ variety }) => variety);
      expect(own.list).toEqual(fit.slice(0, own.spots));
      expect(own.expected_right).toBeCloseTo(
        own.varieties
          .filter(({ variety }) => own.list.includes(variety))
          .reduce((total, { share }) => total + share, 0),
        9,
      );
      for (const { share, above_bar: above, expected, reasons } of own.varieties) {
        expect(above).toBeGreaterThanOrEqual(share);
        for (const { low, estimate, high } of Object.values(expected)) {
          expect(low).toBeLessThan(estimate);
          expect(high).toBeGreaterThan(estimate);
        }
        const effects = reasons.map(({ effect }) => Math.abs(effect));
        expect(effects).toEqual(effects.toSorted((a, b) => b - a));
        expect(reasons.map(({ trait }) => trait).toSorted()).toEqual(Object.keys(expected).toSorted());
      }
    }
  });
  it('gives the same bytes under another time zone, language and working folder', () => {
    const first = bytesOf(join(folder, '_site'));
    const elsewhere = mkdtempSync(join(tmpdir(), 'keeprow-cwd-'));
    const built = run(['build', folder], {
      cwd: elsewhere,
      env: { ...process.env, TZ: 'Pacific/Kiritimati', LANG: 'de_DE.UTF-8', LC_ALL: 'de_DE.UTF-8' },
    });
    expect(built.status).toBe(0);
    expect(bytesOf(join(folder, '_site'))).toEqual(first);
  });
  it('links only to pages that are there', () => {
    const site = join(folder, '_site');
    const pages = [...bytesOf(site).keys()].filter((name) => name.endsWith('.html'));
    const broken = pages.flatMap((name) => {
      const html = readFileSync(join(site, name), 'utf8');
      return [...html.matchAll(/(?:href|src)="([^"#]+)"/g)]
        .filter(([, link]) => !link!.startsWith('https://marrowdale.example/'))
        .map(([, link]) => join(site, name, '..', link!))
        .filter((target) => !existsSync(target));
    });
    expect(pages.length).toBeGreaterThan(30);
    expect(broken).toEqual([]);
    const fragments = pages.flatMap((name) => {
      const html = readFileSync(join(site, name), 'utf8');
      return [...html.matchAll(/ href="([^"#]*)#([^"]+)"/g)]
        .filter(([, link, id]) => {
          const target = link === '' ? html : readFileSync(join(site, name, '..', link!), 'utf8');
          return !target.includes(` id="${id}"`);
        })
        .map(([, link, id]) => `${name}: ${link}#${id}`);
    });
    expect(fragments).toEqual([]);
  });
  it('leaves the old site whole when the records have an error', () => {
    const before = bytesOf(join(folder, '_site'));
    const path = join(folder, 'data/2026/harvests.csv');
    writeFileSync(path, readFileSync(path, 'utf8').replace('ripe', 'rype'));
    const built = run(['build', folder]);
    expect(built.status).toBe(1);
    expect(built.stdout).toContain('data/2026/harvests.csv:');
    expect(bytesOf(join(folder, '_site'))).toEqual(before);
    expect(readdirSync(folder).toSorted()).toEqual(['_site', 'content', 'data']);
  });
});

describe('the command', () => {
  it('has exit code 2 for wrong usage and says where help is', () => {
    const wrong = run(['chekc']);
    expect([wrong.status, wrong.stderr]).toEqual([
      2,
      'keeprow: there is no command chekc; did you mean check?\nSee keeprow --help\n',
    ]);
    const option = run(['build', '--otu', 'x']);
    expect([option.status, option.stderr.split('\n')[0]]).toEqual([
      2,
      "keeprow: Unknown option '--otu'; did you mean --out?",
    ]);
    expect(run(['help', 'adopt']).stdout).toContain('--picked UNIT');
    expect(run(['columns', 'harvest']).stderr).toContain('did you mean harvests?');
  });
  it('tells an empty folder clearly', () => {
    const empty = mkdtempSync(join(tmpdir(), 'keeprow-empty-'));
    const checked = run(['check', empty, '--json']);
    expect(checked.status).toBe(1);
    expect(JSON.parse(checked.stdout).problems[0]).toMatchObject({
      code: 'no-data-folder',
      severity: 'error',
      places: [{ file: 'data', line: null, column: null }],
    });
  });
  it('makes a site from the smallest useful record', () => {
    const small = mkdtempSync(join(tmpdir(), 'keeprow-small-'));
    mkdirSync(join(small, 'data/2025'), { recursive: true });
    writeFileSync(
      join(small, 'data/trial.yaml'),
      'title: Back garden\ntraits:\n  taste: {kind: rating, from: 1, to: 9, better: higher}\n',
    );
    writeFileSync(join(small, 'data/varieties.csv'), 'variety\nridge-apron\nmoss-apron\n');
    writeFileSync(
      join(small, 'data/2025/totals.csv'),
      'variety,plants,taste,again\nridge-apron,3,7,yes\nmoss-apron,2,5,no\n',
    );
    expect(run(['build', small, '--quiet']).status).toBe(0);
    const results = JSON.parse(readFileSync(join(small, '_site/results.json'), 'utf8'));
    expect(results.seasons[0].varieties[0].traits.taste).toMatchObject({
      n: 1,
      estimate: 7,
      low: null,
      high: null,
      reason: 'one-taster',
    });
  });
  it('makes a new trial that builds as it is, and touches nothing that is there', () => {
    const fresh = join(mkdtempSync(join(tmpdir(), 'keeprow-new-')), 'trial');
    expect(run(['new', fresh]).status).toBe(0);
    expect(run(['check', fresh, '--strict', '--json'])).toMatchObject({
      status: 0,
      stdout: expect.stringContaining('"problems": []'),
    });
    expect(run(['build', fresh, '--quiet']).status).toBe(0);
    expect(run(['new', fresh]).status).toBe(2);
  });
  it('shows a site on this machine, follows a change, and says in the page what is wrong', async () => {
    const fresh = join(mkdtempSync(join(tmpdir(), 'keeprow-view-')), 'trial');
    run(['new', fresh]);
    const child = spawn(process.execPath, [command, 'view', fresh, '--port', '0', '--quiet']);
    try {
      const address = await new Promise<string>((found) =>
        child.stdout.on('data', (text: Buffer) => {
          const url = /http:\/\/localhost:\d+\//.exec(text.toString());
          if (url) found(url[0].replace('localhost', '127.0.0.1'));
        }),
      );
      const page = async (path = ''): Promise<string> => (await fetch(address + path)).text();
      expect(await page()).toContain('My variety trial');
      expect((await fetch(`${address}..%2f..%2fdata/trial.yaml`)).status).toBe(404);
      const changed = async (path: string, from: string, to: string, wanted: string): Promise<void> => {
        writeFileSync(join(fresh, path), readFileSync(join(fresh, path), 'utf8').replace(from, to));
        for (let i = 0; i < 100 && !(await page()).includes(wanted); i++)
          await new Promise((later) => setTimeout(later, 100));
        expect(await page()).toContain(wanted);
      };
      await changed('data/trial.yaml', 'My variety trial', 'Our slope', 'Our slope');
      await changed('data/2026/harvests.csv', ',p4,6', ',p9,6', 'unknown-planting');
    } finally {
      child.kill();
    }
  });
  it('prints its version and help', () => {
    expect(execFileSync(process.execPath, [command, '--version'], { encoding: 'utf8' })).toMatch(/^\d+\.\d+\.\d+\n$/);
    expect(run(['--help']).stdout).toMatch(/^Examples\n/);
  });
});
