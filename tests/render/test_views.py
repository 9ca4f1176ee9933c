"""Views of a whole surround: what they show, where it lies and what is marked on request."""

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import LineString, Polygon

from app.demo import list_demos, read_demo
from model.check.all import check_surround
from model.check.finding import Status
from model.job import default_job, with_texts
from model.surround import plan_surround
from render.dimension_strokes import dimension_strokes
from render.drawing import Dimension, Fill, Hatch, Lines, Pen, Polyline, Region, Text
from render.extent import drawing_extent, text_corners
from render.section_places import section_station
from render.view_marks import SLOPE_WORDS
from render.views import VIEWS, ViewOptions, draw_view, draw_views
from tests.planned import plan_of
from tests.strategies import jobs


def surround(**texts):
    return plan_surround(with_texts(default_job(), [(k.replace("__", "."), v) for k, v in texts.items()]))


def marks_of(drawing, kind):
    return [mark for mark in drawing.marks if isinstance(mark, kind)]


def dimension_of(drawing, path):
    return next(mark for mark in marks_of(drawing, Dimension) if mark.stands_for == path)


def region_of(drawing, fill):
    return next(mark for mark in marks_of(drawing, Region) if mark.fill is fill)


def ring_size(ring):
    xs, ys = zip(*ring, strict=True)
    return max(xs) - min(xs), max(ys) - min(ys)


@pytest.mark.parametrize(
    ("view", "path", "value"),
    [
        ("front", "opening.width", 36),
        ("front", "opening.height", 30),
        ("front", "column.width", 7.5),
        ("front", "column.margin", 13),
        ("front", "plinth.height", 8),
        ("front", "frieze.height", 9),
        ("front", "shelf.height", 54),
        ("front", "shelf.thickness", 2),
        ("front", "shelf.overhang_end", 3),
        ("front", "frieze.stile", 2.5),
        ("front", "bed_mould.size", 1.5),
        ("front", "facing.width", 78),
        ("side", "column.projection", 4),
        ("side", "shelf.depth", 7),
        ("side", "shelf.overhang_front", 3),
        ("side", "hearth.depth", 20),
        ("plan_section", "column.stile", 1.75),
        ("plan_section", "panel.reveal", 0.75),
        ("vertical_section", "frieze.projection", 3),
        ("vertical_section", "frieze.rail", 2),
    ],
)
def test_view_carries_the_dimension_that_the_parameter_drives(view, path, value):
    assert dimension_of(draw_view(surround(), view), path).measure == pytest.approx(value)


def test_opening_is_drawn_where_and_as_large_as_it_was_measured():
    opening = region_of(draw_view(surround(), "front"), Fill.OPENING)
    assert opening.rings == (((-18, 0), (18, 0), (18, 30), (-18, 30)),) or ring_size(opening.rings[0]) == (
        36,
        30,
    )


def test_front_and_side_share_their_heights():
    front, side = draw_views(surround(), ("front", "side"))
    floors = [
        next(m for m in marks_of(d, Lines) if m.stands_for == "floor").segments[0][1] for d in (front, side)
    ]
    ceilings = [
        next(m for m in marks_of(d, Lines) if m.stands_for == "ceiling").segments[0][1] for d in (front, side)
    ]
    assert floors[0] == floors[1]
    assert ceilings[0] == ceilings[1]


def test_side_view_has_the_wall_on_the_right_and_the_shelf_pointing_left():
    wood = region_of(draw_view(surround(), "side"), Fill.WOOD)
    xs = [x for ring in wood.rings for x, _ in ring]
    assert (min(xs), max(xs)) == (-7, 0)


def test_a_low_ceiling_is_drawn_where_it_is_and_a_high_one_says_that_it_is_not():
    low = draw_view(surround(room__ceiling="60"), "front")
    high = draw_view(surround(room__ceiling="108"), "front")
    assert next(m for m in marks_of(low, Lines) if m.stands_for == "ceiling").segments[0][1] == 60
    (note,) = [m for m in marks_of(high, Text) if m.stands_for == "room.ceiling"]
    assert note.text == "Ceiling 9'-0\" over the floor (drawn nearer)"


@pytest.mark.parametrize("view", ["front", "side"])
def test_a_file_that_is_measured_in_has_the_ceiling_where_it_is(view):
    job = surround(room__ceiling="108")
    drawing = draw_view(job, view, ViewOptions(true_heights=True))
    (ceiling,) = [m for m in marks_of(drawing, Lines) if m.stands_for == "ceiling"]
    assert ceiling.segments[0][1] == ceiling.segments[0][3] == job.layout.ceiling
    assert not [m for m in marks_of(drawing, Text) if "nearer" in m.text]


def test_facing_is_hatched_only_where_no_wood_hides_it():
    drawing = draw_view(surround(), "front")
    (hatch,) = [m for m in marks_of(drawing, Hatch) if m.stands_for == "facing"]
    wood = region_of(drawing, Fill.WOOD)
    covered = shapely.Polygon(wood.rings[0], wood.rings[1:])
    for ring in hatch.rings:
        assert shapely.Polygon(ring).representative_point().disjoint(covered.buffer(-0.01))


def test_sections_hatch_every_board_they_cut():
    job_surround = surround()
    drawing = draw_view(job_surround, "vertical_section")
    at = section_station(job_surround)
    cut = [b for b in job_surround.boards if b.bounds[0][0] < at < b.bounds[1][0]]
    assert len([m for m in marks_of(drawing, Region) if m.fill is Fill.CUT_WOOD]) == len(cut)
    assert Pen.CUT in {m.pen for m in marks_of(drawing, Lines)}


def test_section_goes_through_a_panel_and_not_through_a_stile():
    for count in range(1, 8):
        job_surround = surround(frieze__panels=str(count))
        at = section_station(job_surround)
        assert any(x0 < at < x1 for x0, _, x1, _ in job_surround.layout.frieze_frame.openings)


def test_keep_out_is_drawn_on_request_only():
    plain, shown = (draw_view(surround(), "front", ViewOptions(clearance=c)) for c in (False, True))
    assert not [m for m in plain.marks if m.stands_for == "keep-out"]
    (band, *_) = [m for m in marks_of(shown, Polyline) if m.stands_for == "keep-out"]
    assert ring_size(band.points) == pytest.approx((36 + 12, 36))


def test_allowed_projection_rises_from_three_quarters_to_one_and_a_half_on_the_side_view():
    drawing = draw_view(surround(site__rule="irc"), "side", ViewOptions(clearance=True))
    (line,) = [m for m in marks_of(drawing, Polyline) if m.stands_for == "keep-out"]
    # IRC 2018 R1001.11 exception 4: none within 6 in., then 1/8 in. for each inch up to 12 in.
    assert (-0.75, 36) in line.points
    assert (-1.5, 42) in line.points


def test_a_failing_part_is_outlined_numbered_and_put_in_words():
    failing = surround(column__margin="9")
    findings = check_surround(failing)
    drawing = draw_view(failing, "front", ViewOptions(findings=findings))
    fails = [f for f in findings if f.status is Status.FAIL and f.at]
    words = [m.text for m in marks_of(drawing, Text) if m.pen is Pen.FAULT]
    assert [w for w in words if w.isdigit()] == [str(n + 1) for n in range(len(fails))]
    assert any(w.endswith('Left column over: 9" from the opening, 12" needed') for w in words)
    assert [m for m in marks_of(drawing, Polyline) if m.pen is Pen.FAULT and m.stands_for == "left column"]


def test_an_unknown_view_is_an_error():
    with pytest.raises(KeyError):
        draw_view(surround(), "rear")


@settings(max_examples=15, deadline=None)
@given(jobs(), st.sampled_from(VIEWS), st.sampled_from((4, 12, 48)))
def test_every_job_in_range_can_be_drawn(job, view, ratio):
    drawing = draw_view(plan_of(job), view, ViewOptions(ratio=ratio, clearance=True))
    low_x, low_y, high_x, high_y = drawing_extent(drawing)
    assert high_x > low_x
    assert high_y > low_y
    for dimension in marks_of(drawing, Dimension):
        assert dimension.measure > 0


def test_ground_is_drawn_as_it_was_found_under_feet_out_of_level():
    drawing = draw_view(surround(level__centre="20", level__left="20 3/4", level__right="19 1/2"), "front")
    (ground,) = [m for m in marks_of(drawing, Polyline) if m.pen is Pen.GROUND]
    heights = [y for _, y in ground.points]
    assert (heights[0], heights[-1]) == (-0.75, 0.5)
    assert heights[2:4] == [0, 0]


@pytest.mark.parametrize("view", ["side", "plan", "vertical_section"])
def test_a_stepped_shelf_gives_its_step_beside_the_depth_between_the_columns(view):
    drawing = draw_view(surround(shelf__step="1 1/2"), view)
    assert (dimension_of(drawing, "shelf.step").text, dimension_of(drawing, "shelf.depth").text) == (
        '1 1/2"',
        '7"',
    )


def test_a_stepped_shelfs_breaks_are_measured_along_its_front_in_plan():
    texts = [d.text for d in marks_of(draw_view(surround(shelf__step="1 1/2"), "plan"), Dimension)]
    assert texts.count("1'-1 1/2\"") == 2
    assert "4'-8\"" in texts


def test_a_shelf_over_a_proud_facing_is_measured_to_the_wall():
    planned = surround(facing__proud="3", facing__height="40", facing__width="100")
    drawing = draw_view(planned, "vertical_section")
    layout = planned.layout
    assert layout.shelf_back < 0
    measures = [m.measure for m in drawing.marks if isinstance(m, Dimension) and not m.vertical]
    assert pytest.approx(layout.shelf_front - layout.shelf_back) in measures


@pytest.mark.parametrize("name", list_demos())
@pytest.mark.parametrize("view", ["side", "vertical_section"])
def test_no_dimension_strikes_what_the_keep_outs_slope_means(name, view):
    drawing = draw_view(plan_surround(read_demo(name)), view, ViewOptions(16.0, clearance=True))
    words = [m for m in drawing.marks if isinstance(m, Text) and m.text in SLOPE_WORDS]
    for mark in drawing.marks:
        if isinstance(mark, Dimension):
            for x0, y0, x1, y1 in dimension_strokes(mark, 16.0):
                for text in words:
                    line = LineString([(x0, y0), (x1, y1)])
                    written = Polygon(text_corners(text)).buffer(-1e-6)
                    assert not line.intersects(written), (text.text, mark.text)
