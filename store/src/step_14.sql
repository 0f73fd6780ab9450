-- Version 14. A lesson as a coach is writing it, half finished as it may be: nothing of it is a lesson before it is taken
-- in. It may have been opened from one, whose place it takes then.
CREATE TABLE drafts (
    id         INTEGER PRIMARY KEY AUTOINCREMENT,    -- never used again, so that a page that was left open finds nothing
    group_id   INTEGER NOT NULL REFERENCES groups (id) ON DELETE CASCADE,
    lesson_id  INTEGER REFERENCES lessons (id) ON DELETE SET NULL,
    content    TEXT NOT NULL CHECK (json_valid(content)),
    revision   INTEGER NOT NULL DEFAULT 1 CHECK (revision >= 1),
    created_at TEXT NOT NULL CHECK (created_at GLOB '????-??-??T??:??:??Z'),
    changed_at TEXT NOT NULL CHECK (changed_at GLOB '????-??-??T??:??:??Z'),
    CHECK (changed_at >= created_at)
) STRICT;
CREATE INDEX drafts_by_group ON drafts (group_id, changed_at);
CREATE UNIQUE INDEX drafts_by_lesson ON drafts (lesson_id) WHERE lesson_id IS NOT NULL;
CREATE TRIGGER drafts_keep_to_their_group_on_insert BEFORE INSERT ON drafts
WHEN NEW.group_id <> (SELECT group_id FROM lessons WHERE id = NEW.lesson_id)
BEGIN SELECT RAISE(ABORT, 'the lesson is of another group than the draft'); END;
CREATE TRIGGER drafts_keep_to_their_group_on_update BEFORE UPDATE OF lesson_id, group_id ON drafts
WHEN NEW.group_id <> (SELECT group_id FROM lessons WHERE id = NEW.lesson_id)
BEGIN SELECT RAISE(ABORT, 'the lesson is of another group than the draft'); END;
