"""Goes through every page and the dialogs that need nothing chosen, in the sizes and themes that
clinics use, keeps a picture of each, and fails where a text is cut.

usage: screens_test.py SPAREWELL SPAREWELL-BATCH CSV-FOLDER PICTURES-FOLDER

Needs what window_test.py needs. A short answer time is reported, and not asserted: it depends on
the machine.
"""

import pathlib
import sys
import tempfile
import time

from clinic import TODAY, make_database
from stage import Stage, wait_until

# Name of the pictures, size of the screen, theme, scale of the text.
LOOKS = [("1366x768", "1366x768", "Adwaita", 1),
         ("150-percent", "1920x1080", "Adwaita", 1.5),
         ("dark", "1366x768", "Adwaita:dark", 1)]
# Name of the picture, the keys that lead there.
PAGES = [("orders", ["ctrl+1"]), ("patients", ["ctrl+2"]), ("shelf", ["ctrl+3"]),
         ("wear", ["ctrl+4"]), ("deliveries", ["ctrl+7"]), ("plan", ["ctrl+8"]),
         ("held-back", ["ctrl+9"]), ("suppliers", ["ctrl+0"]), ("billing", ["F6"]),
         ("patients-again", ["ctrl+2"])]
# Dialogs, closed with Escape.
DIALOGS = [("details", ["ctrl+d"]), ("import", ["ctrl+i"]), ("receive", ["ctrl+r"]),
           ("keys", ["F1"])]
LET_SETTLE = 1.0  # seconds for a page to be laid out and painted


def take(stage, look, name, keys):
    for key in keys:
        stage.press(key)
    time.sleep(LET_SETTLE)
    stage.picture(f"{look}-{name}")


def look_around(stage, look):
    for name, keys in PAGES:
        take(stage, look, name, keys)
    wait_until("the window is at rest", lambda: stage.can_be_used("push button", "Issue a part..."))
    for name, keys in DIALOGS:
        take(stage, look, name, keys)
        stage.press("Escape")
        time.sleep(LET_SETTLE / 2)


def read_report(file):
    lines = [line.split("\t") for line in file.read_text().splitlines()]
    cut = [f"{line[1]}: {line[2]}" for line in lines if line[0] == "cut"]
    slow = [int(line[2]) for line in lines if line[0] == "slow"]
    return cut, slow


def main():
    program, batch, folder, pictures = sys.argv[1:]
    wrong = []
    with tempfile.TemporaryDirectory() as scratch:
        scratch = pathlib.Path(scratch)
        database = scratch / "clinic.db"
        make_database(batch, folder, database)
        for look, size, theme, scale in LOOKS:
            room = scratch / look
            room.mkdir()
            report = room / "report.txt"
            with Stage(room, pathlib.Path(pictures), size, theme, scale) as stage:
                stage.open([program, "--today", TODAY, "--report", str(report), str(database)])
                stage.wait_for("page tab", "Order today (")
                look_around(stage, look)
                stage.press("ctrl+q")
                assert stage.ended() == 0, stage.output()
            cut, slow = read_report(report)
            print(f"{look}: {len(cut)} cut texts; not answering {len(slow)} times, "
                  f"at most {max(slow, default=0)} ms")
            wrong += [f"{look}: {text}" for text in cut]
    assert not wrong, "cut:\n" + "\n".join(wrong)


if __name__ == "__main__":
    main()
