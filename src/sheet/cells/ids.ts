/** Names that some systems keep for devices; a page's folder must not be called so. */
const DEVICE = /^(con|prn|aux|nul|com\d|lpt\d)$/;

/** An id that can stand in a page's address for ever: lower-case letters, digits, hyphens; at most 80 characters. */
export function isFitId(id: string): boolean {
  return /^[a-z0-9]+(?:-+[a-z0-9]+)*$/.test(id) && id.length <= 80 && !DEVICE.test(id);
}
