import type { JSX } from 'preact';
import type { SeasonSeen } from '../../src/analyse/seen.ts';
import { isHot } from '../../src/analyse/summaries.ts';
import { ratingModels } from '../../src/analyse/traitsSeen.ts';
import { seasonPictures } from '../../src/present/pages/bySeason.ts';
import { adviceOf, barName, whyRows } from '../../src/present/pages/variety.ts';
import type { Stand, StandPhoto } from '../../src/present/pages/stands.ts';
import { addresses, wordsOf } from '../../src/terms/addresses.ts';
import { isLine } from '../../src/terms/trial.ts';
import type { Variety } from '../../src/terms/trial.ts';
import { Advice } from '../advice.tsx';
import { FruitPicture } from '../bench/fruit.tsx';
import { SeasonBySeason } from '../bench/seasons.tsx';
import { fruitLabel } from '../bench/shelf.tsx';
import { Seeds, Verdict } from '../bench/signs.tsx';
import type { Page, AdviceContent } from '../content.ts';
import { to } from '../layout.tsx';
import { page, percent, Words } from '../page.tsx';
import { Table } from '../parts.tsx';
import { figuresOf } from '../seasonTables.tsx';
import { OddPlant } from './oddPlant.tsx';
import { CrossOf } from './varietyParts.tsx';
import { identity, PlantNotes } from './written.tsx';
import { OngoingOf } from './ongoing.tsx';
import { OverGardens } from './club.tsx';
import { PreferredOf } from './preferred.tsx';
import { Besides } from './besides.tsx';
import { classParts } from './klass.tsx';
import { HowMany, Picked } from './varietyParts.tsx';
import type { VarietyPart } from './varietyParts.tsx';
import { Why } from './why.tsx';

const classNameOf = ({ trial }: AdviceContent, { classId }: Variety): string =>
  trial.settings.classes.get(classId)?.name ?? classId;

/** People's cautions where they belong: hot fruit, fruit of an unknown cross. */
function cautionsOf({ seasons, writing, trial }: AdviceContent, variety: Variety): readonly string[] {
  const { variety: say } = writing.words;
  const isUnknownCross = isLine(variety) && (variety.mother === null || variety.father === null);
  return [
    ...(isHot(variety, seasons, trial) ? [say.hotCaution] : []),
    ...(isUnknownCross && variety.from.every((own) => own.variety === null) ? [say.crossCaution] : []),
  ];
}

/** What it was first in, in its last season: `was ripe first and tasted best`; empty where it was first in nothing. */
function firsts(content: AdviceContent, seen: SeasonSeen, variety: Variety): string {
  const { bench } = content.writing.words;
  const parts = classParts(content, seen, variety.classId, false);
  if (parts.stands.length < 2) return '';
  const what = parts.columns.flatMap(({ trait, cells, isLowerBetter }) => {
    const sign = isLowerBetter ? -1 : 1;
    const best = Math.max(...[...cells.values()].map(({ estimate }) => sign * estimate));
    const own = cells.get(variety.id);
    const bit = bench.variety.bits[trait];
    const isAlone = [...cells.values()].filter(({ estimate }) => sign * estimate === best).length === 1;
    return own && cells.size > 1 && sign * own.estimate === best && isAlone && bit !== undefined ? [bit] : [];
  });
  if (what.length === 0) return '';
  return bench.variety.firstOf(parts.stands.length, parts.name, String(seen.season.year), what);
}

/** The club's photo with the grower's caption. */
function Photo({ photo: { made, caption }, root }: { readonly photo: StandPhoto; readonly root: string }): JSX.Element {
  return (
    <figure class="photo">
      <picture>
        <source
          type="image/webp"
          srcset={made.sources.map(({ path, width }) => `${root}${path} ${width}w`).join(', ')}
          sizes="(max-width: 44rem) 60vw, 20rem"
        />
        <img src={`${root}${made.fallback}`} width={made.width} height={made.height} alt={caption} />
      </picture>
      <figcaption aria-hidden="true">{caption}</figcaption>
    </figure>
  );
}

/** The fruit, the name, the verdict with its share, one sentence. */
function Cloth({ content, variety, grown, root }: VarietyPart): JSX.Element {
  const { writing, advice, next } = content;
  const say = writing.words.bench.variety;
  const stand = content.stands.get(variety.id)!;
  const found = adviceOf(advice, variety.id);
  const last = grown.at(-1);
  const isBroad = Math.max(stand.fruit.length, stand.fruit.width) > 12;
  const about = [
    say.kinds[variety.kind],
    ...(variety.generation === null ? [] : [`F${variety.generation}`]),
    say.grownIn(grown.length),
  ];
  const excluded = next?.classes.flatMap((own) => own.excluded).find((own) => own.variety === variety.id);
  return (
    <div class="hero">
      <div class={`pic${isBroad ? ' broad' : ''}`}>
        <FruitPicture fruit={stand.fruit} id="hero" label={fruitLabel(stand, content)} />
        {stand.photo ? <Photo photo={stand.photo} root={root} /> : null}
      </div>
      <div class={stand.standing}>
        <p class="crumb s">
          <a href={to(root, addresses.varieties)}>{classNameOf(content, variety)}</a> ·{' '}
          {about.filter((text) => text !== '').join(', ')}
        </p>
        <h1>{variety.name}</h1>
        <p class="say">{last ? firsts(content, last.seen, variety) : say.notGrown}</p>
        {found && next ? (
          <>
            <p class="verdict">
              <Verdict
                standing={stand.standing}
                word={say.verdict[found.own.verdict](String(next.season))}
                size={1.7}
              />
            </p>
            <Seeds share={found.own.share} step={12.5} />
            <p class="num">
              {say.odds(found.outcome.case.spots, stand.shareText!)}{' '}
              {found.own.verdict === 'try-again'
                ? stand.isListed
                  ? say.onList
                  : say.notOnList(found.outcome.case.spots)
                : ''}{' '}
              <a href={`${to(root, addresses.methods)}#verdicts`}>{say.how}</a>
            </p>
          </>
        ) : excluded ? (
          <p>{writing.words.nextSeason.noAdvice(excluded.text)}</p>
        ) : null}
      </div>
    </div>
  );
}

/** Every figure of its seasons, what the verdict rests on, folded. */
function Folds({ content, variety, grown, root }: VarietyPart): JSX.Element {
  const { writing, next } = content;
  const { bench, tables, variety: say } = writing.words;
  const last = grown.at(-1)?.seen;
  const rating = last && ratingModels(last)[0]?.[0];
  const advice = next?.classes.flatMap(({ varieties }) => varieties).find((own) => own.variety === variety.id);
  return (
    <section class="folds" aria-labelledby="all">
      <h2 id="all">{bench.variety.all}</h2>
      <details>
        <summary>{bench.variety.seen}</summary>
        <Table
          caption={say.bySeasonCaption(percent(content))}
          head={[
            tables.season,
            tables.status,
            tables.plantsSetOut,
            say.yield,
            say.median,
            say.rating(rating === undefined ? '' : writing.trait(rating)),
          ]}
          rows={grown.map(({ seen, v }) => [
            <a href={to(root, addresses.season(seen.season.key))}>{seen.season.year}</a>,
            ...figuresOf(content, seen, v),
          ])}
        />
      </details>
      {advice ? (
        <details>
          <summary>{bench.variety.expectedTable}</summary>
          <Advice advice={advice} />
        </details>
      ) : null}
      <p class="s">
        <a href={`${root}figures.csv`}>{bench.variety.asCsv}</a>
      </p>
    </section>
  );
}

/** Season by season in small pictures, next season hollow; null without a forecast. */
function BySeason({ content, variety }: VarietyPart): JSX.Element | null {
  const { bench } = content.writing.words;
  const found = adviceOf(content.advice, variety.id);
  const pictures = found && content.advice ? seasonPictures(content.advice, found.outcome, variety.id) : [];
  if (pictures.length === 0) return null;
  return (
    <section aria-labelledby="seasons">
      <h2 id="seasons">{bench.variety.bySeason}</h2>
      <p class="m">{bench.variety.bySeasonNote(pictures.some(({ band }) => band.length > 0))}</p>
      <div class="mult">
        {pictures.map((picture) => (
          <SeasonBySeason picture={picture} colour={variety.colourRipe} />
        ))}
      </div>
    </section>
  );
}

/** A variety: its fruit and verdict, why, season by season, its pickings, beside each other variety. */
export function varietyPage(content: AdviceContent, variety: Variety): Page {
  const { stands, writing, advice } = content;
  const grown = content.seasons.flatMap((seen) =>
    seen.varieties.filter((v) => v.variety.id === variety.id).map((v) => ({ seen, v })),
  );
  const found = adviceOf(advice, variety.id);
  const words = identity(content, variety);
  const last = grown.at(-1)?.seen;
  const stand: Stand = stands.get(variety.id)!;
  return page(
    content,
    addresses.variety(variety.id),
    variety.name,
    (root) => {
      const part = { content, variety, grown, root };
      return (
        <>
          <Words html={content.words.get(wordsOf.variety(variety.id))} root={root} />
          {words === '' ? null : <p class="rest">{words}</p>}
          <OngoingOf content={content} variety={variety.id} />
          {cautionsOf(content, variety).map((text) => (
            <p class="caution">{text}</p>
          ))}
          {found && advice ? (
            <Why
              content={content}
              stand={stand}
              rows={whyRows(advice, found.outcome, found.own)}
              bar={barName(advice, found.outcome)}
              isFirm={found.own.fragile.length === 0}
            />
          ) : null}
          <BySeason {...part} />
          <OverGardens advice={advice} seen={last} variety={variety.id} colour={variety.colourRipe} />
          <PreferredOf content={content} seen={last} variety={variety.id} />
          <section class="two">
            <Picked {...part} />
            <HowMany {...part} />
          </section>
          {last ? <Besides content={content} seen={last} variety={variety} root={root} /> : null}
          <OddPlant content={content} variety={variety} root={root} />
          <CrossOf content={content} variety={variety} root={root} />
          <PlantNotes content={content} variety={variety} />
          <Folds {...part} />
          {stand.fruit.measured === null ? null : <p class="rest s">{writing.words.bench.variety.lifeSize}</p>}
        </>
      );
    },
    { hero: (root) => <Cloth content={content} variety={variety} grown={grown} root={root} /> },
  );
}
