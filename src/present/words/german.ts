import type { Verdict } from '../../decide/verdict.ts';
import type { Settings } from '../../terms/settings.ts';
import { variable as v } from './methods.ts';
import type { Method } from './methods.ts';
import type { NoCandidate } from '../../decide/candidates.ts';
import type { ProblemTexts, Words } from './english.ts';

/** `a`, `a und b`, `a, b und c`. */
function listed(names: readonly string[]): string {
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} und ${names.at(-1)}`;
}

/** First letter as a capital. */
function capital(text: string): string {
  return text.replace(/^./u, (letter) => letter.toUpperCase());
}

/** A number with a decimal comma. */
function comma(value: number): string {
  return String(value).replace('.', ',');
}

/** Every method behind the figures, with a trial's settings in the text. */
function methods(settings: Settings): readonly Method[] {
  const rho = comma(settings.spotCorrelation);
  const { baseC, capC, method } = settings.degreeDays;
  return [
    {
      id: 'units',
      title: 'Was einmal zählt',
      words: [
        'Die Einheit jedes Vergleichs ist eine Pflanzung: eine Pflanze oder Pflanzen einer Sorte, die zusammen erfasst wurden. Mehrere Ernten einer Pflanzung, mehrere an ihr gemessene Früchte und mehrere Noten eines Verkosters für eine Sorte sind keine Wiederholungen; sie werden zuerst zu ihrer Einheit addiert oder gemittelt.',
        'Die Zahlen hier sind beobachtet: eine Saison, diese Pflanzen, nichts aus anderen Saisons geliehen.',
      ],
      assumes: 'Pflanzungen gleichen sich bis auf Sorte und Standort.',
      limits:
        'Alle Pflanzen einer Sorte in einem Beet, entspitzte neben nicht entspitzten oder Töpfe neben freiem Boden lassen sich nachträglich nicht auseinanderhalten; die Saisonseite nennt es, wo es vorkommt.',
      source: 'Hurlbert (1984) Ecol. Monogr. 54:187, zu Pseudowiederholungen',
    },
    {
      id: 'yield',
      title: 'Ertrag und Früchte je Pflanze',
      words: [
        'Verwertbares Gewicht (oder Anzahl) einer Pflanzung über die Saison, reif und grün, geteilt durch die gesetzten Pflanzen. Eingegangene Pflanzen zählen mit, durch Unfall verlorene nicht. Eine Pflanzung ohne Ernte brachte nur dann 0, wenn sie verloren ging, früh entfernt wurde, als ertraglos vermerkt ist oder jede Ernte der Saison erfasst wurde; sonst ist ihr Ertrag nicht bekannt.',
        'Eine gezählte, aber nicht gewogene Ernte erhält das mittlere Fruchtgewicht ihrer Pflanzung; eine Pflanzung, bei der mehr als ein Viertel der Früchte nicht gewogen ist, hat keinen Ertragswert. Von einer Angabe unter einer Grenze (&lt;5) zählt die halbe Grenze (übliche Praxis, keine Quelle); eine Spur zählt als geerntet und bringt nichts dazu; über einer Grenze (&gt;20) bleibt diese Zahl der Pflanzung unbekannt; ein Maß oder eine Note, von der nur eine Grenze bekannt ist, geht in keinen Mittelwert ein. Nicht aufgezeichnet (leere Zelle, NA) ist nie eine Null, und 0 ist immer eine.',
        settings.scale === 'ratio'
          ? 'Dieser Versuch verwendet die Skala der Verhältnisse: Quasi-Likelihood mit logarithmischer Verknüpfung, Sorte + Block, eine Anpassung je Saison über alle Klassen. Die Varianz eines Gewichts wächst mit dem Quadrat seines Mittels; die einer Anzahl mit ihrem Mittel und, wo Pflanzen sich mehr unterscheiden als der Zufall zulässt, mit dessen Quadrat: je Sorte, sodass wenige große Früchte und viele kleine nach ihrem eigenen Maß beurteilt werden. Ohne Blöcke ist der Schätzwert genau die Summe geteilt durch die Pflanzen. Eine Klasse, von der eine Pflanzung nichts brachte, hat keine Blöcke im Modell, was vermerkt wird, und frühe Gewichte auch nicht: Auf dieser Skala hat ein Block, der nichts brachte, keinen Schätzwert.'
          : 'Dieser Versuch verwendet die Skala der Differenzen: gewichtete kleinste Quadrate, Sorte + Block, eine Anpassung je Saison über alle Klassen.',
        `Pflanzen nebeneinander ähneln sich. Eine Pflanzung aus ${v('w')} Pflanzen hat die Varianz unten mit einer Standortkorrelation ${v('ρ')} von ${rho}, einer Einstellung; wo die Pflanzen einer Sorte zusammenstehen, wird der quadrierte Standardfehler einer Sorte, aus der Varianz des Lehrbuchs, mit dem vervielfacht, was ihre ${v('n')} Pflanzen dort verlangen. Sie stehen zusammen in einer Klasse, in der weder Blöcke noch Reihen und Spalten sie getrennt zeigen, sofern die Einstellungen nichts anderes sagen. Mit ${v('ρ')} = 0 wären beide die des Lehrbuchs.`,
      ],
      assumes: `Eine Streuung für alle Sorten und Klassen auf der verwendeten Skala${settings.scale === 'ratio' ? ', bei Anzahlen eine Weise, in der sie mit ihrer Größe wächst' : ''}; Blöcke addieren sich ohne Wechselwirkung. Ein Block geht ein, wenn jede Pflanzung einen hat und jede Klasse durch sie zusammenhängt; sonst tritt der Ort der Pflanzen (Boden, Beet, Topf, Sack) an seine Stelle, wo er eine Klasse verbindet.`,
      limits: `Bei einzelnen Pflanzen mit hoher Streuung sind die Intervalle etwas zu eng: siehe „Wie oft die Intervalle halten“ unten. Eine Sorte, von der nichts geerntet wurde, hat den Schätzwert 0 ohne Intervall.${settings.scale === 'difference' ? ' Die GD steht nur dort, wo die Wiederholung gleich und F signifikant ist.' : ''}`,
      source:
        'McCullagh & Nelder (1989) Generalized Linear Models Kap. 8-9; Gomez & Gomez (1984) Statistical Procedures for Agricultural Research Kap. 2; Searle, Speed & Milliken (1980) Am. Stat. 34:216 zu Mitteln über Blöcke; Liang & Zeger (1986) Biometrika 73:13 zur Varianz; Breslow (1984) Appl. Stat. 33:38 zur Dispersion von Anzahlen',
    },
    {
      id: 'comparisons',
      title: 'Vergleiche innerhalb einer Klasse',
      words: [
        'Alle Paare: Tukey-Kramer. Zwei Sorten haben genau dann einen gemeinsamen Buchstaben, wenn sie in diesem Versuch nicht getrennt sind; a ist die beste. Jede Klasse erhält eigene Buchstaben, mit der gemeinsamen Streuung der Saison.',
        'Gegen die Vergleichssorte: Dunnett, zweiseitig, mit den Korrelationen, die die Vergleiche wirklich haben. Die Intervalle gelten gemeinsam.',
        'Neu gegen bewährt: das Mittel der neuen Sorten der Klasse minus das der bewährten, der wiederholt angebauten; jede Sorte zählt einmal. Es spricht von diesen Sorten, nicht von neuen Sorten allgemein.',
        'F: ob die Sorten der Klasse sich überhaupt unterscheiden (Wald, gemeinsamer Fehler).',
      ],
      assumes: 'Wie bei den Schätzwerten.',
      limits:
        'Nicht getrennt heißt nicht gleich: Bei wenigen Pflanzen bleiben große Unterschiede verborgen, und der Fuß der Ertragstabelle sagt, welche.',
      source:
        'Tukey (1953); Kramer (1956) Biometrics 12:307; Piepho (2004) J. Comput. Graph. Stat. 13:456 zu den Buchstaben; Dunnett (1964) Biometrics 20:482; Genz & Bretz (2009) zu allgemeinen Korrelationen',
    },
    {
      id: 'first-ripe',
      title: 'Tage bis zur ersten reifen Frucht',
      words: [
        `Tage ${settings.firstRipeFrom === 'sown' ? 'von der Aussaat' : 'vom Auspflanzen'} bis zur ersten reifen Ernte oder zum ersten Vermerk „reif“, je nachdem, was früher ist. Eine am Saisonende nicht reife Pflanzung ist bis dahin unreif: Sie fehlt nicht, und der letzte Tag ist nicht ihr Datum. Das gilt in einer Saison, in der irgendjemand die Reife erfasst hat, für jede Pflanzung, von der es irgendeine Aufzeichnung gibt; von einer ohne Aufzeichnung oder mit reifen Früchten ohne Datum ist es nicht bekannt. Eine durch Krankheit, Schädlinge oder Schwäche verlorene kann nicht mehr reifen und bleibt bis zum Ende der Kurve unreif; eine durch Unfall verlorene oder erfrorene scheidet an diesem Tag aus.`,
        'Beobachteter Median: Kaplan-Meier, der erste Tag, an dem mehr als die Hälfte der Pflanzungen reife Früchte hatte; wo es genau die Hälfte war, die Mitte zur nächsten. Seine Log-log-Grenzen stehen in den offenen Daten, auf den Seiten nur dort, wo es beide gibt, bei 95 % ab sieben Pflanzungen: Aus zwei oder drei Pflanzungen lässt sich nicht sagen, wie spät der Median sein kann; das muss das Intervall des Modells sagen. „Nicht erreicht“, wo weniger als die Hälfte reifte. Durch Unfall verlorene Pflanzungen zählen nicht unter die am Ende reifen.',
        'Modell: Lebensdauermodell (accelerated failure time) mit Log-Normalverteilung, ein Median je Sorte, eine Streuung für die Saison. Eine reif gefundene Frucht reifte nach der letzten Kontrolle, bei der die Pflanze unreif war, oder nach der Kontrolle, die im Takt der Saison davor lag, je nachdem, was später ist. Wo Pflanzungen sich um weniger unterscheiden als die Tage zwischen zwei Kontrollen, sind die Kontrollen das Intervall.',
      ],
      assumes:
        'Die gleiche Streuung der logarithmierten Tage bei allen Sorten; die Kontrollen hängen nicht von der Reife ab.',
      limits:
        'Die erste reife Frucht einer Pflanzung aus mehreren Pflanzen ist die früheste von allen: Größere Pflanzungen wirken schon deshalb früher. Eine Sorte, von der nichts reifte, hat keinen Schätzwert.',
      source:
        'Kaplan & Meier (1958) J. Am. Stat. Assoc. 53:457; Brookmeyer & Crowley (1982) Biometrics 38:29; Aalen & Johansen (1978) Scand. J. Stat. 5:141; Kalbfleisch & Prentice (2002) The Statistical Analysis of Failure Time Data',
    },
    {
      id: 'degree-days',
      title: 'Wärmesumme (Gradtage)',
      words: [
        `Dieselben Tage auf einer Wärmeuhr: Basis ${comma(baseC)} °C, ${capC === null ? 'keine Obergrenze' : `Obergrenze ${comma(capC)} °C`}, Verfahren ${method}. Eine Lücke von bis zu drei Tagen im Wetter wird überbrückt; über eine längere hinweg gibt es keine Gradtage.`,
      ],
      assumes: 'Zwischen Basis und Obergrenze nimmt das Wachstum geradlinig zu.',
      limits:
        'Veröffentlichte Basistemperaturen für Paprika reichen von 9 bis 18 °C; Gradtage sind daher eine grobe Uhr, nicht besser als zehn Prozent.',
      source:
        'McMaster & Wilhelm (1997) Agric. For. Meteorol. 87:291; Basistemperaturen: Dickson et al. (2024) HortScience 59:1293 und HortTechnology 35:671 (2025)',
    },
    {
      id: 'ratings',
      title: 'Bewertungen',
      words: [
        'Die Noten eines Verkosters für eine Sorte werden zu einer Zelle gemittelt; dann Verkoster + Sorte mit kleinsten Quadraten über die Zellen. Ein überall großzügiger Verkoster verschiebt nichts, und von verschiedenen Verkostern bewertete Sorten bleiben vergleichbar, solange die Tabelle zusammenhängt. Der Schätzwert ist das Mittel über alle Verkoster der Saison.',
        'Bei nur einem Verkoster tritt der Tag der Verkostung an seine Stelle, wo Tage und Sorten zusammenhängen; sonst gibt es ein Mittel und kein Intervall.',
        'Kendalls W sagt, wie weit die Verkoster in der Reihenfolge übereinstimmen: 1 ganz, 0 gar nicht; nur wo jeder Verkoster jede Sorte benotet hat.',
        'Eine Ja-Nein-Frage (wieder anbauen?) ist ein Anteil: k von n Antworten.',
      ],
      assumes:
        'Die Stufen der Skala sind etwa gleich groß; Verkoster unterscheiden sich in der Großzügigkeit, nicht in der Reihenfolge.',
      limits:
        'Das Intervall gilt für diese Verkoster, nicht für alle Leute: Bei drei Verkostern enthält ein Intervall zu 95 % in etwa 84 von 100 Fällen, was alle Leute sagen würden. Dass acht Verkoster Sorten nicht trennen, ist das übliche Ergebnis.',
      source:
        'Searle, Speed & Milliken (1980) Am. Stat. 34:216; Kendall & Babington Smith (1939) Ann. Math. Stat. 10:275',
    },
    {
      id: 'measurements',
      title: 'Messungen',
      words: [
        'Früchte einer Pflanzung werden zur Pflanzung gemittelt; dann Sorte + Block mit kleinsten Quadraten. Wo eine Frucht nur unter dem Namen ihrer Sorte gemessen wurde, zählt die Sorte als eine Einheit.',
      ],
      assumes: 'Eine Streuung für alle Sorten einer Klasse; zwischen Klassen geht sie mit deren Mittel.',
      limits: 'Früchte einer Pflanze sind keine Wiederholungen: n zählt Pflanzungen.',
      source: 'Gomez & Gomez (1984) Kap. 2',
    },
    {
      id: 'shares',
      title: 'Anteile',
      words: [
        'Gekeimt, überhaupt getragen, bis zum Ende reif, sortenuntypisch, unerwartet scharf: immer k von n. Bei getragen und reif zählen nur Pflanzungen mit einer einzigen Pflanze.',
      ],
      assumes: 'Samen und Pflanzen sind voneinander unabhängig.',
      limits: '4 von 10 kann alles von 17 bis 69 % heißen (95 %).',
      source: 'Wilson (1927) J. Am. Stat. Assoc. 22:209',
    },
    {
      id: 'claims',
      title: 'Die Angabe auf der Samentüte',
      words: [
        'Die angegebenen Tage oder Maße gegen das beobachtete Intervall: wie angegeben, wo das ganze Intervall in der Angabe oder höchstens ein Zehntel außerhalb liegt (übliche Praxis, keine Quelle); sonst außerhalb, wo das ganze Intervall es ist; sonst zu wenig, um es zu sagen. Die angegebene Schärfe steht in Scoville-Einheiten der trockenen Frucht, in die sich die Noten der Verkoster nicht umrechnen lassen.',
      ],
      assumes: 'Die Angabe ist für Bedingungen wie diese gemeint.',
      limits:
        'Sechzehn Scoville-Einheiten je Millionstel Capsaicinoide (1 ppm) sind die übliche Umrechnung der Labore.',
      source:
        'Schuirmann (1987) J. Pharmacokinet. Biopharm. 15:657 zur Gleichheit innerhalb einer Spanne; AOAC 995.03 zur Schärfe',
    },
    {
      id: 'power',
      title: 'Was dieser Versuch hätte erkennen können',
      words: [
        'Die Differenz, die zwei Sorten mit der mittleren Zahl (Median) von Pflanzungen ihrer Klasse zeigen müssen, um in vier von fünf solchen Saisons getrennt zu werden (zweiseitig, für sich allein).',
      ],
      assumes: 'Die Streuung der Saison ist die wahre.',
      limits: 'Buchstaben verlangen mehr als dies, weil sie alle Paare zugleich absichern.',
      source: 'Cohen (1988) Statistical Power Analysis for the Behavioral Sciences',
    },
    {
      id: 'expected',
      title: 'Erwartet für die nächste Saison',
      words: [
        'Alle Saisons zusammen. Der Schätzwert jeder Saison geht mit seinem eigenen Standardfehler ein, der verbreitert wird, weil er aus wenigen Freiheitsgraden geschätzt ist; bei zwei oder weniger wird er von den anderen Saisons geliehen, und wo keine Saison einen hat, wird er angenommen: ein Variationskoeffizient von 40 % je Pflanze für Ertrag und Früchte (übliche Praxis, ohne Quelle), 15 % je Pflanzung für Tage, ein Fünftel der Skala für eine Bewertung, 20 % für ein Maß (aus dem Gedächtnis). Gemeinsam erfasste oder zusammenstehende Pflanzen zählen dabei wie in der Varianz des Ertrags. Die Seite sagt, bei welcher Sorte.',
        'Der Beitrag einer Sorte wird zu ihrer Klasse gezogen: umso weiter, je weniger Pflanzen und Saisons sie hat und je mehr sich eine Sorte von Saison zu Saison ändert. Wie weit, steht bei jedem erwarteten Wert.',
        'Ertrag und Früchte gehen so ein, wie die Skala der Verhältnisse sie hat, gleich welche Skala die Tabellen der Saison verwenden. Ertrag, Früchte und Tage werden logarithmiert, Bewertungen und Maße genommen, wie sie sind, Anteile von 0 bis 1. Ein Ertrag von 0 geht ein als Logarithmus der halben kleinsten Pflanzung der Klasse, mit einem Spielraum so weit wie sein Abstand von der Klasse, es sei denn, die Klasse brachte gar nichts, was ihre Sorten durch nichts unterscheidet; eine Sorte, die nie reifte, als später als das Saisonende, mit der Streuung der Saison.',
        'Der erwartete Wert ist der der Sorte in einer durchschnittlichen Saison, sein Intervall eine Vorhersage: Die Änderung von Saison zu Saison ist darin. Gute und schlechte Jahre als solche sind es nicht.',
      ],
      assumes:
        'Sorten und Saisons weichen normalverteilt ab, mit denselben zwei Streuungen in allen Klassen; eine nur aus Summen bekannte Saison ist so gut, wie ihr Standardfehler sagt.',
      limits:
        'Die Mitte der Klasse ist die der Sorten, die einmal versucht und erfasst wurden: Wo nur Überlebende aufgeschrieben wurden, sehen Neulinge besser aus, als sie sind, und die Seite sagt es.',
      source:
        'Piepho et al. (2012) Biom. J. 54:844 zu zwei Stufen; Gelman (2006) Bayesian Anal. 1:515 zu den A-priori-Verteilungen; Patterson & Thompson (1971) Biometrika 58:545. Direkt auf einem Gitter integriert, jedes Mal gleich',
    },
    {
      id: 'verdicts',
      title: 'Urteile',
      words: [
        `${settings.verdicts.simulations} nächste Saisons werden mit dem Startwert ${settings.verdicts.seed} gezogen: Streuungen, Klassenmittel und Sorten gemeinsam, dazu eine neue Saison für jede Sorte und jedes Merkmal. Werte werden zu Punkten von 0 bis 100, geradlinig von schlecht nach gut und außerhalb flach; wo kein Bereich gesetzt ist, reicht er von zwei Standardabweichungen zwischen den Sorten unter der Mitte der Klasse bis zwei darüber, damit die Gewichte wiegen, was sie sagen. Die Punktzahl ist das gewichtete Mittel der Punkte.`,
        'Eine Sorte verdient in einer gezogenen Saison einen Platz, wenn sie für die vorhandenen Plätze zu den besten ihrer Klasse gehört und mindestens so gut ist wie die Messlatte: eine unerprobte Sorte in der Mitte der Klasse oder die Vergleichssorte. Bei Gleichstand am letzten Platz wird er geteilt.',
        `Anteil mindestens ${comma(settings.verdicts.keepFrom)}: behalten. Erreicht die Messlatte in weniger als ${comma(settings.verdicts.dropBelow)} der Saisons: aufgeben. Anteil unter ${comma(settings.verdicts.dropBelow)}, obwohl sie die Messlatte öfter erreicht: kein Platz. Sonst: noch einmal versuchen. Liegt einer der Anteile innerhalb von 0,01 um seine Grenze, sagt die Seite „auf der Kippe“.`,
        'Die Liste füllt die Plätze in der Reihenfolge der Anteile, aber nur mit Sorten, die die Messlatte in mindestens der Hälfte der Saisons erreichen und nicht zu „aufgeben“ neigen; die übrigen Plätze sind für Neulinge. Die Summe der Anteile sagt, wie viele der Liste voraussichtlich richtig sind.',
        'Was alle, die antworteten, drei Saisons hintereinander wieder anbauen wollen, wird behalten, wo es Plätze für alle seiner Art gibt; was alle, die antworteten, nicht wieder anbauen würden, ist kein Behalten und nicht auf der Liste. Wo niemand Ziele gesetzt hat und Früchte gezählt, aber kaum gewogen wurden, zählt ihre Zahl anstelle ihres Gewichts.',
        'Eine gezogene Saison scheitert, wenn in ihr eine Grenze verfehlt wird, die nicht verfehlt werden darf. Bei einem Merkmal, das für eine Sorte nie erfasst wurde, gilt die Grenze als nicht geprüft: nicht gescheitert, aber kein Behalten. Wo Früchte gezählt wurden, entscheidet allein die Zählung, was die Noten auch sagen: Die obere Wilson-Grenze von k von n muss die Grenze einhalten; eine Grenze für die Schärfe selbst lässt eins minus „behalten ab“ der Früchte scharf sein.',
        'Was eine weitere Saison klären würde: Der Abstand der Punktzahl zu dem, was einen Platz verdient, wird als normalverteilt angenommen, und eine weitere Saison mit so vielen Pflanzen, die stehen, wie die Klasse zuletzt stand, macht den eigenen Beitrag der Sorte dazu genauer.',
        'Die Empfehlung des letzten Winters: dieselbe Regel, angewandt auf die Saisons vor der letzten und gemessen an dem, was die letzte zeigte.',
      ],
      assumes:
        'Bei gegebenen Aufzeichnungen sind die Merkmale voneinander unabhängig: Wie viel das ausmacht, steht in der Tabelle „Ob die Anteile Wort halten“.',
      limits:
        'Ein üblicher Gartenversuch lässt die meisten Sorten bei „noch einmal versuchen“: Ein paar Pflanzen und ein oder zwei Sommer entscheiden nicht mehr. Dafür gibt es die Liste.',
      source:
        'Derringer & Suich (1980) J. Qual. Technol. 12:214 zu den Punkten, arithmetisch gemittelt; Raiffa & Schlaifer (1961) Applied Statistical Decision Theory Kap. 5 zu dem, was eine weitere Saison klärt; Wilson (1927)',
    },
  ];
}

/** A trial's settings, as the methods page prints them. */
function settingsRows(settings: Settings): readonly (readonly [string, string])[] {
  const { baseC, capC, method } = settings.degreeDays;
  return [
    ['interval', `${comma(settings.interval * 100)} %`],
    ['scale', settings.scale],
    ['spot_correlation', comma(settings.spotCorrelation)],
    ['first_ripe_from', settings.firstRipeFrom],
    [
      'degree_days',
      `Basis ${comma(baseC)} °C, ${capC === null ? 'keine Obergrenze' : `Obergrenze ${comma(capC)} °C`}, Verfahren ${method}`,
    ],
    ...[...settings.classes.values()].map(
      (own) => [`Klasse ${own.id}`, `${own.name}; Vergleichssorte ${own.checkVariety ?? 'keine'}`] as const,
    ),
    ...[...settings.seasons].map(
      ([year, own]) =>
        [
          `Saison ${year}`,
          `${own.lookEvery === 0 ? 'Reife an ihrem Tag notiert' : `Kontrolle ${own.lookEvery === 1 ? 'jeden Tag' : `alle ${own.lookEvery} Tage`}`}; Ernten ${own.harvestsComplete ? 'vollständig' : 'teilweise'}${own.layout === null ? '' : `; Anordnung ${own.layout}`}`,
        ] as const,
    ),
  ];
}

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

/** Every word of the site in German. */
export const german: Words = {
  listed,
  capital,
  traits: {
    yield: 'Ertrag',
    early_yield: 'Frühertrag',
    fruits: 'Früchte',
    first_ripe: 'Tage bis zur ersten reifen Frucht',
    again: 'Wunsch nach Wiederanbau',
    heat: 'Schärfe',
    flavour: 'Geschmack',
  },
  frame: {
    skip: 'Zum Inhalt',
    pages: 'Seiten',
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
  },
  status: { new: 'neu', returning: 'wiederholt angebaut' },
  figure: {
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
    p: (p: string) => `p ${p}`,
    pBelow: (p: string) => `unter ${p}`,
    f: (value: string, df1: string, df2: string, p: string) => `F ${value} mit ${df1} und ${df2} FG, ${p}`,
    noF: 'F nicht bestimmbar',
    cv: (cv: string) => `VK ${cv} % je Pflanze`,
    lsd: (value: string) => `GD ${value}`,
    mean: (value: string) => `Mittel der Sorten ${value}`,
    letters: (level: string) =>
      `Sorten mit einem gemeinsamen Buchstaben sind in diesem Versuch nicht getrennt (Tukey-Kramer, ${level}).`,
  },
  tables: {
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
  },
  report: {
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
  },
  charts: {
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
  },
  season: {
    title: (year: string) => `Saison ${year}`,
    place: 'Ort',
    notStated: 'nicht angegeben',
    varieties: 'Sorten',
    counts: (varieties: string, fresh: string, plants: string, plantings: string) =>
      `${varieties}, davon ${fresh} neu; ${plants} Pflanzen in ${plantings} Pflanzungen`,
    sown: 'Gesät',
    plantedOut: 'Ausgepflanzt',
    lastDay: 'Letzter Tag der Aufzeichnung',
    beds: 'Beete',
    pickingDays: 'Erntetage',
    noPickings: 'keine erfasst',
    blocks: 'Blöcke',
    block: { block: 'im Modell', 'stands-in': 'Gefäße und Boden im Modell', none: 'keine im Modell' },
    lost: 'Durch Unfall verloren',
    notInYields: (n: string) => `${n}, nicht in den Erträgen`,
    weather: 'Wetter',
    weatherText: (days: string, mean: string, nights: string, cold: string, rain: string) =>
      `${days} Tage erfasst: Mittel ${mean}, ${nights} Nächte unter ${cold}, ${rain} Regen.`,
    one: 'Eine Saison: Diese Zahlen sagen, was diese Pflanzen in ihr brachten.',
    together: (rho: string, classes: readonly string[]) =>
      `Pflanzen einer Sorte standen zusammen${classes.length === 0 ? '' : ` (${listed(classes)})`}, daher lassen sich Sorte und Standort nicht ganz auseinanderhalten; die Intervalle sind für eine Standortkorrelation von ${rho} verbreitert.`,
    toMap: 'Wo sie standen',
    toHandout: 'Der Handzettel für den Vereinsabend',
  },
  variety: {
    first: 'erste',
    generation: (f: number) => `F${f}-Linie`,
    seenIn: (n: number) => `In ${n} Saison${n === 1 ? '' : 's'} beobachtet.`,
    beside: 'Neben den anderen ihrer Klasse',
    bySeason: 'Saison für Saison',
    bySeasonCaption: (level: string) => `Beobachtet, mit Intervallen zu ${level}`,
    yield: 'Ertrag je Pflanze',
    median: 'Tage bis zur ersten reifen Frucht, Modell',
    rating: (trait: string) => `Verkoster: ${trait}`,
    shares: 'Anteile',
    sharesCaption: (level: string) => `k von n, mit Intervallen zu ${level} (Wilson)`,
    shareOf: 'Anteil',
    kOfN: 'k von n',
    interval: 'Intervall',
    share: {
      germinated: 'gekeimte Samen',
      cropped: 'Pflanzen, die überhaupt trugen',
      ripe_by_end: 'Pflanzen, die bis zum Saisonende reif waren',
      off_type: 'sortenuntypische Pflanzen',
      hot: 'Pflanzen mit unerwartet scharfen Früchten',
    },
    resultsCaption: (level: string) =>
      `Ergebnisse mit Intervallen zu ${level}; n zählt Pflanzungen, bei Bewertungen Verkoster`,
    movedTo: (name: string) => `Diese Sorte hat eine neue Adresse: ${name}.`,
    parents: (mother: string, father: string) => `Kreuzung aus ${mother} und ${father}.`,
    unknownParent: 'einem unbekannten Elternteil',
    source: (from: string) => `Saatgut von ${from}.`,
    alsoKnownAs: (names: string) => `Auch bekannt als ${names}.`,
    hotCaution:
      'Scharfe Früchte brennen auf der Haut und in den Augen. Zum Ernten und Schneiden Handschuhe tragen, Kinder fernhalten und die Hände waschen, bevor sie das Gesicht berühren.',
    crossCaution:
      'Früchte einer unbekannten Kreuzung sollten nicht gegessen werden, bevor bekannt ist, woraus gekreuzt wurde: Verwandte dieser Pflanzen können bitter oder giftig sein.',
  },
  seasons: {
    title: 'Alle Saisons',
    every: 'Jede je angebaute Sorte',
    varieties: (n: string) => `${n} Sorten`,
    none: 'Noch ist keine Saison erfasst.',
    inFull: (year: string) => `Die Saison ${year} ausführlich`,
  },
  data: {
    title: 'Daten',
    intro: 'Jede Zahl dieser Website steht in einer Datei, ungerundet, in Gramm, Zentimetern, Millimetern und Tagen:',
    licence: (licence: string) => `Lizenz der Daten: ${licence}.`,
    rows: (n: string) => `${n} Zeilen, CSV in UTF-8. Eine leere Zelle ist eine nicht bekannte Zahl.`,
    columns: (path: string) => `Spalten von ${path}`,
    column: 'Spalte',
    meaning: 'Bedeutung',
    figures: 'Jede Zahl jeder Saison',
    plantings: (year: string) => `Pflanzungen ${year}`,
    harvests: (year: string) => `Ernten ${year}, addiert nach Pflanzung und Tag`,
    ratings: (year: string) => `Bewertungen und Antworten ${year}`,
    measurements: (year: string) => `Gemessene Werte ${year}`,
    meanings: {
      taster: 'von wem, als Kürzel, Initialen oder Name, wie der Versuch es veröffentlicht',
      score: 'wie gegeben; 1 und 0 für Ja und Nein',
      blind: 'yes, wo die Sorte nicht bekannt war',
      value: 'wie gemessen, in der Einheit daneben',
      season: 'Jahr',
      variety: 'Kennung',
      name: 'gezeigter Name',
      class: 'Kennung der Klasse',
      status: 'new (neu) oder returning (wiederholt angebaut) in dieser Saison',
      trait: 'was gemessen wurde',
      unit: 'Einheit der Zahlen',
      n: 'Pflanzungen; Verkoster bei Bewertungen; Antworten bei Ja-Nein-Merkmalen',
      estimate: 'Schätzwert; first_ripe hat zwei Zeilen, den Median der Pflanzungen und den des Modells',
      low: 'unteres Ende des Intervalls',
      high: 'oberes Ende des Intervalls',
      method: 'siehe die Seite der Methoden',
      planting: 'Kennung in der Saison',
      plants: 'gesetzte Pflanzen',
      bed: 'wo sie stand',
      block: 'Wiederholung',
      transplanted: 'Datum',
      removed: 'Datum',
      cause: 'warum entfernt',
      yield_g: 'verwertbarer Ertrag je Pflanze, Gramm',
      fruits: 'verwertbare Früchte',
      fruits_per_plant: 'verwertbare Früchte je Pflanze',
      first_ripe: 'Tage bis zur ersten reifen Frucht',
      date: 'Tag',
      weight_g: 'verwertbares Gewicht, Gramm',
      stage: 'ripe (reif) oder green (grün)',
      unusable_fruits: 'Ausschuss',
    },
    more: 'Beschreibungen für Maschinen',
    cite: 'Hinweise zum Zitieren',
  },
  notes: {
    title: 'Anmerkungen zu den Daten',
    none: 'Die Prüfungen fanden nichts Zweifelhaftes in den Aufzeichnungen.',
    places: (n: number) => `${n} Stellen`,
    explained: 'Jede Meldung, erklärt',
    explainedIntro:
      'Was die Prüfungen melden können. Mit Fehlern wird keine Website gebaut, daher können oben nur Warnungen und Hinweise stehen.',
    expected: 'Erwartet',
    mend: 'Abhilfe',
    severity: { error: 'Fehler', warning: 'Warnung', note: 'Hinweis' },
    near: (name: string) => `vielleicht ${name}; sonst `,
    limited: (season: string, below: number, above: number, traces: number) =>
      `Angaben von ${season}, die keine einfachen Zahlen sind: unter einer Grenze ${below}, über einer Grenze ${above}, Spuren ${traces}. Wie sie zählen, steht bei ihren Meldungen.`,
  },
  fruit: {
    title: (name: string, length: string) => `Früchte im gleichen Maßstab; das längste Mittel hat ${name}, ${length}`,
    measure: (isInches: boolean) =>
      `Aus mittlerer Länge und Breite der Saison; ein Strich ist ${isInches ? 'ein Zoll' : 'ein Zentimeter'}. Farben: reif, am Stiel die unreife.`,
    length: 'Länge',
    width: 'Breite',
    ripe: 'Farbe reif',
  },
  map: {
    title: (year: string) => `Wo die Pflanzungen ${year} standen`,
    measure: 'Reihen und Spalten wie erfasst, nicht maßstäblich; gestrichelter Umriss: verloren.',
    bed: 'Beet',
    row: 'Reihe',
    column: 'Spalte',
    planting: 'Pflanzung',
  },
  front: {
    lead: (varieties: string, fresh: string, plants: string, year: string) =>
      `${varieties} Sorten im Jahr ${year}, davon ${fresh} neu, mit ${plants} Pflanzen.`,
    again: (year: string) => `${year} wieder anbauen`,
    againNone: 'Noch ist nichts sicher zu behalten.',
    surprised: 'Was überraschte',
    surprisedNone: 'Nichts hob sich von seiner Angabe oder seiner Vergleichssorte ab.',
    open: 'Noch offen',
    openNone: 'Nichts: Jedes Urteil ist geklärt.',
    later: (name: string, seen: string, claimed: string) =>
      `${name} reifte später, als die Tüte sagt: ${seen}, angegeben ${claimed}.`,
    earlier: (name: string, seen: string, claimed: string) =>
      `${name} reifte früher, als die Tüte sagt: ${seen}, angegeben ${claimed}.`,
    more: (name: string, check: string, figure: string) =>
      `${name} brachte mehr Ertrag als ${check}: im Verhältnis ${figure}.`,
    newKeep: (name: string, share: string) =>
      `${name}, zum ersten Mal angebaut, verdient einen Platz in ${share} simulierten Saisons.`,
    perhaps: (name: string, share: string) => `${name} (${share})`,
    gone: (names: string) => `Nicht wieder anzubauen: ${names}.`,
    noRoom: (names: string) => `Gut genug, aber ohne Platz: ${names}.`,
    inClass: (className: string, names: string) => `${className}: ${names}.`,
    read: 'Weiterlesen',
  },
  problems: {
    'no-data-folder': [
      'hier ist kein Datenordner',
      'ein Ordner data/ mit trial.yaml und varieties.csv',
      'einen anlegen mit: keeprow new DIR',
    ],
    'missing-settings': [
      'die Datei mit den Einstellungen fehlt',
      'data/trial.yaml mit wenigstens einem Titel',
      'eine Datei data/trial.yaml schreiben, mit einer Zeile wie title: Unser Versuch',
    ],
    'missing-varieties': [
      'die Tabelle der Sorten fehlt',
      'data/varieties.csv mit einer Spalte variety',
      'für jede je angebaute Sorte eine Zeile schreiben',
    ],
    'no-seasons': [
      'es gibt keine Saison',
      'ein Ordner data/2026 (das Jahr) mit plantings.csv oder totals.csv',
      'einen nach dem Jahr benannten Ordner anlegen und die Tabellen der Saison hineinlegen',
    ],
    'missing-plantings': [
      'die Saison hat weder Pflanzungen noch Summen',
      'plantings.csv oder totals.csv',
      'plantings.csv mit einer Zeile je Pflanzung schreiben oder totals.csv mit einer Zeile je Sorte',
    ],
    'not-a-year': [
      'ein Saisonordner ist nicht nach einem Jahr benannt',
      'ein Ordnername aus vier Ziffern wie 2026',
      'den Ordner nach dem Jahr der Saison umbenennen',
    ],
    'file-name-near': [
      'eine Datei heißt fast wie eine Tabelle und wurde nicht gelesen',
      '{near}',
      'in {near} umbenennen oder so lassen, wenn nicht das gemeint ist',
    ],
    'file-unreadable': [
      'die Datei lässt sich nicht lesen: {reason}',
      'eine Datei, die dieser Benutzer lesen darf',
      'die Rechte der Datei prüfen',
    ],
    'outside-folder': [
      'ein Verweis führt aus dem Ordner heraus',
      'Dateien innerhalb des Ordners',
      'statt des Verweises die Datei selbst in den Ordner legen',
    ],
    'file-changed': [
      'die Datei wurde geändert, während sie gelesen wurde',
      'eine Datei, die sich nicht ändert',
      'den Befehl noch einmal ausführen, wenn die Datei gespeichert ist',
    ],
    'file-twice': ['die Tabelle ist zweimal da, auch als {other}', 'jede Tabelle einmal', 'eine davon behalten'],
    'workbook-unreadable': [
      'die Arbeitsmappe lässt sich nicht lesen: {detail}',
      'eine Arbeitsmappe als .xlsx oder .ods ohne Kennwort',
      'sie im Tabellenprogramm öffnen und neu speichern, oder ihre Blätter als CSV speichern',
    ],
    'sheet-unknown': [
      'das Blatt ist keine der Tabellen und blieb unberührt',
      'ein Blatt mit dem Namen {tables}, in einer Arbeitsmappe seiner Saison (data/2026.xlsx) oder mit dem Jahr (2026 harvests)',
      'das Blatt umbenennen, wenn es eine davon enthält',
    ],
    'not-text': [
      'die Datei ist kein Text',
      'eine als CSV gespeicherte Tabelle',
      'in dem Programm öffnen, das sie erzeugt hat, und als CSV, UTF-8, speichern',
    ],
    'read-as-windows': [
      'der Text ist nicht in UTF-8 und wurde als Windows-1252 gelesen',
      'UTF-8',
      'prüfen, ob Buchstaben mit Akzenten stimmen, und die Datei als UTF-8 speichern',
    ],
    'not-utf8': [
      'der Text ist nicht in UTF-8',
      'UTF-8',
      'die Tabelle noch einmal speichern und UTF-8 als Zeichenkodierung wählen',
    ],
    'empty-table': [
      'die Tabelle hat keine Zeilen',
      'eine Kopfzeile und mindestens eine Zeile',
      'die Tabelle ausfüllen oder die Datei entfernen',
    ],
    'quote-open': [
      'ein Anführungszeichen wird geöffnet und nie geschlossen',
      'ein schließendes " vor dem Ende der Zelle',
      'das Anführungszeichen schließen oder "" schreiben, wenn das Zeichen zum Text gehört',
    ],
    'quote-stray': [
      'ein Anführungszeichen steht, wo keines stehen kann',
      'eine Zelle ganz in Anführungszeichen oder ohne eines an ihrem Anfang',
      'die ganze Zelle in Anführungszeichen setzen und die inneren verdoppeln',
    ],
    'cell-too-large': [
      'eine Zeile ist über eine Million Zeichen lang',
      'eine Zeile eines Aufzeichnungsbogens',
      'nach einem nie geschlossenen Anführungszeichen suchen oder nach einer Datei, die keine Tabelle ist',
    ],
    'too-many-columns': [
      'die Tabelle hat zu viele Spalten',
      'höchstens 1.000 Spalten',
      'prüfen, wie die Tabelle exportiert wurde',
    ],
    'header-empty': [
      'eine Spalte ohne Titel enthält Werte, die nicht verwendet wurden',
      'ein Titel in der Kopfzeile',
      'der Spalte einen Titel geben oder sie leeren',
    ],
    'rows-before-header': [
      'Zeilen über dem Kopf wurden ausgelassen',
      'der Kopf in der ersten Zeile',
      'prüfen, ob nichts von der Tabelle darunter ist, oder sie entfernen',
    ],
    'header-repeated': [
      'der Kopf steht noch einmal zwischen den Zeilen; er wurde ausgelassen',
      'der Kopf einmal, ganz oben',
      'den zweiten Kopf entfernen',
    ],
    'units-row': [
      'die Zeile unter dem Kopf wurde als Einheiten gelesen',
      'eine Einheit im Kopf, wie weight_g',
      'die Einheiten in den Kopf schreiben, wenn es anders gemeint ist',
    ],
    'units-differ': [
      'der Kopf und die Zeile darunter nennen verschiedene Einheiten',
      'eine Einheit je Spalte',
      'die falsche berichtigen',
    ],
    'unit-unlike-heading': [
      'die Zelle nennt eine eigene Einheit, die nicht die der Überschrift ist',
      'die Einheit der Überschrift, oder die eigene, wo sie gemeint ist',
      'nichts, wenn die Einheit gemeint ist: Es gilt die der Zelle',
    ],
    'total-row': [
      'die Zeile sieht nach einer Summe aus und wurde ausgelassen',
      'nur Aufzeichnungen, keine Summen',
      'sie entfernen; ist sie eine Aufzeichnung, sagen, wovon',
    ],
    'header-twice': ['zwei Spalten haben denselben Titel', 'jeder Titel einmal', 'eine umbenennen oder entfernen'],
    'column-missing': [
      'eine Spalte fehlt',
      'eine Spalte {column}',
      'die Spalte {column} ergänzen; die gefundene Kopfzeile steht oben',
    ],
    'column-near': [
      'der Titel einer Spalte ist fast ein bekannter; sie wurde nicht verwendet',
      '{near}',
      'in {near} umbenennen oder so lassen, wenn nicht das gemeint ist',
    ],
    'column-unknown': [
      'Spalten, die nicht zu den Aufzeichnungen gehören, blieben unberührt',
      'bekannte Spalten',
      'nichts zu tun; publish.show in trial.yaml kann sie veröffentlichen',
    ],
    'unit-unknown': [
      'die Einheit im Titel ist nicht bekannt',
      'eine von {units} nach dem Namen',
      'den Titel mit einer bekannten Einheit schreiben, etwa weight_g',
    ],
    'row-too-long': [
      'die Zeile hat mehr Zellen als die Kopfzeile ({cells} statt {columns})',
      '{columns} Zellen',
      'Text mit Kommas in Anführungszeichen setzen oder eine Spalte ergänzen',
    ],
    'row-too-short': [
      'die Zeile hat weniger Zellen als die Kopfzeile ({cells} statt {columns})',
      '{columns} Zellen',
      'die Zeile mit leeren Zellen auffüllen und prüfen, ob ihr letzter Wert vollständig ist',
    ],
    'table-without-rows': [
      'die Tabelle hat eine Kopfzeile und keine Einträge',
      'eine Zeile je Eintrag',
      'die Einträge ergänzen oder die Datei löschen, wo es keine gibt',
    ],
    'last-line-open': [
      'die letzte Zeile hat kein Ende: Die Datei könnte abgeschnitten sein',
      'ein Zeilenende nach dem letzten Eintrag',
      'nachsehen, ob der letzte Eintrag vollständig ist, und die Datei neu speichern',
    ],
    'letter-lost': [
      'beim Umwandeln der Datei ging ein Buchstabe verloren',
      'der Buchstabe selbst, wo � steht',
      'den Buchstaben neu schreiben und als UTF-8 speichern',
    ],
    'control-character': [
      'die Zelle enthält ein Zeichen, das niemand sieht und niemand tippt',
      'Buchstaben, Ziffern und Satzzeichen',
      'die Zelle leeren und neu eintippen',
    ],
    'backslash-in-cell': [
      'die Zelle enthält einen Rückstrich, wie ihn manche Programme vor ein Komma oder Anführungszeichen setzen',
      'der Wert allein; eine Zelle mit Komma steht in Anführungszeichen',
      'den Rückstrich löschen',
    ],
    'quote-in-cell': [
      'in einem Wort steht ein einzelnes Anführungszeichen',
      'keines, oder eines vor und eines nach den Worten',
      'löschen',
    ],
    'scripts-mixed': [
      'ein Wort ist mit Buchstaben zweier Schriften geschrieben, die zum Teil nur gleich aussehen',
      'eine Schrift in einem Wort',
      'das Wort neu eintippen',
    ],
    'value-missing': ['{column} ist leer', 'ein Wert', '{column} ausfüllen'],
    'date-unreadable': [
      '{column} ist kein Datum',
      'ein Datum wie 2026-08-03 oder 3 Aug 2026',
      'das Datum als Jahr-Monat-Tag schreiben',
    ],
    'date-ambiguous': [
      'das Datum ist auf zwei Arten lesbar: {dayFirst} oder {monthFirst}',
      'ein Datum wie 2026-08-03',
      'als Jahr-Monat-Tag schreiben oder dates: day-first oder dates: month-first in trial.yaml setzen',
    ],
    'date-impossible': ['diesen Tag gibt es nicht', 'ein Tag des Kalenders', 'das Datum berichtigen'],
    'spreadsheet-error': [
      'die Zelle enthält einen Fehler der Tabellenkalkulation, keinen Wert',
      'ein Wert',
      'die Zelle in der Tabellenkalkulation richten und die Tabelle neu speichern',
    ],
    'column-too-narrow': [
      'die Zelle wurde als Rautezeichen gespeichert: die Spalte war zu schmal für den Wert',
      'der Wert selbst',
      'die Spalte in der Tabellenkalkulation verbreitern und die Tabelle neu speichern',
    ],
    'cell-formula': [
      'die Zelle enthält eine Formel, nicht ihr Ergebnis',
      'das Ergebnis',
      'die Tabelle mit Ergebnissen statt Formeln speichern',
    ],
    'number-scientific': [
      'die Zahl wurde von einer Tabellenkalkulation gekürzt; letzte Stellen können fehlen',
      'die Zahl mit allen Stellen',
      'die Spalte als einfache Zahl oder als Text formatieren und die Tabelle neu speichern',
    ],
    'became-a-date': [
      'hier steht ein Datum, wo {column} stehen soll: eine Tabellenkalkulation kann es aus einem Bruch oder Kürzel gemacht haben',
      '{column}',
      'den Wert neu schreiben und die Spalte vor dem Speichern als Text formatieren',
    ],
    'date-serial': [
      'das ist eine Tageszahl einer Tabellenkalkulation, kein Datum',
      'ein Datum wie 2026-08-03; die Zahl wäre {first}, wenn ab 1900 gezählt wird, {second}, wenn ab 1904',
      'die Spalte als Datum mit dem Jahr zuerst formatieren und die Tabelle neu speichern',
    ],
    'date-column-unit': [
      'eine Spalte mit einem Tag als Kopf enthält bloße Zahlen: Früchte oder Gewicht?',
      'fruits oder eine Einheit nach dem Tag, wie „{title} fruits“ oder „{title} g“, oder die Einheit in der Zelle',
      'in den Köpfen dieser Spalten sagen, was gezählt oder gewogen wurde',
    ],
    'number-unreadable': [
      '{column} ist keine Zahl',
      'Ziffern mit höchstens einem Dezimalpunkt, etwa 4.2',
      'die Zahl ohne Wörter, Leerzeichen und Tausenderzeichen schreiben',
    ],
    'number-ambiguous': [
      'ein Komma kann ein Dezimalzeichen sein oder Tausender trennen',
      'eine Zahl wie 1.234 oder 1234',
      'Tausender ohne Zeichen schreiben, Dezimalstellen mit Punkt',
    ],
    'quantity-unreadable': [
      '{quantity} lässt sich nicht lesen',
      'eine Zahl, mit einer Einheit aus {units}, wenn sie von der Kopfzeile abweicht',
      'schreiben wie 340, 340 g oder 1 lb 3 oz; NA, wenn nichts gemessen wurde',
    ],
    'unit-missing': [
      '{quantity} hat keine Einheit',
      'eine Einheit im Titel oder in der Zelle: {units}',
      'die Einheit in den Titel schreiben, etwa weight_g',
    ],
    'quantity-twice': [
      '{quantity} steht zweimal in einer Zeile',
      'eine der Spalten ausgefüllt',
      'eine der beiden leeren',
    ],
    'number-negative': ['{column} ist kleiner als 0', '0 oder mehr', 'die Zahl berichtigen'],
    'not-whole': ['{column} ist keine ganze Zahl', 'eine ganze Zahl', 'die Zahl berichtigen'],
    'value-below': [
      '{column} ist als kleiner als eine Grenze angegeben; die Hälfte der Grenze zählt',
      'eine Zahl',
      'den Wert schreiben, wenn er bekannt ist',
    ],
    'value-trace': [
      '{column} ist als Spur angegeben; sie zählt als geerntet, ohne dass etwas dazukommt',
      'eine Zahl',
      'den Wert schreiben, wenn er bekannt ist',
    ],
    'value-above': [
      '{column} ist als größer als eine Grenze angegeben; wie viel es war, ist unbekannt, daher fehlt die Pflanzung in dieser Zahl',
      'eine Zahl',
      'den Wert schreiben, wenn er bekannt ist',
    ],
    'bound-unused': [
      '{column} ist als Grenze oder Spur angegeben; sie bleibt erhalten, geht aber in keinen Mittelwert ein',
      'eine Zahl',
      'den Wert schreiben, wenn er bekannt ist',
    ],
    'plants-zero': [
      'eine Anzahl von Pflanzen oder Samen ist 0',
      '1 oder mehr',
      'die Zahl berichtigen oder die Zeile entfernen',
    ],
    'word-unknown': [
      '{column} enthält ein Wort, das dort nicht vorgesehen ist',
      '{words}',
      'eines der erwarteten Wörter schreiben',
    ],
    'year-unreadable': ['{column} ist kein Jahr', 'ein Jahr aus vier Ziffern', 'das Jahr schreiben, etwa 2024'],
    'id-unfit': [
      'die Kennung kann nicht in der Adresse einer Seite stehen',
      'Kleinbuchstaben, Ziffern und einzelne Bindestriche, höchstens 80, kein Gerätename',
      'eine andere Kennung wählen und den vollen Namen in die Spalte name schreiben',
    ],
    'colour-unknown': [
      '{column} ist keine Farbe, die sich zeichnen lässt',
      'ein Farbwort wie red oder dark green oder #c0281f',
      'ein Farbwort schreiben',
    ],
    'variety-twice': [
      'eine Sorte steht zweimal',
      'jede Kennung einmal (zuerst in Zeile {line})',
      'eine Zeile entfernen oder einer eine andere Kennung geben',
    ],
    'variety-name-twice': [
      'zwei Sorten heißen gleich, bis auf Großschreibung, Leerzeichen oder Akzente',
      'Namen, die sich von denen von {other} unterscheiden',
      'eine umbenennen',
    ],
    'unknown-variety': [
      'keine Sorte hat diesen Namen',
      'eine Kennung oder ein Name aus varieties.csv',
      'den Namen berichtigen oder die Sorte in varieties.csv ergänzen',
    ],
    'planting-twice': [
      'die Kennung einer Pflanzung steht zweimal in der Saison',
      'jede Kennung einmal (zuerst in Zeile {line})',
      'einer eine andere Kennung geben',
    ],
    'spot-twice': [
      'auch {other} steht in Reihe {row}, Spalte {column}, zur gleichen Zeit',
      'eine Pflanzung je Stelle, oder die erste vorher entfernt',
      'Reihe oder Spalte berichtigen oder eintragen, wann die erste entfernt wurde',
    ],
    'bed-near': [
      'dieses Beet heißt fast wie ein anderes: {near}',
      'eine Schreibweise je Beet',
      '{near} schreiben, wenn es dasselbe Beet ist',
    ],
    'block-near': [
      'dieser Block heißt fast wie ein anderer: {near}',
      'eine Schreibweise je Block; zwei Schreibweisen sind für den Vergleich zwei Blöcke',
      '{near} schreiben, wenn es derselbe Block ist',
    ],
    'taster-near': [
      'diese Person heißt fast wie eine andere: {near}',
      'eine Schreibweise je Person; zwei Schreibweisen zählen als zwei',
      '{near} schreiben, wenn es dieselbe Person ist',
    ],
    'unknown-planting': [
      'keine Pflanzung dieser Saison hat diese Kennung',
      'eine Kennung aus plantings.csv',
      'die Kennung berichtigen',
    ],
    'planting-of-other-season': [
      'die Pflanzung gehört zur Saison {season}',
      'eine Pflanzung dieser Saison',
      'die Zeile zur Saison {season} verschieben oder die Kennung berichtigen',
    ],
    'planting-and-variety-differ': [
      'die Pflanzung {planting} ist von einer anderen Sorte',
      '{variety}',
      'die Pflanzung oder die Sorte berichtigen',
    ],
    'neither-planting-nor-variety': [
      'die Zeile nennt weder eine Pflanzung noch eine Sorte',
      'eines von beiden',
      'planting oder variety ausfüllen',
    ],
    'variety-not-in-season': [
      'die Sorte wurde in dieser Saison nicht angebaut',
      'eine Sorte aus plantings.csv oder totals.csv',
      'die Pflanzung ergänzen oder den Namen berichtigen',
    ],
    'unknown-class': [
      'die Klasse steht nicht in den Einstellungen',
      '{classes}',
      'die Klasse berichtigen oder unter classes in trial.yaml ergänzen',
    ],
    'unknown-trait': [
      'das Merkmal ist nicht angemeldet',
      '{traits}',
      'den Namen berichtigen oder das Merkmal in trial.yaml anmelden',
    ],
    'row-twice': [
      'dieselbe Zeile steht zweimal in {table}; beide zählen',
      'jede Aufzeichnung einmal',
      'eine entfernen, wenn sie doppelt geschrieben wurde',
    ],
    'former-id-taken': [
      'eine frühere Kennung ist in Gebrauch',
      'eine Kennung, die keine andere Sorte hat',
      'sie entfernen oder berichtigen',
    ],
    'outside-season': [
      'das Datum liegt außerhalb seiner Saison',
      'ein Tag vom {from} bis {to}',
      'das Datum berichtigen oder das Ende der Saison in trial.yaml setzen',
    ],
    'outside-season-note': [
      'das Datum liegt außerhalb seiner Saison',
      'ein Tag vom {from} bis {to}',
      'nichts zu tun, wenn es stimmt',
    ],
    'date-unlike-neighbours': [
      'das Datum liegt {days} Tage von denen der Zeilen daneben, in einer nach Datum geordneten Tabelle',
      'ein Datum zwischen denen der Nachbarn',
      'prüfen, ob Tag, Monat oder Jahr verrutscht ist; es zählt, wie es steht',
    ],
    'date-missing': [
      'eine Ernte ohne Datum, während andere eines haben',
      'ein Datum in jeder Zeile, auch wo mehrere Ernten auf einen Tag fallen',
      'das Datum eintragen; bis dahin zählt die Ernte in den Summen, nicht für die Reife',
    ],
    'sown-earlier-year': [
      'in einem früheren Jahr gesät',
      'eine Aussaat im Jahr der Saison',
      'bei überwinterten Pflanzen nichts zu tun',
    ],
    'picked-before-transplanting': [
      'das Datum liegt vor dem Auspflanzen der Pflanzung',
      'ein Tag ab dem {transplanted}',
      'eines der beiden Daten berichtigen',
    ],
    'picked-after-removal': [
      'das Datum liegt nach der Entfernung der Pflanzung',
      'ein Tag bis zum {removed}',
      'eines der beiden Daten berichtigen',
    ],
    'dates-out-of-order': [
      '{column} liegt vor {before}',
      'Daten in der richtigen Reihenfolge',
      'eines der beiden Daten berichtigen',
    ],
    'score-outside-scale': [
      'die Note für {trait} liegt außerhalb ihrer Skala',
      'eine Zahl von {from} bis {to}',
      'die Note berichtigen oder die Skala in trial.yaml',
    ],
    'germinated-over-seeds': [
      'mehr keimten, als gesät wurden',
      'höchstens {seeds}',
      'eine der beiden Zahlen berichtigen',
    ],
    'count-over-of': ['es wurden mehr gezählt, als da waren', 'höchstens {of}', 'count oder of berichtigen'],
    'tmin-over-tmax': [
      'die tiefste Temperatur liegt über der höchsten',
      'höchstens {tmax}',
      'eine der beiden berichtigen',
    ],
    'weather-day-twice': ['ein Tag steht zweimal im Wetter', 'jeder Tag einmal', 'eine der Zeilen entfernen'],
    'weather-half': [
      'ein Tag des Wetters ohne {column}',
      'die niedrigste und die höchste Temperatur des Tages',
      '{column} eintragen; bis dahin gilt der Tag als fehlend',
    ],
    'weather-of-other-year': [
      'Wetter eines Tages, der nicht im Jahr der Saison liegt',
      'Tage von {from} bis {to}',
      'die Zeilen in die Saison ihres Jahres verschieben',
    ],
    'weather-gap': [
      '{days} Tage des Wetters fehlen, vom {from} bis zum {to}',
      'jeder Tag vom Auspflanzen bis zur letzten Ernte; bis zu drei fehlende werden ergänzt',
      'die Tage eintragen; bis dahin sind Gradtage darüber hinweg nicht bekannt',
    ],
    'weather-unlikely': [
      'an der Hälfte der Tage, an denen Pflanzen draußen standen, lag die höchste Temperatur jenseits davon',
      'Tage einer Wachstumszeit in der Einheit der Überschrift',
      'die Einheit in der Überschrift prüfen: tmax_c oder tmax_f',
    ],
    'temperature-implausible': [
      'keine Luft ist so warm oder kalt (°C)',
      '-90 bis 60 °C',
      'die Einheit im Titel prüfen: tmax_c oder tmax_f',
    ],
    'claim-reversed': ['die obere Angabe ist kleiner als die untere', '{low} oder mehr', 'die beiden vertauschen'],
    'cause-without-removal': [
      'eine Ursache ohne das Datum der Entfernung',
      'ein Datum in removed',
      'removed ausfüllen oder cause leeren',
    ],
    'weight-and-fruits-disagree': [
      'von Früchten und Gewicht ist eines 0, das andere nicht; die 0 wurde als nicht erfasst gelesen',
      'beide 0 oder keines',
      'NA schreiben, wo nichts erfasst wurde',
    ],
    'picking-empty': [
      'eine Ernte ohne jede Zahl wurde ausgelassen',
      'Früchte, ein Gewicht oder beides',
      'ausfüllen; 0, wenn nichts gefunden wurde',
    ],
    'picking-unlike-others': [
      'die Ernte ist das {times}fache vom Median der anderen dieser Pflanzung',
      'Ernten einer Pflanzung, die einander ähnlicher sind',
      'prüfen, ob eine Ziffer oder Einheit verrutscht ist; sie zählt, wie sie steht',
    ],
    'fruit-unlike-others': [
      'eine Frucht dieser Ernte wiegt das {times}fache der üblichen ihrer Sorte',
      'etwa so viel Gewicht je Frucht wie in den anderen Ernten',
      'Anzahl und Komma prüfen; eine richtige Zahl kann bleiben',
    ],
    'picked-often-a-day': [
      'die Pflanzung wurde an einem Tag dreimal oder öfter geerntet, Zeile auf Zeile',
      'eine Zeile je Ernte',
      'nachsehen, ob der Name der Pflanzung oder das Datum über andere gezogen wurde',
    ],
    'filled-down': [
      '{rows} Zeilen ab hier haben dieselbe Zahl in {column}',
      'Zahlen, wie sie abgelesen wurden',
      'nachsehen, ob die Zelle über andere gezogen wurde',
    ],
    'filled-series': [
      'die Zahlen von {column} gehen ab hier über {rows} Zeilen in gleichen Schritten weiter',
      'Zahlen, wie sie abgelesen wurden',
      'nachsehen, ob eine Reihe über andere gezogen wurde',
    ],
    'records-swapped': [
      'die Früchte von {first} wiegen so viel wie die von {secondVariety}, und die von {second} so viel wie die von {firstVariety}',
      'Früchte, die denen der eigenen Sorte gleichen',
      'prüfen, ob die Aufzeichnungen der beiden Pflanzungen vertauscht sind; sie zählen, wie sie stehen',
    ],
    'unit-seems-wrong': [
      'eine Frucht dieser Ernte wiegt etwa das {factor}fache vom Median der Sorte: {units}',
      'Früchte, die den anderen der Sorte gleichen',
      'prüfen, ob das Gewicht in einer anderen Einheit steht; es zählt, wie es steht',
    ],
    'figure-absurd': [
      'so viel trägt keine Pflanze',
      'höchstens {fruit} je Frucht und {plant} je Pflanze',
      'die Einheit in der Überschrift und das Komma prüfen; bei Kürbissen und Melonen die Art in varieties.csv eintragen',
    ],
    'figure-unlikely': [
      'so viel trägt kaum eine Pflanze',
      'das Gewicht, wie es war',
      'die Einheit in der Überschrift und das Komma prüfen; bei Kürbissen und Melonen die Art in varieties.csv eintragen',
    ],
    'weights-unlike-seasons': [
      'Früchte derselben Sorten wiegen das {times}fache von {others}',
      'Früchte einer Sorte in jeder Saison von etwa gleichem Gewicht',
      'die Einheit in der Überschrift der Gewichte prüfen, von {season} und von {others}: 28 ist eine Unze, 454 ein Pfund, 1000 ein Kilogramm',
    ],
    'weights-unlike-size': [
      'die Früchte wiegen {density} g je Kubikzentimeter ihrer gemessenen Länge und Breite',
      'etwa 0,2 g bei hohlen Schoten bis 1 g bei Tomaten',
      'die Einheiten in den Überschriften von Gewicht, Länge und Breite prüfen',
    ],
    'weights-not-of-fruits': [
      'Gewichte und Zahlen der Früchte passen nicht zusammen',
      'mehr Gewicht, wo mehr Früchte geerntet wurden',
      'nachsehen, ob eine Spalte um eine Zeile verrutscht ist oder ohne die anderen sortiert wurde',
    ],
    'fruits-not-of-variety': [
      'Früchte einer Sorte sind von jeder Größe, als wären die Sorten vertauscht',
      'Früchte einer Sorte von etwa gleichem Gewicht',
      'nachsehen, ob die Spalte der Pflanzungen um eine Zeile verrutscht ist oder ohne die anderen sortiert wurde',
    ],
    'measure-zero': [
      '{trait} gleich null wurde kaum gemessen',
      'der Wert oder NA, wo nicht gemessen wurde',
      'NA schreiben oder den Wert',
    ],
    'measure-absurd': [
      'so groß ist nichts in einem Beet ({trait})',
      'ein Wert, wie er gemessen wurde',
      'die Einheit in der Überschrift und das Komma prüfen',
    ],
    'measure-unlike-others': [
      'das {times}fache von {trait} dieser Sorte oder Klasse',
      'ein Wert wie bei anderen Früchten',
      'Komma und Einheit prüfen; ein richtiger Wert kann bleiben',
    ],
    'measures-unlike-seasons': [
      '{trait} derselben Sorten ist das {times}fache von {others}',
      'Werte einer Sorte in jeder Saison von etwa einer Größe',
      'die Einheit in der Überschrift prüfen, von {season} und von {others}: 2,5 ist ein Zoll, 10 ein Millimeter oder ein verlorenes Komma',
    ],
    'measures-not-of-variety': [
      'Werte von {trait} einer Sorte sind von jeder Größe, als wären die Sorten vertauscht',
      'Werte einer Sorte von etwa einer Größe',
      'nachsehen, ob eine Spalte um eine Zeile verrutscht ist oder ohne die anderen sortiert wurde',
    ],
    'fruits-and-weight-swapped': [
      'Früchte und Gewicht scheinen vertauscht: {fruits} Früchte von zusammen {grams} g',
      'ein Gewicht in Gramm und eine Zahl von Früchten, jedes in seiner Spalte',
      'prüfen, ob die beiden in der falschen Spalte stehen; sie zählen, wie sie stehen',
    ],
    'all-on-one-day': [
      'alle Ernten der Saison stehen an einem Tag',
      'der Tag jeder Ernte',
      'prüfen, ob der Tag der Ernte und nicht des Aufschreibens dasteht; die erste reife Frucht hängt daran',
    ],
    'generation-unknown': [
      'die Generation lässt sich nicht lesen',
      'F1, F2, F3 …',
      'die Generation als F und eine Zahl schreiben',
    ],
    'generation-order': [
      'die Generation folgt nicht auf die ihres Elternteils {parent}',
      '{expected}',
      'generation oder from berichtigen',
    ],
    'parent-loop': [
      'eine Sorte stammt von sich selbst ab',
      'Eltern, die älter sind: {loop}',
      'mother, father oder from berichtigen',
    ],
    'line-without-generation': ['eine Linie hat keine Generation', 'F1, F2, F3 …', 'generation ausfüllen'],
    'from-unknown': [
      'die Pflanzung, von der das Saatgut stammt, ist nicht bekannt',
      'Saison/Pflanzung, etwa 2025/p17',
      'from berichtigen',
    ],
    'first-grown-after-season': [
      'first_grown liegt nach einer Saison, in der sie angebaut wurde',
      '{season} oder früher',
      'first_grown berichtigen',
    ],
    'event-unknown': [
      'ein Ereignis ohne Bedeutung für die Zahlen wird als Notiz behalten',
      'first-ripe, unripe, lost …',
      'nichts zu tun',
    ],
    'event-near': [
      'ein Ereignis ist fast wie ein bekanntes geschrieben und wurde als Notiz behalten',
      '{near}',
      '{near} schreiben, wenn das gemeint ist',
    ],
    'yield-not-recorded': [
      'es wurde nichts geerntet, und nichts sagt, warum; der Ertrag gilt als nicht erfasst',
      'eine Ernte, ein Ereignis nothing-picked oder lost, oder harvests: complete für die Saison',
      'aufschreiben, was geschah; es gilt nicht als 0',
    ],
    'ripening-not-dated': [
      'reife Früchte wurden geerntet, aber ohne Datum: wann sie reiften, ist nicht bekannt',
      'ein Datum bei einer reifen Ernte oder ein Ereignis first-ripe',
      'das Datum der ersten reifen Frucht eintragen oder ihre Reife auslassen',
    ],
    'ripening-not-recorded': [
      'von dieser Pflanzung ist nichts notiert, in einer Saison, in der die Reife notiert wurde',
      'ein Tag der ersten Reife, eine Kontrolle oder wann und warum sie entfernt wurde',
      'ergänzen, was bekannt ist; bis dahin zählt sie nicht bei den Tagen bis zur ersten reifen Frucht',
    ],
    'fruits-not-recorded': [
      'einige Ernten wurden gewogen, aber nicht gezählt; die Pflanzung hat keine Fruchtzahl',
      'Früchte bei jeder Ernte',
      'fruits ausfüllen, wo die Zahl bekannt ist',
    ],
    'unweighed-fruits': [
      '{unweighed} von {fruits} Früchten wurden nicht gewogen; das mittlere Fruchtgewicht wurde verwendet',
      'ein Gewicht bei jeder Ernte',
      'nichts zu tun',
    ],
    'too-many-unweighed': [
      '{unweighed} von {fruits} Früchten wurden nicht gewogen ({percent} %); die Pflanzung hat keinen Ertragswert',
      'höchstens ein Viertel nicht gewogen',
      'Gewichte ausfüllen, wo sie bekannt sind',
    ],
    'no-start-date': [
      'die Tage bis zur ersten reifen Frucht lassen sich ohne {column} nicht zählen',
      'ein Datum in {column}',
      'ausfüllen oder eines für die Saison in trial.yaml angeben',
    ],
    'block-left-out': [
      'die Blöcke blieben aus der Auswertung heraus',
      'ein Block für jede Pflanzung und in jeder Klasse Sorten, die Blöcke gemeinsam haben',
      'block für jede Pflanzung ausfüllen',
    ],
    'scores-by-one-taster': [
      'alle Noten stammen von einem Verkoster',
      'zwei Verkoster oder mehr',
      'nichts zu tun; es ist der Geschmack einer Person',
    ],
    'taster-one-score': [
      'jemand hat {scores} Sorten für {trait} dieselbe Note gegeben',
      'Noten, die Sorten unterscheiden',
      'prüfen, ob eine Spalte nach unten ausgefüllt wurde; die Noten zählen, wie sie stehen',
    ],
    'totals-and-plantings': [
      'eine Sorte steht in plantings.csv und in totals.csv',
      'eines von beiden',
      'sie aus einer der beiden Tabellen entfernen',
    ],
    'totals-and-ratings': [
      'Noten in totals.csv stehen neben ratings.csv',
      'eines von beiden',
      'die Noten nach ratings.csv verschieben',
    ],
    'totals-and-harvests': [
      '{planting} hat Summen und Ernten: sie würden doppelt zählen',
      'von einer Pflanzung entweder eine Summe oder einzelne Ernten',
      'die Pflanzung aus totals.csv oder season.csv nach plantings.csv nehmen, oder ihre Ernten herausnehmen',
    ],
    'yaml-unreadable': [
      'die Einstellungen lassen sich nicht lesen: {detail}',
      'YAML',
      'Einrückung, Doppelpunkte und Anführungszeichen nahe dieser Stelle prüfen',
    ],
    'setting-unknown': ['eine unbekannte Einstellung', '{keys}', 'den Namen berichtigen'],
    'setting-missing': ['die Einstellung {setting} fehlt', 'ein Wert', 'sie ergänzen'],
    'setting-unfit': ['die Einstellung {setting} ist nicht verwendbar', '{expected}', 'den Wert berichtigen'],
    'trait-unknown-in-goals': [
      '{setting} nennt ein Merkmal, das nicht angemeldet ist',
      '{traits}',
      'den Namen berichtigen oder das Merkmal unter traits anmelden',
    ],
    'goal-without-direction': [
      'ein Ziel gilt einem Merkmal ohne gute Richtung',
      'better: higher, lower oder between',
      'dem Merkmal eine Richtung geben oder das Ziel entfernen',
    ],
    'scales-mixed': [
      'die Klassen haben verschiedene Skalen',
      'eine Skala für alle Klassen',
      'überall dieselbe scale schreiben',
    ],
    'check-variety-elsewhere': [
      'die Vergleichssorte von {class} gehört zur Klasse {other}',
      'eine Sorte der Klasse {class}',
      'check_variety berichtigen',
    ],
    'range-cuts-off': [
      'der Bereich von {trait} in der Klasse {class} schneidet {percent} % der erwarteten Werte ab',
      'good und bad so weit auseinander, dass die meisten Werte dazwischen liegen',
      'good und bad von {trait} weiter auseinander setzen oder weglassen: Sie werden dann aus der Klasse berechnet',
    ],
    'season-setting-unused': [
      'Einstellungen gelten einer Saison ohne Ordner',
      'ein Ordner dieses Jahres in data/',
      'das Jahr berichtigen oder die Einstellung entfernen',
    ],
    'content-unreadable': ['der Text lässt sich nicht lesen', 'Markdown in UTF-8', 'noch einmal als UTF-8 speichern'],
    'front-matter': [
      'die Seite beginnt mit einem Block von Einstellungen, der nicht gelesen und nie ausgeführt wird',
      'Text in Markdown ab der ersten Zeile',
      'den Block samt seinen Marken entfernen',
    ],
    'content-unused': [
      'ein Text gehört zu keiner Seite',
      'content/index.md, content/seasons/YEAR.md, content/varieties/ID.md oder content/pages/NAME.md',
      'ihn umbenennen',
    ],
    'live-unknown': [
      'eine Live-Zahl nennt „{said}“, was es in den Aufzeichnungen nicht gibt',
      '{names}',
      'den Namen berichtigen oder den Satz ohne die Live-Zahl schreiben',
    ],
    'photo-missing': [
      'dieses Foto gibt es nicht',
      'eine Datei aus content/photos, wie in ![was zu sehen ist](photos/bed.jpg)',
      'das Foto in content/photos legen oder seinen Namen berichtigen',
    ],
    'photo-unreadable': [
      'ein Foto lässt sich nicht lesen: {reason}',
      'ein JPEG, PNG, WebP, AVIF, TIFF oder GIF',
      'noch einmal als JPEG speichern oder entfernen',
    ],
    'photo-without-text': [
      'ein Foto hat keine Worte für alle, die es nicht sehen können',
      'was es zeigt, zwischen den eckigen Klammern',
      '![was zu sehen ist](photos/name.jpg) schreiben',
    ],
    'address-lost': [
      'eine früher veröffentlichte Adresse würde ins Leere führen: {address}',
      'die Seite, die sie hatte, oder eine Sorte, die sie in former_ids nennt',
      'die Sorte oder Saison zurückholen, ihre Kennung bei der Nachfolgerin in former_ids eintragen oder die Zeile in data/addresses.csv löschen',
    ],
    'address-unfit': [
      'das ist keine Adresse einer Seite',
      'eine Adresse, wie ein Bau sie geschrieben hat, etwa /2026/',
      'die Adresse wiederherstellen oder die Zeile löschen',
    ],
  } satisfies ProblemTexts,
  methods: {
    title: 'Methoden',
    all: methods,
    formulas: {
      variety: 'Sorte',
      block: 'Block',
      weight: 'Gewicht',
      fruits: 'Früchte',
      'such that': 'so, dass',
      variance: 'Varianz',
      where: 'wo',
      'does with': 'mit',
      'at most 1, that is the variance of a number': 'von höchstens 1 genügt, ist das die Varianz einer Anzahl',
      weights: 'Gewichte',
      CV: 'VK',
      'a plant': 'je Pflanze',
      interval: 'Intervall',
      together: 'zusammen',
      with: 'mit',
      error: 'Fehler',
      mean: 'Mittel',
      LSD: 'GD',
      MS: 'MQ',
      and: 'und',
      separated: 'getrennt',
      difference: 'Differenz',
      'against the check': 'gegen die Vergleichssorte',
      correlations: 'Korrelationen',
      limits: 'Grenzen',
      likelihood: 'Likelihood',
      on: 'mit',
      'degrees of freedom': 'Freiheitsgraden',
      'plants of the variety': 'Pflanzen der Sorte',
      base: 'Basis',
      'the mean capped': 'das Mittel an der Obergrenze gekappt',
      'both temperatures first brought between base and cap':
        'beide Temperaturen zuvor zwischen Basis und Obergrenze gebracht',
      score: 'Note',
      taster: 'Verkoster',
      'cut to the scale': 'auf die Skala beschnitten',
      power: 'Teststärke',
      '0.8': '0,8',
      'chi-square': 'chi-Quadrat',
      flat: 'flach',
      'half-normal': 'halbnormal',
      given: 'bei gegebenen',
      'weighted mean of': 'gewichtetes Mittel von',
      'its values':
        '0,5 bei Logarithmen, ein Viertel der Skala bei Bewertungen, 0,25 bei Anteilen, die Standardabweichung der Sortenmittel bei Maßen',
      points: 'Punkte',
      value: 'Wert',
      bad: 'schlecht',
      good: 'gut',
      'cut to 0 and 100': 'auf 0 und 100 beschnitten',
      'score of all': 'Punktzahl',
      'weight of a goal': 'Gewicht',
      share: 'Anteil',
      'seasons in which it earns a spot': 'Saisons, in denen sie einen Platz verdient',
      'seasons drawn': 'gezogene Saisons',
      settled: 'geklärt',
      keep: 'behalten',
      drop: 'aufgeben',
    },
    settings: settingsRows,
    settingsTitle: 'Einstellungen dieses Versuchs',
    settingsCaption: 'Einstellungen, auf denen die Zahlen beruhen',
    setting: 'Einstellung',
    value: 'Wert',
    assumes: 'Annahmen',
    limits: 'Grenzen',
    source: 'Quelle',
    cover: {
      title: 'Wie oft die Intervalle halten',
      text: 'Aus bekannten Wahrheiten wurden Zufallsgärten gezogen, 2.000 je Einstellung mit 14 Sorten, und es wurde gezählt, welcher Anteil der Intervalle zu 95 % die Wahrheit enthält und in welchem Anteil der Gärten ohne wirklichen Unterschied die Buchstaben etwas trennen. Wo Pflanzen zusammenstehen und ihre Standorte sich so sehr unterscheiden wie die Pflanzen selbst, ist die angenommene Standortkorrelation von 0,2 zu klein, und die Intervalle sind zu eng; wo die Standorte sich gar nicht unterscheiden, sind sie zu weit. Bei einem Variationskoeffizienten von 60 % und wenigen Pflanzen halten sie in 91 bis 93 von 100 Fällen, und Buchstaben trennen gleiche Sorten in 9 bis 12 von 100 Gärten, wo die Pflanzen verteilt stehen.',
      caption: 'Abdeckung der Intervalle zu 95 % in Prozent und Gärten, in denen Buchstaben gleiche Sorten trennen',
      values: {
        yield: 'Ertrag',
        fruits: 'Früchte',
        'first ripe, 0 % unripe at the end': 'erste reife Frucht, 0 % unreif am Ende',
        'first ripe, 20 % unripe at the end': 'erste reife Frucht, 20 % unreif am Ende',
        'first ripe, 40 % unripe at the end': 'erste reife Frucht, 40 % unreif am Ende',
        'fruits, 5 a plant, beside other classes': 'Früchte, 5 je Pflanze, neben anderen Klassen',
        'fruits, 30 a plant, beside other classes': 'Früchte, 30 je Pflanze, neben anderen Klassen',
        'fruits, 130 a plant, beside other classes': 'Früchte, 130 je Pflanze, neben anderen Klassen',
        ratings: 'Bewertungen',
        spread: 'verteilt',
        together: 'beisammen',
      },
      head: [
        'Merkmal',
        'Pflanzen je Sorte',
        'VK einer Pflanze',
        'VK eines Standorts',
        'Anordnung',
        'Abdeckung',
        'Buchstaben trennen',
      ],
    },
    kept: {
      title: 'Ob die Anteile Wort halten',
      text: 'Gärten wurden mit bekannten Wahrheiten gezogen (Ertrag, Geschmack und erste reife Frucht als Ziele; 1 bis 5 Saisons, 5 bis 30 Sorten, 1 bis 6 Pflanzen), beraten und an der nächsten Saison gemessen, die dann gezogen wurde. Im Modell erhält eine Sorte, der ein Platz in 80 von 100 Saisons zugesagt wird, ihn in rund 80, und kein Zehntel der Anteile liegt um mehr als 2 daneben. Zu vorsichtig sind die Anteile, wo Sorten sich von Saison zu Saison weniger ändern als angenommen und wenig erfasst ist: nach einer einzigen Saison mit Sorten, die sich um 15 oder 30 % unterscheiden, wird, was 75 heißt, in rund 92 von 100 erreicht, und was 15 heißt, in weniger als 10; über zwei Saisons liegen sie um bis zu 10 daneben, über eine bis fünf um bis zu 8. Wo Merkmale gegeneinander stehen oder Sorten sich doppelt so stark unterscheiden wie angenommen, versprechen hohe Anteile bis zu 4 zu viel. In keiner Einstellung zeigte sich die Liste schlechter als eine der beiden einfachen Regeln.',
      tenthsCaption: 'Aus dem Modell gezogen: gesagte und verdiente Anteile, in 100 Saisons',
      gardens: {
        'the model, variances from the priors': 'das Modell, Varianzen aus den Vorannahmen',
        'the model, every variety in every season with 3 plants':
          'das Modell, jede Sorte in jeder Saison mit 3 Pflanzen',
        'heavier tails (t with 3 df)': 'schwerere Ränder (t mit 3 FG)',
        'traits correlated, 0.6': 'Merkmale korreliert, 0,6',
        'traits correlated, -0.4': 'Merkmale korreliert, −0,4',
        'spreads twice the priors': 'Streuungen doppelt so groß wie angenommen',
        'spreads half the priors': 'Streuungen halb so groß wie angenommen',
        'σ_v 0.15, one season': 'σ_v 0,15, eine Saison',
        'σ_v 0.3, one season': 'σ_v 0,3, eine Saison',
        'σ_v 0.8, one season': 'σ_v 0,8, eine Saison',
        'a typical home trial: 14 varieties, 1 to 8 plants': 'ein typischer Hausversuch: 14 Sorten, 1 bis 8 Pflanzen',
      },
      tenthsHead: ['Anteil', 'Gesagt / verdient'],
      caption:
        'Größter Abstand zwischen gesagt und verdient in einem Zehntel; um wie viele Punkte je Platz die Liste über zwei einfachen Regeln liegt; Urteile in Prozent',
      head: [
        'Gärten',
        'Anzahl',
        'Brier-Wert',
        'Größter Abstand, bei Anteilen',
        'Gegen das, was dieses Jahr die Vergleichssorte schlug',
        'Gegen die höchsten Mittel',
        'Behalten / noch einmal versuchen / kein Platz / aufgeben',
      ],
    },
  },
  handout: {
    title: (year: string) => `Der Versuch ${year} auf zwei Seiten`,
    intro: (place: string, date: string) => `${place === '' ? '' : `${place}. `}Erfasst bis ${date}.`,
    verdicts: (year: string, simulations: string) =>
      `Was ${year} anzubauen ist: von 100 simulierten Saisons (${simulations} aus allen Aufzeichnungen gezogen) die, in denen eine Sorte einen der Plätze ihrer Klasse verdient. Jedes gefüllte Quadrat sind fünf davon.`,
    older: 'Die Empfehlung steht nur auf dem Handzettel der letzten Saison.',
    class: 'Klasse',
    howToRead: (of100: string) =>
      `Ein Intervall in Klammern ist so gemacht, dass es in ${of100} von 100 solchen Versuchen das enthält, worum es geht; n sagt, wie viele Pflanzungen oder Verkoster hinter einer Zahl stehen. Ob zwei Sorten in diesem Versuch getrennt sind, sagen die Buchstaben auf der Seite der Saison, nicht die Überlappung ihrer Intervalle. Ein Sommer ist ein Sommer.`,
    cautions:
      'Scharfer Paprika brennt auf der Haut und in den Augen: Handschuhe tragen und von Kindern fernhalten. Früchte unbekannter Kreuzungen sind nicht zum Essen. Paprika und Tomaten werden nur nach geprüften Rezepten haltbar gemacht. Gebeiztes Saatgut ist nicht zum Essen oder Verfüttern.',
    site: 'Alles ausführlich:',
  },
  glossary: {
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
  },
  nextSeason: {
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
        : `Die Liste für ${spots === 1 ? 'den Platz' : `die ${spots} Plätze`}${names.length === 1 ? '' : ', nach Anteil geordnet'}: ${listed(names)}. ${names.length === 1 ? `Sie verdient ihren Platz in ${right} simulierten Saisons` : `Davon (${names.length}) voraussichtlich richtig: ${right}`}.`,
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
    edge: 'auf der Kippe: Ein anderer Startwert könnte das Urteil ändern',
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
    reason: (trait: string, value: string, bar: string, points: string, isFor: boolean) =>
      `${capital(trait)}: ${value} erwartet, ${bar} bei der Messlatte; ${points} Punkte ${isFor ? 'dafür' : 'dagegen'}.`,
    against: (text: string) => `Dagegen: ${text}`,
    reasonCut: (trait: string, value: string, bar: string, points: string, isFor: boolean) =>
      `${capital(trait)}: ${value} erwartet, ${bar} bei der Messlatte; was außerhalb des zählenden Bereichs liegt, macht daraus aber ${points} Punkte ${isFor ? 'dafür' : 'dagegen'}.`,
    reasonSpread: (trait: string, value: string, _bar: string, points: string, isFor: boolean) =>
      `${capital(trait)}: ${value} erwartet, gleich der Messlatte; wie weit es davon abliegen kann, macht daraus ${points} Punkte ${isFor ? 'dafür' : 'dagegen'}.`,
    reasonEqual: (trait: string, value: string) => `${capital(trait)}: ${value} erwartet, gleich der Messlatte.`,
    isBar: 'Sie ist selbst die Messlatte.',
    fragile: (trait: string, isDoubled: boolean, word: string) =>
      `bei ${isDoubled ? 'doppeltem' : 'halbem'} Gewicht für ${trait} wäre es „${word}“`,
    fragileAll: (parts: readonly string[]) => `Das Urteil hängt an den Gewichten: ${listed(parts)}.`,
    firm: 'Kein Gewicht, halbiert oder verdoppelt, ändert das Urteil.',
    settles: (chances: readonly string[]) =>
      `Wahrscheinlichkeit, dass eine weitere Saison es klärt: ${listed(chances)}.`,
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
  },
  yourWeights: {
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
  },
};
