"""What frames a view holds all that is drawn at its foot: strings of dimensions begin beside it."""

import pytest

from app.demo import read_demo
from model.job import with_texts
from model.surround import plan_surround
from render.drawing import Dimension, Polyline
from render.extent import box_of, list_words
from render.view_context import BREAK, Frame, draw_context
from render.views import VIEWS, ViewOptions, draw_view, project_boards
from tests.bench.collisions import build_random_job


@pytest.mark.parametrize("number", range(12))
def test_no_board_of_a_random_design_reaches_below_the_frame_of_a_view(number):
    surround = plan_surround(build_random_job(number))
    for view in VIEWS:
        projection, _ = project_boards(surround, view)
        ys = [y for ring in projection.wood_rings for _, y in ring]
        assert not ys or min(ys) > Frame.around(surround, view).bottom - 1e-6, view


def sign_of(beside):
    """The box of the break sign on the side view's wall at 1:12, texts standing so far off the wall."""
    surround = plan_surround(with_texts(read_demo("brick"), [("room.ceiling", "12'")]))
    frame, wall = Frame.around(surround, "side"), -surround.layout.wall
    bare = draw_context(surround, "side", frame, [], 12.0)
    (line,) = (mark for mark in bare if mark.stands_for == "wall")
    x, y = wall - beside, (line.points[1][1] + line.points[-2][1]) / 2
    text = Dimension((x - 5, y - 5), (x, y - 5), False, y - 3, "1 1/2", (x - 2.4, y), 3 / 25.4 * 12, True)
    marks = draw_context(surround, "side", frame, [text], 12.0)
    (line,) = (mark for mark in marks if mark.stands_for == "wall")
    return (box_of(line.points[1:-1]), text) if isinstance(line, Polyline) else (None, text)


def test_a_break_sign_is_as_large_as_a_text_beside_it_lets_it_be():
    (left, low, right, high), _ = sign_of(3.0)
    assert (right - left, high - low) == pytest.approx((BREAK * 12, 2 * BREAK * 12))
    (left, low, right, high), text = sign_of(0.0)
    assert 0 < high - low < 2 * BREAK * 12
    (word,) = list_words([text])
    assert word[2] < left


def test_no_break_sign_is_drawn_under_a_text():
    assert sign_of(-2.0)[0] is None


def test_dimensions_over_a_shelf_stand_over_an_opening_that_is_higher_than_it():
    surround = plan_surround(
        with_texts(read_demo("brick"), [("opening.height", "84"), ("shelf.height", "50")])
    )
    assert surround.layout.opening_top > surround.layout.shelf_top
    drawing = draw_view(surround, "front", ViewOptions(12.0))
    level = [m for m in drawing.marks if isinstance(m, Dimension) and not m.vertical]
    assert all(m.text_at[1] > surround.layout.opening_top or m.text_at[1] < 0 for m in level)


@pytest.mark.parametrize("view", ["front", "side"])
def test_a_ceiling_is_never_drawn_along_a_dimension_line(view):
    """At every scale of a sheet that shrinks, the ceiling at its true height among the strings."""
    surround, met = plan_surround(read_demo("brick")), 0
    for step in range(120, 480, 2):
        ratio = step / 10
        marks = draw_view(surround, view, ViewOptions(ratio)).marks
        (line,) = (mark for mark in marks if mark.stands_for == "ceiling")
        for m in marks:
            if (
                isinstance(m, Dimension)
                and not m.vertical
                and abs(m.line - line.segments[0][1]) < 0.02 * ratio
            ):
                met += 1
                assert not any(a < m.span[1] and m.span[0] < b for a, _, b, _ in line.segments), (ratio, m)
    assert met
