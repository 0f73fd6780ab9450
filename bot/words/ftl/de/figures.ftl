# Die Rangliste und die Auswertung in Worten, und was als Nächstes drankommt.

## Die Tage, die eine Auswertung umfasst

covers-all = alle Aufgaben bisher
covers-since = seit { $first }
covers-up-to = bis { $last }
covers-day = { $day }
covers-days-of-month = { $first }. bis { $last }
covers-days-of-year = { $first } bis { $last }
covers-days = { $first } bis { $last }

## Die Rangliste

figures-board = Rangliste, { $period }
figures-board-topic = Rangliste, { $topic }, { $period }
no-points-yet = Noch keine Punkte: Sie zählen, wenn eine Aufgabe abgeschlossen ist.
figures-board-row = { $points ->
    [one] { $rank }. { $name }: { $points-text } Punkt, { $solved } von { $tried } gelöst
   *[other] { $rank }. { $name }: { $points-text } Punkte, { $solved } von { $tried } gelöst
}
figures-board-asked = { $rank }. { $name }: { $points ->
    [one] { $points-text } Punkt
   *[other] { $points-text } Punkte
}, { $answered ->
    [one] { $answered } Frage beantwortet
   *[other] { $answered } Fragen beantwortet
}
figures-board-both = { $rank }. { $name }: { $points ->
    [one] { $points-text } Punkt
   *[other] { $points-text } Punkte
}, { $solved } von { $tried } gelöst, { $answered ->
    [one] { $answered } Frage beantwortet
   *[other] { $answered } Fragen beantwortet
}

## Die Auswertung

figures-summary = Auswertung, { $period }
figures-attempts = { $posts ->
    [one] { $posts } Aufgabe
   *[other] { $posts } Aufgaben
}, { $tried ->
    [one] { $tried } Versuch
   *[other] { $tried } Versuche
}, { $percent ->
    [none] { $solved } gelöst
   *[other] { $solved } gelöst ({ $percent } %)
}, { $first } im ersten Versuch.
figures-answers = { $questions ->
    [one] { $questions } Frage
   *[other] { $questions } Fragen
}, { $answered ->
    [one] { $answered } Antwort
   *[other] { $answered } Antworten
}.
figures-member = { $name }: { $points ->
    [one] { $points-text } Punkt
   *[other] { $points-text } Punkte
}, { $tried } versucht, { $solved } gelöst, { $first } im ersten Versuch, { $hints ->
    [one] { $hints } Tipp
   *[other] { $hints } Tipps
}
figures-member-asked = { $name }: { $points ->
    [one] { $points-text } Punkt
   *[other] { $points-text } Punkte
}, { $answered ->
    [one] { $answered } Frage beantwortet
   *[other] { $answered } Fragen beantwortet
}
figures-member-both = { $name }: { $points ->
    [one] { $points-text } Punkt
   *[other] { $points-text } Punkte
}, { $tried } versucht, { $solved } gelöst, { $first } im ersten Versuch, { $hints ->
    [one] { $hints } Tipp
   *[other] { $hints } Tipps
}, { $answered ->
    [one] { $answered } Frage beantwortet
   *[other] { $answered } Fragen beantwortet
}
figures-did-not-answer = Nicht geantwortet: { $names }
figures-went-quiet = Still geworden: { $names }
figures-went-quiet-since = Still geworden ({ $recent }, nach { $before }): { $names }
figures-came-back = Wieder dabei: { $names }
figures-post = { $topic ->
    [none] Stellung { $number }
   *[other] Stellung { $number }, { $topic }
}, { $task }: { $tried } versucht, { $percent ->
    [none] { $solved } gelöst
   *[other] { $solved } gelöst ({ $percent } %)
}, { $first } im ersten Versuch.
figures-missed = Am häufigsten falsch: { $moves }.
missed-move = { $played } ({ $count })
missed-refuted = { $played } ({ $count }; { $refuted })
figures-asked = { $kind ->
    [question] Frage
   *[words] Mitteilung
} { $topic ->
    [none] { $number }
   *[other] { $number }, { $topic }
}: { $answered ->
    [one] { $answered } Antwort
   *[other] { $answered } Antworten
}.
figures-topic = { $topic }: { $posts ->
    [one] { $posts } Aufgabe
   *[other] { $posts } Aufgaben
}, { $tried ->
    [one] { $tried } Versuch
   *[other] { $tried } Versuche
}, { $percent ->
    [none] { $solved } gelöst
   *[other] { $solved } gelöst ({ $percent } %)
}, { $first } im ersten Versuch
figures-topic-asked = { $topic }: { $questions ->
    [one] { $questions } Frage
   *[other] { $questions } Fragen
} mit { $answered ->
    [one] { $answered } Antwort
   *[other] { $answered } Antworten
}
figures-who-took-part = Wer mitgemacht hat
figures-posts = Aufgaben
figures-topics = Themen, das schwächste zuerst
figures-what-next = Was als Nächstes dran ist

## Was als Nächstes dran ist

advice-nothing-closed = In dieser Zeit wurde keine Aufgabe abgeschlossen, also lässt sich noch auf nichts aufbauen.
advice-only-questions = In dieser Zeit wurden nur Fragen beantwortet; was als Nächstes drankommt, steht in den Antworten.
advice-nobody = In dieser Zeit hat niemand geantwortet. Frag die Gruppe, ob ihr Tage und Uhrzeit passen, und stelle etwas Leichteres.
advice-few = Noch zu wenige Antworten ({ $tried } insgesamt), um zu sagen, was als Nächstes drankommt.
advice-few-so-far = Noch zu wenige Antworten ({ $tried } insgesamt), um zu sagen, was schwach ist; am wenigsten gelang bisher { $topic } ({ $solved } von { $of } gelöst), was Zufall sein kann.
advice-teach-again = Nimm { $topic } noch einmal durch: In { $solved } von { $of } Versuchen wurde es gelöst.
advice-stay = Bleib noch etwas bei { $topic }: In { $solved } von { $of } Versuchen wurde es gelöst, davon { $first }-mal auf Anhieb.
advice-ready = Die Gruppe ist bereit für Neues oder Schwereres: Selbst { $topic }, ihr schwächstes Thema, wurde in { $solved } von { $of } Versuchen gelöst.
advice-near = Etwa ebenso gut ging es mit { $topics }.
near-topic = { $topic } ({ $solved } von { $of })
advice-many-near = Mit { $number } anderen Themen ging es etwa ebenso gut.
advice-begin = Beginne mit Aufgabe { $number }: { $count } von { $of } haben { $played } gespielt.
advice-begin-refuted = Beginne mit Aufgabe { $number }: { $count } von { $of } haben { $played } gespielt, was an { $refuted } scheitert.
advice-first-tries = Nur { $first } von { $solved } Lösungen kamen im ersten Versuch: Übt, vor dem Antworten nach der Verteidigung zu suchen.
advice-quiet = Ein Wort an { $names } könnte helfen, dass sie wiederkommen.
advice-many-quiet = Ein Wort an { $names } und { $others } andere könnte helfen, dass sie wiederkommen.
