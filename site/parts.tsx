import type { JSX } from 'preact';
import type { Figure } from '../src/present/seasonCharts.ts';

export interface DrawnFigure {
  readonly figure: Figure;
  readonly wide: string;
  readonly narrow: string;
}

export interface TableWords {
  readonly caption: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly (string | JSX.Element)[])[];
  readonly foot?: string;
}

/** A table that scrolls by itself on a narrow screen. */
export function Table({ caption, head, rows, foot }: TableWords): JSX.Element {
  return (
    <div class="scroll" tabIndex={0} role="group" aria-label={caption}>
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            {head.map((cell) => (
              <th scope="col">{cell}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(([first, ...cells]) => (
            <tr>
              <th scope="row">{first}</th>
              {cells.map((cell) => (
                <td>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
        {foot === undefined ? null : (
          <tfoot>
            <tr>
              <td colSpan={head.length}>{foot}</td>
            </tr>
          </tfoot>
        )}
      </table>
    </div>
  );
}

/** A chart with its finding, its measure and the same numbers as a table. */
export function ChartFigure({ figure, wide, narrow }: DrawnFigure): JSX.Element {
  return (
    <figure id={figure.id}>
      <figcaption>
        <strong>{figure.title}</strong>
        <span>{figure.measure}</span>
      </figcaption>
      <div class="wide" dangerouslySetInnerHTML={{ __html: wide }} />
      <div class="narrow" dangerouslySetInnerHTML={{ __html: narrow }} />
      <details>
        <summary>The same as a table</summary>
        <Table caption={figure.title} head={figure.head} rows={figure.rows} />
      </details>
    </figure>
  );
}
