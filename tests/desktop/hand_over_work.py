"""Handing a part over with its delivery sheet, and ending it."""

import contextlib
import json
import sqlite3
import subprocess

from clinic import TODAY
from patient_work import PATIENT
from stage import save_as, wait_until


def something_on_the_shelf(batch, database):
    listed = subprocess.run([batch, "--db", database, "--today", TODAY, "--json", "stock", "list"],
                            check=True, stdout=subprocess.PIPE)
    for level in json.loads(listed.stdout)["stock"]:
        fresh = not level["use_by"] or level["use_by"] > "2027"
        if level["place"] == "main store" and level["quantity"] > 1 and fresh:
            return level["item_code"]
    raise AssertionError("nothing is on the shelf of the sample clinic")


@contextlib.contextmanager
def written_by_another(database):
    """Another program writes into the clinic file meanwhile, and changes nothing in the end."""
    other = sqlite3.connect(database, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    try:
        yield
    finally:
        other.execute("ROLLBACK")
        other.close()


def issue_and_end(stage, database, item, sheet):
    stage.press("ctrl+2")
    stage.press("ctrl+f")
    stage.type(PATIENT)
    stage.wait_for("label", PATIENT)
    stage.press("ctrl+shift+i")
    checks = stage.wait_for("text", "What the checks say")
    stage.set_text("Item", item)
    wait_until("the checks are shown", lambda: "Take 1 of lot" in checks.queryText().getText(0, -1))
    # Whatever the checks say of this patient, a clinician decides.
    stage.set_text("Decided by", "Dr Invented")
    stage.set_text("Because", "as the test wants")
    stage.picture("issue")
    stage.click("push button", "Issue")
    stage.wait_for("file chooser", "Write the delivery sheet")
    stage.picture("save-dialog")
    save_as(stage, sheet)
    wait_until("the delivery sheet is on disk", sheet.exists)
    stage.wait_for("label", "The delivery sheet was written")
    # The note takes room from the page, whose buttons would have to be scrolled to.
    stage.click("push button", "Put away")
    stage.click("push button", "End this part...")
    stage.wait_for("push button", "End it")
    stage.picture("end-part")
    with written_by_another(database):
        stage.click("push button", "End it")
        # The booking waits for the other program. The window answers, and nothing can be pressed twice.
        wait_until("the form waits",
                   lambda: stage.find("push button", "End it", whole=True) and
                   not stage.can_be_used("push button", "End it"), patience=3)
        stage.picture("waiting-for-the-file")
    stage.wait_for("label", "The part is recorded as ended.")
    # Until the file is read again, the menus offer little.
    wait_until("the window is at rest", lambda: stage.can_be_used("push button", "Issue a part..."))


def check_sheet(batch, database):
    listed = subprocess.run([batch, "--db", database, "--today", TODAY, "--json", "delivery-sheet",
                             "--patient", PATIENT, "--issued", TODAY, "--list"], check=True,
                            stdout=subprocess.PIPE)
    parts = json.loads(listed.stdout)["parts"]
    assert [part["printed_on"] for part in parts] == [TODAY], parts
