"""A prosthetist: will everything last for the trip or until the visit, and may this patient wear this?"""

from hand_over_work import check_sheet, issue_and_end, something_on_the_shelf
from comfort import undo_ending
from journey import go
from papers import write_travel_card, write_visit_sheets
from patient_work import read_patient, search_patient
from visit_work import (book_for_visit, look_at_findings, measure_and_look_ahead, record_reaction)
from wear_work import test_forecasts


def way(stage, files):
    stage.wait_for("page tab", "Patients")
    search_patient(stage)
    book_for_visit(stage, files.batch, files.database)
    read_patient(stage)
    look_at_findings(stage)
    measure_and_look_ahead(stage, files.batch, files.database)
    record_reaction(stage, files.batch, files.database)
    test_forecasts(stage)
    write_visit_sheets(stage, files.scratch / "visits.pdf")
    write_travel_card(stage, files.scratch / "card.pdf")
    issue_and_end(stage, files.database, something_on_the_shelf(files.batch, files.database),
                  files.scratch / "sheet.pdf")
    undo_ending(stage)


if __name__ == "__main__":
    go(way, lambda files, stage: check_sheet(files.batch, files.database))
