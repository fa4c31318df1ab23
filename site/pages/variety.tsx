import type { JSX } from 'preact';
import type { Variety } from '../../src/terms/trial.ts';
import { Advice } from '../advice.tsx';
import type { Page, SiteContent } from '../content.ts';
import { to } from '../layout.tsx';
import { page, percent, Words } from '../page.tsx';
import { Table } from '../parts.tsx';
import { figuresOf } from '../seasonTables.tsx';

/** The verdict on a variety, or why it has none; null where it was never grown. */
function adviceOf({ next, writing }: SiteContent, variety: Variety, root: string): JSX.Element | null {
  const own = next?.classes.find(({ classId }) => classId === variety.classId);
  if (!next || !own) return null;
  const say = writing.words.nextSeason;
  const advice = own.varieties.find((one) => one.variety === variety.id);
  const excluded = own.excluded.find((one) => one.variety === variety.id);
  if (!advice && !excluded) return null;
  return (
    <section aria-labelledby="advice">
      <h2 id="advice">{say.advice(String(next.season))}</h2>
      {advice ? <Advice advice={advice} /> : <p>{say.noAdvice(excluded!.text)}</p>}
      <p>
        <a href={to(root, 'next-season/')}>{say.inFull(String(next.season))}</a>
      </p>
    </section>
  );
}

export function varietyPage(content: SiteContent, variety: Variety): Page {
  const grown = content.seasons.flatMap((seen) =>
    seen.varieties.filter((v) => v.variety.id === variety.id).map((v) => ({ seen, v })),
  );
  const className = content.trial.settings.classes.get(variety.classId)?.name ?? variety.classId;
  const rating = [...(grown.at(-1)?.seen.ratings.keys() ?? [])][0]?.replaceAll('_', ' ') ?? 'rating';
  const shareWords = {
    germinated: 'seeds germinated',
    cropped: 'plants cropped at all',
    ripe_by_end: 'plants ripe by the season’s end',
    off_type: 'plants off-type',
    hot: 'plants with unexpectedly hot fruit',
  } as const;
  return page(content, `varieties/${variety.id}/`, variety.name, (root) => (
    <>
      <p>
        {className}
        {variety.generation === null ? '' : `, F${variety.generation} line`}. Seen in {grown.length} season
        {grown.length === 1 ? '' : 's'}.
      </p>
      {adviceOf(content, variety, root)}
      <Words html={content.words.get(`varieties/${variety.id}`)} />
      <h2>Season by season</h2>
      <Table
        caption={`Seen, with ${percent(content)} intervals`}
        head={[
          'Season',
          'Status',
          'Plants set out',
          'Yield per plant',
          'Median days to first ripe',
          `Tasters' ${rating}`,
        ]}
        rows={grown.map(({ seen, v }) => [
          <a href={to(root, `${seen.season.year}/`)}>{seen.season.year}</a>,
          ...figuresOf(content, seen, v),
        ])}
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
            share.low === null || share.high === null
              ? ''
              : `${content.writing.number(share.low * 100)} % to ${content.writing.number(share.high * 100)} %`,
          ]),
        )}
      />
    </>
  ));
}
