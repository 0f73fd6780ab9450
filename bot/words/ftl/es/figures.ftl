# La clasificación y el resumen en palabras, y qué enseñar después.

## Los días que abarca un resumen

covers-all = todas las publicaciones hasta ahora
covers-since = desde el { $first }
covers-up-to = hasta el { $last }
covers-day = { $day }
covers-days-of-month = del { $first } al { $last }
covers-days-of-year = del { $first } al { $last }
covers-days = del { $first } al { $last }

## La clasificación

figures-board = Clasificación, { $period }
figures-board-topic = Clasificación, { $topic }, { $period }
no-points-yet = Aún no hay puntos: cuentan cuando se cierra una publicación.
figures-board-row = { $points ->
    [one] { $rank }. { $name }: { $points-text } punto, { $solved } de { $tried } resueltas
   *[other] { $rank }. { $name }: { $points-text } puntos, { $solved } de { $tried } resueltas
}
figures-board-asked = { $rank }. { $name }: { $points ->
    [one] { $points-text } punto
   *[other] { $points-text } puntos
}, { $answered ->
    [one] { $answered } pregunta respondida
   *[other] { $answered } preguntas respondidas
}
figures-board-both = { $rank }. { $name }: { $points ->
    [one] { $points-text } punto
   *[other] { $points-text } puntos
}, { $solved } de { $tried } resueltas, { $answered ->
    [one] { $answered } pregunta respondida
   *[other] { $answered } preguntas respondidas
}

## El resumen

figures-summary = Resumen de participación, { $period }
figures-attempts = { $posts ->
    [one] { $posts } publicación
   *[other] { $posts } publicaciones
}, { $tried ->
    [one] { $tried } intento
   *[other] { $tried } intentos
}, { $percent ->
    [none] { $solved } con solución
   *[other] { $solved } con solución ({ $percent } %)
}, { $first } al primer intento.
figures-answers = { $questions ->
    [one] { $questions } pregunta
   *[other] { $questions } preguntas
}, { $answered ->
    [one] { $answered } respuesta
   *[other] { $answered } respuestas
}.
figures-member = { $name }: { $points ->
    [one] { $points-text } punto
   *[other] { $points-text } puntos
}, intentadas: { $tried }, resueltas: { $solved }, al primer intento: { $first }, { $hints ->
    [one] { $hints } pista
   *[other] { $hints } pistas
}
figures-member-asked = { $name }: { $points ->
    [one] { $points-text } punto
   *[other] { $points-text } puntos
}, { $answered ->
    [one] { $answered } pregunta respondida
   *[other] { $answered } preguntas respondidas
}
figures-member-both = { $name }: { $points ->
    [one] { $points-text } punto
   *[other] { $points-text } puntos
}, intentadas: { $tried }, resueltas: { $solved }, al primer intento: { $first }, { $hints ->
    [one] { $hints } pista
   *[other] { $hints } pistas
}, { $answered ->
    [one] { $answered } pregunta respondida
   *[other] { $answered } preguntas respondidas
}
figures-did-not-answer = No respondieron: { $names }
figures-went-quiet = Han dejado de participar: { $names }
figures-went-quiet-since = Han dejado de participar ({ $recent }, tras { $before }): { $names }
figures-came-back = Han vuelto: { $names }
figures-post = { $topic ->
    [none] Posición { $number }
   *[other] Posición { $number }, { $topic }
}, { $task }: intentos: { $tried }, { $percent ->
    [none] { $solved } con solución
   *[other] { $solved } con solución ({ $percent } %)
}, { $first } al primer intento.
figures-missed = Errores más frecuentes: { $moves }.
missed-move = { $played } ({ $count })
missed-refuted = { $played } ({ $count }; { $refuted })
figures-asked = { $kind ->
    [question] Pregunta
   *[words] Aviso
} { $topic ->
    [none] { $number }
   *[other] { $number }, { $topic }
}: { $answered ->
    [one] { $answered } respuesta
   *[other] { $answered } respuestas
}.
figures-topic = { $topic }: { $posts ->
    [one] { $posts } publicación
   *[other] { $posts } publicaciones
}, { $tried ->
    [one] { $tried } intento
   *[other] { $tried } intentos
}, { $percent ->
    [none] { $solved } con solución
   *[other] { $solved } con solución ({ $percent } %)
}, { $first } al primer intento
figures-topic-asked = { $topic }: { $questions ->
    [one] { $questions } pregunta
   *[other] { $questions } preguntas
} con { $answered ->
    [one] { $answered } respuesta
   *[other] { $answered } respuestas
}
figures-who-took-part = Quién ha participado
figures-posts = Publicaciones
figures-topics = Temas, el más flojo primero
figures-what-next = Qué enseñar ahora

## Qué enseñar ahora

advice-nothing-closed = En este periodo no se cerró ninguna publicación, así que aún no hay sobre qué construir.
advice-only-questions = En este periodo solo se respondieron preguntas; qué enseñar después está en las respuestas.
advice-nobody = En este periodo no respondió nadie. Pregunta al grupo si le van bien los días y la hora, y publica algo más fácil.
advice-few = Aún hay muy pocas respuestas ({ $tried } en total) para decir qué enseñar después.
advice-few-so-far = Aún hay muy pocas respuestas ({ $tried } en total) para decir qué va flojo; lo que peor ha ido hasta ahora es { $topic } ({ $solved } de { $of } resueltas), y puede ser casualidad.
advice-teach-again = Vuelve a trabajar { $topic }: se resolvió en { $solved } de { $of } intentos.
advice-stay = Sigue un poco más con { $topic }: se resolvió en { $solved } de { $of } intentos, { $first } de ellos a la primera.
advice-ready = El grupo está listo para algo nuevo o más difícil: incluso { $topic }, su tema más flojo, se resolvió en { $solved } de { $of } intentos.
advice-near = Más o menos igual fue con { $topics }.
near-topic = { $topic } ({ $solved } de { $of })
advice-many-near = Con otros { $number } temas fue más o menos igual.
advice-begin = Empieza por la publicación { $number }: { $count } de { $of } jugaron { $played }.
advice-begin-refuted = Empieza por la publicación { $number }: { $count } de { $of } jugaron { $played }, que falla por { $refuted }.
advice-first-tries = Solo { $first } de { $solved } soluciones llegaron al primer intento: practicad buscar la defensa antes de responder.
advice-quiet = Unas palabras a { $names } podrían traerlos de vuelta.
advice-many-quiet = Unas palabras a { $names } y a otros { $others } podrían traerlos de vuelta.
