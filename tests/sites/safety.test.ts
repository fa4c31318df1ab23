import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { deflateRawSync, crc32 } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { openWorkbooks } from '../../src/main/workbooks.ts';
import { check, codes } from './folder.ts';
import type { Folder } from './folder.ts';
import { command } from './demoFolder.ts';
import { SMALL, hostileTrial, writeTrial } from './hostile.ts';

const run = (...args: readonly string[]) =>
  spawnSync(process.execPath, [command, ...args], { encoding: 'utf8', timeout: 300_000 });
const withFiles = (files: Folder): Folder => ({ ...SMALL, ...files });

describe('names that programs trip over', () => {
  it.each(['__proto__', 'constructor', 'toString', 'hasOwnProperty', 'prototype', 'valueOf'])(
    '%s as a column',
    (name) => {
      const folder = withFiles({
        'varieties.csv': `variety,class,${name}\none,a,x\ntwo,a,y\n`,
        '2026/plantings.csv': `planting,variety,${name}\np1,one,x\np2,two,y\n`,
      });
      expect(codes(folder)).toEqual(['column-unknown varieties.csv:1:15', 'column-unknown 2026/plantings.csv:1:18']);
      expect(check(folder).trial!.varieties[0]!.unknownColumns.get(name)).toBe('x');
      expect(({} as Record<string, unknown>)['x']).toBeUndefined();
    },
  );
  it.each(['__proto__', 'constructor', 'toString'])('%s as a key of the settings', (name) => {
    expect(codes(withFiles({ 'trial.yaml': `title: A\n${name}: 1\n` }))).toEqual(['setting-unknown trial.yaml:2:1']);
    const folder = withFiles({
      'trial.yaml': `title: A\nclasses: {a: {}, ${name}: {name: Odd}}\ntraits: {${name}: {kind: rating, from: 1, to: 9, better: higher}}\ngoals: {a: {${name}: 2}}\n`,
    });
    // A trait's key is a column's name: only letters, digits and underscores after a letter.
    expect(codes(folder)).toContain('setting-unfit trial.yaml:3:10');
    expect(Object.keys({})).toEqual([]);
  });
  it.each([
    '../x',
    '..',
    '.',
    'a/b',
    'a\\b',
    'con',
    'nul',
    'com1',
    'x'.repeat(300),
    'a:b',
    'C:',
    '-rf',
    'é',
    'a b',
    '',
  ])('the id %j leads nowhere', (id) => {
    const found = codes(withFiles({ 'varieties.csv': `variety,class\none,a\ntwo,a\n${id},a\n` }));
    expect(found.filter((code) => !code.startsWith('backslash-in-cell'))[0]).toMatch(
      /^(?:id-unfit|value-missing) varieties.csv:4:1$/,
    );
  });
  it('two ids that differ in case alone cannot be', () => {
    expect(codes(withFiles({ 'varieties.csv': 'variety,class\none,a\ntwo,a\nOne,a\n' }))[0]).toBe(
      'id-unfit varieties.csv:4:1',
    );
  });
  it('photos out of the folder are missing, whatever way leads there', () => {
    for (const way of [
      '../../data/trial.yaml',
      '/etc/passwd',
      'photos/../../x.png',
      'https://else.example/x.png',
      'photos/%2e%2e/x.png',
    ])
      expect(codes(withFiles({ '../content/index.md': `![A bed](${way})\n` }))).toEqual([
        'photo-missing ../content/index.md:1:1'.replace('../', ''),
      ]);
  });
  it.each([
    [false, 1],
    [true, 0],
  ])('a build from hostile names writes nothing outside its site; only where they may stand: %s', (isSound, status) => {
    const { folder, strays } = hostileTrial(60, 1, isSound);
    const built = run('build', folder, '--quiet');
    expect(built.stderr).not.toMatch(/ {4}at /);
    expect(built.status, built.stdout.slice(0, 500) + built.stderr).toBe(status);
    expect(strays()).toEqual([]);
  });
});

describe('links', () => {
  const trial = () => {
    const above = mkdtempSync(join(tmpdir(), 'keeprow-links-'));
    const folder = join(above, 'trial');
    writeTrial(folder, SMALL);
    writeFileSync(join(above, 'secret.csv'), 'date,planting,weight_g\n2026-08-01,p1,SECRET\n');
    return { above, folder };
  };
  it('out of the folder are told and not followed, of files and of folders', () => {
    const { above, folder } = trial();
    symlinkSync(join(above, 'secret.csv'), join(folder, 'data/2026/harvests.csv'));
    mkdirSync(join(folder, 'content'));
    symlinkSync('/etc', join(folder, 'content/photos'));
    const checked = run('check', folder);
    expect(checked.status).toBe(1);
    expect(checked.stdout).toContain('data/2026/harvests.csv error outside-folder');
    expect(checked.stdout).toContain('content/photos error outside-folder');
    expect(checked.stdout).not.toContain('SECRET');
  });
  it('inside the folder are followed, and one in a circle is told', () => {
    const { folder } = trial();
    writeFileSync(join(folder, 'data/mine.txt'), 'date,planting,weight_g\n2026-08-01,p1,100\n');
    symlinkSync(join(folder, 'data/mine.txt'), join(folder, 'data/2026/harvests.csv'));
    expect(run('check', folder).stdout).toContain('0 errors');
    symlinkSync(join(folder, 'data/2026/ratings.csv'), join(folder, 'data/2026/ratings.csv'));
    const checked = run('check', folder);
    expect(checked.stdout).toContain('data/2026/ratings.csv error file-unreadable');
    expect(checked.stderr).toBe('');
  });
});

describe('words that would run elsewhere', () => {
  it.each(['---js\n{}\n---\n', '---json\n{}\n---\n', '---\ntitle: x\n---\n', '--- \n"permalink" : ../../x\n---\n'])(
    'front matter is refused: %j',
    (start) => {
      expect(codes(withFiles({ '../content/index.md': `${start}Words\n` }))).toEqual([
        'front-matter content/index.md:1:1',
      ]);
    },
  );
  it('a line across the page is none', () => {
    expect(codes(withFiles({ '../content/index.md': '---\n\nWords: good ones\n\n---\n' }))).toEqual([]);
  });
  it('code beside the words is left alone, and templates in them are words', () => {
    const folder = mkdtempSync(join(tmpdir(), 'keeprow-code-'));
    writeTrial(folder, withFiles({ '../content/index.md': '{{ 7 | times: 7 }} {% raw %} ${7+7} <%= 7+7 %>\n' }));
    const mark = join(folder, 'ran');
    const code = `require('fs').writeFileSync(${JSON.stringify(mark)}, 'x'); module.exports = {};`;
    mkdirSync(join(folder, 'content/_data'), { recursive: true });
    for (const name of [
      'content/index.11tydata.js',
      'content/_data/x.js',
      '.eleventy.js',
      'eleventy.config.js',
      'content/content.11tydata.cjs',
    ])
      writeFileSync(join(folder, name), code);
    const built = spawnSync(process.execPath, [command, 'build', '.', '--quiet'], { cwd: folder, encoding: 'utf8' });
    expect(built.status, built.stdout + built.stderr).toBe(0);
    expect(readdirSync(folder)).not.toContain('ran');
    expect(readFileSync(join(folder, '_site/index.html'), 'utf8')).toContain(
      '{{ 7 | times: 7 }} {% raw %} ${7+7} &lt;%= 7+7 %&gt;',
    );
  });
});

describe('files without measure', () => {
  it('are an error at their place', () => {
    expect(
      codes(
        withFiles({ '2026/harvests.csv': `date,planting,notes,weight_g\n2026-08-01,p1,"${'x'.repeat(2 << 20)}",5\n` }),
      )[0],
    ).toBe('cell-too-large 2026/harvests.csv:2:1');
    expect(
      codes(
        withFiles({
          '2026/harvests.csv': `date,planting,weight_g,${Array.from({ length: 2000 }, (_, i) => `c${i}`).join(',')}\n`,
        }),
      )[0],
    ).toBe('too-many-columns 2026/harvests.csv:-:-');
    expect(codes(withFiles({ 'trial.yaml': `title: ${'['.repeat(3000)}${']'.repeat(3000)}\n` }))[0]).toMatch(
      /^(?:yaml-unreadable|setting-unfit) /,
    );
    const laughs = `a: &a [x, x]\n${[...'bcdefghij'].map((name, i) => `${name}: &${name} [${Array(9).fill(`*${'abcdefghi'[i]}`).join(', ')}]`).join('\n')}\ntitle: *j\n`;
    expect(codes(withFiles({ 'trial.yaml': laughs }))[0]).toMatch(/^yaml-unreadable /);
  });
  it('a workbook that unpacks without end is refused before it is read', async () => {
    const packed = deflateRawSync(Buffer.alloc(200 * 2 ** 20));
    const name = Buffer.from('xl/worksheets/sheet1.xml');
    const entry = (sign: number, extra: Buffer): Buffer => {
      const head = Buffer.alloc(26);
      head.writeUInt16LE(20, 0);
      head.writeUInt16LE(8, 4);
      head.writeUInt32LE(crc32(Buffer.alloc(0)), 10);
      head.writeUInt32LE(packed.length, 14);
      head.writeUInt32LE(1000, 18);
      head.writeUInt16LE(name.length, 22);
      const signature = Buffer.alloc(4);
      signature.writeUInt32LE(sign);
      return Buffer.concat([signature, ...(sign === 0x02014b50 ? [Buffer.from([20, 0])] : []), head, extra, name]);
    };
    const local = Buffer.concat([entry(0x04034b50, Buffer.alloc(0)), packed]);
    const central = entry(0x02014b50, Buffer.alloc(14));
    const end = Buffer.alloc(22);
    end.writeUInt32LE(0x06054b50);
    end.writeUInt16LE(1, 8);
    end.writeUInt16LE(1, 10);
    end.writeUInt32LE(central.length, 12);
    end.writeUInt32LE(local.length, 16);
    const { unread } = await openWorkbooks([{ path: 'data/2026.xlsx', bytes: Buffer.concat([local, central, end]) }]);
    expect(unread).toEqual([{ path: 'data/2026.xlsx', detail: 'it unpacks to more than 60 MB' }]);
  });
});

describe('published tables', () => {
  it('hold no formula that a spreadsheet would run', () => {
    const folder = mkdtempSync(join(tmpdir(), 'keeprow-formula-'));
    writeTrial(
      folder,
      withFiles({
        'varieties.csv':
          'variety,name,class\none,"@SUM(1+1)*cmd|\' /C calc\'!A0",a\ntwo,+3 best,a\nthree,-1+1+cmd|x,a\n',
      }),
    );
    const built = run('build', folder, '--quiet');
    expect(built.status, built.stdout + built.stderr).toBe(0);
    const tables = readdirSync(join(folder, '_site'), { recursive: true, encoding: 'utf8' }).filter((name) =>
      name.endsWith('.csv'),
    );
    expect(tables.length).toBeGreaterThan(1);
    for (const name of tables)
      for (const cell of readFileSync(join(folder, '_site', name), 'utf8').split(/[,\r\n]+/))
        expect(cell, `${name} in ${dirname(name)}`).not.toMatch(/^"?[=@\t]|^"?[+-](?!\d+(?:\.\d+)?"?$)/);
  });
});
