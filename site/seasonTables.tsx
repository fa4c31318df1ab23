import type { JSX } from 'preact';
import type { SeasonSeen, VarietySeen } from '../src/analyse/seen.ts';
import { seasonTraits } from '../src/present/results.ts';
import type { SiteContent } from './content.ts';
import { link, percent } from './page.tsx';
import { Table } from './parts.tsx';

export function figuresOf(content: SiteContent, seen: SeasonSeen, own: VarietySeen): readonly string[] {
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
    median
      ? median.estimate === null
        ? `not reached; n ${median.n}`
        : `${writing.interval(median, 'd')}; n ${median.n}`
      : 'not recorded',
    rating ? `${writing.interval(rating, 'points')}; n ${rating.n}` : 'not recorded',
  ];
}

export function resultsTable(content: SiteContent, seen: SeasonSeen, classId: string, root: string): JSX.Element {
  const own = seen.varieties.filter(({ variety }) => variety.classId === classId);
  const model = seen.models.get('yield');
  const yieldOf = (v: VarietySeen): number => model?.estimates.get(v.variety.id)?.estimate ?? -1;
  const rows = own
    .toSorted((a, b) => yieldOf(b) - yieldOf(a))
    .map((v) => [link(root, v.variety), ...figuresOf(content, seen, v)]);
  const rating = [...seen.ratings.keys()][0]?.replaceAll('_', ' ') ?? 'rating';
  const f = model?.f.get(classId);
  const { number } = content.writing;
  const cv = model?.cvPercent === null || model === undefined ? '' : `CV ${number(model.cvPercent)} % a plant. `;
  const test = f
    ? `F for yield ${number(f.value, 2)} on ${f.df1} and ${f.df2} df, p ${f.p < 0.001 ? 'below 0.001' : number(f.p, 3)}.`
    : '';
  return (
    <Table
      caption={`Results with ${percent(content)} intervals; n counts plantings, for ratings tasters`}
      head={[
        'Variety',
        'Status',
        'Plants set out',
        'Yield per plant',
        'Median days to first ripe',
        `Tasters' ${rating}`,
      ]}
      rows={rows}
      foot={`${cv}${test}`}
    />
  );
}

/** Fruits, measurements and answers: what the first table has no room for. */
export function furtherTable(
  content: SiteContent,
  seen: SeasonSeen,
  classId: string,
  root: string,
): JSX.Element | null {
  const own = seen.varieties.filter(({ variety }) => variety.classId === classId);
  const [main] = [...seen.ratings.keys()];
  const figures = own.map((v) => ({ v, traits: seasonTraits(seen, v, content.trial) }));
  const keys = [...new Set(figures.flatMap(({ traits }) => Object.keys(traits)))].filter(
    (key) => !['yield', 'first_ripe', main].includes(key),
  );
  if (keys.length === 0) return null;
  const { writing } = content;
  const cell = (figure: ReturnType<typeof seasonTraits>[string] | undefined): string => {
    if (!figure) return 'not recorded';
    if (figure.unit === 'share') {
      const ends =
        figure.low === null || figure.high === null
          ? ''
          : ` (${writing.number(figure.low * 100)} to ${writing.number(figure.high * 100)} %)`;
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

export function classesOf(content: SiteContent, seen: SeasonSeen) {
  const grown = new Set(seen.varieties.map(({ variety }) => variety.classId));
  return [...content.trial.settings.classes.values()].filter(({ id }) => grown.has(id));
}
