"""A photo with the opening's four corners on it, to be set by hand or by key under a loupe.

It knows pixels of the photo and nothing of rooms; what is drawn over it is handed in.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import QPoint, QPointF, QRectF, QSizeF, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFocusEvent,
    QImage,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QPolygonF,
    QTransform,
)
from PySide6.QtWidgets import QWidget

from app.pause import build_pause
from app.photo_painter import paint_band, paint_surround
from app.theme import ON_PAPER, RHYTHM, colours
from render.drawing import Ring

if TYPE_CHECKING:
    from render.photo_picture import PhotoPicture

REACH = 28
"""Pixels of the screen, across and up or down together, within which a corner is taken hold of."""
LOUPE, TIMES = 160, 5.0
"""Side of the loupe in pixels of the screen, and how many times the photo's own it shows."""
PAUSE = 500
"""Milliseconds without a key after which moving by key is one finished step."""
CORNERS = ("Lower left", "Lower right", "Upper right", "Upper left")
_KEYS = (Qt.Key.Key_1, Qt.Key.Key_2, Qt.Key.Key_3, Qt.Key.Key_4)
_WAYS = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, -1),
    Qt.Key.Key_Down: (0, 1),
}
Place = tuple[float, float]


class PhotoCanvas(QWidget):
    """`moved` follows each move of a corner, `settled` the end of one gesture; both hand on all corners."""

    moved = Signal(object)
    settled = Signal(object)
    picked = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self._image: QImage | None = None
        self._corners: list[Place] = []
        self._before: list[Place] = []
        self._picture: PhotoPicture | None = None
        self._edges: tuple[Ring, ...] = ()
        self.active = 0
        """Which corner is picked."""
        self._holds: QPointF | None = None
        self.shows_wood = self.shows_band = True
        self._pause = build_pause(self, PAUSE, self._settle)
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMinimumSize(360, 260)
        self.setAccessibleName("Photo")
        self.setAccessibleDescription(
            "The opening's corners in the photo. Keys 1 to 4 pick one, arrow keys move it, with Shift ten "
            "times as far, Escape puts it back."
        )

    @property
    def corners(self) -> tuple[Place, ...]:
        """Where the corners are now, in pixels of the photo."""
        return tuple(self._corners)

    def show_photo(self, image: QImage | None, corners: Sequence[Place]) -> None:
        """Show a photo with its corners; what was drawn over another goes."""
        if image is not self._image:
            self._picture, self._edges = None, ()
        self._image = image
        if self._holds is None and not self._pause.isActive():
            self._corners = list(corners)
        self.update()

    def show_picture(self, picture: PhotoPicture | None) -> None:
        """Lay the wood over the photo, or nothing."""
        self._picture, self._edges = picture, ()
        self.update()

    def show_edges(self, edges: tuple[Ring, ...]) -> None:
        """Lay bare edges over it while something moves."""
        self._edges = edges
        self.update()

    def pick(self, corner: int) -> None:
        """Take up another corner."""
        self.active = corner
        self.picked.emit(corner)
        self.update()

    def to_screen(self, place: Place) -> QPointF:
        """Where a pixel of the photo is on the widget."""
        return self._transform().map(QPointF(*place))

    def _transform(self) -> QTransform:
        """From the photo's pixels to the widget's: whole, in the middle."""
        if self._image is None:
            return QTransform()
        wide, high = self._image.width(), self._image.height()
        scale = min(self.width() / wide, self.height() / high)
        return QTransform(
            scale, 0, 0, scale, (self.width() - scale * wide) / 2, (self.height() - scale * high) / 2
        )

    def _to_photo(self, point: QPointF) -> QPointF:
        return self._transform().inverted()[0].map(point)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take hold of the nearest corner within reach."""
        self.setFocus(Qt.FocusReason.MouseFocusReason)
        if event.button() is not Qt.MouseButton.LeftButton:
            return
        nearest = self._find_near(event.position())
        if nearest is not None:
            self._settle()
            self.pick(nearest)
            self._holds = self.to_screen(self._corners[nearest]) - event.position()
            self._before = list(self._corners)

    def _find_near(self, point: QPointF) -> int | None:
        """The corner nearest to a point of the widget, within reach."""
        off = [(self.to_screen(corner) - point).manhattanLength() for corner in self._corners]
        least = min(off, default=REACH + 1.0)
        return off.index(least) if least <= REACH else None

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Move the corner that is held; else say which could be."""
        if self._holds is not None:
            at = self._to_photo(event.position() + self._holds)
            self._move_to((at.x(), at.y()))
            return
        near = self._find_near(event.position()) is not None
        self.setCursor(Qt.CursorShape.SizeAllCursor if near else Qt.CursorShape.ArrowCursor)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let the corner go where it is."""
        if self._holds is not None and event.button() is Qt.MouseButton.LeftButton:
            self._holds = None
            self._settle()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Pick a corner, move it, put it back."""
        key = Qt.Key(event.key())
        if key == Qt.Key.Key_Escape and self._before:
            self._put_back()
        elif key in _KEYS and self._corners:
            self._settle()
            self.pick(_KEYS.index(key))
        elif key in (Qt.Key.Key_PageUp, Qt.Key.Key_PageDown) and self._corners:
            self._settle()
            self.pick((self.active + (1 if key == Qt.Key.Key_PageDown else -1)) % len(self._corners))
        elif key in _WAYS and self._corners and self._holds is None:
            self._step(key, bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier))
        else:
            super().keyPressEvent(event)

    def _step(self, key: Qt.Key, coarse: bool) -> None:
        if not self._before:
            self._before = list(self._corners)
        dx, dy = _WAYS[key]
        far = 10 if coarse else 1
        x, y = self._corners[self.active]
        self._move_to((x + dx * far, y + dy * far))
        self._pause.start()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """What was moved by key is done."""
        super().focusOutEvent(event)
        if self._holds is None:
            self._settle()
        self.update()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the loupe."""
        super().focusInEvent(event)
        self.update()

    def _move_to(self, place: Place) -> None:
        assert self._image is not None
        x = min(max(place[0], 0.0), float(self._image.width()))
        y = min(max(place[1], 0.0), float(self._image.height()))
        self._corners[self.active] = (x, y)
        self.moved.emit(self.corners)
        self.update()

    def _put_back(self) -> None:
        self._pause.stop()
        self._holds = None
        self._corners, self._before = self._before, []
        self.moved.emit(self.corners)
        self.settled.emit(self.corners)
        self.update()

    def _settle(self) -> None:
        self._pause.stop()
        before, self._before = self._before, []
        if before and before != self._corners:
            self.settled.emit(self.corners)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The photo, the wood on it, the corners, the loupe."""
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), QColor(colours().desk))
            if self._image is None:
                return
            painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform, True)
            painter.setTransform(self._transform())
            self._paint_photo(painter)
            painter.resetTransform()
            self._paint_corners(painter)
            if self.hasFocus() and self._corners:
                self._paint_loupe(painter)

    def _paint_photo(self, painter: QPainter) -> None:
        assert self._image is not None
        painter.drawImage(0, 0, self._image)
        if self._edges:
            pen = QPen(QColor(ON_PAPER.lit), 1.5)
            pen.setCosmetic(True)
            painter.setPen(pen)
            for edge in self._edges:
                painter.drawPolyline(QPolygonF([QPointF(x, y) for x, y in edge]))
        elif self._picture is not None:
            if self.shows_wood:
                paint_surround(painter, self._picture, self._image.width())
            if self.shows_band:
                paint_band(painter, self._picture)

    def _paint_corners(self, painter: QPainter) -> None:
        """Light on dark, so that they show on any photo; the one picked is larger."""
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
        places = [self.to_screen(corner) for corner in self._corners]
        for colour, width in ((QColor("black"), 3.0), (QColor("white"), 1.2)):
            painter.setPen(QPen(colour, width))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawPolygon(QPolygonF(places[: len(CORNERS)]))
            self._paint_lines(painter)
            for i, place in enumerate(places):
                radius = 9.0 if i == self.active else 6.0
                painter.drawEllipse(place, radius, radius)

    def _paint_lines(self, painter: QPainter) -> None:
        """What marks beside the corners stand for; here there are none."""

    def _paint_loupe(self, painter: QPainter) -> None:
        """The picked corner's place, large, in the corner of the window that is furthest from it."""
        assert self._image is not None
        x, y = self._corners[self.active]
        here = self.to_screen((x, y))
        side = min(LOUPE, self.width() // 3, self.height() // 3)
        left = RHYTHM if here.x() > self.width() / 2 else self.width() - side - RHYTHM
        top = RHYTHM if here.y() > self.height() / 2 else self.height() - side - RHYTHM
        box = QRectF(QPoint(int(left), int(top)), QSizeF(side, side))
        own = self._transform().m11()
        reach = side / (TIMES * max(own, 0.2)) / 2
        painter.fillRect(box, QColor("black"))
        painter.drawImage(box, self._image, QRectF(x - reach, y - reach, 2 * reach, 2 * reach))
        for colour, width in ((QColor("black"), 3.0), (QColor("white"), 1.0)):
            painter.setPen(QPen(colour, width))
            painter.drawLine(
                QPointF(box.center().x(), box.top() + 8), QPointF(box.center().x(), box.bottom() - 8)
            )
            painter.drawLine(
                QPointF(box.left() + 8, box.center().y()), QPointF(box.right() - 8, box.center().y())
            )
            painter.drawRect(box)
