import type { ProblemTexts } from '../en/problems.ts';
import type { Words } from '../en/index.ts';

export const problems: Words['problems'] = {
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
    'plantings.csv, totals.csv oder Bögen der Mitglieder in gardens/',
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
  'plants-all-one': [
    'jede Sorte hat hier eine Pflanze, {year} hatten die meisten {plants}: fehlen die Zahlen, ist jeder Ertrag je Pflanze zu hoch',
    'eine Spalte plants',
    'schreiben, für wie viele Pflanzen jede Zeile steht; nichts zu tun, wenn es eine war',
  ],
  'trait-undeclared': [
    'diese Spalte sieht nach einem Maß aus, das trial.yaml nicht nennt; ihre Zahlen werden nicht benutzt',
    'ein genanntes Merkmal',
    'in trial.yaml schreiben: {line}',
  ],
  'day-columns-unused': [
    'hier sind Tage die Überschriften von Spalten, und nichts darunter würde benutzt',
    'Tage als Spalten in harvests.csv, oder Tabellen, die aus diesem Blatt gemacht sind',
    'die Datei aus dem Ordner nehmen und aufrufen: keeprow adopt {file} --into (Ordner des Versuchs)',
  ],
  'score-taken-as': [
    'die Note ist keine einzelne Zahl: ein Bereich gilt als seine Mitte, eine Zahl mit Plus oder Minus als diese Zahl',
    'eine Zahl der Skala',
    'nichts zu tun, wenn das gemeint ist; sonst die Zahl schreiben',
  ],
  'answer-left-out': [
    'das sagt weder ja noch nein und keine Note; es bleibt weg',
    'yes oder no oder eine Zahl der Skala; eine leere Zelle, wo es niemand sagen kann',
    'schreiben, was gemeint ist, oder die Zelle leer lassen',
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
    'den Namen berichtigen oder die Sorte in varieties.csv ergänzen (eine frühere Kennung in ihren former_ids)',
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
    'F1, F2, F3 … oder BC1',
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
  'season-ongoing': [
    'diese Saison gilt als noch nicht zu Ende: die letzte Aufzeichnung ist vom {last}, ihr letzter Tag ist {end}; sie wird gezeigt, wie sie steht, und nichts aus ihr geht in ein Urteil ein',
    'eine Aufzeichnung am Ende der Saison oder {line} in trial.yaml',
    'ist sie zu Ende, schreiben Sie {line} (oder ihren letzten Tag als end) in trial.yaml',
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
    'ausfüllen oder eines für die Saison in trial.yaml angeben, etwa `seasons: {2026: {transplanted: 2026-05-20}}`',
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
  'language-unknown': [
    'in dieser Sprache gibt es keine Seiten',
    'eine von {languages}, auf Wunsch mit Region: de-AT',
    'eine davon wählen; eine neue Sprache ist willkommen, DEVELOPERS.md sagt, wie sie dazukommt',
  ],
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
  'state-unknown': [
    'das Wort ist kein Zustand von {trait}',
    'eines von {states}',
    'das Wort berichtigen oder in trial.yaml zu den Zuständen schreiben',
  ],
  'state-changed': [
    'die Pflanze war vorher {before}: zwei Zustände von {trait}',
    'ein Zustand je Pflanze',
    'nichts, wenn sie sich änderte; es gilt die spätere Zeile',
  ],
  'plants-over-planting': [
    'mehr Pflanzen mit einem Zustand von {trait}, als die Pflanzung hat',
    'höchstens {plants}',
    'plants hier oder in plantings.csv berichtigen',
  ],
  'seedlings-fewer': [
    'weniger Sämlinge als {state} gezählt, als Pflanzen dieses Zustands gesetzt wurden',
    'mindestens {plants}: die gesetzten gehören zu den Sämlingen',
    'alle zählen oder die Zeile entfernen',
  ],
  'plants-not-single': [
    'Zustände einer Gruppe von Pflanzen: sie werden gezählt, zu einzelnen Pflanzen wird nichts geraten',
    'eine Pflanzung je Pflanze, plants 1',
    'nichts zu tun; eine Zeile je Pflanze zeigt im nächsten Jahr mehr',
  ],
  'offspring-unexpected': [
    'ein Zustand von {trait}, den Samen von {mother} kaum gibt',
    'ein Zustand, den die Mutter weitergeben kann',
    'Schild und Pflanze noch einmal ansehen; der Same kann gekreuzt sein',
  ],
  'family-unlike': [
    'die Familie gleicht ihrer Mutter {mother} in keinem Zustand',
    'Pflanzen, die der Mutter ähneln',
    'prüfen, ob zwei Schilder vertauscht sind',
  ],
  'lot-twice': [
    'die Samenpartie steht zweimal da',
    'eine eigene Kennung je Partie (zuerst: Zeile {line})',
    'einer eine andere Kennung geben',
  ],
  'unknown-lot': [
    'die Samenpartie steht nicht in data/seeds.csv',
    'eine Partie aus seeds.csv',
    'den Namen berichtigen oder seeds.csv um eine Zeile ergänzen',
  ],
  'lot-of-other': [
    'aus der Partie wächst {variety}, nicht was die Zeile sagt',
    'eine Partie derselben Sorte oder von der Pflanze in from',
    'lot oder variety berichtigen',
  ],
  'lot-from-unlike': [
    'die Partie ist aus Pflanzen verschiedener Kreuzungen gemischt',
    'Pflanzen einer Kreuzung',
    'nichts zu tun, wenn so gemischt wurde; es wird keine Familie daraus',
  ],
  'lot-overdrawn': [
    'mehr Samen der Partie gesät, als eingelagert war',
    'höchstens {seeds}',
    'seeds hier oder in germination.csv berichtigen',
  ],
  'lot-crossed': [
    'die Blüten wurden mit {father} bestäubt: was wächst, ist eine neue Kreuzung, nicht die nächste Generation, und wird nur gezählt',
    'father: die Pflanze selbst, wenn sie von Hand geselbstet wurde',
    'nichts zu tun; oder was wächst bekommt eine eigene Zeile mit mother und father',
  ],
  'lot-gone': [
    'die Partie war {gone} aufgebraucht und wird später gesät',
    'ein Jahr bis {gone} oder eine andere Partie',
    'gone in seeds.csv berichtigen oder die Partie',
  ],
  'test-before-saved': [
    'der Same wurde gesät, bevor er geerntet war',
    'ein Tag nach dem {saved}',
    'einen der beiden Tage oder die Partie berichtigen',
  ],
  'saved-before-ripe': [
    'der Same wurde vor der ersten reifen Frucht der Pflanze geerntet',
    'ein Tag nach dem {ripe}',
    'saved oder die erste reife Frucht berichtigen',
  ],
  'lot-undated': [
    'eine Partie ohne Jahr: über ihr Alter wird nichts gesagt',
    'saved: Tag oder Jahr, auf einer Packung deren Jahr',
    'saved ausfüllen, wenn es bekannt ist',
  ],
  'treated-lot': [
    'behandelter Same: kein Lebensmittel; Handschuhe tragen, von Kindern fernhalten',
    'Handschuhe beim Säen',
    'nichts zu tun',
  ],
  'tests-disagree': [
    'Aussaaten einer Partie gingen zu verschieden auf: {counts}',
    'Aussaaten, die übereinstimmen',
    'prüfen, ob Partien vertauscht wurden oder eine Schale misslang; beide zählen',
  ],
  'good-not-a-state': [
    'ein gewünschter Zustand, den das Merkmal nicht hat',
    'einer von {states}',
    'good oder states berichtigen',
  ],
  'goal-on-state-without-good': [
    'ein Ziel auf einem Zustand, und nichts sagt, welcher gewünscht ist',
    'der gewünschte Zustand: {class}: good: … unter dem Merkmal ({state})',
    'good beim Merkmal ergänzen oder das Ziel streichen',
  ],
  'too-few-checks': [
    'zu wenige einzelne Pflanzen fester Sorten standen dort: darüber, wie viel von {trait} vererbt wird, wird nichts gesagt',
    '2 einzelne Pflanzen von 3 festen Sorten neben einer Linie',
    'nichts zu tun; nächstes Jahr welche anbauen',
  ],
  'frost-years-few': [
    'zu wenige Jahre Wetter für eine Frostgefahr: {years}',
    'drei Frühjahre, 14 Tage vor dem letzten Frost beginnend',
    'nichts zu tun; die Tage werden gezeigt, wie sie sind',
  ],
  'garden-person': [
    'die Spalte verrät, wer ein Mitglied ist',
    'Gärten mit einer Kennung, nichts von der Person',
    'die Spalte aus der Tabelle nehmen und die Liste der Kennungen anderswo führen',
  ],
  'garden-unknown': [
    'kein Garten in gardens.csv hat diese Kennung',
    'eine Kennung, die dort steht',
    'die Kennung berichtigen oder den Garten in gardens.csv eintragen',
  ],
  'garden-not-a-code': [
    'ein Garten hat eine Kennung, und diese kann verraten, wer ihn bestellt',
    'Buchstaben, Ziffern und Bindestriche, etwa g07',
    'dem Garten eine Kennung geben und die Liste der Kennungen anderswo führen',
  ],
  'garden-listed-twice': [
    'der Garten steht zweimal in der Liste',
    'eine Zeile; die andere ist Zeile {line}',
    'eine davon behalten',
  ],
  'garden-twice': [
    'die Pflanzen des Gartens stehen hier und in {other}',
    'seine Aufzeichnungen an einer Stelle',
    'eine der beiden behalten',
  ],
  'garden-alone': [
    'nur dieser Garten hat Aufzeichnungen der Saison und will nicht gezeigt werden: jede Zahl wäre seine eigene',
    'Aufzeichnungen weiterer Gärten oder `publish` yes in gardens.csv',
    'auf weitere Bögen warten; oder das Mitglied fragen oder `garden:` in trial.yaml setzen, wo es der eigene des Versuchs ist',
  ],
  'sheets-alike': [
    'die Zahlen sind bis zur letzten die des Gartens {other}',
    'ein eigener Bogen von jedem Garten',
    'fragen, ob einer unter zwei Kennungen kam; wenn nicht, ist nichts zu tun',
  ],
  'sheet-without-yield': [
    'weder Gewicht noch Früchte stehen bei der Sorte: ihr Ertrag gilt als nicht erfasst',
    'ein Gewicht oder eine Zahl von Früchten; 0, wo sie nichts gab',
    'das Mitglied fragen; es gilt nicht als 0',
  ],
  'sheet-variety-twice': [
    'die Sorte steht zweimal auf dem Bogen',
    'eine Zeile je Sorte; die andere ist Zeile {line}',
    'beide zusammenzählen, wo beide gemeint sind, oder eine behalten',
  ],
  'grown-not-sent': [
    'der Garten {garden} bekam diese Sorte nicht, wie sent.csv sagt',
    'was der Garten bekam',
    'fragen, ob es diese Sorte ist; nichts zu tun, wo der Samen sein eigener war',
  ],
  'gardens-apart': [
    'Klasse {class}: kein Garten verbindet {one} und {other}, sodass nichts sie vergleicht',
    'ein Garten, der von beiden eine zieht',
    'nächste Saison einem Garten beide geben: {join}',
  ],
  'gardens-thin': [
    'Klasse {class}: hängt nur durch wenige Gärten mit den anderen zusammen ({gardens})',
    'drei Gärten oder mehr, die sie neben einer anderen ziehen',
    'nichts zu tun; nächste Saison mehr Gärten von beiden eine geben',
  ],
  'garden-lone': [
    'Klasse {class}: Gärten mit einer einzigen Sorte zeigen keinen Unterschied zwischen Sorten ({gardens})',
    'zwei Sorten oder mehr in einem Garten, am besten drei',
    'nichts zu tun; sie zählen auf der eigenen Seite und bei „wieder anbauen“',
  ],
  'answer-not-given': [
    'das Mitglied hat diese Sorte nicht bekommen',
    'eine von: {given}',
    'die Antwort berichtigen oder sent.csv',
  ],
  'answer-both': [
    'dieselbe Sorte ist die beste und die schlechteste',
    'zwei Sorten, oder `same` für keinen Unterschied',
    'eine davon berichtigen',
  ],
  'answer-twice': [
    'der Garten hat zweimal geantwortet',
    'eine Zeile; die andere ist Zeile {line}',
    'eine davon behalten',
  ],
  'season-planned': [
    'von dieser Saison ist nichts datiert oder aufgezeichnet: sie ist geplant, in keiner Zahl und keinem Urteil',
    'Tage oder Aufzeichnungen, sobald sie begonnen hat',
    'nichts zu tun',
  ],
  'bed-twice': [
    'ein Beet dieses Namens steht zweimal',
    'eine Zeile je Beet; die andere ist Zeile {line}',
    'eines anders nennen',
  ],
  'bed-size-unfit': [
    'so viele Reihen oder Spalten hat kein Beet',
    'eine ganze Zahl von 1 bis {most}',
    'die Zahl berichtigen',
  ],
  'place-unreadable': [
    'das ist kein Platz des Beets mit {rows} Reihen und {columns} Spalten',
    'Reihe:Spalte mit Strichpunkten dazwischen, wie 2:7;2:8',
    'leave_out berichtigen',
  ],
  'wish-twice': [
    'diese Sorte hat zwei Zeilen mit Wünschen',
    'eine Zeile; die andere ist Zeile {line}',
    'eine daraus machen',
  ],
  'plan-wish-contradicts': [
    'diese Wünsche gehen nicht zusammen: {against}',
    'at_least bis plants bis at_most, und grow no ohne sie',
    'einen davon berichtigen',
  ],
  'plan-too-many': [
    'Plätze für die Wünsche: {wished}; Plätze der Klasse: {places}',
    'nicht mehr, als es gibt: {short} zu viel',
    'weniger Pflanzen für {varieties}, oder mehr Plätze (places.csv, classes.*.places)',
  ],
  'plan-place-outside': [
    'Reihe {row}, Spalte {column} von {bed} mit {rows} Reihen und {columns} Spalten',
    'ein Platz des Beets, der nicht frei bleiben soll',
    'Reihe und Spalte berichtigen, oder das Beet in places.csv',
  ],
  'plan-place-twice': [
    'Reihe {row}, Spalte {column} von {bed} ist in Zeile {line} vergeben',
    'eine Pflanze je Platz',
    'einer einen anderen Platz geben oder keinen',
  ],
  'plan-bed-unknown': [
    'dieses Beet gibt es nicht',
    'eines von: {beds}',
    'den Namen berichtigen oder das Beet in places.csv eintragen',
  ],
  'plan-class-no-place': [
    '{class} braucht {plants} Plätze und hat {places}, wo sie stehen darf',
    'Beete, oder ein gewünschtes Beet, die sie fassen',
    'weniger Pflanzen, ein anderes Beet, oder Plätze, die andere Klassen und feste Zeilen frei lassen',
  ],
  'plan-list-cut': [
    'auf der Liste von {class}: {listed}; mit Platz: {held}; es wartet: {waiting}',
    'Plätze für die ganze Liste',
    'der Klasse {more} Plätze mehr geben, oder einem Wunsch weniger Pflanzen',
  ],
  'plan-newcomers-wait': [
    'Neulinge von {class}, die auf ein anderes Jahr warten: {waiting} von {all}',
    'so viele, wie Platz haben',
    'nichts zu tun; mehr Plätze, oder `newcomers: {all}`, wo welche frei sind, nimmt mehr davon',
  ],
  'plan-side-by-side': [
    'Paare einer Sorte nebeneinander in {class}: {pairs} ({variety})',
    'Pflanzen einer Sorte getrennt',
    'weniger Pflanzen davon ({plants} von {places} Plätzen), oder kein Wunsch, der sie dort hält; nichts zu tun, wo es nicht stört',
  ],
  'plan-apart-broken': [
    '{classes} berühren sich an {times} Plätzen',
    'Klassen, die getrennt stehen sollen',
    'dazwischen eine Spalte frei lassen (leave_out), oder jeder ein Beet geben',
  ],
  'plan-tall-too-many': [
    'hohe Pflanzen von {class} ohne Platz in einer Nordreihe: {over}; keine steht dort fest',
    'so viele, wie die Nordreihe Plätze hat (ein Beet mit Norden oben oder unten auf dem Plan)',
    'weniger Pflanzen hoher Sorten, oder ein Beet für sie',
  ],
  'plan-check-missing': [
    'keine Vergleichssorte und weniger als zwei Sorten, die in {class} wiederkehren: die Saisons hängen kaum zusammen',
    'eine Vergleichssorte, oder zwei, die wiederkehren',
    'check_variety setzen, oder at_least für eine, die schon wuchs',
  ],
  'plan-seed-short': [
    'Samen vorhanden: {hand}; nötig: {needed}; gewünschte Pflanzen: {plants}, in {chance} von 100 Fällen',
    'Samen für die Pflanzen und eine zusätzliche auf je vier',
    'mehr kaufen oder ernten, oder weniger Pflanzen wünschen',
  ],
  'plan-late': [
    'die Hälfte der Pflanzen ist bis {day} in {chance} von 100 Fällen reif',
    'in den meisten Jahren rechtzeitig reif',
    'früher säen oder auspflanzen, oder abdecken; nichts zu tun, wo es ein Versuch ist',
  ],
  'plan-frost': [
    'dann ausgepflanzt, folgt in {chance} von 100 Jahren Frost; am {safe} in höchstens {risk} von 100',
    'ein Tag, der am Ort als sicher gilt',
    'Nachbarn fragen; abdecken, oder plan.plant_out setzen',
  ],
  'plan-frost-disagree': [
    'der angegebene letzte Frost ({stated}) und die aufgezeichneten (im Mittel {recorded}) liegen weit auseinander',
    'Tage, die auf einige Wochen übereinstimmen',
    'sehen, ob plan.last_frost von diesem Ort ist',
  ],
  'plan-tasters-few': [
    'weniger als zwei Proben von {class} je Person',
    'zwei Proben oder mehr, um sie zu vergleichen',
    'an dem Tag weniger Klassen verkosten, oder plan.tasting.samples setzen',
  ],
  'plan-all-fixed': [
    'jeder Platz ist fest: es bleibt nichts zu planen',
    'Zeilen ohne Platz',
    'nichts zu tun; Zeilen löschen gibt Plätze frei',
  ],
  'plan-kept': ['Zeilen, die im Plan bleiben, wie sie sind: {rows}', 'Zeilen, die bleiben sollen', 'nichts zu tun'],
} satisfies ProblemTexts;
