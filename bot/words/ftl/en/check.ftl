# What a check finds. Its message is made of whole sentences; what stands under it as a note is a statement behind a
# colon, which begins with a small letter and has no full stop.

## The message

mated-already = The side to move is already mated; check who is to move.
stalemated-already = The side to move has no move: it is stalemate. Check who is to move.
no-move-left = The side to move has no move; check who is to move.

sooner-mate = There is a mate in { $moves }, sooner than the { $asked } asked for: { $line }. Set the task to #{ $moves }, or change the position.
several-mates = { $number } keys mate in { $moves }: { $keys }. Change the position so that one remains, or accept them all.
no-mate-in = { $moves ->
    [1] There is no mate in one move.
   *[other] There is no mate in { $moves } moves or fewer.
}
# $whose: why the move $first is looked at; $reply is the defence, the first of $number that hold.
holds-against = { $whose ->
    [promised] { $number ->
        [1] After the promised { $first }, { $reply } is the only defence that holds.
       *[other] After the promised { $first }, { $reply } holds ({ $number } defences do).
    }
    [try] { $number ->
        [1] After the try { $first }, { $reply } is the only defence that holds.
       *[other] After the try { $first }, { $reply } holds ({ $number } defences do).
    }
   *[any] { $number ->
        [1] After { $first }, { $reply } is the only defence that holds.
       *[other] After { $first }, { $reply } holds ({ $number } defences do).
    }
}
leaves-stalemate = { $whose ->
    [promised] After the promised { $first } it is stalemate.
    [try] After the try { $first } it is stalemate.
   *[any] After { $first } it is stalemate.
}
is-no-mate = { $whose ->
    [promised] After the promised { $first } it is not mate.
    [try] After the try { $first } it is not mate.
   *[any] After { $first } it is not mate.
}
longer-mate = There is a mate in { $moves }, by { $keys }.
more-untold = The time or work allowed ran out before more could be told.
# $number moves are promised, $others mate.
promise-no-mate = { $number ->
    [one] { $others ->
        [one] The file promises { $promised }, which does not mate in { $moves }; { $keys } does.
       *[other] The file promises { $promised }, which does not mate in { $moves }; { $keys } do.
    }
   *[other] { $others ->
        [one] The file promises { $promised }, which do not mate in { $moves }; { $keys } does.
       *[other] The file promises { $promised }, which do not mate in { $moves }; { $keys } do.
    }
}
avoided-mates = { $number ->
    [one] The file says to avoid { $avoided }, which mates in { $moves }.
   *[other] The file says to avoid { $avoided }, which mate in { $moves }.
}
variations-doubtful = Not all is right in the variations of the file: see the warnings.
variations-hold = { $depth ->
    [none] The { $number } lines of the file hold.
   *[other] The { $number } lines of the file hold, judged at depth { $depth }.
}
variations-mate = { $more ->
    [0] It is proved that mate follows by force after { $lines }.
    [one] It is proved that mate follows by force after { $lines }, and in { $more } more line.
   *[other] It is proved that mate follows by force after { $lines }, and in { $more } more lines.
}

## The message, where a mate is not settled

# $task is written with its sign, such as #3.
mate-unsettled = The time or work allowed ran out before { $task } was settled.
nothing-proved-yet = Nothing is proved yet.
mate-proved = So far it is proved that { $line } mates in { $moves } and that there is no sooner mate.
only-key-without-line = It is the only key, but its main line is not known yet.
other-keys-without-line = { $number ->
    [one] The other key is { $keys }, but the main line is not known yet.
   *[other] The other keys are { $keys }, but the main line is not known yet.
}
not-only-key = { $number ->
    [one] It is not the only key: { $keys } mates in { $moves } too.
   *[other] It is not the only key: { $keys } mate in { $moves } too.
}
only-key-open = Whether it is the only key is not settled.
# $failed of the first moves fail; $open are named, and $more are not.
first-moves-open = { $more ->
    [0] { $failed ->
        [one] Of the other first moves { $failed } is proved to fail, and it is open whether these mate: { $open }.
       *[other] Of the other first moves { $failed } are proved to fail, and it is open whether these mate: { $open }.
    }
   *[other] { $failed ->
        [one] Of the other first moves { $failed } is proved to fail, and it is open whether these mate: { $open } and { $more } more.
       *[other] Of the other first moves { $failed } are proved to fail, and it is open whether these mate: { $open } and { $more } more.
    }
}
no-mate-proved = { $moves ->
    [1] So far it is proved that there is no mate in one move.
   *[other] So far it is proved that there is no mate in { $moves } moves or fewer.
}
first-moves-fail = { $failed ->
    [one] Of the { $all } first moves { $failed } is proved not to mate in { $moves } either.
   *[other] Of the { $all } first moves { $failed } are proved not to mate in { $moves } either.
}
allow-more = Allow more and check again.
allow-more-or-shorter = Allow more, or ask for shorter mates, and check again.

## The message, of a win or a draw

no-mate-so-win = There is no mate in { $moves } or fewer, so a win was looked for.
no-mate-sought = Half of the time or work allowed was too little to look for a mate, so a win was looked for.
no-mate-then-cut = There is no mate in { $moves } or fewer; half of the time or work allowed was too little for longer ones, so a win was looked for.
# $depth is in half-moves.
ended-early = { $task ->
    [draw] The time or work allowed ended at depth { $depth }, too early to judge whether the side to move draws.
   *[win] The time or work allowed ended at depth { $depth }, too early to judge whether the side to move wins.
}
may-be-more = There may be more; not every move was judged.
search-prefers = The file promises { $promised }, and the search prefers { $keys }.

tables-better = By the endgame tables the side to move does better than draw; set the task to +.
tables-none = { $task ->
    [draw] By the endgame tables no move draws.
   *[win] By the endgame tables no move wins.
}
tables-several = { $task ->
    [draw] By the endgame tables more than one move draws: { $keys }. Change the position so that one remains, or accept them all.
   *[win] By the endgame tables more than one move wins: { $keys }. Change the position so that one remains, or accept them all.
}

# $best and $next are such as move-stands-at.
judged-better = Judged at depth { $depth }: the side to move does better than draw, { $best }. Set the task to +.
judged-none = { $task ->
    [draw] Judged at depth { $depth }: no move draws; at best { $best }.
   *[win] Judged at depth { $depth }: no move wins; at best { $best }.
}
judged-several = { $task ->
    [draw] Judged at depth { $depth }: more than one move draws: { $keys }. Change the position so that one remains, or accept them all.
   *[win] Judged at depth { $depth }: more than one move wins: { $keys }. Change the position so that one remains, or accept them all.
}
judged-best = Judged at depth { $depth }, not proved: { $best }; as the next best, { $next }.
judged-only = Judged at depth { $depth }, not proved: { $best }, the only move there is.

# How a move stands, in pawns for the side that makes it.
move-stands-at = { $line } stands at { $value }
move-mates-in = { $line } mates in { $moves }
move-is-mated-in = { $line } is mated in { $moves }

## The topic, where it names a pattern

# $last is the last move of a line with its number. $extent: whether it is the only full-length line, all of $lines
# show the picture, some do ($showing), or how many do is not known.
topic-shown = { $extent ->
    [only] Topic verified: { $pattern } is on the board after { $last }, at the end of the only full-length line.
    [all] Topic verified: { $pattern } is on the board after { $last }, at the end of the main line and of every full-length line ({ $lines } in all).
    [some] Topic verified: { $pattern } is on the board after { $last }, at the end of the main line (in { $showing } of { $lines } full-length lines).
   *[main] Topic verified: { $pattern } is on the board after { $last }, at the end of the main line.
}
# $from: the move from which the mate is proved to be forced.
topic-shown-by-coach = Topic verified: { $pattern } is on the board after { $last }, at the end of your line { $line }. From { $from } on the mate is proved.
# $shows: the pictures that are there, or "none".
topic-not-shown = { $shows ->
    [none] { $whose ->
        [main] Topic not verified, { $pattern }: the main line { $line } ends with { $last } in a mate without a name.
        [full] Topic not verified, { $pattern }: the full-length line { $line } ends with { $last } in a mate without a name.
       *[own] Topic not verified, { $pattern }: your line { $line } ends with { $last } in a mate without a name.
    }
   *[other] { $whose ->
        [main] Topic not verified, { $pattern }: the main line { $line } ends with { $last } in another picture, { $shows }.
        [full] Topic not verified, { $pattern }: the full-length line { $line } ends with { $last } in another picture, { $shows }.
       *[own] Topic not verified, { $pattern }: your line { $line } ends with { $last } in another picture, { $shows }.
    }
}
topic-without-mate = Topic not verified, { $pattern }: no line ends in mate. Give your own line up to the mate, as a PGN, with what is declined as variations.
topic-unsettled = Topic not verified, { $pattern }: the time or work allowed ran out before it was known. Allow more and check again.
topic-not-all-known = { $lines ->
    [one] Topic not verified, { $pattern }: { $lines } line shows it, and not all full-length lines are known.
   *[other] Topic not verified, { $pattern }: { $lines } lines show it, and not all full-length lines are known.
}
topic-unchecked = Topic not verified, { $pattern }: the position was checked before final pictures were kept. It is checked again before it goes out, or when you check its file again.
topic-figures = { $showing ->
    [one] Of the { $lines } full-length lines { $showing } shows it.
   *[other] Of the { $lines } full-length lines { $showing } show it.
}
topic-elsewhere = { $shows ->
    [none] The line { $line } ends with { $last } in a mate without a name.
   *[other] The line { $line } ends with { $last } in another picture, { $shows }.
}
topic-declined = { $number ->
    [one] One of your lines ends without mate: { $line }.
   *[other] { $number } of your lines end without mate, the first of them { $line }.
}

## The notes

tries-cut = the time or work allowed ran out before every try was looked for; the keys are complete, and the difficulty is not estimated
fifty-moves = the FEN counts { $number } half-moves without a capture or pawn move; in a game the fifty moves could be claimed before the mate, in a problem they are not counted
position-again = this is the position of "{ $id }" again
topic-too-long = the file's topic is longer than { $most } characters and was left out; it begins "{ $begins }"
kept-with-other-task = the same position is kept with another task: { $kept }

# $row is a line of the file, $line a move of it, $what one of the statements below.
in-variation = line { $row }, move { $line }: { $what }
more-in-variations = { $more ->
    [one] { $more } more thing is wrong in the variations of the file
   *[other] { $more } more things are wrong in the variations of the file
}
variations-cut = the time or work allowed ran out at line { $row }, move { $line }, before all variations of the file were checked

goes-on-too-long = the line goes on after the moves the task allows
had-to-mate = { $better ->
    [none] it is not mate; the mate is gone already before it
   *[other] it is not mate; better is { $better }
}
lets-mate-go = { $better ->
    [none] { $holds ->
        [none] after it there is no mate in { $moves } moves; the mate is gone already before it
       *[other] after it there is no mate in { $moves } moves; { $holds } holds; the mate is gone already before it
    }
   *[other] { $holds ->
        [none] after it there is no mate in { $moves } moves; better is { $better }
       *[other] after it there is no mate in { $moves } moves; { $holds } holds; better is { $better }
    }
}
wrong-yet-mates = { $moves ->
    [1] it is marked as wrong, yet it mates at once
   *[other] it is marked as wrong, yet it mates in { $moves } moves
}
holds-not = { $number ->
    [one] it does not refute the move before it; { $holds } does
   *[other] it does not refute the move before it; { $holds } do
}
sign-yet-mates = the line ends with a sign that it does not win, but it leads to mate
mate-sign-wrong = it is written with #, but it is not mate
# $standing is one of the statements below.
wrong-yet-does = { $task ->
    [draw] it is marked as wrong, yet it draws: { $standing }
   *[win] it is marked as wrong, yet it wins: { $standing }
}
lets-it-go = { $better ->
    [none] { $task ->
        [draw] it no longer draws: { $standing }; no move draws any more
       *[win] it no longer wins: { $standing }; no move wins any more
    }
   *[other] { $task ->
        [draw] it no longer draws: { $standing }; better is { $better }
       *[win] it no longer wins: { $standing }; better is { $better }
    }
}
refutes-not = { $better ->
    [none] it does not refute the move before it: { $standing }
   *[other] it does not refute the move before it: { $standing }; { $better } does
}
ends-with = the line ends with { $sign }, but { $standing }

is-mate-now = it is mate
is-stalemate-now = it is stalemate
neither-can-mate = neither side can mate
tables-say = { $known ->
    [win] by the endgame tables { $side-name } wins
    [loss] by the endgame tables { $side-name } loses
   *[draw] by the endgame tables { $side-name } draws
}
search-says = judged at depth { $depth } { $side-name } stands at { $value }
search-says-mate = judged at depth { $depth } { $side-name } mates in { $moves }
search-says-mated = judged at depth { $depth } { $side-name } is mated in { $moves }

## A second opinion by an engine. $score is in pawns for the side to move, or a mate as #3.

second-opinion-agrees = second opinion by { $engine } at depth { $depth }: agrees on { $line } ({ $score })
second-opinion-prefers = second opinion by { $engine } at depth { $depth }: prefers { $line } ({ $score })
engine-not-started = no second opinion: the engine { $engine } cannot be started: { $error }; check the path under [engine] in the settings
engine-not-uci = no second opinion: the engine { $engine } does not answer as a UCI engine within { $seconds } s
engine-ended = no second opinion: the engine { $engine } ended while it was asked
engine-hung = no second opinion: the engine { $engine } gave no move in the time allowed and was stopped
engine-move-wrong = no second opinion: the engine { $engine } gave "{ $written }", which is no legal move here
