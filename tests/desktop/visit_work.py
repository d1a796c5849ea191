"""What is recorded and booked at a visit, and looked up before it."""

import json
import subprocess

from clinic import TODAY
from patient_work import PATIENT, choose_patient
from stage import wait_until

SENSITIVE = "P-0059"  # of whom a sensitivity is recorded
BOOKED = "TS3-M"  # an item that the patient has in use


def bookings(batch, database):
    said = subprocess.run([batch, "--db", database, "--today", TODAY, "--json", "bookings"],
                          stdout=subprocess.PIPE).stdout
    return [(row["patient_ref"], row["item_code"], row["quantity"])
            for row in json.loads(said)["bookings"]]


def book_for_visit(stage, batch, database):
    choose_patient(stage)
    stage.press("ctrl+b")
    stage.wait_for("push button", "Book")
    stage.type(BOOKED)
    stage.picture("book-for-visit")
    stage.click("push button", "Book")
    wait_until("it is booked", lambda: bookings(batch, database) == [(PATIENT, BOOKED, 1)])
    stage.wait_for("label", f"Booked for {PATIENT}")

    def asked_which():
        # The key does nothing until the file has been read again.
        stage.press("ctrl+shift+b")
        return stage.find("push button", "Remove the booking")

    wait_until("the form to cancel is open", asked_which)
    stage.picture("cancel-booking")
    stage.click("push button", "Remove the booking")
    wait_until("it is cancelled", lambda: bookings(batch, database) == [])
    stage.click("push button", "Put away")
    stage.press("ctrl+f")
    stage.press("Escape")


def look_at_findings(stage):
    """What a patient may wear: findings, other items, a sensitivity noted, everyone's findings."""
    choose_patient(stage, SENSITIVE)
    stage.press("ctrl+shift+f")
    findings = stage.wait_for("table", "Findings")
    wait_until("there are findings", lambda: stage.rows(findings) > 0)
    stage.picture("findings")
    stage.press("ctrl+shift+a")
    others = stage.wait_for("table", "Other items, the most suitable first")
    wait_until("other items are listed", lambda: stage.rows(others) > 0)
    stage.picture("other-items")
    stage.click("push button", "Close")
    stage.press("ctrl+shift+n")
    stage.wait_for("push button", "Note")
    stage.type("moss oil")
    stage.picture("note-sensitivity")
    stage.click("push button", "Note")
    stage.wait_for("label", f"The sensitivity of {SENSITIVE} to moss oil is recorded.")
    wait_until("the window is at rest", lambda: stage.can_be_used("push button", "Note a sensitivity..."))
    stage.click("push button", "Put away")
    stage.press("ctrl+shift+j")
    everyone = stage.wait_for("table", "Findings of everyone")
    wait_until("there are findings of everyone", lambda: stage.rows(everyone) > 0)
    stage.picture("findings-of-everyone")
    stage.click("push button", "Close")
    stage.press("ctrl+f")
    stage.press("Escape")
    stage.click("page tab", "Parts")


def last_measured(batch, database):
    said = subprocess.run([batch, "--db", database, "--today", TODAY, "--json", "fit",
                           "--patient", PATIENT], stdout=subprocess.PIPE).stdout
    part = json.loads(said)["parts"][0]
    return part["circumference_cm"], part["measured_on"]


def measure_and_look_ahead(stage, batch, database):
    circumference = round(last_measured(batch, database)[0] + 0.1, 1)
    choose_patient(stage)
    stage.press("ctrl+u")
    stage.wait_for("push button", "Record")
    stage.set_text("Circumference, cm", str(circumference))
    stage.picture("measure")
    stage.click("push button", "Record")
    wait_until("it is recorded",
               lambda: last_measured(batch, database) == (circumference, TODAY))

    def shown():
        # The key does nothing until the file has been read again.
        stage.press("ctrl+shift+u")
        return stage.find("text", "Fit and trend in words")

    wait_until("the fit is shown", shown)
    told = stage.wait_for("text", "Fit and trend in words").queryText()
    assert "does not replace" in told.getText(0, -1)
    stage.picture("fit")
    stage.set_text("By", "soon")
    wait_until("a day is asked for", lambda: "Write the day as" in told.getText(0, -1))
    stage.press("Escape")
    stage.click("push button", "Put away")
    stage.press("ctrl+f")
    stage.press("Escape")


def reactions(batch, database):
    said = subprocess.run([batch, "--db", database, "--today", TODAY, "--json", "reaction", "list",
                           "--patient", PATIENT], stdout=subprocess.PIPE).stdout
    return [row["recorded"]["signs"] for row in json.loads(said)["reactions"] if row["recorded"]]


def record_reaction(stage, batch, database):
    choose_patient(stage)
    stage.press("ctrl+h")
    stage.wait_for("push button", "Record")
    stage.set_text("Signs", "itching, redness")
    stage.picture("record-reaction")
    stage.click("push button", "Record")
    wait_until("it is recorded",
               lambda: reactions(batch, database) == [["itching", "redness"]])
    stage.wait_for("label", f"Recorded for {PATIENT}")

    def shown():
        # The key does nothing until the file has been read again.
        stage.press("ctrl+shift+h")
        return stage.find("text", "What the reactions speak for")

    wait_until("the suspects are shown", shown)
    stage.picture("suspects")
    stage.press("Escape")
    stage.click("push button", "Put away")
    stage.press("ctrl+f")
    stage.press("Escape")
