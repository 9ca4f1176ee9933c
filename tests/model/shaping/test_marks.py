"""What is worth stopping at really is: a board as sold needs no rip, a proportion comes out as advised."""

from __future__ import annotations

import pytest

from app.demo import read_demo
from app.stock_lists import read_shipped_list
from model.board import StockKind
from model.check.proportion import list_guides
from model.cutting.pieces import list_pieces
from model.cutting.stock_list import StockList
from model.job import Job
from model.shaping.grip import Grip, move_edge
from model.shaping.grips import list_grips
from model.shaping.marks import list_marks
from model.surround import plan_surround

BRICK = read_demo("brick")
LIST = read_shipped_list()


def _grip(path: str, view: str = "front", job: Job = BRICK) -> Grip:
    return next(grip for grip in list_grips(plan_surround(job), view) if grip.path == path)


def _bare_widths(job: Job) -> set[float]:
    pieces = list_pieces("", plan_surround(job), lambda _material: 11.25)
    return {round(piece.bare, 4) for piece in pieces if piece.material.kind is StockKind.BOARD}


@pytest.mark.parametrize(
    ("path", "view"),
    [("column.stile", "front"), ("frieze.rail", "front"), ("plinth.height", "front"),
     ("column.projection", "side"), ("shelf.thickness", "front")],
)  # fmt: skip
def test_at_a_boards_width_a_piece_needs_no_rip(path: str, view: str):
    grip = _grip(path, view)
    marks = [mark for mark in list_marks(BRICK, grip, LIST) if mark.reason.endswith("is sold")]
    assert marks
    for mark in marks:
        name = mark.reason.split(" as wide as a ")[1].split()[0]
        width = next(row.width for row in LIST.sold if row.name == name)
        assert round(width, 4) in _bare_widths(move_edge(BRICK, grip, mark.value)), mark


def test_only_widths_of_the_list_in_use_count():
    assert not [m for m in list_marks(BRICK, _grip("column.stile"), StockList()) if "sold" in m.reason]


@pytest.mark.parametrize("path", ["column.width", "frieze.height", "shelf.height"])
def test_at_a_proportion_the_design_is_as_advised_to_the_tapes_fraction(path: str):
    grip = _grip(path)
    marks = [mark for mark in list_marks(BRICK, grip, StockList()) if mark.reason.startswith("proportion")]
    assert marks
    for mark in marks:
        guides = list_guides(plan_surround(move_edge(BRICK, grip, mark.value)))
        named = [g for g in guides if g.name.lower() == mark.reason.removeprefix("proportion: ").lower()]
        near = min(abs(g.own - end) for g in named for end in (g.advised_low, g.advised_high))
        assert near <= 1.5 / 16, mark


def test_a_chosen_proportion_counts_alone_and_on_every_edge_it_hangs_on():
    name = "Frieze to column width, three quarters"
    for path in ("frieze.height", "column.width"):
        reasons = {mark.reason for mark in list_marks(BRICK, _grip(path), StockList(), guide=name)}
        assert reasons == {"proportion: frieze to column width, three quarters"}, path


def test_no_mark_lies_outside_its_row():
    for grip in list_grips(plan_surround(BRICK), "front"):
        for mark in list_marks(BRICK, grip, LIST):
            move_edge(BRICK, grip, mark.value)
