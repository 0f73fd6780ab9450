# Words to a group's coaches that come unasked, and how the chats fare.

slot-empty = It is time for a post, and nothing in the queue may be posted, so nothing was. Import positions and queue sound ones; then wait for the next slot, or post at once.
no-longer-passes = { $soundness ->
    [several-keys] Checked again before posting, { $position } has more than one key, so it is not posted.
    [short] Checked again before posting, { $position } can be solved in fewer moves than asked, so it is not posted.
    [unsound] Checked again before posting, { $position } does not hold what it promises, so it is not posted.
    [illegal] Checked again before posting, { $position } cannot be used, so it is not posted.
   *[other] Checked again before posting, { $position } could not be decided in the time allowed, so it is not posted.
} Look at its report, mend it, or say that it is to be posted anyway.
# $why is a sentence of its own, in all of these.
post-not-sent = { $kind ->
    [problem] Position { $number } could not be sent: { $why } I go on trying.
    [question] Question { $number } could not be sent: { $why } I go on trying.
   *[words] Post { $number } could not be sent: { $why } I go on trying.
}
reveal-not-sent = { $kind ->
    [problem] The reveal of position { $number } could not be sent: { $why } I go on trying.
   *[question] The close of question { $number } could not be sent: { $why } I go on trying.
}
example-not-sent = An answer to question { $number } that is shown or taken back could not be changed in the channel: { $why } I go on trying.
due-not-sent = { $name ->
    [none] What is due next could not be posted: { $why } I go on trying.
   *[other] { $name } is due and could not be posted: { $why } I go on trying.
}
chat-down = { $chat } is down: { $why } I go on trying, and say when it is back.
chat-refused = { $chat } is down until somebody helps: { $why }
chat-back = { $chat } is back.
chat-name = { $key ->
    [room] The club room
    [discord] Discord
   *[other] { $name }
}
# Finished words: a system's, or what an earlier version kept.
as-written = { $words }

## Why a chat is down

ended-for-no-reason = It ended and gave no reason.
not-connected = It is not connected.
broke-down = It broke down, which is a fault of the program; the log says where.

## More of what a coach did

note-post = { $kind ->
    [problem] position { $number }
    [question] question { $number }
   *[words] post { $number }
}
note-verdict = { $verdict ->
    [solved] position { $number }: solved
    [on-the-way] position { $number }: on the way
    [wrong] position { $number }: wrong
    [illegal] position { $number }: illegal
    [unclear] position { $number }: unclear
   *[unreadable] position { $number }: unreadable
}
note-mark = question { $number }: { $points-text }
note-answer = an answer
note-merged = { $name } was { $other } too
note-pattern = the card of { $pattern }
note-words = { $words }
