import { listed } from './shared.ts';

const gardens = (n: string): string => `${n} ${n === '1' ? 'garden' : 'gardens'}`;

/** Words about a season of several gardens. */
export const club = {
  lead: (sent: string, received: string, counted: string) =>
    `${sent === received ? `Records came from all ${gardens(sent)}` : `Records came from ${received} of ${gardens(sent)}`}; ${counted} grew two varieties or more and so tell one from another.`,
  unit: 'A variety in a garden is one look at it, however many plants it had there; figures are those of a middling garden of the club.',
  title: 'The gardens',
  apart: (one: readonly string[]) =>
    `${one.length === 1 ? 'No garden joins' : 'Gardens join'} ${listed(one)}${one.length === 1 ? ' to the others' : ' with each other, none with the others'}: nothing compares them, and their letters begin with a number.`,
  lone: (n: string) => `${gardens(n)} grew one variety of the class and ${n === '1' ? 'tells' : 'tell'} no difference.`,
  empty: (n: string) => `${gardens(n)} picked nothing of the class and ${n === '1' ? 'tells' : 'tell'} no difference.`,
  needed: (now: string, fifth: string, twoFifths: string) =>
    `For a true difference of a fifth to be seen in four seasons of five a variety needs about ${gardens(fifth)}, of two fifths about ${twoFifths}; it had ${now} on average. With fewer it is seen less often.`,
  enough: 'From ten gardens a variety on, another season tells more than more gardens.',
  returns: {
    caption: (level: string) =>
      `What members were sent and what came back. Would be grown again: k of n members with the ${level} interval, from five answers on; the range if all the silent had said no, or yes, where fewer than 80 of 100 answered.`,
    head: ['Variety', 'Sent to', 'Came back', 'Grow again', 'With the silent'],
    again: (k: string, n: string, low: string, high: string) => `${k} of ${n} (${low} to ${high})`,
    outer: (low: string, high: string) => `${low} to ${high}`,
    none: '–',
  },
  groups: {
    rowHead: ['Gardens', 'From nothing up', 'Yield a plant'],
    title: { region: 'Regions', setting: 'Under cover and in the open' },
    setting: { open: 'In the open', cover: 'Under cover' } as Readonly<Record<string, string>>,
    caption: (level: string, least: string) =>
      `Yield a plant in a middling garden of each group with its ${level} interval. A figure is shown where ${least} gardens or more stand behind it and none has over half of its plants.`,
    variety: 'Variety',
    name: (name: string, n: string) => `${name} (${gardens(n)})`,
    figure: (interval: string, n: string) => `${interval}; ${gardens(n)}`,
    differ: 'Varieties do differently in different groups.',
    alike: 'Nothing shows that varieties do differently in different groups.',
  },
  /** Where the unit is a variety in a garden, in place of plantings and tasters. */
  tables: {
    plantings: 'Gardens',
    yields: (level: string) => `Usable yield per plant in a middling garden, with ${level} intervals; n counts gardens`,
    medianSeen: 'Median of these gardens',
    countsPlantings: 'n counts gardens.',
    looks: (days: number) =>
      `${days === 0 ? 'The day on which ripe fruit was found counts as the day it ripened.' : `Fruit found ripe may have been ripe for up to ${days === 1 ? 'a day' : `${days} days`}; the model counts that, the median does not.`} The model sees every garden through its other varieties.`,
    measures: (level: string) => `Measurements, means of gardens with ${level} intervals`,
    tasting: (level: string) => `Tasting, with ${level} intervals; n counts gardens`,
    tasters: (n: number) => `${n} gardens`,
    theseTasters: 'The intervals are for these gardens’ tasters, not for people at large.',
  },
  ticks: (level: string) =>
    `The dot is the best estimate, the line its ${level} interval. Two varieties with a letter in common cannot be told apart in this trial (Tukey-Kramer).`,
  dots: (axis: string, level: string, _hasTicks: boolean) =>
    `${axis}; marks are estimates, bars ${level} intervals. Diamond: new. Circle: returning.`,
  ripening: {
    allRipe: () => 'in every garden it had ripe fruit by the end',
    unripe: (list: string) => `gardens without ripe fruit at the end: ${list}`,
    half: 'In no variety did half of the gardens have ripe fruit',
    measure: (isSown: boolean) =>
      `Share of gardens with ripe fruit by days from ${isSown ? 'sowing' : 'planting out'} (Kaplan-Meier); the top of each strip is all of them.`,
  },
  howMany: {
    cropped: (n: number) => `${n === 1 ? 'garden' : 'gardens'} picked some`,
    ripe: (n: number) => `${n === 1 ? 'garden' : 'gardens'} had ripe fruit by the end`,
    again: (n: number) => `${n === 1 ? 'member' : 'members'} would grow it again`,
  },
  variety: {
    title: 'In the club’s gardens',
    range: (low: string, high: string, n: string) =>
      low === high
        ? `Beside a middling variety it gave about ${low} times as much in ${gardens(n)}, each seen through its other varieties.`
        : `Beside a middling variety it gave ${low} to ${high} times as much in ${gardens(n)}, each seen through its other varieties.`,
    spread: (percent: string) => `Two gardens in three lie within ${percent} of the club’s ratio.`,
    caption: (level: string) =>
      `Each line is a garden, with its ${level} interval; gardens are not named. The broken line is a middling variety.`,
    axis: (times: string) => `${times} ×`,
  },
  garden: {
    title: (code: string) => `Garden ${code}`,
    private: 'This page is for this garden alone. It is not on the site, and none of its figures is published.',
    intro: (code: string, year: string) =>
      `What garden ${code} picked in ${year} beside a middling garden of the club, and what to expect of it next.`,
    caution:
      'A few plants in one garden say what they did there: they decide nothing in general, and the club’s gardens decide nothing about this one by themselves. The verdicts take both together.',
    caption: (season: string, level: string) =>
      `Yield a plant; what ${season} is expected to bring in this garden with its ${level} interval; verdicts for this garden and for the club.`,
    head: (season: string) => [
      'Variety',
      'Here',
      'Middling garden',
      'Times',
      `Expected here in ${season}`,
      'Verdict here',
      'Verdict in the club',
    ],
    ratios: 'This garden has no yields of the class: what the club’s ratios say of it.',
    others: 'What else this garden recorded, beside a middling garden of the club.',
    hereAndClub: (trait: string): readonly [string, string] => [`${trait}, here`, 'Middling garden'],
    none: '–',
    noClasses: 'The garden has no records that tell one variety from another yet.',
    link: (code: string) => `Garden ${code}`,
    links: 'Gardens that show their page',
  },
  noWeights:
    'Where several gardens keep records the club’s verdicts rest on figures of single gardens, which are not published: weights of your own cannot be tried here.',
};
