"""Testing the forecasts, and reading a picture without seeing it."""

import subprocess

from patient_work import PATIENT
from stage import wait_until


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
