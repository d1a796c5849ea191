"""Billing: what was handed out and not billed, and the other way round; what settles it; the month."""

from books import answer_finding, close_month, look_at_rules
from clinic import TODAY
from journey import go


def way(stage, files):
    stage.wait_for("page tab", "Billing")
    answer_finding(stage, files.batch, files.database, TODAY)
    look_at_rules(stage)
    close_month(stage, files.batch, files.database, TODAY)


if __name__ == "__main__":
    go(way)
