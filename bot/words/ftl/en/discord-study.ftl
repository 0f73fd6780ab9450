# On Discord: what a member is told who answers, asks for a hint, or looks at their own standing. **…** and
# -# are Discord's own markup. Commands are named by their messages in discord-commands.

## Which position is meant

no-group-here = This channel has no study group. A coach makes it one with /coach set-up.
nothing-open = No position is open at the moment.
nothing-open-for-you = No position is open for you at the moment. Run this in your group's channel.
nothing-open-to-you = No position is open for you at the moment. If you belong to a study group on a server, answer there once, with the button under its position, and I shall know you here too.
several-groups-open = Several of your groups have a position open. Run this in the channel of the one you mean.

## A member's own board and standing

your-board = Your board:
your-board-solved = Your board: you have solved this one, { $points-text } of 5 points.
your-board-given-up = Your board: you have given this one up. The solution comes with the reveal.
give-up-asked = Give this one up? You cannot answer it any more then, and the solution stays sealed until the reveal.
# $closes: a moment, as Discord shows it to each reader.
your-last-answer = Your last answer here: "{ $quote }"
your-last-answer-deleted = Your last answer here, whose words you have deleted:
# $state: none, playing, solved or given-up; $wrong: wrong tries so far.
standing-now = { $state ->
    [none] Position { $number }: not answered yet. It is open until { $closes }.
    [solved] Position { $number }: solved. It is open until { $closes }.
    [given-up] Position { $number }: given up. It is open until { $closes }.
   *[playing] { $wrong ->
        [0] Position { $number }: your move. It is open until { $closes }.
        [one] Position { $number }: your move, after one wrong try. It is open until { $closes }.
       *[other] Position { $number }: your move, after { $wrong } wrong tries. It is open until { $closes }.
    }
}
standing-asked = { $answered ->
    [yes] Question { $number }: answered. It is open until { $closes }.
   *[no] Question { $number }: not answered yet. It is open until { $closes }.
}
on-your-board = On your board: { $line }
no-part-yet = You have not taken part in a position yet.
your-points = **Your points: { $points-text }**
# One line of a list by topic. $first: solved at the first try.
topic-tally = { $topic }: { $solved } of { $tried } solved, { $first } at the first try
topic-asked = { $answered ->
    [one] { $topic }: { $answered } question answered
   *[other] { $topic }: { $answered } questions answered
}
# Behind how many positions were solved.
questions-answered = { $answered ->
    [one] { $answered } question answered
   *[other] { $answered } questions answered
}
## A member's own answers to questions, and their leave to show one

no-homework = You have answered no question yet.
homework-head = **{ $at } of { $of }** · Question { $number }
your-answer-deleted = Your answer, whose words you have deleted:
waits-for-coach = Not marked yet: it waits for your coach.
coach-said-privately = Your coach: { $said }
earlier-answers = -# Your earlier answers; the last one counts:
others-answers = **Answers that others allow you to see**
# Asked in private; the answer and the caution follow.
may-it-be-shown = Your coach would like to show your answer to question { $number } to the group:
coach-beside = With these words beside it: { $said }
leave-caution = -# Nothing is shown without your word. You can take it back at any time, also after the reveal. If you are under age, ask your parents first, and let nothing stand there that tells who you are.
leave-open = Your coach would like to show this to the group, and you have not said yet: "{ $quote }"
leave-is = { $leave ->
    [named] This is shown to the group with your name: "{ $quote }"
    [nameless] This is shown to the group without your name: "{ $quote }"
   *[refused] This is not shown to the group: "{ $quote }"
}
button-leave-named = Show it with my name
button-leave-nameless = Show it without my name
button-leave-refused = Do not show it

## The leaderboard

leaderboard = **Leaderboard**
leaderboard-of = **Leaderboard: { $topic }**
leaderboard-empty = Nobody has points yet.
leaderboard-row = { $points ->
    [one] { $name } · { $points-text } point · { $solved } of { $tried } solved
   *[other] { $name } · { $points-text } points · { $solved } of { $tried } solved
}
leaderboard-asked = { $points ->
    [one] { $answered ->
        [one] { $name } · { $points-text } point · { $answered } question answered
       *[other] { $name } · { $points-text } point · { $answered } questions answered
    }
   *[other] { $answered ->
        [one] { $name } · { $points-text } points · { $answered } question answered
       *[other] { $name } · { $points-text } points · { $answered } questions answered
    }
}
and-more = … and { $more } more
# Small print below: the days that are counted.
span-between = From { $from } to { $to }
span-since = Since { $from }
span-until = Up to { $to }
span-all = All positions so far

## What is kept of a member

kept-of-you = Everything that is kept of you in this group. To have it erased, use /study erase-me.
erasure-asked = Erase your name, answers, hints and points in this group? This cannot be undone. Messages that you wrote on Discord yourself stay until you delete them.
erased-you = Everything that was kept of you in this group is erased.

## Help, a paragraph each

# $content: whether the bot is told what people write in the channel.
help-answering = { $content ->
    [yes] **Answering.** Press Answer under the position, use /study answer, write to me directly, reply to the position's message, or write it into the position's thread or this channel. Any usual notation will do: Nf3, e2-e4, e8=Q, a whole line, or the letters of your language.
   *[no] **Answering.** Press Answer under the position, use /study answer, write to me directly, reply to the position's message, or call me by name with it. Any usual notation will do: Nf3, e2-e4, e8=Q, a whole line, or the letters of your language.
}
help-outcome = **What comes of it.** In a sealed group you alone see the verdict; in an open one the others find it behind a spoiler mark. A move that you write where others read is taken as your answer, and hidden where I may. Talk is left alone; what may give a move away I hide where I may, and ask you in private what it is to be: your answer, a word to all, or nothing.
help-lines = **A longer line** is played out with you move by move. Hints come in three steps for each move of yours: the piece, the idea, the move.
help-points = **Points.** /study points says how they are counted here.
help-cards = **Cards.** /study card tells what a pattern is, what to look for and what tells it from its relatives, with an example.
help-editing = **Editing or deleting.** What was decided stands. A message in which I found no move may be edited, and is read again.
help-data = **Your data.** /study my-data shows everything that is kept of you, /study erase-me erases it.
help-language = **Language.** I speak to you as your Discord is set; /study language chooses another one.

## The language

# $language: in its own words.
language-is = I speak { $language } to you from now on.
language-as-client = I speak to you as your Discord is set: { $language }.
# In the list of languages.
language-choice-client = as my Discord is set
no-language = I do not speak "{ $written }"; pick a language from the list that opens while you type.

## The form for an answer: a title and a label of at most 45 characters, an example of at most 100

form-answer = Your answer
form-answer-moves = Your move, or the whole line
form-answer-words = In your own words
form-answer-example = Such as Nf3, e8=Q or 1.Qh7+ Kf8 2.Qh8#
form-old = This form is from an older version; please begin again.
you-wrote = What you wrote, so that nothing is lost:

## Buttons; at most 80 characters

button-my-progress = My progress
button-yes-give-up = Yes, give it up
button-yes-erase = Yes, erase everything
button-previous = Previous
button-next = Next
button-previous-part = Previous part
button-next-part = Next part

## What goes wrong

discord-refused = Discord did not take my answer; please try again.
rest-put-away = The rest of this is put away; please ask for it once more.
answer-forgotten = That message is gone from my memory; please write your answer again.

## Topic cards

cards-there = There are cards of these: { $titles }. Ask for one with /study card.
card-tells = { $copy ->
    [yes] Members see the program's own card for now: yours would tell of position { $numbers }, which is open.
   *[no] Members do not see this card now: it would tell of position { $numbers }, which is open.
}
card-saved = The card is saved.
card-taken-back = Your card is taken back.
form-card = A topic card for the group
form-card-definition = What it is
form-card-look = What to look for
form-card-fen = Example, as FEN
form-card-moves = Its moves, such as 1.Rd8+ Rxd8 2.Rxd8#
button-card = Card: { $title }
button-edit-card = Edit for the group
button-new-card = Write a card for a topic
button-queue-card = Put it into the week
button-take-back-card = Take my card back
## Lessons stepped through after their reveals

no-lesson-revealed = No lesson of this group is revealed yet.
lessons-there = **Lessons to step through**
lesson-listed = { $revealed ->
    [one] - { $title }: one part.
   *[other] - { $title }: { $revealed } parts.
}
lesson-pick-one = { $title }
lesson-pick = Step through a lesson
# What is not revealed says nothing of what it holds.
lesson-open = { $count ->
    [one] Post { $numbers } is open; it joins after its reveal.
   *[other] Posts { $numbers } are open; they join after their reveals.
}
lesson-comes = { $count ->
    [one] One more part comes on { $at }.
   *[other] { $count } more parts are to come, the next on { $at }.
}
lesson-later = { $count ->
    [one] One more part is to come.
   *[other] { $count } more parts are to come.
}
walk-head = **{ $title }** · step { $step } of { $steps } · No. { $number }
button-step-through = Step through the lesson
button-first = First
button-back = Back
button-forward = Forward
button-last = Last
button-side-line = Side line: { $line }
button-leave-side-line = Back to the main line
button-previous-step = Previous part of the lesson
button-next-step = Next part of the lesson
## Moves that are talked about after a reveal

# $before: the moves from the position to what was written.
on-board = On the board of No. { $number }: **{ $line }**
on-board-after = On the board of No. { $number }: { $before } **{ $line }**
