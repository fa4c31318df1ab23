import type { Words } from '../en/index.ts';
import type { Verdict } from '../../../decide/verdict.ts';
import type { NoCandidate } from '../../../decide/candidates.ts';
import { listed, capital } from './shared.ts';

const verdict: Readonly<Record<Verdict, string>> = {
  keep: 'behalten',
  drop: 'aufgeben',
  'no-room': 'kein Platz',
  'try-again': 'noch einmal versuchen',
};

const whyNot: Readonly<Record<NoCandidate, string>> = {
  retired: 'nicht mehr im Versuch',
  'early-line': 'eine Linie vor F5, bei der die Empfehlung einzelnen Pflanzen gilt, nicht der Linie',
  'followed-by-descendant': 'eine spätere Generation davon wurde angebaut',
  untried: 'von ihr wurde nichts notiert, was zählt: Sie ist noch unerprobt',
};

/** Woran ein erwarteter Wert gemessen wird. */
const besides = (isCheck: boolean): string => (isCheck ? 'die Vergleichssorte' : 'eine durchschnittliche');

export const nextSeason: Words['nextSeason'] = {
  title: (year: string) => `Nächste Saison, ${year}`,
  nav: 'Nächste Saison',
  intro: (simulations: string, seed: string) =>
    `${simulations} nächste Saisons wurden aus allem bisher Erfassten gezogen (Startwert ${seed}). Eine Sorte verdient in einer davon einen Platz, wenn sie für die vorhandenen Plätze zu den besten ihrer Klasse gehört und mindestens so gut ist wie die Messlatte. Wie oft ihr das gelingt, ist ihr Anteil.`,
  average:
    'Erwartete Werte sind die einer Sorte in einer durchschnittlichen Saison. Gute und schlechte Jahre als solche sind nicht in den Intervallen; den Vergleich der Sorten berühren sie kaum.',
  independent: 'Die Merkmale werden bei gegebenen Aufzeichnungen unabhängig voneinander gezogen: eine Annahme.',
  verdict,
  verdictHead: 'Urteil',
  goals: (goals: readonly string[]) => `Was zählt: ${listed(goals)}.`,
  goalWeight: (trait: string, weight: string) => `${trait} (Gewicht ${weight})`,
  defaultGoals: (goals: readonly string[]) =>
    `Für diese Klasse sind keine Ziele gesetzt; es zählen gleich viel: ${listed(goals)}.`,
  unrecorded: (traits: readonly string[]) =>
    `Nicht in der Punktzahl, weil in dieser Klasse niemand es erfasst hat, obwohl es zählen würde: ${listed(traits)}.`,
  bar: {
    newcomer: 'Die Messlatte ist eine unerprobte Sorte in der Mitte der Klasse.',
    check: (name: string) => `Die Messlatte ist ${name}, die Vergleichssorte.`,
    fellBack:
      'Die Vergleichssorte hat hier keine Aufzeichnungen, daher ist die Messlatte eine unerprobte Sorte in der Mitte der Klasse.',
  },
  spots: (n: number) => (n === 1 ? 'Es gibt einen Platz.' : `Es gibt ${n} Plätze.`),
  survivors:
    'Die meisten Sorten hier wurden zwei Saisons oder länger behalten: Wo nur Überlebende erfasst wurden, sieht die Klasse besser aus, als ein Neuling ist, und Neulinge sehen zu gut aus.',
  one: 'Eine Sorte allein lässt sich nicht vergleichen: Ihr Anteil sagt nicht mehr als ein Münzwurf.',
  empty: 'In dieser Klasse wurde nichts erfasst, was zählt, daher gibt es kein Urteil.',
  list: (names: readonly string[], spots: number, right: string) =>
    names.length === 0
      ? 'Keine Sorte ist einen Platz mehr wert, als ein Neuling es wäre.'
      : `Die Liste für ${spots === 1 ? 'den Platz' : `die ${spots} Plätze`}${names.length === 1 ? '' : ', nach Anteil geordnet'}: ${listed(names)}. ${names.length === 1 ? `Sie verdient ihren Platz in ${right} simulierten Saisons` : `Von diesen ${names.length} verdienen voraussichtlich rund ${right} ihren Platz`}.`,
  left: (n: number) => (n === 1 ? 'Ein Platz bleibt für einen Neuling.' : `${n} Plätze bleiben für Neulinge.`),
  gain: (points: string) =>
    `Die Liste bringt je Platz voraussichtlich ${points} von 100 Punkten mehr als Sorten in der Mitte ihrer Klasse.`,
  table: {
    caption: (level: string) =>
      `Urteile nach Anteil geordnet; erwartete Werte in einer durchschnittlichen Saison mit Vorhersageintervallen zu ${level}`,
    variety: 'Sorte',
    share: 'Verdient einen Platz',
    above: 'Erreicht die Messlatte',
    seasons: 'Saisons',
  },
  of100: (n: string) => `${n} von 100`,
  moreThan99: 'mehr als 99 von 100',
  fewerThan1: 'weniger als 1 von 100',
  share: (word: string, share: string) => `${word}: verdient einen Platz in ${share} simulierten Saisons`,
  countsOnly: 'Die Zahl der Früchte steht für ihr Gewicht, das kaum notiert wurde.',
  wanted: (seasons: number) =>
    `behalten, weil alle, die geantwortet haben, sie wieder anbauen wollten, ${seasons} Saisons in Folge, und ein Platz da ist`,
  saidNo: (n: number, year: string) =>
    n === 1
      ? `Wer ${year} geantwortet hat, würde sie nicht wieder anbauen.`
      : `Niemand von den ${n}, die ${year} geantwortet haben, würde sie wieder anbauen.`,
  gaveNothing: (year: string) => `${year} hat sie nichts gebracht.`,
  neverRipe: (year: string) => `${year} ist nichts von ihr reif geworden.`,
  limitMissed: (isOffType: boolean, k: string, n: string, limit: string) =>
    `${k} von ${n} waren ${isOffType ? 'sortenuntypisch' : 'scharf'}: mehr, als die Grenze von ${limit} zulässt.`,
  limitOpen: (isOffType: boolean, k: string, n: string, limit: string) =>
    `${k} von ${n} waren ${isOffType ? 'sortenuntypisch' : 'scharf'}: zu wenige wurden angesehen, um zu zeigen, dass die Grenze von ${limit} gehalten wird.`,
  limitDrawn: (trait: string, share: string) =>
    `${capital(trait)} verfehlt die Grenze in ${share} simulierten Saisons.`,
  leans: { up: 'neigt zu behalten', down: 'neigt zu aufgeben' },
  edge: 'gerade an der Grenze',
  untested:
    'die Aufzeichnungen zeigen nicht, dass sie eine Grenze einhält, die nicht verfehlt werden darf, daher ist behalten nicht möglich',
  alone: 'allein in ihrer Klasse: nicht mehr als ein Münzwurf',
  must: (trait: string, least: string | null, most: string | null) =>
    `Darf nicht verfehlt werden: ${trait}${least === null ? '' : ` mindestens ${least}`}${most === null ? '' : ` höchstens ${most}`}.`,
  seenNothing: 'nichts geerntet',
  seenNoneRipe: 'keine reif',
  onlyContainers: 'Nur aus Gefäßen bekannt.',
  onlyTopped: 'Nur von entspitzten Pflanzen bekannt.',
  notGrown: (year: string) => `Zuletzt ${year} angebaut; das Urteil beruht auf älteren Saisons.`,
  reason: (heading: string, value: string, bar: string, points: string, isCheck: boolean) =>
    `${heading}: ${value}, ${besides(isCheck)} ${bar} (${points} Punkte).`,
  against: (text: string) => `Dagegen: ${text}`,
  reasonCut: (trait: string, value: string, bar: string, points: string, isCheck: boolean) =>
    `${capital(trait)}: ${value}, ${besides(isCheck)} ${bar}; was außerhalb der zählenden Spanne liegt, macht daraus aber ${points} Punkte.`,
  reasonSpread: (trait: string, value: string, _bar: string, points: string, isCheck: boolean) =>
    `${capital(trait)}: ${value}, wie ${besides(isCheck)}; wie weit sie davon abliegen kann, macht ${points} Punkte.`,
  reasonEqual: (trait: string, value: string) =>
    `${capital(trait)}: ${value}, nicht anders als das, woran sie gemessen wird.`,
  isBar: 'Sie ist selbst die Vergleichssorte.',
  fragile: (trait: string, isDoubled: boolean, word: string) =>
    `bei ${isDoubled ? 'doppeltem' : 'halbem'} Gewicht für ${trait} wäre es „${word}“`,
  fragileAll: (parts: readonly string[]) => `Das Urteil hängt an den Gewichten: ${listed(parts)}.`,
  firm: 'Kein Gewicht, halbiert oder verdoppelt, ändert das Urteil.',
  settles: (chances: readonly string[]) => `Wahrscheinlichkeit, dass eine weitere Saison es klärt: ${listed(chances)}.`,
  settlesWith: (chance: string, plants: number) => `${chance} (${plants === 1 ? '1 Pflanze' : `${plants} Pflanzen`})`,
  notByPlants: 'Selbst sechs Pflanzen klären es in weniger als der Hälfte solcher Saisons: Es braucht mehrere.',
  notSoon: (isListed: boolean) =>
    `Weder mehr Pflanzen noch eine weitere Saison werden es wohl klären: ${isListed ? 'Sie ist etwa so gut, wie es eine neue wäre; anbauen, wem sie gefällt' : 'Ihr Platz gehört einer neuen, außer wem sie gefällt'}.`,
  own: (percent: string) =>
    `${percent} des Abstands von der Klasse kommen aus den eigenen Aufzeichnungen, der Rest ist zur Klasse gezogen.`,
  assumed: (traits: readonly string[]) =>
    `In mindestens einer Saison ist der Fehler geliehen oder angenommen: ${listed(traits)}.`,
  nothingPicked: (years: readonly string[]) =>
    `Nichts geerntet: ${listed(years)}; das geht ein als die Hälfte der kleinsten Pflanze der Klasse, mit weitem Spielraum.`,
  laterThan: (years: readonly string[]) =>
    `Nichts gereift: ${listed(years)}; das geht ein als später als das Saisonende.`,
  excluded: 'Nicht im Wettbewerb',
  whyNot,
  goalsTable: {
    caption:
      'Punkte laufen geradlinig von schlecht nach gut; die Punktzahl ist das gewichtete Mittel der Punkte. Ein Teil unter 0 spricht gegen die übrigen',
    trait: 'Was zählt',
    weight: 'Gewicht',
    bad: '0 Punkte',
    good: '100 Punkte',
    part: 'Beitrag zur Varianz der Punktzahl',
  },
  given: 'wie gesetzt',
  fromClass: 'aus der Klasse',
  ofScale: 'Ende der Skala',
  lastWinter: {
    head: (year: string) => `Was dieselbe Regel vor ${year} gesagt hätte`,
    keeps: (advised: number, grown: number, earned: number) =>
      advised === 0
        ? 'Sie hätte keine sicher behalten.'
        : `Von ${advised}, die sie behalten hätte, ${grown === 1 ? 'wurde' : 'wurden'} ${grown} angebaut, und ${earned} ${earned === 1 ? 'verdiente' : 'verdienten'} nach dem Beobachteten einen Platz.`,
    list: (advised: number, grown: number, earned: number) =>
      `Von ${advised} auf ihrer Liste ${grown === 1 ? 'wurde' : 'wurden'} ${grown} angebaut, und ${earned} ${earned === 1 ? 'verdiente' : 'verdienten'} einen Platz.`,
    caution: 'Das Beobachtete hat seinen eigenen Fehler: Eine gute Sorte kann ihren Platz in einer Saison verfehlen.',
  },
  charts: {
    shares: (word: string, names: readonly string[], year: string) =>
      names.length === 0
        ? `In dieser Klasse ist für ${year} nichts sicher zu behalten`
        : `${capital(word)} für ${year}: ${listed(names)}`,
    sharesMeasure: (simulations: string, keep: string, drop: string) =>
      `Balken: von 100 simulierten Saisons die, in denen eine Sorte einen Platz verdient (${simulations} gezogen). Dünne Linie: erreicht die Messlatte. Linien bei ${drop} und ${keep}: unter der ersten aufgeben, ab der zweiten behalten.`,
    sharesAxis: 'von 100 simulierten Saisons',
    expected: (trait: string, names: readonly string[], others: number) =>
      `${capital(trait)}, erwartet in einer durchschnittlichen Saison: ${names.join('; ')}${others === 0 ? '' : `; und ${others} weitere`}`,
    expectedMeasure: (axis: string, level: string) =>
      `${axis}; Zeichen: erwartet in einer durchschnittlichen Saison, Balken: Vorhersageintervalle zu ${level}, graue Striche: Saisons wie beobachtet. Dünne Linie: der Zug vom eigenen Mittel zur Klasse. Raute: neu in der letzten Saison. Kreis: wiederholt angebaut.`,
    newcomer: 'Neuling',
    status: 'Status',
    expectedHead: (axis: string, level: string) => `${axis}, erwartet (Vorhersageintervall zu ${level})`,
    seenHead: 'Beobachtet, Saison für Saison',
    ownHead: 'Aus eigenen Aufzeichnungen',
  },
  spread: (trait: string, between: string, season: string) =>
    `${capital(trait)}: Sorten unterscheiden sich um ${between}, eine Sorte von Saison zu Saison um ${season} (Standardabweichungen).`,
  advice: (year: string) => `Empfehlung für ${year}`,
  inFull: (year: string) => `Die Empfehlung für ${year} ausführlich`,
  noAdvice: (why: string) => `Kein Urteil: ${why}.`,
};

export const yourWeights: Words['yourWeights'] = {
  title: 'Eigene Gewichte',
  nav: 'Eigene Gewichte',
  intro:
    'Was im eigenen Garten zählt, muss nicht sein, was für den Verein zählte. Die Gewichte und Plätze lassen sich verschieben; dieselben simulierten Saisons werden dann hier in der Seite neu ausgezählt.',
  noScript: 'Ohne JavaScript zeigt diese Seite die Urteile mit den Gewichten des Vereins.',
  class: (name: string) => `${name}: Gewichte und Plätze`,
  weightOf: (trait: string) => `Gewicht für ${trait}`,
  spots: 'Plätze',
  reset: 'Zurück zu den Gewichten des Vereins',
  link: 'Ein Link mit diesen Gewichten',
  none: 'Jedes Gewicht ist 0: Nichts zählt, daher gibt es kein Urteil.',
  counted: (simulations: string) => `Ausgezählt über ${simulations} simulierte Saisons mit diesen Gewichten.`,
  caption: 'Urteile mit diesen Gewichten',
  listHead: 'Auf der Liste',
  yes: 'ja',
  no: '',
};
