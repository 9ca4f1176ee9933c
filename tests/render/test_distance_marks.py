"""Each board's tightest place is crossed, each part's tightest distance written where nothing else is."""

from __future__ import annotations

import pytest

from app.demo import list_demos, read_demo
from model.check.board_distance import list_board_distances
from model.surround import plan_surround
from render.distance_marks import draw_distances
from render.drawing import Drawing, Lines, Text
from render.extent import list_texts, text_corners
from render.views import ViewOptions, draw_view
from tests.wood import place_at_corner, surround_of


def _crossing(one: Text, other: Text) -> bool:
    (x0, y0), (x1, y1) = (tuple(f(v) for v in zip(*text_corners(one), strict=True)) for f in (min, max))
    (u0, v0), (u1, v1) = (tuple(f(v) for v in zip(*text_corners(other), strict=True)) for f in (min, max))
    return x0 < u1 and u0 < x1 and y0 < v1 and v0 < y1


@pytest.mark.parametrize("name", list_demos())
@pytest.mark.parametrize("view", ["front", "side"])
def test_distances_are_those_of_the_boards_and_strike_no_writing(name, view):
    surround = plan_surround(read_demo(name))
    under = draw_view(surround, view, ViewOptions())
    marks = draw_distances(surround, view, 12.0, under.marks)
    crosses = [m for m in marks if isinstance(m, Lines)]
    texts = [m for m in marks if isinstance(m, Text)]
    boards = {b.mark: b for b in list_board_distances(surround)}
    assert {m.stands_for for m in crosses} <= set(boards)
    assert 0 < len(texts) <= len({b.part for b in boards.values()})
    written = list(list_texts(under)) + texts
    for i, text in enumerate(texts):
        assert not any(_crossing(text, other) for other in written if other is not text), text
        assert i < len(crosses)


def test_both_measures_stand_at_a_corner_where_they_disagree():
    surround = surround_of(place_at_corner(0.75, 5, 5), site__rule="irc")
    words = [m.text for m in draw_distances(surround, "front", 12.0, ()) if isinstance(m, Text)]
    assert words == ['7 1/16" straight, 5" level or plumb']


def test_from_above_there_is_the_shape_alone():
    surround = plan_surround(read_demo("brick"))
    assert draw_distances(surround, "plan", 12.0, Drawing(()).marks) == []
    shown = draw_view(surround, "plan_section", ViewOptions(clearance=True))
    assert any(m.stands_for == "keep-out" for m in shown.marks)
