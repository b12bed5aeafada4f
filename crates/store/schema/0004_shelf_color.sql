-- The colour of what is on the shelf, #rrggbb, empty where none is told: markers and inks are chosen by it.
ALTER TABLE shelf_item ADD COLUMN color TEXT NOT NULL DEFAULT '';
