# Was der Raum sagt, wenn etwas nicht ging, und wenn etwas getan ist.

## An der Tür

no-invitation = Du bist nicht im Raum: Öffne den Link, den dir dein Trainer gegeben hat.
removed-from-group = Dein Trainer hat dich aus dieser Gruppe genommen. Was du vorher geschrieben hast, ist noch gespeichert: Frag deinen Trainer, wenn du eine Kopie möchtest oder es gelöscht haben willst.
nameless-member = Wähle zuerst einen Namen, damit die Gruppe weiß, wer spricht.
nameless-coach = Sag zuerst, wer du bist: Öffne die Trainerseite und gib dort deinen Namen an.
not-by-coach-link = Das darf nur der Trainer: Öffne den Trainerlink, den der Bot beim Start ausgegeben hat.
strange-host = Unter dieser Adresse antwortet der Raum nicht. Benutze den Link so, wie der Trainer ihn gegeben hat, oder setze public_url.
strange-origin = Diese Anfrage kam nicht von den Seiten des Raums, deshalb wurde nichts getan.

## Namen und Geräte

name-empty = Schreib den Namen, den die Gruppe sehen soll, zum Beispiel deinen Vornamen.
new-name-empty = Schreib zuerst den neuen Namen.
name-tells-move = Diesen Namen würden alle sehen, und er könnte einen Zug der offenen Stellung verraten. Wähle einen anderen.
code-not-right = Dieser Code stimmt nicht, oder er ist zu alt: Ein Code gilt zehn Minuten lang und für ein Gerät. Sieh noch einmal auf deinem anderen Gerät nach oder lass es einen neuen zeigen.
too-many-codes = In diesem Raum wurden zu viele falsche Codes versucht. Warte zehn Minuten und lass dann dein anderes Gerät einen neuen zeigen.
browser-is-taken = Dieser Browser gehört schon zu { $name }. Wenn auch das du bist, bitte deinen Trainer, euch beide zu einer Person zu machen.
language-unknown = „{ $asked }“ ist keine Sprache, die der Bot spricht. Wähle eine der angebotenen.

## Was gesendet wurde

message-empty = In der Nachricht steht noch nichts.
message-too-large = Die Nachricht ist zu lang; höchstens 50.000 Zeichen. Nichts davon wurde übernommen.
request-too-large = Das war zu groß; eine Antwort darf 50.000 Zeichen haben, eine Datei 16 MB. Nichts davon wurde übernommen.
request-unreadable = Die Anfrage war nicht zu lesen: { $detail }.
request-broke-off = Die Anfrage brach ab, bevor sie vollständig war; versuch es noch einmal.
too-fast = So schnell kann der Bot nicht lesen. Warte ein paar Sekunden und sende es noch einmal; es wurde nicht angenommen.

## Dateien prüfen

file-empty = { $name } ist leer. Füge eine EPD- oder PGN-Datei oder FEN-Zeilen ein, oder zieh eine Datei hierher.
check-going-on = Gerade wird eine andere Datei geprüft; warte, bis sie fertig ist, und zieh diese dann noch einmal hierher.
check-broke-off = Die Prüfung brach ab. Was bis dahin behalten wurde, liegt im Vorrat; warum, steht im Protokoll.
other-version-gone = Die andere Fassung dieser Stellung ist nicht mehr da. Prüf die Datei noch einmal und wähle dann.
time-unreadable = „{ $written }“ ist kein Tag mit Uhrzeit; schreib sie wie 2026-12-01T18:00.

## Das Übrige

nothing-here = Unter dieser Adresse ist nichts.
fault-inside = Im Bot ist etwas schiefgegangen. Was vorher gespeichert wurde, ist nicht verloren; bitte sag dem Bescheid, der ihn betreibt.
no-random-numbers = Der Rechner, auf dem der Bot läuft, liefert keine Zufallszahlen, deshalb lässt sich kein Geheimnis erzeugen. Bitte sag dem Bescheid, der ihn betreibt.
all-erased = Alles, was über dich gespeichert war, ist gelöscht.

## Für den, der den Bot betreibt

room-not-open = Der Vereinsraum ist in den Einstellungen geschlossen.
cannot-listen = Der Raum kann unter { $address } nicht erreichbar gemacht werden: { $why }. Wähle in den Einstellungen eine andere Adresse oder einen anderen Port.
not-a-web-address = „{ $address }“ ist keine Webadresse; schreib sie wie https://chess.example.org, ohne Pfad.
no-secret-links = Der Rechner gibt keine Zufallszahlen, also lassen sich keine geheimen Links machen: { $why }.
server-ended = Sein Server ist zu Ende: { $why }.
members-enter = Für Mitglieder: { $link }
coach-enters = Für den Trainer: { $link }
