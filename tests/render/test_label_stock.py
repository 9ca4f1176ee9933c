"""Labels lie on their page, beside each other and not over each other, whatever size is typed."""

from __future__ import annotations

import pytest
from shapely.geometry import box

from model.errors import Refused
from model.units import MILLIMETRES
from render.label_stock import PAGES, STOCKS, LabelStock, find_stock, parse_stock


def _boxes(stock: LabelStock):
    return [box(x, y, x + stock.width, y + stock.height) for x, y in stock.corners()]


@pytest.mark.parametrize("name", STOCKS)
def test_every_shipped_sheet_holds_its_labels_side_by_side(name: str):
    stock = find_stock(name)
    page = box(0, 0, *PAGES[stock.paper]).buffer(1e-9)
    boxes = _boxes(stock)
    assert len(boxes) == stock.count == int(name.rpartition("-")[2])
    assert all(page.contains(each) for each in boxes)
    assert all(a.intersection(b).area < 1e-9 for a in boxes for b in boxes if a is not b)


def test_labels_of_ones_own_lie_where_it_is_said():
    stock = parse_stock("letter", "2 x 1", "3x8", "1/2 x 3/4", "2 1/4 x 1 1/8")
    corners = list(stock.corners())
    assert corners[0] == pytest.approx((0.5, 11 - 0.75 - 1))
    assert corners[1] == pytest.approx((2.75, 11 - 0.75 - 1))
    assert corners[3] == pytest.approx((0.5, 11 - 0.75 - 1 - 1.125))


def test_without_edges_they_lie_in_the_middle():
    stock = parse_stock("a4", "60 x 30", "3 x 9", style=MILLIMETRES)
    corners = list(stock.corners())
    left, right = corners[0][0], corners[-1][0] + stock.width
    assert left == pytest.approx(PAGES["a4"][0] - right)
    assert (left * 25.4, stock.width * 25.4) == pytest.approx((15, 60))


@pytest.mark.parametrize(
    ("size", "grid", "edges", "pitch", "field"),
    [
        ("2", "3x10", "", "", "label size"),
        ("two x 1", "3x10", "", "", "label size"),
        ("1/2 x 1/4", "3x10", "", "", "label size"),
        ("2 x 1", "3", "", "", "label grid"),
        ("2 x 1", "0x4", "", "", "label grid"),
        ("2 x 1", "-1x4", "", "", "label grid"),
        ("2 x 1", "3x99999999999", "", "", "label grid"),
        ("2 x 1", "3x10", "", "1 x 1", "label pitch"),
        ("2 x 1", "4x10", "1 x 0", "", "labels"),
        ("2 x 1", "3x12", "", "", "labels"),
    ],
)
def test_what_cannot_be_is_refused_by_its_field(size, grid, edges, pitch, field):
    with pytest.raises(Refused) as refusal:
        parse_stock("letter", size, grid, edges, pitch)
    assert refusal.value.field == field


def test_an_unknown_name_says_which_there_are():
    with pytest.raises(Refused, match="letter-30"):
        find_stock("large")
