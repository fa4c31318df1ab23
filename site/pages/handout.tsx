import { recordsOf } from '../../src/terms/record.ts';
import { addresses } from '../../src/terms/addresses.ts';
import type { JSX } from 'preact';
import { plantModel, ratingModels, ripeningModel } from '../../src/analyse/traitsSeen.ts';
import type { SeasonSeen } from '../../src/analyse/seen.ts';
import { dayWriting, startOf } from '../../src/present/pages/days.ts';
import type { Estimate } from '../../src/terms/estimate.ts';
import { StandPicture } from '../bench/fruit.tsx';
import { Seeds, Verdict } from '../bench/signs.tsx';
import type { NextContent, Page, HandoutContent } from '../content.ts';
import { page } from '../page.tsx';
import { classesOf } from '../seasonTables.tsx';

/** Side one: every variety advised on, by class, its fruit to scale, its sign, its seeds; a line where the list ends. */
function Lists({
  content,
  next,
  root,
}: {
  readonly content: HandoutContent;
  readonly next: NextContent;
  readonly root: string;
}): JSX.Element {
  const { bench } = content.writing.words;
  return (
    <div class="lists">
      {content.advice!.next.classes.map((outcome) => {
        const own = next.classes.find(({ classId }) => classId === outcome.classId)!;
        const { list = [], varieties = [] } = outcome.advice ?? {};
        const rest = varieties.map(({ variety }) => variety).filter((id) => !list.includes(id));
        const item = (id: string): JSX.Element => {
          const stand = content.stands.get(id)!;
          const { variety, standing, share, shareText } = stand;
          return (
            <li class={standing}>
              <span class="stand">
                <StandPicture stand={stand} root={root} prefix="sheet" />
              </span>
              <span>
                <b>{variety.name}</b> <Verdict standing={standing} word={bench.standing[standing]} size={0.8} />
                <br />
                <Seeds share={share!} step={6.3} />
                <span class="num">{shareText}</span>
              </span>
            </li>
          );
        };
        return (
          <section>
            <h2>{bench.front.spots(own.name, outcome.case.spots)}</h2>
            <ul>
              {list.map(item)}
              {rest.length > 0 ? (
                <li class="ends">
                  {outcome.advice && outcome.advice.newcomerSpots > 0
                    ? bench.front.free(outcome.advice.newcomerSpots)
                    : bench.next.ends}
                </li>
              ) : null}
              {rest.map(item)}
            </ul>
          </section>
        );
      })}
    </div>
  );
}

interface Figures {
  readonly content: HandoutContent;
  readonly seen: SeasonSeen;
}

/** A variety's figures on side two: yield, first ripe fruit, score, each with its range. */
function cellsOf({ content, seen }: Figures, id: string): readonly (readonly [text: string, name: string])[] {
  const { writing, trial } = content;
  const start = startOf(seen, [id], trial.settings);
  const { short } = dayWriting(trial.settings);
  const rating = ratingModels(seen)[0]?.[1].estimates.get(id);
  const pair = (own: Estimate | undefined, unit: string): readonly (readonly [string, string])[] => {
    const [figure, range] = own && own.estimate !== null ? writing.parted(own, unit) : ['', ''];
    return [
      [figure, 'r b'],
      [range, ''],
    ];
  };
  const model = ripeningModel(seen)?.estimates.get(id);
  const days =
    model && model.estimate !== null && start !== null
      ? ([
          [short(start + model.estimate), 'r b'],
          [
            model.low === null || model.high === null
              ? ''
              : writing.words.figure.range(short(start + model.low), short(start + model.high)),
            '',
          ],
        ] as const)
      : pair(model, 'd');
  return [...pair(plantModel(seen, 'yield')?.estimates.get(id), 'g'), ...days, ...pair(rating, 'points')];
}

/** The varieties of a class in order of share. */
function ClassRows({ content, seen, classId }: Figures & { readonly classId: string }): JSX.Element {
  const { bench } = content.writing.words;
  return (
    <>
      {seen.varieties
        .filter(({ variety }) => variety.classId === classId)
        .toSorted(
          (a, b) => (content.stands.get(b.variety.id)!.share ?? -1) - (content.stands.get(a.variety.id)!.share ?? -1),
        )
        .map(({ variety, status, plantsSetOut }) => (
          <tr>
            <th scope="row">
              {variety.name} {status === 'new' ? <small class="m">{bench.isNew}</small> : null}
            </th>
            <td class="r">{plantsSetOut}</td>
            {cellsOf({ content, seen }, variety.id).map(([text, own]) => (
              <td class={own === '' ? 'm' : own}>{text}</td>
            ))}
          </tr>
        ))}
    </>
  );
}

/** Side two: what they did, one table by class. */
function Results({ content, seen }: Figures): JSX.Element {
  const { writing } = content;
  const { bench, tables } = writing.words;
  const say = bench.handout;
  const rating = ratingModels(seen)[0]?.[0];
  const head = [
    [say.plants, 'r'],
    [say.yield, 'r'],
    [say.between, ''],
    [say.firstRipe, 'r'],
    [say.between, ''],
    [rating === undefined ? '' : writing.trait(rating), 'r'],
    [say.between, ''],
  ] as const;
  return (
    <div class="scroll" tabIndex={0} role="group" aria-label={say.did(String(seen.season.year))}>
      <table>
        <caption class="vh">{say.did(String(seen.season.year))}</caption>
        <thead>
          <tr>
            <th scope="col">{tables.variety}</th>
            {head.map(([text, name]) =>
              text === '' ? (
                <td></td>
              ) : (
                <th scope="col" class={name === '' ? undefined : name}>
                  {text}
                </th>
              ),
            )}
          </tr>
        </thead>
        {classesOf(content, seen).map(({ id, name }) => (
          <tbody>
            <tr class="g">
              <th colSpan={8} scope="rowgroup">
                {name}
              </th>
            </tr>
            <ClassRows content={content} seen={seen} classId={id} />
          </tbody>
        ))}
      </table>
    </div>
  );
}

/** Two printed sides for the club evening: what to grow with its fruit, then what they did and how sure it is. */
export function handoutPage(content: HandoutContent, seen: SeasonSeen): Page {
  const { writing, trial, next, advice, stands } = content;
  const { handout: say, bench } = writing.words;
  const year = String(seen.season.year);
  const { url } = trial.settings.publish;
  const isLast = seen === content.seasons.at(-1);
  const listed = isLast ? (advice?.next.classes.flatMap((own) => own.advice?.list ?? []) ?? []) : [];
  const keeps = listed.filter((id) => stands.get(id)!.standing === 'keep').length;
  const spots = advice?.next.classes.reduce((sum, own) => sum + (own.advice ? own.case.spots : 0), 0) ?? 0;
  const level = 100 * trial.settings.interval;
  const title = isLast && next ? bench.handout.title(String(next.season)) : say.title(year);
  return page(
    content,
    addresses.handout(seen.season.key),
    title,
    (root) => (
      <>
        <div class="side">
          <p class="s">
            {[
              trial.settings.title,
              say.intro(trial.settings.place ?? '', writing.date(recordsOf(seen.season).last ?? seen.season.lastDay)),
            ].join('. ')}
          </p>
          {isLast && next ? (
            <>
              <p>{bench.handout.lead(listed.length, spots, keeps, listed.length - keeps)}</p>
              <Lists content={content} next={next} root={root} />
              <p class="s m">{bench.handout.key(writing.number(trial.settings.verdicts.simulations))}</p>
            </>
          ) : (
            <p>{say.older}</p>
          )}
        </div>
        <div class="side">
          <h2>{bench.handout.did(year)}</h2>
          <p>{bench.handout.didNote}</p>
          <Results content={content} seen={seen} />
          <p class="s">{bench.handout.likely(writing.number(level, level % 1 === 0 ? 0 : 1))}</p>
          {isLast && content.front && content.front.surprised.length > 0 ? (
            <p class="s">
              <b>{bench.handout.surprises}.</b> {content.front.surprised.slice(0, 4).join(' ')}
            </p>
          ) : null}
          <p class="caution s">{say.cautions}</p>
          {content.qr === null || url === null ? null : (
            <div class="qr">
              <div dangerouslySetInnerHTML={{ __html: content.qr }} />
              <p>
                {say.site} <strong>{url}</strong>
              </p>
            </div>
          )}
        </div>
      </>
    ),
    { isSheet: true },
  );
}
