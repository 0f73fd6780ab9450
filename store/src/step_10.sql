-- Version 10. What a post holds is one of three kinds: a problem (a position with its task, as it was checked), a
-- question (words that members answer in their own), or words alone. The queue and the posts refer to such an
-- item, and no longer to a position.
CREATE TABLE contents (
    id          INTEGER PRIMARY KEY,
    group_id    INTEGER NOT NULL REFERENCES groups (id) ON DELETE CASCADE,
    kind        TEXT NOT NULL CHECK (kind IN ('problem', 'question', 'words')),
    position_id INTEGER UNIQUE,                      -- of a problem; topic, source and words stand there
    topic_id    INTEGER REFERENCES topics (id) ON DELETE SET NULL,
    source      TEXT NOT NULL DEFAULT '',            -- file and id, where a file gave it
    words       TEXT NOT NULL DEFAULT '' CHECK (length(words) <= 1000),
    fen         TEXT CHECK (length(fen) > 0),        -- a picture beside the words
    at_reveal   TEXT NOT NULL DEFAULT '' CHECK (length(at_reveal) <= 1000),  -- the coach's words on a question
    created_at  TEXT NOT NULL CHECK (created_at GLOB '????-??-??T??:??:??Z'),
    CHECK ((kind = 'problem') = (position_id IS NOT NULL)),
    CHECK (kind <> 'problem' OR (words = '' AND fen IS NULL AND topic_id IS NULL AND source = '')),
    CHECK (kind = 'problem' OR trim(words) <> ''),
    CHECK (kind = 'question' OR at_reveal = ''),
    UNIQUE (id, group_id),                           -- for the foreign keys of queue and posts
    FOREIGN KEY (position_id, group_id) REFERENCES positions (id, group_id) ON DELETE CASCADE
) STRICT;
CREATE INDEX contents_by_topic ON contents (topic_id) WHERE topic_id IS NOT NULL;
CREATE INDEX contents_by_group ON contents (group_id);
-- Times of older versions may have another shape; these are the moment of the step.
INSERT INTO contents (group_id, kind, position_id, created_at)
    SELECT group_id, 'problem', id, strftime('%Y-%m-%dT%H:%M:%SZ', 'now') FROM positions
    WHERE id IN (SELECT position_id FROM queue UNION SELECT position_id FROM posts) ORDER BY id;

-- Tables that others point at are made anew by the procedure of SQLite's documentation ("Making Other Kinds Of
-- Table Schema Changes"): what names them in a trigger is dropped first and made again at the end.
DROP TRIGGER replies_keep_to_their_group;
DROP TRIGGER attempts_keep_to_their_group;
DROP TRIGGER hints_keep_to_their_group;

CREATE TABLE queue_anew (
    id          INTEGER PRIMARY KEY,
    group_id    INTEGER NOT NULL REFERENCES groups (id) ON DELETE CASCADE,
    content_id  INTEGER NOT NULL UNIQUE,
    rank        INTEGER NOT NULL,                    -- order; distinct within a group
    due_at      TEXT CHECK (due_at GLOB '????-??-??T??:??:??Z'), -- fixed by the coach, or the group's next free slot
    added_at    TEXT NOT NULL,
    UNIQUE (group_id, rank),
    FOREIGN KEY (content_id, group_id) REFERENCES contents (id, group_id) ON DELETE CASCADE
) STRICT;
INSERT INTO queue_anew (id, group_id, content_id, rank, due_at, added_at)
    SELECT q.id, q.group_id, c.id, q.rank, q.due_at, q.added_at
    FROM queue q JOIN contents c ON c.position_id = q.position_id;
DROP TABLE queue;
ALTER TABLE queue_anew RENAME TO queue;

CREATE TABLE posts_anew (
    id          INTEGER PRIMARY KEY,
    group_id    INTEGER NOT NULL REFERENCES groups (id) ON DELETE CASCADE,
    content_id  INTEGER NOT NULL,
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
    half_sent   INTEGER NOT NULL DEFAULT 0 CHECK (half_sent IN (0, 1)),
    wrong_cost  REAL NOT NULL DEFAULT 0 CHECK (wrong_cost BETWEEN 0 AND 5),
    hint_cost   REAL NOT NULL DEFAULT 0 CHECK (hint_cost BETWEEN 0 AND 5),
    least       REAL NOT NULL DEFAULT 0 CHECK (least BETWEEN 0 AND 5),
    CHECK (state = 'intended' OR opened_at IS NOT NULL),
    CHECK (state <> 'closed' OR closed_at IS NOT NULL),
    UNIQUE (group_id, number),
    UNIQUE (group_id, slot),
    FOREIGN KEY (content_id, group_id) REFERENCES contents (id, group_id)
) STRICT;
INSERT INTO posts_anew (id, group_id, content_id, number, nonce, state, slot, intended_at, opened_at, closes_at,
                        closed_at, message, thread, reveal, half_sent, wrong_cost, hint_cost, least)
    SELECT o.id, o.group_id, c.id, o.number, o.nonce, o.state, o.slot, o.intended_at, o.opened_at, o.closes_at,
           o.closed_at, o.message, o.thread, o.reveal, o.half_sent, o.wrong_cost, o.hint_cost, o.least
    FROM posts o JOIN contents c ON c.position_id = o.position_id;
DROP TABLE posts;
ALTER TABLE posts_anew RENAME TO posts;
CREATE INDEX posts_by_content ON posts (content_id);
CREATE INDEX posts_by_state ON posts (state, closes_at);

-- An answer to a question is marked, by a coach.
CREATE TABLE verdicts_anew (
    id         INTEGER PRIMARY KEY,
    reply_id   INTEGER NOT NULL REFERENCES replies (id) ON DELETE CASCADE,
    verdict    TEXT NOT NULL CHECK (verdict IN ('solved', 'on-the-way', 'wrong', 'illegal', 'unclear', 'unreadable', 'marked')),
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
    given_at   TEXT NOT NULL,
    facts      TEXT CHECK (facts IS NULL OR json_valid(facts)),
    CHECK (verdict <> 'marked' OR by_coach = 1)
) STRICT;
INSERT INTO verdicts_anew (id, reply_id, verdict, points, moves, refutation, line, why, message, wrong_first,
                           by_coach, current, given_at, facts)
    SELECT id, reply_id, verdict, points, moves, refutation, line, why, message, wrong_first,
           by_coach, current, given_at, facts
    FROM verdicts;
DROP TABLE verdicts;
ALTER TABLE verdicts_anew RENAME TO verdicts;
CREATE INDEX verdicts_by_reply ON verdicts (reply_id);
CREATE UNIQUE INDEX one_current_verdict ON verdicts (reply_id) WHERE current = 1;

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
CREATE TRIGGER contents_keep_to_their_group_on_insert BEFORE INSERT ON contents
WHEN NEW.group_id <> (SELECT group_id FROM topics WHERE id = NEW.topic_id)
BEGIN SELECT RAISE(ABORT, 'the topic is of another group than the content'); END;
CREATE TRIGGER contents_keep_to_their_group_on_update BEFORE UPDATE OF topic_id ON contents
WHEN NEW.group_id <> (SELECT group_id FROM topics WHERE id = NEW.topic_id)
BEGIN SELECT RAISE(ABORT, 'the topic is of another group than the content'); END;

-- What belongs to one kind only. Which kind an item is never changes.
CREATE TRIGGER contents_stay_what_they_are BEFORE UPDATE OF kind, position_id, group_id ON contents
WHEN NEW.kind <> OLD.kind OR NEW.position_id IS NOT OLD.position_id OR NEW.group_id <> OLD.group_id
BEGIN SELECT RAISE(ABORT, 'what an item of content is does not change'); END;
CREATE TRIGGER words_take_no_replies BEFORE INSERT ON replies
WHEN (SELECT c.kind FROM posts o JOIN contents c ON c.id = o.content_id WHERE o.id = NEW.post_id) = 'words'
BEGIN SELECT RAISE(ABORT, 'a post of words alone takes no replies'); END;
CREATE TRIGGER words_take_no_messages BEFORE INSERT ON inbox
WHEN (SELECT c.kind FROM posts o JOIN contents c ON c.id = o.content_id WHERE o.id = NEW.post_id) = 'words'
BEGIN SELECT RAISE(ABORT, 'a post of words alone takes no replies'); END;
CREATE TRIGGER words_have_no_attempts BEFORE INSERT ON attempts
WHEN (SELECT c.kind FROM posts o JOIN contents c ON c.id = o.content_id WHERE o.id = NEW.post_id) = 'words'
BEGIN SELECT RAISE(ABORT, 'nobody takes part in a post of words alone'); END;
CREATE TRIGGER hints_are_at_problems BEFORE INSERT ON hints
WHEN (SELECT c.kind FROM posts o JOIN contents c ON c.id = o.content_id WHERE o.id = NEW.post_id) <> 'problem'
BEGIN SELECT RAISE(ABORT, 'only a problem has hints'); END;
CREATE TRIGGER questions_are_not_solved BEFORE INSERT ON attempts
WHEN NEW.state <> 'playing'
     AND (SELECT c.kind FROM posts o JOIN contents c ON c.id = o.content_id WHERE o.id = NEW.post_id) <> 'problem'
BEGIN SELECT RAISE(ABORT, 'only a problem is solved or given up'); END;
CREATE TRIGGER questions_do_not_become_solved BEFORE UPDATE OF state ON attempts
WHEN NEW.state <> 'playing'
     AND (SELECT c.kind FROM posts o JOIN contents c ON c.id = o.content_id WHERE o.id = NEW.post_id) <> 'problem'
BEGIN SELECT RAISE(ABORT, 'only a problem is solved or given up'); END;
CREATE TRIGGER verdicts_go_by_their_content BEFORE INSERT ON verdicts
WHEN (NEW.verdict = 'marked') <> ((
    SELECT c.kind FROM replies r JOIN posts o ON o.id = r.post_id JOIN contents c ON c.id = o.content_id
    WHERE r.id = NEW.reply_id) = 'question')
BEGIN SELECT RAISE(ABORT, 'an answer to a question is marked, and no other is'); END;
