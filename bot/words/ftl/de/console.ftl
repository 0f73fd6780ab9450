# Was die Kommandozeile sagt.

## Der Bericht zu einer Stellung

# $done, $total und $left: werden während der Arbeit eingesetzt.
check-progress = { $done }/{ $total } Stellungen, noch { $left }
checked-as = { $verdict ->
    [sound] korrekt
    [several-keys] mehr als ein Schlüsselzug
    [short] kürzeres Matt
    [unsound] unlösbar
    [illegal] nicht zu gebrauchen
   *[undecided] in der erlaubten Zeit nicht entschieden
}
report-keys = { $number ->
    [one] Schlüsselzug: { $keys }
   *[other] Schlüsselzüge: { $keys }
}
report-try = Verführung: { $line }
report-pictures = Mattbild: { $patterns }
report-difficulty = Schwierigkeit: { $grade-text } von 10
report-note = Hinweis: { $note }
report-proved = bewiesen, { $nodes } Stellungen, { $seconds-text } s
report-judged = bei Suchtiefe { $depth } beurteilt, { $nodes } Stellungen, { $seconds-text } s
report-not-proved = nicht bewiesen, { $nodes } Stellungen, { $seconds-text } s
words-with-post = Worte zur Aufgabe:
words-at-reveal = Worte zur Auflösung:
words-beside-moves = neben den Zügen, bei der Auflösung:
no-positions-found = keine Stellungen gefunden
checked-all-sound = { $number ->
    [one] 1 Stellung, korrekt
   *[other] { $number } Stellungen, alle korrekt
}
some-to-look-at = { $number ->
    [one] 1 Stellung, die du dir ansehen solltest
   *[other] { $number } Stellungen, { $sound } korrekt, { $wanting } zum Ansehen
}
topics-not-verified = { $number ->
    [one] 1 Stellung zeigt das Thema nicht, das sie nennt, siehe „nicht bestätigt“
   *[other] { $number } Stellungen zeigen die Themen nicht, die sie nennen, siehe „nicht bestätigt“
}
written-question = { $id }: eine Frage: { $words }
written-at-close = beim Abschluss: { $words }
written-words = { $id }: Worte zum Lesen: { $words }

## Eine Lektion

lesson-titled = Lektion „{ $title }“
lesson-titled-topic = Lektion „{ $title }“, Thema { $topic }
lesson-step-head = { $contrast ->
    [yes] Schritt { $step }, wo das Thema nicht aufgehen soll
   *[no] Schritt { $step }
}
lesson-question = eine Frage: { $words }
lesson-says = Worte zum Lesen: { $words }
lesson-part-waits = { $number ->
    [one] wartet auf die Auflösung von Schritt { $steps }, dessen Lösung es verraten würde
   *[other] wartet auf die Auflösungen der Schritte { $steps }, deren Lösungen es verraten würde
}
lesson-part-not-kept = nicht gespeichert: eine Forderung fehlt, und es fand sich keine; schreib sie dazu, etwa [stop #2]
lesson-part-as-before = dieselbe Stellung wie in Schritt { $step }; sie kommt einmal dran
lesson-part-in-week = in der Woche als Eintrag { $item }
lesson-part-open = gestellt als Nr. { $number }, noch offen
lesson-part-closed = gestellt als Nr. { $number } und geschlossen
lesson-kept = Gespeichert als Lektion { $lesson }; mit `sealed-move lesson plan { $lesson }` kommt sie in die Woche.
lesson-not-kept = Nichts ist gespeichert: kein Schritt lässt sich lesen.
no-lessons = Noch gibt es keine Lektionen; mit `sealed-move lesson import` kommt eine herein.
lesson-row-is = { $lesson }. { $title }: Schritte: { $steps }; Teile: { $parts }, davon { $waiting } in der Woche und { $posted } schon gestellt
lesson-left-out = { $number ->
    [one] Ein Teil war schon dran und bleibt weg; mit --again kommt er noch einmal.
   *[other] { $number } Teile waren schon dran und bleiben weg; mit --again kommen sie noch einmal.
}

## Was davon gespeichert ist

written-not-kept = Das wird nicht gespeichert; mit --queue kommt es in die Woche.
same-choices = --same new nimmt die aus der Datei, --same both behält beide Themen, --same keep sagt, dass es so gemeint ist
report-again = noch einmal: { $what }
report-posted-before = schon gestellt: Nr. { $number } am { $date }.
posted-before-left-out = Sie kommt nicht in die Woche; mit --again schon.

## Eine Antwort

graded = { $verdict ->
    [solved] gelöst, { $points-text } von 5 Punkten
    [on-the-way] auf dem richtigen Weg, { $points-text } von 5 Punkten
    [wrong] falsch, { $points-text } von 5 Punkten
    [illegal] nicht erlaubt, { $points-text } von 5 Punkten
    [unclear] nicht eindeutig, { $points-text } von 5 Punkten
   *[unreadable] nicht lesbar, { $points-text } von 5 Punkten
}
may-mean = kann heißen: { $reading }

## Stellungen aus Partien

found-played = in der Partie gespielt, { $file } Zeile { $line }
found-missed = in der Partie ausgelassen, { $file } Zeile { $line }

## Die Woche

posting-paused-until = Bis { $moment } wird nichts gestellt.
posting-paused = Es wird nichts gestellt, bis du die Pause beendest.
queue-is-empty = Die Woche von { $group } ist leer; mit `import --queue` kommen Stellungen hinein.
queue-due = { $moment }
queue-due-fixed = { $moment }, fest
queue-no-time = { $why ->
    [not-sound] kein Termin: nicht als korrekt befunden
    [paused] kein Termin: es ist Pause
    [no-days] kein Termin: der Kalender hat keine Tage
   *[waits] kein Termin: worauf es wartet, hat auch keinen
}
queue-step-of = Schritt { $step } von { $steps } der Lektion { $title }
queue-waits-for-post = wartet auf die Auflösung von Nr. { $number }, die es verraten würde
queue-waits-for-item = wartet auf die Auflösung von Eintrag { $item } ({ $called }), die es verraten würde
taken-out = Herausgenommen; `queue put-back { $taken }` legt es zurück, wo es stand.
queue-kind = { $kind ->
    [problem] Stellung
    [question] Frage
   *[words] Mitteilung
}
queue-topic-also = { $topic } (auch { $others })
queue-no-topic = kein Thema
queue-topic-not-verified = { $topic } [Thema nicht bestätigt]
queue-item = Eintrag { $item }
queue-item-with-position = Eintrag { $item }, mit einer Stellung
queue-position = Eintrag { $item }, Stellung { $position }
queue-position-again = Eintrag { $item }, Stellung { $position }; noch einmal, schon gestellt als Nr. { $number } am { $date }

## Kopien des Speichers

copied-to = { $store } ist nach { $copy } kopiert
restored-from = { $store } ist aus { $copy } wiederhergestellt

## Das laufende Programm

store-is-at = Speicher: { $file }
stop-with-ctrl-c = Mit Strg-C beenden.
stopping = Wird beendet.
not-finished-in-time = Etwas wurde nicht rechtzeitig fertig. Beim nächsten Start geht es damit weiter.
chat-is-back = { $chat }: wieder verbunden.
connects-by-itself = { $why } Die Verbindung wird von selbst neu aufgebaut.
tried-again = { $why } Neuer Versuch in { $seconds } s.

## Was nicht ging, als Teil eines Satzes: die Ursache kann folgen

because-of = { $what }: { $cause }
file-unreadable = { $file } war nicht zu lesen
file-unwritable = { $file } war nicht zu schreiben
file-is-too-large = { $file } ist größer als { $most } MB; teil die Datei in kleinere auf
folder-not-made = der Ordner { $folder } war nicht anzulegen
input-unreadable = die Standardeingabe war nicht zu lesen
ending-of-board = { $file }: Der Name muss auf .png oder .svg enden
ending-of-line = { $file }: Der Name muss auf .png, .svg oder .gif enden
too-wide-for-line = { $file }: Eine Variante wird höchstens { $most } Pixel breit gezeichnet, in einem Bilderstreifen jedes Brett; --size { $size } ist zu breit
settings-unreadable = die Einstellungsdatei { $file } war nicht zu lesen
settings-wrong = die Einstellungsdatei { $file }
setting-no-time = { $key } = { $value } ist keine Zeit; gib eine Zahl von Sekunden über 0 an
setting-out-of-range = { $key } = { $value } liegt außerhalb; gib { $least } bis { $most } an
setting-at =
    Zeile { $row }: { $why }
    { $shown }
setting-unknown =
    eine Einstellung { $key } gibt es hier nicht; { $known ->
        [none] diese Tabelle hat keine
       *[other] schreib { $known }
    }
setting-missing = der Tabelle fehlt { $key }
setting-no-choice = { $value } steht nicht zur Wahl; schreib { $choices }
setting-of-other-kind =
    { $value } passt hier nicht; { $kind ->
        [text] schreib einen Text in Anführungszeichen
        [whole] schreib eine ganze Zahl, die nicht zu groß ist
        [number] schreib eine Zahl ohne Anführungszeichen
        [yes-or-no] schreib true oder false
        [table] die Einstellungen stehen unter einer Überschrift in eckigen Klammern
        [times] schreib eine Uhrzeit wie "18:00" oder eine Liste davon
        [address] schreib eine Adresse mit Port wie "127.0.0.1:7316"
       *[other] in README.md steht, was jede Einstellung annimmt
    }
setting-no-zone = { $value } ist keine Zeitzone der IANA-Liste; schreib eine wie "Europe/Berlin"
setting-twice = { $key } steht ein zweites Mal da; lass eines stehen
settings-no-toml = das ist nicht als TOML zu lesen ({ $why })
no-time-limit = --seconds { $value } ist keine Zeitgrenze; gib eine Zahl über 0 an, etwa 10
position-given = die Stellung
shortest-too-long = --shortest { $shortest } ist länger als --longest { $longest }
not-a-pattern = „{ $topic }“ ist kein Mattbild, das hier bekannt ist; wähle eines von { $patterns }
task-not-shown = dass { $task } in dieser Stellung gilt, war in { $seconds-text } s nicht zu zeigen; sieh sie dir mit `sealed-move check` an
reply-holds-nothing = die Antwort enthält keine Lösung; schreib einen Zug wie Sf3
no-problem-in-file = { $file } enthält keine Stellung mit einer Aufgabe; gib eine PGN-Partie mit den Tags FEN und Task an
lesson-unreadable = { $file }, Zeile { $row }: { $what }
not-a-legal-move = { $written } ist an dieser Stelle der Variante kein erlaubter Zug; schreib Züge mit englischen Figurenbuchstaben, etwa Nf3 oder exd5
line-holds-no-moves = die Variante enthält keine Züge; schreib sie wie "1.Rxd8+ Rxd8 2.Rxd8#"
places-from-one = die Plätze zählen von 1 an
nothing-taken-out = in den letzten sieben Tagen wurde nichts aus der Woche genommen
step-time-not-read = „{ $written }“ ist kein Schritt mit seinem Zeitpunkt; schreib etwa 3=2026-12-01T18:00
no-steps = in { $file } ist keine Lektion; eine Lektion ist eine PGN-Datei mit einer Partie für jeden Schritt
time-not-read = „{ $written }“ ist keine Zeit; schreib sie wie 2026-12-01T18:00 oder "free"
day-missing = den { $day } gibt es in { $zone } nicht
nothing-to-print = die Woche ist leer; mit `import --queue` kommen Stellungen hinein
no-store-at = in { $file } ist kein Speicher; nenne den der Gruppe mit --store, oder leg mit `sealed-move serve` oder `sealed-move import` einen an
no-store-to-copy = in { $file } ist kein Speicher; nenne ihn mit --store
store-is-newer = den Speicher { $file } hat ein neueres Sealed Move geschrieben (Version { $found }, dieses Programm kennt die Versionen bis { $known }); starte das neuere Programm, oder stell eine Sicherung wieder her, die dieses gemacht hat
not-a-store = { $file } ist kein Speicher von Sealed Move ({ $why }); gib den Pfad eines Speichers an, oder einer Datei, die es noch nicht gibt
store-read-only = der Speicher { $file } ist nicht zu beschreiben ({ $why }); mach Datei und Ordner für diesen Benutzer beschreibbar, oder wähle einen anderen Pfad
store-not-opened = der Speicher { $file } ist nicht zu öffnen ({ $why }); sieh nach, ob es den Ordner gibt und ob er benutzt werden darf
store-disk-full = die Platte mit dem Speicher { $file } ist voll; mach Platz und versuch es noch einmal, was schon gespeichert ist, geht nicht verloren
store-busy = ein anderes Programm benutzt den Speicher { $file }; warte, bis es fertig ist, oder beende es, und versuch es noch einmal
file-exists = { $file } gibt es schon; verschieb die Datei, oder erlaube mit --force, dass sie überschrieben wird
store-damaged = im Speicher steht ein Wert, der nicht zu lesen ist: { $what }; stell eine Sicherung wieder her
store-stopped = der Speicher arbeitet nicht mehr; starte das Programm neu, was schon gespeichert ist, geht nicht verloren
tables-unreadable = die Endspieltabellen in { $folder } sind nicht zu lesen: { $why }
no-tables = in { $folder } sind keine Endspieltabellen; Syzygy-Tabellen sind Dateien wie KRPvKR.rtbw
no-group-yet = im Speicher ist noch keine Gruppe; starte `sealed-move serve`, oder stell mit `sealed-move import` Stellungen hinein
several-groups = es gibt mehrere Gruppen; nenne eine mit --group: { $groups }
no-such-group = eine Gruppe „{ $wanted }“ gibt es nicht; es gibt: { $groups }
several-of-that-name = mehrere Gruppen heißen „{ $wanted }“; gib stattdessen den Kanal an: { $groups }
no-coach-yet = die Gruppe hat keinen Trainer; benenne zuerst in ihrem Chat einen
no-folder-for-demo = für den Speicher der Vorführung war kein Ordner anzulegen; nenne einen mit --store
demo-store-there = { $file } gibt es schon; die Vorführung füllt einen neuen Speicher, also nimm einen anderen Namen, oder starte `serve` mit diesem
nothing-to-run = Es gibt keinen Chat, der laufen könnte. { $why }
no-chat-left = kein Chat ist mehr übrig; was jeder von ihnen braucht, steht oben
threads-not-started = das Programm konnte seine Threads nicht starten; schließ andere Programme und versuch es noch einmal
stop-signal-unheard = das Signal zum Beenden ließ sich nicht empfangen
ctrl-c-unheard = Strg-C ließ sich nicht empfangen

## Was an den Argumenten eines Aufrufs nicht stimmt

unknown-argument = ein Argument „{ $argument }“ gibt es hier nicht
argument-missing = es fehlt: { $arguments }
unknown-command = einen Befehl „{ $command }“ gibt es nicht
no-command-given = „{ $command }“ braucht einen Befehl: { $commands }
argument-twice = „{ $argument }“ darf nur einmal vorkommen
argument-conflict = „{ $argument }“ verträgt sich nicht mit: { $others }
value-missing = „{ $argument }“ braucht einen Wert
value-not-offered = „{ $value }“ ist kein Wert für „{ $argument }“; wähle einen von { $values }
value-unfit = „{ $value }“ geht nicht für „{ $argument }“: { $detail }
not-a-number = schreib eine Zahl
not-a-day = schreib einen Tag, etwa 2027-01-04
not-readable = das ist nicht zu lesen
not-between = schreib eine ganze Zahl von { $least } bis { $most }
not-two-squares = schreib zwei Felder, etwa d1d8
not-a-square = schreib ein Feld, etwa h7
not-a-language = diese Sprache kann das Programm nicht lesen; wähle { $languages }
perhaps-meant = Meintest du „{ $name }“?
after-two-dashes = Damit „{ $argument }“ ein Wert ist, schreib „-- { $argument }“.
usage-is = Aufruf: { $usage }
help-says-more = Mehr sagt „--help“.

## Was eine Option bietet

usual-value = [Vorgabe: { $value }]
environment-name = [Umgebungsvariable: { $name }]
one-of-values = [Werte: { $values }]
option-value = { $name } ({ $meaning })
