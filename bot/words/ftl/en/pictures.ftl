# What stands in pictures, and the words that replace a picture for who cannot see it.

## A position

alt-side = { $side-name }: { $pieces }.
# Part of the sentence above. $squares: such as "d1 and d2".
alt-pieces = { $piece ->
    [king] { $number ->
        [one] king { $squares }
       *[other] kings { $squares }
    }
    [queen] { $number ->
        [one] queen { $squares }
       *[other] queens { $squares }
    }
    [rook] { $number ->
        [one] rook { $squares }
       *[other] rooks { $squares }
    }
    [bishop] { $number ->
        [one] bishop { $squares }
       *[other] bishops { $squares }
    }
    [knight] { $number ->
        [one] knight { $squares }
       *[other] knights { $squares }
    }
   *[pawn] { $number ->
        [one] pawn { $squares }
       *[other] pawns { $squares }
    }
}
alt-castles = { $wings ->
    [both] { $side-name } may castle on both sides.
    [short] { $side-name } may castle on the king's side.
   *[long] { $side-name } may castle on the queen's side.
}
alt-en-passant = En passant is possible on { $on }.
alt-to-move = { $side-name } to move.
alt-last-move = Last move { $from } to { $to }.

## What is pointed out

alt-refutation = Arrow for the refutation: { $from } to { $to }.
alt-steps = Numbered arrows: { $steps }.
alt-step = { $number } from { $from } to { $to }
alt-open = Open flights: { $squares }.
alt-guarded = Guarded flights: { $flights }.
alt-flight = { $on }
# $guards: such as "rook d8 and queen e7".
alt-flight-by = { $on } by { $guards }
alt-guard = { $piece-name } { $on }
alt-blocked = Blocked by own pieces: { $squares }.
alt-guards = { $piece ->
    [king] King { $from } guards { $to }.
    [queen] Queen { $from } guards { $to }.
    [rook] Rook { $from } guards { $to }.
    [bishop] Bishop { $from } guards { $to }.
    [knight] Knight { $from } guards { $to }.
    [pawn] Pawn { $from } guards { $to }.
   *[any] { $from } guards { $to }.
}
alt-marked = Marked: { $squares }.

# Beside each sign under the board.
legend-last-move = last move
legend-refutation = refutation
legend-steps = moves in order
legend-open = open flight
legend-guarded = guarded flight
legend-blocked = blocked by own piece
legend-guard = guard
legend-square = marked square

## A reveal, and a line move by move

picture-heading = No. { $number }
picture-heading-pattern = No. { $number } · { $patterns }
picture-example = Example: { $pattern }
picture-example-topic = Example: { $topic }
reveal-more = and more
alt-heading = { $heading }.
alt-final = Final position.
alt-solution = Solution: { $line }.
strip-to-move = { $side-name } to move
alt-strip = The line move by move. From:
alt-moves = Moves: { $line }.

## Charts

chart-participation = Who took part, post by post
chart-solved = Solved, post by post
chart-mastery = Topics, weakest first
chart-wrong = Position { $number }: first moves that failed
chart-nothing = Nothing yet.
# Beside the colours; all of a chart's on one line.
chart-key-solved = solved
chart-key-took-part = took part
chart-key-mean = took part, mean of the week
chart-key-interval = solved, and what so few replies leave open (95 %)
chart-key-first = at the first try
chart-key-later = solved later
chart-key-unsolved = not solved
# Figures at the end of a row.
chart-of = { $part } of { $whole }
chart-share = { $percent } % of { $whole }
chart-percent = { $percent } %
chart-members = { $number ->
    [one] { $number } member
   *[other] { $number } members
}
chart-week = { $first ->
    [none] { $from }–{ $to } { $last }
   *[other] { $from } { $first }–{ $to } { $last }
}

# The same in words, a row each.
alt-chart-nothing = { $title }: nothing yet.
alt-chart-more = { $more } more in the table
# The days of the week follow.
alt-week = { $week }, { $mean-text } members a post:
alt-day = on { $day }, { $tried } took part and { $solved } solved
alt-rate = { $label }: { $solved } of { $tried } solved, { $percent } % (likely { $low } to { $high } %)
alt-nobody-tried = { $label }: nobody tried
alt-mastery = { $topic }: { $solved } of { $tried } solved, { $percent } %, { $first } at the first try
alt-wrong = { $number ->
    [one] { $line }, { $number } member
   *[other] { $line }, { $number } members
}

## Sheets to print

sheet-name = Name: ______________________
sheet-solutions = Solutions
alt-sheet-item = { $number }. { $task }:
sheet-question = Question
sheet-to-be-read = To be read
