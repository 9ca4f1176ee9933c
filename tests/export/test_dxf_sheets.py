"""Sheets as layouts: every viewport at its scale and in its place, everything else full size on paper."""

from __future__ import annotations

from collections import Counter
from functools import cache
from io import StringIO
from itertools import pairwise
from pathlib import Path

import ezdxf
import pytest
import shapely
from ezdxf.document import Drawing as Document

from app.demo import list_demos, read_demo
from app.drawing_files import VIEWS, build_drawing
from export.dxf_layers import FRAME
from export.dxf_sheets import AROUND, find_shown, name_layout
from model.check.all import check_surround
from model.check.proportion import list_guides
from model.surround import Surround, plan_surround
from model.takeoff.cut_list import list_cuts
from model.units import MM_PER_INCH
from render.drawing import Dimension, Drawing, Lines, Pen, Placed, Sheet
from render.packet import build_packet
from render.sheets import SITE_CUT, SITE_FRONT, SITE_PLAN, TITLES
from tests.export.dxf_reading import Row, list_viewports, read_entities, read_rows

PAPER = "tabloid"
SHOWING = (
    "front",
    "side",
    "plan_section",
    "plan_section_detail",
    "vertical_section",
    "vertical_section_detail",
)


@cache
def _plan(name: str) -> Surround:
    return plan_surround(read_demo(name))


@cache
def _sheets(name: str, paper: str = PAPER) -> tuple[Sheet, ...]:
    surround = _plan(name)
    cuts = list_cuts(surround)
    return build_packet(surround, check_surround(surround), list_guides(surround), cuts, paper, "2001-02-03")


@cache
def _write(name: str, version: str = "R2010", paper: str = PAPER) -> str:
    surround = _plan(name)
    return build_drawing(surround, list_cuts(surround), _sheets(name, paper), version, lambda *_: None)


@cache
def _layouts(name: str) -> dict[str, Sheet]:
    named = {name_layout(sheet): sheet for sheet in _sheets(name)}
    document = ezdxf.read(StringIO(_write(name)))
    return {layout: named[layout] for layout in document.layouts.names_in_taborder()[1:]}


@pytest.fixture(scope="module", params=list_demos())
def job(request: pytest.FixtureRequest) -> str:
    return str(request.param)


@pytest.mark.parametrize("version", ["R2010", "R12"])
def test_audit_is_clean_and_the_text_is_ascii(job: str, version: str):
    text = _write(job, version)
    report = ezdxf.read(StringIO(text)).audit()
    assert not report.errors
    assert not report.fixes
    assert text.isascii()


def test_every_sheet_with_a_view_is_a_layout(job: str):
    shown = {sheet.number for sheet in _layouts(job).values()}
    wanted = {s.number for s in _sheets(job) if any(placed.name in SHOWING for placed in s.placed)}
    assert wanted
    assert wanted <= shown
    assert not any(s.number in shown for s in _sheets(job) if {p.name for p in s.placed} == {"table", FRAME})


def test_layouts_are_as_large_as_their_paper(job: str):
    named = {e.all(1)[-1]: e for e in read_entities(_write(job)) if e.kind == "LAYOUT"}
    for name, sheet in _layouts(job).items():
        layout = named[name]
        assert (layout.number(44) / 25.4, layout.number(45) / 25.4) == pytest.approx(
            (sheet.width, sheet.height)
        )
        assert (layout.number(142), layout.number(143)) == (1.0, 1.0)
        assert "ANSI_B" in layout.all(4)[0]


@pytest.mark.parametrize("version", ["R2010", "R12"])
def test_every_viewport_shows_its_view_at_the_scale_of_the_sheet(job: str, version: str):
    wanted = Counter(
        round(placed.drawing.ratio, 9)
        for sheet in _layouts(job).values()
        for placed in sheet.placed
        if placed.drawing.ratio != 1 or placed.name.startswith("detail_")
    )
    found = Counter()
    for viewport in list_viewports(_write(job, version)):
        if version == "R12":
            view_height = [float(v) for code, v in viewport.tags if code == 1040][1]
        else:
            view_height = viewport.number(45)
        found[round(view_height / viewport.number(41), 9)] += 1
    assert found - wanted == Counter()
    assert wanted - found == Counter()


def test_the_view_lies_under_the_dimensions_that_the_sheet_gives_it(job: str):
    """What is measured on paper, seen through the viewport, is a corner of the model."""
    found = _layouts(job).items()
    name, sheet = next((n, s) for n, s in found if any(placed.name == "front" for placed in s.placed))
    front = next(placed for placed in sheet.placed if placed.name == "front")
    layout = ezdxf.read(StringIO(_write(job))).layouts.get(name)
    viewport = layout.viewports()[1].dxf
    ratio = viewport.view_height / viewport.height
    origin = [
        paper - model / ratio
        for paper, model in zip(viewport.center, (*viewport.view_center_point, 0), strict=False)
    ]
    up = _find_front_origin(job)
    assert origin[0] == pytest.approx(front.at[0])
    assert origin[1] + up / ratio == pytest.approx(front.at[1])


def _find_front_origin(job: str) -> float:
    """How high over the origin of model space the hearth of the front view is."""
    document = ezdxf.read(StringIO(_write(job)))
    lines = document.modelspace().query('LINE[layer=="A-ELEV-GRND"]')
    return min(line.dxf.start.y for line in lines if line.dxf.start.x < 0) - _plan(job).layout.floor


@pytest.fixture(scope="module")
def rows(job: str, tmp_path_factory: pytest.TempPathFactory) -> list[Row]:
    return read_rows(_write(job), tmp_path_factory.mktemp("sheets"))


def test_model_and_paper_are_told_apart(rows: list[Row]):
    model = [row for row in rows if row["PaperSpace"] != 1]
    assert {"A-ELEV-OTLN", "A-SECT-MCUT", "A-FLOR-OTLN"} <= {row["Layer"] for row in model}
    assert not any("TTLB" in row["Layer"] for row in model if row["Layer"] != "A-ANNO-TTLB")


def test_dimensions_on_paper_say_what_the_sheet_says(job: str):
    document = ezdxf.read(StringIO(_write(job)))
    for name, sheet in _layouts(job).items():
        said = Counter(
            entity.plain_text()
            for dimension in document.layouts.get(name).query("DIMENSION")
            for entity in dimension.get_geometry_block()
            if entity.dxftype() == "MTEXT"
        )
        wanted = Counter(
            mark.text
            for placed in sheet.placed
            for mark in placed.drawing.marks
            if isinstance(mark, Dimension)
        )
        assert said == wanted


def test_dimensions_on_paper_measure_the_model(job: str):
    document = ezdxf.read(StringIO(_write(job)))
    unit = MM_PER_INCH if _plan(job).job.about.units == "millimetres" else 1.0
    for name, sheet in _layouts(job).items():
        measured = sorted(
            round(dimension.get_measurement() * _factor(document, dimension.dxf.dimstyle) / unit, 6)
            for dimension in document.layouts.get(name).query("DIMENSION")
        )
        wanted = sorted(
            round(mark.measure, 6)
            for placed in sheet.placed
            for mark in placed.drawing.marks
            if isinstance(mark, Dimension)
        )
        assert measured == pytest.approx(wanted, abs=2e-6)


def _factor(document: Document, style: str) -> float:
    return float(document.dimstyles.get(style).dxf.dimlfac)


def test_viewports_do_not_show_what_is_lettered_for_another_scale(job: str):
    document = ezdxf.read(StringIO(_write(job)))
    shown = {layer.dxf.name for layer in document.layers}
    for name in _layouts(job):
        for viewport in document.layouts.get(name).viewports()[1:]:
            left = shown - set(viewport.frozen_layers)
            assert {"A-ANNO-DIMS", "A-ELEV-IDEN", "A-SECT-PATT", "A-ELEV-ROOM"} & left == set()
            assert {"A-ELEV-OTLN", "A-SECT-MCUT", "A-ELEV-EXST"} <= left
            assert viewport.dxf.flags & 16384, "locked"
            assert viewport.dxf.layer == "A-ANNO-NPLT"
    assert not document.layers.get("A-ANNO-NPLT").dxf.plot


def test_nothing_in_a_block_is_on_a_layer_that_a_viewport_freezes(job: str):
    document = ezdxf.read(StringIO(_write(job)))
    (name, *_) = _layouts(job)
    frozen = set(document.layouts.get(name).viewports()[1].frozen_layers)
    for insert in document.modelspace().query("INSERT"):
        block = document.blocks.get(insert.dxf.name)
        assert insert.dxf.layer == "0"
        assert not {e.dxf.layer for e in block if e.dxftype() != "ATTDEF"} & frozen


def test_a_sheet_of_r12_lies_beside_the_next(tmp_path: Path):
    rows = read_rows(_write("brick", "R12"), tmp_path)
    borders = [row["shape"] for row in rows if row["PaperSpace"] == 1 and row["Layer"] == "A-ANNO-TTLB"]
    frames = [shape.bounds for shape in borders if shape.geom_type == "LineString" and shape.length > 40]
    assert len(frames) == len(_layouts("brick"))
    lefts = sorted(frame[0] for frame in frames)
    assert all(b - a == pytest.approx(19.0) for a, b in pairwise(lefts))


def test_views_keep_clear_of_the_paper_for_programs_that_mix_them(rows: list[Row]):
    model = shapely.total_bounds(
        [r["shape"] for r in rows if r["PaperSpace"] != 1 and r["Layer"] != "Defpoints"]
    )
    paper = shapely.total_bounds([r["shape"] for r in rows if r["PaperSpace"] == 1])
    assert model[1] > paper[3]


def _square(x0: float, y0: float, x1: float, y1: float) -> Lines:
    return Lines(Pen.OUTLINE, ((x0, y0, x1, y0), (x1, y0, x1, y1), (x1, y1, x0, y1), (x0, y1, x0, y0)))


def _sheet(*marks: Lines, ratio: float = 8.0) -> Sheet:
    return Sheet("1 of 1", "t", 17, 11, (Placed(Drawing(marks, ratio), (2.0, 3.0), "any"),))


def test_a_drawing_of_other_lines_shows_no_view():
    view = Placed(Drawing((_square(0, 0, 40, 30), _square(5, 5, 9, 25)), 12.0), (100.0, 50.0), "front")
    (shown,) = find_shown((_sheet(_square(0, 0, 40, 30), _square(5, 5, 9, 25)),), (view,))
    assert shown.windows[0] is not None
    assert shown.windows[0].is_whole
    assert not shown.windows[0].rest
    assert not find_shown((_sheet(_square(0, 0, 40, 30)),), (view,)), "lines of the view are missing"
    assert not find_shown((_sheet(_square(5, 5, 9, 25), _square(0, 1, 40, 30)),), (view,)), "not its lines"


def test_what_a_sheet_draws_more_than_its_view_stays_on_paper():
    view = Placed(Drawing((_square(0, 0, 40, 30),), 12.0), (100.0, 50.0), "front")
    extra = Lines(Pen.EDGE, ((1.0, 1.0, 3.0, 1.0),))
    (shown,) = find_shown((_sheet(_square(0, 0, 40, 30), extra),), (view,))
    assert shown.windows[0] is not None
    assert shown.windows[0].rest == (extra,)


def test_a_detail_is_seen_to_its_edge_and_a_whole_view_a_little_further():
    text = _write("brick")
    document = ezdxf.read(StringIO(text))
    name = next(n for n, s in _layouts("brick").items() if s.title == "Plan section")
    whole, detail = document.layouts.get(name).viewports()[1:]
    sheet = _layouts("brick")[name]
    drawn = {placed.name: placed for placed in sheet.placed}
    rings = [m.points for m in drawn["plan_section_detail"].drawing.marks if getattr(m, "closed", False)]
    width = max(max(x for x, _ in ring) - min(x for x, _ in ring) for ring in rings)
    assert detail.dxf.width == pytest.approx(width / drawn["plan_section_detail"].drawing.ratio)
    assert whole.dxf.width > 2 * AROUND


def test_what_no_view_shows_is_set_beside_the_views(rows: list[Row], job: str):
    texts = {row["Text"]: row["shape"] for row in rows if row["Text"] and row["PaperSpace"] != 1}
    beside = {TITLES[name] for name in (SITE_FRONT, SITE_CUT, SITE_PLAN)}
    assert beside <= set(texts)
    assert all(texts[title].x > texts["Vertical section"].x for title in beside)
    assert any("Site record" in name for name in _layouts(job))


def test_a_sign_of_a_section_is_drawn_on_paper_with_its_arrow(rows: list[Row], job: str):
    signs = [e for e in read_entities(_write(job)) if "ANNO-SYMB" in "".join(e.all(8))]
    assert {"SOLID", "LWPOLYLINE", "LINE"} <= {e.kind for e in signs}
    assert all(e.all(67) or e.kind == "LAYER" for e in signs)
    assert not [row for row in rows if row["PaperSpace"] != 1 and "ANNO-SYMB" in row["Layer"]]


def test_views_are_all_in_the_file():
    captions = {"Front elevation", "Side elevation", "Plan", "Plan section", "Vertical section"}
    assert len(captions) == len(VIEWS)
    texts = {e.all(1)[0] for e in read_entities(_write("gas")) if e.kind == "TEXT"}
    assert captions <= texts
