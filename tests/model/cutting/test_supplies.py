"""Packs in words and back: the unit is said after the figure and may be left away or said of one."""

from __future__ import annotations

import pytest

from model.cutting.supplies import ANCHORS, SORTS, USUAL_SUPPLIES
from model.errors import Refused
from model.units import INCHES_16


@pytest.mark.parametrize("text", ["25", "25 anchors", " 25 anchor "])
def test_a_pack_is_read_with_its_unit_or_without(text: str):
    assert SORTS[ANCHORS].parse_pack(text, "pack", INCHES_16) == 25


@pytest.mark.parametrize("supply", USUAL_SUPPLIES, ids=lambda supply: supply.name)
def test_every_usual_pack_is_read_back_as_it_is_written(supply):
    sort = SORTS[supply.name]
    text = sort.format_pack(supply.pack, INCHES_16)
    assert sort.parse_pack(text, "pack", INCHES_16) == pytest.approx(supply.pack)


def test_another_unit_is_refused():
    with pytest.raises(Refused, match="pack"):
        SORTS[ANCHORS].parse_pack("25 discs", "pack", INCHES_16)
