"""Sizes that lumber and panels are sold in, typed in from the sources named beside them."""

from __future__ import annotations

import pytest

from model.board import StockKind
from tests.write_stock_lists import SOFTWOODS, build_usual

PS_20 = {2: 1.5, 3: 2.5, 4: 3.5, 6: 5.5, 8: 7.25, 10: 9.25, 12: 11.25}
"""American Softwood Lumber Standard PS 20, dry dressed face widths, in., as given in size charts."""
HARDWOOD = {4: 3.5, 6: 5.5, 8: 7.25, 10: 9.25, 12: 11.25}
"""Dealer's chart of 4/4 hardwood surfaced four sides, in.; 7 1/2 there for nominal 8 reads as a misprint."""
SHEET = (48.0, 96.0)
"""US PS 1: 4 by 8 ft."""
FRAMING_FEET = set(range(8, 21, 2))
"""Southern Forest Products Association, specification guidelines: 8 to 20 ft by 2 ft."""
USUAL = build_usual().sold


def test_softwood_boards_have_the_standards_widths():
    for wood in SOFTWOODS:
        rows = [r for r in USUAL if (r.kind, r.wood, r.thickness) == (StockKind.BOARD, wood, 0.75)]
        assert {r.name: r.width for r in rows} == {f"1x{n}": width for n, width in PS_20.items()}


def test_hardwood_boards_have_the_charts_widths():
    woods = {row.wood for row in USUAL if row.kind is StockKind.BOARD} - set(SOFTWOODS)
    assert len(woods) == 8
    for wood in woods:
        rows = [r for r in USUAL if (r.kind, r.wood) == (StockKind.BOARD, wood)]
        assert {r.name: r.width for r in rows} == {f"1x{n}": width for n, width in HARDWOOD.items()}


@pytest.mark.parametrize(("name", "thickness"), [("1x", 0.75), ("5/4x", 1.0)])
def test_softwood_has_the_standards_thickness(name: str, thickness: float):
    """PS 20: nominal 1 in. is 3/4 in. dry dressed, 1 1/4 is 1."""
    rows = [r for r in USUAL if r.kind is StockKind.BOARD and r.name.startswith(name)]
    assert {r.thickness for r in rows} == {thickness}


def test_framing_is_sold_in_the_lengths_and_sizes_published():
    rows = [r for r in USUAL if r.kind is StockKind.FRAMING and r.name.startswith("2x")]
    assert {r.length / 12 for r in rows} <= FRAMING_FEET
    assert {(r.name, r.thickness, r.width) for r in rows} == {
        ("2x2", 1.5, 1.5), ("2x3", 1.5, 2.5), ("2x4", 1.5, 3.5), ("2x6", 1.5, 5.5), ("2x8", 1.5, 7.25)
    }  # fmt: skip


def test_whole_sheets_are_four_by_eight_feet():
    rows = [r for r in USUAL if r.kind is StockKind.PANEL]
    assert max((r.width, r.length) for r in rows) == SHEET
