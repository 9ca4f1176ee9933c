"""The DXF text, read back by two readers: ezdxf, and GDAL as one that shares no code with the writer."""

from __future__ import annotations

import re
import subprocess
import sys
from dataclasses import replace
from io import StringIO
from pathlib import Path
from typing import Any

import ezdxf
import pyogrio
import pytest
import shapely
from ezdxf.document import Drawing as Document

from export.dxf import write_dxf
from export.dxf_file import R12
from export.dxf_layers import LEGAL_WEIGHTS, find_layer
from model.units import FEET_INCHES_16, INCHES_16, MILLIMETRES, LengthStyle
from render.dimension_strings import format_dimension
from render.drawing import (
    Anchor,
    Dimension,
    Drawing,
    Fill,
    Hatch,
    Lines,
    Mark,
    Pen,
    Placed,
    Polyline,
    Region,
    Text,
)
from render.pens import STROKES, contrast

RATIO = 12.0
OUTLINE = Lines(Pen.OUTLINE, ((-30, 0, 30, 0), (30, 0, 30, 52.5), (30, 52.5, -30, 52.5), (-30, 52.5, -30, 0)))
WIDTH = Dimension(
    (-26.3125, 0), (26, 0), False, -9, "4'-4 5/16\"", (-0.15625, -7.5), 1.5, stands_for="opening.width"
)
HEIGHT = Dimension((30, 0), (30, 52.5), True, 40, "4'-4 1/2\"", (38.5, 26.25), 1.5)
SMALL = Dimension((26, 0), (26.5, 0), False, -9, '1/2"', (29, -13), 1.5, lifted=True)
AREA = Hatch(
    Pen.HATCH,
    (((-30, 0), (-18, 0), (-18, 30), (-30, 30)), ((-28, 5), (-20, 5), (-20, 9), (-28, 9))),
    45.0,
    3.0,
)
MARKS: tuple[Mark, ...] = (
    Region(Fill.OPENING, (((-18, 0), (18, 0), (18, 30), (-18, 30)),)),
    OUTLINE,
    Lines(Pen.EDGE, ((-10, 5, -10, 20),)),
    Lines(Pen.CENTRE, ((0, -2, 0, 60),)),
    Polyline(Pen.CLEARANCE, ((-24, 0), (-24, 36), (24, 36), (24, 0))),
    AREA,
    WIDTH,
    HEIGHT,
    SMALL,
    Text("C1", (0, 40), 1.5, Anchor.MIDDLE, stands_for="C1"),
    Text("45\u00b0 \u00d7 2", (0, 44), 1.5, bold=True),
    Text("bed mould", (36, 58), 1.5),
)


def _write(
    marks: tuple[Mark, ...] = MARKS, view: str = "front", lengths: LengthStyle = FEET_INCHES_16
) -> str:
    return write_dxf((Placed(Drawing(marks, RATIO), (0, 0), view),), RATIO, "A job \u2014 invented", lengths)


def _read(text: str) -> Document:
    return ezdxf.read(StringIO(text))


def _read_with_gdal(text: str, folder: Path) -> list[dict[str, Any]]:
    path = folder / "drawing.dxf"
    path.write_text(text, "ascii")
    about, _, shapes, columns = pyogrio.raw.read(
        path, sql="SELECT *, OGR_STYLE FROM entities", sql_dialect="OGRSQL"
    )
    names = list(about["fields"])
    return [
        dict(zip(names, values, strict=True)) | {"shape": shapely.from_wkb(shape)}
        for shape, *values in zip(shapes, *columns, strict=True)
    ]


def _list_block_texts(document: Document) -> list[str]:
    dimensions = document.modelspace().query("DIMENSION")
    return [e.plain_text() for d in dimensions for e in d.get_geometry_block() if e.dxftype() == "MTEXT"]


def test_audit_finds_neither_errors_nor_anything_to_fix():
    report = _read(_write()).audit()
    assert not report.errors
    assert not report.fixes


def test_it_says_inches_and_shows_line_weights():
    header = _read(_write()).header
    wanted = {"$INSUNITS": 1, "$MEASUREMENT": 0, "$LUNITS": 4, "$LWDISPLAY": 1, "$LTSCALE": 1}
    assert {name: header[name] for name in wanted} == wanted


def test_gdal_finds_the_outline_full_size_on_its_layer(tmp_path: Path):
    found = [row["shape"] for row in _read_with_gdal(_write(), tmp_path) if row["Layer"] == "A-ELEV-OTLN"]
    assert len(found) == 1
    assert shapely.Polygon(found[0].coords).area == pytest.approx(60 * 52.5)


def test_gdal_reads_line_weights_and_dashes(tmp_path: Path):
    styles = {row["Layer"]: row["OGR_STYLE"] for row in _read_with_gdal(_write(), tmp_path)}
    assert "w:0.5g" in styles["A-ELEV-OTLN"]
    assert "w:0.35g" in styles["A-ELEV-EDGE"]
    dashes = re.search(r'p:"([^"]+)"', styles["A-ELEV-CNTR"])
    assert dashes
    plotted_mm = [float(item.removesuffix("g")) / RATIO * 25.4 for item in dashes[1].split()]
    assert plotted_mm == pytest.approx(STROKES[Pen.CENTRE].dash)


def test_dashes_of_r12_are_as_long_in_the_model_as_those_of_a_newer_file():
    """Its entities have no scale of their own, so that the line type has it."""
    placed = Placed(Drawing(MARKS, RATIO), (0, 0), "front")
    document = _read(write_dxf((placed,), RATIO, "", FEET_INCHES_16, version=R12))
    (line,) = document.modelspace().query('LINE[layer=="A-ELEV-CNTR"]')
    strokes = [
        tag.value for tag in document.linetypes.get(line.dxf.linetype).pattern_tags.tags if tag.code == 49
    ]
    plotted_mm = [abs(stroke) / RATIO * 25.4 for stroke in strokes]
    assert plotted_mm == pytest.approx(STROKES[Pen.CENTRE].dash)


def test_gdal_reads_every_dimension_text_as_it_was_placed(tmp_path: Path):
    rows = _read_with_gdal(_write(), tmp_path)
    found = {row["Text"]: row["shape"] for row in rows if row["Layer"] == "A-ANNO-DIMS" and row["Text"]}
    for dimension in (WIDTH, HEIGHT, SMALL):
        place = found.pop(dimension.text)
        assert (place.x, place.y) == pytest.approx(dimension.text_at)
    assert not found


def test_gdal_finds_the_hatched_area_without_its_hole(tmp_path: Path):
    (area,) = [row["shape"] for row in _read_with_gdal(_write(), tmp_path) if row["Layer"] == "A-ELEV-PATT"]
    assert area.area == pytest.approx(12 * 30 - 8 * 4)


def test_hatch_strokes_lie_as_far_apart_as_asked():
    (hatch,) = _read(_write()).modelspace().query("HATCH")
    (line,) = hatch.pattern.lines
    assert line.angle == AREA.angle
    assert line.offset.magnitude == pytest.approx(AREA.spacing)
    assert not hatch.dxf.solid_fill


def test_dimensions_are_measured_again_where_the_program_would_write_the_same():
    document = _read(_write())
    stored = [(d.dxf.text, round(d.get_measurement(), 9)) for d in document.modelspace().query("DIMENSION")]
    assert stored == [("<>", 52.3125), ("<>", 52.5), ("<>", 0.5)]
    assert _list_block_texts(document) == ["4'-4 5/16\"", "4'-4 1/2\"", '1/2"']


def test_a_text_that_rounding_or_another_unit_would_change_is_written_out():
    rounded = replace(WIDTH, text="4'-4 1/4\"")
    on_the_half = replace(WIDTH, second=(26 + 1 / 32, 0), text="4'-4 3/8\"")
    metric = replace(WIDTH, text="1329")
    document = _read(_write((rounded, on_the_half, metric)))
    assert [d.dxf.text for d in document.modelspace().query("DIMENSION")] == [
        "4'-4 1/4\"",
        "4'-4 3/8\"",
        "1329",
    ]


@pytest.mark.parametrize(
    ("lengths", "text", "unit", "factor"),
    [
        (FEET_INCHES_16, "4'-4 5/16\"", 4, 1.0),
        (INCHES_16, '52 5/16"', 5, 1.0),
        (MILLIMETRES, "1329", 2, 25.4),
    ],
)
def test_the_style_measures_in_the_units_of_the_job(
    lengths: LengthStyle, text: str, unit: int, factor: float
):
    document = _read(_write((replace(WIDTH, text=text),), lengths=lengths))
    (dimension,) = document.modelspace().query("DIMENSION")
    style = document.dimstyles.get(dimension.dxf.dimstyle).dxf
    assert dimension.dxf.text == "<>"
    assert (style.dimlunit, style.dimlfac) == (unit, factor)
    assert style.dimscale == RATIO
    assert style.dimtxt * style.dimscale == pytest.approx(WIDTH.height)
    assert style.dimrnd == (1 if lengths is MILLIMETRES else 1 / 16)


def test_a_text_in_both_units_is_written_out_for_no_program_would_write_it():
    both = LengthStyle("both")
    text = format_dimension(WIDTH.measure, both)
    document = _read(_write((replace(WIDTH, text=text),), lengths=both))
    assert [d.dxf.text for d in document.modelspace().query("DIMENSION")] == [text]
    assert "1329" in text
    assert _list_block_texts(document) == [text]


def test_a_lifted_text_keeps_its_place_and_its_leader():
    (dimension,) = _read(_write((SMALL,))).modelspace().query("DIMENSION")
    assert dimension.dxf.dimtype & 128
    assert tuple(dimension.dxf.text_midpoint)[:2] == SMALL.text_at
    starts = [tuple(e.dxf.start)[:2] for e in dimension.get_geometry_block() if e.dxftype() == "LINE"]
    assert (26.25, SMALL.line) in starts


def test_a_text_in_its_usual_place_is_left_to_the_program():
    for dimension in _read(_write((WIDTH, HEIGHT))).modelspace().query("DIMENSION"):
        assert not dimension.dxf.dimtype & 128


def test_the_text_is_ascii_and_signs_are_written_as_codes():
    text = _write()
    assert text.isascii()
    assert "45%%d x 2" in [e.dxf.text for e in _read(text).modelspace().query("TEXT")]


def test_writing_has_styles_of_its_own_with_the_typeface_of_the_sheets():
    document = _read(_write())
    used = {e.dxf.style for e in document.modelspace().query("TEXT")}
    assert used == {"LETTERING", "LETTERING-BOLD"}
    assert document.styles.get("LETTERING").dxf.font == "SourceSans3-Regular.ttf"


def test_each_view_is_drawn_on_layers_of_its_own():
    views = ("front", "plan", "plan_section")
    placed = tuple(Placed(Drawing((OUTLINE,), RATIO), (100.0 * i, 0), view) for i, view in enumerate(views))
    document = _read(write_dxf(placed, RATIO, "three"))
    found = {e.dxf.layer: e.get_points("xy")[0][0] for e in document.modelspace().query("LWPOLYLINE")}
    assert found == {"A-ELEV-OTLN": -30, "A-FLOR-OTLN": 70, "A-SECT-OTLN": 170}


def test_a_boards_mark_and_a_note_stand_on_different_layers():
    layers = {e.dxf.text: e.dxf.layer for e in _read(_write()).modelspace().query("TEXT")}
    assert layers["C1"] == "A-ELEV-IDEN"
    assert layers["bed mould"] == "A-ANNO-NOTE"
    assert layers["Front elevation"] == "A-ANNO-TTLB"


@pytest.mark.parametrize("view", ["front", "side", "plan", "plan_section", "vertical_section", "other"])
def test_every_pen_has_a_layer_of_legal_name_and_weight(view: str):
    layers = [find_layer(view, pen) for pen in Pen]
    assert len({layer.name for layer in layers}) == len(Pen)
    for layer in layers:
        assert re.fullmatch(r"A-[A-Z]{4}-[A-Z]{4}", layer.name)
        assert layer.weight in LEGAL_WEIGHTS
        assert layer.weight == pytest.approx(STROKES[layer.pen].width * 100, abs=2)


@pytest.mark.parametrize("pen", Pen)
def test_every_colour_can_be_read_on_white_and_on_black(pen: Pen):
    colour = find_layer("front", pen).colour
    if colour is not None:
        written = "#{:02x}{:02x}{:02x}".format(*colour)
        assert contrast(written, "#ffffff") >= 3
        assert contrast(written, "#000000") >= 3


def test_every_layer_line_type_and_style_that_is_used_is_declared():
    marks = (*(Lines(pen, ((0, i, 5, i),)) for i, pen in enumerate(Pen)), WIDTH)
    document = _read(_write(marks))
    declared = {layer.dxf.name for layer in document.layers}
    assert {e.dxf.layer for e in document.modelspace()} <= declared
    assert {layer.dxf.linetype for layer in document.layers} <= {kind.dxf.name for kind in document.linetypes}


def test_tints_are_left_to_paper():
    only_tint = _read(_write((Region(Fill.FACING, (((0, 0), (9, 0), (9, 9)),)), OUTLINE)))
    assert not only_tint.modelspace().query("HATCH SOLID")


def test_a_drawing_without_marks_is_a_file_all_the_same():
    assert not _read(write_dxf((), RATIO, "nothing")).audit().errors


def test_the_same_drawing_gives_the_same_text():
    assert _write() == _write()


@pytest.mark.parametrize("seed", ["0", "1", "4", "7"])
def test_the_text_does_not_hang_on_how_sets_are_ordered(seed: str, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setenv("PYTHONHASHSEED", seed)
    program = (
        "import sys, pickle\n"
        "from export.dxf import write_dxf\n"
        "sys.stdout.write(write_dxf(*pickle.load(sys.stdin.buffer)))\n"
    )
    import pickle

    placed = (Placed(Drawing(MARKS, RATIO), (0, 0), "front"),)
    told = pickle.dumps((placed, RATIO, "A job \u2014 invented", FEET_INCHES_16))
    here = Path(__file__).parents[2]
    done = subprocess.run(
        [sys.executable, "-c", program], input=told, capture_output=True, cwd=here, check=True
    )
    assert done.stdout.decode("ascii").splitlines() == _write().splitlines()


@pytest.mark.parametrize("before", [True, False])
def test_ezdxfs_own_setting_is_left_as_it_was(before: bool, monkeypatch: pytest.MonkeyPatch):
    held = ezdxf.options.write_fixed_meta_data_for_testing
    ezdxf.options.write_fixed_meta_data_for_testing = before
    try:
        _write()
        assert ezdxf.options.write_fixed_meta_data_for_testing is before
    finally:
        ezdxf.options.write_fixed_meta_data_for_testing = held
