"""A whole job as DXF, held against the model by GDAL: sizes, lines, layers and every dimension's words."""

from __future__ import annotations

from collections import Counter, defaultdict
from functools import cache
from io import StringIO
from itertools import pairwise
from math import hypot
from typing import Any

import ezdxf
import numpy as np
import pyogrio
import pytest
import shapely

from export.dxf import write_dxf
from model.job import default_job, with_texts
from model.surround import Surround, plan_surround
from render.drawing import Dimension, Lines, Pen, Placed, Polyline
from render.pens import STROKES
from render.third_angle import place_third_angle
from render.views import VIEWS, ViewOptions, draw_view

RATIO = 12.0
UNITS = ("feet_inches", "inches", "millimetres")
Row = dict[str, Any]


@cache
def _plan(units: str) -> Surround:
    return plan_surround(with_texts(default_job(), [("job.units", units), ("column.width", "7 5/16 in")]))


@cache
def _place(units: str) -> tuple[Placed, ...]:
    drawn = [(view, draw_view(_plan(units), view, ViewOptions(ratio=RATIO))) for view in VIEWS]
    return place_third_angle(drawn)


@cache
def _write(units: str) -> str:
    return write_dxf(_place(units), RATIO, "Invented job", _plan(units).job.about.length_style)


@pytest.fixture(scope="module", params=UNITS)
def units(request: pytest.FixtureRequest) -> str:
    return str(request.param)


@pytest.fixture(scope="module")
def rows(units: str, tmp_path_factory: pytest.TempPathFactory) -> list[Row]:
    path = tmp_path_factory.mktemp("dxf") / "job.dxf"
    path.write_text(_write(units), "ascii")
    about, _, shapes, columns = pyogrio.raw.read(
        path, sql="SELECT *, OGR_STYLE FROM entities", sql_dialect="OGRSQL"
    )
    return [
        dict(zip(about["fields"], values, strict=True)) | {"shape": shapely.from_wkb(shape)}
        for shape, *values in zip(shapes, *columns, strict=True)
    ]


def _find_box(rows: list[Row], *layers: str) -> tuple[float, float, float, float]:
    return tuple(shapely.total_bounds([row["shape"] for row in rows if row["Layer"] in layers]))


def test_audit_is_clean(units: str):
    report = ezdxf.read(StringIO(_write(units))).audit()
    assert not report.errors
    assert not report.fixes


def test_the_elevation_is_as_wide_and_high_as_the_surround(rows: list[Row], units: str):
    layout = _plan(units).layout
    outlines = [row["shape"] for row in rows if row["Layer"] == "A-ELEV-OTLN" and row["shape"].bounds[0] < 0]
    x0, y0, x1, y1 = shapely.total_bounds(outlines)
    assert (x0, x1) == pytest.approx((-layout.right.shelf_side, layout.right.shelf_side))
    assert (y0, y1) == pytest.approx((layout.right.base, layout.shelf_top))


def test_the_opening_is_drawn_where_it_was_measured(rows: list[Row], units: str):
    layout = _plan(units).layout
    lines = shapely.union_all([row["shape"] for row in rows if row["Layer"] == "A-ELEV-EXST"])
    side, top = layout.opening_side, layout.opening_top
    outline = shapely.LineString([(-side, 0.01), (-side, top), (side, top), (side, 0.01)])
    assert shapely.covers(shapely.buffer(lines, 1e-6), outline)


def test_views_stand_in_third_angle(rows: list[Row], units: str):
    layout = _plan(units).layout
    plan = _find_box(rows, "A-FLOR-OTLN")
    assert (plan[0], plan[2]) == pytest.approx((-layout.right.shelf_side, layout.right.shelf_side))
    assert plan[1] > layout.shelf_top
    cut = [row["shape"] for row in rows if row["Layer"] == "A-SECT-MCUT"]
    sections = shapely.total_bounds(cut)
    assert sections[2] > layout.right.shelf_side


@pytest.mark.parametrize("pen", [Pen.OUTLINE, Pen.EDGE, Pen.ARRIS, Pen.SITE, Pen.CUT])
def test_no_line_is_lost_between_the_drawing_and_the_reader(rows: list[Row], units: str, pen: Pen):
    codes = {
        Pen.OUTLINE: ("OTLN",),
        Pen.EDGE: ("EDGE",),
        Pen.ARRIS: ("ARIS",),
        Pen.SITE: ("EXST", "ROOM"),
        Pen.CUT: ("MCUT",),
    }
    strokes = {
        frozenset((round(a, 6) + x, round(b, 6) + y) for a, b in ((x1, y1), (x2, y2)))
        for (x, y), segments in _list_segments(units, pen)
        for x1, y1, x2, y2 in segments
    }
    drawn = sum(hypot(a[0] - b[0], a[1] - b[1]) for a, b in (tuple(s) for s in strokes if len(s) == 2))
    found = sum(row["shape"].length for row in rows if row["Layer"].endswith(codes[pen]))
    assert found == pytest.approx(drawn, rel=1e-6)


def _list_segments(units: str, pen: Pen) -> list[tuple[tuple[float, float], Any]]:
    found = []
    for view in _place(units):
        for mark in view.drawing.marks:
            if isinstance(mark, Lines) and mark.pen is pen:
                found.append((view.at, mark.segments))
            if isinstance(mark, Polyline) and mark.pen is pen:
                points = (*mark.points, *mark.points[:1]) if mark.closed else mark.points
                found.append((view.at, [(*a, *b) for a, b in pairwise(points)]))
    return found


def test_every_dimension_is_read_with_the_words_it_was_given(rows: list[Row], units: str):
    placed = [mark for view in _place(units) for mark in view.drawing.marks if isinstance(mark, Dimension)]
    found = Counter(row["Text"] for row in rows if row["Layer"] == "A-ANNO-DIMS" and row["Text"])
    assert found == Counter(mark.text for mark in placed)
    assert len(placed) > len(VIEWS)


def test_measured_points_lie_as_far_apart_as_the_dimension_says(rows: list[Row], units: str):
    ends = defaultdict(list)
    for row in rows:
        if row["Layer"] == "Defpoints":
            ends[row["EntityHandle"]].append(shapely.get_coordinates(row["shape"])[0])
    spans = sorted(float(np.max(np.abs(np.subtract(*points)))) for points in ends.values())
    placed = [mark for view in _place(units) for mark in view.drawing.marks if isinstance(mark, Dimension)]
    assert len(spans) == len(placed)
    for dimension in ezdxf.read(StringIO(_write(units))).modelspace().query("DIMENSION"):
        assert dimension.get_measurement() == pytest.approx(dimension.dxf.actual_measurement)


def test_layers_carry_the_line_weights_of_the_pens(rows: list[Row]):
    weights = {row["Layer"]: row["OGR_STYLE"] for row in rows if "w:" in (row["OGR_STYLE"] or "")}
    for layer, pen in {"A-ELEV-OTLN": Pen.OUTLINE, "A-SECT-MCUT": Pen.CUT, "A-ELEV-EXST": Pen.SITE}.items():
        assert f"w:{STROKES[pen].width:g}g" in weights[layer]


def test_cut_wood_and_masonry_are_hatched_areas(rows: list[Row]):
    areas = [row["shape"].area for row in rows if row["Layer"] == "A-SECT-PATT"]
    assert len(areas) > 10
    assert min(areas) > 0


def test_most_dimensions_are_left_to_be_measured_again(units: str):
    stored = [d.dxf.text for d in ezdxf.read(StringIO(_write(units))).modelspace().query("DIMENSION")]
    assert stored.count("<>") > len(stored) / 2
