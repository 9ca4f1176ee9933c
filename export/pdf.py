"""Sheets as a PDF at true scale: one page for each, the same bytes for the same sheets.

Only how a page is written stands here; what is on it comes from render. reportlab is imported on use.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from importlib.resources import files
from io import BytesIO
from typing import TYPE_CHECKING

from export.pdf_path import PagePath
from export.progress import Cancelled, Progress
from model.units import MM_PER_INCH
from render.dimension_strokes import dimension_strokes, dimension_text
from render.drawing import (
    Anchor,
    Dimension,
    Fill,
    Hatch,
    Lines,
    Mark,
    Pen,
    Placed,
    Point,
    Polyline,
    Region,
    Ring,
    Segment,
    Sheet,
    Text,
)
from render.hatching import hatch_segments
from render.lettering import CAPITAL, TYPEFACES, replace_missing, text_runs, text_width
from render.pens import STROKES, TINTS, rgb
from render.sheets import CONTINUED, TITLES

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas

POINTS_PER_INCH = 72
POINTS_PER_MM = POINTS_PER_INCH / MM_PER_INCH
FONT_NAMES = {False: "MantelwrightText", True: "MantelwrightTextBold"}
"""Names the typeface is known by while a file is written."""
ROUND, BUTT, EVEN_ODD = 1, 0, 0


def write_pdf(
    sheets: Sequence[Sheet],
    title: str,
    author: str = "",
    progress: Progress | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> bytes:
    """A PDF of `sheets` that prints at 100 %, bookmarks by chapter, sheet and view, and links.

    `progress` is called before the first sheet and after each; `cancelled` is asked before each.
    Raises Cancelled when it answers yes.
    """
    stream = BytesIO()
    canvas = _open_canvas(stream, title, author)
    total = len(sheets)
    for done, sheet in enumerate(sheets):
        if cancelled is not None and cancelled():
            raise Cancelled
        if progress is not None and done == 0:
            progress(0, total)
        _write_sheet(canvas, sheet, done, sheets[done - 1] if done else None)
        if progress is not None:
            progress(done + 1, total)
    canvas.save()
    return stream.getvalue()


def _open_canvas(stream: BytesIO, title: str, author: str) -> Canvas:
    from reportlab import rl_config
    from reportlab.pdfgen.canvas import Canvas

    rl_config.useA85 = 0  # streams as bytes: a fifth smaller than as letters, and sooner written
    load_typeface()
    canvas = Canvas(stream, invariant=1, pageCompression=1, lang="en-US")
    canvas.setTitle(title)
    canvas.setAuthor(author)
    canvas.setSubject("Drawings, checks and cut list of a fireplace surround")
    canvas.setCreator("Mantelwright")
    canvas.setViewerPreference("PrintScaling", "None")
    return canvas


def load_typeface() -> None:
    """Have reportlab read the typeface; done once, before the first page or while there is nothing to do."""
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont

    registered = set(pdfmetrics.getRegisteredFontNames())
    for bold, name in FONT_NAMES.items():
        if name not in registered:
            data = files("assets").joinpath("fonts", TYPEFACES[bold]).read_bytes()
            pdfmetrics.registerFont(TTFont(name, BytesIO(data)))


def _write_sheet(canvas: Canvas, sheet: Sheet, index: int, before: Sheet | None) -> None:
    canvas.setPageSize((sheet.width * POINTS_PER_INCH, sheet.height * POINTS_PER_INCH))
    _write_bookmarks(canvas, sheet, index, before)
    _write_links(canvas, sheet)
    canvas.addPageLabel(index, style="ARABIC", start=index + 1)
    _write_pictures(canvas, sheet)
    pen = _PagePen(canvas)
    for placed in sheet.placed:
        pen.replay(placed)
    pen.finish()
    canvas.showPage()


def _write_bookmarks(canvas: Canvas, sheet: Sheet, index: int, before: Sheet | None) -> None:
    """A chapter's title, below it the sheets that go on with it, below each its views if it has several.

    What has a bookmark of its own, such as a step, stands right below the chapter's title.
    """
    key, title = _key(index + 1), f"{index + 1}  {sheet.title}"
    goes_on = before is not None and _chapter(before) == _chapter(sheet)
    own = [placed.bookmark for placed in sheet.placed if placed.bookmark]
    views = [TITLES[placed.name] for placed in sheet.placed if placed.name in TITLES]
    canvas.bookmarkPage(key)
    if not (own and goes_on):
        canvas.addOutlineEntry(title, key, int(goes_on), closed=True)
    level = 1 if own else int(goes_on) + 1
    for number, view in enumerate(own or (views if len(views) > 1 else ()), start=1):
        canvas.bookmarkPage(f"{key}-{number}")
        canvas.addOutlineEntry(view, f"{key}-{number}", level)


def _chapter(sheet: Sheet) -> str:
    return sheet.title.removesuffix(CONTINUED)


def _key(number: int) -> str:
    """What the sheet of a number is found by inside the file."""
    return f"sheet-{number}"


def _write_links(canvas: Canvas, sheet: Sheet) -> None:
    """Writing that names another sheet leads there."""
    for link in sheet.links:
        box = tuple(place * POINTS_PER_INCH for place in link.box)
        canvas.linkRect("", _key(link.to), box, thickness=0, color=None)


def _write_pictures(canvas: Canvas, sheet: Sheet) -> None:
    """Photos go in as they are, under everything that is drawn."""
    from reportlab.lib.utils import ImageReader

    for picture in sheet.pictures:
        left, low, right, high = (place * POINTS_PER_INCH for place in picture.box)
        canvas.drawImage(ImageReader(BytesIO(picture.data)), left, low, right - left, high - low)


class _PagePen:
    """Replays placed drawings on one page; strokes of one pen that follow each other go out as one path."""

    def __init__(self, canvas: Canvas) -> None:
        self.canvas = canvas
        self.pen: tuple[Pen, str] | None = None
        self.fill = ""
        self.path = PagePath()
        self.ratio = 1.0
        self.scale = float(POINTS_PER_INCH)
        self.left = self.bottom = 0.0

    def replay(self, placed: Placed) -> None:
        self.ratio = placed.drawing.ratio
        self.scale = POINTS_PER_INCH / self.ratio
        self.left, self.bottom = (place * POINTS_PER_INCH for place in placed.at)
        for mark in placed.drawing.marks:
            self._draw(mark)

    def finish(self) -> None:
        """Put down the strokes that are still held back."""
        if self.pen is not None:
            pen, ink = self.pen
            stroke = STROKES[pen]
            canvas = self.canvas
            canvas.setStrokeColorRGB(*rgb(ink or stroke.ink))
            canvas.setLineWidth(stroke.width * POINTS_PER_MM)
            canvas.setDash([length * POINTS_PER_MM for length in stroke.dash])
            canvas.setLineCap(BUTT if stroke.dash else ROUND)
            canvas.setLineJoin(ROUND)
            canvas.drawPath(self.path, stroke=1, fill=0)
            self.pen = None

    def _draw(self, mark: Mark) -> None:
        match mark:
            case Lines():
                self._strokes(mark.pen, mark.segments, mark.ink)
            case Polyline():
                self._polyline(mark.pen, mark.points, mark.closed)
            case Region():
                self._region(mark.fill, mark.rings, mark.tint)
            case Hatch():
                self._strokes(mark.pen, hatch_segments(mark))
            case Text():
                self._text(mark)
            case Dimension():
                self._strokes(Pen.DIMENSION, dimension_strokes(mark, self.ratio))
                self._text(dimension_text(mark), Pen.DIMENSION)

    def _path_for(self, pen: Pen, ink: str = "") -> PagePath:
        if self.pen != (pen, ink):
            self.finish()
            self.pen, self.path = (pen, ink), PagePath()
        return self.path

    def _strokes(self, pen: Pen, segments: Iterable[Segment], ink: str = "") -> None:
        self._path_for(pen, ink).strokes(segments, self.scale, self.left, self.bottom)

    def _polyline(self, pen: Pen, points: Ring, closed: bool) -> None:
        self._trace(self._path_for(pen), points, closed)

    def _trace(self, path: PagePath, points: Ring, closed: bool) -> None:
        for number, point in enumerate(points):
            (path.lineTo if number else path.moveTo)(*self._place(point))
        if closed and points:
            path.close()

    def _region(self, fill: Fill, rings: tuple[Ring, ...], tint: str) -> None:
        self.finish()
        path = PagePath()
        for ring in rings:
            self._trace(path, ring, closed=True)
        self._fill_with(tint or TINTS[fill])
        self.canvas.drawPath(path, stroke=0, fill=1, fillMode=EVEN_ODD)

    def _fill_with(self, ink: str) -> None:
        """What areas and writing are filled with from now on; said where it is another than before."""
        if ink != self.fill:
            self.canvas.setFillColorRGB(*rgb(ink))
            self.fill = ink

    def _text(self, text: Text, pen: Pen | None = None) -> None:
        """Writing goes through no markup: every character stands for itself."""
        self.finish()
        canvas = self.canvas
        if (words := replace_missing(text.text)) != text.text:
            text = replace(text, text=words)
        size = text.height * self.scale / CAPITAL
        self._fill_with(STROKES[pen or text.pen].ink)
        x, y = self._place(text.at)
        shift = _before(text) * self.scale
        if text.rotation:
            canvas.saveState()
            canvas.translate(x, y)
            canvas.rotate(text.rotation)
            self._set(text, size, -shift, 0.0)
            canvas.restoreState()
        else:
            self._set(text, size, x - shift, y)

    def _set(self, text: Text, size: float, x: float, y: float) -> None:
        """One line from (x, y) on, its fractions set; the file says beside them what their parts mean.

        Without that some readers take the raised figure for a line of its own.
        """
        canvas, capital, name = self.canvas, size * CAPITAL, FONT_NAMES[text.bold]
        runs = text_runs(text.text, text.bold)
        if len(runs) > 1:
            canvas._code.append(f"/Span <</ActualText <{_utf16(text.text)}>>> BDC")
        for run in runs:
            canvas.setFont(name, size * run.size)
            canvas.drawString(x + run.at * capital, y + run.rise * capital, run.text)
        if len(runs) > 1:
            canvas._code.append("EMC")

    def _place(self, point: Point) -> Point:
        return self.left + point[0] * self.scale, self.bottom + point[1] * self.scale


def _utf16(text: str) -> str:
    """A text as PDF writes it for readers, in hexadecimal figures (ISO 32000-1, 7.9.2.2)."""
    return ("\ufeff" + text).encode("utf-16-be").hex()


def _before(text: Text) -> float:
    """How much of the writing stands before its place, in the drawing's unit."""
    if text.anchor is Anchor.START:
        return 0.0
    width = text_width(text.text, text.height, text.bold)
    return width if text.anchor is Anchor.END else width / 2
