# What a member is told of a reply. A verdict is one or more of these sentences.
# $line is one or more moves, numbered; $answer as well. $side is the defender unless said otherwise.

## Right

move-mates = Yes: { $line } is mate.
line-mates = Solved. { $line } is mate.
key-is-enough = { $moves ->
    [1] Yes, { $line } is the key. In a mate in 1 the key is all that is asked.
   *[2] Yes, { $line } is the key. In a two-mover the key is all that is asked.
}
key-but-no-mate = { $moves ->
    [1] Yes, { $line } is the key, and in a mate in 1 the key is all that is asked. But look again at { $other }: that is not mate.
   *[2] Yes, { $line } is the key, and in a two-mover the key is all that is asked. But look again at { $other }: that is not mate.
}
line-holds = Solved. Your line holds against every defence.
stalemate-draws = Solved. { $line } is stalemate, and that is a draw.
too-little-left = Solved. After { $line } { $side-name } has not enough left to mate.
comes-again = { $task ->
    [draw] Solved. After { $line } the position has come again: it holds.
   *[win] Solved. After { $line } the position has come again: it wins.
}
line-does = { $task ->
    [draw] Solved. { $line } holds.
   *[win] Solved. { $line } wins.
}
does-too = { $task ->
    [draw] Yes, { $line } holds too. That counts in full.
   *[win] Yes, { $line } wins too. That counts in full.
}
does-too-by-tables = { $task ->
    [draw] Yes, { $line } holds too, by the endgame tables. That counts in full.
   *[win] Yes, { $line } wins too, by the endgame tables. That counts in full.
}
# $depth is in half-moves.
does-too-by-search = { $task ->
    [draw] Yes, { $line } holds too, judged by search, { $depth } half-moves deep. That counts in full.
   *[win] Yes, { $line } wins too, judged by search, { $depth } half-moves deep. That counts in full.
}

## Right so far

right-so-far = { $line } is right so far.
right-but = { $line } is right. But what about { $answer }? Your move.
right-and-answered = { $line } is right. { $side-name } answers { $answer }. Your move.
right-after = Your line is right after { $line }. What about { $answer }? Your move.
side-lines-right = Those side lines are right. Now go on from the position on the board. Your move.
go-on = Go on from the position on the board. Your move.

## Wrong

each-has-to-hold = Of several moves offered each has to hold.
# $left is how many moves were asked for, $moves how many it takes.
mates-late = { $line } mates, but not in { $left-word }: it takes { $moves-word }.
fails = { $line } does not work.
fails-because = { $line } does not work: { $why }.
for-example = For example { $line }.
answers = { $side-name } answers { $line }.
answers-because = { $side-name } answers { $line }: { $why }.
does-not = { $task ->
    [draw] { $line } does not hold.
   *[win] { $line } does not win.
}
does-not-because = { $task ->
    [draw] { $line } does not hold: { $why }.
   *[win] { $line } does not win: { $why }.
}
by-tables = { $task ->
    [draw] (Lost, by the endgame tables.)
   *[win] (No win, by the endgame tables.)
}
by-search = (Judged by search, { $depth } half-moves deep.)

## The coach's own lines. $words are the coach's, as they were written.

coach-shows = Your coach shows { $line }.
coach-shows-because = Your coach shows { $line }: { $why }.
coach-on-move = Your coach on { $line }: “{ $words }”

## Left open

not-certain = { $task ->
    [draw] I cannot say for certain whether { $line } holds, so I call it neither right nor wrong. Your coach will look at it.
   *[win] I cannot say for certain whether { $line } wins, so I call it neither right nor wrong. Your coach will look at it.
}
not-settled = I could not settle { $line } in the time I have. Your coach will look at it.
taken-as-question = I take that as a question, not as an answer: nothing was judged, and it costs nothing.
taken-as-thought = I take that as a thought, not as an answer: nothing was judged, and it costs nothing.
nothing-claimed = I find no move in that which you say is your answer: nothing was judged, and it costs nothing.
write-your-move = Write the move you would play.
# $reading and $readings are lines that can be sent as they stand.
send-just-that = If { $reading } is your answer, send just that; if not, write the move you would play.
send-one-of = If one of these is your answer, send just that: { $readings }.
several-ways = I can take that in more than one way, so nothing was judged, and it costs nothing. Send just the moves of your answer.
several-ways-of = I can take that in more than one way, so nothing was judged, and it costs nothing. Do you mean { $readings }?

## Not read

# $most is a number of characters.
too-long = That is too long to read: I look at { $most } characters at most. Send the moves alone.
longer-than-any-solution = This is longer than any solution. Its first { $most } characters are kept and nothing was judged; send just the moves, such as 1.Qh7+ Kf8 2.Qh8#.
no-move = I find no move in that, so nothing has changed. Write one any way you like: letters and squares, from square to square, or in words.
followed = I followed you up to { $line }.
# $written is what the member wrote, as it was.
impossible = “{ $written }” is not possible.
impossible-because = “{ $written }” is not possible: { $why }.
possible-there = Possible there: { $moves }.
ambiguous = “{ $written }” could be more than one move: { $moves }. Which do you mean?
ambiguous-among = “{ $written }” could be more than one move: { $moves }. Which do you mean?
garbled = I could not read “{ $written }” as a move. Please write it again.
