import type { JSX } from 'preact';
import { render } from 'preact-render-to-string';
import type { SeasonSeen, VarietySeen } from '../src/analyse/seen.ts';
import { problemGuide } from '../src/present/words/problems.ts';
import type { Download } from '../src/present/downloads.ts';
import { seasonTraits } from '../src/present/results.ts';
import type { Writing } from '../src/present/numbers.ts';
import { problemWords } from '../src/present/words/problems.ts';
import { severityOf } from '../src/terms/problem.ts';
import type { Problem } from '../src/terms/problem.ts';
import type { Trial, Variety } from '../src/terms/trial.ts';
import { Layout, to } from './layout.tsx';
import { ChartFigure, Table } from './parts.tsx';
import type { DrawnFigure } from './parts.tsx';

/** Everything the pages are made from. */
export interface SiteContent {
  readonly trial: Trial;
  readonly seasons: readonly SeasonSeen[];
  readonly problems: readonly Problem[];
  readonly writing: Writing;
  /** Charts by season and class: `2026/sweet`. */
  readonly figures: ReadonlyMap<string, readonly DrawnFigure[]>;
  readonly downloads: readonly Download[];
  /** The grower's words as HTML, by content path without `.md`. */
  readonly words: ReadonlyMap<string, string>;
}

export interface Page {
  /** Address from the root, ending in `/`; empty for the front page. */
  readonly address: string;
  readonly html: string;
}

function page(content: SiteContent, address: string, title: string, body: (root: string) => JSX.Element): Page {
  const root = './' + '../'.repeat(address.split('/').length - 1);
  const { settings } = content.trial;
  const html = render(
    <Layout title={title} trialTitle={settings.title} language={settings.language} root={root}>{body(root)}</Layout>,
  );
  return { address, html: `<!doctype html>\n${html}\n` };
}

function percent(content: SiteContent): string {
  return `${content.writing.number(content.trial.settings.interval * 100, 0)} %`;
}

function Words({ html }: { readonly html: string | undefined }): JSX.Element | null {
  return html === undefined ? null : <div dangerouslySetInnerHTML={{ __html: html }} />;
}

function link(root: string, variety: Variety): JSX.Element {
  return <a href={to(root, `varieties/${variety.id}/`)}>{variety.name}</a>;
}

function figuresOf(content: SiteContent, seen: SeasonSeen, own: VarietySeen): readonly string[] {
  const { writing } = content;
  const { id } = own.variety;
  const yields = seen.models.get('yield')?.estimates.get(id);
  const median = own.ripening?.median;
  const flavour = [...seen.ratings.values()][0];
  const rating = flavour?.estimates.get(id);
  return [
    own.status,
    `${own.plantsSetOut}`,
    yields ? `${writing.interval(yields, 'g')}; n ${yields.n}` : 'not recorded',
    median ? (median.estimate === null ? `not reached; n ${median.n}` : `${writing.interval(median, 'd')}; n ${median.n}`) : 'not recorded',
    rating ? `${writing.interval(rating, 'points')}; n ${rating.n}` : 'not recorded',
  ];
}

function resultsTable(content: SiteContent, seen: SeasonSeen, classId: string, root: string): JSX.Element {
  const own = seen.varieties.filter(({ variety }) => variety.classId === classId);
  const model = seen.models.get('yield');
  const yieldOf = (v: VarietySeen): number => model?.estimates.get(v.variety.id)?.estimate ?? -1;
  const rows = own.toSorted((a, b) => yieldOf(b) - yieldOf(a)).map((v) => [link(root, v.variety), ...figuresOf(content, seen, v)]);
  const rating = [...seen.ratings.keys()][0]?.replaceAll('_', ' ') ?? 'rating';
  const f = model?.f.get(classId);
  const { number } = content.writing;
  const cv = model?.cvPercent === null || model === undefined ? '' : `CV ${number(model.cvPercent)} % a plant. `;
  const test = f ? `F for yield ${number(f.value, 2)} on ${f.df1} and ${f.df2} df, p ${f.p < 0.001 ? 'below 0.001' : number(f.p, 3)}.` : '';
  return (
    <Table
      caption={`Results with ${percent(content)} intervals; n counts plantings, for ratings tasters`}
      head={['Variety', 'Status', 'Plants set out', 'Yield per plant', 'Median days to first ripe', `Tasters' ${rating}`]}
      rows={rows}
      foot={`${cv}${test}`}
    />
  );
}

/** Fruits, measurements and answers: what the first table has no room for. */
function furtherTable(content: SiteContent, seen: SeasonSeen, classId: string, root: string): JSX.Element | null {
  const own = seen.varieties.filter(({ variety }) => variety.classId === classId);
  const [main] = [...seen.ratings.keys()];
  const figures = own.map((v) => ({ v, traits: seasonTraits(seen, v, content.trial) }));
  const keys = [...new Set(figures.flatMap(({ traits }) => Object.keys(traits)))].filter((key) => !['yield', 'first_ripe', main].includes(key));
  if (keys.length === 0) return null;
  const { writing } = content;
  const cell = (figure: ReturnType<typeof seasonTraits>[string] | undefined): string => {
    if (!figure) return 'not recorded';
    if (figure.unit === 'share') {
      const ends = figure.low === null || figure.high === null ? '' : ` (${writing.number(figure.low * 100)} to ${writing.number(figure.high * 100)} %)`;
      return `${figure.k} of ${figure.n}${ends}`;
    }
    const unit = figure.unit === 'fruits/plant' ? 'points' : figure.unit;
    return `${writing.interval({ estimate: figure.estimate ?? null, low: figure.low, high: figure.high }, unit)}; n ${figure.n}`;
  };
  return (
    <Table
      caption={`Fruits per plant, measurements, answers, with ${percent(content)} intervals`}
      head={['Variety', ...keys.map((key) => (key === 'fruits' ? 'fruits per plant' : key.replaceAll('_', ' ')))]}
      rows={figures.map(({ v, traits }) => [link(root, v.variety), ...keys.map((key) => cell(traits[key]))])}
    />
  );
}

/** The weather of the season in a sentence; null where none was recorded. */
function weatherSentence({ season }: SeasonSeen, { writing }: SiteContent): string | null {
  if (season.weather.length === 0) return null;
  const days = season.weather.length;
  const mean = season.weather.reduce((sum, day) => sum + (day.tminC + day.tmaxC) / 2, 0) / days;
  const rain = season.weather.reduce((sum, day) => sum + (day.rainMm ?? 0), 0);
  const nights = season.weather.filter((day) => day.tminC < 10).length;
  return `Weather from ${days} days of records: mean ${writing.number(mean, 1)} °C, ${nights} nights under 10 °C, ${writing.number(rain)} mm of rain.`;
}

function classesOf(content: SiteContent, seen: SeasonSeen) {
  const grown = new Set(seen.varieties.map(({ variety }) => variety.classId));
  return [...content.trial.settings.classes.values()].filter(({ id }) => grown.has(id));
}

function seasonPage(content: SiteContent, seen: SeasonSeen): Page {
  const { season } = seen;
  const plants = seen.varieties.reduce((sum, v) => sum + v.plantsSetOut, 0);
  const fresh = seen.varieties.filter(({ status }) => status === 'new').length;
  const lost = seen.varieties.reduce((sum, v) => sum + v.plantingsExcluded, 0);
  const { place, spotCorrelation } = content.trial.settings;
  const layout = seen.models.get('yield')?.layout;
  return page(content, `${season.year}/`, `Season ${season.year}`, (root) => (
    <>
      <p>
        {place === null ? '' : `${place}. `}{seen.varieties.length} varieties, {fresh} of them new, {plants} plants set out.
        Recording ended on {content.writing.date(season.lastDay)}. One season: these figures say what these plants did.
      </p>
      {weatherSentence(seen, content) === null ? null : <p class="rest">{weatherSentence(seen, content)}</p>}
      {lost > 0 ? <p class="rest">{lost} planting{lost === 1 ? '' : 's'} lost by accident left the yield analysis.</p> : null}
      {layout === 'together' ? (
        <p class="rest">Plants of a variety stood together, so that variety and place cannot be told apart fully; intervals are widened for a spot correlation of {content.writing.number(spotCorrelation, 2)}.</p>
      ) : null}
      <Words html={content.words.get(`seasons/${season.year}`)} />
      {classesOf(content, seen).map(({ id, name }) => (
        <section aria-labelledby={`class-${id}`}>
          <h2 id={`class-${id}`}>{name}</h2>
          {resultsTable(content, seen, id, root)}
          {furtherTable(content, seen, id, root)}
          {(content.figures.get(`${season.year}/${id}`) ?? []).map((drawn) => <ChartFigure {...drawn} />)}
        </section>
      ))}
    </>
  ));
}

function varietyPage(content: SiteContent, variety: Variety): Page {
  const grown = content.seasons.flatMap((seen) => seen.varieties.filter((v) => v.variety.id === variety.id).map((v) => ({ seen, v })));
  const className = content.trial.settings.classes.get(variety.classId)?.name ?? variety.classId;
  const rating = [...(grown.at(-1)?.seen.ratings.keys() ?? [])][0]?.replaceAll('_', ' ') ?? 'rating';
  const shareWords = { germinated: 'seeds germinated', cropped: 'plants cropped at all', ripe_by_end: 'plants ripe by the season’s end', off_type: 'plants off-type', hot: 'plants with unexpectedly hot fruit' } as const;
  return page(content, `varieties/${variety.id}/`, variety.name, (root) => (
    <>
      <p>{className}{variety.generation === null ? '' : `, F${variety.generation} line`}. Seen in {grown.length} season{grown.length === 1 ? '' : 's'}.</p>
      <Words html={content.words.get(`varieties/${variety.id}`)} />
      <h2>Season by season</h2>
      <Table
        caption={`Seen, with ${percent(content)} intervals`}
        head={['Season', 'Status', 'Plants set out', 'Yield per plant', 'Median days to first ripe', `Tasters' ${rating}`]}
        rows={grown.map(({ seen, v }) => [<a href={to(root, `${seen.season.year}/`)}>{seen.season.year}</a>, ...figuresOf(content, seen, v)])}
      />
      <h2>Shares</h2>
      <Table
        caption={`k of n, with ${percent(content)} intervals (Wilson)`}
        head={['Season', 'Share of', 'k of n', 'Interval']}
        rows={grown.flatMap(({ seen, v }) =>
          Object.entries(v.shares).map(([key, share]) => [
            String(seen.season.year),
            shareWords[key as keyof typeof shareWords],
            `${share.k} of ${share.n}`,
            share.low === null || share.high === null ? '' : `${content.writing.number(share.low * 100)} % to ${content.writing.number(share.high * 100)} %`,
          ]),
        )}
      />
    </>
  ));
}

function notesPage(content: SiteContent): Page {
  return page(content, 'data-notes/', 'Notes on the data', () => (
    <>
      {content.problems.length === 0 ? <p>The checks found nothing doubtful in the records.</p> : (
        <ul>
          {content.problems.map((problem) => {
            const words = problemWords(problem.code, problem.facts);
            const at = problem.places[0];
            return (
              <li>
                {severityOf(problem)} <a href={`#${problem.code}`}>{problem.code}</a>: {words.problem}
                {problem.found === '' ? '' : `: ${problem.found}`} (<code>{at?.file}{at?.line ? `:${at.line}` : ''}</code>
                {problem.places.length > 1 ? `, ${problem.places.length} places` : ''})
              </li>
            );
          })}
        </ul>
      )}
      <h2>Every message, explained</h2>
      <p class="rest">What the checks can say. Errors keep a site from being built, so only warnings and notes can stand above.</p>
      <dl>
        {problemGuide().map(({ code, severity, words }) => (
          <>
            <dt id={code}><code>{code}</code> ({severity})</dt>
            <dd>{words.problem}. Expected: {words.expected}. To mend: {words.mend}.</dd>
          </>
        ))}
      </dl>
    </>
  ));
}

function dataPage(content: SiteContent): Page {
  const { licence } = content.trial.settings.publish;
  return page(content, 'data/', 'Data', (root) => (
    <>
      <p>Every figure of this site stands in <a href={`${root}results.json`}>results.json</a> with full precision, in grams, centimetres, millimetres and days. Licence of the data: {licence}.</p>
      {content.downloads.map(({ path, title, columns, rows }) => (
        <section>
          <h2>{title}</h2>
          <p><a href={`${root}${path}`}>{path}</a>, {rows.length} rows, CSV in UTF-8. An empty cell is a figure that is not known.</p>
          <Table caption={`Columns of ${path}`} head={['Column', 'Meaning']} rows={columns.map(([name, meaning]) => [<code>{name}</code>, meaning])} />
        </section>
      ))}
    </>
  ));
}

/** All pages of the site. */
export function sitePages(content: SiteContent, methods: string): readonly Page[] {
  const newest = content.seasons.at(-1);
  const years = content.seasons.toReversed();
  return [
    page(content, '', content.trial.settings.title, (root) => (
      <>
        <Words html={content.words.get('index')} />
        {newest ? (
          <>
            <p><a href={to(root, `${newest.season.year}/`)}>The {newest.season.year} season in full</a></p>
            {classesOf(content, newest).map(({ id, name }) => <><h2>{name}, {newest.season.year}</h2>{resultsTable(content, newest, id, root)}</>)}
          </>
        ) : <p>No season is recorded yet.</p>}
      </>
    )),
    ...content.seasons.map((seen) => seasonPage(content, seen)),
    ...content.trial.varieties.map((variety) => varietyPage(content, variety)),
    page(content, 'seasons/', 'All seasons', (root) => (
      <ul>{years.map(({ season, varieties }) => <li><a href={to(root, `${season.year}/`)}>{season.year}</a>: {varieties.length} varieties</li>)}</ul>
    )),
    dataPage(content),
    notesPage(content),
    page(content, 'methods/', 'Methods', () => <Words html={methods} />),
  ];
}
