# Auf Discord: was ein Mitglied erfährt, das antwortet, einen Tipp will oder nach seinem Stand fragt.

## Um welche Stellung es geht

no-group-here = In diesem Kanal gibt es keine Lerngruppe. Ein Trainer legt sie mit /{ command-coach } { command-coach-set-up } an.
nothing-open = Im Moment ist keine Stellung offen.
nothing-open-for-you = Im Moment ist keine Stellung für dich offen. Ruf das im Kanal deiner Gruppe auf.
nothing-open-to-you = Im Moment ist keine Stellung für dich offen. Wenn du auf einem Server zu einer Lerngruppe gehörst, antworte dort einmal mit dem Knopf unter der Stellung; dann kenne ich dich auch hier.
several-groups-open = Mehrere deiner Gruppen haben eine Stellung offen. Ruf das im Kanal der Gruppe auf, die du meinst.

## Das eigene Brett und der eigene Stand

your-board = Dein Brett:
your-board-solved = Dein Brett: Das hast du gelöst, { $points-text } von 5 Punkten.
your-board-given-up = Dein Brett: Das hast du aufgegeben. Die Lösung kommt mit der Auflösung.
give-up-asked = Willst du aufgeben? Dann kannst du hier nicht mehr antworten, und die Lösung bleibt bis zur Auflösung versiegelt.
your-last-answer = Deine letzte Antwort hier: „{ $quote }“
your-last-answer-deleted = Deine letzte Antwort hier, deren Text du gelöscht hast:
standing-now = { $state ->
    [none] Stellung { $number }: noch nicht beantwortet. Sie ist offen bis { $closes }.
    [solved] Stellung { $number }: gelöst. Sie ist offen bis { $closes }.
    [given-up] Stellung { $number }: aufgegeben. Sie ist offen bis { $closes }.
   *[playing] { $wrong ->
        [0] Stellung { $number }: Du bist am Zug. Sie ist offen bis { $closes }.
        [one] Stellung { $number }: Du bist am Zug, nach einem Fehlversuch. Sie ist offen bis { $closes }.
       *[other] Stellung { $number }: Du bist am Zug, nach { $wrong } Fehlversuchen. Sie ist offen bis { $closes }.
    }
}
standing-asked = { $answered ->
    [yes] Frage { $number }: beantwortet. Sie ist offen bis { $closes }.
   *[no] Frage { $number }: noch nicht beantwortet. Sie ist offen bis { $closes }.
}
on-your-board = Auf deinem Brett: { $line }
no-part-yet = Du hast noch bei keiner Stellung mitgemacht.
your-points = **Deine Punkte: { $points-text }**
topic-tally = { $topic }: { $solved } von { $tried } gelöst, { $first } im ersten Versuch
topic-asked = { $answered ->
    [one] { $topic }: { $answered } Frage beantwortet
   *[other] { $topic }: { $answered } Fragen beantwortet
}
questions-answered = { $answered ->
    [one] { $answered } Frage beantwortet
   *[other] { $answered } Fragen beantwortet
}
## A member's own answers to questions, and their leave to show one

no-homework = Du hast noch keine Frage beantwortet.
homework-head = **{ $at } von { $of }** · Frage { $number }
your-answer-deleted = Deine Antwort, deren Worte du gelöscht hast:
waits-for-coach = Noch nicht bewertet: Sie wartet auf deinen Trainer.
coach-said-privately = Dein Trainer: { $said }
earlier-answers = -# Deine früheren Antworten; die letzte zählt:
others-answers = **Antworten, die andere dir zeigen**
# Asked in private; the answer and the caution follow.
may-it-be-shown = Dein Trainer würde der Gruppe gern deine Antwort auf Frage { $number } zeigen:
coach-beside = Mit diesen Worten dazu: { $said }
leave-caution = -# Ohne dein Wort wird nichts gezeigt. Du kannst es jederzeit zurücknehmen, auch nach der Auflösung. Wenn du minderjährig bist, frag zuerst deine Eltern, und lass nichts stehen, woran man dich erkennt.
leave-open = Dein Trainer würde das gern der Gruppe zeigen, und du hast noch nichts gesagt: „{ $quote }“
leave-is = { $leave ->
    [named] Das wird der Gruppe mit deinem Namen gezeigt: „{ $quote }“
    [nameless] Das wird der Gruppe ohne deinen Namen gezeigt: „{ $quote }“
   *[refused] Das wird der Gruppe nicht gezeigt: „{ $quote }“
}
button-leave-named = Mit meinem Namen zeigen
button-leave-nameless = Ohne meinen Namen zeigen
button-leave-refused = Nicht zeigen

## Die Rangliste

leaderboard = **Rangliste**
leaderboard-of = **Rangliste: { $topic }**
leaderboard-empty = Noch hat niemand Punkte.
leaderboard-row = { $points ->
    [one] { $name } · { $points-text } Punkt · { $solved } von { $tried } gelöst
   *[other] { $name } · { $points-text } Punkte · { $solved } von { $tried } gelöst
}
leaderboard-asked = { $points ->
    [one] { $answered ->
        [one] { $name } · { $points-text } Punkt · { $answered } Frage beantwortet
       *[other] { $name } · { $points-text } Punkt · { $answered } Fragen beantwortet
    }
   *[other] { $answered ->
        [one] { $name } · { $points-text } Punkte · { $answered } Frage beantwortet
       *[other] { $name } · { $points-text } Punkte · { $answered } Fragen beantwortet
    }
}
and-more = … und { $more } weitere
span-between = Vom { $from } bis zum { $to }
span-since = Seit dem { $from }
span-until = Bis zum { $to }
span-all = Alle Stellungen bisher

## Was über ein Mitglied gespeichert ist

kept-of-you = Alles, was in dieser Gruppe über dich gespeichert ist. Löschen kannst du es mit /{ command-study } { command-study-erase-me }.
erasure-asked = Willst du deinen Namen, deine Antworten, Tipps und Punkte in dieser Gruppe löschen? Das lässt sich nicht rückgängig machen. Nachrichten, die du selbst auf Discord geschrieben hast, bleiben, bis du sie löschst.
erased-you = Alles, was in dieser Gruppe über dich gespeichert war, ist gelöscht.

## Hilfe, je ein Absatz

help-answering = { $content ->
    [yes] **Antworten.** Drück auf „{ button-answer }“ unter der Stellung, nimm /{ command-study } { command-study-answer }, schreib mir direkt, antworte auf die Nachricht mit der Stellung oder schreib in ihren Thread oder in diesen Kanal. Jede übliche Schreibweise geht: Sf3, e2-e4, e8=D, eine ganze Variante, mit den Buchstaben deiner Sprache.
   *[no] **Antworten.** Drück auf „{ button-answer }“ unter der Stellung, nimm /{ command-study } { command-study-answer }, schreib mir direkt, antworte auf die Nachricht mit der Stellung oder erwähne mich in deiner. Jede übliche Schreibweise geht: Sf3, e2-e4, e8=D, eine ganze Variante, mit den Buchstaben deiner Sprache.
}
help-outcome = **Was dann geschieht.** In einer versiegelten Gruppe siehst nur du das Urteil; in einer offenen steht es für die anderen hinter einer Spoiler-Markierung. Ein Zug, den du schreibst, wo andere mitlesen, gilt als deine Antwort, und ich verberge ihn, wo ich darf. Geplauder bleibt stehen; was einen Zug verraten könnte, verberge ich, wo ich darf, und frage nur dich, was es sein soll: deine Antwort, eine Nachricht an alle oder nichts.
help-lines = **Eine längere Variante** spielen wir Zug für Zug. Für jeden deiner Züge gibt es Tipps in drei Stufen: die Figur, die Idee, den Zug.
help-points = **Punkte.** /{ command-study } { command-study-points } sagt, wie hier gezählt wird.
help-cards = **Karten.** Mit /{ command-study } { command-study-card } liest du, was ein Mattbild ist, worauf zu achten ist und was es von seinen Verwandten trennt, mit einem Beispiel.
help-editing = **Bearbeiten oder löschen.** Was entschieden ist, bleibt entschieden. Eine Nachricht, in der ich keinen Zug gefunden habe, kannst du bearbeiten; ich lese sie dann noch einmal.
help-data = **Deine Daten.** /{ command-study } { command-study-my-data } zeigt alles, was über dich gespeichert ist, /{ command-study } { command-study-erase-me } löscht es.
help-language = **Sprache.** Ich spreche mit dir, wie dein Discord eingestellt ist; mit /{ command-study } { command-study-language } wählst du eine andere Sprache.

## Die Sprache

language-is = Ab jetzt spreche ich mit dir in dieser Sprache: { $language }.
language-as-client = Ich spreche mit dir, wie dein Discord eingestellt ist: { $language }.
language-choice-client = wie mein Discord eingestellt ist
no-language = „{ $written }“ spreche ich nicht; wähl eine Sprache aus der Liste, die sich beim Tippen öffnet.

## Das Formular für eine Antwort

form-answer = Deine Antwort
form-answer-moves = Dein Zug oder die ganze Variante
form-answer-words = Mit deinen eigenen Worten
form-answer-example = Etwa Sf3, e8=D oder 1.Dh7+ Kf8 2.Dh8#
form-old = Dieses Formular stammt aus einer älteren Version; bitte fang noch einmal an.
you-wrote = Was du geschrieben hast, damit nichts verloren geht:

## Knöpfe

button-my-progress = Mein Stand
button-yes-give-up = Ja, aufgeben
button-yes-erase = Ja, alles löschen
button-previous = Zurück
button-next = Weiter
button-previous-part = Voriger Teil
button-next-part = Nächster Teil

## Was schiefgeht

discord-refused = Discord hat meine Antwort nicht angenommen; bitte versuch es noch einmal.
rest-put-away = Der Rest davon ist weggeräumt; bitte frag noch einmal danach.
answer-forgotten = An diese Nachricht erinnere ich mich nicht mehr; bitte schreib deine Antwort noch einmal.

## Themenkarten

cards-there = Karten gibt es zu: { $titles }. Mit /{ command-study } { command-study-card } liest du eine.
card-tells = { $copy ->
    [yes] Mitglieder sehen vorerst die Karte des Programms: Deine würde etwas von der offenen Stellung { $numbers } verraten.
   *[no] Mitglieder sehen diese Karte zurzeit nicht: Sie würde etwas von der offenen Stellung { $numbers } verraten.
}
card-saved = Die Karte ist gespeichert.
card-taken-back = Deine Karte ist zurückgenommen.
form-card = Eine Themenkarte für die Gruppe
form-card-definition = Was es ist
form-card-look = Worauf zu achten ist
form-card-fen = Beispiel als FEN
form-card-moves = Seine Züge, etwa 1.Td8+ Txd8 2.Txd8#
button-card = Karte: { $title }
button-edit-card = Für die Gruppe bearbeiten
button-new-card = Karte zu einem Thema schreiben
button-queue-card = In die Woche stellen
button-take-back-card = Meine Karte zurücknehmen
## Lessons stepped through after their reveals

no-lesson-revealed = Noch ist keine Lektion dieser Gruppe aufgelöst.
lessons-there = **Lektionen zum Durchspielen**
lesson-listed = { $revealed ->
    [one] - { $title }: ein Teil.
   *[other] - { $title }: { $revealed } Teile.
}
lesson-pick-one = { $title }
lesson-pick = Eine Lektion durchspielen
# What is not revealed says nothing of what it holds.
lesson-open = { $count ->
    [one] Nr. { $numbers } ist offen und kommt nach der Auflösung dazu.
   *[other] Nr. { $numbers } sind offen und kommen nach ihrer Auflösung dazu.
}
lesson-comes = { $count ->
    [one] Ein weiterer Teil kommt am { $at }.
   *[other] { $count } weitere Teile kommen noch, der nächste am { $at }.
}
lesson-later = { $count ->
    [one] Ein weiterer Teil kommt noch.
   *[other] { $count } weitere Teile kommen noch.
}
walk-head = **{ $title }** · Schritt { $step } von { $steps } · Nr. { $number }
button-step-through = Lektion durchspielen
button-first = Anfang
button-back = Zurück
button-forward = Weiter
button-last = Ende
button-side-line = Nebenvariante: { $line }
button-leave-side-line = Zurück zur Hauptvariante
button-previous-step = Voriger Teil der Lektion
button-next-step = Nächster Teil der Lektion
## Moves that are talked about after a reveal

# $before: the moves from the position to what was written.
on-board = Auf dem Brett von Nr. { $number }: **{ $line }**
on-board-after = Auf dem Brett von Nr. { $number }: { $before } **{ $line }**
