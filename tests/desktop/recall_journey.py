"""Anyone: a lot is recalled, and who has it must be known in seconds."""

from journey import go
from recall_work import look_up_recall, take_out_of_use


def way(stage, files):
    stage.wait_for("page tab", "Today (")
    found = look_up_recall(stage, files.batch, files.database, files.folder,
                           files.scratch / "recall.xlsx")
    take_out_of_use(stage, files.batch, files.database, *found)


if __name__ == "__main__":
    go(way)
