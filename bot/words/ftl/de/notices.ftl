# Was den Trainern einer Gruppe ungefragt gesagt wird, und wie es den Chats geht.

slot-empty = Es ist Zeit für eine Aufgabe, aber in der Woche steht nichts, was hinausgehen darf; also ist nichts hinausgegangen. Importiere Stellungen und setz die korrekten in die Woche; warte dann auf den nächsten Termin, oder stell sofort eine.
no-longer-passes = { $soundness ->
    [several-keys] Vor dem Hinausgehen noch einmal geprüft: { $position } hat mehr als einen Schlüsselzug und geht deshalb nicht hinaus.
    [short] Vor dem Hinausgehen noch einmal geprüft: { $position } lässt sich in weniger Zügen lösen als verlangt und geht deshalb nicht hinaus.
    [unsound] Vor dem Hinausgehen noch einmal geprüft: { $position } hält nicht, was die Aufgabe verspricht, und geht deshalb nicht hinaus.
    [illegal] Vor dem Hinausgehen noch einmal geprüft: { $position } ist nicht zu gebrauchen und geht deshalb nicht hinaus.
   *[other] Vor dem Hinausgehen noch einmal geprüft: { $position } ließ sich in der erlaubten Zeit nicht entscheiden und geht deshalb nicht hinaus.
} Sieh dir den Prüfbericht an, verbessere die Stellung, oder sag, dass sie trotzdem hinausgehen soll.
post-not-sent = { $kind ->
    [problem] Stellung { $number } konnte nicht gesendet werden: { $why } Ich versuche es weiter.
    [question] Frage { $number } konnte nicht gesendet werden: { $why } Ich versuche es weiter.
   *[words] Mitteilung { $number } konnte nicht gesendet werden: { $why } Ich versuche es weiter.
}
reveal-not-sent = { $kind ->
    [problem] Die Auflösung von Stellung { $number } konnte nicht gesendet werden: { $why } Ich versuche es weiter.
   *[question] Der Abschluss von Frage { $number } konnte nicht gesendet werden: { $why } Ich versuche es weiter.
}
example-not-sent = Eine Antwort auf Frage { $number }, die gezeigt oder zurückgenommen wird, konnte im Kanal nicht geändert werden: { $why } Ich versuche es weiter.
due-not-sent = { $name ->
    [none] Was als Nächstes an der Reihe ist, konnte nicht hinausgehen: { $why } Ich versuche es weiter.
   *[other] { $name } ist an der Reihe und konnte nicht hinausgehen: { $why } Ich versuche es weiter.
}
chat-down = { $chat } ist ausgefallen: { $why } Ich versuche es weiter und melde mich, wenn es wieder geht.
chat-refused = { $chat } ist ausgefallen, bis jemand hilft: { $why }
chat-back = { $chat } ist wieder da.
chat-name = { $key ->
    [room] Der Vereinsraum
    [discord] Discord
   *[other] { $name }
}
as-written = { $words }

## Warum ein Chat ausgefallen ist

ended-for-no-reason = Es hat ohne Angabe eines Grundes aufgehört.
not-connected = Es besteht keine Verbindung.
broke-down = Es ist zusammengebrochen, was ein Fehler des Programms ist; wo, steht im Protokoll.

## Genaueres zu dem, was ein Trainer getan hat

note-post = { $kind ->
    [problem] Stellung { $number }
    [question] Frage { $number }
   *[words] Mitteilung { $number }
}
note-verdict = { $verdict ->
    [solved] Stellung { $number }: gelöst
    [on-the-way] Stellung { $number }: auf dem richtigen Weg
    [wrong] Stellung { $number }: falsch
    [illegal] Stellung { $number }: nicht erlaubt
    [unclear] Stellung { $number }: nicht eindeutig
   *[unreadable] Stellung { $number }: nicht lesbar
}
note-mark = Frage { $number }: { $points-text }
note-answer = eine Antwort
note-merged = { $name } war auch { $other }
note-pattern = die Karte { $pattern }
note-words = { $words }
