# Why something could not be done, and what to do instead. $most and $size are numbers as they are written.

## There is no such thing

not-a-group = This place is no study group's yet; a coach can set one up here.
no-member = There is no such member in this group (any more).
no-post = There is no such post in this group.
no-position = There is no such position in this group; check a file first.
no-reply = There is no such reply in this group.
no-message = There is no such message in this group.
no-reply-of-yours = There is no such reply of yours.
no-answer-of-yours = There is no such answer of yours.
no-message-of-yours = There is no such message of yours.
not-in-queue = This one is not in the queue any more.
not-taken-out = That cannot be put back any more: it is in the week again, or gone. Look at the week and the shelf.
not-here-any-more = That is not here (any more). Load the page or the list again.
removed-meanwhile = { $what ->
    [post-of-reply] The post of this reply was removed.
    [group-of-reply] The group of this reply was removed.
    [writer-of-reply] The member who sent this reply was erased.
    [reply] The reply was removed meanwhile.
    [position-of-post] The position of this post was removed.
    [position] The position was removed meanwhile.
    [post-of-message] The post of this message was removed.
   *[group-of-message] The group of this message was removed.
}
nothing-kept-of-you = Nothing is kept of you in this group.
nothing-kept-of-them = Nothing is kept of this person in this group.
nothing-asked = Nothing is asked about this answer any more.
nothing-asked-any-more = Nothing is asked about this answer any more: a later one has come, or the post has closed.
code-owner-gone = The member whose code this was is gone.
still-on-its-way = This post is still on its way out.
nothing-to-post = There is nothing in the queue that may be posted; import positions and queue sound ones first.

## The person may not

not-coach = Only the group's coaches can do that. A coach can name further coaches.
shut-out = Your coach has removed you from this group. What you wrote before is still kept: ask your coach if you want a copy of it, or want it erased.
# $until and $reason may be none; $reason are the coach's words.
muted = { $until ->
    [none] { $reason ->
        [none] Your coach has muted you until your coach lifts it: you can answer positions, and not write to the group.
       *[other] Your coach has muted you until your coach lifts it: you can answer positions, and not write to the group. The reason: { $reason }
    }
   *[other] { $reason ->
        [none] Your coach has muted you until { $until }: you can answer positions, and not write to the group.
       *[other] Your coach has muted you until { $until }: you can answer positions, and not write to the group. The reason: { $reason }
    }
}
muted-keeps-name = You are muted, and cannot change your name as long as you are. Ask your coach.
coach-is-not = { $what ->
    [muted] { $name } coaches this group, and a coach is not muted. Let them be a coach no longer first: in the room by making a new coach's link, on Discord with /coach remove-coach.
    [removed] { $name } coaches this group, and a coach is not removed. Let them be a coach no longer first: in the room by making a new coach's link, on Discord with /coach remove-coach.
   *[erased] { $name } coaches this group, and a coach is not erased by another coach. Let them be a coach no longer first: in the room by making a new coach's link, on Discord with /coach remove-coach.
}

## Replies, hints and talk

nothing-to-judge = There is nothing to judge: write your move, such as Nf3 or 1.Qh7+ Kf8 2.Qh8#.
taken-already = This message has been taken as another answer already; send it anew.
no-move-read = This could not be read as an answer; write just the moves.
position-closed = Position { $number } is closed; look at its reveal.
question-open-still = Question { $number } is still open; the reveal closes it.
question-lacks = { $what ->
    [hints] No. { $number } is a question. There are no hints for it; answer it in your own words.
    [giving-up] No. { $number } is a question. It is not given up: answer it, or leave it.
   *[board] No. { $number } is a question. There is no line to play on its board.
}
nothing-answered = There is nothing in your answer yet; write it in your own words.
words-take-no-answers = No. { $number } is words alone: it is there to be read, and takes no answers.
only-questions-are-grouped = { $kind ->
    [problem] No. { $number } is a position: its answers are judged one by one. Only answers to a question stand side by side.
   *[other] No. { $number } takes no answers. Only answers to a question stand side by side.
}
only-answers-are-examples = Only answers to a question can be shown as examples.
nobody-asks-to-show = Nobody asks to show an answer like that (any more). Load the page or the list again.
writer-said-no = Its writer does not want this answer shown. Only they can change that.
words-are-gone = The words of this answer are gone; there is nothing to show.
words-beside-too-long = Your words beside the answer are longer than { $most } characters; shorten them.
# Moves that are talked about after the reveal.
no-board-there = No. { $number } has no position, so there is no board to show it on.
nothing-revealed-yet = Nothing with a position is revealed yet; moves can be shown on a board after a reveal.
no-move-written = There is no move in this message. Write one, such as Nf6 or 3.Rxd5 Nf6.
move-not-there = { $written } cannot be played in position { $number }, nor along its lines. Write the moves before it, too, such as 3.Rxd5 Nf6.
nothing-to-reveal = No. { $number } is words alone; there is nothing to reveal.
no-hints = There are no hints for this one; ask your coach.
no-hint = There is no hint from here: the position on the board is no longer part of the solution. Look for the strongest move you can find.
solved-no-hint = You have solved this one; there is nothing left to hint at.
given-up-no-hint = You have given this one up; the solution comes with the reveal.
has-solved = You have solved this one already.
line-fails = The line played so far cannot be set up at { $at }.
nothing-to-say = There is nothing to say in this; write a word.
talk-too-long = This is too long; { $most } characters are the most. Send it in parts.
name-yourself = Say first what the group should call you.

## Names

name-blank = There is nothing to read in this name. Choose another name; "{ $offer }" is free.
name-reserved = "{ $name }" cannot be a name here: it could be read as a coach's, or as the program's own. Coaches get the word Coach beside their name by themselves. Choose another name; "{ $offer }" is free.
name-in-use = Somebody in the group is called "{ $name }" already, or something that looks like it. Choose another name; "{ $offer }" is free.

## Posts and the queue

sealed-still = Position { $number } is still open; its solution stays sealed until the reveal.
not-out-yet = This post is still on its way out; close it once it is there.
closing-already = This post is being closed already; its reveal is on the way.
closed-already = This post is closed already.
was-posted = { $position } was posted before, as No. { $number } on { $on }; say that it is to go out again, or choose another.
illegal-position = This position is not a legal one and cannot be posted.
cannot-be-set-up = The position cannot be set up: { $why }.
not-sound = { $soundness ->
    [sound] { $position } is sound, so it is not queued. Look at its report, mend it, or say that it is to be posted anyway.
    [several-keys] { $position } has more than one key, so it is not queued. Look at its report, mend it, or say that it is to be posted anyway.
    [short] { $position } can be solved in fewer moves than asked, so it is not queued. Look at its report, mend it, or say that it is to be posted anyway.
    [unsound] { $position } does not hold what it promises, so it is not queued. Look at its report, mend it, or say that it is to be posted anyway.
    [illegal] { $position } cannot be used, so it is not queued. Look at its report and mend it.
   *[undecided] { $position } could not be decided in the time allowed, so it is not queued. Look at its report, mend it, or say that it is to be posted anyway.
}
cannot-be-drawn = This position cannot be drawn.
time-past = { $at } is past; it is { $now } now in { $zone }. Choose a later time, or post at once.
time-taken = Another position is fixed to { $at } already; choose another time.
slot-taken = Another post goes out at that very moment; choose another time.
pause-past = The end of the pause is past already; choose a later one.
not-a-time = "{ $words }" is not a time of day; write hours and minutes such as 18:00.
no-times = No time of day is set; give at least one, such as 18:00.
time-twice = { $at } is there twice; give each time of day once.
too-many-times = A group has at most { $most } times of day to post at; leave some out.
# $next: the first time after the gap, or none.
clocks-leave-out = { $next ->
    [none] The clocks in { $zone } leave out { $at }: they are put forward there.
   *[other] The clocks in { $zone } leave out { $at }: they are put forward there. Choose { $next } or later.
}

## What a coach hands over or writes

file-too-heavy = { $file } weighs { $size } MB; { $most } MB are the most. Split it and send the parts.
no-positions = There is no position in { $file }. Positions come as EPD, as PGN with FEN tags, or as FEN, one a line.
name-needed = { $what ->
    [group] The group needs a name; write at least one letter.
    [topic] The topic needs a name; write at least one letter.
    [lesson] The lesson needs a title; write at least one letter.
   *[file] The file needs a name; write at least one letter.
}
name-too-long = { $what ->
    [group] The name of the group is too long; { $most } characters are the most.
    [topic] The name of the topic is too long; { $most } characters are the most.
    [lesson] The title of the lesson is too long; { $most } characters are the most.
   *[file] The name of the file is too long; { $most } characters are the most.
}
words-too-long = { $when ->
    [post] The words for the post are more than { $most } characters; shorten them.
   *[reveal] The words for the reveal are more than { $most } characters; shorten them.
}
words-tell-move = The words for the post tell a move ({ $line }). Keep them for the reveal, or say that they are to go out with the post all the same.
words-wanted = There are no words yet; write what the group is to read.
nothing-to-choose = There is nothing to choose about this position.
no-lesson = There is no such lesson here (any more); `sealed-move lesson list` shows those there are.
no-draft = There is no such draft here (any more).
no-step = The lesson has no step { $step }; its steps are 1 to { $steps }.
lesson-there = There is a lesson called "{ $title }" already; give this one another title, or remove the other first.
lesson-went-out = Something of "{ $title }" was posted, so it stays as it is; give what you have written another title, and it is taken in as another lesson.
lesson-all-out = Everything in "{ $title }" is in the week or was posted before; say that it is to go out again to post it once more.
would-tell = It would give away the answer to No. { $number }, which is still open. It can go out when that is closed.
would-tell-other = It would give away the answer to another position of the week, which has to go out and be closed first.

## A coach's verdicts, answers and members

answer-wanted = Write the answer first; if none is needed, say "no answer needed".
answer-too-long = The answer is too long; { $most } characters are the most.
nothing-to-overrule = Nothing has decided this reply yet, so there is nothing to overrule. Judge it, answer it in private, or say that it needs no answer.
points-range = Points go from 0 to 5.
marked-not-judged = This answers a question, which has no right or wrong. Give it points, answer it in private, or say that it needs no answer.
judged-not-marked = This answers a position; give it a verdict together with the points.
words-to-member-too-long = The words to the member are too long; { $most } characters are the most.
message-taken-back = Its writer took this back; only messages that a coach has hidden can be shown again.
answer-taken-back = Its writer took this back; only answers that a coach has hidden can be shown again.
mute-length = A member is muted for a minute at least and a year at most, or until you lift it.
reason-too-long = The reason is too long; { $most } characters are the most.
same-member = That is one member already; choose two.
removed-not-merged = One of the two is removed from the group. Let them back first, then merge.
browser-taken = This browser belongs to { $name } already. Ask your coach to make the two of you one.
no-coach-of-this = This person does not coach the group.
last-coach = A group needs a coach; name another one first.

## Settings and figures

group-already = This place is the group "{ $name }" already; change its settings instead.
days-of-week = The days are those of one week; bit 0 is Monday and bit 6 is Sunday.
open-between = A post stays open for at least one minute and at most 31 days (44,640 minutes).
price-range = { $what ->
    [wrong] The price of a wrong first move is between 0 and 5 points.
   *[hint] The price of a hint is between 0 and 5 points.
}
period-backwards = The period ends ({ $last }) before it begins ({ $first }); write the earlier day first.
no-period = "{ $words }" is no period. Write one of these: { $examples }.
no-topics-yet = There is no topic "{ $topic }": this group has no topics yet. Leave the topic out to see everything.
no-such-topic = { $alike ->
    [yes] There is no topic "{ $topic }". Nearest: { $near }.
   *[no] There is no topic "{ $topic }". There are: { $near }.
}
several-topics = Several topics could be "{ $topic }": { $several }. Write the one you mean as it is written there.
table-fails = The table could not be written; please tell whoever runs the bot.
quoted = "{ $words }"

## The program

store-fails = { $why ->
    [full] The store could not be used: its disk is full. Nothing that was already kept is lost; try again in a while, and tell whoever runs the bot if it stays so.
    [busy] The store could not be used: another program holds it. Nothing that was already kept is lost; try again in a while, and tell whoever runs the bot if it stays so.
    [read-only] The store could not be used: its disk cannot be written. Nothing that was already kept is lost; try again in a while, and tell whoever runs the bot if it stays so.
    [damaged] The store could not be used: a value in it cannot be read. Nothing that was already kept is lost; please tell whoever runs the bot.
    [stopped] The store could not be used: it has stopped. Nothing that was already kept is lost; try again in a while, and tell whoever runs the bot if it stays so.
   *[other] The store could not be used: the log says why. Nothing that was already kept is lost; try again in a while, and tell whoever runs the bot if it stays so.
}
picture-fails = The picture could not be drawn; please tell whoever runs the bot.
broke = Something went wrong inside the bot. What was kept before is not lost; please tell whoever runs the bot.

## Topic cards

no-card = There is no such card; choose one of the list.
no-card-of = There is no card of "{ $topic }"; choose one of the list.
card-held-back = This card is held back for now: it would tell of a position that is open. It is here again after that position's reveal.
card-is-ours = This card is the program's own, and there is nothing to take back.
card-without-words = Write what the topic is about; a card needs a definition.
card-too-long = { $part ->
    [definition] The definition is more than { $most } characters; shorten it.
   *[look] What to look for is more than { $most } characters; shorten it.
}
moves-without-position = There are moves but no position; give the example's FEN too, or leave the moves out.
example-fails = { $after ->
    [0] The example cannot be played: { $at } is no legal move in its position.
    [one] The example cannot be played: after { $after } move, { $at } is no legal one.
   *[other] The example cannot be played: after { $after } moves, { $at } is no legal one.
}
example-too-long = The example has more than { $most } moves of both sides together; end it sooner.

## The editor

no-move-here = "{ $written }" is no legal move here; write it as in Nf3, or play it on the board.
line-breaks = { $after ->
    [0] The moves do not fit the position: { $at } is no legal move in it. Put the position right, or remove the moves.
    [one] The moves do not fit the position: after { $after } move, { $at } is no legal one. Put the position right, or remove the moves from there.
   *[other] The moves do not fit the position: after { $after } moves, { $at } is no legal one. Put the position right, or remove the moves from there.
}
board-line-too-long = The line has more than { $most } moves of both sides together; end it sooner.
draft-too-large = This is more than { $most } characters; make two of it.
draft-empty = The draft has no step yet; add one, then take it in.
draft-changed = The draft was written to elsewhere meanwhile; look at it once more, then take it in.
# $what is a statement that begins with a small letter and has no full stop.
draft-step-wrong = Step { $step } is not finished: { $what }.
edit-unreadable = It cannot be read: { $what }.
edit-not-one = One position is wanted here, as a game of PGN or a FEN; write that and nothing else.
edit-no-task = No task is given, and none was found; write #1 to #20 for a mate, + for a win or = for a draw.
edit-bad-task = The task cannot be read: { $why }.
position-there = The group has this position with this task already, as { $position }; change that one, or make this one different.
position-went-out = It was posted as No. { $number }, and what members answered belongs to it, so it stays as it is. Write the changed position under Check as a new one.
position-in-lesson = It is a stop of step { $step } of the lesson "{ $title }"; open the lesson in the editor on the coach's page and change it there.
