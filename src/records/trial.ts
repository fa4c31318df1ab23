import { foldId } from '../terms/names.ts';
import { openLog, severityOf } from '../terms/problem.ts';
import type { Problem } from '../terms/problem.ts';
import { fileOnly } from '../terms/place.ts';
import type { ClassSettings, Settings } from '../terms/settings.ts';
import type { MeasureTrait } from '../terms/traits.ts';
import type { Season, Trial, Variety } from '../terms/trial.ts';
import { decodeText } from '../read/decode.ts';
import { readSettingsTree } from '../read/settingsTree.ts';
import { dateReader } from '../sheet/cells/dates.ts';
import { reportWindows } from '../sheet/columns.ts';
import type { CheckContext } from '../sheet/context.ts';
import { causesOnly } from './causes.ts';
import { checkContent } from './content.ts';
import type { Content } from './content.ts';
import { listFolder } from './folder.ts';
import type { TrialFiles } from './folder.ts';
import { varietyRegistry } from './registry.ts';
import type { VarietyRegistry } from './registry.ts';
import { sortSeasons } from './rules/ongoing.ts';
import { checkLots } from './rules/lots.ts';
import { checkParents } from './rules/parents.ts';
import { reportNoStart, reportNotRecorded } from './rules/recorded.ts';
import { reportPlantNumbers } from './rules/plantNumbers.ts';
import { reportJoined } from './rules/gardensJoined.ts';
import { reportScores } from './rules/scores.ts';
import { reportSettingsAgainstRecords } from './rules/settingsAgainstRecords.ts';
import { reportWeightAgainstSize, reportWeightsUnlikeSeasons } from './rules/fruitSizes.ts';
import { fruitMeasures, reportMeasures } from './rules/measured.ts';
import { checkSeason, readPlantings } from './season.ts';
import type { SeasonRecords } from './season.ts';
import { takeSettings } from './settings/settings.ts';
import { checkPlans } from './plans.ts';
import { checkGardens, gardenRegistry } from './tables/gardens.ts';
import { checkSeeds } from './tables/seeds.ts';
import { checkVarieties } from './tables/varieties.ts';

export interface CheckedTrial {
  /** Null if there is an error among the problems. */
  readonly trial: Trial | null;
  readonly problems: readonly Problem[];
  readonly content: Content;
  /** Names of the varieties, whether the records have errors or not. */
  readonly varieties: readonly string[];
  /** Settings where they could be read, so that messages can be worded in the trial's language. */
  readonly settings: Settings | null;
}

/** Classes of the settings, then those that only varieties.csv names. */
function withClasses(settings: Settings, varieties: readonly Variety[]): Settings {
  const classes = new Map<string, ClassSettings>(settings.classes);
  for (const { classId } of varieties) {
    if (classes.has(classId)) continue;
    const name = classId === 'all' ? (settings.language.startsWith('de') ? 'Sorten' : 'Varieties') : classId;
    classes.set(classId, {
      id: classId,
      name,
      checkVariety: null,
      spots: null,
      bar: 'newcomer',
      linesCompete: false,
      linePlants: 12,
      sowWeeksBefore: null,
      soilMinC: null,
      places: null,
      newcomers: null,
    });
  }
  return { ...settings, classes };
}

function readSettings(files: TrialFiles, log: CheckContext['log']): Settings | null {
  const source = files.settings;
  if (!source) {
    log.add('missing-settings', fileOnly('data/trial.yaml'));
    return null;
  }
  const decoded = decodeText(source.bytes);
  if (decoded.kind !== 'text') {
    const place =
      decoded.kind === 'not-utf8' ? { file: source.path, line: decoded.line, column: 1 } : fileOnly(source.path);
    log.add(decoded.kind, place);
    return null;
  }
  reportWindows(source.path, decoded.windowsLine, log);
  const tree = readSettingsTree(source.path, decoded.text);
  if (tree.kind === 'fault') {
    log.add('yaml-unreadable', tree.place, '', { detail: tree.detail });
    return null;
  }
  return takeSettings(tree, log);
}

function checkSeasons(files: TrialFiles, registry: VarietyRegistry, context: CheckContext): readonly SeasonRecords[] {
  const drafts = [...files.seasons]
    .filter(([year, tables]) => files.gardens.has(year) || [...tables.keys()].some((name) => name !== 'wishes.csv'))
    .toSorted(([a], [b]) => a - b)
    .map(([year, tables]) => readPlantings(year, tables, files.gardens.get(year) ?? new Map(), registry, context));
  return drafts.map((own) => {
    const elsewhere = new Map<string, number>();
    for (const other of drafts) {
      if (other === own) continue;
      for (const { fields } of [...other.planted, ...other.totalled]) elsewhere.set(foldId(fields.id), other.year);
    }
    return checkSeason(own, elsewhere, registry, context);
  });
}

/** Reports what only the other seasons, or other tables, show to be doubtful. */
function reportBetweenSeasons(
  records: readonly SeasonRecords[],
  registry: VarietyRegistry,
  context: CheckContext,
): void {
  const classOf = (id: string): string => registry.find(id)?.classId ?? 'all';
  reportWeightsUnlikeSeasons(
    records.map(({ weights }) => weights),
    context,
  );
  reportMeasures(
    records.map(({ measures }) => measures),
    classOf,
    context,
  );
  const measure = (key: string): MeasureTrait | null => {
    const trait = context.settings.traits.get(key);
    return trait?.kind === 'measure' ? trait : null;
  };
  for (const { weights, measures } of records) {
    const lengths = fruitMeasures(measures, measure('fruit_length'));
    reportWeightAgainstSize(weights, lengths, fruitMeasures(measures, measure('fruit_width')), context);
  }
}

/** What the tables and settings of a folder hold, its texts and photos aside. */
export interface CheckedRecords {
  /** Null where the settings could not be read; with it nothing else could. */
  readonly settings: Settings | null;
  readonly trial: Trial | null;
  readonly registry: VarietyRegistry;
  readonly seasons: readonly Season[];
  readonly names: readonly string[];
  readonly problems: readonly Problem[];
}

const NONE: Trial['gardens'] = new Map();

/** What is doubtful in a season that is over. */
function reportSeason(
  season: Season,
  varieties: readonly Variety[],
  gardens: Trial['gardens'],
  context: CheckContext,
): void {
  reportNotRecorded(season, context);
  reportNoStart(season, context);
  reportScores(season, context);
  reportJoined(season, varieties, gardens, context);
}

/** What every table is read with. */
function openContext(settings: Settings, gardens: Trial['gardens'] | null, log: CheckContext['log']): CheckContext {
  return {
    log,
    gardens: gardenRegistry(settings.gardens.own, gardens),
    garden: null,
    dates: dateReader([settings.language], settings.dates),
    settings,
    limited: [],
    remarks: [],
    lots: new Map(),
  };
}

/** Reads and checks the tables and settings of a trial folder. */
export function checkRecords(files: TrialFiles): CheckedRecords {
  const log = openLog();
  const settings = files.hasData ? readSettings(files, log) : null;
  if (!settings)
    return {
      settings,
      trial: null,
      registry: varietyRegistry([]),
      seasons: [],
      names: [],
      problems: log.problems(),
    };
  const gardens = files.gardensList ? checkGardens(files.gardensList, { log, limited: [], settings }) : null;
  const bare = openContext(settings, gardens, log);
  const read = files.varieties ? checkVarieties(files.varieties, bare) : [];
  const registry = varietyRegistry(read);
  const lotsRead = files.seeds ? checkSeeds(files.seeds, registry, bare) : bare.lots;
  const context: CheckContext = { ...bare, lots: lotsRead };
  const records = files.varieties ? checkSeasons(files, registry, context) : [];
  const seasons = records.map(({ season }) => season);
  const plans = checkPlans(files, registry, context);
  const varieties = checkParents(registry, seasons, context);
  const lots = checkLots(lotsRead, varieties, seasons, context);
  reportSettingsAgainstRecords(registry, seasons, context);
  reportBetweenSeasons(records, registry, context);
  const { planned, ongoing, over } = sortSeasons(seasons, context);
  reportPlantNumbers(ongoing ? [...over, ongoing] : over, context);
  for (const season of over) reportSeason(season, varieties, gardens ?? NONE, context);
  const complete = withClasses(withCheckIds(settings, registry), varieties);
  return {
    settings,
    trial: { settings: complete, varieties, seasons: over, ongoing, planned, ...plans, lots, gardens: gardens ?? NONE },
    registry,
    seasons,
    names: read.flatMap(({ name, alsoKnownAs }) => [name, ...alsoKnownAs]),
    problems: log.problems(),
  };
}

/**
 * Reads and checks every record of a trial folder.
 *
 * @param files    what was found in the folder
 * @param records  its tables and settings, where they are checked already
 * @returns        the trial, and every problem; no trial if one of them is an error
 */
export function checkTrial(files: TrialFiles, records: CheckedRecords = checkRecords(files)): CheckedTrial {
  const { settings, registry, seasons, names } = records;
  const listed = openLog();
  listFolder(files, listed);
  const log = openLog();
  const content: Content = settings
    ? checkContent(files.content, { registry, seasons, settings, photos: files.photos }, log)
    : new Map();
  const problems = causesOnly([...listed.problems(), ...records.problems, ...log.problems()]);
  const isSound = problems.every((problem) => severityOf(problem) !== 'error');
  return { trial: isSound ? records.trial : null, problems, content, varieties: names, settings };
}

/** Check varieties by their ids, whatever name the settings call them by. */
function withCheckIds(settings: Settings, registry: VarietyRegistry): Settings {
  const classes = new Map(settings.classes);
  for (const [id, own] of classes) {
    const variety = own.checkVariety === null ? null : registry.find(own.checkVariety);
    classes.set(id, { ...own, checkVariety: variety?.id ?? null });
  }
  return { ...settings, classes };
}
