# The leaderboard and the engagement summary in words, and what to teach next.

## The days a report covers

covers-all = all posts so far
covers-since = since { $first }
covers-up-to = up to { $last }
covers-day = { $day }
# $first: the day of the month.
covers-days-of-month = { $first } to { $last }
# $first: day and month.
covers-days-of-year = { $first } to { $last }
covers-days = { $first } to { $last }

## The leaderboard

figures-board = Leaderboard, { $period }
figures-board-topic = Leaderboard, { $topic }, { $period }
no-points-yet = No points yet: they count when a post is closed.
figures-board-row = { $points ->
    [one] { $rank }. { $name }: { $points-text } point, { $solved } of { $tried } solved
   *[other] { $rank }. { $name }: { $points-text } points, { $solved } of { $tried } solved
}
figures-board-asked = { $rank }. { $name }: { $points ->
    [one] { $points-text } point
   *[other] { $points-text } points
}, { $answered ->
    [one] { $answered } question answered
   *[other] { $answered } questions answered
}
figures-board-both = { $rank }. { $name }: { $points ->
    [one] { $points-text } point
   *[other] { $points-text } points
}, { $solved } of { $tried } solved, { $answered ->
    [one] { $answered } question answered
   *[other] { $answered } questions answered
}

## The summary

figures-summary = Engagement summary, { $period }
figures-attempts = { $posts ->
    [one] { $posts } post
   *[other] { $posts } posts
}, { $tried ->
    [one] { $tried } attempt
   *[other] { $tried } attempts
}, { $percent ->
    [none] { $solved } solved
   *[other] { $solved } solved ({ $percent }%)
}, { $first } at the first try.
figures-answers = { $questions ->
    [one] { $questions } question
   *[other] { $questions } questions
}, { $answered ->
    [one] { $answered } answer
   *[other] { $answered } answers
}.
figures-member = { $name }: { $points ->
    [one] { $points-text } point
   *[other] { $points-text } points
}, { $tried } tried, { $solved } solved, { $first } at the first try, { $hints ->
    [one] { $hints } hint
   *[other] { $hints } hints
}
figures-member-asked = { $name }: { $points ->
    [one] { $points-text } point
   *[other] { $points-text } points
}, { $answered ->
    [one] { $answered } question answered
   *[other] { $answered } questions answered
}
figures-member-both = { $name }: { $points ->
    [one] { $points-text } point
   *[other] { $points-text } points
}, { $tried } tried, { $solved } solved, { $first } at the first try, { $hints ->
    [one] { $hints } hint
   *[other] { $hints } hints
}, { $answered ->
    [one] { $answered } question answered
   *[other] { $answered } questions answered
}
figures-did-not-answer = Did not answer: { $names }
figures-went-quiet = Went quiet: { $names }
figures-went-quiet-since = Went quiet ({ $recent }, after { $before }): { $names }
figures-came-back = Came back: { $names }
figures-post = { $topic ->
    [none] Position { $number }
   *[other] Position { $number }, { $topic }
}, { $task }: { $tried } tried, { $percent ->
    [none] { $solved } solved
   *[other] { $solved } solved ({ $percent }%)
}, { $first } at the first try.
figures-missed = Most often wrong: { $moves }.
missed-move = { $played } ({ $count })
missed-refuted = { $played } ({ $count }; { $refuted })
figures-asked = { $kind ->
    [question] Question
   *[words] Post
} { $topic ->
    [none] { $number }
   *[other] { $number }, { $topic }
}: { $answered ->
    [one] { $answered } answer
   *[other] { $answered } answers
}.
figures-topic = { $topic }: { $posts ->
    [one] { $posts } post
   *[other] { $posts } posts
}, { $tried ->
    [one] { $tried } attempt
   *[other] { $tried } attempts
}, { $percent ->
    [none] { $solved } solved
   *[other] { $solved } solved ({ $percent }%)
}, { $first } at the first try
figures-topic-asked = { $topic }: { $questions ->
    [one] { $questions } question
   *[other] { $questions } questions
} with { $answered ->
    [one] { $answered } answer
   *[other] { $answered } answers
}
figures-who-took-part = Who took part
figures-posts = Posts
figures-topics = Topics, weakest first
figures-what-next = What to teach next

## What to teach next

advice-nothing-closed = No post was closed in this period, so there is nothing to build on yet.
advice-only-questions = Only questions were answered in this period; what to teach next stands in the answers.
advice-nobody = Nobody answered in this period. Ask the group whether the days and the hour suit them, and post something easier.
advice-few = Too few answers yet ({ $tried } in all) to say what to teach next.
advice-few-so-far = Too few answers yet ({ $tried } in all) to say what is weak; { $topic } did least well so far, { $solved } of { $of } solved, which may be chance.
advice-teach-again = Teach { $topic } again: { $solved } of { $of } attempts solved it.
advice-stay = Stay with { $topic } a little longer: { $solved } of { $of } attempts solved it, { $first } of them at the first try.
advice-ready = The group is ready for something new or harder: even { $topic }, its weakest topic, was solved in { $solved } of { $of } attempts.
advice-near = { $topics } went about as well.
near-topic = { $topic } ({ $solved } of { $of })
advice-many-near = { $number } other topics went about as well.
advice-begin = Begin with post { $number }: { $count } of { $of } played { $played }.
advice-begin-refuted = Begin with post { $number }: { $count } of { $of } played { $played }, which fails to { $refuted }.
advice-first-tries = Only { $first } of { $solved } solutions came at the first try: practise looking for the defence before answering.
advice-quiet = A word to { $names } could bring them back.
advice-many-quiet = A word to { $names } and { $others } others could bring them back.
