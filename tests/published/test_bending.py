"""Bending and sag against a standard's table of shelves, and fasteners against worked examples.

Sources: Architectural Woodwork Standards 2009, section 10, 4.4.14.10: longest shelves at L/144, rounded down,
one to the nearest; NDS commentary of the American Wood Council on creep, 3.5.2; a page of design values for
wood screws (NDS withdrawal 2850 G\N{SUPERSCRIPT TWO} D: 109 lb for G 0.45 and 0.190 in.).
"""

from __future__ import annotations

import pytest

from model.reference.bending import (
    CREEP,
    EYE_PER_FOOT,
    FULL_LOAD,
    HEAVY,
    LEANING,
    MANTEL_LOAD,
    SAG_PER_FOOT,
    STIFFNESS,
    sag_between,
    sag_under,
    screw_holds,
)
from model.reference.nails import SCREW_DIAMETER
from model.reference.sourced import Standing

SHELVES = [
    # stiffness psi, thickness in., load lb per sq ft, longest shelf in.
    (950_000, 0.75, 40, 40), (950_000, 0.75, 50, 37), (950_000, 1.0, 40, 53), (950_000, 1.0, 50, 49),
    (1_800_000, 0.75, 40, 49), (1_800_000, 0.75, 50, 46), (1_800_000, 1.0, 40, 66), (1_800_000, 1.0, 50, 61),
    (1_820_000, 0.75, 40, 49), (1_820_000, 0.75, 50, 46), (1_820_000, 1.0, 40, 66), (1_820_000, 1.0, 50, 61),
]  # fmt: skip


@pytest.mark.parametrize(("stiffness", "thick", "load", "longest"), SHELVES)
def test_the_longest_shelf_sags_a_144th_of_its_span(stiffness, thick, load, longest):
    """To 3/4 in. of span: 1 in. wide, of that thickness."""
    inertia, line = thick**3 / 12, load / 144

    def spare(span):
        return span / 144 - sag_between(line, span, stiffness, inertia)

    assert spare(longest - 0.75) > 0
    assert spare(longest + 1.25) < 0


@pytest.mark.parametrize(
    ("thick", "deep", "span", "line", "sag"),
    # Arithmetic by hand, poplar 1.58 million psi, lb to the foot.
    [(0.75, 7.25, 36, 20, 0.0905), (0.75, 7.25, 60, 20, 0.698), (1.5, 7.25, 60, 20, 0.0873),
     (0.75, 11.25, 36, 35, 0.1021)],
)  # fmt: skip
def test_shelves_of_poplar_sag_as_worked_out(thick, deep, span, line, sag):
    inertia = deep * thick**3 / 12
    assert sag_between(line / 12, span, STIFFNESS["poplar"].value, inertia) == pytest.approx(sag, rel=0.003)


def test_a_weight_at_the_middle_bends_a_beam_as_its_curvature_added_up_twice():
    """Moment over stiffness, summed from the end: 50 lb on 60 in. of 1 1/2 by 7 1/4 in. poplar, 0.0699 in."""
    span, stiffness, inertia = 60.0, 1_580_000, 7.25 * 1.5**3 / 12
    steps = 20_000
    step = span / 2 / steps
    turned = [50 / 2 * (i + 0.5) * step / (stiffness * inertia) * step for i in range(steps)]
    # The tangent is level at the middle: each turn there lifts the end by its distance from it.
    lifted = sum(turn * (i + 0.5) * step for i, turn in enumerate(turned))
    assert sag_under(50, span, stiffness, inertia) == pytest.approx(lifted, rel=1e-6)
    assert sag_under(50, span, stiffness, inertia) == pytest.approx(0.0698, abs=2e-4)


def test_a_shelf_under_its_full_load_may_sag_a_144th_of_its_span():
    """Architectural Woodwork Standards 2009, section 10, 1.2.21."""
    assert (FULL_LOAD.value, FULL_LOAD.standing) == (1 / 144, Standing.PUBLISHED)


def test_seasoned_lumber_sags_half_as_much_again_in_time():
    """0.100 in. at first become 0.150."""
    assert 0.100 * CREEP.value == pytest.approx(0.150)
    assert (SAG_PER_FOOT.value, EYE_PER_FOOT.value) == (0.02, 1 / 32)


def test_a_wood_screw_may_be_pulled_by_so_much():
    assert screw_holds(0.45, 0.190, 1.0) == pytest.approx(109.65, abs=0.01)


@pytest.mark.parametrize(("gauge", "diameter"), [(8, 0.164), (10, 0.190)])
def test_a_wood_screws_diameter_follows_from_its_gauge(gauge, diameter):
    """0.060 and 0.013 in. for each gauge, screw charts; a no. 8 holds the shelf."""
    assert 0.060 + 0.013 * gauge == pytest.approx(diameter)
    assert pytest.approx(0.164) == SCREW_DIAMETER.value


def test_what_is_from_practice_says_so():
    """The planning loads of a mantel, 20 lb to the foot, 50 lb at its middle and somebody who leans on it."""
    assert {MANTEL_LOAD.standing, LEANING.standing, HEAVY.standing} == {Standing.COMMON_PRACTICE}
    assert (MANTEL_LOAD.value, LEANING.value, HEAVY.value) == (20, 50, 50)
