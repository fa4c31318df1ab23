import type { JSX } from 'preact';
import type { SeasonSeen } from '../../src/analyse/seen.ts';
import {
  caterpillar,
  clubClassWords,
  clubOf,
  clubSentences,
  groupRows,
  returnsOf,
} from '../../src/present/pages/club.ts';
import { gardenWords } from '../../src/present/pages/garden.ts';
import type { GardenAdvice } from '../../src/decide/adviseGarden.ts';
import type { AdviceSource } from '../../src/present/nextSeason/source.ts';
import { addresses } from '../../src/terms/addresses.ts';
import { Strip, TimeAxis } from '../bench/rows.tsx';
import type { FrameContent, Page } from '../content.ts';
import { to } from '../layout.tsx';
import { page } from '../page.tsx';
import { Table } from '../parts.tsx';

/** Gardens of a season that show their page. */
export const shownGardens = ({ gardens }: FrameContent, { season }: SeasonSeen): readonly string[] =>
  season.gardens.filter((code) => gardens.has(code));

/** What came back from the gardens of a season; nothing for a season of one garden. */
export function ClubLead({
  content: { trial, writing },
  seen,
  gardens = [],
  root,
}: {
  readonly content: FrameContent;
  readonly seen: SeasonSeen;
  /** Gardens that show their page. */
  readonly gardens?: readonly string[];
  readonly root: string;
}): JSX.Element | null {
  const club = clubOf(trial, seen);
  if (!club) return null;
  const { garden: say } = writing.words.club;
  return (
    <>
      <p>{clubSentences(club, writing).join(' ')}</p>
      {gardens.length > 0 ? (
        <p class="s">
          {say.links}:{' '}
          {gardens.map((code, i) => (
            <>
              {i > 0 ? ' · ' : ''}
              <a href={to(root, addresses.garden(code))}>{say.link(code)}</a>
            </>
          ))}
        </p>
      ) : null}
    </>
  );
}

/** What the gardens say of a class: parts, returns, groups. */
export function ClubClass({
  content: { trial, writing },
  seen,
  classId,
  advice,
}: {
  readonly content: FrameContent;
  readonly seen: SeasonSeen;
  readonly classId: string;
  readonly advice: AdviceSource | null;
}): JSX.Element | null {
  const own = clubClassWords({ trial, writing }, seen, classId, advice);
  if (!own) return null;
  return (
    <section aria-labelledby="gardens">
      <h2 id="gardens">{own.title}</h2>
      <p>{own.sentences.join(' ')}</p>
      <Table {...own.returns} />
      {own.groups.map(({ title, table, sentence }) => (
        <>
          <h3>{title}</h3>
          {sentence === null ? null : <p>{sentence}</p>}
          <Table {...table} />
        </>
      ))}
    </section>
  );
}

/** A variety over the club's gardens, a line each; nothing where too few have records. */
export function OverGardens({
  advice,
  seen,
  variety,
  colour,
}: {
  readonly advice: AdviceSource | null;
  /** The last season in which it was grown. */
  readonly seen: SeasonSeen | undefined;
  readonly variety: string;
  readonly colour: string | null;
}): JSX.Element | null {
  const own = advice && caterpillar(advice, variety);
  if (!advice || !own) return null;
  const { from, to: end, lines, marks, sentences, caption } = own;
  const groups = seen ? groupRows(advice, seen, variety) : [];
  const returns = seen ? returnsOf(advice, seen, variety) : null;
  return (
    <section aria-labelledby="over-gardens">
      <h2 id="over-gardens">{advice.writing.words.club.variety.title}</h2>
      <p>{sentences.join(' ')}</p>
      <div class="over" aria-hidden="true">
        {lines.map(({ mean, low, high }) => (
          <Strip from={from} to={end} estimate={mean} low={low} high={high} bar={0} colour={colour} />
        ))}
        <TimeAxis marks={marks.map(({ at, text }) => ({ at: at - from, text }))} steps={end - from} />
      </div>
      <p class="m s">{caption}</p>
      {returns ? <Table {...returns} /> : null}
      {groups.map(({ title, head, rows, to: most }) => (
        <Table
          caption={title}
          head={head}
          rows={rows.map(({ name, figure, estimate, low, high }) => [
            name,
            <Strip from={0} to={most} estimate={estimate} low={low} high={high} colour={colour} />,
            figure,
          ])}
        />
      ))}
    </section>
  );
}

/** The page of one garden: beside the others, what to expect, verdicts here and in the club. */
export function gardenPage(
  content: FrameContent,
  source: AdviceSource,
  advice: GardenAdvice,
  isPrivate: boolean,
): Page {
  const own = gardenWords(source, advice, isPrivate);
  const body = (): JSX.Element => (
    <>
      {own.sentences.map((text) => (
        <p>{text}</p>
      ))}
      {own.classes.map(({ name, note, table, others }) => (
        <section>
          <h2>{name}</h2>
          {note === null ? null : <p>{note}</p>}
          <Table {...table} />
          {others ? <Table {...others} /> : null}
        </section>
      ))}
    </>
  );
  return page(content, addresses.garden(advice.garden), own.title, body, { isAlone: isPrivate });
}
