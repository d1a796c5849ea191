"""What everybody begins with: what needs a person today, and the pages."""

from stage import wait_until



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
