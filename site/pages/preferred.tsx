import type { JSX } from 'preact';
import { rankingsSeen } from '../../src/analyse/rankingsSeen.ts';
import type { SeasonSeen } from '../../src/analyse/seen.ts';
import { rankingWords } from '../../src/present/pages/rankings.ts';
import type { FrameContent } from '../content.ts';
import { Table } from '../parts.tsx';

/** What members preferred in a class, a section a trait; nothing where nobody was asked. */
export function Preferred({
  content: { trial, writing },
  seen: { season },
  classId,
}: {
  readonly content: FrameContent;
  readonly seen: SeasonSeen;
  readonly classId: string;
}): JSX.Element {
  const own = rankingsSeen(season, trial).filter((one) => one.classId === classId);
  return (
    <>
      {own.map((one) => {
        const { title, sentences, caption, head, rows } = rankingWords(one, trial, writing);
        const id = `ranking-${one.trait}`;
        return (
          <section aria-labelledby={id}>
            <h2 id={id}>{title}</h2>
            <p>{sentences.join(' ')}</p>
            {rows.length > 0 ? <Table caption={caption} head={head} rows={rows} /> : null}
          </section>
        );
      })}
    </>
  );
}
