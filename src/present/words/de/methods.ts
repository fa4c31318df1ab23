import type { Words } from '../en/index.ts';
import type { Settings } from '../../../terms/settings.ts';
import { variable as v } from '../methods.ts';
import { lineForecasts, lineMethods } from './lineMethods.ts';
import { planMethods } from './planMethods.ts';
import type { Method } from '../methods.ts';

/** A number with a decimal comma. */
function comma(value: number): string {
  return String(value).replace('.', ',');
}

/** Every method behind the figures, with a trial's settings in the text. */
function all(settings: Settings): readonly Method[] {
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
        'Ertrag und Früchte gehen so ein, wie die Skala der Verhältnisse sie hat, gleich welche Skala die Tabellen der Saison verwenden. Ertrag, Früchte und Tage werden logarithmiert, Bewertungen und Maße genommen, wie sie sind, Anteile von 0 bis 1, was Mitglieder vorziehen, als Logarithmen der Werte. Ein Ertrag von 0 geht ein als Logarithmus der halben kleinsten Pflanzung der Klasse, mit einem Spielraum so weit wie sein Abstand von der Klasse, es sei denn, die Klasse brachte gar nichts, was ihre Sorten durch nichts unterscheidet; eine Sorte, die nie reifte, als später als das Saisonende, mit der Streuung der Saison.',
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
        `${settings.verdicts.simulations} nächste Saisons werden mit dem Startwert ${settings.verdicts.seed} gezogen: Streuungen, Klassenmittel und Sorten gemeinsam, dazu eine neue Saison für jede Sorte und jedes Merkmal. Sie kommen in Paaren, die einander gegenüberliegen, und je eine aus jedem Teil ihres Bereichs, so dass der Zufall allein einen Anteil höchstens um ein Drittel eines Hundertstels verschiebt (Standardfehler bei so vielen, wie ohne Angabe gezogen werden). Werte werden zu Punkten von 0 bis 100, geradlinig von schlecht nach gut und außerhalb flach; wo kein Bereich gesetzt ist, reicht er von zwei Standardabweichungen zwischen den Sorten unter der Mitte der Klasse bis zwei darüber, damit die Gewichte wiegen, was sie sagen. Die Punktzahl ist das gewichtete Mittel der Punkte.`,
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
    ...lineMethods,
    ...planMethods,
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

export const methods: Words['methods'] = {
  title: 'Methoden',
  all,
  formulas: {
    variety: 'Sorte',
    block: 'Block',
    garden: 'Garten',
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
      '0,5 bei Logarithmen, ein Viertel der Skala bei Bewertungen, 0,25 bei Anteilen, 1 bei dem, was Mitglieder vorziehen, die Standardabweichung der Sortenmittel bei Maßen',
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
      '2 plantings of 4 plants': '2 Pflanzungen zu 4 Pflanzen',
      '3 plantings of 4 plants': '3 Pflanzungen zu 4 Pflanzen',
      '2 plantings of 6 plants': '2 Pflanzungen zu 6 Pflanzen',
      '3 plantings of 6 plants': '3 Pflanzungen zu 6 Pflanzen',
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
  lineForecasts,
  kept: {
    title: 'Ob die Anteile Wort halten',
    text: 'Gärten wurden mit bekannten Wahrheiten gezogen (Ertrag, Geschmack und erste reife Frucht als Ziele; 1 bis 5 Saisons, 5 bis 30 Sorten, 1 bis 6 Pflanzen), beraten und an der nächsten Saison gemessen, die dann gezogen wurde. Im Modell erhält eine Sorte, der ein Platz in 85 von 100 Saisons zugesagt wird, ihn in rund 86, und kein Zehntel der Anteile liegt um mehr als 3 daneben. Wo Sorten sich mehr oder weniger unterscheiden als angenommen, liegen die Anteile über eine bis fünf Saisons um bis zu 4 daneben; nach einer einzigen Saison sind sie um bis zu 9 zu vorsichtig (σ_w ist dort ein Drittel von σ_v: was 85 heißt, wird in 86 bis 94 erreicht). Wo Sorten sich von Saison zu Saison so stark ändern, wie sie sich unterscheiden, was eine Saison nicht zeigen kann, versprechen sie zu viel: von dem, was 85 heißt, werden über eine bis fünf Saisons 73 erreicht und nach einer einzigen 66. Wo Merkmale gegeneinander stehen, versprechen hohe Anteile bis zu 6 zu viel; wo sie miteinander gehen, bis zu 8 zu wenig. In keiner Einstellung zeigte sich die Liste schlechter als eine der beiden einfachen Regeln.',
    tenthsCaption: 'Aus dem Modell gezogen: gesagte und verdiente Anteile, in 100 Saisons',
    gardens: {
      'the model, variances from the priors': 'das Modell, Varianzen aus den Vorannahmen',
      'the model, every variety in every season with 3 plants': 'das Modell, jede Sorte in jeder Saison mit 3 Pflanzen',
      'heavier tails (t with 3 df)': 'schwerere Ränder (t mit 3 FG)',
      'traits correlated, 0.6': 'Merkmale korreliert, 0,6',
      'traits correlated, -0.4': 'Merkmale korreliert, −0,4',
      'spreads twice the priors': 'Streuungen doppelt so groß wie angenommen',
      'spreads half the priors': 'Streuungen halb so groß wie angenommen',
      'σ_v 0.15': 'σ_v 0,15',
      'σ_v 0.3': 'σ_v 0,3',
      'σ_v 0.8': 'σ_v 0,8',
      'σ_v 0.15, one season': 'σ_v 0,15, eine Saison',
      'σ_v 0.3, one season': 'σ_v 0,3, eine Saison',
      'σ_v 0.8, one season': 'σ_v 0,8, eine Saison',
      'σ_v 0.3, σ_w as large': 'σ_v 0,3, σ_w ebenso groß',
      'σ_v 0.3, σ_w as large, one season': 'σ_v 0,3, σ_w ebenso groß, eine Saison',
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
};
