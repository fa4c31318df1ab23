import type { JSX } from 'preact';
import {
  className,
  dateRows,
  frostIn,
  leadOf,
  planCautions,
  ripeRows,
  seedRows,
  tellsOf,
  whoIn,
} from '../../src/present/plan/sentences.ts';
import type { PlanWords } from '../../src/present/plan/sentences.ts';
import { nameLookup } from '../../src/terms/trial.ts';
import { Table } from '../parts.tsx';
import { BedMap, bedParts, MarkKey } from './bedMap.tsx';
import { planHtml } from './document.tsx';

interface PartProps {
  readonly words: PlanWords;
}

function Dates({ words }: PartProps): JSX.Element {
  const say = words.writing.words.plan;
  const rows = dateRows(words);
  const ripe = ripeRows(words);
  return (
    <section aria-labelledby="dates">
      <h2 id="dates">{say.dates}</h2>
      {rows.length > 0 ? <Table caption={say.datesCaption} head={say.datesHead} rows={rows} /> : <p>{say.noDates}</p>}
      <p>{frostIn(words).join(' ')}</p>
      {ripe.length > 0 ? <Table caption={say.ripe} head={say.ripeHead} rows={ripe} /> : null}
    </section>
  );
}

function Seed({ words }: PartProps): JSX.Element {
  const { plan, trial, writing } = words;
  const say = writing.words.plan;
  const saved = (trial.wishes.get(plan.year) ?? []).filter(({ savesSeed }) => savesSeed).map(({ variety }) => variety);
  return (
    <section aria-labelledby="seed">
      <h2 id="seed">{say.seed}</h2>
      <Table caption={say.seedCaption} head={say.seedHead} rows={seedRows(words)} />
      <p class="m">{say.seedNote}</p>
      {saved.length > 0 ? <p>{say.saving(saved.map(nameLookup(trial.varieties)))}</p> : null}
    </section>
  );
}

function Tasting({ words }: PartProps): JSX.Element | null {
  const { plan, writing } = words;
  const say = writing.words.plan;
  if (!plan.tasting) return null;
  const most = Math.max(...plan.tasting.tasters.map(({ samples }) => samples.length));
  const day = plan.tasting.day === null ? '' : writing.date(plan.tasting.day);
  return (
    <section aria-labelledby="tasting">
      <h2 id="tasting">{say.tasting}</h2>
      <p>{say.tastingText(plan.tasting.tasters.length, say.samples(most), day)}</p>
    </section>
  );
}

/** The plan on one page: who, how many and why; where, when, how much seed; what it can tell. */
export function planPage(words: PlanWords): string {
  const { plan, trial, writing } = words;
  const say = writing.words.plan;
  const title = say.title(String(plan.year));
  return planHtml(
    words,
    title,
    'index',
    <>
      <h1>{title}</h1>
      <p class="lead">{leadOf(words)}</p>
      {planCautions(words).map((text) => (
        <p class="caution">{text}</p>
      ))}
      <p>
        <a href="sheets.html">{say.sheets}</a>
      </p>
      <section aria-labelledby="who">
        <h2 id="who">{say.who}</h2>
        {plan.classes.map((own) => (
          <>
            <h3>{className(words, own.classId)}</h3>
            <ul class="plain">
              {whoIn(own, words).map((text) => (
                <li>{text}</li>
              ))}
            </ul>
          </>
        ))}
      </section>
      <section aria-labelledby="map">
        <h2 id="map">{say.map}</h2>
        {plan.beds.flatMap((bed, b) =>
          bedParts(bed, trial.settings.plan.paper).map((part, i) => (
            <div class="scroll" tabIndex={0} role="group" aria-label={bed.id}>
              <BedMap words={words} part={part} id={`m${b}-${i}`} />
            </div>
          )),
        )}
        <MarkKey words={words} />
      </section>
      <Dates words={words} />
      <Seed words={words} />
      <Tasting words={words} />
      <section aria-labelledby="tells">
        <h2 id="tells">{say.tells}</h2>
        <ul class="plain">
          {tellsOf(words).map((text) => (
            <li>{text}</li>
          ))}
        </ul>
      </section>
      <section aria-labelledby="files">
        <h2 id="files">{say.files}</h2>
        <p>{say.filesText(String(plan.year))}</p>
      </section>
    </>,
  );
}
