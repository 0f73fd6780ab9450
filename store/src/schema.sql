-- Version 1. Times are UTC, RFC 3339 with seconds and Z, so that text order is time order.
-- Positions are text, verdicts are values; no rule of chess is known here.
-- A reader compares times as text, hence the CHECKs on their shape.
-- AUTOINCREMENT where an id may outlive its row (someone erased): it must not come to mean another.

CREATE TABLE settings (
    key   TEXT PRIMARY KEY,
    value TEXT NOT NULL
) STRICT;

CREATE TABLE groups (
    id          INTEGER PRIMARY KEY,
    chat        TEXT NOT NULL CHECK (chat IN ('room', 'discord')),
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
    wrong_cost  REAL NOT NULL CHECK (wrong_cost BETWEEN 0 AND 5),  -- points off for each wrong first move
    hint_cost   REAL NOT NULL CHECK (hint_cost BETWEEN 0 AND 5),   -- points off for each hint step
    paused      INTEGER NOT NULL DEFAULT 0 CHECK (paused IN (0, 1)),
    paused_until TEXT,
    slots_from  TEXT,                                -- slots up to this moment are past and never made up for:
                                                     -- when a pause ended or the calendar changed
    empty_told_at TEXT,                              -- when the coach was last told of the empty queue
    created_at  TEXT NOT NULL,
    UNIQUE (chat, place)
) STRICT;

CREATE TABLE members (
    id        INTEGER PRIMARY KEY AUTOINCREMENT,
    group_id  INTEGER NOT NULL REFERENCES groups (id) ON DELETE CASCADE,
    chat_user TEXT NOT NULL,
    name      TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 80),
    coach     INTEGER NOT NULL DEFAULT 0 CHECK (coach IN (0, 1)),
    joined_at TEXT NOT NULL,
    UNIQUE (group_id, chat_user)
) STRICT;

CREATE TABLE topics (
    id       INTEGER PRIMARY KEY,
    group_id INTEGER NOT NULL REFERENCES groups (id) ON DELETE CASCADE,
    name     TEXT NOT NULL COLLATE NOCASE CHECK (length(name) BETWEEN 1 AND 80),
    UNIQUE (group_id, name)
) STRICT;

CREATE TABLE positions (
    id          INTEGER PRIMARY KEY,
    group_id    INTEGER NOT NULL REFERENCES groups (id) ON DELETE CASCADE,
    topic_id    INTEGER REFERENCES topics (id) ON DELETE SET NULL,
    source      TEXT NOT NULL,                       -- file and id as the coach gave them
    fen         TEXT NOT NULL,
    stipulation TEXT NOT NULL,
    comment     TEXT NOT NULL DEFAULT '',            -- shown at the reveal
    soundness   TEXT NOT NULL CHECK (soundness IN ('sound', 'several-keys', 'short', 'unsound', 'illegal', 'undecided')),
    report      TEXT NOT NULL CHECK (json_valid(report)),   -- what was checked, how deep, with what
    checker_version INTEGER NOT NULL,
    checked_at  TEXT NOT NULL,
    anyway      INTEGER NOT NULL DEFAULT 0 CHECK (anyway IN (0, 1)),  -- the coach said: post it anyway
    created_at  TEXT NOT NULL,
    UNIQUE (group_id, fen, stipulation),
    UNIQUE (id, group_id)                            -- for the foreign keys of queue and posts
) STRICT;

CREATE INDEX positions_by_topic ON positions (topic_id);

CREATE TABLE queue (
    id          INTEGER PRIMARY KEY,
    group_id    INTEGER NOT NULL REFERENCES groups (id) ON DELETE CASCADE,
    position_id INTEGER NOT NULL UNIQUE,
    rank        INTEGER NOT NULL,                    -- order; distinct within a group
    due_at      TEXT CHECK (due_at GLOB '????-??-??T??:??:??Z'), -- fixed by the coach, or the group's next free slot
    added_at    TEXT NOT NULL,
    UNIQUE (group_id, rank),
    FOREIGN KEY (position_id, group_id) REFERENCES positions (id, group_id) ON DELETE CASCADE
) STRICT;

CREATE TABLE posts (
    id          INTEGER PRIMARY KEY,
    group_id    INTEGER NOT NULL REFERENCES groups (id) ON DELETE CASCADE,
    position_id INTEGER NOT NULL,
    number      INTEGER NOT NULL,                    -- 1, 2, 3 … within the group
    nonce       TEXT NOT NULL UNIQUE CHECK (length(nonce) BETWEEN 1 AND 25),
    state       TEXT NOT NULL CHECK (state IN ('intended', 'open', 'closing', 'closed')),
    slot        TEXT NOT NULL CHECK (slot GLOB '????-??-??T??:??:??Z'), -- when it was due
    intended_at TEXT NOT NULL CHECK (intended_at GLOB '????-??-??T??:??:??Z'),
    opened_at   TEXT CHECK (opened_at GLOB '????-??-??T??:??:??Z'),
    closes_at   TEXT NOT NULL CHECK (closes_at GLOB '????-??-??T??:??:??Z'),
    closed_at   TEXT CHECK (closed_at GLOB '????-??-??T??:??:??Z'),
    message     TEXT,                                -- where it went, in the chat's own words
    thread      TEXT,
    reveal      TEXT,
    CHECK (state = 'intended' OR opened_at IS NOT NULL),
    CHECK (state <> 'closed' OR closed_at IS NOT NULL),
    UNIQUE (group_id, number),
    UNIQUE (group_id, slot),
    FOREIGN KEY (position_id, group_id) REFERENCES positions (id, group_id)
) STRICT;

CREATE INDEX posts_by_position ON posts (position_id);
CREATE INDEX posts_by_state ON posts (state, closes_at);

CREATE TABLE replies (
    id          INTEGER PRIMARY KEY AUTOINCREMENT,
    post_id     INTEGER NOT NULL REFERENCES posts (id) ON DELETE CASCADE,
    member_id   INTEGER NOT NULL REFERENCES members (id) ON DELETE CASCADE,
    source      TEXT UNIQUE,                         -- the chat's id of the message, so that a replay counts once
    via         TEXT NOT NULL CHECK (via IN ('answer', 'talk', 'direct', 'hand')),
    text        TEXT NOT NULL,
    received_at TEXT NOT NULL CHECK (received_at GLOB '????-??-??T??:??:??Z')
) STRICT;

CREATE INDEX replies_by_post ON replies (post_id, member_id);
CREATE INDEX replies_by_member ON replies (member_id, received_at);

CREATE TABLE verdicts (
    id         INTEGER PRIMARY KEY,
    reply_id   INTEGER NOT NULL REFERENCES replies (id) ON DELETE CASCADE,
    verdict    TEXT NOT NULL CHECK (verdict IN ('solved', 'on-the-way', 'wrong', 'illegal', 'unclear', 'unreadable')),
    points     REAL NOT NULL CHECK (points BETWEEN 0 AND 5),
    moves      TEXT NOT NULL CHECK (json_valid(moves)),
    refutation TEXT NOT NULL CHECK (json_valid(refutation)),
    line       TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(line)),  -- SAN of both sides as the line stands after
                                                     -- the reply; empty with a wrong first move
    why        TEXT NOT NULL,
    message    TEXT NOT NULL,
    wrong_first TEXT,                                -- the wrong first move in SAN, where it fails there
    by_coach   INTEGER NOT NULL DEFAULT 0 CHECK (by_coach IN (0, 1)),
    current    INTEGER NOT NULL DEFAULT 1 CHECK (current IN (0, 1)),
    given_at   TEXT NOT NULL
) STRICT;

CREATE INDEX verdicts_by_reply ON verdicts (reply_id);
CREATE UNIQUE INDEX one_current_verdict ON verdicts (reply_id) WHERE current = 1;

-- One member's work on one post: where the line stands and what it is worth so far.
CREATE TABLE attempts (
    post_id    INTEGER NOT NULL REFERENCES posts (id) ON DELETE CASCADE,
    member_id  INTEGER NOT NULL REFERENCES members (id) ON DELETE CASCADE,
    state      TEXT NOT NULL CHECK (state IN ('playing', 'solved', 'given-up')),
    line       TEXT NOT NULL CHECK (json_valid(line)),      -- SAN of both sides so far
    points     REAL NOT NULL CHECK (points BETWEEN 0 AND 5),
    wrong      INTEGER NOT NULL DEFAULT 0 CHECK (wrong >= 0), -- wrong moves so far
    first_try  INTEGER NOT NULL DEFAULT 0 CHECK (first_try IN (0, 1)), -- solved without a wrong move or a hint
    started_at TEXT NOT NULL,
    ended_at   TEXT,
    PRIMARY KEY (post_id, member_id)
) STRICT, WITHOUT ROWID;

CREATE INDEX attempts_by_member ON attempts (member_id);

CREATE TABLE hints (
    post_id   INTEGER NOT NULL REFERENCES posts (id) ON DELETE CASCADE,
    member_id INTEGER NOT NULL REFERENCES members (id) ON DELETE CASCADE,
    step      INTEGER NOT NULL CHECK (step BETWEEN 1 AND 3),
    given_at  TEXT NOT NULL,
    PRIMARY KEY (post_id, member_id, step)
) STRICT, WITHOUT ROWID;

CREATE INDEX hints_by_member ON hints (member_id);

-- What the room's chat shows besides posts and reveals: talk between members.
CREATE TABLE talk (
    id        INTEGER PRIMARY KEY AUTOINCREMENT,
    group_id  INTEGER NOT NULL REFERENCES groups (id) ON DELETE CASCADE,
    member_id INTEGER NOT NULL REFERENCES members (id) ON DELETE CASCADE,
    text      TEXT NOT NULL CHECK (length(text) BETWEEN 1 AND 4000),
    said_at   TEXT NOT NULL
) STRICT;

CREATE INDEX talk_by_group ON talk (group_id, id);
CREATE INDEX talk_by_member ON talk (member_id);

-- What foreign keys cannot say: a group's rows keep to that group.
CREATE TRIGGER replies_keep_to_their_group BEFORE INSERT ON replies
WHEN (SELECT group_id FROM posts WHERE id = NEW.post_id)
     <> (SELECT group_id FROM members WHERE id = NEW.member_id)
BEGIN SELECT RAISE(ABORT, 'the member is of another group than the post'); END;
CREATE TRIGGER attempts_keep_to_their_group BEFORE INSERT ON attempts
WHEN (SELECT group_id FROM posts WHERE id = NEW.post_id)
     <> (SELECT group_id FROM members WHERE id = NEW.member_id)
BEGIN SELECT RAISE(ABORT, 'the member is of another group than the post'); END;
CREATE TRIGGER hints_keep_to_their_group BEFORE INSERT ON hints
WHEN (SELECT group_id FROM posts WHERE id = NEW.post_id)
     <> (SELECT group_id FROM members WHERE id = NEW.member_id)
BEGIN SELECT RAISE(ABORT, 'the member is of another group than the post'); END;
CREATE TRIGGER talk_keeps_to_its_group BEFORE INSERT ON talk
WHEN NEW.group_id <> (SELECT group_id FROM members WHERE id = NEW.member_id)
BEGIN SELECT RAISE(ABORT, 'the member is of another group'); END;
CREATE TRIGGER positions_keep_to_their_group_on_insert BEFORE INSERT ON positions
WHEN NEW.group_id <> (SELECT group_id FROM topics WHERE id = NEW.topic_id)
BEGIN SELECT RAISE(ABORT, 'the topic is of another group than the position'); END;
CREATE TRIGGER positions_keep_to_their_group_on_update BEFORE UPDATE OF topic_id ON positions
WHEN NEW.group_id <> (SELECT group_id FROM topics WHERE id = NEW.topic_id)
BEGIN SELECT RAISE(ABORT, 'the topic is of another group than the position'); END;
