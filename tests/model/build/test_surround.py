"""The list of boards: what is there, where it stands and that both sides are twins."""

from collections import Counter
from dataclasses import replace
from itertools import pairwise
from math import nextafter, pi

import numpy as np
import pytest
from hypothesis import given, settings

from model.board import Stock, StockKind
from model.build.frame import FrameWords, build_frame
from model.build.layout import lay_out
from model.build.surround import build_surround
from model.job import default_job, with_texts
from model.reference.lumber import WIDEST_BOARD
from model.units import parse_length
from tests.strategies import alike, jobs


def build(**texts):
    job = with_texts(default_job(), [(path.replace("__", "."), text) for path, text in texts.items()])
    return lay_out(job.site, job.design), build_surround(job.site, job.design)


def of_role(boards, role):
    return [board for board in boards if board.role == role]


def test_each_column_has_two_stiles_its_rails_a_panel_and_two_returns():
    _, boards = build(column__panels="2")
    right = Counter(board.role for board in boards if board.assembly == "right column")
    assert right["column stile"] == 2
    assert (right["column bottom rail"], right["column middle rail"], right["column top rail"]) == (1, 1, 1)
    assert right["column panel"] == 1
    assert (right["column inner return"], right["column outer return"]) == (1, 1)
    assert (right["plinth front"], right["plinth return"]) == (1, 2)


def test_plinth_stands_out_on_three_sides_by_its_projection():
    layout, boards = build(plinth__projection="1 1/4")
    front = next(b for b in of_role(boards, "plinth front") if b.assembly == "right column")
    assert front.bounds[0][0] == layout.column_inner - 1.25
    assert front.bounds[1][0] == layout.right.outer + 1.25
    assert front.bounds[1][2] == layout.column_front + 1.25
    assert len([b for b in boards if b.role.startswith("plinth") and b.role.endswith("packing")]) == 6


@pytest.mark.parametrize(
    ("reveal", "role", "count"),
    [
        ("3/4", "frieze stile packing", 0),
        ("1", "frieze stile packing", 4),
        ("1", "frieze rail packing", 2),
    ],
)
def test_a_deeper_reveal_than_the_boards_puts_the_sheet_on_packing(reveal, role, count):
    _, boards = build(panel__reveal=reveal)
    assert len(of_role(boards, role)) == count


def test_a_shallow_reveal_rebates_every_member_and_gives_each_opening_its_panel():
    layout, boards = build(panel__reveal="3/8")
    panels = of_role(boards, "frieze panel")
    assert len(panels) == len(layout.frieze_frame.openings)
    stile = of_role(boards, "frieze stile")[1]
    assert stile.section_area == pytest.approx(2.5 * 0.75 - 2 * 0.375 * 0.375)


def test_a_rebate_that_only_rounding_makes_is_none():
    """A frame as thick as the reveal but for the last place of the number: its members stay rectangles."""
    layout, _ = build(panel__reveal="3/4")
    stock = Stock(StockKind.BOARD, nextafter(0.75, 1), "poplar")
    sheet = Stock(StockKind.PANEL, 0.25, "")
    frame = replace(layout.frieze_frame, reveal=0.75, groove=None)
    boards = build_frame(frame, FrameWords("frieze", "frieze"), stock, sheet, frame.outline)
    assert {len(board.section) for board in boards} == {4}
    assert len(of_role(boards, "frieze panel")) == 1


def test_panel_face_lies_the_reveal_behind_the_frame():
    for reveal in ("1/4", "3/4", "1"):
        layout, boards = build(panel__reveal=reveal)
        for role, front in (("column panel", layout.column_front), ("frieze panel", layout.frieze_front)):
            faces = {board.bounds[1][2] for board in of_role(boards, role)}
            assert faces == {front - parse_length(reveal)}


def test_soffit_closes_the_frieze_from_the_masonry_to_the_frame():
    layout, boards = build(frieze__projection="4")
    (soffit,) = of_role(boards, "soffit")
    assert soffit.bounds[0][1] == layout.frieze_bottom
    assert (soffit.bounds[0][2], soffit.bounds[1][2]) == (0, 3.25)
    assert soffit.length == 2 * layout.column_inner


def test_a_frieze_flat_on_the_masonry_has_no_soffit_and_no_nailers_behind_it():
    _, boards = build(frieze__projection="3/4")
    assert not of_role(boards, "soffit") + of_role(boards, "shelf nailer") + of_role(boards, "soffit nailer")


def test_deep_shelf_is_glued_up_from_boards_that_are_sold():
    _, boards = build(shelf__depth="14")
    top = of_role(boards, "shelf top")
    assert len(top) == 2
    assert all(board.width <= WIDEST_BOARD for board in top)
    assert sum(board.width for board in top) == pytest.approx(14 - 0.75)


def test_no_rib_bay_of_a_hollow_shelf_is_wider_than_sixteen_inches():
    _, boards = build(shelf__thickness="3")
    middles = sorted((b.bounds[0][0] + b.bounds[1][0]) / 2 for b in of_role(boards, "shelf rib"))
    assert max(b - a for a, b in pairwise(middles)) <= 16
    assert all(b.thickness == pytest.approx(1.5) for b in of_role(boards, "shelf rib"))


def test_bed_mould_is_as_high_as_it_is_deep_and_returns_to_the_wall():
    layout, boards = build(bed_mould__size="2")
    mould = [board for board in boards if board.assembly == "bed mould"]
    assert len(mould) == 7
    assert min(board.bounds[0][2] for board in mould) == layout.right.outer_back
    assert all(board.width == pytest.approx(2) and board.thickness == pytest.approx(2) for board in mould)


def test_bed_mould_runs_straight_where_frieze_and_columns_are_flush():
    _, boards = build(frieze__projection="4", column__projection="4")
    roles = [board.role for board in boards if board.assembly == "bed mould"]
    assert roles == ["bed mould outer return", "bed mould front", "bed mould outer return"]


def test_the_usual_bed_moulds_section_is_a_square_less_what_fillets_and_cavetto_take_off():
    layout, _ = build(bed_mould__size="2")
    # By hand, fillets 1/4 in. and radius 1 1/2: the back strip, the strip under the shelf, the square the
    # quarter circle is struck in less the quarter, and the upper fillet.
    quarter = pi / 4 * 1.5**2
    assert layout.mouldings.bed.outline.area == pytest.approx(
        0.25 * 2 + 1.5 * 0.25 + (1.5**2 - quarter) + 0.25 * 0.25
    )


@settings(max_examples=80, deadline=None)
@given(alike())
def test_left_and_right_are_twins(job):
    boards = build_surround(job.site, job.design)
    roles = np.array([board.role for board in boards])
    boxes = np.array([np.ravel(board.bounds) for board in boards])
    mirrored = boxes * (-1, 1, 1, -1, 1, 1)
    mirrored[:, [0, 3]] = mirrored[:, [3, 0]]
    same = np.abs(boxes[:, None] - mirrored[None]).max(axis=2) < 1e-6
    assert (same & (roles[:, None] == roles[None])).any(axis=1).all()


@settings(max_examples=80, deadline=None)
@given(jobs())
def test_every_board_has_wood_in_it_and_none_reaches_into_the_masonry(job):
    """Where it is out of plumb it falls back by as much as was read, and boards follow it."""
    layout = lay_out(job.site, job.design)
    falls = max(side.lean.most if side.lean else 0.0 for side in layout.sides)
    steps = [side.step.floor for side in layout.sides if side.step]
    lowest = min(layout.floor, layout.left.base, layout.right.base, *steps)
    for board in build_surround(job.site, job.design):
        assert board.volume > 0
        assert board.length > 0
        assert board.bounds[0][2] >= min(0.0, layout.wall) - falls - 1e-9
        assert board.bounds[0][1] >= lowest - 1e-9


def test_sides_step_back_to_the_wall_over_the_top_of_a_proud_facing():
    layout, boards = build(facing__proud="2", facing__width="100", facing__height="40")
    for role in ("column inner return", "column outer return"):
        for board in of_role(boards, role):
            assert board.length == layout.shelf_bottom
            # 3 1/4 in. to the facing over 40 in., then 2 in. more to the wall.
            assert board.volume == pytest.approx(0.75 * (40 * 3.25 + (layout.shelf_bottom - 40) * 5.25))
            assert board.grain == "y"
    uprights = of_role(boards, "column nailer")
    assert {board.bounds[0][2] for board in uprights} == {0, -2}
    assert sum(board.length for board in uprights) == 4 * layout.shelf_bottom


def test_a_leg_on_a_low_spot_is_longer_by_what_the_floor_falls():
    _, boards = build(level__centre="30", level__left="30 3/4")
    lengths = {board.assembly: board.length for board in of_role(boards, "column stile")}
    assert lengths["left column"] - lengths["right column"] == 0.75


def test_a_plain_column_is_one_board_over_the_edges_of_its_returns():
    layout, boards = build(column__kind="plain", column__width="13")
    right = [board for board in boards if board.assembly == "right column"]
    (face,) = of_role(right, "column face")
    assert (face.width, face.thickness, face.length) == (13, 0.75, layout.shelf_bottom)
    assert {board.bounds[1][2] for board in of_role(right, "column outer return")} == {face.bounds[0][2]}
    assert not of_role(right, "column stile") + of_role(right, "column panel")


def test_a_fluted_column_is_three_boards_of_one_face():
    _, boards = build(column__kind="fluted", flute__stop="2")
    right = [board for board in boards if board.assembly == "right column"]
    (fluted,) = of_role(right, "column fluted face")
    foot, neck = sorted(of_role(right, "column flute stop"), key=lambda board: board.bounds[0][1])
    assert foot.bounds[1][1] == fluted.bounds[0][1] == 8 + 2
    assert fluted.bounds[1][1] == neck.bounds[0][1]
    assert fluted.section_area < fluted.width * fluted.thickness


def test_a_raised_board_lies_on_a_plain_column_with_its_margin_all_round():
    """9 in. wide less 1 1/2 either side; from 1 1/2 over the plinth to 1 1/2 under the bed mould."""
    layout, boards = build(
        column__kind="raised", column__width="9", raised__margin="1 1/2", raised__thickness="3/8"
    )
    right = [board for board in boards if board.assembly == "right column"]
    (face,), (raised,) = of_role(right, "column face"), of_role(right, "column raised board")
    assert (raised.width, raised.thickness) == (6, 0.375)
    assert raised.bounds[0][2] == face.bounds[1][2] == layout.column_front
    assert raised.bounds[0][1] == 8 + 1.5
    assert raised.bounds[1][1] == layout.shelf_bottom - 1.5 - 1.5


def test_a_raised_board_ends_below_a_capital_and_leans_with_its_column():
    """Narrower by 1 in. at the top: 9 less 2 margins of 2 at the foot of the board is 5 and a bit less."""
    layout, boards = build(
        column__kind="raised", column__width="9", column__taper="1", raised__margin="2", capital__on="yes"
    )
    (raised,) = [
        board for board in of_role(boards, "column raised board") if board.assembly == "right column"
    ]
    assert raised.bounds[1][1] == pytest.approx(layout.frieze_bottom - 2 - 2)
    levels = {round(y, 6): [x for x, at in raised.section if at == y] for _, y in raised.section}
    widths = [max(xs) - min(xs) for _, xs in sorted(levels.items())]
    assert widths[0] > widths[1] > 4
    assert widths[0] < 5


@pytest.mark.parametrize(
    ("overhang", "step", "built"), [("3", "0", 1), ("1 1/4", "0", 0.5), ("13/16", "0", 0), ("1 1/4", "2", 1)]
)
def test_a_raised_board_keeps_behind_an_edge_band_that_hangs_before_it(overhang, step, built):
    """A band 3/4 thick hangs past the upper end of the board: the overhang less that is left behind it."""
    layout, boards = build(
        column__kind="raised",
        raised__thickness="1",
        shelf__edge_height="8",
        shelf__overhang_front=overhang,
        shelf__step=step,
    )
    assert {board.thickness for board in of_role(boards, "column raised board")} == ({built} - {0})
    held = [(held.path, held.built) for held in layout.shortfalls if held.path == "raised.thickness"]
    assert held == ([] if built == 1 else [("raised.thickness", built)])


def test_a_margin_that_leaves_no_board_is_made_smaller_and_said():
    """Of 5 in. all but two go to the margins."""
    layout, boards = build(column__kind="raised", column__width="5", raised__margin="3")
    assert {board.width for board in of_role(boards, "column raised board")} == {2}
    assert [(held.path, held.built) for held in layout.shortfalls] == [("raised.margin", 1.5)]


def test_a_frieze_over_the_columns_lies_on_their_faces_and_the_soffit_stays_between_them():
    layout, boards = build(frieze__place="in_front", frieze__kind="plain")
    (board,), (soffit,) = of_role(boards, "frieze board"), of_role(boards, "soffit")
    assert board.length == 2 * layout.right.outer
    assert board.bounds[0][2] == soffit.bounds[1][2] == layout.column_front
    assert soffit.length == 2 * layout.column_inner


def test_a_frieze_proud_of_the_columns_is_closed_at_both_ends():
    """6 out, columns 4 out: behind a 3/4 board its back lies 5 1/4 out; a return laps the column by 3/8."""
    layout, boards = build(frieze__projection="6", frieze__kind="plain")
    left, right = of_role(boards, "frieze end return")
    assert right.bounds == ((31 - 0.75, layout.frieze_bottom + 0.75, 4 - 0.375), (31, 52, 5.25))
    assert left.bounds[0][0] == -31
    assert (right.length, right.width) == (9 - 0.75, 1.625)


@pytest.mark.parametrize("settings", [{"frieze__projection": "4 3/4"}, {"frieze__place": "in_front"}])
def test_a_frieze_with_no_hollow_before_the_columns_has_no_end_returns(settings):
    assert not of_role(build(frieze__kind="plain", **settings)[1], "frieze end return")


def test_a_tablet_lies_on_the_frieze():
    layout, boards = build(frieze__kind="tablet", tablet__thickness="3/8")
    (tablet,) = of_role(boards, "frieze tablet")
    assert (tablet.length, tablet.width, tablet.thickness) == (16, 5, 0.375)
    assert tablet.bounds[0][2] == layout.frieze_front


def test_without_plinths_nothing_is_wrapped_round_the_feet():
    _, boards = build(plinth__on="no")
    assert not [board for board in boards if "plinth" in board.role]


def test_a_hollow_shelf_is_closed_along_the_front_behind_its_edge_band():
    layout, boards = build(shelf__thickness="3", shelf__edge_height="1")
    (strip,) = of_role(boards, "shelf front strip")
    assert strip.bounds[1][2] == layout.shelf_front - 0.75
    assert strip.bounds[0][2] == layout.shelf_front - 0.75 - 1.5
    assert (strip.bounds[0][1], strip.bounds[1][1]) == (54 - 3 + 0.75, 54 - 0.75)
    assert {rib.bounds[1][2] for rib in of_role(boards, "shelf rib")} == {strip.bounds[0][2]}


def test_a_plank_is_glued_up_from_stock_as_thick_as_the_shelf_and_has_no_edge_band():
    layout, boards = build(shelf__kind="plank", shelf__thickness="2 1/2", shelf__depth="14")
    shelf = [board for board in boards if board.assembly == "shelf"]
    assert {board.role for board in shelf} == {"shelf plank"}
    assert {board.stock.thickness for board in shelf} == {2.5}
    assert sum(board.width for board in shelf) == 14
    assert shelf[0].length == layout.left.shelf_side + layout.right.shelf_side


def test_a_planks_front_edge_is_worked_and_takes_off_what_the_section_leaves_free():
    _, plain = build(shelf__kind="plank", shelf__depth="9")
    _, worked = build(shelf__kind="plank", shelf__depth="9", shelf__edge_profile="bevel")
    (before,), (after,) = of_role(plain, "shelf plank"), of_role(worked, "shelf plank")
    assert after.bounds == before.bounds
    assert before.section_area - 0.75**2 < after.section_area < before.section_area


def test_a_slip_is_a_mitred_frame_on_the_facing_behind_the_plinths():
    layout, boards = build(slip__on="yes", slip__width="3", slip__thickness="1/2")
    head, legs = of_role(boards, "slip head"), of_role(boards, "slip leg")
    assert [head[0].length, *(leg.length for leg in legs)] == [2 * layout.column_inner, 43, 43]
    assert head[0].low.mitre == head[0].high.mitre == 45
    assert {board.bounds[1][2] for board in (*head, *legs)} == {0.5}
    inner_returns = [b for b in of_role(boards, "plinth return") if abs(b.bounds[0][0]) < layout.right.outer]
    assert 0.5 in {board.bounds[0][2] for board in inner_returns}


def test_a_slip_lies_inside_a_back_band_and_takes_what_facing_is_left():
    layout, _ = build(slip__on="yes", slip__width="12", back_band__on="yes", back_band__size="2")
    assert (layout.slip.offset, layout.slip.width) == pytest.approx((2, 11))


def test_an_overmantel_stands_on_the_shelf_up_to_the_ceiling_or_as_high_as_asked():
    layout, boards = build(over__on="yes", room__ceiling="90")
    own = [board for board in boards if board.assembly == "overmantel"]
    assert min(b.bounds[0][1] for b in own) == layout.shelf_top
    assert max(b.bounds[1][1] for b in own) == 90
    assert len(of_role(own, "overmantel stile")) == 4
    low, _ = build(over__on="yes", over__reach="height", over__height="20", room__ceiling="90")
    assert low.over.top == low.shelf_top + 20
    close, _ = build(over__on="yes", room__ceiling="58")
    assert close.over is None
    assert [s.path for s in close.shortfalls] == ["over.height"]


@pytest.mark.parametrize("reveal", ["0.25", "0.75", "1"])
def test_the_ends_of_a_proud_frieze_show_boards_and_no_edge_of_a_sheet(reveal):
    _, boards = build(frieze__projection="6", panel__reveal=reveal)
    stile = next(b for b in boards if b.role == "frieze stile")
    ends = [b for b in boards if b.role == "frieze end return"]
    assert len(ends) == 2
    for end in ends:
        # What closes an end reaches from the frame's back on, and nothing else lies as far out behind it.
        assert end.bounds[1][2] == pytest.approx(stile.bounds[0][2])
    side = max(b.bounds[1][0] for b in ends)
    behind = [b for b in boards if b.assembly == "frieze" and b.bounds[1][0] > side - 1 / 64]
    assert {b.role for b in behind} == {
        "frieze stile",
        "frieze bottom rail",
        "frieze top rail",
        "frieze end return",
        "soffit",
    }
