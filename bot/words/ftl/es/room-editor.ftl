# The editor on the coach's page: lessons that are being written, the board, and positions written anew. $square is a
# square such as e4; $piece names a piece by colour and kind, in the letters of English: wn is a white knight.

## Around it

editor-nav = Escribir
editor-title = Escribir una lección
editor-edit-title = Editar una posición
editor-to-check = Volver a las posiciones comprobadas
editor-to-week = A la semana
editor-what = Una lección se escribe en pasos: palabras, un ejemplo, una posición para resolver, una pregunta. Lo que escribes se guarda mientras lo escribes.
editor-begin = Empezar una lección
editor-no-drafts = No hay nada a medio escribir.
editor-untitled = Sin título
editor-draft-count = { $steps ->
    [one] { $steps } paso, escrito por última vez:
   *[other] { $steps } pasos, escrito por última vez:
}
editor-is-lesson = Pertenece a una lección.
editor-open = Seguir escribiendo
editor-write = Abrir en el editor
editor-edit = Editar
editor-remove = Quitar el borrador
editor-remove-sure = ¿Quitar el borrador «{ $title }»? Lo escrito en él se pierde; la lección que salió de él se queda.
editor-remove-it = Quitarlo
editor-removed = El borrador «{ $title }» se ha quitado.
editor-all-drafts = Todos los borradores
editor-copy = Parte de esta lección ya se publicó, así que esto es una copia. Ponle un título propio; al tomarla será otra lección.

## A draft. $why is a sentence with its full stop; $what a statement that begins with a small letter.

editor-draft-title = Título de la lección
editor-keeping = Guardando…
editor-kept = Todo está guardado.
editor-not-kept = Aún sin guardar: { $why } Lo que has escrito sigue aquí y en este navegador.
editor-overtaken = Entretanto se ha escrito en este borrador desde otro sitio, en otra pestaña o por otro entrenador. No se ha perdido nada: las dos versiones están. ¿Qué hacemos con la tuya?
editor-keep-mine = Guardar la mía como otro borrador
editor-take-theirs = Seguir con la otra versión
editor-my-version = { $title } (mi versión)
editor-step = paso { $step }
# $kind as in editor-kind.
editor-step-of = { $kind ->
    [example] Paso { $step }: ejemplo
    [stop] Paso { $step }: para resolver
    [question] Paso { $step }: pregunta
   *[words] Paso { $step }: palabras
}
editor-fault = Sin terminar: { $what }.
editor-remove-step = Quitar
editor-remove-step-sure = ¿Quitar el paso { $step } con todo lo escrito en él?
editor-remove-step-it = Quitar el paso
editor-add = { $kind ->
    [example] Añadir un ejemplo
    [stop] Añadir una posición para resolver
    [question] Añadir una pregunta
   *[words] Añadir palabras
}
editor-preview = Ver el paso como los miembros
editor-checking = Comprobando…
editor-the-reveal = Con la solución
editor-take-in-what = Al tomarla se comprueba cada posición, y la lección queda lista para la semana. El borrador se queda.
editor-take-in-again = Al tomarlo ocupa el lugar de su lección: lo que de ella espera en la semana conserva su sitio. Si algo de la lección ya se publicó, se convierte en otra.

## A step

editor-step-kind = Qué es este paso
editor-kind = { $kind ->
    [example] Ejemplo
    [stop] Para resolver
    [question] Pregunta o deberes
   *[words] Palabras
}
editor-kind-what = { $kind ->
    [example] Se muestran jugadas. El paso sale de una vez con sus jugadas, variantes y palabras.
    [stop] Se pregunta a los miembros por una jugada. Indica la tarea de la posición, o marca jugadas como paradas; las jugadas antes de una parada llevan a ella, las de después son tu propia línea para la solución.
    [question] Los miembros responden con sus palabras. Las jugadas, si las hay, se muestran con la pregunta; la imagen muestra adónde llevan.
   *[words] Palabras, con o sin posición. La posición se muestra como imagen, si montas una.
}
editor-words = Palabras con la posición
editor-asked = Lo que preguntas
editor-anyway = Enviar estas palabras con la posición aunque delaten una jugada
editor-at-reveal = Palabras para la solución
editor-task = Tarea
editor-task-start = Tarea de esta posición
editor-task-what = De #1 a #20 para un mate, + para ganar, = para tablas; si queda vacío, la comprobación busca una.
editor-task-start-what = De #1 a #20 para un mate, + para ganar, = para tablas. Déjalo vacío si solo se pregunta por jugadas posteriores.
editor-step-topic = Tema, si no es el de la lección
editor-contrast = Contraste: aquí el tema no debe funcionar
editor-question-behind = Una pregunta detrás, si quieres

## The board

editor-board = Tablero
editor-keys = Con el teclado: las flechas van de casilla en casilla, Intro toma y suelta o coloca, Supr quita, Esc devuelve.
editor-tools = Herramientas
editor-set-up = Montar
editor-moves = Jugadas
editor-flip = Girar el tablero
editor-undo = Deshacer
editor-redo = Rehacer
editor-no-position = Con estas palabras no se muestra ninguna posición. Monta una si quieres.
editor-square-empty = { $square }, vacía
editor-square-holds = { $piece ->
    [wk] Rey blanco en { $square }
    [wq] Dama blanca en { $square }
    [wr] Torre blanca en { $square }
    [wb] Alfil blanco en { $square }
    [wn] Caballo blanco en { $square }
    [wp] Peón blanco en { $square }
    [bk] Rey negro en { $square }
    [bq] Dama negra en { $square }
    [br] Torre negra en { $square }
    [bb] Alfil negro en { $square }
    [bn] Caballo negro en { $square }
   *[bp] Peón negro en { $square }
}
# $what is editor-square-empty or editor-square-holds.
editor-square-target = { $what }; la pieza en la mano puede venir aquí
editor-picked = En la mano: { $what }
editor-put-back = Devuelta a su casilla.
editor-not-legal = Esa no es una jugada legal aquí.
editor-played = Jugado: { $move }

## Setting up

editor-palette = Piezas para colocar
editor-hand = Mover piezas
editor-rubber = Quitar piezas
editor-piece = { $piece ->
    [wk] Rey blanco
    [wq] Dama blanca
    [wr] Torre blanca
    [wb] Alfil blanco
    [wn] Caballo blanco
    [wp] Peón blanco
    [bk] Rey negro
    [bq] Dama negra
    [br] Torre negra
    [bb] Alfil negro
    [bn] Caballo negro
   *[bp] Peón negro
}
editor-clear = Vaciar el tablero
editor-initial = Posición inicial
editor-to-move = Juegan
editor-white = Blancas
editor-black = Negras
editor-passing = Al paso en
editor-no-passing = ninguna
editor-castling = Enroque
editor-castling-of = { $right ->
    [white-short] Blancas, corto
    [white-long] Blancas, largo
    [black-short] Negras, corto
   *[black-long] Negras, largo
}
editor-fen = FEN, para pegar o copiar

## Moves

editor-start = Inicio
editor-no-moves = Aún no hay jugadas. Juégalas en el tablero, o escríbelas.
editor-back = Una jugada atrás
editor-on = Una jugada adelante
editor-type-move = Una jugada, escrita
editor-enter-move = Introducir
editor-about-move = Sobre { $move }
editor-sign-move = Signo de la jugada
editor-sign-position = Signo de la posición
editor-no-sign = ninguno
editor-words-before = Palabras antes
editor-words-after = Palabras después
editor-promote = Hacerla la línea principal
editor-cut = Quitarla con todo lo que sigue
editor-stop = Preguntar a los miembros por esta jugada
editor-stop-here = se pregunta
# $task is a sign such as #2.
editor-stop-task = se pregunta, { $task }
editor-become = ¿En qué se convierte el peón?
editor-become-what = { $piece ->
    [q] Dama
    [r] Torre
    [b] Alfil
   *[n] Caballo
}

## A position written anew

editor-save = Guardar y comprobar
editor-saved = Guardada y comprobada.
editor-start-over = Volver a lo guardado
editor-typed-before = Esto lo escribiste aquí antes y no lo guardaste.
