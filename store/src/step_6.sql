-- Version 6. What points are counted by, and what counts as taking part.
-- The scale of a group: `club` leaves something for whoever solves in the end, `tournament` nothing after a
-- wrong first move. Groups that went by the rule of the tournaments go on so; the others keep their prices.
ALTER TABLE groups ADD COLUMN scale TEXT NOT NULL DEFAULT 'club' CHECK (scale IN ('club', 'tournament'));
UPDATE groups SET scale = 'tournament' WHERE wrong_cost >= 5;
-- A post keeps the prices it went out with, whatever the group's become: members were told these. Posts from
-- before guaranteed nothing.
ALTER TABLE posts ADD COLUMN wrong_cost REAL NOT NULL DEFAULT 0 CHECK (wrong_cost BETWEEN 0 AND 5);
ALTER TABLE posts ADD COLUMN hint_cost REAL NOT NULL DEFAULT 0 CHECK (hint_cost BETWEEN 0 AND 5);
ALTER TABLE posts ADD COLUMN least REAL NOT NULL DEFAULT 0 CHECK (least BETWEEN 0 AND 5);
UPDATE posts SET
    wrong_cost = (SELECT g.wrong_cost FROM groups g WHERE g.id = posts.group_id),
    hint_cost = (SELECT g.hint_cost FROM groups g WHERE g.id = posts.group_id);
-- What came first, a reply or a hint, a reply or giving up, where both came in one second: the last reply of
-- the member before it, 0 for none.
ALTER TABLE hints ADD COLUMN after_reply INTEGER NOT NULL DEFAULT 0;
UPDATE hints SET after_reply = coalesce((
    SELECT max(r.id) FROM replies r
    WHERE r.post_id = hints.post_id AND r.member_id = hints.member_id AND r.received_at < hints.given_at), 0);
ALTER TABLE attempts ADD COLUMN gave_up_at TEXT;
ALTER TABLE attempts ADD COLUMN gave_up_after INTEGER;
UPDATE attempts SET gave_up_at = ended_at, gave_up_after = coalesce((
    SELECT max(r.id) FROM replies r
    WHERE r.post_id = attempts.post_id AND r.member_id = attempts.member_id
      AND r.received_at < attempts.ended_at), 0)
WHERE state = 'given-up';
-- Only a reply that decided something, one to which a coach gave points, a hint, or giving up is taking part.
DELETE FROM attempts WHERE state = 'playing'
    AND NOT EXISTS (
        SELECT 1 FROM replies r JOIN verdicts v ON v.reply_id = r.id AND v.current = 1
        WHERE r.post_id = attempts.post_id AND r.member_id = attempts.member_id
          AND (v.verdict IN ('solved', 'on-the-way', 'wrong') OR (v.by_coach = 1 AND v.points > 0)))
    AND NOT EXISTS (
        SELECT 1 FROM hints h WHERE h.post_id = attempts.post_id AND h.member_id = attempts.member_id);
INSERT INTO attempts (post_id, member_id, state, line, points, wrong, first_try, started_at)
    SELECT h.post_id, h.member_id, 'playing', '[]', 0, 0, 0, min(h.given_at) FROM hints h
    WHERE NOT EXISTS (
        SELECT 1 FROM attempts a WHERE a.post_id = h.post_id AND a.member_id = h.member_id)
    GROUP BY h.post_id, h.member_id;
-- A solution that the coach gave less than full points is no solution at the first try.
UPDATE attempts SET first_try = 0 WHERE points < 5;
