import { CHANCES } from '../../decide/lines/offspring.ts';
import type { PlantAdvice } from '../../decide/lines/carry.ts';
import type { CrossReport } from '../../decide/lines/crossReport.ts';
import { nth } from '../../numerics/element.ts';
import { traitFacts } from '../../terms/traits.ts';
import type { TraitFacts } from '../../terms/traits.ts';
import { nameLookup } from '../../terms/trial.ts';
import type { Writing } from '../numbers.ts';
import { generationName, namedIn, of100 } from './crossWords.ts';
import type { CrossSection, CrossSource } from './crossWords.ts';
import { geneSentences, odds } from './geneSentences.ts';

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
  const names = advice.carry.map((plant) => namedIn(report, plant));
  const each = Math.max(1, Math.floor(advice.linePlants / names.length));
  const carry = say.carry(listed(names.map(say.thePlant)), String(each), names.length === 1);
  return `${still} ${carry}`.trim();
}

/** Wanted states as they are read: `dark, purple`. */
function wantedText({ traits }: CrossReport): string {
  return traits
    .flatMap(({ genes, seen }) => (genes?.good ? [genes.good.map((state) => nth(seen, state)).join('/')] : []))
    .join(', ');
}

function nextSentences({ report, writing }: CrossSource): readonly string[] {
  const { lines: say } = writing.words;
  const { advice, traits } = report;
  if (!advice) return [];
  const wanted = traits.filter(({ genes }) => genes?.good);
  const own = advice.plants.filter(({ plant, wanted: forecast }) => forecast !== null && advice.carry.includes(plant));
  const sentences = own.flatMap(({ plant, wanted: forecast }) => {
    if (!forecast) return [];
    const name = say.thePlant(namedIn(report, plant));
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
  if (advice.asGood.length > 1) sentences.push(say.asGood(String(Math.max(...advice.asGood))));
  return sentences;
}

function uniformSentences({ report, writing }: CrossSource): readonly string[] {
  const { lines: say } = writing.words;
  const { number } = writing;
  // Where a quarter or more differs there is no rest to differ from.
  const isOld = (report.newest?.generation ?? 0) >= 4;
  const counted = report.offTypes
    .filter(({ k, n }) => 4 * k <= n)
    .map(({ trait, k, n, atMost, allowed }) =>
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
  return [
    ...counted,
    ...(counted.length > 0 && isOld ? [say.twentyPass] : []),
    ...spread,
    ...(varies ? [say.oneOutlier] : []),
  ];
}

/** A difference of the working scale as people read it: 12 % more, or so many units. */
function changeText(
  value: number,
  { scale, unit }: Pick<TraitFacts, 'scale' | 'unit'>,
  none: string,
  writing: Writing,
): string {
  const sign = value < 0 ? '−' : '+';
  const size =
    scale === 'log' ? writing.percent(Math.abs(Math.exp(value) - 1), 0) : writing.quantity(Math.abs(value), unit);
  return /[1-9]/.test(size.split('(')[0] ?? size) ? `${sign}${size}` : none;
}

/** What a plant is expected to pass on of its deviation from its sisters. */
export function passedOnText(advice: PlantAdvice, trait: string, { report, trial, writing }: CrossSource): string {
  const value = advice.passedOn.get(trait);
  if (value === undefined) return '';
  const { scale, unit } = traitFacts(trait, trial.settings.traits);
  // Days as days: what is passed on above the sisters’ mean.
  const spread = report.spreads.find((own) => own.trait === trait);
  if (unit !== 'd' || !spread) return changeText(value, { scale, unit }, writing.words.lines.alike, writing);
  const days = Math.exp(spread.mean + value) - Math.exp(spread.mean);
  return changeText(days, { scale: 'plain', unit }, writing.words.lines.alike, writing);
}

function responseSentences({ report, trial, writing }: CrossSource): readonly string[] {
  const name = nameLookup(trial.varieties);
  return report.responses.map(({ trait, estimate, low, high, check }) => {
    const { scale, unit } = traitFacts(trait, trial.settings.traits);
    const text = (value: number): string => changeText(value, { scale, unit }, writing.words.lines.unchanged, writing);
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
