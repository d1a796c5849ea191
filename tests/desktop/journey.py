"""What the tests of the window have in common: each is the way of one user through the sample clinic.

usage: X_journey.py SPAREWELL SPAREWELL-BATCH CSV-FOLDER PICTURES-FOLDER

Needs Xvfb, openbox, xdotool, ImageMagick and pyatspi. Pictures of what is passed are kept.
"""

import dataclasses
import json
import pathlib
import sys
import tempfile

from clinic import TODAY, make_database
from stage import Stage

# Said by the toolkit while a window is built that has no size yet, and by its accessibility while a
# book of pages is taken down.
TOOLKIT_NOISE = ("gtk_box_gadget_distribute", "gtk_distribute_natural_allocation",
                 "gtk_notebook_get_tab_label", "gtk_widget_get_preferred_width_for_height")


@dataclasses.dataclass
class Files:
    program: str
    batch: str
    folder: str  # of the sample's CSV files
    scratch: pathlib.Path
    database: pathlib.Path


def check_traces(stage, database):
    memory = json.loads((stage.config / "sparewell" / "window.json").read_text())
    assert memory["clinic_file"] == str(database), memory
    noise = [line for line in stage.output().splitlines()
             if "CRITICAL" in line and not any(known in line for known in TOOLKIT_NOISE)]
    assert not noise, "\n".join(noise)


def go(way, afterwards=lambda files, stage: None):
    """Opens the sample clinic, goes the way, closes the window, and looks at what is left."""
    program, batch, folder, pictures = sys.argv[1:]
    with tempfile.TemporaryDirectory() as scratch:
        scratch = pathlib.Path(scratch)
        files = Files(program, batch, folder, scratch, scratch / "clinic.db")
        make_database(batch, folder, files.database)
        with Stage(scratch, pathlib.Path(pictures)) as stage:
            stage.open([program, "--today", TODAY, str(files.database)])
            way(stage, files)
            stage.press("ctrl+q")
            assert stage.ended() == 0, stage.output()
            check_traces(stage, files.database)
            afterwards(files, stage)
