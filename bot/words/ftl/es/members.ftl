# Lo que se le dice a un miembro de los puntos, las pistas y el veredicto del entrenador.

## Puntos

wrong-tries = { $wrong ->
    [one] un intento fallido
   *[other] { $wrong } intentos fallidos
}
hints-taken = { $hints ->
    [one] una pista
   *[other] { $hints } pistas
}
points-earned = { $wrong ->
    [0] { $hints ->
        [0] { $points-text } de 5 puntos.
       *[other] { $points-text } de 5 puntos tras { hints-taken }.
    }
   *[other] { $hints ->
        [0] { $points-text } de 5 puntos tras { wrong-tries }.
       *[other] { $points-text } de 5 puntos tras { wrong-tries } y { hints-taken }.
    }
}
solving-now-gives = { $points ->
    [one] Resolverlo ahora da { $points-text } punto.
   *[other] Resolverlo ahora da { $points-text } puntos.
}
nothing-after-wrong = Según la puntuación de este grupo, tras una primera jugada fallida ya no se puntúa en una posición; encontrarla sigue valiendo la pena.
wrong-takes = { $wrong ->
    [one] Cada primera jugada fallida quita { $wrong-text } punto
   *[other] Cada primera jugada fallida quita { $wrong-text } puntos
}
every-wrong-takes = { $wrong ->
    [one] Cada jugada fallida quita { $wrong-text } punto
   *[other] Cada jugada fallida quita { $wrong-text } puntos
}
prices = { $later ->
    [none] { $hint ->
        [none] { every-wrong-takes }.
       *[other] { every-wrong-takes }; cada pista, { $hint-text }.
    }
   *[other] { $hint ->
        [none] { wrong-takes }; una jugada fallida más adelante en la variante, { $later-text }.
       *[other] { wrong-takes }; una jugada fallida más adelante en la variante, { $later-text }; cada pista, { $hint-text }.
    }
}
at-least = Quien lo resuelve sin que se le muestre la jugada conserva al menos { $points-text }.

## Pistas, antes de pedirlas

hint-free = { $last ->
    [yes] La próxima pista muestra la jugada. No quita nada; te seguirían quedando { $left-text }.
   *[no] Una pista no quita nada; te seguirían quedando { $left-text }.
}
takes-points = { $takes ->
    [one] quita { $takes-text } punto
   *[other] quita { $takes-text } puntos
}
hint-takes = { $last ->
    [yes] La próxima pista muestra la jugada y { takes-points }; te quedarían { $left-text }.
   *[no] Una pista { takes-points }; te quedarían { $left-text }.
}
no-more-hints = Ya has pedido todas las pistas que hay para esta jugada.
price-free = no quita nada, deja { $left-text }
price-takes = quita { $takes-text }, deja { $left-text }
price-again = otra vez, no quita nada
hint-is = { $number ->
    [1] Pista { $step }: { $hint }
   *[other] Pista { $step } para tu jugada { $number }: { $hint }
}

## Respuestas que no cambian nada

solved-already = Esta ya la has resuelto, así que no cambia nada.
given-up-already = Te has rendido en esta, así que no cuenta.
given-up-now = Te has rendido en esta. La solución queda sellada hasta que se revele el { $at }.
given-up-before = Ya te habías rendido en esta. La solución llega el { $at }.
you-solved = Has resuelto esta: { $points-text } de 5 puntos.
you-gave-up = Te has rendido en esta. La solución se revela el { $at }.
replies-closed = Gracias. Esta posición ya no admite respuestas, así que esta no cuenta.
coach-will-judge = Tu respuesta queda guardada y sellada hasta la solución. Esta la juzga tu entrenador.
coach-will-read = Tu respuesta queda guardada. La lee tu entrenador y nadie más, salvo que tú lo permitas.
coach-can-read = Gracias. Esta posición ya no admite respuestas; tu entrenador puede leer la tuya de todos modos.
only-beginning-kept = { $again ->
    [yes] Solo se guardan sus primeros { $most } caracteres. Si el resto importa, escríbelo más corto y responde otra vez.
   *[no] Solo se guardan sus primeros { $most } caracteres.
}

## El veredicto del entrenador

coach-looked = { $number ->
    [none] { $verdict ->
        [solved] Tu entrenador ha mirado tu respuesta: resuelto.
        [on-the-way] Tu entrenador ha mirado tu respuesta: bien hasta ahí.
        [wrong] Tu entrenador ha mirado tu respuesta: no es la solución.
        [illegal] Tu entrenador ha mirado tu respuesta: no es una jugada legal.
        [unclear] Tu entrenador ha mirado tu respuesta: no está claro; di qué jugada quieres decir.
       *[unreadable] Tu entrenador ha mirado tu respuesta: no se puede leer; escribe las jugadas otra vez.
    }
   *[other] { $verdict ->
        [solved] Posición { $number }: tu entrenador ha mirado tu respuesta: resuelto.
        [on-the-way] Posición { $number }: tu entrenador ha mirado tu respuesta: bien hasta ahí.
        [wrong] Posición { $number }: tu entrenador ha mirado tu respuesta: no es la solución.
        [illegal] Posición { $number }: tu entrenador ha mirado tu respuesta: no es una jugada legal.
        [unclear] Posición { $number }: tu entrenador ha mirado tu respuesta: no está claro; di qué jugada quieres decir.
       *[unreadable] Posición { $number }: tu entrenador ha mirado tu respuesta: no se puede leer; escribe las jugadas otra vez.
    }
}
# $number: of the question, or none.
coach-marked = { $number ->
    [none] Tu entrenador ha leído tu respuesta.
   *[other] Pregunta { $number }: tu entrenador ha leído tu respuesta.
}
points-of-five = { $points-text } de 5 puntos.
coach-says = «{ $words }»

## De antes

as-it-was = { $words } (Así se dijo entonces.)
as-reason = { $words }

## Botones; breves

button-answer = Responder
button-answer-again = Responder otra vez
button-next-move = Siguiente jugada
button-hint = Pista
button-another-hint = Otra pista
button-take-it = Pedirla
button-give-up = Rendirse
button-i-mean = Quiero decir { $reading }
priced = { $what } ({ $price })
