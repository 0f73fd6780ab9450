# Auf Discord: was dort nicht ging, für Trainer und für den, der den Bot betreibt.

## Eine Aufgabe, eine Auflösung oder ein Wort an jemanden

no-discord-channel = „{ $channel }“ ist kein Kanal von Discord.
channel-unseen = Ich kann den Kanal nicht sehen; gib meiner Rolle „Kanal ansehen“ unter { $channel } → Kanal bearbeiten → Berechtigungen.
channel-mute = Ich darf dort nicht schreiben; gib meiner Rolle „Nachrichten senden“ unter { $channel } → Kanal bearbeiten → Berechtigungen.
channel-gone = Den Kanal gibt es nicht mehr. Ruf /trainer einrichten in einem anderen auf.
discord-away = Discord ist zurzeit nicht erreichbar.
discord-refuses = Discord lehnt es ab: { $why }.
direct-unsent = Eine Direktnachricht ließ sich nicht senden: { $why }.
part-missing = Ein Teil davon fehlt noch: { $why }.
thread-missing = Die Aufgabe hat noch keinen Thread: { $why }.
buttons-stay = Die geschlossene Aufgabe hat noch ihre Knöpfe: { $why }.

## Die Verbindung

no-token = Es ist kein DISCORD_TOKEN gesetzt.
token-file-unreadable = DISCORD_TOKEN_FILE nennt { $path }, und die Datei lässt sich nicht lesen: { $why }.
token-unfit = DISCORD_TOKEN enthält kein Token; das Token eines Bots ist eine Zeile aus Buchstaben, Ziffern, Punkten, Binde- und Unterstrichen von der Bot-Seite deiner Anwendung (discord.com/developers).
token-file-unfit = Die Datei, die DISCORD_TOKEN_FILE nennt, enthält kein Token; das Token eines Bots ist eine Zeile aus Buchstaben, Ziffern, Punkten, Binde- und Unterstrichen von der Bot-Seite deiner Anwendung (discord.com/developers).
token-refused = Discord lehnt das Token des Bots ab; kopiere es neu von der Bot-Seite deiner Anwendung (discord.com/developers) nach DISCORD_TOKEN oder in die Datei, die DISCORD_TOKEN_FILE nennt.
intent-refused = Discord lehnt den Zugang zu Nachrichteninhalten ab; schalte ihn unter Bot → Privileged Gateway Intents deiner Anwendung ein (discord.com/developers), oder setze message_content = false unter [discord] in den Einstellungen.
not-an-api = SEALED_MOVE_DISCORD_API muss eine Adresse wie http://127.0.0.1:40000 sein, nicht „{ $address }“.
discord-unreachable = Discord ist nicht erreichbar: { $why }.
commands-refused = Discord ist nicht erreichbar: Die Befehle wurden abgelehnt: { $why }.
too-many-logins = { $minutes ->
    [one] Der Bot hat sich heute zu oft angemeldet; Discord lässt ihn in { $minutes } Minute wieder herein.
   *[other] Der Bot hat sich heute zu oft angemeldet; Discord lässt ihn in { $minutes } Minuten wieder herein.
}
gateway-closed = Discord ist nicht erreichbar: Das Gateway hat die Verbindung geschlossen.
no-greeting = Discord begrüßt den Bot nicht.
connection-lost = Die Verbindung ist verloren gegangen.
on-discord = Auf Discord.
