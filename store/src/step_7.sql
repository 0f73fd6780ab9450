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
    delivery    TEXT NOT NULL CHECK (delivery IN ('sent', 'shown')),      -- how a verdict reaches its member
    paused      INTEGER NOT NULL DEFAULT 0 CHECK (paused IN (0, 1)),
    paused_until TEXT,
    slots_from  TEXT,                                -- slots up to this moment are past and never made up for:
                                                     -- when a pause ended or the calendar changed
    empty_told_at TEXT,                              -- when the coach was last told of the empty queue
    created_at  TEXT NOT NULL,
    UNIQUE (chat, place)
) STRICT;
INSERT INTO groups_anew (id, chat, place, server, name, zone, post_time, days, open_minutes, mode, language, style,
                         scale, wrong_cost, hint_cost, defences, names, delivery, paused, paused_until, slots_from,
                         empty_told_at, created_at)
    SELECT id, chat, place, server, name, zone, post_time, days, open_minutes, mode, language, style,
           scale, wrong_cost, hint_cost, defences,
           CASE chat WHEN 'room' THEN 'by-member' ELSE 'by-chat' END,
           CASE chat WHEN 'room' THEN 'shown' ELSE 'sent' END,
           paused, paused_until, slots_from, empty_told_at, created_at
    FROM groups;
DROP TABLE groups;
ALTER TABLE groups_anew RENAME TO groups;

-- What the chats keep, each kind in a table of its own; until now under keys in `settings`.
-- The secrets that a chat's links carry, and what ends the names of its cookies.
CREATE TABLE link_secrets (
    chat   TEXT NOT NULL CHECK (length(chat) BETWEEN 1 AND 20 AND chat NOT GLOB '*[^a-z]*'),
    link   TEXT NOT NULL CHECK (link IN ('member', 'coach', 'cookies')),
    secret TEXT NOT NULL CHECK (length(secret) > 0),
    PRIMARY KEY (chat, link)
) STRICT, WITHOUT ROWID;
INSERT INTO link_secrets (chat, link, secret)
    SELECT 'room', CASE key WHEN 'room.member-secret' THEN 'member' WHEN 'room.coach-secret' THEN 'coach' ELSE 'cookies' END,
           value
    FROM settings
    WHERE key IN ('room.member-secret', 'room.coach-secret', 'room.cookie-mark') AND value <> '';

-- The channels in which a chat talks with people directly.
CREATE TABLE direct_channels (
    chat      TEXT NOT NULL CHECK (length(chat) BETWEEN 1 AND 20 AND chat NOT GLOB '*[^a-z]*'),
    chat_user TEXT NOT NULL,
    channel   TEXT NOT NULL,
    PRIMARY KEY (chat, chat_user)
) STRICT, WITHOUT ROWID;
INSERT OR REPLACE INTO direct_channels (chat, chat_user, channel)
    SELECT 'discord', CAST(json_extract(pair.value, '$[0]') AS TEXT), CAST(json_extract(pair.value, '$[1]') AS TEXT)
    FROM settings s, json_each(CASE WHEN json_valid(s.value) THEN s.value ELSE '[]' END) AS pair
    WHERE s.key = 'discord:direct'
      AND CASE pair.type WHEN 'array' THEN json_array_length(pair.value) = 2 ELSE 0 END;

-- Words to a group's coaches that are kept to be read: on the coach's page, or until one asks where none could
-- be reached.
CREATE TABLE coach_notes (
    id         INTEGER PRIMARY KEY AUTOINCREMENT,
    group_id   INTEGER NOT NULL REFERENCES groups (id) ON DELETE CASCADE,
    text       TEXT NOT NULL CHECK (length(text) > 0),
    written_at TEXT NOT NULL CHECK (written_at GLOB '????-??-??T??:??:??Z')
) STRICT;
CREATE INDEX coach_notes_by_group ON coach_notes (group_id, id);
INSERT INTO coach_notes (group_id, text, written_at)
    SELECT g.id, json_extract(note.value, '$.text'),
           coalesce(strftime('%Y-%m-%dT%H:%M:%SZ', json_extract(note.value, '$.at')), strftime('%Y-%m-%dT%H:%M:%SZ', 'now'))
    FROM settings s, json_each(CASE WHEN json_valid(s.value) THEN s.value ELSE '[]' END) AS note,
         groups g
    WHERE s.key = 'room.notes' AND g.chat = 'room' AND g.place = 'club'
      AND CASE note.type WHEN 'object' THEN json_extract(note.value, '$.text') <> '' ELSE 0 END
    ORDER BY note.key;
-- One text for all of them, without their times.
INSERT INTO coach_notes (group_id, text, written_at)
    SELECT g.id, s.value, strftime('%Y-%m-%dT%H:%M:%SZ', 'now')
    FROM settings s JOIN groups g ON g.chat = 'discord' AND s.key = 'discord:notes:' || g.place
    WHERE s.value <> '' ORDER BY g.id;

-- Messages that wait for their writer's word, under the chat's id of each: nobody else sees them until then.
CREATE TABLE held (
    id        INTEGER PRIMARY KEY AUTOINCREMENT,
    group_id  INTEGER NOT NULL REFERENCES groups (id) ON DELETE CASCADE,
    message   TEXT NOT NULL,
    channel   TEXT NOT NULL,                         -- where it was written
    chat_user TEXT NOT NULL,
    text      TEXT NOT NULL,
    why       TEXT NOT NULL CHECK (why IN ('elsewhere', 'several', 'may-tell')),
    question  TEXT NOT NULL,
    posts     TEXT NOT NULL CHECK (json_valid(posts)),  -- those it may be an answer to
    hidden    INTEGER NOT NULL CHECK (hidden IN (0, 1)),  -- whether it was taken out of sight
    since     TEXT NOT NULL CHECK (since GLOB '????-??-??T??:??:??Z'),
    UNIQUE (group_id, message)
) STRICT;
CREATE INDEX held_by_user ON held (group_id, chat_user);
-- Those that were settled keep no words, and are not asked about again.
CREATE TABLE held_settled (
    id      INTEGER PRIMARY KEY AUTOINCREMENT,
    chat    TEXT NOT NULL CHECK (length(chat) BETWEEN 1 AND 20 AND chat NOT GLOB '*[^a-z]*'),
    message TEXT NOT NULL,
    UNIQUE (chat, message)
) STRICT;
INSERT OR IGNORE INTO held (group_id, message, channel, chat_user, text, why, question, posts, hidden, since)
    SELECT g.id, CAST(json_extract(it.value, '$.message') AS TEXT), CAST(json_extract(it.value, '$.channel') AS TEXT),
           CAST(json_extract(it.value, '$.user') AS TEXT), json_extract(it.value, '$.text'),
           json_extract(it.value, '$.why'), json_extract(it.value, '$.question'),
           json_extract(it.value, '$.posts'), json_extract(it.value, '$.hidden'),
           strftime('%Y-%m-%dT%H:%M:%SZ', json_extract(it.value, '$.since'))
    FROM settings s,
         json_each(CASE WHEN json_valid(s.value) THEN s.value ELSE '{}' END, '$.waiting') AS it, groups g
    WHERE s.key = 'discord:held'
      AND CASE it.type WHEN 'object' THEN g.chat = json_extract(it.value, '$.place.chat')
                                      AND g.place = json_extract(it.value, '$.place.channel') ELSE 0 END
    ORDER BY it.key;
INSERT OR IGNORE INTO held_settled (chat, message)
    SELECT 'discord', CAST(it.value AS TEXT)
    FROM settings s,
         json_each(CASE WHEN json_valid(s.value) THEN s.value ELSE '{}' END, '$.settled') AS it
    WHERE s.key = 'discord:held'
    ORDER BY it.key;
DROP TABLE settings;

-- Words to people that are on their way: written before they are sent, deleted when they have arrived. What is
-- found here at a start was left by an earlier run, and is sent then. One that was tried may have got through,
-- so the chat looks for it first.
CREATE TABLE outbox (
    id         INTEGER PRIMARY KEY AUTOINCREMENT,
    group_id   INTEGER NOT NULL REFERENCES groups (id) ON DELETE CASCADE,
    reply_id   INTEGER UNIQUE REFERENCES replies (id) ON DELETE CASCADE,  -- whose writer is owed the verdict;
                                                     -- none for a notice to the coaches
    text       TEXT NOT NULL,                        -- the notice
    tried_at   TEXT CHECK (tried_at GLOB '????-??-??T??:??:??Z'),
    tried_as   TEXT,                                 -- the text in which a verdict was tried last
    written_at TEXT NOT NULL CHECK (written_at GLOB '????-??-??T??:??:??Z'),
    CHECK (reply_id IS NOT NULL OR length(text) > 0)
) STRICT;
CREATE INDEX outbox_by_group ON outbox (group_id);
