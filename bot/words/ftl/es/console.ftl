# Lo que dice la línea de órdenes.

## El informe de una posición

# $done, $total y $left: se rellenan mientras trabaja.
check-progress = { $done }/{ $total } posiciones, quedan { $left }
checked-as = { $verdict ->
    [sound] correcta
    [several-keys] más de una clave
    [short] mate más corto
    [unsound] sin solución
    [illegal] no sirve
   *[undecided] sin decidir en el tiempo permitido
}
report-keys = { $number ->
    [one] clave: { $keys }
   *[other] claves: { $keys }
}
report-try = ensayo: { $line }
report-pictures = patrón de mate: { $patterns }
report-difficulty = dificultad: { $grade-text } de 10
report-note = nota: { $note }
report-proved = demostrada, { $nodes } posiciones, { $seconds-text } s
report-judged = juzgada a profundidad { $depth }, { $nodes } posiciones, { $seconds-text } s
report-not-proved = sin demostrar, { $nodes } posiciones, { $seconds-text } s
words-with-post = palabras con la posición:
words-at-reveal = palabras con la solución:
words-beside-moves = junto a las jugadas, con la solución:
no-positions-found = no se encontró ninguna posición
checked-all-sound = { $number ->
    [one] 1 posición, correcta
   *[other] { $number } posiciones, todas correctas
}
some-to-look-at = { $number ->
    [one] 1 posición, por revisar
   *[other] { $sound ->
        [one] { $number } posiciones, { $sound } correcta, { $wanting } por revisar
       *[other] { $number } posiciones, { $sound } correctas, { $wanting } por revisar
    }
}
topics-not-verified = { $number ->
    [one] 1 posición no muestra el tema que nombra, véase «sin comprobar»
   *[other] { $number } posiciones no muestran los temas que nombran, véase «sin comprobar»
}
written-question = { $id }: una pregunta: { $words }
written-at-close = al cierre: { $words }
written-words = { $id }: palabras para leer: { $words }

## Una lección

lesson-titled = Lección «{ $title }»
lesson-titled-topic = Lección «{ $title }», tema { $topic }
lesson-step-head = { $contrast ->
    [yes] Paso { $step }, donde el tema no debe funcionar
   *[no] Paso { $step }
}
lesson-question = una pregunta: { $words }
lesson-says = palabras para leer: { $words }
lesson-part-waits = { $number ->
    [one] espera a que se revele el paso { $steps }, cuya solución descubriría
   *[other] espera a que se revelen los pasos { $steps }, cuyas soluciones descubriría
}
lesson-part-not-kept = no se guarda: no hay tarea y no se encontró ninguna; escribe una, como [stop #2]
lesson-part-as-before = la misma posición que en el paso { $step }; sale una vez
lesson-part-in-week = en la semana como entrada { $item }
lesson-part-open = publicado como n.º { $number }, todavía abierto
lesson-part-closed = publicado como n.º { $number } y cerrado
lesson-kept = Guardada como lección { $lesson }; `sealed-move lesson plan { $lesson }` la pone en la semana.
lesson-not-kept = No se guarda nada: ningún paso se puede leer.
no-lessons = Todavía no hay lecciones; `sealed-move lesson import` trae una.
lesson-row-is = { $lesson }. { $title }: pasos: { $steps }; partes: { $parts }, de ellas { $waiting } en la semana y { $posted } publicadas
lesson-left-out = { $number ->
    [one] Una parte ya salió y se deja fuera; con --again sale otra vez.
   *[other] { $number } partes ya salieron y se dejan fuera; con --again salen otra vez.
}

## Lo que se guarda

written-not-kept = No se guarda; con --queue entra en la semana.
same-choices = --same new toma la del archivo, --same both guarda los dos temas, --same keep dice que así se quiere
report-again = repetida: { $what }
report-posted-before = ya publicada: n.º { $number } el { $date }.
posted-before-left-out = No entra en la semana; con --again sí.

## Una respuesta

graded = { $verdict ->
    [solved] resuelto, { $points-text } de 5 puntos
    [on-the-way] por buen camino, { $points-text } de 5 puntos
    [wrong] fallado, { $points-text } de 5 puntos
    [illegal] no es legal, { $points-text } de 5 puntos
    [unclear] no está claro, { $points-text } de 5 puntos
   *[unreadable] no se puede leer, { $points-text } de 5 puntos
}
may-mean = puede querer decir: { $reading }

## Posiciones sacadas de partidas

found-played = jugado en la partida, { $file } línea { $line }
found-missed = desaprovechado en la partida, { $file } línea { $line }

## La semana

posting-paused-until = No se publica nada hasta el { $moment }.
posting-paused = No se publica nada hasta que lo reanudes.
queue-is-empty = La semana de { $group } está vacía; con `import --queue` entran posiciones.
queue-due = { $moment }
queue-due-fixed = { $moment }, fijo
queue-no-time = { $why ->
    [not-sound] sin fecha: no se dio por correcta
    [paused] sin fecha: hay una pausa
    [no-days] sin fecha: el calendario no tiene días
   *[waits] sin fecha: lo que espera tampoco la tiene
}
queue-step-of = paso { $step } de { $steps } de la lección { $title }
queue-waits-for-post = espera a la solución del n.º { $number }, que revelaría
queue-waits-for-item = espera a la solución de la entrada { $item } ({ $called }), que revelaría
taken-out = Sacada; `queue put-back { $taken }` la devuelve a su puesto.
queue-kind = { $kind ->
    [problem] posición
    [question] pregunta
   *[words] aviso
}
queue-topic-also = { $topic } (también { $others })
queue-no-topic = sin tema
queue-topic-not-verified = { $topic } [tema sin comprobar]
queue-item = entrada { $item }
queue-item-with-position = entrada { $item }, con una posición
queue-position = entrada { $item }, posición { $position }
queue-position-again = entrada { $item }, posición { $position }; otra vez, ya publicada como n.º { $number } el { $date }

## Copias del almacén

copied-to = { $store } copiado en { $copy }
restored-from = { $store } restaurado desde { $copy }

## El programa en marcha

store-is-at = Almacén: { $file }
stop-with-ctrl-c = Termina con Ctrl-C.
stopping = Terminando.
not-finished-in-time = Algo no pudo acabarse a tiempo. Se retoma en el próximo arranque.
chat-is-back = { $chat }: vuelve a estar en marcha.
connects-by-itself = { $why } Se vuelve a conectar solo.
tried-again = { $why } Se intenta de nuevo en { $seconds } s.

## Lo que no se pudo, como parte de una frase: puede seguir la causa

because-of = { $what }: { $cause }
file-unreadable = no se pudo leer { $file }
file-unwritable = no se pudo escribir { $file }
file-is-too-large = { $file } pesa más de { $most } MB; divídelo en archivos más pequeños
folder-not-made = no se pudo crear la carpeta { $folder }
input-unreadable = no se pudo leer la entrada estándar
ending-of-board = { $file }: el nombre tiene que terminar en .png o .svg
ending-of-line = { $file }: el nombre tiene que terminar en .png, .svg o .gif
too-wide-for-line = { $file }: una variante se dibuja con { $most } píxeles de ancho como mucho, en una tira cada tablero; --size { $size } es demasiado ancho
settings-unreadable = no se pudo leer el archivo de ajustes { $file }
settings-wrong = el archivo de ajustes { $file }
setting-no-time = { $key } = { $value } no es un tiempo; da un número de segundos mayor que 0
setting-out-of-range = { $key } = { $value } está fuera de los límites; da de { $least } a { $most }
setting-at =
    línea { $row }: { $why }
    { $shown }
setting-unknown =
    aquí no hay ningún ajuste { $key }; { $known ->
        [none] esta tabla no tiene ninguno
       *[other] escribe { $known }
    }
setting-missing = a la tabla le falta { $key }
setting-no-choice = { $value } no está entre las opciones; escribe { $choices }
setting-of-other-kind =
    { $value } no encaja aquí; { $kind ->
        [text] escribe un texto entre comillas
        [whole] escribe un número entero que no sea demasiado grande
        [number] escribe un número, sin comillas
        [yes-or-no] escribe true o false
        [table] sus ajustes van debajo de un encabezado entre corchetes
        [times] escribe una hora como "18:00", o una lista de ellas
        [address] escribe una dirección con su puerto, como "127.0.0.1:7316"
       *[other] README.md dice qué admite cada ajuste
    }
setting-no-zone = { $value } no es una zona horaria de la lista IANA; escribe una como "Europe/Madrid"
setting-twice = { $key } aparece por segunda vez; deja una sola
settings-no-toml = esto no se puede leer como TOML ({ $why })
no-time-limit = --seconds { $value } no es un límite de tiempo; da un número mayor que 0, como 10
position-given = la posición
shortest-too-long = --shortest { $shortest } es más largo que --longest { $longest }
not-a-pattern = «{ $topic }» no es un patrón de mate conocido aquí; elige uno de { $patterns }
task-not-shown = no se pudo mostrar en { $seconds-text } s que { $task } se cumpla en esta posición; mira `sealed-move check`
reply-holds-nothing = la respuesta no contiene ninguna solución; escribe una jugada como Cf3
no-problem-in-file = { $file } no contiene ninguna posición con una tarea; indica una partida PGN con las etiquetas FEN y Task
lesson-unreadable = { $file }, línea { $row }: { $what }
not-a-legal-move = { $written } no es una jugada legal en este punto de la variante; escribe las jugadas con letras inglesas, como Nf3 o exd5
line-holds-no-moves = la variante no contiene jugadas; escríbelas como "1.Rxd8+ Rxd8 2.Rxd8#"
places-from-one = los puestos se cuentan desde 1
nothing-taken-out = en los últimos siete días no se sacó nada de la semana
step-time-not-read = «{ $written }» no es un paso con su momento; escríbelo así: 3=2026-12-01T18:00
no-steps = { $file } no contiene ninguna lección; una lección es un archivo PGN con una partida por paso
time-not-read = «{ $written }» no es una hora; escríbela como 2026-12-01T18:00, o "free"
day-missing = el { $day } no existe en { $zone }
nothing-to-print = la semana está vacía; con `import --queue` entran posiciones
no-store-at = no hay ningún almacén en { $file }; indica el del grupo con --store, o crea uno con `sealed-move serve` o `sealed-move import`
no-store-to-copy = no hay ningún almacén en { $file }; indícalo con --store
store-is-newer = el almacén { $file } lo escribió un Sealed Move más nuevo (versión { $found }, este programa conoce hasta la { $known }); ejecuta el programa más nuevo, o restaura una copia hecha por este
not-a-store = { $file } no es un almacén de Sealed Move ({ $why }); da la ruta de un almacén, o de un archivo que aún no exista
store-read-only = no se puede escribir en el almacén { $file } ({ $why }); da a este usuario permiso de escritura sobre el archivo y su carpeta, o elige otra ruta
store-not-opened = no se puede abrir el almacén { $file } ({ $why }); comprueba que la carpeta existe y se puede usar
store-disk-full = el disco del almacén { $file } está lleno; haz sitio y vuelve a intentarlo, nada de lo guardado se pierde
store-busy = otro programa está usando el almacén { $file }; espera a que acabe, o termínalo, y vuelve a intentarlo
file-exists = { $file } ya existe; muévelo, o permite con --force que se sobrescriba
store-damaged = el almacén contiene un valor que no se puede leer: { $what }; restaura una copia
store-stopped = el almacén se ha detenido; vuelve a arrancar el programa, nada de lo guardado se pierde
tables-unreadable = no se pueden leer las tablas de finales de { $folder }: { $why }
no-tables = en { $folder } no hay tablas de finales; las tablas Syzygy son archivos como KRPvKR.rtbw
no-group-yet = el almacén aún no tiene ningún grupo; arranca `sealed-move serve`, o mete posiciones con `sealed-move import`
several-groups = hay varios grupos; indica uno con --group: { $groups }
no-such-group = no hay ningún grupo «{ $wanted }»; hay: { $groups }
several-of-that-name = varios grupos se llaman «{ $wanted }»; da el canal en su lugar: { $groups }
no-coach-yet = el grupo no tiene entrenador; nombra antes uno en su chat
no-folder-for-demo = no se pudo crear una carpeta para el almacén de la demostración; indica una con --store
demo-store-there = { $file } ya existe; la demostración llena un almacén nuevo, así que da otro nombre, o ejecuta `serve` con este
nothing-to-run = No hay ningún chat que pueda funcionar. { $why }
no-chat-left = no queda ningún chat que atender; lo que necesita cada uno está más arriba
threads-not-started = el programa no pudo iniciar sus hilos; cierra otros programas y vuelve a intentarlo
stop-signal-unheard = no se pudo esperar la señal de terminar
ctrl-c-unheard = no se pudo esperar Ctrl-C

## Lo que falla en los argumentos de una llamada

unknown-argument = aquí no hay ningún argumento «{ $argument }»
argument-missing = falta: { $arguments }
unknown-command = no hay ninguna orden «{ $command }»
no-command-given = «{ $command }» necesita una orden: { $commands }
argument-twice = «{ $argument }» solo se puede dar una vez
argument-conflict = «{ $argument }» no va junto con: { $others }
value-missing = «{ $argument }» necesita un valor
value-not-offered = «{ $value }» no es un valor para «{ $argument }»; elige uno de { $values }
value-unfit = «{ $value }» no vale para «{ $argument }»: { $detail }
not-a-number = escribe un número
not-a-day = escribe un día, como 2027-01-04
not-readable = no se puede leer
not-between = escribe un número entero de { $least } a { $most }
not-two-squares = escribe dos casillas, como d1d8
not-a-square = escribe una casilla, como h7
not-a-language = el programa no sabe leer ese idioma; elige { $languages }
perhaps-meant = ¿Querías decir «{ $name }»?
after-two-dashes = Para dar «{ $argument }» como valor, escribe «-- { $argument }».
usage-is = Uso: { $usage }
help-says-more = «--help» dice más.

## Lo que ofrece una opción

usual-value = [por omisión: { $value }]
environment-name = [variable de entorno: { $name }]
one-of-values = [valores: { $values }]
option-value = { $name } ({ $meaning })
