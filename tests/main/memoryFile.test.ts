import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { command } from '../sites/demoFolder.ts';
import { SMALL, writeTrial } from '../sites/hostile.ts';

const above = mkdtempSync(join(tmpdir(), 'keeprow-kept-'));
afterAll(() => rmSync(above, { recursive: true, force: true }));
const folder = join(above, 'trial');
const cache = join(above, 'cache');
const harvests = join(folder, 'data/2026/harvests.csv');

/** Every file of a build, by its name. */
function built(name: string, kept: string): ReadonlyMap<string, string> {
  const out = join(above, name);
  const done = spawnSync(process.execPath, [command, 'build', folder, '--out', out, '--quiet'], {
    encoding: 'utf8',
    env: { ...process.env, KEEPROW_CACHE: kept },
  });
  expect(done.status, done.stderr).toBe(0);
  const files = readdirSync(out, { recursive: true, withFileTypes: true }).filter((own) => own.isFile());
  return new Map(
    files.map((own) => [
      join(own.parentPath, own.name).slice(out.length),
      readFileSync(join(own.parentPath, own.name), 'latin1'),
    ]),
  );
}

it('what a build before has worked out changes no byte, whole or damaged', () => {
  writeTrial(folder, {
    ...SMALL,
    '2026/plantings.csv': 'planting,variety\np1,one\np2,two\np3,one\np4,two\n',
    '2026/harvests.csv':
      'date,planting,fruits,weight_g\n2026-08-02,p1,3,300\n2026-08-09,p2,4,250\n2026-08-09,p3,3,280\n2026-08-16,p4,5,240\n',
  });
  const first = built('first', cache);
  expect(readdirSync(cache).map((name) => name.split('-').at(-1))).toEqual(['results', 'site']);
  expect(built('again', cache)).toEqual(first);
  writeFileSync(harvests, readFileSync(harvests, 'utf8').replace('3,300', '3,900'));
  const changed = built('changed', cache);
  expect(changed).not.toEqual(first);
  expect(changed).toEqual(built('plain', 'off'));
  const own = readdirSync(cache).find((name) => name.endsWith('-results'));
  writeFileSync(join(cache, own!), readFileSync(join(cache, own!)).subarray(0, 900));
  expect(built('damaged', cache)).toEqual(changed);
  expect(readdirSync(cache).map((name) => name.split('-').at(-1))).toEqual(['results', 'site']);
});
