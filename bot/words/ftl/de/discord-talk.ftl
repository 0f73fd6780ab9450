# Auf Discord: Nachrichten unter anderen, direkte, und solche, die auf das Wort ihres Verfassers warten.

## Nur an den Verfasser

quoted-answer = „{ $quote }“
taken-out-of-sight = Das hast du geschrieben, wo die anderen mitlesen; ich habe es deshalb für dich verborgen: ||{ $quote }||
please-delete = Das hast du geschrieben, wo die anderen mitlesen, und ich darf es nicht verbergen. Bitte lösch es, damit sie selbst nachdenken können: ||{ $quote }||
still-there = Die Nachricht steht noch da, wo alle sie lesen; bitte lösch sie.
edit-stands = Deine Antwort zählt so, wie du sie zuerst geschickt hast; das Bearbeiten ändert daran nichts. Um noch einmal zu antworten, schick eine neue.
on-your-answer = Zu deiner Antwort „{ $quote }“:
coach-answers-post = { $kind ->
    [problem] Dein Trainer antwortet dir zu Stellung { $number }:
    [question] Dein Trainer antwortet dir zu Frage { $number }:
   *[words] Dein Trainer antwortet dir zu Mitteilung { $number }:
}
coach-answers-quote = { $kind ->
    [problem] Dein Trainer antwortet dir auf „{ $quote }“ (Stellung { $number }):
    [question] Dein Trainer antwortet dir auf „{ $quote }“ (Frage { $number }):
   *[words] Dein Trainer antwortet dir auf „{ $quote }“ (Mitteilung { $number }):
}
named-coach-answers-post = { $kind ->
    [problem] Dein Trainer { $coach } antwortet dir zu Stellung { $number }:
    [question] Dein Trainer { $coach } antwortet dir zu Frage { $number }:
   *[words] Dein Trainer { $coach } antwortet dir zu Mitteilung { $number }:
}
named-coach-answers-quote = { $kind ->
    [problem] Dein Trainer { $coach } antwortet dir auf „{ $quote }“ (Stellung { $number }):
    [question] Dein Trainer { $coach } antwortet dir auf „{ $quote }“ (Frage { $number }):
   *[words] Dein Trainer { $coach } antwortet dir auf „{ $quote }“ (Mitteilung { $number }):
}
there-to-be-read = Das ist zum Lesen da und nimmt keine Antworten an; deine Antwort an die Gruppe habe ich als Gespräch stehen lassen.

## Um welche Stellung es geht

which-position = Mehr als eine Stellung ist offen. Welche meinst du?
which-group = Mehrere deiner Gruppen haben eine Stellung offen. Welche meinst du?
fits-another = Diese Züge passen zu Stellung { $number } und nicht zu der, an die du sie geschickt hast. Sollen sie dorthin?
fits-several = Diese Züge passen zu den Stellungen { $numbers }. Welche meinst du?
may-tell-move = { $hidden ->
    [yes] Das könnte einen Zug von Stellung { $numbers } verraten, die noch offen ist; deshalb sieht es noch niemand sonst. Was soll es sein?
   *[no] Das könnte einen Zug von Stellung { $numbers } verraten, die noch offen ist. Was soll es sein?
}
may-be-an-answer = { $hidden ->
    [yes] Ist das deine Antwort auf Frage { $number } oder ein Wort an alle? Noch sieht es niemand sonst.
   *[no] Ist das deine Antwort auf Frage { $number } oder ein Wort an alle?
}
could-answer = Das könnte eine Antwort auf { $posts } sein. Was meinst du?
answer-to = { $kind ->
    [problem] Stellung { $number }
    [question] Frage { $number }
   *[words] Mitteilung { $number }
}
post-named = { $kind ->
    [problem] Stellung { $number }
    [question] Frage { $number }
   *[words] Mitteilung { $number }
}
post-on = { $kind ->
    [problem] Stellung { $number } · { $topic }
    [question] Frage { $number } · { $topic }
   *[words] Mitteilung { $number } · { $topic }
}
post-of-group = { $kind ->
    [problem] { $group }: Stellung { $number }
    [question] { $group }: Frage { $number }
   *[words] { $group }: Mitteilung { $number }
}

## Was auf das Wort seines Verfassers wartet

held-gone = Diese Nachricht wartet nicht mehr: Sie ist erledigt, geändert, oder ihre Stellung ist geschlossen. Schreib sie noch einmal, wenn du magst.
held-none = Hier wartet keine Nachricht von dir.
held-said = In deinem Namen an alle gesagt.
held-stays = Es bleibt, wo du es geschrieben hast.
held-dropped = Verworfen; nichts davon ist gespeichert.

## Für alle

some-member = Ein Mitglied
answer-sealed = { $name }, deine Antwort ist angekommen und versiegelt. Drück auf „{ button-my-progress }“, um zu sehen, was daraus geworden ist.
answer-sealed-of-somebody = Die Antwort eines Mitglieds ist angekommen und versiegelt. Ist es deine, drück auf „{ button-my-progress }“, um zu sehen, was daraus geworden ist.
waits-for-word = { $name }, deine Nachricht wartet auf dein Wort, und bis dahin sieht sie niemand sonst. Drück auf „{ button-decide }“ und sag, was sie sein soll.
waits-for-word-of-somebody = Die Nachricht eines Mitglieds wartet auf ein Wort, und bis dahin sieht sie niemand sonst. Ist es deine, drück auf „{ button-decide }“ und sag, was sie sein soll.
verdict-word = { $verdict ->
    [solved] gelöst
    [on-the-way] so weit richtig
    [wrong] nicht die Lösung
    [illegal] kein erlaubter Zug
    [unclear] noch nicht entschieden
   *[unreadable] nicht lesbar
}
kept-word = wartet auf den Trainer
marked-word = bewertet
has-answered = { $name } hat geantwortet: ||{ $word }||

## Knöpfe

button-it-is-my-answer = Es ist meine Antwort
button-answer-to = { $kind ->
    [problem] Antwort auf Stellung { $number }
    [question] Antwort auf Frage { $number }
   *[words] Antwort auf Mitteilung { $number }
}
button-send-to = { $kind ->
    [problem] An Stellung { $number } schicken
    [question] An Frage { $number } schicken
   *[words] An Mitteilung { $number } schicken
}
button-say-to-all = Allen sagen
button-may-stay = Es darf stehen bleiben
button-drop-it = Verwerfen
button-decide = Entscheiden
