# Auf Discord: was eine Stellung und ihre Auflösung sagen, für alle.

## Eine Stellung

post-heading = { $kind ->
    [problem] **Stellung { $number }**
    [question] **Frage { $number }**
   *[words] **Mitteilung { $number }**
}
lesson-step = Lektion „{ $title }“, Schritt { $step } von { $steps }
answers-sealed = Antworten sind versiegelt bis { $closes } ({ $away }).
answers-open = Die Urteile stehen hinter Spoiler-Markierungen; Antworten nehme ich an bis { $closes } ({ $away }).
how-to-answer = { $thread ->
    [yes] -# Drück auf „{ button-answer }“, schreib mir direkt, antworte auf diese Nachricht oder nimm /{ command-study } { command-study-answer }. Geredet wird im Thread.
   *[no] -# Drück auf „{ button-answer }“, schreib mir direkt, antworte auf diese Nachricht oder nimm /{ command-study } { command-study-answer }.
}
post-closed = Geschlossen; die Lösung steht unten.
question-taken = Antworten mit deinen eigenen Worten nehme ich an bis { $closes } ({ $away }); nur dein Trainer liest sie, außer du erlaubst mehr.
how-to-respond = { $thread ->
    [yes] -# Drück auf „{ button-answer }“, schreib mir direkt oder antworte auf diese Nachricht. Geredet wird im Thread.
   *[no] -# Drück auf „{ button-answer }“, schreib mir direkt oder antworte auf diese Nachricht.
}
question-closed = Geschlossen.
thread-name = { $kind ->
    [problem] Stellung { $number }
    [question] Frage { $number }
   *[words] Mitteilung { $number }
}
thread-name-topic = { $kind ->
    [problem] Stellung { $number } · { $topic }
    [question] Frage { $number } · { $topic }
   *[words] Mitteilung { $number } · { $topic }
}

## Eine Auflösung

reveal-heading = **Stellung { $number }: die Lösung**
more-variations = { $more ->
    [one] … und eine weitere Variante
   *[other] … und { $more } weitere Varianten
}
mating-patterns = { $number ->
    [one] Mattbild: { $patterns }.
   *[other] Mattbilder: { $patterns }.
}
coach-notes = Anmerkungen des Trainers:
commonest-wrong = { $times ->
    [one] Der häufigste falsche Zug war { $played }, einmal gewählt. Er scheitert an { $line }.
   *[other] Der häufigste falsche Zug war { $played }, { $times }-mal gewählt. Er scheitert an { $line }.
}
commonest-wrong-because = { $times ->
    [one] Der häufigste falsche Zug war { $played }, einmal gewählt. Er scheitert an { $line }: { $why }.
   *[other] Der häufigste falsche Zug war { $played }, { $times }-mal gewählt. Er scheitert an { $line }: { $why }.
}
nobody-took-part = Niemand hat mitgemacht.
stayed-unsolved = { $tried ->
    [one] Ein Mitglied hat es versucht, gelöst hat es niemand.
   *[other] { $tried } Mitglieder haben es versucht, gelöst hat es niemand.
}
solved-by = Gelöst von { $solved } von { $tried }: { $names }.
names-and-more = { $names } und { $more } weitere
solution-is-out = Die Lösung ist da. Redet, wie ihr wollt: Hier ist nichts mehr versiegelt.
question-is-closed = **Frage { $number } ist geschlossen**
nobody-answered = Niemand hat geantwortet.
answered-by = Geantwortet haben: { $names }.
question-is-over = Die Frage ist geschlossen. Redet darüber, wie ihr wollt.
# Answers that have no mark yet.
answers-wait = { $waiting ->
    [one] -# Eine Antwort wartet noch auf die Bewertung des Trainers.
   *[other] -# { $waiting } Antworten warten noch auf die Bewertung des Trainers.
}
# An answer that its writer allows to be shown, and the coach's words beside it. $quote: the answer.
example-heading = **Frage { $number }: eine Antwort als Beispiel**
example-of =
    > { $quote }
    -# { $name }
example-nameless =
    > { $quote }
    -# aus der Gruppe, ohne Namen
example-words = Der Trainer: { $words }
example-taken-back = **Frage { $number }**: Die Antwort, die hier stand, wurde zurückgenommen.
