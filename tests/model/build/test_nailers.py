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


def test_the_strips_behind_the_frieze_leave_the_clearance_at_both_ends():
    layout, boards = _build(nailer__clearance="1/8")
    (ledger,) = (b for b in boards if b.role == "shelf nailer")
    assert ledger.length == 2 * (layout.column_inner - 0.125)
