-- Version 12. A lesson teaches a topic in steps. Each step is kept as it was written, and has parts, which are
-- items of content like any other; what leads up to one (moves with the coach's words) belongs to the lesson.
CREATE TABLE lessons (
    id         INTEGER PRIMARY KEY AUTOINCREMENT,
    group_id   INTEGER NOT NULL REFERENCES groups (id) ON DELETE CASCADE,
    title      TEXT NOT NULL COLLATE NOCASE CHECK (length(title) BETWEEN 1 AND 100),
    topic_id   INTEGER REFERENCES topics (id) ON DELETE SET NULL,
    source     TEXT NOT NULL,                        -- the file's name, as the coach gave it
    created_at TEXT NOT NULL CHECK (created_at GLOB '????-??-??T??:??:??Z'),
    UNIQUE (group_id, title),
    UNIQUE (id, group_id)                            -- for the foreign keys of its parts
) STRICT;
CREATE INDEX lessons_by_topic ON lessons (topic_id) WHERE topic_id IS NOT NULL;

CREATE TABLE lesson_steps (
    lesson_id INTEGER NOT NULL REFERENCES lessons (id) ON DELETE CASCADE,
    step      INTEGER NOT NULL CHECK (step >= 1),    -- its place in the lesson
    game      TEXT NOT NULL CHECK (length(game) > 0),
    line      INTEGER NOT NULL CHECK (line >= 1),    -- of the coach's file
    contrast  INTEGER NOT NULL DEFAULT 0 CHECK (contrast IN (0, 1)),
    PRIMARY KEY (lesson_id, step)
) STRICT, WITHOUT ROWID;

CREATE TABLE lesson_parts (
    lesson_id  INTEGER NOT NULL,
    group_id   INTEGER NOT NULL,
    step       INTEGER NOT NULL,
    part       INTEGER NOT NULL CHECK (part >= 1),   -- its place in the step
    content_id INTEGER NOT NULL,
    lead       TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(lead)),
    PRIMARY KEY (lesson_id, step, part),
    UNIQUE (lesson_id, content_id),
    FOREIGN KEY (lesson_id, step) REFERENCES lesson_steps (lesson_id, step) ON DELETE CASCADE,
    FOREIGN KEY (lesson_id, group_id) REFERENCES lessons (id, group_id) ON DELETE CASCADE,
    FOREIGN KEY (content_id, group_id) REFERENCES contents (id, group_id) ON DELETE CASCADE
) STRICT, WITHOUT ROWID;
CREATE INDEX lesson_parts_by_content ON lesson_parts (content_id);

-- What would give away the answer to something else does not go out before that is revealed.
CREATE TABLE content_waits (
    content_id INTEGER NOT NULL REFERENCES contents (id) ON DELETE CASCADE,
    for_id     INTEGER NOT NULL REFERENCES contents (id) ON DELETE CASCADE,
    PRIMARY KEY (content_id, for_id),
    CHECK (content_id <> for_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX content_waits_by_for ON content_waits (for_id);

CREATE TRIGGER lessons_keep_to_their_group_on_insert BEFORE INSERT ON lessons
WHEN NEW.group_id <> (SELECT group_id FROM topics WHERE id = NEW.topic_id)
BEGIN SELECT RAISE(ABORT, 'the topic is of another group than the lesson'); END;
CREATE TRIGGER lessons_keep_to_their_group_on_update BEFORE UPDATE OF topic_id, group_id ON lessons
WHEN NEW.group_id <> (SELECT group_id FROM topics WHERE id = NEW.topic_id)
BEGIN SELECT RAISE(ABORT, 'the topic is of another group than the lesson'); END;
CREATE TRIGGER content_waits_within_a_group BEFORE INSERT ON content_waits
WHEN (SELECT group_id FROM contents WHERE id = NEW.content_id)
     <> (SELECT group_id FROM contents WHERE id = NEW.for_id)
BEGIN SELECT RAISE(ABORT, 'what is waited for is of another group'); END;
