"""The shipped sections: each can be worked, is named by what it is, and suits the places it is for."""

import pytest

from model.moulding.library import OWN, SECTIONS, USES, Use, list_choices
from model.moulding.notation import check_section
from model.moulding.section import thinnest

NAMES = sorted(SECTIONS)


@pytest.mark.parametrize("name", NAMES)
def test_every_section_can_be_worked_in_wood(name):
    check_section(SECTIONS[name].section)


def test_no_two_sections_share_a_name():
    names = [shipped.section.name for shipped in SECTIONS.values()]
    assert len(set(names)) == len(names)


def test_every_section_is_offered_somewhere():
    assert {key for keys in USES.values() for key in keys} == set(SECTIONS)


@pytest.mark.parametrize("use", list(Use))
def test_a_place_is_offered_shipped_sections_and_the_jobs_own(use):
    choices = list_choices(use)
    assert tuple(choices)[-len(OWN) :] == OWN
    assert len(set(choices.values())) == len(choices)
    assert len(choices) >= 8


def test_panels_and_plinths_are_offered_flat_backs():
    for use in (Use.PANEL_MOULD, Use.PLINTH_CAP, Use.BACK_BAND, Use.SHELF_EDGE):
        assert not any(SECTIONS[key].section.is_sprung for key in USES[use])


def test_the_usual_spring_angles_are_there():
    assert {38.0, 45.0} == {s.section.spring for s in SECTIONS.values() if s.section.is_sprung}


def test_sprung_sections_keep_a_quarter_inch_at_their_thinnest():
    for shipped in SECTIONS.values():
        if shipped.section.is_sprung:
            assert thinnest(shipped.section) > 0.18, shipped.section.name


def test_the_attic_base_is_parted_as_vitruvius_has_it():
    # De architectura 3.5.2: of four parts without the plinth the upper torus has one; half of what is
    # left is the lower torus, half the scotia with its fillets.
    lower, fillet_1, scotia, fillet_2, upper = SECTIONS["attic_base"].section.elements
    height = SECTIONS["attic_base"].section.height
    assert upper.down == height / 4
    assert lower.down == fillet_1.down + scotia.down + fillet_2.down == height * 3 / 8


def test_the_capital_in_thirds_gives_a_third_to_abacus_ovolo_and_necking():
    # Ware, The American Vignola, The Tuscan Order: the capital divided in three.
    parts = SECTIONS["thirds"].section.elements
    heights = [sum(e.down for e in group) for group in (parts[:2], parts[2:4], parts[4:])]
    assert heights == [SECTIONS["thirds"].section.height / 3] * 3
