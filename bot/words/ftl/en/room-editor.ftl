# The editor on the coach's page: lessons that are being written, the board, and positions written anew. $square is a
# square such as e4; $piece names a piece by colour and kind, in the letters of English: wn is a white knight.

## Around it

editor-nav = Write
editor-title = Write a lesson
editor-edit-title = Edit a position
editor-to-check = Back to the checked positions
editor-to-week = To the week
editor-what = A lesson is written in steps: words, an example, a position to solve, a question. What you type is kept as you type it.
editor-begin = Begin a lesson
editor-no-drafts = Nothing is being written.
editor-untitled = Untitled
editor-draft-count = { $steps ->
    [one] { $steps } step, last written to:
   *[other] { $steps } steps, last written to:
}
editor-is-lesson = It belongs to a lesson.
editor-open = Go on writing
editor-write = Open in the editor
editor-edit = Edit
editor-remove = Remove the draft
editor-remove-sure = Remove the draft “{ $title }”? What is written in it is gone then; a lesson that it became stays.
editor-remove-it = Remove it
editor-removed = The draft “{ $title }” is removed.
editor-all-drafts = All drafts
editor-copy = Part of this lesson was posted, so this is a copy of it. Give it a title of its own; taken in, it is another lesson.

## A draft. $why is a sentence with its full stop; $what a statement that begins with a small letter.

editor-draft-title = Title of the lesson
editor-keeping = Being kept …
editor-kept = All is kept.
editor-not-kept = Not kept yet: { $why } What you typed stays here, and in this browser.
editor-overtaken = This draft was written to elsewhere meanwhile, in another tab or by another coach. Nothing is lost: both versions are there. What becomes of yours?
editor-keep-mine = Keep mine as a draft of its own
editor-take-theirs = Go on with the other version
editor-my-version = { $title } (my version)
editor-step = step { $step }
# $kind as in editor-kind.
editor-step-of = { $kind ->
    [example] Step { $step }: example
    [stop] Step { $step }: to solve
    [question] Step { $step }: question
   *[words] Step { $step }: words
}
editor-fault = Not finished: { $what }.
editor-remove-step = Remove
editor-remove-step-sure = Remove step { $step } with all that is written in it?
editor-remove-step-it = Remove the step
editor-add = { $kind ->
    [example] Add an example
    [stop] Add a position to solve
    [question] Add a question
   *[words] Add words
}
editor-preview = See the step as members will
editor-checking = It is being checked …
editor-the-reveal = At the reveal
editor-take-in-what = Taken in, every position is checked, and the lesson is ready for the week. The draft stays.
editor-take-in-again = Taken in, it takes the place of its lesson: what of that waits in the week keeps its place. Once something of the lesson was posted, it becomes another one instead.

## A step

editor-step-kind = What this step is
editor-kind = { $kind ->
    [example] Example
    [stop] To solve
    [question] Question or homework
   *[words] Words
}
editor-kind-what = { $kind ->
    [example] Moves are shown. It goes out at once, with its moves, side lines and words.
    [stop] Members are asked for a move. Give the task of the position, or mark moves as stops; the moves before a stop lead up to it, those behind it are your own line for the reveal.
    [question] Members answer in their own words. The moves, if there are any, are shown with the question; the picture shows where they lead.
   *[words] Words, with or without a position. The position is shown as a picture, if you set one up.
}
editor-words = Words, with the post
editor-asked = What you ask
editor-anyway = Send these words with the post even if they tell a move
editor-at-reveal = Words for the reveal
editor-task = Task
editor-task-start = Task of this position
editor-task-what = #1 to #20 for a mate, + for a win, = for a draw; left empty, the check looks for one.
editor-task-start-what = #1 to #20 for a mate, + for a win, = for a draw. Leave it empty where only later moves are asked for.
editor-step-topic = Topic, if not the lesson's
editor-contrast = Contrast: the topic is meant to fail here
editor-question-behind = A question behind it, if you like

## The board

editor-board = Board
editor-keys = By keyboard: arrows go from square to square, Enter picks up and puts down or places, Delete takes away, Escape puts back.
editor-tools = Tools
editor-set-up = Set up
editor-moves = Moves
editor-flip = Flip the board
editor-undo = Undo
editor-redo = Redo
editor-no-position = No position is shown with these words. Set one up if you like.
editor-square-empty = { $square }, empty
editor-square-holds = { $piece ->
    [wk] white king on { $square }
    [wq] white queen on { $square }
    [wr] white rook on { $square }
    [wb] white bishop on { $square }
    [wn] white knight on { $square }
    [wp] white pawn on { $square }
    [bk] black king on { $square }
    [bq] black queen on { $square }
    [br] black rook on { $square }
    [bb] black bishop on { $square }
    [bn] black knight on { $square }
   *[bp] black pawn on { $square }
}
# $what is editor-square-empty or editor-square-holds.
editor-square-target = { $what }; the piece in hand can go here
editor-picked = In hand: { $what }
editor-put-back = Put back.
editor-not-legal = That is no legal move here.
editor-played = Played: { $move }

## Setting up

editor-palette = Pieces to place
editor-hand = Move pieces
editor-rubber = Take pieces away
editor-piece = { $piece ->
    [wk] White king
    [wq] White queen
    [wr] White rook
    [wb] White bishop
    [wn] White knight
    [wp] White pawn
    [bk] Black king
    [bq] Black queen
    [br] Black rook
    [bb] Black bishop
    [bn] Black knight
   *[bp] Black pawn
}
editor-clear = Clear the board
editor-initial = Initial position
editor-to-move = To move
editor-white = White
editor-black = Black
editor-passing = En passant on
editor-no-passing = nowhere
editor-castling = Castling
editor-castling-of = { $right ->
    [white-short] White, short
    [white-long] White, long
    [black-short] Black, short
   *[black-long] Black, long
}
editor-fen = FEN, to paste or to copy

## Moves

editor-start = Start
editor-no-moves = No moves yet. Play them on the board, or type them.
editor-back = One move back
editor-on = One move on
editor-type-move = A move, typed
editor-enter-move = Enter it
editor-about-move = On { $move }
editor-sign-move = Sign on the move
editor-sign-position = Sign on the position
editor-no-sign = none
editor-words-before = Words before it
editor-words-after = Words after it
editor-promote = Make this the main line
editor-cut = Remove it and all that follows
editor-stop = Ask members for this move
editor-stop-here = asked
# $task is a sign such as #2.
editor-stop-task = asked, { $task }
editor-become = What does the pawn become?
editor-become-what = { $piece ->
    [q] Queen
    [r] Rook
    [b] Bishop
   *[n] Knight
}

## A position written anew

editor-save = Save and check
editor-saved = Saved and checked.
editor-start-over = Back to what is kept
editor-typed-before = This is what you typed here before and did not save.
