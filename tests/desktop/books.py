"""Works with the page "Billing" as a person does: looks at what does not agree, asks somebody about a
finding, looks at payers' rules, and closes a month."""

import json
import subprocess

from stage import wait_until


def findings(batch, database, today):
    said = subprocess.run([batch, "--db", database, "--today", today, "--json", "reconcile", "--all"],
                          stdout=subprocess.PIPE).stdout
    return json.loads(said)["findings"]


def closed_months(batch, database, today):
    said = subprocess.run([batch, "--db", database, "--today", today, "--json", "month-end", "list"],
                          stdout=subprocess.PIPE).stdout
    return json.loads(said)["closes"]


def answer_finding(stage, batch, database, today):
    stage.press("F6")
    listed = stage.wait_for("table", "Findings of billing")
    wait_until("the books are compared", lambda: stage.rows(listed) > 0)
    stage.wait_for("text", "Our side of the finding")
    stage.wait_for("text", "The other side of the finding")
    stage.picture("billing")
    before = stage.rows(listed)
    stage.press("F8")
    stage.wait_for("push button", "Keep")
    stage.set_text("Reason", "the office")
    stage.set_text("By", "Bea")
    stage.picture("answer-finding")
    stage.click("push button", "Keep")
    wait_until("the finding waits", lambda: stage.rows(listed) == before - 1)
    waiting = [row for row in findings(batch, database, today) if row["state"] == "waiting"]
    assert len(waiting) == 1 and waiting[0]["answers"][0]["by"] == "Bea", waiting


def look_at_rules(stage):
    stage.press("alt+b")
    stage.press("u")
    rules = stage.wait_for("table", "Payers' rules")
    wait_until("rules are listed", lambda: stage.rows(rules) > 10)
    stage.picture("payers-rules")
    stage.press("Escape")


def close_month(stage, batch, database, today):
    stage.press("alt+b")
    stage.press("l")
    stage.wait_for("push button", "Close the month")
    stage.set_text("Closed by", "Bea")
    stage.picture("close-month")
    stage.click("push button", "Close the month")
    wait_until("the month is closed", lambda: len(closed_months(batch, database, today)) == 1)
    stage.click("push button", "Put away")
    stage.press("ctrl+2")
