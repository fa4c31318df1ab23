import type { ComponentChildren, JSX } from 'preact';
import type { PlannedRow } from '../../src/decide/plan/planned.ts';
import { dayWriting } from '../../src/present/pages/days.ts';
import { lookDays, todoOf } from '../../src/present/plan/sentences.ts';
import type { PlanWords } from '../../src/present/plan/sentences.ts';
import { nameLookup } from '../../src/terms/trial.ts';
import { BedMap, bedParts, MarkKey } from './bedMap.tsx';
import { planHtml } from './document.tsx';

interface SheetProps {
  readonly words: PlanWords;
}

const DAYS = 8;
const MEASURES = 2;

/** A printed sheet with its heading. */
function Sheet({ title, children }: { readonly title: string; readonly children: ComponentChildren }): JSX.Element {
  return (
    <section class="sheetpage">
      <h2>{title}</h2>
      {children}
    </section>
  );
}

const placeOf = ({ spot }: PlannedRow): string => (spot ? `${spot.bed.id} ${spot.row}:${spot.column}` : '');

/** A table to fill in: what stands at the left, and empty columns. */
function Blank({
  head,
  rows,
  empty,
}: {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly empty: readonly string[];
}): JSX.Element {
  return (
    <table class={head.length + empty.length > 8 ? 'blank many' : 'blank'}>
      <thead>
        <tr>
          {[...head, ...empty].map((text) => (
            <th scope="col">{text}</th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(([first, ...cells]) => (
          <tr>
            <th scope="row">{first}</th>
            {cells.map((text) => (
              <td>{text}</td>
            ))}
            {empty.map(() => (
              <td class="fill"></td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Maps({ words }: SheetProps): JSX.Element {
  const { plan, trial, writing } = words;
  const say = writing.words.plan;
  const all = plan.beds.flatMap((bed) => bedParts(bed, trial.settings.plan.paper));
  return (
    <Sheet title={say.map}>
      <MarkKey words={words} />
      {all.map((part, i) => (
        <BedMap words={words} part={part} id={`s${i}`} />
      ))}
    </Sheet>
  );
}

/** Room of a printed side within its margins, mm. */
const ROOM = { A4: [186, 273], Letter: [192, 255] } as const;

/** Labels in a grid with hairlines, two a plant: for the pot and for its place. */
function Labels({ words }: SheetProps): JSX.Element {
  const { plan, trial, writing } = words;
  const say = writing.words.plan;
  const name = nameLookup(trial.varieties);
  const { paper, labelMm } = trial.settings.plan;
  const [width, height] = labelMm;
  const across = Math.max(1, Math.floor(ROOM[paper][0] / width));
  const down = Math.max(1, Math.floor(ROOM[paper][1] / height));
  const labels = plan.rows.flatMap((row) => [say.label.pot, say.label.place].map((kind) => ({ row, kind })));
  const sides = Array.from({ length: Math.ceil(labels.length / (across * down)) }, (_, i) =>
    labels.slice(i * across * down, (i + 1) * across * down),
  );
  return (
    <>
      {sides.map((side) => (
        <section class="sheetpage labelside">
          <div
            class={width < 50 || height < 18 ? 'labelgrid tiny' : 'labelgrid'}
            style={`--w:${width}mm;--h:${height}mm;--n:${across}`}
          >
            {side.map(({ row, kind }) => (
              <p>
                <b>{name(row.variety)}</b>
                <br />
                {row.id}
                <br />
                {placeOf(row)} · {plan.year} · {kind}
              </p>
            ))}
          </div>
        </section>
      ))}
    </>
  );
}

function Picking({ words }: SheetProps): JSX.Element {
  const { plan, writing } = words;
  const say = writing.words.plan;
  return (
    <Sheet title={say.picking}>
      <p class="s">{say.pickingNote}</p>
      <Blank
        head={say.pickingHead}
        rows={plan.rows.map((row) => [row.id, placeOf(row)])}
        empty={Array.from({ length: DAYS }, () => '')}
      />
    </Sheet>
  );
}

function Looks({ words }: SheetProps): JSX.Element {
  const { plan, writing } = words;
  const say = writing.words.plan;
  const short = dayWriting(words.trial.settings).short;
  const days = lookDays(words).slice(0, DAYS).map(short);
  return (
    <Sheet title={say.looks}>
      {days.length > 0 ? <p class="s">{say.looksNote}</p> : null}
      <Blank
        head={say.looksHead.slice(0, 2)}
        rows={plan.rows.map((row) => [row.id, placeOf(row)])}
        empty={[...say.looksHead.slice(2, 4), ...days, ...say.looksHead.slice(4)]}
      />
    </Sheet>
  );
}

function Measuring({ words }: SheetProps): JSX.Element | null {
  const { plan, trial, writing } = words;
  const say = writing.words.plan;
  const traits = [...trial.settings.traits].flatMap(([key, trait]) =>
    trait.kind === 'measure' ? [`${writing.words.capital(writing.trait(key))} (${trait.unit})`] : [],
  );
  const states = [...trial.settings.states.keys()].map((key) => writing.words.capital(writing.trait(key)));
  const columns = [...traits.flatMap((text) => Array.from({ length: MEASURES }, () => text)), ...states];
  if (columns.length === 0) return null;
  return (
    <Sheet title={say.measuring}>
      <Blank head={say.pickingHead} rows={plan.rows.map((row) => [row.id, placeOf(row)])} empty={columns} />
    </Sheet>
  );
}

function Ballots({ words }: SheetProps): JSX.Element | null {
  const { plan, trial, writing } = words;
  const say = writing.words.plan;
  if (!plan.tasting) return null;
  const traits = [...trial.settings.traits].flatMap(([key, trait]) =>
    trait.kind === 'rating' ? [`${writing.words.capital(writing.trait(key))}, ${trait.from}–${trait.to}`] : [],
  );
  return (
    <>
      {plan.tasting.tasters.map(({ name, samples }) => (
        <Sheet title={say.ballot(name)}>
          <Blank
            head={say.ballotHead}
            rows={samples.map(({ order, code }) => [String(order), code])}
            empty={[...traits, say.again]}
          />
        </Sheet>
      ))}
    </>
  );
}

function Checklist({ words }: SheetProps): JSX.Element {
  const { writing } = words;
  return (
    <Sheet title={writing.words.plan.checklist}>
      <ul class="todo">
        {todoOf(words).map(({ day, text }) => (
          <li>
            <b>{writing.date(day)}</b> {text}
          </li>
        ))}
      </ul>
    </Sheet>
  );
}

/** Which code is which variety, on a sheet of its own. */
function Key({ words }: SheetProps): JSX.Element | null {
  const { plan, trial, writing } = words;
  const say = writing.words.plan;
  if (!plan.tasting) return null;
  const codes = new Map(
    plan.tasting.tasters.flatMap(({ samples }) => samples.map(({ code, variety }) => [code, variety])),
  );
  return (
    <Sheet title={say.key}>
      <Blank
        head={say.keyHead}
        rows={[...codes]
          .toSorted(([a], [b]) => (a < b ? -1 : 1))
          .map(([code, id]) => [code, nameLookup(trial.varieties)(id)])}
        empty={[]}
      />
    </Sheet>
  );
}

/** All sheets to print: maps, labels, picking, looks, measuring, ballots, what to do when; the key of the tasting last. */
export function sheetsPage(words: PlanWords): string {
  const { plan, writing } = words;
  const say = writing.words.plan;
  const title = `${say.title(String(plan.year))}: ${say.sheets}`;
  return planHtml(
    words,
    title,
    'sheets',
    <>
      <h1 class="screen">{title}</h1>
      <Maps words={words} />
      <Checklist words={words} />
      <Labels words={words} />
      <Picking words={words} />
      <Looks words={words} />
      <Measuring words={words} />
      <Ballots words={words} />
      <Key words={words} />
    </>,
  );
}
