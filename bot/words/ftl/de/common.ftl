# Was jeder Chat von einer Stellung und von Punkten sagt.

task-mate = { $moves ->
    [1] { $side-name } zieht und setzt in einem Zug matt.
   *[other] { $side-name } zieht und setzt in { $moves-word } Zügen matt.
}
task-win = { $side-name } zieht und gewinnt.
task-draw = { $side-name } zieht und hält remis.
no-solution-proved = Es wurde keine Lösung bewiesen; frag deinen Trainer.
## A move in words, for those who do not see the board

# $from and $to are squares.
piece-goes = { $side-name }: { $piece-nom } zieht von { $from } nach { $to }.
piece-takes = { $side-name }: { $piece-nom } schlägt von { $from } aus { $taken-acc } auf { $to }.
king-castles = { $short ->
    [yes] { $side-name } rochiert kurz.
   *[no] { $side-name } rochiert lang.
}
pawn-promotes = Der Bauer verwandelt sich; auf dem Feld steht nun { $piece-a-nom }.
walk-check = Schach.
walk-mate = Matt.

## Sprachen, in denen Antworten gelesen werden

# Im laufenden Text; in einer Auswahl wird der erste Buchstabe groß.
language-name = { $language ->
    [german] Deutsch
    [french] Französisch
    [spanish] Spanisch
    [italian] Italienisch
    [portuguese] Portugiesisch
    [dutch] Niederländisch
    [russian] Russisch
    [polish] Polnisch
    [czech] Tschechisch
    [hungarian] Ungarisch
    [turkish] Türkisch
   *[english] Englisch
}

## Wie hier gezählt wird

rule-full-solution = Eine vollständige Lösung ist 5 Punkte wert. In einem Zweizüger ist nur der Schlüsselzug gefragt. In einem längeren Matt zählt der Schlüsselzug 1 Punkt; die anderen 4 teilen sich auf die Varianten von voller Länge auf, abgerundet auf halbe Punkte; die Mattzüge brauchst du nicht anzugeben. Bei einem Gewinn oder Remis ist die Variante gefragt, bis der Gewinn auf dem Brett oder das Remis klar ist, höchstens vier Züge: Der erste Zug zählt 1 Punkt, die übrigen teilen sich 4. Ein falscher Schlüsselzug zählt nichts, mehrere erste Züge, von denen einer falsch ist, auch nicht. (Die fünf Punkte und wofür es sie gibt: die Löseregeln des Weltverbands für Schachkomposition; die Aufteilung stammt von uns.)
rule-wrong-free = In dieser Gruppe kosten falsche Züge nichts.
rule-wrong-ends = { $later ->
    [one] In dieser Gruppe gibt es nach einem falschen ersten Zug für die Stellung nichts mehr. Ein falscher Zug später in der Variante kostet { $later-text } Punkt.
   *[other] In dieser Gruppe gibt es nach einem falschen ersten Zug für die Stellung nichts mehr. Ein falscher Zug später in der Variante kostet { $later-text } Punkte.
}
rule-wrong-takes = { $wrong ->
    [one] In dieser Gruppe kostet jeder falsche erste Zug { $wrong-text } Punkt von dem, was folgt, und ein falscher Zug später in der Variante { $later-text }.
   *[other] In dieser Gruppe kostet jeder falsche erste Zug { $wrong-text } Punkte von dem, was folgt, und ein falscher Zug später in der Variante { $later-text }.
}
rule-hint-free = Tipps kosten nichts.
rule-hint-takes = { $hint ->
    [one] Jeder Tipp kostet { $hint-text } Punkt.
   *[other] Jeder Tipp kostet { $hint-text } Punkte.
}
rule-least = { $points ->
    [one] Wer eine Stellung löst, behält mindestens { $points-text } Punkt, außer der letzte Tipp hat den Zug gezeigt.
   *[other] Wer eine Stellung löst, behält mindestens { $points-text } Punkte, außer der letzte Tipp hat den Zug gezeigt.
}
rule-best = Von deinen Antworten auf eine Stellung zählt die beste, und zwar so viel, wie sie wert war, als sie kam. Eine Antwort, die nicht erlaubt, nicht eindeutig oder nicht lesbar ist, kostet nichts. Eine Stellung behält die Preise, mit denen sie erschienen ist. Dein Trainer kann jedes Urteil ändern, und die Punkte ändern sich mit.

## Eine Stellung, die schon aufbewahrt ist

same-again = Dieselbe Stellung ist schon gespeichert, als { $kept }; diese Datei gibt ihr { $differs }.
same-again-as = Dieselbe Stellung ist schon gespeichert, als { $kept }; diese Datei gibt ihr { $differs }: { $given }.
kept-stays = Die gespeicherte bleibt, wie sie ist.
same-taken = Jetzt gilt die aus der Datei.
same-both = Beide Themen und beide Texte sind gespeichert.
version-of = „{ $name }“, { $topics }
version-without-topic = „{ $name }“, ohne Thema
another-name = einen anderen Namen
another-topic = ein anderes Thema
other-words = andere Worte
other-moves = andere Züge oder Anmerkungen
