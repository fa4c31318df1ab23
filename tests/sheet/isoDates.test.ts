import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { dateReader } from '../../src/sheet/cells/dates.ts';

// json-schema-test-suite 0.0.10 (MIT; the JSON-Schema-Test-Suite as a package): format "date" of draft 3.
interface Group {
  readonly schema: { readonly format?: string };
  readonly tests: readonly { readonly description: string; readonly data: unknown; readonly valid: boolean }[];
}
const groups = createRequire(import.meta.url)(
  'json-schema-test-suite/tests/draft3/optional/format.json',
) as readonly Group[];
const cases = groups.filter(({ schema }) => schema.format === 'date').flatMap(({ tests }) => tests);
const read = dateReader(['en'], 'iso');

describe('dates of the JSON Schema suite', () => {
  it.each(cases.map((own) => [own.description, own] as const))('%s', (_, { data, valid }) => {
    const { kind } = read(String(data));
    if (valid) expect(kind).toBe('day');
    else expect(kind).not.toBe('day');
  });
  // RFC 3339 full-date with the rules of the calendar: ISO 8601-1 §5.2.2; the suite of that package has few cases.
  it.each([
    ['2020-01-31', true],
    ['2020-01-32', false],
    ['2021-02-28', true],
    ['2021-02-29', false],
    ['2020-02-29', true],
    ['2020-02-30', false],
    ['2020-04-30', true],
    ['2020-04-31', false],
    ['2020-06-31', false],
    ['2020-09-31', false],
    ['2020-11-31', false],
    ['2020-12-31', true],
    ['2020-12-32', false],
    ['2020-13-01', false],
    ['2020-00-10', false],
    ['2020-10-00', false],
    ['1900-02-29', false],
    ['2000-02-29', true],
    ['2020-11-28T23:55', true],
    ['2020-350', false],
    ['98-1-1', false],
    ['1998-1-20', false],
    ['1998-01-1', false],
    ['2013-W01', false],
    ['1963-06-1৪', false],
    ['20230328', false],
    ['2023-W13-2', false],
    ['0000-01-01', false],
    ['+2020-01-01', false],
    ['2020-01-01Z', false],
  ] as const)('%s', (text, isDay) => {
    expect(read(text).kind === 'day').toBe(isDay);
  });
});
