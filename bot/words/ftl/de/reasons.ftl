# Warum ein Zug scheitert oder keiner ist: Aussagen, die nach einem Doppelpunkt oder Komma stehen.

## Ein Matt, das verhindert wird

mates-in-the-end = { $why }; matt wird es am Ende auch, aber erst in { $moves-word } Zügen
mates-too-late = matt wird es auch so, aber erst in { $moves-word } Zügen
stalemate = es ist patt, denn { $side-name } steht nicht im Schach und hat keinen Zug
mates-first = das ist matt, und zwar setzt { $side-name } matt

act = { $mover ->
    [yes] { $what ->
        [queen] { $by-nom } schlägt die Dame
       *[other] { $by-nom } schlägt { $what-it }
    }
   *[no] { $by-nom } schlägt { $what-acc } auf { $on }
}
king-takes = { $mover ->
    [yes] { $what ->
        [queen] der König schlägt die Dame, denn keine deiner Figuren deckt { $on }
       *[other] der König schlägt { $what-it }, denn keine deiner Figuren deckt { $on }
    }
   *[no] der König schlägt { $what-acc } auf { $on }, denn keine deiner Figuren deckt { $on }
}
takes = { act }
takes-for-nothing = { act }, und du bekommst nichts dafür
takes-unanswered = { act }, und nichts schlägt zurück
takes-pinned = { act }, und { $pinned-your-nom } auf { $stands } ist gefesselt und darf nicht zurückschlagen
takes-guarded = { act }, und dein König darf auf einem gedeckten Feld nicht zurückschlagen
takes-no-mate = { act }, und das Zurückschlagen setzt nicht matt
takes-no-mate-in-time = { act }, und das Zurückschlagen setzt nicht rechtzeitig matt

king-gets-out = der König entkommt nach { $to }, das keine deiner Figuren deckt
king-gets-out-guard-moved = der König entkommt nach { $to }, das { $guard-your-nom } bis zu diesem Zug gedeckt hat
king-gets-out-guard-shut = der König entkommt nach { $to }, denn der Zug verstellt { $guard-your-acc } auf { $stands }, von wo aus das Feld gedeckt war
king-castles-out = der König entkommt dem Angriff durch die Rochade

gives-check = es gibt Schach, und darum muss sich { $side-name } zuerst kümmern
comes-with-check = es geschieht mit Schach
steps-between = { $by-nom } zieht auf { $on } dazwischen
steps-between-no-mate = { $by-nom } zieht auf { $on } dazwischen, und wer dort schlägt, setzt nicht matt
threatens-nothing = es droht kein Matt, also hat { $side-name } Zeit
threatens-nothing-in = es droht kein Matt in { $moves-word } Zügen, also hat { $side-name } Zeit
now-guards = { $by-nom } deckt jetzt { $square }, wo das Matt drohte
clears-for-king = das räumt { $square } für den König
king-will-have = der König hat dann { $square } als Fluchtfeld, wenn du die Drohung ausführst
shuts-line = { $by-nom } auf { $on } verstellt die Linie deiner Drohung
pins-your = das fesselt { $what-your-acc } auf { $on }
meets-threat = das pariert die Drohung, und ein anderes Matt gibt es nicht
meets-threat-in = das pariert die Drohung, und ein anderes Matt in { $moves-word } Zügen gibt es nicht
no-check = es ist kein Schach, also ist { $side-name } nicht matt
back-rank-again = die Grundreihe ist wieder gedeckt
back-rank-stays = die Grundreihe bleibt gedeckt

## Ein Gewinn oder ein Remis, das verfehlt wird

you-cannot-mate = mit dem, was dir bleibt, kann man nicht mattsetzen
cannot-mate = mit dem, was { $side-name } bleibt, kann man nicht mattsetzen
mates-in = { $side-name } setzt in { $moves-word } Zügen matt
is-stalemated = { $side-name } ist patt
checks-for-ever = { $side-name } gibt Dauerschach
takes-it = { $by-nom } schlägt { $what-it }
takes-pawn-with-check = { $by-nom } schlägt einen Bauern mit Schach
costs = das kostet { $side-name } { $lost }
costs-for = das kostet { $side-name } { $lost } für { $won }
exchange-is-even = der Abtausch geht auf, also ist nichts gewonnen
still-behind = { $side-name } liegt danach immer noch zurück
material-level = danach ist das Material gleich
then-falls = danach fällt { $what-nom } auf { $on }
attacks-at-once = das greift { $targets } zugleich an
pawn-becomes = der Bauer kommt durch und wird { $piece ->
    [queen] eine Dame
    [rook] ein Turm
    [bishop] ein Läufer
   *[knight] ein Springer
}
no-more-checks = danach hat { $side-name } kein Schach mehr
kings-opposed = die Könige stehen sich gegenüber, und { $side-name } muss weichen
steps-out = { $by-nom } entzieht sich dem Angriff
takes-pawn-and-steps-out = { $by-nom } schlägt einen Bauern und entzieht sich dem Angriff

search-stands = nach einer Suche von { $depth } Halbzügen steht { $side-name } bei { $value }
search-shallow = die Suche kam nur { $depth } Halbzüge tief

material = { $piece ->
    [queen] { $number ->
        [1] die Dame
       *[other] { $number-word } Damen
    }
   *[other] { $number ->
        [1] { $piece-a-acc }
       *[other] { $number-word } { $piece-many }
    }
}
target = { $piece-acc } auf { $on }

## Ein Zug, der keiner ist

their-move = das wäre ein Zug von { $theirs-name }, und { $side-name } ist am Zug
stands-there = { $piece-nom } steht schon auf { $on }
own-piece-there = auf { $square } steht schon { $own-a-nom } von { $side-name }
in-the-way = { $stone-nom } auf { $at } steht { $piece-dat } auf { $from } im Weg
does-not-reach = { $piece-nom } auf { $from } kommt nicht nach { $to }
none-reaches = { $piece-no-nom } kommt nach { $to }
none-takes = { $piece-no-nom } kann hier { $victim-a-acc } schlagen
no-pawn-takes-on-file = kein Bauer kann auf der { $file }-Linie schlagen
no-en-passant = kein Bauer kann hier en passant schlagen
no-promotion = kein Bauer kann hier umgewandelt werden
none-takes-there = { $piece-no-nom } kann dort schlagen
nothing-on = auf { $square } steht nichts
not-yours = { $piece-nom } auf { $on } gehört { $theirs-name }, und { $side-name } ist am Zug
other-kind = auf { $on } steht { $piece-a-nom } und { $named-no-nom }
has-none = { $side-name } hat { $piece-no-acc }
has-none-on-file = { $side-name } hat auf der { $file }-Linie { $piece-no-acc }
has-none-on-rank = { $side-name } hat auf der { $rank }. Reihe { $piece-no-acc }
not-possible = das geht nicht
square-guarded = { $piece-nom } auf { $from } deckt { $square }
king-in-check-on = der König stünde auf { $square } im Schach
double-check = der König steht im Doppelschach und muss ziehen
in-check = { $side-king } steht im Schach { $piece ->
    [queen] der Dame
    [pawn] des Bauern
    [bishop] des Läufers
    [knight] des Springers
    [rook] des Turms
   *[king] des Königs
} auf { $from }, und das hebt es nicht auf
pinned = { $piece-nom } auf { $on } ist durch { $by-acc } auf { $from } an den König gefesselt
no-new-king = ein Bauer kann nicht König werden
not-last-rank = umgewandelt wird nur auf der letzten Reihe, und dort liegt { $square } nicht
leaves-king-in-check = der König bliebe im Schach
pawn-takes-elsewhere = ein Bauer der { $file }-Linie kann nicht auf { $to } schlagen
nothing-to-take = auf { $to } gibt es nichts zu schlagen
no-pawn-of-file = kein Bauer der { $file }-Linie kommt nach { $to }
pawn-blocked = der Bauer auf { $from } wird durch { $stone-acc } auf { $at } aufgehalten
no-pawn-reaches = { $side-pawn } kann nach { $to } ziehen
neither-castles = die kurze Rochade geht nicht ({ $short }), die lange auch nicht ({ $long })
may-not-castle = { $wing ->
    [long] { $side-name } darf in dieser Stellung nicht lang rochieren
   *[short] { $side-name } darf in dieser Stellung nicht kurz rochieren
}
castling-out-of-check = der König steht im Schach, und aus dem Schach heraus rochiert man nicht
castling-blocked = { $stone-nom } auf { $at } steht zwischen König und Turm
castling-guarded = der König müsste über { $square } ziehen oder dort ankommen, und das Feld deckt { $piece-nom } auf { $from }
castling-not-possible = die Rochade geht nicht
