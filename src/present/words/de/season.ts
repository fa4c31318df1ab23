import type { Words } from '../en/index.ts';
import { listed } from './shared.ts';

export const season: Words['season'] = {
  title: (year: string) => `Saison ${year}`,
  place: 'Ort',
  varieties: 'Sorten',
  counts: (varieties: string, fresh: string, plants: string, plantings: string) =>
    `${varieties}, davon ${fresh} neu; ${plants} Pflanzen in ${plantings} Pflanzungen`,
  sown: 'Gesät',
  plantedOut: 'Ausgepflanzt',
  lastDay: 'Letzter Tag der Aufzeichnung',
  beds: 'Beete',
  blocks: 'Blöcke',
  block: { block: 'im Modell', 'stands-in': 'Gefäße und Boden im Modell', none: 'keine im Modell' },
  lost: 'Durch Unfall verloren',
  weather: 'Wetter',
  weatherText: (days: string, mean: string, nights: string, cold: string, rain: string) =>
    `${days} Tage erfasst: Mittel ${mean}, ${nights} Nächte unter ${cold}, ${rain} Regen.`,
  one: 'Eine Saison: Diese Zahlen sagen, was diese Pflanzen in ihr brachten.',
  together: (rho: string, classes: readonly string[]) =>
    `Pflanzen einer Sorte standen zusammen${classes.length === 0 ? '' : ` (${listed(classes)})`}, daher lassen sich Sorte und Standort nicht ganz auseinanderhalten; die Intervalle sind für eine Standortkorrelation von ${rho} verbreitert.`,
  toHandout: 'Der Handzettel für den Vereinsabend',
};

export const seasons: Words['seasons'] = {
  title: 'Alle Saisons',
  every: 'Jede je angebaute Sorte',
  varieties: (n: string) => `${n} ${n === '1' ? 'Sorte' : 'Sorten'}`,
  none: 'Noch ist keine Saison erfasst.',
  inFull: (year: string) => `Die Saison ${year} ausführlich`,
};

export const fruit: Words['fruit'] = {
  title: (name: string, length: string) => `Früchte im gleichen Maßstab; das längste Mittel hat ${name}, ${length}`,
  measure: (isInches: boolean) =>
    `Aus mittlerer Länge und Breite der Saison; ein Strich ist ${isInches ? 'ein Zoll' : 'ein Zentimeter'}. Farben: reif, am Stiel die unreife.`,
  length: 'Länge',
  width: 'Breite',
  ripe: 'Farbe reif',
};

export const map: Words['map'] = {
  title: (year: string) => `Wo die Pflanzungen ${year} standen`,
  measure: 'Reihen und Spalten wie erfasst, nicht maßstäblich; gestrichelter Umriss: verloren.',
  bed: 'Beet',
  row: 'Reihe',
  column: 'Spalte',
  planting: 'Pflanzung',
};
