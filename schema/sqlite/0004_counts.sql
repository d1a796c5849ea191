-- Counts of the shelf: a row also where the count found what was recorded, so that it is known when
-- a lot was last looked at and how often it was wrong. Append-only.
CREATE TABLE counts (
  id            INTEGER PRIMARY KEY,
  change_set_id INTEGER NOT NULL REFERENCES change_sets (id) ON DELETE RESTRICT,
  lot_id        INTEGER NOT NULL REFERENCES lots (id) ON DELETE RESTRICT,
  place         TEXT NOT NULL CHECK (place <> ''),
  counted_on    TEXT NOT NULL CHECK (counted_on IS date(counted_on)),
  recorded      INTEGER NOT NULL, -- pieces by the ledger before the count
  counted       INTEGER NOT NULL CHECK (counted >= 0), -- pieces found
  counted_by    TEXT NOT NULL,
  remark        TEXT NOT NULL
) STRICT;
CREATE INDEX counts_by_lot ON counts (lot_id, place);
CREATE INDEX counts_by_change_set ON counts (change_set_id);

CREATE TRIGGER counts_never_change BEFORE UPDATE ON counts
BEGIN SELECT RAISE(ABORT, 'a count is never changed'); END;
CREATE TRIGGER counts_never_go BEFORE DELETE ON counts
BEGIN SELECT RAISE(ABORT, 'counts are never removed'); END;
CREATE TRIGGER counts_never_replaced BEFORE INSERT ON counts
WHEN EXISTS (SELECT 1 FROM counts WHERE id = NEW.id)
BEGIN SELECT RAISE(ABORT, 'a count is never changed'); END;
