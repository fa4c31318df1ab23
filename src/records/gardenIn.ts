import type { Place } from '../terms/place.ts';
import type { CheckContext } from '../sheet/context.ts';
import { placeIn, textIn } from '../sheet/row.ts';
import type { Row } from '../sheet/row.ts';

/** A code: letters, digits and hyphens, not many. */
const CODE = /^[\p{L}\d][\p{L}\d_-]{0,19}$/u;

/** The code of a garden as it is written somewhere; null for one that gardens.csv does not have, which is reported. */
export function gardenOf(text: string, place: Place, { gardens, log }: CheckContext): string | null {
  if (!CODE.test(text)) {
    // It may be a person's name or address: it is not told again.
    log.add('garden-not-a-code', place);
    return null;
  }
  const code = gardens.find(text);
  if (code !== null) return code;
  const near = gardens.nearest(text);
  log.add('garden-unknown', place, text, near === null ? {} : { near });
  return null;
}

/** The garden of a row: what its table belongs to, what it says, or the trial's own; null where that was reported. */
export function gardenIn(row: Row, context: CheckContext): string | null {
  if (context.garden !== null) return context.garden;
  const text = textIn(row, 'garden');
  return text === null ? context.gardens.own : gardenOf(text, placeIn(row, 'garden'), context);
}

/**
 * A name within a season that several gardens share: that of a planting, or of a variety, in a garden.
 *
 * @param own  the trial's own garden, in which names stand as they are
 */
export const inGarden = (name: string, garden: string, own: string): string =>
  garden === own ? name : `${garden}/${name}`;

/** The same name as the garden's own records have it. */
export const withoutGarden = (name: string, garden: string, own: string): string =>
  garden === own ? name : name.slice(garden.length + 1);
