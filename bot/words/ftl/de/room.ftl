# Die Seite der Mitglieder im Vereinsraum, und was die Seite des Trainers mit ihr teilt. $number und $other
# sind Nummern von Aufgaben; $name, $who, $names und $topic sind von Menschen geschrieben.

## Um alles herum

room-title = Vereinsraum
room-skip = Zum Nachrichtenfeld springen
room-parts = Teile des Raums
room-nav-room = Raum
room-nav-past = Früheres
room-nav-kept = Gespeichert
room-nav-coach = Trainerseite
room-no-script = Dieser Raum braucht JavaScript. Erlaube es für diese Adresse und lade die Seite dann neu.
room-unreachable = Der Raum ist gerade nicht zu erreichen. Nichts von dem, was du geschrieben hast, ist verloren; versuch es gleich noch einmal.
room-load-again = Diese Seite ist älter als der Vereinsraum. Lade sie neu.
room-error = Der Raum hat mit einem Fehler geantwortet ({ $status }).
room-broken-line = Die Verbindung ist unterbrochen und wird von selbst wieder aufgenommen. Was du schreibst, bleibt hier.
room-cancel = Abbrechen
room-close = Schließen

## Hereinkommen

room-coming-in = Du kommst herein
room-go-in = In den Raum gehen
room-refused = Dieser Link öffnet den Raum nicht
room-refused-why = Vielleicht wurde er unterwegs abgeschnitten, oder der Trainer hat ihn inzwischen geändert.
room-refused-member = Wenn du Mitglied bist: Bitte deinen Trainer noch einmal um den Link und öffne ihn ganz.
room-refused-coach = Wenn du der Trainer bist: Der Bot gibt deinen Link bei jedem Start aus. Er bleibt derselbe, bis ein Trainer auf der Trainerseite unter „Einstellungen“ einen neuen macht.
room-enter = Wie soll die Gruppe dich nennen?
room-your-name = Dein Name in diesem Raum
room-come-in = Hereinkommen
room-enter-what = Ein Vorname oder Spitzname genügt. Alle in der Gruppe sehen ihn neben deinen Nachrichten und in der Rangliste; du kannst ihn später ändern.
room-enter-care = Was du hier schreibst, wird auf dem Rechner deines Trainers gespeichert: dein Name, deine Antworten und was daraus wurde, und deine Nachrichten. Unter „Gespeichert“ kannst du alles ansehen, mitnehmen und löschen. Mitglieder können Kinder sein: Die Kinderschutzregeln deines Vereins und das Datenschutzrecht deines Landes gehen vor. Gib hier weder Nachnamen noch Adresse, Schule oder Telefonnummer an.
room-here-already = Ich bin schon in diesem Raum, auf einem anderen Gerät
room-code = Der Code, den dein anderes Gerät zeigt
room-code-come-in = Als dieselbe Person hereinkommen
room-code-what = Öffne auf dem Gerät, auf dem du deinen Namen hast, „Meine Arbeit“ und drück auf „Noch ein Gerät benutzen“. Dort erscheint ein Code, der zehn Minuten lang gilt.
room-take-name = „{ $name }“ nehmen

## Ausgeschlossen

room-out-link = Der Link zu diesem Raum hat sich geändert
room-out-link-what = Dein Trainer hat einen neuen Link gemacht, deshalb geht auf dieser Seite nichts mehr. Bitte ihn um den neuen Link und öffne ihn in diesem Browser: Diese Seite läuft dann von selbst weiter.
room-out-coach-link = Der Trainerlink hat sich geändert
room-out-coach-link-what = Ein anderer Trainer hat einen neuen Trainerlink gemacht, deshalb geht auf dieser Seite nichts mehr. Bitte ihn um den neuen Link und öffne ihn in diesem Browser: Diese Seite läuft dann von selbst weiter.
room-out-removed = Du bist nicht mehr in dieser Gruppe
room-out-removed-what = Dein Trainer hat dich aus der Gruppe genommen. Was du vorher geschrieben hast, ist noch gespeichert: Frag deinen Trainer, wenn du eine Kopie möchtest oder es gelöscht haben willst.
room-out-erased = Alles über dich ist gelöscht
room-out-erased-what = Dein Trainer hat gelöscht, was hier über dich gespeichert war.
room-out-typed = Was du geschrieben hast, bleibt unten im Feld. Es wurde nicht gesendet.

## Die Stellung und ihre Nummer

room-open-position = Die Stellung, die gerade offen ist
room-number = Nr. { $number }
room-number-topic = Nr. { $number }, { $topic }
room-number-question = { $name }, eine Frage
# Above a post that is a step of a lesson.
room-lesson-step = Lektion „{ $title }“, Schritt { $step } von { $steps }
room-question = Frage
room-kind = { $kind ->
    [problem] Stellung
    [question] Frage
   *[words] Mitteilung
}
room-preview = Vorschau
room-in-words = Die Stellung in Worten
room-none-open = Keine Stellung ist offen
room-none-open-what = Die nächste erscheint hier, sobald sie an der Reihe ist.
room-look-at-past = Frühere Aufgaben ansehen
room-which-open = Welche offene Stellung
room-closes = Antworten bis { $at } (deine Zeit, { $until })
room-closed = Geschlossen: { $at }; die Auflösung ist unterwegs
room-day-and-time = { $day }, { $time }
room-hint = Tipp
room-hint-step = Tipp { $step } von 3
room-hint-for-move = Tipp { $step } von 3 zu deinem { $move }. Zug
room-give-up = Aufgeben
room-give-up-sure = Diese Stellung aufgeben? Dein Versuch endet damit; die Lösung kommt mit der Auflösung.
room-go-on-trying = Weiter versuchen
room-gave-up = Du hast aufgegeben
room-board-at-end = Dein Brett am Ende

## Urteile

room-verdict = { $verdict ->
    [solved] Gelöst
    [on-the-way] So weit richtig
    [wrong] Falscher Zug
    [illegal] Kein erlaubter Zug
    [unclear] Nicht eindeutig
    [unreadable] Nicht lesbar
    [kept] Wartet auf den Trainer
    [marked] Vom Trainer bewertet
   *[none] Noch nicht beurteilt
}
room-your-move = Du bist am Zug.
room-mean = Was hast du gemeint?
room-i-mean = Ich meine { $line }

## Die Auflösung

room-solution = Nr. { $number }: die Lösung
room-final-picture = Das Schlussbild: { $patterns }.
room-common-wrong = Der häufigste falsche Zug war { $move }, { $count }-mal gewählt. Die Widerlegung ist { $line }.
room-common-wrong-why = Der häufigste falsche Zug war { $move }, { $count }-mal gewählt. Die Widerlegung ist { $line }: { $why }.
room-notes = Anmerkungen des Trainers
room-nobody-took-part = Diesmal hat niemand mitgemacht.
room-solved-by = { $count ->
    [one] Gelöst von { $names }. { $count } Mitglied hat mitgemacht.
   *[other] Gelöst von { $names }. { $count } Mitglieder haben mitgemacht.
}
room-nobody-solved = { $count ->
    [one] Niemand hat es gelöst. { $count } Mitglied hat mitgemacht.
   *[other] Niemand hat es gelöst. { $count } Mitglieder haben mitgemacht.
}
room-question-closed = Nr. { $number }: die Frage ist geschlossen
room-coach-words = Die Worte des Trainers
room-answered-by = Geantwortet haben: { $names }.
room-nobody-answered = Diesmal hat niemand geantwortet.
room-answers-wait = { $count ->
    [one] { $count } Antwort wartet noch auf die Bewertung des Trainers.
   *[other] { $count } Antworten warten noch auf die Bewertung des Trainers.
}
# Answers that their writers allow the group to see.
room-examples = Antworten als Beispiele
room-example-by = { $name }
room-example-nameless = Aus der Gruppe, ohne Namen

## Gespräch

room-talk = Gespräch
room-earlier = Frühere Nachrichten zeigen
room-messages = Nachrichten
room-posted = Nr. { $number } ist gestellt
room-posted-topic = Nr. { $number } ist gestellt: { $topic }
room-coach = Trainer
room-your-coach = Dein Trainer
room-you = Du
room-only-you = Das siehst nur du
room-has-answered = hat geantwortet
room-show-answer = Antwort zeigen (sie kann die Lösung verraten)
room-take-back = Zurücknehmen
room-take-it-back = Zurücknehmen
room-take-back-sure = Diese Nachricht zurücknehmen? Sie verschwindet sofort für alle. Dein Trainer kann sie noch sehen, und auch, dass und wann du sie zurückgenommen hast.
room-take-answer-back-sure = Den Text deiner Antwort zurücknehmen? Die Gruppe sieht ihn dann nicht mehr. Was aus der Antwort wurde, zählt weiter, und dein Trainer kann sie noch lesen.
room-gone = { $how ->
    [taken-back] Zurückgenommen von { $who }, { $at }
   *[hidden] Verborgen von { $who }, { $at }
}
room-somebody-erased = jemandem, dessen Daten gelöscht sind
# Under a message with a move in it, after a reveal.
room-on-board = Auf dem Brett zeigen
room-on-board-post = Um welche Stellung es geht
room-word-on = { $kind ->
    [problem] Zu Stellung { $number }:
    [question] Zu Frage { $number }:
   *[words] Zu Nr. { $number }:
}
room-word-on-yours = { $kind ->
    [problem] Zu deinem „{ $text }“, Stellung { $number }:
    [question] Zu deinem „{ $text }“, Frage { $number }:
   *[words] Zu deinem „{ $text }“, Nr. { $number }:
}

## Das Nachrichtenfeld

room-text = Deine Nachricht oder dein Zug
room-text-placeholder = Dein Zug oder eine Nachricht
room-answer = Antworten
room-send = Senden
room-say-what = Ein Zug, den du sendest, gilt als deine Antwort: Nur du siehst ihn und was daraus wird. Wo nicht klar ist, was ein Text sein soll, wirst du erst gefragt. Mit „Antworten“ wird jeder Text als Antwort gelesen. Die Eingabetaste sendet, Umschalt und Eingabetaste beginnt eine neue Zeile.
# Solange eine Frage zu sehen ist, die in einem eigenen Feld beantwortet wird.
room-talk-placeholder = Eine Nachricht an die Gruppe
room-talk-what = Hier redest du mit der Gruppe; deine Antwort gehört in das Feld unter der Frage. Bevor ein Text, der eine Antwort sein kann, für andere zu sehen ist, wirst du gefragt. Die Eingabetaste sendet, Umschalt und Eingabetaste beginnt eine neue Zeile.
room-answers = Antwort auf
room-answers-number = Antwort auf Nr. { $number }
room-answers-number-topic = Antwort auf Nr. { $number }, { $topic }
room-closed-no-other = Nr. { $number } ist geschlossen. Was du geschrieben hast, steht noch hier.
room-closed-other = Nr. { $number } ist geschlossen. Das Feld antwortet jetzt auf Nr. { $other }; was du geschrieben hast, steht noch hier.
room-closed-meanwhile = Nr. { $number } wurde geschlossen, während du geschrieben hast. Was soll das hier werden?
room-nothing-to-answer = Gerade ist keine Stellung offen, also gibt es nichts zu beantworten. „Senden“ sagt es der Gruppe.
room-send-to = An Nr. { $number } senden
room-answer-to = Antwort auf Nr. { $number }
room-is-my-answer = Es ist meine Antwort
room-say-to-group = Der Gruppe sagen
room-say-to-all = Allen sagen
room-drop = Verwerfen
room-held-elsewhere = Diese Züge passen zu Stellung { $number }, nicht zu { $chosen }. Sollen sie dorthin?
room-held-elsewhere-several = Diese Züge passen zu den Stellungen { $numbers }, nicht zu { $chosen }. Welche meinst du?
room-held-several = Diese Züge passen zu den Stellungen { $numbers }. Welche meinst du?
room-held-could-answer = Das könnte eine Antwort auf { $names } sein. Was meinst du?
room-held-is-answer = Ist das deine Antwort auf Frage { $number } oder ein Wort an alle? Noch sieht es niemand sonst.
room-held-may-tell = Das könnte einen Zug von Stellung { $numbers } verraten, die noch offen ist; deshalb sieht es noch niemand sonst. Was soll es sein?
room-post-called = { $kind ->
    [problem] Stellung { $number }
    [question] Frage { $number }
   *[words] Nr. { $number }
}
room-your-answer = Deine Antwort
room-answer-own-words = Deine Antwort, mit deinen eigenen Worten
room-answer-again = Noch einmal antworten; die letzte Antwort zählt
room-send-answer = Antwort senden
room-only-coach-reads = Nur dein Trainer liest sie. Sonst sieht sie niemand, jetzt nicht und später nicht, außer du erlaubst es.
room-answer-waits = Noch nicht bewertet: Sie wartet auf deinen Trainer.
room-earlier-answers = { $count ->
    [one] Deine frühere Antwort
   *[other] Deine { $count } früheren Antworten
}
# The leave to show an answer to the group. $words: the coach's words beside it.
room-leave-news = Dein Trainer würde der Gruppe gern eine deiner Antworten zeigen: Sieh sie unter „Meine Arbeit“ an.
room-leave-asked = Dein Trainer würde diese Antwort nach der Auflösung gern der Gruppe zeigen. Darf sie gezeigt werden?
room-leave-is = { $leave ->
    [named] Du erlaubst, dass die Gruppe diese Antwort mit deinem Namen sieht.
    [nameless] Du erlaubst, dass die Gruppe diese Antwort ohne deinen Namen sieht.
   *[refused] Diese Antwort wird der Gruppe nicht gezeigt.
}
room-leave-beside = Mit diesen Worten deines Trainers dazu: { $words }
room-leave-named = Mit meinem Namen zeigen
room-leave-nameless = Ohne meinen Namen zeigen
room-leave-refused = Nicht zeigen
room-leave-withdraw = Zurücknehmen
room-leave-care = Ohne dein Wort wird nichts gezeigt, und du kannst es jederzeit zurücknehmen, auch nach der Auflösung. Wenn du minderjährig bist, frag zuerst deine Eltern, und lass nichts stehen, woran man dich erkennt.

## Meine Arbeit

room-mine = Meine Arbeit
room-standing-now = { $state ->
    [none] Stellung { $number }: noch nicht beantwortet. Sie ist offen bis { $at }.
    [solved] Stellung { $number }: gelöst. Sie ist offen bis { $at }.
    [given-up] Stellung { $number }: aufgegeben. Sie ist offen bis { $at }.
   *[playing] { $wrong ->
        [0] Stellung { $number }: Du bist am Zug. Sie ist offen bis { $at }.
        [one] Stellung { $number }: Du bist am Zug, nach einem Fehlversuch. Sie ist offen bis { $at }.
       *[other] Stellung { $number }: Du bist am Zug, nach { $wrong } Fehlversuchen. Sie ist offen bis { $at }.
    }
}
room-standing-asked = { $answered ->
    [yes] Frage { $number }: beantwortet. Sie ist offen bis { $at }.
   *[no] Frage { $number }: noch nicht beantwortet. Sie ist offen bis { $at }.
}
room-no-topic = Kein Thema
room-line-so-far = Die Variante bis hierher: { $line }
room-your-board = Dein Brett
room-points-in-all = Punkte insgesamt: { $points }
room-your-topics = Deine Aufgaben nach Themen
room-nothing-tried = Noch nichts versucht. Mit deiner ersten Antwort beginnt diese Tabelle.
# A member's own answers to questions.
room-homework = Meine Antworten auf Fragen
room-homework-of = Frage { $number }
room-scale = Wie gezählt wird
room-change-name = Namen ändern
room-named = Die Gruppe sieht dich jetzt als { $name }.
room-language = Sprache
room-language-browser = Wie im Browser eingestellt
room-language-what = In ihr sprechen die Seiten und der Bot mit dir. Was Menschen schreiben, bleibt, wie es ist.
room-device = Noch ein Gerät
room-device-what = Benutze diesen Raum auf dem Telefon oder einem zweiten Rechner als dieselbe Person, mit denselben Punkten.
room-device-new = Noch ein Gerät benutzen
room-device-code = { $minutes ->
    [one] Öffne auf dem anderen Gerät den Link zu diesem Raum, drück auf „Ich bin schon in diesem Raum“ und gib diesen Code ein. Er gilt { $minutes } Minute lang und für ein Gerät. Zeig ihn niemandem: Wer ihn eingibt, ist hier du.
   *[other] Öffne auf dem anderen Gerät den Link zu diesem Raum, drück auf „Ich bin schon in diesem Raum“ und gib diesen Code ein. Er gilt { $minutes } Minuten lang und für ein Gerät. Zeig ihn niemandem: Wer ihn eingibt, ist hier du.
}

## Tabellen

room-leaders = Rangliste
room-leaders-topic = Rangliste: { $topic }
room-board-all = Punkte der Mitglieder, alle Themen
room-board-topic = Punkte der Mitglieder, { $topic }
room-topic = Thema
room-all-topics = Alle Themen
room-time = Zeitraum
room-last-four-weeks = Letzte 4 Wochen
room-last-seven-days = Letzte 7 Tage
room-last-ninety-days = Letzte 90 Tage
room-from-beginning = Von Anfang an
room-rank = Rang
room-name = Name
room-points = Punkte
room-tried = Versucht
room-solved = Gelöst
room-first-try = Auf Anhieb
room-questions = Fragen beantwortet
room-solved-of = { $solved } von { $tried }
room-no-points = Noch hat hier niemand Punkte.
room-equal-points = Wer gleich viele Punkte hat, teilt den Rang.

## Frühere Aufgaben

room-past = Frühere Aufgaben
room-none-closed = Noch ist keine Aufgabe geschlossen. Ihre Auflösung wird hier stehen.
room-as-posted = Die Stellung, wie sie gestellt wurde

## Was gespeichert ist

room-kept = Was über mich gespeichert ist
room-kept-what = Der Rechner des Trainers speichert deinen Namen ({ $name }), deine Antworten und was daraus wurde, die Tipps, die du genommen hast, und deine Nachrichten. Vor der Auflösung sehen nur du und der Trainer deine Antworten. Eine Nachricht, die du zurücknimmst oder die ein Trainer verbirgt, ist für alle verschwunden; die Trainer können sie noch lesen und sehen, wer sie wann weggenommen hat. Wenn du alles löschst, verschwindet auch das.
room-kept-care = Mitglieder können Kinder sein: Die Kinderschutzregeln des Vereins und das Datenschutzrecht deines Landes gehen vor. Frag deinen Trainer, wenn dir hier etwas Sorgen macht.
room-see-kept = Alles ansehen
room-take-kept = Mitnehmen (JSON)
room-erase = Alles löschen
room-erase-sure = Alles löschen, was über dich gespeichert ist? Deine Punkte, Antworten und Nachrichten sind dann für immer weg, und du verlässt den Raum.
room-keep = Behalten
room-erased = Gelöscht
room-come-in-again = Unter neuem Namen wieder hereinkommen
room-none = nichts

## Themenkarten

room-nav-cards = Karten
room-cards = Themenkarten
room-cards-what = Eine Seite für jedes Mattbild: was es ist, worauf zu achten ist und was es von seinen Verwandten trennt.
room-cards-all = Alle Karten
room-cards-of = { $count ->
    [one] Mehr auf der Karte: { $cards }
   *[other] Mehr auf den Karten: { $cards }
}
room-card-coachs = Von deinem Trainer
room-card-held = Zurückgehalten bis zur Auflösung einer offenen Stellung
room-card-look = Worauf zu achten ist
room-card-relatives = Leicht damit zu verwechseln
room-card-example = Beispiel
room-card-start = { $task } Such die Lösung, bevor du weiterliest.
room-card-solution = Die Lösung: { $line }
room-card-end = Wohin es führt
room-card-start-words = Die Stellung in Worten
room-card-end-words = Die Schlussstellung in Worten
## Lessons stepped through after their reveals

room-nav-lessons = Lektionen
room-lessons = Lektionen
room-lessons-what = Aufgelöste Lektionen, Zug für Zug durchzuspielen, mit allen Nebenvarianten und Kommentaren.
room-lessons-none = Noch ist keine Lektion aufgelöst. Jede steht hier, sobald ihre erste Aufgabe aufgelöst ist.
room-lessons-all = Alle Lektionen
room-lesson-parts = { $count ->
    [one] { $count } Teil
   *[other] { $count } Teile
}
# What is not revealed says nothing of what it holds. $numbers: numbers of posts.
room-lesson-open = { $count ->
    [one] Nr. { $numbers } ist offen und kommt nach der Auflösung dazu.
   *[other] Nr. { $numbers } sind offen und kommen nach ihrer Auflösung dazu.
}
room-lesson-comes = { $count ->
    [one] { $count } weiterer Teil kommt am { $at }.
   *[other] { $count } weitere Teile kommen noch, der nächste am { $at }.
}
room-lesson-later = { $count ->
    [one] { $count } weiterer Teil kommt noch.
   *[other] { $count } weitere Teile kommen noch.
}
room-walk-through = Die Lektion durchspielen
room-walk-keys = Mit den Pfeiltasten links und rechts gehst du durch die Züge und weiter zum nächsten Teil; Pos1 und Ende führen zum ersten und zum letzten.
room-walk-parts = Teile der Lektion
room-walk-part = { $number }
room-walk-part-of = Teil { $number }, Nr. { $post }
room-walk-step = Schritt { $step } von { $steps }
room-walk-start = Vor dem ersten Zug
room-walk-first = Anfang
room-walk-first-what = An den Anfang
room-walk-back = Zurück
room-walk-back-what = Einen Zug zurück
room-walk-forward = Weiter
room-walk-forward-what = Einen Zug weiter
room-walk-last = Ende
room-walk-last-what = Ans Ende der Variante
room-walk-side = Nebenvariante { $move }
room-walk-leave = Zurück zur Hauptvariante
# $told: the move in words.
room-walk-moved = { $move } – { $told }
