import type { SeasonSeen } from '../../src/analyse/seen.ts';
import type { Page, SiteContent } from '../content.ts';
import { page, Words } from '../page.tsx';
import { ChartFigure } from '../parts.tsx';
import { classesOf, furtherTable, resultsTable } from '../seasonTables.tsx';

/** The weather of the season in a sentence; null where none was recorded. */
function weatherSentence({ season }: SeasonSeen, { writing }: SiteContent): string | null {
  if (season.weather.length === 0) return null;
  const days = season.weather.length;
  const mean = season.weather.reduce((sum, day) => sum + (day.tminC + day.tmaxC) / 2, 0) / days;
  const rain = season.weather.reduce((sum, day) => sum + (day.rainMm ?? 0), 0);
  const nights = season.weather.filter((day) => day.tminC < 10).length;
  return `Weather from ${days} days of records: mean ${writing.number(mean, 1)} °C, ${nights} nights under 10 °C, ${writing.number(rain)} mm of rain.`;
}

export function seasonPage(content: SiteContent, seen: SeasonSeen): Page {
  const { season } = seen;
  const plants = seen.varieties.reduce((sum, v) => sum + v.plantsSetOut, 0);
  const fresh = seen.varieties.filter(({ status }) => status === 'new').length;
  const lost = seen.varieties.reduce((sum, v) => sum + v.plantingsExcluded, 0);
  const { place, spotCorrelation } = content.trial.settings;
  const layout = seen.models.get('yield')?.layout;
  return page(content, `${season.year}/`, `Season ${season.year}`, (root) => (
    <>
      <p>
        {place === null ? '' : `${place}. `}
        {seen.varieties.length} varieties, {fresh} of them new, {plants} plants set out. Recording ended on{' '}
        {content.writing.date(season.lastDay)}. One season: these figures say what these plants did.
      </p>
      {weatherSentence(seen, content) === null ? null : <p class="rest">{weatherSentence(seen, content)}</p>}
      {lost > 0 ? (
        <p class="rest">
          {lost} planting{lost === 1 ? '' : 's'} lost by accident left the yield analysis.
        </p>
      ) : null}
      {layout === 'together' ? (
        <p class="rest">
          Plants of a variety stood together, so that variety and place cannot be told apart fully; intervals are
          widened for a spot correlation of {content.writing.number(spotCorrelation, 2)}.
        </p>
      ) : null}
      <Words html={content.words.get(`seasons/${season.year}`)} />
      {classesOf(content, seen).map(({ id, name }) => (
        <section aria-labelledby={`class-${id}`}>
          <h2 id={`class-${id}`}>{name}</h2>
          {resultsTable(content, seen, id, root)}
          {furtherTable(content, seen, id, root)}
          {(content.figures.get(`${season.year}/${id}`) ?? []).map((drawn) => (
            <ChartFigure {...drawn} />
          ))}
        </section>
      ))}
    </>
  ));
}
