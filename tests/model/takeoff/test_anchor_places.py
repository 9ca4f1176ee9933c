"""Anchors are looked for over all of a nailer: on other lines in its width, and along it."""

from __future__ import annotations

from math import hypot

import pytest

from app.demo import read_demo
from model.job import with_texts
from model.surround import plan_surround
from model.takeoff.anchor_places import WALL, list_nailers, place_anchors

WIDE = {
    "opening.width": "84", "opening.height": "40", "facing.width": "110", "facing.height": "60",
    "hearth.width": "110", "shelf.height": "76", "column.projection": "6", "frieze.projection": "5",
    "room.left": "100", "room.right": "100",
}  # fmt: skip
"""Set in the shipped gas fireplace, nailers whose middle lies 2 mm off the facing's side."""


def _find(name, **texts):
    """The anchors of a shipped job by the mark of their nailer."""
    pairs = [(path.replace("__", "."), text) for path, text in texts.items()]
    surround = plan_surround(with_texts(read_demo(name), pairs))
    found = {surround.marks[i]: [] for i in list_nailers(surround)}
    for anchor in place_anchors(surround):
        found[surround.marks[anchor.board]].append(anchor)
    return surround, found


def test_a_ledger_over_the_facings_top_is_anchored_low_in_its_width():
    """The facing ends at 54 in., anchors keep 3 3/4 off: 50 1/4, while the ledger's middle is at 53 1/8."""
    surround, found = _find("brick", nailer__ledger="7 1/4", anchor__edge="3 3/4")
    low, high = surround.boards[surround.marks.index("N4")].bounds
    assert (low[1] + high[1]) / 2 == pytest.approx(53.125)
    assert {anchor.y for anchor in found["N4"]} == {50.25}
    # The outer ones would be at 35, 3 1/4 in. from the uprights' at 38 1/4: moved to 4 in. from those.
    assert [anchor.x for anchor in found["N4"]] == pytest.approx([-34.25, -21, -7, 7, 21, 34.25])


@pytest.mark.parametrize(("height", "count"), [("6 15/16", 0), ("7", 6)])
def test_an_anchor_keeps_half_an_inch_off_the_nailers_own_edge(height, count):
    """56 3/4 - 7 + 1/2 = 50 1/4, just where masonry begins to be sound."""
    _, found = _find("brick", nailer__ledger=height, anchor__edge="3 3/4")
    assert len(found["N4"]) == count


def test_an_upright_near_the_facings_side_is_anchored_off_its_middle():
    """From 37 3/4 to 39 1/4, and the facing ends at 42: 38 1/4 is 3 3/4 off it, 1/2 in. in the wood."""
    _, found = _find("brick", anchor__edge="3 3/4")
    assert {anchor.x for anchor in found["N1b"]} == {38.25}
    assert max(anchor.y for anchor in found["N1b"]) == pytest.approx(54 - 3.75)


def test_uprights_side_by_side_are_anchored_in_turn():
    """Their middles are 3 in. apart and anchors 4: the second's lie 2.65 in. higher or lower."""
    _, found = _find("bedroom")
    inner, outer = found["N1a"], found["N1b"]
    assert len(outer) == len(inner) == 4
    assert outer[0].y - inner[0].y == pytest.approx((4**2 - 3**2) ** 0.5)


def test_a_screw_beside_the_facing_keeps_off_it_though_the_nailer_straddles_its_edge():
    """2 mm off it, at 1399 mm, is where the middle of those nailers lies."""
    surround, found = _find("gas", **{path.replace(".", "__"): text for path, text in WIDE.items()})
    beside = [a for own in found.values() for a in own if a.into == WALL]
    assert beside
    for anchor in beside:
        off = max(abs(anchor.x) - surround.layout.facing_side, anchor.y - surround.layout.facing_top)
        assert off >= 0.75 - 1e-6
    assert not [a for a in found["N1b"] if a.y < surround.layout.facing_top]


def test_an_anchor_that_meets_a_bolt_is_moved_along_its_nailer():
    _, before = _find("too-close")
    at = before["N3"][1]
    across, side = f"{abs(at.x):g}", "left" if at.x < 0 else "right"
    texts = {"bolt_one__across": f"-{across}" if side == "left" else across, "bolt_one__up": f"{at.y:g}"}
    surround, after = _find("too-close", **texts)
    (bolt,) = surround.layout.behind
    keep = surround.job.design.anchor.edge + (bolt.x[1] - bolt.x[0]) / 2
    assert len(after["N3"]) == len(before["N3"])
    assert all(hypot(a.x - at.x, a.y - at.y) >= keep - 1e-6 for a in after["N3"])
