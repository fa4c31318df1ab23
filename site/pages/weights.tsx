import { addresses } from '../../src/terms/addresses.ts';
import type { JSX } from 'preact';
import type { ClassCase } from '../../src/decide/cases.ts';
import type { WeightsRow } from '../../src/present/nextSeason/weights.ts';
import type { NextContent, Page, FrameContent } from '../content.ts';
import { page } from '../page.tsx';

/** A step of the slider on which the club's own weight lies: else the browser would round it. */
function stepOf(weight: number): string {
  const step = [0.5, 0.1, 0.01].find((one) => Math.abs(weight / one - Math.round(weight / one)) < 1e-9);
  return step === undefined ? 'any' : String(step);
}

interface Part {
  readonly content: FrameContent;
  readonly own: ClassCase;
  readonly name: string;
}

/** The class's weights and spots to be moved; shown by the script. */
function WeightsForm({ content, own, name }: Part): JSX.Element {
  const { words, number, trait } = content.writing;
  const say = words.yourWeights;
  return (
    <fieldset>
      <legend>{say.class(name)}</legend>
      {own.goals.map((goal) => (
        <div class="weight">
          <label for={`w-${own.classId}-${goal.trait}`}>{say.weightOf(trait(goal.trait))}</label>
          <input
            id={`w-${own.classId}-${goal.trait}`}
            type="range"
            min="0"
            max={String(Math.max(10, goal.weight))}
            step={stepOf(goal.weight)}
            value={String(goal.weight)}
            data-trait={goal.trait}
          />
          <output for={`w-${own.classId}-${goal.trait}`}>{number(goal.weight, goal.weight % 1 === 0 ? 0 : 1)}</output>
        </div>
      ))}
      <div class="weight">
        <label for={`spots-${own.classId}`}>{say.spots}</label>
        <input
          id={`spots-${own.classId}`}
          type="number"
          min="1"
          max="99"
          value={String(own.spots)}
          data-spots={own.spots}
        />
      </div>
      <p role="status" class="rest">
        {say.counted(number(content.trial.settings.verdicts.simulations))}
      </p>
    </fieldset>
  );
}

/** The verdicts with the club's own weights, which the script counts again. */
function WeightsTable({ content, name, rows }: Part & { readonly rows: readonly WeightsRow[] }): JSX.Element {
  const say = content.writing.words.yourWeights;
  const { table, verdictHead } = content.writing.words.nextSeason;
  return (
    <div class="scroll" tabIndex={0} role="group" aria-label={`${name}. ${say.caption}`}>
      <table>
        <caption>
          {name}. {say.caption}
        </caption>
        <thead>
          <tr>
            {[table.variety, verdictHead, table.share, table.above, say.listHead].map((head) => (
              <th scope="col">{head}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr data-variety={row.variety} data-earned={row.earned} data-above={row.above}>
              <th scope="row">{row.name}</th>
              <td>{row.verdict}</td>
              <td>{row.shareText}</td>
              <td>{row.aboveText}</td>
              <td>{row.isListed ? say.yes : say.no}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** Readers set what matters and how many spots; without JavaScript the club's own verdicts stand there. */
export function weightsPage(content: FrameContent, { weights }: NextContent): Page {
  const { yourWeights: say, club } = content.writing.words;
  if (weights.cases.length === 0) return page(content, addresses.weights, say.title, () => <p>{club.noWeights}</p>);
  return page(content, addresses.weights, say.title, (root) => (
    <>
      <p>{say.intro}</p>
      <noscript>
        <p>{say.noScript}</p>
      </noscript>
      <p id="weights-tools">
        <a id="weights-link" href="#">
          {say.link}
        </a>{' '}
        <button id="weights-reset" type="button">
          {say.reset}
        </button>
      </p>
      {weights.cases.map((own) => {
        const name = content.trial.settings.classes.get(own.classId)?.name ?? own.classId;
        const part = { content, own, name };
        return (
          <section aria-labelledby={`class-${own.classId}`} data-class={own.classId}>
            <h2 id={`class-${own.classId}`}>{name}</h2>
            <WeightsForm {...part} />
            <WeightsTable {...part} rows={weights.advice.get(own.classId)!} />
          </section>
        );
      })}
      <script
        type="application/json"
        id="weights-data"
        // JSON of our own, every < written as an escape, so that no text can end the element.
        dangerouslySetInnerHTML={{ __html: weights.json.replaceAll('<', '\\u003c') }}
      />
      <script src={`${root}assets/your-weights.js`} defer></script>
    </>
  ));
}
