# Die Seite des Trainers im Vereinsraum. $number ist die Nummer einer Aufgabe, $at ein Zeitpunkt (eine Uhrzeit,
# davor der Tag, wenn es nicht heute ist); $name, $names, $topic, $group, $source, $id und $why sind von
# Menschen geschrieben. $task ist ein Zeichen wie #2.

## Um alles herum

coaching-title = Trainerseite
coaching-heading = { $group }: Training
coaching-window = Training: { $group }
coaching-skip = Zur Seite springen
coaching-parts = Teile der Trainerseite
coaching-nav-week = Woche
coaching-nav-check = Prüfen
coaching-nav-summary = Auswertung
coaching-nav-room = Mitgliederseite
coaching-posts = Aufgaben
coaching-members = Mitglieder
coaching-settings = Einstellungen
coaching-no-script = Diese Seite braucht JavaScript. Erlaube es für diese Adresse und lade die Seite dann neu.
coaching-broken-line = Die Verbindung ist unterbrochen und wird von selbst wieder aufgenommen.
coaching-notes = Nachrichten vom Bot
coaching-earlier-notes = Frühere Nachrichten vom Bot
coaching-about = { $label }: { $id }
coaching-about-item = { $label }: { $item }
coaching-item = { $task } aus { $source }
coaching-item-written = { $kind ->
    [question] Frage: { $words }
   *[words] Mitteilung: { $words }
}

## Hereinkommen

coaching-who = Wer trainiert hier?
coaching-your-name = Dein Name
coaching-go-on = Weiter
coaching-who-what = Die Gruppe sieht ihn neben deinen Worten, mit dem Zeichen { $mark }. Er hält auch mehrere Trainer auseinander: Was jeder von euch tut, wird mit diesem Namen festgehalten. Danach wird in jedem Browser einmal gefragt.
coaching-here-already = Ich trainiere hier schon, auf einem anderen Gerät
coaching-code-what = Öffne auf dem anderen Gerät die Mitgliederseite, dort „Meine Arbeit“, und drück auf „Noch ein Gerät benutzen“.
coaching-you-are = Du bist hier { $name }. Drück auf „Weiter“, um unter diesem Namen zu trainieren.

## Wie es um die Chats steht

coaching-chats = Chats
coaching-chat-starting = { $name } wird gestartet.
coaching-chat-up = { $name } ist verbunden, seit { $since }.
coaching-chat-wavering = { $name } ist nicht verbunden, seit { $since }: { $why } Die Verbindung wird von selbst neu aufgebaut.
coaching-chat-failing = { $name } ist nicht verbunden, seit { $since }: { $why } Der nächste Versuch: { $next }.
coaching-chat-refused = { $name } ist nicht verbunden, seit { $since }: { $why }
coaching-chat-stopped = { $name } ist angehalten.

## Die Woche

coaching-week = Die Woche
coaching-open = Nr. { $number } ist offen.
coaching-open-topic = Nr. { $number } ist offen: { $topic }.
coaching-it-closes = Antworten bis { $at } ({ $until }).
coaching-read-replies = Antworten lesen
coaching-close-now = Jetzt mit Auflösung schließen
coaching-close-sure = Nr. { $number } jetzt schließen? Alle sehen dann die Lösung, und Antworten werden nicht mehr angenommen.
coaching-close = Mit Auflösung schließen
coaching-leave-open = Offen lassen
coaching-closing = Nr. { $number } wird geschlossen; die Auflösung geht jetzt hinaus.
coaching-paused-until = Pause bis { $at }: Solange geht keine Aufgabe hinaus.
coaching-paused = Pause, bis du weitermachst: Solange geht keine Aufgabe hinaus.
coaching-resume = Weitermachen
coaching-resumed = Es gehen wieder Aufgaben hinaus.
coaching-pause-posting = Pause machen
coaching-pause-until = Bis zum Morgen des (leer: bis du weitermachst)
coaching-pause = Pause
coaching-pause-done = Es gehen vorerst keine Aufgaben hinaus.
coaching-nothing-waits = Nichts wartet. Ist eine Aufgabe fällig und die Woche leer, sagt der Bot dir Bescheid; Ungeprüftes stellt er nie.
coaching-check-for-week = Stellungen für die Woche prüfen
coaching-no-time = { $why ->
    [not-sound] kein Termin: nicht als korrekt befunden
    [paused] kein Termin: es ist Pause
    [no-days] kein Termin: der Kalender hat keine Tage
   *[waits] kein Termin: worauf es wartet, hat auch keinen
}
coaching-waits-for-post = Es würde etwas verraten und wartet auf die Auflösung von Nr. { $number }.
coaching-waits-for-item = Es würde etwas verraten und wartet auf die Auflösung von { $item }.
coaching-step-of = Schritt { $step } von { $steps } der Lektion „{ $title }“
coaching-due-fixed = { $at }, fest
coaching-also = auch { $topics }
coaching-again-as = noch einmal: schon gestellt als Nr. { $number }
coaching-difficulty = Schwierigkeit { $level } von 10
coaching-topic-not-verified = Thema nicht bestätigt
coaching-sound = { $verdict ->
    [sound] korrekt
    [several-keys] mehr als ein Schlüsselzug
    [short] ein kürzeres Matt ist möglich
    [unsound] unlösbar
    [illegal] nicht zu gebrauchen
   *[undecided] in der erlaubten Zeit nicht entschieden
}
coaching-diagram-of = Diagramm von { $fen }
coaching-drag = An eine andere Stelle ziehen
coaching-no-topic = Kein Thema
coaching-topic-of = Thema von { $item }
coaching-topic-set = Das Thema ist jetzt: { $topic }.
coaching-topic-gone = Das Thema ist weg.
coaching-earlier = Früher
coaching-later = Später
coaching-moved-of = Auf Platz { $place } von { $count } der Woche verschoben.
coaching-stays-at = Es bleibt auf Platz { $place } von { $count } der Woche.
coaching-post-now = Jetzt stellen
coaching-post-now-sure = { $item } jetzt stellen, vor der Zeit?
coaching-post-it-now = Jetzt stellen
coaching-wait = Warten
coaching-goes-out = Sie erscheint jetzt.
coaching-take-out = Herausnehmen
coaching-take-out-of-week = Aus der Woche nehmen
coaching-taken-out = Aus der Woche genommen; sie liegt wieder im Vorrat.
coaching-taken-away = Aus der Woche genommen.
coaching-undo = Rückgängig
coaching-put-back = Zurücklegen
coaching-put-back-done = Es steht wieder an seinem Platz.
coaching-taken-at = Herausgenommen: { $at }
coaching-taken-out-list = Zuletzt herausgenommen ({ $count })
coaching-place-of = Platz von { $item } in der Woche
coaching-move-there = An diesen Platz
coaching-place-wanted = Ein Platz in der Woche ist eine Zahl von 1 bis { $count }.
coaching-day-and-time = Tag und Uhrzeit
coaching-time-of = Tag und Uhrzeit von { $item }, in { $zone }
coaching-in-zone = In der Zeitzone der Gruppe, { $zone }.
coaching-fix = Festlegen
coaching-fix-of = Uhrzeit von { $item } festlegen
coaching-fixed = Die Uhrzeit steht fest.
coaching-unfix = Dem Kalender überlassen
coaching-unfixed = Der Kalender entscheidet.
coaching-as-members = So werden die Mitglieder es sehen

## Prüfen

coaching-check = Stellungen prüfen
coaching-paste = EPD-, PGN- oder FEN-Zeilen einfügen oder eine Datei hierher ziehen
coaching-check-pasted = Eingefügtes prüfen
coaching-choose-file = Datei wählen
coaching-check-what = Bis 16 MB. Jede Stellung wird geprüft, bevor sie gestellt werden kann; wo ein Matt gefordert ist, durch vollständige Suche. Von hier geht nichts von selbst hinaus.
coaching-write = Eine Frage oder eine Mitteilung schreiben
coaching-write-words = Der Text, höchstens 1.000 Zeichen
coaching-write-fen = Eine Stellung daneben (FEN), wenn du magst
coaching-write-reveal = Bei einer Frage: deine eigenen Worte dazu, zu sehen, sobald sie geschlossen ist
coaching-queue-question = Als Frage in die Woche stellen
coaching-queue-words = Als Mitteilung in die Woche stellen
coaching-write-what = Eine Frage beantworten die Mitglieder mit ihren eigenen Worten, und du bewertest, was sie schreiben; sonst sieht es niemand, außer wer es schrieb, erlaubt es. Eine Mitteilung nimmt keine Antworten an.
coaching-question-waits = Die Frage wartet am Ende der Woche.
coaching-words-wait = Die Mitteilung wartet am Ende der Woche.
coaching-written-found = Fragen und Mitteilungen in der Datei: { $count }
coaching-with-position = Mit der Stellung { $fen }
coaching-waits-at-end = Wartet jetzt am Ende der Woche.
coaching-nothing-pasted = Noch ist nichts eingefügt.
coaching-pasted = eingefügt
coaching-file-too-large = { $name } ist größer als 16 MB. Teile die Datei und prüf die Teile einzeln.
coaching-reading = { $name } wird gelesen …
coaching-positions-checked = Geprüfte Stellungen
coaching-checked-of = { $count ->
    [one] { $done } von { $count } Stellung geprüft
   *[other] { $done } von { $count } Stellungen geprüft
}
coaching-checked = { $count ->
    [one] { $count } Stellung geprüft, { $sound } korrekt
   *[other] { $count } Stellungen geprüft, { $sound } korrekt
}
coaching-left-out = { $count ->
    [one] { $count } schon gestellte Stellung ist ausgelassen: siehe unten.
   *[other] { $count } schon gestellte Stellungen sind ausgelassen: siehe unten.
}
coaching-add-sound = { $count ->
    [one] Die korrekte in die Woche stellen
   *[other] Die { $count } korrekten in die Woche stellen
}
coaching-shelf = Im Vorrat: früher geprüft, in keiner Woche ({ $count })
coaching-more = { $count } weitere zeigen
coaching-outcome = { $id }: { $found }
coaching-keys = { $count ->
    [one] Schlüsselzug: { $keys }
   *[other] Schlüsselzüge: { $keys }
}
coaching-variations = Varianten ({ $count })
coaching-tries = Verführungen und ihre Widerlegungen ({ $count })
coaching-note = Hinweis: { $text }
coaching-proved = Durch vollständige Suche bewiesen.
coaching-judged-at = In Suchtiefe { $depth } beurteilt.
coaching-level = Schwierigkeit etwa { $level } von 10.
coaching-keep-old = Die alte behalten
coaching-take-new = Die neue nehmen
coaching-keep-both = Beide Themen behalten
coaching-posted-before = Schon gestellt: Nr. { $number }, { $at }.
coaching-words-with-post = Deine Worte zur Aufgabe
coaching-words-at-reveal = Deine Worte zur Auflösung
coaching-change-words = Worte ändern
coaching-with-post = Zur Aufgabe
coaching-at-reveal = Zur Auflösung
coaching-words-anyway = Die Worte zur Aufgabe auch dann senden, wenn sie einen Zug der Stellung verraten
coaching-keep-words = Diese Worte behalten
coaching-words-kept = Diese Worte sind behalten.
coaching-in-week = In der Woche.
coaching-see-week = Zur Woche
coaching-enqueue = In die Woche stellen
coaching-enqueue-again = Noch einmal in die Woche stellen
coaching-post-anyway = Trotzdem stellen
coaching-post-anyway-again = Trotzdem und noch einmal stellen

## Aufgaben und Antworten

coaching-nothing-posted = Noch ist nichts gestellt.
coaching-open-until = offen bis { $at }
coaching-posted-at = gestellt: { $at }
coaching-waiting = Wartet auf dein Wort ({ $count })
coaching-replies = { $count ->
    [one] { $count } Antwort
   *[other] { $count } Antworten
}
# Answers to a question, by the first move found in each. $waiting: how many have no mark.
coaching-answers-by-move = { $count ->
    [one] { $count } Antwort, nach ihrem ersten Zug. Ohne deine Bewertung: { $waiting }.
   *[other] { $count } Antworten, gruppiert nach dem ersten Zug. Ohne deine Bewertung: { $waiting }.
}
coaching-begins-move = { $move } ({ $count }, unbewertet: { $waiting })
coaching-begins-none = Kein Zug ({ $count }, unbewertet: { $waiting })
coaching-begins-replaced = Seither neu beantwortet ({ $count })
coaching-points-of = { $points } von 5
coaching-by-coach = vom Trainer
coaching-answered-privately = unter vier Augen beantwortet
coaching-needs-no-answer = braucht keine Antwort
coaching-told = Was dem Mitglied gesagt wurde
coaching-private-answer = Die Antwort unter vier Augen
coaching-overrule-more = Anders urteilen …
coaching-judge-more = Beurteilen …
coaching-overrule = Anders urteilen
coaching-judge = Beurteilen
coaching-verdict-on = Urteil über die Antwort von { $name }
coaching-points-for = Punkte für die Antwort von { $name }
coaching-points-range = Punkte gibt es von 0 bis 5.
coaching-word-to = Ein Wort an { $name }
coaching-word-placeholder = Ein Wort dazu (oder leer)
coaching-answer-privately = Unter vier Augen antworten …
coaching-answer-again = Noch einmal antworten …
coaching-answer-to = Eine Antwort unter vier Augen an { $name }
coaching-only-reads = Das liest nur { $name }
coaching-send-answer = Antwort senden
coaching-no-answer = Keine Antwort nötig
coaching-points-for-answer = Punkte für die Antwort von { $name }
coaching-mark-more = Bewerten …
coaching-mark-again = Neu bewerten …
coaching-mark = Bewerten
# Showing an answer to the group, with its writer's leave.
coaching-show-more = Als Beispiel zeigen …
coaching-show-what = Wer sie schrieb, wird zuerst gefragt und kann den Namen weglassen oder nein sagen. Gezeigt wird sie nur mit Erlaubnis und erst nach der Auflösung.
coaching-ask-leave = Um Erlaubnis fragen
coaching-no-longer-show = Doch nicht zeigen
coaching-beside = Deine Worte zur Antwort von { $name }
coaching-beside-placeholder = Deine Worte dazu (dürfen fehlen)
coaching-beside-change = Worte ändern
coaching-leave = { $leave ->
    [none] Soll gezeigt werden: noch ohne Erlaubnis
    [named] Wird mit Namen gezeigt
    [nameless] Wird ohne Namen gezeigt
   *[refused] Wer sie schrieb, möchte sie nicht zeigen lassen
}

## Die Auswertung

coaching-summary = Auswertung der Beteiligung
coaching-from = Von
coaching-to = Bis einschließlich
coaching-show = Zeigen
coaching-took-part = { $members ->
    [one] { $posts ->
        [one] { $members } Mitglied hat bei { $posts } Aufgabe mitgemacht.
       *[other] { $members } Mitglied hat bei { $posts } Aufgaben mitgemacht.
    }
   *[other] { $posts ->
        [one] { $members } Mitglieder haben bei { $posts } Aufgabe mitgemacht.
       *[other] { $members } Mitglieder haben bei { $posts } Aufgaben mitgemacht.
    }
}
coaching-kinds = { $problems ->
    [one] { $questions ->
        [one] { $problems } Stellung und { $questions } Frage. Lösungsquoten gelten nur für Stellungen.
       *[other] { $problems } Stellung und { $questions } Fragen. Lösungsquoten gelten nur für Stellungen.
    }
   *[other] { $questions ->
        [one] { $problems } Stellungen und { $questions } Frage. Lösungsquoten gelten nur für Stellungen.
       *[other] { $problems } Stellungen und { $questions } Fragen. Lösungsquoten gelten nur für Stellungen.
    }
}
coaching-went-quiet = Still geworden: { $names }.
coaching-nobody-quiet = Niemand ist still geworden.
coaching-came-back = Wieder dabei: { $names }.
coaching-take-away = Zum Mitnehmen:
coaching-csv = { $table ->
    [members] Mitglieder (CSV)
    [posts] Aufgaben (CSV)
   *[topics] Themen (CSV)
}
coaching-json = alles (JSON)
coaching-number = Nr.
coaching-hints = Tipps
coaching-common-wrong = Häufigste falsche Züge
coaching-weakest-first = Themen, das schwächste zuerst
coaching-chart-in-words = Das Diagramm in Worten

## Gespräch

coaching-say-as = Ein Wort an die Gruppe, als { $name } { $mark }
coaching-hide = Verbergen
coaching-hide-of = Die Nachricht von { $name } verbergen
coaching-hide-answer-of = Die Antwort von { $name } verbergen
coaching-hide-sure = Diese Nachricht von { $name } verbergen? Sie verschwindet sofort für alle. Trainer können sie noch lesen und sehen, wer sie wann verborgen hat, und sie wieder zeigen.
coaching-hide-it = Verbergen
coaching-show-again = Wieder zeigen

## Mitglieder

coaching-members-what = Alle, die hier einen Namen angegeben haben. Niemand kann einen Namen nehmen, der wie der eines anderen aussieht.
coaching-answers = { $count ->
    [one] { $count } Antwort
   *[other] { $count } Antworten
}
coaching-devices = { $count } Geräte
coaching-removed = Aus der Gruppe genommen
coaching-muted = Stummgeschaltet
coaching-muted-until = Stummgeschaltet bis { $at }
coaching-let-back = Wieder hereinlassen
coaching-remove = Aus der Gruppe nehmen
coaching-remove-sure = { $name } aus der Gruppe nehmen? Alle offenen Seiten schließen sich sofort, und unter diesem Namen führt kein Weg zurück. Das Geschriebene bleibt. Wer den Mitgliederlink hat, kann als jemand Neues wieder hereinkommen: Mach unter „Einstellungen“ auch einen neuen Link, wenn das nicht sein soll.
coaching-remove-yes = Aus der Gruppe nehmen
coaching-take-kept = Gespeichertes mitnehmen (JSON)
coaching-erase = Löschen
coaching-erase-sure = Alles von { $name } löschen, auf eigenen Wunsch? Name, Antworten, Punkte und Nachrichten sind dann für immer weg.
coaching-erase-removed-sure = Alles von { $name } löschen, auf eigenen Wunsch? Name, Antworten, Punkte und Nachrichten sind dann für immer weg. Danach ist nichts mehr da, woran die Person zu erkennen wäre, also ist sie nicht länger ausgeschlossen: Mach einen neuen Link, wenn sie nicht zurückkommen soll.
coaching-is-coach = Ein Trainer. Um einen Trainer auszuschließen, mach unter „Einstellungen“ einen neuen Trainerlink; danach ist er ein Mitglied wie jedes andere.
coaching-rename = Umbenennen
coaching-may-not-talk = { $name } kann antworten, aber nicht an die Gruppe schreiben.
coaching-muted-why = Der Grund: { $why }.
coaching-unmute = Wieder schreiben lassen
coaching-no-talk = Kein Gespräch
coaching-for-an-hour = Eine Stunde lang
coaching-for-a-day = Einen Tag lang
coaching-for-a-week = Eine Woche lang
coaching-until-lifted = Bis ich es aufhebe
coaching-mute-why = Grund, den das Mitglied liest
coaching-may-be-empty = Darf leer sein
coaching-mute = Stummschalten
coaching-is-also = { $name } ist auch
coaching-nobody-else = Niemand sonst
coaching-merge = Zu einer Person machen
coaching-merge-sure = { $other } und { $name } zu einer Person machen, die { $name } heißt? Antworten, Tipps, Punkte und Nachrichten beider gehören dann einer Person. Wo beide dieselbe Stellung versucht haben, zählen ihre Antworten in der Reihenfolge, in der sie kamen. Das lässt sich nicht rückgängig machen.
coaching-deeds = Was die Trainer getan haben
coaching-deed = { $deed ->
    [hide] { $by } hat eine Nachricht verborgen: { $about }
    [put-back] { $by } hat eine Nachricht wieder gezeigt: { $about }
    [mute] { $by } hat stummgeschaltet: { $about }
    [unmute] { $by } lässt wieder schreiben: { $about }
    [remove] { $by } hat aus der Gruppe genommen: { $about }
    [let-back] { $by } hat wieder hereingelassen: { $about }
    [rename] { $by } hat umbenannt: { $about }
    [merge] { $by } hat zwei Mitglieder zu einem gemacht: { $about }
    [export] { $by } hat das Gespeicherte mitgenommen: { $about }
    [erase] { $by } hat ein Mitglied gelöscht
    [judge] { $by } hat eine Antwort beurteilt: { $about }
    [answer] { $by } hat unter vier Augen geantwortet: { $about }
    [no-answer] { $by } hat vermerkt, dass keine Antwort nötig ist: { $about }
    [member-link] { $by } hat einen neuen Mitgliederlink gemacht
    [coach-link] { $by } hat einen neuen Trainerlink gemacht
    [coach-came] { $by } ist mit dem Trainerlink hereingekommen
    [add-coach] { $by } hat zum Trainer gemacht: { $about }
    [remove-coach] { $by } hat den Trainerrang genommen: { $about }
    [settings] { $by } hat die Einstellungen geändert
    [post-now] { $by } hat sofort gestellt
    [close-now] { $by } hat vorzeitig geschlossen
    [pause] { $by } hat eine Pause eingelegt
    [resume] { $by } hat die Pause beendet
    [write-card] { $by } hat eine Themenkarte geschrieben
    [take-back-card] { $by } hat eine Themenkarte zurückgenommen
   *[other] { $by } hat etwas anderes getan
}
coaching-erased-coach = Ein gelöschter Trainer
coaching-erased-member = ein gelöschtes Mitglied

## Einstellungen

coaching-group-name = Name der Gruppe
coaching-zone = Zeitzone (IANA-Name wie Europe/Lisbon)
coaching-no-zone = „{ $zone }“ steht nicht in der IANA-Liste der Zeitzonen; wähle eine der angebotenen, etwa Europe/Lisbon.
coaching-post-time = Aufgaben gehen hinaus um
coaching-post-time-nth = { $place }. Uhrzeit des Tages
coaching-post-time-more = Noch eine Uhrzeit
coaching-post-time-less = Diese Uhrzeit weglassen
coaching-post-times-what = Bei mehreren Uhrzeiten am Tag überschneiden sich Aufgaben, wenn die nächste vor der Auflösung hinausgeht.
coaching-days = An diesen Tagen
coaching-open-hours = Stunden von der Aufgabe bis zur Auflösung
coaching-answers-are = Antworten
coaching-mode = { $mode ->
    [sealed] Versiegelt: nur Mitglied und Trainer sehen vorab die Antwort
   *[open] Offen: die Gruppe sieht die Antworten, hinter einer Spoilermarke
}
coaching-letters = Figurenbuchstaben, die zuerst gelesen werden
coaching-look = Aussehen der Diagramme
coaching-style = { $style ->
    [print] Gedruckte Seite
    [light] Ruhiger Farbton, hell
    [dark] Ruhiger Farbton, dunkel
   *[contrast] Hoher Kontrast
}
coaching-points = Punkte (5 für eine Stellung; eine gestellte behält ihre Preise)
coaching-scale = { $scale ->
    [club] Verein: Fehlversuche und Tipps kosten ein wenig
   *[tournament] Turnier: nichts nach einem falschen ersten Zug
}
coaching-wrong-cost = Punktabzug für jeden falschen ersten Zug, nach der Vereinswertung
coaching-hint-cost = Punktabzug für jeden Tipp
coaching-least = Nach der Vereinswertung behält mindestens 1 Punkt, wer eine Stellung löst, ohne dass der Zug gezeigt wurde.
coaching-defences-are = Verteidigungen, wenn eine Variante ausgespielt wird
coaching-defences = { $defences ->
    [same] Alle Mitglieder bekommen dieselbe Verteidigung
   *[differ] Von gleich langen Verteidigungen bekommen Mitglieder verschiedene
}
coaching-save = Einstellungen speichern
coaching-saved = Gespeichert. Die Zeiten der Woche richten sich danach.
coaching-own-language = Deine eigene Sprache
coaching-member-link = Der Link für Mitglieder
coaching-member-link-what = Wer ihn hat, kann hereinkommen. Gib ihn nur deiner Gruppe, nicht auf einer öffentlichen Seite.
coaching-copy = Kopieren
coaching-copied = Kopiert.
coaching-new-link = Neuen Link machen
coaching-new-link-sure = Einen neuen Link machen? Der alte gilt sofort nicht mehr. Jedes Mitglied erfährt es auf der offenen Seite und muss mit dem neuen hereinkommen.
coaching-new-link-made = Der alte Link gilt nicht mehr. Schick diesen deinen Mitgliedern.
coaching-coach-link = Der Trainerlink
coaching-coach-link-what = Wer ihn hat, ist hier Trainer. Der Bot gibt ihn beim Start aus. Mach einen neuen, wenn der alte in falsche Hände geraten sein kann oder jemand nicht mehr trainiert: Er gilt dann für niemanden mehr außer dir, und wer Trainer bleiben soll, kommt mit dem neuen herein.
coaching-new-coach-link = Neuen Trainerlink machen
coaching-new-coach-link-is = Der neue Trainerlink
coaching-new-coach-link-sure = Einen neuen Trainerlink machen? Der alte gilt sofort nicht mehr. Jeder andere Trainer erfährt es auf der offenen Seite und ist erst mit dem neuen wieder Trainer. Du bleibst drin.
coaching-new-coach-link-made = Der alte Link gilt nicht mehr. Bewahr diesen gut auf und gib ihn nur anderen Trainern.

## Lektionen

coaching-lessons = Lektionen
coaching-lesson-paste = Eine Lektion als PGN, eine Partie für jeden Schritt
coaching-lesson-title = Titel, statt dessen, den die Datei nennt
coaching-lesson-take-in = Lektion aufnehmen
coaching-lesson-what = Worte vor dem ersten Zug eröffnen den Schritt. Nach einem Zug, dessen Kommentar mit [stop] beginnt, wird gefragt; [stop #2] sagt, was gefordert ist. Züge ohne Stopp sind ein Beispiel, ohne Züge sind es Worte mit einem Bild, und Worte, die mit einem Fragezeichen enden, sind eine offene Frage.
coaching-no-lessons = Noch gibt es keine Lektionen.
coaching-lesson-kept = { $broken ->
    [0] „{ $title }“ ist gespeichert. Sieh sie durch, dann stell sie in die Woche.
    [one] „{ $title }“ ist gespeichert, ohne den Schritt, der sich nicht lesen ließ; er steht unten, mit dem, was nicht stimmt.
   *[other] „{ $title }“ ist gespeichert, ohne die { $broken } Schritte, die sich nicht lesen ließen; sie stehen unten, mit dem, was nicht stimmt.
}
coaching-lesson-not-kept = Nichts ist gespeichert, denn kein Schritt ließ sich lesen; was nicht stimmt, steht unten.
coaching-lesson-count = Schritte: { $steps }. Teile: { $parts }, davon { $waiting } in der Woche und { $posted } schon gestellt.
coaching-lesson-look = Ansehen
coaching-lesson-out = Als PGN sichern
coaching-lesson-remove = Entfernen
coaching-lesson-remove-sure = „{ $title }“ entfernen? Was davon in der Woche wartet, wird herausgenommen. Ihre Stellungen bleiben bei den geprüften, und was schon gestellt war, bleibt auch.
coaching-lesson-remove-it = Lektion entfernen
coaching-lesson-removed = „{ $title }“ ist entfernt.
coaching-lesson-plan-what = Was die Lösung eines früheren Schritts verraten würde, wartet, bis der aufgelöst ist.
coaching-lesson-anyway = auch Stopps, die nicht in Ordnung sind
coaching-lesson-again = auch, was schon dran war
coaching-lesson-in-order = Der Reihe nach in die Woche
coaching-lesson-from = Alles auf einmal, ab
coaching-lesson-at-once = Auf einmal in die Woche
coaching-lesson-by-dates = Nach Terminen
coaching-lesson-put-dates = Die Schritte auf diese Termine legen
coaching-lesson-dates-wanted = Trag für mindestens einen Schritt Tag und Uhrzeit ein; die anderen kommen in freie Termine.
coaching-lesson-when-wanted = Wähl den Zeitpunkt, ab dem sie drankommt.
coaching-lesson-planned = { $left ->
    [0] „{ $title }“ steht in der Woche. Teile: { $count }.
   *[other] „{ $title }“ steht in der Woche. Teile: { $count }; weggelassen, weil schon gestellt: { $left }.
}
coaching-lesson-step = Schritt { $step }
coaching-lesson-step-contrast = Schritt { $step }, wo das Thema nicht aufgehen soll
coaching-lesson-waits = { $count ->
    [one] Er wartet auf die Auflösung von Schritt { $steps }, dessen Lösung er verraten würde.
   *[other] Er wartet auf die Auflösungen der Schritte { $steps }, deren Lösungen er verraten würde.
}
coaching-lesson-part-kept = Gespeichert, nicht in der Woche.
coaching-lesson-part-not-kept = Nicht gespeichert: eine Forderung fehlt, und es fand sich keine; schreib sie dazu, etwa [stop #2].
coaching-lesson-part-as-before = Dieselbe Stellung wie in Schritt { $step }; sie kommt einmal dran.
coaching-lesson-part-waits = In der Woche.
coaching-lesson-part-open = Gestellt als Nr. { $number }, noch offen.
coaching-lesson-part-closed = Gestellt als Nr. { $number } und geschlossen.

## Themenkarten

coaching-card-tells = Mitglieder sehen sie zurzeit nicht: Sie würde etwas von der offenen Stellung { $numbers } verraten.
coaching-card-tells-copy = Mitglieder sehen vorerst die Karte des Programms: Deine würde etwas von der offenen Stellung { $numbers } verraten.
coaching-card-own = deine eigene
coaching-card-edit = Für die Gruppe bearbeiten
coaching-card-edit-what = Was du speicherst, steht für diese Gruppe an der Stelle der Worte des Programms, in der Sprache, in der du schreibst. Ohne Stellung behält die Karte das Beispiel des Programms.
coaching-card-new = Eine Karte zu einem eigenen Thema schreiben
coaching-card-new-what = Heißt ein Thema wie ein Mattbild, so ändert das dessen Karte.
coaching-card-definition = Was es ist
coaching-card-look = Worauf zu achten ist (kann fehlen)
coaching-card-fen = Beispiel als FEN (kann fehlen)
coaching-card-moves = Seine Züge, etwa 1.Td8+ Txd8 2.Txd8#
coaching-card-save = Karte speichern
coaching-card-saved = Die Karte ist gespeichert.
coaching-card-queue = In die Woche stellen
coaching-card-queued = Sie wartet am Ende der Woche, als Worte mit der Stellung des Beispiels.
coaching-card-take-back = Meine Karte zurücknehmen
coaching-card-take-back-sure = Deine Karte zurücknehmen? Was du darauf geschrieben hast, ist dann weg.
coaching-card-taken-back = Deine Karte ist zurückgenommen.
