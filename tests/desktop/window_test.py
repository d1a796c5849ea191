"""Works with the window as a person does, on the sample clinic: begins the day, finds the pages by their names,
looks at the course of a stock, drags a slider, receives a delivery by scanning,
finds things from anywhere by typing and scanning, searches a patient, reads what holds the limbs on, books a part for a visit, records a reaction, tests the forecasts, writes the
order workbooks and marks them as sent, compares the books, hands a part over with its delivery sheet, ends it, and takes
a price list over.

usage: window_test.py SPAREWELL SPAREWELL-BATCH CSV-FOLDER PICTURES-FOLDER

Needs Xvfb, openbox, xdotool, ImageMagick and pyatspi. Pictures of every page are kept.
"""

import csv
import json
import pathlib
import subprocess
import sys
import tempfile
import zipfile

from clinic import TODAY, make_database
from books import answer_finding, close_month, look_at_rules
from comfort import (ask_for_help, check_memory, enlarge_text, leave_form_unfinished,
                     look_at_print, undo_ending)
from papers import write_travel_card, write_visit_sheets
from search_work import find_by_scanning, find_by_typing
from stage import Stage, save_as, wait_until
from stock_work import drag_a_slider, look_at_course, receive_by_scanning

PATIENT = "P-0004"
SENSITIVE = "P-0059"  # of whom a sensitivity is recorded
BOOKED = "TS3-M"  # an item that the patient has in use
# Said by the toolkit while a window is built that has no size yet, and by its accessibility while a
# book of pages is taken down.
TOOLKIT_NOISE = ("gtk_box_gadget_distribute", "gtk_distribute_natural_allocation",
                 "gtk_notebook_get_tab_label", "gtk_widget_get_preferred_width_for_height")


def day_begins(stage):
    """The window opens on what needs a person today; Enter on a row leads to where it is done."""
    stage.wait_for("page tab", "Today (")
    listed = stage.wait_for("table", "What needs a person today")
    wait_until("there is something to do", lambda: stage.rows(listed) > 1)
    wait_until("the books are compared", lambda: stage.cell(listed, stage.rows(listed) - 1, 3)
               .find("books are being compared") < 0)
    jobs = [stage.cell(listed, row, 0) for row in range(stage.rows(listed))]
    assert jobs == sorted(jobs, key=["Ordering and receiving", "Patients", "Billing"].index), jobs
    stage.picture("today")
    stage.press("ctrl+f")
    stage.type("ordered today from")
    wait_until("an order is due", lambda: 0 < stage.rows(listed) < len(jobs))
    stage.wait_for("push button", "Go to today's orders")
    stage.press("Down")
    stage.press("Return")
    stage.wait_for("table", "Order lines")
    stage.press("F2")
    listed = stage.wait_for("table", "What needs a person today")
    stage.press("ctrl+f")
    stage.type("P-")
    wait_until("patients are listed", lambda: stage.rows(listed) > 0 and
               stage.cell(listed, 0, 0) == "Patients")
    patient = stage.cell(listed, 0, 3).split()[0]
    stage.press("Down")
    stage.press("Return")
    stage.wait_for("table", "Patients")
    stage.wait_for("label", patient)
    stage.press("F2")
    stage.press("ctrl+f")
    stage.press("Escape")
    wait_until("everything is listed", lambda: stage.rows(
        stage.find("table", "What needs a person today")) == len(jobs))
    stage.press("ctrl+1")


def item_numbers(folder):
    with open(pathlib.Path(folder) / "catalogue.csv", encoding="utf-8", newline="") as file:
        return {row["item_code"]: row["gtin"] for row in csv.DictReader(file)}


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


def look_at_moves(stage):
    """Stock lies at a branch to which nobody belongs: it is proposed to come back."""
    stage.press("ctrl+g")
    moves = stage.wait_for("table", "Moves between branches")
    wait_until("moves are proposed", lambda: stage.rows(moves) > 0)
    stage.picture("moves")
    stage.press("ctrl+g")
    stage.wait_for("table", "Items")


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


def choose_patient(stage, patient=PATIENT):
    stage.press("ctrl+f")
    stage.type(patient)
    patients = stage.wait_for("table", "Patients")
    wait_until("the patient alone is listed", lambda: stage.rows(patients) == 1)
    stage.press("Down")


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


def read_patient(stage):
    """As before a visit: what holds the limbs on, what happened, how the limbs change."""
    choose_patient(stage)
    stage.click("page tab", "Limbs")
    drawing = stage.wait_for("", "What holds the limbs on, drawn")
    wait_until("the limbs are told in words", lambda: "suspension" in drawing.description)
    stage.picture("limbs")
    stage.click("page tab", "History")
    history = stage.wait_for("table", "History")
    wait_until("the history is listed", lambda: stage.rows(history) > 0)
    everything = stage.rows(history)
    stage.click("text", "Find in the history")
    stage.type("issued")
    wait_until("fewer entries are listed", lambda: 0 < stage.rows(history) < everything)
    stage.picture("history")
    stage.press("Escape")
    stage.click("page tab", "Measurements")
    told = stage.wait_for("text", "Fit and trend in words").queryText()
    assert "does not replace" in told.getText(0, -1)
    stage.picture("measurements")
    for pane, inside in (("Travel", "What the trip check says"),
                         ("Reactions", "What the reactions speak for"),
                         ("Papers", "Papers of the parts")):
        stage.click("page tab", pane)
        stage.wait_for("", inside)
        stage.picture(f"patient-{pane.lower()}")
    stage.click("page tab", "Parts")
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
    # The drafts are listed once the file has been read again.
    wait_until("the file has been read again",
               lambda: stage.find("push button", "Write order workbooks...", whole=True)
               .getState().contains(stage.atspi.STATE_SENSITIVE))
    stage.click("push button", "Mark as sent...")
    stage.wait_for("table", "Orders written and not yet sent")
    stage.picture("mark-as-sent")
    stage.click("push button", "Mark as sent")
    # What is on order now is no longer proposed.
    stage.wait_for("label", "Nothing is to be ordered today.")
    stage.picture("sent")


def read_picture(stage, chart):
    """Goes through a picture with the keys, reads it as text, and looks at it on paper."""
    box = chart.queryComponent().getExtents(stage.atspi.DESKTOP_COORDS)
    subprocess.run(["xdotool", "mousemove", str(box.x + 40), str(box.y + box.height // 2),
                    "click", "1"], check=True)
    stage.press("Home")
    first = wait_until("the first part is told", lambda: chart.description)
    stage.press("Down")
    wait_until("the next part is told", lambda: chart.description != first)
    stage.press("shift+F10")
    stage.wait_for("menu item", "Show as text")
    stage.press("x")
    figures = stage.wait_for("table", "Figures of the picture")
    assert stage.cell(figures, 0, 0) == "All kinds", stage.cell(figures, 0, 0)
    stage.picture("picture-as-text")
    stage.press("Escape")
    wait_until("the text is closed", lambda: not stage.find("table", "Figures of the picture"))
    stage.press("shift+F10")
    stage.wait_for("menu item", "Print")
    stage.press("r")
    stage.wait_for("frame", "Picture on paper")
    stage.picture("picture-on-paper")
    stage.click("push button", "Close")
    wait_until("the preview is closed", lambda: not stage.find("frame", "Picture on paper"))
    stage.press("Home")


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
    read_picture(stage, chart)
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


def look_at_plans(stage):
    stage.press("ctrl+9")
    stage.wait_for("table", "Parts held back")
    stage.picture("held-back")
    stage.press("ctrl+0")
    suppliers = stage.wait_for("table", "Suppliers")
    assert stage.rows(suppliers) > 0
    stage.picture("suppliers")


def something_on_the_shelf(batch, database):
    listed = subprocess.run([batch, "--db", database, "--today", TODAY, "--json", "stock", "list"],
                            check=True, stdout=subprocess.PIPE)
    for level in json.loads(listed.stdout)["stock"]:
        fresh = not level["use_by"] or level["use_by"] > "2027"
        if level["place"] == "main store" and level["quantity"] > 1 and fresh:
            return level["item_code"]
    raise AssertionError("nothing is on the shelf of the sample clinic")


def issue_and_end(stage, item, sheet):
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
    stage.click("push button", "End it")
    stage.wait_for("label", "The part is recorded as ended.")
    # Until the file is read again, the menus offer little.
    wait_until("the window is at rest", lambda: stage.can_be_used("push button", "Issue a part..."))


def dearer_list(folder, file):
    """A price list of the first supplier in which one item costs a little more."""
    folder = pathlib.Path(folder)
    with open(folder / "suppliers.csv", newline="") as rows:
        supplier = next(csv.DictReader(rows))["supplier"]
    with open(folder / "catalogue.csv", newline="") as rows:
        item = next(row for row in csv.DictReader(rows) if row["supplier"] == supplier)
    file.write_text("supplier_item,unit_cost,currency\n"
                    f"{item['supplier_item']},{float(item['unit_cost']) + 1:.2f},"
                    f"{item['currency']}\n")


def accept_prices(stage, file):
    stage.press("alt+l")
    stage.press("p")
    stage.wait_for("file chooser", "Supplier price list")
    save_as(stage, file)
    stage.click("push button", "Show")
    changes = stage.wait_for("table", "What the price list changes")
    assert stage.rows(changes) > 0
    stage.picture("price-list")
    stage.click("push button", "Accept")
    wait_until("the price is written", lambda: "1 item was written" in
               stage.find("label", "prices.csv: ").name)


def check_sheet(batch, database):
    listed = subprocess.run([batch, "--db", database, "--today", TODAY, "--json", "delivery-sheet",
                             "--patient", PATIENT, "--issued", TODAY, "--list"], check=True,
                            stdout=subprocess.PIPE)
    parts = json.loads(listed.stdout)["parts"]
    assert [part["printed_on"] for part in parts] == [TODAY], parts


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
            day_begins(stage)
            look_at_pages(stage)
            look_at_course(stage)
            drag_a_slider(stage)
            look_at_moves(stage)
            enlarge_text(stage)
            ask_for_help(stage)
            look_at_print(stage)
            leave_form_unfinished(stage, database)
            find_by_typing(stage, folder)
            find_by_scanning(stage, folder)
            search_patient(stage)
            book_for_visit(stage, batch, database)
            read_patient(stage)
            look_at_findings(stage)
            measure_and_look_ahead(stage, batch, database)
            record_reaction(stage, batch, database)
            test_forecasts(stage)
            play_policy(stage)
            write_workbooks(stage, scratch / "orders")
            mark_as_sent(stage)
            look_at_plans(stage)
            answer_finding(stage, batch, database, TODAY)
            look_at_rules(stage)
            close_month(stage, batch, database, TODAY)
            write_visit_sheets(stage, scratch / "visits.pdf")
            write_travel_card(stage, scratch / "card.pdf")
            issue_and_end(stage, something_on_the_shelf(batch, database), scratch / "sheet.pdf")
            undo_ending(stage)
            dearer_list(folder, scratch / "prices.csv")
            accept_prices(stage, scratch / "prices.csv")
            receive_by_scanning(stage, batch, database, TODAY, item_numbers(folder))
            stage.press("ctrl+q")
            assert stage.ended() == 0, stage.output()
            check_sheet(batch, database)
            check_traces(stage, database)
            check_memory(stage)


if __name__ == "__main__":
    main()
