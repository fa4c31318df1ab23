import type { CrossTrait } from '../../analyse/lines/crossGenes.ts';
import type { CrossFamily, CrossPlant } from '../../analyse/lines/crosses.ts';
import { breedsTrue } from '../../analyse/lines/geneModels.ts';
import { CHANCES } from '../../decide/lines/carry.ts';
import type { PlantAdvice } from '../../decide/lines/carry.ts';
import type { CrossReport } from '../../decide/lines/crossReport.ts';
import { nth } from '../../numerics/element.ts';
import { isKeptPure } from '../../terms/lines.ts';
import { traitFacts } from '../../terms/traits.ts';
import { nameLookup } from '../../terms/trial.ts';
import type { Trial } from '../../terms/trial.ts';
import type { Writing } from '../numbers.ts';

/** A share as a whole number of 100, never 0 or 100. */
export const of100 = (share: number): string => String(Math.min(99, Math.max(1, Math.round(100 * share))));

/** A cross with what it is worded with. */
export interface CrossSource {
  readonly report: CrossReport;
  readonly trial: Trial;
  readonly writing: Writing;
}

/** A section of a cross's page: its heading and sentences; empty ones are left out. */
export interface CrossSection {
  readonly id: string;
  readonly title: string;
  readonly sentences: readonly string[];
  /** What belongs in the margin. */
  readonly margin: string;
}

/** `F3`, `BC1`; the family's name where its generation is not known. */
export function generationName({ variety, generation }: CrossFamily, { words }: Writing): string {
  if (variety.isBackcross) return words.lines.backcross;
  return generation === null ? variety.name : words.lines.generation(String(generation));
}

/** What a plant is called on the page: the end of its id where its family's id is before it. */
export function plantName({ planting }: CrossPlant): string {
  const { id, variety } = planting;
  if (String(id) === variety) return '1';
  return id.startsWith(`${variety}-`) ? id.slice(variety.length + 1) : id;
}

/** `6 dark, 2 green`, in the order of the settings. */
export function countsText(counts: ReadonlyMap<string, number> | undefined, states: readonly string[]): string {
  return states
    .flatMap((state) => ((counts?.get(state) ?? 0) > 0 ? [`${counts?.get(state)} ${state}`] : []))
    .join(', ');
}

const percentOf = (writing: Writing, share: number): string =>
  writing.percent(Math.min(0.99, Math.max(0.01, share)), 0);

/** The one sentence at the top. */
export function leadOf({ report, writing }: CrossSource): string {
  const { lines: say, listed } = writing.words;
  const { advice, mixed, newest } = report;
  if (!newest) return say.nothingToChoose;
  const g = generationName(newest, writing);
  const still =
    mixed === null
      ? ''
      : mixed.most === null
        ? say.mixed(g, percentOf(writing, mixed.selfed))
        : say.mixedUpTo(g, percentOf(writing, mixed.selfed), percentOf(writing, mixed.most));
  if (!advice || advice.carry.length === 0) return still;
  const names = advice.carry.map(plantName);
  const each = Math.max(1, Math.floor(advice.linePlants / names.length));
  const carry = say.carry(
    listed(names.map((name) => `${say.plant.toLowerCase() === 'plant' ? 'plant' : say.plant} ${name}`)),
    String(each),
    names.length === 1,
  );
  return `${still} ${carry}`.trim();
}

function odds(trait: CrossTrait, writing: Writing): string {
  const { lines: say } = writing.words;
  if (!trait.genes) return '';
  const byRatio = new Map<string, number>();
  for (const { ratio, share } of trait.genes.posterior.models) byRatio.set(ratio, (byRatio.get(ratio) ?? 0) + share);
  byRatio.set(say.noneOfThese, trait.genes.posterior.other.share);
  const list = [...byRatio].toSorted(([, a], [, b]) => b - a).map(([name, share]) => `${name} ${of100(share)}`);
  return `${writing.words.capital(writing.trait(trait.trait.key))}. ${say.margin(list.join(', '))}`;
}

function geneSentences({ report, writing }: CrossSource, own: CrossTrait): readonly string[] {
  const { lines: say, listed } = writing.words;
  const name = writing.trait(own.trait.key);
  const counted = new Map(own.seen.map((state, i) => [state, own.f2Counts?.[i] ?? 0]));
  if (!own.genes) {
    const all = new Map<string, number>();
    for (const { counts } of report.cross.families)
      for (const [state, n] of counts.get(own.trait.key) ?? []) all.set(state, (all.get(state) ?? 0) + n);
    return [say.countsOnly(name, countsText(all, own.trait.states))];
  }
  const sentences: string[] = [];
  if (own.ratios && own.f2Counts) {
    const [best, ...others] = own.ratios;
    // The commoner state comes first, in the counts as in the ratio.
    const order = own.seen.map((_, i) => i).toSorted((a, b) => nth(own.f2Counts ?? [], b) - nth(own.f2Counts ?? [], a));
    const states = order.map((i) => nth(own.seen, i));
    const counts = `${writing.words.capital(name)}: ${countsText(counted, states)}`;
    const named = best && order.map((i) => nth(best.parts, i)).join(':');
    const rest = others.length === 0 ? '' : say.moreRatios(String(others.length));
    sentences.push(named ? say.ratio(counts, named, rest) : say.noRatio(counts));
    if (others.length > 0 && own.f2Counts.reduce((sum, n) => sum + n, 0) < 30) sentences.push(say.moreSeedlings);
  }
  const { pedigree, posterior, paths } = own.genes;
  const told = report.cross.families
    .flatMap(({ plants }) => plants)
    .filter((plant) => plant.lots.length > 0 || plant.year === report.newest?.years.at(-1))
    .flatMap((plant) => {
      const state = plant.states.get(own.trait.key);
      const path = paths.get(plant);
      if (state === undefined || !path) return [];
      return [{ plant, state, chance: breedsTrue(pedigree, posterior, path, [own.seen.indexOf(state)]) }];
    });
  // Plants that are alike in what is said of them share a sentence.
  const groups = new Map<string, CrossPlant[]>();
  for (const { plant, state, chance } of told) {
    const key = `${plant.planting.variety}|${state}|${of100(chance)}`;
    groups.set(key, [...(groups.get(key) ?? []), plant]);
  }
  for (const [key, plants] of groups) {
    const [, state = '', chance = ''] = key.split('|');
    const family = report.cross.families.find(({ plants: all }) => plants[0] !== undefined && all.includes(plants[0]));
    const g = family ? generationName(family, writing) : '';
    sentences.push(say.breeds(listed(plants.map(plantName)), g, state, chance, plants.length === 1));
    const open = plants.filter(({ lots }) => lots.some(({ pollination }) => !isKeptPure(pollination)));
    if (open.length > 0) sentences.push(say.unlessCrossed(listed(open.map(plantName))));
  }
  return sentences;
}

/** Wanted states as they are read: `dark, purple`. */
function wantedText({ traits }: CrossReport): string {
  return traits
    .flatMap(({ genes, seen }) => (genes?.good ? [genes.good.map((state) => nth(seen, state)).join('/')] : []))
    .join(', ');
}

function nextSentences({ report, writing }: CrossSource): readonly string[] {
  const { lines: say, listed } = writing.words;
  const { advice, traits } = report;
  if (!advice) return [];
  const wanted = traits.filter(({ genes }) => genes?.good);
  const own = advice.plants.filter(({ plant, wanted: forecast }) => forecast !== null && advice.carry.includes(plant));
  const sentences = own.flatMap(({ plant, wanted: forecast }) => {
    if (!forecast) return [];
    const name = `${say.plant} ${plantName(plant)}`;
    const list = CHANCES.map((chance, i) => {
      const n = forecast.plants[i] ?? null;
      return n === null ? say.notWithAny(of100(chance)) : say.neededFor(of100(chance), String(n));
    });
    const all = list.filter((text, i) => i === 0 || text !== list[i - 1]);
    return [
      say.nextPlants(name, wantedText(report), String(advice.linePlants), of100(forecast.chance)),
      say.needed(name, all.join(', ')),
    ];
  });
  if (advice.carry.length > 1 && advice.chance !== null)
    sentences.push(say.split(String(advice.linePlants), String(advice.carry.length), of100(advice.chance)));
  if (sentences.length > 0 && wanted.length > 1) sentences.push(say.ifUnlinked);
  if (advice.asGood.length > 1) sentences.push(say.asGood(listed(advice.asGood.map(String))));
  return sentences;
}

function uniformSentences({ report, writing }: CrossSource): readonly string[] {
  const { lines: say } = writing.words;
  const { number } = writing;
  const counted = report.offTypes.map(({ trait, k, n, atMost, allowed }) =>
    say.offTypes(
      writing.words.capital(writing.trait(trait)),
      String(k),
      String(n),
      percentOf(writing, atMost),
      String(allowed),
    ),
  );
  const spread = report.spreads.map(({ trait, ratio }) => {
    const name = writing.words.capital(writing.trait(trait));
    return ratio
      ? say.spread(name, number(ratio.ratio, 1), number(ratio.low, 1), number(ratio.high, 1), ratio.low > 1)
      : say.noFixed(name);
  });
  const varies = report.spreads.some(({ ratio }) => ratio !== null && ratio.low > 1);
  return [...counted, ...(counted.length > 0 ? [say.twentyPass] : []), ...spread, ...(varies ? [say.oneOutlier] : [])];
}

/** A difference of the working scale as people read it: 12 % more, or so many units. */
function changeText(value: number, isLog: boolean, unit: string, writing: Writing): string {
  const sign = value < 0 ? '−' : '+';
  const size = isLog ? writing.percent(Math.abs(Math.exp(value) - 1), 0) : writing.quantity(Math.abs(value), unit);
  return /[1-9]/.test(size.split('(')[0] ?? size) ? `${sign}${size}` : writing.words.lines.alike;
}

/** What a plant is expected to pass on of its deviation from its sisters. */
export function passedOnText(advice: PlantAdvice, trait: string, { report, trial, writing }: CrossSource): string {
  const value = advice.passedOn.get(trait);
  if (value === undefined) return '';
  const { isLog, unit } = traitFacts(trait, trial.settings.traits);
  // Days as days: what is passed on above the sisters’ mean.
  const spread = report.spreads.find((own) => own.trait === trait);
  if (unit !== 'd' || !spread) return changeText(value, isLog, unit, writing);
  return changeText(Math.exp(spread.mean + value) - Math.exp(spread.mean), false, unit, writing);
}

function responseSentences({ report, trial, writing }: CrossSource): readonly string[] {
  const name = nameLookup(trial.varieties);
  return report.responses.map(({ trait, estimate, low, high, check }) => {
    const { isLog, unit } = traitFacts(trait, trial.settings.traits);
    const text = (value: number): string => changeText(value, isLog, unit, writing);
    const title = writing.words.capital(writing.trait(trait));
    return writing.words.lines.gained(title, text(estimate), text(low), text(high), name(check));
  });
}

/** Sections of a cross's page that are sentences; those without any are left out. */
export function crossSections(source: CrossSource): readonly CrossSection[] {
  const { report, writing } = source;
  const { lines: say } = writing.words;
  const generation = report.newest?.generation ?? 2;
  const outlook = report.outlook
    ? [say.outlooks[report.outlook], generation >= 4 ? say.choose.between : say.choose.within]
    : [];
  const sections: readonly CrossSection[] = [
    {
      id: 'genes',
      title: say.genes,
      sentences: report.traits.flatMap((own) => geneSentences(source, own)),
      margin: report.traits
        .map((own) => odds(own, writing))
        .filter((text) => text !== '')
        .join(' '),
    },
    { id: 'next', title: say.next, sentences: nextSentences(source), margin: '' },
    { id: 'uniform', title: say.uniform, sentences: uniformSentences(source), margin: '' },
    { id: 'response', title: say.response, sentences: responseSentences(source), margin: '' },
    { id: 'outlook', title: say.outlook, sentences: outlook, margin: '' },
  ];
  const told = sections.filter(({ sentences }) => sentences.length > 0);
  // A young line with one trait gets a paragraph, not a heading for each sentence.
  const isSmall = report.traits.length <= 1 && report.spreads.length === 0;
  if (!isSmall || told.length < 2) return told;
  const sentences = told.flatMap((own) => own.sentences);
  return [{ id: 'told', title: say.told, sentences, margin: told.map((own) => own.margin).join('') }];
}
