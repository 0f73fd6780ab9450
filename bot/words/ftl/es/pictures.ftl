# Lo que está escrito en las imágenes, y las palabras que las sustituyen para quien no puede verlas.

## Una posición

alt-side = { $side-start }: { $pieces }.
alt-pieces = { $piece ->
    [king] { $number ->
        [one] rey { $squares }
       *[other] reyes { $squares }
    }
    [queen] { $number ->
        [one] dama { $squares }
       *[other] damas { $squares }
    }
    [rook] { $number ->
        [one] torre { $squares }
       *[other] torres { $squares }
    }
    [bishop] { $number ->
        [one] alfil { $squares }
       *[other] alfiles { $squares }
    }
    [knight] { $number ->
        [one] caballo { $squares }
       *[other] caballos { $squares }
    }
   *[pawn] { $number ->
        [one] peón { $squares }
       *[other] peones { $squares }
    }
}
alt-castles = { $wings ->
    [both] { $side-start } pueden enrocar a ambos lados.
    [short] { $side-start } pueden enrocar corto.
   *[long] { $side-start } pueden enrocar largo.
}
alt-en-passant = Se puede capturar al paso en { $on }.
alt-to-move = Juegan { $side-name }.
alt-last-move = Última jugada: de { $from } a { $to }.

## Lo que se señala

alt-refutation = Flecha de la refutación: de { $from } a { $to }.
alt-steps = Flechas numeradas: { $steps }.
alt-step = la { $number } de { $from } a { $to }
alt-open = Casillas de escape libres: { $squares }.
alt-guarded = Casillas de escape controladas: { $flights }.
alt-flight = { $on }
alt-flight-by = { $on } por { $guards }
alt-guard = { $piece-name } { $on }
alt-blocked = Ocupadas por piezas propias: { $squares }.
alt-guards = { $piece ->
    [king] El rey de { $from } controla { $to }.
    [queen] La dama de { $from } controla { $to }.
    [rook] La torre de { $from } controla { $to }.
    [bishop] El alfil de { $from } controla { $to }.
    [knight] El caballo de { $from } controla { $to }.
    [pawn] El peón de { $from } controla { $to }.
   *[any] { $from } controla { $to }.
}
alt-marked = Señaladas: { $squares }.

legend-last-move = última jugada
legend-refutation = refutación
legend-steps = jugadas en orden
legend-open = escape libre
legend-guarded = escape controlado
legend-blocked = ocupada por pieza propia
legend-guard = control
legend-square = casilla señalada

## Una solución, y una línea jugada a jugada

picture-heading = N.º { $number }
picture-heading-pattern = N.º { $number } · { $patterns }
picture-example = Ejemplo: { $pattern }
picture-example-topic = Ejemplo: { $topic }
reveal-more = y más
alt-heading = { $heading }.
alt-final = Posición final.
alt-solution = Solución: { $line }.
strip-to-move = Juegan { $side-name }
alt-strip = La línea jugada a jugada. Desde:
alt-moves = Jugadas: { $line }.

## Gráficos

chart-participation = Quién ha participado, posición a posición
chart-solved = Resueltas, posición a posición
chart-mastery = Temas, el más flojo primero
chart-wrong = Posición { $number }: primeras jugadas que fallan
chart-nothing = Todavía nada.
chart-key-solved = resuelta
chart-key-took-part = participantes
chart-key-mean = media de la semana
chart-key-interval = resuelta, y el margen con tan pocos (95 %)
chart-key-first = al primer intento
chart-key-later = resuelta después
chart-key-unsolved = sin resolver
chart-of = { $part } de { $whole }
chart-share = { $percent } % de { $whole }
chart-percent = { $percent } %
chart-members = { $number ->
    [one] { $number } miembro
   *[other] { $number } miembros
}
chart-week = { $first ->
    [none] { $from }–{ $to } { $last }
   *[other] { $from } { $first }–{ $to } { $last }
}

alt-chart-nothing = { $title }: todavía nada.
alt-chart-more = { $more } más en la tabla
alt-week = { $week }, { $mean-text } miembros por publicación:
alt-day = el { $day }, { $tried } han participado y { $solved } la han resuelto
alt-rate = { $label }: { $solved } de { $tried } resueltas, { $percent } % (probablemente del { $low } al { $high } %)
alt-nobody-tried = { $label }: nadie lo ha intentado
alt-mastery = { $topic }: { $solved } de { $tried } resueltas, { $percent } %, { $first } al primer intento
alt-wrong = { $number ->
    [one] { $line }, { $number } miembro
   *[other] { $line }, { $number } miembros
}

## Hojas para imprimir

sheet-name = Nombre: ____________________
sheet-solutions = Soluciones
alt-sheet-item = N.º { $number }, { $task }:
sheet-question = Pregunta
sheet-to-be-read = Para leer
