import type { JSX } from 'preact';
import { effectiveMothers } from '../../src/analyse/lines/generations.ts';
import type { SowingDates } from '../../src/analyse/seed/sowing.ts';
import { fallShort, lotCells } from '../../src/present/pages/seed.ts';
import type { SeedContent } from '../../src/present/pages/seed.ts';
import { of100 } from '../../src/present/pages/crossWords.ts';
import { addresses } from '../../src/terms/addresses.ts';
import type { Page, CrossContent } from '../content.ts';
import { page } from '../page.tsx';
import { Table } from '../parts.tsx';

/** When the soil is warm enough for a class, in one sentence; null where nothing is known of it. */
function soilText({ classId, warm }: SowingDates, { trial, writing }: CrossContent): string | null {
  if (!warm) return null;
  const { lines: say, listed } = writing.words;
  const name = trial.settings.classes.get(classId)?.name ?? classId;
  const least = writing.quantity(warm.least, '°C', 0);
  const dates = warm.dates.map(({ chance, day }) => say.seed.byThen(of100(1 - chance), writing.date(day)));
  return dates.length > 0
    ? say.seed.soil(name, least, listed(dates))
    : say.seed.soilSeen(name, least, listed(warm.seen.map(({ day }) => writing.date(day))));
}

function Dates({ content, seed }: { readonly content: CrossContent; readonly seed: SeedContent }): JSX.Element | null {
  const { trial, writing } = content;
  const { seed: say } = writing.words.lines;
  const [some] = seed.dates;
  if (!some) return null;
  const rows = seed.dates.flatMap(({ classId, dates }) =>
    dates.map(({ chance, out, sow }) => [
      trial.settings.classes.get(classId)?.name ?? classId,
      writing.words.lines.of100(of100(chance)),
      writing.date(out),
      sow === null ? '' : writing.date(sow),
    ]),
  );
  const seen = some.seen.map(({ day }) => writing.date(day)).join(', ');
  return (
    <section aria-labelledby="dates">
      <h2 id="dates">{say.dates}</h2>
      {rows.length > 0 ? (
        <Table caption={say.datesNote} head={say.datesHead} rows={rows} />
      ) : (
        <p>{seen === '' ? say.noneSeen : say.few(seen)}</p>
      )}
      {seed.dates.map((own) => {
        const text = soilText(own, content);
        return text === null ? null : <p>{text}</p>;
      })}
    </section>
  );
}

/** Seed put by: how old, how well it comes up, how many to sow, and when. */
export function seedPage(content: CrossContent, seed: SeedContent): Page {
  const { trial, writing } = content;
  const { seed: say } = writing.words.lines;
  const ready = seed.lots.filter(({ act }) => act === 'sow').length;
  return page(content, addresses.seed, say.title, () => (
    <>
      <p class="lead">{say.lead(String(seed.lots.length), String(ready), String(fallShort(seed).length))}</p>
      {seed.lots.some(({ lot }) => lot.isTreated) ? <p class="caution">{say.treated}</p> : null}
      <Table caption={say.caption} head={say.head} rows={seed.lots.map((own) => lotCells(own, writing))} />
      <p class="m">{say.certainty(writing.percent(trial.settings.certainty, 0))}</p>
      <Dates content={content} seed={seed} />
      <section aria-labelledby="saving">
        <h2 id="saving">{say.saving}</h2>
        <p>
          {say.savingText}{' '}
          {seed.lots
            .filter(({ lot }) => lot.from.length > 1)
            .map(({ lot }) => {
              const shares = lot.from.map(() => 1 / lot.from.length);
              return say.mothers(lot.id, String(lot.from.length), writing.number(effectiveMothers(shares), 0));
            })
            .join(' ')}
        </p>
      </section>
    </>
  ));
}
