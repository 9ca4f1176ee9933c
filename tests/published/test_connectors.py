"""Connector sizes, and the least round hole each passes.

Sources: HDMI 1.0, as a connector knowledge page gives it; the diagonals are worked by hand from the sides.
"""

from __future__ import annotations

import pytest

from model.reference.connectors import CONNECTORS, diagonal
from model.reference.sourced import Standing


@pytest.mark.parametrize(
    ("width", "height", "least"),
    # The bare shell of HDMI type A is 13.9 by 4.45 mm (HDMI 1.0); its body and a grounded plug as measured.
    [(13.9, 4.45, 14.59), (21, 11, 23.71), (26, 25, 36.07)],
)
def test_a_round_hole_is_at_least_the_sections_diagonal(width, height, least):
    assert round(diagonal(width, height), 2) == least


@pytest.mark.parametrize(
    ("key", "width", "height"),
    # HDMI 1.0 and later, shells of types A, C and D, mm, on a connector knowledge page.
    [("hdmi_shell", 13.9, 4.45), ("hdmi_mini", 10.42, 2.42), ("hdmi_micro", 6.4, 2.8)],
)
def test_shells_of_video_connectors_measure_what_their_standards_say(key, width, height):
    connector = CONNECTORS[key]
    assert (connector.width, connector.height) == (width, height)
    assert connector.standing is Standing.PUBLISHED
    assert not connector.mains


def test_what_no_standard_was_read_for_says_so():
    for key in ("mains_plug", "hdmi_body"):
        assert CONNECTORS[key].standing is Standing.FROM_MEMORY
