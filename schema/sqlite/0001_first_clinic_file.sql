-- The first form of the clinic file.
--
-- Dates are ISO 8601 text, "2026-11-25"; `x IS date(x)` holds for NULL and for real days only.
-- Money is a whole number of the currency's smallest unit (cents) with its ISO 4217 code.
-- Lengths are in centimetres. Words (kind, side, reason ...) are written as in the clinic's files.
-- NULL means "not recorded"; for texts '' does.

-- Decisions of the clinic about itself, one per row; keys this program does not know are kept.
CREATE TABLE settings (
  id    INTEGER PRIMARY KEY,
  key   TEXT NOT NULL UNIQUE CHECK (key <> ''),
  value TEXT NOT NULL,
  CHECK (key <> 'service_target' OR CAST(value AS REAL) BETWEEN 0 AND 1),
  CHECK (key <> 'currency' OR value GLOB '[A-Z][A-Z][A-Z]')
) STRICT;

CREATE TABLE suppliers (
  id                         INTEGER PRIMARY KEY,
  name                       TEXT NOT NULL UNIQUE CHECK (name <> ''),
  order_weekdays             INTEGER NOT NULL CHECK (order_weekdays BETWEEN 0 AND 127), -- bit 0 Monday to bit 6 Sunday
  order_every_days           INTEGER NOT NULL CHECK (order_every_days >= 0), -- 0: the weekdays count
  freight_minor              INTEGER CHECK (freight_minor >= 0), -- for each order
  freight_currency           TEXT CHECK (freight_currency GLOB '[A-Z][A-Z][A-Z]'),
  free_freight_from_minor    INTEGER CHECK (free_freight_from_minor >= 0), -- value of goods
  free_freight_from_currency TEXT CHECK (free_freight_from_currency GLOB '[A-Z][A-Z][A-Z]'),
  currency                   TEXT NOT NULL CHECK (currency GLOB '[A-Z][A-Z][A-Z]'),
  email                      TEXT NOT NULL,
  account                    TEXT NOT NULL, -- the clinic's account number with the supplier
  CHECK ((freight_minor IS NULL) = (freight_currency IS NULL)),
  CHECK ((free_freight_from_minor IS NULL) = (free_freight_from_currency IS NULL))
) STRICT;

-- The catalogue: a maker's part in one size.
CREATE TABLE items (
  id                 INTEGER PRIMARY KEY,
  code               TEXT NOT NULL UNIQUE CHECK (code <> ''),
  description        TEXT NOT NULL,
  kind               TEXT NOT NULL CHECK (kind IN ('liner', 'sleeve', 'lock', 'pin', 'valve', 'pump', 'sock')),
  attachment         TEXT NOT NULL CHECK (attachment IN ('locking', 'cushion', 'seal', 'none')),
  material           TEXT NOT NULL CHECK (material IN ('silicone', 'mineral-oil gel', 'urethane', 'neoprene', 'fabric', 'metal', 'other')),
  size_label         TEXT NOT NULL,
  size_min_cm        REAL CHECK (size_min_cm >= 0), -- limb circumference
  size_max_cm        REAL CHECK (size_max_cm >= 0),
  size_at_cm         REAL CHECK (size_at_cm >= 0), -- height above the distal end
  billing_code       TEXT NOT NULL,
  supplier_id        INTEGER REFERENCES suppliers (id) ON DELETE RESTRICT,
  supplier_item      TEXT NOT NULL,
  unit_cost_minor    INTEGER CHECK (unit_cost_minor >= 0),
  unit_cost_currency TEXT CHECK (unit_cost_currency GLOB '[A-Z][A-Z][A-Z]'),
  currency           TEXT NOT NULL CHECK (currency GLOB '[A-Z][A-Z][A-Z]'),
  pack_size          INTEGER NOT NULL CHECK (pack_size >= 1), -- pieces
  min_order          INTEGER NOT NULL CHECK (min_order >= 0), -- pieces
  lead_days          INTEGER CHECK (lead_days >= 0), -- quoted, order to receipt
  shelf_life_days    INTEGER CHECK (shelf_life_days >= 0), -- manufacture to use-by
  thread             TEXT NOT NULL,
  gtin               TEXT NOT NULL,
  stocked            INTEGER NOT NULL CHECK (stocked IN (0, 1)), -- 0: ordered for a named patient only
  CHECK (size_min_cm <= size_max_cm),
  CHECK ((unit_cost_minor IS NULL) = (unit_cost_currency IS NULL))
) STRICT;
CREATE INDEX items_by_supplier ON items (supplier_id);

-- What an item is made of, in the order in which its maker declares it.
CREATE TABLE item_constituents (
  id        INTEGER PRIMARY KEY,
  item_id   INTEGER NOT NULL REFERENCES items (id) ON DELETE RESTRICT,
  position  INTEGER NOT NULL CHECK (position >= 1),
  substance TEXT NOT NULL,
  UNIQUE (item_id, position)
) STRICT;

-- Prices that hold from a quantity upwards.
CREATE TABLE item_price_breaks (
  id                 INTEGER PRIMARY KEY,
  item_id            INTEGER NOT NULL REFERENCES items (id) ON DELETE RESTRICT,
  position           INTEGER NOT NULL CHECK (position >= 1),
  from_quantity      INTEGER NOT NULL CHECK (from_quantity >= 0), -- pieces
  unit_cost_minor    INTEGER NOT NULL CHECK (unit_cost_minor >= 0),
  unit_cost_currency TEXT NOT NULL CHECK (unit_cost_currency GLOB '[A-Z][A-Z][A-Z]'),
  UNIQUE (item_id, position)
) STRICT;

CREATE TABLE patients (
  id          INTEGER PRIMARY KEY,
  ref         TEXT NOT NULL UNIQUE CHECK (ref <> ''), -- the clinic's reference, never a name
  given_name  TEXT NOT NULL,
  family_name TEXT NOT NULL,
  birth_date  TEXT CHECK (birth_date IS date(birth_date)),
  next_visit  TEXT CHECK (next_visit IS date(next_visit))
) STRICT;

CREATE TABLE prostheses (
  id           INTEGER PRIMARY KEY,
  patient_id   INTEGER NOT NULL REFERENCES patients (id) ON DELETE RESTRICT,
  side         TEXT NOT NULL CHECK (side IN ('left', 'right')),
  level        TEXT NOT NULL CHECK (level IN ('transtibial', 'transfemoral', 'ankle disarticulation', 'knee disarticulation', 'transradial', 'transhumeral', 'other')),
  suspension   TEXT NOT NULL CHECK (suspension IN ('pin', 'lanyard', 'sleeve', 'suction', 'vacuum', 'anatomical', 'belt')),
  stage        TEXT NOT NULL CHECK (stage IN ('preparatory', 'definitive')),
  delivered_on TEXT NOT NULL CHECK (delivered_on IS date(delivered_on)),
  ended_on     TEXT CHECK (ended_on IS date(ended_on)), -- NULL while worn
  CHECK (ended_on >= delivered_on)
) STRICT;
CREATE UNIQUE INDEX prostheses_once ON prostheses (patient_id, side, delivered_on);

-- How hard a patient uses their parts from a date on; NULL: the value before it stays in force.
CREATE TABLE usage (
  id             INTEGER PRIMARY KEY,
  patient_id     INTEGER NOT NULL REFERENCES patients (id) ON DELETE RESTRICT,
  from_date      TEXT NOT NULL CHECK (from_date IS date(from_date)),
  activity       TEXT CHECK (activity IN ('K0', 'K1', 'K2', 'K3', 'K4')),
  kneeling_hours REAL CHECK (kneeling_hours BETWEEN 0 AND 24), -- a day
  wear_hours     REAL CHECK (wear_hours BETWEEN 0 AND 24), -- a day
  sweating       TEXT CHECK (sweating IN ('low', 'normal', 'high')),
  impact_sport   INTEGER CHECK (impact_sport IN (0, 1))
) STRICT;
CREATE UNIQUE INDEX usage_once ON usage (patient_id, from_date);

CREATE TABLE sensitivities (
  id             INTEGER PRIMARY KEY,
  patient_id     INTEGER NOT NULL REFERENCES patients (id) ON DELETE RESTRICT,
  substance      TEXT NOT NULL CHECK (substance <> ''),
  reaction       TEXT NOT NULL,
  established_by TEXT NOT NULL, -- patch test, observed, reported
  noted_on       TEXT CHECK (noted_on IS date(noted_on))
) STRICT;
CREATE UNIQUE INDEX sensitivities_once ON sensitivities (patient_id, substance, IFNULL(noted_on, ''));

CREATE TABLE measurements (
  id               INTEGER PRIMARY KEY,
  patient_id       INTEGER NOT NULL REFERENCES patients (id) ON DELETE RESTRICT,
  side             TEXT NOT NULL CHECK (side IN ('left', 'right')),
  measured_on      TEXT NOT NULL CHECK (measured_on IS date(measured_on)),
  at_cm            REAL NOT NULL CHECK (at_cm >= 0), -- height above the distal end
  circumference_cm REAL NOT NULL CHECK (circumference_cm >= 0)
) STRICT;
CREATE UNIQUE INDEX measurements_once ON measurements (patient_id, side, measured_on, at_cm);

-- One row for each physical part handed to a patient.
CREATE TABLE units (
  id         INTEGER PRIMARY KEY,
  patient_id INTEGER NOT NULL REFERENCES patients (id) ON DELETE RESTRICT,
  side       TEXT NOT NULL CHECK (side IN ('left', 'right')),
  item_id    INTEGER NOT NULL REFERENCES items (id) ON DELETE RESTRICT,
  lot        TEXT NOT NULL,
  serial     TEXT NOT NULL,
  issued_on  TEXT NOT NULL CHECK (issued_on IS date(issued_on)),
  ended_on   TEXT CHECK (ended_on IS date(ended_on)), -- NULL while in use
  end_reason TEXT CHECK (end_reason IN ('hole', 'tear', 'stretched', 'delaminated', 'lost grip', 'leak', 'worn', 'lost', 'resized', 'reaction', 'recall', 'upgrade', 'returned', 'deceased', 'other')),
  share      REAL CHECK (share BETWEEN 0 AND 1), -- part of the time it is the one worn
  copy       INTEGER NOT NULL CHECK (copy >= 1), -- tells apart units alike in everything else
  CHECK (ended_on >= issued_on),
  CHECK (end_reason IS NULL OR ended_on IS NOT NULL)
) STRICT;
CREATE UNIQUE INDEX units_once ON units (patient_id, side, item_id, lot, serial, issued_on, copy);
CREATE INDEX units_by_item ON units (item_id, lot);

CREATE TABLE reservations (
  id         INTEGER PRIMARY KEY,
  patient_id INTEGER NOT NULL REFERENCES patients (id) ON DELETE RESTRICT,
  item_id    INTEGER NOT NULL REFERENCES items (id) ON DELETE RESTRICT,
  place      TEXT NOT NULL,
  quantity   INTEGER NOT NULL CHECK (quantity >= 0), -- pieces
  needed_on  TEXT CHECK (needed_on IS date(needed_on))
) STRICT;
CREATE UNIQUE INDEX reservations_once ON reservations (patient_id, item_id, place, IFNULL(needed_on, ''));
CREATE INDEX reservations_by_item ON reservations (item_id);

CREATE TABLE order_lines (
  id                 INTEGER PRIMARY KEY,
  supplier_id        INTEGER NOT NULL REFERENCES suppliers (id) ON DELETE RESTRICT,
  order_ref          TEXT NOT NULL,
  item_id            INTEGER NOT NULL REFERENCES items (id) ON DELETE RESTRICT,
  ordered_on         TEXT NOT NULL CHECK (ordered_on IS date(ordered_on)),
  quantity           INTEGER NOT NULL CHECK (quantity >= 0), -- pieces
  unit_cost_minor    INTEGER CHECK (unit_cost_minor >= 0),
  unit_cost_currency TEXT CHECK (unit_cost_currency GLOB '[A-Z][A-Z][A-Z]'),
  received_on        TEXT CHECK (received_on IS date(received_on)), -- the last receipt
  received_quantity  INTEGER NOT NULL CHECK (received_quantity >= 0), -- pieces
  state              TEXT NOT NULL CHECK (state IN ('draft', 'placed', 'cancelled')),
  copy               INTEGER NOT NULL CHECK (copy >= 1),
  CHECK ((unit_cost_minor IS NULL) = (unit_cost_currency IS NULL))
) STRICT;
CREATE UNIQUE INDEX order_lines_once ON order_lines (supplier_id, order_ref, item_id, copy);
CREATE INDEX order_lines_by_item ON order_lines (item_id);
CREATE INDEX order_lines_by_ref ON order_lines (order_ref);

CREATE TABLE claim_lines (
  id              INTEGER PRIMARY KEY,
  claim_ref       TEXT NOT NULL,
  patient_id      INTEGER NOT NULL REFERENCES patients (id) ON DELETE RESTRICT,
  side            TEXT CHECK (side IN ('left', 'right')),
  service_date    TEXT NOT NULL CHECK (service_date IS date(service_date)),
  code            TEXT NOT NULL,
  modifiers       TEXT NOT NULL, -- in their order, separated by ';'
  quantity        INTEGER NOT NULL CHECK (quantity >= 0),
  charge_minor    INTEGER, -- for the whole line; negative takes an earlier charge back
  charge_currency TEXT CHECK (charge_currency GLOB '[A-Z][A-Z][A-Z]'),
  copy            INTEGER NOT NULL CHECK (copy >= 1),
  CHECK ((charge_minor IS NULL) = (charge_currency IS NULL))
) STRICT;
CREATE UNIQUE INDEX claim_lines_once ON claim_lines (claim_ref, patient_id, IFNULL(side, ''), service_date, code, modifiers, copy);
CREATE INDEX claim_lines_by_patient ON claim_lines (patient_id);

CREATE TABLE invoice_lines (
  id                 INTEGER PRIMARY KEY,
  supplier_id        INTEGER NOT NULL REFERENCES suppliers (id) ON DELETE RESTRICT,
  invoice_ref        TEXT NOT NULL,
  order_ref          TEXT NOT NULL, -- '' when the invoice names no order
  item_id            INTEGER NOT NULL REFERENCES items (id) ON DELETE RESTRICT,
  quantity           INTEGER NOT NULL CHECK (quantity >= 0), -- pieces
  unit_cost_minor    INTEGER CHECK (unit_cost_minor >= 0),
  unit_cost_currency TEXT CHECK (unit_cost_currency GLOB '[A-Z][A-Z][A-Z]'),
  invoiced_on        TEXT CHECK (invoiced_on IS date(invoiced_on)),
  copy               INTEGER NOT NULL CHECK (copy >= 1),
  CHECK ((unit_cost_minor IS NULL) = (unit_cost_currency IS NULL))
) STRICT;
CREATE UNIQUE INDEX invoice_lines_once ON invoice_lines (supplier_id, invoice_ref, order_ref, item_id, copy);
CREATE INDEX invoice_lines_by_item ON invoice_lines (item_id);

-- Who wrote, when and why: one row for each unit of work that wrote something.
CREATE TABLE change_sets (
  id  INTEGER PRIMARY KEY,
  who TEXT NOT NULL,
  at  TEXT NOT NULL CHECK (at GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]T[0-9][0-9]:[0-9][0-9]:[0-9][0-9]Z'), -- UTC
  why TEXT NOT NULL
) STRICT;

-- What was written; `before` is a JSON object of the values before a change, '' for an addition.
CREATE TABLE changes (
  id            INTEGER PRIMARY KEY,
  change_set_id INTEGER NOT NULL REFERENCES change_sets (id) ON DELETE RESTRICT,
  record_kind   TEXT NOT NULL,
  row_id        INTEGER NOT NULL,
  action        TEXT NOT NULL CHECK (action IN ('added', 'changed')),
  before        TEXT NOT NULL CHECK (before = '' OR before GLOB '{*}'),
  CHECK ((action = 'added') = (before = ''))
) STRICT;
CREATE INDEX changes_by_set ON changes (change_set_id);

-- Stock without a lot number has an empty lot.
CREATE TABLE lots (
  id      INTEGER PRIMARY KEY,
  item_id INTEGER NOT NULL REFERENCES items (id) ON DELETE RESTRICT,
  lot     TEXT NOT NULL,
  use_by  TEXT CHECK (use_by IS date(use_by))
) STRICT;
CREATE UNIQUE INDEX lots_once ON lots (item_id, lot, IFNULL(use_by, ''));

-- The stock ledger: append-only, in the order of writing. The stock is the sum of its rows.
CREATE TABLE movements (
  id            INTEGER PRIMARY KEY,
  change_set_id INTEGER NOT NULL REFERENCES change_sets (id) ON DELETE RESTRICT,
  lot_id        INTEGER NOT NULL REFERENCES lots (id) ON DELETE RESTRICT,
  place         TEXT NOT NULL,
  kind          TEXT NOT NULL CHECK (kind IN ('receipt', 'issue', 'return', 'transfer', 'count correction', 'write-off', 'quarantine')),
  quantity      INTEGER NOT NULL CHECK (quantity <> 0), -- pieces; negative when they leave the place
  moved_on      TEXT NOT NULL CHECK (moved_on IS date(moved_on)),
  reason        TEXT NOT NULL
) STRICT;
CREATE INDEX movements_by_lot ON movements (lot_id, place, quantity);
CREATE INDEX movements_by_change_set ON movements (change_set_id);

CREATE VIEW shelf AS
  SELECT lot_id, place, SUM(quantity) AS quantity
  FROM movements
  GROUP BY lot_id, place
  HAVING SUM(quantity) <> 0;

-- Order numbers given out: "SW-<year>-<number>". A row stays when its order is cancelled.
CREATE TABLE order_numbers (
  id            INTEGER PRIMARY KEY,
  change_set_id INTEGER NOT NULL REFERENCES change_sets (id) ON DELETE RESTRICT,
  year          INTEGER NOT NULL CHECK (year BETWEEN 1900 AND 2199),
  number        INTEGER NOT NULL CHECK (number >= 1),
  UNIQUE (year, number)
) STRICT;
CREATE INDEX order_numbers_by_change_set ON order_numbers (change_set_id);

-- Append-only means: no change, no removal, and no INSERT OR REPLACE over an existing row.
CREATE TRIGGER movements_never_change BEFORE UPDATE ON movements
BEGIN SELECT RAISE(ABORT, 'the stock ledger is never changed'); END;
CREATE TRIGGER movements_never_go BEFORE DELETE ON movements
BEGIN SELECT RAISE(ABORT, 'the stock ledger is never shortened'); END;
CREATE TRIGGER movements_never_replaced BEFORE INSERT ON movements
WHEN EXISTS (SELECT 1 FROM movements WHERE id = NEW.id)
BEGIN SELECT RAISE(ABORT, 'the stock ledger is never changed'); END;
CREATE TRIGGER movements_never_below_zero BEFORE INSERT ON movements
WHEN NEW.quantity < 0 AND NEW.quantity + (SELECT IFNULL(SUM(quantity), 0) FROM movements
                                          WHERE lot_id = NEW.lot_id AND place = NEW.place) < 0
BEGIN SELECT RAISE(ABORT, 'the stock would fall below zero'); END;

CREATE TRIGGER changes_never_change BEFORE UPDATE ON changes
BEGIN SELECT RAISE(ABORT, 'the change log is never changed'); END;
CREATE TRIGGER changes_never_go BEFORE DELETE ON changes
BEGIN SELECT RAISE(ABORT, 'the change log is never shortened'); END;
CREATE TRIGGER changes_never_replaced BEFORE INSERT ON changes
WHEN EXISTS (SELECT 1 FROM changes WHERE id = NEW.id)
BEGIN SELECT RAISE(ABORT, 'the change log is never changed'); END;

CREATE TRIGGER change_sets_never_change BEFORE UPDATE ON change_sets
BEGIN SELECT RAISE(ABORT, 'the change log is never changed'); END;
CREATE TRIGGER change_sets_never_go BEFORE DELETE ON change_sets
BEGIN SELECT RAISE(ABORT, 'the change log is never shortened'); END;
CREATE TRIGGER change_sets_never_replaced BEFORE INSERT ON change_sets
WHEN EXISTS (SELECT 1 FROM change_sets WHERE id = NEW.id)
BEGIN SELECT RAISE(ABORT, 'the change log is never changed'); END;

CREATE TRIGGER order_numbers_never_change BEFORE UPDATE ON order_numbers
BEGIN SELECT RAISE(ABORT, 'order numbers are never changed'); END;
CREATE TRIGGER order_numbers_never_go BEFORE DELETE ON order_numbers
BEGIN SELECT RAISE(ABORT, 'order numbers are never given back'); END;
CREATE TRIGGER order_numbers_never_replaced BEFORE INSERT ON order_numbers
WHEN EXISTS (SELECT 1 FROM order_numbers
             WHERE id = NEW.id OR (year = NEW.year AND number = NEW.number))
BEGIN SELECT RAISE(ABORT, 'an order number is given out once'); END;
