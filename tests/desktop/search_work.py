"""Finding things from anywhere: by typing, and by scanning while a list or a field has the focus."""

import csv
import pathlib
import subprocess
import time

from stage import wait_until

# Quick enough to be taken for a scanner, which ends with Enter.
SCANNER_MS = "5"


def reach_for_scanner():
    """So that what was typed before is not taken for the beginning of the scan."""
    time.sleep(0.2)


def scan(label):
    reach_for_scanner()
    subprocess.run(["xdotool", "type", "--delay", SCANNER_MS, label + "\n"], check=True)


def scan_with_separator(before, after):
    """Scanners that are keyboards send the separator of GS1 as Ctrl+]."""
    reach_for_scanner()
    fast = ["--delay", SCANNER_MS, "--args", "1"]
    subprocess.run(["xdotool", "type", *fast, before, "key", "--delay", "2", "ctrl+bracketright",
                    "type", *fast, after + "\n"], check=True)


def rows(folder, name):
    with open(pathlib.Path(folder) / name, encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def search_box(stage):
    def reached():
        box = stage.find("text", "Search everything")
        if box and stage.focused(box):
            return box
        # A dialog that has just been closed may still have the keys.
        stage.press("F3")
        time.sleep(0.3)
        return None

    return wait_until("the search has the focus", reached)


def content(box):
    text = box.queryText()
    return text.getText(0, text.characterCount)


def find_by_typing(stage, folder):
    patient = rows(folder, "patients.csv")[3]
    search_box(stage)
    stage.type(f"{patient['family_name']} {patient['given_name']}")
    found = stage.wait_for("table", "Found")
    wait_until("the patient is found", lambda: patient["patient_ref"] in stage.cell(found, 0, 1))
    stage.picture("search")
    stage.press("Down")
    stage.press("Return")
    stage.wait_for("table", "Patients")
    stage.wait_for("label", patient["patient_ref"])
    wait_until("the hits are put away", lambda: stage.find("table", "Found") is None)
    order = rows(folder, "orders.csv")[-1]["order_ref"]
    search_box(stage)
    stage.type(order)
    stage.wait_for("table", "Found")
    stage.press("Return")
    stage.wait_for("table", "Lines of the order")
    box = search_box(stage)
    stage.type("no such thing")
    stage.wait_for("label", "Nothing answers to it.")
    stage.picture("search-nothing")
    stage.press("Escape")
    wait_until("the search is emptied", lambda: content(box) == "")


def find_by_scanning(stage, folder):
    numbers = {row["item_code"]: row["gtin"] for row in rows(folder, "catalogue.csv")}
    # Not of the item that the page begins with.
    lot = next(row for row in rows(folder, "stock.csv") if row["item_code"].startswith("LG"))
    # From a list, with the symbology identifier.
    stage.press("ctrl+7")
    stage.press("ctrl+f")
    stage.press("Down")
    scan(f"]C101{numbers[lot['item_code']]}10{lot['lot']}")
    stage.wait_for("table", "Items")
    stage.wait_for("label", lot["item_code"])
    stage.picture("scanned-lot")
    # From a field, as people write labels: it is taken out of the field again.
    part = next(row for row in rows(folder, "issued.csv") if row["serial"] and not row["ended_on"])
    stage.press("ctrl+f")
    field = stage.wait_for("text", "Find an item")
    stage.type("liner")
    wait_until("the field has what was typed", lambda: content(field) == "liner")
    scan(f"(01){numbers[part['item_code']]}(21){part['serial']}")
    stage.wait_for("table", "Patients")
    stage.wait_for("label", part["patient_ref"])
    stage.picture("scanned-part")
    stage.press("ctrl+3")
    field = stage.wait_for("text", "Find an item")
    assert content(field) == "liner", content(field)
    stage.press("ctrl+f")
    stage.press("Escape")
    # Without the separator the lot would seem to go on.
    stage.press("ctrl+7")
    stage.press("ctrl+f")
    stage.press("Down")
    scan_with_separator(f"]d201{numbers[part['item_code']]}10{part['lot']}", f"21{part['serial']}")
    stage.wait_for("table", "Patients")
    stage.wait_for("label", part["patient_ref"])
    # What is not here is said, and nothing is opened.
    scan(f"(01){numbers[part['item_code']]}(21)NEVERSEEN")
    stage.wait_for("label", "No part here bears serial NEVERSEEN")
    stage.picture("scanned-unknown")
    stage.press("Escape")
