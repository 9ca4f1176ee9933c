"""Words for what could not be had: the piece, its material, why, and what would do."""

from __future__ import annotations

from model.board import StockKind
from model.cutting.pieces import Material
from model.cutting.plan import plan_order
from model.cutting.wording import describe_material, describe_short
from model.units import FEET_INCHES_16
from tests.model.cutting.yard import order_of, piece, sold


def test_a_piece_too_long_is_named_with_what_would_hold_it():
    plan = plan_order(order_of([piece("A1", 100, 3)], sold("1x4", 3.5, 96, 1000), trim_end=0.5))
    (short,) = plan.short
    what, why = describe_short(short, "A1", FEET_INCHES_16).split(": ")
    assert what == 'A1, 3/4" yellow poplar board'
    assert why == 'longer than any that is listed. One takes 3" wide and 8\'-5" long at least.'


def test_a_moulding_is_named_with_its_section():
    cove = Material(StockKind.MOULDING, "maple", 17 / 32, "Ovolo and fillet", 0.625)
    assert describe_material(cove, FEET_INCHES_16) == '17/32" sugar maple moulding, ovolo and fillet'
