"""The options of a job as tabs: name, what the checks count, the price. Says what was asked for."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPoint, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFontMetrics,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QApplication, QLineEdit, QTabBar

from app.rooms import OPTIONS_HEIGHT
from app.status_shape import paint_shape
from app.theme import BAR, RHYTHM, SMALL_POINTS, colours, status_colour, text_font
from model.check.finding import STATUS_WORD, Status
from model.options import LONGEST_NAME

LEAST, MOST = 14 * RHYTHM, 34 * RHYTHM
"""Widths of a tab; a longer name is cut short and told whole when it is pointed at."""
SHAPE = 9
TOLD = (Status.FAIL, Status.UNKNOWN, Status.WARN)
"""What is counted on a tab; what is within goes without saying."""


@dataclass(frozen=True, slots=True)
class Shown:
    """What a tab says. `counts` is None while it is not known."""

    name: str
    counts: tuple[tuple[Status, int], ...] | None
    price: str

    @property
    def told(self) -> str:
        """All of it in words."""
        if self.counts is None:
            return ", ".join(word for word in (self.name, "checks being worked out", self.price) if word)
        found = [f"{count} {STATUS_WORD[status]}" for status, count in self.counts]
        return ", ".join(word for word in (self.name, *found, self.price) if word)


class OptionTabs(QTabBar):
    """`picked` the option at a place, `renamed` it, `shifted` it from one place to another.

    `menu_asked` for the option at a place, at a point of the screen.
    """

    picked = Signal(int)
    renamed = Signal(int, str)
    shifted = Signal(int, int)
    menu_asked = Signal(int, QPoint)
    left = Signal()
    """A name is typed no more."""

    def __init__(self) -> None:
        super().__init__()
        self.shown: tuple[Shown, ...] = ()
        self._showing = False
        self._pressed: QPoint | None = None
        self._dragged_from = -1
        self._waiting: tuple[tuple[Shown, ...], int] | None = None
        self.editor = QLineEdit(self)
        self.editor.hide()
        self.editor.setMaxLength(4 * LONGEST_NAME)
        self.editor.setAccessibleName("Name of the option")
        self.editor.installEventFilter(self)
        self.editing = -1
        self.setDrawBase(False)
        self.setExpanding(False)
        self.setUsesScrollButtons(True)
        self.setElideMode(Qt.TextElideMode.ElideRight)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setFixedHeight(OPTIONS_HEIGHT)
        self.setAccessibleName("Options")
        self.setAccessibleDescription("Designs for this fireplace. F2 renames the one in work.")
        self.currentChanged.connect(self._pick)
        self.tabMoved.connect(self._note_move)
        self.editor.editingFinished.connect(self._leave)

    # --- what is shown

    def show_options(self, shown: Sequence[Shown], in_work: int) -> None:
        """Show other options, or the same anew, once nothing is dragged; the one in work is down."""
        if self._dragged_from >= 0:
            self._waiting = (tuple(shown), in_work)
            return
        self._showing = True
        renamed = self.editing >= 0 and len(shown) != len(self.shown)
        self.shown = tuple(shown)
        while self.count() < len(shown):
            self.addTab("")
        while self.count() > len(shown):
            self.removeTab(self.count() - 1)
        for place, each in enumerate(shown):
            wide = self.tabSizeHint(place).width()
            if self.tabText(place) != each.name or self.tabRect(place).width() != wide:
                self.setTabText(place, each.name)  # which lays the tabs out anew
            self.setTabToolTip(place, each.told)
            self.setAccessibleTabName(place, each.told)
        self.setCurrentIndex(in_work)
        self._showing = False
        if renamed:
            self.give_up()
        self.updateGeometry()
        self.update()

    def tabSizeHint(self, place: int) -> QSize:
        """As wide as the longer of its two lines."""
        if place >= len(self.shown):
            return QSize(LEAST, OPTIONS_HEIGHT)
        shown = self.shown[place]
        name = QFontMetrics(text_font(bold=True)).horizontalAdvance(shown.name)
        wide = max(name, self._below_width(shown)) + 4 * RHYTHM
        return QSize(min(max(wide, LEAST), MOST), OPTIONS_HEIGHT)

    def minimumTabSizeHint(self, place: int) -> QSize:
        """Names are not squeezed; tabs that find no room are scrolled to."""
        return self.tabSizeHint(place)

    def minimumSizeHint(self) -> QSize:
        """Room for one."""
        return QSize(LEAST + 8 * RHYTHM, OPTIONS_HEIGHT)

    def _below_width(self, shown: Shown) -> int:
        small = QFontMetrics(text_font(SMALL_POINTS))
        counts = sum(
            SHAPE + RHYTHM // 2 + small.horizontalAdvance(str(count)) + RHYTHM for _, count in _told(shown)
        )
        return counts + small.horizontalAdvance(shown.price)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Each tab: a name over what the checks count and the price."""
        c = colours()
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
            for place in range(min(self.count(), len(self.shown))):
                box = self.tabRect(place)
                if box.intersects(self.rect()):
                    self._paint_tab(painter, place, box)
            painter.setPen(QColor(c.rule))
            painter.drawLine(0, self.height() - 1, self.width(), self.height() - 1)

    def _paint_tab(self, painter: QPainter, place: int, box: QRect) -> None:
        c, shown, down = colours(), self.shown[place], place == self.currentIndex()
        if down:
            painter.fillRect(box, QColor(c.entry))
            painter.fillRect(box.left(), box.top(), box.width(), BAR, QColor(c.strong))
        painter.setPen(QColor(c.rule))
        painter.drawLine(box.topRight(), box.bottomRight())
        if down and self.hasFocus():
            painter.setPen(QPen(QColor(c.lit), 2))
            painter.drawRect(box.adjusted(2, 2, -3, -3))
        room = box.adjusted(3 * RHYTHM // 2, RHYTHM // 2 + 1, -3 * RHYTHM // 2, 0)
        font = text_font(bold=down)
        painter.setFont(font)
        painter.setPen(QColor(c.ink if down else c.soft))
        name = QFontMetrics(font).elidedText(shown.name, Qt.TextElideMode.ElideRight, room.width())
        upper = QRect(room.left(), room.top(), room.width(), box.height() // 2 - 2)
        painter.drawText(upper, int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft), name)
        lower = QRect(room.left(), upper.bottom(), room.width(), box.height() // 2 - 2)
        self._paint_below(painter, shown, lower)

    def _paint_below(self, painter: QPainter, shown: Shown, room: QRect) -> None:
        """Shapes with numbers, then the price in what room is left."""
        c, font = colours(), text_font(SMALL_POINTS)
        metrics = QFontMetrics(font)
        painter.setFont(font)
        left = room.left()
        side = int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft)
        for status, count in _told(shown):
            colour = QColor(status_colour(status, c))
            paint_shape(
                painter, status, QRectF(left, room.center().y() - SHAPE / 2 + 1, SHAPE, SHAPE), colour
            )
            left += SHAPE + RHYTHM // 2
            painter.setPen(colour)
            width = metrics.horizontalAdvance(str(count))
            painter.drawText(QRect(left, room.top(), width + 2, room.height()), side, str(count))
            left += width + RHYTHM
        painter.setPen(QColor(c.soft))
        rest = QRect(left, room.top(), room.right() - left + 1, room.height())
        price = metrics.elidedText(shown.price, Qt.TextElideMode.ElideRight, rest.width())
        painter.drawText(rest, side, price)

    # --- what is asked for

    def _pick(self, place: int) -> None:
        if not self._showing and self._dragged_from < 0 and place >= 0:
            self.picked.emit(place)

    def _note_move(self, start: int, end: int) -> None:
        """A tab that is dragged carries its words with it; the move is told once it is let go."""
        order = list(self.shown)
        order.insert(end, order.pop(start))
        self.shown = tuple(order)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Pick a tab; where it is dragged to is told when it is let go."""
        place = self.tabAt(event.position().toPoint())
        if event.button() == Qt.MouseButton.RightButton:
            if place >= 0:
                self.menu_asked.emit(place, event.globalPosition().toPoint())
            return
        super().mousePressEvent(event)
        if place >= 0 and event.button() == Qt.MouseButton.LeftButton:
            self._pressed = event.position().toPoint()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """A tab that is held takes the place of the one it is drawn over."""
        super().mouseMoveEvent(event)
        at = event.position().toPoint()
        if self._pressed is None or not event.buttons() & Qt.MouseButton.LeftButton:
            return
        if self._dragged_from < 0:
            if (at - self._pressed).manhattanLength() < QApplication.startDragDistance():
                return
            self._dragged_from = self.currentIndex()
            self.setCursor(Qt.CursorShape.ClosedHandCursor)
        over, held = self.tabAt(QPoint(at.x(), self.height() // 2)), self.currentIndex()
        if over >= 0 and over != held and self._is_past_middle(held, over, at.x()):
            self.moveTab(held, over)

    def _is_past_middle(self, held: int, over: int, x: int) -> bool:
        """Whether the held tab would lie under `x` where it would come to: else it would jump back."""
        box = self.tabRect(over)
        wide = self.tabRect(held).width()
        return x > box.right() - wide if over > held else x < box.left() + wide

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """A tab was let go: at another place, it was moved there."""
        super().mouseReleaseEvent(event)
        start, self._dragged_from, self._pressed = self._dragged_from, -1, None
        if start < 0:
            return
        self.unsetCursor()
        waiting, self._waiting = self._waiting, None
        if self.currentIndex() != start:
            self.shifted.emit(start, self.currentIndex())
        elif waiting is not None:
            self.show_options(*waiting)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Rename where it stands."""
        self._dragged_from, self._pressed = -1, None
        place = self.tabAt(event.position().toPoint())
        if place >= 0 and event.button() == Qt.MouseButton.LeftButton:
            self.edit_name(place)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows pick the neighbours, F2 or Enter renames, the menu key opens the tab's menu."""
        place = self.currentIndex()
        if event.key() in (Qt.Key.Key_F2, Qt.Key.Key_Return, Qt.Key.Key_Enter) and place >= 0:
            self.edit_name(place)
        elif event.key() == Qt.Key.Key_Menu and place >= 0:
            self.menu_asked.emit(place, self.mapToGlobal(self.tabRect(place).bottomLeft()))
        else:
            super().keyPressEvent(event)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Turning the wheel over the tabs does not change the design."""
        event.ignore()

    # --- a name typed where it stands

    def edit_name(self, place: int) -> None:
        """Type over a tab's name; Enter or leaving takes it, Escape leaves it as it was."""
        self.editing = place
        self.editor.setText(self.shown[place].name)
        self._place_editor()
        self._show_refused("")
        self.editor.show()
        self.editor.selectAll()
        self.editor.setFocus(Qt.FocusReason.OtherFocusReason)

    def give_up(self) -> None:
        """Leave the name as it was."""
        self.editing = -1
        had_focus = self.editor.hasFocus()
        self.editor.hide()
        if had_focus:
            self.setFocus(Qt.FocusReason.OtherFocusReason)
        self.left.emit()

    def refuse(self, sentence: str) -> None:
        """The name that was typed cannot be; it stays to be put right."""
        self._show_refused(sentence)

    def _show_refused(self, sentence: str) -> None:
        c, palette = colours(), self.editor.palette()
        palette.setColor(palette.ColorRole.Base, QColor(c.wrong_ground if sentence else c.entry))
        palette.setColor(palette.ColorRole.Text, QColor(c.wrong if sentence else c.ink))
        self.editor.setPalette(palette)
        self.editor.setToolTip(sentence)
        self.editor.setAccessibleDescription(sentence)

    def _place_editor(self) -> None:
        box = self.tabRect(self.editing)
        wide = max(box.width(), 22 * RHYTHM)
        left = max(0, min(box.left(), self.width() - wide))
        self.editor.setGeometry(left, RHYTHM // 2, wide, OPTIONS_HEIGHT - RHYTHM)

    def _commit(self) -> None:
        place, name = self.editing, self.editor.text()
        if place < 0:
            return
        if name == self.shown[place].name:
            self.give_up()
            return
        self.renamed.emit(place, name)
        if not self.editor.toolTip():
            self.give_up()

    def _leave(self) -> None:
        """Leaving takes a name that can be; one that cannot is given up."""
        if self.editing >= 0 and not self.editor.hasFocus():
            self._show_refused("")
            self._commit()
            if self.editing >= 0:
                self.give_up()

    def eventFilter(self, watched: object, event: object) -> bool:
        """Enter and Escape in the name; the tabs below it are not to hear of them."""
        if watched is not self.editor or not isinstance(event, QKeyEvent):
            return False
        if event.type() != event.Type.KeyPress:
            return False
        if event.key() == Qt.Key.Key_Escape:
            self.give_up()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._commit()
        else:
            return False
        return True

    def resizeEvent(self, event: QResizeEvent) -> None:
        """A name that is being typed stays in view."""
        super().resizeEvent(event)
        if self.editing >= 0:
            self._place_editor()


def _told(shown: Shown) -> list[tuple[Status, int]]:
    return [(status, count) for status, count in shown.counts or () if status in TOLD]
