"""Printed dimensions of shipped jobs, measured on the page by another program and read by another rule."""

from __future__ import annotations

import re
from fractions import Fraction
from io import BytesIO
from math import dist, hypot

import pdfplumber
import pytest

from app.demo import list_demos, read_demo
from export.pdf import write_pdf
from model.job import with_texts
from model.surround import plan_surround
from render.drawing import Dimension, Placed
from render.packet import build_view_sheets

POINTS = 72
CLOSE = 0.01
"""Inches on paper."""
LEAST = 10
"""Dimensions of each job that are measured at least."""


def _scale(text: str) -> float:
    """Model inches to an inch of paper, from what is printed: 3/4" = 1'-0", or SCALE 1:20."""
    if found := re.search(r"1:(\d+)", text):
        return float(found[1])
    found = re.search(r"((?:\d+ )?\d+(?:/\d+)?)\" = 1'-0\"", text)
    assert found, text
    return 12 / float(sum(map(Fraction, found[1].split())))


def _length(text: str) -> tuple[float, float]:
    """Inches that a printed dimension says, and how finely it says them."""
    if found := re.fullmatch(r"(\d+)(?: mm)?", text):
        return int(found[1]) / 25.4, 1 / 25.4
    found = re.fullmatch(r"(?:(\d+)'(?:-|$))?(?:([\d /]+)\")?", text)
    assert found, text
    inches = float(sum(map(Fraction, (found[2] or "0").split())))
    return 12 * int(found[1] or 0) + inches, 1 / 16


def _slants(page) -> list[tuple[float, float]]:
    """The middles of all short strokes at 45 degrees, paper inches from the lower left: the ends of sizes."""
    middles = []
    for line in page.lines:
        (x0, y0), (x1, y1) = ((x / POINTS, float(page.height) / POINTS - y / POINTS) for x, y in line["pts"])
        wide, high = abs(x1 - x0), abs(y1 - y0)
        if abs(wide - high) < 1e-3 and hypot(wide, high) < 0.4:
            middles.append(((x0 + x1) / 2, (y0 + y1) / 2))
    return middles


def _flat(text: str) -> str:
    """Without spaces, which some writing has between its letters only by their places."""
    return text.replace(" ", "")


def _ends(placed: Placed, size: Dimension) -> list[tuple[float, float]]:
    """Where a size's ends are due on paper."""
    ends = [(size.line, at) if size.vertical else (at, size.line) for at in size.span]
    ratio = placed.drawing.ratio
    return [(placed.at[0] + x / ratio, placed.at[1] + y / ratio) for x, y in ends]


@pytest.mark.parametrize("units", ["feet_inches", "inches", "millimetres"])
@pytest.mark.parametrize("demo", list_demos())
def test_what_is_printed_measures_what_it_says(demo: str, units: str):
    surround = plan_surround(with_texts(read_demo(demo), [("job.units", units)]))
    sheets = build_view_sheets(surround, "front", "tabloid", "2026-01-01")
    with pdfplumber.open(BytesIO(write_pdf(sheets, "Front"))) as pdf:
        page = pdf.pages[0]
        ratio = _scale(page.extract_text())
        slants = _slants(page)
        printed = _flat("".join(char["text"] for char in page.chars))
    measured = {}
    for placed in sheets[0].placed:
        for size in (mark for mark in placed.drawing.marks if isinstance(mark, Dimension)):
            assert _flat(size.text) in printed, size.text
            due = _ends(placed, size)
            found = [min(slants, key=lambda at, end=end: dist(at, end)) for end in due]
            assert max(map(dist, found, due)) < CLOSE
            apart = dist(*found)
            said, step = _length(size.text)
            assert apart == pytest.approx(said / ratio, abs=CLOSE + step / 2 / ratio), size.text
            measured[size.stands_for] = said
    assert len(measured) >= LEAST
    job = surround.job
    for path, value in (
        ("opening.width", job.site.opening.width),
        ("opening.height", job.site.opening.height),
    ):
        assert measured[path] == pytest.approx(value, abs=1 / 16)
    assert measured["shelf.height"] == pytest.approx(surround.layout.shelf_top, abs=1 / 16)
