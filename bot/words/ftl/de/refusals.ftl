# Warum etwas nicht ging, und was stattdessen zu tun ist. $most und $size sind Zahlen, wie man sie schreibt.

## Das gibt es nicht

not-a-group = Hier ist noch keine Lerngruppe; ein Trainer kann hier eine einrichten.
no-member = Dieses Mitglied gibt es in der Gruppe nicht (mehr).
no-post = Diese Aufgabe gibt es in der Gruppe nicht.
no-position = Diese Stellung gibt es in der Gruppe nicht; prüfe zuerst eine Datei.
no-reply = Diese Antwort gibt es in der Gruppe nicht.
no-message = Diese Nachricht gibt es in der Gruppe nicht.
no-reply-of-yours = Von dir gibt es keine solche Lösung.
no-answer-of-yours = Von dir gibt es keine solche Antwort.
no-message-of-yours = Von dir gibt es keine solche Nachricht.
not-in-queue = Das ist nicht mehr in der Woche.
not-taken-out = Das lässt sich nicht mehr zurücklegen: Es steht wieder in der Woche oder ist weg. Sieh in der Woche und im Vorrat nach.
not-here-any-more = Das gibt es hier nicht (mehr). Lade die Seite oder die Liste neu.
removed-meanwhile = { $what ->
    [post-of-reply] Die Aufgabe zu dieser Antwort wurde entfernt.
    [group-of-reply] Die Gruppe zu dieser Antwort wurde entfernt.
    [writer-of-reply] Das Mitglied, das diese Antwort geschickt hat, wurde gelöscht.
    [reply] Die Antwort wurde inzwischen entfernt.
    [position-of-post] Die Stellung dieser Aufgabe wurde entfernt.
    [position] Die Stellung wurde inzwischen entfernt.
    [post-of-message] Die Aufgabe zu dieser Nachricht wurde entfernt.
   *[group-of-message] Die Gruppe zu dieser Nachricht wurde entfernt.
}
nothing-kept-of-you = Von dir ist in dieser Gruppe nichts gespeichert.
nothing-kept-of-them = Von dieser Person ist in der Gruppe nichts gespeichert.
nothing-asked = Zu dieser Antwort wird nichts mehr gefragt.
nothing-asked-any-more = Zu dieser Antwort wird nichts mehr gefragt: Es kam eine spätere, oder die Aufgabe ist geschlossen.
code-owner-gone = Das Mitglied, dem dieser Code gehörte, gibt es nicht mehr.
still-on-its-way = Diese Aufgabe ist noch unterwegs.
nothing-to-post = In der Woche steht nichts, was gestellt werden darf; prüfe eine Datei und stell die korrekten Stellungen in die Woche.

## Das darf die Person nicht

not-coach = Das können nur die Trainer der Gruppe. Ein Trainer kann weitere Trainer benennen.
shut-out = Dein Trainer hat dich aus dieser Gruppe genommen. Was du vorher geschrieben hast, ist noch gespeichert: Frag deinen Trainer, wenn du eine Kopie möchtest oder es gelöscht haben willst.
muted = { $until ->
    [none] { $reason ->
        [none] Dein Trainer hat dich stummgeschaltet, bis er es aufhebt: Du kannst Aufgaben lösen, aber nicht in die Gruppe schreiben.
       *[other] Dein Trainer hat dich stummgeschaltet, bis er es aufhebt: Du kannst Aufgaben lösen, aber nicht in die Gruppe schreiben. Der Grund: { $reason }
    }
   *[other] { $reason ->
        [none] Dein Trainer hat dich stummgeschaltet bis { $until }: Du kannst Aufgaben lösen, aber nicht in die Gruppe schreiben.
       *[other] Dein Trainer hat dich stummgeschaltet bis { $until }: Du kannst Aufgaben lösen, aber nicht in die Gruppe schreiben. Der Grund: { $reason }
    }
}
muted-keeps-name = Du bist stummgeschaltet und kannst so lange deinen Namen nicht ändern. Frag deinen Trainer.
coach-is-not = { $what ->
    [muted] { $name } trainiert diese Gruppe, und Trainer werden nicht stummgeschaltet. Nimm die Rolle vorher zurück: im Vereinsraum mit einem neuen Trainerlink, auf Discord mit /{ command-coach } { command-coach-remove-coach }.
    [removed] { $name } trainiert diese Gruppe, und Trainer werden nicht entfernt. Nimm die Rolle vorher zurück: im Vereinsraum mit einem neuen Trainerlink, auf Discord mit /{ command-coach } { command-coach-remove-coach }.
   *[erased] { $name } trainiert diese Gruppe, und Trainer werden nicht von anderen Trainern gelöscht. Nimm die Rolle vorher zurück: im Vereinsraum mit einem neuen Trainerlink, auf Discord mit /{ command-coach } { command-coach-remove-coach }.
}

## Antworten, Tipps und Gespräch

nothing-to-judge = Da ist nichts zu beurteilen: Schreib deinen Zug, etwa Sf3 oder 1.Dh7+ Kf8 2.Dh8#.
taken-already = Diese Nachricht gilt schon als andere Antwort; schick sie noch einmal neu.
no-move-read = Das ließ sich nicht als Antwort lesen; schreib nur die Züge.
position-closed = Stellung { $number } ist geschlossen; sieh dir die Auflösung an.
question-open-still = Frage { $number } ist noch offen; die Auflösung schließt sie.
question-lacks = { $what ->
    [hints] Nr. { $number } ist eine Frage. Dazu gibt es keine Tipps; antworte mit deinen eigenen Worten.
    [giving-up] Nr. { $number } ist eine Frage. Die gibt man nicht auf: Beantworte sie, oder lass sie aus.
   *[board] Nr. { $number } ist eine Frage. Auf ihrem Brett wird keine Variante gespielt.
}
nothing-answered = In deiner Antwort steht noch nichts; antworte mit deinen eigenen Worten.
words-take-no-answers = Nr. { $number } ist eine Mitteilung: Sie ist zum Lesen da und nimmt keine Antworten an.
only-questions-are-grouped = { $kind ->
    [problem] Nr. { $number } ist eine Stellung: Ihre Antworten werden einzeln beurteilt. Nebeneinander stehen nur Antworten auf eine Frage.
   *[other] Nr. { $number } nimmt keine Antworten an. Nebeneinander stehen nur Antworten auf eine Frage.
}
only-answers-are-examples = Nur Antworten auf eine Frage lassen sich als Beispiel zeigen.
nobody-asks-to-show = Niemand möchte so eine Antwort (noch) zeigen. Lade die Seite oder die Liste neu.
writer-said-no = Wer diese Antwort geschrieben hat, möchte sie nicht zeigen lassen. Das kann nur diese Person ändern.
words-are-gone = Die Worte dieser Antwort sind gelöscht; es gibt nichts zu zeigen.
words-beside-too-long = Deine Worte zur Antwort sind länger als { $most } Zeichen; kürze sie.
# Moves that are talked about after the reveal.
no-board-there = Nr. { $number } hat keine Stellung, also gibt es kein Brett dafür.
nothing-revealed-yet = Noch ist nichts mit einer Stellung aufgelöst; Züge lassen sich nach einer Auflösung auf dem Brett zeigen.
no-move-written = In dieser Nachricht steht kein Zug. Schreib einen, etwa Sf6 oder 3.Txd5 Sf6.
move-not-there = { $written } ist in Stellung { $number } nicht möglich, auch nicht in ihren Varianten. Schreib die Züge davor dazu, etwa 3.Txd5 Sf6.
nothing-to-reveal = Nr. { $number } ist eine Mitteilung; da gibt es nichts aufzulösen.
no-hints = Zu dieser Stellung gibt es keine Tipps; frag deinen Trainer.
no-hint = Von hier aus gibt es keinen Tipp: die Stellung auf dem Brett gehört nicht mehr zur Lösung. Such den stärksten Zug, den du finden kannst.
solved-no-hint = Du hast diese Stellung gelöst; da gibt es nichts mehr zu verraten.
given-up-no-hint = Du hast diese Stellung aufgegeben; die Lösung kommt mit der Auflösung.
has-solved = Du hast diese Stellung schon gelöst.
line-fails = Die bisher gespielte Variante lässt sich ab { $at } nicht aufstellen.
nothing-to-say = Da steht nichts; schreib ein Wort.
talk-too-long = Das ist zu lang; höchstens { $most } Zeichen. Schick es in Teilen.
name-yourself = Sag zuerst, wie dich die Gruppe nennen soll.

## Namen

name-blank = In diesem Namen ist nichts zu lesen. Nimm einen anderen; „{ $offer }“ ist frei.
name-reserved = „{ $name }“ geht hier nicht als Name: Man könnte ihn für den eines Trainers oder des Programms halten. Bei Trainern steht das Wort Trainer von selbst neben dem Namen. Nimm einen anderen; „{ $offer }“ ist frei.
name-in-use = In der Gruppe heißt schon jemand „{ $name }“ oder so ähnlich. Nimm einen anderen Namen; „{ $offer }“ ist frei.

## Aufgaben und die Woche

sealed-still = Stellung { $number } ist noch offen; die Lösung bleibt bis zur Auflösung versiegelt.
not-out-yet = Diese Aufgabe ist noch unterwegs; schließ sie, wenn sie da ist.
closing-already = Diese Aufgabe wird schon geschlossen; die Auflösung ist unterwegs.
closed-already = Diese Aufgabe ist schon geschlossen.
was-posted = { $position } wurde schon gestellt, als Nr. { $number } am { $on }; sag, dass die Stellung noch einmal drankommen soll, oder wähle eine andere.
illegal-position = Diese Stellung ist nicht regelgerecht und kann nicht gestellt werden.
cannot-be-set-up = Die Stellung lässt sich nicht aufstellen: { $why }.
not-sound = { $soundness ->
    [sound] { $position } ist korrekt und kommt deshalb nicht in die Woche. Sieh dir den Bericht an, bessere nach, oder sag, dass die Stellung trotzdem gestellt werden soll.
    [several-keys] { $position } hat mehr als einen Schlüsselzug und kommt deshalb nicht in die Woche. Sieh dir den Bericht an, bessere nach, oder sag, dass die Stellung trotzdem gestellt werden soll.
    [short] { $position } ist in weniger Zügen lösbar als verlangt und kommt deshalb nicht in die Woche. Sieh dir den Bericht an, bessere nach, oder sag, dass die Stellung trotzdem gestellt werden soll.
    [unsound] { $position } hält nicht, was die Aufgabe verspricht, und kommt deshalb nicht in die Woche. Sieh dir den Bericht an, bessere nach, oder sag, dass die Stellung trotzdem gestellt werden soll.
    [illegal] { $position } ist nicht zu gebrauchen und kommt deshalb nicht in die Woche. Sieh dir den Bericht an und bessere nach.
   *[undecided] { $position } ließ sich in der erlaubten Zeit nicht klären und kommt deshalb nicht in die Woche. Sieh dir den Bericht an, bessere nach, oder sag, dass die Stellung trotzdem gestellt werden soll.
}
cannot-be-drawn = Diese Stellung lässt sich nicht zeichnen.
time-past = Der Zeitpunkt { $at } ist vorbei; in { $zone } ist jetzt { $now }. Wähle eine spätere Zeit, oder stelle die Aufgabe sofort.
time-taken = Für { $at } ist schon eine andere Stellung festgelegt; wähle eine andere Zeit.
slot-taken = Genau dann geht schon eine andere Aufgabe hinaus; wähle eine andere Zeit.
pause-past = Das Ende der Pause ist schon vorbei; wähle ein späteres.
not-a-time = „{ $words }“ ist keine Uhrzeit; schreib Stunden und Minuten, etwa 18:00.
no-times = Es ist keine Uhrzeit gesetzt; gib mindestens eine an, etwa 18:00.
time-twice = { $at } steht zweimal da; gib jede Uhrzeit einmal an.
too-many-times = Eine Gruppe hat höchstens { $most } Uhrzeiten am Tag; lass welche weg.
clocks-leave-out = { $next ->
    [none] In { $zone } gibt es den Zeitpunkt { $at } nicht: Die Uhren werden dort vorgestellt.
   *[other] In { $zone } gibt es den Zeitpunkt { $at } nicht: Die Uhren werden dort vorgestellt. Wähle { $next } oder später.
}

## Was ein Trainer abgibt oder schreibt

file-too-heavy = { $file } hat { $size } MB; höchstens { $most } MB. Teile die Datei und schick die Teile.
no-positions = In { $file } ist keine Stellung. Stellungen kommen als EPD, als PGN mit FEN-Angaben, oder als FEN, eine je Zeile.
name-needed = { $what ->
    [group] Die Gruppe braucht einen Namen; schreib mindestens einen Buchstaben.
    [topic] Das Thema braucht einen Namen; schreib mindestens einen Buchstaben.
    [lesson] Die Lektion braucht einen Titel; schreib mindestens einen Buchstaben.
   *[file] Die Datei braucht einen Namen; schreib mindestens einen Buchstaben.
}
name-too-long = { $what ->
    [group] Der Name der Gruppe ist zu lang; höchstens { $most } Zeichen.
    [topic] Der Name des Themas ist zu lang; höchstens { $most } Zeichen.
    [lesson] Der Titel der Lektion ist zu lang; höchstens { $most } Zeichen.
   *[file] Der Name der Datei ist zu lang; höchstens { $most } Zeichen.
}
words-too-long = { $when ->
    [post] Die Worte zur Aufgabe haben mehr als { $most } Zeichen; kürze sie.
   *[reveal] Die Worte zur Auflösung haben mehr als { $most } Zeichen; kürze sie.
}
words-tell-move = Die Worte zur Aufgabe verraten einen Zug ({ $line }). Heb sie für die Auflösung auf, oder sag, dass sie trotzdem mit der Aufgabe hinausgehen sollen.
words-wanted = Da steht noch nichts; schreib, was die Gruppe lesen soll.
nothing-to-choose = Bei dieser Stellung gibt es nichts zu wählen.
no-lesson = Eine solche Lektion gibt es hier nicht (mehr); `sealed-move lesson list` zeigt, welche es gibt.
no-draft = Einen solchen Entwurf gibt es hier nicht (mehr).
no-step = Einen Schritt { $step } hat die Lektion nicht; ihre Schritte sind 1 bis { $steps }.
lesson-there = Eine Lektion „{ $title }“ gibt es schon; gib dieser einen anderen Titel, oder nimm die andere vorher weg.
lesson-went-out = Etwas aus „{ $title }“ war schon dran, deshalb bleibt sie, wie sie ist; gib dem, was du geschrieben hast, einen anderen Titel, dann wird es als eigene Lektion aufgenommen.
lesson-all-out = Alles aus „{ $title }“ steht in der Woche oder war schon dran; sag, dass es noch einmal drankommen soll, wenn du das willst.
would-tell = Das würde die Lösung von Nr. { $number } verraten, und die ist noch offen. Es kann hinaus, sobald sie geschlossen ist.
would-tell-other = Das würde die Lösung einer anderen Stellung der Woche verraten; die muss vorher drankommen und geschlossen sein.

## Urteile, Antworten und Mitglieder

answer-wanted = Schreib zuerst die Antwort; braucht es keine, dann sag „keine Antwort nötig“.
answer-too-long = Die Antwort ist zu lang; höchstens { $most } Zeichen.
nothing-to-overrule = Über diese Antwort ist noch nichts entschieden, also gibt es nichts umzustoßen. Beurteile sie, antworte unter vier Augen, oder sag, dass sie keine Antwort braucht.
points-range = Punkte gibt es von 0 bis 5.
marked-not-judged = Das beantwortet eine Frage, und da gibt es kein Richtig oder Falsch. Gib Punkte, antworte unter vier Augen, oder sag, dass sie keine Antwort braucht.
judged-not-marked = Das ist die Antwort auf eine Stellung; gib zusammen mit den Punkten ein Urteil ab.
words-to-member-too-long = Die Worte an das Mitglied sind zu lang; höchstens { $most } Zeichen.
message-taken-back = Das hat der Verfasser zurückgenommen; nur Nachrichten, die ein Trainer ausgeblendet hat, lassen sich wieder zeigen.
answer-taken-back = Das hat der Verfasser zurückgenommen; nur Antworten, die ein Trainer ausgeblendet hat, lassen sich wieder zeigen.
mute-length = Stumm ist ein Mitglied mindestens eine Minute und höchstens ein Jahr, oder bis du es aufhebst.
reason-too-long = Der Grund ist zu lang; höchstens { $most } Zeichen.
same-member = Das ist schon ein und dasselbe Mitglied; wähle zwei.
removed-not-merged = Eines der beiden ist aus der Gruppe entfernt. Lass dieses Mitglied erst wieder zu, dann führe beide zusammen.
browser-taken = Dieser Browser gehört schon zu { $name }. Bitte deinen Trainer, euch beide zusammenzuführen.
no-coach-of-this = Diese Person trainiert die Gruppe nicht.
last-coach = Eine Gruppe braucht einen Trainer; benenne zuerst einen anderen.

## Einstellungen und Zahlen

group-already = Hier ist schon die Gruppe „{ $name }“; ändere stattdessen ihre Einstellungen.
days-of-week = Es geht um die Tage einer Woche; Bit 0 ist Montag und Bit 6 ist Sonntag.
open-between = Eine Aufgabe bleibt mindestens eine Minute und höchstens 31 Tage offen (44.640 Minuten).
price-range = { $what ->
    [wrong] Ein falscher erster Zug kostet zwischen 0 und 5 Punkten.
   *[hint] Ein Tipp kostet zwischen 0 und 5 Punkten.
}
period-backwards = Der Zeitraum endet ({ $last }), bevor er beginnt ({ $first }); schreib den früheren Tag zuerst.
no-period = „{ $words }“ ist kein Zeitraum. Schreib einen von diesen: { $examples }.
no-topics-yet = Das Thema „{ $topic }“ gibt es nicht: Diese Gruppe hat noch keine Themen. Lass das Thema weg, um alles zu sehen.
no-such-topic = { $alike ->
    [yes] Das Thema „{ $topic }“ gibt es nicht. Am ähnlichsten: { $near }.
   *[no] Das Thema „{ $topic }“ gibt es nicht. Es gibt: { $near }.
}
several-topics = Mehrere Themen könnten „{ $topic }“ sein: { $several }. Schreib das gemeinte so, wie es dort steht.
table-fails = Die Tabelle ließ sich nicht schreiben; bitte sag es dem, der den Bot betreibt.
quoted = „{ $words }“

## Das Programm

store-fails = { $why ->
    [full] Der Speicher ist nicht benutzbar: Seine Platte ist voll. Was gespeichert war, ist nicht verloren; versuch es nach einer Weile noch einmal, und sag es dem, der den Bot betreibt, wenn es so bleibt.
    [busy] Der Speicher ist nicht benutzbar: Ein anderes Programm hält ihn fest. Was gespeichert war, ist nicht verloren; versuch es nach einer Weile noch einmal, und sag es dem, der den Bot betreibt, wenn es so bleibt.
    [read-only] Der Speicher ist nicht benutzbar: Seine Platte lässt sich nicht beschreiben. Was gespeichert war, ist nicht verloren; versuch es nach einer Weile noch einmal, und sag es dem, der den Bot betreibt, wenn es so bleibt.
    [damaged] Der Speicher ist nicht benutzbar: Ein Wert darin ist nicht lesbar. Was gespeichert war, ist nicht verloren; bitte sag es dem, der den Bot betreibt.
    [stopped] Der Speicher ist nicht benutzbar: Er ist angehalten. Was gespeichert war, ist nicht verloren; versuch es nach einer Weile noch einmal, und sag es dem, der den Bot betreibt, wenn es so bleibt.
   *[other] Der Speicher ist nicht benutzbar; das Protokoll sagt, warum. Was gespeichert war, ist nicht verloren; versuch es nach einer Weile noch einmal, und sag es dem, der den Bot betreibt, wenn es so bleibt.
}
picture-fails = Das Bild ließ sich nicht zeichnen; bitte sag es dem, der den Bot betreibt.
broke = Im Bot ist etwas schiefgegangen. Was gespeichert war, ist nicht verloren; bitte sag es dem, der den Bot betreibt.

## Themenkarten

no-card = Diese Karte gibt es nicht; wähle eine aus der Liste.
no-card-of = Zu „{ $topic }“ gibt es keine Karte; wähle eine aus der Liste.
card-held-back = Diese Karte ist vorerst zurückgehalten: Sie würde etwas von einer offenen Stellung verraten. Nach deren Auflösung ist sie wieder da.
card-is-ours = Diese Karte ist die eigene des Programms; es gibt nichts zurückzunehmen.
card-without-words = Schreib, worum es bei dem Thema geht; eine Karte braucht eine Definition.
card-too-long = { $part ->
    [definition] Die Definition hat mehr als { $most } Zeichen; kürze sie.
   *[look] Worauf zu achten ist, hat mehr als { $most } Zeichen; kürze es.
}
moves-without-position = Da sind Züge, aber keine Stellung; gib auch die FEN des Beispiels an, oder lass die Züge weg.
example-fails = { $after ->
    [0] Das Beispiel ist nicht spielbar: { $at } ist in seiner Stellung kein legaler Zug.
    [one] Das Beispiel ist nicht spielbar: Nach { $after } Zug ist { $at } kein legaler.
   *[other] Das Beispiel ist nicht spielbar: Nach { $after } Zügen ist { $at } kein legaler.
}
example-too-long = Das Beispiel hat mehr als { $most } Züge beider Seiten zusammen; hör früher auf.

## Der Editor

no-move-here = „{ $written }“ ist hier kein legaler Zug; schreib ihn wie Sf3, oder zieh auf dem Brett.
line-breaks = { $after ->
    [0] Die Züge passen nicht zur Stellung: { $at } ist darin kein legaler Zug. Berichtige die Stellung, oder nimm die Züge heraus.
    [one] Die Züge passen nicht zur Stellung: Nach { $after } Zug ist { $at } nicht legal. Berichtige die Stellung, oder nimm die Züge von dort an heraus.
   *[other] Die Züge passen nicht zur Stellung: Nach { $after } Zügen ist { $at } nicht legal. Berichtige die Stellung, oder nimm die Züge von dort an heraus.
}
board-line-too-long = Die Variante hat mehr als { $most } Halbzüge; beende sie früher.
draft-too-large = Das sind mehr als { $most } Zeichen; mach zwei daraus.
draft-empty = Der Entwurf hat noch keinen Schritt; füg einen hinzu, dann nimm ihn auf.
draft-changed = Am Entwurf wurde inzwischen anderswo geschrieben; sieh ihn dir noch einmal an, dann nimm ihn auf.
# $what is a statement that begins with a small letter and has no full stop.
draft-step-wrong = Schritt { $step } ist nicht fertig: { $what }.
edit-unreadable = Das lässt sich nicht lesen: { $what }.
edit-not-one = Hier gehört genau eine Stellung hin, als PGN-Partie oder FEN; schreib die und sonst nichts.
edit-no-task = Eine Forderung ist nicht angegeben, und keine wurde gefunden; schreib #1 bis #20 für ein Matt, + für Gewinn oder = für Remis.
edit-bad-task = Die Forderung lässt sich nicht lesen: { $why }.
position-there = Diese Stellung mit dieser Forderung hat die Gruppe schon, als { $position }; ändere jene, oder mach diese anders.
position-went-out = Sie wurde als Nr. { $number } gestellt, und was die Mitglieder geantwortet haben, gehört zu ihr; deshalb bleibt sie, wie sie ist. Schreib die geänderte Stellung unter „Prüfen“ als neue.
position-in-lesson = Sie ist ein Stopp in Schritt { $step } der Lektion „{ $title }“; öffne die Lektion auf der Trainerseite im Editor und ändere sie dort.
