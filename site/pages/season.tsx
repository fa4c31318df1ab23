import { COLD_NIGHT_C, weatherOf } from '../../src/analyse/summaries.ts';
import { pickingsOf } from '../../src/terms/record.ts';
import { addresses, wordsOf } from '../../src/terms/addresses.ts';
import { plantModel } from '../../src/analyse/traitsSeen.ts';
import type { Day } from '../../src/terms/day.ts';
import type { JSX } from 'preact';
import type { ClassSettings } from '../../src/terms/settings.ts';
import type { SeasonSeen } from '../../src/analyse/seen.ts';
import type { Page, SiteContent } from '../content.ts';
import { AdviceSummary } from '../advice.tsx';
import { page, Words } from '../page.tsx';
import { to } from '../layout.tsx';
import { Picture, Table } from '../parts.tsx';
import { classesOf } from '../seasonTables.tsx';

/** The weather of the season in a sentence; null where none was recorded. */
function weatherSentence({ season }: SeasonSeen, { writing }: SiteContent): string | null {
  const weather = weatherOf(season);
  if (!weather) return null;
  const { season: say } = writing.words;
  return say.weatherText(
    writing.number(weather.days),
    writing.quantity(weather.meanC, '°C'),
    writing.number(weather.coldNights),
    writing.quantity(COLD_NIGHT_C, '°C', 0),
    writing.quantity(weather.rainMm, 'rain'),
  );
}

/** Header block of a published report: place, dates, beds, plants, weather, how it was counted. */
function headerBlock(content: SiteContent, seen: SeasonSeen): readonly (readonly [string, string])[] {
  const { season } = seen;
  const { writing, trial } = content;
  const { season: say } = writing.words;
  const count = (n: number): string => writing.number(n);
  const plants = seen.varieties.reduce((sum, v) => sum + v.plantsSetOut, 0);
  const fresh = seen.varieties.filter(({ status }) => status === 'new').length;
  const days = (of: (planting: (typeof season.plantings)[number]) => number | null): string => {
    const found = [...new Set(season.plantings.map(of).filter((day) => day !== null))].toSorted(
      (a, b) => a - b,
    ) as Day[];
    if (found.length === 0) return writing.words.figure.notRecorded;
    return found.length === 1
      ? writing.date(found[0]!)
      : writing.words.figure.range(writing.date(found[0]!), writing.date(found.at(-1)!));
  };
  const beds = [...new Set(season.plantings.map(({ bed }) => bed).filter((bed) => bed !== null))].toSorted();
  const picked = new Set(
    season.plantings.flatMap((planting) =>
      pickingsOf(planting)
        .map(({ day }) => day)
        .filter((day) => day !== null),
    ),
  );
  const lost = seen.varieties.reduce((sum, v) => sum + v.plantingsExcluded, 0);
  const block = plantModel(seen, 'yield')?.factor;
  const weather = weatherSentence(seen, content);
  return [
    [say.place, trial.settings.place ?? say.notStated],
    [
      say.varieties,
      say.counts(count(seen.varieties.length), count(fresh), count(plants), count(season.plantings.length)),
    ],
    [say.sown, days(({ sown }) => sown)],
    [say.plantedOut, days(({ transplanted }) => transplanted)],
    [say.lastDay, writing.date(season.lastDay)],
    [say.beds, beds.length === 0 ? writing.words.figure.notRecorded : beds.join(', ')],
    [say.pickingDays, picked.size === 0 ? say.noPickings : count(picked.size)],
    [say.blocks, say.block[block === 'block' || block === 'stands-in' ? block : 'none']],
    ...(lost > 0 ? ([[say.lost, say.notInYields(count(lost))]] as const) : []),
    ...(weather === null ? [] : ([[say.weather, weather]] as const)),
  ];
}

interface ClassPart {
  readonly content: SiteContent;
  readonly seen: SeasonSeen;
  readonly own: ClassSettings;
  readonly root: string;
  readonly when: string;
}

/** A class's part of the report: advice, findings, tables, charts, fruit. */
function ClassSection({ content, seen, own: { id, name }, root, when }: ClassPart): JSX.Element {
  const { season } = seen;
  const around = { content, root, when };
  const report = content.reports.get(season.key)?.get(id);
  const fruit = content.pictures.get(season.key)?.fruits.get(id);
  return (
    <section aria-labelledby={`class-${id}`}>
      <h2 id={`class-${id}`}>{name}</h2>
      {seen === content.seasons.at(-1) ? <AdviceSummary content={content} classId={id} root={root} /> : null}
      {report?.findings.map((text) => (
        <p>{text}</p>
      ))}
      {report && report.cautions.length > 0 ? (
        <ul class="rest">
          {report.cautions.map((text) => (
            <li>{text}</li>
          ))}
        </ul>
      ) : null}
      {report?.tables.map((table) => (
        <Table {...table} caption={`${name}. ${table.caption}`} root={root} />
      ))}
      {(content.figures.get(season.key)?.get(id) ?? []).map((drawn) => (
        <Picture picture={drawn} {...around} />
      ))}
      {fruit ? <Picture picture={fruit} {...around} /> : null}
    </section>
  );
}

/** In which classes intervals are widened because plants of a variety stood together; null where in none. */
function togetherSentence(seen: SeasonSeen, { trial, writing }: SiteContent): string | null {
  const model = plantModel(seen, 'yield');
  if (!model || model.classes.length === 0 || trial.settings.spotCorrelation === 0) return null;
  const names = model.classes
    .filter(({ classId }) => model.layouts.get(classId) === 'together')
    .map(({ classId }) => trial.settings.classes.get(classId)?.name ?? classId);
  if (names.length === 0) return null;
  const rho = writing.number(trial.settings.spotCorrelation, 2);
  return writing.words.season.together(rho, names.length === model.classes.length ? [] : names);
}

export function seasonPage(content: SiteContent, seen: SeasonSeen): Page {
  const { season } = seen;
  const { season: say } = content.writing.words;
  const map = content.pictures.get(season.key)?.map;
  const together = togetherSentence(seen, content);
  return page(content, addresses.season(season.key), say.title(String(season.year)), (root) => {
    const around = { content, root, when: String(season.year) };
    return (
      <>
        <dl class="header">
          {headerBlock(content, seen).map(([term, text]) => (
            <div>
              <dt>{term}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
        <p>{say.one}</p>
        {together === null ? null : <p class="rest">{together}</p>}
        <p>
          <a href={to(root, addresses.handout(season.key))}>{say.toHandout}</a>
        </p>
        <Words html={content.words.get(wordsOf.season(season.key))} root={root} />
        {classesOf(content, seen).map((own) => (
          <ClassSection {...around} seen={seen} own={own} />
        ))}
        <p class="caution">{content.writing.words.handout.cautions}</p>
        {map ? (
          <section aria-labelledby="map">
            <h2 id="map">{say.toMap}</h2>
            <Picture picture={map} {...around} />
          </section>
        ) : null}
      </>
    );
  });
}
