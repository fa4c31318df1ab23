import type { JSX } from 'preact';
import type { SeasonSeen } from '../../src/analyse/seen.ts';
import { areApart, areUnjoined, matrixOf } from '../../src/present/pages/matrix.ts';
import type { MatrixCell, MatrixColumn } from '../../src/present/pages/matrix.ts';
import { addresses } from '../../src/terms/addresses.ts';
import type { Variety } from '../../src/terms/trial.ts';
import { FruitPicture } from '../bench/fruit.tsx';
import type { BesideContent } from '../content.ts';
import { to } from '../layout.tsx';

/** So many others are compared one by one; a larger class has the letters on its own page. */
const MOST = 15;

/** How a variety's figure lies to another's, in words. */
function differenceWords(
  { writing, trial }: BesideContent,
  { trait }: MatrixColumn,
  own: MatrixCell,
  other: MatrixCell,
): string {
  const say = writing.words.bench.variety;
  const points = own.estimate - other.estimate;
  if (trait === 'first_ripe') {
    const days = writing.number(Math.abs(points), 0);
    if (days === '0') return say.sameDay;
    return points < 0 ? say.sooner(days) : say.later(days);
  }
  if (trial.settings.traits.get(trait)?.kind === 'rating') {
    const text = writing.number(Math.abs(points), 1);
    if (text === writing.number(0, 1)) return say.same;
    return points > 0 ? say.higher(text) : say.lower(text);
  }
  if (other.estimate <= 0) return own.estimate > 0 ? say.more('100') : say.same;
  const ratio = own.estimate / other.estimate;
  if (ratio >= 2) return say.times(writing.number(ratio, 1));
  const percent = writing.number(Math.abs(100 * (ratio - 1)), 0);
  if (percent === '0') return say.same;
  return ratio > 1 ? say.more(percent) : say.less(percent);
}

/** One figure of two varieties: how they lie to each other, and whether that is clear. */
function Compared({
  content,
  column,
  own,
  other,
  head,
}: {
  readonly content: BesideContent;
  readonly column: MatrixColumn;
  readonly own: string;
  readonly other: string;
  readonly head: string;
}): JSX.Element {
  const say = content.writing.words.bench.variety;
  const [mine, theirs] = [column.cells.get(own)!, column.cells.get(other)];
  if (!theirs || areUnjoined(mine.letters, theirs.letters)) return <td data-t={head}></td>;
  const isClear = areApart(mine.letters, theirs.letters);
  return (
    <td data-t={head}>
      {differenceWords(content, column, mine, theirs)}{' '}
      {mine.letters !== '' && theirs.letters !== '' ? (
        <span class={isClear ? 'clr' : 'ncl'}>{isClear ? `● ${say.clear}` : `○ ${say.notClear}`}</span>
      ) : null}
    </td>
  );
}

/** A variety beside each of its class: what it gave, how it was scored, when it was ripe; clear or not. */
export function Besides({
  content,
  seen,
  variety,
  root,
}: {
  readonly content: BesideContent;
  readonly seen: SeasonSeen;
  readonly variety: Variety;
  readonly root: string;
}): JSX.Element | null {
  const { trial, writing, compared, stands } = content;
  const say = writing.words.bench.variety;
  const { classId } = variety;
  const columns = matrixOf({ trial, seen, writing, classId, compared: compared.get(seen.season.key)! }, false).filter(
    ({ cells }) => cells.has(variety.id) && cells.size > 1,
  );
  const others = seen.varieties.filter(
    (own) => own.variety.classId === variety.classId && own.variety.id !== variety.id,
  );
  if (columns.length === 0 || others.length === 0 || others.length > MOST) return null;
  const title = say.besides(trial.settings.classes.get(classId)?.name ?? classId);
  const head = ({ trait }: MatrixColumn): string =>
    ({ first_ripe: say.itWasRipe, yield: say.itGave, fruits: say.itGave })[trait] ??
    say.itsRating(writing.trait(trait));
  return (
    <section aria-labelledby="besides">
      <h2 id="besides">{title}</h2>
      <p class="m">{say.besidesNote(variety.name, String(seen.season.year))}</p>
      <table class="bes">
        <caption class="vh">{title}</caption>
        <thead>
          <tr>
            <th scope="col">{say.comparedWith}</th>
            {columns.map((column) => (
              <th scope="col">{head(column)}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {others.map(({ variety: other }) => (
            <tr>
              <th scope="row">
                <a href={to(root, addresses.variety(other.id))}>
                  <span class="mini">
                    <FruitPicture fruit={stands.get(other.id)!.fruit} id={`beside-${other.id}`} />
                  </span>
                  {other.name}
                </a>
              </th>
              {columns.map((column) => (
                <Compared content={content} column={column} own={variety.id} other={other.id} head={head(column)} />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
