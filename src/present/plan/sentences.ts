import { clumpVariance } from '../../decide/plan/clumps.ts';
import type { ClassPlan, Plan, PlannedVariety } from '../../decide/plan/planned.ts';
import { isHot } from '../../analyse/summaries.ts';
import type { SeasonSeen } from '../../analyse/seen.ts';
import type { Day } from '../../terms/day.ts';
import { nameLookup } from '../../terms/trial.ts';
import type { Trial, Variety } from '../../terms/trial.ts';
import type { Writing } from '../numbers.ts';
import { dayWriting } from '../pages/days.ts';
import { of100 } from '../pages/crossWords.ts';

/** A plan with what it is worded from. */
export interface PlanWords {
  readonly plan: Plan;
  readonly trial: Trial;
  readonly seasons: readonly SeasonSeen[];
  readonly writing: Writing;
}

export const className = ({ trial }: PlanWords, classId: string): string =>
  trial.settings.classes.get(classId)?.name ?? classId;

/** Plants of a class, or of the whole plan. */
export const plantsOf = (classes: readonly ClassPlan[]): number =>
  classes.reduce((sum, { varieties }) => sum + varieties.reduce((own, { plants }) => own + plants, 0), 0);

/** The one sentence at the top. */
export function leadOf({ plan, writing }: PlanWords): string {
  const all = plan.classes.flatMap(({ varieties }) => varieties);
  const fresh = all.filter(({ kind }) => kind === 'newcomer').length;
  return writing.words.plan.lead(writing.number(plantsOf(plan.classes)), all.length, fresh);
}

function varietySentence(own: PlannedVariety, { trial, writing }: PlanWords): string {
  const say = writing.words.plan;
  const name = nameLookup(trial.varieties)(own.variety);
  if (own.kind === 'newcomer') return say.fresh(name, own.plants);
  if (own.kind === 'line') return say.line(name, own.plants);
  const why = own.share === null ? say.wished(name, own.plants) : say.listed(name, own.plants, of100(own.share));
  const check = own.isCheck ? ` ${say.isCheck}` : '';
  return `${why}${check}${own.settles === null ? '' : ` ${say.settles(of100(own.settles))}`}`;
}

/** Who is grown in a class, how many and why. */
export function whoIn(own: ClassPlan, words: PlanWords): readonly string[] {
  const say = words.writing.words.plan;
  const name = nameLookup(words.trial.varieties);
  return [
    ...own.varieties.map((one) => varietySentence(one, words)),
    ...(own.cut.length > 0 ? [say.cut(own.cut.map(name))] : []),
    ...(own.waiting.length > 0 ? [say.waiting(own.waiting.map(name))] : []),
    ...(own.free > 0 ? [say.freePlaces(own.free)] : []),
  ];
}

const SIX = 6;

/** What the trial will be able to tell, class by class. */
export function tellsOf(words: PlanWords): readonly string[] {
  const { plan, trial, writing } = words;
  const say = writing.words.plan;
  const { spotCorrelation } = trial.settings;
  const sentences = plan.classes.map((own) => {
    const name = className(words, own.classId);
    const told = own.tells ? say.ratio(name, writing.percent(own.tells.ratio - 1, 0)) : say.noRatio(name);
    const { variance, sizes, plants } = own.layout;
    const df = plants.length - own.varieties.length - sizes.length + 1;
    const blocks = variance
      ? ` ${say.blocks(sizes.length, writing.number(variance.average, 2), writing.number(variance.without, 2), Math.max(0, df))}`
      : '';
    const isEverywhere =
      sizes.length > 1 && variance !== null && own.varieties.every((one) => one.plants >= sizes.length);
    return `${told}${blocks}${isEverywhere ? ` ${say.everyBlock}` : ''}`;
  });
  const worth = (clumps: number): string => writing.number(1 / clumpVariance(SIX, clumps, spotCorrelation), 1);
  const isOnce = plan.classes.some(({ varieties }) => varieties.some(({ plants }) => plants === 1));
  return [
    ...sentences,
    ...(plan.classes.some((own) => own.layout.isTogether) ? [say.together(worth(1), worth(2))] : []),
    ...(plan.classes.every((own) => own.layout.isTogether) ? [] : [say.apart]),
    ...(isOnce ? [say.firstLook] : []),
  ];
}

/** Sentences about the frost; empty where nothing is known of it. */
export function frostIn({ plan, trial, writing }: PlanWords): readonly string[] {
  const say = writing.words.plan;
  if (!plan.frost) return [];
  const { risk, unseen, safe } = plan.frost;
  const out = plan.classes.find(({ dates }) => dates.plantOut !== null)?.dates;
  const told =
    out?.plantOut != null && out.frost !== null
      ? [
          say.frost(
            of100(out.frost),
            writing.date(out.plantOut),
            writing.date(safe),
            of100(trial.settings.plan.frostRisk),
          ),
        ]
      : [];
  return [...told, say.frostFrom(risk.springs, risk.hasStated), ...(unseen > 0 ? [say.unseen(unseen)] : [])];
}

const dayOr = (day: Day | null, writing: Writing): string => (day === null ? '' : writing.date(day));

/** Rows of the table of dates. */
export const dateRows = (words: PlanWords): readonly (readonly string[])[] =>
  words.plan.classes
    .filter(({ dates }) => dates.plantOut !== null)
    .map(({ classId, dates: { sow, potOn, hardenOff, plantOut, frost } }) => [
      className(words, classId),
      ...[sow, potOn, hardenOff, plantOut].map((day) => dayOr(day, words.writing)),
      frost === null ? '' : of100(frost),
    ]);

/** Rows of the table of first ripe fruit; empty where nothing is known of it. */
export function ripeRows({ plan, trial, writing }: PlanWords): readonly (readonly string[])[] {
  const days = dayWriting(trial.settings);
  const say = writing.words.plan;
  return plan.classes.flatMap(({ varieties }) =>
    varieties.flatMap(({ variety, ahead }) => {
      if (!ahead) return [];
      const own = trial.varieties.find(({ id }) => id === variety);
      const day = writing.date(ahead.expected);
      const claim = own?.claimDays ? `, ${say.packet([...new Set(own.claimDays)].join('–'))}` : '';
      return [
        [
          own?.name ?? variety,
          ahead.isClass ? `${say.ofClass(day)}${claim}` : day,
          of100(ahead.chance),
          writing.date(ahead.latest),
          ahead.inWarmthOf.map((one) => say.inWarmth(days.long(one.day), String(one.year))).join(', '),
        ],
      ];
    }),
  );
}

/** Rows of the table of seed. */
export const seedRows = ({ plan, trial, writing }: PlanWords): readonly (readonly string[])[] =>
  plan.classes.flatMap(({ varieties }) =>
    varieties.map(({ variety, plants, seeds }) => [
      nameLookup(trial.varieties)(variety),
      String(plants),
      writing.number(seeds.seeds),
      seeds.atHand === null ? '' : writing.number(seeds.atHand),
      seeds.buy === 0 ? '' : writing.number(seeds.buy),
      seeds.lots.join(', '),
    ]),
  );

/** Cautions, each only where it applies. */
export function planCautions({ plan, trial, seasons, writing }: PlanWords): readonly string[] {
  const say = writing.words.plan.cautions;
  const ids = new Set(plan.classes.flatMap(({ varieties }) => varieties.map(({ variety }) => variety)));
  const grown = trial.varieties.filter(({ id }) => ids.has(id));
  const isAnyHot = grown.some((own: Variety) => isHot(own, seasons, trial));
  const lots = new Set(plan.classes.flatMap(({ varieties }) => varieties.flatMap(({ seeds }) => seeds.lots)));
  const isTreated = trial.lots.some(({ id, isTreated: own }) => own && lots.has(id));
  return [...(isAnyHot ? [say.hot] : []), ...(isTreated ? [say.treated] : []), say.local];
}

/** What is to be done on which day, in order of days. */
export function todoOf(words: PlanWords): readonly { readonly day: Day; readonly text: string }[] {
  const { plan, trial, writing } = words;
  const say = writing.words.plan.todo;
  const byDay = (of: (own: ClassPlan) => Day | null, text: (names: readonly string[]) => string) => {
    const days = new Map<Day, string[]>();
    for (const own of plan.classes) {
      const day = of(own);
      if (day !== null) days.set(day, [...(days.get(day) ?? []), className(words, own.classId)]);
    }
    return [...days].map(([day, names]) => ({ day, text: text(names) }));
  };
  const looks = lookDays(words);
  const every = trial.settings.seasons.get(plan.year)?.lookEvery ?? 7;
  return [
    ...byDay(({ dates }) => dates.sow, say.sow),
    ...byDay(({ dates }) => dates.potOn, say.potOn),
    ...byDay(({ dates }) => dates.hardenOff, say.hardenOff),
    ...byDay(({ dates }) => dates.plantOut, say.plantOut),
    ...looks.slice(0, 1).map((day) => ({ day, text: say.look(every) })),
    ...(plan.tasting?.day ? [{ day: plan.tasting.day, text: say.taste }] : []),
    { day: endOf(words), text: say.end },
  ].toSorted((a, b) => a.day - b.day);
}

/** The season's last day. */
function endOf({ plan, trial: { settings } }: PlanWords): Day {
  const { month, date } = settings.seasonEnd;
  return settings.seasons.get(plan.year)?.end ?? ((Date.UTC(plan.year, month - 1, date) / 86_400_000) as Day);
}

const BEFORE = 14;
const MOST_LOOKS = 10;

/** Days of looking for ripe fruit: from two weeks before the earliest low limit on. */
export function lookDays(words: PlanWords): readonly Day[] {
  const { plan, trial } = words;
  const starts = plan.classes.flatMap(({ varieties, dates }) =>
    varieties.flatMap(({ ahead }) =>
      ahead && dates.plantOut !== null ? [dates.plantOut + Math.floor(ahead.days.low)] : [],
    ),
  );
  if (starts.length === 0) return [];
  const every = Math.max(1, trial.settings.seasons.get(plan.year)?.lookEvery ?? 7);
  const first = Math.min(...starts) - BEFORE;
  return Array.from({ length: MOST_LOOKS }, (_, i) => (first + i * every) as Day).filter((day) => day <= endOf(words));
}
