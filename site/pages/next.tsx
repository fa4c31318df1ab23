import { addresses } from '../../src/terms/addresses.ts';
import type { JSX } from 'preact';
import { nameOf } from '../../src/present/nextSeason/source.ts';
import { Advice } from '../advice.tsx';
import { StandPicture } from '../bench/fruit.tsx';
import { EmptyPlace } from '../bench/shelf.tsx';
import { Seeds, Verdict } from '../bench/signs.tsx';
import type { ClassOutcome } from '../../src/decide/nextSeason.ts';
import type { NextContent, Page, AdviceContent } from '../content.ts';
import { to } from '../layout.tsx';
import { plannedByClass } from '../../src/present/plan/published.ts';
import { CrossLinks } from './crossLinks.tsx';
import { page } from '../page.tsx';
import { Picture, Table } from '../parts.tsx';
import { winterSentence } from './front.tsx';

interface ClassPart {
  readonly content: AdviceContent;
  readonly next: NextContent;
  readonly outcome: ClassOutcome;
  readonly root: string;
}

/** A variety of the planting list: its fruit, its sign, its share, the chief reason. */
/** So many varieties of a class are drawn, the list first; the others stand in its table and on their own pages. */
const MOST_SHOWN = 40;

function Item({ content, next, outcome, root, id }: ClassPart & { readonly id: string }): JSX.Element {
  const stand = content.stands.get(id)!;
  const { variety, standing, share, shareText } = stand;
  const { bench } = content.writing.words;
  const words = next.classes
    .find(({ classId }) => classId === outcome.classId)!
    .varieties.find((own) => own.variety === id);
  return (
    <li class={standing}>
      <span class="stand">
        <StandPicture stand={stand} root={root} prefix="list" />
      </span>
      <div>
        <a class="nm" href={to(root, addresses.variety(id))}>
          {variety.name}
        </a>
        <Verdict standing={standing} word={bench.standing[standing]} /> <span class="num s">{shareText}</span>
        <Seeds share={share!} />
        <p class="s">{words?.chief.join(' ')}</p>
      </div>
    </li>
  );
}

/** What stands behind a class's list: in words, in figures, and last winter's advice checked. */
function Folds({ content, next, outcome: { classId }, root }: ClassPart): JSX.Element {
  const { nextSeason: say, bench } = content.writing.words;
  const own = next.classes.find((one) => one.classId === classId)!;
  const figures = next.figures.get(classId) ?? [];
  return (
    <div class="folds">
      <details>
        <summary>{bench.next.advice}</summary>
        <p>{own.list.join(' ')}</p>
        {own.varieties.slice(0, MOST_SHOWN).map((words) => (
          <>
            <h3 id={`advice-${words.variety}`}>{nameOf(content, words.variety)}</h3>
            <Advice advice={words} />
          </>
        ))}
      </details>
      <details>
        <summary>{bench.next.figures}</summary>
        <p class="rest">{own.rule.join(' ')}</p>
        {own.verdicts ? <Table {...own.verdicts} caption={`${own.name}. ${own.verdicts.caption}`} root={root} /> : null}
        {figures.map((drawn) => (
          <Picture picture={drawn} content={content} root={root} when={String(next.season)} />
        ))}
        {own.score ? <Table {...own.score} caption={`${own.name}. ${own.score.caption}`} /> : null}
      </details>
      {own.lastWinter.length > 0 ? (
        <details>
          <summary>{bench.next.winter}</summary>
          <p>{[...own.lastWinter, say.lastWinter.caution].join(' ')}</p>
        </details>
      ) : null}
    </div>
  );
}

/** A class: the list, a broken line where its spots end, the others; what stands behind it is folded. */
function ClassSection({ content, next, outcome, root }: ClassPart): JSX.Element {
  const { classId, advice } = outcome;
  const { nextSeason: say, bench } = content.writing.words;
  const own = next.classes.find((one) => one.classId === classId)!;
  const list = advice?.list ?? [];
  const rest = (advice?.varieties ?? []).map(({ variety }) => variety).filter((id) => !list.includes(id));
  const shown = rest.slice(0, Math.max(0, MOST_SHOWN - list.length));
  const part = { content, next, outcome, root };
  return (
    <section class="klass" aria-labelledby={`class-${classId}`}>
      <h2 id={`class-${classId}`}>{bench.front.spots(own.name, outcome.case.spots)}</h2>
      {own.list.length > 0 ? <p>{own.list.slice(1).join(' ')}</p> : null}
      {advice ? null : <p>{own.rule.join(' ')}</p>}
      <ul class="list plants">
        {list.map((id) => (
          <Item {...part} id={id} />
        ))}
        {Array.from({ length: advice?.newcomerSpots ?? 0 }, () => (
          <li>
            <span class="stand">
              <EmptyPlace />
            </span>
            <span class="s">{bench.emptyPlace}</span>
          </li>
        ))}
        {advice ? <li class="ends">{bench.next.ends}</li> : null}
        {shown.map((id) => (
          <Item {...part} id={id} />
        ))}
        {shown.length < rest.length ? <li class="ends">{bench.next.more(rest.length - shown.length)}</li> : null}
      </ul>
      {own.excluded.length > 0 ? (
        <p class="rest">
          {say.excluded}: {own.excluded.map(({ variety, text }) => `${nameOf(content, variety)} (${text})`).join('; ')}.
        </p>
      ) : null}
      <Folds {...part} />
    </section>
  );
}

/** What to grow: the planting list by class, then how it was counted. */
/** What will be grown, where the grower publishes the plan; null without one. */
function PlannedSeason({
  content,
  root,
}: {
  readonly content: AdviceContent;
  readonly root: string;
}): JSX.Element | null {
  const { trial, writing } = content;
  const { planned, settings } = trial;
  if (!planned || !settings.publish.show.includes('plan')) return null;
  const say = writing.words.plan.published;
  const classes = plannedByClass(planned, trial);
  const all = classes.flatMap(({ varieties }) => varieties);
  const plants = all.reduce((sum, own) => sum + own.plants, 0);
  return (
    <section aria-labelledby="planned">
      <h2 id="planned">{say.title(String(planned.year))}</h2>
      <p>{say.lead(plants, all.length)}</p>
      <ul class="plain">
        {classes.map(({ name, varieties }) => (
          <li>
            <b>{name}</b>:{' '}
            {varieties.map((own, i) => (
              <>
                {i === 0 ? '' : ', '}
                <a href={to(root, addresses.variety(own.variety.id))}>{say.of(own.variety.name, own.plants)}</a>
              </>
            ))}
          </li>
        ))}
      </ul>
    </section>
  );
}

export function nextSeasonPage(content: AdviceContent, next: NextContent): Page {
  const { words, number } = content.writing;
  const { nextSeason: say, bench } = words;
  const { simulations, seed } = content.trial.settings.verdicts;
  const { classes } = content.advice!.next;
  const advised = classes.filter(({ advice }) => advice !== null);
  const named = advised.reduce((sum, { advice }) => sum + advice!.list.length, 0);
  const spots = advised.reduce((sum, own) => sum + own.case.spots, 0);
  const winter = winterSentence(content);
  return page(content, addresses.nextSeason, bench.next.title(String(next.season)), (root) => (
    <>
      <p class="say">{bench.next.lead(spots, named)}</p>
      {winter === null ? null : <p>{winter}</p>}
      <p class="links">
        <a href={to(root, addresses.handout(content.seasons.at(-1)!.season.key))}>{bench.front.toHandout}</a>
        <a href={to(root, addresses.weights)}>{words.yourWeights.title}</a>
      </p>
      {classes.map((outcome) => (
        <ClassSection content={content} next={next} outcome={outcome} root={root} />
      ))}
      <PlannedSeason content={content} root={root} />
      <CrossLinks content={content} root={root} />
      <section aria-labelledby="counted">
        <h2 id="counted">{bench.next.how}</h2>
        <p>{say.intro(number(simulations), String(seed))}</p>
        <p>{say.average}</p>
        <p class="rest">{[say.independent, ...next.spread].join(' ')}</p>
      </section>
    </>
  ));
}
