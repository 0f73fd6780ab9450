# What the other files use: numbers, lists, pieces, sides.

language = English
decimal-sign = .
thousands-sign = ,
# Numbers with at least so many digits are parted.
thousands-from = 4

# Names with a space between, from Monday and from January.
weekday-names = Monday Tuesday Wednesday Thursday Friday Saturday Sunday
month-names = January February March April May June July August September October November December
month-names-short = Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec
# A moment of these weeks; one of any year; a day.
moment = { $time } on { $weekday }, { $day } { $month }
dated = { $time } on { $day } { $month } { $year }
day = { $day } { $month }
date = { $day } { $month } { $year }
# King, queen, rook, bishop, knight, as moves are written.
piece-letters = KQRBN

# $n is a whole number.
number = { $n ->
    [0] no
    [1] one
    [2] two
    [3] three
    [4] four
    [5] five
    [6] six
    [7] seven
    [8] eight
    [9] nine
    [10] ten
   *[other] { $n }
}

# Each puts $first and $next together. All but the last two of a list are joined by list-comma.
list-comma = { $first }, { $next }
list-and = { $first } and { $next }
list-or = { $first } or { $next }
# Two statements.
list-why = { $first }, and { $next }

# What a message can say of a piece, as $NAME-name and so on.
piece-pawn = pawn
    .name = pawn
piece-knight = knight
    .name = knight
piece-bishop = bishop
    .name = bishop
piece-rook = rook
    .name = rook
piece-queen = queen
    .name = queen
piece-king = king
    .name = king
# Where it is not said which piece.
piece-any = piece
    .name = piece

side-white = White
    .name = White
side-black = Black
    .name = Black
