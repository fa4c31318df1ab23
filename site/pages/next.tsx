import { addresses } from '../../src/terms/addresses.ts';
import type { JSX } from 'preact';
import { nameOf } from '../../src/present/nextSeason/source.ts';
import { Advice } from '../advice.tsx';
import type { NextContent, Page, SiteContent } from '../content.ts';
import { to } from '../layout.tsx';
import { page } from '../page.tsx';
import { Picture, Table } from '../parts.tsx';

function ClassSection({
  content,
  next,
  classId,
  root,
}: {
  readonly content: SiteContent;
  readonly next: NextContent;
  readonly classId: string;
  readonly root: string;
}): JSX.Element {
  const say = content.writing.words.nextSeason;
  const own = next.classes.find((one) => one.classId === classId)!;
  const figures = next.figures.get(classId) ?? [];
  return (
    <section aria-labelledby={`class-${classId}`}>
      <h2 id={`class-${classId}`}>{own.name}</h2>
      {own.list.length > 0 ? <p class="list">{own.list.join(' ')}</p> : null}
      <p class="rest">{own.rule.join(' ')}</p>
      {own.verdicts ? <Table {...own.verdicts} caption={`${own.name}. ${own.verdicts.caption}`} root={root} /> : null}
      {figures.slice(0, 1).map((drawn) => (
        <Picture picture={drawn} content={content} root={root} when={String(next.season)} />
      ))}
      {own.varieties.map((advice) => (
        <section aria-labelledby={`advice-${advice.variety}`}>
          <h3 id={`advice-${advice.variety}`}>
            <a href={to(root, addresses.variety(advice.variety))}>{nameOf(content, advice.variety)}</a>
          </h3>
          <Advice advice={advice} />
        </section>
      ))}
      {figures.slice(1).map((drawn) => (
        <Picture picture={drawn} content={content} root={root} when={String(next.season)} />
      ))}
      {own.score ? <Table {...own.score} caption={`${own.name}. ${own.score.caption}`} /> : null}
      {own.excluded.length > 0 ? (
        <p class="rest">
          {say.excluded}: {own.excluded.map(({ variety, text }) => `${nameOf(content, variety)} (${text})`).join('; ')}.
        </p>
      ) : null}
      {own.lastWinter.length > 0 ? (
        <>
          <h3>{say.lastWinter.head(String(next.season - 1))}</h3>
          <p>{[...own.lastWinter, say.lastWinter.caution].join(' ')}</p>
        </>
      ) : null}
    </section>
  );
}

/** Verdicts by class against the spots there are. */
export function nextSeasonPage(content: SiteContent, next: NextContent): Page {
  const { words, number } = content.writing;
  const say = words.nextSeason;
  const { simulations, seed } = content.trial.settings.verdicts;
  return page(content, addresses.nextSeason, say.title(String(next.season)), (root) => (
    <>
      <p>{say.intro(number(simulations), String(seed))}</p>
      <p>{say.average}</p>
      <p class="rest">{[say.independent, ...next.spread].join(' ')}</p>
      <p>
        <a href={to(root, addresses.weights)}>{words.yourWeights.title}</a>
      </p>
      {next.classes.map(({ classId }) => (
        <ClassSection content={content} next={next} classId={classId} root={root} />
      ))}
    </>
  ));
}
