-- How units were handed to their patients: what was overridden, and the proof of delivery.

CREATE TABLE handovers (
  id               INTEGER PRIMARY KEY,
  patient_id       INTEGER NOT NULL REFERENCES patients (id) ON DELETE RESTRICT,
  side             TEXT NOT NULL CHECK (side IN ('left', 'right')),
  item_id          INTEGER NOT NULL REFERENCES items (id) ON DELETE RESTRICT,
  lot              TEXT NOT NULL,
  serial           TEXT NOT NULL,
  issued_on        TEXT NOT NULL CHECK (issued_on IS date(issued_on)),
  copy             INTEGER NOT NULL CHECK (copy >= 1),
  overridden       TEXT NOT NULL, -- what stopped it, '' when nothing did
  override_by      TEXT NOT NULL,
  override_because TEXT NOT NULL,
  printed_on       TEXT CHECK (printed_on IS date(printed_on)), -- the delivery sheet, last time
  signed_on        TEXT CHECK (signed_on IS date(signed_on)), -- NULL: no proof of delivery
  CHECK (signed_on >= issued_on),
  CHECK ((overridden = '') = (override_by = '')),
  CHECK ((overridden = '') = (override_because = '')),
  FOREIGN KEY (patient_id, side, item_id, lot, serial, issued_on, copy)
    REFERENCES units (patient_id, side, item_id, lot, serial, issued_on, copy)
    ON DELETE RESTRICT ON UPDATE CASCADE
) STRICT;
CREATE UNIQUE INDEX handovers_once ON handovers (patient_id, side, item_id, lot, serial, issued_on, copy);
CREATE INDEX handovers_by_item ON handovers (item_id);
