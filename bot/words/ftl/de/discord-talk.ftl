# Auf Discord: Nachrichten unter anderen, direkte, und solche, die auf das Wort ihres Verfassers warten.

## Nur an den Verfasser

quoted-answer = „{ $quote }“
taken-out-of-sight = Das hast du geschrieben, wo die anderen mitlesen; ich habe es deshalb für dich verborgen: ||{ $quote }||
please-delete = Das hast du geschrieben, wo die anderen mitlesen, und ich darf es nicht verbergen. Bitte lösch es, damit sie selbst nachdenken können: ||{ $quote }||
still-there = Die Nachricht steht noch da, wo alle sie lesen; bitte lösch sie.
edit-stands = Deine Antwort zählt so, wie du sie zuerst geschickt hast; das Bearbeiten ändert daran nichts. Um noch einmal zu antworten, schick eine neue.
on-your-answer = Zu deiner Antwort „{ $quote }“:
coach-answers-position = Dein Trainer antwortet dir zu Stellung { $number }:
coach-answers-quote = Dein Trainer antwortet dir auf „{ $quote }“ (Stellung { $number }):
named-coach-answers-position = Dein Trainer { $coach } antwortet dir zu Stellung { $number }:
named-coach-answers-quote = Dein Trainer { $coach } antwortet dir auf „{ $quote }“ (Stellung { $number }):

## Um welche Stellung es geht

which-position = Mehr als eine Stellung ist offen. Welche meinst du?
which-group = Mehrere deiner Gruppen haben eine Stellung offen. Welche meinst du?
fits-another = Diese Züge passen zu Stellung { $number } und nicht zu der, an die du sie geschickt hast. Sollen sie dorthin?
fits-several = Diese Züge passen zu den Stellungen { $numbers }. Welche meinst du?
may-tell-move = { $hidden ->
    [yes] Das könnte einen Zug von Stellung { $numbers } verraten, die noch offen ist; deshalb sieht es noch niemand sonst. Was soll es sein?
   *[no] Das könnte einen Zug von Stellung { $numbers } verraten, die noch offen ist. Was soll es sein?
}
position-on = Stellung { $number } · { $topic }
position-of-group = { $group }: Stellung { $number }

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
has-answered = { $name } hat geantwortet: ||{ $word }||

## Knöpfe

button-it-is-my-answer = Es ist meine Antwort
button-answer-to = Antwort auf Stellung { $number }
button-send-to = An Stellung { $number } schicken
button-say-to-all = An alle sagen
button-may-stay = Es darf stehen bleiben
button-drop-it = Verwerfen
button-decide = Entscheiden
