-- Places that only movements name count as stores, or as quarantine when named so.
CREATE TABLE places (
  id       INTEGER PRIMARY KEY,
  name     TEXT NOT NULL UNIQUE CHECK (name <> ''),
  sort     TEXT NOT NULL CHECK (sort IN ('store', 'quarantine', 'in transit', 'on loan', 'at supplier')),
  leads_to TEXT NOT NULL -- in transit: the place where the pieces go; at supplier: the supplier
) STRICT;

-- Pieces lent to patients on trial.
CREATE TABLE loans (
  id         INTEGER PRIMARY KEY,
  number     INTEGER NOT NULL UNIQUE CHECK (number >= 1),
  patient_id INTEGER NOT NULL REFERENCES patients (id) ON DELETE RESTRICT,
  side       TEXT NOT NULL CHECK (side IN ('left', 'right')),
  item_id    INTEGER NOT NULL REFERENCES items (id) ON DELETE RESTRICT,
  lot        TEXT NOT NULL,
  use_by     TEXT CHECK (use_by IS date(use_by)),
  quantity   INTEGER NOT NULL CHECK (quantity >= 1), -- pieces
  place      TEXT NOT NULL, -- where they were taken from
  lent_on    TEXT NOT NULL CHECK (lent_on IS date(lent_on)),
  due_on     TEXT NOT NULL CHECK (due_on IS date(due_on)),
  came_back  INTEGER NOT NULL CHECK (came_back >= 0), -- pieces
  kept       INTEGER NOT NULL CHECK (kept >= 0), -- pieces, then issued to the patient
  lost       INTEGER NOT NULL CHECK (lost >= 0), -- pieces
  note       TEXT NOT NULL,
  CHECK (due_on >= lent_on),
  CHECK (came_back + kept + lost <= quantity)
) STRICT;
CREATE INDEX loans_by_patient ON loans (patient_id);
CREATE INDEX loans_by_item ON loans (item_id, lot);

-- Pieces sent back to their supplier, and the credit due.
CREATE TABLE supplier_returns (
  id                INTEGER PRIMARY KEY,
  number            INTEGER NOT NULL UNIQUE CHECK (number >= 1),
  supplier_id       INTEGER NOT NULL REFERENCES suppliers (id) ON DELETE RESTRICT,
  reference         TEXT NOT NULL CHECK (reference <> ''),
  item_id           INTEGER NOT NULL REFERENCES items (id) ON DELETE RESTRICT,
  lot               TEXT NOT NULL,
  use_by            TEXT CHECK (use_by IS date(use_by)),
  quantity          INTEGER NOT NULL CHECK (quantity >= 1), -- pieces
  reason            TEXT NOT NULL,
  sent_on           TEXT NOT NULL CHECK (sent_on IS date(sent_on)),
  due_minor         INTEGER CHECK (due_minor >= 0), -- for all pieces
  due_currency      TEXT CHECK (due_currency GLOB '[A-Z][A-Z][A-Z]'),
  credited_minor    INTEGER CHECK (credited_minor >= 0), -- so far
  credited_currency TEXT CHECK (credited_currency GLOB '[A-Z][A-Z][A-Z]'),
  closed_on         TEXT CHECK (closed_on IS date(closed_on)), -- NULL while more is expected
  CHECK ((due_minor IS NULL) = (due_currency IS NULL)),
  CHECK ((credited_minor IS NULL) = (credited_currency IS NULL)),
  CHECK (closed_on >= sent_on)
) STRICT;
CREATE INDEX supplier_returns_by_supplier ON supplier_returns (supplier_id);
CREATE INDEX supplier_returns_by_item ON supplier_returns (item_id, lot);

-- A booking (a unit of work that moved stock) that another one took back; at most once.
CREATE TABLE reversals (
  id              INTEGER PRIMARY KEY,
  reversed_set_id INTEGER NOT NULL UNIQUE REFERENCES change_sets (id) ON DELETE RESTRICT,
  change_set_id   INTEGER NOT NULL REFERENCES change_sets (id) ON DELETE RESTRICT
) STRICT;
CREATE INDEX reversals_by_set ON reversals (change_set_id);
CREATE TRIGGER reversals_never_change BEFORE UPDATE ON reversals
BEGIN SELECT RAISE(ABORT, 'a reversal is never changed'); END;
CREATE TRIGGER reversals_never_go BEFORE DELETE ON reversals
BEGIN SELECT RAISE(ABORT, 'a reversal is never taken back'); END;
CREATE TRIGGER reversals_never_replaced BEFORE INSERT ON reversals
WHEN EXISTS (SELECT 1 FROM reversals WHERE id = NEW.id OR reversed_set_id = NEW.reversed_set_id)
BEGIN SELECT RAISE(ABORT, 'this booking was taken back already'); END;
