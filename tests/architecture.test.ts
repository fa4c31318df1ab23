import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '..');
const ROOMS = ['terms', 'numerics', 'read', 'sheet', 'records', 'analyse', 'decide', 'present', 'site', 'main'];

function files(folder: string): readonly string[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => relative(root, join(entry.parentPath, entry.name)));
}

const sources = [...files('src'), ...files('site')];
const roomOf = (path: string): string => (path.startsWith('src/') ? path.split('/')[1]! : path.split('/')[0]!);
const imports = (path: string): readonly string[] =>
  [...readFileSync(join(root, path), 'utf8').matchAll(/from '(\.[^']+)'|import\('(\.[^']+)'\)/g)].map(([, a, b]) =>
    relative(root, resolve(root, dirname(path), (a ?? b)!)),
  );

describe('the house', () => {
  it('lets a room import only from rooms to its left', () => {
    const wrong = sources.flatMap((path) =>
      imports(path)
        .filter((target) => {
          const [from, to] = [ROOMS.indexOf(roomOf(path)), ROOMS.indexOf(roomOf(target))];
          // terms and numerics know nothing of each other
          return to > from || (from === 1 && to === 0) || to < 0;
        })
        .map((target) => `${path} -> ${target}`),
    );
    expect(wrong).toEqual([]);
  });
  it('keeps everything but main pure', () => {
    const impure = sources
      .filter((path) => roomOf(path) !== 'main')
      .filter((path) =>
        /from 'node:|\bDate\.now\b|\bMath\.random\b|\bconsole\.|\bprocess\./.test(
          readFileSync(join(root, path), 'utf8'),
        ),
      );
    expect(impure).toEqual([]);
  });
  it('has no import cycle', () => {
    const graph = new Map(sources.map((path) => [path, imports(path)]));
    const done = new Set<string>();
    const walk = (path: string, trail: readonly string[]): string | null => {
      if (trail.includes(path)) return [...trail, path].join(' -> ');
      if (done.has(path)) return null;
      for (const next of graph.get(path) ?? []) {
        const cycle = walk(next, [...trail, path]);
        if (cycle) return cycle;
      }
      done.add(path);
      return null;
    };
    expect(sources.map((path) => walk(path, [])).find((cycle) => cycle !== null) ?? null).toBeNull();
  });
});
