import { limited } from '../seasonFigures/limited.ts';
import { ownMean } from '../../analyse/summaries.ts';
import type { ValueMark } from '../../analyse/expected/seasonEstimates.ts';
import type { ClassAdvice } from '../../decide/adviseClass.ts';
import type { ClassOutcome } from '../../decide/nextSeason.ts';
import type { DotRow } from '../charts/kinds.ts';
import type { Figure } from '../seasonFigures/figure.ts';
import { traitFacts } from '../../terms/traits.ts';
import { backOf, barValue, expectedIn, nameOf, of100 } from './source.ts';
import type { AdviceSource } from './source.ts';
import { keyed, nth } from '../../numerics/element.ts';

function sharesFigure(source: AdviceSource, { classId }: ClassOutcome, advice: ClassAdvice): Figure {
  const { writing, next, trial } = source;
  const { words, number } = writing;
  const say = words.nextSeason;
  const { keepFrom, dropBelow, simulations } = trial.settings.verdicts;
  const kept = advice.varieties
    .filter(({ verdict }) => verdict === 'keep')
    .map(({ variety }) => nameOf(source, variety));
  const rows = advice.varieties.map(({ variety, share, above, verdict }) => ({
    name: nameOf(source, variety),
    share: share * 100,
    above: above * 100,
    written: `${say.verdict[verdict]}, ${of100(share, source)}`,
  }));
  return {
    id: `shares-${classId}`,
    title: say.charts.shares(say.verdict.keep, kept, String(next.season)),
    measure: say.charts.sharesMeasure(number(simulations), number(keepFrom * 100), number(dropBelow * 100)),
    chart: { kind: 'shares', axis: say.charts.sharesAxis, rows, limits: [dropBelow * 100, keepFrom * 100] },
    head: [say.table.variety, say.verdictHead, say.table.share, say.table.above],
    rows: advice.varieties.map(({ variety, share, above, verdict }) => [
      nameOf(source, variety),
      say.verdict[verdict],
      of100(share, source),
      of100(above, source),
    ]),
  };
}

/** One variety's line in a chart of expected values. */
interface ExpectedLine {
  readonly row: DotRow;
  /** The expected value alone, rounded as in its interval. */
  readonly middle: string;
  readonly ownShare: number;
  /** Seasons as seen, shown unit. */
  readonly seasons: readonly number[];
  readonly seasonsText: string;
  /** Its own mean over the seasons, weighted as they are sure; null without seasons. */
  readonly ownMean: number | null;
}

/** False for a value that stands for a yield of nothing, or for what never ripened. */
const isSeen = ({ mark }: { readonly mark: ValueMark }): boolean => mark !== 'nothing-picked' && mark !== 'later-than';

function expectedLine(source: AdviceSource, trait: string, classId: string, variety: string): ExpectedLine | null {
  const { writing, next, trial } = source;
  const forecast = keyed(next.forecasts, trait);
  const unit = traitFacts(trait, trial.settings.traits).unit;
  const shown = (value: number): number => writing.shown(value, unit).value;
  const back = backOf(forecast.own);
  const expected = expectedIn(next, trait, classId, variety);
  if (!expected) return null;
  const status = nth(source.seasons, -1).varieties.find((own) => own.variety.id === variety)?.status;
  const values = forecast.values.values.filter((value) => value.variety === variety);
  const { seenNothing, seenNoneRipe } = writing.words.nextSeason;
  const standIn = (mark: ValueMark): string => (mark === 'nothing-picked' ? seenNothing : seenNoneRipe);
  const mean = ownMean(values);
  return {
    row: {
      name: nameOf(source, variety),
      group: status === 'new' ? 'new' : 'returning',
      status: writing.words.status[status === 'new' ? 'new' : 'returning'],
      estimate: shown(expected.estimate),
      low: expected.low === null ? null : shown(expected.low),
      high: expected.high === null ? null : shown(expected.high),
      written: writing.interval(expected, unit),
    },
    middle: writing.alike(expected.estimate, expected, unit),
    ownShare: expected.own.ownShare,
    seasons: values.filter(isSeen).map(({ theta }) => shown(back(theta))),
    seasonsText: values
      .map(
        (value) => `${value.year}: ${isSeen(value) ? writing.quantity(back(value.theta), unit) : standIn(value.mark)}`,
      )
      .join('; '),
    ownMean: mean === null ? null : shown(back(mean)),
  };
}

/** The rows of a goal's chart, the best first. */
function expectedLines(source: AdviceSource, outcome: ClassOutcome, { varieties }: ClassAdvice, trait: string) {
  const sign = keyed(source.next.forecasts, trait).own.better === 'lower' ? -1 : 1;
  return varieties
    .map(({ variety }) => expectedLine(source, trait, outcome.classId, variety))
    .filter((line) => line !== null)
    .toSorted((a, b) => sign * (b.row.estimate - a.row.estimate) || (a.row.name < b.row.name ? -1 : 1));
}

/** Expected value of one goal beside what was seen, the pull toward the class made visible. */
function expectedFigure(
  source: AdviceSource,
  outcome: ClassOutcome,
  advice: ClassAdvice,
  trait: string,
): Figure | null {
  const { writing, trial } = source;
  const say = writing.words.nextSeason;
  const unit = traitFacts(trait, trial.settings.traits).unit;
  const lines = expectedLines(source, outcome, advice, trait);
  if (lines.length === 0) return null;
  const shownUnit = writing.shown(0, unit).unit;
  const axis = `${writing.trait(trait)}${['points', 'fruits', 'd'].includes(shownUnit) ? '' : `, ${shownUnit}`}`;
  const bar = barValue(source, outcome, trait);
  const level = writing.percent(trial.settings.interval);
  const leaders = lines.slice(0, 3).map(({ row, middle }) => `${row.name} ${middle}`);
  return {
    id: `expected-${trait}-${outcome.classId}`,
    title: say.charts.expected(writing.trait(trait), leaders, Math.max(0, lines.length - 3)),
    measure: say.charts.expectedMeasure(axis, level),
    chart: {
      kind: 'dots',
      axis,
      rows: lines.map(({ row }) => row),
      plants: lines.flatMap(({ row, seasons }) => seasons.map((value) => ({ name: row.name, value }))),
      pulls: lines.flatMap(({ row, ownMean }) =>
        ownMean === null ? [] : [{ name: row.name, from: ownMean, to: row.estimate }],
      ),
      zero: false,
      ratioTo: null,
      ...(bar === null ? {} : { reference: writing.shown(bar, unit).value }),
    },
    head: [
      say.table.variety,
      say.charts.status,
      say.charts.expectedHead(axis, level),
      say.charts.ownHead,
      say.charts.seenHead,
    ],
    rows: lines.map((line) => [
      line.row.name,
      line.row.status,
      line.row.written,
      writing.percent(line.ownShare, 0),
      line.seasonsText,
    ]),
  };
}

/** Charts of a class's advice: shares first, then each goal. */
export function adviceFigures(source: AdviceSource, outcome: ClassOutcome): readonly Figure[] {
  const { advice } = outcome;
  if (!advice) return [];
  const expected = advice.goals.map(({ trait }) => expectedFigure(source, outcome, advice, trait));
  return [sharesFigure(source, outcome, advice), ...expected].flatMap((figure) =>
    figure ? [limited(figure, source.writing)] : [],
  );
}
