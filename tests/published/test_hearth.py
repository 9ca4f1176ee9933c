"""Hearth extension of masonry fireplaces.

Sources: IRC 2006 R1001.10 and IRC 2015 table R1001.1 (under 6 sq ft of opening 16 in. in front and 8 in.
at each side, 6 sq ft and more 20 and 12 in.); R1001.9.2 (2 in. thick; 3/8 in. where the firebox's floor
is 8 in. or more above the extension, wording of IBC 2111.9.2); NFPA 211 11.3.2 to 11.3.4 (the same
figures, the front from the facing).
"""

from __future__ import annotations

import pytest

from model.check.all import check_surround
from model.check.finding import Finding, Status
from model.check.hearth import least_extension, least_thickness
from model.site import Opening
from tests.wood import place_above, surround_of

EXTENSIONS = [
    # Opening width and height, square feet, least front, side and hearth width; arithmetic from R1001.10.
    (30, 26, 5.4167, 16, 8, 46),  # 5.42 sq ft also on a code explanation page, IRC 2018
    (36, 28, 7.0, 20, 12, 60),  # also worked there
    (36, 30, 7.5, 20, 12, 60),
    (36, 24, 6.0, 20, 12, 60),  # the boundary belongs to the larger class: "6 sq ft or larger"
    (35.75, 24, 5.9583, 16, 8, 51.75),
    (30, 28, 5.8333, 16, 8, 46),
    (42, 32, 9.3333, 20, 12, 66),
    (24, 24, 4.0, 16, 8, 40),
    # An appliance manual: about 8 sq ft needs 20 in. in front and 12 in. at the sides.
    (40, 28.8, 8.0, 20, 12, 64),
]


def _hearth(part: str, **texts: str) -> Finding:
    findings = check_surround(surround_of(place_above(0.75, 30), **texts))
    (finding,) = (f for f in findings if f.part == f"hearth, {part}")
    return finding


@pytest.mark.parametrize(("width", "height", "area", "front", "side", "hearth_width"), EXTENSIONS)
def test_least_hearth_by_the_opening(width, height, area, front, side, hearth_width):
    assert width * height / 144 == pytest.approx(area, abs=5e-5)
    least = least_extension(Opening(width, height))
    assert (least.front.value, least.side.value) == (front, side)
    size = {"opening__width": str(width), "opening__height": str(height)}
    assert _hearth("front", **size, hearth__depth=str(front)).status is Status.PASS
    assert _hearth("front", **size, hearth__depth=str(front - 0.0625)).status is Status.FAIL
    assert _hearth("sides", **size, hearth__width=str(hearth_width)).status is Status.PASS
    assert _hearth("sides", **size, hearth__width=str(hearth_width - 0.125)).status is Status.FAIL


def test_an_opening_measured_in_millimetres_meets_the_boundary_too():
    """914.4 x 609.6 mm is 36 x 24 in., 864 sq in."""
    assert least_extension(Opening(914.4 / 25.4, 609.6 / 25.4)).front.value == 20


def test_a_hearth_of_20_in_behind_slips_three_quarters_thick_is_three_quarters_short():
    """NFPA 211 11.3.4 measures in front of the facing; arithmetic: 20 - 3/4 = 19 1/4 in."""
    finding = _hearth("front", site__rule="nfpa211", hearth__depth="19 1/4")
    assert finding.status is Status.FAIL
    assert finding.measured - finding.limit == -0.75
    assert finding.rule == "NFPA 211 11.3"


@pytest.mark.parametrize(("rise", "least"), [(0, 2), (7.99, 2), (8, 0.375), (12, 0.375)])
def test_least_thickness_by_the_rise_of_the_firebox_floor(rise, least):
    """R1001.9.2 and its exception."""
    assert least_thickness(rise).value == least


@pytest.mark.parametrize(
    ("thickness", "status"), [("2", Status.PASS), ("1 15/16", Status.FAIL), ("4", Status.PASS)]
)
def test_hearth_is_2_in_thick_in_front(thickness, status):
    """R1001.9.2; NFPA 211 11.3.2."""
    assert _hearth("thickness", hearth__thickness=thickness).status is status
