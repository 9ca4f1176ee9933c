"""Anchors are bought by what they go into and by length: nailer and depth behind it."""

from __future__ import annotations

import pytest

from app.demo import list_demos, read_demo
from model.cutting.supplies import ANCHORS
from model.job import with_texts
from model.reference.anchors import ANCHOR_DIAMETER, EMBEDMENT, SCREW_INTO_FRAMING, WALL_SKIN
from model.surround import plan_surround
from model.takeoff.anchor_materials import KINDS, choose_length, list_bought
from model.takeoff.anchor_places import MASONRY, WALL
from model.takeoff.anchors import plan_anchors
from model.takeoff.takeoff import take_off


@pytest.mark.parametrize("name", list_demos())
def test_as_many_are_bought_as_are_placed_and_each_is_long_enough(name):
    surround = plan_surround(read_demo(name))
    anchors, bought = plan_anchors(surround).anchors, list_bought(surround)
    for into in (MASONRY, WALL):
        own = [anchor for anchor in anchors if anchor.into == into]
        assert sum(each.count for each in bought if each.into == into) == len(own)
    for each in bought:
        behind = EMBEDMENT.value if each.into == MASONRY else WALL_SKIN.value + SCREW_INTO_FRAMING.value
        assert each.length >= each.through + behind
    lines = [line for line in take_off(surround).materials if line.name == ANCHORS]
    assert [(line.basis.count, line.basis.length) for line in lines] == [(b.count, b.length) for b in bought]
    assert sum(line.amount for line in lines) == len(anchors)


def test_the_brick_fronts_anchors_by_hand():
    """1 1/2 in. of wood and 1 5/8 in. of masonry, or 1/2 in. of skin and 1 1/2 in. of stud; the next sold."""
    found = {(b.into, b.length): b.count for b in list_bought(plan_surround(read_demo("brick")))}
    assert found == {(MASONRY, 3.25): 22, (WALL, 3.5): 12}


def test_a_thin_nailer_takes_a_shorter_one():
    """3/4 in. strips behind a shallow frieze: 2 3/8 in. at least."""
    surround = plan_surround(with_texts(read_demo("brick"), [("frieze.projection", "2")]))
    (strips,) = {surround.boards[i].extent("z") for i, m in enumerate(surround.marks) if m in ("N4", "N5")}
    assert strips == 0.75
    assert {(b.into, b.length) for b in list_bought(surround)} >= {(MASONRY, 2.75)}


def test_what_is_too_thick_for_any_takes_the_longest():
    assert choose_length(MASONRY, 9.0) == 6.0


def test_the_diameter_that_is_said_is_the_one_that_is_reckoned_with():
    assert ANCHOR_DIAMETER.value == 0.25
    assert all(words.startswith("1/4 in.") for words in KINDS.values())
    assert SCREW_INTO_FRAMING.value == 6 * ANCHOR_DIAMETER.value
