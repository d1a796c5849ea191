-- Which booking of its patient a unit used up when it was handed over, so that a mistaken issue gives it back.

ALTER TABLE handovers ADD COLUMN booked_place TEXT NOT NULL DEFAULT ''; -- '' when it used none
ALTER TABLE handovers ADD COLUMN booked_on TEXT CHECK (booked_on IS date(booked_on)) CHECK (booked_on IS NULL OR booked_place <> ''); -- the booking's needed_on
