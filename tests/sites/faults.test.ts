import { spawn, spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { command, copyOfDemo as demo } from './demoFolder.ts';

const root = resolve(import.meta.dirname, '../..');
const run = (...args: readonly string[]) =>
  spawnSync(process.execPath, [command, ...args], { encoding: 'utf8', timeout: 300_000 });

describe('whatever goes wrong', () => {
  it('a build killed at any moment leaves the old site or the new one, whole', async () => {
    const folder = demo();
    expect(run('build', folder, '--quiet').status).toBe(0);
    const front = readFileSync(join(folder, '_site/index.html'), 'utf8');
    const files = readdirSync(join(folder, '_site'), { recursive: true }).length;
    for (const after of [150, 500, 900, 1200, 1500]) {
      const child = spawn(process.execPath, [command, 'build', folder, '--quiet']);
      await new Promise((later) => setTimeout(later, after));
      child.kill('SIGKILL');
      await new Promise((ended) => child.once('close', ended));
      expect(readFileSync(join(folder, '_site/index.html'), 'utf8')).toBe(front);
      expect(readdirSync(join(folder, '_site'), { recursive: true }).length).toBe(files);
    }
    // The next build clears away what the killed ones left.
    expect(run('build', folder, '--quiet').status).toBe(0);
    expect(readdirSync(folder).toSorted()).toEqual(['_site', 'content', 'data']);
  });
  it('a table that is a folder, and one that is binary, are told at their place', () => {
    const folder = demo();
    writeFileSync(join(folder, 'data/2026/harvests.csv'), Buffer.from([0x50, 0x4b, 3, 4, 0, 0, 0, 1]));
    mkdirSync(join(folder, 'data/2025/harvests.csv.d'));
    const checked = run('check', folder);
    expect(checked.status).toBe(1);
    expect(checked.stdout).toContain('data/2026/harvests.csv error not-text');
    expect(checked.stderr).toBe('');
  });
  it('a file without rights is told', () => {
    const folder = demo();
    chmodSync(folder, 0o755);
    chmodSync(join(folder, 'data/varieties.csv'), 0);
    // Root may read everything, so the check is run as nobody then.
    const nobody = process.getuid?.() === 0 ? { uid: 65534, gid: 65534 } : {};
    const checked = spawnSync(process.execPath, [command, 'check', folder], { encoding: 'utf8', ...nobody });
    expect(checked.stdout).toContain('data/varieties.csv error file-unreadable');
    expect(checked.status).toBe(1);
  });
  it('an output place that cannot be written is told in one line, without a trace', () => {
    const folder = demo();
    const built = run('build', folder, '--out', '/proc/keeprow/site', '--quiet');
    expect(built.status).toBe(3);
    expect(built.stderr).toMatch(/^keeprow: cannot write .*\n$/);
    const blocked = join(folder, 'blocked');
    writeFileSync(blocked, 'a file where the site should go');
    expect(run('build', folder, '--out', join(blocked, 'site'), '--quiet').stderr).toMatch(
      /^keeprow: cannot write .*\n$/,
    );
  });
  it('refuses to put the site where something else is', () => {
    const folder = demo();
    const built = run('build', folder, '--out', join(folder, 'data'), '--quiet');
    expect(built.status).toBe(2);
    expect(existsSync(join(folder, 'data/trial.yaml'))).toBe(true);
  });
  it('a full disk leaves nothing half written', () => {
    const folder = demo();
    const limited = spawnSync(
      '/bin/bash',
      ['-c', `ulimit -f 100; exec "${process.execPath}" "${command}" build "${folder}" --quiet`],
      { encoding: 'utf8' },
    );
    expect(limited.status).not.toBe(0);
    expect(existsSync(join(folder, '_site'))).toBe(false);
    expect(limited.stderr).not.toContain('    at ');
  });
});

describe('Eleventy by itself', () => {
  it('builds the same pages from eleventy.config.ts', () => {
    const folder = demo();
    run('build', folder, '--quiet');
    const out = join(folder, 'by-eleventy');
    const args = [
      '--import',
      'tsx',
      join(root, 'node_modules/@11ty/eleventy/cmd.cjs'),
      `--config=eleventy.config.ts`,
      `--output=${out}`,
      '--quiet',
    ];
    const built = spawnSync(process.execPath, args, { cwd: root, encoding: 'utf8', timeout: 300_000 });
    expect(built.status, built.stderr).toBe(0);
    for (const page of ['index.html', '2026/index.html', 'varieties/wren-hill/index.html', 'assets/keeprow.css']) {
      expect(readFileSync(join(out, page), 'utf8')).toBe(readFileSync(join(folder, '_site', page), 'utf8'));
    }
  });
});

describe('the package', () => {
  it('installs into an empty folder and works there', () => {
    const empty = mkdtempSync(join(tmpdir(), 'keeprow-pack-'));
    const packed = spawnSync('npm', ['pack', '--ignore-scripts', '--silent', '--pack-destination', empty], {
      cwd: root,
      encoding: 'utf8',
    });
    const tarball = packed.stdout.trim().split('\n').at(-1)!;
    writeFileSync(join(empty, 'package.json'), '{"private": true}');
    const installed = spawnSync('npm', ['install', '--no-audit', '--no-fund', '--prefer-offline', `./${tarball}`], {
      cwd: empty,
      encoding: 'utf8',
    });
    expect(installed.status, installed.stderr).toBe(0);
    const bin = join(empty, 'node_modules/.bin/keeprow');
    const use = (...args: readonly string[]) =>
      spawnSync(bin, args, { cwd: empty, encoding: 'utf8', timeout: 300_000 });
    expect(use('new', 'trial').status).toBe(0);
    expect(use('build', 'trial').stdout).toContain('The site is in ');
    expect(existsSync(join(empty, 'trial/_site/assets/keeprow.css'))).toBe(true);
    expect(existsSync(join(empty, 'trial/_site/2026/index.html'))).toBe(true);
  });
});
