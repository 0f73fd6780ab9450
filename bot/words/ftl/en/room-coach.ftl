# The coach's page of the club room. $number is the number of a post, $at a time (a time of day, with the
# day before it where it is not today); $name, $names, $topic, $group, $source, $id and $why are people's own words.
# $task is a sign such as #2.

## Around everything

coaching-title = Coach's page
coaching-heading = { $group }: coach
coaching-window = Coach: { $group }
coaching-skip = Skip to the page
coaching-parts = Parts of the coach's page
coaching-nav-week = Week
coaching-nav-check = Check
coaching-nav-summary = Summary
coaching-nav-room = Members' page
coaching-posts = Posts
coaching-members = Members
coaching-settings = Settings
coaching-no-script = This page needs JavaScript. Allow it for this address, then load the page again.
coaching-broken-line = The connection is broken; it will be tried again by itself.
coaching-notes = Words from the bot
coaching-earlier-notes = Earlier words from the bot
# $label is what a button says, $id or $item (coaching-item, coaching-item-written) what it is for.
coaching-about = { $label }: { $id }
coaching-about-item = { $label }: { $item }
# What waits, in the middle of a sentence; $words are the beginning of a question or of words to be read.
coaching-item = { $task } from { $source }
coaching-item-written = { $kind ->
    [question] question: { $words }
   *[words] words: { $words }
}

## Coming in

coaching-who = Who coaches here?
coaching-your-name = Your name
coaching-go-on = Go on
# $mark is room-coach.
coaching-who-what = The group sees it beside your words, with the mark { $mark }. It tells several coaches apart, too: what each of you does is kept with this name. Asked once in each browser.
coaching-here-already = I coach here already, on another device
# “My work” is room-mine, “Use another device too” is room-device-new.
coaching-code-what = On the other device, open the members' page, there “My work”, and press “Use another device too”.
# “Go on” is coaching-go-on.
coaching-you-are = You are { $name } here. Press “Go on” to coach under this name.

## How the chats fare. $name is a chat, such as Discord; $why is a sentence with its full stop.

coaching-chats = Chats
coaching-chat-starting = { $name } is being started.
coaching-chat-up = { $name } is connected, since { $since }.
coaching-chat-wavering = { $name } is not connected, since { $since }: { $why } It connects anew by itself.
coaching-chat-failing = { $name } is not connected, since { $since }: { $why } It is tried again at { $next }.
coaching-chat-refused = { $name } is not connected, since { $since }: { $why }
coaching-chat-stopped = { $name } is stopped.

## The week

coaching-week = The week
coaching-open = No. { $number } is open.
coaching-open-topic = No. { $number } is open: { $topic }.
# $until: such as “in 3 hours”.
coaching-it-closes = It closes { $at } ({ $until }).
coaching-read-replies = Read the replies
coaching-close-now = Close now with the reveal
coaching-close-sure = Close No. { $number } now? Everyone sees the solution, and no more answers are taken.
coaching-close = Close with the reveal
coaching-leave-open = Leave it open
coaching-closing = No. { $number } is closing; the reveal goes out now.
coaching-paused-until = Posting is paused until { $at }.
coaching-paused = Posting is paused until you resume.
coaching-resume = Resume
coaching-resumed = Posting goes on.
coaching-pause-posting = Pause posting
coaching-pause-until = Until the morning of (empty: until you resume)
coaching-pause = Pause
coaching-pause-done = Posting is paused.
coaching-nothing-waits = Nothing is waiting. When a post is due and the week is empty, the bot tells you; it never posts anything unchecked.
coaching-check-for-week = Check positions for the week
# Instead of a time, and after one.
coaching-no-time = { $why ->
    [not-sound] no time: it was not found sound
    [paused] no time: posting is paused
    [no-days] no time: the calendar has no days
   *[waits] no time: what it waits for has none
}
coaching-waits-for-post = It would tell, and waits for the reveal of No. { $number }.
coaching-waits-for-item = It would tell, and waits for the reveal of { $item }.
coaching-step-of = Step { $step } of { $steps } of the lesson “{ $title }”
coaching-due-fixed = { $at }, fixed
# What is said of a position, one after the other.
coaching-also = also { $topics }
coaching-again-as = again: posted before as No. { $number }
coaching-difficulty = difficulty { $level } of 10
coaching-topic-not-verified = topic not verified
coaching-sound = { $verdict ->
    [sound] sound
    [several-keys] more than one key
    [short] a shorter mate is possible
    [unsound] not sound
    [illegal] cannot be used
   *[undecided] not decided in the time given
}
coaching-diagram-of = Diagram of { $fen }
coaching-drag = Drag to another place
coaching-no-topic = No topic
coaching-topic-of = Topic of { $item }
coaching-topic-set = Topic set: { $topic }.
coaching-topic-gone = Topic set: none.
coaching-earlier = Earlier
coaching-later = Later
coaching-moved-of = Moved to place { $place } of { $count } in the week.
coaching-stays-at = It stays at place { $place } of { $count } in the week.
coaching-post-now = Post now
coaching-post-now-sure = Post { $item } now, before its time?
coaching-post-it-now = Post it now
coaching-wait = Wait
coaching-goes-out = It goes out now.
coaching-take-out = Take out
coaching-take-out-of-week = Take out of the week
coaching-taken-out = Taken out of the week; it lies on the shelf.
coaching-taken-away = Taken out of the week.
coaching-undo = Undo
coaching-put-back = Put back
coaching-put-back-done = It is back at its place.
coaching-taken-at = Taken out { $at }
coaching-taken-out-list = Taken out lately ({ $count })
coaching-place-of = Place of { $item } in the week
coaching-move-there = Move to this place
coaching-place-wanted = A place in the week is a number from 1 to { $count }.
coaching-day-and-time = Day and time
coaching-time-of = Day and time of { $item }, in { $zone }
coaching-in-zone = In the group's zone, { $zone }.
coaching-fix = Fix
coaching-fix-of = Fix the time of { $item }
coaching-fixed = The time is fixed.
coaching-unfix = Leave it to the calendar
coaching-unfixed = The calendar decides.
coaching-as-members = As members will see it

## Checking

coaching-check = Check positions
coaching-paste = Paste EPD, PGN or FEN lines, or drop a file here
coaching-check-pasted = Check what is pasted
coaching-choose-file = Choose a file
coaching-check-what = Up to 16 MB. Every position is checked by exhaustive search where a mate is asked for, before it can be posted. Nothing goes out from here by itself.
# A question, or words to be read.
coaching-write = Write a question, or words to be read
coaching-write-words = The words, at most 1,000 characters
coaching-write-fen = A position beside them (FEN), if you like
coaching-write-reveal = Of a question: your own words on it, shown when it is closed
coaching-queue-question = Put it into the week as a question
coaching-queue-words = Put it into the week to be read
coaching-write-what = Members answer a question in their own words, and you mark what they write; nobody else sees it unless its writer allows that. Words to be read take no answers.
coaching-question-waits = The question waits at the end of the week.
coaching-words-wait = The words wait at the end of the week.
# Of a file.
coaching-written-found = Questions and words in the file: { $count }
coaching-with-position = With the position { $fen }
coaching-waits-at-end = It waits at the end of the week.
coaching-nothing-pasted = There is nothing pasted yet.
# The name of what was pasted, as a file: an ending follows.
coaching-pasted = pasted
coaching-file-too-large = { $name } is larger than 16 MB. Split it, then check the parts one by one.
coaching-reading = Reading { $name }…
coaching-positions-checked = Positions checked
coaching-checked-of = { $count ->
    [one] { $done } of { $count } position checked
   *[other] { $done } of { $count } positions checked
}
coaching-checked = { $count ->
    [one] { $count } position checked, { $sound } sound
   *[other] { $count } positions checked, { $sound } sound
}
coaching-left-out = { $count ->
    [one] { $count } position posted before left out: see below.
   *[other] { $count } positions posted before left out: see below.
}
coaching-add-sound = { $count ->
    [one] Put the sound one into the week
   *[other] Put the { $count } sound ones into the week
}
coaching-shelf = On the shelf: checked earlier, in no week ({ $count })
coaching-more = Show { $count } more
# $found is coaching-sound.
coaching-outcome = { $id }: { $found }
coaching-keys = { $count ->
    [one] Key: { $keys }
   *[other] Keys: { $keys }
}
coaching-variations = Variations ({ $count })
coaching-tries = Tries and what refutes them ({ $count })
coaching-note = Note: { $text }
coaching-proved = Proved by exhaustive search.
coaching-judged-at = Judged at depth { $depth }.
coaching-level = Difficulty about { $level } of 10.
coaching-keep-old = Keep the old one
coaching-take-new = Take the new one
coaching-keep-both = Keep both topics
coaching-posted-before = Posted before, as No. { $number } on { $at }.
coaching-words-with-post = Your words with the post
coaching-words-at-reveal = Your words at the reveal
coaching-change-words = Change the words
coaching-with-post = With the post
coaching-at-reveal = At the reveal
coaching-words-anyway = Send the words for the post even if they tell a move of the position
coaching-keep-words = Keep these words
coaching-words-kept = These words are kept.
coaching-in-week = In the week.
coaching-see-week = See the week
coaching-enqueue = Put into the week
coaching-enqueue-again = Put into the week again
coaching-post-anyway = Post it anyway
coaching-post-anyway-again = Post it anyway, and again

## Posts and replies

coaching-nothing-posted = Nothing is posted yet.
coaching-open-until = open until { $at }
coaching-posted-at = posted { $at }
coaching-waiting = Waiting for your word ({ $count })
coaching-replies = { $count ->
    [one] { $count } reply
   *[other] { $count } replies
}
# Answers to a question, by the first move found in each. $waiting: how many have no mark.
coaching-answers-by-move = { $count ->
    [one] { $count } answer, grouped by its first move. Waiting for your mark: { $waiting }.
   *[other] { $count } answers, grouped by the first move in each. Waiting for your mark: { $waiting }.
}
coaching-begins-move = { $move } ({ $count }, waiting: { $waiting })
coaching-begins-none = No move ({ $count }, waiting: { $waiting })
coaching-begins-replaced = Answered again since ({ $count })
# How a reply stands, one after the other, after room-verdict.
coaching-points-of = { $points } of 5
coaching-by-coach = by the coach
coaching-answered-privately = answered in private
coaching-needs-no-answer = no answer needed
coaching-told = What the member was told
coaching-private-answer = The private answer
coaching-overrule-more = Overrule …
coaching-judge-more = Judge …
coaching-overrule = Overrule
coaching-judge = Judge
coaching-verdict-on = Verdict on the reply of { $name }
coaching-points-for = Points for the reply of { $name }
coaching-points-range = Points go from 0 to 5.
coaching-word-to = A word to { $name }
coaching-word-placeholder = A word to the member (may be empty)
coaching-answer-privately = Answer in private …
coaching-answer-again = Answer again …
coaching-answer-to = A private answer to { $name }
coaching-only-reads = Only { $name } reads this
coaching-send-answer = Send the answer
coaching-no-answer = No answer needed
# Points for an answer to a question.
coaching-points-for-answer = Points for the answer of { $name }
coaching-mark-more = Mark …
coaching-mark-again = Mark again …
coaching-mark = Mark
# Showing an answer to the group, with its writer's leave.
coaching-show-more = Show as an example …
coaching-show-what = Its writer is asked first, and may leave out their name or say no. It is shown only with their leave, and only after the reveal.
coaching-ask-leave = Ask for leave
coaching-no-longer-show = Do not show it
coaching-beside = Your words beside the answer of { $name }
coaching-beside-placeholder = Your words beside it (may be empty)
coaching-beside-change = Change the words
coaching-leave = { $leave ->
    [none] To be shown: its writer has not said yet
    [named] Shown with its writer's name
    [nameless] Shown without its writer's name
   *[refused] Its writer does not want it shown
}

## The summary

coaching-summary = Engagement summary
coaching-from = From
coaching-to = To, this day included
coaching-show = Show
coaching-took-part = { $members ->
    [one] { $posts ->
        [one] { $members } member took part in { $posts } post.
       *[other] { $members } member took part in { $posts } posts.
    }
   *[other] { $posts ->
        [one] { $members } members took part in { $posts } post.
       *[other] { $members } members took part in { $posts } posts.
    }
}
coaching-kinds = { $problems ->
    [one] { $questions ->
        [one] { $problems } problem and { $questions } question. Rates of solutions are of problems only.
       *[other] { $problems } problem and { $questions } questions. Rates of solutions are of problems only.
    }
   *[other] { $questions ->
        [one] { $problems } problems and { $questions } question. Rates of solutions are of problems only.
       *[other] { $problems } problems and { $questions } questions. Rates of solutions are of problems only.
    }
}
coaching-went-quiet = Gone quiet: { $names }.
coaching-nobody-quiet = Nobody has gone quiet.
coaching-came-back = Came back: { $names }.
coaching-take-away = Take it away:
coaching-csv = { $table ->
    [members] members (CSV)
    [posts] posts (CSV)
   *[topics] topics (CSV)
}
coaching-json = everything (JSON)
# Heads of columns; short.
coaching-number = No.
coaching-hints = Hints
coaching-common-wrong = Commonest wrong moves
coaching-weakest-first = Topics, the weakest first
coaching-chart-in-words = The chart in words

## Talk

coaching-say-as = A word to the group, as { $name } { $mark }
coaching-hide = Hide
coaching-hide-of = Hide the message of { $name }
coaching-hide-answer-of = Hide the answer of { $name }
coaching-hide-sure = Hide this message of { $name }? It disappears for everyone at once. Coaches can still read it, with who hid it and when, and can show it again.
coaching-hide-it = Hide it
coaching-show-again = Show again

## Members

coaching-members-what = Everyone who has given a name here. Nobody can take a name that looks like another one's.
coaching-answers = { $count ->
    [one] { $count } answer
   *[other] { $count } answers
}
# $count is two or more.
coaching-devices = { $count } devices
coaching-removed = Removed
coaching-muted = Muted
coaching-muted-until = Muted until { $at }
coaching-let-back = Let back in
coaching-remove = Remove from the group
coaching-remove-sure = Remove { $name }? Their open pages close at once, and they cannot come back with this name. What they wrote stays. Whoever has the members' link can still come in as somebody new: make a new link under Settings, too, if they must not.
coaching-remove-yes = Remove
coaching-take-kept = Take away what is kept (JSON)
coaching-erase = Erase
coaching-erase-sure = Erase everything of { $name }, on their word? Name, answers, points and messages are gone for good.
coaching-erase-removed-sure = Erase everything of { $name }, on their word? Name, answers, points and messages are gone for good. Nothing is left then to know them by, so they are shut out no longer: make a new link if they must not come back.
coaching-is-coach = A coach. To shut a coach out, make a new coach's link under Settings; after that they are a member like any other.
coaching-rename = Rename
coaching-may-not-talk = { $name } can answer, and not write to the group.
coaching-muted-why = The reason: { $why }.
coaching-unmute = Let talk again
# For how long a member may not write to the group.
coaching-no-talk = No talk
coaching-for-an-hour = For an hour
coaching-for-a-day = For a day
coaching-for-a-week = For a week
coaching-until-lifted = Until I lift it
coaching-mute-why = Reason, which the member reads
coaching-may-be-empty = May be empty
coaching-mute = Mute
# Before a menu of the other members; the first choice is coaching-nobody-else.
coaching-is-also = { $name } is also
coaching-nobody-else = Nobody else
coaching-merge = Make them one
coaching-merge-sure = Make { $other } and { $name } one person, called { $name }? Answers, hints, points and messages of both become one person's. Where both tried the same position, their answers count in the order they came. This cannot be undone.
coaching-deeds = What the coaches did
# $by is a coach's name or coaching-erased-coach, $about a member's or coaching-erased-member.
coaching-deed = { $deed ->
    [hide] { $by } hid a message of { $about }
    [put-back] { $by } showed a message again of { $about }
    [mute] { $by } muted { $about }
    [unmute] { $by } let talk again { $about }
    [remove] { $by } removed { $about }
    [let-back] { $by } let back in { $about }
    [rename] { $by } renamed { $about }
    [merge] { $by } made two members one: { $about }
    [export] { $by } took away what is kept of { $about }
    [erase] { $by } erased a member
    [judge] { $by } judged an answer of { $about }
    [answer] { $by } answered in private { $about }
    [no-answer] { $by } noted that no answer is needed for { $about }
    [member-link] { $by } made a new members' link
    [coach-link] { $by } made a new coach's link
    [coach-came] { $by } came in by the coach's link
    [add-coach] { $by } made a coach of { $about }
    [remove-coach] { $by } took the coach's rank from { $about }
    [settings] { $by } changed the settings
    [post-now] { $by } posted at once
    [close-now] { $by } closed early
    [pause] { $by } paused the posts
    [resume] { $by } let posts go out again
    [write-card] { $by } wrote a topic card
    [take-back-card] { $by } took a topic card back
   *[other] { $by } did something else
}
coaching-erased-coach = A coach who is erased
coaching-erased-member = a member who is erased

## Settings

coaching-group-name = Name of the group
coaching-zone = Time zone (IANA name, such as Europe/Lisbon)
coaching-no-zone = “{ $zone }” is no time zone of the IANA list; choose one that is offered, such as Europe/Lisbon.
coaching-post-time = Posts go out at
coaching-post-time-nth = Time { $place } of the day
coaching-post-time-more = Add another time
coaching-post-time-less = Leave this time out
coaching-post-times-what = With several times a day, posts overlap when the next one goes out before the reveal.
coaching-days = On these days
coaching-open-hours = Hours from the post to its reveal
coaching-answers-are = Answers
coaching-mode = { $mode ->
    [sealed] Sealed: only the member and you see an answer before the reveal
   *[open] Open: answers show to the group, behind a spoiler mark
}
coaching-letters = Piece letters read first
coaching-look = Look of the diagrams
coaching-style = { $style ->
    [print] Printed page
    [light] Calm tint, light
    [dark] Calm tint, dark
   *[contrast] High contrast
}
coaching-points = Points (5 for a position; one that is posted keeps its prices)
coaching-scale = { $scale ->
    [club] Club: tries and hints take a little off
   *[tournament] Tournament: nothing after a wrong first move
}
coaching-wrong-cost = Points off for each wrong first move, by the club's scale
coaching-hint-cost = Points off for each hint
coaching-least = By the club's scale, whoever solves a position without being shown the move keeps at least 1 point.
coaching-defences-are = Defences when a line is played out
coaching-defences = { $defences ->
    [same] Every member meets the same defence
   *[differ] Of defences that last equally long, members meet different ones
}
coaching-save = Save the settings
coaching-saved = Saved. The week's times follow.
coaching-own-language = Your own language
coaching-member-link = The link for members
coaching-member-link-what = Whoever has it can come in. Give it to your group only, not on a public page.
coaching-copy = Copy
coaching-copied = Copied.
coaching-new-link = Make a new link
coaching-new-link-sure = Make a new link? The old one stops working at once. Every member is told so on their open page, and has to come in by the new one.
coaching-new-link-made = The old link is dead. Send this one to your members.
coaching-coach-link = The coach's link
coaching-coach-link-what = Whoever has it is a coach here. The bot prints it when it starts. Make a new one when the old one may have come into wrong hands, or when somebody coaches no longer: it stops for all but you, and who should stay a coach comes in by the new one.
coaching-new-coach-link = Make a new coach's link
coaching-new-coach-link-is = The new coach's link
coaching-new-coach-link-sure = Make a new coach's link? The old one stops working at once. Every other coach is told so on their open page, and is a coach again only by the new one. You stay in.
coaching-new-coach-link-made = The old link is dead. Keep this one safe, and give it to your fellow coaches only.

## Lessons

coaching-lessons = Lessons
coaching-lesson-paste = A lesson as PGN, a game for each step
coaching-lesson-title = Title, instead of the file's own
coaching-lesson-take-in = Take the lesson in
coaching-lesson-what = Words before the first move open a step. A move whose comment begins with [stop] is asked for; [stop #2] says what is asked. Moves without a stop are an example, no moves are words with a picture, and words that end with a question mark are an open question.
coaching-no-lessons = There are no lessons yet.
coaching-lesson-kept = { $broken ->
    [0] “{ $title }” is kept. Look it through, then put it into the week.
    [one] “{ $title }” is kept without the step that could not be read, which stands below with what is wrong.
   *[other] “{ $title }” is kept without the { $broken } steps that could not be read, which stand below with what is wrong.
}
coaching-lesson-not-kept = Nothing is kept, for no step could be read; what is wrong stands below.
# $steps, $parts: how many; $waiting of the parts are in the week, $posted were posted.
coaching-lesson-count = Steps: { $steps }. Parts: { $parts }, of which { $waiting } in the week and { $posted } posted.
coaching-lesson-look = Look at it
coaching-lesson-out = Save as PGN
coaching-lesson-remove = Remove
coaching-lesson-remove-sure = Remove “{ $title }”? What of it waits in the week is taken out. Its positions stay among the checked ones, and so does what was posted.
coaching-lesson-remove-it = Remove the lesson
coaching-lesson-removed = “{ $title }” is removed.
coaching-lesson-plan-what = What would give away the answer to an earlier step waits until that is revealed.
coaching-lesson-anyway = also stops that are not sound
coaching-lesson-again = also what was posted before
coaching-lesson-in-order = Into the week, in order
coaching-lesson-from = All at once, from
coaching-lesson-at-once = Into the week at once
coaching-lesson-by-dates = By dates
coaching-lesson-put-dates = Put the steps on these dates
coaching-lesson-dates-wanted = Fill in day and time of one step at least; the others go out in free slots.
coaching-lesson-when-wanted = Choose the moment from which it goes out.
coaching-lesson-planned = { $left ->
    [0] “{ $title }” is in the week. Parts: { $count }.
   *[other] “{ $title }” is in the week. Parts: { $count }; left out, as posted before: { $left }.
}
coaching-lesson-step = Step { $step }
coaching-lesson-step-contrast = Step { $step }, where the topic is meant to fail
# $steps: places of steps, such as "2, 3".
coaching-lesson-waits = { $count ->
    [one] It waits for the reveal of step { $steps }, whose answer it would give away.
   *[other] It waits for the reveals of steps { $steps }, whose answers it would give away.
}
coaching-lesson-part-kept = Kept, not in the week.
coaching-lesson-part-not-kept = Not kept: there is no task, and none was found; write one, such as [stop #2].
coaching-lesson-part-as-before = The same position as in step { $step }; it goes out once.
coaching-lesson-part-waits = In the week.
coaching-lesson-part-open = Posted as No. { $number }, still open.
coaching-lesson-part-closed = Posted as No. { $number } and closed.

## Topic cards

coaching-card-tells = Members do not see this now: it would tell of position { $numbers }, which is open.
coaching-card-tells-copy = Members see the program's own card for now: yours would tell of position { $numbers }, which is open.
coaching-card-own = your own
coaching-card-edit = Edit for the group
coaching-card-edit-what = What you save stands in the place of the program's words, for this group, in the language you write. Without a position the card keeps the program's example.
coaching-card-new = Write a card for a topic of yours
coaching-card-new-what = A topic that is called as a mating pattern changes that pattern's card.
coaching-card-definition = What it is
coaching-card-look = What to look for (may be left out)
coaching-card-fen = Example, as FEN (may be left out)
coaching-card-moves = Its moves, such as 1.Rd8+ Rxd8 2.Rxd8#
coaching-card-save = Save the card
coaching-card-saved = The card is saved.
coaching-card-queue = Put it into the week
coaching-card-queued = It waits at the end of the week, as words with the example's position.
coaching-card-take-back = Take my card back
coaching-card-take-back-sure = Take your card back? What you wrote on it is lost.
coaching-card-taken-back = Your card is taken back.
