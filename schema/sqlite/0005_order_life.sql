-- Orders as records of their own: approval, revisions, promised dates, and whom the pieces are for.
-- Order lines that were imported have none of these and go on working.

-- What an order as a whole is known by; what state it is in follows from this and its lines.
CREATE TABLE order_headers (
  id                    INTEGER PRIMARY KEY,
  supplier_id           INTEGER NOT NULL REFERENCES suppliers (id) ON DELETE RESTRICT,
  order_ref             TEXT NOT NULL CHECK (order_ref <> ''),
  revision              INTEGER NOT NULL CHECK (revision >= 1), -- the one in force
  created_on            TEXT NOT NULL CHECK (created_on IS date(created_on)),
  placed_on             TEXT CHECK (placed_on IS date(placed_on)), -- NULL while a draft
  expected_by           TEXT CHECK (expected_by IS date(expected_by)),
  approved_by           TEXT NOT NULL, -- '' while nobody has
  approved_on           TEXT CHECK (approved_on IS date(approved_on)),
  approved_sum_minor    INTEGER CHECK (approved_sum_minor >= 0), -- what was approved
  approved_sum_currency TEXT CHECK (approved_sum_currency GLOB '[A-Z][A-Z][A-Z]'),
  approved_unpriced     INTEGER NOT NULL CHECK (approved_unpriced >= 0), -- pieces of unknown cost among it
  cancelled_on          TEXT CHECK (cancelled_on IS date(cancelled_on)),
  cancelled_why         TEXT NOT NULL,
  CHECK ((approved_sum_minor IS NULL) = (approved_sum_currency IS NULL)),
  CHECK ((approved_on IS NULL) = (approved_by = ''))
) STRICT;
CREATE UNIQUE INDEX order_headers_once ON order_headers (supplier_id, order_ref);

-- What a supplier has promised for a line. The line is that of order_lines with the same key.
CREATE TABLE order_promises (
  id            INTEGER PRIMARY KEY,
  supplier_id   INTEGER NOT NULL REFERENCES suppliers (id) ON DELETE RESTRICT,
  order_ref     TEXT NOT NULL,
  item_id       INTEGER NOT NULL REFERENCES items (id) ON DELETE RESTRICT,
  copy          INTEGER NOT NULL CHECK (copy >= 1),
  promised_on   TEXT CHECK (promised_on IS date(promised_on)),
  on_back_order INTEGER NOT NULL CHECK (on_back_order IN (0, 1))
) STRICT;
CREATE UNIQUE INDEX order_promises_once ON order_promises (supplier_id, order_ref, item_id, copy);
CREATE INDEX order_promises_by_item ON order_promises (item_id);

-- One row for each ordered piece that is for a named patient.
CREATE TABLE order_pieces (
  id            INTEGER PRIMARY KEY,
  supplier_id   INTEGER NOT NULL REFERENCES suppliers (id) ON DELETE RESTRICT,
  order_ref     TEXT NOT NULL,
  item_id       INTEGER NOT NULL REFERENCES items (id) ON DELETE RESTRICT,
  copy          INTEGER NOT NULL CHECK (copy >= 1),
  position      INTEGER NOT NULL CHECK (position >= 1), -- within the line
  patient_id    INTEGER NOT NULL REFERENCES patients (id) ON DELETE RESTRICT,
  side          TEXT CHECK (side IN ('left', 'right')),
  needed_on     TEXT CHECK (needed_on IS date(needed_on)),
  promised      INTEGER NOT NULL CHECK (promised IN (0, 1)), -- 1: a reservation stood when it was ordered
  put_away_on   TEXT CHECK (put_away_on IS date(put_away_on)) -- NULL until it has come
) STRICT;
CREATE UNIQUE INDEX order_pieces_once ON order_pieces (supplier_id, order_ref, item_id, copy, position);
CREATE INDEX order_pieces_by_item ON order_pieces (item_id);
CREATE INDEX order_pieces_by_patient ON order_pieces (patient_id);

-- An order as it was sent: everything that its workbook shows.
CREATE TABLE order_revisions (
  id          INTEGER PRIMARY KEY,
  supplier_id INTEGER NOT NULL REFERENCES suppliers (id) ON DELETE RESTRICT,
  order_ref   TEXT NOT NULL,
  revision    INTEGER NOT NULL CHECK (revision >= 1),
  made_on     TEXT NOT NULL CHECK (made_on IS date(made_on)),
  made_by     TEXT NOT NULL,
  why         TEXT NOT NULL,
  ordered_on  TEXT NOT NULL CHECK (ordered_on IS date(ordered_on)),
  expected_by TEXT CHECK (expected_by IS date(expected_by)),
  account     TEXT NOT NULL,
  clinic_name TEXT NOT NULL,
  ship_to     TEXT NOT NULL
) STRICT;
CREATE UNIQUE INDEX order_revisions_once ON order_revisions (supplier_id, order_ref, revision);

CREATE TABLE order_revision_lines (
  id                 INTEGER PRIMARY KEY,
  supplier_id        INTEGER NOT NULL REFERENCES suppliers (id) ON DELETE RESTRICT,
  order_ref          TEXT NOT NULL,
  revision           INTEGER NOT NULL CHECK (revision >= 1),
  position           INTEGER NOT NULL CHECK (position >= 1),
  item_id            INTEGER NOT NULL REFERENCES items (id) ON DELETE RESTRICT,
  supplier_item      TEXT NOT NULL,
  description        TEXT NOT NULL,
  size_label         TEXT NOT NULL,
  quantity           INTEGER NOT NULL CHECK (quantity >= 0), -- pieces
  unit_cost_minor    INTEGER CHECK (unit_cost_minor >= 0),
  unit_cost_currency TEXT CHECK (unit_cost_currency GLOB '[A-Z][A-Z][A-Z]'),
  promised_on        TEXT CHECK (promised_on IS date(promised_on)),
  for_patients       TEXT NOT NULL, -- "P-1 left", separated by ';'
  CHECK ((unit_cost_minor IS NULL) = (unit_cost_currency IS NULL))
) STRICT;
CREATE UNIQUE INDEX order_revision_lines_once ON order_revision_lines (supplier_id, order_ref, revision, position);
CREATE INDEX order_revision_lines_by_item ON order_revision_lines (item_id);

-- Serial numbers of the pieces that a movement moved, as far as they were recorded.
CREATE TABLE movement_serials (
  id          INTEGER PRIMARY KEY,
  movement_id INTEGER NOT NULL REFERENCES movements (id) ON DELETE RESTRICT,
  position    INTEGER NOT NULL CHECK (position >= 1),
  serial      TEXT NOT NULL CHECK (serial <> ''),
  UNIQUE (movement_id, position),
  UNIQUE (movement_id, serial)
) STRICT;

CREATE TRIGGER movement_serials_never_change BEFORE UPDATE ON movement_serials
BEGIN SELECT RAISE(ABORT, 'the stock ledger is never changed'); END;
CREATE TRIGGER movement_serials_never_go BEFORE DELETE ON movement_serials
BEGIN SELECT RAISE(ABORT, 'the stock ledger is never shortened'); END;

-- What was sent to a supplier stays readable as it was.
CREATE TRIGGER order_revisions_never_change BEFORE UPDATE ON order_revisions
BEGIN SELECT RAISE(ABORT, 'a revision of an order is never changed'); END;
CREATE TRIGGER order_revisions_never_go BEFORE DELETE ON order_revisions
BEGIN SELECT RAISE(ABORT, 'a revision of an order is never removed'); END;
CREATE TRIGGER order_revision_lines_never_change BEFORE UPDATE ON order_revision_lines
BEGIN SELECT RAISE(ABORT, 'a revision of an order is never changed'); END;
CREATE TRIGGER order_revision_lines_never_go BEFORE DELETE ON order_revision_lines
BEGIN SELECT RAISE(ABORT, 'a revision of an order is never removed'); END;
