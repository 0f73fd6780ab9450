# On Discord: messages among others, direct ones, and those that wait for their writer's word.

## To the writer alone. ||…|| are spoiler marks.

quoted-answer = "{ $quote }"
taken-out-of-sight = You wrote this where the others can read it, so I have taken it out of sight for you: ||{ $quote }||
please-delete = You wrote this where the others can read it, and I may not take it away. Please delete it, so that they can think for themselves: ||{ $quote }||
still-there = The message is still there for all to read; please delete it.
edit-stands = Your answer counts as you first sent it; editing the message changes nothing. To answer again, send a new one.
on-your-answer = On your answer "{ $quote }":
# A coach's private answer; the words stand below.
coach-answers-post = { $kind ->
    [problem] Your coach answers you on position { $number }:
    [question] Your coach answers you on question { $number }:
   *[words] Your coach answers you on post { $number }:
}
coach-answers-quote = { $kind ->
    [problem] Your coach answers you on "{ $quote }" (position { $number }):
    [question] Your coach answers you on "{ $quote }" (question { $number }):
   *[words] Your coach answers you on "{ $quote }" (post { $number }):
}
named-coach-answers-post = { $kind ->
    [problem] Your coach { $coach } answers you on position { $number }:
    [question] Your coach { $coach } answers you on question { $number }:
   *[words] Your coach { $coach } answers you on post { $number }:
}
named-coach-answers-quote = { $kind ->
    [problem] Your coach { $coach } answers you on "{ $quote }" (position { $number }):
    [question] Your coach { $coach } answers you on "{ $quote }" (question { $number }):
   *[words] Your coach { $coach } answers you on "{ $quote }" (post { $number }):
}
there-to-be-read = That post is there to be read and takes no answers, so I have left your reply to the group as talk.

## Which position is meant

which-position = More than one position is open. Which one do you mean?
which-group = Several of your groups have a position open. Which one do you mean?
fits-another = These moves fit position { $number }, not the one you sent them to. Send them there?
fits-several = These moves fit positions { $numbers }. Which one do you mean?
# $hidden: whether the message was taken out of sight.
may-tell-move = { $hidden ->
    [yes] This may give away a move of position { $numbers }, which is still open, so nobody else sees it yet. What is it to be?
   *[no] This may give away a move of position { $numbers }, which is still open. What is it to be?
}
may-be-an-answer = { $hidden ->
    [yes] Is this your answer to question { $number }, or a word to all? Nobody else sees it yet.
   *[no] Is this your answer to question { $number }, or a word to all?
}
# $posts: several of answer-to.
could-answer = This could answer { $posts }. Which one do you mean?
# Part of a sentence.
answer-to = { $kind ->
    [problem] position { $number }
    [question] question { $number }
   *[words] post { $number }
}
# On a button.
post-named = { $kind ->
    [problem] Position { $number }
    [question] Question { $number }
   *[words] Post { $number }
}
post-on = { $kind ->
    [problem] Position { $number } · { $topic }
    [question] Question { $number } · { $topic }
   *[words] Post { $number } · { $topic }
}
post-of-group = { $kind ->
    [problem] { $group }: position { $number }
    [question] { $group }: question { $number }
   *[words] { $group }: post { $number }
}

## What waits for its writer's word

held-gone = That message waits no longer: it was settled, changed, or its position has closed. Write it again if you like.
held-none = No message of yours waits here.
held-said = Said to all, in your name.
held-stays = It stays where you wrote it.
held-dropped = Dropped; nothing is kept of it.

## For all to see

some-member = A member
answer-sealed = { $name }, your answer is taken, and sealed. Press { button-my-progress } to see what came of it.
answer-sealed-of-somebody = A member's answer is taken, and sealed. If it is yours, press { button-my-progress } to see what came of it.
waits-for-word = { $name }, your message waits for your word, and nobody else sees it until then. Press { button-decide } to say what it is to be.
waits-for-word-of-somebody = A member's message waits for its writer's word, and nobody else sees it until then. If it is yours, press { button-decide } to say what it is to be.
# At most 30 characters: behind spoiler marks all are made equally long.
verdict-word = { $verdict ->
    [solved] solved
    [on-the-way] right so far
    [wrong] not the solution
    [illegal] not a legal move
    [unclear] not settled yet
   *[unreadable] not readable
}
# As verdict-word.
kept-word = waits for the coach
marked-word = marked
has-answered = { $name } has answered: ||{ $word }||

## Buttons; at most 80 characters

button-it-is-my-answer = It is my answer
button-answer-to = { $kind ->
    [problem] Answer to position { $number }
    [question] Answer to question { $number }
   *[words] Answer to post { $number }
}
button-send-to = { $kind ->
    [problem] Send it to position { $number }
    [question] Send it to question { $number }
   *[words] Send it to post { $number }
}
button-say-to-all = Say it to all
button-may-stay = It may stay
button-drop-it = Drop it
button-decide = Decide
