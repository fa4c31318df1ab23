import type { Method } from '../methods.ts';

/** Methoden hinter dem Plan der nächsten Saison. */
export const planMethods: readonly Method[] = [
  {
    id: 'plan',
    title: 'Der Plan der nächsten Saison',
    words: [
      'Die Liste wächst mit mindestens zwei Pflanzen, Neulinge mit je einer: ein Platz von zehn, und zwei für jeden Platz, den die Liste frei lässt, höchstens die Hälfte. Was übrig ist, geht eins ums andere an die Sorte mit dem größten Anteil im Verhältnis zu ihren Pflanzen; niemand bekommt über ein Drittel der Plätze der Klasse, bevor alle haben. Wünsche gelten genau.',
      'Pflanzen einer Sorte stehen getrennt, in Blöcken entlang des Beets mit etwa so vielen Plätzen, wie es Sorten gibt, bis 20. Sorten kommen so in Blöcke, dass ihre Unterschiede im Mittel die kleinste Varianz haben; in einem Block werden Pflanzen verschoben, bis keine zwei einer Sorte nebeneinander stehen, Reihen geteilt sind und Nachbarn wechseln. Gruppen sind zwei Hälften des Beets mit je einer Gruppe jeder Sorte.',
      'Der letzte Frost gilt als normalverteilt, seine Streuung von Frühjahr zu Frühjahr als 13 Tage mit dem Gewicht von zehn Frühjahren, ein angegebener Tag so viel wert wie zehn. Ein Frühjahr, dessen Aufzeichnung keinen Frost zeigt, zählt mit dem Tag vor ihrem Beginn. Die erste reife Frucht kommt die erwarteten Tage nach dem Auspflanzen; ein Neuling ist die Mitte seiner Klasse.',
      'Die Samen geben die Pflanzen und eine zusätzliche auf je vier in 95 von 100 Fällen; dass vier von fünf aufgehen, wird lose angenommen, jede gezählte Aussaat kommt hinzu. Auf den Bögen stehen Kennzahlen; wo alle alles verkosten, kommt jede Probe gleich oft an jede Stelle und nach jeder anderen, sonst werden Sorten auf Personen verteilt wie auf Blöcke.',
    ],
    assumes: 'Neulinge so gut wie bisher geprüfte; Pflanzen, die sich unterscheiden wie bisher.',
    limits:
      'Reihen eines Beets sind nicht in der Auswertung: mit einem Gefälle quer dazu sind Bereiche bis 15 % zu weit. 13 Tage ist eine kontinentale Streuung. Was Neulinge bringen, kommt nach mehreren Saisons.',
    source:
      'Federer (1956) und Cullis, Smith & Coombes (2006) J. Agric. Biol. Environ. Stat. 11:381 für teilweise wiederholte Versuche; John & Williams (1995) Cyclic and Computer Generated Designs; Williams (1949) Aust. J. Sci. Res. A 2:149; Illinois State Water Survey für die Streuung der Fröste',
  },
  {
    id: 'rankings',
    title: 'Was Mitglieder eines Vereins vorzogen',
    words: [
      'Die beste und die schlechteste der erhaltenen Sorten sind eine Reihenfolge, in Stufen gelesen: die beste unter allen, die nächste unter den übrigen. Eine Wahl mehrerer gleicher ist so wahrscheinlich wie der Wert eines Gleichstands dieser Größe mal das Mittel ihrer Werte auf der logarithmischen Skala. Jede Sorte hat einen halben Sieg und eine halbe Niederlage gegen eine vom Wert 1, damit kein Wert davonläuft. Wo mehr als eine in der Mitte steht, gilt nur die beste als vor den anderen.',
      'Ein Wert wird als Anteil gezeigt, in dem die Sorte vor einer mittleren steht; sein Bereich ist aus Quasi-Varianzen, so dass je zwei nebeneinander gelesen werden dürfen. Als Ziel geht der Logarithmus des Werts mit seiner Quasi-Varianz in die Erwartung ein wie eine Note, mit 1 als Vorgabe dafür, wie sehr sich Sorten unterscheiden; seine Punkte sind dieser Anteil von 100.',
    ],
    assumes: 'Mitglieder antworten unabhängig voneinander und davon, was ihrem Garten liegt.',
    limits:
      'Die nicht antworteten, mögen anders denken. Antworten von weniger als fünf Mitgliedern werden nicht gesagt.',
    source:
      'Plackett (1975) Appl. Stat. 24:193; Davidson (1970) J. Am. Stat. Assoc. 65:317; Firth & de Menezes (2004) Biometrika 91:65',
  },
  {
    id: 'gardens',
    title: 'Viele Gärten',
    words: [
      'Wo mehrere Gärten Aufzeichnungen führen, ist eine Sorte in einem Garten die Einheit: ihre Pflanzungen dort werden zusammengezählt, und drei Pflanzen in einem Garten sind ein Blick. Der Garten steht im Modell neben der Sorte, mit einer eigenen Wirkung, über die nichts angenommen wird, damit bessere Gärten ihre Erträge nicht dem leihen, was zufällig in ihnen wächst. Ein Schätzwert gilt für einen mittleren Garten: jeder Garten zählt gleich. Gärten mit einer einzigen Sorte der Klasse und solche, die nichts von ihr ernteten, zeigen keinen Unterschied und bleiben weg; ein Ertrag von nichts neben anderen zählt. Sorten, die keine Kette von Gärten verbindet, werden über die Lücke mit nichts verglichen. Tage bis zur reifen Frucht und Noten werden ebenso genommen, der Garten ist der Verkoster.',
      'Zum Erwarteten kommen zwei Streuungen: die einer Sorte von Garten zu Garten, und was Garten, Saison und Platz gemeinsam machen. Ihre Verteilung wird auf einem Gitter aller vier Streuungen berechnet; bei mehr als 250 Sorten mal Saisons in einer Klasse stehen ihre wahrscheinlichsten Werte, nach mittlerer Information mit zufälligen Spuren gefunden, für alle (wie Sorte und Saison teilen, was die Aufzeichnungen nur zusammen sagen, bleibt der Vorgabe überlassen); bei mehr als 800 wird, was unsicher ist, 200-mal gezogen, jedes Mal mit seinem Gegenteil. Das Urteil des Vereins gilt für einen seiner Gärten im Mittel; das eines Gartens nimmt hinzu, was er selbst zeigte, und den Zufall seines Platzes. Quadrierter Variationskoeffizient der Pflanzen in einem Garten, wo weniger als zehn Unterschiede von Pflanzen aufgezeichnet sind: 0,128.',
      'Eine Zahl einer Gegend oder eines Umfelds steht da, wo fünf Gärten oder mehr dahinterstehen und keiner über die Hälfte der Pflanzen hat; ist eine Gruppe verborgen, so auch die nächstkleinste.',
    ],
    assumes:
      'Mitglieder pflegen jede Sorte gleich, und was sie einsenden, hängt nicht davon ab, wie sie ausfiel; Gärten unterscheiden sich auf der logarithmischen Skala; die Streuungen sind in allen Gärten gleich.',
    limits:
      'Über die, die keinen Bogen sandten, wird nichts gesagt als der Bereich, in den sie einen Anteil bringen könnten. In Simulationen hielten Intervalle für einen Garten des Vereins in 94 bis 95 von 100 Fällen. Ein Garten entscheidet im Allgemeinen nichts, der Verein allein nichts über einen Garten.',
    source:
      'Yates (1936) Ann. Eugen. 7:121 für unvollständige Blöcke; Gilmour, Thompson & Cullis (1995) Biometrics 51:1440, Hutchinson (1990) Commun. Stat. Simul. 19:433 und García-Cortés et al. (1992) J. Anim. Breed. Genet. 109:358 für sehr viele; Patterson & Thompson (1971) Biometrika 58:545; Wilson (1927) J. Am. Stat. Assoc. 22:209; Manski (1989) J. Hum. Resour. 24:343 für die Schweigenden',
  },
];
