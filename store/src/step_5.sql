-- Version 5.
-- The coach's words go out where they belong: `comment` stays what is said at the reveal on the position as
-- a whole; `post_words` go out with the post; `notes` are the coach's own line with the words beside its
-- moves, for the reveal.
ALTER TABLE positions ADD COLUMN post_words TEXT NOT NULL DEFAULT '';
ALTER TABLE positions ADD COLUMN notes TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(notes));
-- Topics that a position has besides the one of `positions.topic_id`, which alone is counted: one position
-- posted once is one position solved, whatever it is an example of.
CREATE TABLE further_topics (
    position_id INTEGER NOT NULL REFERENCES positions (id) ON DELETE CASCADE,
    topic_id    INTEGER NOT NULL REFERENCES topics (id) ON DELETE CASCADE,
    PRIMARY KEY (position_id, topic_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX further_topics_by_topic ON further_topics (topic_id);
CREATE TRIGGER further_topics_keep_to_their_group BEFORE INSERT ON further_topics
WHEN (SELECT group_id FROM positions WHERE id = NEW.position_id)
     <> (SELECT group_id FROM topics WHERE id = NEW.topic_id)
BEGIN SELECT RAISE(ABORT, 'the topic is of another group than the position'); END;
