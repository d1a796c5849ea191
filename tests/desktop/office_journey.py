"""Office staff: what do I order today, from whom, how many, and what if I wait; and the box that came."""

from day_work import day_begins, look_at_pages
from journey import go
from order_work import (accept_prices, dearer_list, item_numbers, look_at_moves, look_at_plans,
                        mark_as_sent, play_policy, write_workbooks)
from clinic import TODAY
from stock_work import drag_a_slider, look_at_course, receive_by_scanning


def way(stage, files):
    day_begins(stage)
    look_at_pages(stage)
    look_at_course(stage)
    drag_a_slider(stage)
    look_at_moves(stage)
    play_policy(stage)
    write_workbooks(stage, files.scratch / "orders")
    mark_as_sent(stage)
    look_at_plans(stage)
    dearer_list(files.folder, files.scratch / "prices.csv")
    accept_prices(stage, files.scratch / "prices.csv")
    receive_by_scanning(stage, files.batch, files.database, TODAY, item_numbers(files.folder))


if __name__ == "__main__":
    go(way)
