"""Lays the drawn surround over a photo, on the screen and into a picture."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QColor, QImage, QPainter, QPen, QPolygonF

from app.painter import rings_path
from app.theme import ON_PAPER

if TYPE_CHECKING:
    from render.photo_picture import PhotoPicture

SHADOW = QColor(0, 0, 0, 105)
"""How much a shadow darkens what the photo shows."""
BAND = 70
"""Of 255: how strongly the band of uncertainty is laid over."""
SOFT = 0.5
"""How strongly edges are ruled: tones tell most of them, and a photo has no lines."""
LINE = 1 / 1600
"""Breadth of the wood's lines, of the photo's width."""


def paint_surround(painter: QPainter, picture: PhotoPicture, width: float) -> None:
    """The surround in the photo's pixels; `width` is the photo's own."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    painter.fillPath(rings_path(picture.shadows), SHADOW)
    for patch in picture.patches:
        painter.fillPath(rings_path(patch.rings), QColor(patch.tint))
    ink = QColor(picture.ink)
    ink.setAlphaF(SOFT)
    painter.setPen(QPen(ink, max(0.8, LINE * width)))
    for line in picture.lines:
        painter.drawPolyline(QPolygonF([QPointF(x, y) for x, y in line]))


def paint_band(painter: QPainter, picture: PhotoPicture) -> None:
    """Where the wood's outline may lie."""
    tint = QColor(ON_PAPER.lit)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    tint.setAlpha(BAND)
    path = rings_path(picture.band)
    painter.fillPath(path, tint)
    tint.setAlpha(255)
    pen = QPen(tint, 1.0, Qt.PenStyle.DashLine)
    pen.setCosmetic(True)
    painter.setPen(pen)
    painter.drawPath(path)


def compose(image: QImage, picture: PhotoPicture, with_band: bool) -> QImage:
    """The photo with the surround in it, pixels and nothing else."""
    made = QImage(image.size(), QImage.Format.Format_RGB32)
    with QPainter(made) as painter:
        painter.drawImage(0, 0, image)
        paint_surround(painter, picture, image.width())
        if with_band:
            paint_band(painter, picture)
    return made
