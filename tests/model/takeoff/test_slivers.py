"""What is too narrow to be real is taken off shapes, and nothing else is."""

from __future__ import annotations

import numpy as np
import pytest
from shapely import Polygon, box

from model.takeoff.slivers import without_slivers

RETURN_BEHIND_STILE = Polygon(
    [
        (96.42256164550781, 113.84881906499115),
        (96.42256164550781, 113.84882029357404),
        (96.23506259918213, 113.84882029357404),
        (96.23506259918213, 114.22381906499115),
        (96.6100632660659, 114.22381906499115),
        (96.6100632660659, 176.75415088795157),
        (95.79756326606591, 176.75415088795157),
        (95.79756326606591, 176.75415112843373),
        (96.23506259918213, 176.75415112843373),
        (96.23506259918213, 177.12915088795157),
        (96.61006326606591, 177.12915088795157),
        (96.61006326606591, 113.84881906499115),
    ]
)
"""Two ends of a return's face that show, and between them a strip of rounding 62 in. long."""


def _without(shape):
    return without_slivers(np.array([shape], dtype=object))[0]


def test_a_strip_goes_though_offsets_leave_out_corners_and_the_area_stays_the_same():
    ends = _without(RETURN_BEHIND_STILE)
    assert sorted(part.bounds[3] - part.bounds[1] for part in ends.geoms) == pytest.approx(
        [0.375] * 2, abs=1e-5
    )


def test_a_strip_along_an_edge_goes_though_its_two_ends_are_whole():
    """A face that another one lies on from 3 to 6, its edge a hair off that one's."""
    face = Polygon([(0, 0), (22, 1e-9), (22, -3), (6, -3), (6, -1e-9), (3, -1e-9), (3, -3), (0, -3)])
    assert [part.area for part in _without(face).geoms] == pytest.approx([48, 9])


def test_a_shape_without_strips_is_the_same_shape():
    plain, holed = box(0, 0, 3, 2), box(0, 0, 9, 9).difference(box(2, 2, 5, 5))
    assert list(without_slivers(np.array([plain, holed], dtype=object))) == [plain, holed]


def test_nothing_is_left_of_a_sliver():
    assert _without(box(0, 0, 30, 1 / 300)).is_empty
