"""Outlines lie where the boards are drawn, and the board nearest to the viewer is the one pointed at."""

from __future__ import annotations

import pytest

from model.board import End, Stock, StockKind, block
from model.job import default_job
from model.surround import plan_surround
from render.board_outline import find_board, outline_board, place_point
from render.views import VIEWS

STOCK = Stock(StockKind.BOARD, 1.0, "poplar")
BLOCK = block("shelf board", "shelf", STOCK, "x", (-5.0, 7.0), (50.0, 52.0), (0.0, 3.0))


@pytest.mark.parametrize(
    ("view", "box"),
    [
        ("front", (-5, 50, 7, 52)),
        ("side", (-3, 50, 0, 52)),
        ("vertical_section", (-3, 50, 0, 52)),
        ("plan", (-5, -3, 7, 0)),
        ("plan_section", (-5, -3, 7, 0)),
    ],
)
def test_a_blocks_outline_is_its_box_in_each_view(view: str, box: tuple[float, float, float, float]):
    ring = outline_board(BLOCK, view)
    xs, ys = [x for x, _ in ring], [y for _, y in ring]
    assert len(ring) == 4
    assert (min(xs), min(ys), max(xs), max(ys)) == box


def test_a_mitred_board_has_a_slanting_outline():
    from dataclasses import replace

    mitred = replace(BLOCK, high=End(4.0, 0.0, 1.0))
    ring = set(outline_board(mitred, "plan"))
    assert ring == {(-5.0, 0.0), (-5.0, -3.0), (4.0, 0.0), (7.0, -3.0)}


def test_outlines_run_counter_clockwise():
    for view in VIEWS:
        ring = outline_board(BLOCK, view)
        area = sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in zip(ring, ring[1:] + ring[:1], strict=True))
        assert area > 0


def test_the_board_in_front_is_the_one_pointed_at():
    surround = plan_surround(default_job())
    layout = surround.layout
    boards = dict(zip(surround.marks, surround.boards, strict=True))
    middle = (layout.column_inner + layout.right.outer) / 2
    side = layout.right
    plinth = boards[find_board(surround, "front", (middle, (side.base + side.plinth_top) / 2))]
    assert "plinth" in plinth.role
    shelf = boards[find_board(surround, "front", (0.0, layout.shelf_top - 0.25))]
    assert shelf.assembly == "shelf"
    assert find_board(surround, "front", (0.0, layout.opening_top / 2)) == ""
    assert find_board(surround, "plan", (0.0, 30.0)) == ""


def test_a_point_of_the_room_lies_in_every_view_where_its_board_does():
    for view in VIEWS:
        ring = outline_board(BLOCK, view)
        x, y = place_point((1.0, 51.0, 1.5), view)
        assert min(p[0] for p in ring) < x < max(p[0] for p in ring)
        assert min(p[1] for p in ring) < y < max(p[1] for p in ring)
