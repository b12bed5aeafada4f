-- Pieces that were spoiled at the table, in the order in which they were.
CREATE TABLE spoiled (
    id         INTEGER PRIMARY KEY AUTOINCREMENT,
    project    INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
    -- Which piece, as the pages name it.
    piece      TEXT NOT NULL,
    -- Seconds since 1970.
    spoiled_at INTEGER NOT NULL
) STRICT;
