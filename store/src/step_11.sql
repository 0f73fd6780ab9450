-- What is asked of a message that waits is said anew in its reader's language, from why it waits and its posts.
ALTER TABLE held DROP COLUMN question;

-- Words to the coaches are kept as facts. One of the finished sentences has a meaning of its own: it is no news any
-- more once something is queued.
UPDATE outbox SET text = '{"is":"slot-empty"}'
WHERE text = 'It is time for a post, and nothing in the queue may be posted, so nothing was. Import positions and queue sound ones; then wait for the next slot, or post at once.';
