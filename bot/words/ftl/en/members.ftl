# What a member is told of points, hints and a coach's verdict. $NAME-text is a number of points as it is
# written, $NAME the number itself.

## Points

wrong-tries = { $wrong ->
    [one] one wrong try
   *[other] { $wrong } wrong tries
}
hints-taken = { $hints ->
    [one] one hint
   *[other] { $hints } hints
}
points-earned = { $wrong ->
    [0] { $hints ->
        [0] { $points-text } of 5 points.
       *[other] { $points-text } of 5 points after { hints-taken }.
    }
   *[other] { $hints ->
        [0] { $points-text } of 5 points after { wrong-tries }.
       *[other] { $points-text } of 5 points after { wrong-tries } and { hints-taken }.
    }
}
solving-now-gives = { $points ->
    [one] Solving it now gives { $points-text } point.
   *[other] Solving it now gives { $points-text } points.
}
nothing-after-wrong = By this group's scale nothing can be scored on a position after a wrong first move; finding it is still worth the while.
# $later: a wrong move after the first one of the line, where it takes something else than the first. $later and
# $hint may be none.
wrong-takes = { $wrong ->
    [one] Each wrong first move takes { $wrong-text } point
   *[other] Each wrong first move takes { $wrong-text } points
}
every-wrong-takes = { $wrong ->
    [one] Each wrong move takes { $wrong-text } point
   *[other] Each wrong move takes { $wrong-text } points
}
prices = { $later ->
    [none] { $hint ->
        [none] { every-wrong-takes }.
       *[other] { every-wrong-takes }, each hint { $hint-text }.
    }
   *[other] { $hint ->
        [none] { wrong-takes }, a wrong move later in the line { $later-text }.
       *[other] { wrong-takes }, a wrong move later in the line { $later-text }, each hint { $hint-text }.
    }
}
at-least = Whoever solves it without being shown the move keeps at least { $points-text }.

## Hints, before they are taken. $last is yes where the hint shows the move.

hint-free = { $last ->
    [yes] The next hint shows the move. It takes nothing; you would still have { $left-text } left.
   *[no] A hint takes nothing; you would still have { $left-text } left.
}
takes-points = { $takes ->
    [one] takes { $takes-text } point
   *[other] takes { $takes-text } points
}
hint-takes = { $last ->
    [yes] The next hint shows the move. It { takes-points }; you would have { $left-text } left.
   *[no] A hint { takes-points }; you would have { $left-text } left.
}
no-more-hints = You have taken every hint there is for this move.
# On a button, in brackets.
price-free = takes nothing, leaves { $left-text }
price-takes = takes { $takes-text }, leaves { $left-text }
price-again = shown again, takes nothing
# $step: 1 the piece, 2 the idea, 3 the move. $number: for which of the member's moves.
hint-is = { $number ->
    [1] Hint { $step }: { $hint }
   *[other] Hint { $step } for your move { $number }: { $hint }
}

## Replies that change nothing

solved-already = You have solved this one already, so nothing changes.
given-up-already = You have given this one up, so this does not count.
given-up-now = You have given this one up. The solution stays sealed until the reveal at { $at }.
given-up-before = You gave this one up before. The solution comes at { $at }.
you-solved = You have solved this one: { $points-text } of 5 points.
you-gave-up = You have given this one up. The solution comes with the reveal at { $at }.
replies-closed = Thank you. Replies to this post have closed, so this one does not count.
coach-will-judge = Your answer is kept, and sealed until the reveal. Your coach judges this one by hand.
coach-will-read = Your answer is kept. Your coach reads it; nobody else does unless you allow it.
coach-can-read = Thank you. Replies to this post have closed; your coach can still read yours.
only-beginning-kept = { $again ->
    [yes] Only the first { $most } characters of it are kept. If the rest matters, write it shorter and answer again.
   *[no] Only the first { $most } characters of it are kept.
}

## A coach's verdict

# $number: of the position, or none.
coach-looked = { $number ->
    [none] { $verdict ->
        [solved] Your coach has looked at your answer: solved.
        [on-the-way] Your coach has looked at your answer: right so far.
        [wrong] Your coach has looked at your answer: not the solution.
        [illegal] Your coach has looked at your answer: not a legal move.
        [unclear] Your coach has looked at your answer: not clear; say which move you mean.
       *[unreadable] Your coach has looked at your answer: not readable; write the moves again.
    }
   *[other] { $verdict ->
        [solved] Position { $number }: your coach has looked at your answer: solved.
        [on-the-way] Position { $number }: your coach has looked at your answer: right so far.
        [wrong] Position { $number }: your coach has looked at your answer: not the solution.
        [illegal] Position { $number }: your coach has looked at your answer: not a legal move.
        [unclear] Position { $number }: your coach has looked at your answer: not clear; say which move you mean.
       *[unreadable] Position { $number }: your coach has looked at your answer: not readable; write the moves again.
    }
}
# $number: of the question, or none.
coach-marked = { $number ->
    [none] Your coach has read your answer.
   *[other] Question { $number }: your coach has read your answer.
}
points-of-five = { $points-text } of 5 points.
coach-says = "{ $words }"

## From before

# A sentence that was kept before facts were.
as-it-was = { $words } (So it was said at the time.)
as-reason = { $words }

## Buttons; short

button-answer = Answer
button-answer-again = Answer again
button-next-move = Next move
button-hint = Hint
button-another-hint = Another hint
button-take-it = Take it
button-give-up = Give up
button-i-mean = I mean { $reading }
# A button and what pressing it costs.
priced = { $what } ({ $price })
