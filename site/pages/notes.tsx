import { addresses } from '../../src/terms/addresses.ts';
import { problemGuide, problemWords } from '../../src/present/words/problems.ts';
import { placeText, sheetPlace } from '../../src/terms/place.ts';
import { severityOf } from '../../src/terms/problem.ts';
import type { Page, NotesContent } from '../content.ts';
import { to } from '../layout.tsx';
import { page } from '../page.tsx';

/** Notes on the data; what a cell held stays out: it may not be meant to be published. */
export function notesPage(content: NotesContent): Page {
  const { notes: say, problems: texts } = content.writing.words;
  return page(content, addresses.notes, say.title, (root) => (
    <>
      {content.problems.length === 0 ? (
        <p>{say.none}</p>
      ) : (
        <ul>
          {content.problems.map((problem) => {
            const words = problemWords(problem.code, problem.facts, { texts, near: say.near });
            const at = problem.places[0];
            return (
              <li>
                {say.severity[severityOf(problem)]}{' '}
                <a href={`${to(root, addresses.messages)}#${problem.code}`}>{problem.code}</a>: {words.problem} (
                <code>{at ? placeText({ ...at, column: sheetPlace(at) ? at.column : null }) : ''}</code>
                {problem.places.length > 1 ? `, ${say.places(problem.places.length)}` : ''})
              </li>
            );
          })}
        </ul>
      )}
      {content.trial.seasons
        .filter(({ limited }) => limited.length > 0)
        .map(({ year, limited }) => {
          const count = (kind: string): number => limited.filter((own) => own.kind === kind).length;
          return <p>{say.limited(String(year), count('below'), count('above'), count('trace'))}</p>;
        })}
      <p>
        <a href={to(root, addresses.messages)}>{say.explained}</a>
      </p>
    </>
  ));
}

/** Every message that the checks can give, for those who keep records. */
export function messagesPage(content: NotesContent): Page {
  const { notes: say, problems: texts } = content.writing.words;
  return page(content, addresses.messages, say.explained, () => (
    <>
      <p class="rest">{say.explainedIntro}</p>
      <dl>
        {problemGuide(texts).map(({ code, severity, words }) => (
          <>
            <dt id={code}>
              <code>{code}</code> ({say.severity[severity]})
            </dt>
            <dd>
              {words.problem}. {say.expected}: {words.expected}. {say.mend}: {words.mend}.
            </dd>
          </>
        ))}
      </dl>
    </>
  ));
}
