"""A drawing as a PNG picture, with or without a display; any picture as the bytes of a file."""

from __future__ import annotations

import os
from math import ceil

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, Qt
from PySide6.QtGui import QColor, QGuiApplication, QImage, QImageWriter, QPainter

from app.painter import Place, gather_drawing, paint_drawing
from app.theme import load_typeface
from model.errors import Refused
from model.units import MM_PER_INCH
from render.drawing import Drawing, Fill
from render.pens import TINTS

CLEAR = 0.25
"""Paper left clear round the drawing, inches on paper. Shop choice."""
MOST_PIXELS = 12_000
"""Widest and highest picture."""
INCHES_PER_METRE = 1000 / MM_PER_INCH

_application: QGuiApplication | None = None


def write_png(drawing: Drawing, dots_per_inch: float, clear: bool = False) -> bytes:
    """A picture of `drawing` at the ratio it was lettered for, on white paper, `dots_per_inch` fine.

    `clear` leaves out the paper: where nothing is drawn, what the picture is laid on shows through.
    Raises Refused when the picture would be more than MOST_PIXELS wide or high.
    """
    _ensure_application()
    gathered = gather_drawing(drawing)
    scale = dots_per_inch / drawing.ratio
    edge = CLEAR * dots_per_inch
    width, height = (ceil(side * scale + 2 * edge) for side in (gathered.box.width(), gathered.box.height()))
    if max(width, height) > MOST_PIXELS:
        raise Refused(
            "dots to the inch",
            f"{dots_per_inch:g}",
            f"the picture would be {width} by {height} pixels; write fewer, for at most {MOST_PIXELS} a side",
        )
    image = QImage(
        width, height, QImage.Format.Format_ARGB32_Premultiplied if clear else QImage.Format.Format_RGB32
    )
    dots_per_metre = round(dots_per_inch * INCHES_PER_METRE)
    image.setDotsPerMeterX(dots_per_metre)
    image.setDotsPerMeterY(dots_per_metre)
    image.fill(Qt.GlobalColor.transparent if clear else QColor(TINTS[Fill.PAPER]))
    place = Place(scale, edge - scale * gathered.box.left(), height - edge + scale * gathered.box.top())
    with QPainter(image) as painter:
        paint_drawing(painter, gathered, place, dots_per_inch / MM_PER_INCH)
    return encode_picture(image, "png")


def _ensure_application() -> None:
    """Letters need an application; without a window one that needs no display will do."""
    global _application
    if QGuiApplication.instance() is None:
        os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
        _application = QGuiApplication(["mantelwright"])
        load_typeface()


def encode_picture(image: QImage, kind: str, quality: int = -1) -> bytes:
    """A file of `kind`, "png" or "jpeg" with only the picture in it; `quality` 0 to 100, -1 for the usual."""
    data = QByteArray()
    buffer = QBuffer(data)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QImageWriter(buffer, QByteArray(kind.encode()))
    writer.setQuality(quality)
    if not writer.write(image):
        raise RuntimeError(f"the picture could not be encoded: {writer.errorString()}")
    buffer.close()
    return bytes(data.data())
