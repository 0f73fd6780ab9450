# Topic cards: what a coach says of a pattern besides its definition (naming.ftl), and how cards are laid out.

## What to look for at the board, by the pattern's name

look-arabian = A rook on the seventh rank and a knight that can reach the square two steps diagonally from the corner. Ask which knight's check drives the king into the corner, and whether anything can take the rook beside him.
look-anastasia = A knight on e7 against a castled king (or d7, e2, d2) and an h-pawn that can be torn away. See whether a queen sacrifice on the edge file lets a rook follow on it.
look-hook = A knight next to the king with a pawn behind it. Look for a rook that can reach the square the knight holds; begin with the check that makes the king step beside it.
look-vukovic = A king on the edge and a knight two squares in front of him. The square between the two is where a rook mates, if something besides the knight holds it there.
look-boden = A king castled long behind a missing c-pawn, or one that can be forced away. If one bishop already rakes the squares beside him, ask what the other needs to reach the crossing diagonal; often it is a queen sacrifice on c3 or c6.
look-balestra = A king whose flights lie on two of the queen's lines, such as a file and a diagonal. Look for a square from which she takes them all, and a diagonal on which the bishop can then give check.
look-legal = The enemy king at home, a bishop that aims at f7 or f2, two knights close to the middle. When a knight moves out of a pin although the queen is lost by it, count whether three checks of minor pieces are enough.
look-blackburne = Both bishops on long diagonals towards the castled king and a knight on g5 or g4. Look for a capture that opens the line to h7 or h2; the knight keeps the bishop alive there.
look-reti = A king crowded by his own pieces and a bishop with a rook or queen behind it. Look for a double check that leaves him one square, next to which the bishop can come back with the heavy piece behind it.
look-greco = A king in the corner, his g-pawn still in front and your bishop looking at the square beside him. Everything is about the h-file: which knight or queen can be given away to open it?
look-morphy = A rook on the file beside the king and a bishop behind an enemy piece on the long diagonal. Drive the king into the corner with the rook, then take what stands in the bishop's way.
look-pillsbury = The file of the castled king is open, and your bishop already takes the corner. A rook that comes to that file with check decides; whatever steps between can be taken.
look-opera = The king still in the middle, your bishop pinning or watching the square in front of him, a rook on the open file. Find out who guards the square beside the king, and draw that piece away.
look-mayet = Your bishop on the long diagonal and an open h-file. If you can check the king on that file, he has to go back, and the rook follows into the corner.
look-anderssen = A pawn or bishop of yours that has reached the square in front of the castled king and cannot be taken. Then ask how rook or queen gets to the edge file.
look-blind-swine = Two rooks on the seventh rank against a king hemmed in by his own rook. Take with check where the rooks hold each other, and see on which side he has no way back.
look-smothered = A king in the corner with pieces of his own on every side but one. A queen sacrifice on that square, held by the knight, makes his own rook close it; the knight does the rest.
look-suffocation = A bishop on the long diagonal against a castled king without a g-pawn. Look for the knight's check, and count before you give it whether the knight itself stands in the bishop's way.
look-corner = A king in the corner behind his own h-pawn, a rook on the g-file. Look where a knight can give check, and how the one piece that guards that square can be lured off.
look-damiano = A pawn that has come to the third rank in front of the king, and an open file at the edge. Bring the queen there with check: once she is next to him, the pawn holds her.
look-lolli = A pawn on f6 or h6 (f3, h3 from the other side) beside a weakened g-pawn. If the queen can get to the square next to it, see whether anything still guards the square in front of the king.
look-max-lange = The king has come up beside the corner, and your bishop stands on the seventh rank next to the first. Bring the queen in behind him: the bishop holds her and takes the way out.
look-dovetail = A king with two pieces of his own at right angles to each other. The square diagonally across from them is the one for the queen; make sure that something holds her there.
look-swallow-tail = A king with two pieces of his own diagonally behind him. Bring the queen face to face with him on a square that is held, and he has nothing left.
look-epaulette = A king on the edge between two pieces of his own. Look for the line straight in front of him: the queen needs a safe square there, two steps away or more.
look-double-bishop = Two bishops on neighbouring diagonals towards a king in the corner. If one already takes the square beside him, any check of the other on its long line may be mate.
look-ladder = Two rooks (or rook and queen) and an open board. Cut the king off on one line and give check on the next; only make sure that he cannot attack the nearer of the two.
look-back-rank = A king behind unmoved pawns, and a first rank that one piece alone guards. Count attackers and defenders of the square where you want to give check; one more attacker, or a guard that can be drawn away, is enough.
look-corridor = A king on a line that is closed on both sides, by the edge or by his own pieces. Look for any rook or queen that can give check along this line, and for the one square that might still be free.
look-kiss = A king with few squares and a square beside him that you attack twice. The queen comes there with check; ask each time what holds her.
look-double-check = A rook or bishop aimed at the king with a knight or another piece in between. When that piece moves with check as well, taking and stepping between help no longer: look only at the squares the king has left.
look-pawn = A king that has run into the open near your pawns. Before you bring another piece, see whether the next pawn's move is check and who takes the squares beside it.

## What tells two relatives apart, by their names in the order of the alphabet

apart-anastasia-arabian = In the Arabian mate the rook stands next to the cornered king, held by the knight. In Anastasia's mate the knight holds nothing: it takes squares of the next line, where one of the king's own pieces stands in his way.
apart-anastasia-corridor = In the corridor the king's own pieces or the edge leave him one square of a side at most. In Anastasia's mate one piece of his own is enough, for the knight takes the other squares of that side.
apart-anastasia-greco = The check comes down the edge in both. In Greco's mate the king is in the corner and a bishop takes the square beside him; in Anastasia's mate a knight takes the squares of the next line.
apart-anastasia-hook = In the hook the knight stands beside the king and holds the rook. In Anastasia's mate it is three lines away from him and takes squares only.
apart-anderssen-mayet = The mate comes from the corner next to the castled king in both. In Mayet's mate a bishop holds the rook from afar; in Anderssen's mate the pawn or bishop that holds it stands right in front of the king.
apart-anderssen-opera = In the Opera mate the rook stands next to the king but not in the corner, and a bishop on its diagonal holds it. In Anderssen's mate it stands in the corner, and what holds it stands right in front of the king.
apart-anderssen-pawn = In Anderssen's mate a pawn may hold the rook or queen that gives check. In the mate by a pawn the pawn gives the check itself.
apart-arabian-hook = A knight holds the rook in both. In the Arabian mate it stands two squares off on the corner's diagonal; in the hook it touches the king, and a pawn has to hold it.
apart-arabian-vukovic = In the Arabian mate the king is in the corner and the knight holds the rook. In Vuković's mate he is not, and the knight stands straight behind the rook, so that something else has to hold it.
apart-back-rank-corridor = Along the king's own first rank it is the back-rank mate; along any other rank, or a file, it is the corridor mate.
apart-back-rank-ladder = In the back-rank mate the king's own pieces keep him from leaving the first rank. In the ladder mate a second rook or queen takes the whole next line.
apart-balestra-boden = In both a bishop checks from a distance. In Balestra's mate the queen takes the other flights; in Boden's mate a second bishop does, on a diagonal that crosses the first.
apart-balestra-max-lange = Queen and bishop mate in both. In Balestra's mate the bishop checks and the queen stands off; in Max Lange's mate the queen checks from next to the king, and the bishop holds her.
apart-blackburne-boden = Both take two bishops. In Boden's mate the checking bishop keeps its distance and the two need no further help; in Blackburne's mate it stands next to the king, and a knight holds it there.
apart-blackburne-legal = In Blackburne's mate two bishops work, with a knight that holds the one that mates. In Legal's mate it is two knights and one bishop, and none of them could be missed.
apart-blackburne-reti = A bishop mates from next to the king in both. In Blackburne's mate a knight holds it; in Réti's mate a rook or queen does, and four or more of the king's own pieces are in his way.
apart-blind-swine-ladder = In the blind swine mate the checking rook stands right in front of the king, and the other one holds it. In the ladder mate the check comes along the edge from a distance, and the other piece takes the next line.
apart-boden-double-bishop = In Boden's mate the two bishops' diagonals cross; in the mate by two bishops they run side by side.
apart-corner-morphy = A heavy piece takes the line beside the cornered king in both. A knight gives check in the corner mate, a bishop on the long diagonal in Morphy's mate.
apart-corner-smothered = In the smothered mate the king's own pieces stand on every square around him. In the corner mate the line beside him is free of them, and a rook or queen takes it.
apart-corner-suffocation = A knight gives check in both. What is left to the king a rook or queen takes along a line in the corner mate, a bishop along a diagonal in the suffocation mate.
apart-corridor-greco = Greco's mate is a corridor of its own: the king in the corner, the check down the edge file, and a bishop on the one square that is left. Without that bishop it is simply a corridor mate.
apart-corridor-ladder = In the corridor mate the edge or the king's own pieces close both sides of the line. In the ladder mate a second rook or queen takes the line beside it.
apart-damiano-lolli = A pawn holds the queen in both. In Damiano's mate the pawn stands straight ahead of the king and the queen to one side; in Lolli's mate the queen stands in front of the king and the pawn to one side.
apart-double-check-reti = A double check often comes before Réti's mate, but at its end the bishop alone gives check. In the mate by double check it is the last move that checks twice.
apart-double-check-smothered = In the smothered mate one knight gives check and the king's own pieces stand on every square around him. In the mate by double check two pieces give it, and squares around him may be free of his own pieces, only not safe.
apart-dovetail-kiss = In the dovetail mate the king's own pieces stand on the two squares beside him that the queen does not reach. In a plain kiss of the queen at least one of those squares is taken by another piece or lies beyond the edge.
apart-dovetail-swallow-tail = In the dovetail mate the queen touches the king at a corner of his square; in the swallow's tail she stands face to face with him. His own pieces stand on the two squares that she cannot reach from there.
apart-epaulette-swallow-tail = In the swallow's tail the queen stands next to the king and his own pieces diagonally behind him. In the epaulette mate he is on the edge, the pieces stand beside him, and the check comes from a distance.
apart-greco-morphy = The king is in the corner, with a bishop against him, in both. In Greco's mate the rook or queen gives check down the edge file; in Morphy's mate the bishop gives it along the long diagonal.
apart-hook-vukovic = In the hook the knight stands beside the king and holds the rook. In Vuković's mate it stands behind the rook and takes the squares on the king's left and right.
apart-kiss-lolli = In Lolli's mate a pawn holds the queen in front of the castled king. Where any other piece holds her, and no other name fits, it is a kiss of the queen.
apart-kiss-swallow-tail = In the swallow's tail the king's own pieces stand on the two squares behind him that the queen does not reach. In a plain kiss of the queen at least one of those squares is taken by another piece or lies beyond the edge.
apart-lolli-max-lange = In Lolli's mate the queen comes from in front and a pawn holds her. In Max Lange's mate she comes from behind, on the king's first rank, and a bishop next to her holds her.
apart-mayet-opera = A bishop holds the rook and takes the square in front of the king in both. In Mayet's mate the rook stands in the corner; in the Opera mate it does not, and the king's own pieces are in his way.
apart-morphy-pillsbury = Rook and bishop change places: in Morphy's mate the bishop gives check and the rook takes the file beside the king; in Pillsbury's mate the rook gives check and the bishop takes the corner.
apart-smothered-suffocation = In the smothered mate there is no square to take: the king's own pieces stand on all of them. In the suffocation mate a bishop takes those that they leave.

## The parts of a card

card-what-to-look-for = What to look for
card-relatives = Easily taken for it
card-example = Example
card-source = { $source ->
    [renaud-kahn] Name and picture: Renaud and Kahn, “The Art of the Checkmate”. The words and the example are our own.
    [vukovic] Name and picture: Vuković, “The Art of Attack in Chess”. The words and the example are our own.
   *[trade] Name and picture are what players and coaches say. The words and the example are our own.
}
card-by-coach = Written by your coach.
card-example-solved = Example: { $line }
card-to-read = { $definition }

    What to look for: { $look }
