"""What was left on the masonry is drawn dashed over the wood, with its name and its place."""

from __future__ import annotations

from model.job import default_job, with_texts
from model.surround import plan_surround
from render.drawing import Dimension, Pen, Polyline, Text
from render.extent import text_corners
from render.views import ViewOptions, draw_view

LEFT_ON = ("old_ledger.top=50", "old_ledger.left=20", "bolt_one.across=-32", "bolt_one.up=20")


def draw(*settings: str, view: str = "front"):
    surround = plan_surround(with_texts(default_job(), [tuple(s.split("=")) for s in settings]))
    return surround, draw_view(surround, view, ViewOptions(ratio=12.0)).marks


def test_a_ledger_is_dashed_where_it_lies_and_its_ends_are_dimensioned():
    _, marks = draw(*LEFT_ON)
    (outline,) = (m for m in marks if isinstance(m, Polyline) and m.stands_for == "old_ledger.top")
    assert outline.pen is Pen.GUIDE
    assert set(outline.points) == {(-20, 46.5), (24, 46.5), (24, 50), (-20, 50)}
    sizes = {m.stands_for: m.measure for m in marks if isinstance(m, Dimension)}
    assert (sizes["old_ledger.left"], sizes["old_ledger.right"]) == (20, 24)


def test_names_say_the_place_and_stand_off_the_opening_and_off_dimensions():
    surround, marks = draw(*LEFT_ON)
    names = {m.text: m for m in marks if isinstance(m, Text)}
    assert {"old ledger, top 4'-2\"", "first bolt 2'-8\" left, 1'-8\" up"} <= set(names)
    layout = surround.layout
    for text in (names["old ledger, top 4'-2\""], names["first bolt 2'-8\" left, 1'-8\" up"]):
        xs, ys = zip(*text_corners(text), strict=True)
        assert max(xs) < -layout.opening_side or min(xs) > layout.opening_side or min(ys) > layout.opening_top


def test_nothing_is_dashed_where_nothing_was_left():
    _, marks = draw()
    assert not [m for m in marks if isinstance(m, Polyline) and m.pen is Pen.GUIDE]


def test_a_section_cuts_the_ledger_like_masonry():
    _, marks = draw(*LEFT_ON, view="vertical_section")
    assert any(getattr(m, "stands_for", "") == "old ledger" for m in marks)


def test_a_baseboard_is_named_beside_the_column_on_its_side():
    surround, marks = draw("facing.width=60", "baseboard.height_right=5")
    (name,) = (m for m in marks if isinstance(m, Text) and m.text == "baseboard")
    assert name.at[0] > surround.layout.right.outer + surround.layout.plinth_out
    assert name.stands_for == "baseboard.height_right"


def test_a_stepped_foot_is_dimensioned_down_to_its_floor():
    _, marks = draw("hearth.height=8", "hearth.width=70", "column.over_edge=stepped")
    spans = [m.span for m in marks if isinstance(m, Dimension) and m.vertical]
    assert spans.count((-8, 0)) >= 2
