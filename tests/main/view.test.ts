import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, get } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { filesIn, serveSite } from '../../src/main/serve.ts';
import { command } from '../sites/demoFolder.ts';
import { SMALL, writeTrial } from '../sites/hostile.ts';

const above = mkdtempSync(join(tmpdir(), 'keeprow-view-'));
afterAll(() => rmSync(above, { recursive: true, force: true }));
const run = (...args: readonly string[]) => spawnSync(process.execPath, [command, ...args], { encoding: 'utf8' });

describe('the preview', () => {
  it('of a folder that is not there is told, and makes none', () => {
    const viewed = run('view', join(above, 'typo'));
    expect(viewed.stderr).toBe(`keeprow: there is no folder ${join(above, 'typo')}\n`);
    expect(viewed.status).toBe(2);
    expect(existsSync(join(above, 'typo'))).toBe(false);
  });
  it('at a port that is none, or in use, is told', async () => {
    expect(run('view', above, '--port', '99999').stderr).toContain('--port is a number from 0 to 65535');
    const folder = join(above, 'trial');
    writeTrial(folder, SMALL);
    const other = createServer();
    await new Promise<void>((ready) => other.listen(0, '127.0.0.1', ready));
    const { port } = other.address() as AddressInfo;
    // Not waited for in this process, which is the one that holds the port.
    const viewed = spawn(process.execPath, [command, 'view', folder, '--port', String(port), '--quiet']);
    let said = '';
    viewed.stderr.on('data', (bytes) => (said += String(bytes)));
    const status = await new Promise((ended) => viewed.once('close', ended));
    other.close();
    expect(said).toBe(`keeprow: port ${port} is in use; choose another with --port\n`);
    expect(status).toBe(2);
  });
  it('answers for a folder called index.html, and says what each file is', async () => {
    const site = join(above, 'site');
    mkdirSync(join(site, 'odd/index.html'), { recursive: true });
    writeFileSync(join(site, 'photo.webp'), 'x');
    const { server } = serveSite(filesIn(site), () => '');
    await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
    const { port } = server.address() as AddressInfo;
    const ask = (path: string) =>
      new Promise<{ status: number | undefined; type: string | undefined; sniff: unknown }>((done) => {
        get({ host: '127.0.0.1', port, path, headers: { host: 'localhost' } }, (answer) => {
          answer.resume();
          const { 'content-type': type, 'x-content-type-options': sniff } = answer.headers;
          done({ status: answer.statusCode, type, sniff });
        });
      });
    expect(await ask('/odd/')).toMatchObject({ status: 404, sniff: 'nosniff' });
    expect(await ask('/photo.webp')).toEqual({ status: 200, type: 'image/webp', sniff: 'nosniff' });
    server.close();
  });
});

describe('what lies in a trial folder', () => {
  const trial = (name: string, files: Readonly<Record<string, string>>): string => {
    const folder = join(above, name);
    writeTrial(folder, { ...SMALL, ...files });
    return folder;
  };
  it('a table that is no file is told, not passed over', () => {
    const folder = trial('fifo', {});
    spawnSync('mkfifo', [join(folder, 'data/2026/ratings.csv')]);
    expect(run('check', folder).stdout).toContain('data/2026/ratings.csv error file-unreadable');
  });
  it('hidden files are none of it', () => {
    const folder = trial('hidden', {
      '.varieties.csv': 'variety\nx\n',
      '2026/._harvests.csv': '\0',
      '../content/photos/.private.png': 'x',
    });
    const built = run('build', folder);
    expect(built.stdout).toContain('0 errors, 0 warnings, 0 notes');
  });
  it('a photo that no page shows is not published, and a drawing is no photo', () => {
    const pixel = Buffer.from(
      'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==',
      'base64',
    );
    const folder = trial('photos', { '../content/index.md': '![A bed](photos/caf%C3%A9.png)\n' });
    mkdirSync(join(folder, 'content/photos'), { recursive: true });
    // The name as other systems put its accent together.
    writeFileSync(join(folder, 'content/photos/cafe\u0301.png'), pixel);
    writeFileSync(join(folder, 'content/photos/anna-at-home.png'), pixel);
    expect(run('build', folder, '--quiet').status).toBe(0);
    expect(readdirSync(join(folder, '_site/photos')).join(' ')).not.toContain('anna');
    expect(readFileSync(join(folder, '_site/index.html'), 'utf8')).toContain('photos/cafe');
    writeFileSync(join(folder, 'content/photos/cafe\u0301.png'), '<svg xmlns="http://www.w3.org/2000/svg"/>');
    const built = run('build', folder);
    expect(built.stdout).toContain('error photo-unreadable');
    expect(built.stdout).toContain('no JPEG, PNG');
  });
  it('settings without measure are refused', () => {
    const many = Array.from({ length: 80_000 }, (_, i) => `k${i}: 1`).join('\n');
    const checked = run('check', trial('yaml', { 'trial.yaml': `title: A\n${many}\n` }));
    expect(checked.stdout).toContain('error yaml-unreadable');
    expect(checked.stdout).toContain('over 200,000 characters');
    const url = `https://${'x'.repeat(5000)}.example/`;
    expect(run('check', trial('url', { 'trial.yaml': `title: A\npublish: {url: "${url}"}\n` })).stdout).toContain(
      'at most 300 characters',
    );
  });
  it('pages that some systems cannot keep are not made', () => {
    const folder = trial('devices', { '../content/pages/con.md': '# Con\n', '../content/pages/nul.md': '# Nul\n' });
    expect(run('build', folder).stdout.match(/warning content-unused/g)).toHaveLength(2);
    expect(existsSync(join(folder, '_site/pages'))).toBe(false);
  });
  it('names of people are published as the trial says, on no page otherwise', () => {
    const ratings =
      'date,taster,variety,overall\n2026-09-01,Ann Thorn,one,7\n2026-09-01,Ann Thorn,two,5\n2026-09-01,Bea Moss,one,6\n2026-09-01,Bea Moss,two,4\n2026-09-02,A. Thorn,one,7\n';
    const settings = (people: string): string =>
      `title: A\ntraits: {overall: {kind: rating, from: 1, to: 9, better: higher}}\npublish: {people: ${people}}\n`;
    for (const [people, first, second] of [
      ['codes', 'T1', 'T2'],
      ['initials', 'A. T.', 'A. T. 2'],
      ['names', 'A. Thorn', 'Ann Thorn'],
    ] as const) {
      const folder = trial(`people-${people}`, { 'trial.yaml': settings(people), '2026/ratings.csv': ratings });
      const built = run('build', folder);
      expect(built.stdout).toContain('warning taster-near');
      const rows = readFileSync(join(folder, '_site/2026/ratings.csv'), 'utf8').split('\r\n');
      expect(rows[0]).toBe('date,taster,variety,planting,trait,score,blind');
      expect(rows[1]).toBe(`2026-09-01,${second},one,,overall,7,`);
      expect(rows[5]).toBe(`2026-09-02,${first},one,,overall,7,`);
      if (people === 'names') continue;
      for (const name of readdirSync(join(folder, '_site'), { recursive: true, encoding: 'utf8' }))
        if (/\.(?:html|csv|json|xml|cff)$/.test(name))
          expect(readFileSync(join(folder, '_site', name), 'utf8'), name).not.toMatch(/Thorn|Bea Moss/);
    }
  });
});
