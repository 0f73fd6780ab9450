-- Version 2.
-- Whether members whose lines are played out meet the same defence, or different ones.
ALTER TABLE groups ADD COLUMN defences TEXT NOT NULL DEFAULT 'same' CHECK (defences IN ('same', 'differ'));
-- A position as the coach's file gave it, with best moves and variations, and where it stood there: so that
-- a later check can look at all of it again. Empty where that is not known.
ALTER TABLE positions ADD COLUMN given TEXT NOT NULL DEFAULT '';
ALTER TABLE positions ADD COLUMN given_line INTEGER NOT NULL DEFAULT 1 CHECK (given_line >= 1);
-- Hints begin anew with each move of a line: `ply` says on which half-move of the line it was asked for.
CREATE TABLE hints_by_move (
    post_id   INTEGER NOT NULL REFERENCES posts (id) ON DELETE CASCADE,
    member_id INTEGER NOT NULL REFERENCES members (id) ON DELETE CASCADE,
    ply       INTEGER NOT NULL CHECK (ply >= 0),
    step      INTEGER NOT NULL CHECK (step BETWEEN 1 AND 3),
    given_at  TEXT NOT NULL,
    PRIMARY KEY (post_id, member_id, ply, step)
) STRICT, WITHOUT ROWID;
INSERT INTO hints_by_move (post_id, member_id, ply, step, given_at)
    SELECT post_id, member_id, 0, step, given_at FROM hints;
DROP TABLE hints;
ALTER TABLE hints_by_move RENAME TO hints;
CREATE INDEX hints_by_member ON hints (member_id);
CREATE TRIGGER hints_keep_to_their_group BEFORE INSERT ON hints
WHEN (SELECT group_id FROM posts WHERE id = NEW.post_id)
     <> (SELECT group_id FROM members WHERE id = NEW.member_id)
BEGIN SELECT RAISE(ABORT, 'the member is of another group than the post'); END;
