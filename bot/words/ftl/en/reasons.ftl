# Why a move fails, or is none: statements that stand behind a colon or a comma, so that they begin
# with a small letter and have no full stop.

## A mate that is prevented. "It" is the wrong move or the defence, as the sentence goes.

mates-in-the-end = { $why }; it mates in the end, but only in { $moves-word }
mates-too-late = it mates too, but only in { $moves-word }
stalemate = it is stalemate, for { $side-name } is not in check and has no move
mates-first = that is mate, and it is { $side-name } who gives it

# $by takes $what on $on; $mover is yes where that is the piece that just moved.
act = { $mover ->
    [yes] { $what ->
        [queen] the { $by-name } takes the queen
       *[other] the { $by-name } takes it
    }
   *[no] the { $by-name } takes the { $what-name } on { $on }
}
king-takes = { $mover ->
    [yes] { $what ->
        [queen] the king takes the queen, for none of your pieces guards { $on }
       *[other] the king takes it, for none of your pieces guards { $on }
    }
   *[no] the king takes the { $what-name } on { $on }, for none of your pieces guards { $on }
}
takes = { act }
takes-for-nothing = { act } for nothing
takes-unanswered = { act }, and nothing takes back
takes-pinned = { act }, and your { $pinned-name } on { $stands } is pinned and may not take back
takes-guarded = { act }, and your king may not take back on a guarded square
takes-no-mate = { act }, and taking back is not mate
takes-no-mate-in-time = { act }, and taking back does not mate in time

king-gets-out = the king gets out to { $to }, which none of your pieces guards
king-gets-out-guard-moved = the king gets out to { $to }, which your { $guard-name } guarded until it moved
king-gets-out-guard-shut = the king gets out to { $to }, for the move shuts out your { $guard-name } on { $stands } that guarded it
king-castles-out = the king castles out of the attack

gives-check = it gives check, and { $side-name } has to see to that first
comes-with-check = it comes with check
steps-between = the { $by-name } steps between on { $on }
steps-between-no-mate = the { $by-name } steps between on { $on }, and taking it is not mate
threatens-nothing = it threatens no mate, so { $side-name } has time
threatens-nothing-in = it does not threaten mate in { $moves-word }, so { $side-name } has time
now-guards = the { $by-name } now guards { $square }, where the mate was threatened
clears-for-king = it clears { $square } for the king
king-will-have = the king will have { $square } to go to when you carry out the threat
shuts-line = the { $by-name } on { $on } shuts the line of your threat
pins-your = it pins your { $what-name } on { $on }
meets-threat = that meets the threat, and there is no other mate
meets-threat-in = that meets the threat, and there is no other mate in { $moves-word }
no-check = it gives no check, so { $side-name } is not mated
back-rank-again = the back rank is defended again
back-rank-stays = the back rank stays defended

## A win or a draw that is missed.

you-cannot-mate = what you have left cannot mate
cannot-mate = what { $side-name } has left cannot mate
mates-in = { $side-name } mates in { $moves-word }
is-stalemated = { $side-name } is stalemated
checks-for-ever = { $side-name } gives check for ever
takes-it = the { $by-name } takes it
takes-pawn-with-check = the { $by-name } takes a pawn with check
costs = that costs { $side-name } { $lost }
costs-for = that costs { $side-name } { $lost } for { $won }
exchange-is-even = the exchange is even, so nothing is won
still-behind = { $side-name } is still behind after that
material-level = the material is level after that
then-falls = then the { $what-name } on { $on } falls
attacks-at-once = it attacks { $targets } at once
pawn-becomes = the pawn gets through and becomes a { $piece-name }
no-more-checks = after that { $side-name } has no check left
kings-opposed = the kings face each other, and it is { $side-name } who has to give way
steps-out = the { $by-name } steps out of the attack
takes-pawn-and-steps-out = the { $by-name } takes a pawn and steps out of the attack

# $depth is in half-moves; $value in pawns, with its sign.
search-stands = judged by search, { $depth } half-moves deep, { $side-name } stands at { $value }
search-shallow = the search came only { $depth } half-moves deep

# Part of a list: what is lost or won.
material = { $piece ->
    [queen] { $number ->
        [1] the queen
       *[other] { $number-word } queens
    }
   *[other] { $number ->
        [1] a { $piece-name }
       *[other] { $number-word } { $piece-name }s
    }
}
# Part of a list: what is attacked.
target = the { $piece-name } on { $on }

## A move that is none.

their-move = that would be { $theirs-name }'s move, and it is { $side-name }'s turn
stands-there = the { $piece-name } is on { $on } already
own-piece-there = { $square } is taken by { $side-name }'s own { $own-name }
in-the-way = the { $stone-name } on { $at } is in the way of the { $piece-name } on { $from }
does-not-reach = the { $piece-name } on { $from } does not reach { $to }
none-reaches = no { $piece-name } reaches { $to }
none-takes = no { $piece-name } can take a { $victim-name } here
no-pawn-takes-on-file = no pawn can take on the { $file }-file
no-en-passant = no pawn can take en passant here
no-promotion = no pawn can promote here
none-takes-there = no { $piece-name } can take there
nothing-on = there is nothing on { $square }
not-yours = the { $piece-name } on { $on } is { $theirs-name }'s, and it is { $side-name }'s move
other-kind = the piece on { $on } is a { $piece-name }, not a { $named-name }
has-none = { $side-name } has no { $piece-name }
has-none-on-file = { $side-name } has no { $piece-name } on the { $file }-file
has-none-on-rank = { $side-name } has no { $piece-name } on rank { $rank }
not-possible = it is not possible
square-guarded = the { $piece-name } on { $from } guards { $square }
king-in-check-on = the king would be in check on { $square }
double-check = the king is in double check and has to move
in-check = { $side-name }'s king is in check from the { $piece-name } on { $from }, and that does not meet it
pinned = the { $piece-name } on { $on } is pinned to the king by the { $by-name } on { $from }
no-new-king = a pawn cannot become a king
not-last-rank = a pawn promotes on the last rank only, and { $square } is not on it
leaves-king-in-check = it would leave the king in check
pawn-takes-elsewhere = a pawn of the { $file }-file cannot take on { $to }
nothing-to-take = there is nothing to take on { $to }
no-pawn-of-file = no pawn of the { $file }-file reaches { $to }
pawn-blocked = the pawn on { $from } is blocked by the { $stone-name } on { $at }
no-pawn-reaches = no pawn of { $side-name }'s can go to { $to }
neither-castles = short castling fails since { $short }, long since { $long }
may-not-castle = { $wing ->
    [long] { $side-name } may not castle long in this position
   *[short] { $side-name } may not castle short in this position
}
castling-out-of-check = the king is in check, and one cannot castle out of check
castling-blocked = the { $stone-name } on { $at } stands between king and rook
castling-guarded = the king would have to pass or reach { $square }, which the { $piece-name } on { $from } guards
castling-not-possible = castling is not possible
