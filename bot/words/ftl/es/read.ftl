# Qué falla en los archivos y las posiciones: frases que van tras dos puntos, en minúscula y sin punto final.
# $written, $tag y $code están así en el archivo.

unreadable = { $file }, línea { $row }: { $what }
odd-row = línea { $row }: { $what }

## El archivo entero

file-over-limit = el archivo tiene { $size } MB; de una vez se leen { $most } MB como mucho, así que divídelo
file-lacks-mark = el archivo parece UTF-16 sin su marca; guárdalo como UTF-8
file-is-no-text = el archivo no es texto (contiene bytes nulos); da un archivo de texto en EPD, PGN o FEN
file-changes-encoding = el archivo empieza como UTF-16 y sigue de otro modo; guárdalo como UTF-8
file-holds-nothing = el archivo está vacío; debería traer posiciones en líneas EPD o FEN, o partidas en PGN
file-begins-strangely = con «{ $written }» no empieza ni una línea FEN o EPD ni una partida PGN; una posición empieza como «8/8/8/8/8/5k2/5p2/5K2 w - -», una partida como [Event "..."]
file-holds-positions = este archivo trae posiciones y no partidas; da un archivo de partidas en PGN
file-holds-games = el archivo trae { $games } partidas enteras, cada una desde la posición inicial, y ninguna posición que revisar; en partidas enteras busca posiciones `sealed-move find`, y lo que encuentra se puede leer aquí

## Una línea

line-too-long = la línea tiene más de { $most } caracteres; en una línea va una posición
line-lost = { $what }
read-as-windows = esta línea no es UTF-8; se leyó como Windows-1252
nul-byte = { $before ->
    [0] la línea empieza con un byte nulo, que no es texto; escríbela de nuevo
    [one] la línea tiene un byte nulo tras otro byte, y eso no es texto; escríbela de nuevo
   *[other] la línea tiene un byte nulo tras otros { $before }, y eso no es texto; escríbela de nuevo
}
strange-byte = { $before ->
    [0] la línea empieza con el byte { $byte }, que no es texto ni en UTF-8 ni en Windows-1252; escríbela de nuevo, mejor en UTF-8
    [one] la línea tiene tras otro byte el byte { $byte }, que no es texto ni en UTF-8 ni en Windows-1252; escríbela de nuevo, mejor en UTF-8
   *[other] la línea tiene tras otros { $before } bytes el byte { $byte }, que no es texto ni en UTF-8 ni en Windows-1252; escríbela de nuevo, mejor en UTF-8
}
broken-character = la línea tiene un carácter de UTF-16 roto; escríbela de nuevo, mejor en UTF-8

## Una partida: sus etiquetas

tag-unread = esta etiqueta no se puede leer: { $written }; una etiqueta se escribe [Name "valor"]
tag-beside-moves = esta partida tiene jugadas y una etiqueta { $tag }, que va en una partida sin jugadas; quita lo uno o lo otro
tag-empty = la etiqueta { $tag } está vacía; escribe su texto, por ejemplo [{ $tag } "¿Qué quieren las blancas?"]
question-lacks-words = la etiqueta Task "?" hace de esta partida una pregunta, y falta su texto; escríbelo como etiqueta, por ejemplo [Question "¿Qué quieren las blancas?"], o como comentario
game-from-the-start = esta partida empieza en la posición inicial; da la posición que hay que revisar con una etiqueta como [FEN "8/8/8/8/8/5k2/5p2/5K2 w - - 0 1"]; en partidas enteras busca posiciones `sealed-move find`, y lo que encuentra se puede leer aquí
tag-no-task = etiqueta { $tag }: { $why }
stipulation-error = «{ $written }» no es un enunciado; escribe de #1 a #{ $most } para un mate, + para ganar o = para tablas
tag-no-position = etiqueta FEN: { $why }

## Una lección: una partida por paso

lesson-too-long = una lección tiene como máximo { $most } pasos, y este es uno más; haz dos lecciones
# $why: stipulation-error
stop-no-task = la marca de la parada: { $why }
lead-too-long = las palabras y las jugadas que se muestran antes de la parada o como ejemplo tienen juntas más de { $most } caracteres, y no sale más de una vez; haz dos pasos
part-too-long = estas palabras tienen más de { $most } caracteres, y no salen más de una vez; acórtalas o haz dos pasos
step-empty = este paso no tiene ni palabras ni jugadas; escribe lo que muestra, o quítalo
step-asks-nothing = este paso es para resolver y no se pregunta nada en él; indica su tarea, o introduce la jugada que se pide

## Una partida: sus jugadas

game-unread = la partida no se puede leer
null-move = en la línea principal hay una jugada nula (--); escribe la idea en un comentario
move-not-legal = la jugada { $line } no es legal aquí; revísala, y también las anteriores y el FEN
move-not-clear = la jugada { $line } puede ser más de una; añade la columna o la fila de la que viene la pieza
game-too-long = la partida tiene más de { $most } jugadas, contando las variantes; divídela
moves-too-long = la línea pasa de { $most } medias jugadas
variation-too-soon = hay una variante antes de la primera jugada; va detrás de la jugada que sustituye
bracket-not-opened = este paréntesis de cierre no tiene el de apertura
bracket-not-closed = este paréntesis no se cierra
comment-not-closed = este comentario no se cierra; termínalo con una llave
brace-not-opened = esta llave de cierre no termina ningún comentario
glyph-unknown = «{ $written }» no es un signo de comentario; van de $0 a $255
move-unread = «{ $written }» no se puede leer como jugada; las observaciones van entre llaves

## Una línea EPD

operation-wanted = donde debería empezar una operación EPD como bm, dm o id, pone «{ $written }»; cada una termina en punto y coma
quotation-not-closed = al texto que sigue a { $code } le faltan las comillas de cierre
operation-lacks-move = a { $code } le falta la jugada; escribe por ejemplo «{ $code } Nf3;»
length-wanted = con dm va en cuántas jugadas es mate, de 1 a { $most }, por ejemplo «dm 3;»
operation-no-task = task: { $why }
question-wants-words = con question va su texto, por ejemplo question "¿Qué quieren las blancas?";
operand-unread = { $code }: «{ $written }» no se puede leer como jugada; escribe por ejemplo Nf3, exd5 o e8=Q
operand-not-legal = { $code }: «{ $written }» no es legal en esta posición
operand-not-clear = { $code }: «{ $written }» puede ser más de una jugada; añade la columna o la fila de la que viene la pieza
no-position-here = { $why }

## Una posición

not-a-fen = esto no es un FEN («{ $written }»); un FEN trae las ocho filas, luego w o b, los enroques y la captura al paso, por ejemplo «8/8/8/8/8/5k2/5p2/5K2 w - -»
fen-ranks = { $ranks ->
    [one] el tablero del FEN tiene { $ranks } fila y necesita ocho, separadas por /; mira si falta alguna, si sobra o si no está separada
   *[other] el tablero del FEN tiene { $ranks } filas y necesita ocho, separadas por /; mira si falta alguna, si sobra o si no está separada
}
fen-squares = { $squares ->
    [one] la fila { $rank } del FEN, «{ $written }», tiene { $squares } casilla y necesita ocho; cuenta sus piezas y las casillas vacías entre ellas
   *[other] la fila { $rank } del FEN, «{ $written }», tiene { $squares } casillas y necesita ocho; cuenta sus piezas y las casillas vacías entre ellas
}
fen-strange = en la fila { $rank } del FEN hay «{ $found }» en { $square }; las piezas son KQRBNP (blancas) y kqrbnp (negras), y de 1 a 8 son casillas vacías
fen-strange-after = en la fila { $rank } del FEN hay «{ $found }» tras { $squares } casillas; las piezas son KQRBNP (blancas) y kqrbnp (negras), y de 1 a 8 son casillas vacías
fen-turn = en el campo 2 del FEN, quién juega, pone «{ $written }»; escribe w o b
fen-castling = en el campo 3 del FEN, los enroques, pone «{ $written }»; escribe los posibles de KQkq, o -
fen-en-passant = en el campo 4 del FEN, la captura al paso, pone «{ $written }»; escribe la casilla que un peón acaba de saltar, como e3 o d6, o -
fen-half-moves = en el campo 5 del FEN, las medias jugadas desde la última captura o jugada de peón, pone «{ $written }»; escribe un número como 0
fen-move-number = en el campo 6 del FEN, el número de la jugada, pone «{ $written }»; escribe un número como 1
fen-surplus = detrás de los seis campos del FEN sobra «{ $written }»; quítalo

board-empty = el tablero está vacío; pon las piezas en el primer campo del FEN
no-kings = no hay reyes; cada bando necesita exactamente uno
no-king = { $side ->
    [white] no hay rey blanco; cada bando necesita exactamente un rey
   *[black] no hay rey negro; cada bando necesita exactamente un rey
}
many-kings = { $side ->
    [white] hay más de un rey blanco; cada bando necesita exactamente un rey
   *[black] hay más de un rey negro; cada bando necesita exactamente un rey
}
pawn-on-last-rank = hay un peón en la primera o en la última fila ({ $squares }); muévelo o corónalo
other-side-in-check = el bando que no juega está en jaque; mira a quién le toca
both-in-check = los dos bandos están en jaque; mira a quién le toca
rules-do-not-apply = a esta posición no se le pueden aplicar las reglas

castling-rights-dropped = se quitaron derechos de enroque sin rey y torre en sus casillas de origen
en-passant-dropped = la casilla de captura al paso no encaja con ningún avance doble de peón y se quitó
too-many-pieces = hay más piezas de las que dan las coronaciones; la posición no puede darse en una partida
impossible-check = ninguna última jugada puede haber dado este jaque; la posición no puede darse en una partida

## Las palabras del entrenador

words-held = el texto para la posición delata una jugada ({ $line }) y se guarda hasta la solución: «{ $words }»; escribe [post] delante para que salga con la posición de todos modos
long-words-held = el texto para la posición pasa de { $most } caracteres; esto se guarda hasta la solución: «{ $words }»
words-cut = hay más texto del que se guarda para una solución ({ $most } caracteres sobre la posición y { $beside } junto a las jugadas); el final se deja fuera
