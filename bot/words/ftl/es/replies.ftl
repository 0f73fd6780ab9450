# Lo que se le dice a un miembro de su respuesta. Un veredicto son una o más de estas frases.

## Bien

move-mates = Sí: { $line } es mate.
line-mates = Resuelto. { $line } es mate.
key-is-enough = { $moves ->
    [1] Sí, { $line } es la clave. En un mate en una solo se pide la clave.
   *[2] Sí, { $line } es la clave. En un mate en dos solo se pide la clave.
}
key-but-no-mate = { $moves ->
    [1] Sí, { $line } es la clave, y en un mate en una solo se pide la clave. Pero vuelve a mirar { $other }: eso no es mate.
   *[2] Sí, { $line } es la clave, y en un mate en dos solo se pide la clave. Pero vuelve a mirar { $other }: eso no es mate.
}
line-holds = Resuelto. Tu variante vale contra todas las defensas.
stalemate-draws = Resuelto. { $line } es ahogado, y eso son tablas.
too-little-left = Resuelto. Tras { $line }, a { $side-name } no les queda material para dar mate.
comes-again = { $task ->
    [draw] Resuelto. Tras { $line } se repite la posición: son tablas.
   *[win] Resuelto. Tras { $line } se repite la posición: gana.
}
line-does = { $task ->
    [draw] Resuelto. { $line } hace tablas.
   *[win] Resuelto. { $line } gana.
}
does-too = { $task ->
    [draw] Sí, { $line } también hace tablas. Cuenta entero.
   *[win] Sí, { $line } también gana. Cuenta entero.
}
does-too-by-tables = { $task ->
    [draw] Sí, { $line } también hace tablas, según las tablas de finales. Cuenta entero.
   *[win] Sí, { $line } también gana, según las tablas de finales. Cuenta entero.
}
does-too-by-search = { $task ->
    [draw] Sí, { $line } también hace tablas, según una búsqueda de { $depth } medias jugadas. Cuenta entero.
   *[win] Sí, { $line } también gana, según una búsqueda de { $depth } medias jugadas. Cuenta entero.
}

## Bien hasta aquí

right-so-far = { $line } está bien hasta ahí.
right-but = { $line } está bien. Pero ¿y si { $answer }? Te toca.
right-and-answered = { $line } está bien. { $side-start } responden { $answer }. Te toca.
right-after = Tu variante está bien tras { $line }. ¿Y si { $answer }? Te toca.
side-lines-right = Esas variantes secundarias están bien. Sigue ahora desde la posición del tablero. Te toca.
go-on = Sigue desde la posición del tablero. Te toca.

## Mal

each-has-to-hold = Si propones varias jugadas, tienen que valer todas.
mates-late = { $line } da mate, pero no en { $left-word }: necesita { $moves-word }.
fails = { $line } no funciona.
fails-because = { $line } no funciona: { $why }.
for-example = Por ejemplo, { $line }.
answers = { $side-start } responden { $line }.
answers-because = { $side-start } responden { $line }: { $why }.
does-not = { $task ->
    [draw] { $line } no hace tablas.
   *[win] { $line } no gana.
}
does-not-because = { $task ->
    [draw] { $line } no hace tablas: { $why }.
   *[win] { $line } no gana: { $why }.
}
by-tables = { $task ->
    [draw] (Perdido, según las tablas de finales.)
   *[win] (No gana, según las tablas de finales.)
}
by-search = (Según una búsqueda de { $depth } medias jugadas.)

## Las variantes del entrenador. $words va como él lo escribió.

coach-shows = Tu entrenador muestra { $line }.
coach-shows-because = Tu entrenador muestra { $line }: { $why }.
coach-on-move = Tu entrenador sobre { $line }: «{ $words }»

## Sin decidir

not-certain = { $task ->
    [draw] No puedo decir con certeza si { $line } hace tablas, así que no lo doy ni por bueno ni por malo. Lo mirará tu entrenador.
   *[win] No puedo decir con certeza si { $line } gana, así que no lo doy ni por bueno ni por malo. Lo mirará tu entrenador.
}
not-settled = No he podido decidir { $line } en el tiempo que tengo. Lo mirará tu entrenador.
taken-as-question = Lo tomo como una pregunta y no como una respuesta: no se ha juzgado nada, y no cuesta nada.
taken-as-thought = Lo tomo como una idea y no como una respuesta: no se ha juzgado nada, y no cuesta nada.
nothing-claimed = No encuentro ahí ninguna jugada que des como respuesta: no se ha juzgado nada, y no cuesta nada.
write-your-move = Escribe la jugada que harías.
send-just-that = Si { $reading } es tu respuesta, envía solo eso; si no, escribe la jugada que harías.
send-one-of = Si una de estas es tu respuesta, envía solo eso: { $readings }.
several-ways = Puedo entenderlo de más de una manera, así que no se ha juzgado nada, y no cuesta nada. Envía solo las jugadas de tu respuesta.
several-ways-of = Puedo entenderlo de más de una manera, así que no se ha juzgado nada, y no cuesta nada. ¿Quieres decir { $readings }?

## No leído

too-long = Es demasiado largo: leo { $most } caracteres como mucho. Envía solo las jugadas.
longer-than-any-solution = Es más largo que cualquier solución. Se guardan sus primeros { $most } caracteres y no se ha juzgado nada; envía solo las jugadas, como 1.Dh7+ Rf8 2.Dh8#.
no-move = No encuentro ahí ninguna jugada, así que no ha cambiado nada. Escríbela como quieras: con letras y casillas, de casilla a casilla o con palabras.
followed = He podido seguirte hasta { $line }.
impossible = «{ $written }» no es posible.
impossible-because = «{ $written }» no es posible: { $why }.
possible-there = Son posibles: { $moves }.
ambiguous = «{ $written }» puede ser más de una jugada: { $moves }. ¿Cuál quieres decir?
ambiguous-among = «{ $written }» puede ser más de una jugada: { $moves }. ¿Cuál quieres decir?
garbled = No he podido leer «{ $written }» como una jugada. Escríbela otra vez, por favor.
