"""Whoever is at the window: finding and scanning from anywhere, help, print, larger text, unfinished forms, Spanish."""

from comfort import (ask_for_help, check_memory, enlarge_text, leave_form_unfinished, print_list,
                     speak_spanish)
from journey import go
from search_work import find_by_scanning, find_by_typing


def way(stage, files):
    stage.wait_for("page tab", "Order today (")
    stage.press("ctrl+1")
    enlarge_text(stage)
    ask_for_help(stage)
    print_list(stage)
    leave_form_unfinished(stage, files.database)
    find_by_typing(stage, files.folder)
    find_by_scanning(stage, files.folder)
    speak_spanish(stage)


if __name__ == "__main__":
    go(way, lambda files, stage: check_memory(stage))
