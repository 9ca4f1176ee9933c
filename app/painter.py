"""Replays a drawing on a QPainter, for the screen and for pictures. Only here do model inches become pixels.

A drawing is first gathered into a few paths, one for each pen, in model inches; painting them at
another scale or place then costs nothing in Python.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from itertools import accumulate, chain, pairwise
from typing import NamedTuple

from PySide6.QtCore import QLineF, QPointF, QRect, QRectF, Qt
from PySide6.QtGui import (
    QBrush,
    QColor,
    QFont,
    QFontMetricsF,
    QGlyphRun,
    QGuiApplication,
    QPainter,
    QPainterPath,
    QPen,
    QTextLayout,
    QTransform,
)

from render.dimension_strokes import dimension_strokes, dimension_text
from render.drawing import (
    Anchor,
    Dimension,
    Drawing,
    Fill,
    Hatch,
    Lines,
    Mark,
    Pen,
    Point,
    Polyline,
    Region,
    Ring,
    Segment,
    Text,
)
from render.extent import Box, list_words
from render.hatching import hatch_segments
from render.lettering import CAPITAL, FAMILY, text_runs
from render.pens import STROKES, TINTS

LEAST_CAPITAL = 2.5
"""Pixels; smaller writing is left out, being only grey dust."""
_BEFORE = {Anchor.START: 0.0, Anchor.MIDDLE: 0.5, Anchor.END: 1.0}


Ink = tuple[Pen, str]
"""A pen, and a colour of its own where a stroke has one."""


@dataclass(slots=True)
class Batch:
    """Strokes between two areas: straight level and plumb ones apart from the rest, by pen and ink."""

    upright: dict[Ink, QPainterPath] = field(default_factory=dict)
    slanted: dict[Ink, QPainterPath] = field(default_factory=dict)


@dataclass(slots=True)
class Tinted:
    """An area of one tint."""

    tint: str
    path: QPainterPath


@dataclass(slots=True)
class Gathered:
    """A drawing ready to be painted, in model inches. `box` holds everything, writing included."""

    steps: list[Batch | Tinted]
    texts: list[Text]
    box: QRectF


@dataclass(frozen=True, slots=True)
class Place:
    """Where the model lies on the device: pixels for one inch, and the pixel of the model's origin."""

    scale: float
    x: float
    y: float

    @property
    def transform(self) -> QTransform:
        """From model inches, y up, to pixels, y down."""
        return QTransform(self.scale, 0, 0, -self.scale, self.x, self.y)

    def to_pixels(self, point: Point) -> QPointF:
        """The pixel of a point of the model."""
        return QPointF(self.x + self.scale * point[0], self.y - self.scale * point[1])

    def to_line(self, segment: Segment) -> QLineF:
        """The same of a straight piece."""
        x0, y0, x1, y1 = segment
        return QLineF(
            self.x + self.scale * x0,
            self.y - self.scale * y0,
            self.x + self.scale * x1,
            self.y - self.scale * y1,
        )

    def to_model(self, pixel: QPointF) -> Point:
        """The point of the model under a pixel."""
        return (pixel.x() - self.x) / self.scale, (self.y - pixel.y()) / self.scale

    def moved(self, dx: float, dy: float) -> Place:
        """The place of a drawing that stands (dx, dy) inches from the model's origin."""
        return Place(self.scale, self.x + self.scale * dx, self.y - self.scale * dy)


def place_within(box: QRectF, room: QRect) -> Place:
    """Where `box`, model inches, stands in the middle of `room`, pixels, as large as it fits."""
    scale = min(room.width() / box.width(), room.height() / box.height())
    left = room.center().x() - scale * box.center().x()
    return Place(scale, left, room.center().y() + scale * box.center().y())


def gather_drawing(drawing: Drawing) -> Gathered:
    """The drawing's marks as few paths, laid down in the same order wherever it can be seen."""
    gathered = Gathered([], [], QRectF())
    for mark in drawing.marks:
        _gather_mark(gathered, mark, drawing.ratio)
    drawn = [path.controlPointRect() for step in gathered.steps for path in _list_paths(step)]
    boxes: list[Box] = [box.getCoords() for box in drawn if not box.isNull()]  # type: ignore[misc]
    gathered.box = _unite([*boxes, *list_words(drawing.marks)])
    return gathered


def _list_paths(step: Batch | Tinted) -> list[QPainterPath]:
    return [step.path] if isinstance(step, Tinted) else [*step.upright.values(), *step.slanted.values()]


def _gather_mark(gathered: Gathered, mark: Mark, ratio: float) -> None:
    match mark:
        case Region():
            gathered.steps.append(Tinted(mark.tint or TINTS[mark.fill], region_path(mark)))
        case Lines():
            _add_segments(_batch(gathered), mark.pen, mark.segments, mark.ink)
        case Polyline():
            ring = mark.points + mark.points[:1] if mark.closed else mark.points
            _add_polyline(_batch(gathered), mark.pen, ring)
        case Hatch():
            _path(_batch(gathered).slanted, mark.pen).addPath(_hatch_path(mark))
        case Text():
            gathered.texts.append(mark)
        case Dimension():
            own, writing = _dimension_parts(mark, ratio)
            _add_batch(_batch(gathered), own)
            gathered.texts.append(writing)


def _add_batch(batch: Batch, own: Batch) -> None:
    for paths, others in ((batch.upright, own.upright), (batch.slanted, own.slanted)):
        for (pen, ink), path in others.items():
            _path(paths, pen, ink).addPath(path)


@lru_cache(maxsize=256)
def _dimension_parts(dimension: Dimension, ratio: float) -> tuple[Batch, Text]:
    """Strokes and writing. Remembered, since an edit leaves most alone; they must not be added to."""
    batch = Batch()
    _add_segments(batch, Pen.DIMENSION, dimension_strokes(dimension, ratio))
    return batch, dimension_writing(dimension)


@lru_cache(maxsize=256)
def dimension_writing(dimension: Dimension) -> Text:
    """The writing of a dimension, in the ink of its strokes."""
    text = dimension_text(dimension)
    return Text(
        text.text, text.at, text.height, text.anchor, text.rotation, text.bold, Pen.DIMENSION, text.stands_for
    )


def region_path(region: Region) -> QPainterPath:
    """The area with its holes left out: the even-odd rule over all rings, as every writer has it."""
    return rings_path(region.rings)


def rings_path(rings: Iterable[Ring]) -> QPainterPath:
    """Rings for the even-odd rule as one path."""
    path = QPainterPath()
    for ring in rings:  # a path is filled by that rule, if nobody sets another
        _follow(path, ring)
        path.closeSubpath()
    return path


def _follow(path: QPainterPath, points: Ring) -> None:
    """From point to point: in half the time that it takes to make a polygon for Qt."""
    if not points:
        return
    draw_on = path.lineTo
    path.moveTo(*points[0])
    for x, y in points[1:]:
        draw_on(x, y)


def _batch(gathered: Gathered) -> Batch:
    if not gathered.steps or isinstance(gathered.steps[-1], Tinted):
        gathered.steps.append(Batch())
    last = gathered.steps[-1]
    assert isinstance(last, Batch)
    return last


def _path(paths: dict[Ink, QPainterPath], pen: Pen, ink: str = "") -> QPainterPath:
    if (pen, ink) not in paths:
        paths[pen, ink] = QPainterPath()
    return paths[pen, ink]


def _add_segments(batch: Batch, pen: Pen, segments: Iterable[Segment], ink: str = "") -> None:
    upright, slanted = _path(batch.upright, pen, ink), _path(batch.slanted, pen, ink)
    for x1, y1, x2, y2 in segments:
        path = upright if x1 == x2 or y1 == y2 else slanted
        path.moveTo(x1, y1)
        path.lineTo(x2, y2)


def _add_polyline(batch: Batch, pen: Pen, points: Ring) -> None:
    straight = all(x1 == x2 or y1 == y2 for (x1, y1), (x2, y2) in pairwise(points))
    path = _path(batch.upright if straight else batch.slanted, pen)
    _follow(path, points)


@lru_cache(maxsize=64)
def _hatch_path(hatch: Hatch) -> QPainterPath:
    path = QPainterPath()
    for x1, y1, x2, y2 in hatch_segments(hatch):
        path.moveTo(x1, y1)
        path.lineTo(x2, y2)
    return path


def _unite(boxes: Sequence[Box]) -> QRectF:
    """The rectangle round all (left, low, right, high); unlike Qt's own, one without a width counts."""
    if not boxes:
        return QRectF()
    left, low, right, high = zip(*boxes, strict=True)
    return QRectF(QPointF(min(left), min(low)), QPointF(max(right), max(high)))


class Stroke(NamedTuple):
    """A path, and what it is drawn with: an ink, smooth or sharp, or filled with a tint instead."""

    path: QPainterPath
    smooth: bool
    ink: Ink | None = None
    tint: str = ""


def _list_strokes(step: Batch | Tinted) -> Iterator[Stroke]:
    """What is drawn of a step, in order. Areas are not smoothed, so that no pale seams show between them."""
    if isinstance(step, Tinted):
        yield Stroke(step.path, False, tint=step.tint)
        return
    for smooth, paths in ((False, step.upright), (True, step.slanted)):
        for ink, path in paths.items():
            if not path.isEmpty():
                yield Stroke(path, smooth, ink)


def paint_drawing(painter: QPainter, gathered: Gathered, place: Place, pixels_per_mm: float) -> None:
    """Paint it at `place`; line widths and dashes are as on paper at `pixels_per_mm`, at any scale."""
    dots_per_mm = pixels_per_mm * painter.device().devicePixelRatioF()  # pens that do not scale are in dots
    painter.save()
    painter.setTransform(place.transform, True)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    smooth = None
    for stroke in chain.from_iterable(map(_list_strokes, gathered.steps)):
        if stroke.smooth is not smooth:
            smooth = stroke.smooth
            painter.setRenderHint(QPainter.RenderHint.Antialiasing, smooth)
        _paint_stroke(painter, stroke, dots_per_mm)
    painter.restore()
    for text in gathered.texts:
        paint_text(painter, text, place, _ink(text.pen))


def _paint_stroke(painter: QPainter, stroke: Stroke, dots_per_mm: float) -> None:
    if stroke.ink is None:
        painter.fillPath(stroke.path, _brush(stroke.tint))
    else:
        pen, ink = stroke.ink
        painter.setPen(screen_pen(pen, dots_per_mm, stroke.smooth, ink))
        painter.drawPath(stroke.path)


@lru_cache(maxsize=64)
def _brush(tint: str) -> QBrush:
    return QBrush(QColor(tint))


@lru_cache(maxsize=64)
def _ink(pen: Pen) -> QColor:
    return QColor(STROKES[pen].ink)


@lru_cache(maxsize=256)
def screen_pen(pen: Pen, dots_per_mm: float, smooth: bool, ink: str = "") -> QPen:
    """The pen as it is on paper; a sharp line cannot be thinner than a dot, so it is made paler."""
    stroke = STROKES[pen]
    width = stroke.width * dots_per_mm
    colour = QColor(ink or stroke.ink)
    if not smooth and width < 1:
        colour = _paled(colour, max(0.35, width))
        width = 1.0
    made = QPen(colour, width if smooth else round(width))
    made.setCosmetic(True)
    made.setCapStyle(Qt.PenCapStyle.FlatCap)
    made.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    if stroke.dash:
        made.setDashPattern([length * dots_per_mm / made.widthF() for length in stroke.dash])
    return made


def _paled(colour: QColor, strength: float) -> QColor:
    """The colour as it looks thinned on the paper; opaque, since blended lines take ten times as long."""
    paper = QColor(TINTS[Fill.PAPER])
    mixed = (
        round(strength * ink + (1 - strength) * under)
        for ink, under in zip(colour.getRgb()[:3], paper.getRgb()[:3], strict=True)  # type: ignore[index]
    )
    return QColor(*mixed)


def paint_text(painter: QPainter, text: Text, place: Place, colour: QColor) -> None:
    """One line of writing, its anchor where the drawing has it."""
    capital = text.height * place.scale
    if capital < LEAST_CAPITAL or not text.text:
        return
    at = place.to_pixels(text.at)
    line = _set_line(text.text, text.bold, capital)
    start = QPointF(-line.width * _BEFORE[text.anchor], 0)
    painter.setPen(colour)
    if text.rotation == 0:
        _paint_line(painter, line, at + start)
        return
    painter.save()
    painter.translate(at)
    painter.rotate(-text.rotation)
    _paint_line(painter, line, start)
    painter.restore()


@dataclass(frozen=True, slots=True)
class SetLine:
    """A line of writing with its fractions set: its width in pixels, and its glyphs by their size."""

    width: float
    runs: tuple[QGlyphRun, ...]


@lru_cache(maxsize=1024)
def _set_line(text: str, bold: bool, capital: float) -> SetLine:
    """Most lines are the same from one drawing to the next; shaped once, they are painted in half the time.

    Each run begins where the one before it ends on the screen: fine writing is wider or narrower there than
    its typeface says, so where a run was laid out would leave a gap or lie over its whole number.
    """
    runs = text_runs(text, bold)
    fonts = [_font(round(run.size * capital / CAPITAL * 4), bold) for run in runs]
    widths = [QFontMetricsF(font).horizontalAdvance(run.text) for font, run in zip(fonts, runs, strict=True)]
    *starts, width = accumulate(widths, initial=0.0)
    merged: list[QGlyphRun] = []
    for run, font, x in zip(runs, fonts, starts, strict=True):
        for glyphs in _shape(run.text, font):
            _join_run(merged, glyphs, QPointF(x, -run.rise * capital))
    return SetLine(width, tuple(merged))


def _join_run(runs: list[QGlyphRun], glyphs: QGlyphRun, at: QPointF) -> None:
    """Put glyphs that begin at a point of the line with those of the same size, if there are any."""
    placed = [at + position for position in glyphs.positions()]
    for run in runs:
        if run.rawFont() == glyphs.rawFont():
            run.setPositions(run.positions() + placed)
            run.setGlyphIndexes(run.glyphIndexes() + glyphs.glyphIndexes())
            return
    glyphs.setPositions(placed)
    runs.append(glyphs)


def _shape(text: str, font: QFont) -> list[QGlyphRun]:
    """The glyphs of a run of one line, letters that another typeface must lend among them."""
    layout = QTextLayout(text, font)
    layout.beginLayout()
    line = layout.createLine()
    layout.endLayout()
    if not line.isValid():
        return []
    line.setPosition(QPointF(0.0, -line.ascent()))
    return layout.glyphRuns()


def _paint_line(painter: QPainter, line: SetLine, at: QPointF) -> None:
    for glyphs in line.runs:
        painter.drawGlyphRun(at, glyphs)


@lru_cache(maxsize=128)
def _font(quarter_pixels: int, bold: bool) -> QFont:
    """Of that many quarters of a pixel, on any device: writing is shaped in the screen's points."""
    font = QFont(FAMILY)
    font.setPointSizeF(quarter_pixels / 4 * 72 / QGuiApplication.primaryScreen().logicalDotsPerInchY())
    font.setWeight(QFont.Weight.DemiBold if bold else QFont.Weight.Normal)
    font.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    font.setKerning(False)
    return font
