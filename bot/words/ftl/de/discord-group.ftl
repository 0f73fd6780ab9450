# Auf Discord: was ein Trainer über die Gruppe erfährt.

## Sie einrichten

coaches-only = Das ist nur für die Trainer der Gruppe. Ein Trainer kann mit /{ command-coach } { command-coach-add-coach } einen weiteren ernennen.
set-up-may-not = Um eine Gruppe einzurichten, brauchst du die Berechtigung „Kanäle verwalten“. Frag, wer diesen Server betreibt.
set-up-no-channel = Eine Gruppe braucht einen Textkanal des Servers; ruf das in einem solchen auf, nicht in einem Thread.
no-name = Lerngruppe
set-up = **{ $name }** ist in { $channel } eingerichtet, und du bist Trainer der Gruppe.
set-up-bot = Ein Bot kann nicht Trainer sein; die Gruppe ist eingerichtet, nenn mit /{ command-coach } { command-coach-add-coach } eine Person.
coaches-too = { $name } ist auch Trainer.
without-content = Ich wurde ohne den „Message Content Intent“ gestartet: In diesem Kanal und seinen Threads höre ich nur Nachrichten, die mich erwähnen, und Antworten auf meine Beiträge mit eingeschalteter Erwähnung. Knöpfe, Befehle und Direktnachrichten gehen wie immer.
set-up-next = Als Nächstes: Häng eine Datei mit Stellungen (EPD oder PGN) an /{ command-coach } { command-coach-check } an.

## Einstellungen

settings-are = So ist es eingestellt:
settings-changed = Geändert. Ab jetzt gilt:
goes-out = Eine Stellung erscheint { $days } um { $times } ({ $zone }) und bleibt { $open } offen.
days-every = jeden Tag
days-none = an keinem Tag (nur wenn du sie selbst stellst)
days-from-to = von { $first } bis { $last }
days-on = am { $days }
monday = Montag
tuesday = Dienstag
wednesday = Mittwoch
thursday = Donnerstag
friday = Freitag
saturday = Samstag
sunday = Sonntag
open-days = { $number ->
    [one] { $number } Tag
   *[other] { $number } Tage
}
open-hours = { $number ->
    [one] { $number } Stunde
   *[other] { $number } Stunden
}
open-minutes = { $number ->
    [one] { $number } Minute
   *[other] { $number } Minuten
}
replies-are = { $mode ->
    [open] Antworten sind offen: Die Urteile stehen für alle hinter Spoiler-Markierungen.
   *[sealed] Antworten sind versiegelt: Bis zur Auflösung sieht jeder nur sein eigenes Urteil.
}
points-tournament = { $hint ->
    [0] Eine Stellung ist 5 Punkte wert. Nach einem falschen ersten Zug gibt es keine mehr, wie im Turnier; ein Tipp kostet nichts.
    [one] Eine Stellung ist 5 Punkte wert. Nach einem falschen ersten Zug gibt es keine mehr, wie im Turnier; ein Tipp kostet { $hint-text } Punkt.
   *[other] Eine Stellung ist 5 Punkte wert. Nach einem falschen ersten Zug gibt es keine mehr, wie im Turnier; ein Tipp kostet { $hint-text } Punkte.
}
points-free = Eine Stellung ist 5 Punkte wert. Falsche Züge und Tipps kosten nichts.
points-each = { $each ->
    [one] Eine Stellung ist 5 Punkte wert. Ein falscher erster Zug und ein Tipp kosten je { $each-text } Punkt; wer sie löst, ohne dass der Zug gezeigt wurde, behält mindestens 1.
   *[other] Eine Stellung ist 5 Punkte wert. Ein falscher erster Zug und ein Tipp kosten je { $each-text } Punkte; wer sie löst, ohne dass der Zug gezeigt wurde, behält mindestens 1.
}
points-club = { $wrong ->
    [0] { $hint ->
        [one] Eine Stellung ist 5 Punkte wert. Ein falscher erster Zug kostet nichts, ein Tipp { $hint-text } Punkt; wer sie löst, ohne dass der Zug gezeigt wurde, behält mindestens 1.
       *[other] Eine Stellung ist 5 Punkte wert. Ein falscher erster Zug kostet nichts, ein Tipp { $hint-text } Punkte; wer sie löst, ohne dass der Zug gezeigt wurde, behält mindestens 1.
    }
    [one] { $hint ->
        [0] Eine Stellung ist 5 Punkte wert. Ein falscher erster Zug kostet { $wrong-text } Punkt, ein Tipp nichts; wer sie löst, ohne dass der Zug gezeigt wurde, behält mindestens 1.
       *[other] Eine Stellung ist 5 Punkte wert. Ein falscher erster Zug kostet { $wrong-text } Punkt, ein Tipp { $hint-text }; wer sie löst, ohne dass der Zug gezeigt wurde, behält mindestens 1.
    }
   *[other] { $hint ->
        [0] Eine Stellung ist 5 Punkte wert. Ein falscher erster Zug kostet { $wrong-text } Punkte, ein Tipp nichts; wer sie löst, ohne dass der Zug gezeigt wurde, behält mindestens 1.
       *[other] Eine Stellung ist 5 Punkte wert. Ein falscher erster Zug kostet { $wrong-text } Punkte, ein Tipp { $hint-text }; wer sie löst, ohne dass der Zug gezeigt wurde, behält mindestens 1.
    }
}
defences-are = { $defences ->
    [differ] Die Verteidigungen in einer Variante sind von Mitglied zu Mitglied verschieden.
   *[same] Die Verteidigungen in einer Variante sind für alle gleich.
}
letters-and-look = Figurenbuchstaben: { $language }. Aussehen der Diagramme: { $style ->
    [light] hell
    [dark] dunkel
    [contrast] kontrastreich
   *[print] wie gedruckt
}.
no-zone = „{ $written }“ ist keine Zeitzone, die ich kenne; wähl eine aus der Liste, die sich beim Tippen öffnet, etwa Europe/Berlin.
no-time-of-day = „{ $written }“ ist keine Uhrzeit; schreib sie so: 18:00, und mehrere mit Leerzeichen dazwischen.
no-days = „{ $written }“ sind keine Tage, die ich kenne; schreib sie so: mo-fr, di,do oder jeden Tag.
no-span = „{ $written }“ ist keine Zeit, die ich eine Stellung offen halten kann; schreib sie so: 23h, 90m oder 2d, höchstens 31 Tage.

## Berechtigungen, mit den Namen aus Discords Einstellungen

permissions-all = Ich habe hier jede Berechtigung, die ich brauchen kann.
permissions-missing = Mir fehlen hier Berechtigungen. Du gibst sie unter { $channel } → Kanal bearbeiten → Berechtigungen → meine Rolle:
permissions-one-more = Ich habe hier alles, was ich brauche. Eine weitere Berechtigung kannst du geben unter { $channel } → Kanal bearbeiten → Berechtigungen → meine Rolle:
without-view-channel = - **Kanal ansehen**: Sonst kann ich nichts stellen und höre Antworten nur als Befehl und als Direktnachricht.
without-send-messages = - **Nachrichten senden**: Sonst kann ich nichts stellen.
without-attach-files = - **Dateien anhängen**: Sonst kommen die Stellungen in Worten, ohne Diagramm.
without-create-threads = - **Öffentliche Threads erstellen**: Sonst gibt es keinen Thread zum Reden.
without-send-in-threads = - **Nachrichten in Threads senden**: Sonst sage ich in den Threads nichts.
without-read-history = - **Nachrichtenverlauf anzeigen**: Sonst entgehen mir Antworten aus der Zeit, in der ich weg war.
without-add-reactions = - **Reaktionen hinzufügen**: Sonst kann ich nicht zeigen, dass eine Antwort angekommen ist, wenn ihr Absender keine Direktnachrichten annimmt.
without-manage-messages = - **Nachrichten verwalten**, nur wenn du willst: Sonst bleiben Züge, die Mitglieder öffentlich schreiben, für alle sichtbar.

## Trainer und Mitglieder

bot-cannot-coach = Ein Bot kann nicht Trainer sein; nenn eine Person.
coach-added = { $name } ist jetzt Trainer dieser Gruppe.
coach-removed = { $name } ist nicht mehr Trainer dieser Gruppe und bleibt Mitglied.
members-head = **Mitglieder**
member-row = { $answers ->
    [one] - { $name } · { $answers } Antwort
   *[other] - { $name } · { $answers } Antworten
}
member-row-coach = { $answers ->
    [one] - { $name } · { $answers } Antwort · Trainer
   *[other] - { $name } · { $answers } Antworten · Trainer
}
member-row-removed = { $answers ->
    [one] - { $name } · { $answers } Antwort · ausgeschlossen { $since }
   *[other] - { $name } · { $answers } Antworten · ausgeschlossen { $since }
}
deeds-head = **Was die Trainer zuletzt getan haben**
deed-word = { $deed ->
    [hide] Nachricht verborgen
    [put-back] Nachricht zurückgeholt
    [mute] stummgeschaltet
    [unmute] wieder reden lassen
    [remove] ausgeschlossen
    [let-back] wieder zugelassen
    [rename] umbenannt
    [merge] zwei Mitglieder zusammengeführt
    [export] Gespeichertes mitgenommen
    [erase] gelöscht
    [judge] Antwort beurteilt
    [answer] nur dem Mitglied geantwortet
    [no-answer] Antwort ohne Erwiderung erledigt
    [member-link] neuer Link für Mitglieder
    [coach-link] neuer Link für Trainer
    [coach-came] über den Trainerlink gekommen
    [add-coach] zum Trainer gemacht
    [remove-coach] nicht mehr Trainer
    [settings] Einstellungen geändert
    [post-now] sofort gestellt
    [close-now] Stellung geschlossen
    [pause] Pause begonnen
    [write-card] Themenkarte geschrieben
    [take-back-card] Themenkarte zurückgenommen
   *[resume] Pause beendet
}
erased-coach = ein gelöschter Trainer
member-removed = { $name } macht nicht mehr mit: Bis /{ command-coach } { command-coach-member } { command-coach-member-let-back } nehme ich keine Antwort an. Was sonst auf diesem Server geschrieben wird, ist Sache von Discords eigener Moderation.
member-back = { $name } macht wieder mit.
members-merged = Es ist jetzt ein Mitglied, { $name }. Wo beide dieselbe Stellung versucht haben, zählen die Antworten in der Reihenfolge, in der sie kamen.
kept-of-member = Alles, was in dieser Gruppe über { $name } gespeichert ist. Es gehört dem Mitglied: Gib es weiter und behalt keine Kopie.
erase-member-asked = Willst du alles von { $name } in dieser Gruppe löschen: Name, Antworten, Tipps und Punkte? Das lässt sich nicht rückgängig machen. Wer ausgeschlossen war, ist dann nicht mehr bekannt und nicht mehr ausgeschlossen.
erased-member = Alles, was in dieser Gruppe über das Mitglied gespeichert war, ist gelöscht.
