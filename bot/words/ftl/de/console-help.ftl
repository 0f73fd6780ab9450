# Die Hilfe der Kommandozeile, nach dem Pfad des Befehls; siehe bot/src/cli/help.rs.
# Befehle, Optionen und Werte heißen in jeder Sprache gleich.

help-shared = Was mehreren Befehlen gemeinsam ist.
    .heading-usage = Aufruf:
    .heading-commands = Befehle:
    .heading-arguments = Argumente:
    .heading-options = Optionen:
    .value-OPTIONS = OPTIONEN
    .value-COMMAND = BEFEHL
    .value-FILE = DATEI
    .value-FOLDER = ORDNER
    .value-SECONDS = SEKUNDEN
    .value-N = N
    .value-PROGRAM = PROGRAMM
    .value-GROUP = GRUPPE
    .value-WHICH = WELCHE
    .value-NAME = NAME
    .value-TEXT = TEXT
    .value-WHEN = WANN
    .value-FEN = FEN
    .value-TASK = FORDERUNG
    .value-LANGUAGE = SPRACHE
    .value-REPLY = ANTWORT
    .value-TOPIC = THEMA
    .value-MOVES = ZÜGE
    .value-FROM-TO = VON-NACH
    .value-SQUARE = FELD
    .value-PERIOD = ZEITRAUM
    .value-TABLE = TABELLE
    .value-PORT = PORT
    .value-POSITIONS = STELLUNGEN
    .value-POSITION = STELLUNG
    .value-WORDS = WORTE
    .value-ITEM = EINTRAG
    .value-TO = PLATZ
    .value-TIME = ZEIT
    .value-UNTIL = BIS
    .value-BOTTOM = UNTEN
    .value-STYLE = STIL
    .value-SIZE = GRÖSSE
    .arg-help = Diese Hilfe ausgeben
    .arg-version = Die Version ausgeben
    .arg-config = Einstellungsdatei; sonst sealed-move.toml neben dem Speicher, wenn es sie gibt
    .arg-store = Der Speicher; sonst der, den die Einstellungen nennen, oder sealed-move.sqlite in diesem Ordner
    .arg-group = Die Gruppe, nach Namen oder Kanal; unnötig, wenn es nur eine gibt
    .arg-json = Ein JSON-Objekt
    .arg-jobs = Stellungen, an denen zugleich gearbeitet wird; sonst eine je Prozessorkern
    .arg-period = Wann: all, this week, last week, last 4 weeks, this month, 2026-03, 2026-03-02 to 2026-03-08, …
    .arg-port = Port des Vereinsraums statt dem aus den Einstellungen; ist er belegt, wird ein freier genommen
    .arg-fen = Eine Stellung, die daneben gezeigt wird; sie muss möglich sein und wird nicht bewiesen
    .arg-on = Wann es hinausgeht, in der Zeit der Gruppe, etwa 2026-12-01T18:00
    .arg-again = Auch solche, die schon gestellt wurden
    .arg-item = Nummer des Eintrags
    .arg-position = Nummer der Stellung
help = Stellt einer Lerngruppe die Schachaufgabe des Tages: prüft sie, stellt sie, liest die Antworten, beantwortet falsche Züge mit ihrer Widerlegung, hält Lösungen bis zur Auflösung verschlossen und zählt nach Themen zusammen.
    .long =
        Stellt einer Lerngruppe die Schachaufgabe des Tages: prüft sie, stellt sie, liest die Antworten, beantwortet falsche Züge mit ihrer Widerlegung, hält Lösungen bis zur Auflösung verschlossen und zählt nach Themen zusammen.

        Rückgabewert: 0 wie gewünscht; 1 erledigt, und etwas ist zu beanstanden; 2 es ging nicht.
help-serve = Den Bot laufen lassen: Zeitplan, Vereinsraum und Discord, wo ein Token gesetzt ist (auch ohne Befehl)
    .long =
        Den Bot laufen lassen: Zeitplan, Vereinsraum und Discord, wo DISCORD_TOKEN (oder DISCORD_TOKEN_FILE) gesetzt ist.

        Startet auch ohne Einstellungsdatei; README.md nennt alle Einstellungen. Strg-C beendet ihn geordnet.
help-demo = Ihn mit einem neuen Speicher und einer erfundenen Gruppe laufen lassen; die erste Stellung wird sofort gestellt
    .long =
        Alles mit einem neuen Speicher und einer erfundenen Gruppe laufen lassen; die erste Stellung wird sofort gestellt.

        Braucht weder Konto noch Schlüssel noch Dienst. Der Speicher wird am Ende weggeworfen, wenn --store keine Datei nennt.
    .arg-port = Port des Vereinsraums; ist er belegt, wird ein freier genommen
help-check = Stellungen aus EPD, PGN oder FEN-Zeilen prüfen
    .long =
        Stellungen prüfen: Ist die Forderung gegen jede Verteidigung zu erfüllen, und gibt es nur einen Schlüsselzug?

        Die Art der Datei (EPD, PGN, Zeilen von FEN) ergibt sich aus ihrem Inhalt; `-` liest die Standardeingabe. Rückgabewert 1, wenn eine Stellung nicht korrekt ist, oder mit --topic-on, wenn sie ihr Thema nicht zeigt.
    .after =
        Beispiele:
          sealed-move check woche.epd
          sealed-move check --json --seconds 2 lektion.pgn
          echo '6k1/5ppp/8/8/8/8/5PPP/3R2K1 w - -' | sealed-move check -
    .arg-json = Ein JSON-Objekt je Stellung, auf einer eigenen Zeile
    .arg-seconds = Höchstens so viele Sekunden für eine Stellung
    .arg-moves = Längstes Matt, das gesucht wird, wo die Datei keine Forderung nennt
    .arg-table-mb = Höchstens so viele Megabyte für die Tabelle der Stellungen, die sich jeder Beweis merkt
    .arg-tables = Ordner mit Endspieltabellen im Syzygy-Format
    .arg-engine = UCI-Programm, das um eine zweite Meinung gebeten wird, wo nichts zu beweisen war
    .arg-topic-on = An welchen Varianten ein Thema gemessen wird, das ein Mattbild nennt; eine Stellung, die ihr Thema nicht zeigt, wird dann beanstandet
    .arg-topic-on-is-main-line = an der Hauptvariante, wie ohne diese Option
    .arg-topic-on-is-every-line = an jeder Variante von voller Länge
    .arg-files = Dateien, die gelesen werden
help-import = Stellungen prüfen und speichern
    .long =
        Stellungen prüfen und speichern, mit dem, was geprüft wurde und wie.

        Rückgabewert 1, wenn eine Stellung nicht korrekt ist (gespeichert wird sie trotzdem, wenn die Regeln auf sie passen), wenn sie schon mit anderem Namen, Thema oder Kommentar gespeichert ist und --same nicht sagt, was gilt, wenn --queue eine auslässt, die schon gestellt wurde, oder mit --topic-on, wenn eine ihr Thema nicht zeigt.
    .arg-json = Ein JSON-Objekt je Stellung
    .arg-queue = Auch jede korrekte Stellung, jede Frage und alle Worte ans Ende der Woche stellen; Fragen und Worte werden sonst nicht gespeichert
    .arg-again = Mit --queue auch solche, die schon gestellt wurden
    .arg-same = Was von einer Stellung gilt, die schon mit anderem Namen, Thema oder Kommentar gespeichert ist
    .arg-same-is-keep = die gespeicherte, wie ohne diese Option
    .arg-same-is-new = die aus der Datei
    .arg-same-is-both = die gespeicherte, dazu Thema und Worte aus der Datei
    .arg-topic = Jeder Stellung dieses Thema geben statt dem aus der Datei
    .arg-topic-on = An welchen Varianten ein Thema gemessen wird, das ein Mattbild nennt; eine Stellung, die ihr Thema nicht zeigt, wird dann beanstandet
    .arg-topic-on-is-main-line = an der Hauptvariante, wie ohne diese Option
    .arg-topic-on-is-every-line = an jeder Variante von voller Länge
    .arg-files = Dateien mit EPD, PGN oder FEN
help-queue = Die Woche ansehen und ordnen
    .long = Die Woche ansehen und ordnen: die Stellungen, Fragen und Worte, die warten, der Reihe nach und mit ihrer Zeit.
    .arg-json = Ein JSON-Objekt je Platz in der Woche
help-queue-add = Stellungen, die `import` gespeichert hat, nach ihren Nummern ans Ende der Woche stellen
    .arg-positions = Nummern von Stellungen
    .arg-anyway = Auch solche, die nicht korrekt sind
help-queue-question = Eine Frage ans Ende der Woche stellen: Die Mitglieder antworten in eigenen Worten, und ein Trainer bewertet, was sie schreiben
    .arg-words = Was gefragt wird, höchstens 1.000 Zeichen
    .arg-topic = Das Thema, unter dem die Punkte zählen
    .arg-reveal = Deine eigenen Worte dazu, gezeigt beim Abschluss
help-queue-say = Worte ans Ende der Woche stellen, die nur gelesen werden: Darauf wird nicht geantwortet
    .arg-words = Der Text, höchstens 1.000 Zeichen
    .arg-fen = Eine Stellung, die daneben gezeigt wird
    .arg-topic = Das Thema
    .arg-on = Wann sie hinausgehen, in der Zeit der Gruppe, etwa 2026-12-01T18:00
help-queue-card = Die Karte eines Themas ans Ende der Woche stellen: ihre Worte mit der Stellung des Beispiels, in der Sprache der Gruppe
    .arg-name = Die Karte, mit Namen oder Titel des Mattbilds oder mit ihrem Thema
    .arg-on = Wann sie hinausgeht, in der Zeit der Gruppe, etwa 2026-12-01T18:00
help-queue-words = Die Worte zu einer Stellung ansehen oder neu schreiben
    .arg-post = Worte zur Aufgabe; ein leerer Text nimmt sie weg
    .arg-reveal = Worte zur Auflösung; ein leerer Text nimmt sie weg
    .arg-anyway = Die Worte zur Aufgabe mitschicken, obwohl sie einen Zug der Stellung verraten
help-queue-move = Einen Eintrag auf einen anderen Platz der Reihenfolge setzen; 1 ist der erste
    .arg-to = Sein neuer Platz
help-queue-at = Festlegen, wann ein Eintrag hinausgeht, in der Zeit der Gruppe, oder ihn wieder freigeben
    .arg-time = Etwa 2026-12-01T18:00, oder "free"
help-queue-topic = Das Thema einer Stellung setzen
    .arg-topic = Das Thema; ohne Angabe wird das Thema weggenommen
help-queue-remove = Einen Eintrag aus der Woche nehmen; `put-back` legt ihn zurück
help-queue-put-back = Zurücklegen, was aus der Woche genommen wurde, an den Platz, wo es stand
    .arg-taken = Seine Nummer, wie `remove` sie genannt hat; ohne Angabe das letzte
help-queue-now = Einen Eintrag jetzt stellen, sonst den nächsten
help-queue-pause = Bis zu einem Tag nichts stellen, oder bis `queue resume`
    .arg-until = Erster Tag, an dem wieder gestellt wird, etwa 2027-01-04
help-queue-resume = Wieder Aufgaben stellen
help-queue-print = Die Woche als Blätter für den Unterricht schreiben: sechs Stellungen auf einer Seite, die Lösungen auf der letzten
    .arg-out = Eine PDF-Datei
    .arg-letter = Papier im Format Letter statt A4
help-lesson = Ein Thema in Schritten lehren
    .long =
        Ein Thema in Schritten lehren: Eine Lektion ist eine PGN-Datei mit einer Partie für jeden Schritt.

        Worte vor dem ersten Zug eröffnen den Schritt. Nach einem Zug, dessen Kommentar mit [stop] beginnt, wird gefragt, und [stop #2] sagt, was gefordert ist. Züge ohne Stopp sind ein Beispiel, ohne Züge sind es Worte mit einem Bild, und Worte, die mit einem Fragezeichen enden, sind eine offene Frage, ebenso ein Schritt mit dem Tag Homework "yes" oder Question "...".
help-lesson-check = Eine Lektion lesen und ihre Stopps prüfen, ohne Speicher
    .arg-seconds = Höchste Zeit für einen Stopp
    .arg-file = Eine PGN-Datei, oder - für die Standardeingabe
help-lesson-import = Eine Lektion prüfen und speichern; in die Woche kommt noch nichts
    .arg-json = Ein JSON-Objekt je Teil
    .arg-title = Der Titel der Lektion, statt dessen, den die Datei nennt
    .arg-same = Was von einer Stellung gilt, die schon unter anderem Namen, Thema oder Kommentar gespeichert ist
    .arg-same-is-keep = die gespeicherte, wie ohne diese Angabe
    .arg-same-is-new = die der Datei
    .arg-same-is-both = die gespeicherte, dazu Thema und Worte der Datei
    .arg-file = Eine PGN-Datei
help-lesson-list = Die Lektionen der Gruppe ansehen
    .arg-json = Ein JSON-Objekt je Lektion
help-lesson-show = Eine Lektion Schritt für Schritt ansehen, und wo jeder Teil steht
    .arg-json = Ein JSON-Objekt je Teil
    .arg-lesson = Nummer der Lektion
help-lesson-plan = Eine Lektion in ihrer Reihenfolge in die Woche stellen: an freie Termine, wenn nichts anderes gesagt ist
    .arg-at-once = Alles auf einmal von diesem Zeitpunkt an, nach der Uhr der Gruppe, etwa 2026-12-01T18:00
    .arg-step = Ein Schritt zu seinem eigenen Zeitpunkt, etwa 3=2026-12-01T18:00; so oft, wie es solche Schritte gibt
    .arg-anyway = Auch Stopps, die nicht in Ordnung sind
    .arg-again = Auch, was schon dran war
    .arg-lesson = Nummer der Lektion
help-lesson-export = Eine Lektion als PGN schreiben, das wieder gelesen werden kann
    .arg-out = Eine Datei statt der Standardausgabe
    .arg-lesson = Nummer der Lektion
help-lesson-remove = Eine Lektion vergessen und aus der Woche nehmen; ihre Stellungen und was schon dran war, bleiben
    .arg-lesson = Nummer der Lektion
help-grade = Eine Antwort auf eine Stellung beurteilen
    .long =
        Eine Antwort auf eine Stellung beurteilen, so wie ein Mitglied sie beantwortet bekäme.

        Die Stellung steht mit ihrer Aufgabe da oder in einer Datei, nach deren eigenen Varianten beurteilt wird. Die Antwort ist das letzte Argument, hinter `--`, wenn sie mit einem Strich beginnt, oder bei `-` die Standardeingabe. Rückgabewert 1, wenn die Antwort nicht richtig ist.
    .after =
        Beispiel:
          sealed-move grade --position 'r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1' --stipulation '#2' --language german 'Td7'
    .arg-position = Die Stellung
    .arg-stipulation = Die Forderung: #1 bis #20, + oder =
    .arg-language = Sprache, deren Figurenbuchstaben zuerst gelesen werden
    .arg-seconds = Höchstens so viele Sekunden für das Urteil
    .arg-pgn = Statt ihrer eine Datei, deren erste Stellung nach ihren eigenen Varianten beurteilt wird
    .arg-line = Mit welcher Variante der Datei einem Gewinn oder Remis begegnet wird, von 0 an
    .arg-reply = Was das Mitglied geschrieben hat
help-name = Das Matt auf dem Brett benennen
    .long =
        Das Matt auf dem Brett benennen: das Mattbild, wer Schach gibt, wer welches Fluchtfeld deckt.

        Rückgabewert 1, wenn die Seite am Zug nicht matt ist.
    .after =
        Beispiel:
          sealed-move name '3R2k1/5ppp/8/8/8/8/8/6K1 b - - 0 1'
    .arg-position = Die Stellung, am Zug ist die mattgesetzte Seite
help-card = Nachlesen, worum es bei einem Mattbild geht, mit einem Beispiel
    .long = Nachlesen, worum es bei einem Mattbild geht: Definition, worauf zu achten ist, was es von seinen Verwandten trennt, ein Beispiel mit Lösung und woher es stammt. Ohne Namen: die Mattbilder, zu denen es Karten gibt.
    .after =
        Beispiele:
          sealed-move card boden
          sealed-move card "Ersticktes Matt" --out erstickt.png
    .arg-name = Das Mattbild, mit seinem Namen oder seinem Titel in einer der Sprachen
    .arg-json = Ein JSON-Objekt je Karte
    .arg-out = Das Bild vom Ende des Beispiels dorthin schreiben; die Endung .png oder .svg sagt, was
help-find = In Partien Stellungen zu einem Thema finden
    .long =
        In Partien Stellungen zu einem Thema finden: erzwungene Matts, die in einem Mattbild enden, gespielt oder ausgelassen.

        Jede gefundene Stellung ist korrekt. Ohne --json kommen sie als EPD heraus, fertig für `import`; Thema und Bemerkung sind in der Sprache dieser Hilfe. Rückgabewert 1, wenn eine Partie nicht zu lesen war.
    .after =
        Beispiele:
          sealed-move find --topic Grundreihenmatt partien.pgn > grundreihe.epd
          sealed-move find --topic "Bodens Matt" --longest 4 archiv.pgn
    .arg-topic = Mattbild, nach seinem Kürzel oder Namen; ohne Angabe jedes mit einem Namen
    .arg-shortest = Kürzestes gewünschtes Matt, in Zügen
    .arg-longest = Längstes gewünschtes Matt, in Zügen
    .arg-json = Ein JSON-Objekt je Stellung, wie `check` es schreibt
    .arg-jobs = Partien, an denen zugleich gearbeitet wird; sonst eine je Prozessorkern
    .arg-files = Dateien mit Partien in PGN; `-` liest die Standardeingabe
help-engine = Die eigene Suche des Bots Programmen anbieten, die UCI sprechen
    .long = Die eigene Suche des Bots über Standardein- und -ausgabe Programmen anbieten, die UCI sprechen.
help-diagram = Eine Stellung als PNG oder SVG zeichnen
    .long = Eine Stellung als PNG oder SVG zeichnen, je nach Endung der Datei; eine Variante als Bilderstreifen (PNG, SVG) oder als bewegtes Bild (GIF).
    .after =
        Beispiele:
          sealed-move diagram '6k1/5ppp/8/8/8/8/5PPP/3R2K1 w - -' --out brett.png --arrow d1d8
          sealed-move diagram 'r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - -' --line 'Rxd8+ Rxd8 Rxd8#' --out variante.gif
          sealed-move diagram --sheet --out alles.png
    .arg-position = Die Stellung
    .arg-sheet = Alles, was gezeichnet werden kann, auf einem Blatt: alle Figuren und Bauern, Stile, Zeichen und Größen
    .arg-line = Züge, die von der Stellung an gezeigt werden, mit englischen Figurenbuchstaben, etwa "1.Rxd8+ Rxd8 2.Rxd8#"
    .arg-out = Wohin geschrieben wird; die Endung .png, .svg oder .gif sagt, was
    .arg-bottom = Wer unten sitzt; sonst die Seite am Zug
    .arg-bottom-is-white = Weiß
    .arg-bottom-is-black = Schwarz
    .arg-style = Aussehen des Bretts
    .arg-style-is-print = wie gedruckt
    .arg-style-is-light = hell
    .arg-style-is-dark = dunkel
    .arg-style-is-contrast = starker Kontrast
    .arg-size = Breite in Pixeln, 120 bis 2400 (sonst 720); bei einer Variante 120 bis 480 für jedes Brett eines Bilderstreifens (sonst 320), 120 bis 720 für ein bewegtes Bild (sonst 480)
    .arg-arrows = Ein Pfeil, etwa d1d8; darf mehrmals vorkommen
    .arg-marks = Ein markiertes Feld, etwa h7; darf mehrmals vorkommen
    .arg-last = Der letzte Zug, etwa e2e4
    .arg-words = Auch die Worte ausgeben, die das Bild ersetzen
help-leaderboard = Punkte nach Thema und Zeitraum
    .long = Punkte nach Mitgliedern, die besten zuerst: fünf für eine vollständige Lösung, Teilpunkte für einen Teil davon.
    .after =
        Beispiele:
          sealed-move leaderboard --period 'last 4 weeks'
          sealed-move leaderboard --topic 'Ersticktes Matt' --csv > punkte.csv
    .arg-topic = Nur Aufgaben dieses Themas
    .arg-csv = CSV mit einer Kopfzeile
help-summary = Wer mitgemacht hat, wie es lief, was als Nächstes dran ist
    .long = Die Auswertung: wer mitgemacht und gelöst hat, wer still geworden oder zurück ist, wie es mit jeder Stellung und jedem Thema lief, und was deshalb als Nächstes dran ist.
    .after =
        Beispiele:
          sealed-move summary --period 'last 4 weeks'
          sealed-move summary --csv topics > themen.csv
          sealed-move summary --charts bilder/
    .arg-topic = Nur Aufgaben dieses Themas
    .arg-csv = Eine der Tabellen der Auswertung als CSV, mit einer Kopfzeile
    .arg-csv-is-members = wer mitgemacht hat
    .arg-csv-is-posts = wie jede Aufgabe lief
    .arg-csv-is-topics = wie jedes Thema lief
    .arg-charts = Auch die Diagramme in diesen Ordner zeichnen
help-backup = Den Speicher kopieren, auch im laufenden Betrieb
    .long = Eine in sich stimmige Kopie des Speichers schreiben, auch während der Bot läuft.
    .arg-force = Die Kopie überschreiben, wenn es sie schon gibt
    .arg-to = Wohin die Kopie kommt
help-restore = Eine Kopie an die Stelle des Speichers setzen
    .long = Eine Kopie, die `backup` gemacht hat, an die Stelle des Speichers setzen. Der Bot darf dabei nicht mit ihm laufen.
    .arg-force = Den Speicher überschreiben, wenn es einen gibt
    .arg-from = Die Kopie
