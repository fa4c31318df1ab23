import type { JSX } from 'preact';
import { gramsByDay } from '../../src/analyse/summaries.ts';
import { yieldUnitsOf } from '../../src/terms/ofVariety.ts';
import { byWeek, dayWriting, weeksOf } from '../../src/present/pages/days.ts';
import { addresses, wordsOf } from '../../src/terms/addresses.ts';
import { FruitPicture } from '../bench/fruit.tsx';
import { Bars } from '../bench/rows.tsx';
import { Shelf } from '../bench/shelf.tsx';
import { ColourDot, Seeds, Verdict } from '../bench/signs.tsx';
import type { Page, SeasonPart, AdviceContent } from '../content.ts';
import { to } from '../layout.tsx';
import { CrossLinks } from './crossLinks.tsx';
import { page, Words } from '../page.tsx';
import { classesOf } from '../seasonTables.tsx';
import { OngoingNote } from './ongoing.tsx';
import { Packets } from './packets.tsx';

/** The sentence, the fruit, the verdicts: what is read in ten seconds. */
function Cloth({ content, root }: Omit<SeasonPart<AdviceContent>, 'seen'>): JSX.Element {
  const { writing, next, advice, stands, trial } = content;
  const { bench } = writing.words;
  const say = bench.front;
  const year = String(next!.season);
  const listed = advice!.next.classes.flatMap((outcome) => outcome.advice?.list ?? []);
  const keeps = listed.filter((id) => stands.get(id)!.standing === 'keep').length;
  const measured = [...new Set(listed.flatMap((id) => stands.get(id)!.fruit.measured ?? []))].toSorted();
  const example = listed.map((id) => stands.get(id)!.shareText).find((text) => text !== null);
  const { simulations, keepFrom } = trial.settings.verdicts;
  return (
    <>
      <div class="shelves">
        <div class="head">
          <h1>{say.headline(year, listed.length, keeps, listed.length - keeps)}</h1>
          <p class="say">
            {measured.length > 0 ? say.scale(writing.words.listed(measured.map(String))) : say.scaleUnmeasured}
          </p>
          <p class="links">
            <a href={to(root, addresses.nextSeason)}>{say.planting}</a>
            <a href={to(root, addresses.handout(content.seasons.at(-1)!.season.key))}>{say.toHandout}</a>
          </p>
        </div>
        {advice!.next.classes.map((outcome) => (
          <Shelf content={content} outcome={outcome} root={root} />
        ))}
      </div>
      {example === undefined ? null : (
        <p class="key s">
          <b>{example}</b>
          {say.key(writing.number(simulations))}
          <Verdict standing="keep" word={bench.standing.keep} /> {say.keyKeep(writing.number(100 * keepFrom))}{' '}
          <Verdict standing="try-again" word={bench.standing['try-again']} /> {say.keyTry}{' '}
          <a href={`${to(root, addresses.methods)}#verdicts`}>{say.how}</a>
        </p>
      )}
    </>
  );
}

/** What the whole trial gave, week by week; null where nothing was weighed by day. */
function Harvest({ content, seen, root }: SeasonPart<AdviceContent>): JSX.Element | null {
  const { writing, trial } = content;
  const say = writing.words.bench.front;
  const days = seen.varieties.flatMap(({ variety }) => {
    const plants = yieldUnitsOf(seen, variety.id).reduce((sum, unit) => sum + unit.plants, 0);
    return gramsByDay(seen, variety.id).map(({ day, grams }) => ({ day, grams: grams * plants }));
  });
  const weeks = weeksOf(days.map(({ day }) => day));
  if (!weeks) return null;
  const sums = byWeek(weeks, days);
  const most = Math.max(...sums);
  if (most <= 0) return null;
  const at = sums.indexOf(most);
  const { long, short } = dayWriting(trial.settings);
  const weight = (grams: number): string =>
    grams < 10_000 ? writing.quantity(grams, 'g', 0) : writing.quantity(grams / 1000, 'kg');
  const plants = seen.varieties.reduce((sum, own) => sum + own.plantsSetOut, 0);
  const total = sums.reduce((sum, own) => sum + own, 0);
  const dayAt = (week: number): number => weeks.first + 7 * week;
  const marks = [0, Math.floor(weeks.count / 2), weeks.count - 1];
  return (
    <section aria-labelledby="harvest">
      <h2 id="harvest">{say.picked(long(dayAt(at)))}</h2>
      <p class="s m">{say.pickedNote(writing.number(plants), weight(total))}</p>
      <div
        role="img"
        aria-label={say.pickedLabel(long(dayAt(0)), long(dayAt(weeks.count)), weight(most), long(dayAt(at)))}
      >
        <Bars values={sums} max={most} height={96} marked={{ at, text: weight(most) }} />
      </div>
      <p class="s m ax" aria-hidden="true">
        {marks.map((mark) => (
          <span>{short(dayAt(mark))}</span>
        ))}
      </p>
      <p>
        <a href={to(root, addresses.season(seen.season.key))}>{say.toSeason(String(seen.season.year))}</a>
      </p>
    </section>
  );
}

/** The surprise of the season: a newcomer that is kept at once, else what stood out. */
function Surprise({ content, seen, root }: SeasonPart<AdviceContent>): JSX.Element | null {
  const { writing, stands, front, next } = content;
  const { bench } = writing.words;
  const news = seen.varieties
    .filter(({ status, variety }) => status === 'new' && stands.get(variety.id)!.standing === 'keep')
    .map(({ variety }) => stands.get(variety.id)!)
    .toSorted((a, b) => b.share! - a.share!)[0];
  if (news) {
    const words = next!.classes
      .flatMap(({ varieties }) => varieties)
      .find(({ variety }) => variety === news.variety.id);
    return (
      <section aria-labelledby="surprise">
        <h2 id="surprise">{bench.front.newKeep(news.variety.name)}</h2>
        <div class="fresh1 keep">
          <span class="stand">
            <FruitPicture fruit={news.fruit} id="surprise" />
          </span>
          <div>
            <p class="num big">{news.shareText}</p>
            <Seeds share={news.share!} />
            <p>{words?.chief.join(' ')}</p>
            <p>
              <a href={to(root, addresses.variety(news.variety.id))}>{bench.front.allAbout(news.variety.name)}</a>
            </p>
          </div>
        </div>
      </section>
    );
  }
  const first = front?.surprised[0];
  return first === undefined ? null : (
    <section aria-labelledby="surprise">
      <h2 id="surprise">{bench.front.surprise}</h2>
      <p>{first}</p>
    </section>
  );
}

/** Every current variety with its colour and its verdict, one click away. */
function Find({ content, seen, root }: SeasonPart<AdviceContent>): JSX.Element {
  const { writing, stands, trial } = content;
  const { bench } = writing.words;
  const collator = new Intl.Collator(trial.settings.language);
  return (
    <section aria-labelledby="find">
      <h2 id="find">{bench.front.every(String(seen.season.year))}</h2>
      <div class="find">
        {classesOf(content, seen).map(({ id, name }) => (
          <section>
            <h3>{name}</h3>
            <ul>
              {seen.varieties
                .filter(({ variety }) => variety.classId === id)
                .toSorted((a, b) => collator.compare(a.variety.name, b.variety.name))
                .map(({ variety }) => {
                  const { standing } = stands.get(variety.id)!;
                  return (
                    <li>
                      <a href={to(root, addresses.variety(variety.id))}>
                        <ColourDot colour={variety.colourRipe} />
                        {variety.name}
                      </a>
                      <Verdict standing={standing} word={bench.standing[standing]} size={0.72} />
                    </li>
                  );
                })}
            </ul>
          </section>
        ))}
      </div>
      <p class="s m">
        <a href={to(root, addresses.varieties)}>{bench.front.allEver(trial.varieties.length)}</a>
      </p>
    </section>
  );
}

/** How last winter's advice fared, in one sentence; null where there was none. */
export function winterSentence({ advice, writing }: AdviceContent): string | null {
  const { winters = [] } = advice ?? {};
  const total = (of: (own: (typeof winters)[number]) => readonly string[]): number =>
    winters.reduce((sum, own) => sum + of(own).length, 0);
  const listed = total(({ list }) => list.advised);
  if (listed === 0) return null;
  return writing.words.bench.front.winter(
    String(winters[0]!.season),
    listed,
    total(({ list }) => list.grown),
    total(({ list }) => list.earned),
  );
}

/** The front page: the list on the cloth, then the season in a few pictures. */
export function frontPageOf(content: AdviceContent): Page {
  const { writing, trial } = content;
  const { seasons, bench } = writing.words;
  const seen = content.seasons.at(-1);
  const { title } = trial.settings;
  if (!seen || !content.next || !content.advice)
    return page(content, addresses.front, title, (root) => (
      <>
        <Words html={content.words.get(wordsOf.front)} root={root} />
        <OngoingNote content={content} root={root} />
        {content.ongoing ? null : <p>{seasons.none}</p>}
      </>
    ));
  const winter = winterSentence(content);
  return page(
    content,
    addresses.front,
    title,
    (root) => {
      const part = { content, seen, root };
      const level = 100 * trial.settings.interval;
      return (
        <>
          <Words html={content.words.get(wordsOf.front)} root={root} />
          <OngoingNote content={content} root={root} />
          <div class="three">
            <Harvest {...part} />
            <Packets {...part} />
            <Surprise {...part} />
          </div>
          <Find {...part} />
          <CrossLinks content={content} root={root} />
          <section class="how" aria-labelledby="sure">
            <h2 id="sure">{bench.front.sure}</h2>
            <p>
              {bench.front.sureText(writing.number(level, level % 1 === 0 ? 0 : 1))}{' '}
              <a href={to(root, addresses.methods)}>{bench.front.how}</a>
            </p>
            {winter === null ? null : <p>{winter}</p>}
          </section>
        </>
      );
    },
    { hero: (root) => <Cloth content={content} root={root} /> },
  );
}
