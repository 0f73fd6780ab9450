# On Discord: what a coach is told of positions.

## Checking a file

checking = Checking: { $done } of { $of } positions done …
put-into-week = { $number } put into the week; see /coach week.
written-in-file = Questions and words in it: { $number }. With put-into-week they go into the week.
left-out = Left out, as posted before: { $number }; their pages below offer to post them again.
file-too-large = { $name } is larger than { $most } MB; split it and send the parts.
file-elsewhere = { $name } does not lie where Discord keeps attachments.
file-unreachable = { $name } could not be fetched; please attach it once more.
report-gone = The report is gone.
report-put-away = This report is put away; the positions are kept. Use /coach shelf, or check the file again.
report-unchanged = This report is put away; nothing was changed. Check the file again, then choose.

## The report

no-position-in-file = There was no position in the file.
report-head = **{ $at } of { $of }** · { $name }
one-sound = One position, and it is sound.
one-useless = Nothing here can be used as it is.
one-doubtful = One position, and it needs a look.
all-sound = { $all } positions, all sound.
some-sound = { $all } positions, { $sound } of them sound.
soundness-word = { $soundness ->
    [sound] sound
    [several-keys] more than one key
    [short] shorter mate
    [unsound] does not hold
    [illegal] cannot be used
   *[undecided] not decided in the time allowed
}
proved = { $verdict } (proved)
# $depth is in half-moves.
judged-by-search = { $verdict } (judged by search, { $depth } half-moves deep)
no-topic = no topic
topic-is = Topic: { $topic }
topic-also = { $topic }, also { $further }
topics-are = Topic: { $topic }, also { $further }
key-is = Key: **{ $key }**
keys-are = Keys: **{ $keys }**
variations-are = Variations:
tries-are = Tries:
in-the-week = It is in the week.
# What the check says besides; a statement that begins with a small letter.
warned-of = ⚠ Note: { $note }
posted-before = ⚠ Posted before, as No. { $number } on { $at }.
# The coach's words stand below.
with-the-post = With the post:
at-the-reveal = At the reveal:
beside-the-moves = Beside the moves, at the reveal:

## The shelf and the week

shelf-empty = The shelf is empty. Attach a file to /coach check.
topic-set = Its topic is "{ $topic }" now.
topic-taken = It has no topic now.
paused-until = **Paused** until { $until }.
paused-for-now = **Paused** until you resume.
nothing-waits = Nothing waits. Attach a file to /coach check, and put the sound positions into the week.
the-week = **The week**
more-behind = … and { $more } more behind them
no-time-yet = { $why ->
    [not-sound] no time: not found sound
    [paused] no time: posting is paused
    [no-days] no time: the calendar has no days
   *[waits] no time: what it waits for has none
}
step-of = step { $step } of { $steps } of { $title }
waits-for-post = waits for the reveal of No. { $number }
waits-for-item = waits for the reveal of { $item }
kind-word = { $kind ->
    [problem] position
    [question] question
   *[words] words
}
fixed-at = { $at } (fixed)
posted-again = again, posted before as No. { $number }
topic-not-verified = topic not verified
waits-no-longer = That one waits no longer.
taken-out-lately = Taken out of the week: { $item }.
still-open = open
words-kept = These words are kept.
edit-too-long = With its lines and words the position has more than { $most } characters, which a form cannot hold. Edit it in the club room's editor, or check a file with the changed position.
edit-kept = Saved and checked anew.
goes-out-now = It goes out now.
closed-now = { $kind ->
    [problem] It is closed; the solution goes out now.
   *[other] It is closed; your words and who answered go out now.
}
pick-position = More than one position is open; pick one with the option position.
paused-now = Paused until { $until }. An open position stays open.
paused-till-resumed = Paused until you run /coach resume. An open position stays open.
resumed = Positions go out again as planned.
moment-past = That moment is past.
moment-left-out = The clocks leave that moment out; choose another one.
no-date = "{ $written }" is no date I can read; write it as 2026-12-01 18:00.

## Answers by hand

no-answer-waits = No answer waits for you.
answer-waits = { $kind ->
    [problem] **{ $at } of { $of } waiting** · Position { $number } · { $when }
    [question] **{ $at } of { $of } waiting** · Question { $number } · { $when }
   *[words] **{ $at } of { $of } waiting** · Post { $number } · { $when }
}
# Whatever became of it; then how it stands.
answer-to-post = { $kind ->
    [problem] **Answer { $at } of { $of }** · Position { $number } · { $when }
    [question] **Answer { $at } of { $of }** · Question { $number } · { $when }
   *[words] **Answer { $at } of { $of }** · Post { $number } · { $when }
}
no-answer-yet = { $kind ->
    [problem] Nobody has answered position { $number }.
    [question] Nobody has answered question { $number }.
   *[words] Nobody has answered post { $number }.
}
answer-judged = { $verdict ->
    [solved] My verdict: solved; { $points-text } of 5 points.
    [on-the-way] My verdict: right so far; { $points-text } of 5 points.
    [wrong] My verdict: not the solution; { $points-text } of 5 points.
    [illegal] My verdict: not a legal move; { $points-text } of 5 points.
    [unclear] My verdict: not settled yet; { $points-text } of 5 points.
   *[unreadable] My verdict: not readable; { $points-text } of 5 points.
}
answer-ruled = { $verdict ->
    [solved] A coach's verdict: solved; { $points-text } of 5 points.
    [on-the-way] A coach's verdict: right so far; { $points-text } of 5 points.
    [wrong] A coach's verdict: not the solution; { $points-text } of 5 points.
    [illegal] A coach's verdict: not a legal move; { $points-text } of 5 points.
    [unclear] A coach's verdict: not settled yet; { $points-text } of 5 points.
   *[unreadable] A coach's verdict: not readable; { $points-text } of 5 points.
}
answer-marked = Marked by a coach: { $points-text } of 5 points.
answer-undecided = Nothing has decided it yet.
answer-needs-none = A coach noted that it needs no answer.
answered-in-private = A coach answered it in private: "{ $words }"
is-said = I said: { $said }
is-asked = -# Asked: { $asked }
# Answers to a question, side by side. $begins: what they have in common, such as a move.
answers-by-move = { $answered ->
    [one] **Question { $number }**: one answer, grouped by its first move. Waiting for your mark: { $waiting }.
   *[other] **Question { $number }**: { $answered } answers, grouped by the first move in each. Waiting for your mark: { $waiting }.
}
answer-group = { $answers ->
    [one] - **{ $begins }**: one answer, waiting: { $waiting }
   *[other] - **{ $begins }**: { $answers } answers, waiting: { $waiting }
}
answer-group-choice = { $begins } ({ $answers })
answer-group-pick = Read the answers of a group
answer-in-group = Group: { $begins }
begins-no-move = no move
begins-replaced = answered again since
# $leave: none, named, nameless or refused.
example-is = { $leave ->
    [none] You would show it to the group; its writer has not said yet.
    [named] It is shown to the group with its writer's name.
    [nameless] It is shown to the group without its writer's name.
   *[refused] Its writer does not want it shown.
}
example-beside = Your words beside it: { $said }
# A title and a label of at most 45 characters.
form-show = Show this answer to the group
form-show-words = Your words beside it (may be empty)
no-points = "{ $written }" is no number of points; write one from 0 to 5, such as 2.5.
# Titles and labels; at most 45 characters.
form-private = Your answer in private
form-private-words = Only the member reads this
form-verdict = Your verdict
form-verdict-points = Points, 0 to 5
form-verdict-words = Words to the member, if you like
form-mark = Your mark
# The coach's words on a position.
form-words = Your words on the position
form-words-anyway = Your words, sent all the same
form-with-post = With the post
form-at-reveal = At the reveal
# A position written anew.
form-edit = Edit the position
form-edit-text = The position, as PGN or FEN
form-edit-task = Task: #2, +, = (or empty)
# For a question and for words alone.
form-question = A question for the group
form-question-words = What do you ask?
form-question-reveal = Your own words on it, for the close
form-say = Words for the group
form-say-words = What is the group to read?
form-fen = A position beside it (FEN)
form-topic = Topic

## The summary

who-took-part = **Who took part**
who-took-part-since = **Who took part since { $from }**
who-took-part-until = **Who took part until { $to }**
who-took-part-between = **Who took part from { $from } to { $to }**
nobody-did = Nobody.
member-tally = { $points ->
    [one] { $hints ->
        [one] { $name }: { $solved } of { $tried } solved, { $first } at the first try, { $points-text } point, { $hints } hint
       *[other] { $name }: { $solved } of { $tried } solved, { $first } at the first try, { $points-text } point, { $hints } hints
    }
   *[other] { $hints ->
        [one] { $name }: { $solved } of { $tried } solved, { $first } at the first try, { $points-text } points, { $hints } hint
       *[other] { $name }: { $solved } of { $tried } solved, { $first } at the first try, { $points-text } points, { $hints } hints
    }
}
member-asked = { $points ->
    [one] { $answered ->
        [one] { $name }: { $points-text } point, { $answered } question answered
       *[other] { $name }: { $points-text } point, { $answered } questions answered
    }
   *[other] { $answered ->
        [one] { $name }: { $points-text } points, { $answered } question answered
       *[other] { $name }: { $points-text } points, { $answered } questions answered
    }
}
went-quiet = Went quiet: { $names }
came-back = Came back: { $names }
summary-positions = **Posts**
position-tally = Position { $number } ({ $topic }, { $task }): { $solved } of { $tried } solved
position-tally-missed = Position { $number } ({ $topic }, { $task }): { $solved } of { $tried } solved; most missed with { $missed }
post-tally = { $kind ->
    [problem] Position { $number } ({ $topic })
    [question] Question { $number } ({ $topic }): { $answered } answered
   *[words] Post { $number } ({ $topic })
}
summary-topics = **Topics, the weakest first**
summary-advice = **What to teach next**
export-here = Here it is. It holds members' data, so keep it to yourself.

## In menus and choices; at most 100 characters

week-pick = Pick one to move, look at, post or take out
position-choice = Position { $number } · { $task }
post-choice = { $kind ->
    [problem] Position { $number }
    [question] Question { $number }
   *[words] Post { $number }
}

## Buttons; at most 80 characters

button-keep-old = Keep the old one
button-take-new = Take the new one
button-keep-both = Keep both topics
button-queue = Put into the week
button-queue-again = Put into the week again
button-queue-anyway = Post it anyway: put into the week
button-queue-anyway-again = Post it anyway, and again: put into the week
button-earlier = Earlier
button-later = Later
button-look-at = Look at it
button-post-now = Post now
button-take-out = Take out
button-put-back = Put it back
button-words = Words …
button-edit = Edit …
button-words-again = Change the words …
button-words-anyway = Send them all the same …
button-right = Right …
button-not-right = Not right …
button-mark = Mark …
button-mark-again = Mark again …
button-groups = All groups
button-show = Show as an example …
button-no-longer-show = Do not show it
button-overrule-right = Overrule: right …
button-overrule-not-right = Overrule: not right …
button-answer-privately = Answer in private …
button-no-answer = No answer needed

## Lessons

no-lessons-yet = There are no lessons yet; /lesson take-in takes one in from a file of PGN.
# An option, at most 100 characters.
lesson-choice = { $title } ({ $steps })
# $steps, $parts: how many; $waiting of the parts are in the week, $posted were posted.
lesson-row = **{ $title }**: steps { $steps }, parts { $parts }, in the week { $waiting }, posted { $posted }
lesson-head = **Lesson “{ $title }”**
lesson-head-topic = **Lesson “{ $title }”** · { $topic }
lesson-step-is = { $contrast ->
    [yes] **Step { $step }**, where the topic is meant to fail
   *[no] **Step { $step }**
}
lesson-stop = A stop, { $task }: { $soundness ->
    [sound] sound.
    [several-keys] several keys.
    [short] shorter than stated.
    [unsound] unsound.
    [illegal] illegal.
   *[undecided] undecided.
}
lesson-written = { $kind ->
    [question] A question: { $words }
   *[words] Words: { $words }
}
lesson-waits = { $number ->
    [one] It waits for the reveal of step { $steps }, whose answer it would give away.
   *[other] It waits for the reveals of steps { $steps }, whose answers it would give away.
}
lesson-not-kept-part = Not kept: there is no task, and none was found; write one, such as \[stop #2].
lesson-as-before = The same position as in step { $step }; it goes out once.
lesson-waits-in-week = In the week.
lesson-open-part = Posted as No. { $number }, still open.
lesson-closed-part = Posted as No. { $number } and closed.
lesson-taken-in = “{ $title }” is kept. Look it through, then put it into the week with /lesson plan.
lesson-lost = Nothing is kept, for no step could be read.
lesson-in-week = { $omitted ->
    [0] The lesson is in the week. Parts: { $number }.
   *[other] The lesson is in the week. Parts: { $number }; left out, as posted before: { $omitted }.
}
lesson-plan-unclear = Give either at-once, or step and when together, or none of them.
lesson-here = “{ $title }” as a file; it can be taken in again.
lesson-gone = “{ $title }” is removed. Its positions and what was posted stay.
