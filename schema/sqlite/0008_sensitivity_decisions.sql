-- What clinicians decided about parts that a sensitivity speaks against, and what the clinic knows of substances
-- beyond the table that the program is built with.

CREATE TABLE sensitivity_decisions (
  id           INTEGER PRIMARY KEY,
  patient_id   INTEGER NOT NULL REFERENCES patients (id) ON DELETE RESTRICT,
  item_id      INTEGER NOT NULL REFERENCES items (id) ON DELETE RESTRICT,
  substance    TEXT NOT NULL CHECK (substance <> ''), -- of the recorded sensitivity
  verdict      TEXT NOT NULL CHECK (verdict IN ('conflict', 'possible conflict', 'not declared')), -- known on the day of the decision
  decided_on   TEXT NOT NULL CHECK (decided_on IS date(decided_on)),
  decided_by   TEXT NOT NULL CHECK (decided_by <> ''),
  reason       TEXT NOT NULL CHECK (reason <> ''),
  withdrawn_on TEXT CHECK (withdrawn_on IS date(withdrawn_on)), -- NULL while in force
  CHECK (withdrawn_on >= decided_on)
) STRICT;
CREATE UNIQUE INDEX sensitivity_decisions_once ON sensitivity_decisions (patient_id, item_id, substance, decided_on);
CREATE INDEX sensitivity_decisions_by_item ON sensitivity_decisions (item_id);

CREATE TABLE substance_relations (
  id           INTEGER PRIMARY KEY,
  substance    TEXT NOT NULL CHECK (substance <> ''),
  relation     TEXT NOT NULL CHECK (relation IN ('is a', 'same as', 'may contain')),
  other        TEXT NOT NULL CHECK (other <> ''),
  source       TEXT NOT NULL CHECK (source <> ''),
  withdrawn_on TEXT CHECK (withdrawn_on IS date(withdrawn_on)), -- NULL while held for true
  CHECK (substance <> other)
) STRICT;
CREATE UNIQUE INDEX substance_relations_once ON substance_relations (substance, relation, other);
