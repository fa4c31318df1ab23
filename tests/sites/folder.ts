import { blockProblems } from '../../src/analyse/blocks.ts';
import { sortFiles } from '../../src/records/folder.ts';
import { checkTrial } from '../../src/records/trial.ts';
import type { CheckedTrial } from '../../src/records/trial.ts';
import { compareSeason } from '../../src/analyse/compareSeason.ts';
import type { SeasonComparisons } from '../../src/analyse/compareSeason.ts';
import { seasonSeen } from '../../src/analyse/seen.ts';
import type { SeasonSeen } from '../../src/analyse/seen.ts';
import { adviseNextSeason } from '../../src/decide/nextSeason.ts';
import type { NextSeason } from '../../src/decide/nextSeason.ts';
import { problemText } from '../../src/present/problems.ts';

/** A trial folder held in memory: paths below data/ and their text. */
export type Folder = Readonly<Record<string, string>>;

/** The folder with its last season said to be over, unless its settings speak of it. */
function withLastOver(folder: Folder): Folder {
  const text = folder['trial.yaml'];
  const year = Object.keys(folder).reduce((last, path) => Math.max(last, Number(/^\d{4}/.exec(path)?.[0] ?? 0)), 0);
  const isCut = (text?.split('"').length ?? 1) % 2 === 0;
  if (text === undefined || year === 0 || isCut || text.includes('finished')) return folder;
  const own = new RegExp(`(seasons:[^#]*?${year}: \\{)`);
  const edited = own.test(text)
    ? text.replace(own, '$1finished: yes, ')
    : /^seasons: \{/m.test(text)
      ? text.replace(/^seasons: \{/m, `seasons: {${year}: {finished: yes}, `)
      : /^seasons:\n/m.test(text)
        ? text.replace(/^seasons:\n/m, `seasons:\n  ${year}: {finished: yes}\n`)
        : `${text.replace(/\n?$/, '\n')}seasons: {${year}: {finished: yes}}\n`;
  return { ...folder, 'trial.yaml': edited };
}

/**
 * Reads a folder held in memory.
 *
 * @param asItIs  true for a folder whose last season may go on; else it is taken as over
 */
export function check(folder: Folder, asItIs = false): CheckedTrial {
  const found = Object.entries(asItIs ? folder : withLastOver(folder)).map(([path, text]) => ({
    path: path.startsWith('../') ? path.slice(3) : `data/${path}`,
    bytes: new TextEncoder().encode(text),
  }));
  const checked = checkTrial(sortFiles(found, [], true));
  return { ...checked, problems: [...checked.problems, ...(checked.trial ? blockProblems(checked.trial) : [])] };
}

/** Codes of the problems of a folder with their first place. */
export function codes(folder: Folder): readonly string[] {
  return check(folder).problems.map(
    ({ code, places: [place] }) =>
      `${code} ${place?.file.replace('data/', '')}:${place?.line ?? '-'}:${place?.column ?? '-'}`,
  );
}

/** Comparisons of the last season of a folder without errors. */
export function comparedIn(folder: Folder): SeasonComparisons {
  const { trial } = check(folder);
  return compareSeason(trial!, seenIn(folder));
}

/** What was seen in the last season of a folder without errors. */
export function seenIn(folder: Folder): SeasonSeen {
  const { trial, problems } = check(folder);
  if (!trial) throw new Error(problems.map((problem) => problemText(problem)).join('\n'));
  return seasonSeen(trial, trial.seasons.at(-1)!);
}

/** Advice on the season after the last of a folder without errors. */
export function advisedIn(folder: Folder): NextSeason {
  const { trial, problems } = check(folder);
  if (!trial) throw new Error(problems.map((problem) => problemText(problem)).join('\n'));
  return adviseNextSeason(
    trial,
    trial.seasons.map((season) => seasonSeen(trial, season)),
  );
}
