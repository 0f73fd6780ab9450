# Lo que todo chat dice de una posición y de los puntos.

task-mate = { $moves ->
    [1] { $side-start } juegan y dan mate en una.
   *[other] { $side-start } juegan y dan mate en { $moves-word }.
}
task-win = { $side-start } juegan y ganan.
task-draw = { $side-start } juegan y hacen tablas.
no-solution-proved = No se ha demostrado ninguna solución; pregunta a tu entrenador.
## A move in words, for those who do not see the board

# $from and $to are squares.
piece-goes = { $side-start } mueven { $piece-the } de { $from } a { $to }.
piece-takes = { $side-start } capturan { $taken-the } de { $to } con { $piece-the } de { $from }.
king-castles = { $short ->
    [yes] { $side-start } se enrocan corto.
   *[no] { $side-start } se enrocan largo.
}
pawn-promotes = El peón se convierte en { $piece-name }.
walk-check = Jaque.
walk-mate = Jaque mate.

## Idiomas en los que se leen las respuestas

# En el texto corrido; en una lista para elegir, la primera letra se pone en mayúscula.
language-name = { $language ->
    [german] alemán
    [french] francés
    [spanish] español
    [italian] italiano
    [portuguese] portugués
    [dutch] neerlandés
    [russian] ruso
    [polish] polaco
    [czech] checo
    [hungarian] húngaro
    [turkish] turco
   *[english] inglés
}

## Cómo se cuenta aquí

rule-full-solution = Una solución completa vale 5 puntos. En un mate en dos solo se pide la jugada clave. En un mate más largo la clave vale 1 punto y los otros 4 se reparten entre las variantes de longitud completa, redondeando hacia abajo a medios puntos; no hace falta escribir las jugadas de mate. Si se trata de ganar o de hacer tablas, se pide la variante hasta que la ganancia esté en el tablero o las tablas sean claras, cuatro jugadas como máximo: la primera vale 1 punto y las demás se reparten 4. Una clave equivocada no vale nada, y tampoco varias primeras jugadas si una de ellas falla. (Los cinco puntos y su porqué: el reglamento de soluciones de la Federación Mundial de Composición de Ajedrez; el reparto es nuestro.)
rule-wrong-free = En este grupo las jugadas fallidas no quitan nada.
rule-wrong-ends = { $later ->
    [one] En este grupo, tras una primera jugada fallida, la posición ya no da puntos. Una jugada fallida más adelante en la variante quita { $later-text } punto.
   *[other] En este grupo, tras una primera jugada fallida, la posición ya no da puntos. Una jugada fallida más adelante en la variante quita { $later-text } puntos.
}
rule-wrong-takes = { $wrong ->
    [one] En este grupo cada primera jugada fallida quita { $wrong-text } punto de lo que sigue, y una jugada fallida más adelante en la variante, { $later-text }.
   *[other] En este grupo cada primera jugada fallida quita { $wrong-text } puntos de lo que sigue, y una jugada fallida más adelante en la variante, { $later-text }.
}
rule-hint-free = Las pistas no quitan nada.
rule-hint-takes = { $hint ->
    [one] Cada pista quita { $hint-text } punto.
   *[other] Cada pista quita { $hint-text } puntos.
}
rule-least = { $points ->
    [one] Quien resuelve una posición conserva al menos { $points-text } punto, salvo que la última pista haya mostrado la jugada.
   *[other] Quien resuelve una posición conserva al menos { $points-text } puntos, salvo que la última pista haya mostrado la jugada.
}
rule-best = De tus respuestas a una posición cuenta la mejor, con lo que valía cuando llegó. Una respuesta que no es legal, no está clara o no se puede leer no cuesta nada. Una posición conserva los precios con los que se publicó. Tu entrenador puede cambiar cualquier veredicto, y los puntos cambian con él.

## Una posición que ya está guardada

same-again = La misma posición ya está guardada, como { $kept }; este archivo le da { $differs }.
same-again-as = La misma posición ya está guardada, como { $kept }; este archivo le da { $differs }: { $given }.
kept-stays = La guardada queda como está.
same-taken = Ahora vale la del archivo.
same-both = Se guardan los dos temas y los dos textos.
version-of = «{ $name }», { $topics }
version-without-topic = «{ $name }», sin tema
another-name = otro nombre
another-topic = otro tema
other-words = otras palabras
other-moves = otras jugadas u observaciones
