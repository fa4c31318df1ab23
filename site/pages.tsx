import { addresses } from '../src/terms/addresses.ts';
import type { Page, SiteContent } from './content.ts';
import { page, Words } from './page.tsx';
import { classesOf } from './seasonTables.tsx';
import { classFiguresPage, classPage } from './pages/klass.tsx';
import { gardenPage } from './pages/club.tsx';
import { dataPage } from './pages/data.tsx';
import { frontPageOf } from './pages/front.tsx';
import { glossaryPage } from './pages/glossary.tsx';
import { handoutPage } from './pages/handout.tsx';
import { linePage, lineSheetPage } from './pages/line.tsx';
import { methodsPage } from './pages/methods.tsx';
import { movedPage } from './pages/moved.tsx';
import { nextSeasonPage } from './pages/next.tsx';
import { messagesPage, notesPage } from './pages/notes.tsx';
import { ongoingPage } from './pages/ongoing.tsx';
import { seasonPage } from './pages/season.tsx';
import { seasonsPage } from './pages/seasons.tsx';
import { seedPage } from './pages/seed.tsx';
import { varietiesPage } from './pages/varieties.tsx';
import { varietyPage } from './pages/variety.tsx';
import { weightsPage } from './pages/weights.tsx';

/** All pages of the site. */
export function sitePages(content: SiteContent): readonly Page[] {
  const { next, trial, seasons, ongoing } = content;
  return [
    frontPageOf(content),
    ...seasons.flatMap((seen) => [
      seasonPage(content, seen),
      handoutPage(content, seen),
      ...classesOf(content, seen).flatMap(({ id }) => [
        classPage(content, seen, id),
        classFiguresPage(content, seen, id),
      ]),
    ]),
    ...(ongoing ? [ongoingPage(content, ongoing)] : []),
    ...trial.varieties.flatMap((variety) => [
      varietyPage(content, variety),
      ...variety.formerIds.map((former) => movedPage(content, variety, former)),
    ]),
    ...(next ? [nextSeasonPage(content, next), weightsPage(content, next)] : []),
    ...content.lines.crosses.flatMap((report) => [
      linePage(content, report),
      ...(report.advice ? [lineSheetPage(content, report, report.advice)] : []),
    ]),
    ...(content.lines.seed ? [seedPage(content, content.lines.seed)] : []),
    ...content.ownPages.map(({ key, title }) =>
      page(content, addresses.own(key), title, (root) => <Words html={content.words.get(key)} root={root} />),
    ),
    ...[...content.gardens.values()].flatMap((own) =>
      content.advice ? [gardenPage(content, content.advice, own, false)] : [],
    ),
    varietiesPage(content),
    seasonsPage(content),
    glossaryPage(content),
    dataPage(content),
    notesPage(content),
    messagesPage(content),
    methodsPage(content),
  ];
}
