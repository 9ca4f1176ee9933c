"""Shared cuts: what they save, and that the order found shares as many as any order does."""

from __future__ import annotations

from itertools import permutations, product
from math import hypot

import pytest

from model.cutting.mitre import HIGH, LOW, arrange, count_joints, saving, shortest
from model.cutting.task import Wanted
from tests.model.cutting.checker import lane_end

WIDTH, KERF = 10, 3
SORTS = {
    LOW | HIGH: Wanted("both", 40, WIDTH, 1, WIDTH, WIDTH),
    LOW: Wanted("low", 40, WIDTH, 1, WIDTH, 0),
    HIGH: Wanted("high", 40, WIDTH, 1, 0, WIDTH),
    0: Wanted("square", 40, WIDTH),
}


@pytest.mark.parametrize("mitre", [1, 4, 10, 24, 100])
def test_a_shared_cut_saves_the_mitre_less_what_the_slanting_blade_takes_more(mitre):
    exact = mitre + KERF - KERF * hypot(mitre, WIDTH) / WIDTH
    assert exact - 1 < saving(mitre, WIDTH, KERF) <= max(exact, 0)


def test_a_blade_thicker_than_the_piece_is_wide_saves_nothing():
    assert saving(40, 10, 20) == 0


@pytest.mark.parametrize("numbers", list(product(range(4), range(3), range(3), range(2))))
def test_no_order_shares_more_cuts(numbers):
    pieces = [piece for piece, n in zip(SORTS.values(), numbers, strict=True) for _ in range(n)]
    if not 1 <= len(pieces) <= 5:
        return
    order, turned = arrange(pieces, WIDTH, WIDTH)
    assert sorted(p.key for p in order) == sorted(p.key for p in pieces)
    found = lane_end(order, turned, WIDTH, KERF)
    turns = list(product((False, True), repeat=len(pieces)))
    least = min(lane_end(each, turn, WIDTH, KERF) for each in set(permutations(pieces)) for turn in turns)
    assert found == pytest.approx(least)
    planned = 43 * len(pieces) - KERF - saving(WIDTH, WIDTH, KERF) * count_joints(*numbers[:3])
    assert found <= planned < found + len(pieces)
    assert shortest(pieces, WIDTH, KERF)[0] == planned


def test_a_piece_shorter_than_its_mitres_shares_none():
    stub = Wanted("stub", 15, WIDTH, 1, WIDTH, WIDTH)
    assert shortest([stub, stub], WIDTH, KERF) == (33, 0)
