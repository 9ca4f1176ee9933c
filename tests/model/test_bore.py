"""Holes: where they lie in the room, whichever way they run, and on the other side of the centre line."""

from __future__ import annotations

import pytest

from model.bore import CROSS, Bore


def hole(axis: str) -> Bore:
    """An oblong one off both middles, so that no two of its sizes can be taken for each other."""
    return Bore(axis, (3.0, 5.0), (1.0, 2.0), (7.0, 8.0), False, 2.0, (3.1, 5.2))


def corners(bore: Bore) -> set[tuple[float, float, float]]:
    return {
        tuple(round(x, 9) for x in bore.place(point, along)) for point in bore.ring for along in bore.span
    }


@pytest.mark.parametrize("axis", CROSS)
def test_a_mirrored_hole_has_every_corner_and_its_middle_across_the_centre_line(axis):
    bore = hole(axis)
    assert corners(bore.mirrored()) == {(-x, y, z) for x, y, z in corners(bore)}
    x, y, z = bore.middle
    assert bore.mirrored().middle == pytest.approx((-x, y, z))
    assert bore.mirrored().mirrored() == bore


@pytest.mark.parametrize("axis", CROSS)
def test_a_moved_hole_has_every_corner_moved_alike(axis):
    bore, (dx, dy, dz) = hole(axis), (0.5, -2.0, 4.0)
    assert corners(bore.moved((dx, dy, dz))) == {(x + dx, y + dy, z + dz) for x, y, z in corners(bore)}
