# Lo que usan los demás archivos: números, listas, piezas, bandos.

language = Español
decimal-sign = ,
thousands-sign =  
thousands-from = 5

weekday-names = lunes martes miércoles jueves viernes sábado domingo
month-names = enero febrero marzo abril mayo junio julio agosto septiembre octubre noviembre diciembre
month-names-short = ene feb mar abr may jun jul ago sep oct nov dic
# Va detrás de «el» o «hasta el».
moment = { $weekday } { $day } de { $month } a las { $time }
dated = { $day } de { $month } de { $year } a las { $time }
day = { $day } de { $month }
date = { $day } de { $month } de { $year }
# Rey, dama, torre, alfil, caballo, como se escriben las jugadas.
piece-letters = RDTAC

number = { $n ->
    [0] ninguna
    [1] una
    [2] dos
    [3] tres
    [4] cuatro
    [5] cinco
    [6] seis
    [7] siete
    [8] ocho
    [9] nueve
    [10] diez
   *[other] { $n }
}

list-comma = { $first }, { $next }
list-and = { $first } y { $next }
list-or = { $first } o { $next }
list-why = { $first }, y { $next }

# .the, .a, .your, .no: con artículo, con «un», con «tu», con «ningún»; .to: con «a»; .of: con «de»;
# .it: el pronombre; .many: el plural; .gender: m o f.
piece-pawn = peón
    .name = peón
    .the = el peón
    .a = un peón
    .your = tu peón
    .no = ningún peón
    .to = al peón
    .of = del peón
    .it = lo
    .many = peones
    .gender = m
piece-knight = caballo
    .name = caballo
    .the = el caballo
    .a = un caballo
    .your = tu caballo
    .no = ningún caballo
    .to = al caballo
    .of = del caballo
    .it = lo
    .many = caballos
    .gender = m
piece-bishop = alfil
    .name = alfil
    .the = el alfil
    .a = un alfil
    .your = tu alfil
    .no = ningún alfil
    .to = al alfil
    .of = del alfil
    .it = lo
    .many = alfiles
    .gender = m
piece-rook = torre
    .name = torre
    .the = la torre
    .a = una torre
    .your = tu torre
    .no = ninguna torre
    .to = a la torre
    .of = de la torre
    .it = la
    .many = torres
    .gender = f
piece-queen = dama
    .name = dama
    .the = la dama
    .a = una dama
    .your = tu dama
    .no = ninguna dama
    .to = a la dama
    .of = de la dama
    .it = la
    .many = damas
    .gender = f
piece-king = rey
    .name = rey
    .the = el rey
    .a = un rey
    .your = tu rey
    .no = ningún rey
    .to = al rey
    .of = del rey
    .it = lo
    .many = reyes
    .gender = m
piece-any = pieza
    .name = pieza
    .the = la pieza
    .a = una pieza
    .your = tu pieza
    .no = ninguna pieza
    .to = a la pieza
    .of = de la pieza
    .it = la
    .many = piezas
    .gender = f

# .start: al comienzo de la frase.
side-white = las blancas
    .name = las blancas
    .start = Las blancas
    .king = el rey blanco
    .pawn = ningún peón blanco
side-black = las negras
    .name = las negras
    .start = Las negras
    .king = el rey negro
    .pawn = ningún peón negro
