"""Marks of boards: on every board that is seen, where its wood is, clear of lines and of each other."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from shapely import LineString, Point, Polygon, box, union_all

from app.demo import list_demos, read_demo
from model.job import default_job, with_texts
from model.surround import plan_surround
from model.takeoff.cut_list import list_cuts
from render.board_marks import kind_of, mark_seen
from render.boards_sheet import BOARDS_OF, draw_boards, list_left_out
from render.drawing import Lines, Polyline, Text
from render.extent import text_corners
from render.number_places import list_strokes, list_words
from render.views import VIEWS, ViewOptions, draw_view, project_boards
from tests.planned import plan_of
from tests.strategies import jobs

RATIO = 16.0


def _marked(surround, view, ratio=RATIO):
    drawing = draw_view(surround, view, ViewOptions(ratio=ratio, dimensions=False))
    return drawing, mark_seen(surround, view, ratio, drawing.marks)


def _box(text: Text):
    return Polygon(text_corners(text)).buffer(-1e-6)


@pytest.mark.parametrize("name", list_demos())
@pytest.mark.parametrize("view", VIEWS)
def test_marks_are_struck_by_no_line_and_cover_no_other(name, view):
    drawing, found = _marked(plan_surround(read_demo(name)), view)
    texts = [mark for mark in found.marks if isinstance(mark, Text)]
    strokes = union_all([LineString([s[:2], s[2:]]) for s in list_strokes(drawing.marks, RATIO)])
    words = [box(*word) for word in list_words(drawing.marks)]
    for i, text in enumerate(texts):
        mine = _box(text)
        assert not mine.intersects(strokes), text.text
        assert not any(mine.intersects(other) for other in [*words, *map(_box, texts[:i])]), text.text


@pytest.mark.parametrize("name", list_demos())
def test_no_join_goes_through_a_word(name):
    _, found = _marked(plan_surround(read_demo(name)), "front")
    texts = {i: _box(m) for i, m in enumerate(found.marks) if isinstance(m, Text)}
    for i, mark in enumerate(found.marks):
        if isinstance(mark, Lines):
            ((x1, y1, x2, y2),) = mark.segments
            whose = {j for j, area in texts.items() if area.intersects(LineString([(x1, y1), (x2, y2)]))}
            assert not whose - {i - 2}, mark.stands_for


def test_a_mark_inside_and_a_dot_outside_lie_on_their_own_board():
    surround = plan_surround(default_job())
    projection, places = project_boards(surround, "front")
    wood = {}
    for owner in projection.seen_owners():
        if owner < projection.solids.site_start:
            for ring in projection.rings_of(owner):
                wood.setdefault(kind_of(surround.marks[places[owner]]), []).append(Polygon(ring))
    _, found = _marked(surround, "front")
    dots = [mark for mark in found.marks if isinstance(mark, Polyline)]
    inside = [mark for mark in found.marks if isinstance(mark, Text)][: -len(dots)]
    assert dots
    assert inside
    for dot in dots:
        middle = Point(sum(x for x, _ in dot.points) / 4, sum(y for _, y in dot.points) / 4)
        assert any(area.covers(middle) for area in wood[dot.stands_for]), dot.stands_for
    for text in inside:
        assert any(area.covers(_box(text)) for area in wood[text.text]), text.text


@pytest.mark.parametrize("name", list_demos())
def test_every_line_of_the_cut_list_is_found_on_one_of_the_drawings(name):
    """But what lies wholly behind other wood: uprights and backs that no view and no section shows."""
    surround = plan_surround(read_demo(name))
    drawn, seen = set(), set()
    for sheet, view in BOARDS_OF.items():
        marks = {m.text for m in draw_boards(surround, sheet, 8.0).marks if isinstance(m, Text)}
        drawn |= marks | set(list_left_out(surround, sheet, 8.0))
        projection, places = project_boards(surround, view)
        owners = [o for o in projection.seen_owners() if o < projection.solids.site_start]
        seen |= {kind_of(surround.marks[places[owner]]) for owner in owners}
    kinds = {
        kind_of(mark) for cut in list_cuts(surround) for mark in surround.marks if kind_of(mark) == cut.mark
    }
    assert drawn & kinds
    assert len(drawn & kinds) > 0.6 * len(kinds)
    assert (drawn & kinds) <= seen


@settings(max_examples=15, deadline=None)
@given(jobs())
def test_every_kind_that_shows_enough_is_marked_or_named_as_left_out(job):
    surround = plan_of(job)
    _, found = _marked(surround, "front")
    marks = {m.text for m in found.marks if isinstance(m, Text)} | set(found.left_out)
    projection, places = project_boards(surround, "front")
    for owner in projection.seen_owners():
        if owner < projection.solids.site_start:
            rings = [Polygon(ring) for ring in projection.rings_of(owner)]
            if len(rings) == 1 and rings[0].area > 0.01 * RATIO**2:
                assert kind_of(surround.marks[places[owner]]) in marks


def test_a_piece_has_the_mark_of_its_kind():
    assert [kind_of(mark) for mark in ("C4b", "C4", "S12ab")] == ["C4", "C4", "S12"]


def test_nothing_is_marked_on_the_dark_of_the_opening():
    job = with_texts(
        default_job(), [("panel_mould.on", "yes"), ("back_band.on", "yes"), ("capital.on", "yes")]
    )
    surround = plan_surround(job)
    opening = job.site.opening
    dark = box(-opening.width / 2, 0, opening.width / 2, opening.height)
    _, found = _marked(surround, "front", 24.0)
    assert not any(dark.intersects(_box(m)) for m in found.marks if isinstance(m, Text))
