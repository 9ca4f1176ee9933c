"""A black and white print reads as well as a coloured one: every kind of sheet, rendered grey elsewhere."""

from __future__ import annotations

from itertools import combinations

import numpy as np
import pypdfium2
import pytest

from app.demo import read_demo
from app.outputs import build_offer_sheets, build_packet_sheets
from app.stock_lists import EXAMPLE, read_shipped_list
from export.pdf import write_pdf
from model.check.all import check_surround
from model.job import with_texts
from model.surround import plan_surround
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
from render.extent import box_of, list_texts, text_corners
from render.measuring_sheet import build_measuring_sheets
from render.packet import build_view_sheets
from render.pens import STROKES
from render.template_pages import build_template_sheets
from render.views import VIEWS, ViewOptions

DOTS = 150
READABLE = 4.5
"""Contrast of writing with its ground: WCAG 2.1, success criterion 1.4.3."""
WIDER, TONE = 1.3, 1.5
"""Lines that mean different things differ so much in width, or in contrast with each other, or in dashes.
Shop choices: less is not told apart at arm's length."""
ALIKE = (
    {Pen.CUT, Pen.GROUND, Pen.BORDER},  # the floor is cut as well; a border is no line of the drawing
    {Pen.TEXT, Pen.ARRIS},  # a mark's strokes stand beside the wood, or in a circle of their own
    {Pen.DIMENSION, Pen.BEYOND, Pen.RULE, Pen.HATCH},  # a size has its ticks, a hatch its regular lines
)
"""Pens that need not be told apart by themselves."""


@pytest.fixture(scope="module")
def sheets() -> tuple[Sheet, ...]:
    """Every kind of sheet there is, of invented jobs: one with cords and a bolt, one where things fail."""
    stock = read_shipped_list(EXAMPLE)
    settings = [("cord.on", "yes"), ("bolt_one.across", "10"), ("bolt_one.up", "45"), ("bolt_one.out", "2")]
    job = with_texts(read_demo("brick"), settings)
    return (
        *build_packet_sheets(job, "letter", "2026-01-02", stock=stock),
        *build_offer_sheets(job, "letter", "2026-01-02", stock=stock),
        *build_measuring_sheets("letter", "feet_inches"),
        *build_template_sheets(plan_surround(job), "letter"),
    )


@pytest.fixture(scope="module")
def failing() -> tuple[Sheet, ...]:
    """Every view of a job that keeps too little clear, with the keep-out and what fails."""
    surround = plan_surround(read_demo("too-close"))
    options = ViewOptions(clearance=True, findings=check_surround(surround))
    return tuple(s for view in VIEWS for s in build_view_sheets(surround, view, "letter", "", options))


def _render(sheets: tuple[Sheet, ...]) -> list[np.ndarray]:
    document = pypdfium2.PdfDocument(write_pdf(sheets, "t"))
    return [page.render(scale=DOTS / 72, grayscale=True).to_numpy().squeeze() for page in document]


def _luminance(grey: float) -> float:
    part = grey / 255
    return part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4


def _contrast(one: float, other: float) -> float:
    """Of two grey levels from 0 to 255 (WCAG 2.1, "contrast ratio")."""
    dark, light = sorted((_luminance(one), _luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def test_all_writing_stands_out_from_its_ground_when_printed_grey(sheets):
    for sheet, grey in zip(sheets, _render(sheets), strict=True):
        for placed in sheet.placed:
            for text in list_texts(placed.drawing):
                if text.text.strip():
                    ink, ground = _look_at(grey, sheet, placed, text)
                    assert _contrast(ink, ground) >= READABLE, (sheet.title, text.text, ink, ground)


def _look_at(grey: np.ndarray, sheet: Sheet, placed: Placed, text: Text) -> tuple[float, float]:
    """The darkest level where a text stands, and the level that most of its box has."""
    x0, y0, x1, y1 = (value / placed.drawing.ratio for value in box_of(text_corners(text)))
    left, right = (round((placed.at[0] + x) * DOTS) for x in (x0, x1))
    top, bottom = (round((sheet.height - placed.at[1] - y) * DOTS) for y in (y1, y0))
    part = grey[max(top, 0) : bottom + 1, max(left, 0) : right + 1]
    values, counts = np.unique(part, return_counts=True)
    return float(np.quantile(part, 0.02)), float(values[counts.argmax()])


def _swatch(pen: Pen) -> tuple[float, float, tuple[float, ...]]:
    """Width in mm, grey level and lengths of dashes and gaps in mm of a pen as it is printed."""
    line = Drawing((Lines(pen, ((0.5, 0.5, 3.5, 0.5),)),))
    data = write_pdf((Sheet("1", "t", 4.0, 1.0, (Placed(line, (0.0, 0.0)),)),), "t")
    fine = 1200
    grey = pypdfium2.PdfDocument(data)[0].render(scale=fine / 72, grayscale=True).to_numpy().squeeze()
    row = grey[fine // 2, int(0.6 * fine) : int(3.4 * fine)]
    column = grey[:, int(0.5 * fine) + 20]
    on = row < 250
    edges = np.flatnonzero(np.diff(on.astype(int))) + 1
    runs = tuple(float(run) / fine * 25.4 for run in np.diff(edges)[:4])
    return float((column < 250).sum()) / fine * 25.4, float(row.min()), runs


@pytest.fixture(scope="module")
def swatches() -> dict[Pen, tuple[float, float, tuple[float, ...]]]:
    return {pen: _swatch(pen) for pen in Pen}


def test_pens_are_printed_as_wide_and_dashed_as_they_are_meant(swatches):
    for pen, (width, _, runs) in swatches.items():
        assert width == pytest.approx(STROKES[pen].width, abs=0.05), pen
        assert bool(runs) == bool(STROKES[pen].dash), pen
        assert all(min(abs(run - meant) for meant in STROKES[pen].dash) < 0.1 for run in runs), pen


def test_lines_of_one_drawing_that_mean_different_things_differ_without_colour(sheets, failing, swatches):
    pairs = set()
    for placed in (
        placed for sheet in (*sheets, *failing) for placed in sheet.placed if placed.name != "frame"
    ):
        pens = {pen for mark in placed.drawing.marks for pen in _pens(mark)}
        pairs |= {frozenset(pair) for pair in combinations(pens, 2)}
    assert len(pairs) > 20
    for pair in pairs:
        if not any(pair <= group for group in ALIKE):
            one, other = (swatches[pen] for pen in pair)
            wide = max(one[0], other[0]) / min(one[0], other[0]) >= WIDER
            tone = _contrast(one[1], other[1]) >= TONE
            assert wide or tone or bool(one[2]) != bool(other[2]) or _dashed_apart(one[2], other[2]), pair


def _pens(mark) -> tuple[Pen, ...]:
    match mark:
        case Lines() | Polyline() | Hatch():
            return (mark.pen,)
        case Dimension():
            return (Pen.DIMENSION,)
    return ()


def _dashed_apart(one: tuple[float, ...], other: tuple[float, ...]) -> bool:
    return (bool(one) and bool(other) and max(one) >= WIDER * max(other)) or (
        bool(other) and max(other) >= WIDER * max(one)
    )


def test_what_is_cut_has_a_pattern_and_what_fails_a_heavy_outline(sheets, failing):
    seen = set()
    sheets = (*sheets, *failing)
    for placed in (
        placed for sheet in sheets for placed in sheet.placed if not placed.name.startswith("step_")
    ):
        marks = placed.drawing.marks
        hatched = {ring for mark in marks if isinstance(mark, Hatch) for ring in mark.rings}
        outlined = {mark.points for mark in marks if isinstance(mark, Polyline) and mark.pen is Pen.FAULT}
        for region in (mark for mark in marks if isinstance(mark, Region)):
            if region.fill is Fill.CUT_WOOD:
                assert set(region.rings) <= hatched, placed.name
            if region.fill is Fill.FAULT:
                assert outlined, placed.name
            seen.add(region.fill)
    assert {Fill.CUT_WOOD, Fill.MASONRY, Fill.FAULT, Fill.OPENING, Fill.COLUMN_PIECE} <= seen


def test_the_boards_of_a_step_stand_out_from_those_already_there(sheets, swatches):
    steps = [placed for sheet in sheets for placed in sheet.placed if placed.name.startswith("step_")]
    assert steps
    dark, pale = swatches[Pen.EDGE], swatches[Pen.BEYOND]
    assert dark[0] >= WIDER * pale[0]
    assert _contrast(dark[1], pale[1]) >= 2


def test_a_piece_on_a_cutting_plan_is_known_by_its_mark_and_not_by_its_tint(sheets):
    pieces = {Fill.COLUMN_PIECE, Fill.FRIEZE_PIECE, Fill.SHELF_PIECE, Fill.MOULDING_PIECE, Fill.OTHER_PIECE}
    plans = [sheet for sheet in sheets if sheet.title.startswith("Cutting plans")]
    assert plans
    for sheet in plans:
        for placed in sheet.placed:
            regions = [m for m in placed.drawing.marks if isinstance(m, Region) and m.fill in pieces]
            texts = [m for m in placed.drawing.marks if isinstance(m, Text)]
            assert len(texts) >= len(regions)
