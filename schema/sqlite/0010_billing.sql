-- Billing: codes and payers' rules, claims that replace each other, payments, papers, answers, closed months.

ALTER TABLE items ADD COLUMN warranty_days INTEGER CHECK (warranty_days >= 0); -- calendar days from the issue
ALTER TABLE patients ADD COLUMN payer TEXT NOT NULL DEFAULT ''; -- who pays now
ALTER TABLE patients ADD COLUMN member_id TEXT NOT NULL DEFAULT ''; -- the payer's number for the patient
ALTER TABLE invoice_lines ADD COLUMN freight_minor INTEGER CHECK (freight_minor >= 0);
ALTER TABLE invoice_lines ADD COLUMN freight_currency TEXT CHECK (freight_currency GLOB '[A-Z][A-Z][A-Z]')
  CHECK ((freight_minor IS NULL) = (freight_currency IS NULL));
ALTER TABLE claim_lines ADD COLUMN payer TEXT NOT NULL DEFAULT '';
ALTER TABLE claim_lines ADD COLUMN submission TEXT NOT NULL DEFAULT 'original'
  CHECK (submission IN ('original', 'replacement', 'reversal'));
ALTER TABLE claim_lines ADD COLUMN replaces TEXT NOT NULL DEFAULT ''; -- the earlier claim
ALTER TABLE claim_lines ADD COLUMN line_control TEXT NOT NULL DEFAULT ''; -- repeated by a remittance

-- Published codes, beyond or instead of those that the program is built with.
CREATE TABLE billing_codes (
  id          INTEGER PRIMARY KEY,
  list        TEXT NOT NULL CHECK (list <> ''),
  code        TEXT NOT NULL CHECK (code <> ''),
  description TEXT NOT NULL,
  unit        TEXT NOT NULL, -- what a quantity of 1 is
  valid_from  TEXT CHECK (valid_from IS date(valid_from)),
  valid_to    TEXT CHECK (valid_to IS date(valid_to)), -- the last day
  source      TEXT NOT NULL,
  CHECK (valid_to >= valid_from)
) STRICT;
CREATE UNIQUE INDEX billing_codes_once ON billing_codes (list, code, IFNULL(valid_from, ''));

-- What payers require; '' stands for every payer, and for every code.
CREATE TABLE payer_rules (
  id              INTEGER PRIMARY KEY,
  payer           TEXT NOT NULL,
  code            TEXT NOT NULL,
  rule            TEXT NOT NULL CHECK (rule IN ('at once', 'in period', 'initial only', 'early', 'confirmation', 'paper',
                                                'replacement paper', 'included', 'side lines', 'fee', 'answer', 'submit')),
  number          INTEGER CHECK (number >= 0), -- pieces
  days            INTEGER CHECK (days >= 0),
  amount_minor    INTEGER CHECK (amount_minor >= 0), -- for a piece
  amount_currency TEXT CHECK (amount_currency GLOB '[A-Z][A-Z][A-Z]'),
  words           TEXT NOT NULL,
  valid_from      TEXT CHECK (valid_from IS date(valid_from)),
  valid_to        TEXT CHECK (valid_to IS date(valid_to)), -- the last day
  source          TEXT NOT NULL,
  CHECK ((amount_minor IS NULL) = (amount_currency IS NULL)),
  CHECK (valid_to >= valid_from)
) STRICT;
CREATE UNIQUE INDEX payer_rules_once ON payer_rules (payer, code, rule, words, IFNULL(valid_from, ''));

CREATE TABLE remittances (
  id             INTEGER PRIMARY KEY,
  payer          TEXT NOT NULL,
  reference      TEXT NOT NULL CHECK (reference <> ''), -- the payer's number of the payment
  paid_on        TEXT NOT NULL CHECK (paid_on IS date(paid_on)),
  total_minor    INTEGER NOT NULL, -- as the payer states it
  total_currency TEXT NOT NULL CHECK (total_currency GLOB '[A-Z][A-Z][A-Z]'),
  source         TEXT NOT NULL -- the file that it was read from
) STRICT;
CREATE UNIQUE INDEX remittances_once ON remittances (payer, reference);

-- charge - adjustments = paid
CREATE TABLE remittance_lines (
  id              INTEGER PRIMARY KEY,
  payer           TEXT NOT NULL,
  reference       TEXT NOT NULL CHECK (reference <> ''),
  position        INTEGER NOT NULL CHECK (position >= 1), -- within the remittance
  entry           TEXT NOT NULL CHECK (entry IN ('line', 'claim', 'provider')),
  claim_ref       TEXT NOT NULL,
  payer_claim     TEXT NOT NULL, -- the payer's number of the claim
  status          TEXT NOT NULL, -- of the claim, as the payer codes it
  patient_id      INTEGER REFERENCES patients (id) ON DELETE RESTRICT, -- NULL when not known
  side            TEXT CHECK (side IN ('left', 'right')),
  service_date    TEXT CHECK (service_date IS date(service_date)),
  code            TEXT NOT NULL,
  modifiers       TEXT NOT NULL, -- in their order, separated by ';'
  quantity        INTEGER, -- paid
  charge_minor    INTEGER NOT NULL,
  charge_currency TEXT NOT NULL CHECK (charge_currency GLOB '[A-Z][A-Z][A-Z]'),
  paid_minor      INTEGER NOT NULL,
  paid_currency   TEXT NOT NULL CHECK (paid_currency GLOB '[A-Z][A-Z][A-Z]'),
  adjustments     TEXT NOT NULL, -- 'CO:45:10.00', several with ';' between
  line_control    TEXT NOT NULL
) STRICT;
CREATE UNIQUE INDEX remittance_lines_once ON remittance_lines (payer, reference, position);
CREATE INDEX remittance_lines_by_patient ON remittance_lines (patient_id);

-- The papers behind a part; the part is that of units with the same key.
CREATE TABLE part_papers (
  id         INTEGER PRIMARY KEY,
  patient_id INTEGER NOT NULL REFERENCES patients (id) ON DELETE RESTRICT,
  side       TEXT NOT NULL CHECK (side IN ('left', 'right')),
  item_id    INTEGER NOT NULL REFERENCES items (id) ON DELETE RESTRICT,
  lot        TEXT NOT NULL,
  serial     TEXT NOT NULL,
  issued_on  TEXT NOT NULL CHECK (issued_on IS date(issued_on)),
  copy       INTEGER NOT NULL CHECK (copy >= 1),
  paper      TEXT NOT NULL CHECK (paper <> ''), -- order, reason, condition, cost share ...
  dated_on   TEXT NOT NULL CHECK (dated_on IS date(dated_on)),
  words      TEXT NOT NULL,
  noted_by   TEXT NOT NULL
) STRICT;
CREATE UNIQUE INDEX part_papers_once ON part_papers (patient_id, side, item_id, lot, serial, issued_on, copy, paper, dated_on);
CREATE INDEX part_papers_by_item ON part_papers (item_id);

-- What persons decided about disagreements; a finding's history is only added to.
CREATE TABLE billing_answers (
  id             INTEGER PRIMARY KEY,
  finding        TEXT NOT NULL CHECK (finding <> ''),
  number         INTEGER NOT NULL CHECK (number >= 1),
  answer         TEXT NOT NULL CHECK (answer IN ('asked', 'accepted', 'corrected', 'written off', 'open again')),
  reason         TEXT NOT NULL CHECK (reason <> ''),
  answered_by    TEXT NOT NULL CHECK (answered_by <> ''),
  answered_on    TEXT NOT NULL CHECK (answered_on IS date(answered_on)),
  quantity       INTEGER NOT NULL, -- of the finding on that day
  money_minor    INTEGER,
  money_currency TEXT CHECK (money_currency GLOB '[A-Z][A-Z][A-Z]'),
  ask_again_on   TEXT CHECK (ask_again_on IS date(ask_again_on)),
  CHECK ((money_minor IS NULL) = (money_currency IS NULL))
) STRICT;
CREATE UNIQUE INDEX billing_answers_once ON billing_answers (finding, number);

CREATE TABLE month_closes (
  id        INTEGER PRIMARY KEY,
  month     TEXT NOT NULL CHECK (month IS date(month) AND month LIKE '%-01'), -- its first day
  number    INTEGER NOT NULL CHECK (number >= 1), -- 2 and more when it was closed again
  closed_on TEXT NOT NULL CHECK (closed_on IS date(closed_on)),
  closed_by TEXT NOT NULL CHECK (closed_by <> ''),
  note      TEXT NOT NULL
) STRICT;
CREATE UNIQUE INDEX month_closes_once ON month_closes (month, number);

-- The records of a closed month as they were.
CREATE TABLE closed_entries (
  id              INTEGER PRIMARY KEY,
  month           TEXT NOT NULL CHECK (month IS date(month) AND month LIKE '%-01'),
  number          INTEGER NOT NULL CHECK (number >= 1), -- of the closing
  entry           TEXT NOT NULL CHECK (entry IN ('part', 'claim', 'invoice', 'receipt', 'payment')),
  key             TEXT NOT NULL CHECK (key <> ''), -- what the record is known by
  quantity        INTEGER NOT NULL,
  amount_minor    INTEGER,
  amount_currency TEXT CHECK (amount_currency GLOB '[A-Z][A-Z][A-Z]'),
  CHECK ((amount_minor IS NULL) = (amount_currency IS NULL))
) STRICT;
CREATE UNIQUE INDEX closed_entries_once ON closed_entries (month, number, entry, key);

-- How tables of other programs are read.
CREATE TABLE column_mappings (
  id           INTEGER PRIMARY KEY,
  name         TEXT NOT NULL UNIQUE CHECK (name <> ''),
  target       TEXT NOT NULL CHECK (target IN ('claims', 'remittance')),
  columns      TEXT NOT NULL, -- 'service_date=Date of service', several with ';' between
  date_pattern TEXT NOT NULL, -- '' for ISO 8601
  decimal_sign TEXT NOT NULL CHECK (decimal_sign IN ('.', ','))
) STRICT;

CREATE TRIGGER billing_answers_never_change BEFORE UPDATE ON billing_answers
BEGIN SELECT RAISE(ABORT, 'an answer is never changed'); END;
CREATE TRIGGER billing_answers_never_go BEFORE DELETE ON billing_answers
BEGIN SELECT RAISE(ABORT, 'an answer is never removed'); END;
CREATE TRIGGER month_closes_never_change BEFORE UPDATE ON month_closes
BEGIN SELECT RAISE(ABORT, 'the closing of a month is never changed'); END;
CREATE TRIGGER month_closes_never_go BEFORE DELETE ON month_closes
BEGIN SELECT RAISE(ABORT, 'the closing of a month is never removed'); END;
CREATE TRIGGER closed_entries_never_change BEFORE UPDATE ON closed_entries
BEGIN SELECT RAISE(ABORT, 'the books of a closed month are never changed'); END;
CREATE TRIGGER closed_entries_never_go BEFORE DELETE ON closed_entries
BEGIN SELECT RAISE(ABORT, 'the books of a closed month are never removed'); END;
