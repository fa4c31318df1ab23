import type { JSX } from 'preact';
import type { CrossReport } from '../../src/decide/lines/crossReport.ts';
import { leadOf } from '../../src/present/pages/lines.ts';
import { fallShort } from '../../src/present/pages/seed.ts';
import { addresses } from '../../src/terms/addresses.ts';
import type { CrossContent } from '../content.ts';
import { to } from '../layout.tsx';

/** Crosses that are still grown, a line each with its link, and the seed that falls short; null without either. */
export function CrossLinks({
  content,
  root,
  isShort = false,
}: {
  readonly content: CrossContent;
  readonly root: string;
  /** Names alone. */
  readonly isShort?: boolean;
}): JSX.Element | null {
  const { trial, writing, lines } = content;
  const { lines: say } = writing.words;
  const last = content.seasons.at(-1)?.season.year;
  const grown = isShort ? lines.crosses : lines.crosses.filter(({ newest }) => newest?.years.includes(last ?? 0));
  const missing = lines.seed ? fallShort(lines.seed).length : 0;
  if (grown.length === 0 && !lines.seed) return null;
  const text = (report: CrossReport): string => {
    const lead = isShort ? '' : leadOf({ report, trial, writing });
    return lead === '' ? '' : `: ${lead}`;
  };
  return (
    <section aria-labelledby="crosses">
      <h2 id="crosses">{say.list}</h2>
      {isShort ? <p class="m">{say.listNote}</p> : null}
      <ul class="plain">
        {grown.map((report) => (
          <li>
            <a href={to(root, addresses.line(report.cross.id))}>{report.cross.name}</a>
            {text(report)}
          </li>
        ))}
        {lines.seed ? (
          <li>
            <a href={to(root, addresses.seed)}>{say.seed.link}</a>
            {missing > 0 && !isShort ? `: ${say.seed.short(String(missing))}` : ''}
          </li>
        ) : null}
      </ul>
    </section>
  );
}
