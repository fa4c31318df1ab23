import { formulasOf } from '../../src/present/words/formulas.ts';
import { isOfClub } from '../../src/terms/gardens.ts';
import { addresses } from '../../src/terms/addresses.ts';
import type { JSX } from 'preact';
import { coverageRows } from '../../src/present/words/coverage.ts';
import type { Words } from '../../src/present/words/en/index.ts';
import { lineRows } from '../../src/present/words/lineRows.ts';
import { keptRows, keptTenths } from '../../src/present/words/kept.ts';
import type { Page, FrameContent } from '../content.ts';
import { page } from '../page.tsx';
import { Table } from '../parts.tsx';

type Say = { readonly say: Words['methods'] };

/** How often the intervals hold the truth. */
function Cover({ say: { cover } }: Say): JSX.Element {
  return (
    <section>
      <h2 id="coverage">{cover.title}</h2>
      <p>{cover.text}</p>
      <Table
        caption={cover.caption}
        head={cover.head}
        rows={coverageRows.map((row) => row.map((cell) => cover.values[cell] ?? cell))}
      />
    </section>
  );
}

/** Whether the shares keep their word, and whether the list pays. */
function Kept({ say: { kept } }: Say): JSX.Element {
  return (
    <section>
      <h2 id="kept">{kept.title}</h2>
      <p>{kept.text}</p>
      <Table
        caption={kept.tenthsCaption}
        head={kept.tenthsHead}
        rows={keptTenths.map((cell, i) => [`${i * 10}–${i * 10 + 10}`, cell])}
      />
      <Table
        caption={kept.caption}
        head={kept.head}
        rows={keptRows.map(([name = '', ...cells]) => [kept.gardens[name] ?? name, ...cells])}
      />
    </section>
  );
}

/** Whether forecasts for crosses keep their word. */
function Crosses({ say: { lineForecasts: forecasts } }: Say): JSX.Element {
  return (
    <section>
      <h2 id="crosses">{forecasts.title}</h2>
      <p>{forecasts.text}</p>
      <Table
        caption={forecasts.caption}
        head={forecasts.head}
        rows={lineRows.map(([name, cell]) => [forecasts.rules[name] ?? name, cell])}
      />
    </section>
  );
}

/** Every method with its formula, source, assumption and limit, and this trial's settings. */
export function methodsPage(content: FrameContent): Page {
  const { settings } = content.trial;
  const { methods: say } = content.writing.words;
  const level = `${content.writing.number(settings.interval * 100)} %`;
  // What only a club of several gardens has to know stands on no other trial's page.
  const all = say
    .all(settings)
    .filter(({ id }) => id !== 'gardens' || content.seasons.some(({ season }) => isOfClub(season)));
  const contents = [
    ...all.map(({ id, title }) => [id, title] as const),
    ['coverage', say.cover.title] as const,
    ['kept', say.kept.title] as const,
    ['crosses', say.lineForecasts.title] as const,
    ['settings', say.settingsTitle] as const,
  ];
  return page(content, addresses.methods, say.title, () => (
    <>
      <ul>
        {contents.map(([id, title]) => (
          <li>
            <a href={`#${id}`}>{title}</a>
          </li>
        ))}
      </ul>
      {all.map(({ id, title, words, assumes, limits, source }) => (
        <section>
          <h2 id={id}>{title}</h2>
          {words.map((text) => (
            <p dangerouslySetInnerHTML={{ __html: text }} />
          ))}
          {formulasOf(id, settings, level, say.formulas).map((formula) => (
            <p class="formula" dangerouslySetInnerHTML={{ __html: formula }} />
          ))}
          <div class="rest beside">
            <p>
              {say.assumes}: {assumes}
            </p>
            <p>
              {say.limits}: {limits}
            </p>
            <p>
              {say.source}: {source}.
            </p>
          </div>
        </section>
      ))}
      <Cover say={say} />
      <Kept say={say} />
      <Crosses say={say} />
      <section>
        <h2 id="settings">{say.settingsTitle}</h2>
        <Table caption={say.settingsCaption} head={[say.setting, say.value]} rows={say.settings(settings)} />
      </section>
    </>
  ));
}
