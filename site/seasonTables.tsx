import type { JSX } from 'preact';
import type { SeasonSeen, VarietySeen } from '../src/analyse/seen.ts';
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
      foot={[`${cv}${test}`].filter((line) => line !== '')}
    />
  );
}

export function classesOf(content: SiteContent, seen: SeasonSeen) {
  const grown = new Set(seen.varieties.map(({ variety }) => variety.classId));
  return [...content.trial.settings.classes.values()].filter(({ id }) => grown.has(id));
}
