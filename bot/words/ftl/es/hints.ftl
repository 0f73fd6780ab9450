# Pistas: la primera nombra una pieza, la segunda la idea en hasta tres frases, la tercera la jugada.

look-at = Mira { $piece-your }.
look-at-on = Mira { $piece-your } de { $on }.

check-gives-up = Empieza con un jaque que entrega algo.
check-captures = Empieza con una captura que da jaque.
check-plain = Empieza con un jaque.
quiet-gives-up = Empieza con una jugada tranquila que entrega algo.
capture-no-check = Empieza con una captura que no es jaque.
quiet-move = Empieza con una jugada tranquila: ni jaque ni captura.
takes-flights = Le quita { $squares } al rey.
picture-at-the-end = La imagen final: { $pattern }.

first-move-is = La primera jugada es { $line }.
next-move-is = La jugada siguiente es { $line }.
