"""Finding a patient, and reading what holds the limbs on, as before a visit."""

from stage import wait_until

PATIENT = "P-0004"


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


def choose_patient(stage, patient=PATIENT):
    stage.press("ctrl+f")
    stage.type(patient)
    patients = stage.wait_for("table", "Patients")
    wait_until("the patient alone is listed", lambda: stage.rows(patients) == 1)
    stage.press("Down")


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
