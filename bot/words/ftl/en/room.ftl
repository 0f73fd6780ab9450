# The members' page of the club room, and what the coach's page shares with it. $number and $other are
# numbers of posts; $name, $who, $names and $topic are people's own words.

## Around everything

room-title = Club room
room-skip = Skip to the message box
room-parts = Parts of the room
room-nav-room = Room
room-nav-past = Past
room-nav-kept = Kept
room-nav-coach = Coach's page
room-no-script = This room needs JavaScript. Allow it for this address, then load the page again.
room-unreachable = The room cannot be reached just now. Nothing you typed is lost; try again in a moment.
room-load-again = This page is older than the room. Load it again.
room-error = The room answered with an error ({ $status }).
room-broken-line = The connection is broken; it will be tried again by itself. What you type stays here.
room-cancel = Cancel
room-close = Close

## Coming in

room-coming-in = Coming in
room-go-in = Go into the room
room-refused = This link does not open the room
room-refused-why = It may have been cut short on its way, or the coach has changed it since.
room-refused-member = If you are a member: ask your coach for the link again and open it whole.
room-refused-coach = If you are the coach: the bot prints your link each time it starts. It stays the same until a coach makes a new one on the coach's page, under Settings.
room-enter = What should the group call you?
room-your-name = Your name in this room
room-come-in = Come in
# “Kept” is room-nav-kept.
room-enter-what = A first name or nickname is enough. Everyone in the group sees it beside your messages and on the leaderboard; you can change it later.
room-enter-care = What you write here is kept on your coach's computer: your name, your answers and what came of them, and your messages. You can see, take away and erase all of it under “Kept”. Members may be children: your club's safeguarding rules and your country's privacy law come first. Give no surname, address, school or telephone number here.
room-here-already = I am in this room already, on another device
room-code = The code that your other device shows
room-code-come-in = Come in as the same person
# “My work” is room-mine, “Use another device too” is room-device-new.
room-code-what = On the device where you have your name, open “My work” and press “Use another device too”. It shows a code that holds for ten minutes.
room-take-name = Take “{ $name }”

## Shut out

room-out-link = The link to this room has changed
room-out-link-what = Your coach has made a new link, so this page can do no more. Ask your coach for the new link and open it in this browser: this page then goes on by itself.
room-out-coach-link = The coach's link has changed
room-out-coach-link-what = Another coach has made a new coach's link, so this page can do no more. Ask them for the new link and open it in this browser: this page then goes on by itself.
room-out-removed = You are no longer in this group
room-out-removed-what = Your coach has removed you. What you wrote before is still kept: ask your coach if you want a copy of it, or want it erased.
room-out-erased = Everything of you is erased
room-out-erased-what = Your coach has erased what was kept of you here.
room-out-typed = What you typed stays in the box below. It was not sent.

## The position and its number

room-open-position = The position now open
room-number = No. { $number }
room-number-topic = No. { $number }, { $topic }
room-number-question = { $name }, a question
# Above a post that is a step of a lesson.
room-lesson-step = Lesson “{ $title }”, step { $step } of { $steps }
# Above a question's words, and the kinds in a list.
room-question = Question
room-kind = { $kind ->
    [problem] position
    [question] question
   *[words] words
}
room-preview = Preview
room-in-words = The position in words
room-none-open = No position is open
room-none-open-what = The next one appears here when the coach's week brings it.
room-look-at-past = Look at past posts
room-which-open = Which open position
# $at: a time of day, with the day before it where it is not today. $until: such as “in 3 hours”.
room-closes = Closes { $at }, your time ({ $until })
room-closed = Closed { $at }; the reveal is on its way
room-day-and-time = { $day }, { $time }
room-hint = Hint
room-hint-step = Hint { $step } of 3
room-hint-for-move = Hint { $step } of 3 for your move { $move }
room-give-up = Give up
room-give-up-sure = Give up on this position? Your attempt ends here; the solution comes with the reveal.
room-go-on-trying = Go on trying
room-gave-up = You gave up
room-board-at-end = Your board at the end

## Verdicts

room-verdict = { $verdict ->
    [solved] Solved
    [on-the-way] Right so far
    [wrong] Wrong move
    [illegal] Not a legal move
    [unclear] Not settled
    [unreadable] Could not be read
    [kept] Waits for the coach
    [marked] Marked by the coach
   *[none] Not judged yet
}
room-your-move = Your move.
room-mean = What did you mean?
room-i-mean = I mean { $line }

## The reveal

room-solution = No. { $number }: the solution
room-final-picture = The final picture: { $patterns }.
# $count is two or more. $move is the wrong move, $line what refutes it, $why a clause.
room-common-wrong = The commonest wrong move was { $move }, chosen { $count } times. It fails to { $line }.
room-common-wrong-why = The commonest wrong move was { $move }, chosen { $count } times. It fails to { $line }, because { $why }.
room-notes = The coach's notes
room-nobody-took-part = Nobody took part this time.
room-solved-by = { $count ->
    [one] Solved by { $names }. { $count } member took part.
   *[other] Solved by { $names }. { $count } members took part.
}
room-nobody-solved = { $count ->
    [one] Nobody solved it. { $count } member took part.
   *[other] Nobody solved it. { $count } members took part.
}
room-question-closed = No. { $number }: the question is closed
room-coach-words = The coach's words
room-answered-by = Answered by { $names }.
room-nobody-answered = Nobody answered this time.
room-answers-wait = { $count ->
    [one] { $count } answer still waits for the coach's mark.
   *[other] { $count } answers still wait for the coach's mark.
}
# Answers that their writers allow the group to see.
room-examples = Answers as examples
room-example-by = { $name }
room-example-nameless = From the group, without a name

## Talk

room-talk = Talk
room-earlier = Show earlier messages
room-messages = Messages
room-posted = No. { $number } is posted
room-posted-topic = No. { $number } is posted: { $topic }
# The mark beside a coach's name.
room-coach = Coach
room-your-coach = Your coach
room-you = You
room-only-you = Only you see this
# Beside the name of whoever has answered.
room-has-answered = has answered
room-show-answer = Show the answer (it may give the solution away)
room-take-back = Take back
room-take-it-back = Take it back
room-take-back-sure = Take this message back? It disappears for everyone at once. Your coach can still see it, and that you took it back and when.
room-take-answer-back-sure = Take your answer's words back? The group no longer sees them. What came of the answer still counts, and your coach can still read it.
# $who is a name, or room-somebody-erased; $at a time.
room-gone = { $how ->
    [taken-back] Taken back by { $who }, { $at }
   *[hidden] Hidden by { $who }, { $at }
}
room-somebody-erased = somebody who is erased
# Under a message with a move in it, after a reveal.
room-on-board = Show on a board
room-on-board-post = Which position it is about
# Above a coach's private words. $text is what the member wrote.
room-word-on = { $kind ->
    [problem] On position { $number }:
    [question] On question { $number }:
   *[words] On No. { $number }:
}
room-word-on-yours = { $kind ->
    [problem] On your “{ $text }”, position { $number }:
    [question] On your “{ $text }”, question { $number }:
   *[words] On your “{ $text }”, No. { $number }:
}

## The message box

room-text = Your message or move
room-text-placeholder = Your move, or a word to the group
room-answer = Answer
room-send = Send
# “Answer” is room-answer.
room-say-what = A move you send is taken as your answer: you alone see it and what comes of it. Where it is not plain what a text is to be, you are asked first. Use Answer to have anything read as one. Enter sends, Shift and Enter begins a new line.
# While a question is shown, which is answered in a box of its own.
room-talk-placeholder = A word to the group
room-talk-what = Talk with the group here; your answer goes into the box under the question. Before a word that may be an answer is shown to anybody, you are asked. Enter sends, Shift and Enter begins a new line.
# Before a menu of the open positions.
room-answers = Answers
room-answers-number = Answers No. { $number }
room-answers-number-topic = Answers No. { $number }, { $topic }
room-closed-no-other = No. { $number } has closed. What you typed is still here.
room-closed-other = No. { $number } has closed. The box now answers No. { $other }; what you typed is still here.
room-closed-meanwhile = No. { $number } closed while you wrote. What is this to be?
# “Send” is room-send.
room-nothing-to-answer = No position is open just now, so there is nothing to answer. Send says it to the group.
room-send-to = Send it to No. { $number }
room-answer-to = Answer No. { $number }
room-is-my-answer = It is my answer
room-say-to-group = Say it to the group
room-say-to-all = Say it to all
room-drop = Drop it
# What is asked about a text before it is taken; $number, $numbers and $chosen are numbers of posts, $names some of
# room-post-called.
room-held-elsewhere = These moves fit position { $number }, not { $chosen }: send it there?
room-held-elsewhere-several = These moves fit positions { $numbers }, not { $chosen }. Which one do you mean?
room-held-several = These moves fit positions { $numbers }. Which one do you mean?
room-held-could-answer = This could answer { $names }. Which one do you mean?
room-held-is-answer = Is this your answer to question { $number }, or a word to all? Nobody else sees it yet.
room-held-may-tell = This may give away a move of position { $numbers }, which is still open, so nobody else sees it yet. What is it to be?
room-post-called = { $kind ->
    [problem] position { $number }
    [question] question { $number }
   *[words] No. { $number }
}
# The box for an answer to a question, under the question.
room-your-answer = Your answer
room-answer-own-words = Your answer, in your own words
room-answer-again = Answer again; the last one counts
room-send-answer = Send the answer
room-only-coach-reads = Only your coach reads it. Nobody else sees it, now or later, unless you allow it.
room-answer-waits = Not marked yet: it waits for your coach.
room-earlier-answers = { $count ->
    [one] Your earlier answer
   *[other] Your { $count } earlier answers
}
# The leave to show an answer to the group. $words: the coach's words beside it.
room-leave-news = Your coach would like to show one of your answers to the group: see it under “My work”.
room-leave-asked = Your coach would like to show this answer to the group after the reveal. May it be shown?
room-leave-is = { $leave ->
    [named] You allow the group to see this answer with your name.
    [nameless] You allow the group to see this answer without your name.
   *[refused] This answer is not shown to the group.
}
room-leave-beside = With these words of your coach beside it: { $words }
room-leave-named = Show it with my name
room-leave-nameless = Show it without my name
room-leave-refused = Do not show it
room-leave-withdraw = Take it back
room-leave-care = Nothing is shown without your word, and you can take it back at any time, also after the reveal. If you are under age, ask your parents first, and let nothing stand there that tells who you are.

## My work

room-mine = My work
room-standing-now = { $state ->
    [none] Position { $number }: not answered yet. It is open until { $at }.
    [solved] Position { $number }: solved. It is open until { $at }.
    [given-up] Position { $number }: given up. It is open until { $at }.
   *[playing] { $wrong ->
        [0] Position { $number }: your move. It is open until { $at }.
        [one] Position { $number }: your move, after one wrong try. It is open until { $at }.
       *[other] Position { $number }: your move, after { $wrong } wrong tries. It is open until { $at }.
    }
}
room-standing-asked = { $answered ->
    [yes] Question { $number }: answered. It is open until { $at }.
   *[no] Question { $number }: not answered yet. It is open until { $at }.
}
room-no-topic = No topic
room-line-so-far = The line so far: { $line }
room-your-board = Your board
room-points-in-all = Points in all: { $points }
room-your-topics = Your posts by topic
room-nothing-tried = Nothing tried yet. Your first answer starts this table.
# A member's own answers to questions.
room-homework = My answers to questions
room-homework-of = Question { $number }
room-scale = How points are counted
room-change-name = Change name
room-named = The group now sees you as { $name }.
room-language = Language
room-language-browser = As my browser is set
room-language-what = In which the pages and the bot speak to you. What people write stays as it is.
room-device = Another device
room-device-what = Use this room on a telephone or a second computer as the same person, with the same points.
room-device-new = Use another device too
# “I am in this room already” begins room-here-already.
room-device-code = { $minutes ->
    [one] On the other device, open the link to this room, press “I am in this room already” and type this code. It holds for { $minutes } minute and for one device. Show it to nobody: whoever types it is you here.
   *[other] On the other device, open the link to this room, press “I am in this room already” and type this code. It holds for { $minutes } minutes and for one device. Show it to nobody: whoever types it is you here.
}

## Tables

room-leaders = Leaderboard
room-leaders-topic = Leaderboard: { $topic }
room-board-all = Points by member, all topics
room-board-topic = Points by member, { $topic }
room-topic = Topic
room-all-topics = All topics
room-time = Time
room-last-four-weeks = Last 4 weeks
room-last-seven-days = Last 7 days
room-last-ninety-days = Last 90 days
room-from-beginning = From the beginning
# Heads of columns; short.
room-rank = Rank
room-name = Name
room-points = Points
room-tried = Tried
room-solved = Solved
room-first-try = At first try
room-questions = Questions answered
room-solved-of = { $solved } of { $tried }
room-no-points = Nobody has points here yet.
room-equal-points = Equal points share a rank.

## Past posts

room-past = Past posts
room-none-closed = No post is closed yet. Its reveal will stand here.
room-as-posted = The position as posted

## What is kept

room-kept = What is kept of me
room-kept-what = The coach's computer keeps your name ({ $name }), your answers with what came of them, the hints you took, and your messages. Nobody but you and the coach can see your answers before the reveal. A message that you take back, or that a coach hides, is gone for everyone; the coaches can still read it, and see who took it away and when. When you erase everything, that goes too.
room-kept-care = Members may be children: the club's safeguarding rules and the privacy law of your country come first. Ask your coach if anything here worries you.
room-see-kept = See everything
room-take-kept = Take it away (JSON)
room-erase = Erase everything
room-erase-sure = Erase everything that is kept of you? Your points, answers and messages are gone for good, and you leave the room.
room-keep = Keep it
room-erased = Erased
room-come-in-again = Come in again under a new name
# Where there is nothing in a list of what is kept.
room-none = none

## Topic cards

room-nav-cards = Cards
room-cards = Topic cards
room-cards-what = A page for each pattern: what it is, what to look for, and what tells it from its relatives.
room-cards-all = All cards
room-cards-of = { $count ->
    [one] More on its card: { $cards }
   *[other] More on their cards: { $cards }
}
room-card-coachs = Your coach's own
room-card-held = Held back until an open position is revealed
room-card-look = What to look for
room-card-relatives = Easily taken for it
room-card-example = Example
room-card-start = { $task } Find it before you read on.
room-card-solution = The solution: { $line }
room-card-end = Where it leads
room-card-start-words = The position in words
room-card-end-words = The final position in words
## Lessons stepped through after their reveals

room-nav-lessons = Lessons
room-lessons = Lessons
room-lessons-what = Lessons whose posts are revealed, to be stepped through move by move with all side lines and comments.
room-lessons-none = No lesson is revealed yet. Each stands here once its first post is revealed.
room-lessons-all = All lessons
room-lesson-parts = { $count ->
    [one] { $count } part
   *[other] { $count } parts
}
# What is not revealed says nothing of what it holds. $numbers: numbers of posts.
room-lesson-open = { $count ->
    [one] No. { $numbers } is open; it joins after its reveal.
   *[other] No. { $numbers } are open; they join after their reveals.
}
room-lesson-comes = { $count ->
    [one] { $count } more part comes on { $at }.
   *[other] { $count } more parts are to come, the next on { $at }.
}
room-lesson-later = { $count ->
    [one] { $count } more part is to come.
   *[other] { $count } more parts are to come.
}
room-walk-through = Step through the lesson
room-walk-keys = The arrow keys left and right step through the moves and on to the next part; Home and End lead to the first and the last.
room-walk-parts = Parts of the lesson
room-walk-part = { $number }
room-walk-part-of = Part { $number }, post No. { $post }
room-walk-step = Step { $step } of { $steps }
room-walk-start = Before the first move
room-walk-first = First
room-walk-first-what = To the beginning
room-walk-back = Back
room-walk-back-what = One move back
room-walk-forward = Forward
room-walk-forward-what = One move forward
room-walk-last = Last
room-walk-last-what = To the end of the line
room-walk-side = Side line { $move }
room-walk-leave = Back to the main line
# $told: the move in words.
room-walk-moved = { $move } – { $told }
