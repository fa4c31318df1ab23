import type { Settings } from '../../terms/settings.ts';
import { siteBase } from '../siteBase.ts';
import type { Download } from '../downloadTable.ts';
import { nth } from '../../numerics/element.ts';

/** What a column holds, for machines. */
export type ColumnType = 'string' | 'integer' | 'number' | 'date' | 'year';

const WHOLE = new Set(['n', 'plants', 'fruits', 'unusable_fruits']);
const NUMBERS = new Set(['estimate', 'low', 'high', 'yield_g', 'fruits_per_plant', 'first_ripe', 'weight_g']);
const DATES = new Set(['date', 'transplanted', 'removed']);

/** Type of a column of the downloads, by its name. */
export function columnType(name: string): ColumnType {
  if (name === 'season') return 'year';
  if (DATES.has(name)) return 'date';
  if (WHOLE.has(name)) return 'integer';
  return NUMBERS.has(name) ? 'number' : 'string';
}

/** A licence as its id of the usual list, where it has an address of its own. */
function licenceOf(licence: string): Record<string, string> {
  const cc = /^CC-(BY(?:-SA|-NC|-ND|-NC-SA|-NC-ND)?)-(\d\.\d)$/i.exec(licence);
  if (cc)
    return { name: licence, path: `https://creativecommons.org/licenses/${nth(cc, 1).toLowerCase()}/${nth(cc, 2)}/` };
  if (/^CC0-1\.0$/i.test(licence)) return { name: licence, path: 'https://creativecommons.org/publicdomain/zero/1.0/' };
  return { name: licence };
}

const json = (document: unknown): string => `${JSON.stringify(document, null, 1)}\n`;

/** `datapackage.json`: every table with its columns. @source Data Package and Table Schema, version 2 */
export function dataPackage({ title, place, publish }: Settings, downloads: readonly Download[]): string {
  const slug = title
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  return json({
    $schema: 'https://datapackage.org/profiles/2.0/datapackage.json',
    name: slug === '' ? 'trial' : slug,
    title,
    ...(place === null ? {} : { description: place }),
    ...(publish.url === null ? {} : { homepage: publish.url }),
    licenses: [licenceOf(publish.licence)],
    resources: downloads.map((download) => ({
      name: download.path.replace(/\.csv$/, '').replaceAll('/', '-'),
      title: download.title,
      path: download.path,
      format: 'csv',
      mediatype: 'text/csv',
      encoding: 'utf-8',
      schema: {
        missingValues: [''],
        fields: download.columns.map(([name, description]) => ({ name, type: columnType(name), description })),
      },
    })),
  });
}

const CSVW_TYPES: Readonly<Record<ColumnType, string>> = {
  string: 'string',
  integer: 'integer',
  number: 'double',
  date: 'date',
  year: 'gYear',
};

/** `csv-metadata.json`. @source W3C (2015) Metadata Vocabulary for Tabular Data */
export function csvMetadata({ title, language, publish }: Settings, downloads: readonly Download[]): string {
  return json({
    '@context': ['http://www.w3.org/ns/csvw', { '@language': language }],
    'dc:title': title,
    'dc:license': licenceOf(publish.licence)['path'] ?? publish.licence,
    dialect: { header: true, encoding: 'utf-8', lineTerminators: ['\r\n'] },
    tables: downloads.map((download) => ({
      url: download.path,
      'dc:title': download.title,
      tableSchema: {
        columns: download.columns.map(([name, description]) => ({
          name,
          titles: name,
          datatype: CSVW_TYPES[columnType(name)],
          null: '',
          'dc:description': description,
        })),
      },
    })),
  });
}

/** The data as a Dataset for search engines. @source schema.org Dataset, JSON-LD 1.1 */
export function datasetJson(settings: Settings, downloads: readonly Download[], years: readonly number[]): string {
  const { title, place, language, publish } = settings;
  const base = siteBase(settings) ?? '';
  return JSON.stringify({
    '@context': 'https://schema.org/',
    '@type': 'Dataset',
    name: title,
    description: `${title}: ${years.join(', ')}. ${downloads.map((own) => own.title).join('; ')}.`,
    inLanguage: language,
    license: licenceOf(publish.licence)['path'] ?? publish.licence,
    isAccessibleForFree: true,
    ...(base === '' ? {} : { url: base }),
    ...(place === null ? {} : { spatialCoverage: place }),
    ...(years.length > 0 ? { temporalCoverage: `${years[0]}/${years.at(-1)}` } : {}),
    distribution: downloads.map(({ path, title: name }) => ({
      '@type': 'DataDownload',
      name,
      encodingFormat: 'text/csv',
      contentUrl: `${base}${path}`,
    })),
  });
}

const quoted = (text: string): string => JSON.stringify(text);

/** `CITATION.cff`. @source Citation File Format 1.2.0 */
export function citation({ title, publish }: Settings, years: readonly number[]): string {
  const span = years.length > 1 ? `${years[0]} to ${years.at(-1)}` : String(years[0] ?? '');
  return [
    'cff-version: 1.2.0',
    'message: "If you use these figures, please cite them as below."',
    'type: dataset',
    `title: ${quoted(span === '' ? title : `${title}, ${span}`)}`,
    'authors:',
    `  - name: ${quoted(title)}`,
    ...(publish.url === null ? [] : [`url: ${quoted(publish.url)}`]),
    `license: ${quoted(publish.licence)}`,
    '',
  ].join('\n');
}
