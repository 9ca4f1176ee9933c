"""Hearth extension of masonry fireplaces.

Sources: IRC 2006 R1001.10 and IRC 2015 table R1001.1 (under 6 sq ft of opening 16 in. in front and 8 in.
at each side, 6 sq ft and more 20 and 12 in.); R1001.9.2 (2 in. thick; 3/8 in. where the firebox's floor
is 8 in. or more above the extension, wording of IBC 2111.9.2); NFPA 211 11.3.2 to 11.3.4 (the same
figures, the front from the facing). Ontario Building Code 9.22.5.1 and .2, the text of Canada's NBC (400 mm
in front of the facing and 200 mm at each side; a fire floor more than 150 mm up 50 mm more, and over 300 mm
25 mm more for each 50 mm). ABCB Housing Provisions 2025 12.4.2 (300 and 150 mm; no combustible floor within
150 mm below the hearth's top). Approved Document J 2010, Diagrams 24 and 25, as quoted second-hand (500 and
150 mm, 125 mm thick). Solon, Ohio, codified ordinances: 20 in. from the outer face and 16 in. at each side,
4 in. thick, whatever the opening.
"""

from __future__ import annotations

import pytest

from model.check.all import check_surround
from model.check.finding import Finding, Status
from model.check.hearth_rules import least_extension, least_thickness, nbc_front
from model.reference.sourced import Standing
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
def test_the_least_hearth_goes_by_the_openings_area(width, height, area, front, side, hearth_width):
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
def test_the_least_thickness_goes_by_the_rise_of_the_firebox_floor(rise, least):
    """R1001.9.2 and its exception."""
    assert least_thickness(rise).value == least


@pytest.mark.parametrize(
    ("thickness", "status"), [("2", Status.PASS), ("1 15/16", Status.FAIL), ("4", Status.PASS)]
)
def test_hearth_is_2_in_thick_in_front(thickness, status):
    """R1001.9.2; NFPA 211 11.3.2."""
    assert _hearth("thickness", hearth__thickness=thickness).status is status


@pytest.mark.parametrize(("added", "measured"), [("0", 20), ("3/4", 19.25)])
def test_slips_to_be_laid_take_from_a_hearth_that_counts_from_the_facing(added, measured):
    """NFPA 211 11.3.4; arithmetic. The IRC counts from the opening itself, and loses nothing."""
    by_nfpa = _hearth("front", site__rule="nfpa211", hearth__depth="20", facing__added=added)
    assert by_nfpa.measured == measured
    assert by_nfpa.status is (Status.PASS if measured == 20 else Status.FAIL)
    assert _hearth("front", site__rule="irc", hearth__depth="20", facing__added=added).status is Status.PASS
    strictest = _hearth("front", site__rule="strictest", hearth__depth="20", facing__added=added)
    assert strictest.status is by_nfpa.status


MM = 1 / 25.4


@pytest.mark.parametrize(
    ("rise", "front"),
    [(0, 400), (150, 400), (151, 450), (300, 450), (301, 475), (350, 475), (400, 500), (450, 525)],
)
def test_canadas_hearth_goes_by_the_rise_of_the_fires_floor(rise, front):
    """OBC 9.22.5.1.(2), mm; that a part of a step counts whole is from memory, and says so."""
    figure = nbc_front(rise * MM)
    assert (figure.value, figure.unit) == (front, "mm")
    assert figure.standing is (Standing.FROM_MEMORY if rise > 300 else Standing.PUBLISHED)


COUNTRIES = [
    # rules, mm in front, beyond each side, thick or down to what burns; clause
    ("canada", 400, 200, 50, "NBC 9.22.5.1"),
    ("australia", 300, 150, 150, "ABCB 12.4.2"),
    ("england", 500, 150, 125, "AD J"),
]


@pytest.mark.parametrize(("rule", "front", "side", "thick", "clause"), COUNTRIES)
def test_each_country_asks_for_its_own_hearth_and_not_a_millimetre_less(rule, front, side, thick, clause):
    sizes = {"front": ("hearth__depth", front), "thickness": ("hearth__thickness", thick)}
    for part, (path, least) in sizes.items():
        enough = _hearth(part, site__rule=rule, **{path: f"{least} mm"})
        short = _hearth(part, site__rule=rule, **{path: f"{least - 1} mm"})
        assert (enough.status, short.status) == (Status.PASS, Status.FAIL)
        assert enough.limit == pytest.approx(least / 25.4)
        assert enough.rule.startswith(clause.split()[0])
    wide = 36 * 25.4 + 2 * side
    assert _hearth("sides", site__rule=rule, hearth__width=f"{wide} mm").status is Status.PASS
    assert _hearth("sides", site__rule=rule, hearth__width=f"{wide - 2} mm").status is Status.FAIL


def test_a_high_firebox_floor_lets_the_slab_be_thin_by_the_irc_alone():
    """R1001.9.2 exception, as IBC 2111.9.2 has it: 8 in. up, 3/8 in. thick. NFPA 211 11.3.2 knows none."""
    thin = {"opening__height": "40", "opening__sill": "8", "hearth__thickness": "3/8"}
    assert _hearth("thickness", site__rule="irc", **thin).status is Status.PASS
    assert _hearth("thickness", site__rule="nfpa211", **thin).status is Status.FAIL
    assert _hearth("thickness", site__rule="strictest", **thin).status is Status.FAIL


def test_a_place_may_ask_for_its_own_hearth():
    """Solon, Ohio: 20 and 16 in., 4 in. thick, also before a small opening."""
    own = {
        "site__rule": "local",
        "local__hearth_front": "20",
        "local__hearth_side": "16",
        "local__hearth_thickness": "4",
        "local__source": "Solon, Ohio, codified ordinances",
        "opening__width": "30",
        "opening__height": "26",
        "hearth__depth": "20",
        "hearth__width": "62",
        "hearth__thickness": "4",
    }
    found = [_hearth(part, **own) for part in ("front", "sides", "thickness")]
    assert [f.limit for f in found] == [20, 16, 4]
    assert {f.status for f in found} == {Status.PASS}
    assert {f.source for f in found} == {"Solon, Ohio, codified ordinances"}
    assert _hearth("sides", **(own | {"hearth__width": "61 1/2"})).status is Status.FAIL
