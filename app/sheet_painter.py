"""A sheet on a QPainter at any number of dots to the inch: the preview, the printer."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QImage, QPainter, QPixmap

from app.painter import Gathered, Place, gather_drawing, paint_drawing
from model.units import MM_PER_INCH
from render.drawing import Fill, PlacedPicture, Sheet
from render.pens import TINTS


@dataclass(frozen=True, slots=True)
class ReadySheet:
    """A sheet whose drawings are gathered, each with its ratio and its place in paper inches.

    `pictures` are unpacked, each with its box in paper inches, y down from the page's top.
    """

    sheet: Sheet
    parts: tuple[tuple[Gathered, float, tuple[float, float]], ...]
    pictures: tuple[tuple[QImage, QRectF], ...]

    @property
    def box(self) -> QRectF:
        """What is drawn on, paper inches, y down from the page's top."""
        box = QRectF()
        for gathered, ratio, (x, y) in self.parts:
            g = gathered.box
            top = self.sheet.height - y - g.bottom() / ratio
            box = box.united(QRectF(x + g.left() / ratio, top, g.width() / ratio, g.height() / ratio))
        for _, place in self.pictures:
            box = box.united(place)
        return box


def make_ready(sheet: Sheet) -> ReadySheet:
    """Gather everything on a sheet once, to be painted often."""
    parts = tuple((gather_drawing(each.drawing), each.drawing.ratio, each.at) for each in sheet.placed)
    pictures = tuple((QImage.fromData(each.data), _box_of(sheet, each)) for each in sheet.pictures)
    return ReadySheet(sheet, parts, pictures)


def _box_of(sheet: Sheet, picture: PlacedPicture) -> QRectF:
    left, low, right, high = picture.box
    return QRectF(left, sheet.height - high, right - left, high - low)


def paint_sheet(painter: QPainter, ready: ReadySheet, dots: float) -> None:
    """Paint it from the painter's origin on, `dots` to an inch of paper."""
    for image, box in ready.pictures:
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform, True)
        painter.drawImage(QRectF(box.topLeft() * dots, box.size() * dots), image)
    for gathered, ratio, (x, y) in ready.parts:
        place = Place(dots / ratio, x * dots, (ready.sheet.height - y) * dots)
        paint_drawing(painter, gathered, place, dots / MM_PER_INCH)


def picture_sheet(ready: ReadySheet, width: int, ratio: float = 1.0) -> QPixmap:
    """A sheet `width` pixels wide on its paper, for a screen of `ratio` dots to a pixel."""
    dots = width / ready.sheet.width
    pixmap = QPixmap(round(width * ratio), round(ready.sheet.height * dots * ratio))
    pixmap.setDevicePixelRatio(ratio)
    pixmap.fill(QColor(TINTS[Fill.PAPER]))
    with QPainter(pixmap) as painter:
        painter.setRenderHint(QPainter.RenderHint.TextAntialiasing)
        painter.setBackgroundMode(Qt.BGMode.TransparentMode)
        paint_sheet(painter, ready, dots)
    return pixmap
