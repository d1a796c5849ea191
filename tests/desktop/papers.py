"""The window writes papers for a patient's trip and for a day's visits."""

from stage import save_as, wait_until

VISITS = "2026-12-07"
TRAVELLER = "P-0002"


def write_into(stage, title, file):
    stage.click("push button", "Write...")
    stage.wait_for("file chooser", title)
    save_as(stage, file)
    wait_until(f"{file.name} is on disk", file.exists)


def write_visit_sheets(stage, file):
    stage.press("ctrl+j")
    stage.wait_for("push button", "Write...")
    stage.set_text("Day", VISITS)
    # Counted in sample-data/clinic/patients.csv.
    stage.wait_for("label", "4 visits are known for Mon 7 Dec 2026.")
    stage.picture("visit-sheets")
    write_into(stage, "Write the visit sheets", file)
    stage.wait_for("label", "Written to")
    stage.click("push button", "Put away")


def write_travel_card(stage, file):
    stage.press("ctrl+2")
    stage.press("ctrl+f")
    stage.type(TRAVELLER)
    stage.wait_for("label", TRAVELLER)
    stage.press("ctrl+k")
    stage.wait_for("push button", "Write travel card...")
    stage.set_text("Departure", "2026-12-10")
    stage.set_text("Return", "2027-01-20")
    stage.picture("trip")
    stage.click("push button", "Write travel card...")
    stage.wait_for("push button", "Write...")
    stage.picture("travel-card")
    write_into(stage, "Write the travel card", file)
    stage.click("push button", "Close")
    stage.click("push button", "Put away")
