"""The sheets of random designs have nothing on them that stands in the way; and the search for it finds it.

``python -m tests.bench.collisions`` looks through many more.
"""

from dataclasses import replace

import pytest

from app.demo import list_demos, read_demo
from model.job import with_value
from model.surround import plan_surround
from model.takeoff.cut_list import list_cuts
from render.drawing import (
    Dimension,
    Drawing,
    Fill,
    Hatch,
    Lines,
    Pen,
    Placed,
    Polyline,
    Region,
    Sheet,
    Text,
)
from render.label_sheet import build_label_sheets, list_labels
from render.label_stock import STOCKS
from render.measuring_sheet import build_measuring_sheets
from render.sheets import Block, draw_frame
from render.title_block import TitleBlock
from tests.bench.collisions import TINY, TURNS, build_random_job, look_through
from tests.collisions import list_collisions

BLOCK = TitleBlock("job", "client", "maker", "2026-01-02", "title", "1 of 1", "1:1", "Inches")
GROUND = ((2.9, 3.9), (4.2, 3.9), (4.2, 4.3), (2.9, 4.3))


def kinds_on(*marks, name="front", more=()):
    frame = Placed(draw_frame(11, 8.5, Block.BESIDE, BLOCK), (0.0, 0.0), "frame")
    sheet = Sheet("1", "t", 11, 8.5, (Placed(Drawing(marks), (0.0, 0.0), name), *more, frame))
    return {collision.kind for collision in list_collisions(sheet)}


WORD = Text("shelf", (3.0, 4.0), 0.12)


def test_a_frame_and_a_word_alone_are_in_nobodys_way():
    assert kinds_on(WORD) == set()


@pytest.mark.parametrize(
    "line",
    [
        Lines(Pen.EDGE, ((2.5, 4.05, 5.0, 4.05),)),
        Polyline(Pen.EDGE, ((3.1, 3.0), (3.1, 5.0))),
        Hatch(Pen.HATCH, (GROUND,), 45.0, 0.05),
        Dimension((2.0, 3.0), (5.0, 3.0), False, 4.05, "", (3.5, 4.6), 0.12),
    ],
)
def test_a_line_through_a_word_is_found_whatever_draws_it(line):
    assert kinds_on(line, WORD) == {"crossed"}
    assert kinds_on(WORD, line) == {"crossed"}


def test_a_line_that_an_area_covers_is_not_there():
    line, ground = Lines(Pen.EDGE, ((2.5, 4.05, 5.0, 4.05),)), Region(Fill.PAPER, (GROUND,))
    assert kinds_on(line, ground, WORD) == set()
    assert kinds_on(ground, line, WORD) == {"crossed"}


def test_words_over_each_other_are_found_turned_ones_too():
    assert kinds_on(WORD, Text("band", (3.2, 4.02), 0.12)) == {"overlap"}
    assert kinds_on(WORD, Text("band", (3.3, 3.8), 0.12, rotation=90.0)) == {"overlap"}
    assert kinds_on(WORD, Text("band", (3.3, 4.2), 0.12, rotation=90.0)) == set()


def test_small_and_faint_writing_is_found():
    assert kinds_on(Text("shelf", (3.0, 4.0), 2.4 / 25.4)) == {"small"}
    assert kinds_on(Region(Fill.OPENING, (GROUND,)), WORD) == {"faint"}


def test_what_leaves_its_room_is_found():
    assert "outside" in kinds_on(Polyline(Pen.EDGE, ((8.0, 4.0), (9.0, 4.0))))
    assert kinds_on(Text("shelf", (1.0, 7.8), 0.12)) == set()
    assert "outside" in kinds_on(Text("shelf", (1.0, 8.0), 0.12))


def test_drawings_that_reach_into_each_other_are_found():
    other = Placed(Drawing((Polyline(Pen.EDGE, ((3.0, 3.0), (6.0, 6.0))),)), (0.0, 0.0), "side")
    assert kinds_on(Polyline(Pen.EDGE, ((2.0, 2.0), (4.0, 4.0))), more=(other,)) == {"on each other"}
    assert kinds_on(Polyline(Pen.EDGE, ((2.0, 2.0), (2.9, 2.9))), more=(other,)) == set()


def test_words_beside_a_template_stay_where_printers_print():
    sheet = Sheet("1", "t", 11, 8.5, (Placed(Drawing((WORD,)), (-2.9, 0.0), "joins"),))
    assert {collision.kind for collision in list_collisions(sheet)} == {"outside"}
    assert not list_collisions(replace(sheet, placed=(Placed(Drawing((WORD,)), (0.0, 0.0), "joins"),)))


@pytest.mark.parametrize("number", [3])
def test_nothing_is_in_the_way_on_the_sheets_of_random_designs(number):
    paper, units = TURNS[number % len(TURNS)]
    job = with_value(build_random_job(number), "job.units", units)
    assert [str(collision) for _, collision in look_through(job, (paper,))] == []


@pytest.mark.parametrize("number", range(20))
def test_labels_of_random_designs_hold_words_that_can_be_read_on_any_size_asked_for(number):
    surround = plan_surround(build_random_job(number))
    labels = list_labels(surround, list_cuts(surround))
    for stock in (*STOCKS.values(), *TINY):
        for sheet in build_label_sheets(labels, stock, outlined=True):
            assert [str(collision) for collision in list_collisions(sheet)] == []


@pytest.mark.parametrize(("paper", "units"), TURNS)
def test_nothing_is_in_the_way_on_measuring_sheets(paper, units):
    sheets = build_measuring_sheets(paper, units)
    assert [str(collision) for sheet in sheets for collision in list_collisions(sheet)] == []


@pytest.mark.parametrize(("paper", "units"), [("letter", "both"), ("a4", "millimetres")])
@pytest.mark.parametrize("name", list_demos())
def test_nothing_is_in_the_way_beside_the_shipped_jobs_packets(name, paper, units):
    job = with_value(read_demo(name), "job.units", units)
    assert [f"{where} {collision}" for where, collision in look_through(job, (paper,), beside=True)] == []


@pytest.mark.parametrize(("paper", "units"), [("letter", "feet_inches"), ("a3", "millimetres")])
@pytest.mark.parametrize("name", list_demos())
def test_nothing_is_in_the_way_on_the_shipped_jobs_sheets(name, paper, units):
    job = with_value(read_demo(name), "job.units", units)
    assert [str(collision) for _, collision in look_through(job, (paper,))] == []
