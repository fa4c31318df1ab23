import type { JSX } from 'preact';
import { remarksOf } from '../../src/present/pages/remarks.ts';
import type { PublishedRemark } from '../../src/present/pages/remarks.ts';
import { shownColumns } from '../../src/terms/published.ts';
import { everySeason } from '../../src/terms/trial.ts';
import type { Variety } from '../../src/terms/trial.ts';
import type { FrameContent } from '../content.ts';

/** Parents, other names and the source of its seed, as far as they are published. */
export function identity({ trial, writing }: FrameContent, variety: Variety): string {
  const { variety: say } = writing.words;
  const name = (id: string | null): string => trial.varieties.find((own) => own.id === id)?.name ?? say.unknownParent;
  const show = trial.settings.publish.show;
  return [
    variety.mother === null && variety.father === null ? '' : say.parents(name(variety.mother), name(variety.father)),
    variety.alsoKnownAs.length > 0 ? say.alsoKnownAs(variety.alsoKnownAs.join(', ')) : '',
    variety.source !== null && show.includes('source') ? say.source(variety.source) : '',
    variety.notes !== null && show.includes('notes') ? variety.notes : '',
    ...shownColumns(variety.unknownColumns, show),
  ]
    .filter((text) => text !== '')
    .join(' ');
}

/** What was written down of its plants, as far as it is published: season, plant, remark; null without any. */
export function PlantNotes({
  content: { trial, writing },
  variety,
}: {
  readonly content: FrameContent;
  readonly variety: Variety;
}): JSX.Element | null {
  const notes = everySeason(trial).flatMap((season) =>
    remarksOf(season, trial).filter((own) => own.variety === variety.id),
  );
  return <Remarks content={{ writing }} notes={notes} isPlain={(planting) => planting === variety.id} />;
}

/** Remarks with their days and plants; null without any. */
export function Remarks({
  content: { writing },
  notes,
  isPlain,
}: {
  readonly content: Pick<FrameContent, 'writing'>;
  readonly notes: readonly PublishedRemark[];
  /** True for a planting that need not be named. */
  readonly isPlain: (planting: string) => boolean;
}): JSX.Element | null {
  if (notes.length === 0) return null;
  return (
    <section aria-labelledby="notes">
      <h2 id="notes">{writing.words.bench.variety.plantNotes}</h2>
      <ul class="plain">
        {notes.map(({ year, day, planting, text }) => (
          <li>
            <span class="m">
              {day === null ? year : writing.date(day)}
              {planting === null || isPlain(planting) ? '' : `, ${planting}`}:
            </span>{' '}
            {text}
          </li>
        ))}
      </ul>
    </section>
  );
}
