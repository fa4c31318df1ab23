import type { JSX } from 'preact';
import type { Cell, PictureWords, TableWords } from '../src/present/tables.ts';
import type { FrameContent } from './content.ts';
import { to } from './layout.tsx';

type AnyCell = Cell | JSX.Element;

function CellText({ cell, root }: { readonly cell: AnyCell; readonly root: string }): JSX.Element {
  if (typeof cell === 'string') return <>{cell}</>;
  return 'page' in cell ? <a href={to(root, cell.page)}>{cell.text}</a> : cell;
}

interface TableProps extends Omit<TableWords, 'rows'> {
  readonly rows: readonly (readonly AnyCell[])[];
  readonly root?: string;
}

/** A table that scrolls by itself on a narrow screen. */
export function Table({ caption, head, rows, foot, root = './' }: TableProps): JSX.Element {
  return (
    <div class="scroll" tabIndex={0} role="group" aria-label={caption}>
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>{head.map((cell) => (cell === '' ? <td></td> : <th scope="col">{cell}</th>))}</tr>
        </thead>
        <tbody>
          {rows.map(([first, ...cells]) => (
            <tr>
              <th scope="row">
                <CellText cell={first ?? ''} root={root} />
              </th>
              {cells.map((cell) => (
                <td>
                  <CellText cell={cell} root={root} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
        {foot === undefined || foot.length === 0 ? null : (
          <tfoot>
            {foot.map((line) => (
              <tr>
                <td colSpan={head.length}>{line}</td>
              </tr>
            ))}
          </tfoot>
        )}
      </table>
    </div>
  );
}

/** Where a picture stands: the way to the root, and the season it shows. */
interface Around {
  readonly content: FrameContent;
  readonly root: string;
  readonly when: string;
}

/** A drawing in two sizes with its words, place and season, and the same figures as a table and as CSV. */
export function Picture({
  picture,
  content,
  root,
  when,
  isPlain = false,
}: Around & {
  readonly picture: PictureWords;
  /** Without the same figures as a table: the page has them already. */
  readonly isPlain?: boolean;
}): JSX.Element {
  const { id, title, measure, head, rows } = picture;
  const own = picture.drawn();
  const { wide, narrow } = own;
  const other = picture.other?.(own);
  const { tables } = content.writing.words;
  const where = [content.trial.settings.place, when].filter((part) => part !== null && part !== '').join(', ');
  return (
    <figure id={id}>
      <figcaption>
        {isPlain ? null : <strong>{title}</strong>}
        <span>
          {measure} {where === '' || isPlain ? '' : `${where}.`}
        </span>
      </figcaption>
      <div class="wide" dangerouslySetInnerHTML={{ __html: wide }} />
      <div class="narrow" dangerouslySetInnerHTML={{ __html: narrow }} />
      {other ? (
        <>
          <div class="wide-other" hidden dangerouslySetInnerHTML={{ __html: other.wide }} />
          <div class="narrow-other" hidden dangerouslySetInnerHTML={{ __html: other.narrow }} />
        </>
      ) : null}
      {isPlain ? null : (
        <details>
          <summary>{tables.sameAsTable}</summary>
          <Table caption={title} head={head} rows={rows} />
          <p>
            <a href={`${root}figures.csv`}>{tables.csv}</a>
          </p>
        </details>
      )}
    </figure>
  );
}
