import type { Settings } from '../../terms/settings.ts';
import { variable as v } from './methods.ts';

/** The words of a language that stand in formulas, by the token in brackets. */
export type FormulaWords = Readonly<Record<string, string>>;

/** A planting of w plants, in one plant's variance. */
const shared = `(${v('ρ')} + (1 − ${v('ρ')}) / ${v('w')})`;
const together = `× (1 + ${v('n')}${v('ρ')} / (1 − ${v('ρ')}))`;
const isIn = (name: string): string => v(`[${name}]`, 'i');

/** The mathematics of every method by its id, once for all languages: words stand in brackets. */
function templates({ scale, degreeDays }: Settings, level: string): Readonly<Record<string, readonly string[]>> {
  return {
    yield:
      scale === 'ratio'
        ? [
            `log ${v('μ', 'ij')} = ${isIn('variety')} + ${v('[block]', 'j')}`,
            `Var([weight]) = ${v('φ')} ${v('μ', '', '2')} ${shared}, &nbsp; Var([fruits]) = (${v('μ')} + ${v('k')} ${v('μ', '', '2')}) ${shared}`,
            `${v('k')} [such that] Σ (${v('y')} − ${v('μ')})<sup>2</sup> / [variance] = df; [where] ${v('φ')} ${v('μ')} [does with] ${v('φ')} [at most 1, that is the variance of a number]`,
            `[weights]: ${v('φ')} = Σ (${v('y')} − ${v('μ')})<sup>2</sup> / ([variance] / ${v('φ')}) / df, &nbsp; [CV] = 100 √${v('φ')} [a plant]`,
            `[interval]: exp( log ${v('μ')} ± ${v('t', 'df')} · se ), &nbsp; [together]: se<sup>2</sup> [with] [variance] / ${v('w')}, ${together}`,
          ]
        : [
            `${v('y', 'ij')} = ${isIn('variety')} + ${v('[block]', 'j')} + [error], &nbsp; Var = ${v('σ', '', '2')} ${shared}`,
            `[interval]: [mean] ± ${v('t', 'df')} · se, &nbsp; [LSD] = ${v('t', 'df')} √(2 [MS] ${shared} / ${v('r')}), &nbsp; [CV] = 100 √[MS] / [mean]`,
            `[together]: se<sup>2</sup> [and] [LSD]<sup>2</sup> ${together}`,
          ],
    comparisons: [
      `[separated]: |[difference]| &gt; ${v('q', '')}(${level}; ${v('k')}, df) / √2 · sed`,
      `[against the check]: [difference] ± ${v('d')}(${level}; [correlations], df) · sed`,
      `F = (${v('Lm')})′ (${v('L')} Cov ${v('L')}′)<sup>−1</sup> (${v('Lm')}) / (${v('k')} − 1)`,
    ],
    'first-ripe': [
      `${v('S')}(${v('t')}) = Π (1 − ${v('d', 'i')} / ${v('n', 'i')}), &nbsp; [limits]: ${v('S')}(${v('t')})<sup>exp(± ${v('z')} se / log ${v('S')})</sup>`,
      `log ${v('T')} = ${isIn('variety')} + ${v('σ')} ${v('ε')}; &nbsp; [likelihood] Φ((log ${v('R')} − ${v('m')})/${v('σ')}) − Φ((log ${v('L')} − ${v('m')})/${v('σ')})`,
      `se × √(${v('n')} / (${v('n')} − ${v('p')})), &nbsp; ${v('t')} [on] ${v('n')} − ${v('p')} [degrees of freedom]; &nbsp; [together]: se<sup>2</sup> × (1 + ${v('m')}${v('ρ')} / (1 − ${v('ρ')})), ${v('m')} [plants of the variety]`,
    ],
    'degree-days': [
      degreeDays.method === 1
        ? `max(0, (${v('T', 'max')} + ${v('T', 'min')}) / 2 − [base]), [the mean capped]`
        : `(${v('T', 'max')} + ${v('T', 'min')}) / 2 − [base], [both temperatures first brought between base and cap]`,
    ],
    ratings: [
      `[score] = ${v('[taster]', 'j')} + ${isIn('variety')} + [error]; &nbsp; [interval]: [mean] ± ${v('t', 'df')} · se, [cut to the scale]`,
      `${v('W')} = 12 ${v('S')} / (${v('m', '', '2')}(${v('n', '', '3')} − ${v('n')}) − ${v('m')} Σ(${v('t', '', '3')} − ${v('t')}))`,
    ],
    measurements: [`[mean] ± ${v('t', 'df')} · se, &nbsp; [together]: se<sup>2</sup> ${together}`],
    shares: [
      `(${v('k')} + ${v('z', '', '2')}/2 ± ${v('z')} √(${v('k')}(${v('n')} − ${v('k')})/${v('n')} + ${v('z', '', '2')}/4)) / (${v('n')} + ${v('z', '', '2')})`,
    ],
    power: [
      `[power] = E<sub>s</sub>[ Φ(${v('δ')} − ${v('t')}${v('s')}) + Φ(−${v('δ')} − ${v('t')}${v('s')}) ] = [0.8], &nbsp; df · ${v('s', '', '2')} [chi-square]`,
    ],
    expected: [
      `${v('θ', 'is')} = ${v('m', 'cs')} + ${v('v', 'i')} + ${v('w', 'is')} + ${v('e', 'is')}, &nbsp; ${v('v')} ~ N(0, ${v('σ', 'v', '2')}), ${v('w')} ~ N(0, ${v('σ', 'w', '2')}), ${v('e')} ~ N(0, se<sup>2</sup>)`,
      `se<sup>2</sup> × df / (df − 2); &nbsp; ${v('m')} [flat]; &nbsp; ${v('σ', 'v')} ~ [half-normal](${v('A')}), ${v('σ', 'w')} ~ [half-normal](√((0.6 ${v('σ', 'v')})<sup>2</sup> + (${v('A')}/10)<sup>2</sup>))`,
      `[given] ${v('σ', 'v')}, ${v('σ', 'w')}: ${v('v', 'i')} = ${v('h', 'i')} × [weighted mean of] (${v('θ', 'is')} − ${v('m', 'cs')}), &nbsp; ${v('h', 'i')} = ${v('σ', 'v', '2')}${v('a', 'i')} / (1 + ${v('σ', 'v', '2')}${v('a', 'i')}), &nbsp; ${v('a', 'i')} = Σ 1 / (se<sup>2</sup> + ${v('σ', 'w', '2')})`,
      `${v('A')}: [its values]`,
    ],
    gardens: [
      `log ${v('μ', 'ig')} = ${isIn('variety')} + ${v('[garden]', 'g')}, &nbsp; Var([weight]) = ${v('φ')} ${v('μ', '', '2')} ${shared}, &nbsp; ${v('ρ')} = ${v('r', 'g')}`,
      `${v('θ', 'ij')} = ${v('a', 'j')} + ${v('v', 'i')} + ${v('w', 'is')} + ${v('u', 'ig')} + ${v('r', 'ij')} + ${v('e', 'ij')}, &nbsp; ${v('σ', 'v')} ~ |N(0, ${v('A', '', '2')})|, &nbsp; ${v('σ', 'w')}, ${v('σ', 'u')}, ${v('σ', 'r')} ~ |N(0, ${v('A', '', '2')}/4)|`,
      `${v('J')} = 15.7 (${v('σ', 'u', '2')} + ${v('σ', 'r', '2')} + ${v('φ')}/${v('n')}) / (${v('E')} ${v('d', '', '2')}), &nbsp; ${v('E')} = (1 − 1/${v('k')}) ${v('V')} / (${v('V')} − 1)`,
    ],
    rankings: [
      `P(${v('T')}) = ${v('f')}(${v('T')}) / Σ ${v('f')}(${v('T')}′), &nbsp; ${v('f')}(${v('T')}) = ${v('δ')}<sub>|T|</sub> (Π ${v('α', 'i')})<sup>1/|T|</sup>, &nbsp; ${v('α')} / (1 + ${v('α')})`,
    ],
    plan: [
      `[share] / √(${v('n')}(${v('n')} + 1)), &nbsp; [difference]: Var = ${v('σ', '', '2')} (2(${v('v')} tr ${v('G')} − 1′${v('G')}1)) / (${v('v')}(${v('v')} − 1)), &nbsp; ${v('G')} = ${v('R')}<sup>−1</sup> + ${v('R')}<sup>−1</sup>${v('N')}${v('D')}<sup>−</sup>${v('N')}′${v('R')}<sup>−1</sup>`,
    ],
    verdicts: [
      `[points] = 100 ([value] − [bad]) / ([good] − [bad]), [cut to 0 and 100]; &nbsp; [score of all] = Σ [weight of a goal] · [points] / Σ [weight of a goal]`,
      `[share] = [seasons in which it earns a spot] / [seasons drawn]`,
      `[settled]: Φ((${v('μ')} − ${v('z', '[keep]')} ${v('τ', '1')}) / ${v('δ')}) + Φ((${v('z', '[drop]')} ${v('τ', '1')} − ${v('μ')}) / ${v('δ')}), &nbsp; ${v('δ', '', '2')} = ${v('τ', '', '2')} − ${v('τ', '1', '2')}`,
    ],
  };
}

/** A word in brackets; the brackets of mathematics have a blank or a sign after them. */
const TOKEN = /\[([a-zA-Z0][^\][]*)\]/g;

/**
 * Formulas of a method in a language.
 *
 * @param id     id of the method
 * @param level  interval level in words
 * @throws a fault where the language lacks a word
 */
export function formulasOf(id: string, settings: Settings, level: string, words: FormulaWords): readonly string[] {
  return (templates(settings, level)[id] ?? []).map((template) =>
    template.replace(TOKEN, (_, token: string) => {
      const word = words[token];
      if (word === undefined) throw new Error(`formulas have no word for ${token}`);
      return word;
    }),
  );
}
