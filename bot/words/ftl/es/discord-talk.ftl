# En Discord: mensajes entre otros, directos, y los que esperan la palabra de quien los escribió.

## Solo para quien escribe

quoted-answer = «{ $quote }»
taken-out-of-sight = Has escrito esto donde los demás pueden leerlo, así que lo he quitado de la vista: ||{ $quote }||
please-delete = Has escrito esto donde los demás pueden leerlo, y no se me permite quitarlo. Bórralo, por favor, para que puedan pensar por sí mismos: ||{ $quote }||
still-there = El mensaje sigue ahí, a la vista de todos; bórralo, por favor.
edit-stands = Tu respuesta cuenta como la enviaste primero; editar el mensaje no cambia nada. Para responder otra vez, envía uno nuevo.
on-your-answer = Sobre tu respuesta «{ $quote }»:
coach-answers-post = { $kind ->
    [problem] Tu entrenador te responde sobre la posición { $number }:
    [question] Tu entrenador te responde sobre la pregunta { $number }:
   *[words] Tu entrenador te responde sobre el aviso { $number }:
}
coach-answers-quote = { $kind ->
    [problem] Tu entrenador te responde a «{ $quote }» (posición { $number }):
    [question] Tu entrenador te responde a «{ $quote }» (pregunta { $number }):
   *[words] Tu entrenador te responde a «{ $quote }» (aviso { $number }):
}
named-coach-answers-post = { $kind ->
    [problem] Tu entrenador { $coach } te responde sobre la posición { $number }:
    [question] Tu entrenador { $coach } te responde sobre la pregunta { $number }:
   *[words] Tu entrenador { $coach } te responde sobre el aviso { $number }:
}
named-coach-answers-quote = { $kind ->
    [problem] Tu entrenador { $coach } te responde a «{ $quote }» (posición { $number }):
    [question] Tu entrenador { $coach } te responde a «{ $quote }» (pregunta { $number }):
   *[words] Tu entrenador { $coach } te responde a «{ $quote }» (aviso { $number }):
}
there-to-be-read = Eso está para leerlo y no admite respuestas, así que he dejado tu respuesta al grupo como charla.

## De qué posición se trata

which-position = Hay más de una posición abierta. ¿A cuál te refieres?
which-group = Varios de tus grupos tienen una posición abierta. ¿A cuál te refieres?
fits-another = Estas jugadas encajan en la posición { $number }, no en la que las has enviado. ¿Las envío allí?
fits-several = Estas jugadas encajan en las posiciones { $numbers }. ¿A cuál te refieres?
may-tell-move = { $hidden ->
    [yes] Esto podría revelar una jugada de la posición { $numbers }, que sigue abierta, así que aún no lo ve nadie más. ¿Qué quieres que sea?
   *[no] Esto podría revelar una jugada de la posición { $numbers }, que sigue abierta. ¿Qué quieres que sea?
}
may-be-an-answer = { $hidden ->
    [yes] ¿Es tu respuesta a la pregunta { $number } o una palabra para todos? Aún no lo ve nadie más.
   *[no] ¿Es tu respuesta a la pregunta { $number } o una palabra para todos?
}
could-answer = Esto podría ser una respuesta a { $posts }. ¿A cuál te refieres?
answer-to = { $kind ->
    [problem] la posición { $number }
    [question] la pregunta { $number }
   *[words] el aviso { $number }
}
post-named = { $kind ->
    [problem] Posición { $number }
    [question] Pregunta { $number }
   *[words] Aviso { $number }
}
post-on = { $kind ->
    [problem] Posición { $number } · { $topic }
    [question] Pregunta { $number } · { $topic }
   *[words] Aviso { $number } · { $topic }
}
post-of-group = { $kind ->
    [problem] { $group }: posición { $number }
    [question] { $group }: pregunta { $number }
   *[words] { $group }: aviso { $number }
}

## Lo que espera la palabra de quien lo escribió

held-gone = Ese mensaje ya no espera: se resolvió, se cambió o su posición se ha cerrado. Escríbelo otra vez si quieres.
held-none = Aquí no espera ningún mensaje tuyo.
held-said = Dicho a todos, en tu nombre.
held-stays = Se queda donde lo escribiste.
held-dropped = Descartado; no se guarda nada de ello.

## Para todos

some-member = Un miembro
answer-sealed = { $name }, tu respuesta ha llegado y está sellada. Pulsa «{ button-my-progress }» para ver qué ha resultado.
answer-sealed-of-somebody = La respuesta de un miembro ha llegado y está sellada. Si es la tuya, pulsa «{ button-my-progress }» para ver qué ha resultado.
waits-for-word = { $name }, tu mensaje espera tu palabra, y hasta entonces no lo ve nadie más. Pulsa «{ button-decide }» para decir qué quieres que sea.
waits-for-word-of-somebody = El mensaje de un miembro espera su palabra, y hasta entonces no lo ve nadie más. Si es el tuyo, pulsa «{ button-decide }» para decir qué quieres que sea.
verdict-word = { $verdict ->
    [solved] resuelto
    [on-the-way] bien hasta ahí
    [wrong] no es la solución
    [illegal] no es una jugada legal
    [unclear] aún sin decidir
   *[unreadable] no se puede leer
}
kept-word = espera al entrenador
marked-word = puntuada
has-answered = { $name } ha respondido: ||{ $word }||

## Botones

button-it-is-my-answer = Es mi respuesta
button-answer-to = { $kind ->
    [problem] Respuesta a la posición { $number }
    [question] Respuesta a la pregunta { $number }
   *[words] Respuesta al aviso { $number }
}
button-send-to = { $kind ->
    [problem] Enviarla a la posición { $number }
    [question] Enviarla a la pregunta { $number }
   *[words] Enviarla al aviso { $number }
}
button-say-to-all = Decírselo a todos
button-may-stay = Puede quedarse
button-drop-it = Descartarlo
button-decide = Decidir
