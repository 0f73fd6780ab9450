# Was ein Mitglied zu seiner Antwort erfährt. Ein Urteil ist einer oder mehrere dieser Sätze.

## Richtig

move-mates = Ja: { $line } ist matt.
line-mates = Gelöst. { $line } ist matt.
key-is-enough = { $moves ->
    [1] Ja, { $line } ist der Schlüsselzug. Bei einem Matt in einem Zug ist nur der Schlüsselzug gefragt.
   *[2] Ja, { $line } ist der Schlüsselzug. In einem Zweizüger ist nur der Schlüsselzug gefragt.
}
key-but-no-mate = { $moves ->
    [1] Ja, { $line } ist der Schlüsselzug, und bei einem Matt in einem Zug ist nur der gefragt. Aber sieh dir { $other } noch einmal an: das ist kein Matt.
   *[2] Ja, { $line } ist der Schlüsselzug, und in einem Zweizüger ist nur der gefragt. Aber sieh dir { $other } noch einmal an: das ist kein Matt.
}
line-holds = Gelöst. Deine Variante hält jeder Verteidigung stand.
stalemate-draws = Gelöst. Nach { $line } ist es patt, und das ist remis.
too-little-left = Gelöst. Nach { $line } hat { $side-name } nicht mehr genug zum Mattsetzen.
comes-again = { $task ->
    [draw] Gelöst. Nach { $line } ist die Stellung wieder da: das hält remis.
   *[win] Gelöst. Nach { $line } ist die Stellung wieder da: das gewinnt.
}
line-does = { $task ->
    [draw] Gelöst. { $line } hält remis.
   *[win] Gelöst. { $line } gewinnt.
}
does-too = { $task ->
    [draw] Ja, { $line } hält auch remis. Das zählt voll.
   *[win] Ja, { $line } gewinnt auch. Das zählt voll.
}
does-too-by-tables = { $task ->
    [draw] Ja, { $line } hält nach den Endspieltabellen auch remis. Das zählt voll.
   *[win] Ja, { $line } gewinnt nach den Endspieltabellen auch. Das zählt voll.
}
does-too-by-search = { $task ->
    [draw] Ja, { $line } hält auch remis, nach einer Suche von { $depth } Halbzügen. Das zählt voll.
   *[win] Ja, { $line } gewinnt auch, nach einer Suche von { $depth } Halbzügen. Das zählt voll.
}

## So weit richtig

right-so-far = { $line } ist so weit richtig.
right-but = { $line } ist richtig. Aber was ist mit { $answer }? Du bist am Zug.
right-and-answered = { $line } ist richtig. { $side-name } antwortet { $answer }. Du bist am Zug.
right-after = Nach { $line } ist deine Variante richtig. Was ist mit { $answer }? Du bist am Zug.
side-lines-right = Diese Nebenvarianten sind richtig. Jetzt weiter mit der Stellung auf dem Brett. Du bist am Zug.
go-on = Weiter mit der Stellung auf dem Brett. Du bist am Zug.

## Falsch

each-has-to-hold = Wer mehrere Züge angibt, bei dem muss jeder stimmen.
mates-late = { $left ->
    [one] { $line } setzt matt, aber nicht in einem Zug: es braucht { $moves-word }.
   *[other] { $line } setzt matt, aber nicht in { $left-word } Zügen: es braucht { $moves-word }.
}
fails = { $line } geht nicht.
fails-because = { $line } geht nicht: { $why }.
for-example = Zum Beispiel { $line }.
answers = { $side-name } antwortet { $line }.
answers-because = { $side-name } antwortet { $line }: { $why }.
does-not = { $task ->
    [draw] { $line } hält nicht remis.
   *[win] { $line } gewinnt nicht.
}
does-not-because = { $task ->
    [draw] { $line } hält nicht remis: { $why }.
   *[win] { $line } gewinnt nicht: { $why }.
}
by-tables = { $task ->
    [draw] (Nach den Endspieltabellen verloren.)
   *[win] (Nach den Endspieltabellen kein Gewinn.)
}
by-search = (Nach einer Suche von { $depth } Halbzügen.)

## Die eigenen Varianten des Trainers. $words steht so da, wie er es geschrieben hat.

coach-shows = Dein Trainer zeigt { $line }.
coach-shows-because = Dein Trainer zeigt { $line }: { $why }.
coach-on-move = Dein Trainer zu { $line }: „{ $words }“

## Offen gelassen

not-certain = { $task ->
    [draw] Ob { $line } remis hält, kann ich nicht sicher sagen; ich nenne es weder richtig noch falsch. Dein Trainer sieht es sich an.
   *[win] Ob { $line } gewinnt, kann ich nicht sicher sagen; ich nenne es weder richtig noch falsch. Dein Trainer sieht es sich an.
}
not-settled = Über { $line } bin ich in der Zeit, die ich habe, zu keinem Urteil gekommen. Dein Trainer sieht es sich an.
taken-as-question = Das verstehe ich als Frage und nicht als Antwort: nichts wurde beurteilt, und es kostet nichts.
taken-as-thought = Das verstehe ich als Überlegung und nicht als Antwort: nichts wurde beurteilt, und es kostet nichts.
nothing-claimed = Ich finde darin keinen Zug, den du als Antwort gibst: nichts wurde beurteilt, und es kostet nichts.
write-your-move = Schreib den Zug, den du spielen würdest.
send-just-that = Wenn { $reading } deine Antwort ist, schick nur das; wenn nicht, schreib den Zug, den du spielen würdest.
send-one-of = Wenn eines davon deine Antwort ist, schick nur das: { $readings }.
several-ways = Das kann ich auf mehr als eine Art verstehen; nichts wurde beurteilt, und es kostet nichts. Schick nur die Züge deiner Antwort.
several-ways-of = Das kann ich auf mehr als eine Art verstehen; nichts wurde beurteilt, und es kostet nichts. Meinst du { $readings }?

## Nicht gelesen

too-long = Das ist zu lang: ich lese höchstens { $most } Zeichen. Schick nur die Züge.
longer-than-any-solution = Das ist länger als jede Lösung. Die ersten { $most } Zeichen sind aufgehoben, und nichts wurde beurteilt; schick nur die Züge, etwa 1.Dh7+ Kf8 2.Dh8#.
no-move = Ich finde darin keinen Zug, also hat sich nichts geändert. Schreib ihn, wie du magst: mit Buchstaben und Feldern, von Feld zu Feld oder in Worten.
followed = Bis { $line } konnte ich folgen.
impossible = „{ $written }“ ist nicht möglich.
impossible-because = „{ $written }“ ist nicht möglich: { $why }.
possible-there = Möglich wäre: { $moves }.
ambiguous = „{ $written }“ kann mehr als ein Zug sein: { $moves }. Welchen meinst du?
ambiguous-among = „{ $written }“ kann mehr als ein Zug sein: { $moves }. Welchen meinst du?
garbled = „{ $written }“ konnte ich nicht als Zug lesen. Bitte schreib ihn noch einmal.
