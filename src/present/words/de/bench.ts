import type { Standing } from '../../../decide/verdict.ts';
import type { Words } from '../en/index.ts';
import { capital, listed } from './shared.ts';

const NUMBERS =
  'keine eine zwei drei vier fünf sechs sieben acht neun zehn elf zwölf dreizehn vierzehn fünfzehn sechzehn siebzehn achtzehn neunzehn zwanzig'.split(
    ' ',
  );

/** Eine Anzahl von Sorten in Worten bis zwanzig. */
const count = (n: number): string => NUMBERS[n] ?? String(n);
/** Die Anzahl von Plätzen, männlich. */
const places = (n: number): string =>
  n === 1 ? 'ein Platz' : `${n === 0 ? 'kein' : count(n)} ${n === 0 ? 'Platz' : 'Plätze'}`;

const standing: Readonly<Record<Standing, string>> = {
  keep: 'behalten',
  'try-again': 'noch einmal',
  'no-room': 'kein Platz',
  drop: 'aufgeben',
  line: 'junge Linie',
  none: 'kein Urteil',
};

export const bench: Words['bench'] = {
  count,
  standing,
  nav: {
    season: (year) => `Saison ${year}`,
    next: (year) => `Anbau ${year}`,
    varieties: 'Sorten',
    handout: 'Handzettel',
    about: 'Zu den Zahlen',
    more: 'Weitere Seiten',
    weights: 'Eigene Gewichte',
    words: 'Wörter erklärt',
    data: 'Die Daten',
    notes: 'Hinweise zu den Daten',
    seasons: 'Alle Saisons',
  },
  ongoing: {
    title: (year) => `${year} bisher`,
    planted: (plants, kinds) =>
      `${plants} ${plants === 1 ? 'Pflanze' : 'Pflanzen'} von ${kinds === 1 ? 'einer Sorte' : `${count(kinds)} Sorten`} ${plants === 1 ? 'steht' : 'stehen'} draußen.`,
    first: (name, day) => `Die erste reife Frucht war von ${name}, am ${day}.`,
    noneRipe: 'Noch ist keine reife Frucht notiert.',
    picked: (amount, day) => `Geerntet bis zum ${day}: ${amount}.`,
    notYet: 'Die Saison ist nicht zu Ende: Noch geht nichts aus ihr in eine Zahl oder ein Urteil ein.',
    notYetWith: (year) =>
      `Die Saison ist nicht zu Ende: Noch geht nichts aus ihr in eine Zahl oder ein Urteil ein, und der Rat für ${year} gilt, wie er im Winter war.`,
    caption: (className) => `${className}: was steht und was geerntet wurde`,
    head: ['Sorte', 'Pflanzen', 'ausgepflanzt', 'erste reife Frucht', 'bisher geerntet'],
    notYetRipe: 'noch nicht',
    variety: (year, plants, ripe, picked) =>
      `${year} bisher: ${[`${plants} ${plants === 1 ? 'Pflanze' : 'Pflanzen'}`, ...(ripe === '' ? ['noch keine reife Frucht'] : [`erste reife Frucht am ${ripe}`]), ...(picked === '' ? [] : [`${picked} geerntet`])].join(', ')}; nichts davon steckt in den Zahlen unten.`,
  },
  isNew: 'neu',
  fruit: (name, colour, size) => `${name}${colour === '' ? '' : `, ${colour}`}${size === null ? '' : `, ${size} lang`}`,
  emptyPlace: 'Platz für eine neue Sorte',
  front: {
    headline: (year, total, keep, tries) => {
      if (total === 0) return `${year}: noch nichts auf der Liste`;
      const parts = [
        ...(keep > 0 ? [`${count(keep)} behalten`] : []),
        ...(tries > 0 ? [`${count(tries)} noch einmal versuchen`] : []),
      ];
      return `${capital(count(total))} für ${year}: ${parts.join(', ')}`;
    },
    scale: (year) => `In einem Maßstab gezeichnet, wie ${year} gemessen.`,
    scaleUnmeasured: 'Früchte, die niemand gemessen hat, sind in üblicher Größe gezeichnet.',
    planting: 'Die Anbauliste',
    toHandout: 'Der Handzettel, zwei Seiten',
    spots: (className, n) => `${className}, ${places(n)}`,
    free: (n) =>
      n === 1 ? 'Ein Platz bleibt für eine neue Sorte.' : `${capital(count(n))} Plätze bleiben für neue Sorten.`,
    key: (simulations) =>
      `: Die nächste Saison wurde aus allen Aufzeichnungen ${simulations}-mal durchgespielt, und so oft hat die Sorte einen ihrer Plätze verdient.`,
    keyKeep: (from) => `in ${from} von 100 oder mehr.`,
    keyTry: 'darunter: auf der Liste, weil noch nichts Besseres bekannt ist.',
    how: 'Wie das berechnet wird',
    picked: (when) => `Am meisten geerntet wurde in der Woche vom ${when}`,
    pickedNote: (plants, total) =>
      `Brauchbares Gewicht je Woche, ${plants === '1' ? 'von der einen Pflanze' : `alle ${plants} Pflanzen`}: zusammen ${total}`,
    pickedLabel: (from, to, most, when) =>
      `Geerntetes Gewicht je Woche vom ${from} bis ${to}; am meisten in der Woche vom ${when}, ${most}.`,
    toSeason: (year) => `Die Saison ${year}, Sorte für Sorte`,
    packet: (late, early, all) =>
      late === 0 && early === 0
        ? 'Die Tage der Samentüten treffen zu oder sind nicht zu beurteilen'
        : late >= early
          ? `${capital(count(late))} von ${count(all)} ${late === 1 ? 'reifte' : 'reiften'} später, als die Tüte sagt`
          : `${capital(count(early))} von ${count(all)} ${early === 1 ? 'reifte' : 'reiften'} früher, als die Tüte sagt`,
    packetNote: (level) => `Tage vom Auspflanzen bis zur ersten reifen Frucht; Linie: ${level}-Intervall`,
    packetHead: 'Tüte',
    seenHead: 'gesehen',
    packetKey: '┃ Tüte   ● gesehen',
    late: (days) => `${days} Tage später`,
    early: (days) => `${days} Tage früher`,
    asClaimed: 'wie angegeben',
    cannotTell: 'nicht zu sagen',
    surprise: 'Die Überraschung der Saison',
    newKeep: (name) => `${name} ist neu und gleich dabei`,
    allAbout: (name) => `Alles über ${name}`,
    every: (year) => `Jede Sorte von ${year}`,
    allEver: (n) => `${n === 1 ? 'Die eine Sorte' : `Alle ${n} Sorten`} aller Saisons in einer Liste`,
    sure: 'Wie sicher ist das?',
    sureText: (level) =>
      `Wenige Pflanzen sagen über manches viel und über anderes wenig. Wo eine Zahl eine Klammer hat, liegt die Wahrheit wohl darin: ${level} von 100 so gemachten Klammern enthalten sie.`,
    winter: (year, listed_, grown, earned) =>
      grown === 0
        ? `Von den ${count(listed_)} auf der Liste für ${year} wurde keine angebaut; der Rat des letzten Winters ist nicht zu beurteilen.`
        : `Die Liste des letzten Winters für ${year} nannte ${count(listed_)} ${listed_ === 1 ? 'Sorte' : 'Sorten'}; ${count(grown)} ${grown === 1 ? 'wurde' : 'wurden'} angebaut, und ${count(earned)} davon ${earned < 2 ? 'hat ihren' : 'haben ihren'} Platz verdient.`,
  },
  season: {
    title: (year) => `Die Saison ${year}`,
    crosses: (list: string) => `Kreuzungen: ${list}`,
    crossOf: (name: string, plants: number) => `${name} (${plants === 1 ? '1 Pflanze' : plants})`,
    facts: (varieties, fresh, plants, days) =>
      [
        `${varieties} ${varieties === 1 ? 'Sorte' : 'Sorten'}${fresh > 0 ? `, davon ${fresh} neu` : ''}`,
        `${plants} ${plants === '1' ? 'Pflanze' : 'Pflanzen'}`,
        ...(days > 0 ? [`${days} ${days === 1 ? 'Erntetag' : 'Erntetage'}`] : []),
      ].join(' · '),
    sown: (date) => `gesät ${date}`,
    plantedOut: (date) => `ausgepflanzt ${date}`,
    lastDay: (date) => `zuletzt notiert ${date}`,
    contents: 'Auf dieser Seite',
    glance: 'Die Saison auf einen Blick',
    glanceTitle: 'Woche für Woche',
    glanceNote:
      'Balken: brauchbares Gewicht je Woche und Pflanze in der Farbe der reifen Frucht; jede Klasse hat ihre eigene Höhe. ▲ erste reife Frucht einer typischen Pflanze mit ihrem Intervall.',
    glanceCaption: (year) => `Ernte Woche für Woche, erste reife Frucht und Ertrag jeder Sorte ${year}`,
    tallest: (weight) => `höchster Balken ${weight}`,
    firstRipe: 'zuerst reif',
    aPlant: 'je Pflanze',
    warmth: 'Wärme',
    warmthNote: 'mittlere Nacht bis mittlerer Tag',
    rain: 'Regen',
    readKey: 'So sind die nächsten Bilder zu lesen.',
    readKeyText: (level) =>
      `Der Punkt ist der beste Schätzwert, die Linie sein ${level}-Intervall, ein dünner Strich eine Pflanze. Zwei Sorten mit einem gemeinsamen Buchstaben sind in diesem Versuch nicht zu unterscheiden (Tukey-Kramer).`,
    beds: 'Wo sie standen',
    allFigures: (className) => `Alle Zahlen: ${className}`,
    fold: (n) => `Alle ${n} Sorten`,
  },
  matrix: {
    order: (trait) => `Geordnet nach ${trait}`,
    yield: (unit) => `Ertrag, ${unit} je Pflanze`,
    fruits: 'Früchte je Pflanze',
    rating: (trait, from, to) => `${capital(trait)}, ${from} bis ${to}`,
    firstRipe: 'Erste reife Frucht',
    more: 'mehr ist besser →',
    less: '← weniger ist besser',
    sooner: '← früher ist besser',
    day: (day, range) => `, Tag ${day}${range === '' ? '' : ` (${range})`}`,
    caption: (className, year, level) => `${className} ${year}: was zu sehen war, jeweils mit ${level}-Intervall`,
  },
  say: {
    most: (names, figure) =>
      `${listed(names)} ${names.length === 1 ? 'gab' : 'gaben'} am meisten, ${figure} je Pflanze.`,
    mostFruits: (names, figure) =>
      `${listed(names)} ${names.length === 1 ? 'gab' : 'gaben'} am meisten, ${figure} Früchte je Pflanze.`,
    tasted: (names, figure, to) =>
      `${listed(names)} ${names.length === 1 ? 'schmeckte' : 'schmeckten'} am besten, ${figure} von ${to}.`,
    rated: (names, trait, figure, to) =>
      `${listed(names)} ${names.length === 1 ? 'hatte' : 'hatten'} die beste Note für ${trait}, ${figure} von ${to}.`,
    ripe: (names, date) => `${listed(names)} ${names.length === 1 ? 'war' : 'waren'} zuerst reif, um den ${date}.`,
    only: (name) => `${name} war die einzige ihrer Klasse; es gibt nichts, womit sie zu vergleichen wäre.`,
    nothing: 'Es wurde nichts notiert, was zu vergleichen wäre.',
    behind: (trait, names, top, n) =>
      `Bei ${trait} ${n === 1 ? 'liegt' : 'liegen'} ${listed(names)} über den Zufall hinaus hinter ${top}.`,
    many: (n) => `${count(n)} andere`,
    noneApart: (trait) => `Bei ${trait} geht kein Unterschied über den Zufall hinaus.`,
  },
  fresh: {
    title: 'Neue neben bekannten',
    news: 'neu',
    returning: 'bekannt',
    gave: (percent, isMore) => `Neue gaben ${percent} % ${isMore ? 'mehr' : 'weniger'} als bekannte`,
    ripened: (percent, isMore) =>
      `Neue brauchten bis zur Reife ${percent} % ${isMore ? 'länger' : 'weniger lang'} als bekannte`,
    points: (trait, points, isMore) =>
      `Neue hatten bei ${trait} ${points} Punkte ${isMore ? 'mehr' : 'weniger'} als bekannte`,
    alike: (trait) => `Neue und bekannte sind bei ${trait} gleich`,
    range: (low, high) => `(${low} bis ${high})`,
    less: (percent) => `${percent} % weniger`,
    more: (percent) => `${percent} % mehr`,
    clear: 'über den Zufall hinaus',
    luck: 'es kann Zufall sein',
  },
  klass: {
    asCsv: 'Die Zahlen hinter den Bildern als CSV:',
    figures: 'Alle Zahlen und Tests',
    pairs: 'Welche Paare sich über den Zufall hinaus unterscheiden',
    pairsNote: (trait) =>
      `● klar: Sie unterscheiden sich bei ${trait} über den Zufall hinaus (Tukey-Kramer). ○ unklar: es kann Zufall sein.`,
    pairsMany: 'Bei so vielen Sorten stehen die Paare in der Datei figures.csv.',
    clear: 'klar',
    notClear: 'unklar',
    figuresTitle: (className, year) => `${className} ${year}: alle Zahlen`,
    back: (className) => `Zurück: ${className}`,
    verdicts: (year) => `Für ${year}`,
  },
  variety: {
    kinds: { 'open-pollinated': 'samenfest', hybrid: 'Hybride', line: 'eine Linie', unknown: '' },
    grownIn: (n) =>
      n === 0 ? 'noch nicht angebaut' : `in ${n === 1 ? 'einer Saison' : `${count(n)} Saisons`} angebaut`,
    firstOf: (n, className, year, what) => `Von ${count(n)} Sorten (${className}) ${year} ${listed(what)}.`,
    bits: { yield: 'gab sie am meisten', flavour: 'schmeckte sie am besten', first_ripe: 'war sie zuerst reif' },
    verdict: {
      keep: (year) => `Für ${year} behalten`,
      'try-again': (year) => `${year} noch einmal versuchen`,
      'no-room': (year) => `Gut, aber ${year} kein Platz`,
      drop: (year) => `Für ${year} aufgeben`,
    },
    onList: 'Sie steht auf der Liste, weil noch nichts Besseres bekannt ist.',
    notOnList: (n) =>
      n === 1
        ? 'Sie steht nicht auf der Liste: Ihr Platz geht an eine andere oder an eine neue Sorte.'
        : 'Sie steht nicht auf der Liste: Die Plätze gehen an andere oder an neue Sorten.',
    odds: (spots, share) =>
      `Sie verdiente ${spots === 1 ? 'den einen Platz' : `einen der ${count(spots)} Plätze`} in ${share} nächsten Saisons, aus allen Aufzeichnungen durchgespielt.`,
    how: 'Wie',
    why: { keep: 'Warum behalten', drop: 'Warum aufgeben', other: 'Was dafür und was dagegen spricht' },
    whyNote: (isCheck, bar) =>
      `Was von ihr in einer durchschnittlichen Saison zu erwarten ist, neben ${isCheck ? `${bar}, der Vergleichssorte` : 'einer durchschnittlichen neuen Sorte ihrer Klasse'}.`,
    firm: 'Das Urteil bleibt, wenn ein einzelnes Ziel halb oder doppelt zählt.',
    counts: (weight) => `zählt ${weight}`,
    itself: (name, level) => `${name} mit ${level}-Intervall`,
    others: 'die anderen',
    average: 'eine durchschnittliche neue Sorte',
    check: (name) => name,
    expected: 'erwartet',
    against: 'dagegen ← Punktzahl → dafür',
    points: (points) => `${points} Punkte`,
    goal: {
      noYield: 'Gab zuletzt nichts',
      yield: (size) =>
        Math.abs(size) < 1
          ? 'Gibt etwa gleich viel'
          : `Gibt ${Math.abs(size) < 5 ? 'etwas ' : ''}${size > 0 ? 'mehr' : 'weniger'}`,
      first_ripe: (size, days) =>
        Math.abs(size) < 1 || days === '0'
          ? 'Reift etwa wie andere'
          : `Reift ${days} ${days === '1' ? 'Tag' : 'Tage'} ${size > 0 ? 'früher' : 'später'}`,
      flavour: (size) =>
        Math.abs(size) < 1
          ? 'Schmeckt etwa gleich gut'
          : `Schmeckt ${Math.abs(size) < 5 ? 'etwas ' : ''}${size > 0 ? 'besser' : 'schlechter'}`,
      ranked: (trait, size) =>
        Math.abs(size) < 1
          ? `${capital(trait)}: etwa gleich oft einer mittleren vorgezogen`
          : `${capital(trait)}: ${Math.abs(size) < 5 ? 'etwas ' : ''}${size > 0 ? 'öfter' : 'seltener'} einer mittleren vorgezogen`,
      other: (trait, size) =>
        Math.abs(size) < 1
          ? `${capital(trait)}: etwa gleich gut`
          : `${capital(trait)}: ${Math.abs(size) < 5 ? 'etwas ' : ''}${size > 0 ? 'besser' : 'schlechter'}`,
    },
    beside: (value) => `daneben ${value}`,
    bySeason: 'Saison für Saison',
    bySeasonNote: (isMany) =>
      `Gefüllt: gesehen, mit Intervall. Hohl: in einer durchschnittlichen Saison erwartet. ${isMany ? 'Breit und blass: ihre Klasse, vom niedrigsten bis zum höchsten Wert; dunkler: die mittlere Hälfte.' : 'Blass: die anderen ihrer Klasse.'}`,
    nextMark: (year) => `${year}?`,
    picked: (year) => `Ernte ${year}`,
    pickedNote: (total) => `Brauchbares Gewicht je Pflanze, Woche für Woche: zusammen ${total}.`,
    howMany: 'Wie viele von wie vielen',
    howManyNote: (level) => `In Klammern das ${level}-Intervall (Wilson).`,
    seeds: (n) => (n === 1 ? 'Samen keimte' : 'Samen keimten'),
    cropped: (n) => (n === 1 ? 'Pflanze trug' : 'Pflanzen trugen'),
    ripe: (n) => (n === 1 ? 'Pflanze hatte bis zum Ende reife Frucht' : 'Pflanzen hatten bis zum Ende reife Frucht'),
    offType: (n) => (n === 1 ? 'Pflanze wich ab' : 'Pflanzen wichen ab'),
    hot: (n) => (n === 1 ? 'Pflanze hatte unerwartet scharfe Frucht' : 'Pflanzen hatten unerwartet scharfe Frucht'),
    again: (n) => (n === 1 ? 'Verkoster würde sie wieder anbauen' : 'Verkoster würden sie wieder anbauen'),
    packet: 'Was die Tüte angibt',
    claimDays: (claimed, seen, verdict) =>
      `Sie gibt ${claimed} Tage bis zur ersten reifen Frucht an; gesehen ${seen}: ${verdict}.`,
    besides: (className) => `Neben den anderen (${className})`,
    besidesNote: (name, year) =>
      `${name} ${year}, mit jeder verglichen. ● klar: in diesem Versuch über den Zufall hinaus (Tukey-Kramer). ○ unklar: es kann Zufall sein.`,
    comparedWith: 'verglichen mit',
    itGave: 'sie gab',
    itsRating: (trait) => `ihre Note für ${trait} war`,
    itWasRipe: 'sie war reif',
    more: (percent) => `${percent} % mehr`,
    less: (percent) => `${percent} % weniger`,
    times: (times) => `${times}-mal so viel`,
    same: 'gleich',
    higher: (points) => `${points} höher`,
    lower: (points) => `${points} niedriger`,
    sooner: (days) => `${days} ${days === '1' ? 'Tag' : 'Tage'} früher`,
    later: (days) => `${days} ${days === '1' ? 'Tag' : 'Tage'} später`,
    sameDay: 'zur gleichen Zeit',
    clear: 'klar',
    notClear: 'unklar',
    all: 'Alle Zahlen',
    seen: 'Gesehen, Saison für Saison, mit Intervallen und n',
    expectedTable: 'Worauf das Urteil beruht',
    plants: 'Ihre Pflanzen',
    asCsv: 'Dieselben Zahlen als CSV',
    plantNotes: 'Zu den Pflanzen notiert',
    lifeSize: 'Im Druck in Lebensgröße.',
    notGrown: 'Sie wurde in diesem Versuch noch nicht angebaut.',
  },
  varieties: {
    title: 'Alle Sorten',
    note: (n) =>
      `${n === 1 ? 'Die eine Sorte' : `Alle ${n} Sorten`}, die je angebaut wurden, nach Klassen, von A bis Z.`,
    filter: 'Nur Namen zeigen mit',
    none: 'Keine Sorte hat das im Namen.',
    figures: (level) =>
      `Ertrag, erste reife Frucht und Note sind aus der jeweils letzten Saison; Intervalle zu ${level} stehen auf ihrer Seite.`,
    lastGrown: (year) => `zuletzt ${year} angebaut`,
    never: 'nie angebaut',
  },
  next: {
    title: (year) => `Was ${year} anbauen`,
    lead: (spots, named) =>
      `${capital(count(named))} ${named === 1 ? 'Sorte' : 'Sorten'} für ${places(spots)}, nach ihrem Anteil; die gestrichelte Linie zeigt, wo die Plätze enden.`,
    ends: 'hier enden die Plätze',
    more: (n) =>
      n === 1
        ? 'eine weitere steht unten in der Tabelle und auf ihrer eigenen Seite'
        : `${n} weitere stehen unten in der Tabelle und auf ihren eigenen Seiten`,
    how: 'Wie gezählt wird',
    figures: 'Zahlen und Tabellen',
    advice: 'In Worten',
    winter: 'Der Rat des letzten Winters, nachgeprüft',
  },
  handout: {
    title: (year) => `Was ${year} anbauen`,
    lead: (total, spots, keep, tries) =>
      `${capital(count(total))} ${total === 1 ? 'Sorte' : 'Sorten'} für ${places(spots)}: ${count(keep)} behalten, ${count(tries)} noch einmal versuchen. Früchte in einem Maßstab.`,
    key: (simulations) =>
      `Jeder gefüllte Samen sind fünf von hundert nächsten Saisons, aus allen Aufzeichnungen ${simulations}-mal durchgespielt, in denen die Sorte einen Platz verdiente. Über der gestrichelten Linie steht sie auf der Liste.`,
    did: (year) => `Was sie ${year} taten`,
    didNote: 'Brauchbarer Ertrag je Pflanze, erste reife Frucht und Note der Verkoster.',
    between: 'wohl zwischen',
    likely: (level) =>
      `„Wohl zwischen“: Von 100 solchen Spannen enthalten ${level} die Wahrheit. Zwei Spannen, die sich überschneiden, können sich doch unterscheiden: Das sagen die Buchstaben auf der Seite der Saison. Jede Sorte hatte wenige Pflanzen in einem Sommer.`,
    plants: 'Pflanzen',
    yield: 'Ertrag',
    firstRipe: 'zuerst reif',
    surprises: 'Überraschungen',
  },
};
