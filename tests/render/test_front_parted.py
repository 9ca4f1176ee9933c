"""The front's dimensions over two sheets: nothing lost, nothing twice."""

from functools import cache

import pytest

from app.demo import list_demos, read_demo
from model.surround import plan_surround
from render.dimension_strings import Edge, measure
from render.drawing import Dimension
from render.front_parted import FRAME_SIZES, draw_frame_sizes, draw_main_sizes, shows_frames
from render.views import ViewOptions, draw_view

surround_of = cache(lambda name: plan_surround(read_demo(name)))


def reaches_of(drawing):
    found = [mark for mark in drawing.marks if isinstance(mark, Dimension)]
    return sorted((d.vertical, *(round(value, 6) for value in d.span), d.stands_for) for d in found)


@pytest.mark.parametrize("name", list_demos())
def test_both_sheets_together_give_each_dimension_once(name):
    surround = surround_of(name)
    whole = reaches_of(draw_view(surround, "front", ViewOptions(ratio=24)))
    main = reaches_of(draw_main_sizes(surround, "front", 24))
    frames = reaches_of(draw_frame_sizes(surround, "front_frames", 24))
    assert sorted(main + frames) == whole
    assert main
    assert frames


def test_stiles_and_rails_are_frame_sizes_and_the_opening_is_not():
    assert shows_frames(measure(Edge.ABOVE, (0, 0, ""), (2, 0, "frieze.stile"), (9, 0, "")))
    assert not shows_frames(measure(Edge.BELOW, (0, 0, ""), (36, 0, "opening.width")))


@pytest.mark.parametrize("name", list_demos())
def test_main_sizes_stand_for_no_frame_size(name):
    shown = {stands_for for *_, stands_for in reaches_of(draw_main_sizes(surround_of(name), "front", 24))}
    assert not shown & FRAME_SIZES
    assert {"opening.width", "opening.height", "column.width"} <= shown


def test_the_ceiling_is_shown_with_the_main_sizes_alone():
    surround = surround_of("brick")
    main, frames = draw_main_sizes(surround, "front", 24), draw_frame_sizes(surround, "front_frames", 24)
    assert any(mark.stands_for == "room.ceiling" for mark in main.marks)
    assert not any(mark.stands_for in ("ceiling", "room.ceiling") for mark in frames.marks)
