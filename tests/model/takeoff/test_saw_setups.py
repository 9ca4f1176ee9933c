"""Saw setups: every mitred end of every moulding once, alike ends together."""

from __future__ import annotations

from hypothesis import given

from model.job import default_job, with_texts
from model.surround import plan_surround
from model.takeoff.marks import list_kinds
from model.takeoff.saw_angles import Hand, Lie, list_end_cuts
from model.takeoff.saw_setups import Ends, list_setups
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
    surround = plan_surround(job)
    for kind in list_kinds(surround.boards):
        cuts = {list_end_cuts(surround.boards[i]) for i in kind.pieces}
        # A section alike from seat and foot may be turned over, so that its hands change places.
        assert len({tuple(sorted((c.kind or "", round(c.corner, 6)) for c in ends)) for ends in cuts}) == 1


def test_ends_are_said_with_their_count():
    assert Ends("M2", Hand.LEFT, 2).describe() == "M2 left, 2 pieces"
    assert Ends("C13", None, 1).describe() == "C13"


@given(jobs())
def test_every_mitred_end_of_a_moulding_is_in_one_setup(job):
    surround = plan_surround(job)
    ends = [ends.count for setup in list_setups(surround) for ends in setup.ends]
    assert sum(ends) == sum(len(list_end_cuts(board)) for board in surround.boards)
    settings = [setup.settings for setup in list_setups(surround)]
    assert len(set(settings)) == len(settings)
