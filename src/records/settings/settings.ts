import { LANGUAGES, languageOf } from '../../terms/languages.ts';
import type { ProblemLog } from '../../terms/problem.ts';
import { dayOf } from '../../terms/day.ts';
import type { SeasonSettings, Settings } from '../../terms/settings.ts';
import type { SettingsNode } from '../../read/settingsTree.ts';
import { takePlan } from './plan.ts';
import { takeClasses } from './classes.ts';
import { takeGoals, takeMust } from './goals.ts';
import {
  below,
  takeDay,
  takeKnown,
  takeLimit,
  takeList,
  takeMap,
  takeNumber,
  takeText,
  takeWord,
  unfit,
} from './take.ts';
import type { Entry, Taking } from './take.ts';
import { takeTraits } from './traits.ts';

const KEYS = [
  'title',
  'place',
  'language',
  'units',
  'dates',
  'interval',
  'degree_days',
  'first_ripe_from',
  'spot_correlation',
  'garden',
  'garden_correlation',
  'gardens',
  'regions',
  'season_end',
  'seasons',
  'classes',
  'traits',
  'goals',
  'must',
  'certainty',
  'frost_c',
  'outcrossing',
  'verdicts',
  'publish',
  'plan',
];
/** A QR code of more is too fine to be read off a handout. */
const LONGEST_URL = 300;
const SEASON_KEYS = ['end', 'sown', 'transplanted', 'look_every', 'layout', 'harvests', 'early_until', 'finished'];

type Entries = ReadonlyMap<string, Entry>;

function takeLanguage(entries: Entries, root: Taking): string {
  const node = entries.get('language')?.node;
  const text = takeText(node, below(root, 'language'));
  if (!node || text === null) return 'en-GB';
  let tag: string | undefined;
  try {
    tag = Intl.getCanonicalLocales(text)[0];
  } catch {
    unfit(node, below(root, 'language'), 'a language tag such as en-GB or de');
    return 'en-GB';
  }
  if (tag !== undefined && languageOf(tag) !== null) return tag;
  root.log.add('language-unknown', node.place, text, { languages: LANGUAGES.join(', ') });
  return 'en-GB';
}

function takeSeasonEnd(entries: Entries, root: Taking): Settings['seasonEnd'] {
  const node = entries.get('season_end')?.node;
  if (!node) return { month: 10, date: 31 };
  const match = node.kind === 'scalar' ? /^(\d{1,2})-(\d{1,2})$/.exec(node.text) : null;
  const [month, date] = [Number(match?.[1]), Number(match?.[2])];
  if (match && dayOf(2024, month, date) !== null) return { month, date };
  unfit(node, below(root, 'season_end'), 'month and day such as 10-31');
  return { month: 10, date: 31 };
}

function takeFinished(node: SettingsNode | undefined, at: Taking): boolean | null {
  const word = takeWord(node, ['yes', 'no'] as const, at);
  return word === null ? null : word === 'yes';
}

function takeSeasons(entries: Entries, root: Taking): ReadonlyMap<number, SeasonSettings> {
  const at = below(root, 'seasons');
  const seasons = new Map<number, SeasonSettings>();
  for (const [key, entry] of takeMap(entries.get('seasons')?.node, at)) {
    const here = below(at, key);
    if (!/^\d{4}$/.test(key)) {
      root.log.add('setting-unfit', entry.place, key, { setting: here.path, expected: 'a year of four digits' });
      continue;
    }
    const own = takeKnown(entry.node, SEASON_KEYS, here);
    const node = (name: string): SettingsNode | undefined => own.get(name)?.node;
    seasons.set(Number(key), {
      end: takeDay(node('end'), below(here, 'end')),
      sown: takeDay(node('sown'), below(here, 'sown')),
      transplanted: takeDay(node('transplanted'), below(here, 'transplanted')),
      lookEvery: takeNumber(node('look_every'), { from: 0, to: 60, whole: true }, below(here, 'look_every')) ?? 7,
      layout: takeWord(node('layout'), ['together', 'spread'] as const, below(here, 'layout')),
      harvestsComplete:
        takeWord(node('harvests'), ['complete', 'partial'] as const, below(here, 'harvests')) === 'complete',
      earlyUntil: takeDay(node('early_until'), below(here, 'early_until')),
      finished: takeFinished(node('finished'), below(here, 'finished')),
    });
  }
  return seasons;
}

function takeDegreeDays(entries: Entries, root: Taking): Settings['degreeDays'] {
  const at = below(root, 'degree_days');
  const own = takeKnown(entries.get('degree_days')?.node, ['base_c', 'cap_c', 'method'], at);
  const baseC = takeNumber(own.get('base_c')?.node, { from: -10, to: 40 }, below(at, 'base_c')) ?? 10;
  const capNode = own.get('cap_c')?.node;
  const hasNoCap = capNode?.kind === 'scalar' && (capNode.value === null || capNode.value === 'none');
  const capC = hasNoCap ? null : (takeNumber(capNode, { from: baseC, to: 60 }, below(at, 'cap_c')) ?? 30);
  const method = takeNumber(own.get('method')?.node, { from: 1, to: 2, whole: true }, below(at, 'method')) ?? 2;
  return { baseC, capC, method: method === 1 ? 1 : 2 };
}

function takeVerdicts(entries: Entries, root: Taking): Settings['verdicts'] {
  const at = below(root, 'verdicts');
  const own = takeKnown(entries.get('verdicts')?.node, ['keep_from', 'drop_below', 'simulations', 'seed'], at);
  const keepFrom = takeNumber(own.get('keep_from')?.node, { from: 0, to: 1 }, below(at, 'keep_from')) ?? 0.8;
  const dropBelow =
    takeNumber(own.get('drop_below')?.node, { from: 0, to: keepFrom }, below(at, 'drop_below')) ??
    Math.min(0.2, keepFrom);
  return {
    keepFrom,
    dropBelow,
    simulations:
      takeNumber(own.get('simulations')?.node, { from: 100, to: 1_000_000, whole: true }, below(at, 'simulations')) ??
      20_000,
    seed: takeNumber(own.get('seed')?.node, { from: 0, to: 2 ** 31 - 1, whole: true }, below(at, 'seed')) ?? 1,
  };
}

function takePublish(entries: Entries, root: Taking): Settings['publish'] {
  const at = below(root, 'publish');
  const own = takeKnown(entries.get('publish')?.node, ['url', 'licence', 'show', 'hide', 'people'], at);
  const urlNode = own.get('url')?.node;
  let url = takeText(urlNode, below(at, 'url'));
  if (url !== null && urlNode && (!/^https?:\/\/[^\s"<>]+$/.test(url) || url.length > LONGEST_URL)) {
    const expected = `an address that begins with https:// and has at most ${LONGEST_URL} characters`;
    unfit(urlNode, below(at, 'url'), expected);
    url = null;
  }
  return {
    url,
    licence: takeText(own.get('licence')?.node, below(at, 'licence')) ?? 'CC-BY-4.0',
    show: takeList(own.get('show')?.node, below(at, 'show')) ?? [],
    hide: takeList(own.get('hide')?.node, below(at, 'hide')) ?? [],
    people: takeWord(own.get('people')?.node, ['codes', 'initials', 'names'] as const, below(at, 'people')) ?? 'codes',
  };
}

/** Seed of foreign pollen in peppers that stand open. @source facts page 2.5: 1.2 to 42 of 100 */
const OUTCROSSING = [['capsicum annuum', [0.012, 0.42]]] as const;

function takeOutcrossing(entries: Entries, root: Taking): Settings['outcrossing'] {
  const at = below(root, 'outcrossing');
  const own = new Map<string, readonly [number, number]>(OUTCROSSING);
  for (const [species, entry] of takeMap(entries.get('outcrossing')?.node, at)) {
    const here = below(at, species);
    const range = takeLimit(entry.node, here);
    if (range === null) continue;
    const [least, most] = typeof range === 'number' ? [range, range] : range;
    if (least < 0 || most > 1) unfit(entry.node, here, 'shares from 0 to 1, such as [0.01, 0.4]');
    else own.set(species.toLowerCase(), [least, most]);
  }
  return own;
}

function takeGardens(entries: Entries, root: Taking): Settings['gardens'] {
  const node = (key: string): SettingsNode | undefined => entries.get(key)?.node;
  const at = below(root, 'gardens');
  const least = takeKnown(node('gardens'), ['least'], at).get('least')?.node;
  return {
    own: takeText(node('garden'), below(root, 'garden')) ?? 'home',
    correlation:
      takeNumber(node('garden_correlation'), { from: 0, to: 0.95 }, below(root, 'garden_correlation')) ?? 0.4,
    least: takeNumber(least, { from: 3, to: 100, whole: true }, below(at, 'least')) ?? 5,
    regions: takeList(node('regions'), below(root, 'regions')) ?? [],
  };
}

/**
 * trial.yaml as settings, every default filled in.
 *
 * @param tree  the file as a tree with places
 * @param log   takes every problem; settings that are wrong fall back to their defaults
 */
export function takeSettings(tree: SettingsNode, log: ProblemLog): Settings {
  const root: Taking = { log, path: '' };
  const entries = takeKnown(tree, KEYS, root);
  const node = (key: string): SettingsNode | undefined => entries.get(key)?.node;
  const title = takeText(node('title'), below(root, 'title'));
  if (!entries.has('title')) log.add('setting-missing', tree.place, '', { setting: 'title' });
  const { classes, scale } = takeClasses(node('classes'), below(root, 'classes'));
  const { traits, ranges, states } = takeTraits(node('traits'), [...classes.keys()], below(root, 'traits'));
  const spot = takeNumber(node('spot_correlation'), { from: 0, to: 0.95 }, below(root, 'spot_correlation'));
  return {
    title: title ?? '',
    place: takeText(node('place'), below(root, 'place')),
    language: takeLanguage(entries, root),
    units: takeWord(node('units'), ['metric', 'us'] as const, below(root, 'units')) ?? 'metric',
    dates: takeWord(node('dates'), ['iso', 'day-first', 'month-first'] as const, below(root, 'dates')) ?? 'iso',
    interval: takeNumber(node('interval'), { from: 0.5, to: 0.999 }, below(root, 'interval')) ?? 0.95,
    degreeDays: takeDegreeDays(entries, root),
    firstRipeFrom:
      takeWord(node('first_ripe_from'), ['transplanted', 'sown'] as const, below(root, 'first_ripe_from')) ??
      'transplanted',
    spotCorrelation: spot ?? 0.2,
    gardens: takeGardens(entries, root),
    seasonEnd: takeSeasonEnd(entries, root),
    seasons: takeSeasons(entries, root),
    scale,
    classes,
    traits,
    ranges,
    states,
    ...takeGoals(node('goals'), classes, traits, states, below(root, 'goals')),
    certainty: takeNumber(node('certainty'), { from: 0.5, to: 0.999 }, below(root, 'certainty')) ?? 0.9,
    frostC: takeNumber(node('frost_c'), { from: -10, to: 10 }, below(root, 'frost_c')) ?? 0,
    outcrossing: takeOutcrossing(entries, root),
    must: takeMust(node('must'), classes, traits, below(root, 'must')),
    verdicts: takeVerdicts(entries, root),
    publish: takePublish(entries, root),
    plan: takePlan(node('plan'), [...classes.keys()], below(root, 'plan')),
  };
}
