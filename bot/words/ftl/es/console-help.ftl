# La ayuda de la línea de órdenes, por la ruta de la orden; véase bot/src/cli/help.rs.
# Órdenes, opciones y valores se llaman igual en todos los idiomas.

help-shared = Lo que varias órdenes tienen en común.
    .heading-usage = Uso:
    .heading-commands = Órdenes:
    .heading-arguments = Argumentos:
    .heading-options = Opciones:
    .value-OPTIONS = OPCIONES
    .value-COMMAND = ORDEN
    .value-FILE = ARCHIVO
    .value-FOLDER = CARPETA
    .value-SECONDS = SEGUNDOS
    .value-N = N
    .value-PROGRAM = PROGRAMA
    .value-GROUP = GRUPO
    .value-WHICH = CUÁL
    .value-NAME = NOMBRE
    .value-TEXT = TEXTO
    .value-WHEN = CUÁNDO
    .value-FEN = FEN
    .value-TASK = ENUNCIADO
    .value-LANGUAGE = IDIOMA
    .value-REPLY = RESPUESTA
    .value-TOPIC = TEMA
    .value-MOVES = JUGADAS
    .value-FROM-TO = DE-A
    .value-SQUARE = CASILLA
    .value-PERIOD = PERIODO
    .value-TABLE = TABLA
    .value-PORT = PUERTO
    .value-POSITIONS = POSICIONES
    .value-POSITION = POSICIÓN
    .value-WORDS = PALABRAS
    .value-ITEM = ENTRADA
    .value-TO = PUESTO
    .value-TIME = HORA
    .value-UNTIL = HASTA
    .value-BOTTOM = ABAJO
    .value-STYLE = ESTILO
    .value-SIZE = TAMAÑO
    .arg-help = Muestra esta ayuda
    .arg-version = Muestra la versión
    .arg-config = Archivo de ajustes; por omisión sealed-move.toml junto al almacén, si lo hay
    .arg-store = El almacén; por omisión el que nombran los ajustes, si no sealed-move.sqlite en esta carpeta
    .arg-group = El grupo, por su nombre o su canal; no hace falta si solo hay uno
    .arg-json = Un objeto JSON
    .arg-jobs = Posiciones en las que se trabaja a la vez; por omisión una por núcleo
    .arg-period = Cuándo: all, this week, last week, last 4 weeks, this month, 2026-03, 2026-03-02 to 2026-03-08, …
    .arg-port = Puerto de la sala del club en vez del de los ajustes; si está ocupado se toma uno libre
    .arg-fen = Una posición que se muestra al lado; tiene que ser legal y no se demuestra
    .arg-on = Cuándo sale, en la hora del grupo, como 2026-12-01T18:00
    .arg-again = También las que ya se publicaron
    .arg-item = Número de la entrada
    .arg-position = Número de la posición
help = Lleva el problema de ajedrez del día de un grupo de estudio: lo revisa, lo publica, lee las respuestas, contesta las jugadas falladas con su refutación, guarda las soluciones hasta el final y suma por temas.
    .long =
        Lleva el problema de ajedrez del día de un grupo de estudio: lo revisa, lo publica, lee las respuestas, contesta las jugadas falladas con su refutación, guarda las soluciones hasta el final y suma por temas.

        Estado de salida: 0 como se pidió; 1 hecho, y algo deja que desear; 2 no se pudo hacer.
help-serve = Ejecuta el bot: horario, sala del club y Discord donde haya un token (también sin orden)
    .long =
        Ejecuta el bot: horario, sala del club y Discord donde esté puesto DISCORD_TOKEN (o DISCORD_TOKEN_FILE).

        Arranca sin archivo de ajustes; README.md los enumera todos. Con Ctrl-C termina en orden.
help-demo = Lo ejecuta con un almacén nuevo y un grupo inventado; la primera posición se publica en el acto
    .long =
        Ejecuta todo con un almacén nuevo y un grupo inventado; la primera posición se publica en el acto.

        No necesita cuenta, clave ni servicio. El almacén se tira al final si --store no nombra un archivo.
    .arg-port = Puerto de la sala del club; si está ocupado se toma uno libre
help-check = Revisa posiciones de EPD, PGN o líneas de FEN
    .long =
        Revisa posiciones: ¿se cumple el enunciado contra toda defensa, y hay una sola clave?

        El tipo de archivo (EPD, PGN, líneas de FEN) se ve por su contenido; `-` lee la entrada estándar. Estado de salida 1 si una posición no es correcta o, con --topic-on, si no muestra su tema.
    .after =
        Ejemplos:
          sealed-move check semana.epd
          sealed-move check --json --seconds 2 leccion.pgn
          echo '6k1/5ppp/8/8/8/8/5PPP/3R2K1 w - -' | sealed-move check -
    .arg-json = Un objeto JSON por posición, en una línea propia
    .arg-seconds = El tiempo máximo para una posición
    .arg-moves = El mate más largo que se busca si el archivo no da enunciado
    .arg-table-mb = Megabytes, como máximo, para la tabla de posiciones que guarda cada demostración
    .arg-tables = Carpeta con tablas de finales en formato Syzygy
    .arg-engine = Motor UCI al que se pide una segunda opinión sobre lo que no se pudo demostrar
    .arg-topic-on = Con qué variantes se comprueba un tema que nombra un patrón de mate; una posición que no muestra su tema cuenta entonces como defectuosa
    .arg-topic-on-is-main-line = la variante principal, como sin esta opción
    .arg-topic-on-is-every-line = cada variante de longitud completa
    .arg-files = Archivos que se leen
help-import = Revisa posiciones y las guarda
    .long =
        Revisa posiciones y las guarda, con lo que se revisó y cómo.

        Estado de salida 1 si una posición no es correcta (se guarda igualmente si las reglas se le aplican), si ya está guardada con otro nombre, tema o comentario y --same no dice cuál vale, si --queue deja fuera una que ya se publicó o, con --topic-on, si una no muestra su tema.
    .arg-json = Un objeto JSON por posición
    .arg-queue = Pone además al final de la semana cada posición correcta, pregunta y palabras; las preguntas y palabras no se guardan de otro modo
    .arg-again = Con --queue, también las que ya se publicaron
    .arg-same = Qué vale de una posición que ya está guardada con otro nombre, tema o comentario
    .arg-same-is-keep = la guardada, como sin esta opción
    .arg-same-is-new = la del archivo
    .arg-same-is-both = la guardada, y además el tema y las palabras del archivo
    .arg-topic = Da a cada posición este tema en vez del que trae el archivo
    .arg-topic-on = Con qué variantes se comprueba un tema que nombra un patrón de mate; una posición que no muestra su tema cuenta entonces como defectuosa
    .arg-topic-on-is-main-line = la variante principal, como sin esta opción
    .arg-topic-on-is-every-line = cada variante de longitud completa
    .arg-files = Archivos EPD, PGN o FEN
help-queue = Mira y ordena la semana
    .long = Mira y ordena la semana: las posiciones, preguntas y palabras que esperan, en su orden y con su hora.
    .arg-json = Un objeto JSON por puesto de la semana
help-queue-add = Pone al final de la semana posiciones que guardó `import`, por sus números
    .arg-positions = Números de posiciones
    .arg-anyway = También las que no son correctas
help-queue-question = Pone una pregunta al final de la semana: los miembros responden con sus palabras y un entrenador puntúa lo que escriben
    .arg-words = Lo que se pregunta, como máximo 1000 caracteres
    .arg-topic = El tema en el que cuentan sus puntos
    .arg-reveal = Tus propias palabras, que se muestran al cierre
help-queue-say = Pone al final de la semana palabras para leer: no admiten respuestas
    .arg-words = El texto, como mucho 1000 caracteres
    .arg-fen = Una posición que se muestra al lado
    .arg-topic = El tema
    .arg-on = Cuándo salen, en la hora del grupo, como 2026-12-01T18:00
help-queue-card = Pone la ficha de un tema al final de la semana: sus palabras con la posición del ejemplo, en el idioma del grupo
    .arg-name = La ficha, por el nombre o el título de su patrón, o por su tema
    .arg-on = Cuándo sale, en la hora del grupo, como 2026-12-01T18:00
help-queue-words = Mira las palabras que salen con una posición, o escríbelas de nuevo
    .arg-post = Palabras que salen con la posición; un texto vacío las quita
    .arg-reveal = Palabras para la solución; un texto vacío las quita
    .arg-anyway = Envía las palabras con la posición aunque delaten una de sus jugadas
help-queue-move = Mueve una entrada a otro puesto del orden; el 1 es el primero
    .arg-to = Su nuevo puesto
help-queue-at = Fija cuándo sale una entrada, en la hora del grupo, o la libera
    .arg-time = Como 2026-12-01T18:00, o "free"
help-queue-topic = Pone el tema de una posición
    .arg-topic = El tema; sin él se quita el tema
help-queue-remove = Saca una entrada de la semana; `put-back` la devuelve
help-queue-put-back = Devuelve a su puesto lo que se sacó de la semana
    .arg-taken = Su número, como lo dijo `remove`; sin él, lo último
help-queue-now = Publica ahora una entrada, o la siguiente
help-queue-pause = Deja de publicar hasta un día, o hasta `queue resume`
    .arg-until = Primer día en que se vuelve a publicar, como 2027-01-04
help-queue-resume = Vuelve a publicar
help-queue-print = Escribe la semana como hojas para la clase: seis posiciones por página, las soluciones en la última
    .arg-out = Un archivo PDF
    .arg-letter = Papel de tamaño carta en vez de A4
help-lesson = Enseñar un tema por pasos
    .long =
        Enseñar un tema por pasos: una lección es un archivo PGN con una partida por paso.

        Las palabras antes de la primera jugada abren el paso. Se pregunta por la jugada cuyo comentario empieza con [stop], y [stop #2] dice qué se pide. Unas jugadas sin parada son un ejemplo, sin jugadas son palabras con un dibujo, y unas palabras que terminan con signo de interrogación son una pregunta abierta, igual que un paso con la etiqueta Homework "yes" o Question "...".
help-lesson-check = Leer una lección y comprobar sus paradas, sin almacén
    .arg-seconds = Tiempo máximo para una parada
    .arg-file = Un archivo PGN, o - para la entrada estándar
help-lesson-import = Comprobar una lección y guardarla; nada va todavía a la semana
    .arg-json = Un objeto JSON por parte
    .arg-title = El título de la lección, en lugar del que da el archivo
    .arg-same = Qué vale de una posición que ya está guardada con otro nombre, tema o comentario
    .arg-same-is-keep = la guardada, como sin esta opción
    .arg-same-is-new = la del archivo
    .arg-same-is-both = la guardada, con el tema y las palabras del archivo además
    .arg-file = Un archivo PGN
help-lesson-list = Ver las lecciones del grupo
    .arg-json = Un objeto JSON por lección
help-lesson-show = Ver una lección paso a paso, y dónde está cada parte
    .arg-json = Un objeto JSON por parte
    .arg-lesson = Número de la lección
help-lesson-plan = Poner una lección en la semana, en su orden: en los huecos libres, si no se dice otra cosa
    .arg-at-once = Todo a la vez desde este momento, en la hora del grupo, como 2026-12-01T18:00
    .arg-step = Un paso en su propio momento, como 3=2026-12-01T18:00; tantas veces como pasos así haya
    .arg-anyway = También paradas que no están en orden
    .arg-again = También lo que ya salió
    .arg-lesson = Número de la lección
help-lesson-export = Escribir una lección como PGN, que se puede volver a leer
    .arg-out = Un archivo, en lugar de la salida estándar
    .arg-lesson = Número de la lección
help-lesson-remove = Olvidar una lección y sacarla de la semana; sus posiciones y lo publicado se quedan
    .arg-lesson = Número de la lección
help-grade = Juzga una respuesta a una posición
    .long =
        Juzga una respuesta a una posición, como se contestaría a un miembro.

        La posición se da con su tarea o en un archivo cuyas propias variantes se siguen. La respuesta es el último argumento, tras `--` si empieza por guion, o la entrada estándar con `-`. Estado de salida 1 si la respuesta no es correcta.
    .after =
        Ejemplo:
          sealed-move grade --position 'r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1' --stipulation '#2' --language spanish 'Td7'
    .arg-position = La posición
    .arg-stipulation = El enunciado: de #1 a #20, + o =
    .arg-language = Idioma cuyas letras de piezas se leen primero
    .arg-seconds = El tiempo máximo para el veredicto
    .arg-pgn = En su lugar, un archivo cuya primera posición se juzga según sus propias variantes
    .arg-line = Con cuál de las variantes del archivo se responde a una victoria o unas tablas, desde 0
    .arg-reply = Lo que escribió el miembro
help-name = Pone nombre al mate que está en el tablero
    .long =
        Pone nombre al mate que está en el tablero: el patrón, quién da jaque, quién controla cada escape.

        Estado de salida 1 si el bando que juega no está en mate.
    .after =
        Ejemplo:
          sealed-move name '3R2k1/5ppp/8/8/8/8/8/6K1 b - - 0 1'
    .arg-position = La posición, con el bando en mate por jugar
help-card = Lee de qué trata un patrón de mate, con un ejemplo
    .long = Lee de qué trata un patrón de mate: definición, en qué fijarse, qué lo separa de sus parientes, un ejemplo con su solución y de dónde viene. Sin nombre, los patrones de los que hay fichas.
    .after =
        Ejemplos:
          sealed-move card boden
          sealed-move card "Mate de la coz" --out coz.png
    .arg-name = El patrón, por su nombre o por su título en cualquiera de los idiomas
    .arg-json = Un objeto JSON por ficha
    .arg-out = Escribe ahí la imagen del final del ejemplo; la terminación .png o .svg dice cuál
help-find = Busca en partidas posiciones para un tema
    .long =
        Busca en partidas posiciones para un tema: mates forzados que terminan en un patrón, jugados o desaprovechados.

        Toda posición encontrada es correcta. Sin --json salen como EPD, listas para `import`; el tema y la observación van en el idioma de esta ayuda. Estado de salida 1 si no se pudo leer una partida.
    .after =
        Ejemplos:
          sealed-move find --topic "Mate del pasillo" partidas.pgn > pasillo.epd
          sealed-move find --topic "Mate de Boden" --longest 4 archivo.pgn
    .arg-topic = Patrón de mate, por su clave o su nombre; sin él, cualquiera con nombre
    .arg-shortest = El mate más corto que se quiere, en jugadas
    .arg-longest = El mate más largo que se quiere, en jugadas
    .arg-json = Un objeto JSON por posición, como lo escribe `check`
    .arg-jobs = Partidas en las que se trabaja a la vez; por omisión una por núcleo
    .arg-files = Archivos de partidas en PGN; `-` lee la entrada estándar
help-engine = Ofrece la búsqueda del bot a programas que hablan UCI
    .long = Ofrece la búsqueda del bot, por la entrada y la salida estándar, a programas que hablan UCI.
help-diagram = Dibuja una posición como PNG o SVG
    .long = Dibuja una posición como PNG o SVG, según la terminación del archivo; una variante como tira (PNG, SVG) o como animación (GIF).
    .after =
        Ejemplos:
          sealed-move diagram '6k1/5ppp/8/8/8/8/5PPP/3R2K1 w - -' --out tablero.png --arrow d1d8
          sealed-move diagram 'r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - -' --line 'Rxd8+ Rxd8 Rxd8#' --out variante.gif
          sealed-move diagram --sheet --out todo.png
    .arg-position = La posición
    .arg-sheet = Todo lo que se puede dibujar, en una hoja: todas las piezas y peones, estilos, marcas y tamaños
    .arg-line = Jugadas que se muestran desde la posición, con letras inglesas, como "1.Rxd8+ Rxd8 2.Rxd8#"
    .arg-out = Dónde escribir; la terminación .png, .svg o .gif dice qué
    .arg-bottom = Quién está abajo; por omisión quien juega
    .arg-bottom-is-white = las blancas
    .arg-bottom-is-black = las negras
    .arg-style = Aspecto del tablero
    .arg-style-is-print = como impreso
    .arg-style-is-light = claro
    .arg-style-is-dark = oscuro
    .arg-style-is-contrast = alto contraste
    .arg-size = Ancho en píxeles, de 120 a 2400 (por omisión 720); con una variante, de 120 a 480 cada tablero de una tira (320), de 120 a 720 una animación (480)
    .arg-arrows = Una flecha, como d1d8; se puede repetir
    .arg-marks = Una casilla señalada, como h7; se puede repetir
    .arg-last = La última jugada, como e2e4
    .arg-words = Muestra además las palabras que sustituyen a la imagen
help-leaderboard = Puntos por tema y periodo
    .long = Puntos por miembro, los mejores primero: cinco por una solución completa, puntos parciales por una parte.
    .after =
        Ejemplos:
          sealed-move leaderboard --period 'last 4 weeks'
          sealed-move leaderboard --topic 'Mate de la coz' --csv > puntos.csv
    .arg-topic = Solo las publicaciones de este tema
    .arg-csv = CSV con una línea de cabecera
help-summary = Quién ha participado, cómo fue, qué enseñar después
    .long = El resumen: quién ha participado, ha resuelto, se ha quedado callado o ha vuelto; cómo fue cada posición y cada tema; y por tanto qué enseñar después.
    .after =
        Ejemplos:
          sealed-move summary --period 'last 4 weeks'
          sealed-move summary --csv topics > temas.csv
          sealed-move summary --charts graficos/
    .arg-topic = Solo las publicaciones de este tema
    .arg-csv = Una de las tablas del resumen como CSV, con una línea de cabecera
    .arg-csv-is-members = quién ha participado
    .arg-csv-is-posts = cómo fue cada publicación
    .arg-csv-is-topics = cómo fue cada tema
    .arg-charts = Dibuja además los gráficos en esta carpeta
help-backup = Copia el almacén, también en marcha
    .long = Escribe una copia coherente del almacén, también mientras el bot está en marcha.
    .arg-force = Sobrescribe la copia si ya existe
    .arg-to = Adónde va la copia
help-restore = Pone una copia en el lugar del almacén
    .long = Pone en el lugar del almacén una copia hecha por `backup`. El bot no debe estar funcionando con él.
    .arg-force = Sobrescribe el almacén si lo hay
    .arg-from = La copia
