import type { Words } from '../en/index.ts';

const plants = (n: string): string => `${n} ${n === '1' ? 'Pflanze' : 'Pflanzen'}`;
const years = (n: string): string => `${n} ${n === '1' ? 'Jahr' : 'Jahre'}`;

/** Words about crosses and seed. */
export const lines: Words['lines'] = {
  title: (name: string) => `${name}: von Generation zu Generation`,
  list: 'Kreuzungen',
  listNote: 'In einer jungen Kreuzung ist jede Pflanze anders: was sie zeigten, und mit welchen es weitergeht.',
  generation: (g: string) => `F${g}`,
  backcross: 'BC1',
  plants,
  mixed: (g: string, share: string) =>
    `${g}: Im Mittel sind noch ${share} der Gene gemischt, in denen sich die Eltern unterscheiden.`,
  mixedUpTo: (g: string, share: string, most: string) =>
    `${g}: Im Mittel sind noch ${share} der Gene gemischt, in denen sich die Eltern unterscheiden; bis zu ${most}, wenn die Blüten offen standen.`,
  carry: (names: string, each: string, one: boolean) =>
    one
      ? `Mit ${names} weitermachen; für ${each} Pflanzen säen.`
      : `Mit ${names} weitermachen; je für ${each} Pflanzen säen.`,
  nothingToChoose: 'Keine Pflanze stand für sich, also ist keine zu wählen.',
  pedigree: 'Woher sie kommt',
  pedigreeNote:
    'Spalten sind Generationen. Eine Linie führt von der Pflanze, deren Samen geerntet wurde, zu ihrer Familie; gestrichelt, wo die Blüte offen stand oder es niemand aufschrieb, doppelt, wo Samen gemischt wurde.',
  unknown: 'unbekannt',
  from: (name: string) => `von ${name}`,
  bulk: (n: string) => `Samen von ${n} Pflanzen gemischt`,
  openFlower: 'offen bestäubt oder unbekannt',
  counted: (list: string) => list,
  plantByPlant: 'Pflanze für Pflanze',
  fruits: (worn: string) =>
    `Früchte in einem Maßstab, nach Länge und Breite jeder Pflanze${worn === '' ? '; ihre Farbe ist nicht aufgeschrieben' : `, in der Farbe von: ${worn}`}.`,
  seenIn: (g: string, year: string) =>
    `Die ${g} von ${year}: was zu sehen war, und was von den Nachkommen zu erwarten ist.`,
  plant: 'Pflanze',
  thePlant: (name: string) => `Pflanze ${name}`,
  seen: (trait: string) => `${trait}, gesehen`,
  expectedOf: (trait: string) => `${trait}, vererbt`,
  trueFor: (trait: string) => `${trait} bleibt`,
  of100: (n: string) => `${n} von 100`,
  seedSaved: 'Samen geerntet',
  bestOf: 'Wirklich unter den besten drei',
  wantedShare: 'Nachkommen wie gewünscht',
  above: (percent: string) => `${percent} über den Schwestern`,
  below: (percent: string) => `${percent} unter den Schwestern`,
  alike: 'wie die Schwestern',
  unchanged: 'gleich',
  atMost: 'Mehr als das Vererbte ist nicht zu hoffen: Selbstung behält einen Teil ganz und den anderen halb.',
  told: 'Was die Pflanzen verraten',
  genes: 'Ein Gen oder mehrere?',
  ratio: (counts: string, name: string, others: string) =>
    others === '' ? `${counts} passt zu ${name}.` : `${counts} passt zu ${name} und ${others}.`,
  moreRatios: (n: string) => (n === '1' ? 'einem anderen Verhältnis' : `${n} anderen Verhältnissen`),
  noRatio: (counts: string) => `${counts} passt zu keinem Verhältnis, das ein Gen oder zwei ergeben.`,
  moreSeedlings: 'Dreißig Sämlinge der F2 in einer Schale würden mehr verraten.',
  breeds: (names: string, g: string, state: string, n: string, one: boolean) =>
    one
      ? `Pflanze ${names} der ${g} vererbt ${state} in ${n} von 100 Fällen unverändert.`
      : `Die Pflanzen ${names} der ${g} vererben ${state} je in ${n} von 100 Fällen unverändert.`,
  unlessCrossed: (names: string) =>
    `Der Samen von Pflanze ${names} ist von offenen Blüten: das gilt, wenn er nicht gekreuzt ist.`,
  margin: (list: string) => `Was jedem nach allem, was zu sehen war, von 100 bleibt: ${list}.`,
  noneOfThese: 'keines davon',
  countsOnly: (trait: string, counts: string) => `${trait}: ${counts}. Über die Gene lässt sich daraus nichts sagen.`,
  next: 'Nächstes Jahr',
  nextPlants: (plant: string, wanted: string, n: string, chance: string) =>
    `Unter ${n} Pflanzen von ${plant} ist in ${chance} von 100 Fällen mindestens eine ${wanted}.`,
  needed: (plant: string, list: string) => `Für eine wie gewünscht von ${plant}: ${list}.`,
  neededFor: (chance: string, n: string) => `${plants(n)} für ${chance} von 100`,
  notWithAny: (chance: string) => `${chance} von 100 mit keiner Zahl: der Pflanze kann es fehlen`,
  split: (n: string, mothers: string, chance: string) =>
    `${n} Pflanzen von ${mothers} Müttern: in ${chance} von 100 Fällen ist mindestens eine wie gewünscht.`,
  ifUnlinked: 'Das gilt, wenn die Gene nicht gekoppelt sind.',
  asGood: (most: string) => `Samen, auf bis zu ${most} der besten Pflanzen verteilt, wäre etwa ebenso gut.`,
  uniform: 'Einheitlich?',
  offTypes: (trait: string, k: string, n: string, upper: string, allowed: string) =>
    `${trait}: ${k} von ${n} ${k === '1' ? 'weicht' : 'weichen'} ab; es können bis zu ${upper} solcher Pflanzen sein (einseitig, 95 %). Wo eine von hundert erlaubt ist, dürfen es bei ${n} Pflanzen ${allowed} sein.`,
  twentyPass: 'Zwanzig Pflanzen lassen eine Linie mit einem Zehntel Abweichern in 39 von 100 Fällen durch.',
  spread: (trait: string, ratio: string, low: string, high: string, shown: boolean) =>
    `${trait}: ${ratio}-mal (${low} bis ${high}) die Streuung fester Sorten: ${shown ? 'sie streut mehr als diese' : 'nicht gezeigt, dass sie variiert'}.`,
  oneOutlier: 'Eine einzelne Pflanze kann das bewirken.',
  noFixed: (trait: string) =>
    `${trait}: Zu wenige einzelne Pflanzen fester Sorten standen dort, also wird über die Streuung nichts gesagt.`,
  response: 'Was die letzte Wahl brachte',
  gained: (trait: string, estimate: string, low: string, high: string, check: string) =>
    `${trait}, in beiden Jahren an ${check} gemessen: ${estimate} (${low} bis ${high}).`,
  outlook: 'Aufhören oder behalten?',
  outlooks: {
    stop: 'Die gewünschten Pflanzen sind aus dem vorhandenen Samen in weniger als 5 von 100 Fällen zu haben: der Platz ist für eine andere besser.',
    drop: 'Aufhören: die jüngste Familie verdient neben den festen Sorten keinen Platz, und ab der F5 ist kaum noch etwas auszulesen.',
    settled: 'Gefestigt in dem, was angesehen wurde: wie gewünscht, gleich, über zwei Saisons und mehr.',
    'go-on': 'Weitermachen: nichts spricht dagegen, und sie ist in dem, was angesehen wurde, nicht gefestigt.',
  },
  choose: {
    within: 'In dieser Generation sind Schwestern noch verschieden: Pflanzen wählen.',
    between: 'Ab der F4 sind sich Schwestern sehr ähnlich: zwischen Familien wählen.',
  },
  cautions: {
    unknownPollen:
      'Der Pollenelter ist unbekannt: Früchte aus Kreuzungen mit Zier- oder wilden Nachtschattengewächsen nicht kosten.',
    bitter: 'Bittere Frucht eines Kürbisgewächses: ausspucken, nicht essen; Kochen hilft nicht.',
    hot: 'Ein Elter ist scharf: jede Frucht kann es sein. Handschuhe, nichts an die Augen, keine Kinder.',
    sharing:
      'Vor dem Weitergeben von Samen benannter oder hybrider Eltern die örtlichen Regeln prüfen; Nachkommen früher Generationen sind verschieden.',
  },
  sheet: 'Pflanzenliste und Etiketten zum Drucken',
  sheetTitle: (name: string) => `${name}: Pflanzenliste und Etiketten`,
  label: { lot: 'Partie', from: 'von', saved: 'geerntet', pollination: 'Blüte' },
  stateOf: (trait: string) => trait,
  pollination: {
    open: 'offen',
    bagged: 'eingetütet',
    caged: 'im Käfig',
    hand: 'von Hand',
    unknown: 'unbekannt',
  },
  odd: {
    title: 'Eine Pflanze aus der Reihe',
    seen: (k: string, n: string) => `${k} von ${plants(n)} sah nicht aus wie die anderen.`,
    crossed: (n: string, low: string, high: string) =>
      `Von ${n} Samen aus offenen Blüten ist in ${low} bis ${high} von 100 Fällen mindestens einer gekreuzt.`,
    unknownRate: 'Wie oft diese Art in offenen Blüten kreuzt, ist hier nicht bekannt.',
    followed: 'Samen davon wurde gesät; was daraus wurde:',
    tell: 'Kreuzung, verirrter Samen und Mutation lassen sich in diesem Jahr nicht unterscheiden. Eine Blüte eintüten und 11 Samen säen: Wäre es eine Kreuzung mit dominantem Aussehen, kehrt das übliche in 95 von 100 Fällen wieder.',
  },
  seed: {
    title: 'Samen',
    lead: (n: string, sow: string, short: string) =>
      `${n} ${n === '1' ? 'Partie' : 'Partien'}: ${sow} bereit zur Aussaat${short === '0' ? '' : `, ${short} zu prüfen, zu ernten oder zu kaufen`}.`,
    head: [
      'Partie',
      'Was wächst',
      'Was tun',
      'Zu säen',
      'Übrig',
      'Alter im Frühjahr',
      'Aufgegangen',
      'Im Frühjahr erwartet',
    ],
    caption: 'Eingelagerter Samen',
    age: (n: string) => years(n),
    noAge: 'Jahr unbekannt',
    between: (low: string, high: string) => `${low} bis ${high} %`,
    notTested: 'nicht geprüft',
    up: (k: string, n: string, range: string) => `${k} von ${n} (${range})`,
    seedsFor: (seeds: string, wanted: string) => `${seeds} für ${plants(wanted)}`,
    tooMany: (wanted: string) => `über 200 für ${plants(wanted)}`,
    act: { sow: 'säen', test: 'erst 10 auf Papier prüfen', save: 'ernten oder kaufen', gone: 'aufgebraucht' },
    certainty: (share: string) =>
      `Die Zahl zu säender Samen gibt die gewünschten Pflanzen mit einer Wahrscheinlichkeit von ${share}. Alter Samen ohne frische Probe ist eine Vermutung: die Spanne sagt, wie weit.`,
    saving: 'Samen ernten',
    savingText:
      'Zuerst die Blüte eintüten oder die Pflanze einhausen: Abstand allein verspricht nichts, denn Bienen tragen Pollen von Ort zu Ort sehr verschieden weit. Ratgeber nennen einige bis 15 m zwischen Hausgärten, 90 bis 300 m bei fünf Pflanzen und mehr, Samenbauern 400 m zwischen milden und 1,6 km zwischen scharfen und milden Paprika. Um eine gemischte Sorte zu erhalten, von 5 bis 20 Pflanzen ernten; bei einer Linie ist eine Pflanze eine Wahl, kein Fehler. Kreuzung verändert nie die Frucht dieses Jahres, nur was aus ihrem Samen wächst.',
    mothers: (lot: string, n: string, effective: string) =>
      `${lot} ist von ${n} Pflanzen: so gut wie ${effective} Mütter, wenn alle gleich viel gaben, sonst wie weniger.`,
    treated: 'Behandelter Samen ist kein Lebensmittel: Handschuhe, außer Reichweite von Kindern.',
    dates: 'Wann säen',
    datesNote:
      'Aus dem letzten Frost der Frühjahre in den Wetterdaten. Der letzte Frost hängt vom Ort ab: auch Nachbarn fragen.',
    datesHead: ['Klasse', 'Frost danach noch', 'Auspflanzen', 'Säen'],
    few: (list: string) => `Für eine Frostgefahr sind zu wenige Frühjahre aufgezeichnet. Letzter Frost: ${list}.`,
    soil: (name: string, least: string, dates: string) =>
      `${name}: der Boden hatte eine Woche lang ${least} oder mehr ${dates}.`,
    byThen: (chance: string, day: string) => `bis ${day} in ${chance} von 100 Frühjahren`,
    soilSeen: (name: string, least: string, days: string) =>
      `${name}: der Boden hatte seine erste Woche mit ${least} oder mehr am ${days}.`,
    noneSeen: 'Kein Frühjahr ist so aufgezeichnet, dass sein letzter Frost zu sehen ist.',
    link: 'Eingelagerter Samen, und wann zu säen ist',
    short: (n: string) => `${n} ${n === '1' ? 'Samenpartie' : 'Samenpartien'} zu prüfen, zu ernten oder zu kaufen.`,
  },
};
