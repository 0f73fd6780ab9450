-- Version 4.
-- What came in and is not judged yet: a message that may be an answer, or the new text of one. It is written
-- here before it is judged, and leaves in the one write in which it becomes a reply with its verdict, or turns
-- out to be talk, of which nothing is kept. What is found here at a start was interrupted.
-- Under the chat's id of its sender: whoever merely talks is made no member by it.
CREATE TABLE inbox (
    id          INTEGER PRIMARY KEY AUTOINCREMENT,
    post_id     INTEGER NOT NULL REFERENCES posts (id) ON DELETE CASCADE,
    source      TEXT NOT NULL UNIQUE,
    chat_user   TEXT NOT NULL,
    name        TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 80),
    text        TEXT NOT NULL,
    received_at TEXT NOT NULL CHECK (received_at GLOB '????-??-??T??:??:??Z')
) STRICT;
CREATE INDEX inbox_by_post ON inbox (post_id, chat_user);

-- What of a post and of its reveal is done in the chat, a row a request, while a post or reveal goes out: so
-- that one that was broken off is completed and nothing is sent twice. `reference` is the chat's id of what
-- came of it.
CREATE TABLE steps (
    post_id   INTEGER NOT NULL REFERENCES posts (id) ON DELETE CASCADE,
    step      TEXT NOT NULL CHECK (length(step) BETWEEN 1 AND 20),
    reference TEXT,
    done_at   TEXT NOT NULL CHECK (done_at GLOB '????-??-??T??:??:??Z'),
    PRIMARY KEY (post_id, step)
) STRICT, WITHOUT ROWID;
-- Whether an open post is before the group with something of it still missing, such as its thread.
ALTER TABLE posts ADD COLUMN half_sent INTEGER NOT NULL DEFAULT 0 CHECK (half_sent IN (0, 1));
