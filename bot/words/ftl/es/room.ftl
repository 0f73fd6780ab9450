# La página de los miembros en la sala del club, y lo que la del entrenador comparte con ella. $number y
# $other son números de posiciones; $name, $who, $names y $topic los escribió una persona.

## Alrededor de todo

room-title = Sala del club
room-skip = Saltar al cuadro de mensajes
room-parts = Partes de la sala
room-nav-room = Sala
room-nav-past = Anteriores
room-nav-kept = Mis datos
room-nav-coach = Página del entrenador
room-no-script = Esta sala necesita JavaScript. Permítelo para esta dirección y vuelve a cargar la página.
room-unreachable = Ahora mismo no se puede llegar a la sala. Lo que has escrito no se pierde; inténtalo otra vez dentro de un momento.
room-load-again = Esta página es más antigua que la sala. Vuelve a cargarla.
room-error = La sala respondió con un error ({ $status }).
room-broken-line = Se ha cortado la conexión; se volverá a intentar sola. Lo que escribas se queda aquí.
room-cancel = Cancelar
room-close = Cerrar

## Entrar

room-coming-in = Entrando
room-go-in = Entrar en la sala
room-refused = Este enlace no abre la sala
room-refused-why = Puede que se haya cortado por el camino, o que el entrenador lo haya cambiado desde entonces.
room-refused-member = Si eres miembro: pídele otra vez el enlace a tu entrenador y ábrelo entero.
room-refused-coach = Si eres el entrenador: el bot escribe tu enlace cada vez que arranca. Es siempre el mismo hasta que un entrenador crea otro en la página del entrenador, en «Ajustes».
room-enter = ¿Cómo quieres que te llame el grupo?
room-your-name = Tu nombre en esta sala
room-come-in = Entrar
room-enter-what = Basta con tu nombre de pila o un apodo. Todo el grupo lo ve junto a tus mensajes y en la clasificación; puedes cambiarlo más tarde.
room-enter-care = Lo que escribes aquí se guarda en el ordenador de tu entrenador: tu nombre, tus respuestas con su resultado y tus mensajes. En «Mis datos» puedes verlo todo, llevártelo y borrarlo. Puede haber menores entre los miembros: las normas de protección de tu club y la ley de privacidad de tu país están por encima. No des aquí apellidos, dirección, colegio ni teléfono.
room-here-already = Ya estoy en esta sala, en otro dispositivo
room-code = El código que muestra tu otro dispositivo
room-code-come-in = Entrar como la misma persona
room-code-what = En el dispositivo donde tienes tu nombre, abre «Mi trabajo» y pulsa «Usar otro dispositivo». Muestra un código que vale diez minutos.
room-take-name = Usar «{ $name }»

## Fuera

room-out-link = El enlace de esta sala ha cambiado
room-out-link-what = Tu entrenador ha creado un enlace nuevo, así que en esta página ya no se puede hacer nada. Pídele el enlace nuevo y ábrelo en este navegador: esta página seguirá sola.
room-out-coach-link = El enlace del entrenador ha cambiado
room-out-coach-link-what = Otro entrenador ha creado un enlace de entrenador nuevo, así que en esta página ya no se puede hacer nada. Pídele el enlace nuevo y ábrelo en este navegador: esta página seguirá sola.
room-out-removed = Ya no estás en este grupo
room-out-removed-what = Tu entrenador te ha quitado del grupo. Lo que escribiste antes sigue guardado: pregúntale si quieres una copia o quieres que se borre.
room-out-erased = Se ha borrado todo lo tuyo
room-out-erased-what = Tu entrenador ha borrado lo que se guardaba de ti aquí.
room-out-typed = Lo que has escrito se queda en el cuadro de abajo. No se ha enviado.

## La posición y su número

room-open-position = La posición abierta
room-number = N.º { $number }
room-number-topic = N.º { $number }, { $topic }
room-number-question = { $name }, una pregunta
# Above a post that is a step of a lesson.
room-lesson-step = Lección «{ $title }», paso { $step } de { $steps }
room-question = Pregunta
room-kind = { $kind ->
    [problem] posición
    [question] pregunta
   *[words] aviso
}
room-preview = Vista previa
room-in-words = La posición en palabras
room-none-open = No hay ninguna posición abierta
room-none-open-what = La próxima aparecerá aquí cuando le llegue el turno en la semana del entrenador.
room-look-at-past = Ver posiciones anteriores
room-which-open = Qué posición abierta
room-closes = Se responde hasta: { $at }, hora tuya ({ $until })
room-closed = Cerrada: { $at }; la solución está en camino
room-day-and-time = { $day }, { $time }
room-hint = Pista
room-hint-step = Pista { $step } de 3
room-hint-for-move = Pista { $step } de 3 para tu jugada { $move }
room-give-up = Rendirse
room-give-up-sure = ¿Te rindes en esta posición? Tu intento acaba aquí; la solución llegará cuando se cierre.
room-go-on-trying = Seguir intentándolo
room-gave-up = Te has rendido
room-board-at-end = Tu tablero al final

## Veredictos

room-verdict = { $verdict ->
    [solved] Resuelto
    [on-the-way] Bien hasta ahí
    [wrong] Jugada fallida
    [illegal] Jugada no legal
    [unclear] No está claro
    [unreadable] No se ha podido leer
    [kept] Espera al entrenador
    [marked] Puntuada por el entrenador
   *[none] Aún sin veredicto
}
room-your-move = Te toca.
room-mean = ¿Qué querías decir?
room-i-mean = Quiero decir { $line }

## La solución

room-solution = N.º { $number }: la solución
room-final-picture = La imagen final: { $patterns }.
room-common-wrong = La jugada fallida más frecuente fue { $move }, elegida { $count } veces. La refuta { $line }.
room-common-wrong-why = La jugada fallida más frecuente fue { $move }, elegida { $count } veces. La refuta { $line }: { $why }.
room-notes = Notas del entrenador
room-nobody-took-part = Esta vez no ha participado nadie.
room-solved-by = { $count ->
    [one] Resuelta por { $names }. Ha participado { $count } miembro.
   *[other] Resuelta por { $names }. Han participado { $count } miembros.
}
room-nobody-solved = { $count ->
    [one] No la ha resuelto nadie. Ha participado { $count } miembro.
   *[other] No la ha resuelto nadie. Han participado { $count } miembros.
}
room-question-closed = N.º { $number }: la pregunta está cerrada
room-coach-words = Las palabras del entrenador
room-answered-by = Respondieron: { $names }.
room-nobody-answered = Esta vez no respondió nadie.
room-answers-wait = { $count ->
    [one] { $count } respuesta espera todavía la nota del entrenador.
   *[other] { $count } respuestas esperan todavía la nota del entrenador.
}
# Answers that their writers allow the group to see.
room-examples = Respuestas de ejemplo
room-example-by = { $name }
room-example-nameless = Del grupo, sin nombre

## Charla

room-talk = Charla
room-earlier = Mostrar mensajes anteriores
room-messages = Mensajes
room-posted = Ya está la n.º { $number }
room-posted-topic = Ya está la n.º { $number }: { $topic }
room-coach = Entrenador
room-your-coach = Tu entrenador
room-you = Tú
room-only-you = Esto solo lo ves tú
room-has-answered = ha respondido
room-show-answer = Mostrar la respuesta (puede revelar la solución)
room-take-back = Retirar
room-take-it-back = Retirarlo
room-take-back-sure = ¿Retirar este mensaje? Desaparece al momento para todos. Tu entrenador todavía puede verlo, y también que lo has retirado y cuándo.
room-take-answer-back-sure = ¿Retirar el texto de tu respuesta? El grupo deja de verlo. El resultado de la respuesta sigue contando, y tu entrenador todavía puede leerla.
room-gone = { $how ->
    [taken-back] Retirado por { $who }, { $at }
   *[hidden] Ocultado por { $who }, { $at }
}
room-somebody-erased = alguien cuyos datos se han borrado
# Under a message with a move in it, after a reveal.
room-on-board = Mostrar en un tablero
room-on-board-post = De qué posición se trata
room-word-on = { $kind ->
    [problem] Sobre la posición { $number }:
    [question] Sobre la pregunta { $number }:
   *[words] Sobre la n.º { $number }:
}
room-word-on-yours = { $kind ->
    [problem] Sobre tu «{ $text }», posición { $number }:
    [question] Sobre tu «{ $text }», pregunta { $number }:
   *[words] Sobre tu «{ $text }», n.º { $number }:
}

## El cuadro de mensajes

room-text = Tu mensaje o tu jugada
room-text-placeholder = Tu jugada o un mensaje
room-answer = Responder
room-send = Enviar
room-say-what = Una jugada que envías se toma como tu respuesta: solo tú la ves, y solo tú ves su resultado. Si no está claro qué debe ser un texto, primero se te pregunta. Con «Responder» cualquier texto se lee como respuesta. Intro envía; Mayús e Intro empieza una línea nueva.
# Mientras se ve una pregunta, que se responde en su propio cuadro.
room-talk-placeholder = Un mensaje al grupo
room-talk-what = Aquí hablas con el grupo; tu respuesta va en el cuadro debajo de la pregunta. Antes de mostrar a los demás un texto que puede ser una respuesta, se te pregunta. Intro envía; Mayús e Intro empieza una línea nueva.
room-answers = Respuesta a
room-answers-number = Respuesta a la n.º { $number }
room-answers-number-topic = Respuesta a la n.º { $number }, { $topic }
room-closed-no-other = La n.º { $number } se ha cerrado. Lo que has escrito sigue aquí.
room-closed-other = La n.º { $number } se ha cerrado. Ahora el cuadro responde a la n.º { $other }; lo que has escrito sigue aquí.
room-closed-meanwhile = La n.º { $number } se cerró mientras escribías. ¿Qué quieres hacer con esto?
room-nothing-to-answer = Ahora mismo no hay ninguna posición abierta, así que no hay nada que responder. «Enviar» se lo dice al grupo.
room-send-to = Enviarlo a la n.º { $number }
room-answer-to = Responder a la n.º { $number }
room-is-my-answer = Es mi respuesta
room-say-to-group = Decírselo al grupo
room-say-to-all = Decírselo a todos
room-drop = Descartarlo
room-held-elsewhere = Estas jugadas encajan en la posición { $number }, no en la { $chosen }: ¿las envío allí?
room-held-elsewhere-several = Estas jugadas encajan en las posiciones { $numbers }, no en la { $chosen }. ¿A cuál te refieres?
room-held-several = Estas jugadas encajan en las posiciones { $numbers }. ¿A cuál te refieres?
room-held-could-answer = Esto podría ser una respuesta a { $names }. ¿A cuál te refieres?
room-held-is-answer = ¿Es tu respuesta a la pregunta { $number } o una palabra para todos? Aún no lo ve nadie más.
room-held-may-tell = Esto podría revelar una jugada de la posición { $numbers }, que sigue abierta, así que aún no lo ve nadie más. ¿Qué quieres que sea?
room-post-called = { $kind ->
    [problem] la posición { $number }
    [question] la pregunta { $number }
   *[words] la n.º { $number }
}
room-your-answer = Tu respuesta
room-answer-own-words = Tu respuesta, con tus propias palabras
room-answer-again = Responder otra vez; cuenta la última
room-send-answer = Enviar la respuesta
room-only-coach-reads = Solo la lee tu entrenador. No la ve nadie más, ni ahora ni después, salvo que tú lo permitas.
room-answer-waits = Aún sin nota: espera a tu entrenador.
room-earlier-answers = { $count ->
    [one] Tu respuesta anterior
   *[other] Tus { $count } respuestas anteriores
}
# The leave to show an answer to the group. $words: the coach's words beside it.
room-leave-news = A tu entrenador le gustaría mostrar al grupo una de tus respuestas: mírala en «Mi trabajo».
room-leave-asked = A tu entrenador le gustaría mostrar esta respuesta al grupo después de la solución. ¿Se puede mostrar?
room-leave-is = { $leave ->
    [named] Permites que el grupo vea esta respuesta con tu nombre.
    [nameless] Permites que el grupo vea esta respuesta sin tu nombre.
   *[refused] Esta respuesta no se muestra al grupo.
}
room-leave-beside = Con estas palabras de tu entrenador al lado: { $words }
room-leave-named = Mostrarla con mi nombre
room-leave-nameless = Mostrarla sin mi nombre
room-leave-refused = No mostrarla
room-leave-withdraw = Retirarla
room-leave-care = Nada se muestra sin tu permiso, y puedes retirarlo en cualquier momento, también después de la solución. Si eres menor de edad, pregunta antes a tus padres, y no dejes nada que diga quién eres.

## Mi trabajo

room-mine = Mi trabajo
room-standing-now = { $state ->
    [none] Posición { $number }: aún sin respuesta. Está abierta hasta el { $at }.
    [solved] Posición { $number }: resuelta. Está abierta hasta el { $at }.
    [given-up] Posición { $number }: te has rendido. Está abierta hasta el { $at }.
   *[playing] { $wrong ->
        [0] Posición { $number }: te toca jugar. Está abierta hasta el { $at }.
        [one] Posición { $number }: te toca jugar, tras un intento fallido. Está abierta hasta el { $at }.
       *[other] Posición { $number }: te toca jugar, tras { $wrong } intentos fallidos. Está abierta hasta el { $at }.
    }
}
room-standing-asked = { $answered ->
    [yes] Pregunta { $number }: respondida. Está abierta hasta el { $at }.
   *[no] Pregunta { $number }: aún sin respuesta. Está abierta hasta el { $at }.
}
room-no-topic = Sin tema
room-line-so-far = La variante hasta aquí: { $line }
room-your-board = Tu tablero
room-points-in-all = Puntos en total: { $points }
room-your-topics = Tus posiciones por tema
room-nothing-tried = Todavía no has intentado nada. Tu primera respuesta empieza esta tabla.
# A member's own answers to questions.
room-homework = Mis respuestas a preguntas
room-homework-of = Pregunta { $number }
room-scale = Cómo se cuentan los puntos
room-change-name = Cambiar el nombre
room-named = Ahora el grupo te ve como { $name }.
room-language = Idioma
room-language-browser = Como esté mi navegador
room-language-what = En él te hablan las páginas y el bot. Lo que escriben las personas se queda como está.
room-device = Otro dispositivo
room-device-what = Usa esta sala en un teléfono o en un segundo ordenador como la misma persona, con los mismos puntos.
room-device-new = Usar otro dispositivo
room-device-code = { $minutes ->
    [one] En el otro dispositivo, abre el enlace de esta sala, pulsa «Ya estoy en esta sala» y escribe este código. Vale { $minutes } minuto y para un solo dispositivo. No se lo enseñes a nadie: quien lo escriba serás tú aquí.
   *[other] En el otro dispositivo, abre el enlace de esta sala, pulsa «Ya estoy en esta sala» y escribe este código. Vale { $minutes } minutos y para un solo dispositivo. No se lo enseñes a nadie: quien lo escriba serás tú aquí.
}

## Tablas

room-leaders = Clasificación
room-leaders-topic = Clasificación: { $topic }
room-board-all = Puntos por miembro, todos los temas
room-board-topic = Puntos por miembro, { $topic }
room-topic = Tema
room-all-topics = Todos los temas
room-time = Periodo
room-last-four-weeks = Últimas 4 semanas
room-last-seven-days = Últimos 7 días
room-last-ninety-days = Últimos 90 días
room-from-beginning = Desde el principio
room-rank = Puesto
room-name = Nombre
room-points = Puntos
room-tried = Intentadas
room-solved = Resueltas
room-first-try = A la primera
room-questions = Preguntas respondidas
room-solved-of = { $solved } de { $tried }
room-no-points = Aquí todavía no tiene puntos nadie.
room-equal-points = A igualdad de puntos se comparte el puesto.

## Posiciones anteriores

room-past = Posiciones anteriores
room-none-closed = Todavía no se ha cerrado ninguna posición. Aquí aparecerá su solución.
room-as-posted = La posición tal como se publicó

## Lo que se guarda

room-kept = Lo que se guarda de mí
room-kept-what = El ordenador del entrenador guarda tu nombre ({ $name }), tus respuestas con su resultado, las pistas que pediste y tus mensajes. Antes de la solución, solo tú y el entrenador podéis ver tus respuestas. Un mensaje que retiras, o que un entrenador oculta, desaparece para todos; los entrenadores todavía pueden leerlo y ver quién lo quitó y cuándo. Si lo borras todo, eso desaparece también.
room-kept-care = Puede haber menores entre los miembros: las normas de protección del club y la ley de privacidad de tu país están por encima. Si algo de esto te preocupa, habla con tu entrenador.
room-see-kept = Verlo todo
room-take-kept = Llevármelo (JSON)
room-erase = Borrarlo todo
room-erase-sure = ¿Borrar todo lo que se guarda de ti? Tus puntos, respuestas y mensajes se pierden para siempre, y sales de la sala.
room-keep = Conservarlo
room-erased = Borrado
room-come-in-again = Volver a entrar con otro nombre
room-none = nada

## Fichas de temas

room-nav-cards = Fichas
room-cards = Fichas de temas
room-cards-what = Una página para cada patrón: qué es, en qué fijarse y qué lo separa de sus parientes.
room-cards-all = Todas las fichas
room-cards-of = { $count ->
    [one] Más en su ficha: { $cards }
   *[other] Más en sus fichas: { $cards }
}
room-card-coachs = De tu entrenador
room-card-held = Retenida hasta la solución de una posición abierta
room-card-look = En qué fijarse
room-card-relatives = Fáciles de confundir con él
room-card-example = Ejemplo
room-card-start = { $task } Busca la solución antes de seguir leyendo.
room-card-solution = La solución: { $line }
room-card-end = Adónde lleva
room-card-start-words = La posición en palabras
room-card-end-words = La posición final en palabras
## Lessons stepped through after their reveals

room-nav-lessons = Lecciones
room-lessons = Lecciones
room-lessons-what = Lecciones ya resueltas, para repasarlas jugada a jugada con todas las variantes y comentarios.
room-lessons-none = Todavía no hay ninguna lección resuelta. Cada una aparece aquí cuando se resuelve su primera parte.
room-lessons-all = Todas las lecciones
room-lesson-parts = { $count ->
    [one] { $count } parte
   *[other] { $count } partes
}
# What is not revealed says nothing of what it holds. $numbers: numbers of posts.
room-lesson-open = { $count ->
    [one] El n.º { $numbers } está abierto; se añade tras su solución.
   *[other] Los n.º { $numbers } están abiertos; se añaden tras su solución.
}
room-lesson-comes = { $count ->
    [one] { $count } parte más llega el { $at }.
   *[other] Faltan { $count } partes más, la siguiente el { $at }.
}
room-lesson-later = { $count ->
    [one] Falta { $count } parte más.
   *[other] Faltan { $count } partes más.
}
room-walk-through = Repasar la lección
room-walk-keys = Las flechas izquierda y derecha recorren las jugadas y pasan a la parte siguiente; Inicio y Fin llevan a la primera y a la última.
room-walk-parts = Partes de la lección
room-walk-part = { $number }
room-walk-part-of = Parte { $number }, n.º { $post }
room-walk-step = Paso { $step } de { $steps }
room-walk-start = Antes de la primera jugada
room-walk-first = Inicio
room-walk-first-what = Al principio
room-walk-back = Atrás
room-walk-back-what = Una jugada atrás
room-walk-forward = Adelante
room-walk-forward-what = Una jugada adelante
room-walk-last = Final
room-walk-last-what = Al final de la línea
room-walk-side = Variante { $move }
room-walk-leave = Volver a la línea principal
# $told: the move in words.
room-walk-moved = { $move } – { $told }
