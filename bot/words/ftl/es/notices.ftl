# Lo que se dice a los entrenadores de un grupo sin que lo pidan, y cómo van los chats.

slot-empty = Es hora de publicar y nada de la semana puede publicarse, así que no se ha publicado nada. Importa posiciones y pon en la semana las correctas; luego espera a la próxima hora, o publica una enseguida.
no-longer-passes = { $soundness ->
    [several-keys] Revisada de nuevo antes de publicarla, { $position } tiene más de una clave, así que no se publica.
    [short] Revisada de nuevo antes de publicarla, { $position } se resuelve en menos jugadas de las pedidas, así que no se publica.
    [unsound] Revisada de nuevo antes de publicarla, { $position } no cumple lo que promete, así que no se publica.
    [illegal] Revisada de nuevo antes de publicarla, { $position } no sirve, así que no se publica.
   *[other] Revisada de nuevo antes de publicarla, { $position } no pudo decidirse en el tiempo permitido, así que no se publica.
} Mira su informe, corrígela, o di que se publique de todos modos.
post-not-sent = { $kind ->
    [problem] La posición { $number } no pudo enviarse: { $why } Sigo intentándolo.
    [question] La pregunta { $number } no pudo enviarse: { $why } Sigo intentándolo.
   *[words] El aviso { $number } no pudo enviarse: { $why } Sigo intentándolo.
}
reveal-not-sent = { $kind ->
    [problem] La solución de la posición { $number } no pudo enviarse: { $why } Sigo intentándolo.
   *[question] El cierre de la pregunta { $number } no pudo enviarse: { $why } Sigo intentándolo.
}
example-not-sent = Una respuesta a la pregunta { $number } que se muestra o se retira no pudo cambiarse en el canal: { $why } Sigo intentándolo.
due-not-sent = { $name ->
    [none] Lo que toca ahora no pudo publicarse: { $why } Sigo intentándolo.
   *[other] Toca { $name } y no pudo publicarse: { $why } Sigo intentándolo.
}
chat-down = { $chat } no funciona: { $why } Sigo intentándolo, y aviso cuando vuelva.
chat-refused = { $chat } no funcionará hasta que alguien ayude: { $why }
chat-back = { $chat } vuelve a funcionar.
chat-name = { $key ->
    [room] La sala del club
    [discord] Discord
   *[other] { $name }
}
as-written = { $words }

## Por qué no funciona un chat

ended-for-no-reason = Terminó sin dar ninguna razón.
not-connected = No hay conexión.
broke-down = Se averió, lo que es un fallo del programa; el registro dice dónde.

## Más de lo que hizo un entrenador

note-post = { $kind ->
    [problem] posición { $number }
    [question] pregunta { $number }
   *[words] aviso { $number }
}
note-verdict = { $verdict ->
    [solved] posición { $number }: resuelta
    [on-the-way] posición { $number }: en camino
    [wrong] posición { $number }: equivocada
    [illegal] posición { $number }: ilegal
    [unclear] posición { $number }: ambigua
   *[unreadable] posición { $number }: ilegible
}
note-mark = pregunta { $number }: { $points-text }
note-answer = una respuesta
note-merged = { $name } era también { $other }
note-pattern = la ficha { $pattern }
note-words = { $words }
