"""The SVG as an XML reader sees it: physical size, places, writing, areas."""

from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from export.svg import MARGIN, write_svg
from model.units import MM_PER_INCH
from render.drawing import (
    Anchor,
    Dimension,
    Drawing,
    Fill,
    Hatch,
    Lines,
    Pen,
    Polyline,
    Region,
    Text,
)
from render.pens import TINTS

NS = "{http://www.w3.org/2000/svg}"
OPENING = ((-18.0, 0.0), (18.0, 0.0), (18.0, 30.0), (-18.0, 30.0))
DRAWING = Drawing(
    (
        Region(Fill.OPENING, (OPENING,), "opening"),
        Hatch(Pen.HATCH, (OPENING,), 45, 3),
        Polyline(Pen.OUTLINE, OPENING, closed=True, stands_for="C1a"),
        Lines(Pen.CLEARANCE, ((-18, 30, 18, 30),)),
        Dimension((-18, 0), (18, 0), False, -6, "3'-0\"", (0, -4.8), 1.5, stands_for="opening.width"),
        Text("brick & <stone>", (6, 36), 1.5),
        Text("turned", (0, 10), 1.5, Anchor.MIDDLE, 90, bold=True),
    ),
    12,
)


def parse(text):
    return ElementTree.fromstring(text.encode())


def texts(root):
    return {element.text: element for element in root.iter(NS + "text")}


def test_it_is_as_large_as_the_drawing_at_its_ratio_with_a_margin():
    outline = Drawing((Polyline(Pen.OUTLINE, OPENING, closed=True),), 12)
    root = parse(write_svg(outline))
    assert root.get("width") == f"{36 / 12 + 2 * MARGIN:g}in"
    assert root.get("height") == f"{30 / 12 + 2 * MARGIN:g}in"
    view = [float(v) for v in root.get("viewBox").split()]
    assert view == pytest.approx([0, 0, 3.5 * MM_PER_INCH, 3 * MM_PER_INCH], abs=1e-3)


def test_lines_are_at_scale_in_millimetres_with_y_downwards():
    root = parse(write_svg(Drawing((Lines(Pen.OUTLINE, ((0, 0, 36, 0), (0, 0, 0, 30))),), 12)))
    (path,) = root.iter(NS + "path")
    level, plumb = path.get("d").strip("M").split("M")
    x1, y1, x2, y2 = (float(v) for v in level.replace("L", " ").split())
    assert (x2 - x1) == pytest.approx(3 * MM_PER_INCH, abs=1e-3)
    assert y1 == y2
    _, low, _, high = (float(v) for v in plumb.replace("L", " ").split())
    assert high < low


def test_writing_stays_writing_with_its_size_and_anchor():
    found = texts(parse(write_svg(DRAWING)))
    assert set(found) == {"3'-0\"", "brick & <stone>", "turned"}
    dimension = found["3'-0\""]
    assert float(dimension.get("font-size")) * 0.66 == pytest.approx(0.125 * MM_PER_INCH, abs=1e-3)
    assert dimension.get("text-anchor") == "middle"
    assert found["turned"].get("transform").startswith("rotate(-90 ")
    assert found["turned"].get("font-weight") == "600"


def test_the_typeface_is_named():
    assert "Source Sans 3" in write_svg(DRAWING)


def test_areas_are_filled_by_the_even_odd_rule():
    area = next(p for p in parse(write_svg(DRAWING)).iter(NS + "path") if p.get("fill-rule") == "evenodd")
    assert area.get("fill") == TINTS[Fill.OPENING]


def test_marks_say_what_they_stand_for():
    found = {element.get("data-for") for element in parse(write_svg(DRAWING)).iter()}
    assert {"opening", "C1a", "opening.width"} <= found


def test_dashed_pens_are_dashed():
    dashed = [p for p in parse(write_svg(DRAWING)).iter(NS + "path") if p.get("stroke-dasharray")]
    assert [p.get("class") for p in dashed] == ["clearance"]


def test_the_same_drawing_gives_the_same_text():
    assert write_svg(DRAWING, "Front") == write_svg(DRAWING, "Front")


def test_a_title_is_carried():
    assert parse(write_svg(DRAWING, "Zoë’s <mantel>")).find(NS + "title").text == "Zoë’s <mantel>"


@given(st.text(max_size=30))
def test_any_writing_gives_readable_xml(text):
    root = parse(write_svg(Drawing((Text("x" + text, (0, 0), 1.5, stands_for=text),), 12), text))
    assert next(root.iter(NS + "text")).text.startswith("x")


def test_a_drawing_without_marks_or_with_no_number_is_refused():
    with pytest.raises(ValueError, match="without marks"):
        write_svg(Drawing(()))
    with pytest.raises(ValueError, match="finite"):
        write_svg(Drawing((Lines(Pen.EDGE, ((0, 0, float("inf"), 0),)),)))
