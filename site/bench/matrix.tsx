import type { JSX } from 'preact';
import type { FreshRow } from '../../src/present/pages/classSentences.ts';
import type { MatrixCell, MatrixColumn } from '../../src/present/pages/matrix.ts';
import type { Stand } from '../../src/present/pages/stands.ts';
import { addresses } from '../../src/terms/addresses.ts';
import type { StandContent } from '../content.ts';
import { to } from '../layout.tsx';
import { Strip } from './rows.tsx';
import { FruitPicture } from './fruit.tsx';
import { Verdict } from './signs.tsx';

/** The fruit of some varieties on one shelf, to one scale, each leading to its page. */
export function Bench({
  stands,
  root,
  prefix,
}: {
  readonly stands: readonly Stand[];
  readonly root: string;
  readonly prefix: string;
}): JSX.Element {
  return (
    <ul class="bench2">
      {stands.map(({ variety, fruit }) => (
        <li>
          <a href={to(root, addresses.variety(variety.id))}>
            <span class="stand">
              <FruitPicture fruit={fruit} id={`${prefix}-${variety.id}`} />
            </span>
            <span class="nm">{variety.name}</span>
          </a>
        </li>
      ))}
    </ul>
  );
}

function Cell({
  cell,
  column: { from, to: end },
  colour,
}: {
  readonly cell: MatrixCell | undefined;
  readonly column: MatrixColumn;
  readonly colour: string | null;
}): JSX.Element {
  if (!cell) return <td></td>;
  const { estimate, low, high, plants, figure, rest, letters } = cell;
  return (
    <td>
      <Strip from={from} to={end} estimate={estimate} low={low} high={high} colour={colour} plants={plants} />
      <span class="val num">
        <b>{figure}</b>
        {rest.startsWith(',') ? '' : ' '}
        {rest} {letters === '' ? null : <i>{letters}</i>}
      </span>
    </td>
  );
}

interface MatrixProps {
  readonly content: StandContent;
  readonly columns: readonly MatrixColumn[];
  readonly stands: readonly Stand[];
  readonly fresh: ReadonlySet<string>;
  readonly caption: string;
  readonly root: string;
  /** True where the verdicts for next season stand beside the names. */
  readonly hasVerdicts: boolean;
}

/** A class's figures: a row a variety, a column a trait on its full scale, with plants, interval and letters. */
export function Matrix({ content, columns, stands, fresh, caption, root, hasVerdicts }: MatrixProps): JSX.Element {
  const { bench } = content.writing.words;
  return (
    <table class="mx">
      <caption class="vh">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{bench.matrix.order(content.writing.trait(columns[0]!.trait))}</th>
          {columns.map(({ title, better, fromText, toText }) => (
            <th scope="col">
              {title} <span>{better}</span>
              <span class="ax">
                <span>{fromText}</span>
                <span>{toText}</span>
              </span>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {stands.map(({ variety, standing }) => (
          <tr>
            <th scope="row">
              <a href={to(root, addresses.variety(variety.id))}>{variety.name}</a>
              {fresh.has(variety.id) ? <span class="nw">{bench.isNew}</span> : null}
              {hasVerdicts ? (
                <>
                  <br />
                  <Verdict standing={standing} word={bench.standing[standing]} size={0.8} />
                </>
              ) : null}
            </th>
            {columns.map((column) => (
              <Cell cell={column.cells.get(variety.id)} column={column} colour={variety.colourRipe} />
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** New beside returning: two groups of dots on one scale for each trait, the difference in a sentence. */
export function FreshBesideReturning({
  content,
  rows,
}: {
  readonly content: StandContent;
  readonly rows: readonly FreshRow[];
}): JSX.Element | null {
  if (rows.length === 0) return null;
  const say = content.writing.words.bench.fresh;
  return (
    <div class="fresh">
      <h3 class="caption">{say.title}</h3>
      {rows.map(({ from, to: end, fresh, returning, column, sentence }) => (
        <div>
          {(
            [
              [say.news, fresh],
              [say.returning, returning],
            ] as const
          ).map(([word, ids]) => (
            <svg width="100%" height="18" aria-hidden="true">
              <text x="0" y="14" class="t m">
                {word}
              </text>
              <svg x="5rem" width="100%" height="18">
                <Dots ids={ids} column={column} from={from} to={end} content={content} />
              </svg>
            </svg>
          ))}
          <p class="s">{sentence}</p>
        </div>
      ))}
    </div>
  );
}

/** A group of dots on a scale that leaves room for the word before it. */
function Dots({
  ids,
  column,
  from,
  to: end,
  content,
}: {
  readonly ids: readonly string[];
  readonly column: MatrixColumn;
  readonly from: number;
  readonly to: number;
  readonly content: StandContent;
}): JSX.Element {
  // The dots share seven tenths of the width, so that the words before them have room on every screen.
  const x = (id: string): string =>
    `${Math.round((7000 * (column.cells.get(id)!.estimate - from)) / (end - from)) / 100}%`;
  return (
    <>
      <line x1="0" x2="70%" y1="9" y2="9" class="base" />
      {ids.map((id) => (
        <circle
          cx={x(id)}
          cy="9"
          r="5"
          class="dot"
          fill={content.stands.get(id)!.variety.colourRipe ?? 'var(--paper)'}
        />
      ))}
    </>
  );
}
