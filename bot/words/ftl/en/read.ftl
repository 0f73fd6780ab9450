# What is wrong with files and positions: statements that stand behind a colon, so that they begin with a small
# letter and have no full stop. $written, $tag and $code are quoted from the file.

# In a report. $file, $row: where; $what: one of the statements below.
unreadable = { $file }, line { $row }: { $what }
odd-row = line { $row }: { $what }

## The file as a whole

file-over-limit = the file has { $size } MB; the most that is read at once is { $most } MB, so split it
file-lacks-mark = the file looks like UTF-16 without its mark; save it as UTF-8
file-is-no-text = the file is not text (it holds zero bytes); give a text file in EPD, PGN or FEN
file-changes-encoding = the file begins as UTF-16 but goes on as something else; save it as UTF-8
file-holds-nothing = the file is empty; it should hold positions as EPD or FEN lines, or games in PGN
file-begins-strangely = "{ $written }" begins neither a FEN or EPD line nor a PGN game; a position starts like "8/8/8/8/8/5k2/5p2/5K2 w - -", a game like [Event "..."]
file-holds-positions = this file holds positions, not games; give a file of games in PGN
file-holds-games = the file holds { $games } whole games, each from the initial position, and no position to check; positions are looked for in whole games by `sealed-move find`, whose output can be read here

## A line

line-too-long = the line has more than { $most } characters; one line holds one position
line-lost = { $what }
read-as-windows = this line is not UTF-8; it was read as Windows-1252
nul-byte = { $before ->
    [0] the line begins with a NUL byte, which is no text; write the line again
    [one] the line holds a NUL byte after { $before } other, which is no text; write the line again
   *[other] the line holds a NUL byte after { $before } others, which is no text; write the line again
}
strange-byte = { $before ->
    [0] the line begins with the byte { $byte }, which is text neither in UTF-8 nor in Windows-1252; write the line again, best as UTF-8
    [one] the line holds the byte { $byte } after { $before } other, which is text neither in UTF-8 nor in Windows-1252; write the line again, best as UTF-8
   *[other] the line holds the byte { $byte } after { $before } others, which is text neither in UTF-8 nor in Windows-1252; write the line again, best as UTF-8
}
broken-character = the line holds a broken character of UTF-16; write the line again, best as UTF-8

## A game: its tags

tag-unread = this tag cannot be read: { $written }; a tag is written [Name "value"]
tag-beside-moves = this game has moves and a tag { $tag }, which stands in a game without moves; leave out the one or the other
tag-empty = the tag { $tag } is empty; write its words, such as [{ $tag } "What does White want?"]
question-lacks-words = the tag Task "?" makes this game a question, and there are no words to it; write them as a tag such as [Question "What does White want?"], or as a comment
game-from-the-start = this game starts from the initial position; give a position to check with a tag such as [FEN "8/8/8/8/8/5k2/5p2/5K2 w - - 0 1"]; positions are looked for in whole games by `sealed-move find`, whose output can be read here
# $why: stipulation-error
tag-no-task = tag { $tag }: { $why }
stipulation-error = "{ $written }" is not a task; write #1 to #{ $most } for a mate, + for a win or = for a draw
# $why: a statement on the position, below
tag-no-position = tag FEN: { $why }

## A lesson: a game for each step

lesson-too-long = a lesson has at most { $most } steps, and this is one more; make two lessons of it
# $why: stipulation-error
stop-no-task = the mark of the stop: { $why }
lead-too-long = the words, and the moves that are shown before the stop or as an example, have more than { $most } characters together, which go out at once; make two steps of them
part-too-long = these words have more than { $most } characters, which go out at once; shorten them, or make two steps of them
step-empty = this step has neither words nor moves; write what it shows, or take it out
step-asks-nothing = this step is to be solved, and nothing is asked in it; give its task, or enter the move that is asked for

## A game: its moves. $line is a move with its number.

game-unread = the game cannot be read
null-move = the main line holds a null move (--); put the idea in a comment
move-not-legal = move { $line } is not legal here; check it, the moves before it, and the FEN
move-not-clear = move { $line } can be more than one move; add the file or rank the piece comes from
game-too-long = the game has more than { $most } moves, variations counted; split it
moves-too-long = the line is longer than { $most } half-moves
variation-too-soon = a variation stands before any move; it belongs behind the move it replaces
bracket-not-opened = this closing bracket has no opening one
bracket-not-closed = this bracket is never closed
comment-not-closed = this comment is never closed; end it with a closing brace
brace-not-opened = this closing brace ends no comment
glyph-unknown = "{ $written }" is no annotation glyph; they go from $0 to $255
move-unread = "{ $written }" cannot be read as a move; remarks belong between braces

## An EPD record. $code is the operation.

operation-wanted = "{ $written }" stands where an EPD operation should begin, such as bm, dm or id; each ends with a semicolon
quotation-not-closed = the text after { $code } has no closing quotation mark
operation-lacks-move = { $code } names no move; write it like "{ $code } Nf3;"
length-wanted = dm wants the number of moves to mate in, 1 to { $most }, such as "dm 3;"
operation-no-task = task: { $why }
question-wants-words = question wants its words, such as question "What does White want?";
operand-unread = { $code }: "{ $written }" cannot be read as a move; write it like Nf3, exd5 or e8=Q
operand-not-legal = { $code }: "{ $written }" is not a legal move in this position
operand-not-clear = { $code }: "{ $written }" can be more than one move; add the file or rank the piece comes from
no-position-here = { $why }

## A position

not-a-fen = this is not a FEN ("{ $written }"); a FEN has the eight ranks, then w or b, castling and en passant, such as "8/8/8/8/8/5k2/5p2/5K2 w - -"
fen-ranks = { $ranks ->
    [one] the board of the FEN has { $ranks } rank, and it needs eight, parted by /; look for one that is missing, doubled or not parted
   *[other] the board of the FEN has { $ranks } ranks, and it needs eight, parted by /; look for one that is missing, doubled or not parted
}
fen-squares = { $squares ->
    [one] rank { $rank } of the FEN, "{ $written }", has { $squares } square, and it needs eight; count its pieces and the empty squares between them
   *[other] rank { $rank } of the FEN, "{ $written }", has { $squares } squares, and it needs eight; count its pieces and the empty squares between them
}
fen-strange = rank { $rank } of the FEN has "{ $found }" on { $square }; a piece is one of KQRBNP (White) or kqrbnp (Black), and 1 to 8 are empty squares
fen-strange-after = rank { $rank } of the FEN has "{ $found }" after { $squares } squares; a piece is one of KQRBNP (White) or kqrbnp (Black), and 1 to 8 are empty squares
fen-turn = field 2 of the FEN, who is to move, is "{ $written }"; write w or b
fen-castling = field 3 of the FEN, castling, is "{ $written }"; write those of KQkq that are possible, or -
fen-en-passant = field 4 of the FEN, en passant, is "{ $written }"; write the square that a pawn has just passed over, such as e3 or d6, or -
fen-half-moves = field 5 of the FEN, half-moves since a capture or a pawn's move, is "{ $written }"; write a number such as 0
fen-move-number = field 6 of the FEN, the number of the move, is "{ $written }"; write a number such as 1
fen-surplus = "{ $written }" stands behind the six fields of the FEN; take it away

board-empty = the board is empty; put the pieces in the first field of the FEN
no-kings = there are no kings; each side needs exactly one king
no-king = { $side ->
    [white] there is no white king; each side needs exactly one king
   *[black] there is no black king; each side needs exactly one king
}
many-kings = { $side ->
    [white] there is more than one white king; each side needs exactly one king
   *[black] there is more than one black king; each side needs exactly one king
}
pawn-on-last-rank = a pawn stands on the first or last rank ({ $squares }); move it or promote it
other-side-in-check = the side not to move is in check; check who is to move
both-in-check = the side not to move is in check, and so is the side to move; check who is to move
rules-do-not-apply = the rules cannot be applied to this position

# Oddities of a position that can be read.
castling-rights-dropped = castling rights without king and rook at home were dropped
en-passant-dropped = the en passant square fits no double step of a pawn and was dropped
too-many-pieces = more pieces than promotions can make; the position cannot arise in play
impossible-check = no last move can have given this check; the position cannot arise in play

## The coach's words. $line is the move that they tell; $words are quoted.

words-held = the words meant for the post tell a move ({ $line }) and are held for the reveal: "{ $words }"; write [post] before them to send them with the post all the same
long-words-held = the words meant for the post are more than { $most } characters; these are held for the reveal: "{ $words }"
words-cut = there are more words than are kept for a reveal ({ $most } characters on the position and { $beside } beside the moves); the last ones are left out
