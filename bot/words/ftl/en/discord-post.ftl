# On Discord: what a post and its reveal say, for all to see.

## A post

# The first words of a post; by them it is found again in the channel.
post-heading = { $kind ->
    [problem] **Position { $number }**
    [question] **Question { $number }**
   *[words] **Post { $number }**
}
lesson-step = Lesson “{ $title }”, step { $step } of { $steps }
# $closes and $away: the same moment, as Discord shows it to each reader.
answers-sealed = Answers are sealed until { $closes } ({ $away }).
answers-open = Verdicts come behind spoiler marks, and answers are taken until { $closes } ({ $away }).
# Small print.
how-to-answer = { $thread ->
    [yes] -# Press { button-answer }, write to me directly, reply to this message, or use /study answer. Talk goes into the thread.
   *[no] -# Press { button-answer }, write to me directly, reply to this message, or use /study answer.
}
post-closed = Closed; the solution is below.
question-taken = Answers in your own words are taken until { $closes } ({ $away }); only your coach reads them, unless you allow more.
how-to-respond = { $thread ->
    [yes] -# Press { button-answer }, write to me directly, or reply to this message. Talk goes into the thread.
   *[no] -# Press { button-answer }, write to me directly, or reply to this message.
}
question-closed = Closed.
# At most 100 characters.
thread-name = { $kind ->
    [problem] Position { $number }
    [question] Question { $number }
   *[words] Post { $number }
}
thread-name-topic = { $kind ->
    [problem] Position { $number } · { $topic }
    [question] Question { $number } · { $topic }
   *[words] Post { $number } · { $topic }
}

## A reveal

# The first words of a reveal; by them it is found again in the channel.
reveal-heading = **Position { $number }: the solution**
more-variations = { $more ->
    [one] … and one more variation
   *[other] … and { $more } more variations
}
mating-patterns = { $number ->
    [one] Pattern: { $patterns }.
   *[other] Patterns: { $patterns }.
}
coach-notes = The coach's notes:
commonest-wrong = { $times ->
    [one] The commonest wrong move was { $played }, chosen once. It fails to { $line }.
   *[other] The commonest wrong move was { $played }, chosen { $times } times. It fails to { $line }.
}
commonest-wrong-because = { $times ->
    [one] The commonest wrong move was { $played }, chosen once. It fails to { $line }, because { $why }.
   *[other] The commonest wrong move was { $played }, chosen { $times } times. It fails to { $line }, because { $why }.
}
nobody-took-part = Nobody took part.
stayed-unsolved = { $tried ->
    [one] One member tried, and it stayed unsolved.
   *[other] { $tried } members tried, and it stayed unsolved.
}
solved-by = Solved by { $solved } of { $tried }: { $names }.
names-and-more = { $names } and { $more } more
# In the thread.
solution-is-out = The solution is out. Talk as you like: nothing here is sealed any more.
# The first words of a question's close, as reveal-heading.
question-is-closed = **Question { $number } is closed**
nobody-answered = Nobody answered.
answered-by = Answered by { $names }.
# In the thread.
question-is-over = The question is closed. Talk about it as you like.
# Answers that have no mark yet.
answers-wait = { $waiting ->
    [one] -# One answer still waits for the coach's mark.
   *[other] -# { $waiting } answers still wait for the coach's mark.
}
# An answer that its writer allows to be shown, and the coach's words beside it. $quote: the answer.
example-heading = **Question { $number }: an answer as an example**
example-of =
    > { $quote }
    -# { $name }
example-nameless =
    > { $quote }
    -# from the group, without a name
example-words = The coach: { $words }
example-taken-back = **Question { $number }**: the answer that stood here was taken back.
