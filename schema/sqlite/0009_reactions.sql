-- Skin reactions of patients, to be set beside what was worn.
CREATE TABLE reactions (
  id         INTEGER PRIMARY KEY,
  patient_id INTEGER NOT NULL REFERENCES patients (id) ON DELETE RESTRICT,
  side       TEXT CHECK (side IN ('left', 'right')), -- NULL: not of one side, or not recorded
  began_on   TEXT NOT NULL CHECK (began_on IS date(began_on)),
  ended_on   TEXT CHECK (ended_on IS date(ended_on)), -- the last day; NULL while it lasts
  signs      TEXT NOT NULL CHECK (signs <> ''), -- itching, redness ...; several with ';' between
  note       TEXT NOT NULL,
  CHECK (ended_on >= began_on)
) STRICT;
CREATE UNIQUE INDEX reactions_once ON reactions (patient_id, IFNULL(side, ''), began_on);
