"""Numbers and operators of a path, against those that reportlab writes."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st
from reportlab.lib.rl_accel import fp_str
from reportlab.pdfgen.pathobject import PDFPathObject

from export.pdf_path import PagePath, format_points

PLACES = st.floats(-20000, 20000) | st.floats(-1, 1) | st.integers(-2000, 2000).map(lambda n: n / 16)


@given(PLACES)
def test_a_number_is_written_as_reportlab_writes_it(number: float) -> None:
    assert format_points(number) == fp_str(number)


@given(st.lists(st.tuples(PLACES, PLACES, PLACES, PLACES)))
def test_a_path_says_what_reportlabs_own_would_say(segments: list[tuple[float, float, float, float]]) -> None:
    ours, theirs = PagePath(), PDFPathObject()
    ours.strokes(segments, 1.5, 3.25, -0.125)
    for x1, y1, x2, y2 in segments:
        theirs.moveTo(3.25 + x1 * 1.5, -0.125 + y1 * 1.5)
        theirs.lineTo(3.25 + x2 * 1.5, -0.125 + y2 * 1.5)
    assert ours.getCode() == theirs.getCode()


def test_a_closed_path_goes_back() -> None:
    path = PagePath()
    path.moveTo(0, 0)
    path.lineTo(72, 0)
    path.lineTo(72, 36.5)
    path.close()
    assert path.getCode() == "n 0 0 m 72 0 l 72 36.5 l h"
