# Was in Bildern steht, und die Worte anstelle eines Bildes für alle, die es nicht sehen.

## Eine Stellung

alt-side = { $side-name }: { $pieces }.
alt-pieces = { $piece ->
    [king] { $number ->
        [one] König { $squares }
       *[other] Könige { $squares }
    }
    [queen] { $number ->
        [one] Dame { $squares }
       *[other] Damen { $squares }
    }
    [rook] { $number ->
        [one] Turm { $squares }
       *[other] Türme { $squares }
    }
    [bishop] { $number ->
        [one] Läufer { $squares }
       *[other] Läufer { $squares }
    }
    [knight] { $number ->
        [one] Springer { $squares }
       *[other] Springer { $squares }
    }
   *[pawn] { $number ->
        [one] Bauer { $squares }
       *[other] Bauern { $squares }
    }
}
alt-castles = { $wings ->
    [both] { $side-name } darf nach beiden Seiten rochieren.
    [short] { $side-name } darf kurz rochieren.
   *[long] { $side-name } darf lang rochieren.
}
alt-en-passant = Auf { $on } kann en passant geschlagen werden.
alt-to-move = { $side-name } am Zug.
alt-last-move = Letzter Zug: { $from } nach { $to }.

## Was gezeigt wird

alt-refutation = Pfeil für die Widerlegung: { $from } nach { $to }.
alt-steps = Nummerierte Pfeile: { $steps }.
alt-step = { $number } von { $from } nach { $to }
alt-open = Freie Fluchtfelder: { $squares }.
alt-guarded = Gedeckte Fluchtfelder: { $flights }.
alt-flight = { $on }
alt-flight-by = { $on } durch { $guards }
alt-guard = { $piece ->
    [king] König { $on }
    [queen] Dame { $on }
    [rook] Turm { $on }
    [bishop] Läufer { $on }
    [knight] Springer { $on }
    [pawn] Bauer { $on }
   *[any] { $on }
}
alt-blocked = Von eigenen Steinen verstellt: { $squares }.
alt-guards = { $piece ->
    [king] König { $from } deckt { $to }.
    [queen] Dame { $from } deckt { $to }.
    [rook] Turm { $from } deckt { $to }.
    [bishop] Läufer { $from } deckt { $to }.
    [knight] Springer { $from } deckt { $to }.
    [pawn] Bauer { $from } deckt { $to }.
   *[any] { $from } deckt { $to }.
}
alt-marked = Markiert: { $squares }.

legend-last-move = letzter Zug
legend-refutation = Widerlegung
legend-steps = Züge der Reihe nach
legend-open = freies Fluchtfeld
legend-guarded = gedecktes Fluchtfeld
legend-blocked = vom eigenen Stein verstellt
legend-guard = Deckung
legend-square = markiertes Feld

## Eine Auflösung, und eine Variante Zug um Zug

picture-heading = Nr. { $number }
picture-heading-pattern = Nr. { $number } · { $patterns }
picture-example = Beispiel: { $pattern }
picture-example-topic = Beispiel: { $topic }
reveal-more = und weitere
alt-heading = { $heading }.
alt-final = Schlussstellung.
alt-solution = Lösung: { $line }.
strip-to-move = { $side-name } am Zug
alt-strip = Die Variante Zug um Zug. Von:
alt-moves = Züge: { $line }.

## Diagramme der Auswertung

chart-participation = Wer mitgemacht hat, Stellung für Stellung
chart-solved = Gelöst, Stellung für Stellung
chart-mastery = Themen, das schwächste zuerst
chart-wrong = Stellung { $number }: erste Züge, die nicht gehen
chart-nothing = Noch nichts.
chart-key-solved = gelöst
chart-key-took-part = mitgemacht
chart-key-mean = mitgemacht, Wochenmittel
chart-key-interval = gelöst, mit dem Spielraum bei so wenigen (95 %)
chart-key-first = im ersten Versuch
chart-key-later = später gelöst
chart-key-unsolved = nicht gelöst
chart-of = { $part } von { $whole }
chart-share = { $percent } % von { $whole }
chart-percent = { $percent } %
chart-members = { $number ->
    [one] { $number } Mitglied
   *[other] { $number } Mitglieder
}
chart-week = { $first ->
    [none] { $from }.–{ $to }. { $last }
   *[other] { $from }. { $first }–{ $to }. { $last }
}

alt-chart-nothing = { $title }: noch nichts.
alt-chart-more = { $more } weitere in der Tabelle
alt-week = { $week }, { $mean-text } Mitglieder je Aufgabe:
alt-day = am { $day }. haben { $tried } mitgemacht und { $solved } gelöst
alt-rate = { $label }: { $solved } von { $tried } gelöst, { $percent } % (wohl { $low } bis { $high } %)
alt-nobody-tried = { $label }: niemand hat es versucht
alt-mastery = { $topic }: { $solved } von { $tried } gelöst, { $percent } %, { $first } im ersten Versuch
alt-wrong = { $number ->
    [one] { $line }, { $number } Mitglied
   *[other] { $line }, { $number } Mitglieder
}

## Blätter zum Drucken

sheet-name = Name: ____________________
sheet-solutions = Lösungen
alt-sheet-item = Nr. { $number }, { $task }:
sheet-question = Frage
sheet-to-be-read = Zum Lesen
