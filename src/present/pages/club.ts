import { varietyOverGardens } from '../../analyse/expected/gardenExpected.ts';
import type { InOneGarden } from '../../analyse/expected/gardenExpected.ts';
import { clubSeen } from '../../analyse/club/clubSeen.ts';
import type { ClubClass, ClubSeen } from '../../analyse/club/clubSeen.ts';
import type { GroupsSeen } from '../../analyse/club/groups.ts';
import type { SeasonSeen } from '../../analyse/seen.ts';
import { gardensNeeded, GARDENS_ENOUGH } from '../../decide/gardensNeeded.ts';
import { nth } from '../../numerics/element.ts';
import { oncePer } from '../../terms/once.ts';
import { nameLookup } from '../../terms/trial.ts';
import type { Trial } from '../../terms/trial.ts';
import type { AdviceSource } from '../nextSeason/source.ts';
import type { Writing } from '../numbers.ts';
import type { TableWords } from '../tables.ts';

interface Source {
  readonly trial: Trial;
  readonly writing: Writing;
}

const ofTrial = oncePer((trial: Trial) => oncePer((seen: SeasonSeen) => clubSeen(trial, seen)));

/** A season as a club, worked out once. */
export const clubOf = (trial: Trial, seen: SeasonSeen): ClubSeen | null => ofTrial(trial)(seen);

/** What came back of what was sent, and what a figure stands for. */
export const clubSentences = ({ sent, received, counted }: ClubSeen, { words, number }: Writing): readonly string[] => [
  words.club.lead(number(sent), number(received), number(counted)),
  words.club.unit,
];

/** What hangs together in a class, what tells nothing, and how many gardens it would take. */
function classSentences(own: ClubClass, { trial, writing }: Source, advice: AdviceSource | null): readonly string[] {
  const { club: say } = writing.words;
  const name = nameLookup(trial.varieties);
  const yields = advice?.next.forecasts.get('yield')?.gardens ?? null;
  const needed = yields ? gardensNeeded(yields, own.classId) : null;
  return [
    ...own.parts.slice(1).map((part) => say.apart(part.map(name))),
    ...(own.lone > 0 ? [say.lone(writing.number(own.lone))] : []),
    ...(own.empty > 0 ? [say.empty(writing.number(own.empty))] : []),
    ...(needed
      ? [
          say.needed(
            writing.number(needed.now, 1),
            writing.number(needed.forFifth),
            writing.number(needed.forTwoFifths),
          ),
        ]
      : []),
    ...(needed && needed.now >= GARDENS_ENOUGH ? [say.enough] : []),
  ];
}

/** How many gardens a variety was sent to, sent it back, and would grow it again; null for a season of one garden. */
export function returnsOf(source: Source, seen: SeasonSeen, variety: string): TableWords | null {
  const own = clubOf(source.trial, seen)?.classes.find(({ varieties }) =>
    varieties.some((one) => one.variety === variety),
  );
  return own ? returnsTable({ varieties: own.varieties.filter((one) => one.variety === variety) }, source) : null;
}

function returnsTable({ varieties }: Pick<ClubClass, 'varieties'>, { trial, writing }: Source): TableWords {
  const { returns: say } = writing.words.club;
  const name = nameLookup(trial.varieties);
  const { number, percent } = writing;
  return {
    caption: say.caption(percent(trial.settings.interval)),
    head: say.head,
    rows: varieties.map(({ variety, returns: { sent, received, again, outer } }) => [
      name(variety),
      number(sent),
      number(received),
      again ? say.again(number(again.k), number(again.n), percent(again.low, 0), percent(again.high, 0)) : say.none,
      outer ? say.outer(percent(outer[0], 0), percent(outer[1], 0)) : say.none,
    ]),
  };
}

/** What a group is called, with how many gardens it has. */
function nameOfGroup(kind: GroupsSeen['kind'], name: string, gardens: number, { words, number }: Writing): string {
  const { groups: say } = words.club;
  return say.name(kind === 'setting' ? (say.setting[name] ?? name) : name, number(gardens));
}

function groupsTable(
  own: GroupsSeen,
  { trial, writing }: Source,
): { readonly title: string; readonly table: TableWords; readonly sentence: string | null } {
  const { groups: say, returns } = writing.words.club;
  const name = nameLookup(trial.varieties);
  const varieties = [...new Set(own.groups.flatMap(({ estimates }) => [...estimates.keys()]))].toSorted((a, b) =>
    name(a) < name(b) ? -1 : 1,
  );
  const isApart = own.interaction !== null && own.interaction.p < 1 - trial.settings.interval;
  return {
    title: say.title[own.kind],
    sentence: own.interaction === null ? null : isApart ? say.differ : say.alike,
    table: {
      caption: say.caption(writing.percent(trial.settings.interval), writing.number(trial.settings.gardens.least)),
      head: [say.variety, ...own.groups.map((group) => nameOfGroup(own.kind, group.name, group.gardens, writing))],
      rows: varieties.map((id) => [
        name(id),
        ...own.groups.map(({ estimates }) => {
          const estimate = estimates.get(id);
          return estimate ? say.figure(writing.interval(estimate, 'g'), writing.number(estimate.n)) : returns.none;
        }),
      ]),
    },
  };
}

/** A class's part of a club's season. */
export interface ClubClassWords {
  readonly title: string;
  readonly sentences: readonly string[];
  readonly returns: TableWords;
  readonly groups: readonly ReturnType<typeof groupsTable>[];
}

/** What the gardens say of a class; null for a season of one garden. */
export function clubClassWords(
  source: Source,
  seen: SeasonSeen,
  classId: string,
  advice: AdviceSource | null,
): ClubClassWords | null {
  const own = clubOf(source.trial, seen)?.classes.find((one) => one.classId === classId);
  if (!own) return null;
  return {
    title: source.writing.words.club.title,
    sentences: classSentences(own, source, advice),
    returns: returnsTable(own, source),
    groups: own.groups.map((groups) => groupsTable(groups, source)),
  };
}

/** So many gardens are drawn line by line; of more as many, evenly spaced from the least to the most. */
const MOST_LINES = 60;

/** A variety over the gardens, for a picture. */
export interface CaterpillarWords {
  readonly lines: readonly InOneGarden[];
  readonly gardens: number;
  readonly from: number;
  readonly to: number;
  readonly marks: readonly { readonly at: number; readonly text: string }[];
  readonly sentences: readonly string[];
  readonly caption: string;
}

const TIMES = [0.1, 0.2, 0.33, 0.5, 0.75, 1, 1.33, 2, 3, 5, 10];

/** A variety's yield over the club's gardens, least first; null where fewer have records than may be told of. */
export function caterpillar({ trial, next, writing }: AdviceSource, variety: string): CaterpillarWords | null {
  const yields = next.forecasts.get('yield')?.gardens ?? null;
  const own = yields?.classes.find(({ varieties }) => varieties.includes(variety));
  if (!yields || !own) return null;
  const { interval, gardens } = trial.settings;
  const { gardens: count, lines } = varietyOverGardens(own, yields.expected.cells, variety, interval, MOST_LINES);
  if (count < gardens.least) return null;
  const [low, high] = [Math.min(...lines.map((one) => one.low)), Math.max(...lines.map((one) => one.high))];
  const { variety: say } = writing.words.club;
  const times = (log: number): string => writing.number(Math.exp(log), Math.exp(log) < 9.95 ? 1 : 0);
  const from = Math.min(low, -0.1);
  const to = Math.max(high, 0.1);
  return {
    lines,
    gardens: count,
    from,
    to,
    marks: TIMES.filter((own_) => Math.log(own_) > from && Math.log(own_) < to)
      .filter((_, i, kept) => kept.length <= 5 || i % 2 === kept.indexOf(1) % 2)
      .map((own_) => ({
        at: Math.log(own_),
        text: say.axis(writing.number(own_, own_ % 1 === 0 ? 0 : own_ === 0.5 ? 1 : 2)),
      })),
    sentences: [
      say.range(times(nth(lines, 0).mean), times(nth(lines, -1).mean), writing.number(count)),
      say.spread(`±${writing.percent(Math.exp(yields.expected.withGarden) - 1, 0)}`),
    ],
    caption: say.caption(writing.percent(interval)),
  };
}

/** A variety in the groups of a club, a row a group, on one scale. */
export interface GroupRows {
  readonly title: string;
  readonly head: readonly string[];
  readonly rows: readonly {
    readonly name: string;
    readonly figure: string;
    readonly estimate: number;
    readonly low: number | null;
    readonly high: number | null;
  }[];
  readonly to: number;
}

/** A variety's yield in each region and under cover or in the open; none where too few gardens are in two of them. */
export function groupRows({ trial, writing }: Source, seen: SeasonSeen, variety: string): readonly GroupRows[] {
  const { groups: say } = writing.words.club;
  const classes = clubOf(trial, seen)?.classes ?? [];
  return classes.flatMap((own) =>
    own.groups.flatMap(({ kind, groups }): readonly GroupRows[] => {
      const rows = groups.flatMap(({ name, estimates }) => {
        const found = estimates.get(variety);
        if (!found || found.estimate === null) return [];
        const { estimate, low, high, n } = found;
        return [
          { name: nameOfGroup(kind, name, n, writing), figure: writing.interval(found, 'g'), estimate, low, high },
        ];
      });
      const to = Math.max(...rows.flatMap(({ estimate, high }) => [estimate, high ?? estimate]));
      return rows.length < 2 ? [] : [{ title: say.title[kind], head: say.rowHead, rows, to }];
    }),
  );
}
