# La página del entrenador en la sala del club. $number es el número de una posición, $at un momento (la hora,
# con el día delante si no es hoy); $name, $names, $topic, $group, $source, $id y $why los escribió una persona.
# $task es un signo como #2.

## Alrededor de todo

coaching-title = Página del entrenador
coaching-heading = { $group }: entrenador
coaching-window = Entrenador: { $group }
coaching-skip = Saltar a la página
coaching-parts = Partes de la página del entrenador
coaching-nav-week = Semana
coaching-nav-check = Revisar
coaching-nav-summary = Resumen
coaching-nav-room = Página de los miembros
coaching-posts = Publicaciones
coaching-members = Miembros
coaching-settings = Ajustes
coaching-no-script = Esta página necesita JavaScript. Permítelo para esta dirección y vuelve a cargar la página.
coaching-broken-line = Se ha cortado la conexión; se volverá a intentar sola.
coaching-notes = Avisos del bot
coaching-earlier-notes = Avisos anteriores del bot
coaching-about = { $label }: { $id }
coaching-about-item = { $label }: { $item }
coaching-item = { $task } de { $source }
coaching-item-written = { $kind ->
    [question] pregunta: { $words }
   *[words] aviso: { $words }
}

## Entrar

coaching-who = ¿Quién entrena aquí?
coaching-your-name = Tu nombre
coaching-go-on = Continuar
coaching-who-what = El grupo lo ve junto a tus palabras, con la marca { $mark }. También distingue a varios entrenadores: lo que hace cada uno queda anotado con este nombre. Se pregunta una vez en cada navegador.
coaching-here-already = Ya entreno aquí, en otro dispositivo
coaching-code-what = En el otro dispositivo, abre la página de los miembros, allí «Mi trabajo», y pulsa «Usar otro dispositivo».
coaching-you-are = Aquí eres { $name }. Pulsa «Continuar» para entrenar con este nombre.

## Cómo están los chats

coaching-chats = Chats
coaching-chat-starting = { $name } está arrancando.
coaching-chat-up = { $name } está conectado, desde { $since }.
coaching-chat-wavering = { $name } no está conectado, desde { $since }: { $why } Vuelve a conectarse solo.
coaching-chat-failing = { $name } no está conectado, desde { $since }: { $why } Próximo intento: { $next }.
coaching-chat-refused = { $name } no está conectado, desde { $since }: { $why }
coaching-chat-stopped = { $name } está parado.

## La semana

coaching-week = La semana
coaching-open = La n.º { $number } está abierta.
coaching-open-topic = La n.º { $number } está abierta: { $topic }.
coaching-it-closes = Se responde hasta: { $at } ({ $until }).
coaching-read-replies = Leer las respuestas
coaching-close-now = Cerrar ya con la solución
coaching-close-sure = ¿Cerrar ya la n.º { $number }? Todos verán la solución, y no se admitirán más respuestas.
coaching-close = Cerrar con la solución
coaching-leave-open = Dejarla abierta
coaching-closing = La n.º { $number } se está cerrando; la solución sale ahora.
coaching-paused-until = Pausa hasta: { $at }. Mientras tanto no sale ninguna posición.
coaching-paused = Pausa hasta que la termines. Mientras tanto no sale ninguna posición.
coaching-resume = Terminar la pausa
coaching-resumed = Vuelven a salir posiciones.
coaching-pause-posting = Hacer una pausa
coaching-pause-until = Hasta la mañana del (vacío: hasta que la termines)
coaching-pause = Pausa
coaching-pause-done = Por ahora no sale ninguna posición.
coaching-nothing-waits = No hay nada en espera. Cuando toca una posición y la semana está vacía, el bot te avisa; nunca publica nada sin revisar.
coaching-check-for-week = Revisar posiciones para la semana
coaching-no-time = { $why ->
    [not-sound] sin fecha: no se dio por correcta
    [paused] sin fecha: hay una pausa
    [no-days] sin fecha: el calendario no tiene días
   *[waits] sin fecha: lo que espera tampoco la tiene
}
coaching-waits-for-post = Revelaría algo, y espera a la solución del n.º { $number }.
coaching-waits-for-item = Revelaría algo, y espera a la solución de { $item }.
coaching-step-of = Paso { $step } de { $steps } de la lección «{ $title }»
coaching-due-fixed = { $at }, fijo
coaching-also = también { $topics }
coaching-again-as = otra vez: ya salió como n.º { $number }
coaching-difficulty = dificultad { $level } de 10
coaching-topic-not-verified = tema sin comprobar
coaching-sound = { $verdict ->
    [sound] correcta
    [several-keys] más de una jugada clave
    [short] hay un mate más corto
    [unsound] sin solución
    [illegal] no sirve
   *[undecided] sin decidir en el tiempo permitido
}
coaching-diagram-of = Diagrama de { $fen }
coaching-drag = Arrastrar a otro lugar
coaching-no-topic = Sin tema
coaching-topic-of = Tema de { $item }
coaching-topic-set = El tema es ahora: { $topic }.
coaching-topic-gone = Ya no tiene tema.
coaching-earlier = Antes
coaching-later = Después
coaching-moved-of = Movido al puesto { $place } de { $count } de la semana.
coaching-stays-at = Sigue en el puesto { $place } de { $count } de la semana.
coaching-post-now = Publicar ya
coaching-post-now-sure = ¿Publicar ya { $item }, antes de su hora?
coaching-post-it-now = Publicarla ya
coaching-wait = Esperar
coaching-goes-out = Se publica ahora.
coaching-take-out = Sacar
coaching-take-out-of-week = Sacar de la semana
coaching-taken-out = Fuera de la semana; vuelve a estar en la reserva.
coaching-taken-away = Fuera de la semana.
coaching-undo = Deshacer
coaching-put-back = Devolver
coaching-put-back-done = Está otra vez en su puesto.
coaching-taken-at = Sacado: { $at }
coaching-taken-out-list = Lo último que se sacó ({ $count })
coaching-place-of = Puesto de { $item } en la semana
coaching-move-there = A este puesto
coaching-place-wanted = Un puesto en la semana es un número del 1 al { $count }.
coaching-day-and-time = Día y hora
coaching-time-of = Día y hora de { $item }, en { $zone }
coaching-in-zone = En la zona horaria del grupo, { $zone }.
coaching-fix = Fijar
coaching-fix-of = Fijar la hora de { $item }
coaching-fixed = La hora queda fija.
coaching-unfix = Dejarlo al calendario
coaching-unfixed = Decide el calendario.
coaching-as-members = Así la verán los miembros

## Revisar

coaching-check = Revisar posiciones
coaching-paste = Pega líneas EPD, PGN o FEN, o suelta aquí un archivo
coaching-check-pasted = Revisar lo pegado
coaching-choose-file = Elegir un archivo
coaching-check-what = Hasta 16 MB. Cada posición se revisa antes de poder publicarse; si se pide un mate, mediante búsqueda exhaustiva. De aquí no sale nada por sí solo.
coaching-write = Escribir una pregunta o un aviso
coaching-write-words = El texto, como mucho 1000 caracteres
coaching-write-fen = Una posición al lado (FEN), si quieres
coaching-write-reveal = De una pregunta: tus palabras sobre ella, que se ven cuando se cierra
coaching-queue-question = Ponerlo en la semana como pregunta
coaching-queue-words = Ponerlo en la semana como aviso
coaching-write-what = Los miembros responden a una pregunta con sus propias palabras y tú puntúas lo que escriben; no lo ve nadie más, salvo que quien lo escribió lo permita. Un aviso no admite respuestas.
coaching-question-waits = La pregunta espera al final de la semana.
coaching-words-wait = El aviso espera al final de la semana.
coaching-written-found = Preguntas y avisos en el archivo: { $count }
coaching-with-position = Con la posición { $fen }
coaching-waits-at-end = Espera al final de la semana.
coaching-nothing-pasted = Todavía no has pegado nada.
coaching-pasted = pegado
coaching-file-too-large = { $name } ocupa más de 16 MB. Divídelo y revisa las partes una a una.
coaching-reading = Leyendo { $name }…
coaching-positions-checked = Posiciones revisadas
coaching-checked-of = { $count ->
    [one] { $done } de { $count } posición revisada
   *[other] { $done } de { $count } posiciones revisadas
}
coaching-checked = { $count ->
    [one] { $count } posición revisada; correctas: { $sound }
   *[other] { $count } posiciones revisadas; correctas: { $sound }
}
coaching-left-out = { $count ->
    [one] Se deja fuera { $count } posición que ya salió: mira abajo.
   *[other] Se dejan fuera { $count } posiciones que ya salieron: mira abajo.
}
coaching-add-sound = { $count ->
    [one] Poner la correcta en la semana
   *[other] Poner las { $count } correctas en la semana
}
coaching-shelf = En la reserva: revisadas antes, en ninguna semana ({ $count })
coaching-more = Mostrar { $count } más
coaching-outcome = { $id }: { $found }
coaching-keys = { $count ->
    [one] Jugada clave: { $keys }
   *[other] Jugadas clave: { $keys }
}
coaching-variations = Variantes ({ $count })
coaching-tries = Ensayos y lo que los refuta ({ $count })
coaching-note = Nota: { $text }
coaching-proved = Demostrado mediante búsqueda exhaustiva.
coaching-judged-at = Juzgado a profundidad { $depth }.
coaching-level = Dificultad aproximada: { $level } de 10.
coaching-keep-old = Conservar la anterior
coaching-take-new = Tomar la nueva
coaching-keep-both = Conservar los dos temas
coaching-posted-before = Ya salió como n.º { $number }: { $at }.
coaching-words-with-post = Tus palabras con la posición
coaching-words-at-reveal = Tus palabras con la solución
coaching-change-words = Cambiar las palabras
coaching-with-post = Con la posición
coaching-at-reveal = Con la solución
coaching-words-anyway = Enviar las palabras con la posición aunque revelen una jugada
coaching-keep-words = Guardar estas palabras
coaching-words-kept = Estas palabras están guardadas.
coaching-in-week = En la semana.
coaching-see-week = Ver la semana
coaching-enqueue = Poner en la semana
coaching-enqueue-again = Poner otra vez en la semana
coaching-post-anyway = Publicarla igualmente
coaching-post-anyway-again = Publicarla igualmente, y otra vez

## Publicaciones y respuestas

coaching-nothing-posted = Todavía no se ha publicado nada.
coaching-open-until = abierta hasta { $at }
coaching-posted-at = publicada: { $at }
coaching-waiting = Esperan tu palabra ({ $count })
coaching-replies = { $count ->
    [one] { $count } respuesta
   *[other] { $count } respuestas
}
# Answers to a question, by the first move found in each. $waiting: how many have no mark.
coaching-answers-by-move = { $count ->
    [one] { $count } respuesta, según su primera jugada. Sin tu nota: { $waiting }.
   *[other] { $count } respuestas, agrupadas por la primera jugada. Sin tu nota: { $waiting }.
}
coaching-begins-move = { $move } ({ $count }, sin nota: { $waiting })
coaching-begins-none = Sin jugada ({ $count }, sin nota: { $waiting })
coaching-begins-replaced = Respondidas de nuevo después ({ $count })
coaching-points-of = { $points } de 5
coaching-by-coach = por el entrenador
coaching-answered-privately = respondida en privado
coaching-needs-no-answer = no necesita respuesta
coaching-told = Lo que se le dijo al miembro
coaching-private-answer = La respuesta en privado
coaching-overrule-more = Cambiar el veredicto…
coaching-judge-more = Juzgar…
coaching-overrule = Cambiar el veredicto
coaching-judge = Juzgar
coaching-verdict-on = Veredicto sobre la respuesta de { $name }
coaching-points-for = Puntos por la respuesta de { $name }
coaching-points-range = Los puntos van de 0 a 5.
coaching-word-to = Unas palabras para { $name }
coaching-word-placeholder = Unas palabras (o vacío)
coaching-answer-privately = Responder en privado…
coaching-answer-again = Responder otra vez…
coaching-answer-to = Una respuesta en privado para { $name }
coaching-only-reads = Esto solo lo lee { $name }
coaching-send-answer = Enviar la respuesta
coaching-no-answer = No necesita respuesta
coaching-points-for-answer = Puntos para la respuesta de { $name }
coaching-mark-more = Puntuar…
coaching-mark-again = Puntuar otra vez…
coaching-mark = Puntuar
# Showing an answer to the group, with its writer's leave.
coaching-show-more = Mostrar como ejemplo…
coaching-show-what = Antes se pregunta a quien la escribió, que puede omitir su nombre o decir que no. Solo se muestra con su permiso y después de la solución.
coaching-ask-leave = Pedir permiso
coaching-no-longer-show = No mostrarla
coaching-beside = Tus palabras junto a la respuesta de { $name }
coaching-beside-placeholder = Tus palabras al lado (opcional)
coaching-beside-change = Cambiar las palabras
coaching-leave = { $leave ->
    [none] Por mostrar: quien la escribió aún no ha dicho nada
    [named] Se muestra con el nombre de quien la escribió
    [nameless] Se muestra sin el nombre de quien la escribió
   *[refused] Quien la escribió no quiere que se muestre
}

## El resumen

coaching-summary = Resumen de participación
coaching-from = Desde
coaching-to = Hasta, este día incluido
coaching-show = Mostrar
coaching-took-part = { $members ->
    [one] { $posts ->
        [one] { $members } miembro participó en { $posts } posición.
       *[other] { $members } miembro participó en { $posts } posiciones.
    }
   *[other] { $posts ->
        [one] { $members } miembros participaron en { $posts } posición.
       *[other] { $members } miembros participaron en { $posts } posiciones.
    }
}
coaching-kinds = { $problems ->
    [one] { $questions ->
        [one] { $problems } posición y { $questions } pregunta. Los porcentajes de soluciones son solo de las posiciones.
       *[other] { $problems } posición y { $questions } preguntas. Los porcentajes de soluciones son solo de las posiciones.
    }
   *[other] { $questions ->
        [one] { $problems } posiciones y { $questions } pregunta. Los porcentajes de soluciones son solo de las posiciones.
       *[other] { $problems } posiciones y { $questions } preguntas. Los porcentajes de soluciones son solo de las posiciones.
    }
}
coaching-went-quiet = Han dejado de participar: { $names }.
coaching-nobody-quiet = Nadie ha dejado de participar.
coaching-came-back = Han vuelto: { $names }.
coaching-take-away = Para llevar:
coaching-csv = { $table ->
    [members] miembros (CSV)
    [posts] posiciones (CSV)
   *[topics] temas (CSV)
}
coaching-json = todo (JSON)
coaching-number = N.º
coaching-hints = Pistas
coaching-common-wrong = Jugadas fallidas más frecuentes
coaching-weakest-first = Temas, el más flojo primero
coaching-chart-in-words = El gráfico en palabras

## Charla

coaching-say-as = Unas palabras al grupo, como { $name } { $mark }
coaching-hide = Ocultar
coaching-hide-of = Ocultar el mensaje de { $name }
coaching-hide-answer-of = Ocultar la respuesta de { $name }
coaching-hide-sure = ¿Ocultar este mensaje de { $name }? Desaparece al momento para todos. Los entrenadores todavía pueden leerlo, ver quién lo ocultó y cuándo, y volver a mostrarlo.
coaching-hide-it = Ocultarlo
coaching-show-again = Volver a mostrar

## Miembros

coaching-members-what = Todos los que han dado un nombre aquí. Nadie puede usar un nombre que se parezca al de otro.
coaching-answers = { $count ->
    [one] { $count } respuesta
   *[other] { $count } respuestas
}
coaching-devices = { $count } dispositivos
coaching-removed = Fuera del grupo
coaching-muted = Silenciado
coaching-muted-until = Silenciado hasta { $at }
coaching-let-back = Dejar entrar otra vez
coaching-remove = Quitar del grupo
coaching-remove-sure = ¿Quitar a { $name } del grupo? Sus páginas abiertas se cierran al momento, y no podrá volver con este nombre. Lo que escribió se queda. Quien tiene el enlace de los miembros todavía puede entrar como alguien nuevo: crea también un enlace nuevo en «Ajustes» si eso no debe pasar.
coaching-remove-yes = Quitar del grupo
coaching-take-kept = Llevarse lo guardado (JSON)
coaching-erase = Borrar
coaching-erase-sure = ¿Borrar todo lo de { $name }, porque así lo pide? Nombre, respuestas, puntos y mensajes se pierden para siempre.
coaching-erase-removed-sure = ¿Borrar todo lo de { $name }, porque así lo pide? Nombre, respuestas, puntos y mensajes se pierden para siempre. Después no queda nada por lo que reconocer a esa persona, así que ya no está excluida: crea un enlace nuevo si no debe volver.
coaching-is-coach = Es entrenador. Para excluir a un entrenador, crea un enlace de entrenador nuevo en «Ajustes»; después es un miembro como cualquier otro.
coaching-rename = Cambiar el nombre
coaching-may-not-talk = { $name } puede responder, pero no escribir al grupo.
coaching-muted-why = El motivo: { $why }.
coaching-unmute = Dejar que escriba otra vez
coaching-no-talk = Sin charla
coaching-for-an-hour = Durante una hora
coaching-for-a-day = Durante un día
coaching-for-a-week = Durante una semana
coaching-until-lifted = Hasta que yo lo levante
coaching-mute-why = Motivo, que lee el miembro
coaching-may-be-empty = Puede quedar vacío
coaching-mute = Silenciar
coaching-is-also = { $name } también es
coaching-nobody-else = Nadie más
coaching-merge = Unirlos en uno
coaching-merge-sure = ¿Hacer de { $other } y { $name } una sola persona, llamada { $name }? Las respuestas, pistas, puntos y mensajes de los dos pasan a ser de una sola persona. Si los dos intentaron la misma posición, sus respuestas cuentan en el orden en que llegaron. Esto no se puede deshacer.
coaching-deeds = Lo que han hecho los entrenadores
coaching-deed = { $deed ->
    [hide] { $by } ocultó un mensaje de { $about }
    [put-back] { $by } volvió a mostrar un mensaje de { $about }
    [mute] { $by } silenció a { $about }
    [unmute] { $by } dejó escribir otra vez a { $about }
    [remove] { $by } quitó del grupo a { $about }
    [let-back] { $by } dejó entrar otra vez a { $about }
    [rename] { $by } cambió el nombre de { $about }
    [merge] { $by } hizo de dos miembros uno: { $about }
    [export] { $by } se llevó lo guardado de { $about }
    [erase] { $by } borró a un miembro
    [judge] { $by } juzgó una respuesta de { $about }
    [answer] { $by } respondió en privado a { $about }
    [no-answer] { $by } anotó que no hace falta responder a { $about }
    [member-link] { $by } creó un enlace nuevo para los miembros
    [coach-link] { $by } creó un enlace nuevo de entrenador
    [coach-came] { $by } entró con el enlace del entrenador
    [add-coach] { $by } hizo entrenador a { $about }
    [remove-coach] { $by } quitó el rango de entrenador a { $about }
    [settings] { $by } cambió los ajustes
    [post-now] { $by } publicó una posición antes de su hora
    [close-now] { $by } cerró una posición antes de tiempo
    [pause] { $by } hizo una pausa
    [resume] { $by } terminó la pausa
    [write-card] { $by } escribió una ficha de tema
    [take-back-card] { $by } retiró una ficha de tema
   *[other] { $by } hizo otra cosa
}
coaching-erased-coach = Un entrenador borrado
coaching-erased-member = un miembro borrado

## Ajustes

coaching-group-name = Nombre del grupo
coaching-zone = Zona horaria (nombre IANA, como Europe/Lisbon)
coaching-no-zone = «{ $zone }» no es una zona horaria de la lista IANA; elige una de las que se ofrecen, como Europe/Lisbon.
coaching-post-time = Horas de publicación
coaching-post-time-nth = Hora { $place } del día
coaching-post-time-more = Añadir otra hora
coaching-post-time-less = Quitar esta hora
coaching-post-times-what = Con varias horas al día, las publicaciones se solapan si la siguiente sale antes de la solución.
coaching-days = En estos días
coaching-open-hours = Horas desde la posición hasta su solución
coaching-answers-are = Respuestas
coaching-mode = { $mode ->
    [sealed] Selladas: antes de la solución, solo el miembro y tú veis una respuesta
   *[open] Abiertas: el grupo ve las respuestas, tapadas hasta que se quieran ver
}
coaching-letters = Letras de las piezas que se leen primero
coaching-look = Aspecto de los diagramas
coaching-style = { $style ->
    [print] Página impresa
    [light] Tono suave, claro
    [dark] Tono suave, oscuro
   *[contrast] Alto contraste
}
coaching-points = Puntos (5 por posición; una ya publicada conserva sus precios)
coaching-scale = { $scale ->
    [club] Club: los intentos fallidos y las pistas quitan un poco
   *[tournament] Torneo: nada tras una primera jugada fallida
}
coaching-wrong-cost = Puntos menos por cada primera jugada fallida, según la escala del club
coaching-hint-cost = Puntos menos por cada pista
coaching-least = Según la escala del club, quien resuelve una posición sin que se le muestre la jugada conserva al menos 1 punto.
coaching-defences-are = Defensas cuando se juega una variante
coaching-defences = { $defences ->
    [same] Todos los miembros se encuentran con la misma defensa
   *[differ] Entre defensas igual de largas, cada miembro puede tener otra
}
coaching-save = Guardar los ajustes
coaching-saved = Guardado. Los horarios de la semana se adaptan.
coaching-own-language = Tu propio idioma
coaching-member-link = El enlace para los miembros
coaching-member-link-what = Quien lo tiene puede entrar. Dáselo solo a tu grupo, no en una página pública.
coaching-copy = Copiar
coaching-copied = Copiado.
coaching-new-link = Crear un enlace nuevo
coaching-new-link-sure = ¿Crear un enlace nuevo? El antiguo deja de valer al momento. Cada miembro lo ve en su página abierta, y tiene que entrar con el nuevo.
coaching-new-link-made = El enlace antiguo ya no vale. Envía este a tus miembros.
coaching-coach-link = El enlace del entrenador
coaching-coach-link-what = Quien lo tiene es entrenador aquí. El bot lo escribe al arrancar. Crea uno nuevo si el antiguo puede haber caído en malas manos, o si alguien ya no entrena: deja de valer para todos menos para ti, y quien deba seguir siendo entrenador entra con el nuevo.
coaching-new-coach-link = Crear un enlace de entrenador nuevo
coaching-new-coach-link-is = El nuevo enlace del entrenador
coaching-new-coach-link-sure = ¿Crear un enlace de entrenador nuevo? El antiguo deja de valer al momento. Los demás entrenadores lo ven en su página abierta, y solo vuelven a ser entrenadores con el nuevo. Tú sigues dentro.
coaching-new-coach-link-made = El enlace antiguo ya no vale. Guarda bien este, y dáselo solo a los demás entrenadores.

## Lecciones

coaching-lessons = Lecciones
coaching-lesson-paste = Una lección como PGN, una partida por paso
coaching-lesson-title = Título, en lugar del que da el archivo
coaching-lesson-take-in = Tomar la lección
coaching-lesson-what = Las palabras antes de la primera jugada abren el paso. Se pregunta por la jugada cuyo comentario empieza con [stop]; [stop #2] dice qué se pide. Unas jugadas sin parada son un ejemplo, sin jugadas son palabras con un dibujo, y unas palabras que terminan con signo de interrogación son una pregunta abierta.
coaching-no-lessons = Todavía no hay lecciones.
coaching-lesson-kept = { $broken ->
    [0] «{ $title }» está guardada. Repásala y luego ponla en la semana.
    [one] «{ $title }» está guardada sin el paso que no se pudo leer, que figura abajo con lo que está mal.
   *[other] «{ $title }» está guardada sin los { $broken } pasos que no se pudieron leer, que figuran abajo con lo que está mal.
}
coaching-lesson-not-kept = No se guarda nada, porque ningún paso se pudo leer; lo que está mal figura abajo.
coaching-lesson-count = Pasos: { $steps }. Partes: { $parts }, de ellas { $waiting } en la semana y { $posted } publicadas.
coaching-lesson-look = Verla
coaching-lesson-out = Guardar como PGN
coaching-lesson-remove = Quitar
coaching-lesson-remove-sure = ¿Quitar «{ $title }»? Lo que espera en la semana se saca. Sus posiciones se quedan entre las comprobadas, y lo publicado también.
coaching-lesson-remove-it = Quitar la lección
coaching-lesson-removed = «{ $title }» se ha quitado.
coaching-lesson-plan-what = Lo que revelaría la solución de un paso anterior espera hasta que ese se revele.
coaching-lesson-anyway = también paradas que no están en orden
coaching-lesson-again = también lo que ya salió
coaching-lesson-in-order = A la semana, en orden
coaching-lesson-from = Todo a la vez, desde
coaching-lesson-at-once = A la semana de una vez
coaching-lesson-by-dates = Por fechas
coaching-lesson-put-dates = Poner los pasos en estas fechas
coaching-lesson-dates-wanted = Indica el día y la hora de al menos un paso; los demás salen en huecos libres.
coaching-lesson-when-wanted = Elige el momento desde el que sale.
coaching-lesson-planned = { $left ->
    [0] «{ $title }» está en la semana. Partes: { $count }.
   *[other] «{ $title }» está en la semana. Partes: { $count }; quedan fuera por haber salido ya: { $left }.
}
coaching-lesson-step = Paso { $step }
coaching-lesson-step-contrast = Paso { $step }, donde el tema no debe funcionar
coaching-lesson-waits = { $count ->
    [one] Espera a que se revele el paso { $steps }, cuya solución descubriría.
   *[other] Espera a que se revelen los pasos { $steps }, cuyas soluciones descubriría.
}
coaching-lesson-part-kept = Guardado, no en la semana.
coaching-lesson-part-not-kept = No se guarda: no hay tarea y no se encontró ninguna; escribe una, como [stop #2].
coaching-lesson-part-as-before = La misma posición que en el paso { $step }; sale una vez.
coaching-lesson-part-waits = En la semana.
coaching-lesson-part-open = Publicado como n.º { $number }, todavía abierto.
coaching-lesson-part-closed = Publicado como n.º { $number } y cerrado.

## Fichas de temas

coaching-card-tells = Los miembros no la ven ahora: delataría algo de la posición { $numbers }, que está abierta.
coaching-card-tells-copy = Por ahora los miembros ven la ficha del programa: la tuya delataría algo de la posición { $numbers }, que está abierta.
coaching-card-own = tuya
coaching-card-edit = Editar para el grupo
coaching-card-edit-what = Lo que guardes ocupa el lugar de las palabras del programa, para este grupo, en el idioma en que escribas. Sin posición, la ficha conserva el ejemplo del programa.
coaching-card-new = Escribir una ficha de un tema tuyo
coaching-card-new-what = Un tema que se llama como un patrón de mate cambia la ficha de ese patrón.
coaching-card-definition = Qué es
coaching-card-look = En qué fijarse (se puede omitir)
coaching-card-fen = Ejemplo, en FEN (se puede omitir)
coaching-card-moves = Sus jugadas, como 1.Td8+ Txd8 2.Txd8#
coaching-card-save = Guardar la ficha
coaching-card-saved = La ficha está guardada.
coaching-card-queue = Ponerla en la semana
coaching-card-queued = Espera al final de la semana, como palabras con la posición del ejemplo.
coaching-card-take-back = Retirar mi ficha
coaching-card-take-back-sure = ¿Retirar tu ficha? Se pierde lo que escribiste en ella.
coaching-card-taken-back = Tu ficha está retirada.
