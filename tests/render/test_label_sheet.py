"""Every board has its label, and everything on it lies inside and can be read."""

from __future__ import annotations

from io import BytesIO

import pdfplumber
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from app.demo import list_demos, read_demo
from export.pdf import write_pdf
from model.errors import Refused
from model.job import with_value
from model.surround import plan_surround
from model.takeoff.cut_list import list_cuts
from model.units import INCHES_16, MILLIMETRES, MM_PER_INCH, format_length
from render.drawing import Drawing, Text
from render.extent import drawing_extent
from render.label_sheet import Label, build_label_sheets, draw_label, list_labels
from render.label_stock import LEAST_LABEL, STOCKS, find_stock


def _labels(name: str) -> tuple[Label, ...]:
    surround = plan_surround(read_demo(name))
    return list_labels(surround, list_cuts(surround))


def _check(label: Label, width: float, height: float):
    marks = list(draw_label(label, width, height))
    assert all(isinstance(mark, Text) and mark.height * MM_PER_INCH > 2.5 - 1e-9 for mark in marks)
    x0, y0, x1, y1 = drawing_extent(Drawing(tuple(marks)))
    assert x0 >= 0
    assert y0 >= 0
    assert x1 <= width
    assert y1 <= height
    assert [mark.text for mark in marks][:1] == [label.mark]


@pytest.mark.parametrize("stock", STOCKS)
@pytest.mark.parametrize("demo", list_demos())
def test_every_label_of_a_shipped_job_lies_inside(demo: str, stock: str):
    size = find_stock(stock)
    for label in _labels(demo):
        _check(label, size.width, size.height)


@pytest.mark.parametrize("stock", STOCKS)
@pytest.mark.parametrize("demo", list_demos())
def test_every_shipped_label_says_which_job_its_board_is_for(demo: str, stock: str):
    size, name = find_stock(stock), read_demo(demo).about.name
    assert name
    for label in _labels(demo):
        mark, *others = (m for m in draw_label(label, size.width, size.height) if isinstance(m, Text))
        assert name in " ".join(text.text for text in others)
        assert mark.height * MM_PER_INCH >= 4.5 - 1e-9
        assert mark.height >= max(text.height for text in others)


@settings(max_examples=60)
@given(
    st.text("CFSM", min_size=1, max_size=2),
    st.lists(st.text("abcdefgh ijk", max_size=60), max_size=5),
    st.floats(1.0, 5.0),
    st.floats(0.5, 4.0),
)
def test_long_words_and_small_labels_stay_inside(mark, lines, width, height):
    _check(Label(mark, '12\'-3 15/16" × 11 1/4" × 3/4"', tuple(lines)), width, height)


def test_each_board_has_one_label_with_its_size_and_its_own_sub_assembly():
    surround = plan_surround(read_demo("brick"))
    labels = list_labels(surround, list_cuts(surround))
    assert sorted(label.mark for label in labels) == sorted(surround.marks)
    by_mark = {label.mark: label for label in labels}
    for mark, board in zip(surround.marks, surround.boards, strict=True):
        assert board.assembly in by_mark[mark].lines


def test_a_begun_sheet_is_begun_where_it_is_said():
    labels, stock = _labels("brick"), find_stock("letter-30")
    sheets = build_label_sheets(labels, stock, start=6)
    assert sum(len(sheet.placed) for sheet in sheets) == len(labels)
    assert len(sheets[0].placed) == 25
    with pdfplumber.open(BytesIO(write_pdf(sheets, "Labels"))) as pdf:
        page = pdf.pages[0]
        assert (page.width, page.height) == (612, 792)
        x, y = list(stock.corners())[5]
        words = page.crop((x * 72, 792 - (y + stock.height) * 72, (x + stock.width) * 72, 792 - y * 72))
        assert words.extract_text().splitlines()[0] == labels[0].mark
        above = page.crop((0, 0, 612, 792 - (y + stock.height) * 72))
        assert above.extract_text() == ""
    with pytest.raises(Refused, match="places 1 to 30"):
        build_label_sheets(labels, stock, start=31)


@pytest.mark.parametrize("units", ["feet_inches", "inches", "millimetres", "both"])
def test_the_smallest_label_says_length_and_width_whole_or_else_the_length(units: str):
    surround = plan_surround(with_value(read_demo("brick"), "job.units", units))
    cuts = list_cuts(surround)
    style = MILLIMETRES if units == "millimetres" else INCHES_16
    pairs = 0
    for label in list_labels(surround, cuts):
        cut = next(cut for cut in cuts if label.mark in cut.pieces)
        sizes = [_number(format_length(n, style)) for n in (cut.length, cut.width, cut.thickness)]
        _, said, *_ = [text.text for text in draw_label(label, *LEAST_LABEL)]
        numbers = [_number(part) for part in said.split(" × ")]
        assert numbers == sizes[: len(numbers)]
        pairs += len(numbers) > 1
    assert pairs > len(surround.boards) / 2


def _number(length: str) -> str:
    return length.removesuffix(" mm").removesuffix('"')
