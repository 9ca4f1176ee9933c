"""The buying list as a table: what is sawn, then what is driven, each with its count."""

from __future__ import annotations

import csv
import io

from app.demo import read_demo
from app.stock_lists import read_shipped_list
from export.cutting_csv import write_buying_csv
from model.cutting.buying import list_buying
from model.cutting.order import build_order
from model.cutting.plan import plan_order
from model.cutting.task import Effort
from model.job import with_texts
from model.surround import plan_surround
from model.takeoff.anchors import plan_anchors
from model.takeoff.materials import list_fastened
from model.takeoff.takeoff import take_off
from render.buying_sheet import list_words


def test_nails_screws_and_anchors_stand_below_the_boards_with_size_and_count():
    surround = plan_surround(read_demo("brick"))
    order = build_order([("brick", surround)], read_shipped_list("example"))
    buying = list_buying(plan_order(order, Effort(lambda: True)))
    fastened = list_fastened(take_off(surround).materials)
    style = surround.job.about.length_style
    rows = list(csv.DictReader(io.StringIO(write_buying_csv(buying, style, fastened), newline="")))
    driven = [row for row in rows if row["heading"] == "Nails, screws and anchors"]
    assert rows[-len(driven) :] == driven
    assert len(rows) == len(buying.lines) + len(buying.used) + len(fastened)
    items = {row["item"]: int(row["count"]) for row in driven}
    assert items['Wood screws: no. 8, shelf to ledger, 1 3/4"'] == 6
    anchors = {item: count for item, count in items.items() if item.startswith("1/4 in.")}
    assert sum(anchors.values()) == len(plan_anchors(surround).anchors)


def test_what_is_not_to_be_had_stands_on_the_list_on_paper_and_as_a_table():
    job = with_texts(read_demo("bedroom"), [("shelf.kind", "plank"), ("shelf.thickness", "3")])
    order = build_order([("bedroom", plan_surround(job))], read_shipped_list("example"))
    plan = plan_order(order, Effort(lambda: True))
    buying, style = list_buying(plan), job.about.length_style
    rows = list(csv.DictReader(io.StringIO(write_buying_csv(buying, style), newline="")))
    (row,) = [row for row in rows if row["heading"] == "not to be had"]
    assert row["item"].startswith("S1, 3")
    assert (row["pieces"], row["cost"]) == ("1", "")
    assert any(
        words.startswith("Not to be had") and "S1" in words for words in list_words(plan, buying, style, None)
    )
