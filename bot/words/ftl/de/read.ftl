# Was mit Dateien und Stellungen nicht stimmt: Aussagen hinter einem Doppelpunkt, ohne Punkt am Ende.
# $written, $tag und $code stehen so in der Datei.

unreadable = { $file }, Zeile { $row }: { $what }
odd-row = Zeile { $row }: { $what }

## Die Datei als Ganzes

file-over-limit = die Datei hat { $size } MB; gelesen werden höchstens { $most } MB auf einmal, also teil sie auf
file-lacks-mark = die Datei sieht aus wie UTF-16 ohne Kennung; speichere sie als UTF-8
file-is-no-text = die Datei ist kein Text (sie enthält Nullbytes); gib eine Textdatei in EPD, PGN oder FEN
file-changes-encoding = die Datei beginnt als UTF-16 und geht anders weiter; speichere sie als UTF-8
file-holds-nothing = die Datei ist leer; hinein gehören Stellungen als EPD- oder FEN-Zeilen oder Partien in PGN
file-begins-strangely = mit „{ $written }“ beginnt weder eine FEN- oder EPD-Zeile noch eine PGN-Partie; eine Stellung beginnt etwa mit „8/8/8/8/8/5k2/5p2/5K2 w - -“, eine Partie mit [Event "..."]
file-holds-positions = in dieser Datei stehen Stellungen und keine Partien; gib eine Datei mit Partien in PGN
file-holds-games = in der Datei stehen { $games } ganze Partien, jede von der Grundstellung an, und keine Stellung zum Prüfen; in ganzen Partien sucht `sealed-move find` nach Stellungen, und was es findet, lässt sich hier lesen

## Eine Zeile

line-too-long = die Zeile hat mehr als { $most } Zeichen; in einer Zeile steht eine Stellung
line-lost = { $what }
read-as-windows = diese Zeile ist nicht in UTF-8; sie wurde als Windows-1252 gelesen
nul-byte = { $before ->
    [0] die Zeile beginnt mit einem Nullbyte, und das ist kein Text; schreib sie neu
   *[other] die Zeile enthält nach { $before } Byte ein Nullbyte, und das ist kein Text; schreib sie neu
}
strange-byte = { $before ->
    [0] die Zeile beginnt mit dem Byte { $byte }, das weder in UTF-8 noch in Windows-1252 Text ist; schreib sie neu, am besten in UTF-8
   *[other] die Zeile enthält nach { $before } Byte das Byte { $byte }, das weder in UTF-8 noch in Windows-1252 Text ist; schreib sie neu, am besten in UTF-8
}
broken-character = die Zeile enthält ein kaputtes UTF-16-Zeichen; schreib sie neu, am besten in UTF-8

## Eine Partie: ihre Tags

tag-unread = dieses Tag lässt sich nicht lesen: { $written }; ein Tag schreibt man [Name "Wert"]
tag-beside-moves = diese Partie hat Züge und ein Tag { $tag }, das in eine Partie ohne Züge gehört; lass das eine oder das andere weg
tag-empty = das Tag { $tag } ist leer; schreib den Text hinein, etwa [{ $tag } "Was will Weiß?"]
question-lacks-words = das Tag Task "?" macht aus dieser Partie eine Frage, und der Text dazu fehlt; schreib ihn als Tag, etwa [Question "Was will Weiß?"], oder als Kommentar
game-from-the-start = diese Partie beginnt mit der Grundstellung; gib die Stellung, die geprüft werden soll, mit einem Tag an, etwa [FEN "8/8/8/8/8/5k2/5p2/5K2 w - - 0 1"]; in ganzen Partien sucht `sealed-move find` nach Stellungen, und was es findet, lässt sich hier lesen
tag-no-task = Tag { $tag }: { $why }
stipulation-error = „{ $written }“ ist keine Forderung; schreib #1 bis #{ $most } für ein Matt, + für Gewinn oder = für Remis
tag-no-position = Tag FEN: { $why }

## Eine Lektion: eine Partie für jeden Schritt

lesson-too-long = eine Lektion hat höchstens { $most } Schritte, und dieser ist einer mehr; mach zwei Lektionen daraus
# $why: stipulation-error
stop-no-task = die Marke des Stopps: { $why }
lead-too-long = die Worte und die Züge, die vor dem Stopp oder als Beispiel gezeigt werden, haben zusammen mehr als { $most } Zeichen, und mehr geht nicht auf einmal hinaus; mach zwei Schritte daraus
part-too-long = diese Worte haben mehr als { $most } Zeichen, und mehr geht nicht auf einmal hinaus; kürze sie, oder mach zwei Schritte daraus
step-empty = dieser Schritt hat weder Worte noch Züge; schreib, was er zeigt, oder nimm ihn heraus
step-asks-nothing = dieser Schritt soll gelöst werden, und nichts wird darin gefragt; gib seine Forderung an, oder gib den gefragten Zug ein

## Eine Partie: ihre Züge

game-unread = die Partie lässt sich nicht lesen
null-move = in der Hauptvariante steht ein Nullzug (--); schreib die Idee in einen Kommentar
move-not-legal = der Zug { $line } ist hier nicht möglich; prüf ihn, die Züge davor und die FEN
move-not-clear = der Zug { $line } ist mehrdeutig; schreib dazu, von welcher Linie oder Reihe die Figur kommt
game-too-long = die Partie hat mit allen Varianten mehr als { $most } Züge; teil sie auf
moves-too-long = die Variante ist länger als { $most } Halbzüge
variation-too-soon = eine Variante steht vor dem ersten Zug; sie gehört hinter den Zug, den sie ersetzt
bracket-not-opened = zu dieser schließenden Klammer gibt es keine öffnende
bracket-not-closed = diese Klammer wird nicht geschlossen
comment-not-closed = dieser Kommentar hört nicht auf; beende ihn mit einer geschweiften Klammer
brace-not-opened = diese schließende geschweifte Klammer beendet keinen Kommentar
glyph-unknown = „{ $written }“ ist kein Kommentarzeichen; sie gehen von $0 bis $255
move-unread = „{ $written }“ lässt sich nicht als Zug lesen; Anmerkungen gehören in geschweifte Klammern

## Eine EPD-Zeile

operation-wanted = wo eine EPD-Angabe wie bm, dm oder id beginnen müsste, steht „{ $written }“; jede endet mit einem Semikolon
quotation-not-closed = hinter { $code } fehlt das schließende Anführungszeichen
operation-lacks-move = zu { $code } fehlt der Zug; schreib etwa „{ $code } Nf3;“
length-wanted = zu dm gehört, in wie vielen Zügen es matt wird, von 1 bis { $most }, etwa „dm 3;“
operation-no-task = task: { $why }
question-wants-words = zu question gehört ein Text, etwa question "Was will Weiß?";
operand-unread = { $code }: „{ $written }“ lässt sich nicht als Zug lesen; schreib etwa Nf3, exd5 oder e8=Q
operand-not-legal = { $code }: „{ $written }“ ist in dieser Stellung nicht möglich
operand-not-clear = { $code }: „{ $written }“ ist mehrdeutig; schreib dazu, von welcher Linie oder Reihe die Figur kommt
no-position-here = { $why }

## Eine Stellung

not-a-fen = das ist keine FEN („{ $written }“); zu ihr gehören die acht Reihen, dann w oder b, die Rochaden und en passant, etwa „8/8/8/8/8/5k2/5p2/5K2 w - -“
fen-ranks = { $ranks ->
    [one] das Brett der FEN hat { $ranks } Reihe und braucht acht, mit / dazwischen; sieh nach, welche fehlt, doppelt oder nicht abgetrennt ist
   *[other] das Brett der FEN hat { $ranks } Reihen und braucht acht, mit / dazwischen; sieh nach, welche fehlt, doppelt oder nicht abgetrennt ist
}
fen-squares = { $squares ->
    [one] die { $rank }. Reihe der FEN, „{ $written }“, hat { $squares } Feld und braucht acht; zähl die Figuren und die leeren Felder dazwischen
   *[other] die { $rank }. Reihe der FEN, „{ $written }“, hat { $squares } Felder und braucht acht; zähl die Figuren und die leeren Felder dazwischen
}
fen-strange = in der { $rank }. Reihe der FEN steht auf { $square } „{ $found }“; Figuren sind KQRBNP (Weiß) und kqrbnp (Schwarz), und 1 bis 8 sind leere Felder
fen-strange-after = in der { $rank }. Reihe der FEN steht nach { $squares } Feldern „{ $found }“; Figuren sind KQRBNP (Weiß) und kqrbnp (Schwarz), und 1 bis 8 sind leere Felder
fen-turn = im 2. Feld der FEN, wer am Zug ist, steht „{ $written }“; schreib w oder b
fen-castling = im 3. Feld der FEN, den Rochaden, steht „{ $written }“; schreib von KQkq die möglichen, oder -
fen-en-passant = im 4. Feld der FEN, en passant, steht „{ $written }“; schreib das Feld, das ein Bauer eben übersprungen hat, etwa e3 oder d6, oder -
fen-half-moves = im 5. Feld der FEN, den Halbzügen seit dem letzten Schlag- oder Bauernzug, steht „{ $written }“; schreib eine Zahl wie 0
fen-move-number = im 6. Feld der FEN, der Zugnummer, steht „{ $written }“; schreib eine Zahl wie 1
fen-surplus = hinter den sechs Feldern der FEN steht noch „{ $written }“; nimm es weg

board-empty = das Brett ist leer; setz die Figuren in das erste Feld der FEN
no-kings = es gibt keine Könige; jede Seite braucht genau einen
no-king = { $side ->
    [white] es gibt keinen weißen König; jede Seite braucht genau einen
   *[black] es gibt keinen schwarzen König; jede Seite braucht genau einen
}
many-kings = { $side ->
    [white] es gibt mehr als einen weißen König; jede Seite braucht genau einen
   *[black] es gibt mehr als einen schwarzen König; jede Seite braucht genau einen
}
pawn-on-last-rank = auf der ersten oder letzten Reihe steht ein Bauer ({ $squares }); versetz ihn oder wandle ihn um
other-side-in-check = die Seite, die nicht am Zug ist, steht im Schach; prüf, wer am Zug ist
both-in-check = beide Seiten stehen im Schach; prüf, wer am Zug ist
rules-do-not-apply = auf diese Stellung lassen sich die Regeln nicht anwenden

castling-rights-dropped = Rochaderechte ohne König und Turm auf ihren Ausgangsfeldern wurden gestrichen
en-passant-dropped = das Feld für en passant passt zu keinem Doppelschritt eines Bauern und wurde gestrichen
too-many-pieces = so viele Figuren gibt keine Umwandlung her; die Stellung kann in einer Partie nicht entstehen
impossible-check = kein letzter Zug kann dieses Schach gegeben haben; die Stellung kann in einer Partie nicht entstehen

## Die Worte des Trainers

words-held = der Text zur Stellung verrät einen Zug ({ $line }) und wird bis zur Auflösung zurückgehalten: „{ $words }“; schreib [post] davor, wenn er trotzdem mit der Stellung erscheinen soll
long-words-held = der Text zur Stellung hat mehr als { $most } Zeichen; das hier wird bis zur Auflösung zurückgehalten: „{ $words }“
words-cut = das ist mehr Text, als für eine Auflösung aufgehoben wird ({ $most } Zeichen zur Stellung und { $beside } neben den Zügen); das Ende ist weggelassen
