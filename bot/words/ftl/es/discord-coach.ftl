# En Discord: lo que se le dice a un entrenador de las posiciones.

## Revisar un archivo

checking = Revisión: { $done } de { $of } posiciones listas …
put-into-week = { $number ->
    [one] { $number } puesta en la semana; mira /{ command-coach } { command-coach-week }.
   *[other] { $number } puestas en la semana; mira /{ command-coach } { command-coach-week }.
}
written-in-file = Preguntas y avisos que contiene: { $number }. Con { command-coach-check.option-put-into-week } entran en la semana.
left-out = Omitidas por haberse publicado ya: { $number }; en sus páginas, abajo, puedes publicarlas otra vez.
file-too-large = { $name } ocupa más de { $most } MB; divídelo y envía las partes.
file-elsewhere = { $name } no está donde Discord guarda los archivos adjuntos.
file-unreachable = No se ha podido descargar { $name }; adjúntalo otra vez, por favor.
report-gone = El informe ya no está.
report-put-away = Este informe ya no está a mano; las posiciones están guardadas. Usa /{ command-coach } { command-coach-shelf } o revisa el archivo otra vez.
report-unchanged = Este informe ya no está a mano; no se ha cambiado nada. Revisa el archivo otra vez y elige entonces.

## El informe

no-position-in-file = En el archivo no había ninguna posición.
report-head = **{ $at } de { $of }** · { $name }
one-sound = Una posición, y es correcta.
one-useless = Aquí no hay nada que sirva tal como está.
one-doubtful = Una posición, y conviene que la mires.
all-sound = { $all } posiciones, todas correctas.
some-sound = { $all } posiciones, { $sound } de ellas correctas.
soundness-word = { $soundness ->
    [sound] correcta
    [several-keys] más de una clave
    [short] mate más corto
    [unsound] sin solución
    [illegal] no sirve
   *[undecided] sin decidir en el tiempo permitido
}
proved = { $verdict } (demostrado)
judged-by-search = { $verdict } (según una búsqueda de { $depth } medias jugadas)
no-topic = sin tema
topic-is = Tema: { $topic }
topic-also = { $topic }, también { $further }
topics-are = Tema: { $topic }, también { $further }
key-is = Clave: **{ $key }**
keys-are = Claves: **{ $keys }**
variations-are = Variantes:
tries-are = Ensayos:
in-the-week = Está en la semana.
warned-of = ⚠ Nota: { $note }
posted-before = ⚠ Ya publicada, como n.º { $number }: { $at }.
with-the-post = Con la posición:
at-the-reveal = Con la solución:
beside-the-moves = Junto a las jugadas, con la solución:

## La reserva y la semana

shelf-empty = La reserva está vacía. Adjunta un archivo a /{ command-coach } { command-coach-check }.
topic-set = Ahora su tema es «{ $topic }».
topic-taken = Ahora no tiene tema.
paused-until = **En pausa** hasta el { $until }.
paused-for-now = **En pausa** hasta que la reanudes.
nothing-waits = No espera nada. Adjunta un archivo a /{ command-coach } { command-coach-check } y pon las posiciones correctas en la semana.
the-week = **La semana**
more-behind = … y { $more } más detrás
no-time-yet = { $why ->
    [not-sound] sin fecha: no se dio por correcta
    [paused] sin fecha: hay una pausa
    [no-days] sin fecha: el calendario no tiene días
   *[waits] sin fecha: lo que espera tampoco la tiene
}
step-of = paso { $step } de { $steps } de { $title }
waits-for-post = espera a la solución del n.º { $number }
waits-for-item = espera a la solución de { $item }
kind-word = { $kind ->
    [problem] posición
    [question] pregunta
   *[words] aviso
}
fixed-at = { $at } (fija)
posted-again = otra vez, ya publicada como n.º { $number }
topic-not-verified = tema sin comprobar
waits-no-longer = Esa ya no espera.
taken-out-lately = Sacado de la semana: { $item }.
still-open = abierta
words-kept = Estas palabras están guardadas.
edit-too-long = Con sus líneas y palabras la posición tiene más de { $most } caracteres, y más no cabe en un formulario. Edítala en el editor de la sala del club, o comprueba un archivo con la posición cambiada.
edit-kept = Guardada y comprobada de nuevo.
goes-out-now = Se publica ahora.
closed-now = { $kind ->
    [problem] Está cerrada; la solución se publica ahora.
   *[other] Está cerrada; tus palabras y quién ha respondido se publican ahora.
}
pick-position = Hay más de una posición abierta; elige una con la opción { command-coach-close.option-position }.
paused-now = En pausa hasta el { $until }. Una posición abierta sigue abierta.
paused-till-resumed = En pausa hasta que uses /{ command-coach } { command-coach-resume }. Una posición abierta sigue abierta.
resumed = Las posiciones vuelven a publicarse según lo previsto.
moment-past = Ese momento ya ha pasado.
moment-left-out = El cambio de hora se salta ese momento; elige otro.
no-date = No puedo leer «{ $written }» como fecha; escríbela así: 2026-12-01 18:00.

## Respuestas a mano

no-answer-waits = No te espera ninguna respuesta.
answer-waits = { $kind ->
    [problem] **{ $at } de { $of } en espera** · Posición { $number } · { $when }
    [question] **{ $at } de { $of } en espera** · Pregunta { $number } · { $when }
   *[words] **{ $at } de { $of } en espera** · Aviso { $number } · { $when }
}
answer-to-post = { $kind ->
    [problem] **Respuesta { $at } de { $of }** · Posición { $number } · { $when }
    [question] **Respuesta { $at } de { $of }** · Pregunta { $number } · { $when }
   *[words] **Respuesta { $at } de { $of }** · Aviso { $number } · { $when }
}
no-answer-yet = { $kind ->
    [problem] Nadie ha respondido a la posición { $number }.
    [question] Nadie ha respondido a la pregunta { $number }.
   *[words] Nadie ha respondido al aviso { $number }.
}
answer-judged = { $verdict ->
    [solved] Mi veredicto: resuelto; { $points-text } de 5 puntos.
    [on-the-way] Mi veredicto: bien hasta ahí; { $points-text } de 5 puntos.
    [wrong] Mi veredicto: no es la solución; { $points-text } de 5 puntos.
    [illegal] Mi veredicto: no es una jugada legal; { $points-text } de 5 puntos.
    [unclear] Mi veredicto: aún sin decidir; { $points-text } de 5 puntos.
   *[unreadable] Mi veredicto: no se puede leer; { $points-text } de 5 puntos.
}
answer-ruled = { $verdict ->
    [solved] Veredicto de un entrenador: resuelto; { $points-text } de 5 puntos.
    [on-the-way] Veredicto de un entrenador: bien hasta ahí; { $points-text } de 5 puntos.
    [wrong] Veredicto de un entrenador: no es la solución; { $points-text } de 5 puntos.
    [illegal] Veredicto de un entrenador: no es una jugada legal; { $points-text } de 5 puntos.
    [unclear] Veredicto de un entrenador: aún sin decidir; { $points-text } de 5 puntos.
   *[unreadable] Veredicto de un entrenador: no se puede leer; { $points-text } de 5 puntos.
}
answer-marked = Puntuada por un entrenador: { $points-text } de 5 puntos.
answer-undecided = Todavía no hay nada decidido sobre ella.
answer-needs-none = Un entrenador anotó que no necesita respuesta.
answered-in-private = Un entrenador respondió en privado: «{ $words }»
is-said = Yo dije: { $said }
is-asked = -# Se preguntaba: { $asked }
# Answers to a question, side by side. $begins: what they have in common, such as a move.
answers-by-move = { $answered ->
    [one] **Pregunta { $number }**: una respuesta, según su primera jugada. Sin tu nota: { $waiting }.
   *[other] **Pregunta { $number }**: { $answered } respuestas, agrupadas por la primera jugada. Sin tu nota: { $waiting }.
}
answer-group = { $answers ->
    [one] - **{ $begins }**: una respuesta, sin nota: { $waiting }
   *[other] - **{ $begins }**: { $answers } respuestas, sin nota: { $waiting }
}
answer-group-choice = { $begins } ({ $answers })
answer-group-pick = Leer las respuestas de un grupo
answer-in-group = Grupo: { $begins }
begins-no-move = sin jugada
begins-replaced = respondida de nuevo después
# $leave: none, named, nameless or refused.
example-is = { $leave ->
    [none] La mostrarías al grupo; quien la escribió aún no ha dicho nada.
    [named] Se muestra al grupo con el nombre de quien la escribió.
    [nameless] Se muestra al grupo sin el nombre de quien la escribió.
   *[refused] Quien la escribió no quiere que se muestre.
}
example-beside = Tus palabras al lado: { $said }
# A title and a label of at most 45 characters.
form-show = Mostrar esta respuesta al grupo
form-show-words = Tus palabras al lado (opcional)
no-points = «{ $written }» no es un número de puntos; escribe uno de 0 a 5, como 2,5.
form-private = Tu respuesta en privado
form-private-words = Solo la lee el miembro
form-verdict = Tu veredicto
form-verdict-points = Puntos, de 0 a 5
form-verdict-words = Palabras para el miembro, si quieres
form-mark = Tu nota
form-words = Tus palabras sobre la posición
form-words-anyway = Tus palabras, enviadas de todos modos
form-with-post = Con la posición
form-at-reveal = Con la solución
# A position written anew.
form-edit = Editar la posición
form-edit-text = La posición, como PGN o FEN
form-edit-task = Tarea: #2, +, = (o vacío)
form-question = Una pregunta para el grupo
form-question-words = ¿Qué preguntas?
form-question-reveal = Tus palabras sobre ella, para el cierre
form-say = Un aviso para el grupo
form-say-words = ¿Qué debe leer el grupo?
form-fen = Una posición al lado (FEN)
form-topic = Tema

## El resumen

who-took-part = **Quién ha participado**
who-took-part-since = **Quién ha participado desde el { $from }**
who-took-part-until = **Quién ha participado hasta el { $to }**
who-took-part-between = **Quién ha participado desde el { $from } hasta el { $to }**
nobody-did = Nadie.
member-tally = { $points ->
    [one] { $hints ->
        [one] { $name }: { $solved } de { $tried } resueltas, { $first } al primer intento, { $points-text } punto, { $hints } pista
       *[other] { $name }: { $solved } de { $tried } resueltas, { $first } al primer intento, { $points-text } punto, { $hints } pistas
    }
   *[other] { $hints ->
        [one] { $name }: { $solved } de { $tried } resueltas, { $first } al primer intento, { $points-text } puntos, { $hints } pista
       *[other] { $name }: { $solved } de { $tried } resueltas, { $first } al primer intento, { $points-text } puntos, { $hints } pistas
    }
}
member-asked = { $points ->
    [one] { $answered ->
        [one] { $name }: { $points-text } punto, { $answered } pregunta respondida
       *[other] { $name }: { $points-text } punto, { $answered } preguntas respondidas
    }
   *[other] { $answered ->
        [one] { $name }: { $points-text } puntos, { $answered } pregunta respondida
       *[other] { $name }: { $points-text } puntos, { $answered } preguntas respondidas
    }
}
went-quiet = Han dejado de participar: { $names }
came-back = Han vuelto: { $names }
summary-positions = **Publicaciones**
position-tally = { $solved ->
    [one] Posición { $number } ({ $topic }, { $task }): la resolvió { $solved } de { $tried }
   *[other] Posición { $number } ({ $topic }, { $task }): la resolvieron { $solved } de { $tried }
}
position-tally-missed = { $solved ->
    [one] Posición { $number } ({ $topic }, { $task }): la resolvió { $solved } de { $tried }; lo que más se falló: { $missed }
   *[other] Posición { $number } ({ $topic }, { $task }): la resolvieron { $solved } de { $tried }; lo que más se falló: { $missed }
}
post-tally = { $kind ->
    [problem] Posición { $number } ({ $topic })
    [question] Pregunta { $number } ({ $topic }): { $answered ->
        [one] { $answered } respuesta
       *[other] { $answered } respuestas
    }
   *[words] Aviso { $number } ({ $topic })
}
summary-topics = **Temas, el más flojo primero**
summary-advice = **Qué enseñar ahora**
export-here = Aquí lo tienes. Contiene datos de los miembros, así que guárdalo para ti.

## En menús y listas

week-pick = Elige una para moverla, verla, publicarla o sacarla
position-choice = Posición { $number } · { $task }
post-choice = { $kind ->
    [problem] Posición { $number }
    [question] Pregunta { $number }
   *[words] Aviso { $number }
}

## Botones

button-keep-old = Conservar la anterior
button-take-new = Tomar la nueva
button-keep-both = Conservar los dos temas
button-queue = Poner en la semana
button-queue-again = Poner otra vez en la semana
button-queue-anyway = Publicarla de todos modos: a la semana
button-queue-anyway-again = Publicarla otra vez y de todos modos: a la semana
button-earlier = Antes
button-later = Después
button-look-at = Verla
button-post-now = Publicar ya
button-take-out = Sacarla
button-put-back = Devolverla
button-words = Palabras…
button-edit = Editar…
button-words-again = Cambiar las palabras…
button-words-anyway = Enviarlas de todos modos…
button-right = Correcta …
button-not-right = No es correcta …
button-mark = Puntuar…
button-mark-again = Puntuar otra vez…
button-groups = Todos los grupos
button-show = Mostrar como ejemplo…
button-no-longer-show = No mostrarla
button-overrule-right = Cambiar el veredicto: correcta…
button-overrule-not-right = Cambiar el veredicto: no es correcta…
button-answer-privately = Responder en privado…
button-no-answer = No necesita respuesta

## Lecciones

no-lessons-yet = Todavía no hay lecciones; /lección tomar trae una de un archivo PGN.
lesson-choice = { $title } ({ $steps })
lesson-row = **{ $title }**: pasos { $steps }, partes { $parts }, en la semana { $waiting }, publicadas { $posted }
lesson-head = **Lección «{ $title }»**
lesson-head-topic = **Lección «{ $title }»** · { $topic }
lesson-step-is = { $contrast ->
    [yes] **Paso { $step }**, donde el tema no debe funcionar
   *[no] **Paso { $step }**
}
lesson-stop = Una parada, { $task }: { $soundness ->
    [sound] correcta.
    [several-keys] varias claves.
    [short] más corta de lo indicado.
    [unsound] incorrecta.
    [illegal] ilegal.
   *[undecided] sin decidir.
}
lesson-written = { $kind ->
    [question] Una pregunta: { $words }
   *[words] Palabras: { $words }
}
lesson-waits = { $number ->
    [one] Espera a que se revele el paso { $steps }, cuya solución descubriría.
   *[other] Espera a que se revelen los pasos { $steps }, cuyas soluciones descubriría.
}
lesson-not-kept-part = No se guarda: no hay tarea y no se encontró ninguna; escribe una, como \[stop #2].
lesson-as-before = La misma posición que en el paso { $step }; sale una vez.
lesson-waits-in-week = En la semana.
lesson-open-part = Publicado como n.º { $number }, todavía abierto.
lesson-closed-part = Publicado como n.º { $number } y cerrado.
lesson-taken-in = «{ $title }» está guardada. Repásala y luego ponla en la semana con /lección planear.
lesson-lost = No se guarda nada, porque ningún paso se pudo leer.
lesson-in-week = { $omitted ->
    [0] La lección está en la semana. Partes: { $number }.
   *[other] La lección está en la semana. Partes: { $number }; quedan fuera por haber salido ya: { $omitted }.
}
lesson-plan-unclear = Indica «de-una-vez», o bien «paso» y «cuándo» juntos, o nada de eso.
lesson-here = «{ $title }» como archivo; se puede volver a tomar.
lesson-gone = «{ $title }» se ha quitado. Sus posiciones y lo publicado se quedan.
