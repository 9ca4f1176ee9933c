"""The lines of the surround: what follows from what, and what is said when a value cannot be built."""

import pytest
from hypothesis import given, settings
from hypothesis.strategies import floats

from model.build.layout import lay_out
from model.job import default_job, read_value, with_texts, with_value
from tests.strategies import jobs


def lay(**texts):
    job = with_texts(default_job(), [(path.replace("__", "."), text) for path, text in texts.items()])
    return lay_out(job.site, job.design)


def shortfalls(layout):
    return {s.path: (s.asked, s.built) for s in layout.shortfalls}


def test_default_job_is_built_as_asked():
    assert lay().shortfalls == ()


@pytest.mark.parametrize(("left", "right", "panels"), [("30", "29", [3, 2]), ("29", "30", [2, 3])])
def test_of_columns_on_a_floor_out_of_level_the_one_with_fewer_panels_is_told(left, right, panels):
    low = {"opening__height": "24", "shelf__height": "41", "plinth__height": "24", "column__panels": "4"}
    layout = lay(**low, level__left=left, level__centre="30", level__right=right)
    assert [len(side.frame.openings) for side in layout.sides] == panels
    assert shortfalls(layout) == {"column.panels": (4, 2)}


def test_frieze_hangs_from_the_shelf_and_the_facing_margin_follows():
    layout = lay(shelf__height="54", shelf__thickness="2", frieze__height="9", opening__height="30")
    assert (layout.shelf_bottom, layout.frieze_bottom, layout.facing_margin) == (52, 43, 13)


def test_shelf_height_from_the_floor_counts_the_raised_hearth():
    from_hearth = lay(hearth__height="8", shelf__height="54")
    from_floor = lay(hearth__height="8", shelf__height="54", shelf__height_from="floor")
    assert from_hearth.shelf_top - from_floor.shelf_top == 8


@pytest.mark.parametrize(
    ("hearth_width", "base", "carried"),
    [("100", 0.0, True), ("40", -6.0, False), ("74", 0.0, False)],
)
def test_columns_stand_on_the_hearth_that_carries_them_or_beside_it_on_the_floor(hearth_width, base, carried):
    layout = lay(hearth__height="6", hearth__width=hearth_width)
    assert [(side.base, side.on_hearth) for side in layout.sides] == [(base, carried)] * 2


def test_shelf_lies_against_the_wall_where_the_facing_stays_below_it():
    assert lay(facing__proud="1", facing__height="50").shelf_back == -1
    assert lay(facing__proud="1", facing__height="53").shelf_back == 0


def test_outer_side_goes_back_to_the_wall_only_where_it_is_clear_of_the_facing():
    assert lay(facing__proud="1", facing__width="60").right.outer_back == -1
    assert lay(facing__proud="1", facing__width="77").right.outer_back == 0


def test_too_many_panels_are_reduced_and_said():
    layout = lay(frieze__panels="7", frieze__stile="8")
    assert "frieze.panels" in shortfalls(layout)
    assert len(layout.frieze_frame.openings) < 7


def test_panel_reveal_is_limited_by_the_masonry_behind_a_thin_frieze():
    layout = lay(frieze__projection="3/4", panel__thickness="1/4", panel__reveal="3/4")
    assert shortfalls(layout)["panel.reveal"] == (0.75, 0.5)


def test_bed_mould_never_passes_the_shelf():
    layout = lay(bed_mould__size="4", shelf__overhang_front="2")
    assert layout.mould_size == 2
    assert shortfalls(layout)["bed_mould.size"] == (4, 2)


@pytest.mark.parametrize(
    ("overhangs", "place"),
    [
        ({"shelf__overhang_left": "1"}, "at its left end"),
        ({"shelf__overhang_right": "1"}, "at its right end"),
        ({"shelf__overhang_end": "1"}, "at its ends"),
        ({"shelf__overhang_front": "1"}, "at the front"),
    ],
)
def test_what_makes_the_bed_mould_smaller_names_its_side(overhangs, place):
    layout = lay(bed_mould__size="4", **overhangs)
    (shortfall,) = [s for s in layout.shortfalls if s.path == "bed_mould.size"]
    assert f"the shelf's overhang {place} or" in shortfall.reason


def test_hanging_edge_band_leaves_the_bed_mould_less_room():
    layout = lay(
        bed_mould__size="3", shelf__edge_height="4", shelf__overhang_front="3", shelf__overhang_end="3"
    )
    assert layout.mould_size == 2.25


def test_shelf_depth_is_the_foremost_part_and_the_overhang():
    job = with_value(default_job(), "shelf.depth", 9)
    assert lay_out(job.site, job.design).shelf_front == 9


def test_a_panel_that_nearly_lies_behind_its_frame_stays_out_of_the_masonry():
    """3/4 in. out, less a sheet of 1/4, leaves 1/2 where the boards are 33/64 thick: flush has no room."""
    layout = lay(
        frieze__kind="framed",
        frieze__place="between",
        frieze__projection="3/4",
        board__thickness="33/64",
        panel__thickness="1/4",
        panel__reveal="7/8",
    )
    frame = layout.frieze_frame
    assert (frame.front, frame.reveal, frame.thickness(layout.panel)) == (0.75, 0.5, 0.75)


@settings(max_examples=120, deadline=None)
@given(jobs())
def test_every_layout_has_room_for_what_it_names(job):
    layout = lay_out(job.site, job.design)
    assert layout.frieze_bottom < layout.shelf_bottom < layout.shelf_top
    for side in layout.sides:
        assert side.base <= side.plinth_top < layout.frieze_bottom
        assert (side.plinth_top > side.base) is job.design.plinth.on
        assert 0 < side.inner < side.outer
        assert 0 < layout.column_inner == side.inner_top < side.outer_top <= side.shelf_side
    assert layout.frieze_front >= layout.board
    for frame in (layout.left.frame, layout.right.frame, layout.frieze_frame):
        assert all(x1 - x0 >= 1 - 1e-9 and y1 - y0 >= 1 - 1e-9 for x0, y0, x1, y1 in frame.openings)
        assert all(x1 > x0 and y1 > y0 for x0, y0, x1, y1 in frame.stiles + frame.rails)
        assert 0 < frame.thickness(layout.panel) <= frame.front + 1e-9


@settings(max_examples=80, deadline=None)
@given(jobs(column__kind="framed"))
def test_frame_members_and_panels_fill_the_frame_exactly(job):
    layout = lay_out(job.site, job.design)
    frieze = layout.frieze_frame
    x0, y0, x1, y1 = frieze.outline
    pieces = frieze.stiles + frieze.rails + frieze.openings
    assert sum((b - a) * (d - c) for a, c, b, d in pieces) == pytest.approx((x1 - x0) * (y1 - y0))
    column = layout.right.frame
    heights = sorted(edge for _, a, _, b in column.rails[1:] + column.openings for edge in (a, b))
    assert heights[-1] == layout.shelf_bottom
    assert all(a == pytest.approx(b) for a, b in zip(heights[1:-1:2], heights[2::2], strict=True))


@settings(max_examples=80, deadline=None)
@given(jobs())
def test_a_shortfall_names_the_value_asked_for(job):
    for shortfall in lay_out(job.site, job.design).shortfalls:
        assert read_value(job, shortfall.path) == shortfall.asked
        assert shortfall.built != shortfall.asked
        assert shortfall.reason


def test_each_leg_follows_its_own_level_reading_and_the_shelf_stays():
    # The left foot reads 1/2 in. more than the hearth (lower), the right one 3/8 less (higher).
    level = lay()
    crooked = lay(level__centre="20", level__left="20 1/2", level__right="19 5/8")
    assert (crooked.left.base, crooked.right.base) == (-0.5, 0.375)
    assert crooked.shelf_top == level.shelf_top
    assert crooked.left.plinth_top - crooked.left.base == level.left.plinth_top - level.left.base


def test_a_reading_far_out_of_level_is_taken_for_a_slip():
    layout = lay(level__centre="20", level__left="40")
    assert layout.left.base == -6
    assert shortfalls(layout)["level.left"] == (40, 26)


def test_one_side_may_be_narrower_and_its_shelf_end_shorter():
    layout = lay(column__width_left="5", shelf__overhang_left="1")
    assert layout.left.outer == layout.right.outer - 2.5
    assert (layout.left.shelf_side, layout.right.shelf_side) == (18 + 13 + 5 + 1, 18 + 13 + 7.5 + 3)


@settings(max_examples=60, deadline=None)
@given(jobs(level__left=None, level__right=None, hearth__height=0.0), floats(-1, 1), floats(-1, 1))
def test_changing_a_floor_reading_never_moves_the_shelf(job, left, right):
    before = lay_out(job.site, job.design)
    crooked = with_value(with_value(job, "level.centre", 10.0), "level.left", 10.0 - left)
    after_job = with_value(crooked, "level.right", 10.0 - right)
    after = lay_out(after_job.site, after_job.design)
    if "shelf.height" not in shortfalls(before) and "shelf.height" not in shortfalls(after):
        assert after.shelf_top == before.shelf_top
        assert (after.left.base, after.right.base) == pytest.approx((left, right))


def test_flutes_are_left_out_until_the_rest_fit_the_narrower_column():
    # Seven of 3/4 with 1/2 between need 8 1/4; 5 in. less 1/4 on each side takes four: 3 and 1 1/2.
    layout = lay(
        column__kind="fluted",
        column__width_left="5",
        flute__count="7",
        flute__width="3/4",
        flute__between="1/2",
    )
    assert shortfalls(layout)["flute.count"] == (7, 4)
    assert layout.flutes.across == pytest.approx(4.5)


def test_a_flute_is_no_deeper_than_half_its_width_and_leaves_wood_behind():
    assert lay(column__kind="fluted", flute__width="1/2", flute__depth="1/2").flutes.depth == 0.25
    assert lay(column__kind="fluted", flute__width="2", flute__depth="3/4").flutes.depth == 0.5625


def test_flutes_stop_short_of_plinth_and_capital_between_plain_pieces():
    layout = lay(column__kind="fluted", flute__stop="2", capital__on="yes", capital__size="3")
    assert layout.right.frame.flutes[1::2] == (8 + 2, 43 - 3 - 2)
    assert [y1 - y0 for _, y0, _, y1 in layout.right.frame.stiles] == [10, 28, 14]


def test_flutes_run_from_the_plinth_to_the_bed_mould_when_nothing_stops_them():
    layout = lay(column__kind="fluted", flute__stop="0", bed_mould__size="2")
    assert layout.right.frame.flutes[1::2] == (8, 50)


def test_a_frieze_over_the_columns_reaches_across_them_and_carries_the_shelf_forward():
    layout = lay(frieze__place="in_front", shelf__overhang_front="3")
    assert layout.frieze_frame.outline[::2] == (-38.5, 38.5)
    # Columns 4, panels 3/4 behind the frame's face and 1/4 thick: the sheet lies on the columns.
    assert (layout.frieze_front, layout.shelf_front) == (5, 8)
    assert lay(frieze__place="in_front", frieze__kind="plain").frieze_front == 4.75
    assert lay(frieze__place="in_front", panel__reveal="3/8").frieze_front == 4.75


def test_a_tablet_lies_in_the_middle_of_what_shows_of_the_frieze():
    layout = lay(frieze__kind="tablet", frieze__height="9", bed_mould__size="1")
    assert layout.tablet.outline == (-8, 43 + 1.5, 8, 51 - 1.5)
    tall = lay(frieze__kind="tablet", tablet__height="20", bed_mould__size="1")
    assert shortfalls(tall)["tablet.height"] == (20, 8)


def test_without_plinths_the_columns_stand_on_their_own_feet():
    layout = lay(plinth__on="no", plinth_cap__on="yes")
    assert layout.right.plinth_top == layout.right.base
    assert (layout.plinth_out, layout.mouldings.plinth_cap) == (0, None)
