# On Discord: what a coach is told of the group.

## Setting it up

coaches-only = This is for the group's coaches. A coach can name another one with /coach add-coach.
set-up-may-not = Setting up a group takes the permission Manage Channels. Ask whoever runs this server.
set-up-no-channel = A group needs a text channel of the server; run this in one, not in a thread.
# The name of a group that was given none.
no-name = Study group
set-up = **{ $name }** is set up in { $channel }, and you are its coach.
set-up-bot = A bot cannot coach; the group is set up, name a person with /coach add-coach.
coaches-too = { $name } coaches too.
without-content = I was started without the message-content intent: in this channel and its threads I hear only messages that call me by name and replies to my posts with the ping left on. Buttons, commands and direct messages work as ever.
set-up-next = Next: attach a file of positions (EPD or PGN) to /coach check.

## Settings

settings-are = As things are:
settings-changed = Changed. From now on:
goes-out = A position goes out { $days } at { $times } ({ $zone }), and stays open for { $open }.
days-every = every day
days-none = on no day (only when you post by hand)
days-from-to = from { $first } to { $last }
days-on = on { $days }
monday = Monday
tuesday = Tuesday
wednesday = Wednesday
thursday = Thursday
friday = Friday
saturday = Saturday
sunday = Sunday
open-days = { $number ->
    [one] { $number } day
   *[other] { $number } days
}
open-hours = { $number ->
    [one] { $number } hour
   *[other] { $number } hours
}
open-minutes = { $number ->
    [one] { $number } minute
   *[other] { $number } minutes
}
replies-are = { $mode ->
    [open] Replies are open: verdicts in public behind spoiler marks.
   *[sealed] Replies are sealed: verdicts are private until the reveal.
}
points-tournament = { $hint ->
    [0] A position is worth 5 points. After a wrong first move there are none, as in tournaments; a hint takes nothing.
    [one] A position is worth 5 points. After a wrong first move there are none, as in tournaments; a hint takes { $hint-text } point.
   *[other] A position is worth 5 points. After a wrong first move there are none, as in tournaments; a hint takes { $hint-text } points.
}
points-free = A position is worth 5 points. Wrong moves and hints take nothing.
points-each = { $each ->
    [one] A position is worth 5 points. A wrong first move and a hint take { $each-text } point each; whoever solves it without being shown the move keeps at least 1.
   *[other] A position is worth 5 points. A wrong first move and a hint take { $each-text } points each; whoever solves it without being shown the move keeps at least 1.
}
points-club = { $wrong ->
    [0] { $hint ->
        [one] A position is worth 5 points. A wrong first move takes nothing, a hint { $hint-text } point; whoever solves it without being shown the move keeps at least 1.
       *[other] A position is worth 5 points. A wrong first move takes nothing, a hint { $hint-text } points; whoever solves it without being shown the move keeps at least 1.
    }
    [one] { $hint ->
        [0] A position is worth 5 points. A wrong first move takes { $wrong-text } point, a hint nothing; whoever solves it without being shown the move keeps at least 1.
       *[other] A position is worth 5 points. A wrong first move takes { $wrong-text } point, a hint { $hint-text }; whoever solves it without being shown the move keeps at least 1.
    }
   *[other] { $hint ->
        [0] A position is worth 5 points. A wrong first move takes { $wrong-text } points, a hint nothing; whoever solves it without being shown the move keeps at least 1.
       *[other] A position is worth 5 points. A wrong first move takes { $wrong-text } points, a hint { $hint-text }; whoever solves it without being shown the move keeps at least 1.
    }
}
defences-are = { $defences ->
    [differ] Defences in a line are different from member to member.
   *[same] Defences in a line are the same for everyone.
}
letters-and-look = Piece letters: { $language }. Look of the diagrams: { $style ->
    [light] light
    [dark] dark
    [contrast] contrast
   *[print] print
}.
no-zone = "{ $written }" is no time zone I know; pick one from the list that opens while you type, such as Europe/Lisbon.
no-time-of-day = "{ $written }" is no time of day; write it as 18:00, and several with a blank between them.
no-days = "{ $written }" are no days I know; write them as mon-fri, as tue,thu or as every day.
no-span = "{ $written }" is no time I can keep a position open for; write it as 23h, 90m or 2d, 31 days at most.

## Permissions, by the names in Discord's own settings

permissions-all = I have every permission I can use here.
permissions-missing = I am missing permissions here. They are granted under { $channel } → Edit Channel → Permissions → my role:
permissions-one-more = I have all I need here. One more permission can be granted under { $channel } → Edit Channel → Permissions → my role:
without-view-channel = - **View Channel**: without it I cannot post, and hear no answers but by command and direct message.
without-send-messages = - **Send Messages**: without it I cannot post.
without-attach-files = - **Attach Files**: without it positions come in words, without a diagram.
without-create-threads = - **Create Public Threads**: without it posts come without a thread for talk.
without-send-in-threads = - **Send Messages in Threads**: without it I say nothing in the threads.
without-read-history = - **Read Message History**: without it answers written while I was away are missed.
without-add-reactions = - **Add Reactions**: without it I cannot show that an answer has been taken where its sender takes no direct messages.
without-manage-messages = - **Manage Messages**, only if you want it: without it moves that members write in public stay where everyone sees them.

## Coaches and members

bot-cannot-coach = A bot cannot coach; name a person.
coach-added = { $name } coaches this group now.
coach-removed = { $name } coaches this group no longer, and stays a member.
members-head = **Members**
member-row = { $answers ->
    [one] - { $name } · { $answers } answer
   *[other] - { $name } · { $answers } answers
}
member-row-coach = { $answers ->
    [one] - { $name } · { $answers } answer · coach
   *[other] - { $name } · { $answers } answers · coach
}
member-row-removed = { $answers ->
    [one] - { $name } · { $answers } answer · removed { $since }
   *[other] - { $name } · { $answers } answers · removed { $since }
}
deeds-head = **What the coaches did last**
# Behind the coach's name and a colon; whom it is about stands behind it.
deed-word = { $deed ->
    [hide] hid a message
    [put-back] put a message back
    [mute] kept from talking
    [unmute] let talk again
    [remove] removed
    [let-back] let back
    [rename] renamed
    [merge] made one member of two
    [export] took away what is kept
    [erase] erased
    [judge] judged an answer
    [answer] answered in private
    [no-answer] settled an answer without one
    [member-link] made a new link for members
    [coach-link] made a new link for coaches
    [coach-came] came in by the coaches' link
    [add-coach] made a coach
    [remove-coach] made no longer a coach
    [settings] changed the settings
    [post-now] posted at once
    [close-now] closed a position
    [pause] paused
    [write-card] wrote a topic card
    [take-back-card] took a topic card back
   *[resume] resumed
}
erased-coach = a coach who is erased
member-removed = { $name } takes part no longer: no answer of theirs is taken until /coach member let-back. What they write on this server is for Discord's own moderation.
member-back = { $name } takes part again.
members-merged = They are one member now, { $name }. Where both tried the same position, the answers count in the order they came.
kept-of-member = Everything that is kept of { $name } in this group. It is theirs: hand it over to them, and keep no copy.
erase-member-asked = Erase everything of { $name } in this group: name, answers, hints and points? This cannot be undone. Somebody who was removed is then known no longer, and removed no longer.
erased-member = Everything that was kept of them in this group is erased.
