"""How pieces lie in place, in words."""

from __future__ import annotations

from app.demo import read_demo
from model.job import default_job, with_texts
from model.surround import plan_surround
from model.takeoff.cut_list import list_cuts
from model.takeoff.lie import describe_grain, describe_shown, find_hand
from model.takeoff.surfaces import list_surfaces
from tests.takeoff_wood import SHEET, board

SURROUND = plan_surround(default_job())
SURFACES = list_surfaces(SURROUND)


def _shown(role: str) -> str:
    return describe_shown(SURFACES, [i for i, b in enumerate(SURROUND.boards) if b.role == role])


def test_grain_runs_along_the_piece():
    assert describe_grain(board((0, 9), (0, 2), (0, 1), axis="x")) == "level"
    assert describe_grain(board((0, 2), (0, 9), (0, 1), axis="y")) == "upright"
    assert describe_grain(board((0, 2), (0, 1), (0, 9), axis="z")) == "front to back"
    assert describe_grain(board((0, 2), (0, 9), (0, 1), axis="y", stock=SHEET)) == "face upright"


def test_the_face_that_shows_most_is_named_first():
    assert _shown("column stile").startswith("front")
    assert _shown("soffit") == "underside"
    assert _shown("shelf top") == "top"
    assert _shown("column inner return") == "inner side"
    assert _shown("column outer return") == "outer side"
    assert _shown("frieze panel") == "front"
    assert _shown("bed mould frieze front") == "moulded face"


def test_what_is_hidden_shows_nothing():
    assert _shown("shelf nailer") == "none"


def test_left_and_right_pieces_say_their_side_and_others_that_they_may_be_turned():
    by_mark = {cut.mark: cut for cut in list_cuts(plan_surround(read_demo("brick")))}
    assert by_mark["C1"].hand == "either"
    handed = {cut.hand for cut in by_mark.values() if "mirror twin" in cut.notes}
    assert handed == {"left", "right"}


def test_like_pieces_on_both_sides_say_which_end_of_their_own_front_they_go_to():
    """Narrow columns have returns of one length: a left outer one and a right inner one are alike."""
    settings = [("panel.kind", "solid"), ("column.kind", "fluted"), ("plinth_cap.on", "yes")]
    cuts = list_cuts(plan_surround(with_texts(read_demo("bedroom"), settings)))
    hands = {cut.name: (cut.hand, cut.notes) for cut in cuts if cut.name.endswith("plinth cap return")}
    assert set(hands) == {"left-hand plinth cap return", "right-hand plinth cap return"}
    for name, (hand, notes) in hands.items():
        assert name.startswith(hand)
        assert notes.startswith(f"{hand}; mirror twin of ")


def test_pieces_at_no_one_end_are_handed():
    twins = [board((1, 2), (0, 1), (0, 1)), board((-2, -1), (0, 1), (0, 1))]
    assert find_hand(twins, ()) == "either"
    assert find_hand(twins, twins) == "handed"


def test_the_cut_list_says_what_shows_only_where_somebody_looked():
    assert {cut.shows for cut in list_cuts(SURROUND)} == {""}
    assert all(cut.shows for cut in list_cuts(SURROUND, SURFACES))
