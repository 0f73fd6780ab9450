# On Discord: messages among others, direct ones, and those that wait for their writer's word.

## To the writer alone. ||…|| are spoiler marks.

quoted-answer = "{ $quote }"
taken-out-of-sight = You wrote this where the others can read it, so I have taken it out of sight for you: ||{ $quote }||
please-delete = You wrote this where the others can read it, and I may not take it away. Please delete it, so that they can think for themselves: ||{ $quote }||
still-there = The message is still there for all to read; please delete it.
edit-stands = Your answer counts as you first sent it; editing the message changes nothing. To answer again, send a new one.
on-your-answer = On your answer "{ $quote }":
# A coach's private answer; the words stand below.
coach-answers-position = Your coach answers you on position { $number }:
coach-answers-quote = Your coach answers you on "{ $quote }" (position { $number }):
named-coach-answers-position = Your coach { $coach } answers you on position { $number }:
named-coach-answers-quote = Your coach { $coach } answers you on "{ $quote }" (position { $number }):

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
# On a button.
position-on = Position { $number } · { $topic }
position-of-group = { $group }: position { $number }

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
has-answered = { $name } has answered: ||{ $word }||

## Buttons; at most 80 characters

button-it-is-my-answer = It is my answer
button-answer-to = Answer to position { $number }
button-send-to = Send it to position { $number }
button-say-to-all = Say it to all
button-may-stay = It may stay
button-drop-it = Drop it
button-decide = Decide
