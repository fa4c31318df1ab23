import { listed } from './shared.ts';
import type { Words } from '../en/index.ts';

const gardens = (n: string): string => (n === '1' ? '1 Garten' : `${n} Gärten`);
const ofGardens = (n: string): string => (n === '1' ? '1 Garten' : `${n} Gärten`);

/** Worte über eine Saison mehrerer Gärten. */
export const club: Words['club'] = {
  lead: (sent, received, counted) =>
    `${sent === received ? `Aufzeichnungen kamen aus allen ${sent} Gärten` : `Aufzeichnungen kamen aus ${received} von ${sent} Gärten`}; ${counted} zogen zwei Sorten oder mehr und zeigen so einen Unterschied.`,
  unit: 'Eine Sorte in einem Garten ist ein Blick auf sie, wie viele Pflanzen sie dort auch hatte; die Zahlen gelten für einen mittleren Garten des Vereins.',
  title: 'Die Gärten',
  apart: (one) =>
    `${one.length === 1 ? `Kein Garten verbindet ${listed(one)} mit den anderen` : `Gärten verbinden ${listed(one)} miteinander, keiner mit den anderen`}: nichts vergleicht sie, und ihre Buchstaben beginnen mit einer Zahl.`,
  lone: (n) =>
    `${gardens(n)} ${n === '1' ? 'zog eine einzige Sorte der Klasse und zeigt' : 'zogen eine einzige Sorte der Klasse und zeigen'} keinen Unterschied.`,
  empty: (n) =>
    `${gardens(n)} ${n === '1' ? 'erntete nichts von der Klasse und zeigt' : 'ernteten nichts von der Klasse und zeigen'} keinen Unterschied.`,
  needed: (now, fifth, twoFifths) =>
    `Damit ein wahrer Unterschied von einem Fünftel in vier von fünf Saisons zu sehen ist, braucht eine Sorte etwa ${ofGardens(fifth)}, für zwei Fünftel etwa ${twoFifths}; sie hatte im Mittel ${now}. Mit weniger zeigt er sich seltener.`,
  enough: 'Ab zehn Gärten je Sorte sagt eine weitere Saison mehr als weitere Gärten.',
  returns: {
    caption: (level) =>
      `Was Mitglieder bekamen und was zurückkam. Wieder anbauen: k von n Mitgliedern mit dem ${level}-Intervall, ab fünf Antworten; der Bereich, wenn alle Schweigenden nein oder ja gesagt hätten, wo weniger als 80 von 100 antworteten.`,
    head: ['Sorte', 'Ausgegeben an', 'Zurück', 'Wieder anbauen', 'Mit den Schweigenden'],
    again: (k, n, low, high) => `${k} von ${n} (${low} bis ${high})`,
    outer: (low, high) => `${low} bis ${high}`,
    none: '–',
  },
  groups: {
    rowHead: ['Gärten', 'Von null an', 'Ertrag je Pflanze'],
    title: { region: 'Gegenden', setting: 'Unter Dach und im Freien' },
    setting: { open: 'Im Freien', cover: 'Unter Dach' },
    caption: (level, least) =>
      `Ertrag je Pflanze in einem mittleren Garten jeder Gruppe mit dem ${level}-Intervall. Eine Zahl steht da, wo ${least} Gärten oder mehr dahinterstehen und keiner über die Hälfte der Pflanzen hat.`,
    variety: 'Sorte',
    name: (name, n) => `${name} (${gardens(n)})`,
    figure: (interval, n) => `${interval}; ${gardens(n)}`,
    differ: 'Sorten verhalten sich in den Gruppen verschieden.',
    alike: 'Nichts zeigt, dass Sorten sich in den Gruppen verschieden verhalten.',
  },
  tables: {
    plantings: 'Gärten',
    yields: (level) =>
      `Brauchbarer Ertrag je Pflanze in einem mittleren Garten, mit Intervallen zu ${level}; n zählt Gärten`,
    medianSeen: 'Median dieser Gärten',
    countsPlantings: 'n zählt Gärten.',
    looks: (days) =>
      `${days === 0 ? 'Der Tag, an dem reife Frucht gefunden wurde, zählt als der Tag der Reife.' : `Frucht, die reif gefunden wurde, kann schon bis zu ${days === 1 ? 'einen Tag' : `${days} Tage`} reif gewesen sein; das Modell rechnet damit, der Median nicht.`} Das Modell sieht jeden Garten durch seine anderen Sorten.`,
    measures: (level) => `Messungen, Mittel der Gärten mit Intervallen zu ${level}`,
    tasting: (level) => `Verkostung, mit Intervallen zu ${level}; n zählt Gärten`,
    tasters: (n) => `${n} Gärten`,
    theseTasters: 'Die Intervalle gelten für die Verkoster dieser Gärten, nicht für alle Leute.',
  },
  ticks: (level) =>
    `Der Punkt ist der beste Schätzwert, die Linie sein ${level}-Intervall. Zwei Sorten mit einem gemeinsamen Buchstaben sind in diesem Versuch nicht zu unterscheiden (Tukey-Kramer).`,
  dots: (axis, level) =>
    `${axis}; Zeichen sind Schätzwerte, Balken Intervalle zu ${level}. Raute: neu. Kreis: wiederholt angebaut.`,
  ripening: {
    allRipe: () => 'in jedem Garten gab es am Ende reife Früchte',
    unripe: (list) => `Gärten ohne reife Frucht am Ende: ${list}`,
    half: 'Bei keiner Sorte hatte die Hälfte der Gärten reife Früchte',
    measure: (isSown) =>
      `Anteil der Gärten mit reifer Frucht nach Tagen ab ${isSown ? 'Aussaat' : 'Auspflanzen'} (Kaplan-Meier); der obere Rand jedes Streifens bedeutet alle.`,
  },
  howMany: {
    cropped: (n) => (n === 1 ? 'Garten erntete etwas' : 'Gärten ernteten etwas'),
    ripe: (n) => (n === 1 ? 'Garten hatte bis zum Ende reife Früchte' : 'Gärten hatten bis zum Ende reife Früchte'),
    again: (n) => (n === 1 ? 'Mitglied würde sie wieder anbauen' : 'Mitgliedern würden sie wieder anbauen'),
  },
  variety: {
    title: 'In den Gärten des Vereins',
    range: (low, high, n) =>
      low === high
        ? `Neben einer mittleren Sorte gab sie in ${n} Gärten etwa das ${low}-Fache, jeder durch seine anderen Sorten gesehen.`
        : `Neben einer mittleren Sorte gab sie in ${n === '1' ? 'einem Garten' : `${n} Gärten`} das ${low}- bis ${high}-Fache, jeder durch seine anderen Sorten gesehen.`,
    spread: (percent) => `Zwei von drei Gärten liegen innerhalb von ${percent} um das Verhältnis des Vereins.`,
    caption: (level) =>
      `Jede Zeile ist ein Garten, mit seinem ${level}-Intervall; Gärten werden nicht genannt. Die gestrichelte Linie ist eine mittlere Sorte.`,
    axis: (times) => `${times} ×`,
  },
  garden: {
    title: (code) => `Garten ${code}`,
    private:
      'Diese Seite ist für diesen Garten allein. Sie steht nicht auf der Website, und keine seiner Zahlen wird veröffentlicht.',
    intro: (code, year) =>
      `Was der Garten ${code} ${year} erntete, neben einem mittleren Garten des Vereins, und was als Nächstes zu erwarten ist.`,
    caution:
      'Wenige Pflanzen in einem Garten sagen, was sie dort taten: im Allgemeinen entscheiden sie nichts, und die Gärten des Vereins allein entscheiden nichts über diesen. Die Urteile nehmen beides zusammen.',
    caption: (season, level) =>
      `Ertrag je Pflanze; was ${season} in diesem Garten zu erwarten ist, mit dem ${level}-Intervall; Urteile für diesen Garten und für den Verein.`,
    head: (season) => [
      'Sorte',
      'Hier',
      'Mittlerer Garten',
      'Mal',
      `Hier ${season} erwartet`,
      'Urteil hier',
      'Urteil im Verein',
    ],
    ratios: 'Dieser Garten hat keine Erträge der Klasse: was die Verhältnisse des Vereins über ihn sagen.',
    others: 'Was dieser Garten sonst aufschrieb, neben einem mittleren Garten des Vereins.',
    hereAndClub: (trait) => [`${trait}, hier`, 'Mittlerer Garten'],
    none: '–',
    noClasses: 'Der Garten hat noch keine Aufzeichnungen, die eine Sorte von der anderen unterscheiden.',
    link: (code) => `Garten ${code}`,
    links: 'Gärten, die ihre Seite zeigen',
  },
  noWeights:
    'Wo mehrere Gärten Aufzeichnungen führen, ruhen die Urteile des Vereins auf Zahlen einzelner Gärten, die nicht veröffentlicht werden: eigene Gewichte lassen sich hier nicht ausprobieren.',
};
