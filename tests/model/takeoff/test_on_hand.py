"""Pieces that are there already: what comes out of them, worked out on paper."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from model.check.finding import Status
from model.check.on_hand import check_on_hand
from model.job import default_job, with_texts
from model.parameters import PIECE_USES
from model.shop import NO_USE
from model.surround import plan_surround
from model.takeoff.cut_list import list_cuts
from model.takeoff.on_hand import BOARDS_OF, list_yields
from tests.planned import findings_of, plan_of
from tests.strategies import jobs

BEAM = {
    "piece_one.use": "shelf",
    "piece_one.name": "Barn beam",
    "piece_one.length": "90",
    "piece_one.width": "10",
    "piece_one.thickness": "2",
}


def _plan(**texts: str):
    named = {path.replace("__", "."): text for path, text in texts.items()}
    return plan_surround(with_texts(default_job(), list({**BEAM, **named}.items())))


def _marks(surround, places):
    return [surround.marks[i] for i in places]


def test_a_shelf_top_comes_out_of_a_beam_that_is_larger_and_the_cut_list_says_so():
    """83 - 2 x 3/4 = 81 1/2 long, 7 - 3/4 = 6 1/4 wide, 3/4 thick; the beam is 90 x 10 x 2."""
    surround = _plan()
    (found,) = list_yields(surround)
    assert (_marks(surround, found.taken), found.left, found.why) == (["S1"], (), "")
    notes = {cut.mark: cut.notes for cut in list_cuts(surround)}
    assert "from Barn beam, on hand, planed down" in notes["S1"]
    assert not any("on hand" in words for mark, words in notes.items() if mark != "S1")


@pytest.mark.parametrize(
    ("row", "text", "words"),
    [
        # 81 1/2 + 2 x 1/2 trimmed off the ends: 82 1/2 in., where 90 - 2 x 4 = 82 are sound.
        ("piece_one.clear", "4", "6'-10\" long and sound, and S1 takes 6'-10 1/2\""),
        # 6 1/4 + 1/2 scribed to the wall + 2 x 1/8 ripped off the edges: 7.
        ("piece_one.width", "6 15/16", '6 15/16" wide, and S1 takes 7"'),
        ("piece_one.thickness", "5/8", '5/8" thick, and S1 takes 3/4"'),
    ],
)
def test_a_piece_that_is_too_small_says_where_and_by_what(row, text, words):
    surround = _plan(**{row: text})
    (found,) = list_yields(surround)
    assert not found.taken
    assert words in found.why
    (finding,) = check_on_hand(surround)
    assert finding.status is Status.WARN
    assert words in finding.message
    assert "Barn beam" in finding.message


def test_boards_are_ripped_side_by_side_and_crosscut_one_after_the_other():
    """Four stiles, 52 + 1/2 + 2 x 1/2 = 53 1/2 long, 1 3/4 + 2 x 1/8 = 2 wide, the kerf 1/8 at the most.

    Two along need 107 1/8, two side by side 4 1/8.
    """
    sizes = {"piece_one__use": "column_stile", "piece_one__length": "107 1/4", "piece_one__thickness": "3/4"}
    for width, count in (("4 1/4", 4), ("4", 2), ("1 15/16", 0)):
        (found,) = list_yields(_plan(**sizes, piece_one__width=width))
        assert len(found.taken) == count
        assert len(found.left) == 4 - count
    (short,) = list_yields(_plan(**sizes, piece_one__width="4 1/4", piece_one__clear="6"))
    assert len(short.taken) == 2


def test_what_one_piece_gives_is_not_asked_of_the_next():
    both = {f"piece_two.{row.partition('.')[2]}": text for row, text in BEAM.items()}
    first, second = list_yields(_plan(**both))
    assert len(first.taken) == 1
    assert (second.taken, second.left) == ((), ())


def test_a_piece_that_was_not_measured_is_not_known_and_asked_for():
    surround = plan_surround(with_texts(default_job(), list(BEAM.items())[:3]))
    (finding,) = check_on_hand(surround)
    assert (finding.status, finding.path) == (Status.UNKNOWN, "piece_one.width")
    assert finding.cure == "Measure its width and thickness."


def test_a_use_that_the_design_has_no_board_for_is_said():
    (finding,) = check_on_hand(_plan(piece_one__use="frieze_board"))
    assert finding.status is Status.WARN
    assert "no plain frieze" in finding.message


def test_without_pieces_nothing_is_said():
    assert not check_on_hand(plan_surround(default_job()))


@pytest.mark.parametrize(
    ("use", "settings"),
    [
        ("shelf", {"shelf.kind": "plank"}),
        ("shelf_underside", {}),
        ("shelf_edge", {}),
        ("bed_mould", {}),
        ("frieze_board", {"frieze.kind": "plain"}),
        ("column_face", {"column.kind": "plain"}),
        ("column_stile", {}),
        ("ledger", {}),
    ],
)
def test_every_use_means_some_board(use, settings):
    boards = plan_surround(with_texts(default_job(), list(settings.items()))).boards
    assert [board for board in boards if BOARDS_OF[use](board)]


def test_uses_and_the_tables_words_are_the_same():
    assert {NO_USE, *BOARDS_OF} == set(PIECE_USES)


@settings(max_examples=30, deadline=None)
@given(jobs())
def test_pieces_give_no_more_wood_than_they_have(job):
    surround = plan_of(job)
    gone = []
    for found in list_yields(surround):
        gone += found.taken
        if found.taken:
            piece = found.piece
            have = (piece.length or 0) * (piece.width or 0) * (piece.thickness or 0)
            assert sum(surround.boards[i].volume for i in found.taken) <= have
    assert len(gone) == len(set(gone))
    assert all(finding.message for finding in findings_of(job))
