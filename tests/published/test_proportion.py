"""Proportions by published authors, with their own worked figures where they give them.

Sources: Vignola in Moxon's English (1673); Palladio with Le Muet in Richards's English (1668), ch. 36-40;
Serlio, Book IV, in English (1611), ch. 6-8; Rudiments of Ancient Architecture (1810). "arithmetic" marks
what is worked out by hand from their ratios.
"""

from __future__ import annotations

import pytest

from model.check.finding import Guide
from model.check.proportion import list_guides
from model.job import default_job, with_texts
from model.surround import plan_surround


def _guide(name: str, **texts: str) -> Guide:
    pairs = [(path.replace("__", "."), text) for path, text in texts.items()]
    guides = {g.name: g for g in list_guides(plan_surround(with_texts(default_job(), pairs)))}
    return guides[name]


ORDER = {"shelf__height": "52 1/2", "shelf__thickness": "2", "frieze__height": "8 1/2"}
"""A whole order 52 1/2 in. high, its entablature 10 1/2 and its column 42; Vignola's quarter, arithmetic."""


def test_vignola_gives_the_entablature_a_quarter_of_the_column():
    guide = _guide("Frieze and shelf to column, a quarter", **ORDER)
    assert (guide.own, guide.advised_low, guide.advised_high) == pytest.approx((10.5, 10.5, 10.5))
    assert "Vignola" in guide.source


def test_indoors_a_fifth_is_advised():
    """Rudiments (1810): where delicacy is wanted, a fifth of the column; arithmetic: 42/5."""
    assert _guide("Frieze and shelf to column, a fifth indoors", **ORDER).advised_low == pytest.approx(8.4)


def test_vignola_gives_columns_7_to_10_widths_of_height():
    """Tuscan 7 diameters, Corinthian 10; arithmetic: 42/7 = 6.0, 42/10 = 4.2."""
    guide = _guide("Column width to height, by the orders", **ORDER)
    assert (guide.advised_low, guide.advised_high) == pytest.approx((4.2, 6.0))


def test_serlio_gives_the_ionic_support_an_eighth_of_its_height():
    """Ionic, standing out: floor to architrave is 8 supports; arithmetic: 42/8."""
    assert _guide("Column width to height, an eighth", **ORDER).advised_low == pytest.approx(5.25)


@pytest.mark.parametrize(
    ("width", "least", "most"),
    # Le Muet: not over 1/5 nor under 1/6 of the opening's width; 36 in. gives 6.0 to 7.2, 42 gives 7.0.
    [("36", 6.0, 7.2), ("42", 7.0, 8.4)],
)
def test_le_muet_gives_the_architrave_a_sixth_to_a_fifth_of_the_opening(width, least, most):
    guide = _guide("Column width to opening width, as an architrave", opening__width=width)
    assert (guide.advised_low, guide.advised_high) == pytest.approx((least, most))


@pytest.mark.parametrize(
    ("architrave", "frieze", "cornice", "together"),
    # Le Muet's 4 : 3 : 5 worked for openings of 36 and 42 in.
    [("6", 4.5, 7.5, 18.0), ("7", 5.25, 8.75, 21.0)],
)
def test_le_muet_gives_architrave_frieze_and_cornice_as_4_3_5(architrave, frieze, cornice, together):
    friezes = _guide("Frieze to column width, three quarters", column__width=architrave)
    cornices = _guide("Shelf and bed mould to column width", column__width=architrave)
    assert friezes.advised_low == pytest.approx(frieze)
    assert cornices.advised_high == pytest.approx(cornice)
    assert float(architrave) + friezes.advised_low + cornices.advised_low == pytest.approx(together)


def test_serlio_gives_a_corinthian_pilaster_a_sixth_or_better_an_eighth_of_the_opening():
    """36 in. wide: 6.0, light 4.5; carved frieze 5/4 of the head, 7.5."""
    guide = _guide("Column width to opening width, as a pilaster", opening__width="36")
    assert (guide.advised_low, guide.advised_high) == pytest.approx((4.5, 6.0))
    carved = _guide("Frieze to column width, five quarters when carved", column__width="6")
    assert carved.advised_low == pytest.approx(7.5)


def test_serlio_gives_a_doric_pilaster_by_the_opening_height():
    """30 in. high: 30/4.5 = 6.667, in a small room 30/7 = 4.286."""
    guide = _guide("Column width to opening height, as a pilaster", opening__height="30")
    assert (guide.advised_low, guide.advised_high) == pytest.approx((4.286, 6.667), abs=5e-4)


def test_shelf_heights_are_common_practice():
    """48 to 60 in., middle 54: common practice, pages differ."""
    guide = _guide("Shelf over the floor", hearth__height="4")
    assert (guide.own, guide.advised_low, guide.advised_high) == (58, 48, 60)
    assert guide.standing == "common practice"


@pytest.mark.parametrize(
    ("length", "breadth", "height", "wide", "tall"),
    # Robert Morris, Lectures on Architecture, 1734; feet to inches, arithmetic from his rule.
    [
        (20, 16, 10, 40.69, 32.86),
        (18, 14, 9, 38.42, 31.18),
        (24, 18, 10, 43.27, 34.99),
    ],
)
def test_the_opening_goes_by_the_size_of_its_room_as_printed(length, breadth, height, wide, tall):
    sizes = {"room.length": length, "room.breadth": breadth, "room.ceiling": height}
    job = with_texts(default_job(), [(path, f"{feet * 12}") for path, feet in sizes.items()])
    guides = {g.name: g for g in list_guides(plan_surround(job))}
    assert guides["Opening width by the room"].advised_low == pytest.approx(wide, abs=0.006)
    assert guides["Opening height by the room"].advised_low == pytest.approx(tall, abs=0.006)
