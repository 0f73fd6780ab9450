# En Discord: lo que se le dice a un entrenador del grupo.

## Prepararlo

coaches-only = Esto es para los entrenadores del grupo. Un entrenador puede nombrar a otro con /{ command-coach } { command-coach-add-coach }.
set-up-may-not = Para preparar un grupo hace falta el permiso «Gestionar canales». Pregunta a quien lleva este servidor.
set-up-no-channel = Un grupo necesita un canal de texto del servidor; usa esto en uno, no en un hilo.
no-name = Grupo de estudio
set-up = **{ $name }** está listo en { $channel }, y tú eres su entrenador.
set-up-bot = Un bot no puede ser entrenador; el grupo está listo, nombra a una persona con /{ command-coach } { command-coach-add-coach }.
coaches-too = { $name } también es entrenador.
without-content = Me iniciaron sin el «Message Content Intent»: en este canal y sus hilos solo oigo los mensajes que me mencionan y las respuestas a mis publicaciones con la mención activada. Los botones, los comandos y los mensajes directos funcionan como siempre.
set-up-next = Ahora: adjunta un archivo de posiciones (EPD o PGN) a /{ command-coach } { command-coach-check }.

## Ajustes

settings-are = Así está:
settings-changed = Cambiado. A partir de ahora:
goes-out = Se publica una posición { $days } a las { $times } ({ $zone }), y queda abierta { $open }.
days-every = todos los días
days-none = ningún día (solo cuando la publicas tú)
days-from-to = de { $first } a { $last }
days-on = cada { $days }
monday = lunes
tuesday = martes
wednesday = miércoles
thursday = jueves
friday = viernes
saturday = sábado
sunday = domingo
open-days = { $number ->
    [one] { $number } día
   *[other] { $number } días
}
open-hours = { $number ->
    [one] { $number } hora
   *[other] { $number } horas
}
open-minutes = { $number ->
    [one] { $number } minuto
   *[other] { $number } minutos
}
replies-are = { $mode ->
    [open] Las respuestas son abiertas: los veredictos van a la vista de todos, detrás de marcas de spoiler.
   *[sealed] Las respuestas están selladas: hasta la solución cada uno ve solo su veredicto.
}
points-tournament = { $hint ->
    [0] Una posición vale 5 puntos. Tras una primera jugada fallida ya no hay ninguno, como en los torneos; una pista no quita nada.
    [one] Una posición vale 5 puntos. Tras una primera jugada fallida ya no hay ninguno, como en los torneos; una pista quita { $hint-text } punto.
   *[other] Una posición vale 5 puntos. Tras una primera jugada fallida ya no hay ninguno, como en los torneos; una pista quita { $hint-text } puntos.
}
points-free = Una posición vale 5 puntos. Las jugadas fallidas y las pistas no quitan nada.
points-each = { $each ->
    [one] Una posición vale 5 puntos. Una primera jugada fallida y una pista quitan { $each-text } punto cada una; quien la resuelve sin que se le muestre la jugada conserva al menos 1.
   *[other] Una posición vale 5 puntos. Una primera jugada fallida y una pista quitan { $each-text } puntos cada una; quien la resuelve sin que se le muestre la jugada conserva al menos 1.
}
points-club = { $wrong ->
    [0] { $hint ->
        [one] Una posición vale 5 puntos. Una primera jugada fallida no quita nada; una pista, { $hint-text } punto; quien la resuelve sin que se le muestre la jugada conserva al menos 1.
       *[other] Una posición vale 5 puntos. Una primera jugada fallida no quita nada; una pista, { $hint-text } puntos; quien la resuelve sin que se le muestre la jugada conserva al menos 1.
    }
    [one] { $hint ->
        [0] Una posición vale 5 puntos. Una primera jugada fallida quita { $wrong-text } punto; una pista, nada; quien la resuelve sin que se le muestre la jugada conserva al menos 1.
       *[other] Una posición vale 5 puntos. Una primera jugada fallida quita { $wrong-text } punto; una pista, { $hint-text }; quien la resuelve sin que se le muestre la jugada conserva al menos 1.
    }
   *[other] { $hint ->
        [0] Una posición vale 5 puntos. Una primera jugada fallida quita { $wrong-text } puntos; una pista, nada; quien la resuelve sin que se le muestre la jugada conserva al menos 1.
       *[other] Una posición vale 5 puntos. Una primera jugada fallida quita { $wrong-text } puntos; una pista, { $hint-text }; quien la resuelve sin que se le muestre la jugada conserva al menos 1.
    }
}
defences-are = { $defences ->
    [differ] Las defensas en una variante son distintas para cada miembro.
   *[same] Las defensas en una variante son las mismas para todos.
}
letters-and-look = Letras de las piezas: { $language }. Aspecto de los diagramas: { $style ->
    [light] claro
    [dark] oscuro
    [contrast] con mucho contraste
   *[print] como impreso
}.
no-zone = No conozco la zona horaria «{ $written }»; elige una de la lista que se abre al escribir, como Europe/Madrid.
no-time-of-day = «{ $written }» no es una hora; escríbela así: 18:00, y si son varias, con un espacio entre ellas.
no-days = No conozco los días «{ $written }»; escríbelos así: lun-vie, mar,jue o todos los días.
no-span = No puedo dejar abierta una posición «{ $written }»; escríbelo así: 23h, 90m o 2d, 31 días como máximo.

## Permisos, con los nombres de los ajustes de Discord

permissions-all = Tengo aquí todos los permisos que puedo usar.
permissions-missing = Me faltan permisos aquí. Se dan en { $channel } → Editar canal → Permisos → mi rol:
permissions-one-more = Tengo aquí todo lo que necesito. Se puede dar un permiso más en { $channel } → Editar canal → Permisos → mi rol:
without-view-channel = - **Ver canal**: sin él no puedo publicar, y solo oigo respuestas por comando y por mensaje directo.
without-send-messages = - **Enviar mensajes**: sin él no puedo publicar.
without-attach-files = - **Adjuntar archivos**: sin él las posiciones van en palabras, sin diagrama.
without-create-threads = - **Crear hilos públicos**: sin él las posiciones van sin un hilo para charlar.
without-send-in-threads = - **Enviar mensajes en hilos**: sin él no digo nada en los hilos.
without-read-history = - **Leer el historial de mensajes**: sin él se pierden las respuestas escritas mientras no estaba.
without-add-reactions = - **Añadir reacciones**: sin él no puedo mostrar que una respuesta ha llegado cuando su autor no admite mensajes directos.
without-manage-messages = - **Gestionar mensajes**, solo si quieres: sin él las jugadas que los miembros escriben en público quedan a la vista de todos.

## Entrenadores y miembros

bot-cannot-coach = Un bot no puede ser entrenador; nombra a una persona.
coach-added = { $name } es ahora entrenador de este grupo.
coach-removed = { $name } ya no es entrenador de este grupo y sigue siendo miembro.
members-head = **Miembros**
member-row = { $answers ->
    [one] - { $name } · { $answers } respuesta
   *[other] - { $name } · { $answers } respuestas
}
member-row-coach = { $answers ->
    [one] - { $name } · { $answers } respuesta · entrenador
   *[other] - { $name } · { $answers } respuestas · entrenador
}
member-row-removed = { $answers ->
    [one] - { $name } · { $answers } respuesta · excluido { $since }
   *[other] - { $name } · { $answers } respuestas · excluido { $since }
}
deeds-head = **Lo último que hicieron los entrenadores**
deed-word = { $deed ->
    [hide] ocultó un mensaje
    [put-back] devolvió un mensaje
    [mute] silenció
    [unmute] dejó hablar otra vez
    [remove] excluyó
    [let-back] readmitió
    [rename] cambió el nombre
    [merge] unió a dos miembros
    [export] se llevó lo que se guarda
    [erase] borró
    [judge] juzgó una respuesta
    [answer] respondió en privado
    [no-answer] dio por atendida una respuesta
    [member-link] creó otro enlace para miembros
    [coach-link] creó otro enlace para entrenadores
    [coach-came] entró por el enlace de entrenadores
    [add-coach] nombró entrenador
    [remove-coach] quitó como entrenador
    [settings] cambió los ajustes
    [post-now] publicó al momento
    [close-now] cerró una posición
    [pause] puso en pausa
    [write-card] escribió una ficha de tema
    [take-back-card] retiró una ficha de tema
   *[resume] reanudó
}
erased-coach = un entrenador borrado
member-removed = { $name } ya no participa: no se admite ninguna respuesta suya hasta /{ command-coach } { command-coach-member } { command-coach-member-let-back }. Lo que escriba en este servidor es cosa de la moderación de Discord.
member-back = { $name } vuelve a participar.
members-merged = Ahora son un solo miembro, { $name }. Donde los dos intentaron la misma posición, las respuestas cuentan en el orden en que llegaron.
kept-of-member = Todo lo que se guarda de { $name } en este grupo. Es suyo: entrégaselo y no te quedes con ninguna copia.
erase-member-asked = ¿Quieres borrar todo lo de { $name } en este grupo: nombre, respuestas, pistas y puntos? No se puede deshacer. Quien estaba excluido deja entonces de ser conocido, y de estar excluido.
erased-member = Todo lo que se guardaba de ese miembro en este grupo está borrado.
