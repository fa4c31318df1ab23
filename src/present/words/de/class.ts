import type { Words } from '../en/index.ts';
import { listed, capital } from './shared.ts';

export const report: Words['report'] = {
  ratio: (what: string, figure: string, apart: string) =>
    `${what}, neue Sorten im Verhältnis zu den bewährten: ${figure}; ${apart}.`,
  difference: (what: string, figure: string, apart: string) =>
    `${what}, neue Sorten minus bewährte: ${figure}; ${apart}.`,
  apart: 'für sich genommen sind sie in diesem Versuch getrennt',
  notApart: 'sie sind in diesem Versuch nicht getrennt',
  cautions: {
    'no-residual-df': () =>
      'Eine Pflanzung je Sorte: Sorte und Standort lassen sich durch nichts auseinanderhalten, daher haben die Zahlen keine Intervalle. Zwei Pflanzungen von einigen Sorten würden sie liefern.',
    'single-plantings': (names: string) =>
      `Nur eine Pflanzung je Sorte: ${names}; die Streuung zwischen Pflanzen ist von den anderen Sorten geliehen.`,
    'one-bed': (names: string) =>
      `Alle Pflanzen von ${names} standen in einem Beet: Sorte und Beet lassen sich nicht auseinanderhalten.`,
    'without-blocks': () =>
      'Blöcke bleiben bei den Erträgen dieser Klasse außer Betracht, weil eine Pflanzung darin nichts brachte: Jede Zahl ist Summe durch Pflanzen.',
    'mixed-topped': () =>
      'Einige Pflanzen waren entspitzt, andere nicht; Entspitzen verzögert die erste Frucht, und die Zahlen vermischen beides.',
    'only-topped': () => 'Alle Pflanzen waren entspitzt: Die Zahlen gelten für entspitzte Pflanzen.',
    // `as never` until english.ts gives this function the return type string
    'mixed-stands': (isAdjusted: boolean) =>
      isAdjusted
        ? 'Einige Pflanzen standen in Gefäßen, andere im Boden; die Schätzwerte für Ertrag und Früchte gelten, als hätte jede Sorte an jeder Art von Platz gleich oft gestanden, und sind darum nicht ihre Summe durch ihre Pflanzen.'
        : 'Einige Pflanzen standen in Gefäßen, andere im Boden, und die Sorten sind in keinem von beiden zu vergleichen: Sorte und Gefäß sind vermengt.',
    'only-pots': () => 'Alle Pflanzen standen in Gefäßen: Die Zahlen gelten für Gefäße.',
    'unequal-plantings': () =>
      'Die Pflanzungen sind verschieden groß. Die erste reife Frucht einer größeren Pflanzung kommt schon deshalb früher.',
    'not-blind': (known: string | null, scores: string) =>
      known === null
        ? 'Die Verkoster wussten, was sie kosteten, oder es wurde nicht erfasst, dass sie es nicht wussten.'
        : `${known} von ${scores} Noten wurden nicht blind vergeben.`,
    'high-cv': (cv: string) =>
      `Pflanzen einer Sorte unterschieden sich stark (VK ${cv} %): Unterschiede zwischen Sorten sind schwer zu erkennen.`,
    'class-sizes-differ': () =>
      'Ein mittleres Quadrat gilt gemeinsam für Klassen mit sehr verschiedenem Ertrag; die Skala der Verhältnisse passt besser zu diesem Versuch.',
  },
};

export const charts: Words['charts'] = {
  drawnOf: (drawn, all) =>
    `Gezeichnet sind die ersten ${drawn} von ${all} Sorten; alle stehen in den Tabellen dieser Seite.`,
  yieldWhat: 'Ertrag je Pflanze',
  yieldAxis: (unit: string) => `Verwertbarer Ertrag, ${unit} je Pflanze`,
  found: {
    none: (what: string) => `Nichts erfasst: ${what}`,
    only: (name: string, what: string) => `${name} ist die einzige Sorte mit erfassten Werten für ${what}`,
    first: (name: string, isLowest: boolean, what: string) =>
      `${name} hat den ${isLowest ? 'niedrigsten' : 'höchsten'} Schätzwert für ${what} in diesem Versuch`,
    apart: (name: string, isLowest: boolean, what: string, isAll: boolean) =>
      `${name} hat den ${isLowest ? 'niedrigsten' : 'höchsten'} Schätzwert für ${what}, in diesem Versuch von allen anderen${isAll ? '' : ', die sich vergleichen lassen,'} getrennt`,
    level: (what: string, names: readonly string[] | null, isLowest: boolean) =>
      names === null
        ? `${capital(what)}: in diesem Versuch alle gleich`
        : `${listed(names)} haben gemeinsam den ${isLowest ? 'niedrigsten' : 'höchsten'} Schätzwert für ${what}`,
    noneApart: (name: string, isLowest: boolean, what: string) =>
      `${name} hat den ${isLowest ? 'niedrigsten' : 'höchsten'} Schätzwert für ${what}; keine Sorte ist davon in diesem Versuch getrennt`,
    alike: (name: string, isLowest: boolean, what: string, others: readonly string[]) =>
      `${name} hat den ${isLowest ? 'niedrigsten' : 'höchsten'} Schätzwert für ${what}; ${others.join(', ')} ${others.length === 1 ? 'ist' : 'sind'} davon nicht getrennt`,
  },
  dots: (axis: string, level: string, hasTicks: boolean) =>
    `${axis}; Zeichen sind Schätzwerte, Balken Intervalle zu ${level}${hasTicks ? ', graue Striche die Pflanzungen' : ''}. Raute: neu. Kreis: wiederholt angebaut.`,
  dotsHead: (axis: string, level: string) => `${axis} (Intervall zu ${level})`,
  ratio: {
    none: (check: string) => `Im Ertrag ist in diesem Versuch keine Sorte von ${check} getrennt`,
    some: (check: string, names: readonly string[]) => `Im Ertrag von ${check} getrennt: ${names.join(', ')}`,
    more: (name: string) => `${name} (mehr)`,
    less: (name: string) => `${name} (weniger)`,
    measure: (check: string, level: string) =>
      `Ertrag je Pflanze als Vielfaches der Vergleichssorte ${check} (Linie bei 1); gemeinsam gültige Intervalle zu ${level} (Dunnett). Raute: neu. Kreis: wiederholt angebaut.`,
    axis: 'weniger  ←  Vielfaches der Vergleichssorte  →  mehr',
    head: (check: string, level: string) => `Vielfaches des Ertrags von ${check} (Intervall zu ${level})`,
  },
  ripening: {
    newName: (name: string) => `${name}, neu`,
    ripe: (share: string) => `${share} reif`,
    what: 'Tage bis zur ersten reifen Frucht',
    allRipe: (isWhole: boolean) =>
      `am Ende hatte jede ${isWhole ? '' : 'nicht durch Unfall verlorene '}Pflanzung reife Früchte`,
    unripe: (list: string) => `Pflanzungen ohne reife Frucht am Ende: ${list}`,
    half: 'Bei keiner Sorte reifte die Hälfte der Pflanzungen',
    measure: (isSown: boolean) =>
      `Anteil der Pflanzungen mit reifer Frucht nach Tagen ab ${isSown ? 'Aussaat' : 'Auspflanzen'} (Kaplan-Meier); der obere Rand jedes Streifens bedeutet alle.`,
    axis: (isSown: boolean) => `Tage ab ${isSown ? 'Aussaat' : 'Auspflanzen'}`,
    model: 'Tage bis zur ersten reifen Frucht, Modell',
    median: 'Median der Tage bis zur ersten reifen Frucht',
  },
  tradeOff: {
    both: (names: string, trait: string) =>
      `Schätzwerte bei Ertrag und ${trait} über der Mitte der Klasse: ${names}; die Kreuze sagen, wie sicher`,
    none: (trait: string) => `Kein Schätzwert liegt bei Ertrag und ${trait} über der Mitte der Klasse`,
    measure: (trait: string, level: string) =>
      `Ertrag je Pflanze gegen ${trait}; die Kreuze sind die Intervalle (${level}) von beiden. Raute: neu. Kreis: wiederholt angebaut.`,
  },
  scores: {
    title: (trait: string, w: string | null) =>
      w === null
        ? `Wie die Noten verteilt waren: ${trait}`
        : `Wie die Noten verteilt waren: ${trait} (Kendalls W ${w})`,
    measure: (trait: string, from: string, to: string, tasters: number, isBlind: boolean) =>
      `Einzelne Noten für ${trait} von ${tasters === 1 ? 'einer Person' : `${tasters} Verkostern`}${isBlind ? ', verdeckt' : ''}, von ${from} (hell) bis ${to} (dunkel); die Großzügigkeit der Verkoster ist nicht herausgerechnet.`,
    axis: 'Anteil der Noten',
    part: (score: string, count: string) => `${score}: ${count}`,
  },
  cumulative: {
    title: 'Wie der Ertrag über die Saison zusammenkam',
    measure: (unit: string) =>
      `Gewogener verwertbarer Ertrag je gesetzter Pflanze, ${unit}, von Ernte zu Ernte addiert; kein Schätzwert, daher ohne Intervall`,
    axisX: 'Tage ab der ersten Aussaat oder dem ersten Auspflanzen',
    axisY: (unit: string) => `${unit} je Pflanze`,
    weighed: 'Bis zur letzten Ernte gewogen',
  },
};
