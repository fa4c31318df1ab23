import type { JSX } from 'preact';
import { coverageRows } from '../../src/present/words/coverage.ts';
import { keptRows, keptTenths } from '../../src/present/words/kept.ts';
import { methods, settingsRows } from '../../src/present/words/methods.ts';
import type { Page, SiteContent } from '../content.ts';
import { page } from '../page.tsx';
import { Table } from '../parts.tsx';

/** How often the intervals hold the truth. */
function Cover(): JSX.Element {
  return (
    <section>
      <h2 id="coverage">How often the intervals hold</h2>
      <p>
        Random gardens were drawn from known truths, 2,000 a setting with 14 varieties, and the share of 95 % intervals
        that hold the truth was counted, with the share of gardens without any real difference in which letters separate
        something. Where plants stand together and their places differ as much as the plants themselves, the assumed
        spot correlation of 0.2 is too small and the intervals are too narrow; where places do not differ at all, they
        are too wide. At a coefficient of variation of 60 % and few plants they hold in 91 to 93 of 100.
      </p>
      <Table
        caption="Cover of 95 % intervals in per cent, and gardens in which letters separate equal varieties"
        head={['Trait', 'Plants a variety', 'CV of a plant', 'CV of a spot', 'Layout', 'Cover', 'Letters separate']}
        rows={coverageRows}
      />
    </section>
  );
}

/** Whether the shares keep their word, and whether the list pays. */
function Kept(): JSX.Element {
  return (
    <section>
      <h2 id="kept">Whether the shares keep their word</h2>
      <p>
        Gardens were drawn with known truths (yield, flavour and first ripe fruit as goals; 1 to 5 seasons, 5 to 30
        varieties, 1 to 6 plants), advised, and judged by the next season that was then drawn. In the model a variety
        said to earn a spot in 80 of 100 seasons earns it in about 80. Where varieties really differ less than assumed
        and there is one season, shares are too near the middle: what is said to be 65 is then nearer 75, what is said
        to be 15 nearer 9. Where traits pull against each other, or varieties differ much more than assumed, high shares
        promise a little too much.
      </p>
      <Table
        caption="Drawn from the model: shares said and earned, in 100 seasons"
        head={['Share', 'Said / earned']}
        rows={keptTenths.map((cell, i) => [`${i * 10} to ${i * 10 + 10}`, cell])}
      />
      <Table
        caption="Largest distance between said and earned in any tenth; points a spot that the list gives above two simple rules; verdicts in per cent"
        head={[
          'Gardens',
          'Number',
          'Brier score',
          'Largest distance, at shares',
          'Against what beat the check this year',
          'Against the highest means',
          'Keep / try again / no room / drop',
        ]}
        rows={keptRows}
      />
    </section>
  );
}

/** Every method with its formula, source, assumption and limit, and this trial's settings. */
export function methodsPage(content: SiteContent): Page {
  const { settings } = content.trial;
  const all = methods(settings);
  return page(content, 'methods/', 'Methods', () => (
    <>
      <ul>
        {all.map(({ id, title }) => (
          <li>
            <a href={`#${id}`}>{title}</a>
          </li>
        ))}
        <li>
          <a href="#coverage">How often the intervals hold</a>
        </li>
        <li>
          <a href="#kept">Whether the shares keep their word</a>
        </li>
        <li>
          <a href="#settings">Settings of this trial</a>
        </li>
      </ul>
      {all.map(({ id, title, words, formulas, assumes, limits, source }) => (
        <section>
          <h2 id={id}>{title}</h2>
          {words.map((text) => (
            <p dangerouslySetInnerHTML={{ __html: text }} />
          ))}
          {formulas.map((formula) => (
            <p class="formula" dangerouslySetInnerHTML={{ __html: formula }} />
          ))}
          <p class="rest">Assumes: {assumes}</p>
          <p class="rest">Limits: {limits}</p>
          <p class="rest">Source: {source}.</p>
        </section>
      ))}
      <Cover />
      <Kept />
      <section>
        <h2 id="settings">Settings of this trial</h2>
        <Table caption="Settings that the figures rest on" head={['Setting', 'Value']} rows={settingsRows(settings)} />
      </section>
    </>
  ));
}
