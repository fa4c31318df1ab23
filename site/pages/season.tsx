import type { Day } from '../../src/terms/day.ts';
import type { SeasonSeen } from '../../src/analyse/seen.ts';
import type { Page, SiteContent } from '../content.ts';
import { AdviceSummary } from '../advice.tsx';
import { page, Words } from '../page.tsx';
import { ChartFigure, Table } from '../parts.tsx';
import { classesOf } from '../seasonTables.tsx';

/** The weather of the season in a sentence; null where none was recorded. */
function weatherSentence({ season }: SeasonSeen, { writing }: SiteContent): string | null {
  if (season.weather.length === 0) return null;
  const days = season.weather.length;
  const mean = season.weather.reduce((sum, day) => sum + (day.tminC + day.tmaxC) / 2, 0) / days;
  const rain = season.weather.reduce((sum, day) => sum + (day.rainMm ?? 0), 0);
  const nights = season.weather.filter((day) => day.tminC < 10).length;
  return `${days} days recorded: mean ${writing.number(mean, 1)} °C, ${nights} nights under 10 °C, ${writing.number(rain)} mm of rain.`;
}

/** Header block of a published report: place, dates, beds, plants, weather, how it was counted. */
function headerBlock(content: SiteContent, seen: SeasonSeen): readonly (readonly [string, string])[] {
  const { season } = seen;
  const { writing, trial } = content;
  const plants = seen.varieties.reduce((sum, v) => sum + v.plantsSetOut, 0);
  const fresh = seen.varieties.filter(({ status }) => status === 'new').length;
  const days = (of: (planting: (typeof season.plantings)[number]) => number | null): string => {
    const found = [...new Set(season.plantings.map(of).filter((day) => day !== null))].toSorted(
      (a, b) => a - b,
    ) as Day[];
    if (found.length === 0) return 'not recorded';
    return found.length === 1
      ? writing.date(found[0]!)
      : `${writing.date(found[0]!)} to ${writing.date(found.at(-1)!)}`;
  };
  const beds = [...new Set(season.plantings.map(({ bed }) => bed).filter((bed) => bed !== null))].toSorted();
  const picked = new Set(
    season.plantings.flatMap(({ pickings }) => pickings.map(({ day }) => day).filter((day) => day !== null)),
  );
  const lost = seen.varieties.reduce((sum, v) => sum + v.plantingsExcluded, 0);
  const block = seen.models.get('yield')?.factor;
  const weather = weatherSentence(seen, content);
  return [
    ['Place', trial.settings.place ?? 'not stated'],
    [
      'Varieties',
      `${seen.varieties.length}, ${fresh} of them new; ${plants} plants in ${season.plantings.length} plantings`,
    ],
    ['Sown', days(({ sown }) => sown)],
    ['Planted out', days(({ transplanted }) => transplanted)],
    ['Last day of recording', writing.date(season.lastDay)],
    ['Beds', beds.length === 0 ? 'not recorded' : beds.join(', ')],
    ['Picking days', picked.size === 0 ? 'none recorded' : String(picked.size)],
    [
      'Blocks',
      block === 'block'
        ? 'in the model'
        : block === 'stands-in'
          ? 'containers and ground in the model'
          : 'none in the model',
    ],
    ...(lost > 0 ? ([['Lost by accident', `${lost}, not in the yields`]] as const) : []),
    ...(weather === null ? [] : ([['Weather', weather]] as const)),
  ];
}

export function seasonPage(content: SiteContent, seen: SeasonSeen): Page {
  const { season } = seen;
  const layout = seen.models.get('yield')?.layout;
  return page(content, `${season.year}/`, `Season ${season.year}`, (root) => (
    <>
      <dl class="header">
        {headerBlock(content, seen).map(([term, text]) => (
          <div>
            <dt>{term}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
      <p>One season: these figures say what these plants did in it.</p>
      {layout === 'together' ? (
        <p class="rest">
          Plants of a variety stood together, so variety and place cannot be told apart fully; intervals are widened for
          a spot correlation of {content.writing.number(content.trial.settings.spotCorrelation, 2)}.
        </p>
      ) : null}
      <Words html={content.words.get(`seasons/${season.year}`)} />
      {classesOf(content, seen).map(({ id, name }) => {
        const report = content.reports.get(`${season.year}/${id}`);
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
            {(content.figures.get(`${season.year}/${id}`) ?? []).map((drawn) => (
              <ChartFigure {...drawn} />
            ))}
          </section>
        );
      })}
    </>
  ));
}
