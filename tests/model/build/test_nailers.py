"""The wood fixed to the masonry: what is left free beside it, and how its sizes follow what is asked."""

from __future__ import annotations

import pytest

from model.build.layout import lay_out
from model.build.surround import build_surround
from model.job import default_job, with_texts


def _build(**texts):
    job = with_texts(default_job(), [(path.replace("__", "."), text) for path, text in texts.items()])
    return lay_out(job.site, job.design), build_surround(job.site, job.design)


def _right_uprights(boards):
    return sorted(
        (b.bounds[0][0], b.bounds[1][0]) for b in boards if b.role == "column nailer" and b.bounds[0][0] > 0
    )


@pytest.mark.parametrize("free", ["0", "1/16", "1/8", "1/4"])
def test_a_columns_nailers_leave_the_clearance_to_both_returns(free):
    layout, boards = _build(nailer__clearance=free)
    (low, _), (_, high) = _right_uprights(boards)
    inner, outer = layout.right.inner + layout.board, layout.right.outer - layout.board
    number = {"0": 0, "1/16": 0.0625, "1/8": 0.125, "1/4": 0.25}[free]
    assert low - inner == pytest.approx(number)
    assert outer - high == pytest.approx(number)


def test_one_nailer_fills_a_narrow_column_but_for_the_clearance():
    """A column 4 1/2 in. wide of 3/4 in. boards is 3 in. wide inside; 1/8 in. stays free on each side."""
    _, boards = _build(column__width="4 1/2", nailer__clearance="1/8")
    ((low, high),) = _right_uprights(boards)
    assert high - low == pytest.approx(2.75)


def test_uprights_ledger_and_cleat_have_the_sizes_asked_for():
    _, boards = _build(
        nailer__width="2 1/2",
        nailer__ledger="2 1/2",
        nailer__cleat="2",
        column__width="9",
        frieze__height="12",
    )
    assert [high - low for low, high in _right_uprights(boards)] == [2.5, 2.5]
    tall = {b.role: b.extent("y") for b in boards if b.role in ("shelf nailer", "soffit nailer")}
    assert tall == {"shelf nailer": 2.5, "soffit nailer": 2.0}


def test_strips_that_the_frieze_cannot_hide_are_noted_with_what_is_built():
    """A frieze 5 high over a 3/4 soffit hides 4 1/4; either strip has half of it."""
    layout, boards = _build(frieze__height="5", nailer__cleat="3", frieze__kind="plain")
    noted = {s.path: (s.asked, s.built) for s in layout.shortfalls}
    assert noted == {"nailer.ledger": (3.5, 2.125), "nailer.cleat": (3, 2.125)}
    assert [b.extent("y") for b in boards if b.role in ("shelf nailer", "soffit nailer")] == [2.125, 2.125]


def test_no_strip_is_missed_where_none_is_built():
    layout, boards = _build(frieze__height="5", frieze__projection="3/4", frieze__kind="plain")
    assert layout.strips == (0, 0)
    assert not [s for s in layout.shortfalls if s.path.startswith("nailer")]
    assert not [b for b in boards if b.role == "shelf nailer"]


def test_the_strips_behind_the_frieze_leave_the_clearance_at_both_ends():
    layout, boards = _build(nailer__clearance="1/8")
    (ledger,) = (b for b in boards if b.role == "shelf nailer")
    assert ledger.length == 2 * (layout.column_inner - 0.125)
