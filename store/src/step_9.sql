-- Version 9. In which language a member is spoken to: the one they chose, and the one their client asked for when
-- it was last heard of. Both are BCP 47 tags; which languages there are is no list here.
ALTER TABLE members ADD COLUMN language TEXT
    CHECK (length(language) BETWEEN 2 AND 35 AND language NOT GLOB '*[^A-Za-z0-9-]*');
ALTER TABLE members ADD COLUMN client_language TEXT
    CHECK (length(client_language) BETWEEN 2 AND 35 AND client_language NOT GLOB '*[^A-Za-z0-9-]*');
