import { addresses, wordsOf } from '../../src/terms/addresses.ts';
import type { JSX } from 'preact';
import type { FrontPage } from '../../src/present/frontPage.ts';
import type { Page, SiteContent } from '../content.ts';
import { to } from '../layout.tsx';
import { page, Words } from '../page.tsx';

function Block({
  title,
  lines,
  none,
}: {
  readonly title: string;
  readonly lines: readonly string[];
  readonly none: string;
}): JSX.Element {
  return (
    <section class="block">
      <h2>{title}</h2>
      {lines.length === 0 ? <p>{none}</p> : null}
      {lines.length > 0 ? (
        <ul class="plain">
          {lines.map((line) => (
            <li>{line}</li>
          ))}
        </ul>
      ) : null}
    </section>
  );
}

/** The season in one screen. */
export function frontPageOf(content: SiteContent, front: FrontPage | null): Page {
  const { words } = content.writing;
  const { front: say, seasons, nextSeason, season } = words;
  const newest = content.seasons.at(-1);
  return page(content, '', content.trial.settings.title, (root) =>
    front && newest && content.next ? (
      <>
        <p class="lead">{front.lead}</p>
        <Words html={content.words.get(wordsOf.front)} root={root} />
        <div class="blocks">
          <Block title={say.again(String(content.next.season))} lines={front.again} none={say.againNone} />
          <Block title={say.surprised} lines={front.surprised} none={say.surprisedNone} />
          <Block title={say.open} lines={front.open} none={say.openNone} />
        </div>
        <h2>{say.read}</h2>
        <ul class="plain">
          <li>
            <a href={to(root, addresses.season(newest.season.key))}>{seasons.inFull(String(newest.season.year))}</a>
          </li>
          <li>
            <a href={to(root, addresses.nextSeason)}>{nextSeason.inFull(String(content.next.season))}</a>
          </li>
          <li>
            <a href={to(root, addresses.handout(newest.season.key))}>{season.toHandout}</a>
          </li>
        </ul>
      </>
    ) : (
      <>
        <Words html={content.words.get(wordsOf.front)} root={root} />
        <p>{seasons.none}</p>
      </>
    ),
  );
}
