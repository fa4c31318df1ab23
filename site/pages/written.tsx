import type { JSX } from 'preact';
import { foldHeader } from '../../src/terms/names.ts';
import type { Variety } from '../../src/terms/trial.ts';
import type { SiteContent } from '../content.ts';

/** Columns of the grower's own that are to be published, each with its cell. */
function named(columns: ReadonlyMap<string, string>, show: readonly string[]): readonly string[] {
  const isShown = (title: string): boolean => show.some((name) => foldHeader(name) === foldHeader(title));
  return [...columns].flatMap(([title, cell]) => (isShown(title) && cell !== '' ? [`${title}: ${cell}`] : []));
}

/** Parents, other names and the source of its seed, as far as they are published. */
export function identity({ trial, writing }: SiteContent, variety: Variety): string {
  const { variety: say } = writing.words;
  const name = (id: string | null): string => trial.varieties.find((own) => own.id === id)?.name ?? say.unknownParent;
  const show = trial.settings.publish.show;
  return [
    variety.mother === null && variety.father === null ? '' : say.parents(name(variety.mother), name(variety.father)),
    variety.alsoKnownAs.length > 0 ? say.alsoKnownAs(variety.alsoKnownAs.join(', ')) : '',
    variety.source !== null && show.includes('source') ? say.source(variety.source) : '',
    variety.notes !== null && show.includes('notes') ? variety.notes : '',
    ...named(variety.unknownColumns, show),
  ]
    .filter((text) => text !== '')
    .join(' ');
}

/** What was written down of its plants, as far as it is published: season, plant, remark; null without any. */
export function PlantNotes({
  content: { trial, writing },
  variety,
}: {
  readonly content: SiteContent;
  readonly variety: Variety;
}): JSX.Element | null {
  const { show } = trial.settings.publish;
  const seasons = trial.ongoing ? [...trial.seasons, trial.ongoing] : trial.seasons;
  const notes = seasons.flatMap(({ year, plantings }) =>
    plantings
      .filter((own) => own.variety === variety.id)
      .flatMap(({ id, notes: remark, unknownColumns }) => {
        const parts = [...(remark !== null && show.includes('notes') ? [remark] : []), ...named(unknownColumns, show)];
        return parts.length === 0 ? [] : [{ year, id, text: parts.join('; ') }];
      }),
  );
  if (notes.length === 0) return null;
  return (
    <section aria-labelledby="notes">
      <h2 id="notes">{writing.words.bench.variety.plantNotes}</h2>
      <ul class="plain">
        {notes.map(({ year, id, text }) => (
          <li>
            <span class="m">
              {year}
              {String(id) === variety.id ? '' : `, ${id}`}:
            </span>{' '}
            {text}
          </li>
        ))}
      </ul>
    </section>
  );
}
