# En Discord: lo que dicen una posición y su solución, para todos.

## Una posición

post-heading = { $kind ->
    [problem] **Posición { $number }**
    [question] **Pregunta { $number }**
   *[words] **Aviso { $number }**
}
lesson-step = Lección «{ $title }», paso { $step } de { $steps }
answers-sealed = Las respuestas están selladas hasta el { $closes } ({ $away }).
answers-open = Los veredictos van detrás de marcas de spoiler, y se admiten respuestas hasta el { $closes } ({ $away }).
how-to-answer = { $thread ->
    [yes] -# Pulsa «{ button-answer }», escríbeme directamente, contesta a este mensaje o usa /{ command-study } { command-study-answer }. La charla, en el hilo.
   *[no] -# Pulsa «{ button-answer }», escríbeme directamente, contesta a este mensaje o usa /{ command-study } { command-study-answer }.
}
post-closed = Cerrada; la solución está abajo.
question-taken = Se admiten respuestas con tus propias palabras hasta el { $closes } ({ $away }); solo las lee tu entrenador, salvo que tú permitas más.
how-to-respond = { $thread ->
    [yes] -# Pulsa «{ button-answer }», escríbeme directamente o contesta a este mensaje. La charla, en el hilo.
   *[no] -# Pulsa «{ button-answer }», escríbeme directamente o contesta a este mensaje.
}
question-closed = Cerrada.
thread-name = { $kind ->
    [problem] Posición { $number }
    [question] Pregunta { $number }
   *[words] Aviso { $number }
}
thread-name-topic = { $kind ->
    [problem] Posición { $number } · { $topic }
    [question] Pregunta { $number } · { $topic }
   *[words] Aviso { $number } · { $topic }
}

## Una solución

reveal-heading = **Posición { $number }: la solución**
more-variations = { $more ->
    [one] … y una variante más
   *[other] … y { $more } variantes más
}
mating-patterns = { $number ->
    [one] Patrón de mate: { $patterns }.
   *[other] Patrones de mate: { $patterns }.
}
coach-notes = Notas del entrenador:
commonest-wrong = { $times ->
    [one] La jugada fallida más frecuente fue { $played }, elegida una vez. Falla por { $line }.
   *[other] La jugada fallida más frecuente fue { $played }, elegida { $times } veces. Falla por { $line }.
}
commonest-wrong-because = { $times ->
    [one] La jugada fallida más frecuente fue { $played }, elegida una vez. Falla por { $line }: { $why }.
   *[other] La jugada fallida más frecuente fue { $played }, elegida { $times } veces. Falla por { $line }: { $why }.
}
nobody-took-part = No ha participado nadie.
stayed-unsolved = { $tried ->
    [one] Lo intentó un miembro y quedó sin resolver.
   *[other] Lo intentaron { $tried } miembros y quedó sin resolver.
}
solved-by = { $solved ->
    [one] La resolvió { $solved } de { $tried }: { $names }.
   *[other] La resolvieron { $solved } de { $tried }: { $names }.
}
names-and-more = { $names } y { $more } más
solution-is-out = La solución está publicada. Ya se puede hablar de todo: aquí no queda nada sellado.
question-is-closed = **La pregunta { $number } está cerrada**
nobody-answered = No respondió nadie.
answered-by = Respondieron: { $names }.
question-is-over = La pregunta está cerrada. Ya se puede hablar de ella.
# Answers that have no mark yet.
answers-wait = { $waiting ->
    [one] -# Una respuesta espera todavía la nota del entrenador.
   *[other] -# { $waiting } respuestas esperan todavía la nota del entrenador.
}
# An answer that its writer allows to be shown, and the coach's words beside it. $quote: the answer.
example-heading = **Pregunta { $number }: una respuesta de ejemplo**
example-of =
    > { $quote }
    -# { $name }
example-nameless =
    > { $quote }
    -# del grupo, sin nombre
example-words = El entrenador: { $words }
example-taken-back = **Pregunta { $number }**: la respuesta que estaba aquí se retiró.
