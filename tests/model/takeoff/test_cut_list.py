"""The cut list: every board once, in words a shop reads."""

from __future__ import annotations

import pytest
from hypothesis import given

from model.board import Board, End, Stock, StockKind, block
from model.build.run import Profile, run_section
from model.job import default_job, with_texts
from model.moulding.library import SECTIONS
from model.surround import plan_surround
from model.takeoff.cut_list import Cut, describe_ends, describe_stock, list_cuts
from model.units import INCHES_16, MILLIMETRES
from tests.planned import cuts_of, plan_of
from tests.strategies import jobs

POPLAR = Stock(StockKind.BOARD, 0.75, "poplar")
STRIP = [(0.0, 0.0), (0.75, 0.0), (0.75, 2.0), (0.0, 2.0)]


def _cuts(*settings: str) -> dict[str, list[Cut]]:
    job = with_texts(default_job(), [tuple(setting.split("=")) for setting in settings])
    by_name: dict[str, list[Cut]] = {}
    for cut in list_cuts(plan_surround(job)):
        by_name.setdefault(cut.name, []).append(cut)
    return by_name


def _of(cuts: dict[str, list[Cut]], words: str) -> list[Cut]:
    """All lines with these words in their name."""
    return [cut for name, lines in cuts.items() if words in name for cut in lines]


@given(jobs())
def test_every_board_stands_in_the_list_once(job):
    surround = plan_of(job)
    cuts = cuts_of(job)
    assert sorted(mark for cut in cuts for mark in cut.pieces) == sorted(surround.marks)
    assert all(cut.quantity == len(cut.pieces) for cut in cuts)
    assert len({cut.mark for cut in cuts}) == len(cuts)
    assert all(mark.startswith(cut.mark) for cut in cuts for mark in cut.pieces)


@given(jobs())
def test_every_line_has_the_sizes_of_its_boards(job):
    surround = plan_of(job)
    boards = dict(zip(surround.marks, surround.boards, strict=True))
    for cut in cuts_of(job):
        for mark in cut.pieces:
            board = boards[mark]
            assert cut.name.endswith(board.role)
            assert cut.length == pytest.approx(board.length, abs=1e-3)
            assert board.assembly in cut.assembly.split(", ")
        assert cut.width > 0
        assert cut.thickness > 0


def test_sub_assemblies_stay_together_in_the_order_they_go_up():
    letters = [cut.mark[0] for cut in list_cuts(plan_surround(default_job()))]
    assert "".join(dict.fromkeys(letters)) == "NCPFSM"
    assert letters == sorted(letters, key="NCPFSM".index)


def test_the_default_job_is_cut_to_these_sizes():
    """By hand from the defaults: 36 in. opening, 13 in. margins, 7 1/2 in. columns, 3/4 in. boards."""
    cuts = _cuts()
    (stile,) = cuts["column stile"]
    assert (stile.quantity, stile.length, stile.width, stile.thickness) == (4, 52, 1.75, 0.75)
    (rail,) = cuts["frieze bottom rail"]
    assert (rail.quantity, rail.length, rail.width) == (1, 36 + 2 * 13, 2)
    (front,) = cuts["edge band front"]
    assert (front.length, front.width) == (36 + 2 * (13 + 7.5 + 3), 2)
    (end,) = cuts["edge band end"]
    assert (end.quantity, end.length) == (2, 4 + 3)
    (plinth,) = cuts["plinth front"]
    assert (plinth.quantity, plinth.length, plinth.width) == (2, 7.5 + 2 * 0.75, 8)


def test_ends_say_where_the_long_points_lie():
    cuts = _cuts()
    assert cuts["column stile"][0].ends == "both square"
    assert cuts["edge band front"][0].ends == "45° mitre both ends (long points on the outside face)"
    assert (
        cuts["edge band end"][0].ends == "one square, 45° mitre at the other (long point on the outside face)"
    )
    assert {cut.ends for cut in _of(cuts, "bed mould")} == {
        "one square, 45° mitre at the other (long point on the outside face)",
        "45° mitre both ends (long points on the outside face)",
        "45° mitre both ends (long points on the back)",
        "45° mitre both ends, parallel (long point on the outside face at one end, on the back at the other)",
    }


@pytest.mark.parametrize("side", [1, -1])
def test_an_inside_corner_has_its_long_point_on_the_back(side):
    path = [(20 * side, 3.0), (8 * side, 3.0), (8 * side, 9.0)][::side]
    legs = run_section(["bed mould"] * 2, "bed mould", POPLAR, path, Profile(STRIP))
    along_wall = next(leg for leg in legs if leg.axis == "x")
    assert describe_ends(along_wall) == "one square, 45° mitre at the other (long point on the back)"


def test_mitres_of_other_pieces_are_given_by_their_angle():
    section = ((0.0, 0.0), (1.0, 0.0), (1.0, 0.75), (0.0, 0.75))
    leaning = Board("a", "b", POPLAR, "y", section, End(0.0), End(10.0, 0.5))
    assert describe_ends(leaning) == "one square, 26.6° mitre at the other"
    unlike = Board("a", "b", POPLAR, "z", section, End(0.0, -0.5), End(10.0, 1.0))
    assert describe_ends(unlike) == "26.6° mitre and 45° mitre (long points on the outside face)"


def test_handed_returns_name_their_side_and_their_twin():
    returns = {cut.mark: cut for cut in _of(_cuts(), "bed mould") if "twin" in cut.notes}
    assert len(returns) == 4
    for mark, cut in returns.items():
        hand, _, _ = cut.notes.partition("; section: ")
        side, _, twin = hand.partition("; mirror twin of ")
        assert side in ("left", "right")
        assert (
            returns[twin].notes.partition("; section: ")[0]
            == f"{'right' if side == 'left' else 'left'}; mirror twin of {mark}"
        )
        assert (returns[twin].length, returns[twin].ends) == (cut.length, cut.ends)


@given(jobs())
def test_twins_name_each_other(job):
    cuts = {cut.mark: cut for cut in cuts_of(job)}
    for mark, cut in cuts.items():
        if "mirror twin of " in cut.notes:
            twin = cuts[cut.notes.split("mirror twin of ")[1].split(";")[0]]
            assert f"mirror twin of {mark}" in twin.notes


def test_rebates_are_noted_with_their_size():
    cuts = _cuts("panel.reveal=1/2")
    assert cuts["column stile"][0].notes == 'rebated 3/8" wide, 1/4" deep along one back edge'
    notes = {cut.notes for cut in _of(cuts, "frieze stile")}
    assert notes == {
        'rebated 3/8" wide, 1/4" deep along one back edge',
        'rebated 3/8" wide, 1/4" deep along both back edges',
    }


def test_a_piece_thinner_or_thicker_than_its_stock_says_how_it_is_made():
    assert _cuts("shelf.thickness=2")["shelf rib"][0].notes == 'planed to 1/2"'
    thick = _cuts("shelf.thickness=4")["shelf rib"][0]
    assert thick.thickness == 1.5
    assert thick.notes == "built up from 2 thicknesses"


def test_a_piece_wider_than_boards_are_sold_is_glued_up():
    deep = _cuts("column.projection=14")["column outer return"][0]
    assert deep.notes == "edge-glued from 2 boards"
    # 11 1/4 in. and 1/2 to scribe want two boards, 10 3/4 and 1/2 are one as wide as it is sold.
    assert _cuts("column.projection=12")["column outer return"][0].width == 11.25
    assert _cuts("column.projection=12")["column outer return"][0].notes == deep.notes
    assert _cuts("column.projection=11 1/2")["column outer return"][0].notes == ""


@pytest.mark.parametrize(
    ("stock", "style", "words"),
    [
        (Stock(StockKind.BOARD, 0.75, "poplar"), INCHES_16, '3/4" yellow poplar board'),
        (Stock(StockKind.BOARD, 0.71875, "white_pine"), INCHES_16, '23/32" eastern white pine board'),
        (Stock(StockKind.PANEL, 0.25, "plywood"), INCHES_16, '1/4" plywood'),
        (Stock(StockKind.MOULDING, 1.5, "cherry"), INCHES_16, '1 1/2" black cherry moulding'),
        (Stock(StockKind.FRAMING, 1.5, "framing"), INCHES_16, '1 1/2" framing'),
        (Stock(StockKind.BOARD, 0.75, "red_oak"), MILLIMETRES, "19 mm red oak board"),
    ],
)
def test_stock_is_named_as_it_lies_in_the_rack(stock, style, words):
    assert describe_stock(stock, style) == words


def test_a_job_in_millimetres_lists_its_stock_in_millimetres():
    assert _cuts("job.units=millimetres")["column stile"][0].stock == "19 mm yellow poplar board"


def test_the_same_surround_gives_the_same_list():
    assert list_cuts(plan_surround(default_job())) == list_cuts(plan_surround(default_job()))


def test_a_square_block_has_no_notes():
    assert describe_ends(block("a", "b", POPLAR, "x", (0, 9), (0, 2), (0, 0.75))) == "both square"


def test_sprung_pieces_are_given_by_mitre_and_bevel_as_they_lie_on_the_saw():
    cuts = _cuts("bed_mould.profile=crown_38")
    (frieze,) = cuts["bed mould frieze front"]
    assert frieze.ends == "31.6° mitre with 33.9° bevel both ends (long points on the back)"
    assert "section: crown, cyma recta over a cove, sprung 38°" in frieze.notes


def test_sprung_pieces_are_measured_as_the_strips_they_are_cut_from():
    (piece,) = _cuts("bed_mould.profile=crown_38", "bed_mould.size=2 1/2")["bed mould frieze front"]
    section = SECTIONS["crown_38"].section
    assert (piece.thickness, piece.width) == pytest.approx(section.stock_size, abs=1 / 64)


def test_flat_backed_pieces_say_their_section_and_no_bevel():
    cuts = _cuts("capital.on=yes", "shelf.edge_profile=ovolo")
    (front,) = cuts["capital front"]
    assert front.ends == "45° mitre both ends (long points on the outside face)"
    assert front.notes == "section: ovolo over a cavetto"
    assert cuts["edge band front"][0].notes == "section: ovolo and fillet"


def test_panel_moulds_are_listed_with_their_long_points_on_the_outer_edge():
    cuts = _cuts("panel_mould.on=yes")
    pieces = _of(cuts, "panel mould")
    assert {cut.ends for cut in pieces} == {"45° mitre both ends (long points on the outer edge)"}
    assert sum(cut.quantity for cut in pieces) == 4 * (2 + 3)


def test_small_returns_are_pieces_of_their_own():
    cuts = _cuts("capital.on=yes", "plinth_cap.on=yes", "frieze.projection=3")
    assert sum(cut.quantity for cut in _of(cuts, "capital return")) == 4
    assert sum(cut.quantity for cut in _of(cuts, "plinth cap return")) == 4
    # The step from the columns back to the frieze, mitred at both ends.
    steps = [cut for cut in _of(cuts, "bed mould inner return") if "parallel" in cut.ends]
    assert [(cut.quantity, cut.length) for cut in steps] == [(1, 1 + 1.5), (1, 1 + 1.5)]


def test_grooves_are_noted_with_their_size_and_place():
    cuts = _cuts("panel.kind=solid", "panel.reveal=1/4", "column.panels=2")
    one = 'grooved 1/4" wide, 3/8" deep along one edge, 1/4" behind the face'
    assert cuts["column stile"][0].notes == one
    assert cuts["column middle rail"][0].notes == one.replace("one edge", "both edges")
    assert {cut.notes for cut in _of(cuts, "frieze stile")} == {one, one.replace("one edge", "both edges")}
    panel = cuts["column panel"][0]
    assert "not glued" in panel.notes
    assert 'planed to 1/4", or bought so' in panel.notes
    assert panel.stock == cuts["column stile"][0].stock == '3/4" yellow poplar board'


def test_a_side_stepped_over_a_proud_facing_is_notched_and_not_rebated():
    # 54 in. of facing, 4 in. proud: the back edge is cut away that far up.
    notes = {cut.name: cut.notes for cut in list_cuts(plan_surround(_proud_job()))}
    assert 'notched 4" off one edge for 4\'-6" from one end' in notes["column inner return"]
    assert "rebated" not in notes["column inner return"]


def _proud_job():
    return with_texts(
        default_job(),
        [("facing.proud", "4"), ("facing.height", "54"), ("facing.width", "100"), ("shelf.height", "59")],
    )


def test_a_fluted_face_says_how_many_hollows_it_has_and_their_size():
    settings = [("column.kind", "fluted"), ("flute.count", "4"), ("flute.depth", "3/16")]
    cuts = list_cuts(plan_surround(with_texts(default_job(), settings)))
    (face,) = [cut for cut in cuts if cut.name == "column fluted face"]
    assert face.quantity == 2
    assert face.notes == '4 flutes along the face, 5/8" wide, 3/16" deep'


def test_a_return_before_masonry_out_of_plumb_is_listed_with_both_its_widths():
    cut = _cuts("plumb.right=1/2")["right column outer return"][0]
    assert cut.width == 3.75
    assert cut.notes.endswith(
        'back edge tapered to follow the masonry: 3 3/4" wide at its foot, 3 1/4" at its head'
    )
    assert cut.rough.width.finished == 3.75
    assert cut.rough.width.scribe > 0
    foot, _ = (cut for cut in _of(_cuts("plumb.right=1/2"), "plinth return") if "off square" in cut.ends)
    assert foot.ends == (
        "one 0.6° off square to follow the masonry, 45° mitre at the other (long point on the outside face)"
    )


def test_a_shelf_before_masonry_that_leans_away_is_as_much_wider_at_its_widest():
    plumb, away = _cuts()["shelf top"][0], _cuts("plumb.left=-3/8")["shelf top"][0]
    assert away.width == plumb.width + 0.375
    assert away.rough.width.rough == plumb.rough.width.rough + 0.375


def test_a_shelf_board_says_what_is_sawn_out_between_the_breaks():
    (top,) = _cuts("shelf.step=1 1/2")["shelf top"]
    assert '1 1/2" sawn out of one edge for 4\'-9 1/2", from 1\'-0" off the left end on' in top.notes
