-- Version 16. Answers to questions that a coach would show as examples, with their writers' leave, and what of them
-- stands in a chat.
CREATE TABLE examples (
    reply_id INTEGER PRIMARY KEY REFERENCES replies (id) ON DELETE CASCADE,
    words    TEXT NOT NULL DEFAULT '' CHECK (length(words) <= 1000),   -- the coach's, shown beside the answer
    asked_at TEXT NOT NULL CHECK (asked_at GLOB '????-??-??T??:??:??Z'),
    told_at  TEXT CHECK (told_at GLOB '????-??-??T??:??:??Z'),         -- when its writer's chat was given the question
    leave    TEXT CHECK (leave IN ('named', 'nameless', 'refused')),   -- NULL while its writer has not said
    said_at  TEXT CHECK (said_at GLOB '????-??-??T??:??:??Z'),         -- when they did
    version  INTEGER NOT NULL CHECK (version > 0),                     -- counts how often it changed
    CHECK ((leave IS NULL) = (said_at IS NULL))
) STRICT;
CREATE TRIGGER examples_are_answers_to_questions BEFORE INSERT ON examples
WHEN (SELECT c.kind FROM replies r JOIN posts o ON o.id = r.post_id JOIN contents c ON c.id = o.content_id
      WHERE r.id = NEW.reply_id) <> 'question'
BEGIN SELECT RAISE(ABORT, 'only answers to questions are shown as examples'); END;

-- No key to the reply: when its writer is erased, what stands of it in a chat is still to be taken away.
CREATE TABLE examples_out (
    reply_id INTEGER PRIMARY KEY,
    post_id  INTEGER NOT NULL REFERENCES posts (id) ON DELETE CASCADE,
    version  INTEGER NOT NULL CHECK (version >= 0),   -- which one is out; 0 when it was taken away again
    message  TEXT                                     -- in the chat's own words
) STRICT;
CREATE INDEX examples_out_by_post ON examples_out (post_id);
