"""Saw setups: every mitred end of every moulding once, alike ends together."""

from __future__ import annotations

import pytest
from hypothesis import given

from model.job import default_job, with_texts
from model.surround import plan_surround
from model.takeoff.marks import list_kinds
from model.takeoff.saw_angles import Hand, Lie, list_end_cuts
from model.takeoff.saw_setups import Ends, list_corner_angles, list_setups
from tests.planned import plan_of
from tests.strategies import jobs


def _setups(*settings: str):
    job = with_texts(default_job(), [tuple(setting.split("=")) for setting in settings])
    return list_setups(plan_surround(job))


def test_a_flat_backed_bed_mould_needs_the_table_turned_either_way():
    setups = _setups()
    assert {setup.settings[0].lie for setup in setups} == {Lie.STANDING}
    assert {(s.settings[0].swing, s.settings[0].keep) for s in setups} == {
        (swing, keep) for swing in Hand for keep in Hand
    }
    # Seven pieces, six corners, two ends at each.
    assert sum(ends.count for setup in setups for ends in setup.ends) == 12


def test_a_sprung_one_lies_four_ways_and_may_stand():
    setups = _setups("bed_mould.profile=crown_38", "bed_mould.size=2 1/2")
    assert len(setups) == 4
    assert {(s.settings[0].fence, s.settings[0].keep) for s in setups} == {
        ("top edge", Hand.LEFT),
        ("top edge", Hand.RIGHT),
        ("bottom edge", Hand.LEFT),
        ("bottom edge", Hand.RIGHT),
    }
    assert all([s.lie for s in setup.settings] == [Lie.FLAT, Lie.STANDING] for setup in setups)


def test_frames_are_told_from_runs():
    setups = _setups("bed_mould.on=no", "panel_mould.on=yes")
    assert [setup.settings[0].fence for setup in setups] == ["outer edge", "outer edge"]
    # Five frames of four pieces, each cut once either way.
    assert [sum(ends.count for ends in setup.ends) for setup in setups] == [20, 20]
    assert all(ends.end is None for setup in setups for ends in setup.ends)


@given(jobs(bed_mould__profile="crown_38", capital__on=True, plinth_cap__on=True, panel_mould__on=True))
def test_all_pieces_of_a_kind_are_cut_alike(job):
    surround = plan_of(job)
    for kind in list_kinds(surround.boards):
        cuts = {list_end_cuts(surround.boards[i]) for i in kind.pieces}
        # A section alike from seat and foot may be turned over, so that its hands change places.
        assert len({tuple(sorted((c.kind or "", round(c.corner, 6)) for c in ends)) for ends in cuts}) == 1


def test_ends_are_said_with_their_count():
    assert Ends("M2", Hand.LEFT, 2).describe() == "M2 left, 2 pieces"
    assert Ends("C13", None, 1).describe() == "C13"


@given(jobs())
def test_every_mitred_end_of_a_moulding_is_in_one_setup(job):
    surround = plan_of(job)
    ends = [ends.count for setup in list_setups(surround) for ends in setup.ends]
    assert sum(ends) == sum(len(list_end_cuts(board)) for board in surround.boards)
    settings = [setup.settings for setup in list_setups(surround)]
    assert len(set(settings)) == len(settings)


def test_corners_that_are_not_square_have_their_own_angles():
    """Sprung 38 degrees at 45, 90 and 135: W. C. Corwin, Crown Molding Calculator 2.00, fixed values."""
    job = with_texts(default_job(), [("bed_mould.profile", "crown_38"), ("bed_mould.size", "2 1/4")])
    sprung, *others = list_corner_angles(plan_surround(job), (45, 90, 135))
    assert (sprung.spring, others) == (38, [])
    assert [angle for pair in sprung.settings for angle in pair] == pytest.approx(
        [56.0670, 46.7210, 31.6190, 33.8629, 14.3064, 17.5512], abs=0.0006
    )


def test_a_flat_back_is_mitred_at_half_of_what_is_left_to_a_straight_line():
    (upright,) = list_corner_angles(plan_surround(default_job()), (88, 90))
    assert (upright.spring, upright.settings) == (0, ((46, 0), (45, 0)))


def test_a_measured_corner_sets_every_end_and_turns_none_round():
    job = with_texts(default_job(), [("bed_mould.profile", "crown_38"), ("capital.on", "yes")])
    surround = plan_surround(job)
    drawn, measured = (list_setups(surround, corner) for corner in (None, 87.0))
    assert [s.ends for s in measured] == [s.ends for s in drawn]
    for one, other in zip(drawn, measured, strict=True):
        assert [(s.lie, s.swing, s.fence, s.keep) for s in one.settings] == [
            (s.lie, s.swing, s.fence, s.keep) for s in other.settings
        ]
        assert all(s.mitre > t.mitre for s, t in zip(other.settings, one.settings, strict=True))


def test_without_mouldings_there_is_nothing_to_set():
    assert list_corner_angles(plan_surround(with_texts(default_job(), [("bed_mould.on", "no")])), (90,)) == ()
