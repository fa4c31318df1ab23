import { rankedTraits } from '../../terms/traits.ts';
import type { VarietyId } from '../../terms/ids.ts';
import { foldName } from '../../terms/names.ts';
import type { Answer, Sent } from '../../terms/rankings.ts';
import type { SourceFile } from '../../read/decode.ts';
import { openKnown } from '../../sheet/columns.ts';
import type { CheckContext } from '../../sheet/context.ts';
import { neededIn, placeIn, textIn } from '../../sheet/row.ts';
import type { Row } from '../../sheet/row.ts';
import { gardenIn } from '../gardenIn.ts';
import { rowsOf } from '../../sheet/rows.ts';
import type { VarietyRegistry } from '../registry.ts';
import { varietyIn } from '../registry.ts';

/** Checks sent.csv: what each member was given. */
function checkSent(source: SourceFile, registry: VarietyRegistry, context: CheckContext): readonly Sent[] {
  const spec = {
    required: [['garden'], ['variety']],
    columns: ['garden', 'variety', 'label', 'notes'],
    quantities: [],
  };
  const known = openKnown(source, spec, context);
  if (!known) return [];
  return [...rowsOf(known)].flatMap((row): readonly Sent[] => {
    const garden = neededIn(row, 'garden') === null ? null : gardenIn(row, context);
    const variety = neededIn(row, 'variety') === null ? null : varietyIn(row, 'variety', registry, context);
    if (garden === null || !variety) return [];
    return [{ garden, variety: variety.id, label: textIn(row, 'label'), place: placeIn(row, 'garden') }];
  });
}

interface Reading {
  readonly row: Row;
  readonly given: readonly Sent[];
  readonly registry: VarietyRegistry;
  readonly context: CheckContext;
}

/** Varieties of a cell: names or labels parted by `=`; null where one was not given or is not known, which is reported. */
function namedIn(column: string, { row, given, registry, context }: Reading): readonly VarietyId[] | null {
  const text = textIn(row, column);
  if (text === null) return null;
  const ids: VarietyId[] = [];
  for (const part of text.split('=').map((own) => own.trim())) {
    const byLabel = given.find(({ label }) => label !== null && foldName(label) === foldName(part));
    const id = byLabel?.variety ?? registry.find(part)?.id ?? null;
    const isGiven = given.length === 0 || given.some(({ variety }) => variety === id);
    if (id === null || !isGiven) {
      const list = given.map(({ label, variety }) => label ?? variety).join(', ');
      const near = registry.nearest(part);
      const facts = { given: list === '' ? 'nothing' : list, ...(id === null && near !== null ? { near } : {}) };
      context.log.add('answer-not-given', placeIn(row, column), part, facts);
      return null;
    }
    ids.push(id);
  }
  return ids;
}

const isSameWord = (text: string | null): boolean => text !== null && /^(?:same|gleich)$/i.test(text);

/** What a member answered about a trait; null where nothing, or nothing that can be used, is written. */
function orderIn(trait: string, reading: Reading): Answer['order'] | null {
  const { row, given, context } = reading;
  const [bestColumn, worstColumn] = [`${trait}_best`, `${trait}_worst`];
  const all = [...new Set(given.map(({ variety }) => variety))];
  if (isSameWord(textIn(row, bestColumn)) || isSameWord(textIn(row, worstColumn))) return all.length > 1 ? [all] : null;
  const [best, worst] = [namedIn(bestColumn, reading), namedIn(worstColumn, reading)];
  if (best === null && worst === null) return null;
  const both = (best ?? []).find((own) => worst?.includes(own));
  if (both !== undefined) {
    context.log.add('answer-both', placeIn(row, worstColumn), textIn(row, worstColumn) ?? '');
    return null;
  }
  const named = [...(best ?? []), ...(worst ?? [])];
  const rest = all.filter((own) => !named.includes(own));
  // Of several in the middle nobody said which is before which: then only the best stands before the others.
  const groups =
    rest.length > 1 && best !== null ? [best, [...rest, ...(worst ?? [])]] : [best ?? [], rest, worst ?? []];
  const order = groups.filter(({ length }) => length > 0);
  return order.flat().length > 1 ? order : null;
}

/** Checks answers.csv: a row a member, the best and the worst of what was sent. */
function checkAnswers(
  source: SourceFile,
  sent: readonly Sent[],
  registry: VarietyRegistry,
  context: CheckContext,
): readonly Answer[] {
  const traits = rankedTraits(context.settings.traits);
  const columns = ['garden', ...traits.flatMap((trait) => [`${trait}_best`, `${trait}_worst`]), 'notes'];
  const known = openKnown(source, { required: [['garden']], columns, quantities: [] }, context);
  if (!known) return [];
  const seen = new Map<string, number>();
  return [...rowsOf(known)].flatMap((row): readonly Answer[] => {
    const garden = neededIn(row, 'garden') === null ? null : gardenIn(row, context);
    if (garden === null) return [];
    const before = seen.get(foldName(garden));
    if (before !== undefined) {
      context.log.add('answer-twice', placeIn(row, 'garden'), garden, { line: String(before) });
      return [];
    }
    seen.set(foldName(garden), row.raw.line);
    const given = sent.filter((own) => foldName(own.garden) === foldName(garden));
    const reading: Reading = { row, given, registry, context };
    return traits.flatMap((trait) => {
      const order = orderIn(trait, reading);
      return order ? [{ garden, trait, order }] : [];
    });
  });
}

/** What members of a club were sent, and what they answered. */
export function checkMembers(
  sentIn: SourceFile | undefined,
  answersIn: SourceFile | undefined,
  registry: VarietyRegistry,
  context: CheckContext,
): { readonly sent: readonly Sent[]; readonly answers: readonly Answer[] } {
  const sent = sentIn ? checkSent(sentIn, registry, context) : [];
  return { sent, answers: answersIn ? checkAnswers(answersIn, sent, registry, context) : [] };
}
