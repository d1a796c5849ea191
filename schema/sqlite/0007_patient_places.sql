-- The branch that a patient belongs to: the store from which they are served.
ALTER TABLE patients ADD COLUMN place TEXT NOT NULL DEFAULT ''; -- '' for the clinic's main place
