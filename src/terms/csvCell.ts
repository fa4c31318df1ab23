/** A cell of a CSV table, in quotation marks only where it has to be. @source Shafranovich (2005) RFC 4180 */
export function csvCell(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
