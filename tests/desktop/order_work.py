"""Writing the order workbooks, playing the policy, looking at what is held back, taking prices over."""

import csv
import pathlib
import zipfile

from stage import save_as, wait_until


def look_at_moves(stage):
    """Stock lies at a branch to which nobody belongs: it is proposed to come back."""
    stage.press("ctrl+g")
    moves = stage.wait_for("table", "Moves between branches")
    wait_until("moves are proposed", lambda: stage.rows(moves) > 0)
    stage.picture("moves")
    stage.press("ctrl+g")
    stage.wait_for("table", "Items")


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


def item_numbers(folder):
    with open(pathlib.Path(folder) / "catalogue.csv", encoding="utf-8", newline="") as file:
        return {row["item_code"]: row["gtin"] for row in csv.DictReader(file)}
