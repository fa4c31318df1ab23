import { foldHeader } from '../../terms/names.ts';
import { unitOf } from '../../sheet/cells/units.ts';
import type { Dimension } from '../../sheet/cells/units.ts';
import { nth } from '../../numerics/element.ts';

/** What people call the columns of the contract, in English and German; common practice, no source. */
const WORDS: Readonly<Record<string, string>> = {
  date: 'date day when picked harvested pick_date picking_date harvest_date date_picked datum tag erntedatum erntetag',
  variety: 'variety cultivar sort strain line name variety_name sorte sortenname',
  planting:
    'planting planting_id plant_id plant_no plant_number plant_nr pflanzung pflanzung_nr pflanze_nr pflanzennummer',
  season: 'season year jahr saison',
  again: 'again grow_again would_grow_again grow_it_again wieder nochmal noch_einmal wieder_anbauen',
  flavour: 'flavour flavor taste geschmack',
  heat: 'heat hotness pungency schärfe',
  topped: 'topped pinched pinched_out entspitzt gestutzt',
  plants:
    'plants no_plants nr_plants how_many_plants no_of_plants number_of_plants plant_count plants_set_out pflanzen anzahl_pflanzen pflanzenzahl',
  fruits:
    'fruits fruit fruit_count no_of_fruits number_of_fruits count qty quantity pieces pcs pods früchte anzahl stück stückzahl anzahl_früchte',
  weight: 'weight wt mass yield harvest_weight total_weight gewicht ertrag erntegewicht masse',
  unusable_fruits: 'unusable_fruits culls cull unmarketable rejects bad_fruits damaged ausschuss unbrauchbar',
  unusable_weight: 'unusable_weight cull_weight reject_weight ausschuss_gewicht',
  stage: 'stage ripeness reife reifegrad',
  taster: 'taster judge person who by tester verkoster person_name prüfer',
  blind: 'blind blind_tasting verdeckt',
  score: 'score rating points punkte bewertung grade',
  trait: 'trait character merkmal',
  value: 'value measurement wert messwert',
  event: 'event observation what ereignis beobachtung',
  bed: 'bed where wo row_bed container place location beet standort kübel',
  block: 'block replicate rep wiederholung',
  sown: 'sown sowing sow_date date_sown sowing_date gesät aussaat aussaatdatum',
  transplanted:
    'transplanted planted planted_out date_planted planting_date transplant_date set_out gepflanzt ausgepflanzt pflanzdatum',
  removed: 'removed pulled date_removed entfernt gerodet',
  cause: 'cause reason why_removed grund ursache',
  first_ripe: 'first_ripe first_ripe_fruit first_harvest first_picked erste_reife erste_ernte',
  seeds: 'seeds seeds_sown no_of_seeds samen körner',
  germinated: 'germinated came_up emerged sprouted gekeimt aufgegangen',
  checked: 'checked counted date_checked gezählt_am',
  class: 'class group type category klasse gruppe typ',
  species: 'species botanical_name art botanischer_name',
  source: 'source seed_source supplier seed_company bought_from herkunft bezugsquelle saatgut_von',
  generation: 'generation filial',
  mother: 'mother seed_parent mutter',
  father: 'father pollen_parent vater',
  tmin: 'tmin min minimum low lowest min_temp temp_min tiefstwert',
  tmax: 'tmax max maximum high highest max_temp temp_max höchstwert',
  rain: 'rain rainfall precipitation regen niederschlag',
  notes: 'notes remarks remark comment comments bemerkung bemerkungen anmerkung notiz notizen kommentar',
};

/** Meanings that are a rating on a scale which no cell tells. */
export const RATED = new Set(['flavour', 'heat']);

const QUANTITIES: Readonly<Record<string, Dimension>> = {
  weight: 'mass',
  unusable_weight: 'mass',
  tmin: 'temperature',
  tmax: 'temperature',
  rain: 'depth',
};

const byWord = new Map<string, string>();
for (const [meaning, words] of Object.entries(WORDS))
  for (const word of words.split(' ')) if (!byWord.has(word)) byWord.set(word, meaning);

/** Columns whose cells are days, whole numbers, and quantities with a unit. */
export const DAY_COLUMNS = new Set(['date', 'sown', 'transplanted', 'removed', 'first_ripe', 'checked']);
export const COUNT_COLUMNS = new Set(['plants', 'fruits', 'unusable_fruits', 'seeds', 'germinated']);
export const quantityDimension = (meaning: string): Dimension | null => QUANTITIES[meaning] ?? null;

/** A remark in English, a grade in German: its cells tell which. */
export const isNoteTitle = (title: string): boolean => /^note$/i.test(title.trim());

/** What a title means: the column of the contract, with the unit that the title names; null if nothing is known. */
export function meaningOf(title: string): { readonly name: string; readonly unit: string | null } | null {
  const bracket = /^(.*?)[\s_]*[([]([^)\]]+)[)\]]\s*$/.exec(title);
  const [plain, inside] = bracket ? [nth(bracket, 1), nth(bracket, 2).trim()] : [title, null];
  const folded = foldHeader(plain)
    .replaceAll(/[.:#?]/g, '')
    .replaceAll(/^_+|_+$/g, '');
  if (inside === null && unitOf('mass', folded)) return { name: 'weight', unit: folded };
  const whole = byWord.get(folded);
  if (whole !== undefined) {
    const dimension = quantityDimension(whole);
    const unit = dimension && inside !== null && unitOf(dimension, inside) ? inside.toLowerCase() : null;
    return { name: whole, unit };
  }
  const suffix = /^(.*?)_(?:in_)?([^_]+)$/.exec(folded);
  const name = suffix ? byWord.get(nth(suffix, 1)) : undefined;
  const dimension = name === undefined ? null : quantityDimension(name);
  return dimension && suffix && name && unitOf(dimension, nth(suffix, 2)) ? { name, unit: nth(suffix, 2) } : null;
}

/** The tables a sheet can become: what it must have, and what tells it from others. */
export const KINDS: readonly {
  readonly table: string;
  readonly all: readonly string[];
  readonly any: readonly string[];
  readonly none: readonly string[];
}[] = [
  { table: 'weather', all: ['date', 'tmin', 'tmax'], any: [], none: [] },
  { table: 'germination', all: ['variety', 'sown', 'seeds', 'germinated'], any: [], none: [] },
  { table: 'ratings', all: ['date', 'taster'], any: ['score', 'a rating'], none: [] },
  { table: 'observations', all: ['date', 'event'], any: ['variety', 'planting'], none: ['taster'] },
  { table: 'harvests', all: [], any: ['a day'], none: ['date', 'taster', 'event'] },
  { table: 'harvests', all: ['date'], any: ['fruits', 'weight'], none: ['taster', 'event', 'plants'] },
  { table: 'measurements', all: ['date'], any: ['value', 'a measure'], none: ['taster', 'event', 'fruits', 'weight'] },
  { table: 'season', all: ['planting', 'variety'], any: ['fruits', 'weight', 'first_ripe'], none: ['date', 'taster'] },
  {
    table: 'totals',
    all: ['variety', 'plants'],
    any: ['fruits', 'weight', 'first_ripe'],
    none: ['date', 'taster', 'planting'],
  },
  {
    table: 'plantings',
    all: ['variety'],
    any: ['planting', 'plants', 'bed', 'block', 'sown', 'transplanted', 'removed'],
    none: ['date', 'taster', 'fruits', 'weight', 'seeds', 'first_ripe'],
  },
  {
    table: 'varieties',
    all: ['variety'],
    any: ['class', 'species', 'source', 'generation', 'mother', 'father'],
    none: ['date', 'taster', 'planting', 'plants', 'fruits', 'weight', 'seeds', 'event'],
  },
];
