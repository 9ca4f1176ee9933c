"""Left and right out of one way of building: both as if on the right, the left one turned over."""

from __future__ import annotations

from model.board import Stock, StockKind, block
from model.build.both_sides import build_both
from model.build.layout import lay_out
from model.job import default_job

STOCK = Stock(StockKind.BOARD, "poplar", 0.75)


def test_the_left_one_comes_first_and_is_the_right_one_turned_over():
    job = default_job()

    def build_one(side):
        return (block("post", f"{side.name} column", STOCK, "y", (20.0, 23.0), (0.0, 40.0), (0.0, 1.0)),)

    left, right = build_both(lay_out(job.site, job.design), build_one)
    assert (left.assembly, right.assembly) == ("left column", "right column")
    assert right.bounds == ((20.0, 0.0, 0.0), (23.0, 40.0, 1.0))
    assert left.bounds == ((-23.0, 0.0, 0.0), (-20.0, 40.0, 1.0))
