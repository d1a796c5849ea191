"""Works with the window as a person does, on the sample clinic: finds the pages by their names,
searches a patient, books a part for a visit, tests the forecasts, writes the order workbooks and
marks them as sent.

usage: window_test.py SPAREWELL SPAREWELL-BATCH CSV-FOLDER PICTURES-FOLDER

Needs Xvfb, openbox, xdotool, ImageMagick and pyatspi. Pictures of every page are kept.
"""

import json
import pathlib
import subprocess
import sys
import tempfile
import zipfile

from stage import Stage, wait_until

TODAY = "2026-11-25"
PATIENT = "P-0004"
BOOKED = "TS3-M"  # an item that the patient has in use
# Said by the toolkit while a window is built that has no size yet, and by its accessibility while a
# book of pages is taken down.
TOOLKIT_NOISE = ("gtk_box_gadget_distribute", "gtk_distribute_natural_allocation",
                 "gtk_notebook_get_tab_label", "gtk_widget_get_preferred_width_for_height")


def make_database(batch, folder, database):
    for command in (["clinic", "--name", "Test clinic", "--currency", "EUR"], ["import", folder]):
        subprocess.run([batch, "--db", database, "--today", TODAY, *command], check=True,
                       stdout=subprocess.DEVNULL)


def look_at_pages(stage):
    stage.wait_for("page tab", "Order today (")
    stage.wait_for("page tab", "Patients")
    stage.wait_for("page tab", "Shelf")
    stage.wait_for("page tab", "Wear")
    stage.wait_for("page tab", "Deliveries")
    stage.picture("order-today")
    stage.press("ctrl+3")
    stage.wait_for("table", "Items")
    stage.picture("shelf")
    stage.press("ctrl+7")
    stage.wait_for("table", "Orders")
    stage.wait_for("table", "Lines of the order")
    stage.picture("deliveries")


def search_patient(stage):
    stage.press("ctrl+2")
    box = stage.wait_for("text", "Find a patient")
    patients = stage.wait_for("table", "Patients")
    stage.press("ctrl+f")
    stage.type(PATIENT)
    wait_until("the patient alone is listed", lambda: stage.rows(patients) == 1)
    stage.wait_for("label", PATIENT)
    stage.picture("patients")
    # A list that has the focus must not keep the find key from the window.
    stage.press("Down")
    stage.press("ctrl+f")
    wait_until("the find box has the focus", lambda: stage.focused(box))
    stage.press("Escape")
    wait_until("all patients are listed", lambda: stage.rows(patients) > 1)


def bookings(batch, database):
    said = subprocess.run([batch, "--db", database, "--today", TODAY, "--json", "bookings"],
                          stdout=subprocess.PIPE).stdout
    return [(row["patient_ref"], row["item_code"], row["quantity"])
            for row in json.loads(said)["bookings"]]


def book_for_visit(stage, batch, database):
    stage.press("ctrl+f")
    stage.type(PATIENT)
    patients = stage.wait_for("table", "Patients")
    wait_until("the patient alone is listed", lambda: stage.rows(patients) == 1)
    stage.press("Down")
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


def write_workbooks(stage, folder):
    stage.press("ctrl+1")
    stage.click("push button", "Write order workbooks...")
    stage.set_text("Folder", str(folder))
    stage.picture("write-orders")
    stage.click("push button", "Write")
    wait_until("a workbook is on disk", lambda: any(folder.glob("*.xlsx")))
    stage.wait_for("push button", "Mark as sent...")
    stage.picture("written")
    for book in folder.glob("*.xlsx"):
        with zipfile.ZipFile(book) as parts:
            assert parts.testzip() is None, f"{book} is damaged"
            assert 'name="Order"' in parts.read("xl/workbook.xml").decode(), book


def mark_as_sent(stage):
    stage.click("push button", "Mark as sent...")
    stage.wait_for("table", "Orders written and not yet sent")
    stage.picture("mark-as-sent")
    stage.click("push button", "Mark as sent")
    # What is on order now is no longer proposed.
    stage.wait_for("label", "Nothing is to be ordered today.")
    stage.picture("sent")


def test_forecasts(stage):
    stage.press("ctrl+4")
    stage.wait_for("label", "The forecasts have not been tested")
    stage.picture("untested")
    stage.click("push button", "Test the forecasts")
    scores = stage.wait_for("table", "Test of the forecasts")
    wait_until("there are figures", lambda: stage.rows(scores) > 1)
    words = [stage.cell(scores, 1, column) for column in range(7)]
    assert words[0] == "Liners" and " % (" in words[4], words
    chart = stage.wait_for("", "Test of the forecasts, drawn")
    assert "80 % span held" in chart.description, chart.description
    stage.picture("tested")
    stage.press("ctrl+6")
    early = stage.wait_for("table", "Parts that wore out far too early")
    patient = stage.cell(early, 0, 0).split()[0]
    stage.picture("early-endings")
    stage.click("push button", "Show patient")
    stage.wait_for("label", patient)
    stage.picture("patient-of-early-ending")
    stage.press("ctrl+f")
    stage.type(PATIENT)
    stage.wait_for("label", "Tested on this clinic's history")
    stage.press("Escape")


def play_policy(stage):
    stage.press("ctrl+8")
    stage.wait_for("label", "The order policy has not been played")
    stage.picture("unplayed")
    stage.click("push button", "Play the policy")
    # Longer than anything else in the window.
    wait_until("the policy is played", lambda: stage.find("label", "At the service target of"), 180)
    runs = stage.wait_for("table", "Ways of ordering")
    assert stage.cell(runs, 0, 0).startswith("Sparewell, "), stage.cell(runs, 0, 0)
    chart = stage.wait_for("", "Money in stock against pieces on hand, drawn")
    assert "in stock on average" in chart.description, chart.description
    stage.picture("played")


def check_traces(stage, database):
    memory = json.loads((stage.config / "sparewell" / "window.json").read_text())
    assert memory["clinic_file"] == str(database), memory
    noise = [line for line in stage.output().splitlines()
             if "CRITICAL" in line and not any(known in line for known in TOOLKIT_NOISE)]
    assert not noise, "\n".join(noise)


def main():
    program, batch, folder, pictures = sys.argv[1:]
    with tempfile.TemporaryDirectory() as scratch:
        scratch = pathlib.Path(scratch)
        database = scratch / "clinic.db"
        make_database(batch, folder, database)
        with Stage(scratch, pathlib.Path(pictures)) as stage:
            stage.open([program, "--today", TODAY, str(database)])
            look_at_pages(stage)
            search_patient(stage)
            book_for_visit(stage, batch, database)
            test_forecasts(stage)
            play_policy(stage)
            write_workbooks(stage, scratch / "orders")
            mark_as_sent(stage)
            stage.press("ctrl+q")
            assert stage.ended() == 0, stage.output()
            check_traces(stage, database)


if __name__ == "__main__":
    main()
