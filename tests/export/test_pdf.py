"""The PDF as other programs read it: sizes on paper, pages, fonts, text, outline, bytes."""

from io import BytesIO

import pdfplumber
import pypdfium2
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from app.demo import read_demo
from export.pdf import write_pdf
from export.progress import Cancelled
from model.errors import MantelwrightError
from model.steps.plan import plan_steps
from model.surround import plan_surround
from model.takeoff.cut_list import list_cuts
from model.takeoff.takeoff import take_off
from model.units import MM_PER_INCH
from render.chapters.steps import draft_steps
from render.desk import Desk
from render.drawing import (
    Anchor,
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
from render.lettering import CAPITAL
from render.packet import build_packet, number_sheets
from render.scales import ARCHITECTURAL, METRIC
from render.sheets import PAPERS

POINTS = 72
OPENING = ((-18.0, 0.0), (18.0, 0.0), (18.0, 30.0), (-18.0, 30.0))


def sheet_of(*marks, ratio=12.0, at=(5.5, 2.0), size=PAPERS["letter"], title="Front elevation"):
    return Sheet("1 of 1", title, *size, (Placed(Drawing(marks, ratio), at, "front"),))


def pages_of(data):
    return pdfplumber.open(BytesIO(data)).pages


@pytest.fixture(scope="module")
def packet():
    """The packet of a shipped, invented job on each paper."""
    surround = plan_surround(read_demo("brick"))
    cuts = list_cuts(surround)
    return {paper: build_packet(surround, (), (), cuts, paper, "2025-03-04") for paper in PAPERS}


@pytest.mark.parametrize("scale", [s for s in ARCHITECTURAL + METRIC if s.ratio >= 4], ids=lambda s: s.name)
def test_an_opening_measures_its_size_at_scale_to_a_hundredth(scale):
    sheet = sheet_of(Polyline(Pen.OUTLINE, OPENING, closed=True), ratio=scale.ratio, size=PAPERS["tabloid"])
    (outline,) = pages_of(write_pdf([sheet], "t"))[0].rects
    assert outline["width"] / POINTS * scale.ratio == pytest.approx(36, abs=0.01 * scale.ratio)
    assert outline["width"] / POINTS == pytest.approx(36 / scale.ratio, abs=0.001)
    assert outline["height"] / POINTS == pytest.approx(30 / scale.ratio, abs=0.001)


def test_a_drawing_stands_where_it_is_placed_y_upwards():
    sheet = sheet_of(Polyline(Pen.OUTLINE, OPENING, closed=True), at=(5.5, 2.0))
    page = pages_of(write_pdf([sheet], "t"))[0]
    (outline,) = page.rects
    assert outline["x0"] / POINTS == pytest.approx(5.5 - 1.5, abs=1e-3)
    assert (float(page.height) - outline["bottom"]) / POINTS == pytest.approx(2.0, abs=1e-3)


@pytest.mark.parametrize(("paper", "size"), PAPERS.items())
def test_every_page_has_its_papers_size(packet, paper, size):
    for page in pages_of(write_pdf(packet[paper], "t")):
        assert float(page.width) / POINTS == pytest.approx(size[0], abs=1e-4)
        assert float(page.height) / POINTS == pytest.approx(size[1], abs=1e-4)


def test_text_with_fractions_and_signs_comes_back():
    words = [
        "4'-4 5/16\"",
        "45° mitre",
        "½ ⅛ ⅞",
        '1 2/32" × 3"',
        "<b>not bold</b> & <img src='x'/>",
        "Zoë’s café",
    ]
    marks = [Text(word, (0, 4.0 * n), 1.5) for n, word in enumerate(words)]
    text = pages_of(write_pdf([sheet_of(*marks)], "t"))[0].extract_text()
    for word in words:
        assert word in text


def test_a_letter_the_typeface_lacks_is_stood_in_for_and_never_a_box():
    text = pages_of(write_pdf([sheet_of(Text("Parlour 炉🔥", (0, 0), 1.5))], "t"))[0].extract_text()
    assert "Parlour ??" in text


def test_fonts_are_embedded_subsets(packet):
    data = write_pdf(packet["letter"], "t")
    fonts = {char["fontname"] for page in pages_of(data) for char in page.chars}
    assert all("SourceSans3" in name and "+" in name for name in fonts)
    assert data.count(b"/FontFile2") == len(fonts) == 2


def test_capitals_are_as_tall_as_asked():
    sheet = sheet_of(Text("H", (0, 0), 1.5), ratio=12)
    bitmap = pypdfium2.PdfDocument(write_pdf([sheet], "t"))[0].render(scale=10, grayscale=True).to_numpy()
    rows = (bitmap.reshape(bitmap.shape[0], -1) < 128).any(axis=1).nonzero()[0]
    assert (rows.max() - rows.min() + 1) / 10 / POINTS == pytest.approx(0.125, abs=0.003)


@pytest.mark.parametrize(("anchor", "share"), [(Anchor.START, 0.0), (Anchor.MIDDLE, 0.5), (Anchor.END, 1.0)])
def test_writing_stands_at_its_anchor(anchor, share):
    chars = pages_of(write_pdf([sheet_of(Text("5'-4\"", (0, 0), 1.5, anchor))], "t"))[0].chars
    low, high = min(c["x0"] for c in chars), max(c["x1"] for c in chars)
    assert low + share * (high - low) == pytest.approx(5.5 * POINTS, abs=0.01)


def test_turned_writing_runs_upwards():
    chars = pages_of(write_pdf([sheet_of(Text("54", (0, 0), 1.5, rotation=90))], "t"))[0].chars
    assert not any(char["upright"] for char in chars)
    five, four = sorted(chars, key=lambda c: -c["bottom"])
    assert (five["text"], four["text"]) == ("5", "4")


def test_line_widths_are_millimetres_on_paper_whatever_the_scale():
    for ratio in (1.0, 12.0):
        mark = Lines(Pen.OUTLINE, ((0, 0, ratio, 0),))
        (line,) = pages_of(write_pdf([sheet_of(mark, ratio=ratio)], "t"))[0].lines
        assert line["linewidth"] / POINTS * MM_PER_INCH == pytest.approx(0.5, abs=1e-3)


def test_dimensions_and_hatches_are_drawn_with_their_writing():
    marks = (
        Region(Fill.FACING, (OPENING,)),
        Hatch(Pen.HATCH, (OPENING,), 45, 2.5),
        Dimension((-18, 0), (18, 0), False, -6, "3'-0\"", (0, -4.8), 1.5),
    )
    page = pages_of(write_pdf([sheet_of(*marks)], "t"))[0]
    level = [line for line in page.lines if line["x1"] - line["x0"] == pytest.approx(3 * POINTS, abs=0.01)]
    assert len(level) == 1
    assert len(page.lines) > 20
    assert "3'-0\"" in page.extract_text()


def test_a_hole_in_an_area_stays_open():
    ring = ((-6.0, 6.0), (6.0, 6.0), (6.0, 18.0), (-6.0, 18.0))
    data = write_pdf([sheet_of(Region(Fill.OPENING, (OPENING, ring)), at=(5.5, 4.0))], "t")
    bitmap = pypdfium2.PdfDocument(data)[0].render(scale=1, grayscale=True).to_numpy()
    height = bitmap.shape[0]
    inside = bitmap[height - int((4 + 1.0) * POINTS), int(5.5 * POINTS)]
    filled = bitmap[height - int((4 + 0.2) * POINTS), int(5.5 * POINTS)]
    assert inside > 250
    assert filled < 120


def test_packet_reads_in_black_and_white(packet):
    page = pypdfium2.PdfDocument(write_pdf(packet["letter"], "t"))[0]
    grey = page.render(scale=150 / POINTS, grayscale=True).to_numpy()
    assert grey.shape[:2] == pytest.approx((1275, 1650), abs=1)
    assert (grey < 100).mean() > 0.005
    assert (grey > 200).mean() > 0.6


def test_every_sheet_and_every_view_is_in_the_outline(packet):
    for paper in PAPERS:
        document = pypdfium2.PdfDocument(write_pdf(packet[paper], "t"))
        outline = [(entry.get_title(), entry.get_dest().get_index()) for entry in document.get_toc()]
        text = " | ".join(title for title, _ in outline).lower()
        for title in ("front", "side elevation", "plan section", "vertical section", "checks", "cut list"):
            assert title in text
        top = [entry for entry in outline if entry[0][0].isdigit()]
        assert [page for _, page in top] == list(range(len(packet[paper])))


def test_sheets_that_go_on_with_a_chapter_are_below_it_in_the_outline(packet):
    sheets = packet["letter"]
    toc = pypdfium2.PdfDocument(write_pdf(sheets, "t")).get_toc()
    levels = {entry.get_dest().get_index(): entry.level for entry in reversed(list(toc))}
    for number, sheet in enumerate(sheets):
        assert levels[number] == int(sheet.title.endswith(", continued")), sheet.title


def test_every_step_is_found_one_by_one_below_its_chapter():
    surround = plan_surround(read_demo("brick"))
    taken = take_off(surround)
    steps = plan_steps(surround, taken)
    desk = Desk(surround, PAPERS["letter"], cuts=taken.cuts, takeoff=taken)
    sheets = number_sheets(desk, draft_steps(desk), "2025-03-04")
    toc = list(pypdfium2.PdfDocument(write_pdf(sheets, "t")).get_toc())
    assert [entry.get_title() for entry in toc if entry.level == 0] == ["1  Assembly steps"]
    wanted = [f"Step {number}: {step.title}" for number, step in enumerate(steps, start=1)]
    assert [entry.get_title() for entry in toc if entry.level == 1] == wanted
    pages = [entry.get_dest().get_index() for entry in toc if entry.level == 1]
    assert pages == sorted(pages)
    for entry, page in zip(toc[1:], pages, strict=True):
        texts = [
            m.text for p in sheets[page].placed for m in p.drawing.marks if isinstance(m, Text) and m.bold
        ]
        number, title = entry.get_title().removeprefix("Step ").split(": ", 1)
        assert any(text.startswith(f"{number}  {title[:12]}") for text in texts)


def test_what_names_a_sheet_is_a_link_to_its_page(packet):
    sheets = packet["a3"]
    pages = pages_of(write_pdf(sheets, "t"))
    numbers = {page.page_obj.pageid: number for number, page in enumerate(pages, start=1)}
    assert sheets[0].links
    for sheet, page in zip(sheets, pages, strict=True):
        found = sorted(
            (note["x0"], float(page.height) - note["bottom"], numbers[note["data"]["Dest"][0].objid])
            for note in page.annots
        )
        wanted = sorted((link.box[0] * POINTS, link.box[1] * POINTS, link.to) for link in sheet.links)
        assert [to for *_, to in found] == [to for *_, to in wanted]
        assert [place for *at, _ in found for place in at] == pytest.approx(
            [place for *at, _ in wanted for place in at], abs=0.01
        )


def test_pages_are_labelled_with_their_number(packet):
    document = pypdfium2.PdfDocument(write_pdf(packet["a4"], "t"))
    assert [document.get_page_label(n) for n in range(3)] == ["1", "2", "3"]


def test_file_says_what_it_is_and_asks_not_to_be_scaled(packet):
    data = write_pdf(packet["letter"], "Zoë’s mantel", author="Nobody & Daughter")
    meta = pypdfium2.PdfDocument(data).get_metadata_dict()
    assert (meta["Title"], meta["Author"]) == ("Zoë’s mantel", "Nobody & Daughter")
    assert b"/PrintScaling /None" in data


def test_the_same_sheets_give_the_same_bytes(packet):
    assert write_pdf(packet["letter"], "t") == write_pdf(packet["letter"], "t")


def test_progress_counts_every_sheet(packet):
    told = []
    write_pdf(packet["letter"], "t", progress=lambda done, total: told.append((done, total)))
    total = len(packet["letter"])
    assert told == [(n, total) for n in range(total + 1)]


def test_writing_can_be_called_off_between_sheets(packet):
    told = []
    with pytest.raises(Cancelled, match="nothing was written") as raised:
        write_pdf(
            packet["letter"], "t", progress=lambda *step: told.append(step), cancelled=lambda: len(told) > 2
        )
    assert len(told) == 3
    assert isinstance(raised.value, MantelwrightError)


@settings(max_examples=40, deadline=None)
@given(st.text(st.characters(exclude_categories=["Cs"]), max_size=30))
def test_any_writing_and_any_title_make_a_readable_file(text):
    marks = (Text(text, (0, 0), 1.5), Text(text, (0, 10), 1.5, rotation=90))
    document = pypdfium2.PdfDocument(write_pdf([sheet_of(*marks, title=text)], text, author=text))
    assert len(document) == 1
    if text.isprintable():
        assert document.get_metadata_dict()["Title"] == text


@pytest.mark.parametrize("rotation", [0.0, 90.0])
@pytest.mark.parametrize("height", [2.5, 3.0, 3.5])
def test_a_fraction_on_paper_is_smaller_figures_at_full_height_and_reads_as_it_was_written(height, rotation):
    capital = height / MM_PER_INCH
    words = Text("3'-11 15/16\"", (0.0, 0.0), capital, rotation=rotation)
    data = write_pdf([sheet_of(words, ratio=1.0)], "t")
    assert "3'-11 15/16\"" in pypdfium2.PdfDocument(data)[0].get_textpage().get_text_range()
    (page,) = pages_of(data)
    if not rotation:
        assert "3'-11 15/16\"" in page.extract_text()
    chars = {n: char for n, char in enumerate(page.chars) if char["text"].strip()}
    assert "".join(char["text"] for char in chars.values()) == "3'-1115/16\""
    ends = ("x0", "x1") if rotation else ("top", "bottom")
    sizes = [round(char[ends[1]] - char[ends[0]], 2) for char in chars.values()]
    full, small = max(sizes), min(sizes)
    assert small * CAPITAL / POINTS * MM_PER_INCH >= 0.74 * height >= 1.8
    assert [size == small for size in sizes] == [
        c in "15/16" and n > 4 and c != "/" for n, c in enumerate("3'-1115/16\"")
    ]
    across = 4 if not rotation else 5
    along = 5 if not rotation else 4
    baselines = [char["matrix"][along] for char in chars.values()]
    top = baselines[0] + full * CAPITAL * (1 if not rotation else -1)
    assert baselines[5] + small * CAPITAL * (1 if not rotation else -1) == pytest.approx(top, abs=0.05)
    assert baselines[8] == pytest.approx(baselines[0], abs=0.01)
    places = [char["matrix"][across] for char in chars.values()]
    assert places == sorted(places)
