import type { ProblemLog } from '../terms/problem.ts';
import type { Table } from '../read/table.ts';

/** Columns that tell who a member is: gardens are codes. */
const PERSON =
  /^(?:e_?mail|mail|(?:tele)?phone(?:_number)?|tel|mobile|handy|street|road|address|post_?code|zip(?:_code)?|(?:first|last|sur|family|full|member)_?name|name|member|person|gardener|grower|owner|sender|sent_by|from|contact|who|village|town|city|place|lat(?:itude)?|lon(?:gitude)?|lng|coordinates?|gps|telefon|adresse|stra(?:ss|ß)e|plz|(?:vor|nach)name|mitglied|g[äa]e?rtner(?:in)?|kontakt|absender|wer|dorf|ort|wohnort)$/;

/**
 * Reports the columns of a table of members that tell who one is. Nothing of such a table is taken, and no value of it
 * is told.
 *
 * @param columns  names as the contract compares them
 * @returns        true where there is such a column
 * @source gardens page 4
 */
export function tellsPersons(table: Table, columns: readonly string[], log: ProblemLog): boolean {
  const told = columns.flatMap((name, i) => (PERSON.test(name) ? [i] : []));
  for (const i of told) log.add('garden-person', table.placeOf(table.header, i), table.titles[i]?.trim() ?? '');
  return told.length > 0;
}
