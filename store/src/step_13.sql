-- Version 13. A coach's own card of a topic: instead of the program's card of a mating pattern, or of a topic of the
-- group that the program has none of. Which patterns there are is no list here.
CREATE TABLE cards (
    id         INTEGER PRIMARY KEY,
    group_id   INTEGER NOT NULL REFERENCES groups (id) ON DELETE CASCADE,
    pattern    TEXT CHECK (length(pattern) BETWEEN 1 AND 40),
    topic_id   INTEGER REFERENCES topics (id) ON DELETE CASCADE,
    definition TEXT NOT NULL CHECK (trim(definition) <> '' AND length(definition) <= 500),
    look       TEXT NOT NULL DEFAULT '' CHECK (length(look) <= 400),   -- what to look for
    fen        TEXT CHECK (length(fen) > 0),                           -- the example
    line       TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(line)),    -- its moves in SAN
    written_at TEXT NOT NULL CHECK (written_at GLOB '????-??-??T??:??:??Z'),
    CHECK ((pattern IS NULL) <> (topic_id IS NULL)),
    CHECK (fen IS NOT NULL OR line = '[]'),
    UNIQUE (group_id, pattern),
    UNIQUE (group_id, topic_id)
) STRICT;
CREATE INDEX cards_by_topic ON cards (topic_id) WHERE topic_id IS NOT NULL;
CREATE TRIGGER cards_keep_to_their_group_on_insert BEFORE INSERT ON cards
WHEN NEW.group_id <> (SELECT group_id FROM topics WHERE id = NEW.topic_id)
BEGIN SELECT RAISE(ABORT, 'the topic is of another group than the card'); END;
CREATE TRIGGER cards_keep_to_their_group_on_update BEFORE UPDATE OF topic_id, group_id ON cards
WHEN NEW.group_id <> (SELECT group_id FROM topics WHERE id = NEW.topic_id)
BEGIN SELECT RAISE(ABORT, 'the topic is of another group than the card'); END;
