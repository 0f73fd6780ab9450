# Hints: the first names a piece, the second the idea in up to three sentences, the third gives the move.

look-at = Look at your { $piece-name }.
look-at-on = Look at your { $piece-name } on { $on }.

check-gives-up = It begins with a check that gives something up.
check-captures = It begins with a capture that gives check.
check-plain = It begins with a check.
quiet-gives-up = It begins with a quiet move that gives something up.
capture-no-check = It begins with a capture, and it is no check.
quiet-move = It begins with a quiet move: no check, no capture.
takes-flights = It takes { $squares } from the king.
picture-at-the-end = The picture at the end: { $pattern }.

first-move-is = The first move is { $line }.
next-move-is = The next move is { $line }.
