# Lo que dice la sala cuando algo no se pudo hacer, y cuando algo está hecho.

## En la puerta

no-invitation = No estás en la sala: abre el enlace que te dio tu entrenador.
removed-from-group = Tu entrenador te ha quitado de este grupo. Lo que escribiste antes sigue guardado: pregúntale si quieres una copia o quieres que se borre.
nameless-member = Elige primero un nombre, para que el grupo sepa quién habla.
nameless-coach = Di primero quién eres: abre la página del entrenador y escribe allí tu nombre.
not-by-coach-link = Esto solo puede hacerlo el entrenador: abre el enlace del entrenador, que el bot escribió al arrancar.
strange-host = La sala no responde en esta dirección. Usa el enlace tal como te lo dio el entrenador, o define public_url.
strange-origin = Esta petición no venía de las páginas de la sala, así que no se hizo nada.

## Nombres y dispositivos

name-empty = Escribe el nombre que debe ver el grupo, por ejemplo tu nombre de pila.
new-name-empty = Escribe primero el nombre nuevo.
name-tells-move = Este nombre lo vería todo el mundo, y podría revelar una jugada de la posición abierta. Elige otro.
code-not-right = Este código no es correcto, o es demasiado antiguo: un código vale diez minutos y para un solo dispositivo. Vuelve a mirar en tu otro dispositivo, o haz que muestre uno nuevo.
too-many-codes = Se han probado demasiados códigos equivocados en esta sala. Espera diez minutos y haz que tu otro dispositivo muestre uno nuevo.
browser-is-taken = Este navegador ya es de { $name }. Si esa persona también eres tú, pídele a tu entrenador que os una.
language-unknown = «{ $asked }» no es un idioma que hable el bot. Elige uno de los que se ofrecen.

## Lo enviado

message-empty = El mensaje todavía está vacío.
message-too-large = El mensaje es demasiado largo; como mucho, 50 000 caracteres. No se ha aceptado nada.
request-too-large = Lo enviado es demasiado grande; una respuesta puede tener 50 000 caracteres, y un archivo, 16 MB. No se ha aceptado nada.
request-unreadable = La petición no se ha podido leer: { $detail }.
request-broke-off = La petición se cortó antes de estar completa; inténtalo otra vez.
too-fast = Eso va más rápido de lo que el bot puede leer. Espera unos segundos y vuelve a enviarlo; no se ha aceptado.

## Revisar archivos

file-empty = { $name } está vacío. Pega o suelta un archivo EPD o PGN, o líneas FEN.
check-going-on = Se está revisando otro archivo; espera a que termine y vuelve a soltar este.
check-broke-off = La revisión se interrumpió. Lo guardado hasta entonces está en la reserva; el registro dice por qué.
other-version-gone = La otra versión de esta posición ya no está a mano. Revisa el archivo otra vez y luego elige.
time-unreadable = «{ $written }» no es un día con hora; escríbelo así: 2026-12-01T18:00.

## Lo demás

nothing-here = En esta dirección no hay nada.
fault-inside = Algo ha fallado dentro del bot. Lo guardado antes no se pierde; avisa, por favor, a quien lo mantiene.
no-random-numbers = El ordenador donde corre el bot no da números aleatorios, así que no se puede crear ningún secreto. Avisa, por favor, a quien lo mantiene.
all-erased = Se ha borrado todo lo que se guardaba de ti.

## Para quien lleva el bot

room-not-open = La sala del club está cerrada en los ajustes.
cannot-listen = La sala no puede abrirse en { $address }: { $why }. Elige otra dirección u otro puerto en los ajustes.
not-a-web-address = «{ $address }» no es una dirección web; escríbela como https://chess.example.org, sin ruta.
no-secret-links = La máquina no da números al azar, así que no pueden hacerse enlaces secretos: { $why }.
server-ended = Su servidor terminó: { $why }.
members-enter = Para los miembros: { $link }
coach-enters = Para el entrenador: { $link }
