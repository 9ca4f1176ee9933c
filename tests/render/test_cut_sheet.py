"""The cut list on paper."""

from dataclasses import replace

import pytest

from model.job import default_job
from model.surround import plan_surround
from model.takeoff.cut_list import Cut, list_cuts
from model.units import FEET_INCHES_16, INCHES_16, MILLIMETRES, MM_PER_INCH
from render.cut_sheet import cut_strips, pieces_text, say_assembly
from render.drawing import Drawing, Polyline
from render.extent import list_texts
from render.tables import pour_strips

CUT = Cut(
    mark="C1",
    name="column stile",
    assembly="left column, right column",
    quantity=4,
    stock='3/4" yellow poplar board',
    length=52.3125,
    width=14.25,
    thickness=0.71875,
    ends="both square",
    notes="planed",
    pieces=("C1a", "C1b", "C1c", "C1d"),
)


def words_of(cuts, style=FEET_INCHES_16):
    page = pour_strips(cut_strips(cuts, style, 12.0), (0, 0), 1000)[0]
    return [text.text for text in list_texts(Drawing(page))]


def test_a_line_says_mark_piece_quantity_sizes_stock_ends_and_notes():
    words = words_of((CUT,))
    for said in ("C1a–d", "column stile", "4", "4'-4 5/16\"", "both square", "planed"):
        assert said in words
    assert '3/4" yellow poplar board' in " ".join(words)


def test_widths_and_thicknesses_are_in_inches_to_the_thirty_second():
    words = words_of((CUT,))
    assert '14 1/4"' in words
    assert '23/32"' in words


def test_millimetre_jobs_have_every_size_in_millimetres():
    words = words_of((CUT,), MILLIMETRES)
    assert {"1329 mm", "362 mm", "18 mm"} <= set(words)


def test_every_line_has_a_box_to_tick_and_room_to_write():
    cuts = list_cuts(plan_surround(default_job()))
    strips = cut_strips(cuts, INCHES_16, 9.5)
    boxed = [s for s in strips if any(isinstance(mark, Polyline) for mark in s.marks)]
    assert len(boxed) == len(cuts)
    assert min(strip.height for strip in boxed) * MM_PER_INCH >= 11 - 1e-9


def test_every_cut_of_a_real_surround_is_on_the_list_once():
    cuts = list_cuts(plan_surround(default_job()))
    page = pour_strips(cut_strips(cuts, INCHES_16, 12.0), (0, 0), 1000)[0]
    marks = {pieces_text(cut) for cut in cuts}
    bold = [text.text for text in list_texts(Drawing(page)) if text.bold]
    assert [word for word in bold if word in marks] == [pieces_text(cut) for cut in cuts]
    assert f"Cut list: {sum(cut.quantity for cut in cuts)} pieces on {len(cuts)} lines" in bold


def test_lines_stand_below_their_sub_assembly():
    shelf = replace(CUT, assembly="shelf", mark="S1", pieces=("S1",), quantity=1)
    words = words_of((CUT, shelf))
    order = [words.index(word) for word in ("Left and right column", "C1a–d", "Shelf", "S1")]
    assert order == sorted(order)


@pytest.mark.parametrize(
    ("assembly", "said"),
    [
        ("left column, right column", "Left and right column"),
        ("frieze", "Frieze"),
        ("bed mould", "Bed mould"),
        ("shelf, frieze", "Shelf, frieze"),
    ],
)
def test_a_sub_assembly_is_named_as_it_is_spoken_of(assembly, said):
    assert say_assembly(assembly) == said


@pytest.mark.parametrize(
    ("pieces", "said"), [(("C3",), "C3"), (("C3a", "C3b"), "C3a, b"), (("C3a", "C3b", "C3c"), "C3a–c")]
)
def test_marks_of_several_pieces_are_written_short(pieces, said):
    assert pieces_text(replace(CUT, mark="C3", pieces=pieces)) == said
