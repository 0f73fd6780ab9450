# Por qué no se pudo hacer algo, y qué hacer. $most y $size son números tal como se escriben.

## No existe

not-a-group = Aquí todavía no hay ningún grupo de estudio; un entrenador puede crear uno.
no-member = Ese miembro no está (o ya no está) en este grupo.
no-post = Esa publicación no existe en este grupo.
no-position = Esa posición no existe en este grupo; revisa antes un archivo.
no-reply = Esa respuesta no existe en este grupo.
no-message = Ese mensaje no existe en este grupo.
no-reply-of-yours = No tienes ninguna solución así.
no-answer-of-yours = No tienes ninguna respuesta así.
no-message-of-yours = No tienes ningún mensaje así.
not-in-queue = Esto ya no está en la semana.
not-taken-out = Eso ya no se puede devolver: está otra vez en la semana, o ya no existe. Mira la semana y la reserva.
not-here-any-more = Eso no está (o ya no está) aquí. Vuelve a cargar la página o la lista.
removed-meanwhile = { $what ->
    [post-of-reply] La publicación de esta respuesta fue eliminada.
    [group-of-reply] El grupo de esta respuesta fue eliminado.
    [writer-of-reply] El miembro que envió esta respuesta fue borrado.
    [reply] La respuesta fue eliminada mientras tanto.
    [position-of-post] La posición de esta publicación fue eliminada.
    [position] La posición fue eliminada mientras tanto.
    [post-of-message] La publicación de este mensaje fue eliminada.
   *[group-of-message] El grupo de este mensaje fue eliminado.
}
nothing-kept-of-you = En este grupo no se guarda nada tuyo.
nothing-kept-of-them = En este grupo no se guarda nada de esa persona.
nothing-asked = Ya no se pregunta nada sobre esta respuesta.
nothing-asked-any-more = Ya no se pregunta nada sobre esta respuesta: llegó otra más tarde, o la publicación se cerró.
code-owner-gone = El miembro de quien era este código ya no está.
still-on-its-way = Esta publicación todavía está saliendo.
nothing-to-post = No hay en la semana nada que se pueda publicar; revisa un archivo y pon en la semana las correctas.

## No está permitido

not-coach = Eso solo lo pueden hacer los entrenadores del grupo. Un entrenador puede nombrar a otros.
shut-out = Tu entrenador te ha quitado de este grupo. Lo que escribiste antes sigue guardado: pregúntale si quieres una copia o quieres que se borre.
muted = { $until ->
    [none] { $reason ->
        [none] Tu entrenador te ha silenciado hasta que lo levante: puedes responder a las posiciones, pero no escribir al grupo.
       *[other] Tu entrenador te ha silenciado hasta que lo levante: puedes responder a las posiciones, pero no escribir al grupo. El motivo: { $reason }
    }
   *[other] { $reason ->
        [none] Tu entrenador te ha silenciado hasta el { $until }: puedes responder a las posiciones, pero no escribir al grupo.
       *[other] Tu entrenador te ha silenciado hasta el { $until }: puedes responder a las posiciones, pero no escribir al grupo. El motivo: { $reason }
    }
}
muted-keeps-name = Estás silenciado y mientras tanto no puedes cambiar de nombre. Pregunta a tu entrenador.
coach-is-not = { $what ->
    [muted] { $name } entrena a este grupo, y a un entrenador no se le silencia. Antes tiene que dejar de ser entrenador: en la sala con un enlace nuevo de entrenador, en Discord con /{ command-coach } { command-coach-remove-coach }.
    [removed] { $name } entrena a este grupo, y a un entrenador no se le saca. Antes tiene que dejar de ser entrenador: en la sala con un enlace nuevo de entrenador, en Discord con /{ command-coach } { command-coach-remove-coach }.
   *[erased] { $name } entrena a este grupo, y a un entrenador no lo borra otro. Antes tiene que dejar de ser entrenador: en la sala con un enlace nuevo de entrenador, en Discord con /{ command-coach } { command-coach-remove-coach }.
}

## Respuestas, pistas y conversación

nothing-to-judge = No hay nada que juzgar: escribe tu jugada, como Cf3 o 1.Dh7+ Rf8 2.Dh8#.
taken-already = Este mensaje ya se tomó como otra respuesta; envíalo de nuevo.
no-move-read = Esto no se pudo leer como respuesta; escribe solo las jugadas.
position-closed = La posición { $number } está cerrada; mira su solución.
question-open-still = La pregunta { $number } sigue abierta; se cierra cuando se revele.
question-lacks = { $what ->
    [hints] La n.º { $number } es una pregunta. Para ella no hay pistas; responde con tus propias palabras.
    [giving-up] La n.º { $number } es una pregunta. En ella no hay que rendirse: respóndela, o déjala pasar.
   *[board] La n.º { $number } es una pregunta. En su tablero no se juega ninguna línea.
}
nothing-answered = Tu respuesta todavía está vacía; escríbela con tus propias palabras.
words-take-no-answers = El n.º { $number } es un aviso: está para leerlo y no admite respuestas.
only-questions-are-grouped = { $kind ->
    [problem] El n.º { $number } es una posición: sus respuestas se juzgan una a una. Solo se ponen juntas las respuestas a una pregunta.
   *[other] El n.º { $number } no admite respuestas. Solo se ponen juntas las respuestas a una pregunta.
}
only-answers-are-examples = Solo las respuestas a una pregunta pueden mostrarse como ejemplo.
nobody-asks-to-show = Nadie pide (ya) mostrar una respuesta así. Vuelve a cargar la página o la lista.
writer-said-no = Quien la escribió no quiere que se muestre esta respuesta. Solo esa persona puede cambiarlo.
words-are-gone = Las palabras de esta respuesta se borraron; no hay nada que mostrar.
words-beside-too-long = Tus palabras junto a la respuesta tienen más de { $most } caracteres; acórtalas.
# Moves that are talked about after the reveal.
no-board-there = El n.º { $number } no tiene posición, así que no hay tablero en el que mostrarlo.
nothing-revealed-yet = Todavía no hay ninguna posición resuelta; las jugadas se muestran en el tablero después de una solución.
no-move-written = En este mensaje no hay ninguna jugada. Escribe una, por ejemplo Cf6 o 3.Txd5 Cf6.
move-not-there = { $written } no se puede jugar en la posición { $number } ni en sus variantes. Escribe también las jugadas anteriores, por ejemplo 3.Txd5 Cf6.
nothing-to-reveal = El n.º { $number } es un aviso; no hay nada que revelar.
no-hints = Para esta no hay pistas; pregunta a tu entrenador.
no-hint = Desde aquí no hay pista: la posición del tablero ya no es parte de la solución. Busca la jugada más fuerte que encuentres.
solved-no-hint = Ya has resuelto esta; no queda nada que insinuar.
given-up-no-hint = Te has rendido en esta; la solución llega cuando se revele.
has-solved = Ya has resuelto esta.
line-fails = La línea jugada hasta ahora no se puede montar en { $at }.
nothing-to-say = Aquí no hay nada que decir; escribe una palabra.
talk-too-long = Es demasiado largo; como mucho { $most } caracteres. Envíalo por partes.
name-yourself = Di primero cómo debe llamarte el grupo.

## Nombres

name-blank = En este nombre no hay nada que leer. Elige otro; «{ $offer }» está libre.
name-reserved = «{ $name }» no puede ser un nombre aquí: se podría tomar por el de un entrenador o el del propio programa. Junto al nombre de los entrenadores aparece solo la palabra Entrenador. Elige otro; «{ $offer }» está libre.
name-in-use = En el grupo ya hay alguien que se llama «{ $name }» o algo muy parecido. Elige otro nombre; «{ $offer }» está libre.

## Publicaciones y la semana

sealed-still = La posición { $number } sigue abierta; la solución queda sellada hasta que se revele.
not-out-yet = Esta publicación todavía está saliendo; ciérrala cuando haya salido.
closing-already = Esta publicación ya se está cerrando; su solución está en camino.
closed-already = Esta publicación ya está cerrada.
was-posted = { $position } ya se publicó, con el n.º { $number }, el { $on }; di que debe salir otra vez, o elige otra.
illegal-position = Esta posición no es legal y no se puede publicar.
cannot-be-set-up = La posición no se puede montar: { $why }.
not-sound = { $soundness ->
    [sound] { $position } es correcta y por eso no entra en la semana. Mira su informe, corrígela, o di que se publique de todos modos.
    [several-keys] { $position } tiene más de una jugada clave y por eso no entra en la semana. Mira su informe, corrígela, o di que se publique de todos modos.
    [short] { $position } se resuelve en menos jugadas de las pedidas y por eso no entra en la semana. Mira su informe, corrígela, o di que se publique de todos modos.
    [unsound] { $position } no cumple lo que promete y por eso no entra en la semana. Mira su informe, corrígela, o di que se publique de todos modos.
    [illegal] { $position } no sirve y por eso no entra en la semana. Mira su informe y corrígela.
   *[undecided] { $position } no se pudo decidir en el tiempo permitido y por eso no entra en la semana. Mira su informe, corrígela, o di que se publique de todos modos.
}
cannot-be-drawn = Esta posición no se puede dibujar.
time-past = El { $at } ya ha pasado; en { $zone } ahora es el { $now }. Elige una hora posterior, o publica ya.
time-taken = Ya hay otra posición fijada para el { $at }; elige otra hora.
slot-taken = Justo en ese momento sale otra publicación; elige otra hora.
pause-past = El final de la pausa ya ha pasado; elige uno posterior.
not-a-time = «{ $words }» no es una hora; escribe horas y minutos, como 18:00.
no-times = No hay ninguna hora; indica al menos una, como 18:00.
time-twice = { $at } está dos veces; indica cada hora una vez.
too-many-times = Un grupo tiene como mucho { $most } horas de publicación al día; quita alguna.
clocks-leave-out = { $next ->
    [none] En { $zone } no existe el { $at }: allí se adelantan los relojes.
   *[other] En { $zone } no existe el { $at }: allí se adelantan los relojes. Elige el { $next } o más tarde.
}

## Lo que entrega o escribe un entrenador

file-too-heavy = { $file } pesa { $size } MB; como mucho { $most } MB. Divídelo y envía las partes.
no-positions = En { $file } no hay ninguna posición. Las posiciones llegan como EPD, como PGN con etiquetas FEN, o como FEN, una por línea.
name-needed = { $what ->
    [group] El grupo necesita un nombre; escribe al menos una letra.
    [topic] El tema necesita un nombre; escribe al menos una letra.
    [lesson] La lección necesita un título; escribe al menos una letra.
   *[file] El archivo necesita un nombre; escribe al menos una letra.
}
name-too-long = { $what ->
    [group] El nombre del grupo es demasiado largo; como mucho { $most } caracteres.
    [topic] El nombre del tema es demasiado largo; como mucho { $most } caracteres.
    [lesson] El título de la lección es demasiado largo; como mucho { $most } caracteres.
   *[file] El nombre del archivo es demasiado largo; como mucho { $most } caracteres.
}
words-too-long = { $when ->
    [post] Las palabras con la posición pasan de { $most } caracteres; acórtalas.
   *[reveal] Las palabras con la solución pasan de { $most } caracteres; acórtalas.
}
words-tell-move = Las palabras con la posición delatan una jugada ({ $line }). Guárdalas para la solución, o di que salgan con la posición de todos modos.
words-wanted = Todavía no hay nada escrito; escribe lo que el grupo debe leer.
nothing-to-choose = En esta posición no hay nada que elegir.
no-lesson = Aquí no hay (o ya no hay) esa lección; `sealed-move lesson list` muestra las que hay.
no-draft = Aquí no hay (o ya no hay) ese borrador.
no-step = La lección no tiene el paso { $step }; sus pasos van del 1 al { $steps }.
lesson-there = Ya hay una lección llamada «{ $title }»; ponle otro título a esta, o quita antes la otra.
lesson-went-out = Algo de «{ $title }» ya salió, así que queda como está; ponle otro título a lo que has escrito y se tomará como otra lección.
lesson-all-out = Todo lo de «{ $title }» está en la semana o ya salió; di que debe salir otra vez si quieres repetirlo.
would-tell = Revelaría la solución del n.º { $number }, que sigue abierto. Puede salir cuando se cierre.
would-tell-other = Revelaría la solución de otra posición de la semana, que tiene que salir y cerrarse antes.

## Veredictos, respuestas y miembros

answer-wanted = Escribe antes la respuesta; si no hace falta ninguna, di «no hace falta respuesta».
answer-too-long = La respuesta es demasiado larga; como mucho { $most } caracteres.
nothing-to-overrule = Todavía nada ha decidido esta respuesta, así que no hay nada que corregir. Júzgala, contesta en privado, o di que no necesita respuesta.
points-range = Los puntos van de 0 a 5.
marked-not-judged = Esto responde a una pregunta, que no tiene bien ni mal. Dale puntos, contesta en privado, o di que no necesita respuesta.
judged-not-marked = Esto responde a una posición; dale un veredicto junto con los puntos.
words-to-member-too-long = Las palabras al miembro son demasiado largas; como mucho { $most } caracteres.
message-taken-back = Su autor lo retiró; solo se pueden volver a mostrar los mensajes que ocultó un entrenador.
answer-taken-back = Su autor la retiró; solo se pueden volver a mostrar las respuestas que ocultó un entrenador.
mute-length = A un miembro se le silencia entre un minuto y un año, o hasta que lo levantes.
reason-too-long = El motivo es demasiado largo; como mucho { $most } caracteres.
same-member = Ese ya es un solo miembro; elige dos.
removed-not-merged = Uno de los dos está fuera del grupo. Déjalo volver antes, y luego únelos.
browser-taken = Este navegador ya es de { $name }. Pide a tu entrenador que os una en uno solo.
no-coach-of-this = Esa persona no entrena a este grupo.
last-coach = Un grupo necesita un entrenador; nombra antes a otro.

## Ajustes y cifras

group-already = Aquí ya está el grupo «{ $name }»; cambia sus ajustes.
days-of-week = Los días son los de una semana; el bit 0 es el lunes y el bit 6 el domingo.
open-between = Una publicación queda abierta al menos un minuto y como mucho 31 días (44 640 minutos).
price-range = { $what ->
    [wrong] Una primera jugada fallida cuesta entre 0 y 5 puntos.
   *[hint] Una pista cuesta entre 0 y 5 puntos.
}
period-backwards = El periodo termina ({ $last }) antes de empezar ({ $first }); escribe primero el día anterior.
no-period = «{ $words }» no es un periodo. Escribe uno de estos: { $examples }.
no-topics-yet = No existe el tema «{ $topic }»: este grupo aún no tiene temas. Deja el tema vacío para verlo todo.
no-such-topic = { $alike ->
    [yes] No existe el tema «{ $topic }». Los más parecidos: { $near }.
   *[no] No existe el tema «{ $topic }». Hay: { $near }.
}
several-topics = Varios temas podrían ser «{ $topic }»: { $several }. Escribe el que quieres tal como está allí.
table-fails = La tabla no se pudo escribir; avisa a quien lleva el bot.
quoted = «{ $words }»

## El programa

store-fails = { $why ->
    [full] El almacén no se puede usar: su disco está lleno. Lo que estaba guardado no se ha perdido; prueba otra vez dentro de un rato, y avisa a quien lleva el bot si sigue así.
    [busy] El almacén no se puede usar: otro programa lo tiene ocupado. Lo que estaba guardado no se ha perdido; prueba otra vez dentro de un rato, y avisa a quien lleva el bot si sigue así.
    [read-only] El almacén no se puede usar: en su disco no se puede escribir. Lo que estaba guardado no se ha perdido; prueba otra vez dentro de un rato, y avisa a quien lleva el bot si sigue así.
    [damaged] El almacén no se puede usar: hay en él un valor que no se puede leer. Lo que estaba guardado no se ha perdido; avisa a quien lleva el bot.
    [stopped] El almacén no se puede usar: se ha parado. Lo que estaba guardado no se ha perdido; prueba otra vez dentro de un rato, y avisa a quien lleva el bot si sigue así.
   *[other] El almacén no se puede usar; el registro dice por qué. Lo que estaba guardado no se ha perdido; prueba otra vez dentro de un rato, y avisa a quien lleva el bot si sigue así.
}
picture-fails = El dibujo no se pudo hacer; avisa a quien lleva el bot.
broke = Algo ha fallado dentro del bot. Lo que estaba guardado no se ha perdido; avisa a quien lleva el bot.

## Fichas de temas

no-card = No existe esa ficha; elige una de la lista.
no-card-of = No hay ficha de «{ $topic }»; elige una de la lista.
card-held-back = Esta ficha está retenida por ahora: delataría algo de una posición abierta. Vuelve cuando se publique su solución.
card-is-ours = Esta ficha es la propia del programa; no hay nada que retirar.
card-without-words = Escribe de qué trata el tema; una ficha necesita una definición.
card-too-long = { $part ->
    [definition] La definición pasa de { $most } caracteres; acórtala.
   *[look] En qué fijarse pasa de { $most } caracteres; acórtalo.
}
moves-without-position = Hay jugadas pero no posición; da también el FEN del ejemplo, o quita las jugadas.
example-fails = { $after ->
    [0] El ejemplo no se puede jugar: { $at } no es una jugada legal en su posición.
    [one] El ejemplo no se puede jugar: tras { $after } jugada, { $at } no es legal.
   *[other] El ejemplo no se puede jugar: tras { $after } jugadas, { $at } no es legal.
}
example-too-long = El ejemplo tiene más de { $most } jugadas entre los dos bandos; termínalo antes.

## El editor

no-move-here = «{ $written }» no es una jugada legal aquí; escríbela como Cf3, o juégala en el tablero.
line-breaks = { $after ->
    [0] Las jugadas no casan con la posición: { $at } no es legal en ella. Corrige la posición, o quita las jugadas.
    [one] Las jugadas no casan con la posición: tras { $after } jugada, { $at } no es legal. Corrige la posición, o quita las jugadas desde ahí.
   *[other] Las jugadas no casan con la posición: tras { $after } jugadas, { $at } no es legal. Corrige la posición, o quita las jugadas desde ahí.
}
board-line-too-long = La línea tiene más de { $most } jugadas contando ambos bandos; termínala antes.
draft-too-large = Son más de { $most } caracteres; haz dos de esto.
draft-empty = El borrador aún no tiene ningún paso; añade uno y luego tómalo como lección.
draft-changed = Entretanto se ha escrito en el borrador desde otro sitio; míralo otra vez y luego tómalo como lección.
# $what is a statement that begins with a small letter and has no full stop.
draft-step-wrong = El paso { $step } no está terminado: { $what }.
edit-unreadable = No se puede leer: { $what }.
edit-not-one = Aquí va una sola posición, como partida PGN o como FEN; escribe esa y nada más.
edit-no-task = No se indica ninguna tarea ni se ha encontrado una; escribe de #1 a #20 para un mate, + para ganar o = para tablas.
edit-bad-task = La tarea no se puede leer: { $why }.
position-there = El grupo ya tiene esta posición con esta tarea, como { $position }; cambia aquella, o haz distinta esta.
position-went-out = Salió como n.º { $number }, y lo que respondieron los miembros le pertenece, así que queda como está. Escribe la posición cambiada en «Revisar» como una nueva.
position-in-lesson = Es una parada del paso { $step } de la lección «{ $title }»; abre la lección en el editor de la página del entrenador y cámbiala allí.
