import type { JSX } from 'preact';
import type { Day } from '../../src/terms/day.ts';
import { pickingsOf } from '../../src/terms/record.ts';
import { COLD_NIGHT_C, weatherOf } from '../../src/analyse/summaries.ts';
import type { SeasonSeen } from '../../src/analyse/seen.ts';
import { recordsOf } from '../../src/terms/record.ts';
import { ownPart } from '../../src/present/withheld.ts';
import { seasonWriting } from '../../src/present/seasonWriting.ts';
import { addresses, wordsOf } from '../../src/terms/addresses.ts';
import { FruitPicture } from '../bench/fruit.tsx';
import { Bench, FreshBesideReturning } from '../bench/matrix.tsx';
import { Strip } from '../bench/rows.tsx';
import type { Page, SeasonPart, SeasonContent } from '../content.ts';
import { to } from '../layout.tsx';
import { ClubLead, shownGardens } from './club.tsx';
import { page, Words } from '../page.tsx';
import { Picture } from '../parts.tsx';
import { classesOf } from '../seasonTables.tsx';
import { Glance, hasGlance } from './glance.tsx';
import { ClassMatrix, classParts } from './klass.tsx';

/** Above so many varieties the classes are folded. */
const OPEN_TO = 30;

/** First and last of some days, in words; null without one. */
function span({ writing }: SeasonContent, found: readonly (Day | null)[]): string | null {
  const days = [...new Set(found.filter((day) => day !== null))].toSorted((a, b) => a - b);
  if (days.length === 0) return null;
  return days.length === 1
    ? writing.date(days[0]!)
    : writing.words.figure.range(writing.date(days[0]!), writing.date(days.at(-1)!));
}

/** Crosses that stood in a season, with their plants: `Ashpit Crossing 6 plants`; empty without any. */
function crossCounts({ lines, writing }: SeasonContent, { season }: SeasonSeen): readonly string[] {
  const { bench, listed } = writing.words;
  const named = lines.crosses.flatMap(({ cross }) => {
    const families = new Set<string>(cross.families.map(({ variety }) => variety.id));
    const own = season.plantings.filter(({ variety }) => families.has(variety));
    const plants = own.reduce((sum, one) => sum + one.plants, 0);
    return plants === 0 ? [] : [bench.season.crossOf(cross.name, plants)];
  });
  return named.length === 0 ? [] : [bench.season.crosses(listed(named))];
}

/** What was grown, on how many plants, from when to when: in one line. */
function facts(content: SeasonContent, seen: SeasonSeen): string {
  // Days of a member's own are not told.
  const season = ownPart(seen.season, content.trial);
  const { season: say } = content.writing.words.bench;
  const plants = seen.varieties.reduce((sum, v) => sum + v.plantsSetOut, 0);
  const fresh = seen.varieties.filter(({ status }) => status === 'new').length;
  const picked = new Set(
    season.plantings.flatMap((planting) =>
      pickingsOf(planting)
        .map(({ day }) => day)
        .filter((day) => day !== null),
    ),
  );
  const sown = span(
    content,
    season.plantings.map((own) => own.sown),
  );
  const out = span(
    content,
    season.plantings.map((own) => own.transplanted),
  );
  const { last } = recordsOf(season);
  return [
    ...(content.trial.settings.place === null ? [] : [content.trial.settings.place]),
    say.facts(seen.varieties.length, fresh, content.writing.number(plants), picked.size),
    ...crossCounts(content, seen),
    ...(sown === null ? [] : [say.sown(sown)]),
    ...(out === null ? [] : [say.plantedOut(out)]),
    ...(last === null ? [] : [say.lastDay(content.writing.date(last))]),
  ].join(' · ');
}

/** The weather of the season in a sentence; null where none was recorded. */
function weatherSentence({ season }: SeasonSeen, { writing }: SeasonContent): string | null {
  const weather = weatherOf(season);
  if (!weather) return null;
  return writing.words.season.weatherText(
    writing.number(weather.days),
    writing.quantity(weather.meanC, '°C'),
    writing.number(weather.coldNights),
    writing.quantity(COLD_NIGHT_C, '°C', 0),
    writing.quantity(weather.rainMm, 'rain'),
  );
}

/** A class on the season's page: its fruit, three sentences, one matrix, new beside returning. */
function ClassSection({ content, seen, root, classId }: SeasonPart & { readonly classId: string }): JSX.Element {
  const parts = classParts(content, seen, classId, false);
  const { bench } = content.writing.words;
  const matrix = <ClassMatrix content={content} seen={seen} parts={parts} root={root} />;
  return (
    <section class="klass" aria-labelledby={`class-${classId}`}>
      <div class="kh">
        <div class="said">
          <h2 id={`class-${classId}`}>
            <a href={to(root, addresses.klass(seen.season.key, classId))}>{parts.name}</a>
          </h2>
          <p class="say">{parts.lead}</p>
          <p>{parts.beyond}</p>
        </div>
        {seen.varieties.length > OPEN_TO ? null : (
          <Bench stands={parts.stands} root={root} prefix={`bench-${classId}`} />
        )}
      </div>
      {seen.varieties.length > OPEN_TO ? (
        <details class="fold">
          <summary>{bench.season.fold(parts.stands.length)}</summary>
          {matrix}
        </details>
      ) : (
        matrix
      )}
      <FreshBesideReturning content={content} rows={parts.news} />
      <p class="more">
        <a href={to(root, addresses.classFigures(seen.season.key, classId))}>{bench.season.allFigures(parts.name)}</a>
      </p>
    </section>
  );
}

/** The season's sentence and its contents, with a fruit of each class. */
function Cloth({ content, seen }: Omit<SeasonPart, 'root'>): JSX.Element {
  const { bench } = content.writing.words;
  const map = content.pictures.get(seen.season.key)?.map;
  return (
    <>
      <h1>{bench.season.title(String(seen.season.year))}</h1>
      <p class="s facts">{facts(content, seen)}</p>
      <nav class="toc" aria-label={bench.season.contents}>
        <ul>
          {hasGlance(seen) ? (
            <li>
              <a href="#glance">{bench.season.glance}</a>
            </li>
          ) : null}
          {classesOf(content, seen).map(({ id, name }) => {
            const first = seen.varieties.find(({ variety }) => variety.classId === id)!.variety;
            return (
              <li>
                <a href={`#class-${id}`}>
                  <span class="ic">
                    <FruitPicture fruit={content.stands.get(first.id)!.fruit} id={`toc-${first.id}`} />
                  </span>
                  {name}
                </a>
              </li>
            );
          })}
          {map ? (
            <li>
              <a href="#map">{bench.season.beds}</a>
            </li>
          ) : null}
        </ul>
      </nav>
    </>
  );
}

/** A season: its sentence, the weeks, then each class with its fruit, what stood out, and one matrix. */
export function seasonPage(content: SeasonContent, seen: SeasonSeen): Page {
  const { season } = seen;
  const { bench, season: say } = content.writing.words;
  const map = content.pictures.get(season.key)?.map;
  const weather = weatherSentence(seen, content);
  const level = content.writing.percent(content.trial.settings.interval);
  return page(
    content,
    addresses.season(season.key),
    bench.season.title(String(season.year)),
    (root) => {
      const part = { content, seen, root };
      return (
        <>
          <Words html={content.words.get(wordsOf.season(season.key))} root={root} />
          <p class="rest">{[say.one, ...(weather === null ? [] : [weather])].join(' ')}</p>
          <ClubLead content={content} seen={seen} gardens={shownGardens(content, seen)} root={root} />
          <Glance {...part} />
          <div class="readkey s">
            <b>{bench.season.readKey}</b>
            <Strip from={0} to={10} estimate={5} low={2.5} high={8} plants={[3.4, 4.4, 5.6, 6.8]} />
            {seasonWriting(content.writing, season).words.bench.season.readKeyText(level)}
          </div>
          {classesOf(content, seen).map(({ id }) => (
            <ClassSection {...part} classId={id} />
          ))}
          {map ? (
            <section aria-labelledby="map">
              <h2 id="map">{bench.season.beds}</h2>
              <Picture picture={map} content={content} root={root} when={String(season.year)} isPlain />
            </section>
          ) : null}
        </>
      );
    },
    { hero: () => <Cloth content={content} seen={seen} /> },
  );
}
