// Makes the fixtures of this folder with LibreOffice and Gnumeric (Debian: libreoffice-calc, gnumeric), from one
// sheet of typed cells: node tests/read/spreadsheets/make.mjs. The invented garden has two plantings.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { tmpdir } from 'node:os';

const here = import.meta.dirname;
const work = mkdtempSync(join(tmpdir(), 'keeprow-sheets-'));
const DATES = {
  'en-GB':
    '<number:day number:style="long"/><number:text>/</number:text><number:month number:style="long"/><number:text>/</number:text><number:year number:style="long"/>',
  'en-US':
    '<number:month number:style="long"/><number:text>/</number:text><number:day number:style="long"/><number:text>/</number:text><number:year number:style="long"/>',
  'de-DE':
    '<number:day number:style="long"/><number:text>.</number:text><number:month number:style="long"/><number:text>.</number:text><number:year number:style="long"/>',
};
const text = (value) => `<table:table-cell office:value-type="string"><text:p>${value}</text:p></table:table-cell>`;
const number = (value) =>
  `<table:table-cell table:style-name="num" office:value-type="float" office:value="${value}"/>`;
const count = (value) => `<table:table-cell office:value-type="float" office:value="${value}"/>`;
const date = (value) =>
  `<table:table-cell table:style-name="day" office:value-type="date" office:date-value="${value}"/>`;
const sum = (formula, value) =>
  `<table:table-cell table:style-name="num" table:formula="of:=${formula}" office:value-type="float" office:value="${value}"/>`;
const row = (...cells) => `<table:table-row>${cells.join('')}</table:table-row>`;
const sheet = (name, ...rows) => `<table:table table:name="${name}">${rows.join('')}</table:table>`;

const VARIETIES = sheet(
  'varieties',
  row(text('variety'), text('name')),
  row(text('muehlturm'), text('Mühlturm')),
  row(text('moss-apron'), text('Hill “Torch”, late')),
);
const PLANTINGS = sheet(
  'plantings',
  row(text('planting'), text('variety'), text('plants'), text('transplanted')),
  row(text('süd 1'), text('Mühlturm'), count(1), date('2026-05-20')),
  row(text('süd 2'), text('moss-apron'), count(2), date('2026-05-20')),
);
const HARVESTS = sheet(
  'harvests',
  row(text('date'), text('planting'), text('fruits'), text('weight_g'), text('notes')),
  row(date('2026-08-03'), text('süd 1'), count(3), number(120.5), text('first; ripe, at last | good')),
  row(date('2026-08-13'), text('süd 2'), count(2), sum('[.D2]-30.25', 90.25), text('')),
  row(date('2026-09-01'), text('süd 1'), count(11), number(1234.5), text('“best” day')),
);
const FAULTS = sheet(
  'harvests',
  row(text('date'), text('planting'), text('fruits'), text('weight_g')),
  row(date('2026-08-03'), text('süd 1'), count(3), '<table:table-cell table:formula="of:=1/0"/>'),
  row(date('2026-08-13'), text('süd 9'), count(2), number(90)),
);

function flat(locale, ...sheets) {
  const [language, country] = locale.split('-');
  return `<?xml version="1.0" encoding="UTF-8"?><office:document xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:style="urn:oasis:names:tc:opendocument:xmlns:style:1.0" xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0" xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" xmlns:fo="urn:oasis:names:tc:opendocument:xmlns:xsl-fo-compatible:1.0" xmlns:number="urn:oasis:names:tc:opendocument:xmlns:datastyle:1.0" xmlns:of="urn:oasis:names:tc:opendocument:xmlns:of:1.2" office:version="1.3" office:mimetype="application/vnd.oasis.opendocument.spreadsheet"><office:styles><style:default-style style:family="table-cell"><style:text-properties fo:language="${language}" fo:country="${country}"/></style:default-style></office:styles><office:automatic-styles><number:date-style style:name="D" number:language="${language}" number:country="${country}">${DATES[locale]}</number:date-style><number:number-style style:name="N" number:language="${language}" number:country="${country}"><number:number number:decimal-places="2" number:min-integer-digits="1"/></number:number-style><style:style style:name="day" style:family="table-cell" style:data-style-name="D"/><style:style style:name="num" style:family="table-cell" style:data-style-name="N"/></office:automatic-styles><office:body><office:spreadsheet>${sheets.join('')}</office:spreadsheet></office:body></office:document>`;
}

const office = (file, to) =>
  execFileSync(
    'soffice',
    ['--headless', `-env:UserInstallation=file://${work}/profile`, '--convert-to', to, '--outdir', work, file],
    { stdio: 'ignore' },
  );
const put = (from, to) => renameSync(join(work, from), join(here, to));
for (const name of readdirSync(here)) if (/\.(csv|xlsx|ods)$/.test(name)) rmSync(join(here, name));

for (const locale of Object.keys(DATES)) {
  const source = join(work, `harvests-${locale}.fods`);
  writeFileSync(source, flat(locale, HARVESTS));
  for (const [delimiter, code] of [
    ['comma', 44],
    ['semicolon', 59],
    ['tab', 9],
    ['pipe', 124],
  ]) {
    for (const [encoding, charset] of [
      ['utf-8', 76],
      ['utf-16', 65535],
      ['windows-1252', 1],
    ]) {
      office(source, `csv:Text - txt - csv (StarCalc):${code},34,${charset},1,,0,false,true,false`);
      put(`harvests-${locale}.csv`, `harvests.${locale}.${delimiter}.${encoding}.csv`);
    }
  }
}
const book = join(work, 'season.fods');
writeFileSync(book, flat('de-DE', VARIETIES, PLANTINGS, HARVESTS));
const faults = join(work, 'faults.fods');
writeFileSync(faults, flat('en-GB', VARIETIES, PLANTINGS, FAULTS));
for (const kind of ['xlsx', 'ods']) {
  office(book, kind);
  put(`season.${kind}`, `libreoffice.${kind}`);
  office(faults, kind);
  put(`faults.${kind}`, `faults.${kind}`);
  execFileSync(
    'ssconvert',
    [join(here, 'libreoffice.ods'), join(work, `gnumeric.${kind}`)].map((path, i) =>
      i === 0 && kind === 'xlsx' ? join(here, 'libreoffice.xlsx') : path,
    ),
    { stdio: 'ignore' },
  );
  put(`gnumeric.${kind}`, `gnumeric.${kind}`);
}
// Gnumeric's own table export: its C locale, two encodings, two delimiters.
for (const [delimiter, mark] of [
  ['comma', ','],
  ['semicolon', ';'],
]) {
  for (const encoding of ['UTF-8', 'UTF-16']) {
    const out = join(work, 'gnumeric.csv');
    execFileSync(
      'ssconvert',
      [
        '-T',
        'Gnumeric_stf:stf_assistant',
        '-O',
        `separator='${mark}' charset='${encoding}' format=raw sheet='harvests'`,
        join(here, 'gnumeric.xlsx'),
        out,
      ],
      { stdio: 'ignore' },
    );
    put('gnumeric.csv', `gnumeric.${delimiter}.${encoding.toLowerCase()}.csv`);
  }
}
rmSync(work, { recursive: true, force: true });
