-- Version 7. A chat is known by a key, and what it declares of itself stands with its groups; which chats
-- there are is no list here.
-- SQLite takes no CHECK away, so the table is made anew by the procedure its documentation gives ("Making Other
-- Kinds Of Table Schema Changes"). Foreign keys are off meanwhile and are checked before the commit.
CREATE TABLE groups_anew (
    id          INTEGER PRIMARY KEY,
    chat        TEXT NOT NULL CHECK (length(chat) BETWEEN 1 AND 20 AND chat NOT GLOB '*[^a-z]*'),
    place       TEXT NOT NULL,                       -- channel id, or the room's name
    server      TEXT,                                -- guild id, where the chat has one
    name        TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 100),
    zone        TEXT NOT NULL,                       -- IANA name
    post_time   TEXT NOT NULL CHECK (post_time GLOB '[0-2][0-9]:[0-5][0-9]'),
    days        INTEGER NOT NULL CHECK (days BETWEEN 0 AND 127),   -- bit 0 is Monday
    open_minutes INTEGER NOT NULL CHECK (open_minutes BETWEEN 1 AND 44640),
    mode        TEXT NOT NULL CHECK (mode IN ('sealed', 'open')),
    language    TEXT NOT NULL,
    style       TEXT NOT NULL,
    scale       TEXT NOT NULL DEFAULT 'club' CHECK (scale IN ('club', 'tournament')),
    wrong_cost  REAL NOT NULL CHECK (wrong_cost BETWEEN 0 AND 5),  -- points off for each wrong first move
    hint_cost   REAL NOT NULL CHECK (hint_cost BETWEEN 0 AND 5),   -- points off for each hint step
    defences    TEXT NOT NULL DEFAULT 'same' CHECK (defences IN ('same', 'differ')),
    names       TEXT NOT NULL CHECK (names IN ('by-chat', 'by-member')),  -- who says what a member is called
    paused      INTEGER NOT NULL DEFAULT 0 CHECK (paused IN (0, 1)),
    paused_until TEXT,
    slots_from  TEXT,                                -- slots up to this moment are past and never made up for:
                                                     -- when a pause ended or the calendar changed
    empty_told_at TEXT,                              -- when the coach was last told of the empty queue
    created_at  TEXT NOT NULL,
    UNIQUE (chat, place)
) STRICT;
INSERT INTO groups_anew (id, chat, place, server, name, zone, post_time, days, open_minutes, mode, language, style,
                         scale, wrong_cost, hint_cost, defences, names, paused, paused_until, slots_from,
                         empty_told_at, created_at)
    SELECT id, chat, place, server, name, zone, post_time, days, open_minutes, mode, language, style,
           scale, wrong_cost, hint_cost, defences,
           CASE chat WHEN 'room' THEN 'by-member' ELSE 'by-chat' END,
           paused, paused_until, slots_from, empty_told_at, created_at
    FROM groups;
DROP TABLE groups;
ALTER TABLE groups_anew RENAME TO groups;
