# Por qué una jugada falla o no vale: frases que van tras dos puntos o una coma, en minúscula y sin punto.

## Un mate que se evita

mates-in-the-end = { $why }; al final también es mate, pero tarda { $moves-word } jugadas
mates-too-late = también da mate, pero tarda { $moves-word } jugadas
stalemate = es ahogado, porque { $side-name } no están en jaque y no tienen jugada
mates-first = eso es mate, y lo dan { $side-name }

act = { $mover ->
    [yes] { $what ->
        [queen] { $by-the } captura la dama
       *[other] { $by-the } { $what-it } captura
    }
   *[no] { $by-the } captura { $what-the } de { $on }
}
king-takes = { $mover ->
    [yes] { $what ->
        [queen] el rey captura la dama, porque ninguna de tus piezas defiende { $on }
       *[other] el rey { $what-it } captura, porque ninguna de tus piezas defiende { $on }
    }
   *[no] el rey captura { $what-the } de { $on }, porque ninguna de tus piezas defiende { $on }
}
takes = { act }
takes-for-nothing = { act } a cambio de nada
takes-unanswered = { act }, y nada recaptura
takes-pinned = { $pinned-gender ->
    [f] { act }, y { $pinned-your } de { $stands } está clavada y no puede recapturar
   *[m] { act }, y { $pinned-your } de { $stands } está clavado y no puede recapturar
}
takes-guarded = { act }, y tu rey no puede recapturar en una casilla defendida
takes-no-mate = { act }, y recapturar no es mate
takes-no-mate-in-time = { act }, y recapturar no da mate a tiempo

king-gets-out = el rey escapa a { $to }, que ninguna de tus piezas controla
king-gets-out-guard-moved = el rey escapa a { $to }, que { $guard-your } controlaba hasta que se movió
king-gets-out-guard-shut = el rey escapa a { $to }, porque la jugada tapa { $guard-your } de { $stands }, que controlaba esa casilla
king-castles-out = el rey escapa del ataque enrocando

gives-check = da jaque, y { $side-name } tienen que atender primero a eso
comes-with-check = llega con jaque
steps-between = { $by-the } se interpone en { $on }
steps-between-no-mate = { $by-the } se interpone en { $on }, y capturar ahí no es mate
threatens-nothing = no amenaza mate, así que { $side-name } tienen tiempo
threatens-nothing-in = no amenaza mate en { $moves-word }, así que { $side-name } tienen tiempo
now-guards = { $by-the } defiende ahora { $square }, donde se amenazaba el mate
clears-for-king = deja libre { $square } para el rey
king-will-have = el rey tendrá { $square } para escapar cuando cumplas la amenaza
shuts-line = { $by-the } de { $on } cierra la línea de tu amenaza
pins-your = clava { $what-your } de { $on }
meets-threat = eso detiene la amenaza, y no hay otro mate
meets-threat-in = eso detiene la amenaza, y no hay otro mate en { $moves-word }
no-check = no da jaque, así que { $side-name } no están en mate
back-rank-again = la última fila vuelve a estar defendida
back-rank-stays = la última fila sigue defendida

## Una victoria o unas tablas que se escapan

you-cannot-mate = con lo que te queda no se puede dar mate
cannot-mate = con lo que les queda, { $side-name } no pueden dar mate
mates-in = { $side-name } dan mate en { $moves-word }
is-stalemated = { $side-name } quedan ahogadas
checks-for-ever = { $side-name } dan jaque perpetuo
takes-it = { $by-the } { $what-it } captura
takes-pawn-with-check = { $by-the } captura un peón con jaque
costs = eso les cuesta { $lost } a { $side-name }
costs-for = eso les cuesta { $lost } a { $side-name }, a cambio de { $won }
exchange-is-even = el cambio es parejo, así que no se gana nada
still-behind = { $side-name } siguen en desventaja después de eso
material-level = después de eso el material queda igualado
then-falls = luego cae { $what-the } de { $on }
attacks-at-once = ataca { $targets } a la vez
pawn-becomes = el peón llega y se convierte en { $piece-name }
no-more-checks = después de eso { $side-name } ya no tienen jaques
kings-opposed = los reyes quedan en oposición, y son { $side-name } quienes tienen que ceder
steps-out = { $by-the } sale del ataque
takes-pawn-and-steps-out = { $by-the } captura un peón y sale del ataque

search-stands = según una búsqueda de { $depth } medias jugadas, { $side-name } están en { $value }
search-shallow = la búsqueda solo llegó a { $depth } medias jugadas

material = { $piece ->
    [queen] { $number ->
        [1] la dama
       *[other] { $number-word } damas
    }
   *[other] { $number ->
        [1] { $piece-a }
       *[other] { $number-word } { $piece-many }
    }
}
target = { $piece-the } de { $on }

## Una jugada que no vale

their-move = esa sería una jugada de { $theirs-name }, y juegan { $side-name }
stands-there = { $piece-the } ya está en { $on }
own-piece-there = { $square } ya está ocupada por { $own-a } de { $side-name }
in-the-way = { $stone-the } de { $at } le cierra el paso { $piece-to } de { $from }
does-not-reach = { $piece-the } de { $from } no llega a { $to }
none-reaches = { $piece-no } llega a { $to }
none-takes = { $piece-no } puede capturar aquí { $victim-a }
no-pawn-takes-on-file = ningún peón puede capturar en la columna { $file }
no-en-passant = ningún peón puede capturar aquí al paso
no-promotion = ningún peón puede coronar aquí
none-takes-there = { $piece-no } puede capturar ahí
nothing-on = no hay nada en { $square }
not-yours = { $piece-the } de { $on } es de { $theirs-name }, y juegan { $side-name }
other-kind = en { $on } hay { $piece-a }, no { $named-a }
has-none = { $side-name } no tienen { $piece-no }
has-none-on-file = { $side-name } no tienen { $piece-no } en la columna { $file }
has-none-on-rank = { $side-name } no tienen { $piece-no } en la fila { $rank }
not-possible = no es posible
square-guarded = { $piece-the } de { $from } controla { $square }
king-in-check-on = el rey quedaría en jaque en { $square }
double-check = el rey está en jaque doble y tiene que moverse
in-check = { $side-king } está en jaque { $piece-of } de { $from }, y eso no responde al jaque
pinned = { $piece-gender ->
    [f] { $piece-the } de { $on } está clavada al rey por { $by-the } de { $from }
   *[m] { $piece-the } de { $on } está clavado al rey por { $by-the } de { $from }
}
no-new-king = un peón no puede convertirse en rey
not-last-rank = un peón solo corona en la última fila, y { $square } no está en ella
leaves-king-in-check = dejaría al rey en jaque
pawn-takes-elsewhere = un peón de la columna { $file } no puede capturar en { $to }
nothing-to-take = no hay nada que capturar en { $to }
no-pawn-of-file = ningún peón de la columna { $file } llega a { $to }
pawn-blocked = el peón de { $from } está bloqueado por { $stone-the } de { $at }
no-pawn-reaches = { $side-pawn } puede ir a { $to }
neither-castles = el enroque corto no es posible ({ $short }), y el largo tampoco ({ $long })
may-not-castle = { $wing ->
    [long] { $side-name } no pueden enrocar largo en esta posición
   *[short] { $side-name } no pueden enrocar corto en esta posición
}
castling-out-of-check = el rey está en jaque, y estando en jaque no se puede enrocar
castling-blocked = { $stone-the } de { $at } está entre el rey y la torre
castling-guarded = el rey tendría que pasar por { $square } o llegar ahí, y { $piece-the } de { $from } controla esa casilla
castling-not-possible = el enroque no es posible
