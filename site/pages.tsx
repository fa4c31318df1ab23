import { AdviceSummary } from './advice.tsx';
import type { Page, SiteContent } from './content.ts';
import { to } from './layout.tsx';
import { page, Words } from './page.tsx';
import { dataPage } from './pages/data.tsx';
import { methodsPage } from './pages/methods.tsx';
import { nextSeasonPage } from './pages/next.tsx';
import { notesPage } from './pages/notes.tsx';
import { seasonPage } from './pages/season.tsx';
import { varietyPage } from './pages/variety.tsx';
import { weightsPage } from './pages/weights.tsx';
import { classesOf, resultsTable } from './seasonTables.tsx';

/** All pages of the site. */
export function sitePages(content: SiteContent): readonly Page[] {
  const newest = content.seasons.at(-1);
  const years = content.seasons.toReversed();
  return [
    page(content, '', content.trial.settings.title, (root) => (
      <>
        <Words html={content.words.get('index')} />
        {newest ? (
          <>
            <p>
              <a href={to(root, `${newest.season.year}/`)}>The {newest.season.year} season in full</a>
            </p>
            {classesOf(content, newest).map(({ id, name }) => (
              <>
                <h2>
                  {name}, {newest.season.year}
                </h2>
                <AdviceSummary content={content} classId={id} root={root} />
                {resultsTable(content, newest, id, root)}
              </>
            ))}
          </>
        ) : (
          <p>No season is recorded yet.</p>
        )}
      </>
    )),
    ...content.seasons.map((seen) => seasonPage(content, seen)),
    ...content.trial.varieties.map((variety) => varietyPage(content, variety)),
    page(content, 'seasons/', 'All seasons', (root) => (
      <ul>
        {years.map(({ season, varieties }) => (
          <li>
            <a href={to(root, `${season.year}/`)}>{season.year}</a>: {varieties.length} varieties
          </li>
        ))}
      </ul>
    )),
    ...(content.next ? [nextSeasonPage(content, content.next), weightsPage(content, content.next)] : []),
    dataPage(content),
    notesPage(content),
    methodsPage(content),
  ];
}
