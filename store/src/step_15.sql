-- Version 15. A group may meet at several times of a day: HH:MM, with a blank between two, the earliest first.
ALTER TABLE groups ADD COLUMN post_times TEXT NOT NULL DEFAULT '18:00'
    CHECK (post_times GLOB '[0-2][0-9]:[0-5][0-9]*' AND post_times NOT GLOB '*[^0-9: ]*'
           AND length(post_times) % 6 = 5 AND length(post_times) <= 35);
UPDATE groups SET post_times = post_time;
ALTER TABLE groups DROP COLUMN post_time;

-- Words that are a topic's card: what of it tells of a problem besides the position beside them.
CREATE TABLE cards_shown (
    content_id INTEGER PRIMARY KEY REFERENCES contents (id) ON DELETE CASCADE,
    line       TEXT NOT NULL CHECK (json_valid(line)),   -- the example's moves in SAN
    by_coach   INTEGER NOT NULL CHECK (by_coach IN (0, 1))   -- whether the words are a coach's
) STRICT;

-- What a coach took out of the queue, with where it stood, so that it can be put back. Whatever goes into the queue
-- again, however it comes there, is taken out no longer.
CREATE TABLE taken_out (
    id         INTEGER PRIMARY KEY AUTOINCREMENT,
    group_id   INTEGER NOT NULL REFERENCES groups (id) ON DELETE CASCADE,
    content_id INTEGER NOT NULL UNIQUE,
    rank       INTEGER NOT NULL CHECK (rank >= 0),   -- its place in the order then
    due_at     TEXT CHECK (due_at GLOB '????-??-??T??:??:??Z'),
    added_at   TEXT NOT NULL,
    taken_at   TEXT NOT NULL CHECK (taken_at GLOB '????-??-??T??:??:??Z'),
    FOREIGN KEY (content_id, group_id) REFERENCES contents (id, group_id) ON DELETE CASCADE
) STRICT;
CREATE INDEX taken_out_by_group ON taken_out (group_id, id);
CREATE TRIGGER queued_is_taken_out_no_longer AFTER INSERT ON queue
BEGIN DELETE FROM taken_out WHERE content_id = NEW.content_id; END;
