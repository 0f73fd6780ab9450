# The help of the command line, by the command's path; see bot/src/cli/help.rs.
# Names of commands, options and values are the same in every language.

help-shared = What several commands share.
    .heading-usage = Usage:
    .heading-commands = Commands:
    .heading-arguments = Arguments:
    .heading-options = Options:
    .value-OPTIONS = OPTIONS
    .value-COMMAND = COMMAND
    .value-FILE = FILE
    .value-FOLDER = FOLDER
    .value-SECONDS = SECONDS
    .value-N = N
    .value-PROGRAM = PROGRAM
    .value-GROUP = GROUP
    .value-WHICH = WHICH
    .value-NAME = NAME
    .value-TEXT = TEXT
    .value-WHEN = WHEN
    .value-FEN = FEN
    .value-TASK = TASK
    .value-LANGUAGE = LANGUAGE
    .value-REPLY = REPLY
    .value-TOPIC = TOPIC
    .value-MOVES = MOVES
    .value-FROM-TO = FROM-TO
    .value-SQUARE = SQUARE
    .value-PERIOD = PERIOD
    .value-TABLE = TABLE
    .value-PORT = PORT
    .value-POSITIONS = POSITIONS
    .value-POSITION = POSITION
    .value-WORDS = WORDS
    .value-ITEM = ITEM
    .value-TO = TO
    .value-TIME = TIME
    .value-UNTIL = UNTIL
    .value-BOTTOM = BOTTOM
    .value-STYLE = STYLE
    .value-SIZE = SIZE
    .arg-help = Print help
    .arg-version = Print the version
    .arg-config = Settings file; by default sealed-move.toml beside the store, if there is one
    .arg-store = The store; by default the one the settings name, else sealed-move.sqlite in this folder
    .arg-group = The group, by its name or its channel; not needed when there is only one
    .arg-json = One JSON object
    .arg-jobs = Positions worked on at once; by default one a core
    .arg-period = When: all, this week, last week, last 4 weeks, this month, 2026-03, 2026-03-02 to 2026-03-08, …
    .arg-port = Port of the club room, instead of the settings' one; a taken port gives way to a free one
    .arg-fen = A position to be shown beside it; it has to be legal and is not proved
    .arg-on = When it goes out, in the group's own time, such as 2026-12-01T18:00
    .arg-again = Also those that were posted before
    .arg-item = Number of the item
    .arg-position = Number of the position
help = Runs a chess study group's position of the day: checks it, posts it, reads the replies, answers wrong moves with their refutation, keeps answers sealed until the reveal, and adds up by topic.
    .long =
        Runs a chess study group's position of the day: checks it, posts it, reads the replies, answers wrong moves with their refutation, keeps answers sealed until the reveal, and adds up by topic.

        Exit status: 0 as asked; 1 done, and something was found wanting; 2 it could not be done.
help-serve = Run the bot: scheduler, club room, and Discord where a token is set (the default)
    .long =
        Run the bot: scheduler, club room, and Discord where DISCORD_TOKEN (or DISCORD_TOKEN_FILE) is set.

        Starts with no settings file; README.md lists every setting. Ends in good order on Ctrl-C.
help-demo = Run it on a fresh store with an invented group, the first position posted at once
    .long =
        Run everything on a fresh store with an invented group; the first position is posted at once.

        Needs no account, key or service. The store is thrown away at the end unless --store names a file.
    .arg-port = Port of the club room; a taken port gives way to a free one
help-check = Verify positions from EPD, PGN or FEN lines
    .long =
        Verify positions: does the task hold against every defence, and is there one key only?

        The kind of file (EPD, PGN, lines of FEN) is seen from its content; `-` reads standard input. Exit status 1 when a position is not sound, or with --topic-on when it does not show its topic.
    .after =
        Examples:
          sealed-move check week.epd
          sealed-move check --json --seconds 2 lesson.pgn
          echo '6k1/5ppp/8/8/8/8/5PPP/3R2K1 w - -' | sealed-move check -
    .arg-json = One JSON object a position, on a line of its own
    .arg-seconds = The most time for one position
    .arg-moves = Longest mate sought where the file states no task
    .arg-table-mb = Megabytes for the table of positions that each proof keeps, at most
    .arg-tables = Folder of endgame tables in Syzygy format
    .arg-engine = UCI engine to ask for a second opinion on what could not be proved
    .arg-topic-on = Hold topics that name a mating pattern against which lines; a position that does not show its topic is found wanting then
    .arg-topic-on-is-main-line = the main line, as without this
    .arg-topic-on-is-every-line = every full-length line
    .arg-files = Files to read
help-import = Verify positions and keep them in the store
    .long =
        Verify positions and keep them in the store, with what was checked and how.

        Exit status 1 when a position is not sound (it is kept all the same where the rules apply to it), when it is kept already under another name, topic or comment and --same does not say which is to stand, when --queue leaves out one that was posted before, or with --topic-on when one does not show its topic.
    .arg-json = One JSON object a position
    .arg-queue = Also put every sound position, question and words at the end of the week; questions and words are not kept otherwise
    .arg-again = With --queue, also those that were posted before
    .arg-same = What stands of a position that is kept already under another name, topic or comment
    .arg-same-is-keep = the one kept, as without this
    .arg-same-is-new = the file's
    .arg-same-is-both = the one kept, with the file's topic and words besides
    .arg-topic = Give every position this topic, instead of the file's own
    .arg-topic-on = Hold topics that name a mating pattern against which lines; a position that does not show its topic is found wanting then
    .arg-topic-on-is-main-line = the main line, as without this
    .arg-topic-on-is-every-line = every full-length line
    .arg-files = EPD, PGN or FEN files
help-queue = See and arrange the week
    .long = See and arrange the week: the positions, questions and words waiting, in order, with when each goes out.
    .arg-json = One JSON object a place in the queue
help-queue-add = Put positions that `import` kept at the end of the queue, by their numbers
    .arg-positions = Numbers of positions
    .arg-anyway = Also those that are not sound
help-queue-question = Put a question at the end of the queue: members answer in their own words, and a coach marks what they write
    .arg-words = What is asked, at most 1,000 characters
    .arg-topic = The topic its points count under
    .arg-reveal = Your own words on it, shown when it is closed
help-queue-say = Put words at the end of the queue that are there to be read: they take no answers
    .arg-words = The words, at most 1,000 characters
    .arg-fen = A position to be shown beside them
    .arg-topic = The topic
    .arg-on = When they go out, in the group's own time, such as 2026-12-01T18:00
help-queue-card = Put a topic's card at the end of the queue: its words with the position of its example, in the group's language
    .arg-name = The card, by the name or title of its pattern, or by its topic
    .arg-on = When it goes out, in the group's own time, such as 2026-12-01T18:00
help-queue-words = See the words that go out with a position, or write them anew
    .arg-post = Words that go out with the post; an empty text takes them away
    .arg-reveal = Words for the reveal; an empty text takes them away
    .arg-anyway = Send the words for the post although they tell a move of the position
help-queue-move = Move an item to another place in the order, 1 being the first
    .arg-to = Its new place
help-queue-at = Fix when an item goes out, in the group's own time, or free it again
    .arg-time = Such as 2026-12-01T18:00, or "free"
help-queue-topic = Set the topic of a position
    .arg-topic = The topic; leave it out to take the topic away
help-queue-remove = Take an item out of the queue; `put-back` puts it back
help-queue-put-back = Put back what was taken out of the queue, at the place where it stood
    .arg-taken = Its number, as `remove` told it; the latest by default
help-queue-now = Post an item, or the next one, now
help-queue-pause = Stop posting until a day, or until `queue resume`
    .arg-until = First day on which to post again, such as 2027-01-04
help-queue-resume = Go on posting
help-queue-print = Write the queue as sheets for the classroom: six positions to a page, solutions on the last
    .arg-out = A PDF file
    .arg-letter = Paper of the size Letter instead of A4
help-lesson = Teach a topic in steps
    .long =
        Teach a topic in steps: a lesson is one file of PGN, a game for each step.

        Words before the first move open a step. A move whose comment begins with [stop] is asked for, and [stop #2] says what is asked. Moves without a stop are an example, no moves are words with a picture, and words that end with a question mark are an open question, as is a step with the tag Homework "yes" or Question "...".
help-lesson-check = Read a lesson and verify its stops, without a store
    .arg-seconds = The most time for one stop
    .arg-file = A PGN file, or - for standard input
help-lesson-import = Verify a lesson and keep it; nothing goes into the week yet
    .arg-json = One JSON object a part
    .arg-title = The lesson's title, instead of the file's own
    .arg-same = What stands of a position that is kept already under another name, topic or comment
    .arg-same-is-keep = the one kept, as without this
    .arg-same-is-new = the file's
    .arg-same-is-both = the one kept, with the file's topic and words besides
    .arg-file = A PGN file
help-lesson-list = See the group's lessons
    .arg-json = One JSON object a lesson
help-lesson-show = See a lesson step by step, and where each part stands
    .arg-json = One JSON object a part
    .arg-lesson = Number of the lesson
help-lesson-plan = Put a lesson into the week, in its order: in free slots, unless something else is said
    .arg-at-once = All at once from this moment on, in the group's own time, such as 2026-12-01T18:00
    .arg-step = One step at a moment of its own, such as 3=2026-12-01T18:00; as often as there are such steps
    .arg-anyway = Also stops that are not sound
    .arg-again = Also what was posted before
    .arg-lesson = Number of the lesson
help-lesson-export = Write a lesson as PGN, which can be taken in again
    .arg-out = A file, instead of standard output
    .arg-lesson = Number of the lesson
help-lesson-remove = Forget a lesson and take it out of the week; its positions and what was posted stay
    .arg-lesson = Number of the lesson
help-grade = Judge one reply to one position
    .long =
        Judge one reply to one position, as a member would be answered.

        The position is given with its task, or as a file whose own lines are judged along. The reply is the last argument, after `--` if it begins with a dash, or standard input for `-`. Exit status 1 when the reply is not right.
    .after =
        Example:
          sealed-move grade --position 'r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1' --stipulation '#2' 'Rd7'
    .arg-position = The position
    .arg-stipulation = The task: #1 to #20, + or =
    .arg-language = Language whose piece letters are read first
    .arg-pgn = In their place, a file whose first position is judged along its own lines
    .arg-line = Which of the file's lines a win or a draw is met with, from 0
    .arg-seconds = The most time for the judgement
    .arg-reply = What the member wrote
help-name = Name the mate on the board
    .long =
        Name the mate on the board: pattern, checking pieces, who guards each flight.

        Exit status 1 when the side to move is not mated.
    .after =
        Example:
          sealed-move name '3R2k1/5ppp/8/8/8/8/8/6K1 b - - 0 1'
    .arg-position = The position, with the mated side to move
help-card = Read what a mating pattern is about, with an example
    .long = Read what a mating pattern is about: definition, what to look for, what tells it from its relatives, an example with its solution, and where it is from. Without a name, the patterns there are cards of.
    .after =
        Examples:
          sealed-move card boden
          sealed-move card "Smothered mate" --out smothered.png
    .arg-name = The pattern, by its name or its title in any language
    .arg-json = One JSON object a card
    .arg-out = Write the picture of the example's end there; the ending .png or .svg says what
help-find = Find positions for a topic in games
    .long =
        Find positions for a topic in games: forced mates that end in a mating pattern, played or missed.

        Every position found is sound. Without --json they are written as EPD, ready for `import`; topic and remark are in the language of this help. Exit status 1 when a game could not be read.
    .after =
        Examples:
          sealed-move find --topic back-rank club-games.pgn > back-rank.epd
          sealed-move find --topic "Boden's mate" --longest 4 archive.pgn
    .arg-topic = Mating pattern, by its name or title; without it, any pattern with a name
    .arg-shortest = Shortest mate wanted, in moves
    .arg-longest = Longest mate wanted, in moves
    .arg-json = One JSON object a position, as `check` writes it
    .arg-jobs = Games worked on at once; by default one a core
    .arg-files = Files of games in PGN; `-` reads standard input
help-engine = Offer the bot's own search to programs that speak UCI
    .long = Offer the bot's own search to programs that speak UCI, on standard input and output.
help-diagram = Draw a position as PNG or SVG
    .long = Draw a position as PNG or SVG, by the file's ending; a line of moves as a strip (PNG, SVG) or an animation (GIF).
    .after =
        Examples:
          sealed-move diagram '6k1/5ppp/8/8/8/8/5PPP/3R2K1 w - -' --out board.png --arrow d1d8
          sealed-move diagram 'r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - -' --line 'Rxd8+ Rxd8 Rxd8#' --out line.gif
          sealed-move diagram --sheet --out everything.png
    .arg-position = The position
    .arg-sheet = Everything that can be drawn, on one sheet: all pieces and pawns, styles, marks and sizes
    .arg-line = Moves to show from the position on, such as "1.Rxd8+ Rxd8 2.Rxd8#"
    .arg-out = Where to write; the ending .png, .svg or .gif says what
    .arg-bottom = Who sits at the bottom; by default the side to move
    .arg-bottom-is-white = White
    .arg-bottom-is-black = Black
    .arg-style = Look of the board
    .arg-style-is-print = as in print
    .arg-style-is-light = light
    .arg-style-is-dark = dark
    .arg-style-is-contrast = strong contrast
    .arg-size = Width in pixels, 120 to 2400 (by default 720); with a line 120 to 480 of each board of a strip (320), 120 to 720 of an animation (480)
    .arg-arrows = An arrow, such as d1d8; may be given again
    .arg-marks = A marked square, such as h7; may be given again
    .arg-last = The last move, such as e2e4
    .arg-words = Also print the words that replace the picture
help-leaderboard = Points by topic and period
    .long = Points by member, best first: five for a full solution, part points for part of one.
    .after =
        Examples:
          sealed-move leaderboard --period 'last 4 weeks'
          sealed-move leaderboard --topic 'Smothered mate' --csv > points.csv
    .arg-topic = Posts of this topic only
    .arg-csv = CSV with a heading line
help-summary = Who took part, how it went, what to teach next
    .long = The engagement summary: who took part, solved, went quiet or came back; how each position and topic went; and so what to teach next.
    .after =
        Examples:
          sealed-move summary --period 'last 4 weeks'
          sealed-move summary --csv topics > topics.csv
          sealed-move summary --charts charts/
    .arg-topic = Posts of this topic only
    .arg-csv = One of the summary's tables as CSV, with a heading line
    .arg-csv-is-members = who took part
    .arg-csv-is-posts = how each post went
    .arg-csv-is-topics = how each topic went
    .arg-charts = Also draw the charts into this folder
help-backup = Copy the store, also while serving
    .long = Write a consistent copy of the store, also while the bot is serving.
    .arg-force = Write over the copy if it is there already
    .arg-to = Where the copy goes
help-restore = Put a copy in the store's place
    .long = Put a copy made by `backup` in the store's place. The bot must not be running on it.
    .arg-force = Write over the store if there is one
    .arg-from = The copy
