import { addresses } from '../../src/terms/addresses.ts';
import type { Page, FrameContent } from '../content.ts';
import { to } from '../layout.tsx';
import { page } from '../page.tsx';

/** All seasons, the newest first, with every variety ever grown. */
export function seasonsPage(content: FrameContent): Page {
  const { words, number } = content.writing;
  const { seasons: say } = words;
  return page(content, addresses.seasons, say.title, (root) => (
    <>
      <ul class="plain">
        {content.ongoing ? (
          <li>
            <a href={to(root, addresses.season(content.ongoing.key))}>
              {words.bench.ongoing.title(String(content.ongoing.year))}
            </a>
          </li>
        ) : null}
        {content.seasons.toReversed().map(({ season, varieties: grown }) => (
          <li>
            <a href={to(root, addresses.season(season.key))}>{season.year}</a>: {say.varieties(number(grown.length))}
          </li>
        ))}
      </ul>
      <p>
        <a href={to(root, addresses.varieties)}>{say.every}</a>
      </p>
    </>
  ));
}
