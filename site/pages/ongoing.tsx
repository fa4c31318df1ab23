import type { JSX } from 'preact';
import { dayWriting } from '../../src/present/pages/days.ts';
import type { Ongoing, SoFar } from '../../src/present/pages/ongoing.ts';
import { addresses, wordsOf } from '../../src/terms/addresses.ts';
import type { Page, WrittenContent } from '../content.ts';
import { to } from '../layout.tsx';
import { page, Words } from '../page.tsx';
import { Table } from '../parts.tsx';

/** What stands, what was first ripe, what was picked to date, in one sentence. */
export function ongoingSentence({ writing, trial }: WrittenContent, own: Ongoing): string {
  const say = writing.words.bench.ongoing;
  const { long } = dayWriting(trial.settings);
  const kinds = own.classes.reduce((sum, { varieties }) => sum + varieties.length, 0);
  return [
    say.planted(own.plants, kinds),
    own.firstRipe
      ? say.first(writing.words.listed(own.firstRipe.varieties.map(({ name }) => name)), long(own.firstRipe.day))
      : say.noneRipe,
    ...(own.lastRecord !== null && own.grams + own.fruits > 0
      ? [say.picked(pickedText({ writing, trial }, own), long(own.lastRecord))]
      : []),
  ].join(' ');
}

/** Weight picked, or fruits where nothing was weighed; empty where nothing was picked. */
function pickedText(
  { writing }: Pick<WrittenContent, 'writing' | 'trial'>,
  { grams, fruits }: Pick<SoFar, 'grams' | 'fruits'>,
): string {
  if (grams > 0) return grams < 10_000 ? writing.quantity(grams, 'g', 0) : writing.quantity(grams / 1000, 'kg');
  return fruits > 0 ? writing.quantity(fruits, 'fruits', 0) : '';
}

/** What the season that is not over has of a variety, in one sentence; null where it is not grown in it. */
export function OngoingOf({
  content,
  variety,
}: {
  readonly content: WrittenContent;
  readonly variety: string;
}): JSX.Element | null {
  const { ongoing, writing, trial } = content;
  const own = ongoing?.classes.flatMap(({ varieties }) => varieties).find((one) => one.variety.id === variety);
  if (!ongoing || !own) return null;
  const { long } = dayWriting(trial.settings);
  const ripe = own.firstRipe === null ? '' : long(own.firstRipe);
  const text = writing.words.bench.ongoing.variety(String(ongoing.year), own.plants, ripe, pickedText(content, own));
  return <p class="rest">{text}</p>;
}

/** The season that is not over: what stands, first ripe fruit, pickings to date; no estimate and no verdict. */
export function ongoingPage(content: WrittenContent, own: Ongoing): Page {
  const { writing, trial } = content;
  const say = writing.words.bench.ongoing;
  const { short } = dayWriting(trial.settings);
  return page(content, addresses.season(own.key), say.title(String(own.year)), (root) => (
    <>
      <p class="say">{ongoingSentence(content, own)}</p>
      <p class="caution">{content.next ? say.notYetWith(String(content.next.season)) : say.notYet}</p>
      <Words html={content.words.get(wordsOf.season(own.key))} root={root} />
      {own.classes.map(({ classId, varieties }) => {
        const name = trial.settings.classes.get(classId)?.name ?? classId;
        return (
          <section>
            <h2>{name}</h2>
            <Table
              caption={say.caption(name)}
              head={say.head}
              root={root}
              rows={varieties.map((one) => [
                { page: addresses.variety(one.variety.id), text: one.variety.name },
                writing.number(one.plants),
                one.plantedOut === null ? '' : short(one.plantedOut),
                one.firstRipe === null ? say.notYetRipe : short(one.firstRipe),
                pickedText(content, one),
              ])}
            />
          </section>
        );
      })}
    </>
  ));
}

/** On the front page: the season that is not over in a sentence, with the way to its page; null where all are. */
export function OngoingNote({
  content,
  root,
}: {
  readonly content: WrittenContent;
  readonly root: string;
}): JSX.Element | null {
  const { ongoing } = content;
  if (!ongoing) return null;
  const say = content.writing.words.bench.ongoing;
  return (
    <section class="ongoing" aria-labelledby="so-far">
      <h2 id="so-far">
        <a href={to(root, addresses.season(ongoing.key))}>{say.title(String(ongoing.year))}</a>
      </h2>
      <p>
        {ongoingSentence(content, ongoing)} {say.notYet}
      </p>
    </section>
  );
}
