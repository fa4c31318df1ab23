import { severities } from '../../terms/problemCodes.ts';
import type { Severity } from '../../terms/problem.ts';
import type { ProblemCode } from '../../terms/problemCodes.ts';
import { english } from './en/index.ts';
import type { ProblemTexts } from './en/problems.ts';

/** Words of a problem: what is wrong, what was expected, how to mend it. {facts} are filled in. */
export interface ProblemWords {
  readonly problem: string;
  readonly expected: string;
  readonly mend: string;
}

function lacking(code: ProblemCode, fact: string): never {
  throw new Error(`${code} was reported without its ${fact}`);
}

/** Words of a code with the facts of a problem filled in. */
export function problemWords(
  code: ProblemCode,
  facts: Readonly<Record<string, string>>,
  { texts, near: offer }: { readonly texts: ProblemTexts; readonly near: (name: string) => string } = {
    texts: english.problems,
    near: english.notes.near,
  },
): ProblemWords {
  const fill = (text: string): string =>
    text.replace(/\{(\w+)\}/g, (_, key: string) => facts[key] ?? lacking(code, key));
  const [problem, expected, mend] = texts[code];
  const near = facts['near'];
  const first = near === undefined || code.endsWith('-near') ? '' : offer(near);
  return { problem: fill(problem), expected: first + fill(expected), mend: fill(mend) };
}

/** Every problem with its words, facts shown as an ellipsis, for the page that explains them. */
export function problemGuide(texts: ProblemTexts): readonly {
  readonly code: ProblemCode;
  readonly severity: Severity;
  readonly words: ProblemWords;
}[] {
  const plain = (text: string): string => text.replace(/\{\w+\}/g, '…');
  return (Object.keys(texts) as ProblemCode[]).map((code) => {
    const [problem, expected, mend] = texts[code];
    return {
      code,
      severity: severities[code],
      words: { problem: plain(problem), expected: plain(expected), mend: plain(mend) },
    };
  });
}
