import type { JSX } from 'preact';
import type { ClassOutcome } from '../../src/decide/nextSeason.ts';
import type { Stand } from '../../src/present/pages/stands.ts';
import { addresses } from '../../src/terms/addresses.ts';
import type { StandContent } from '../content.ts';
import { to } from '../layout.tsx';
import { FruitPicture } from './fruit.tsx';
import { Verdict } from './signs.tsx';

/** So many fruit of a class are shown on the front page; the planting list has the rest. */
const SHOWN = 8;

/** Words of a fruit for those who do not see it. */
export function fruitLabel({ variety, fruit }: Stand, { writing }: StandContent): string {
  const size = fruit.measured === null ? null : writing.quantity(fruit.length, 'cm');
  return writing.words.bench.fruit(variety.name, '', size);
}

/** An outline in the size of a fruit, for a spot that is left to a newcomer. */
export function EmptyPlace(): JSX.Element {
  return (
    <svg class="fruit" width="5em" height="6em" viewBox="0 0 50 60" aria-hidden="true">
      <path class="empty" d="M25 12C38 6 47 14 46 28C45 44 40 57 25 57C10 57 5 44 4 28C3 14 12 6 25 12Z" />
    </svg>
  );
}

/** A class's list as fruit on a shelf, each with stake, word and share; a broken outline for every spot left free. */
export function Shelf({
  content,
  outcome,
  root,
}: {
  readonly content: StandContent;
  readonly outcome: ClassOutcome;
  readonly root: string;
}): JSX.Element | null {
  const { advice, classId } = outcome;
  if (!advice) return null;
  const { bench } = content.writing.words;
  const list = advice.list.slice(0, SHOWN).map((id) => content.stands.get(id)!);
  const free = Math.max(0, Math.min(SHOWN - list.length, advice.newcomerSpots));
  const name = content.trial.settings.classes.get(classId)?.name ?? classId;
  return (
    <section class={`cls n${Math.max(1, Math.min(SHOWN, list.length + free))}`}>
      <ul class="shelf">
        {list.map((stand) => (
          <li class={stand.standing}>
            <a href={to(root, addresses.variety(stand.variety.id))}>
              <span class="stand">
                <FruitPicture fruit={stand.fruit} id={`shelf-${stand.variety.id}`} />
              </span>
              <span class="below">
                <span class="nm">{stand.variety.name}</span>
                <Verdict standing={stand.standing} word={bench.standing[stand.standing]} />
                <span class="num">{stand.shareText}</span>
              </span>
            </a>
          </li>
        ))}
        {Array.from({ length: free }, () => (
          <li>
            <span class="room">
              <span class="stand">
                <EmptyPlace />
              </span>
              <span class="below">{bench.emptyPlace}</span>
            </span>
          </li>
        ))}
      </ul>
      <h2 class="plank">{bench.front.spots(name, outcome.case.spots)}</h2>
    </section>
  );
}
