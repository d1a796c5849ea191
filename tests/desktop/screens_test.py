"""Goes through every page and the dialogs that need nothing chosen, in the sizes, themes and languages that
clinics use, keeps a picture of each, and fails where a text is cut.

usage: screens_test.py SPAREWELL SPAREWELL-BATCH CSV-FOLDER PICTURES-FOLDER [LOOK]

Needs what journey.py needs. A short answer time is reported, and not asserted: it depends on
the machine.
"""

import gettext
import pathlib
import subprocess
import sys
import tempfile
import time

from clinic import TODAY, make_database
from stage import Stage, wait_until

# Name of the pictures, size of the screen, theme, scale of the text, language.
LOOKS = [("1366x768", "1366x768", "Adwaita", 1, "en"),
         ("150-percent", "1920x1080", "Adwaita", 1.5, "en"),
         ("dark", "1366x768", "Adwaita:dark", 1, "en"),
         ("spanish", "1366x768", "Adwaita", 1, "es")]
# Name of the picture, the keys that lead there.
PAGES = [("today", ["F2"]), ("orders", ["ctrl+1"]), ("patients", ["ctrl+2"]), ("shelf", ["ctrl+3"]),
         ("wear", ["ctrl+4"]), ("deliveries", ["ctrl+7"]), ("plan", ["ctrl+8"]),
         ("held-back", ["ctrl+9"]), ("suppliers", ["ctrl+0"]), ("billing", ["F6"]),
         ("search", ["F3", "0"]), ("patients-again", ["Escape", "ctrl+2"])]
# Tabs of the page of a patient after the first.
TABS = ["Parts", "Findings", "History", "Measurements", "Travel", "Reactions", "Papers"]
# Dialogs, closed with Escape.
DIALOGS = [("details", ["ctrl+d"]), ("import", ["ctrl+i"]), ("receive", ["ctrl+r"]),
           ("keys", ["shift+F1"]), ("help", ["F1"])]
LET_SETTLE = 1.0  # seconds for a page to be laid out, painted and looked at twice


def take(stage, look, name, keys):
    for key in keys:
        stage.press(key)
    time.sleep(LET_SETTLE)
    stage.picture(f"{look}-{name}")


def catalogue(program, language):
    """From the English of a text to what the window shows."""
    folder = pathlib.Path(program).parent.parent / "share" / "locale"
    return gettext.translation("sparewell", folder, [language], fallback=language == "en").gettext


def look_around(stage, look, shown):
    for name, keys in PAGES:
        take(stage, look, name, keys)
    issue = shown("&Issue a part...").replace("&", "")
    wait_until("the window is at rest", lambda: stage.can_be_used("push button", issue))
    for tab in TABS:
        stage.click_at(stage.wait_for("page tab", shown(tab)))
        take(stage, look, f"patient-{tab.lower()}", [])
    for name, keys in DIALOGS:
        take(stage, look, name, keys)
        stage.press("Escape")
        time.sleep(LET_SETTLE / 2)


def read_report(file):
    lines = [line.split("\t") for line in file.read_text().splitlines()]
    cut = [f"{line[1]}: {line[2]}" for line in lines if line[0] == "cut"]
    slow = [int(line[2]) for line in lines if line[0] == "slow"]
    usable = [int(line[2]) for line in lines if line[0] == "usable"]
    return cut, slow, usable


def look_once(look, size, theme, scale, language, program, batch, folder, pictures):
    """Gives the texts that are cut."""
    with tempfile.TemporaryDirectory() as scratch:
        scratch = pathlib.Path(scratch)
        database = scratch / "clinic.db"
        make_database(batch, folder, database)
        report = scratch / "report.txt"
        with Stage(scratch, pathlib.Path(pictures), size, theme, scale) as stage:
            stage.open([program, "--today", TODAY, "--language", language, "--report", str(report),
                        str(database)])
            shown = catalogue(program, language)
            stage.wait_for("page tab", shown("Order today ({})").split("{")[0])
            stage.fill_screen()
            look_around(stage, look, shown)
            stage.press("ctrl+q")
            assert stage.ended() == 0, stage.output()
        cut, slow, usable = read_report(report)
    print(f"{look}: usable after {usable} ms; {len(cut)} cut texts; not answering {len(slow)} times, "
          f"at most {max(slow, default=0)} ms")
    for text in cut:
        print(f"{look}: cut: {text}")
    return cut


def main():
    *paths, last = sys.argv[1:]
    for look in LOOKS:
        if look[0] == last:
            sys.exit(1 if look_once(*look, *paths) else 0)
    # Each in a process of its own: accessibility stays with the first session bus that it met.
    ended = [subprocess.run([sys.executable, __file__, *sys.argv[1:], look[0]], check=False)
             for look in LOOKS]
    assert not any(end.returncode for end in ended)


if __name__ == "__main__":
    main()
