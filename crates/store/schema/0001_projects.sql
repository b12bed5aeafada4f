-- Projects with every revision, pictures by what is in them, ticks at the table. Never changed: later files add.
CREATE TABLE project (
    id         INTEGER PRIMARY KEY AUTOINCREMENT,
    -- The revision that is open now; undo and redo move it.
    head       INTEGER NOT NULL,
    -- Seconds since 1970 when it was put away; NULL while it lies on the table.
    deleted_at INTEGER
) STRICT;

CREATE TABLE revision (
    project    INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
    -- From 1, never used twice in a project.
    number     INTEGER NOT NULL,
    -- The revision that was changed; NULL for the first.
    came_from  INTEGER,
    -- The project file, whole.
    text       TEXT NOT NULL,
    -- What changed, in words.
    what       TEXT NOT NULL,
    -- Seconds since 1970, told by the caller.
    made_at    INTEGER NOT NULL,
    PRIMARY KEY (project, number)
) STRICT, WITHOUT ROWID;

CREATE TABLE picture (
    -- SHA-256 of the bytes, in hexadecimal.
    hash  TEXT PRIMARY KEY,
    bytes BLOB NOT NULL
) STRICT;

CREATE TABLE project_picture (
    project INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
    -- The name in the project file.
    name    TEXT NOT NULL,
    hash    TEXT NOT NULL REFERENCES picture (hash),
    PRIMARY KEY (project, name)
) STRICT, WITHOUT ROWID;

CREATE TABLE tick (
    project   INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
    -- Which step, as the pages name it.
    step      TEXT NOT NULL,
    ticked_at INTEGER NOT NULL,
    PRIMARY KEY (project, step)
) STRICT, WITHOUT ROWID;
