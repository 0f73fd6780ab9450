# What is told of a mate on the board, and what makes it one of a pattern.

no-mate = This is no mate: the side to move still has a move, or is not in check.
mate-unnamed = Mate, by no pattern with a name.
mate-named = { $pattern }.
mate-named-also = { $pattern }, and also: { $others }.
checks-king = The { $piece-name } on { $on } gives check.
checks-king-and-guards = The { $piece-name } on { $on } gives check and takes { $flights }.
guards-flights = The { $piece-name } on { $on } takes { $flights }.
# $squares: beside the king, such as "f7, g7 and h7".
own-men-block = { $number ->
    [one] The king's own piece blocks { $squares }.
   *[other] The king's own pieces block { $squares }.
}

## By the pattern's name

definition-arabian = A rook mates the king in the corner from the edge square next to him. A knight two squares off on the corner's diagonal holds the rook and takes the last flight.
definition-anastasia = A rook or queen mates along the edge. On the next line one of the king's own pieces is in his way, and a knight, two squares beyond that piece, takes the other squares of the line.
definition-hook = A rook mates from the square next to the king. A knight beside the king holds the rook, a pawn holds the knight, and one of the king's own pieces blocks him.
definition-vukovic = The king is on the edge, the rook stands protected in front of him and mates, and the knight straight behind the rook takes the squares on both sides of the king.
definition-boden = Two bishops mate on crossing diagonals: one checks, the other takes the flights that are left, and the king's own pieces block the rest.
definition-balestra = A bishop mates from a distance, and the queen alone takes the two or more flights that it leaves.
definition-legal = Two knights and a bishop, all three needed and nobody else, mate a king who has hardly left home and is hemmed in by his own pieces.
definition-blackburne = A bishop mates from the square diagonally in front of the king, held there by a knight, while the other bishop rakes the squares beside it.
definition-reti = A bishop mates from the square next to the king, held by a rook or queen along its line, while four or more of the king's own pieces stand in his way.
definition-greco = A rook or queen mates the cornered king down the edge file. A bishop takes the square beside him on the first rank, and his own piece blocks the square between.
definition-morphy = A bishop mates the cornered king along the long diagonal. A rook takes the file beside him, and his own piece stands in front of him.
definition-pillsbury = A rook mates down the file of the castled king, and a bishop takes the corner beside him, where his own piece leaves no other way out.
definition-opera = A rook mates on the first rank from next to the king. A bishop holds it and on the same diagonal takes the square in front of the king; his own pieces do the rest.
definition-mayet = A rook mates in the corner next to the castled king, held from afar by a bishop that also takes the square in front of him.
definition-anderssen = A rook or queen mates in the corner next to the castled king, held by a pawn or bishop that stands safely in front of him.
definition-blind-swine = Two rooks on the second rank from the king's side of the board: one mates in front of the king, the other protects it.
definition-smothered = A knight mates a king who cannot move at all, because his own pieces stand on every square around him.
definition-suffocation = A knight mates the king on the edge, a bishop takes the flights his own pieces leave him, and they block the rest.
definition-corner = A knight mates the king in the corner. A rook or queen takes the line beside him, and his own piece blocks the other side.
definition-damiano = The queen mates from diagonally in front of the king on his first rank, held by a pawn two squares straight ahead of him, which also takes the way out on the other side.
definition-lolli = The queen breaks into the castled position and mates in front of the king, held by a pawn that has come as far as his third rank.
definition-max-lange = The king has stepped up beside the corner. The queen mates from behind him on his first rank, held by a bishop next to her that also takes the way out.
definition-dovetail = The queen mates from diagonally next to the king. The only two squares around him that she does not reach hold his own pieces. Also called Cozio's mate.
definition-swallow-tail = The queen mates face to face with the king. The only two squares around him that she does not reach, behind him to the left and right, hold his own pieces. Also called the guéridon.
definition-epaulette = The king on the edge has his own pieces on both shoulders and is mated from straight in front by a queen or rook at a distance.
definition-double-bishop = Two bishops mate side by side on parallel diagonals: one checks, the other takes the flight that is left, and the king's own pieces block the rest.
definition-ladder = Two heavy pieces on neighbouring lines: one checks the king along the edge, the other takes the whole line next to it.
definition-back-rank = A rook or queen mates along the king's own first rank, because his own pawns or pieces in front of him leave him no way up: at most one of those squares is free of them, and that one is taken.
definition-corridor = A rook or queen mates along a file or a rank that is not the king's first. On each side the edge or his own pieces close the corridor: at most one square of a side is free of them, and that one is taken.
definition-kiss = The queen mates from the square next to the king, protected by another piece.
definition-double-check = Two pieces give check at once, and the king, who alone could answer, has no square.
definition-pawn = The mating check comes from a pawn.
