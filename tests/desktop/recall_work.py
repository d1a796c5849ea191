"""A lot is recalled: who has it, where more of it lies, and taking it out of use."""

import collections
import csv
import json
import pathlib
import subprocess

from clinic import TODAY
from stage import save_as, wait_until


def widest_lot(folder):
    """Item and lot of which most is on the shelf and somebody has one in use."""
    folder = pathlib.Path(folder)
    with open(folder / "issued.csv", encoding="utf-8", newline="") as rows:
        in_use = {(row["item_code"], row["lot"]) for row in csv.DictReader(rows)
                  if not row["ended_on"]}
    on_shelf = collections.Counter()
    with open(folder / "stock.csv", encoding="utf-8", newline="") as rows:
        for row in csv.DictReader(rows):
            if (row["item_code"], row["lot"]) in in_use and row["place"] != "quarantine":
                on_shelf[row["item_code"], row["lot"]] += int(row["quantity"])
    return on_shelf.most_common(1)[0][0]


def recall_of(batch, database, item, lot):
    found = subprocess.run([batch, "--db", database, "--today", TODAY, "--json", "recall", "--item",
                            item, "--lot", lot], stdout=subprocess.PIPE, check=False)
    return json.loads(found.stdout)


def look_up_recall(stage, batch, database, folder, list_file):
    item, lot = widest_lot(folder)
    stage.press("ctrl+shift+c")
    stage.wait_for("table", "Items")
    stage.set_text("Find item", item)
    items = stage.wait_for("table", "Items")
    wait_until("the item is found", lambda: stage.rows(items) >= 1 and
               stage.cell(items, 0, 0) == item)
    stage.set_text("Lot", lot)
    stage.click("push button", "Look up")
    touched = stage.wait_for("table", "Everyone and everything that the recall touches")
    wait_until("the recall is told", lambda: stage.rows(touched) > 1)
    stage.picture("recall")
    stage.click("push button", "Write list...")
    stage.wait_for("file chooser", "Write recall list")
    save_as(stage, list_file)
    wait_until("the list is on disk", list_file.exists)
    return item, lot


def take_out_of_use(stage, batch, database, item, lot):
    before = recall_of(batch, database, item, lot)
    stage.click("push button", "Quarantine the stock")
    wait_until("the stock is in quarantine", lambda: all(
        row["place"] == "quarantine" or row["quantity"] == 0
        for row in recall_of(batch, database, item, lot)["stock"]))
    stage.picture("recall-quarantined")
    stage.press("Return")
    after = recall_of(batch, database, item, lot)
    assert sum(row["quantity"] for row in after["stock"]) == \
        sum(row["quantity"] for row in before["stock"]), (before, after)
    stage.click("push button", "Close")
