import type { JSX } from 'preact';
import type { SeasonSeen } from '../../src/analyse/seen.ts';
import { classSentences, freshRows } from '../../src/present/pages/classSentences.ts';
import { plantModel } from '../../src/analyse/traitsSeen.ts';
import { areApart, areUnjoined, matrixOf } from '../../src/present/pages/matrix.ts';
import type { MatrixColumn } from '../../src/present/pages/matrix.ts';
import type { Stand } from '../../src/present/pages/stands.ts';
import { addresses } from '../../src/terms/addresses.ts';
import { nameLookup } from '../../src/terms/trial.ts';
import { AdviceSummary } from '../advice.tsx';
import { Bench, FreshBesideReturning, Matrix } from '../bench/matrix.tsx';
import type { BesideContent, ClassContent, ClassFiguresContent, Page, SeasonPart } from '../content.ts';
import { to } from '../layout.tsx';
import { ClubClass } from './club.tsx';
import { Preferred } from './preferred.tsx';
import { page } from '../page.tsx';
import { Picture, Table } from '../parts.tsx';

/** Everything that is shown of a class in a season. */
export interface ClassParts {
  readonly name: string;
  readonly columns: readonly MatrixColumn[];
  /** In order of the first column, the best first. */
  readonly stands: readonly Stand[];
  readonly fresh: ReadonlySet<string>;
  readonly lead: string;
  readonly beyond: string;
  readonly news: ReturnType<typeof freshRows>;
  readonly isLast: boolean;
}

/** A class in a season: its matrix with the chief traits, or with all of them, and what is said of it. */
export function classParts(content: BesideContent, seen: SeasonSeen, classId: string, isWhole: boolean): ClassParts {
  const { trial, writing, compared, stands } = content;
  const source = { trial, seen, writing, classId, compared: compared.get(seen.season.key)! };
  const columns = matrixOf(source, isWhole);
  const members = seen.varieties.filter(({ variety }) => variety.classId === classId);
  const first = columns[0];
  const sign = first?.isLowerBetter === true ? 1 : -1;
  const order = (id: string): number => sign * (first?.cells.get(id)?.estimate ?? (sign < 0 ? -Infinity : Infinity));
  return {
    name: trial.settings.classes.get(classId)?.name ?? classId,
    columns,
    stands: members
      .map(({ variety }) => stands.get(variety.id)!)
      .toSorted((a, b) => order(a.variety.id) - order(b.variety.id) || (a.variety.name < b.variety.name ? -1 : 1)),
    fresh: new Set(members.filter(({ status }) => status === 'new').map(({ variety }) => variety.id)),
    ...classSentences(source, columns, nameLookup(trial.varieties)),
    news: freshRows(source, columns),
    isLast: seen === content.seasons.at(-1),
  };
}

/** The matrix of a class with its caption. */
export function ClassMatrix({
  content,
  seen,
  parts,
  root,
}: {
  readonly content: BesideContent;
  readonly seen: SeasonSeen;
  readonly parts: ClassParts;
  readonly root: string;
}): JSX.Element | null {
  if (parts.columns.length === 0) return null;
  const { writing, trial } = content;
  const level = writing.percent(trial.settings.interval);
  return (
    <Matrix
      content={content}
      columns={parts.columns}
      stands={parts.stands}
      fresh={parts.fresh}
      caption={writing.words.bench.matrix.caption(parts.name, String(seen.season.year), level)}
      root={root}
      hasVerdicts={parts.isLast}
    />
  );
}

/** Above so many varieties the pairs are a file, not a picture. */
const PAIRS_TO = 12;

/** Which pairs differ beyond chance, as the distances of towns are printed in a road atlas. */
function Pairs({
  content,
  parts,
}: {
  readonly content: BesideContent;
  readonly parts: ClassParts;
}): JSX.Element | null {
  const say = content.writing.words.bench.klass;
  const column = parts.columns.find(({ cells }) => [...cells.values()].some(({ letters }) => letters !== ''));
  if (!column || parts.stands.length < 2) return null;
  const shown = parts.stands.filter(({ variety }) => (column.cells.get(variety.id)?.letters ?? '') !== '');
  const lettersOf = ({ variety }: Stand): string => column.cells.get(variety.id)!.letters;
  return (
    <section aria-labelledby="pairs">
      <h2 id="pairs">{say.pairs}</h2>
      {shown.length > PAIRS_TO ? (
        <p>{say.pairsMany}</p>
      ) : (
        <Table
          caption={say.pairsNote(content.writing.trait(column.trait))}
          head={['', ...shown.slice(0, -1).map(({ variety }) => variety.name)]}
          rows={shown.slice(1).map((own, i) => [
            own.variety.name,
            ...shown.slice(0, i + 1).map((other) => {
              if (areUnjoined(lettersOf(own), lettersOf(other))) return '–';
              return areApart(lettersOf(own), lettersOf(other)) ? `● ${say.clear}` : '○';
            }),
            ...shown.slice(i + 1, -1).map(() => ''),
          ])}
        />
      )}
    </section>
  );
}

/** The tables that the page's charts are drawn from, to download. */
function DataLinks({ content, seen, root }: SeasonPart<ClassContent>): JSX.Element {
  const own = content.downloads.filter(({ path }) => path === 'figures.csv' || path.startsWith(`${seen.season.key}/`));
  return (
    <p class="s">
      {content.writing.words.bench.klass.asCsv}{' '}
      {own.map(({ path, title }, i) => (
        <>
          {i === 0 ? '' : ' · '}
          <a href={`${root}${path}`}>{title}</a>
        </>
      ))}
    </p>
  );
}

/** A class of a season: its fruit, what stood out, every recorded trait, which pairs differ. */
export function classPage(content: ClassContent, seen: SeasonSeen, classId: string): Page {
  const parts = classParts(content, seen, classId, true);
  const { season } = seen;
  const { bench } = content.writing.words;
  const address = addresses.klass(season.key, classId);
  const title = `${parts.name} ${season.year}`;
  return page(
    content,
    address,
    title,
    (root) => (
      <>
        <section>
          <ClassMatrix content={content} seen={seen} parts={parts} root={root} />
        </section>
        {parts.isLast ? (
          <section aria-labelledby="advised">
            <h2 id="advised">{bench.klass.verdicts(String(season.year + 1))}</h2>
            <AdviceSummary content={content} classId={classId} root={root} />
          </section>
        ) : null}
        {parts.news.length > 0 ? (
          <section>
            <FreshBesideReturning content={content} rows={parts.news} />
          </section>
        ) : null}
        <Preferred content={content} seen={seen} classId={classId} />
        <ClubClass content={content} seen={seen} classId={classId} advice={parts.isLast ? content.advice : null} />
        <Pairs content={content} parts={parts} />
        <p class="more">
          <a href={to(root, addresses.classFigures(season.key, classId))}>{bench.klass.figures}</a>
          {' · '}
          <a href={to(root, addresses.season(season.key))}>{bench.season.title(String(season.year))}</a>
        </p>
        <DataLinks content={content} seen={seen} root={root} />
      </>
    ),
    {
      hero: (root) => (
        <div class="kh">
          <div class="said">
            <p class="crumb s">
              <a href={to(root, addresses.season(season.key))}>{bench.season.title(String(season.year))}</a>
            </p>
            <h1>{parts.name}</h1>
            <p class="say">{parts.lead}</p>
            <p>{parts.beyond}</p>
          </div>
          <Bench stands={parts.stands} root={root} prefix="bench" />
        </div>
      ),
    },
  );
}

/** In which classes intervals are widened because plants of a variety stood together; null where in none. */
function togetherSentence(seen: SeasonSeen, { trial, writing }: BesideContent): string | null {
  const model = plantModel(seen, 'yield');
  if (!model || model.classes.length === 0 || trial.settings.spotCorrelation === 0) return null;
  const names = model.classes
    .filter(({ classId }) => model.layouts.get(classId) === 'together')
    .map(({ classId }) => trial.settings.classes.get(classId)?.name ?? classId);
  if (names.length === 0) return null;
  const rho = writing.number(trial.settings.spotCorrelation, 2);
  return writing.words.season.together(rho, names.length === model.classes.length ? [] : names);
}

/** Every table and chart of a class in a season, for those who want to see what stands behind it; printable. */
export function classFiguresPage(content: ClassFiguresContent, seen: SeasonSeen, classId: string): Page {
  const { season } = seen;
  const { bench } = content.writing.words;
  const name = content.trial.settings.classes.get(classId)?.name ?? classId;
  const report = content.reports.get(season.key)?.get(classId);
  const fruit = content.pictures.get(season.key)?.fruits.get(classId);
  const together = togetherSentence(seen, content);
  return page(
    content,
    addresses.classFigures(season.key, classId),
    bench.klass.figuresTitle(name, String(season.year)),
    (root) => {
      const around = { content, root, when: String(season.year) };
      return (
        <>
          <p>
            <a href={to(root, addresses.klass(season.key, classId))}>{bench.klass.back(name)}</a>
          </p>
          {together === null ? null : <p class="rest">{together}</p>}
          {report?.findings.map((text) => (
            <p>{text}</p>
          ))}
          {report && report.cautions.length > 0 ? (
            <ul class="rest">
              {report.cautions.map((text) => (
                <li>{text}</li>
              ))}
            </ul>
          ) : null}
          {report?.tables.map((table) => (
            <Table {...table} caption={`${name}. ${table.caption}`} root={root} />
          ))}
          {(content.figures.get(season.key)?.get(classId) ?? []).map((drawn) => (
            <Picture picture={drawn} {...around} />
          ))}
          {fruit ? <Picture picture={fruit} {...around} /> : null}
        </>
      );
    },
  );
}
