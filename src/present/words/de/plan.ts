import type { plan as english } from '../en/plan.ts';
import { listed } from './shared.ts';

const plants = (n: number): string => (n === 1 ? 'eine Pflanze' : `${n} Pflanzen`);
const sorten = (n: number): string => (n === 1 ? 'Sorte' : 'Sorten');

/** Wörter des Plans für die nächste Saison und seiner Blätter. */
export const plan: typeof english = {
  title: (year) => `Der Plan für ${year}`,
  lead: (count, varieties, fresh) =>
    `${count} Pflanzen von ${varieties} ${sorten(varieties)}${fresh === 0 ? '' : `, davon ${fresh} neu`}. Alles darf von Hand verschoben werden: was in plantings.csv steht, bleibt.`,
  sheets: 'Blätter zum Drucken',
  who: 'Wer, und wie viele',
  listed: (name, n, share) =>
    `${name}: ${plants(n)}. In ${share} von 100 simulierten Saisons verdient sie einen Platz.`,
  wished: (name, n) => `${name}: ${plants(n)}.`,
  fresh: (name, n) => `${name}: neu, ${plants(n)}. Ein erster Blick: was gut ist, bekommt nächstes Jahr mehr.`,
  line: (name, n) => `${name}: ${plants(n)} einer Kreuzung; jede für sich ansehen.`,
  isCheck: 'Sie ist die Vergleichssorte.',
  settles: (chance) => `Ob sie bleibt, klärt ihre Saison in ${chance} von 100 Fällen.`,
  waiting: (names) => `Auf ein anderes Jahr warten: ${listed(names)}.`,
  cut: (names) => `Auf der Liste, aber ohne Platz: ${listed(names)}.`,
  freePlaces: (n) => (n === 1 ? 'Ein Platz bleibt frei.' : `${n} Plätze bleiben frei.`),
  tells: 'Was er zeigen kann',
  ratio: (name, percent) =>
    `${name}: ein Unterschied von ${percent} im Ertrag zweier Sorten zeigt sich in vier von fünf Fällen, wenn Pflanzen sich unterscheiden wie bisher.`,
  noRatio: (name) =>
    `${name}: wie sehr Pflanzen sich unterscheiden, ist noch nicht bekannt, also auch nicht, was sich zeigen wird.`,
  blocks: (n, within, without, df) =>
    n === 1
      ? `Ein Block; mittlere Varianz eines Unterschieds ${within} (einer Pflanze 1); ${df} Freiheitsgrade.`
      : `${n} Blöcke; mittlere Varianz eines Unterschieds ${within}, ohne Blöcke ${without} (einer Pflanze 1); ${df} Freiheitsgrade.`,
  everyBlock: 'Jede Sorte steht in jedem Block.',
  together: (one, two) =>
    `Wo Pflanzen einer Sorte nebeneinander stehen, hat jede zwei Gruppen: weniger aufzuschreiben. Sechs Pflanzen in einer Gruppe zeigen so viel wie ${one} einzelne, in zwei Gruppen so viel wie ${two}.`,
  apart: 'Wo Pflanzen einer Sorte getrennt stehen, dann weil Nachbarn sich gleichen: jede zweimal beschriften.',
  firstLook: 'Eine Pflanze ist ein erster Blick, kein Urteil: at_least in wishes.csv fordert mehr.',
  map: 'Wo sie stehen',
  bed: (bed, part) => (part === '' ? bed : `${bed}, ${part}`),
  part: (from, to) => `Spalten ${from} bis ${to}`,
  rowsPart: (from, to) => `Reihen ${from} bis ${to}`,
  north: { top: 'Norden ↑', bottom: 'Norden ↓', left: 'Norden ←', right: 'Norden →' },
  mapNote: 'Eine dicke Linie trennt Blöcke; eine Zelle hat die Reihe und Spalte der Tabelle.',
  dates: 'Wann',
  datesCaption: 'Säen, anziehen, auspflanzen',
  datesHead: ['Klasse', 'Säen (± 1 Woche)', 'Umtopfen', 'Abhärten', 'Auspflanzen', 'Frost danach, von 100'],
  noDates: 'Kein Tag des Auspflanzens ist bekannt: plan.plant_out in trial.yaml setzen.',
  frost: (chance, day, safe, risk) =>
    `Am ${day} ausgepflanzt, folgt in ${chance} von 100 Frühjahren Frost; ab dem ${safe} in höchstens ${risk} von 100.`,
  frostFrom: (springs, hasStated) =>
    `Aus ${springs === 0 ? 'dem angegebenen Tag' : `${springs === 1 ? 'einem aufgezeichneten Frühjahr' : `${springs} aufgezeichneten Frühjahren`}${hasStated ? ' und dem angegebenen Tag' : ''}`}, mit Frühjahren, die sich unterscheiden wie in einem kühlen Land. Es ist der Frost des Thermometers: auch Nachbarn fragen.`,
  unseen: (n) =>
    n === 1
      ? 'Ein Frühjahr zeigt seit Beginn der Aufzeichnung keinen Frost: es zählt so spät, wie es sein kann.'
      : `${n} Frühjahre zeigen seit Beginn der Aufzeichnung keinen Frost: sie zählen so spät, wie es sein kann.`,
  ripe: 'Erste reife Frucht',
  ripeHead: ['Sorte', 'Erwartet', 'Rechtzeitig reif, von 100', 'Spätestens auspflanzen', 'In der Wärme von'],
  ofClass: (day) => `${day} (Mitte ihrer Klasse)`,
  packet: (days) => `Packung: ${days} Tage`,
  inWarmth: (day, year) => `${year}: ${day}`,
  seed: 'Samen',
  seedCaption: 'Samen für die geplanten Pflanzen',
  seedHead: ['Sorte', 'Pflanzen', 'Säen', 'Vorhanden', 'Kaufen', 'Partien'],
  seedNote:
    'Samen für die Pflanzen und eine zusätzliche auf je vier, mit einer Wahrscheinlichkeit von 95 von 100, nach dem, was bisher aufging; ungeprüfter Samen geht, lose angenommen, in vier von fünf Fällen auf.',
  saving: (names) =>
    `${listed(names)}: Samen soll geerntet werden, darum ${names.length === 1 ? 'rückt sie' : 'rücken sie'} zur Mitte der Klasse, soweit die Blöcke es erlauben. Eine Blüte einbeuteln oder die Pflanze umhüllen: kein Abstand im Garten hält Pollen fern.`,
  cautions: {
    hot: 'Sämlinge und Früchte scharfer Sorten: Handschuhe, nichts an die Augen, keine Kinder.',
    treated: 'Behandelter Samen ist kein Lebensmittel: Handschuhe, außer Reichweite von Kindern.',
    local: 'Das Auspflanzen hängt vom Ort ab: Gärtner in der Nähe fragen.',
  },
  tasting: 'Verkostung',
  tastingText: (tasters, samples, day) =>
    `${tasters} ${tasters === 1 ? 'Person' : 'Personen'}, je ${samples}${day === '' ? '' : `, am ${day}`}. Auf den Bögen stehen Kennzahlen; der Schlüssel ist das letzte Blatt.`,
  samples: (n) => (n === 1 ? '1 Probe' : `${n} Proben`),
  files: 'Weiter',
  filesText: (year) =>
    `Die Tabellen von ${year} liegen neben dieser Seite. keeprow plan --take legt sie in data/${year} und ändert nichts, was dort steht.`,
  label: { place: 'Platz', pot: 'Topf' },
  picking: 'Ernten',
  pickingHead: ['Pflanze', 'Platz'],
  pickingNote: 'In der Reihenfolge des Wegs. Früchte und Gewicht, eine Spalte je Tag.',
  looks: 'Ansehen',
  looksHead: ['Pflanze', 'Platz', 'Erste Blüte', 'Erster Ansatz', 'Erste reife', 'Verloren, warum'],
  looksNote: 'Eine Spalte je Tag: ankreuzen, solange alle Früchte unreif sind.',
  measuring: 'Messen',
  ballot: (name) => `Bogen: ${name}`,
  ballotHead: ['Folge', 'Kennzahl'],
  again: 'Wieder?',
  key: 'Schlüssel der Verkostung: für die, die auftragen',
  keyHead: ['Kennzahl', 'Sorte'],
  checklist: 'Was wann zu tun ist',
  todo: {
    sow: (names) => `${listed(names)} säen.`,
    potOn: (names) => `${listed(names)} umtopfen.`,
    hardenOff: (names) => `${listed(names)} abhärten.`,
    plantOut: (names) => `${listed(names)} auspflanzen: je zwei Schilder.`,
    look: (days) => `Zum ersten Mal nach reifen Früchten sehen, dann alle ${days === 1 ? 'Tage' : `${days} Tage`}.`,
    taste: 'Verkostung.',
    end: 'Alles abernten; grüne Früchte als grün bezeichnen.',
  },
  published: {
    title: (year) => `Was ${year} wächst`,
    lead: (count, varieties) => `${count} Pflanzen von ${varieties} ${sorten(varieties)} sind geplant.`,
    of: (name, n) => `${name} (${n})`,
  },
};
