# What the command line says.

## The report on a position

# $done, $total and $left: filled in while it goes on.
check-progress = { $done }/{ $total } positions, { $left } left
checked-as = { $verdict ->
    [sound] sound
    [several-keys] several keys
    [short] shorter than stated
    [unsound] unsound
    [illegal] illegal
   *[undecided] undecided
}
report-keys = { $number ->
    [one] key: { $keys }
   *[other] keys: { $keys }
}
report-try = try: { $line }
report-pictures = final picture: { $patterns }
report-difficulty = difficulty: { $grade-text } of 10
report-note = note: { $note }
# $nodes: positions looked at.
report-proved = proved, { $nodes } positions, { $seconds-text } s
report-judged = judged at depth { $depth }, { $nodes } positions, { $seconds-text } s
report-not-proved = not proved, { $nodes } positions, { $seconds-text } s
words-with-post = words with the post:
words-at-reveal = words at the reveal:
words-beside-moves = beside the moves, at the reveal:
no-positions-found = no positions found
checked-all-sound = { $number ->
    [one] 1 position, sound
   *[other] { $number } positions, all sound
}
some-to-look-at = { $number ->
    [one] 1 position, to look at
   *[other] { $number } positions, { $sound } sound, { $wanting } to look at
}
topics-not-verified = { $number ->
    [one] 1 position does not show the topic it names, see "not verified"
   *[other] { $number } positions do not show the topics they name, see "not verified"
}
written-question = { $id }: a question: { $words }
written-at-close = at its close: { $words }
written-words = { $id }: words to be read: { $words }

## A lesson

lesson-titled = Lesson “{ $title }”
lesson-titled-topic = Lesson “{ $title }”, topic { $topic }
lesson-step-head = { $contrast ->
    [yes] Step { $step }, where the topic is meant to fail
   *[no] Step { $step }
}
lesson-question = a question: { $words }
lesson-says = words to be read: { $words }
# $steps: the places of steps.
lesson-part-waits = { $number ->
    [one] waits for the reveal of step { $steps }, whose answer it would give away
   *[other] waits for the reveals of steps { $steps }, whose answers it would give away
}
lesson-part-not-kept = not kept: there is no task, and none was found; write one, such as [stop #2]
lesson-part-as-before = the same position as in step { $step }; it goes out once
lesson-part-in-week = in the week as item { $item }
lesson-part-open = posted as No. { $number }, still open
lesson-part-closed = posted as No. { $number } and closed
lesson-kept = Kept as lesson { $lesson }; `sealed-move lesson plan { $lesson }` puts it into the week.
lesson-not-kept = Nothing is kept: no step can be read.
no-lessons = There are no lessons yet; `sealed-move lesson import` takes one in.
# A row of the list. $steps and $parts: how many; $waiting of the parts are in the week, $posted were posted.
lesson-row-is = { $lesson }. { $title }: steps: { $steps }; parts: { $parts }, of which { $waiting } in the week and { $posted } posted
lesson-left-out = { $number ->
    [one] One part was posted before and is left out; with --again it goes out once more.
   *[other] { $number } parts were posted before and are left out; with --again they go out once more.
}

## What is kept of it

written-not-kept = It is not kept; with --queue it goes into the week.
same-choices = --same new takes the file's, --same both keeps both topics, --same keep says that this is meant
report-again = again: { $what }
report-posted-before = posted before: No. { $number } on { $date }.
posted-before-left-out = It is not put into the week; with --again it is.

## One reply

graded = { $verdict ->
    [solved] solved, { $points-text } of 5 points
    [on-the-way] on the way, { $points-text } of 5 points
    [wrong] wrong, { $points-text } of 5 points
    [illegal] not legal, { $points-text } of 5 points
    [unclear] unclear, { $points-text } of 5 points
   *[unreadable] unreadable, { $points-text } of 5 points
}
may-mean = may mean: { $reading }

## Positions out of games

found-played = played in the game, { $file } line { $line }
found-missed = missed in the game, { $file } line { $line }

## The week

posting-paused-until = Posting is paused until { $moment }.
posting-paused = Posting is paused until you resume it.
queue-is-empty = The queue of { $group } is empty; put positions in with `import --queue`.
queue-due = { $moment }
queue-due-fixed = { $moment }, fixed
queue-no-time = { $why ->
    [not-sound] no time: not found sound
    [paused] no time: posting is paused
    [no-days] no time: the calendar has no days
   *[waits] no time: what it waits for has none
}
queue-step-of = step { $step } of { $steps } of the lesson { $title }
queue-waits-for-post = waits for the reveal of No. { $number }, which it would tell
queue-waits-for-item = waits for the reveal of item { $item } ({ $called }), which it would tell
taken-out = Taken out; `queue put-back { $taken }` puts it back where it stood.
queue-kind = { $kind ->
    [problem] position
    [question] question
   *[words] words
}
# $others: further topics.
queue-topic-also = { $topic } (also { $others })
queue-no-topic = no topic
queue-topic-not-verified = { $topic } [topic not verified]
queue-item = item { $item }
queue-item-with-position = item { $item }, with a position
queue-position = item { $item }, position { $position }
queue-position-again = item { $item }, position { $position }; again, posted before as No. { $number } on { $date }

## Copies of the store

copied-to = { $store } copied to { $copy }
restored-from = { $store } restored from { $copy }

## A serving program

store-is-at = Store: { $file }
stop-with-ctrl-c = Stop with Ctrl-C.
stopping = Stopping.
not-finished-in-time = Something could not be finished in time. It is taken up at the next start.
chat-is-back = { $chat } is back.
# $why: a sentence.
connects-by-itself = { $why } It connects anew by itself.
tried-again = { $why } It is tried again in { $seconds } s.

## What could not be done, as a part of a sentence: it may be followed by its cause

because-of = { $what }: { $cause }
file-unreadable = { $file } could not be read
file-unwritable = { $file } could not be written
file-is-too-large = { $file } is larger than { $most } MB; split it into smaller files
folder-not-made = the folder { $folder } could not be made
input-unreadable = standard input could not be read
ending-of-board = { $file }: the name must end in .png or .svg
ending-of-line = { $file }: the name must end in .png, .svg or .gif
too-wide-for-line = { $file }: a line is drawn at most { $most } pixels wide, of a strip each board; --size { $size } is too wide
settings-unreadable = the settings file { $file } could not be read
settings-wrong = the settings file { $file }
setting-no-time = { $key } = { $value } is no time; give a number of seconds above 0
setting-out-of-range = { $key } = { $value } is out of range; give { $least } to { $most }
setting-at =
    line { $row }: { $why }
    { $shown }
setting-unknown =
    there is no setting { $key } here; { $known ->
        [none] this table has none
       *[other] write { $known }
    }
setting-missing = the table lacks { $key }
setting-no-choice = { $value } is none of the choices; write { $choices }
setting-of-other-kind =
    { $value } does not fit; { $kind ->
        [text] write a text in quotation marks
        [whole] write a whole number that is not too large
        [number] write a number, without quotation marks
        [yes-or-no] write true or false
        [table] its settings stand below a heading in square brackets
        [times] write a time such as "18:00", or a list of them
        [address] write an address with its port, such as "127.0.0.1:7316"
       *[other] README.md says what each setting takes
    }
setting-no-zone = { $value } is no time zone of the IANA list; write one such as "Europe/Lisbon"
setting-twice = { $key } is set a second time; leave one
settings-no-toml = this cannot be read as TOML ({ $why })
no-time-limit = --seconds { $value } is no time limit; give a number above 0, such as 10
position-given = the position
shortest-too-long = --shortest { $shortest } is longer than --longest { $longest }
not-a-pattern = "{ $topic }" is not a mating pattern known here; choose one of { $patterns }
task-not-shown = { $task } could not be shown to hold in this position within { $seconds-text } s; see `sealed-move check`
reply-holds-nothing = the reply holds no answer; write a move such as Nf3
no-problem-in-file = { $file } holds no position with a task; give a PGN game with the tags FEN and Task
lesson-unreadable = { $file }, line { $row }: { $what }
not-a-legal-move = { $written } is no legal move at this point of the line; write moves as in Nf3 or exd5
line-holds-no-moves = the line holds no moves; write them as in "1.Rxd8+ Rxd8 2.Rxd8#"
places-from-one = places are counted from 1
nothing-taken-out = nothing was taken out of the queue in the last seven days
step-time-not-read = "{ $written }" is no step with its moment; write it like 3=2026-12-01T18:00
no-steps = { $file } holds no lesson; a lesson is a file of PGN with a game for each step
time-not-read = "{ $written }" is no time; write it as 2026-12-01T18:00, or "free"
day-missing = { $day } does not exist in { $zone }
nothing-to-print = the queue is empty; put positions in with `import --queue`
no-store-at = there is no store at { $file }; name the group's own with --store, or make one with `sealed-move serve` or `sealed-move import`
no-store-to-copy = there is no store at { $file }; name it with --store
store-is-newer = the store { $file } was written by a newer Sealed Move (store version { $found }, this program knows up to { $known }); run the newer program, or restore a backup made by this one
not-a-store = { $file } is not a store of Sealed Move ({ $why }); give the path of a store, or of a file that does not exist yet
store-read-only = the store { $file } cannot be written ({ $why }); make the file and its folder writable for this user, or choose another path
store-not-opened = the store { $file } cannot be opened ({ $why }); check that the folder exists and may be used
store-disk-full = the disk that holds the store { $file } is full; make room and try again, nothing already kept is lost
store-busy = the store { $file } is in use by another program; wait for it to finish, or stop it, and try again
file-exists = { $file } exists already; move it away, or say that it may be overwritten
store-damaged = the store holds a value that cannot be read: { $what }; restore a backup
store-stopped = the store has stopped; start the program again, nothing already kept is lost
tables-unreadable = the endgame tables in { $folder } cannot be read: { $why }
no-tables = { $folder } holds no endgame tables; Syzygy tables are files such as KRPvKR.rtbw
no-group-yet = the store has no group yet; start `sealed-move serve`, or put positions in with `sealed-move import`
several-groups = there are several groups; name one with --group: { $groups }
no-such-group = there is no group "{ $wanted }"; there are: { $groups }
several-of-that-name = several groups are called "{ $wanted }"; give the channel instead: { $groups }
no-coach-yet = the group has no coach; name one in its chat first
no-folder-for-demo = no folder for the demo's store could be made; name one with --store
demo-store-there = { $file } is there already; the demo fills a fresh store, so give another name, or run `serve` on this one
# $why: such as "no DISCORD_TOKEN is set".
nothing-to-run = There is no chat to run. { $why }
no-chat-left = no chat is left to serve; what each of them needs stands above
threads-not-started = the program could not start its threads; close other programs and try again
stop-signal-unheard = the signal to stop could not be listened for
ctrl-c-unheard = Ctrl-C could not be listened for

## What is wrong with the arguments of a call

unknown-argument = there is no argument '{ $argument }' here
argument-missing = missing: { $arguments }
unknown-command = there is no command '{ $command }'
no-command-given = '{ $command }' wants a command: { $commands }
argument-twice = '{ $argument }' can be given once only
argument-conflict = '{ $argument }' does not go together with: { $others }
value-missing = '{ $argument }' wants a value
value-not-offered = '{ $value }' is no value for '{ $argument }'; choose one of { $values }
# $detail: why, or what is wanted.
value-unfit = '{ $value }' does not do for '{ $argument }': { $detail }
not-a-number = write a number
not-a-day = write a day, such as 2027-01-04
not-readable = it cannot be read
not-between = write a whole number from { $least } to { $most }
not-two-squares = write two squares, such as d1d8
not-a-square = write a square, such as h7
not-a-language = this is no language the reader knows; choose { $languages }
perhaps-meant = Did you mean '{ $name }'?
after-two-dashes = To give '{ $argument }' as a value, write '-- { $argument }'.
usage-is = Usage: { $usage }
help-says-more = '--help' says more.

## What an option offers

usual-value = [default: { $value }]
environment-name = [environment: { $name }]
one-of-values = [values: { $values }]
option-value = { $name } ({ $meaning })
