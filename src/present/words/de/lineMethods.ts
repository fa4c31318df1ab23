import type { Words } from '../en/index.ts';
import type { Method } from '../methods.ts';

/** Methods behind the pages of crosses and of seed. */
export const lineMethods: readonly Method[] = [
  {
    id: 'genes',
    title: 'Gene einer Kreuzung',
    words: [
      'Von den Genen, in denen sich zwei Eltern unterscheiden, ist in jeder geselbsteten Generation die Hälfte derer gemischt, die es zuvor waren. Wo Blüten offen standen, kann Same von fremdem Pollen sein: der Anteil wird dann für das Meiste angegeben, was die Art aufnimmt, als wäre dieser Pollen in jedem Gen anders.',
      'Zahlen einer F2 werden mit den Verhältnissen verglichen, die ein Gen oder zwei ergeben. Ein Verhältnis wird genannt, solange sein exakter P-Wert mindestens 0,05 ist und F1 und Eltern, wo sie gesehen wurden, es zulassen. Eine Schale mit Sämlingen ersetzt die Pflanzen, die daraus stammen. Von keinem Verhältnis wird gesagt, es sei das richtige.',
      'Wie eine Pflanze vererbt, wird aus dem ganzen Stammbaum berechnet: ein Gen (Vorwissen 0,6), zwei Gene (0,3) oder keines davon (0,1), Verhältnisse mit gleich vielen Genen gleich, Zuordnungen der Zustände gleich; die Gene sind nicht gekoppelt, die Eltern reinerbig. Das Vorwissen ist ein Urteil. Eine Pflanze wird mit der Wahrscheinlichkeit der Einstellungen falsch benannt. „Bleibt“ ist die Wahrscheinlichkeit unter den Genmodellen; bei den Pflanzen des nächsten Jahres zählt „keines davon“ mit allen Anteilen gleich.',
      'Die Wahrscheinlichkeit mindestens einer gewünschten Pflanze wird in jedem Modell und Genotyp berechnet und dann gemittelt; Anteile mehrerer Merkmale werden multipliziert. Samen von Kürbis und Melone aus offenen Blüten, mehr als vier Zustände und Rückkreuzungen werden nur gezählt.',
      'Abweicher: die obere Grenze ihres Anteils ist exakt und einseitig (95 %).',
    ],
    assumes: 'Geselbsteter Same; nicht gekoppelte Gene; Zustände, die alle gleich benennen.',
    limits:
      'Falsche Benennungen schaden am meisten: wo 8 von 100 Pflanzen falsch benannt sind und 2 angenommen werden, bleiben von Pflanzen, denen es in 92 von 100 Fällen zugesagt ist, 78. Wie viel, steht in der Tabelle „Ob Vorhersagen für Kreuzungen ihr Wort halten“.',
    source:
      'Falconer & Mackay (1996) Introduction to Quantitative Genetics; Elston & Stewart (1971) Hum. Hered. 21:523; Clopper & Pearson (1934) Biometrika 26:404; UPOV-Prüfungsrichtlinien für Abweicher',
  },
  {
    id: 'passed-on',
    title: 'Mit welchen Pflanzen einer Kreuzung es weitergeht',
    words: [
      'Die Varianz der einzelnen Pflanzen einer Linie wird mit der einzelner Pflanzen fester Sorten daneben verglichen, auf der Arbeitsskala des Merkmals: ein Verhältnis mit seinem F-Intervall. Es zählen feste Sorten der Klasse; aller Klassen, wo es zu wenige sind und die Skala logarithmisch ist.',
      'Wie viel der Abweichung einer Pflanze erblich ist, hat ein Vorwissen, das für Ertrag, Tage und Noten niedrig und für Maße offen ist, und nimmt jede Saison auf, in der die Kreuzung neben festen Sorten stand. Vererbt wird dieser Anteil der Abweichung von den Schwestern. Pflanzen werden nach den Punkten der Ziele der Klasse geordnet; Punkte eines Zustands sind sein Anteil an den Nachkommen. Die Aussicht, wirklich unter den besten zu sein, wird in Ziehungen gezählt.',
      'Es werden so viele Mütter genannt, wie bis auf 3 % an die beste Zahl kommen: nach dem Wert der Pflanze, die am Ende gewählt würde, oder nach der Wahrscheinlichkeit einer gewünschten Pflanze, wo diese mehr verlangt.',
      'Was die letzte Wahl brachte, ist der Unterschied zur selben Vergleichssorte in beiden Saisons; ein Anteil, der wiederkehrt, wird erst ab sechs Familien genannt.',
      'Die Wahrscheinlichkeit, dass eine von so vielen Pflanzen eine gemessene Schwelle übertrifft, wird nicht genannt: in Versuchen mit der Regel waren 63 von 100 zugesagt und 88 traten ein.',
    ],
    assumes: 'Merkmale sind unabhängig; eine Linie und die festen Sorten stehen gleich.',
    limits:
      'Bei zehn Pflanzen ist der erbliche Anteil kaum bekannt. Eine einzelne Pflanze kann eine Linie uneinheitlich scheinen lassen.',
    source: 'Falconer & Mackay (1996) Kap. 8–11; Ben Chaim & Paran (2000) zur Vererbung der Fruchtgröße',
  },
  {
    id: 'seed',
    title: 'Samen, und wann zu säen ist',
    words: [
      'Die Keimung fällt mit dem Alter auf der Probit-Skala: von einem Anfang, der je Partie anders ist, mit einem Tempo, das auch anders ist und in der Kälte langsamer. Proben und Aussaaten einer Partie gehen ein, mit dem, was Samen einer Aussaat gemeinsam haben. Zu säen ist die kleinste Zahl, die die gewünschten Pflanzen mit der Wahrscheinlichkeit der Einstellungen gibt, alles Unbekannte eingerechnet. Aussaaten auf Papier und in Erde zählen gleich.',
      'Die Gefahr eines Frosts nach einem Tag ist eine Vorhersage aus den letzten Frösten von mindestens drei Frühjahren, deren Wetter 14 Tage davor beginnt und danach keine Lücke über drei Tage hat. Die Aussaat liegt so viele Wochen davor, wie die Klasse sagt.',
    ],
    assumes: 'Trocken gelagerter Same; Alterung wie bei Paprika, wo nichts anderes bekannt ist.',
    limits:
      'Eine Partie, die doppelt so schnell altert wie gedacht, gibt zu wenige Pflanzen; eine frische Probe hilft. Der letzte Frost hängt vom Ort ab.',
    source:
      'Ellis & Roberts (1980) Ann. Bot. 45:13; Demir et al. (2009) HortScience 44:1679; Yildirim et al. (2020) Not. Bot. Horti Agrobot. 48(3)',
  },
];

/** How the forecasts fared in random crosses. */
export const lineForecasts: Words['methods']['lineForecasts'] = {
  title: 'Ob Vorhersagen für Kreuzungen ihr Wort halten',
  text: 'Zufällige Kreuzungen wurden aus bekannten Genen gezogen, vorhergesagt und an den Nachkommen gemessen, die dann gezogen wurden: von 100, was zugesagt war und was eintrat. Eine F2 von 12 Pflanzen mit einer F3 von 8; 10 Pflanzen neben 18 Freiheitsgraden fester Sorten; eine Partie, von der 20 Samen geprüft waren.',
  caption: 'Zugesagt → eingetreten, von 100',
  head: ['Regel', 'Zugesagt → eingetreten'],
  rules: {
    'breeds true, as assumed': 'bleibt, wie angenommen',
    'one of six as wanted, as assumed': 'eine von sechs wie gewünscht, wie angenommen',
    'breeds true, two genes twice as common': 'bleibt, zwei Gene doppelt so häufig',
    'one of six as wanted, two genes twice as common': 'eine von sechs wie gewünscht, zwei Gene doppelt so häufig',
    'breeds true, 8 % called wrongly': 'bleibt, 8 % falsch benannt',
    'one of six as wanted, 8 % called wrongly': 'eine von sechs wie gewünscht, 8 % falsch benannt',
    'spread of 8 plants, 0 inherited':
      'Streuung von 8 Pflanzen, nichts erblich: Grenzen, die halten; als streuend gezeigt',
    'spread of 8 plants, 0.5 inherited': 'dasselbe, die Hälfte erblich',
    'spread of 8 plants, 0.8 inherited': 'dasselbe, vier Fünftel erblich',
    'truly the best, 0.1 inherited': 'wirklich die beste von zehn, ein Zehntel erblich; vererbt, in SD einer Pflanze',
    'truly the best, 0.3 inherited': 'dasselbe, drei Zehntel erblich',
    'truly the best, 0.6 inherited': 'dasselbe, sechs Zehntel erblich',
    'seeds for 6 plants next year': 'Samen für 6 Pflanzen im nächsten Jahr',
    'the same, ageing twice as fast': 'dasselbe, doppelt so schnell gealtert',
  },
};
