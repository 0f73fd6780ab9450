-- Version 3.
-- A member whom the coach has muted answers and does not talk; until the coach's word where no end is set.
ALTER TABLE members ADD COLUMN muted_at TEXT CHECK (muted_at GLOB '????-??-??T??:??:??Z');
ALTER TABLE members ADD COLUMN muted_until TEXT CHECK (muted_until GLOB '????-??-??T??:??:??Z');
ALTER TABLE members ADD COLUMN muted_why TEXT NOT NULL DEFAULT '';
-- One whom the coach has removed is shut out; everything of theirs stays until it is erased.
ALTER TABLE members ADD COLUMN removed_at TEXT CHECK (removed_at GLOB '????-??-??T??:??:??Z');

-- Further ids by which a chat knows a member: another device, or somebody merged into them.
CREATE TABLE identities (
    group_id  INTEGER NOT NULL REFERENCES groups (id) ON DELETE CASCADE,
    chat_user TEXT NOT NULL,
    member_id INTEGER NOT NULL REFERENCES members (id) ON DELETE CASCADE,
    since     TEXT NOT NULL CHECK (since GLOB '????-??-??T??:??:??Z'),
    PRIMARY KEY (group_id, chat_user)
) STRICT, WITHOUT ROWID;
CREATE INDEX identities_by_member ON identities (member_id);
CREATE TRIGGER identities_keep_to_their_group BEFORE INSERT ON identities
WHEN NEW.group_id <> (SELECT group_id FROM members WHERE id = NEW.member_id)
BEGIN SELECT RAISE(ABORT, 'the member is of another group'); END;
-- One id means one member.
CREATE TRIGGER identities_are_no_member_of_their_own BEFORE INSERT ON identities
WHEN EXISTS (SELECT 1 FROM members WHERE group_id = NEW.group_id AND chat_user = NEW.chat_user)
BEGIN SELECT RAISE(ABORT, 'the id is a member of its own'); END;
CREATE TRIGGER members_are_no_further_identity BEFORE INSERT ON members
WHEN EXISTS (SELECT 1 FROM identities WHERE group_id = NEW.group_id AND chat_user = NEW.chat_user)
BEGIN SELECT RAISE(ABORT, 'the id belongs to another member'); END;

-- What was taken back by its writer or hidden by a coach: out of everyone's sight, and kept for the coach.
ALTER TABLE talk ADD COLUMN gone_at TEXT CHECK (gone_at GLOB '????-??-??T??:??:??Z');
ALTER TABLE talk ADD COLUMN gone_by INTEGER REFERENCES members (id) ON DELETE SET NULL;
CREATE INDEX talk_gone ON talk (group_id, id) WHERE gone_at IS NOT NULL;
CREATE INDEX talk_gone_by ON talk (gone_by) WHERE gone_by IS NOT NULL;
ALTER TABLE replies ADD COLUMN gone_at TEXT CHECK (gone_at GLOB '????-??-??T??:??:??Z');
ALTER TABLE replies ADD COLUMN gone_by INTEGER REFERENCES members (id) ON DELETE SET NULL;
CREATE INDEX replies_gone_by ON replies (gone_by) WHERE gone_by IS NOT NULL;

-- A reply that a coach settled without a verdict: by a private answer, or (no words) as needing none.
CREATE TABLE coach_words (
    reply_id INTEGER PRIMARY KEY REFERENCES replies (id) ON DELETE CASCADE,
    words    TEXT NOT NULL CHECK (length(words) <= 4000),
    by_id    INTEGER REFERENCES members (id) ON DELETE SET NULL,
    given_at TEXT NOT NULL CHECK (given_at GLOB '????-??-??T??:??:??Z'),
    told_at  TEXT CHECK (told_at GLOB '????-??-??T??:??:??Z')
) STRICT;
CREATE INDEX coach_words_by ON coach_words (by_id) WHERE by_id IS NOT NULL;
CREATE INDEX coach_words_untold ON coach_words (reply_id) WHERE told_at IS NULL;

-- Which coach did what, and to whom. Goes with the member it is about.
CREATE TABLE deeds (
    id       INTEGER PRIMARY KEY,
    group_id INTEGER NOT NULL REFERENCES groups (id) ON DELETE CASCADE,
    by_id    INTEGER REFERENCES members (id) ON DELETE SET NULL,
    deed     TEXT NOT NULL CHECK (length(deed) BETWEEN 1 AND 40),
    about_id INTEGER REFERENCES members (id) ON DELETE CASCADE,
    note     TEXT NOT NULL DEFAULT '' CHECK (length(note) <= 400),
    done_at  TEXT NOT NULL CHECK (done_at GLOB '????-??-??T??:??:??Z')
) STRICT;
CREATE INDEX deeds_by_group ON deeds (group_id, id);
CREATE INDEX deeds_by_coach ON deeds (by_id) WHERE by_id IS NOT NULL;
CREATE INDEX deeds_by_member ON deeds (about_id) WHERE about_id IS NOT NULL;
