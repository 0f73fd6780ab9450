# Qué encuentra una revisión. El mensaje consta de frases enteras; lo que va debajo como nota son frases tras dos
# puntos, en minúscula y sin punto final.

## El mensaje

mated-already = El bando que juega ya está en mate; mira a quién le toca.
stalemated-already = El bando que juega no tiene jugada: es ahogado. Mira a quién le toca.
no-move-left = El bando que juega no tiene jugada; mira a quién le toca.

sooner-mate = { $moves ->
    [1] Hay mate en una jugada, antes que en las { $asked } pedidas: { $line }. Pon como enunciado #{ $moves }, o cambia la posición.
   *[other] Hay mate en { $moves } jugadas, antes que en las { $asked } pedidas: { $line }. Pon como enunciado #{ $moves }, o cambia la posición.
}
several-mates = { $moves ->
    [1] { $number } claves dan mate en una jugada: { $keys }. Cambia la posición para que quede una, o acéptalas todas.
   *[other] { $number } claves dan mate en { $moves } jugadas: { $keys }. Cambia la posición para que quede una, o acéptalas todas.
}
no-mate-in = { $moves ->
    [1] No hay mate en una jugada.
   *[other] No hay mate en { $moves } jugadas o menos.
}
holds-against = { $whose ->
    [promised] { $number ->
        [1] Tras la prometida { $first }, la única defensa que aguanta es { $reply }.
       *[other] Tras la prometida { $first }, { $reply } aguanta (en total aguantan { $number } defensas).
    }
    [try] { $number ->
        [1] Tras el ensayo { $first }, la única defensa que aguanta es { $reply }.
       *[other] Tras el ensayo { $first }, { $reply } aguanta (en total aguantan { $number } defensas).
    }
   *[any] { $number ->
        [1] Tras { $first }, la única defensa que aguanta es { $reply }.
       *[other] Tras { $first }, { $reply } aguanta (en total aguantan { $number } defensas).
    }
}
leaves-stalemate = { $whose ->
    [promised] Tras la prometida { $first } es ahogado.
    [try] Tras el ensayo { $first } es ahogado.
   *[any] Tras { $first } es ahogado.
}
is-no-mate = { $whose ->
    [promised] Tras la prometida { $first } no es mate.
    [try] Tras el ensayo { $first } no es mate.
   *[any] Tras { $first } no es mate.
}
longer-mate = Hay mate en { $moves } jugadas, con { $keys }.
more-untold = El tiempo o el trabajo permitidos se acabaron antes de poder decir más.
promise-no-mate = { $moves ->
    [1] { $others ->
        [one] El archivo promete { $promised }, y eso no es mate; da mate { $keys }.
       *[other] El archivo promete { $promised }, y eso no es mate; dan mate { $keys }.
    }
   *[other] { $others ->
        [one] El archivo promete { $promised }, y eso no da mate en { $moves } jugadas; la clave es { $keys }.
       *[other] El archivo promete { $promised }, y eso no da mate en { $moves } jugadas; las claves son { $keys }.
    }
}
avoided-mates = { $moves ->
    [1] { $number ->
        [one] El archivo desaconseja { $avoided }, y da mate.
       *[other] El archivo desaconseja { $avoided }, y dan mate.
    }
   *[other] { $number ->
        [one] El archivo desaconseja { $avoided }, y da mate en { $moves } jugadas.
       *[other] El archivo desaconseja { $avoided }, y dan mate en { $moves } jugadas.
    }
}
variations-doubtful = No todo está bien en las variantes del archivo: mira las notas.
variations-hold = { $depth ->
    [none] Las { $number } variantes del archivo valen.
   *[other] Las { $number } variantes del archivo valen, según una búsqueda de { $depth } medias jugadas.
}
variations-mate = { $more ->
    [0] Está demostrado que tras { $lines } el mate es forzado.
    [one] Está demostrado que tras { $lines } y en { $more } variante más el mate es forzado.
   *[other] Está demostrado que tras { $lines } y en { $more } variantes más el mate es forzado.
}

## El mensaje, cuando un mate queda sin decidir

mate-unsettled = El tiempo o el trabajo permitidos se acabaron antes de decidir { $task }.
nothing-proved-yet = Todavía no hay nada demostrado.
mate-proved = { $moves ->
    [1] Hasta ahora está demostrado que { $line } da mate en el acto.
   *[other] Hasta ahora está demostrado que { $line } da mate en { $moves } jugadas y que no hay mate más corto.
}
only-key-without-line = Es la única clave, pero aún no se conoce su línea principal.
other-keys-without-line = { $number ->
    [one] Otra clave es { $keys }, pero aún no se conoce la línea principal.
   *[other] Otras claves son { $keys }, pero aún no se conoce la línea principal.
}
not-only-key = { $moves ->
    [1] { $number ->
        [one] No es la única clave: { $keys } también da mate en el acto.
       *[other] No es la única clave: { $keys } también dan mate en el acto.
    }
   *[other] { $number ->
        [one] No es la única clave: { $keys } también da mate en { $moves } jugadas.
       *[other] No es la única clave: { $keys } también dan mate en { $moves } jugadas.
    }
}
only-key-open = Si es la única clave, está por decidir.
first-moves-open = { $more ->
    [0] { $failed ->
        [one] De las demás primeras jugadas está refutada { $failed }, y está por ver si estas dan mate: { $open }.
       *[other] De las demás primeras jugadas están refutadas { $failed }, y está por ver si estas dan mate: { $open }.
    }
   *[other] { $failed ->
        [one] De las demás primeras jugadas está refutada { $failed }, y está por ver si estas dan mate: { $open } y { $more } más.
       *[other] De las demás primeras jugadas están refutadas { $failed }, y está por ver si estas dan mate: { $open } y { $more } más.
    }
}
no-mate-proved = { $moves ->
    [1] Hasta ahora está demostrado que no hay mate en una jugada.
   *[other] Hasta ahora está demostrado que no hay mate en { $moves } jugadas o menos.
}
first-moves-fail = { $failed ->
    [one] De las { $all } primeras jugadas está demostrado que { $failed } tampoco da mate en { $moves }.
   *[other] De las { $all } primeras jugadas está demostrado que { $failed } tampoco dan mate en { $moves }.
}
allow-more = Permite más y revísala otra vez.
allow-more-or-shorter = Permite más, o pide mates más cortos, y revísala otra vez.

## El mensaje, si hay que ganar o hacer tablas

no-mate-so-win = { $moves ->
    [1] No hay mate en una jugada, así que se buscó una victoria.
   *[other] No hay mate en { $moves } jugadas o menos, así que se buscó una victoria.
}
no-mate-sought = La mitad del tiempo o del trabajo permitidos no bastó para buscar un mate, así que se buscó una victoria.
no-mate-then-cut = { $moves ->
    [1] No hay mate en una jugada; para mates más largos no bastó la mitad del tiempo o del trabajo permitidos, así que se buscó una victoria.
   *[other] No hay mate en { $moves } jugadas o menos; para mates más largos no bastó la mitad del tiempo o del trabajo permitidos, así que se buscó una victoria.
}
ended-early = { $task ->
    [draw] El tiempo o el trabajo permitidos se acabaron con una búsqueda de { $depth } medias jugadas, demasiado pronto para juzgar si el bando que juega hace tablas.
   *[win] El tiempo o el trabajo permitidos se acabaron con una búsqueda de { $depth } medias jugadas, demasiado pronto para juzgar si el bando que juega gana.
}
may-be-more = Puede haber más; no se juzgaron todas las jugadas.
search-prefers = El archivo promete { $promised }, y la búsqueda prefiere { $keys }.

tables-better = Según las tablas de finales, el bando que juega consigue más que tablas; pon como enunciado +.
tables-none = { $task ->
    [draw] Según las tablas de finales, ninguna jugada hace tablas.
   *[win] Según las tablas de finales, ninguna jugada gana.
}
tables-several = { $task ->
    [draw] Según las tablas de finales, más de una jugada hace tablas: { $keys }. Cambia la posición para que quede una, o acéptalas todas.
   *[win] Según las tablas de finales, más de una jugada gana: { $keys }. Cambia la posición para que quede una, o acéptalas todas.
}

judged-better = Según una búsqueda de { $depth } medias jugadas, el bando que juega consigue más que tablas: { $best }. Pon como enunciado +.
judged-none = { $task ->
    [draw] Según una búsqueda de { $depth } medias jugadas, ninguna jugada hace tablas; lo mejor: { $best }.
   *[win] Según una búsqueda de { $depth } medias jugadas, ninguna jugada gana; lo mejor: { $best }.
}
judged-several = { $task ->
    [draw] Según una búsqueda de { $depth } medias jugadas, más de una jugada hace tablas: { $keys }. Cambia la posición para que quede una, o acéptalas todas.
   *[win] Según una búsqueda de { $depth } medias jugadas, más de una jugada gana: { $keys }. Cambia la posición para que quede una, o acéptalas todas.
}
judged-best = Según una búsqueda de { $depth } medias jugadas, sin demostrar: { $best }; la siguiente mejor: { $next }.
judged-only = Según una búsqueda de { $depth } medias jugadas, sin demostrar: { $best }, y es la única jugada.

move-stands-at = { $line } está en { $value }
move-mates-in = { $moves ->
    [1] { $line } da mate en el acto
   *[other] { $line } da mate en { $moves } jugadas
}
move-is-mated-in = { $moves ->
    [1] { $line } recibe mate en una jugada
   *[other] { $line } recibe mate en { $moves } jugadas
}

## El tema, cuando nombra un patrón

topic-shown = { $extent ->
    [only] Tema comprobado: { $pattern } queda en el tablero tras { $last }, al final de la única variante de longitud completa.
    [all] Tema comprobado: { $pattern } queda en el tablero tras { $last }, al final de la variante principal y de cada variante de longitud completa ({ $lines } en total).
    [some] Tema comprobado: { $pattern } queda en el tablero tras { $last }, al final de la variante principal (en { $showing } de { $lines } variantes de longitud completa).
   *[main] Tema comprobado: { $pattern } queda en el tablero tras { $last }, al final de la variante principal.
}
topic-shown-by-coach = Tema comprobado: { $pattern } queda en el tablero tras { $last }, al final de tu variante { $line }. A partir de { $from } el mate está demostrado.
topic-not-shown = { $shows ->
    [none] { $whose ->
        [main] Tema sin comprobar, { $pattern }: la variante principal { $line } termina con { $last } en un mate sin nombre.
        [full] Tema sin comprobar, { $pattern }: la variante { $line }, de longitud completa, termina con { $last } en un mate sin nombre.
       *[own] Tema sin comprobar, { $pattern }: tu variante { $line } termina con { $last } en un mate sin nombre.
    }
   *[other] { $whose ->
        [main] Tema sin comprobar, { $pattern }: la variante principal { $line } termina con { $last } en otro cuadro, { $shows }.
        [full] Tema sin comprobar, { $pattern }: la variante { $line }, de longitud completa, termina con { $last } en otro cuadro, { $shows }.
       *[own] Tema sin comprobar, { $pattern }: tu variante { $line } termina con { $last } en otro cuadro, { $shows }.
    }
}
topic-without-mate = Tema sin comprobar, { $pattern }: ninguna variante termina en mate. Da tu propia variante hasta el mate, como PGN, y lo que se rehúsa como variantes secundarias.
topic-unsettled = Tema sin comprobar, { $pattern }: el tiempo o el trabajo permitidos se acabaron antes de saberlo. Permite más y revisa otra vez.
topic-not-all-known = { $lines ->
    [one] Tema sin comprobar, { $pattern }: lo muestra { $lines } variante, y no se conocen todas las de longitud completa.
   *[other] Tema sin comprobar, { $pattern }: lo muestran { $lines } variantes, y no se conocen todas las de longitud completa.
}
topic-unchecked = Tema sin comprobar, { $pattern }: la posición se revisó cuando aún no se guardaban los cuadros finales. Se revisa de nuevo antes de publicarla, o cuando revises otra vez su archivo.
topic-figures = { $showing ->
    [one] De las { $lines } variantes de longitud completa lo muestra { $showing }.
   *[other] De las { $lines } variantes de longitud completa lo muestran { $showing }.
}
topic-elsewhere = { $shows ->
    [none] La variante { $line } termina con { $last } en un mate sin nombre.
   *[other] La variante { $line } termina con { $last } en otro cuadro, { $shows }.
}
topic-declined = { $number ->
    [one] Una de tus variantes termina sin mate: { $line }.
   *[other] { $number } de tus variantes terminan sin mate, la primera es { $line }.
}

## Las notas

tries-cut = el tiempo o el trabajo permitidos se acabaron antes de buscar todos los ensayos; las claves están completas, y la dificultad no está estimada
fifty-moves = el FEN cuenta { $number } medias jugadas sin captura ni jugada de peón; en una partida se podrían reclamar tablas por las cincuenta jugadas antes del mate, en un problema no cuentan
position-again = es otra vez la posición «{ $id }»
topic-too-long = el tema del archivo pasa de { $most } caracteres y se ha dejado fuera; empieza por «{ $begins }»
kept-with-other-task = la misma posición está guardada con otro enunciado: { $kept }

in-variation = línea { $row }, jugada { $line }: { $what }
more-in-variations = { $more ->
    [one] en las variantes del archivo falla { $more } cosa más
   *[other] en las variantes del archivo fallan { $more } cosas más
}
variations-cut = el tiempo o el trabajo permitidos se acabaron en la línea { $row }, jugada { $line }, antes de revisar todas las variantes del archivo

goes-on-too-long = la variante sigue más allá de las jugadas que permite el enunciado
had-to-mate = { $better ->
    [none] no es mate; el mate ya se perdió antes
   *[other] no es mate; mejor es { $better }
}
lets-mate-go = { $better ->
    [none] { $holds ->
        [none] después no hay mate en { $moves } jugadas; el mate ya se perdió antes
       *[other] después no hay mate en { $moves } jugadas; { $holds } aguanta; el mate ya se perdió antes
    }
   *[other] { $holds ->
        [none] después no hay mate en { $moves } jugadas; mejor es { $better }
       *[other] después no hay mate en { $moves } jugadas; { $holds } aguanta; mejor es { $better }
    }
}
wrong-yet-mates = { $moves ->
    [1] está marcada como mala, y sin embargo da mate en el acto
   *[other] está marcada como mala, y sin embargo da mate en { $moves } jugadas
}
holds-not = { $number ->
    [one] no refuta la jugada anterior; { $holds } sí
   *[other] no refuta la jugada anterior; { $holds } sí lo hacen
}
sign-yet-mates = la variante termina con un signo de que no gana, pero lleva al mate
mate-sign-wrong = está escrita con #, pero no es mate
wrong-yet-does = { $task ->
    [draw] está marcada como mala, y sin embargo hace tablas: { $standing }
   *[win] está marcada como mala, y sin embargo gana: { $standing }
}
lets-it-go = { $better ->
    [none] { $task ->
        [draw] ya no hace tablas: { $standing }; ninguna jugada hace ya tablas
       *[win] ya no gana: { $standing }; ninguna jugada gana ya
    }
   *[other] { $task ->
        [draw] ya no hace tablas: { $standing }; mejor es { $better }
       *[win] ya no gana: { $standing }; mejor es { $better }
    }
}
refutes-not = { $better ->
    [none] no refuta la jugada anterior: { $standing }
   *[other] no refuta la jugada anterior: { $standing }; { $better } sí
}
ends-with = la variante termina con { $sign }, pero { $standing }

is-mate-now = es mate
is-stalemate-now = es ahogado
neither-can-mate = ningún bando puede dar ya mate
tables-say = { $known ->
    [win] según las tablas de finales ganan { $side-name }
    [loss] según las tablas de finales pierden { $side-name }
   *[draw] según las tablas de finales { $side-name } hacen tablas
}
search-says = según una búsqueda de { $depth } medias jugadas, { $side-name } están en { $value }
search-says-mate = { $moves ->
    [1] según una búsqueda de { $depth } medias jugadas, { $side-name } dan mate en una jugada
   *[other] según una búsqueda de { $depth } medias jugadas, { $side-name } dan mate en { $moves } jugadas
}
search-says-mated = { $moves ->
    [1] según una búsqueda de { $depth } medias jugadas, { $side-name } reciben mate en una jugada
   *[other] según una búsqueda de { $depth } medias jugadas, { $side-name } reciben mate en { $moves } jugadas
}

## La segunda opinión de un programa

second-opinion-agrees = segunda opinión de { $engine } con { $depth } medias jugadas: también { $line } ({ $score })
second-opinion-prefers = segunda opinión de { $engine } con { $depth } medias jugadas: prefiere { $line } ({ $score })
engine-not-started = sin segunda opinión: el programa { $engine } no se puede iniciar: { $error }; revisa la ruta en [engine], en los ajustes
engine-not-uci = sin segunda opinión: el programa { $engine } no responde en UCI en { $seconds } s
engine-ended = sin segunda opinión: el programa { $engine } se cerró durante la consulta
engine-hung = sin segunda opinión: el programa { $engine } no dio jugada en el tiempo permitido y se detuvo
engine-move-wrong = sin segunda opinión: el programa { $engine } dio «{ $written }», que aquí no es una jugada legal
