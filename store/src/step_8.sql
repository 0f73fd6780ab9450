-- Version 8. What is said of a reply is kept as facts, to be put into the words of whoever reads it.
-- A verdict from before has its sentence in `message`, its reason in `why`, and no facts; one since then has
-- facts, and neither sentence. `why` of a coach's verdict is the coach's own words, as ever.
ALTER TABLE verdicts ADD COLUMN facts TEXT CHECK (facts IS NULL OR json_valid(facts));
