# En Discord: lo que allí no pudo hacerse, para entrenadores y para quien lleva el bot.

## Una publicación, una solución o un aviso a alguien

no-discord-channel = «{ $channel }» no es un canal de Discord.
channel-unseen = No puedo ver el canal; da a mi rol «Ver canal» en { $channel } → Editar canal → Permisos.
channel-mute = No puedo escribir allí; da a mi rol «Enviar mensajes» en { $channel } → Editar canal → Permisos.
channel-gone = El canal ya no existe. Usa /entrenador preparar en otro.
discord-away = Ahora mismo no se puede llegar a Discord.
discord-refuses = Discord lo rechaza: { $why }.
direct-unsent = No se pudo enviar un mensaje directo: { $why }.
part-missing = Todavía falta una parte: { $why }.
thread-missing = La publicación todavía no tiene hilo: { $why }.
buttons-stay = La publicación cerrada todavía tiene sus botones: { $why }.

## La conexión

no-token = No hay ningún DISCORD_TOKEN.
token-file-unreadable = DISCORD_TOKEN_FILE nombra { $path }, que no se puede leer: { $why }.
token-unfit = DISCORD_TOKEN no contiene ningún token; el token de un bot es una línea de letras, cifras, puntos, guiones y guiones bajos, de la página Bot de tu aplicación (discord.com/developers).
token-file-unfit = El archivo que nombra DISCORD_TOKEN_FILE no contiene ningún token; el token de un bot es una línea de letras, cifras, puntos, guiones y guiones bajos, de la página Bot de tu aplicación (discord.com/developers).
token-refused = Discord rechaza el token del bot; cópialo de nuevo de la página Bot de tu aplicación (discord.com/developers) a DISCORD_TOKEN o al archivo que nombra DISCORD_TOKEN_FILE.
intent-refused = Discord rechaza el acceso al contenido de los mensajes; actívalo en Bot → Privileged Gateway Intents de tu aplicación (discord.com/developers), o pon message_content = false en [discord] en los ajustes.
not-an-api = SEALED_MOVE_DISCORD_API tiene que ser una dirección como http://127.0.0.1:40000, no «{ $address }».
discord-unreachable = No se puede llegar a Discord: { $why }.
commands-refused = No se puede llegar a Discord: los comandos fueron rechazados: { $why }.
too-many-logins = { $minutes ->
    [one] El bot ha entrado demasiadas veces hoy; Discord lo deja entrar otra vez en { $minutes } minuto.
   *[other] El bot ha entrado demasiadas veces hoy; Discord lo deja entrar otra vez en { $minutes } minutos.
}
gateway-closed = No se puede llegar a Discord: la pasarela cerró la conexión.
no-greeting = Discord no saluda al bot.
connection-lost = Se perdió la conexión.
on-discord = En Discord.
