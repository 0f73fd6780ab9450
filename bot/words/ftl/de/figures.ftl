# Die Rangliste und der Bericht in Worten, und was als Nächstes zu lehren ist.

## Die Tage, die ein Bericht umfasst

covers-all = alle Beiträge bisher
covers-since = seit { $first }
covers-up-to = bis { $last }
covers-day = { $day }
covers-days-of-month = { $first }. bis { $last }
covers-days-of-year = { $first } bis { $last }
covers-days = { $first } bis { $last }

## Die Rangliste

figures-board = Rangliste, { $period }
figures-board-topic = Rangliste, { $topic }, { $period }
no-points-yet = Noch keine Punkte: Sie zählen, wenn ein Beitrag abgeschlossen ist.
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

## Der Bericht

figures-summary = Bericht, { $period }
figures-attempts = { $posts ->
    [one] { $posts } Beitrag
   *[other] { $posts } Beiträge
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
figures-came-back = Wieder da: { $names }
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
   *[words] Beitrag
} { $topic ->
    [none] { $number }
   *[other] { $number }, { $topic }
}: { $answered ->
    [one] { $answered } Antwort
   *[other] { $answered } Antworten
}.
figures-topic = { $topic }: { $posts ->
    [one] { $posts } Beitrag
   *[other] { $posts } Beiträge
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
figures-posts = Beiträge
figures-topics = Themen, das schwächste zuerst
figures-what-next = Was als Nächstes zu lehren ist

## Was als Nächstes zu lehren ist

advice-nothing-closed = In dieser Zeit wurde kein Beitrag abgeschlossen, also lässt sich noch auf nichts aufbauen.
advice-only-questions = In dieser Zeit wurden nur Fragen beantwortet; was als Nächstes zu lehren ist, steht in den Antworten.
advice-nobody = In dieser Zeit hat niemand geantwortet. Frag die Gruppe, ob ihr Tage und Uhrzeit passen, und stelle etwas Leichteres.
advice-few = Noch zu wenige Antworten ({ $tried } insgesamt), um zu sagen, was als Nächstes zu lehren ist.
advice-few-so-far = Noch zu wenige Antworten ({ $tried } insgesamt), um zu sagen, was schwach ist; am wenigsten gelang bisher { $topic } ({ $solved } von { $of } gelöst), was Zufall sein kann.
advice-teach-again = Lehre { $topic } noch einmal: { $solved } von { $of } Versuchen haben es gelöst.
advice-stay = Bleib noch etwas bei { $topic }: { $solved } von { $of } Versuchen haben es gelöst, davon { $first } beim ersten Mal.
advice-ready = Die Gruppe ist bereit für Neues oder Schwereres: Selbst { $topic }, ihr schwächstes Thema, wurde in { $solved } von { $of } Versuchen gelöst.
advice-near = Etwa ebenso gut ging es mit { $topics }.
near-topic = { $topic } ({ $solved } von { $of })
advice-many-near = Mit { $number } anderen Themen ging es etwa ebenso gut.
advice-begin = Beginne mit Beitrag { $number }: { $count } von { $of } haben { $played } gespielt.
advice-begin-refuted = Beginne mit Beitrag { $number }: { $count } von { $of } haben { $played } gespielt, was an { $refuted } scheitert.
advice-first-tries = Nur { $first } von { $solved } Lösungen kamen im ersten Versuch: Übt, vor dem Antworten nach der Verteidigung zu suchen.
advice-quiet = Ein Wort an { $names } könnte sie zurückholen.
advice-many-quiet = Ein Wort an { $names } und { $others } andere könnte sie zurückholen.
