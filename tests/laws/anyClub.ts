import { randomStream } from '../../src/numerics/random.ts';
import type { Folder } from '../sites/folder.ts';

// Clubs of any tables that the contract allows, the odd ones more often than in life: zeros, gardens of one variety,
// parts apart, nothing ripe, fruits alone, several rows a variety, full records beside sheets, few answers.

/** Code of a member's garden that no other text holds. */
export const memberCode = (i: number): string => `qz${String(i).padStart(2, '0')}`;

/** A club by its number: the same tables for the same number. */
export function anyClub(number: number): Folder {
  const { uniform, normal } = randomStream(`club ${number}`);
  const below = (n: number): number => Math.floor(uniform() * n);
  const is = (chance: number): boolean => uniform() < chance;
  const varieties = Array.from({ length: 2 + below(7) }, (_, i) => ({
    id: `v${i}`,
    classId: is(0.5) ? 'one' : 'two',
    size: 0.4 * normal(),
  }));
  const gardens = Array.from({ length: 1 + below(9) }, (_, i) => memberCode(i));
  const hasHome = is(0.6);
  const [noZeros, nothingRipe, countsOnly, allAlike] = [is(0.6), is(0.1), is(0.15), is(0.08)];
  const folder: Record<string, string> = {};
  const day = (n: number, year: number): string => new Date(Date.UTC(year, 4, 20 + n)).toISOString().slice(0, 10);
  const row = (variety: (typeof varieties)[number], level: number, year: number): string => {
    const plants = 1 + below(4);
    const isZero = !noZeros && is(0.15);
    const grams = isZero
      ? 0
      : allAlike
        ? 500 * plants
        : Math.round(plants * Math.exp(6.5 + level + variety.size + 0.3 * normal()));
    const fruits = isZero ? 0 : Math.max(1, Math.round(grams / 60));
    const ripe = isZero || nothingRipe || is(0.1) ? '' : day(Math.round(70 * Math.exp(0.1 * normal())), year);
    const taste = is(0.2) ? '' : String(1 + below(9));
    const again = is(0.3) ? '' : is(0.5) ? 'yes' : 'no';
    return [variety.id, plants, countsOnly ? '' : grams, is(0.5) || countsOnly ? fruits : '', ripe, taste, again].join(
      ',',
    );
  };
  const header = 'variety,plants,weight_g,fruits,first_ripe,taste,again';
  const some = (): typeof varieties => {
    const kept = varieties.filter(() => is(0.6));
    return kept.length > 0 ? kept : varieties.slice(0, 1);
  };
  const years = is(0.4) ? [2025, 2026] : [2026];
  for (const year of years) {
    const main: string[] = [];
    if (hasHome) main.push(...some().map((own) => `,${row(own, 0, year)}`));
    for (const code of gardens) {
      if (is(0.15)) continue;
      const level = 0.4 * normal();
      if (is(0.3)) {
        const grown = some();
        main.push(
          ...[...grown, ...(is(0.2) ? grown.slice(0, 1) : [])].map((own) => `${code},${row(own, level, year)}`),
        );
      } else
        folder[`${year}/gardens/${code}.csv`] = `${header}\n${some()
          .map((own) => row(own, level, year))
          .join('\n')}\n`;
    }
    if (main.length > 0) folder[`${year}/season.csv`] = `garden,${header}\n${main.join('\n')}\n`;
  }
  const listed = ['home', ...gardens];
  if (is(0.7)) {
    const rows = listed.map(
      (code) =>
        `${code},${is(0.5) ? 'hill' : 'dale'},${is(0.3) ? 'cover' : 'open'},${code === 'home' ? '' : is(0.1) ? 'no' : ''}`,
    );
    folder['gardens.csv'] = `garden,region,setting,publish\n${rows.join('\n')}\n`;
  }
  if (is(0.5)) {
    const sent = gardens.flatMap((code) => some().map((own, i) => `${code},${own.id},${'abcdefghi'[i]}`));
    folder['2026/sent.csv'] = `garden,variety,label\n${sent.join('\n')}\n`;
    const answers = gardens.filter(() => is(0.7)).map((code) => `${code},a,${is(0.3) ? 'same' : ''}`);
    folder['2026/answers.csv'] = `garden,choice_best,choice_worst\n${answers.join('\n')}\n`;
  }
  const seasons = years.map((year) => `${year}: {transplanted: ${year}-05-20, finished: yes}`).join(', ');
  const goals = is(0.5) ? 'goals: {one: {yield: 2, taste: 3, choice: 2}, two: {first_ripe: 1, yield: 1}}\n' : '';
  folder['trial.yaml'] =
    `title: Club ${number}\nlanguage: ${is(0.5) ? 'de' : 'en-GB'}\nclasses: {one: {name: First, spots: 2${is(0.3) ? ', check_variety: v0' : ''}${is(0.2) ? ', scale: difference' : ''}}, two: {name: Second, spots: 1}}\n` +
    `traits: {taste: {kind: rating, from: 1, to: 9, better: higher}, choice: {kind: ranking}}\nseasons: {${seasons}}\nverdicts: {simulations: 500}\n${goals}`;
  folder['varieties.csv'] =
    `variety,class,first_grown\n${varieties.map(({ id, classId }, i) => `${id},${classId},${i % 2 === 0 ? 2026 : 2020}`).join('\n')}\n`;
  return folder;
}
