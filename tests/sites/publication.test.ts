import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { decodeQR } from 'qr/decode.js';
import sharp from 'sharp';
import { beforeAll, describe, expect, it } from 'vitest';
import { seasonSeen } from '../../src/analyse/seen.ts';
import { checkTrial } from '../../src/records/trial.ts';
import { readFolder } from '../../src/main/readFolder.ts';
import { command, copyOfDemo as demo } from './demoFolder.ts';

const build = (folder: string, ...more: readonly string[]) =>
  spawnSync(process.execPath, [command, 'build', folder, ...more], { encoding: 'utf8' });
const folderOf = (name: string): string => mkdtempSync(join(tmpdir(), `keeprow-${name}-`));

function filesOf(site: string): readonly string[] {
  return readdirSync(site, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));
}

/** A folder from paths and texts. */
function write(folder: string, files: Readonly<Record<string, string>>): string {
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(join(folder, path, '..'), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  return folder;
}

interface Schema {
  readonly type?: string;
  readonly description?: string;
  readonly 'x-unit'?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly additionalProperties?: Schema | boolean;
  readonly items?: Schema;
  readonly anyOf?: readonly Schema[];
}

/** The schema without room for fields that it does not name. */
function closed(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(closed);
  if (value === null || typeof value !== 'object') return value;
  const own = Object.fromEntries(Object.entries(value).map(([key, deeper]) => [key, closed(deeper)]));
  return 'properties' in own && own['type'] === 'object' ? { ...own, additionalProperties: false } : own;
}

describe('what the demo publishes', () => {
  let folder: string;
  let site: string;
  beforeAll(() => {
    folder = demo();
    site = join(folder, '_site');
    const built = build(folder, '--quiet');
    if (built.status !== 0) throw new Error(built.stderr);
  });
  const text = (path: string): string => readFileSync(join(site, path), 'utf8');

  it('has results that fit their schema, and no field that it does not name', () => {
    const schema = closed(JSON.parse(text('results.schema.json'))) as object;
    const validate = new Ajv2020({ allErrors: true, strict: false }).compile(schema);
    validate(JSON.parse(text('results.json')));
    expect(validate.errors ?? []).toEqual([]);
  });
  it('says of every field what it means, and of every number its unit', () => {
    const silent: string[] = [];
    const walk = (own: Schema, path: string): void => {
      if (own.type === 'number' || own.type === 'integer' || own.anyOf?.some(({ type }) => type === 'number'))
        if (!own['x-unit']) silent.push(`${path}: unit`);
      for (const [key, field] of Object.entries(own.properties ?? {})) {
        if (!field.description) silent.push(`${path}/${key}`);
        walk(field, `${path}/${key}`);
      }
      for (const deeper of [own.items, typeof own.additionalProperties === 'object' ? own.additionalProperties : null])
        if (deeper) walk(deeper, `${path}/*`);
      for (const one of own.anyOf ?? []) if (one.properties || one.items) walk(one, path);
    };
    walk(JSON.parse(text('results.schema.json')) as Schema, '');
    expect(silent).toEqual([]);
  });
  it('has tables described column by column, twice', () => {
    const packaged = JSON.parse(text('datapackage.json')) as {
      resources: { path: string; schema: { fields: { name: string; type: string }[] } }[];
    };
    const web = JSON.parse(text('csv-metadata.json')) as {
      tables: { url: string; tableSchema: { columns: { name: string }[] } }[];
    };
    expect(packaged.resources.map(({ path }) => path)).toEqual(web.tables.map(({ url }) => url));
    expect(packaged.resources.length).toBeGreaterThan(5);
    packaged.resources.forEach(({ path, schema }, i) => {
      const [header, ...rows] = text(path).trimEnd().split('\r\n');
      expect(schema.fields.map(({ name }) => name)).toEqual(header!.split(','));
      expect(web.tables[i]!.tableSchema.columns.map(({ name }) => name)).toEqual(header!.split(','));
      const numbers = schema.fields.flatMap(({ type }, c) => (type === 'number' || type === 'integer' ? [c] : []));
      for (const row of rows.filter((line) => !line.includes('"'))) {
        const cells = row.split(',');
        for (const c of numbers) expect(cells[c]).toMatch(/^(?:-?\d+(?:\.\d+)?(?:e-?\d+)?)?$/);
      }
    });
  });
  it('reads its own tables back without loss of what is published', async () => {
    const again = folderOf('again');
    write(again, {
      'data/trial.yaml': readFileSync(join(folder, 'data/trial.yaml'), 'utf8'),
      // A line's seed came from plantings of other seasons, which are not in this folder.
      'data/varieties.csv': readFileSync(join(folder, 'data/varieties.csv'), 'utf8').replaceAll(
        /20\d\d\/[a-z0-9-]+/g,
        '',
      ),
      'data/2026/plantings.csv': text('2026/plantings.csv'),
      'data/2026/harvests.csv': text('2026/harvests.csv'),
    });
    const seen = async (path: string) => {
      const { trial, problems } = checkTrial(await readFolder(path));
      expect(
        problems.filter(
          ({ code }) =>
            ![
              'column-unknown',
              'season-setting-unused',
              'line-without-generation',
              'from-unknown',
              'treated-lot',
              'lot-undated',
              'season-planned',
            ].includes(code),
        ),
      ).toEqual([]);
      return seasonSeen(trial!, trial!.seasons.at(-1)!);
    };
    const [here, there] = [await seen(folder), await seen(again)];
    expect(there.yields.size).toBe(here.yields.size);
    for (const [id, own] of here.yields) {
      const back = there.yields.get(id)!;
      expect([back.cullFruits, back.fruits]).toEqual([own.cullFruits, own.fruits]);
      expect(back.grams!).toBeCloseTo(own.grams!, 6);
    }
  });
  it('has a feed and a sitemap with stable addresses, and a citation', () => {
    const ids = [...text('feed.xml').matchAll(/<id>([^<]+)<\/id>/g)].map(([, id]) => id);
    expect(ids).toEqual(
      ['', '2026/', '2025/', '2024/', '2023/'].map((page) => `https://marrowdale.example/trial/${page}`),
    );
    expect(text('feed.xml')).toContain('<updated>2026-10-24T00:00:00Z</updated>');
    const mapped = [...text('sitemap.xml').matchAll(/<loc>https:\/\/marrowdale\.example\/trial\/([^<]*)<\/loc>/g)];
    for (const [, address] of mapped) expect(existsSync(join(site, address!, 'index.html'))).toBe(true);
    expect(mapped.length).toBeGreaterThan(35);
    expect(text('CITATION.cff')).toContain('license: "CC-BY-4.0"');
  });
  it('names one licence everywhere', () => {
    expect(text('data/index.html')).toContain('CC-BY-4.0');
    expect(text('datapackage.json')).toContain('"name": "CC-BY-4.0"');
    expect(text('csv-metadata.json')).toContain('https://creativecommons.org/licenses/by/4.0/');
    expect(text('data/index.html')).toContain('"license":"https://creativecommons.org/licenses/by/4.0/"');
  });
  it('has a QR code that says the address of the site', async () => {
    const svg = /<svg[^>]*viewBox="0 0 \d+ \d+"[^>]*aria-label="https[^>]*>.*?<\/svg>/s.exec(
      text('2026/handout/index.html'),
    )![0];
    const { data, info } = await sharp(Buffer.from(svg))
      .resize(400, 400, { kernel: 'nearest' })
      .ensureAlpha()
      .raw()
      .toBuffer({ resolveWithObject: true });
    expect(decodeQR({ width: info.width, height: info.height, data: new Uint8Array(data) })).toBe(
      'https://marrowdale.example/trial/',
    );
  });
  it('has a picture for links of the usual size', async () => {
    const { width, height, format } = await sharp(join(site, 'og.png')).metadata();
    expect([width, height, format]).toEqual([1200, 630, 'png']);
  });
});

describe('what is not meant to be published', () => {
  it('appears in no byte of the site: 20 planted strings', () => {
    const secret = (i: number): string => `zq${i}xsecret`;
    const folder = write(folderOf('private'), {
      'data/trial.yaml': `title: Private\ntraits: {taste: {kind: rating, from: 1, to: 9, better: higher}}\nseasons: {2026: {transplanted: 2026-05-20, harvests: complete}}\npublish: {show: [], people: codes}\n# ${secret(0)}\n`,
      'data/varieties.csv': `variety,source,notes,${secret(1)},price\na,${secret(2)},${secret(3)},${secret(4)},${secret(5)}\nb,${secret(6)},${secret(7)},,\n`,
      'data/2026/plantings.csv': `planting,variety,notes,${secret(8)},neighbour\np1,a,${secret(9)},${secret(10)},${secret(11)}\np2,a,${secret(12)},,\np3,b,,,${secret(13)}\n`,
      'data/2026/harvests.csv': `date,planting,fruits,weight_g,picked_by\n2026-08-01,p1,3,300,${secret(14)}\n2026-08-02,p2,3,320,${secret(15)}\n2026-08-03,p3,3,200,\n`,
      'data/2026/observations.csv': `date,planting,event,notes\n2026-07-01,p1,${secret(16)},${secret(17)}\n`,
      'data/2026/ratings.csv': `date,taster,variety,taste\n2026-09-01,${secret(18)},a,7\n2026-09-01,${secret(19)},a,6\n2026-09-01,${secret(18)},b,5\n2026-09-01,${secret(19)},b,4\n`,
    });
    const built = build(folder);
    expect(built.stdout).not.toContain(' error ');
    expect(built.status).toBe(0);
    const found = filesOf(join(folder, '_site')).flatMap((file) => {
      const bytes = readFileSync(file, 'latin1');
      return Array.from({ length: 20 }, (_, i) => secret(i))
        .filter((own) => bytes.includes(own))
        .map((own) => `${file}: ${own}`);
    });
    expect(found).toEqual([]);
  });

  it('leaves nothing of the place and camera in ten photos', async () => {
    const folder = demo();
    mkdirSync(join(folder, 'content/photos'), { recursive: true });
    const names: string[] = [];
    for (let i = 0; i < 10; i++) {
      const name = `bed ${i}.jpg`;
      names.push(name);
      const plain = sharp({
        create: { width: 900 + 100 * i, height: 600, channels: 3, background: { r: 40, g: 90 + i, b: 30 } },
      });
      const exif = {
        IFD0: { Make: 'zqcamera', ImageDescription: 'zqgarden gate' },
        IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1', GPSLongitudeRef: 'W', GPSLongitude: '0/1 7/1 0/1' },
      };
      await plain
        .jpeg()
        .withExif(exif)
        .toFile(join(folder, 'content/photos', name));
    }
    const source = readFileSync(join(folder, 'content/photos', names[0]!), 'latin1');
    expect(source).toContain('zqcamera');
    writeFileSync(
      join(folder, 'content/seasons/2026.md'),
      names.map((name) => `![A bed in August](<photos/${name}>)`).join('\n\n'),
    );
    const built = build(folder);
    expect(built.status).toBe(0);
    const made = filesOf(join(folder, '_site/photos'));
    expect(made.length).toBeGreaterThanOrEqual(20);
    for (const file of made) {
      const { exif, xmp, iptc } = await sharp(file).metadata();
      expect([exif, xmp, iptc]).toEqual([undefined, undefined, undefined]);
      expect(readFileSync(file, 'latin1')).not.toMatch(/zqcamera|zqgarden|GPS/);
    }
    const html = readFileSync(join(folder, '_site/2026/index.html'), 'utf8');
    expect(
      html.match(/<img src="\.\/\.\.\/photos\/bed-\d\.jpg" width="\d+" height="\d+" alt="A bed in August"/g),
    ).toHaveLength(10);
    // The first photo in a variety's words stands at the top of its page, once, and in the lists.
    const own = readFileSync(join(folder, '_site/varieties/wren-hill/index.html'), 'utf8');
    expect(own.match(/<img [^>]*alt="Drawing: four Wren Hill[^"]*"/g)).toHaveLength(1);
    expect(own).toMatch(/<figure class="photo">/);
    const list = readFileSync(join(folder, '_site/varieties/index.html'), 'utf8');
    expect(list).toContain('photos/wren-hill-basket-small.webp');
    expect(existsSync(join(folder, '_site/photos/wren-hill-basket-small.webp'))).toBe(true);
  });
});

describe('an address once published', () => {
  const varieties = (ids: readonly (readonly [id: string, former: string])[]): string =>
    `variety,former_ids\n${ids.map(([id, former]) => `${id},${former}`).join('\n')}\n`;
  const totals = (ids: readonly string[]): string =>
    `variety,plants,again\n${ids.map((id, i) => `${id},3,${i % 2 ? 'yes' : 'no'}`).join('\n')}\n`;

  it('stays through five seasons and twenty renames', () => {
    const folder = write(folderOf('renames'), { 'data/trial.yaml': 'title: Renames\n' });
    let names: readonly (readonly [string, string])[] = Array.from({ length: 4 }, (_, i) => [`v${i}`, ''] as const);
    const addresses = new Set<string>();
    for (let season = 0; season < 5; season++) {
      if (season > 0) {
        const letters = 'abcde';
        names = names.map(
          ([id, former]) => [`${id.slice(0, 2)}${letters[season]}`, [former, id].filter(Boolean).join(';')] as const,
        );
      }
      // A fifth variety of the season, renamed in the same winter: four and one renames make five a season.
      names = [...names, [`w${season}x`, `w${season}`] as const];
      const ids = names.map(([id]) => id);
      write(folder, {
        'data/varieties.csv': varieties(names),
        ...Object.fromEntries(
          Array.from({ length: season + 1 }, (_, s) => [`data/${2021 + s}/totals.csv`, totals(ids)]),
        ),
      });
      const built = build(folder);
      expect(built.stdout).not.toContain('error address-lost');
      expect(built.status).toBe(0);
      for (const file of filesOf(join(folder, '_site')))
        if (file.endsWith('index.html')) addresses.add(file.slice(join(folder, '_site').length));
    }
    expect(addresses.size).toBeGreaterThan(35);
    const dead = [...addresses].filter((address) => !existsSync(join(folder, '_site', address)));
    expect(dead).toEqual([]);
    expect(readFileSync(join(folder, '_site/varieties/v0/index.html'), 'utf8')).toContain('url=../v0e/index.html');
  });

  it('is not dropped unless told', () => {
    const folder = write(folderOf('lost'), {
      'data/trial.yaml': 'title: Lost\n',
      'data/varieties.csv': 'variety\na\nb\n',
      'data/2026/totals.csv': totals(['a', 'b']),
    });
    expect(build(folder, '--quiet').status).toBe(0);
    const before = readFileSync(join(folder, '_site/index.html'), 'utf8');
    write(folder, { 'data/varieties.csv': 'variety\na\nc\n', 'data/2026/totals.csv': totals(['a', 'c']) });
    const refused = build(folder);
    expect(refused.status).toBe(1);
    expect(refused.stdout).toMatch(/data\/addresses\.csv:\d+:1 error address-lost/);
    expect(refused.stdout).toContain('/varieties/b/');
    expect(readFileSync(join(folder, '_site/index.html'), 'utf8')).toBe(before);
    expect(build(folder, '--quiet', '--drop-addresses').status).toBe(0);
    expect(readFileSync(join(folder, 'data/addresses.csv'), 'utf8')).not.toContain('/varieties/b/');
    rmSync(folder, { recursive: true });
  });
});

describe('the grower’s words', () => {
  const season = (
    words: string,
  ): { readonly status: number | null; readonly stdout: string; readonly html: string } => {
    const folder = demo();
    writeFileSync(join(folder, 'content/seasons/2026.md'), words);
    const { status, stdout } = build(folder);
    const page = join(folder, '_site/2026/index.html');
    return { status, stdout, html: existsSync(page) ? readFileSync(page, 'utf8') : '' };
  };
  it('carry live figures that are the page’s own', () => {
    const { status, html } = season(
      'Quarry Bell gave {yield of quarry-bell in 2026} and ripened after {first ripe of Quarry Bell in 2026}.\n\nWren Hill: {verdict of wren-hill}, {share of wren-hill}, {expected flavour of wren-hill}.\n\n{chart yield of sweet in 2026}\n',
    );
    expect(status).toBe(0);
    const words = /<div class="words">(.*?)<\/div><p class="rest"/s.exec(html)![1]!.replace(/<[^>]*>/g, '');
    const row = html.slice(html.indexOf('<table class="mx">'));
    const figure = /Quarry Bell<\/a>.*?<span class="val num">(.*?)<i>/s
      .exec(row)![1]!
      .replace(/<[^>]*>/g, '')
      .trim();
    expect(words).toContain(`gave ${figure} and ripened after`);
    expect(words).toMatch(/Wren Hill: keep, 9\d of 100, \d\.\d \(\d\.\d to \d\.\d\)\./);
    expect(html).toContain('<figure id="live-yield-sweet">');
  });
  it('name what is wrong in them, with the place and a near name', () => {
    const { status, stdout } = season('One.\n\nIt gave {yield of quary-bell in 2026} and {flavor of quarry-bell}.\n');
    expect(status).toBe(1);
    expect(stdout).toContain('content/seasons/2026.md:3:9 error live-unknown');
    expect(stdout).toContain('quarry-bell, perhaps');
    expect(stdout).toContain('content/seasons/2026.md:3:43 error live-unknown');
    expect(stdout).toContain('flavour, perhaps');
  });
  it('need words for every photo, and the photo', () => {
    const { status, stdout } = season('![](photos/gate.jpg)\n');
    expect(status).toBe(1);
    expect(stdout).toContain('content/seasons/2026.md:1:1 error photo-without-text');
    expect(stdout).toContain('content/seasons/2026.md:1:1 error photo-missing');
  });
  it('let no HTML, script or script link through', () => {
    const { html } = season('<script>alert(1)</script> <b onclick="x">b</b> [a](javascript:alert(1)) {nothing}\n');
    expect(html).toContain('&lt;script&gt;alert(1)&lt;/script&gt;');
    expect(html).not.toMatch(/<b onclick|href="javascript/);
  });
});
