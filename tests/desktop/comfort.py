"""What makes the window fit for its people: larger text, help, printing, undo, unfinished forms."""

import json
import subprocess

from stage import wait_until


def enlarge_text(stage):
    stage.press("ctrl+plus")
    stage.press("ctrl+plus")
    stage.picture("large-text")
    stage.press("ctrl+alt+0")


def ask_for_help(stage):
    stage.press("F1")
    questions = stage.wait_for("table", "Questions")
    assert stage.rows(questions) > 20, stage.rows(questions)
    answers = stage.wait_for("text", "Answers")
    wait_until("the help answers", lambda: "Ctrl+" in answers.queryText().getText(0, -1))
    stage.picture("help")
    stage.press("Escape")
    wait_until("the help is closed", lambda: stage.find("table", "Questions") is None)


def print_list(stage):
    """Looked at first, then printed: where there is no printer, into a file."""
    stage.press("ctrl+3")
    stage.press("ctrl+alt+p")
    stage.wait_for("frame", "Print: Shelf")
    stage.wait_for("push button", "Paper and margins...")
    stage.picture("print")
    stage.click("push button", "Print this list")
    stage.wait_for("dialog", "Print")
    into_file(stage)
    file = stage.scratch / "output.pdf"
    wait_until("the list is printed", file.exists)
    stage.click("push button", "Close")
    wait_until("the preview is closed", lambda: stage.find("frame", "Print: Shelf") is None)
    told = subprocess.run(["pdftotext", "-layout", file, "-"], check=True, text=True,
                          stdout=subprocess.PIPE).stdout
    assert "Locking liner" in told and "Page 8 of 8" in told, told[:500]


def into_file(stage):
    """Chooses the only printer of the toolkit's dialog, the file, whose row no name tells."""
    printers = stage.settled_box(wait_until("printers are listed", lambda: stage.find(
        "table", "", whole=True) or stage.find("tree table", "", whole=True)))
    first_row = 38
    subprocess.run(["xdotool", "mousemove", str(printers.x + 80), str(printers.y + first_row),
                    "click", "1"], check=True)
    stage.picture("print-into-file")
    stage.click("push button", "Print")


def leave_form_unfinished(stage, database):
    """Closed with Esc, it is filled in again; discarded, nothing of it stays."""
    drafts = database.with_name(database.name + ".drafts")
    stage.press("ctrl+shift+p")
    stage.wait_for("push button", "Record")
    stage.type("attic shelf")
    stage.press("Escape")
    wait_until("the entry is kept", drafts.exists)
    assert drafts.stat().st_mode & 0o077 == 0, oct(drafts.stat().st_mode)
    stage.press("ctrl+shift+p")
    stage.wait_for("label", "Your unfinished entry of")
    stage.picture("draft")
    stage.click("push button", "Discard it")
    wait_until("the entry is gone", lambda: not drafts.exists())
    stage.press("Escape")


def undo_ending(stage):
    """The part that was ended last is in use again."""
    stage.press("ctrl+z")
    stage.wait_for("label", "Undone: ")
    stage.picture("undone")
    wait_until("the window is at rest", lambda: stage.can_be_used("push button", "Issue a part..."))


def speak_spanish(stage):
    """Chosen in the menu; the window starts again for it, where it was."""
    stage.press("alt+v")
    stage.press("a")
    stage.wait_for("push button", "Keep")
    stage.picture("language")
    stage.press("Down")
    stage.press("Down")
    stage.click("push button", "Keep")
    stage.click("push button", "Start it again now")
    stage.wait_for("page tab", "Pacientes")
    stage.wait_for("page tab", "Facturación")
    stage.press("F2")
    stage.wait_for("table", "Lo que hoy necesita a una persona")
    stage.picture("in-spanish")
    stage.press("ctrl+1")
    target = stage.wait_for("spin button", "Nivel de servicio")
    wait_until("decimals are written as in Spanish", lambda: "," in target.queryText().getText(0, -1))
    stage.press("F2")


def check_memory(stage):
    memory = json.loads((stage.config / "sparewell" / "window.json").read_text())
    layout = memory["layout"]
    assert layout["text_percent"] == 100, layout
    assert memory["language"] == "es", memory
