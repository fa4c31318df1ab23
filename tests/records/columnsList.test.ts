import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { TABLES } from '../../src/present/columnsList.ts';
import { EVENT_LIST, SETTING_LIST } from '../../src/present/settingsList.ts';
import { columnsMarkdown } from '../../src/present/columnsText.ts';
import { EVENTS } from '../../src/records/tables/observations.ts';
import { PLANTING_COLUMNS } from '../../src/records/tables/plantings.ts';
import { check } from '../sites/folder.ts';

const columnsOf = (name: string): readonly string[] =>
  TABLES.find((table) => table.name === name)!.entries.map((own) => own.name);

describe('the list of columns', () => {
  it.each(TABLES.map(({ name }) => name))('has no column of %s that check does not know', (name) => {
    const paths: Record<string, string> = {
      varieties: 'varieties.csv',
      gardens: 'gardens.csv',
      sheet: '2026/gardens/g07.csv',
    };
    const path = paths[name] ?? `2026/${name}.csv`;
    const { problems } = check({
      'trial.yaml':
        'title: A\ntraits: {flavour: {kind: rating, from: 1, to: 9, better: higher}, choice: {kind: ranking}}\n',
      'varieties.csv': 'variety\na\n',
      '2026/plantings.csv': 'planting,variety\np1,a\n',
      [path]: `${columnsOf(name).join(',')}\n`,
    });
    const header = problems.filter(({ code }) => /^(?:column|header|unit)-/.test(code));
    expect(header).toEqual([]);
  });

  it('has every column of plantings, every event, every setting', () => {
    expect(columnsOf('plantings')).toEqual(expect.arrayContaining([...PLANTING_COLUMNS]));
    expect(EVENT_LIST.map(({ name }) => name)).toEqual([...EVENTS]);
    const { problems } = check({ 'trial.yaml': 'title: A\nnothing_of_the_kind: 1\n', 'varieties.csv': 'variety\na\n' });
    expect(problems.map(({ code }) => code)).toContain('setting-unknown');
    const known = SETTING_LIST.map(({ name }) => name);
    const source = readFileSync(new URL('../../src/records/settings/settings.ts', import.meta.url), 'utf8');
    const keys = /const KEYS = \[([^\]]*)\]/
      .exec(source)![1]!
      .match(/'[a-z_]+'/g)!
      .map((key) => key.slice(1, -1));
    expect(known.toSorted()).toEqual(keys.toSorted());
  });

  it('is the one beside the demo’s data', () => {
    const written = readFileSync(new URL('../../data/COLUMNS.md', import.meta.url), 'utf8');
    expect(written).toBe(columnsMarkdown());
  });
});
