# Auf Discord: was ein Trainer über Stellungen erfährt.

## Eine Datei prüfen

checking = Prüfung: { $done } von { $of } Stellungen fertig …
put-into-week = { $number } in die Woche gestellt; siehe /{ command-coach } { command-coach-week }.
written-in-file = Fragen und Mitteilungen darin: { $number }. Mit { command-coach-check.option-put-into-week } kommen sie in die Woche.
left-out = Ausgelassen, weil schon gestellt: { $number }; auf ihren Seiten unten kannst du sie noch einmal stellen.
file-too-large = { $name } ist größer als { $most } MB; teil die Datei auf und schick die Teile.
file-elsewhere = { $name } liegt nicht dort, wo Discord Anhänge aufbewahrt.
file-unreachable = { $name } ließ sich nicht abholen; bitte häng die Datei noch einmal an.
report-gone = Der Bericht ist nicht mehr da.
report-put-away = Dieser Bericht ist weggeräumt; die Stellungen sind gespeichert. Nimm /{ command-coach } { command-coach-shelf } oder prüf die Datei noch einmal.
report-unchanged = Dieser Bericht ist weggeräumt; geändert wurde nichts. Prüf die Datei noch einmal und wähl dann.

## Der Bericht

no-position-in-file = In der Datei war keine Stellung.
report-head = **{ $at } von { $of }** · { $name }
one-sound = Eine Stellung, und sie ist korrekt.
one-useless = Hier ist nichts so zu gebrauchen, wie es ist.
one-doubtful = Eine Stellung, und du solltest sie dir ansehen.
all-sound = { $all } Stellungen, alle korrekt.
some-sound = { $all } Stellungen, davon { $sound } korrekt.
soundness-word = { $soundness ->
    [sound] korrekt
    [several-keys] mehr als ein Schlüsselzug
    [short] kürzeres Matt
    [unsound] unlösbar
    [illegal] nicht zu gebrauchen
   *[undecided] in der erlaubten Zeit nicht entschieden
}
proved = { $verdict } (bewiesen)
judged-by-search = { $verdict } (nach einer Suche von { $depth } Halbzügen)
no-topic = kein Thema
topic-is = Thema: { $topic }
topic-also = { $topic }, auch { $further }
topics-are = Thema: { $topic }, auch { $further }
key-is = Schlüsselzug: **{ $key }**
keys-are = Schlüsselzüge: **{ $keys }**
variations-are = Varianten:
tries-are = Verführungen:
in-the-week = Sie steht in der Woche.
warned-of = ⚠ Hinweis: { $note }
posted-before = ⚠ Schon gestellt, als Nr. { $number }: { $at }.
with-the-post = Zur Aufgabe:
at-the-reveal = Zur Auflösung:
beside-the-moves = Neben den Zügen, bei der Auflösung:

## Der Vorrat und die Woche

shelf-empty = Der Vorrat ist leer. Häng eine Datei an /{ command-coach } { command-coach-check } an.
topic-set = Das Thema ist jetzt „{ $topic }“.
topic-taken = Ein Thema gibt es jetzt nicht mehr.
paused-until = **Pause** bis { $until }.
paused-for-now = **Pause**, bis du sie beendest.
nothing-waits = Nichts wartet. Häng eine Datei an /{ command-coach } { command-coach-check } an und stell die korrekten Stellungen in die Woche.
the-week = **Die Woche**
more-behind = … und { $more } weitere dahinter
no-time-yet = { $why ->
    [not-sound] kein Termin: nicht als korrekt befunden
    [paused] kein Termin: es ist Pause
    [no-days] kein Termin: der Kalender hat keine Tage
   *[waits] kein Termin: worauf es wartet, hat auch keinen
}
step-of = Schritt { $step } von { $steps } aus { $title }
waits-for-post = wartet auf die Auflösung von Nr. { $number }
waits-for-item = wartet auf die Auflösung von { $item }
kind-word = { $kind ->
    [problem] Stellung
    [question] Frage
   *[words] Mitteilung
}
fixed-at = { $at } (fest)
posted-again = noch einmal, schon als Nr. { $number } gestellt
topic-not-verified = Thema nicht bestätigt
waits-no-longer = Diese wartet nicht mehr.
taken-out-lately = Aus der Woche genommen: { $item }.
still-open = offen
words-kept = Diese Worte sind behalten.
edit-too-long = Mit Varianten und Worten hat die Stellung mehr als { $most } Zeichen, und mehr fasst ein Formular nicht. Bearbeite sie im Editor des Vereinsraums, oder prüf eine Datei mit der geänderten Stellung.
edit-kept = Gespeichert und neu geprüft.
goes-out-now = Sie erscheint jetzt.
closed-now = { $kind ->
    [problem] Sie ist geschlossen; die Lösung erscheint jetzt.
   *[other] Sie ist geschlossen; deine Worte und wer geantwortet hat erscheinen jetzt.
}
pick-position = Mehr als eine Stellung ist offen; wähl eine mit der Option { command-coach-close.option-position }.
paused-now = Pause bis { $until }. Eine offene Stellung bleibt offen.
paused-till-resumed = Pause, bis du sie mit /{ command-coach } { command-coach-resume } beendest. Eine offene Stellung bleibt offen.
resumed = Die Stellungen erscheinen wieder wie geplant.
moment-past = Dieser Zeitpunkt ist vorbei.
moment-left-out = Diesen Zeitpunkt überspringt die Zeitumstellung; nimm einen anderen.
no-date = „{ $written }“ kann ich nicht als Datum lesen; schreib es so: 2026-12-01 18:00.

## Antworten von Hand

no-answer-waits = Keine Antwort wartet auf dich.
answer-waits = { $kind ->
    [problem] **{ $at } von { $of } wartenden** · Stellung { $number } · { $when }
    [question] **{ $at } von { $of } wartenden** · Frage { $number } · { $when }
   *[words] **{ $at } von { $of } wartenden** · Mitteilung { $number } · { $when }
}
answer-to-post = { $kind ->
    [problem] **Antwort { $at } von { $of }** · Stellung { $number } · { $when }
    [question] **Antwort { $at } von { $of }** · Frage { $number } · { $when }
   *[words] **Antwort { $at } von { $of }** · Mitteilung { $number } · { $when }
}
no-answer-yet = { $kind ->
    [problem] Auf Stellung { $number } hat niemand geantwortet.
    [question] Auf Frage { $number } hat niemand geantwortet.
   *[words] Auf Mitteilung { $number } hat niemand geantwortet.
}
answer-judged = { $verdict ->
    [solved] Mein Urteil: gelöst; { $points-text } von 5 Punkten.
    [on-the-way] Mein Urteil: so weit richtig; { $points-text } von 5 Punkten.
    [wrong] Mein Urteil: nicht die Lösung; { $points-text } von 5 Punkten.
    [illegal] Mein Urteil: kein erlaubter Zug; { $points-text } von 5 Punkten.
    [unclear] Mein Urteil: noch nicht entschieden; { $points-text } von 5 Punkten.
   *[unreadable] Mein Urteil: nicht lesbar; { $points-text } von 5 Punkten.
}
answer-ruled = { $verdict ->
    [solved] Urteil eines Trainers: gelöst; { $points-text } von 5 Punkten.
    [on-the-way] Urteil eines Trainers: so weit richtig; { $points-text } von 5 Punkten.
    [wrong] Urteil eines Trainers: nicht die Lösung; { $points-text } von 5 Punkten.
    [illegal] Urteil eines Trainers: kein erlaubter Zug; { $points-text } von 5 Punkten.
    [unclear] Urteil eines Trainers: noch nicht entschieden; { $points-text } von 5 Punkten.
   *[unreadable] Urteil eines Trainers: nicht lesbar; { $points-text } von 5 Punkten.
}
answer-marked = Von einem Trainer bewertet: { $points-text } von 5 Punkten.
answer-undecided = Darüber ist noch nichts entschieden.
answer-needs-none = Ein Trainer hat notiert, dass sie keine Antwort braucht.
answered-in-private = Ein Trainer hat unter vier Augen geantwortet: „{ $words }“
is-said = Ich habe gesagt: { $said }
is-asked = -# Gefragt war: { $asked }
# Answers to a question, side by side. $begins: what they have in common, such as a move.
answers-by-move = { $answered ->
    [one] **Frage { $number }**: eine Antwort, nach ihrem ersten Zug. Ohne deine Bewertung: { $waiting }.
   *[other] **Frage { $number }**: { $answered } Antworten, gruppiert nach dem ersten Zug. Ohne deine Bewertung: { $waiting }.
}
answer-group = { $answers ->
    [one] - **{ $begins }**: eine Antwort, noch unbewertet: { $waiting }
   *[other] - **{ $begins }**: { $answers } Antworten, noch unbewertet: { $waiting }
}
answer-group-choice = { $begins } ({ $answers })
answer-group-pick = Die Antworten einer Gruppe lesen
answer-in-group = Gruppe: { $begins }
begins-no-move = kein Zug
begins-replaced = seither neu beantwortet
# $leave: none, named, nameless or refused.
example-is = { $leave ->
    [none] Du würdest sie der Gruppe zeigen; wer sie schrieb, hat noch nichts gesagt.
    [named] Sie wird der Gruppe mit dem Namen gezeigt.
    [nameless] Sie wird der Gruppe ohne den Namen gezeigt.
   *[refused] Wer sie schrieb, möchte sie nicht zeigen lassen.
}
example-beside = Deine Worte dazu: { $said }
# A title and a label of at most 45 characters.
form-show = Diese Antwort der Gruppe zeigen
form-show-words = Deine Worte dazu (dürfen fehlen)
no-points = „{ $written }“ ist keine Punktzahl; schreib eine von 0 bis 5, etwa 2,5.
form-private = Deine Antwort, nur für das Mitglied
form-private-words = Das liest nur das Mitglied
form-verdict = Dein Urteil
form-verdict-points = Punkte, 0 bis 5
form-verdict-words = Worte an das Mitglied, wenn du magst
form-mark = Deine Bewertung
form-words = Deine Worte zur Stellung
form-words-anyway = Deine Worte, trotzdem gesendet
form-with-post = Zur Aufgabe
form-at-reveal = Zur Auflösung
# A position written anew.
form-edit = Die Stellung bearbeiten
form-edit-text = Die Stellung, als PGN oder FEN
form-edit-task = Forderung: #2, +, = (oder leer)
form-question = Eine Frage an die Gruppe
form-question-words = Was fragst du?
form-question-reveal = Deine eigenen Worte dazu, zum Schluss
form-say = Eine Mitteilung an die Gruppe
form-say-words = Was soll die Gruppe lesen?
form-fen = Eine Stellung daneben (FEN)
form-topic = Thema

## Die Auswertung

who-took-part = **Wer mitgemacht hat**
who-took-part-since = **Wer mitgemacht hat, seit { $from }**
who-took-part-until = **Wer mitgemacht hat, bis { $to }**
who-took-part-between = **Wer mitgemacht hat, von { $from } bis { $to }**
nobody-did = Niemand.
member-tally = { $points ->
    [one] { $hints ->
        [one] { $name }: { $solved } von { $tried } gelöst, { $first } im ersten Versuch, { $points-text } Punkt, { $hints } Tipp
       *[other] { $name }: { $solved } von { $tried } gelöst, { $first } im ersten Versuch, { $points-text } Punkt, { $hints } Tipps
    }
   *[other] { $hints ->
        [one] { $name }: { $solved } von { $tried } gelöst, { $first } im ersten Versuch, { $points-text } Punkte, { $hints } Tipp
       *[other] { $name }: { $solved } von { $tried } gelöst, { $first } im ersten Versuch, { $points-text } Punkte, { $hints } Tipps
    }
}
member-asked = { $points ->
    [one] { $answered ->
        [one] { $name }: { $points-text } Punkt, { $answered } Frage beantwortet
       *[other] { $name }: { $points-text } Punkt, { $answered } Fragen beantwortet
    }
   *[other] { $answered ->
        [one] { $name }: { $points-text } Punkte, { $answered } Frage beantwortet
       *[other] { $name }: { $points-text } Punkte, { $answered } Fragen beantwortet
    }
}
went-quiet = Still geworden: { $names }
came-back = Wieder dabei: { $names }
summary-positions = **Aufgaben**
position-tally = Stellung { $number } ({ $topic }, { $task }): { $solved } von { $tried } gelöst
position-tally-missed = Stellung { $number } ({ $topic }, { $task }): { $solved } von { $tried } gelöst; am häufigsten verfehlt mit { $missed }
post-tally = { $kind ->
    [problem] Stellung { $number } ({ $topic })
    [question] Frage { $number } ({ $topic }): { $answered ->
        [one] { $answered } Antwort
       *[other] { $answered } Antworten
    }
   *[words] Mitteilung { $number } ({ $topic })
}
summary-topics = **Themen, das schwächste zuerst**
summary-advice = **Was als Nächstes dran ist**
export-here = Bitte sehr. Darin stehen Daten der Mitglieder, also behalt es für dich.

## In Menüs und Auswahllisten

week-pick = Wähl eine zum Verschieben, Ansehen, Stellen oder Herausnehmen
position-choice = Stellung { $number } · { $task }
post-choice = { $kind ->
    [problem] Stellung { $number }
    [question] Frage { $number }
   *[words] Mitteilung { $number }
}

## Knöpfe

button-keep-old = Die alte behalten
button-take-new = Die neue nehmen
button-keep-both = Beide Themen behalten
button-queue = In die Woche stellen
button-queue-again = Noch einmal in die Woche stellen
button-queue-anyway = Trotzdem stellen: in die Woche
button-queue-anyway-again = Trotzdem und noch einmal stellen: in die Woche
button-earlier = Früher
button-later = Später
button-look-at = Ansehen
button-post-now = Jetzt stellen
button-take-out = Herausnehmen
button-put-back = Zurücklegen
button-words = Worte …
button-edit = Bearbeiten …
button-words-again = Worte ändern …
button-words-anyway = Trotzdem senden …
button-right = Richtig …
button-not-right = Nicht richtig …
button-mark = Bewerten …
button-mark-again = Neu bewerten …
button-groups = Alle Gruppen
button-show = Als Beispiel zeigen …
button-no-longer-show = Doch nicht zeigen
button-overrule-right = Anders urteilen: richtig …
button-overrule-not-right = Anders urteilen: nicht richtig …
button-answer-privately = Unter vier Augen antworten …
button-no-answer = Keine Antwort nötig

## Lektionen

no-lessons-yet = Noch gibt es keine Lektionen; mit /lektion aufnehmen kommt eine aus einer PGN-Datei herein.
lesson-choice = { $title } ({ $steps })
lesson-row = **{ $title }**: Schritte { $steps }, Teile { $parts }, in der Woche { $waiting }, schon gestellt { $posted }
lesson-head = **Lektion „{ $title }“**
lesson-head-topic = **Lektion „{ $title }“** · { $topic }
lesson-step-is = { $contrast ->
    [yes] **Schritt { $step }**, wo das Thema nicht aufgehen soll
   *[no] **Schritt { $step }**
}
lesson-stop = Ein Stopp, { $task }: { $soundness ->
    [sound] in Ordnung.
    [several-keys] mehrere Schlüssel.
    [short] kürzer als angegeben.
    [unsound] nicht in Ordnung.
    [illegal] nicht zu gebrauchen.
   *[undecided] unentschieden.
}
lesson-written = { $kind ->
    [question] Eine Frage: { $words }
   *[words] Worte: { $words }
}
lesson-waits = { $number ->
    [one] Er wartet auf die Auflösung von Schritt { $steps }, dessen Lösung er verraten würde.
   *[other] Er wartet auf die Auflösungen der Schritte { $steps }, deren Lösungen er verraten würde.
}
lesson-not-kept-part = Nicht gespeichert: eine Forderung fehlt, und es fand sich keine; schreib sie dazu, etwa \[stop #2].
lesson-as-before = Dieselbe Stellung wie in Schritt { $step }; sie kommt einmal dran.
lesson-waits-in-week = In der Woche.
lesson-open-part = Gestellt als Nr. { $number }, noch offen.
lesson-closed-part = Gestellt als Nr. { $number } und geschlossen.
lesson-taken-in = „{ $title }“ ist gespeichert. Sieh sie durch, dann stell sie mit /lektion planen in die Woche.
lesson-lost = Nichts ist gespeichert, denn kein Schritt ließ sich lesen.
lesson-in-week = { $omitted ->
    [0] Die Lektion steht in der Woche. Teile: { $number }.
   *[other] Die Lektion steht in der Woche. Teile: { $number }; weggelassen, weil schon gestellt: { $omitted }.
}
lesson-plan-unclear = Gib entweder „auf-einmal“ an, oder „schritt“ und „wann“ zusammen, oder nichts davon.
lesson-here = „{ $title }“ als Datei; sie lässt sich wieder aufnehmen.
lesson-gone = „{ $title }“ ist entfernt. Ihre Stellungen und was schon gestellt war, bleiben.
