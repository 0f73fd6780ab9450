# En Discord: lo que se le dice a un miembro que responde, pide una pista o mira su progreso.

## De qué posición se trata

no-group-here = En este canal no hay ningún grupo de estudio. Un entrenador lo crea con /{ command-coach } { command-coach-set-up }.
nothing-open = Ahora mismo no hay ninguna posición abierta.
nothing-open-for-you = Ahora mismo no hay ninguna posición abierta para ti. Usa esto en el canal de tu grupo.
nothing-open-to-you = Ahora mismo no hay ninguna posición abierta para ti. Si estás en un grupo de estudio de algún servidor, responde allí una vez con el botón de debajo de la posición y también te conoceré aquí.
several-groups-open = Varios de tus grupos tienen una posición abierta. Usa esto en el canal del grupo al que te refieres.

## El tablero y el progreso propios

your-board = Tu tablero:
your-board-solved = Tu tablero: esta ya la has resuelto, { $points-text } de 5 puntos.
your-board-given-up = Tu tablero: en esta te has rendido. La solución llegará cuando se cierre.
give-up-asked = ¿Te rindes? Ya no podrás responder, y la solución sigue sellada hasta que se publique.
your-last-answer = Tu última respuesta aquí: «{ $quote }»
your-last-answer-deleted = Tu última respuesta aquí, cuyo texto has borrado:
standing-now = { $state ->
    [none] Posición { $number }: aún sin respuesta. Está abierta hasta el { $closes }.
    [solved] Posición { $number }: resuelta. Está abierta hasta el { $closes }.
    [given-up] Posición { $number }: te has rendido. Está abierta hasta el { $closes }.
   *[playing] { $wrong ->
        [0] Posición { $number }: te toca jugar. Está abierta hasta el { $closes }.
        [one] Posición { $number }: te toca jugar, tras un intento fallido. Está abierta hasta el { $closes }.
       *[other] Posición { $number }: te toca jugar, tras { $wrong } intentos fallidos. Está abierta hasta el { $closes }.
    }
}
standing-asked = { $answered ->
    [yes] Pregunta { $number }: respondida. Está abierta hasta el { $closes }.
   *[no] Pregunta { $number }: aún sin respuesta. Está abierta hasta el { $closes }.
}
on-your-board = En tu tablero: { $line }
no-part-yet = Todavía no has participado en ninguna posición.
your-points = **Tus puntos: { $points-text }**
topic-tally = { $topic }: { $solved } de { $tried } resueltas, { $first } al primer intento
topic-asked = { $answered ->
    [one] { $topic }: { $answered } pregunta respondida
   *[other] { $topic }: { $answered } preguntas respondidas
}
questions-answered = { $answered ->
    [one] { $answered } pregunta respondida
   *[other] { $answered } preguntas respondidas
}
## A member's own answers to questions, and their leave to show one

no-homework = Todavía no has respondido a ninguna pregunta.
homework-head = **{ $at } de { $of }** · Pregunta { $number }
your-answer-deleted = Tu respuesta, cuyas palabras has borrado:
waits-for-coach = Aún sin nota: espera a tu entrenador.
coach-said-privately = Tu entrenador: { $said }
earlier-answers = -# Tus respuestas anteriores; cuenta la última:
others-answers = **Respuestas que otros te dejan ver**
# Asked in private; the answer and the caution follow.
may-it-be-shown = A tu entrenador le gustaría mostrar al grupo tu respuesta a la pregunta { $number }:
coach-beside = Con estas palabras al lado: { $said }
leave-caution = -# Nada se muestra sin tu permiso. Puedes retirarlo en cualquier momento, también después de la solución. Si eres menor de edad, pregunta antes a tus padres, y no dejes nada que diga quién eres.
leave-open = A tu entrenador le gustaría mostrar esto al grupo y aún no has dicho nada: «{ $quote }»
leave-is = { $leave ->
    [named] Esto se muestra al grupo con tu nombre: «{ $quote }»
    [nameless] Esto se muestra al grupo sin tu nombre: «{ $quote }»
   *[refused] Esto no se muestra al grupo: «{ $quote }»
}
button-leave-named = Mostrarla con mi nombre
button-leave-nameless = Mostrarla sin mi nombre
button-leave-refused = No mostrarla

## La clasificación

leaderboard = **Clasificación**
leaderboard-of = **Clasificación: { $topic }**
leaderboard-empty = Todavía nadie tiene puntos.
leaderboard-row = { $points ->
    [one] { $name } · { $points-text } punto · { $solved } de { $tried } resueltas
   *[other] { $name } · { $points-text } puntos · { $solved } de { $tried } resueltas
}
leaderboard-asked = { $points ->
    [one] { $answered ->
        [one] { $name } · { $points-text } punto · { $answered } pregunta respondida
       *[other] { $name } · { $points-text } punto · { $answered } preguntas respondidas
    }
   *[other] { $answered ->
        [one] { $name } · { $points-text } puntos · { $answered } pregunta respondida
       *[other] { $name } · { $points-text } puntos · { $answered } preguntas respondidas
    }
}
and-more = … y { $more } más
span-between = Del { $from } al { $to }
span-since = Desde el { $from }
span-until = Hasta el { $to }
span-all = Todas las posiciones hasta ahora

## Lo que se guarda de un miembro

kept-of-you = Todo lo que se guarda de ti en este grupo. Para borrarlo, usa /{ command-study } { command-study-erase-me }.
erasure-asked = ¿Quieres borrar tu nombre, tus respuestas, pistas y puntos en este grupo? No se puede deshacer. Los mensajes que has escrito tú en Discord se quedan hasta que los borres.
erased-you = Todo lo que se guardaba de ti en este grupo está borrado.

## Ayuda, un párrafo por tema

help-answering = { $content ->
    [yes] **Responder.** Pulsa «{ button-answer }» debajo de la posición, usa /{ command-study } { command-study-answer }, escríbeme directamente, contesta al mensaje de la posición o escribe en su hilo o en este canal. Sirve cualquier notación habitual: Cf3, e2-e4, e8=D, una variante entera, con las letras de tu idioma.
   *[no] **Responder.** Pulsa «{ button-answer }» debajo de la posición, usa /{ command-study } { command-study-answer }, escríbeme directamente, contesta al mensaje de la posición o mencióname en el tuyo. Sirve cualquier notación habitual: Cf3, e2-e4, e8=D, una variante entera, con las letras de tu idioma.
}
help-outcome = **Qué pasa entonces.** En un grupo sellado solo tú ves el veredicto; en uno abierto los demás lo encuentran detrás de una marca de spoiler. Una jugada que escribes donde otros leen se toma como tu respuesta, y la oculto donde puedo. La charla se queda como está; lo que podría revelar una jugada lo oculto donde puedo y te pregunto en privado qué debe ser: tu respuesta, un mensaje para todos o nada.
help-lines = **Una variante más larga** la jugamos jugada a jugada. Para cada jugada tuya hay pistas en tres pasos: la pieza, la idea, la jugada.
help-points = **Puntos.** /{ command-study } { command-study-points } dice cómo se cuentan aquí.
help-cards = **Fichas.** /{ command-study } { command-study-card } explica qué es un patrón, en qué fijarse y qué lo separa de sus parientes, con un ejemplo.
help-editing = **Editar o borrar.** Lo decidido queda decidido. Un mensaje en el que no encontré ninguna jugada se puede editar, y lo vuelvo a leer.
help-data = **Tus datos.** /{ command-study } { command-study-my-data } muestra todo lo que se guarda de ti, /{ command-study } { command-study-erase-me } lo borra.
help-language = **Idioma.** Te hablo en el idioma de tu Discord; con /{ command-study } { command-study-language } eliges otro.

## El idioma

language-is = A partir de ahora te hablo en este idioma: { $language }.
language-as-client = Te hablo en el idioma de tu Discord: { $language }.
language-choice-client = como mi Discord
no-language = No hablo «{ $written }»; elige un idioma de la lista que se abre al escribir.

## El formulario de una respuesta

form-answer = Tu respuesta
form-answer-moves = Tu jugada o la variante entera
form-answer-words = Con tus propias palabras
form-answer-example = Por ejemplo Cf3, e8=D o 1.Dh7+ Rf8 2.Dh8#
form-old = Este formulario es de una versión anterior; empieza de nuevo, por favor.
you-wrote = Lo que has escrito, para que no se pierda nada:

## Botones

button-my-progress = Mi progreso
button-yes-give-up = Sí, me rindo
button-yes-erase = Sí, borrarlo todo
button-previous = Anterior
button-next = Siguiente
button-previous-part = Parte anterior
button-next-part = Parte siguiente

## Lo que falla

discord-refused = Discord no ha aceptado mi respuesta; inténtalo otra vez.
rest-put-away = El resto de esto ya no está a mano; pídelo otra vez, por favor.
answer-forgotten = Ya no recuerdo ese mensaje; escribe tu respuesta otra vez, por favor.

## Fichas de temas

cards-there = Hay fichas de: { $titles }. Lee una con /{ command-study } { command-study-card }.
card-tells = { $copy ->
    [yes] Por ahora los miembros ven la ficha del programa: la tuya delataría algo de la posición { $numbers }, que está abierta.
   *[no] Los miembros no ven ahora esta ficha: delataría algo de la posición { $numbers }, que está abierta.
}
card-saved = La ficha está guardada.
card-taken-back = Tu ficha está retirada.
form-card = Una ficha de tema para el grupo
form-card-definition = Qué es
form-card-look = En qué fijarse
form-card-fen = Ejemplo, en FEN
form-card-moves = Sus jugadas, como 1.Td8+ Txd8 2.Txd8#
button-card = Ficha: { $title }
button-edit-card = Editar para el grupo
button-new-card = Escribir la ficha de un tema
button-queue-card = Ponerla en la semana
button-take-back-card = Retirar mi ficha
## Lessons stepped through after their reveals

no-lesson-revealed = Todavía no hay ninguna lección resuelta en este grupo.
lessons-there = **Lecciones para repasar jugada a jugada**
lesson-listed = { $revealed ->
    [one] - { $title }: una parte.
   *[other] - { $title }: { $revealed } partes.
}
lesson-pick-one = { $title }
lesson-pick = Repasar una lección
# What is not revealed says nothing of what it holds.
lesson-open = { $count ->
    [one] El n.º { $numbers } está abierto; se añade tras su solución.
   *[other] Los n.º { $numbers } están abiertos; se añaden tras su solución.
}
lesson-comes = { $count ->
    [one] Una parte más llega el { $at }.
   *[other] Faltan { $count } partes más, la siguiente el { $at }.
}
lesson-later = { $count ->
    [one] Falta una parte más.
   *[other] Faltan { $count } partes más.
}
walk-head = **{ $title }** · paso { $step } de { $steps } · n.º { $number }
button-step-through = Repasar la lección
button-first = Inicio
button-back = Atrás
button-forward = Adelante
button-last = Final
button-side-line = Variante: { $line }
button-leave-side-line = Volver a la línea principal
button-previous-step = Parte anterior de la lección
button-next-step = Parte siguiente de la lección
## Moves that are talked about after a reveal

# $before: the moves from the position to what was written.
on-board = En el tablero del n.º { $number }: **{ $line }**
on-board-after = En el tablero del n.º { $number }: { $before } **{ $line }**
