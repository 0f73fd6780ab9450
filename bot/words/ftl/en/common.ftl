# What every chat says of a post and of points.

task-mate = { $moves ->
    [1] { $side-name } to move and mate in one.
   *[other] { $side-name } to move and mate in { $moves-word }.
}
task-win = { $side-name } to move and win.
task-draw = { $side-name } to move and draw.
no-solution-proved = No solution was proved; ask your coach.
## A move in words, for those who do not see the board

# $from and $to are squares.
piece-goes = { $side-name }: { $piece-name } from { $from } to { $to }.
piece-takes = { $side-name }: { $piece-name } from { $from } takes the { $taken-name } on { $to }.
king-castles = { $short ->
    [yes] { $side-name } castles on the king's side.
   *[no] { $side-name } castles on the queen's side.
}
pawn-promotes = The pawn becomes a { $piece-name }.
walk-check = Check.
walk-mate = Mate.

## Languages in which replies are read

# In running text; a list to choose from makes the first letter a capital.
language-name = { $language ->
    [german] German
    [french] French
    [spanish] Spanish
    [italian] Italian
    [portuguese] Portuguese
    [dutch] Dutch
    [russian] Russian
    [polish] Polish
    [czech] Czech
    [hungarian] Hungarian
    [turkish] Turkish
   *[english] English
}

## How points are counted here

rule-full-solution = A full solution is worth 5 points. In a two-mover the key is all that is asked. In a longer mate the key is worth 1 point and the other 4 are shared by the full-length variations, rounded down to a half; the mating moves need not be written. In a win or a draw the line is asked until the gain is on the board or the draw is plain, four moves at most: the first move is worth 1 point, and the others share 4. A wrong key is worth nothing, and so are several first moves of which one is wrong. (The five points and what they are for: the solving rules of the World Federation for Chess Composition; how they are shared is ours.)
rule-wrong-free = In this group wrong moves take nothing off.
# $later: a wrong move after the first one of the line.
rule-wrong-ends = { $later ->
    [one] In this group nothing more can be scored on a position after a wrong first move. A wrong move later in the line takes { $later-text } point off.
   *[other] In this group nothing more can be scored on a position after a wrong first move. A wrong move later in the line takes { $later-text } points off.
}
rule-wrong-takes = { $wrong ->
    [one] In this group each wrong first move takes { $wrong-text } point off what follows, and a wrong move later in the line { $later-text }.
   *[other] In this group each wrong first move takes { $wrong-text } points off what follows, and a wrong move later in the line { $later-text }.
}
rule-hint-free = Hints take nothing off.
rule-hint-takes = { $hint ->
    [one] Each hint takes { $hint-text } point off.
   *[other] Each hint takes { $hint-text } points off.
}
rule-least = { $points ->
    [one] Whoever solves a position keeps at least { $points-text } point, unless the last hint has shown the move.
   *[other] Whoever solves a position keeps at least { $points-text } points, unless the last hint has shown the move.
}
rule-best = The best of your answers to a position counts, at what it was worth when it came. An answer that is not legal, not clear or not readable costs nothing. A position keeps the prices it was posted with. Your coach can change any verdict, and the points follow.

## A position that is kept already

same-again = The same position is kept already, as { $kept }; this file gives it { $differs }.
# $given: the version of the file, as $kept.
same-again-as = The same position is kept already, as { $kept }; this file gives it { $differs }, { $given }.
kept-stays = The one kept stays as it is.
same-taken = The file's is taken now.
same-both = Both topics and both sets of words are kept.
# Parts of these.
version-of = "{ $name }", { $topics }
version-without-topic = "{ $name }", without a topic
another-name = another name
another-topic = another topic
other-words = other words
other-moves = other moves or remarks
