# Tipps: der erste nennt eine Figur, der zweite die Idee in bis zu drei Sätzen, der dritte den Zug.

look-at = Sieh dir { $piece-your-acc } an.
look-at-on = Sieh dir { $piece-your-acc } auf { $on } an.

check-gives-up = Es beginnt mit einem Schach, das etwas opfert.
check-captures = Es beginnt mit einem Schlagzug, der Schach bietet.
check-plain = Es beginnt mit einem Schach.
quiet-gives-up = Es beginnt mit einem stillen Zug, der etwas opfert.
capture-no-check = Es beginnt mit einem Schlagzug ohne Schach.
quiet-move = Es beginnt mit einem stillen Zug: kein Schach, kein Schlagen.
takes-flights = Er nimmt dem König { $squares }.
picture-at-the-end = Das Bild am Ende: { $pattern }.

first-move-is = Der erste Zug ist { $line }.
next-move-is = Der nächste Zug ist { $line }.
