import type { Words } from '../en/index.ts';

export const front: Words['front'] = {
  later: (name: string, seen: string, claimed: string) =>
    `${name} reifte später, als die Tüte sagt: ${seen}, angegeben ${claimed}.`,
  earlier: (name: string, seen: string, claimed: string) =>
    `${name} reifte früher, als die Tüte sagt: ${seen}, angegeben ${claimed}.`,
  more: (name: string, check: string, figure: string) =>
    `${name} brachte mehr Ertrag als ${check}: im Verhältnis ${figure}.`,
  newKeep: (name: string, share: string) =>
    `${name}, zum ersten Mal angebaut, verdient einen Platz in ${share} simulierten Saisons.`,
};

export const handout: Words['handout'] = {
  title: (year: string) => `Der Versuch ${year} auf zwei Seiten`,
  intro: (place: string, date: string) => `${place === '' ? '' : `${place}. `}Erfasst bis ${date}.`,
  verdicts: (year: string, simulations: string) =>
    `Was ${year} anzubauen ist: von 100 simulierten Saisons (${simulations} aus allen Aufzeichnungen gezogen) die, in denen eine Sorte einen der Plätze ihrer Klasse verdient. Jedes gefüllte Quadrat sind fünf davon.`,
  older: 'Die Empfehlung steht nur auf dem Handzettel der letzten Saison.',
  class: 'Klasse',
  cautions:
    'Scharfer Paprika brennt auf der Haut und in den Augen: Handschuhe tragen und von Kindern fernhalten. Früchte unbekannter Kreuzungen sind nicht zum Essen. Paprika und Tomaten werden nur nach geprüften Rezepten haltbar gemacht. Gebeiztes Saatgut ist nicht zum Essen oder Verfüttern.',
  site: 'Alles ausführlich:',
};

export const glossary: Words['glossary'] = {
  title: 'Wörterverzeichnis',
  terms: [
    ['Sorte', 'Was verglichen wird: eine samenfeste Sorte, eine Hybride oder eine entstehende Linie.'],
    ['Pflanzung', 'Die Einheit jedes Vergleichs: eine Pflanze oder zusammen erfasste Pflanzen einer Sorte.'],
    ['Klasse', 'Sorten, die um dieselben Plätze konkurrieren, etwa süße Paprika.'],
    ['Vergleichssorte', 'Der bekannte Maßstab einer Klasse, jedes Jahr zum Vergleich angebaut.'],
    [
      'Neu, bewährt',
      'Neu in der ersten Saison im Versuch; bewährt, also wiederholt angebaut, in jeder späteren. Ein Lob ist es nicht.',
    ],
    ['Block', 'Pflanzungen, die zusammengefasst sind, weil ihre Standorte sich gleichen.'],
    ['n', 'Auf wie vielen Pflanzungen (oder Verkostern oder Samen) eine Zahl beruht.'],
    ['Intervall', 'Von wo bis wo die wahre Zahl nach diesen Pflanzen gut liegen kann.'],
    [
      'Vorhersageintervall',
      'Von wo bis wo das eigene Mittel einer Sorte in einer durchschnittlichen nächsten Saison gut liegen kann; ein gutes oder schlechtes Jahr und der Zufall der Pflanzen kommen hinzu.',
    ],
    ['VK', 'Variationskoeffizient: wie sehr Pflanzen einer Sorte sich unterscheiden, in Prozent ihres Mittels.'],
    ['Buchstaben', 'Zwei Sorten mit einem gemeinsamen Buchstaben sind in diesem Versuch nicht getrennt.'],
    ['GD', 'Grenzdifferenz: die kleinste Differenz zweier Mittel, die als getrennt gilt.'],
    ['F', 'Ob die Sorten einer Klasse sich überhaupt unterscheiden.'],
    ['Median der Tage', 'Der Tag, bis zu dem die Hälfte der Pflanzungen eine reife Frucht hatte.'],
    ['Wärmesumme (Gradtage)', 'Tage, gezählt nach ihrer Wärme über einer Basistemperatur.'],
    ['Beobachtet', 'Was die Pflanzen dieser Saison brachten.'],
    ['Erwartet', 'Was eine durchschnittliche nächste Saison wohl bringt, aus allen Saisons zusammen.'],
    ['Zug', 'Wie weit ein erwarteter Wert zu seiner Klasse gezogen wird, weil die Aufzeichnungen dünn sind.'],
    ['Platz', 'Raum für eine Sorte einer Klasse in der nächsten Saison.'],
    [
      'Messlatte',
      'Was eine Sorte erreichen muss, um einen Platz zu verdienen: ein Neuling in der Mitte der Klasse oder die Vergleichssorte.',
    ],
    ['Anteil', 'Von 100 simulierten nächsten Saisons die, in denen eine Sorte einen Platz verdient.'],
    ['Punktzahl', 'Gewichtetes Mittel der Punkte, 0 bis 100, die eine Sorte für das bekommt, was zählt.'],
    [
      'Behalten, aufgeben, kein Platz, noch einmal versuchen',
      'Die vier Urteile; die Seite der Methoden sagt, wo ihre Grenzen liegen.',
    ],
    ['Linie', 'Eine entstehende Kreuzung, Generation für Generation (F2, F3 …).'],
    ['Ausschuss', 'Eine Frucht, die nicht verwertbar ist.'],
  ],
};
