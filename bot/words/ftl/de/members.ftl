# Was ein Mitglied über Punkte, Tipps und das Urteil des Trainers erfährt.

## Punkte

wrong-tries = { $wrong ->
    [one] einem Fehlversuch
   *[other] { $wrong } Fehlversuchen
}
hints-taken = { $hints ->
    [one] einem Tipp
   *[other] { $hints } Tipps
}
points-earned = { $wrong ->
    [0] { $hints ->
        [0] { $points-text } von 5 Punkten.
       *[other] { $points-text } von 5 Punkten nach { hints-taken }.
    }
   *[other] { $hints ->
        [0] { $points-text } von 5 Punkten nach { wrong-tries }.
       *[other] { $points-text } von 5 Punkten nach { wrong-tries } und { hints-taken }.
    }
}
solving-now-gives = { $points ->
    [one] Wer es jetzt löst, bekommt { $points-text } Punkt.
   *[other] Wer es jetzt löst, bekommt { $points-text } Punkte.
}
nothing-after-wrong = Nach der Wertung dieser Gruppe gibt es nach einem falschen ersten Zug keine Punkte mehr; die Lösung zu finden, lohnt sich trotzdem.
wrong-takes = { $wrong ->
    [one] Jeder falsche erste Zug kostet { $wrong-text } Punkt
   *[other] Jeder falsche erste Zug kostet { $wrong-text } Punkte
}
every-wrong-takes = { $wrong ->
    [one] Jeder falsche Zug kostet { $wrong-text } Punkt
   *[other] Jeder falsche Zug kostet { $wrong-text } Punkte
}
prices = { $later ->
    [none] { $hint ->
        [none] { every-wrong-takes }.
       *[other] { every-wrong-takes }, jeder Tipp { $hint-text }.
    }
   *[other] { $hint ->
        [none] { wrong-takes }, ein falscher Zug später in der Variante { $later-text }.
       *[other] { wrong-takes }, ein falscher Zug später in der Variante { $later-text }, jeder Tipp { $hint-text }.
    }
}
at-least = Wer es löst, ohne dass der Zug gezeigt wurde, behält mindestens { $points-text }.

## Tipps, bevor man sie nimmt

hint-free = { $last ->
    [yes] Der nächste Tipp zeigt den Zug. Er kostet nichts; dir blieben weiter { $left-text }.
   *[no] Ein Tipp kostet nichts; dir blieben weiter { $left-text }.
}
takes-points = { $takes ->
    [one] kostet { $takes-text } Punkt
   *[other] kostet { $takes-text } Punkte
}
hint-takes = { $last ->
    [yes] Der nächste Tipp zeigt den Zug. Er { takes-points }; dir blieben { $left-text }.
   *[no] Ein Tipp { takes-points }; dir blieben { $left-text }.
}
no-more-hints = Für diesen Zug hast du alle Tipps bekommen.
price-free = kostet nichts, lässt { $left-text }
price-takes = kostet { $takes-text }, lässt { $left-text }
price-again = noch einmal, kostet nichts
hint-is = { $number ->
    [1] Tipp { $step }: { $hint }
   *[other] Tipp { $step } zu deinem { $number }. Zug: { $hint }
}

## Antworten, die nichts ändern

solved-already = Das hast du schon gelöst, also ändert sich nichts.
given-up-already = Das hast du aufgegeben, also zählt es nicht.
given-up-now = Du hast diese Stellung aufgegeben. Die Lösung bleibt versiegelt bis zur Auflösung am { $at }.
given-up-before = Du hast diese Stellung schon aufgegeben. Die Lösung kommt am { $at }.
you-solved = Du hast diese Stellung gelöst: { $points-text } von 5 Punkten.
you-gave-up = Du hast diese Stellung aufgegeben. Die Lösung kommt mit der Auflösung am { $at }.
replies-closed = Danke. Diese Aufgabe nimmt keine Antworten mehr an, also zählt diese nicht.
coach-will-judge = Deine Antwort ist aufgehoben und bis zur Auflösung versiegelt. Diese Aufgabe beurteilt dein Trainer selbst.
coach-will-read = Deine Antwort ist notiert. Dein Trainer liest sie, sonst niemand, außer du erlaubst es.
coach-can-read = Danke. Diese Aufgabe nimmt keine Antworten mehr an; dein Trainer kann deine trotzdem lesen.
only-beginning-kept = { $again ->
    [yes] Nur die ersten { $most } Zeichen davon sind aufgehoben. Wenn es auf den Rest ankommt, fass dich kürzer und antworte noch einmal.
   *[no] Nur die ersten { $most } Zeichen davon sind aufgehoben.
}

## Das Urteil des Trainers

coach-looked = { $number ->
    [none] { $verdict ->
        [solved] Dein Trainer hat deine Antwort angesehen: gelöst.
        [on-the-way] Dein Trainer hat deine Antwort angesehen: so weit richtig.
        [wrong] Dein Trainer hat deine Antwort angesehen: nicht die Lösung.
        [illegal] Dein Trainer hat deine Antwort angesehen: kein erlaubter Zug.
        [unclear] Dein Trainer hat deine Antwort angesehen: nicht eindeutig; sag, welchen Zug du meinst.
       *[unreadable] Dein Trainer hat deine Antwort angesehen: nicht lesbar; schreib die Züge noch einmal.
    }
   *[other] { $verdict ->
        [solved] Stellung { $number }: Dein Trainer hat deine Antwort angesehen: gelöst.
        [on-the-way] Stellung { $number }: Dein Trainer hat deine Antwort angesehen: so weit richtig.
        [wrong] Stellung { $number }: Dein Trainer hat deine Antwort angesehen: nicht die Lösung.
        [illegal] Stellung { $number }: Dein Trainer hat deine Antwort angesehen: kein erlaubter Zug.
        [unclear] Stellung { $number }: Dein Trainer hat deine Antwort angesehen: nicht eindeutig; sag, welchen Zug du meinst.
       *[unreadable] Stellung { $number }: Dein Trainer hat deine Antwort angesehen: nicht lesbar; schreib die Züge noch einmal.
    }
}
# $number: of the question, or none.
coach-marked = { $number ->
    [none] Dein Trainer hat deine Antwort gelesen.
   *[other] Frage { $number }: Dein Trainer hat deine Antwort gelesen.
}
points-of-five = { $points-text } von 5 Punkten.
coach-says = „{ $words }“

## Von früher

as-it-was = { $words } (So wurde es damals gesagt.)
as-reason = { $words }

## Knöpfe; kurz

button-answer = Antworten
button-answer-again = Noch einmal antworten
button-next-move = Nächster Zug
button-hint = Tipp
button-another-hint = Noch ein Tipp
button-take-it = Nehmen
button-give-up = Aufgeben
button-i-mean = Ich meine { $reading }
priced = { $what } ({ $price })
