-- The shelf of supplies: what there is, why every amount is what it is, what projects have laid aside. Only added to.
CREATE TABLE shelf_item (
    id        INTEGER PRIMARY KEY AUTOINCREMENT,
    kind      TEXT NOT NULL,
    name      TEXT NOT NULL,
    unit      TEXT NOT NULL,
    -- Exact decimals as text; the price buys so much of the unit.
    price     TEXT,
    buys      TEXT,
    -- ISO 4217.
    currency  TEXT NOT NULL,
    -- YYYY-MM-DD.
    priced_on TEXT,
    place     TEXT NOT NULL,
    -- One more with every change of the item or its amount.
    revision  INTEGER NOT NULL,
    -- Seconds since 1970 when it was taken off the shelf.
    gone_at   INTEGER
) STRICT;

-- The ledger: never changed, only added to. What is there is the sum of its amounts.
CREATE TABLE shelf_entry (
    id      INTEGER PRIMARY KEY AUTOINCREMENT,
    item    INTEGER NOT NULL REFERENCES shelf_item (id) ON DELETE CASCADE,
    -- counted, bought, used or returned.
    why     TEXT NOT NULL,
    -- With its sign.
    amount  TEXT NOT NULL,
    -- What was wanted besides and was not there.
    short   TEXT NOT NULL,
    -- The project and its part that used it; NULL for the maker herself.
    project INTEGER,
    part    TEXT,
    made_at INTEGER NOT NULL
) STRICT;

-- What projects have laid aside of what is there.
CREATE TABLE shelf_hold (
    item    INTEGER NOT NULL REFERENCES shelf_item (id) ON DELETE CASCADE,
    project INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
    amount  TEXT NOT NULL,
    PRIMARY KEY (item, project)
) STRICT, WITHOUT ROWID;
