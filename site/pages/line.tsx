import type { JSX } from 'preact';
import { addresses, wordsOf } from '../../src/terms/addresses.ts';
import { isHot } from '../../src/analyse/summaries.ts';
import type { CrossAdvice, PlantAdvice } from '../../src/decide/lines/carry.ts';
import type { CrossReport } from '../../src/decide/lines/crossReport.ts';
import { crossSections, leadOf, passedOnText } from '../../src/present/pages/lines.ts';
import { generationName, of100, namedIn } from '../../src/present/pages/crossWords.ts';
import { crossCautions } from '../../src/present/pages/crossCautions.ts';
import type { CrossSource } from '../../src/present/pages/crossWords.ts';
import { plantFruits } from '../../src/present/pages/plantFruit.ts';
import { remarksOf } from '../../src/present/pages/remarks.ts';
import { traitFacts } from '../../src/terms/traits.ts';
import { FruitPicture } from '../bench/fruit.tsx';
import { Pedigree } from '../bench/pedigree.tsx';
import type { Page, CrossContent, WrittenContent } from '../content.ts';
import { to } from '../layout.tsx';
import { page, Words } from '../page.tsx';
import { Table } from '../parts.tsx';
import { Remarks } from './written.tsx';

/** Fruit longer than this, cm, is drawn at half the scale. */
const LONG = 16;

/** What was seen of a plant, and what is expected of its offspring, in columns apart. */
function plantCells(own: PlantAdvice, source: CrossSource): readonly string[] {
  const { report, trial, writing } = source;
  const { lines: say } = writing.words;
  const { plant, best, wanted } = own;
  const seen = report.spreads.map(({ trait, values }) => {
    const value = values.get(plant.planting.id);
    return value === undefined ? '' : writing.quantity(value, traitFacts(trait, trial.settings.traits).unit);
  });
  const breeds = report.traits.map(({ trait }) => {
    const chance = own.trueFor.get(trait.key);
    return chance === null || chance === undefined ? '' : say.of100(of100(chance));
  });
  const passed = report.spreads.filter(({ share }) => share !== null);
  return [
    namedIn(report, plant),
    ...report.traits.map(({ trait }) => plant.states.get(trait.key) ?? ''),
    ...seen,
    plant.lots.map(({ id }) => id).join(', '),
    ...breeds,
    ...passed.map(({ trait }) => passedOnText(own, trait, source)),
    wanted ? say.of100(of100(wanted.share)) : '',
    best ? say.of100(of100(best.amongThree)) : '',
  ];
}

interface PlantsProps {
  readonly content: CrossContent;
  readonly source: CrossSource;
  readonly advice: CrossAdvice;
}

/** The plants' fruit side by side, each by its own measures; null where none was measured. */
function PlantShelf({ content: { seasons }, source, advice }: PlantsProps): JSX.Element | null {
  const { report, trial, writing } = source;
  const { lines: say } = writing.words;
  const fruits = plantFruits(
    advice.plants.map(({ plant }) => plant),
    seasons,
    trial,
  );
  if (fruits.length === 0) return null;
  const worn = [...new Set(fruits.flatMap(({ colourOf }) => colourOf ?? []))].map((trait) => writing.trait(trait));
  const longest = Math.max(...fruits.map(({ fruit }) => fruit.length));
  return (
    <figure class={longest > LONG ? 'crossfruit small' : 'crossfruit'}>
      <ul class="bench2">
        {fruits.map(({ plant, fruit }) => (
          <li>
            <span class="stand">
              <FruitPicture fruit={fruit} id={`plant-${plant.planting.id}`} />
            </span>
            <span class="nm">
              {namedIn(report, plant)}
              <br />
              {[...plant.states.values()].join(', ')}
            </span>
          </li>
        ))}
      </ul>
      <figcaption class="m">{say.fruits(writing.words.listed(worn))}</figcaption>
    </figure>
  );
}

function Plants({ content, source, advice }: PlantsProps): JSX.Element {
  const { report, writing } = source;
  const { lines: say, capital } = writing.words;
  const name = (trait: string): string => capital(writing.trait(trait));
  const head = [
    say.plant,
    ...report.traits.map(({ trait }) => name(trait.key)),
    ...report.spreads.map(({ trait }) => say.seen(name(trait))),
    say.seedSaved,
    ...report.traits.map(({ trait }) => say.trueFor(name(trait.key))),
    ...report.spreads.filter(({ share }) => share !== null).map(({ trait }) => say.expectedOf(name(trait))),
    say.wantedShare,
    say.bestOf,
  ];
  const rows = advice.plants.map((own) => plantCells(own, source));
  // A column of which nothing is known is left out.
  const isFilled = (i: number): boolean => i === 0 || rows.some((row) => row[i] !== '');
  const year = String(advice.plants[0]?.plant.year ?? '');
  return (
    <section aria-labelledby="plants">
      <h2 id="plants">{say.plantByPlant}</h2>
      <PlantShelf content={content} source={source} advice={advice} />
      <Table
        caption={say.seenIn(generationName(advice.family, writing), year)}
        head={head.filter((_, i) => isFilled(i))}
        rows={rows.map((row) => row.filter((_, i) => isFilled(i)))}
        foot={report.spreads.some(({ share }) => share !== null) ? [say.atMost] : []}
      />
    </section>
  );
}

function Notes({ content, report }: { readonly content: CrossContent; readonly report: CrossReport }): JSX.Element {
  const { trial } = content;
  const ids = new Set<string>(report.cross.families.map(({ variety }) => variety.id));
  const notes = trial.seasons.flatMap((season) => remarksOf(season, trial).filter(({ variety }) => ids.has(variety)));
  return <Remarks content={content} notes={notes} isPlain={() => false} />;
}

/** A cross from generation to generation: what its plants showed, and which to go on with. */
export function linePage(content: CrossContent & WrittenContent, report: CrossReport): Page {
  const { trial, writing, seasons } = content;
  const { lines: say } = writing.words;
  const source: CrossSource = { report, trial, writing };
  const { cross, advice } = report;
  const hot = (id: string): boolean => {
    const variety = trial.varieties.find((own) => own.id === id);
    return variety !== undefined && isHot(variety, seasons, trial);
  };
  return page(content, addresses.line(cross.id), say.title(cross.name), (root) => (
    <>
      <p class="lead">{leadOf(source)}</p>
      {crossCautions(source, hot).map((text) => (
        <p class="caution">{text}</p>
      ))}
      <Pedigree content={content} report={report} />
      {advice ? <Plants content={content} source={source} advice={advice} /> : null}
      {crossSections(source).map(({ id, title, sentences, margin }) => (
        <section aria-labelledby={id}>
          <h2 id={id}>{title}</h2>
          <p>{sentences.join(' ')}</p>
          {margin === '' ? null : <p class="m">{margin}</p>}
        </section>
      ))}
      {cross.families.map(({ variety }) => (
        <Words html={content.words.get(wordsOf.variety(variety.id))} root={root} />
      ))}
      <Notes content={content} report={report} />
      <ul class="plain">
        {cross.families.map(({ variety }) => (
          <li>
            <a href={to(root, addresses.variety(variety.id))}>{variety.name}</a>
          </li>
        ))}
        {advice ? (
          <li>
            <a href={to(root, addresses.lineSheet(cross.id))}>{say.sheet}</a>
          </li>
        ) : null}
      </ul>
    </>
  ));
}

/** The plants of a cross as a list to take into the garden, and labels for the packets of seed saved from them. */
export function lineSheetPage(content: CrossContent, report: CrossReport, advice: CrossAdvice): Page {
  const { trial, writing } = content;
  const { lines: say, capital } = writing.words;
  const { cross, traits } = report;
  const isOfCross = (id: string | null): boolean => cross.families.some(({ variety }) => variety.id === id);
  const lots = trial.lots.filter(
    ({ variety, from }) => isOfCross(variety) || from.some((own) => isOfCross(own.variety)),
  );
  const head = [say.plant, ...traits.map(({ trait }) => capital(writing.trait(trait.key))), say.seedSaved];
  return page(
    content,
    addresses.lineSheet(cross.id),
    say.sheetTitle(cross.name),
    () => (
      <>
        <table>
          <caption>{generationName(advice.family, writing)}</caption>
          <thead>
            <tr>
              {head.map((text) => (
                <th scope="col">{text}</th>
              ))}
            </tr>
          </thead>
          <tbody>
            {advice.plants.map(({ plant }) => (
              <tr>
                <th scope="row">{plant.planting.id}</th>
                {traits.map(({ trait }) => (
                  <td>{plant.states.get(trait.key) ?? ''}</td>
                ))}
                <td>{plant.lots.map(({ id }) => id).join(', ')}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <div class="labels">
          {lots.map((lot) => (
            <p>
              <b>{lot.id}</b>
              <br />
              {lot.from.map(({ season, planting }) => `${season}/${planting}`).join(', ')}
              <br />
              {lot.saved === null ? '' : `${say.label.saved} ${writing.date(lot.saved)}`}
              <br />
              {`${say.label.pollination}: ${say.pollination[lot.pollination]}`}
            </p>
          ))}
        </div>
      </>
    ),
    { isSheet: true },
  );
}
