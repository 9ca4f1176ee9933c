"""The sheet: paper on a quiet ground with the views on it, to be looked at closely and clicked on.

What stands on the sheet is decided elsewhere; this widget places it, paints it and says what was clicked.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import replace
from math import sqrt

from PySide6.QtCore import QEvent, QPoint, QPointF, QRect, QRectF, Qt, QTimer, Signal
from PySide6.QtGui import (
    QColor,
    QKeyEvent,
    QMouseEvent,
    QNativeGestureEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QPixmap,
    QRegion,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QWidget

from app.overlay import Overlay
from app.painter import Place, paint_drawing
from app.pause import build_pause
from app.shown import ShownView
from app.theme import RHYTHM, colours
from model.check.finding import Finding
from model.units import MM_PER_INCH
from render.drawing import Dimension, Fill, Point, Ring, Segment
from render.pens import TINTS

DESK = 2 * RHYTHM
"""Pixels of ground left showing round the paper when the whole of it is in view."""
MARGIN = 2 * RHYTHM
"""Pixels of paper left clear round the drawing, likewise."""
FEWEST_DOTS, MOST_DOTS, DOTS_PER_PIXEL = 58.0, 76.0, 0.105
"""Pixels that stand for one inch of paper when the whole sheet is in view, as a part of the room's height:
sets how large writing is. Capitals are then 7 to 9 pixels high; on a screen with finer dots they may be fewer
pixels, being no fewer dots."""
LINE_DOTS = 84.0
"""The same for line widths, which stay as they are at any zoom."""
LEAST_FILL = 0.8
"""A drawing that shrinks below this part of its room is fitted to it again."""
ZOOM_STEP = 1.25
SOFT_EDGE = 10
READY_PAUSE = 20
"""Milliseconds that a view which is ready waits for something else to be painted with."""
LEAST_SCALE, MOST_SCALE = 0.2, 600.0
_NOTCH = 120
CLICK_SLACK = 4
"""Pixels that a pointer may go between press and release of a click."""
_REACH = 6
_PAN_STEP = 8 * RHYTHM


class Canvas(QWidget):
    """Shows views on a sheet. `fitted` follows each change of the scale at which the sheet fits,
    `seen` the first time that anything is painted, `painted` the painting of views that none have replaced,
    `laid` another place or content of the sheet. `dimension_clicked` names a path and where it was clicked.
    """

    dimension_clicked = Signal(str, QPointF)
    view_clicked = Signal(str, object)
    fitted = Signal()
    seen = Signal()
    painted = Signal()
    laid = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._views: list[ShownView] = []
        self._place = Place(8.0, 0.0, 0.0)
        self._paper = QRectF()
        self._is_fitted = True
        self._held: Mapping[str, float] | None = None
        self._picture: QPixmap | None = None
        self._is_passing = True
        self._desk = QPixmap()
        self._desk_state: object = None
        self._pressed: QPointF | None = None
        self._panned = False
        self._was_seen = False
        self._is_news = False
        self._telling = build_pause(self, 0, self.painted)
        self._soon = build_pause(self, READY_PAUSE, self.update)
        self.overlay = Overlay()
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMinimumSize(320, 240)
        self.setAccessibleName("Sheet")
        self.setAccessibleDescription(
            "The drawing. Every dimension on it is also a field of the measuring list. Enter takes hold of "
            "an edge to move it, the space bar shows the state before for as long as it is held."
        )

    @property
    def place(self) -> Place:
        """Where the sheet's origin lies, and the scale."""
        return self._place

    @property
    def views(self) -> tuple[ShownView, ...]:
        """What is on the sheet."""
        return tuple(self._views)

    @property
    def shows_another(self) -> bool:
        """Whether another state of the job is on it, as its banner says."""
        return bool(self.overlay.banner)

    @property
    def is_fitted(self) -> bool:
        """Whether the whole sheet is in view and follows the drawing and the window's size."""
        return self._is_fitted

    def show_views(self, views: list[ShownView]) -> None:
        """Put other drawings on the sheet; the scale stays unless they no longer suit it, or is held."""
        self._take_views(views)
        self._repaint()

    def lay_ready(self, views: list[ShownView]) -> None:
        """As `show_views`, but painted together with whatever comes next, and soon if nothing does."""
        self._take_views(views)
        self._soon.start()
        self._lay_anew()

    def tell_painted(self) -> None:
        """Let `painted` follow the next painting even if the views are the same."""
        self._is_news = True

    def _take_views(self, views: list[ShownView]) -> None:
        held = self._held or {}
        self._views = [replace(view, dx=held.get(view.name, view.dx)) for view in views] if held else views
        self._is_news = True
        self._telling.stop()
        if self._is_fitted and self._held is None and not self._suits():
            self.fit()

    @property
    def held(self) -> Mapping[str, float] | None:
        """Where the views stand that are held still; None while nothing is."""
        return self._held

    def hold_still(self, names: Collection[str]) -> None:
        """From here on keep the scale, and these views where they stand, whatever is shown in them."""
        self._held = {view.name: view.dx for view in self._views if view.name in names}

    def let_go(self, held: Mapping[str, float] | None = None) -> None:
        """What is shown next may stand elsewhere again, but for what was `held` before."""
        self._held = held

    def forget_fit(self) -> None:
        """Fit whatever is shown next, however it was looked at so far."""
        self._is_fitted, self._paper = True, QRectF()

    def place_of(self, name: str) -> Place:
        """Where the named view stands; the sheet's own place where it is not shown."""
        dx = next((view.dx for view in self._views if view.name == name), 0.0)
        return self._place.moved(dx, 0.0)

    def content_box(self) -> QRectF:
        """What all views take up together, model inches."""
        box = QRectF()
        for view in self._views:
            box = box.united(view.box)
        return box

    def fit_scale(self) -> float:
        """Pixels for a model inch when the whole drawing is in view."""
        return self._scale_for(self.content_box())

    def solid_scale(self) -> float:
        """Pixels for a model inch if wood and masonry alone took up the whole sheet."""
        return self._scale_for(self.solid_box())

    def solid_box(self) -> QRectF:
        """What wood and masonry alone would take up, side by side, model inches."""
        box = QRectF()
        for view in self._views:
            solid = view.solid_box
            solid.moveLeft(box.right())
            box = box.united(solid)
        return box

    def _scale_for(self, box: QRectF) -> float:
        room = self.room()
        if box.isEmpty():
            return self._place.scale
        return max(LEAST_SCALE, min(room.width() / box.width(), room.height() / box.height()))

    @property
    def paper_dots(self) -> float:
        """Pixels that stand for an inch of paper when the whole sheet is in view."""
        fewest = FEWEST_DOTS / sqrt(max(self.devicePixelRatioF(), 1.0))
        return min(max(DOTS_PER_PIXEL * self.room().height(), fewest), MOST_DOTS)

    def room(self) -> QRectF:
        """Where the whole drawing is fitted in, pixels."""
        clear = DESK + MARGIN
        return QRectF(self.rect()).adjusted(clear, clear, -clear, -clear)

    def _suits(self) -> bool:
        """Whether the drawing lies within its room and fills most of it, as things are placed now."""
        box, room = self.content_box(), self.room()
        if box.isEmpty() or self._paper.isEmpty():
            return box.isEmpty()
        low = self._place.to_pixels((box.left(), box.top()))
        high = self._place.to_pixels((box.right(), box.bottom()))
        drawn = QRectF(low, high).normalized()
        slack = room.adjusted(-RHYTHM, -RHYTHM, RHYTHM, RHYTHM)
        fills = drawn.width() >= LEAST_FILL * room.width() or drawn.height() >= LEAST_FILL * room.height()
        return slack.contains(drawn) and fills

    def fit(self) -> None:
        """Bring the whole sheet into view and keep it there."""
        box, room = self.content_box(), self.room()
        scale, middle = self.fit_scale(), box.center()
        self._place = Place(
            scale, room.center().x() - scale * middle.x(), room.center().y() + scale * middle.y()
        )
        self._paper = self._model_box(QRectF(self.rect()).adjusted(DESK, DESK, -DESK, -DESK))
        self._is_fitted = True
        self._repaint()
        self.fitted.emit()

    def _model_box(self, pixels: QRectF) -> QRectF:
        left, top = self._place.to_model(pixels.topLeft())
        right, bottom = self._place.to_model(pixels.bottomRight())
        return QRectF(QPointF(left, bottom), QPointF(right, top))

    def zoom_by(self, factor: float, about: QPointF | None = None) -> None:
        """Come closer or go back; the point `about` (pixels, the middle when not given) stays where it is."""
        about = about or QPointF(self.rect().center())
        scale = min(max(self._place.scale * factor, LEAST_SCALE), MOST_SCALE)
        real = scale / self._place.scale
        x = about.x() + (self._place.x - about.x()) * real
        y = about.y() + (self._place.y - about.y()) * real
        self._place = Place(scale, x, y)
        self._is_fitted = False
        self._repaint()

    def pan_by(self, dx: float, dy: float) -> None:
        """Move the sheet by pixels; some of the paper always stays in view."""
        moved = Place(self._place.scale, self._place.x + dx, self._place.y + dy)
        keep = QRectF(self.rect()).adjusted(2 * DESK, 2 * DESK, -2 * DESK, -2 * DESK)
        if not self._paper_box(moved).intersects(keep):
            return
        self._place = moved
        self._is_fitted = False
        self._repaint()

    def _paper_box(self, place: Place) -> QRectF:
        corners = ((self._paper.left(), self._paper.top()), (self._paper.right(), self._paper.bottom()))
        return QRectF(place.to_pixels(corners[0]), place.to_pixels(corners[1])).normalized()

    def light_path(self, path: str) -> None:
        """Light the dimensions that show the parameter `path`; none for an empty one."""
        self.overlay.path = path
        self.update()

    def show_finding(self, finding: Finding | None, points: tuple[tuple[str, Point], ...] = ()) -> None:
        """Mark the places of a finding: view names with points of those views."""
        self.overlay.finding, self.overlay.finding_points = finding, points
        self.update()

    def show_outlines(self, outlines: tuple[tuple[str, Ring], ...]) -> None:
        """Tint boards: view names with rings of those views."""
        self.overlay.outlines = outlines
        self.update()

    def show_guides(self, lines: tuple[Segment, ...]) -> None:
        """Rule the lines of a proportion over the front; none for none."""
        self.overlay.guides = lines
        self.update()

    def _repaint(self) -> None:
        self.update()
        self._lay_anew()

    def _lay_anew(self) -> None:
        self._picture, self._is_passing = None, True
        self.laid.emit()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The sheet, and over it what is in focus."""
        self._soon.stop()
        with QPainter(self) as painter:
            self._paint_sheet(painter)
            desk = QRectF(self.rect()).adjusted(DESK, DESK, -DESK, -DESK)
            self.overlay.paint(painter, self._views, self._place, desk)
            if self.hasFocus():
                painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
                painter.setPen(QPen(QColor(colours().lit), 2))
                painter.setBrush(Qt.BrushStyle.NoBrush)
                painter.drawRect(self.rect().adjusted(1, 1, -1, -1))
        if self._is_news:
            self._is_news = False
            self._telling.start()
        if not self._was_seen:
            self._was_seen = True
            QTimer.singleShot(0, self.seen.emit)

    def _paint_sheet(self, painter: QPainter) -> None:
        """From a picture kept of it once it stays the same; while an edge is dragged it never does."""
        if self._picture is None and not self._is_passing:
            self._picture = QPixmap(self._desk_picture())
            with QPainter(self._picture) as on_picture:
                self._paint_views(on_picture)
        self._is_passing = False
        if self._picture is not None:
            painter.drawPixmap(0, 0, self._picture)
        else:
            painter.drawPixmap(0, 0, self._desk_picture())
            self._paint_views(painter)

    def _paint_views(self, painter: QPainter) -> None:
        """On the paper alone: while an edge is dragged what is drawn may reach past it."""
        painter.save()
        painter.setClipRect(self._paper_rect())
        for view in self._views:
            place = self._place.moved(view.dx, 0.0)
            paint_drawing(painter, view.gathered, place, LINE_DOTS / MM_PER_INCH)
        painter.restore()

    def _desk_picture(self) -> QPixmap:
        """The empty paper on its ground, which lies bare while there is nothing to draw. An edit leaves it as
        it is.
        """
        paper = self._paper_rect() if self._views else QRect()
        state = (paper, self.size(), self.devicePixelRatioF(), colours().desk)
        if state != self._desk_state:
            self._desk_state, self._desk = state, self._paint_desk(paper)
        return self._desk

    def _paper_rect(self) -> QRect:
        """Where the paper lies, in pixels."""
        desk = QRectF(self.rect()).adjusted(DESK, DESK, -DESK, -DESK)
        return (desk if self._paper.isEmpty() else self._paper_box(self._place)).toRect()

    def _paint_desk(self, paper: QRect) -> QPixmap:
        """The paper has a soft edge: a few pale outlines that grow, laid down only where they are seen."""
        ratio = self.devicePixelRatioF()
        picture = QPixmap(self.size() * ratio)
        picture.setDevicePixelRatio(ratio)
        picture.fill(QColor(colours().desk))
        with QPainter(picture) as painter:
            if paper.isEmpty():
                return picture
            painter.setClipRegion(QRegion(self.rect()) - QRegion(paper))
            painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(0, 0, 0, 4))
            for spread in range(SOFT_EDGE, 0, -1):
                edge = QRectF(paper).adjusted(-spread, 2 - spread, spread, 2 + spread)
                painter.drawRoundedRect(edge, spread, spread)
            painter.setClipping(False)
            painter.fillRect(paper, QColor(TINTS[Fill.PAPER]))
        return picture

    def resizeEvent(self, _event: QResizeEvent) -> None:
        """Keep the whole sheet in view if it was; else keep its middle where it was."""
        self._picture, self._is_passing = None, True
        if self._is_fitted and self._views:
            self.fit()

    def changeEvent(self, event: QEvent) -> None:
        """Another ground means another picture."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.PaletteChange, QEvent.Type.DevicePixelRatioChange):
            self._repaint()

    def dimension_at(self, pixel: QPointF) -> str:
        """The path of the parameter whose dimension lies under a pixel, or nothing."""
        found = self.find_dimension(pixel)
        return found[1].stands_for if found else ""

    def find_dimension(self, pixel: QPointF) -> tuple[ShownView, Dimension] | None:
        """The parameter's dimension nearest to a pixel, and its view; None where none is in reach."""
        best, found = float(_REACH), None
        for view in self._views:
            place = self._place.moved(view.dx, 0.0)
            for dimension in view.list_dimensions():
                away = self.overlay.distance_to(dimension, place, pixel)
                if away < best:
                    best, found = away, (view, dimension)
        return found

    def view_at(self, pixel: QPointF) -> tuple[str, Point] | None:
        """The view under a pixel and the point of it; None where there is none."""
        x, y = self._place.to_model(pixel)
        for view in self._views:
            if view.box.contains(QPointF(x, y)):
                return view.name, (x - view.dx, y)
        return None

    def point_of(self, path: str) -> QPoint | None:
        """A pixel at which a click reaches the dimension of `path`; None when it is not on the sheet."""
        for view in self._views:
            for dimension in view.list_dimensions(path):
                return self._place.moved(view.dx, 0.0).to_pixels(dimension.text_at).toPoint()
        return None

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """The left or middle button takes hold of the sheet."""
        if event.button() in (Qt.MouseButton.LeftButton, Qt.MouseButton.MiddleButton):
            self._pressed, self._panned = event.position(), False

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Drag the sheet; without a button, show what a click would reach."""
        if self._pressed is None:
            self._hover(event.position())
            return
        moved = event.position() - self._pressed
        if self._panned or moved.manhattanLength() > CLICK_SLACK:
            self._panned = True
            self._pressed = event.position()
            self.setCursor(Qt.CursorShape.ClosedHandCursor)
            self.pan_by(moved.x(), moved.y())

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """A click that did not drag reaches what lies under it."""
        pressed, self._pressed = self._pressed, None
        if pressed is None:
            return
        if not self._panned and event.button() is Qt.MouseButton.LeftButton:
            self.click(event.position())
        self._hover(event.position())

    def click(self, pixel: QPointF) -> None:
        """Reach what lies under a pixel."""
        if path := self.dimension_at(pixel):
            self.dimension_clicked.emit(path, pixel)
        elif under := self.view_at(pixel):
            self.view_clicked.emit(*under)

    def _hover(self, pixel: QPointF) -> None:
        path = self.dimension_at(pixel)
        self.setCursor(Qt.CursorShape.IBeamCursor if path else Qt.CursorShape.ArrowCursor)
        if path != self.overlay.hover:
            self.overlay.hover = path
            self.update()

    def leaveEvent(self, event: QEvent) -> None:
        """Nothing is under the pointer any more."""
        super().leaveEvent(event)
        self.overlay.hover = ""
        self.update()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """A wheel zooms about the pointer; two fingers on a touch pad move the sheet."""
        pixels = event.pixelDelta()
        if not pixels.isNull() and not event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.pan_by(pixels.x(), pixels.y())
        else:
            self.zoom_by(ZOOM_STEP ** (event.angleDelta().y() / _NOTCH), event.position())
        event.accept()

    def event(self, event: QEvent) -> bool:
        """Two fingers pulled apart zoom."""
        if (
            isinstance(event, QNativeGestureEvent)
            and event.gestureType() is Qt.NativeGestureType.ZoomNativeGesture
        ):
            self.zoom_by(1 + event.value(), event.position())
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows move the sheet; plus, minus and Home come closer, go back and fit."""
        ways: dict[int, Point] = {
            Qt.Key.Key_Left: (1, 0),
            Qt.Key.Key_Right: (-1, 0),
            Qt.Key.Key_Up: (0, 1),
            Qt.Key.Key_Down: (0, -1),
        }
        if event.key() in ways:
            dx, dy = ways[event.key()]
            self.pan_by(dx * _PAN_STEP, dy * _PAN_STEP)
        elif event.key() in (Qt.Key.Key_Plus, Qt.Key.Key_Equal):
            self.zoom_by(ZOOM_STEP)
        elif event.key() == Qt.Key.Key_Minus:
            self.zoom_by(1 / ZOOM_STEP)
        elif event.key() == Qt.Key.Key_Home:
            self.fit()
        else:
            super().keyPressEvent(event)
