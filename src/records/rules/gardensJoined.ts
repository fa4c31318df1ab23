import { connectedParts } from '../../numerics/connected.ts';
import { keyed, nth } from '../../numerics/element.ts';
import { grouped } from '../../terms/groups.ts';
import { isOfClub } from '../../terms/gardens.ts';
import { fileOnly } from '../../terms/place.ts';
import { nameLookup } from '../../terms/trial.ts';
import type { Season, Trial, Variety } from '../../terms/trial.ts';
import type { CheckContext } from '../../sheet/context.ts';

/** Gardens that a variety should be joined to the others by, at the least. */
const ENOUGH = 3;
/** So many names of a part are told. */
const NAMED = 4;

interface Grown {
  readonly variety: string;
  readonly garden: string;
}

/** A variety in a garden each, of gardens with two of the class and more; and how many gardens have one. */
function joined(rows: readonly Grown[]): { readonly rows: readonly Grown[]; readonly lone: number } {
  const count = new Map<string, number>();
  for (const { garden } of rows) count.set(garden, (count.get(garden) ?? 0) + 1);
  return {
    rows: rows.filter(({ garden }) => (count.get(garden) ?? 0) > 1),
    lone: [...count.values()].filter((own) => own === 1).length,
  };
}

/** Varieties of each part, the largest part first; a variety's gardens beside it. */
function partsOf(
  rows: readonly Grown[],
): readonly (readonly { readonly variety: string; readonly gardens: number }[])[] {
  const ofVariety = grouped(rows, ({ variety }) => variety);
  const numbered = (ids: Iterable<string>): ReadonlyMap<string, number> => new Map([...ids].map((id, i) => [id, i]));
  const varieties = numbered(ofVariety.keys());
  const gardens = numbered(new Set(rows.map(({ garden }) => garden)));
  const { ofRow } = connectedParts(
    rows.map(({ variety }) => keyed(varieties, variety)),
    rows.map(({ garden }) => keyed(gardens, garden)),
  );
  const parts = new Map<number, { variety: string; gardens: number }[]>();
  [...ofVariety].forEach(([variety, grown], i) => {
    const own = { variety, gardens: grown.length };
    parts.set(nth(ofRow, i), [...(parts.get(nth(ofRow, i)) ?? []), own]);
  });
  return [...parts.values()]
    .map((part) => part.toSorted((a, b) => b.gardens - a.gardens || (a.variety < b.variety ? -1 : 1)))
    .toSorted((a, b) => b.length - a.length);
}

/** Warns of what a garden grew that it was not sent, where it was sent anything. */
function reportNotSent(season: Season, { log }: CheckContext): void {
  const given = new Map<string, Set<string>>();
  for (const { garden, variety } of season.sent) given.set(garden, (given.get(garden) ?? new Set()).add(variety));
  for (const { garden, variety, place } of season.plantings)
    if (given.has(garden) && !given.get(garden)?.has(variety)) log.add('grown-not-sent', place, variety, { garden });
}

/** Reports what of a club's season nothing compares, or hardly anything. */
export function reportJoined(
  season: Season,
  varieties: readonly Variety[],
  gardens: Trial['gardens'],
  context: CheckContext,
): void {
  const [only] = season.gardens;
  const isAlone = season.gardens.length === 1 && only !== undefined && only !== context.gardens.own;
  if (isAlone && gardens.get(only)?.isPublished !== true)
    context.log.add('garden-alone', fileOnly(`data/${season.year}`), only);
  if (!isOfClub(season)) return;
  reportNotSent(season, context);
  const { log, settings } = context;
  const name = nameLookup(varieties);
  const place = fileOnly(`data/${season.year}`);
  for (const classId of new Set(varieties.map((own) => own.classId))) {
    const members = new Set<string>(varieties.filter((own) => own.classId === classId).map(({ id }) => id));
    const grown = season.yieldUnits.filter((unit) => members.has(unit.variety) && unit.cause !== 'accident');
    const { rows, lone } = joined(grown);
    const title = settings.classes.get(classId)?.name ?? classId;
    if (lone > 0) log.add('garden-lone', place, title, { class: title, gardens: String(lone) });
    const [largest, ...others] = partsOf(rows);
    if (!largest) continue;
    const names = (part: typeof largest): string =>
      `${part
        .slice(0, NAMED)
        .map(({ variety }) => name(variety))
        .join(', ')}${part.length > NAMED ? ' …' : ''}`;
    for (const other of others) {
      const join = `${name(nth(largest, 0).variety)}, ${name(nth(other, 0).variety)}`;
      log.add('gardens-apart', place, names(other), { class: title, one: names(largest), other: names(other), join });
    }
    for (const { variety, gardens } of largest)
      if (gardens < ENOUGH) log.add('gardens-thin', place, name(variety), { class: title, gardens: String(gardens) });
  }
}
