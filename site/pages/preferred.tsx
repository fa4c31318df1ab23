import type { JSX } from 'preact';
import type { SeasonSeen } from '../../src/analyse/seen.ts';
import { rankings } from '../../src/analyse/traitsSeen.ts';
import { rankingWords } from '../../src/present/pages/rankings.ts';
import type { RankingWords } from '../../src/present/pages/rankings.ts';
import type { FrameContent } from '../content.ts';
import { Parts } from '../bench/rows.tsx';
import { Table } from '../parts.tsx';

/** Answers by variety: how often it was before a middling one, and where each member put it. */
function Answers({
  words: { caption, head, rows },
  few,
}: {
  readonly words: RankingWords;
  readonly few: string;
}): JSX.Element {
  return (
    <Table
      caption={caption}
      head={head}
      rows={rows.map(({ cells, parts }) => [
        ...cells,
        parts ? (
          <>
            <Parts counts={parts.counts} /> {parts.text}
          </>
        ) : (
          few
        ),
      ])}
    />
  );
}

/** What members preferred of one variety; nothing where nobody was asked, or too few answered. */
export function PreferredOf({
  content: { trial, writing },
  seen,
  variety,
}: {
  readonly content: FrameContent;
  readonly seen: SeasonSeen | undefined;
  readonly variety: string;
}): JSX.Element | null {
  const told = (seen ? rankings(seen) : []).flatMap((one) => {
    const words = rankingWords(one, trial, writing);
    const rows = words.rows.filter((row) => row.variety === variety);
    // The page is the variety's own: its name need not stand there again.
    const own = rows.map((row) => ({ ...row, cells: row.cells.slice(1) }));
    return own.length > 0 ? [{ ...words, head: words.head.slice(1), rows: own }] : [];
  });
  return told.length === 0 ? null : (
    <>
      {told.map((words) => (
        <section>
          <h2>{words.title}</h2>
          <Answers words={words} few={writing.words.rankings.fewOf} />
        </section>
      ))}
    </>
  );
}

/** What members preferred in a class, a section a trait; nothing where nobody was asked. */
export function Preferred({
  content: { trial, writing },
  seen,
  classId,
}: {
  readonly content: FrameContent;
  readonly seen: SeasonSeen;
  readonly classId: string;
}): JSX.Element {
  const own = rankings(seen).filter((one) => one.classId === classId);
  return (
    <>
      {own.map((one) => {
        const words = rankingWords(one, trial, writing);
        const { title, sentences, rows } = words;
        const id = `ranking-${one.trait}`;
        return (
          <section aria-labelledby={id}>
            <h2 id={id}>{title}</h2>
            <p>{sentences.join(' ')}</p>
            {rows.length > 0 ? <Answers words={words} few={writing.words.rankings.fewOf} /> : null}
          </section>
        );
      })}
    </>
  );
}
