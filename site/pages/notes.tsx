import { problemGuide, problemWords } from '../../src/present/words/problems.ts';
import { severityOf } from '../../src/terms/problem.ts';
import type { Page, SiteContent } from '../content.ts';
import { page } from '../page.tsx';

export function notesPage(content: SiteContent): Page {
  return page(content, 'data-notes/', 'Notes on the data', () => (
    <>
      {content.problems.length === 0 ? (
        <p>The checks found nothing doubtful in the records.</p>
      ) : (
        <ul>
          {content.problems.map((problem) => {
            const words = problemWords(problem.code, problem.facts);
            const at = problem.places[0];
            return (
              <li>
                {severityOf(problem)} <a href={`#${problem.code}`}>{problem.code}</a>: {words.problem}
                {problem.found === '' ? '' : `: ${problem.found}`} (
                <code>
                  {at?.file}
                  {at?.line ? `:${at.line}` : ''}
                </code>
                {problem.places.length > 1 ? `, ${problem.places.length} places` : ''})
              </li>
            );
          })}
        </ul>
      )}
      <h2>Every message, explained</h2>
      <p class="rest">
        What the checks can say. Errors keep a site from being built, so only warnings and notes can stand above.
      </p>
      <dl>
        {problemGuide().map(({ code, severity, words }) => (
          <>
            <dt id={code}>
              <code>{code}</code> ({severity})
            </dt>
            <dd>
              {words.problem}. Expected: {words.expected}. To mend: {words.mend}.
            </dd>
          </>
        ))}
      </dl>
    </>
  ));
}
