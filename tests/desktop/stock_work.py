"""The office's work with stock: how long it lasts, what other orders would be, a delivery scanned."""

import json
import subprocess

from stage import wait_until

SUPPLIED_BY_HAND = "L-WINDOW"  # the lot on the invented labels


def look_at_course(stage):
    """The chosen item's course says in words what it draws."""
    stage.press("ctrl+3")

    def told():
        chart = stage.find("", "Stock over the next weeks, drawn")
        return chart and "The next order day is" in chart.description

    wait_until("the stock's course is told", told)
    stage.picture("course")


def drag_a_slider(stage):
    """Orders by the sliders stand beside today's, and nothing of it stays."""
    stage.press("ctrl+1")
    stage.click("slider", "Service target, percent")
    for _ in range(4):
        stage.press("Left")
    beside = stage.wait_for("table", "Orders by the sliders beside today's")
    wait_until("the orders are compared", lambda: stage.rows(beside) > 4)
    stage.picture("sliders")
    stage.click("push button", "Back to the clinic's settings")
    stage.wait_for("table", "Totals by supplier")


def open_line(batch, database, today, gtins):
    """An order, an item and its number, of which pieces are to come."""
    listed = subprocess.run([batch, "--db", database, "--today", today, "--json", "receive",
                             "--list"], stdout=subprocess.PIPE, check=False)
    for line in json.loads(listed.stdout)["lines"]:
        if gtins.get(line["item_code"]):
            return line["order_ref"], line["item_code"], gtins[line["item_code"]]
    raise AssertionError("the sample has no open order of an item with a number")


def lots(batch, database, today, item):
    listed = subprocess.run([batch, "--db", database, "--today", today, "--json", "stock", "list",
                             "--item", item], stdout=subprocess.PIPE, check=False)
    return listed.stdout.decode()


def receive_by_scanning(stage, batch, database, today, gtins):
    order, item, gtin = open_line(batch, database, today, gtins)
    stage.press("F3")
    stage.type(order)
    stage.wait_for("table", "Found")
    stage.press("Return")
    stage.wait_for("table", "Lines of the order")
    stage.press("ctrl+r")
    stage.wait_for("text", "Scan")

    def answered(says):
        answer = stage.wait_for("text", "What the last scan was")

        def said():
            words = answer.queryText()
            return says in words.getText(0, words.characterCount)

        wait_until(f"a scan is answered with {says}", said)

    def scan(says, text, after_separator=None):
        stage.type(text)
        if after_separator:
            # Scanners that are keyboards send the separator of GS1 so.
            stage.press("ctrl+bracketright")
            stage.type(after_separator)
        stage.press("Return")
        answered(says)

    label = f"(01){gtin}(17)290630(10){SUPPLIED_BY_HAND}"
    scan("Not taken", "(01)00000096385074")
    scan("to come on", label)
    stage.picture("scanned")
    stage.click("push button", "Take the last scan back")
    scan("to come on", f"01{gtin}1729063010{SUPPLIED_BY_HAND}", after_separator="21W-77")
    stage.press("Escape")
    stage.wait_for("label", "1 scan is not booked.")
    stage.picture("scans-kept")
    stage.press("ctrl+r")
    answered("in the tray again")
    stage.click("push button", "Book")
    wait_until("the delivery is on the shelf",
               lambda: f'"{SUPPLIED_BY_HAND}"' in lots(batch, database, today, item))
    stage.click("push button", "Close")
