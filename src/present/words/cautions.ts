import type { Caution } from '../../analyse/cautions.ts';
import type { Writing } from '../numbers.ts';

/** A caution as sentences. */
export function cautionText(caution: Caution, nameOf: (id: string) => string, { words, number }: Writing): string {
  const say = words.report.cautions;
  switch (caution.kind) {
    case 'single-plantings':
    case 'one-bed':
      return say[caution.kind](words.listed(caution.varieties.map(nameOf)));
    case 'mixed-stands':
      return say[caution.kind](caution.adjusted);
    case 'not-blind':
      return say[caution.kind](caution.known === caution.scores ? null : number(caution.known), number(caution.scores));
    case 'high-cv':
      return say[caution.kind](number(caution.cv));
    default:
      return say[caution.kind]();
  }
}
