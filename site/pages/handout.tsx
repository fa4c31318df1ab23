import { addresses } from '../../src/terms/addresses.ts';
import { ratingModels } from '../../src/analyse/traitsSeen.ts';
import type { JSX } from 'preact';
import type { SeasonSeen } from '../../src/analyse/seen.ts';
import { nameOf } from '../../src/present/nextSeason/source.ts';
import { Squares } from '../advice.tsx';
import type { NextContent, Page, SiteContent } from '../content.ts';
import { page, percent } from '../page.tsx';
import { Table } from '../parts.tsx';
import { classesOf, figuresOf } from '../seasonTables.tsx';

/** Verdicts by class, each with its share as squares. */
function Verdicts({ content, next }: { readonly content: SiteContent; readonly next: NextContent }): JSX.Element {
  const { writing, trial } = content;
  const { handout: say, nextSeason } = writing.words;
  return (
    <>
      <p>{say.verdicts(String(next.season), writing.number(trial.settings.verdicts.simulations))}</p>
      <div class="classes">
        {next.classes.map((own) => (
          <section>
            <h2>{own.name}</h2>
            <ul class="plain">
              {own.varieties.map((advice) => (
                <li>
                  <strong>{nameOf(content, advice.variety)}</strong>: {nextSeason.verdict[advice.verdict]},{' '}
                  {advice.shareText}
                  <Squares share={advice.share} />
                </li>
              ))}
            </ul>
          </section>
        ))}
      </div>
    </>
  );
}

/** The season's figures in one table. */
function Figures({ content, seen }: { readonly content: SiteContent; readonly seen: SeasonSeen }): JSX.Element {
  const { writing } = content;
  const { handout: say, tables, variety: columns } = writing.words;
  const rating = ratingModels(seen).map(([key]) => key)[0];
  const rows = classesOf(content, seen).flatMap(({ id, name }) =>
    seen.varieties
      .filter(({ variety }) => variety.classId === id)
      .map((own) => [own.variety.name, name, ...figuresOf(content, seen, own)]),
  );
  const head = [tables.variety, say.class, tables.status, tables.plantsSetOut, columns.yield, columns.median];
  return (
    <Table
      caption={columns.resultsCaption(percent(content))}
      head={[...head, columns.rating(rating === undefined ? '' : writing.trait(rating))]}
      rows={rows}
    />
  );
}

/** Two printed sides for the club evening: verdicts in plain words, the table behind them, the way to the site. */
export function handoutPage(content: SiteContent, seen: SeasonSeen): Page {
  const { writing, trial, next } = content;
  const { handout: say } = writing.words;
  const year = String(seen.season.year);
  const { url } = trial.settings.publish;
  const isLast = seen === content.seasons.at(-1);
  return page(content, addresses.handout(seen.season.key), say.title(year), () => (
    <div class="handout">
      <div class="side">
        <p>{say.intro(trial.settings.place ?? '', writing.date(seen.season.lastDay))}</p>
        {isLast && next ? <Verdicts content={content} next={next} /> : <p>{say.older}</p>}
      </div>
      <div class="side">
        <Figures content={content} seen={seen} />
        <p>
          {say.howToRead(
            writing.number(100 * trial.settings.interval, (100 * trial.settings.interval) % 1 === 0 ? 0 : 1),
          )}
        </p>
        <p class="caution">{say.cautions}</p>
        {content.qr === null || url === null ? null : (
          <div class="qr">
            <div dangerouslySetInnerHTML={{ __html: content.qr }} />
            <p>
              {say.site} <strong>{url}</strong>
            </p>
          </div>
        )}
      </div>
    </div>
  ));
}
