import type { Words } from '../en/index.ts';

/** `a`, `a und b`, `a, b und c`. */
export function listed(names: readonly string[]): string {
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} und ${names.at(-1)}`;
}

/** First letter as a capital. */
export function capital(text: string): string {
  return text.replace(/^./u, (letter) => letter.toUpperCase());
}

export const traits: Words['traits'] = {
  yield: 'Ertrag',
  early_yield: 'Frühertrag',
  fruits: 'Früchte',
  first_ripe: 'Tage bis zur ersten reifen Frucht',
  again: 'Wunsch nach Wiederanbau',
  heat: 'Schärfe',
  flavour: 'Geschmack',
};

export const frame: Words['frame'] = {
  skip: 'Zum Inhalt',
  pages: 'Seiten',
  morePages: 'Weitere Seiten',
  description: (title: string) =>
    `${title}: was jede Sorte brachte, wie sicher das ist und was wieder angebaut wird. Zahlen mit Intervallen, Diagramme und offene Daten.`,
  feed: 'Neues aus dem Versuch',
  toUs: 'Unzen und Zoll zeigen',
  toMetric: 'Gramm und Zentimeter zeigen',
  marks: 'Pfeiltasten führen durch die Zeichen.',
  footer:
    'Mit Keeprow aus den eigenen Aufzeichnungen des Versuchs erstellt. Die Zahlen gelten für diese Pflanzen in diesen Saisons.',
  nav: {
    front: 'Startseite',
    seasons: 'Alle Saisons',
    data: 'Daten',
    notes: 'Anmerkungen zu den Daten',
    glossary: 'Wörterverzeichnis',
    methods: 'Methoden',
  },
};

export const status: Words['status'] = { new: 'neu', returning: 'wiederholt angebaut' };

export const figure: Words['figure'] = {
  notRecorded: 'nicht erfasst',
  notReached: 'nicht erreicht',
  notKnown: 'nicht bekannt',
  noneRipened: 'keine gereift',
  allLost: (n: string) => `alle ${n} durch Unfall verloren`,
  notTasted: 'nicht verkostet',
  n: (n: string) => `n ${n}`,
  kOfN: (k: string, n: string) => `${k} von ${n}`,
  interval: (middle: string, low: string, high: string) => `${middle} (${low} bis ${high})`,
  range: (low: string, high: string) => `${low} bis ${high}`,
  units: { d: 'Tage' },
  unitsOfOne: { d: 'Tag' },
  p: (p: string) => `p ${p}`,
  pBelow: (p: string) => `unter ${p}`,
  f: (value: string, df1: string, df2: string, p: string) => `F ${value} mit ${df1} und ${df2} FG, ${p}`,
  noF: 'F nicht bestimmbar',
  cv: (cv: string) => `VK ${cv} % je Pflanze`,
  lsd: (value: string) => `GD ${value}`,
  mean: (value: string) => `Mittel der Sorten ${value}`,
  letters: (level: string) =>
    `Sorten mit einem gemeinsamen Buchstaben sind in diesem Versuch nicht getrennt (Tukey-Kramer, ${level}).`,
};

export const tables: Words['tables'] = {
  sameAsTable: 'Dasselbe als Tabelle',
  csv: 'Die Zahlen als CSV',
  variety: 'Sorte',
  status: 'Status',
  season: 'Saison',
  plantsSetOut: 'Gesetzte Pflanzen',
  plantings: 'Pflanzungen',
  entries: 'Sorten im Versuch',
  kind: 'Art',
  kinds: { 'open-pollinated': 'samenfest', hybrid: 'Hybride', line: 'Linie', unknown: '' },
  seedFrom: 'Saatgut von',
  lostByAccident: (n: number) => `(${n} durch Unfall verloren)`,
  yields: (level: string) =>
    `Verwertbarer Ertrag je gesetzter Pflanze, mit Intervallen zu ${level}; n zählt Pflanzungen`,
  weight: 'Gewicht',
  weightTo: (date: string) => `Gewicht bis ${date}`,
  earlyCv: (date: string, cv: string, isWide: boolean) =>
    `Gewicht bis ${date}: VK ${cv} % je Pflanze${isWide ? '; bei so viel Streuung sind Unterschiede kaum zu sehen, und seine Intervalle sind etwas zu eng' : ''}.`,
  fruits: 'Früchte',
  culls: 'Ausschuss',
  power: (plantings: string, difference: string) =>
    `Bei ${plantings} Pflanzungen je Sorte trennen die Buchstaben eine Differenz von ${difference} in 4 von 5 solchen Saisons; kleinere bleiben verborgen.`,
  powerRatio: (plantings: string, times: string) =>
    `Bei ${plantings} Pflanzungen je Sorte trennen die Buchstaben eine Sorte, die das ${times}-Fache einer anderen bringt, in 4 von 5 solchen Saisons von ihr; kleinere Unterschiede bleiben verborgen.`,
  ripening: (isSown: boolean, level: string) =>
    `Tage ${isSown ? 'von der Aussaat' : 'vom Auspflanzen'} bis zur ersten reifen Frucht, mit Intervallen zu ${level}`,
  ripeByEnd: 'Bis zum Ende reif',
  model: 'Modell',
  medianSeen: 'Median dieser Pflanzungen',
  medianDegreeDays: 'Median, Gradtage',
  claim: 'Angabe auf der Tüte',
  claimed: (range: string, verdict: string) => `${range}: ${verdict}`,
  claimedMeasure: (value: string, verdict: string) => `angegeben ${value}: ${verdict}`,
  claims: {
    inside: 'wie angegeben',
    'seen-lower': 'unter der Angabe',
    'seen-higher': 'über der Angabe',
    'cannot-tell': 'zu wenig, um es zu sagen',
  },
  claimsOfDays: {
    inside: 'wie angegeben',
    'seen-lower': 'früher als angegeben',
    'seen-higher': 'später als angegeben',
    'cannot-tell': 'zu wenig, um es zu sagen',
  },
  countsPlantings: 'n zählt Pflanzungen.',
  looks: (days: number) =>
    `${days === 0 ? 'Der Tag, an dem eine Pflanzung reif gefunden wurde, gilt als Tag der Reife.' : `Eine reif gefundene Pflanzung kann schon bis zu ${days === 1 ? 'einen Tag' : `${days} Tage`} reif gewesen sein; das Modell berücksichtigt das, der Median nicht.`} Das Intervall ist das des Modells: Wenige Pflanzungen allein können ihren Median nicht begrenzen.`,
  degreeDays: (base: string, cap: string | null, method: number) =>
    `Gradtage über ${base} °C${cap === null ? '' : `, gekappt bei ${cap} °C`}, Verfahren ${method} von McMaster & Wilhelm (1997).`,
  measures: (level: string) => `Messungen, Mittel von Pflanzungen mit Intervallen zu ${level}`,
  tasting: (level: string) => `Verkostung, mit Intervallen zu ${level}; n zählt Verkoster`,
  ratingScale: (trait: string, from: string, to: string) => `${trait}, ${from} bis ${to}`,
  again: 'würden sie wieder anbauen',
  claimedHeat: 'Angegebene Schärfe',
  shu: (value: string) => `${value} SHU`,
  shuUpTo: (value: string) => `bis ${value} SHU`,
  shuFrom: (value: string) => `${value} SHU oder mehr`,
  onePerson: 'der Geschmack einer Person',
  tasters: (n: number) => `${n} Verkoster`,
  kendall: (w: string) => `Kendalls W ${w}`,
  theseTasters: 'Die Intervalle gelten für diese Verkoster, nicht für alle Leute.',
  heatNote:
    'Die angegebene Schärfe steht in Scoville-Einheiten der trockenen Frucht; die Noten der Verkoster lassen sich nicht darin umrechnen.',
};
