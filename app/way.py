"""The way through the window that comes once, at the first start: what is where, in a few stops, on the real
window. What is shown at the stops is the window's own."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, QPoint, QRect, QSize, Qt
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from app.buttons import CORNER, PlainButton, QuietButton, StrongButton, quiet_button
from app.rooms import FINDINGS
from app.settings import WALKED
from app.theme import RHYTHM, SMALL_POINTS, colours, text_font

if TYPE_CHECKING:
    from app.window import Window

CARD_WIDTH = 320
RING = 3


@dataclass(frozen=True, slots=True)
class Stop:
    """What is pointed at, and what is said of it; `prepare` brings it into view."""

    title: str
    words: str
    find: Callable[[Window], QWidget]
    prepare: Callable[[Window], None] = lambda window: window.fold_list(False)


def _show_tray(window: Window) -> None:
    window.tray.turn_to(FINDINGS)


def _show_sheet(window: Window) -> None:
    """On a low screen the tray would cover it."""
    if window.canvas.isHidden():
        window.tray.fold(True)


def _show_help(window: Window) -> None:
    window.fold_list(False)
    window.fields.focus_path("opening.height")


def list_stops() -> tuple[Stop, ...]:
    """Every stop, in order."""
    return (
        Stop(
            "The measuring list",
            "All that is measured and chosen stands here, the fireplace first. Type what the tape reads; the "
            "sheet follows at once. This job is invented: change what you like.",
            lambda window: window.fields,
        ),
        Stop(
            "Measure one by one",
            "At a fireplace, this asks for one size after another and shows where the tape goes. What comes "
            "of it can be made into a first design.",
            lambda window: window.fields.measure_button,
        ),
        Stop(
            "What a field means",
            "A sentence about the field in focus, and a picture of what it measures on this very job.",
            lambda window: window.fields.help,
            _show_help,
        ),
        Stop(
            "The sheet",
            "Drawn as it will be printed. A click on a dimension goes to its field, a click on a board to "
            "its line of the cut list. The wheel comes closer.",
            lambda window: window.canvas,
            _show_sheet,
        ),
        Stop(
            "What is on the sheet",
            "Elevations, plan and sections; where no wood may be; the marks of the boards.",
            lambda window: window.bar,
            _show_sheet,
        ),
        Stop(
            "What the rules say",
            "The clearances from the fire, worst first, with what would cure them. Beside them the cut list, "
            "materials, what to buy and how to cut it.",
            lambda window: window.tray,
            _show_tray,
        ),
        Stop(
            "The packet",
            "All that is needed to build it, on sheets and in files. It approves nothing: the code adopted "
            "where you build decides. Job, New begins a job of your own; Help leads through here again.",
            lambda window: window.bar.packet_button,
            _show_sheet,
        ),
    )


class Ring(QWidget):
    """Drawn round what is pointed at; clicks go through it."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.hide()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The colour of what is in focus."""
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
            painter.setPen(QPen(QColor(colours().lit), RING))
            painter.drawRoundedRect(
                self.rect().toRectF().adjusted(RING / 2, RING / 2, -RING / 2, -RING / 2), CORNER, CORNER
            )


class Card(QWidget):
    """What is said at a stop, and how to go on. Enter and the page keys go on and back, Escape ends it."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.count, self.title, self.words = QLabel(), QLabel(), QLabel()
        self.count.setFont(text_font(SMALL_POINTS))
        self.title.setFont(text_font(bold=True))
        self.words.setWordWrap(True)
        self.back_button = PlainButton("Back", "The stop before")
        self.on_button: QuietButton = StrongButton("Go on", "The next stop")
        self.skip_button = quiet_button("Skip the rest", "End this; it stays in the Help menu (Escape)")
        row = QHBoxLayout()
        row.setSpacing(RHYTHM)
        row.addWidget(self.skip_button)
        row.addStretch(1)
        row.addWidget(self.back_button)
        row.addWidget(self.on_button)
        self._column = column = QVBoxLayout(self)
        column.setContentsMargins(2 * RHYTHM, 2 * RHYTHM, 2 * RHYTHM, 2 * RHYTHM)
        column.setSpacing(RHYTHM)
        for label in (self.count, self.title, self.words):
            column.addWidget(label)
        column.addLayout(row)
        self.setFixedWidth(CARD_WIDTH)
        self.hide()

    def say(self, stop: Stop, at: int, count: int) -> None:
        """Say what is to be said at the stop at place `at`, from 0, of `count`."""
        self.count.setText(f"{at + 1} of {count}")
        self.title.setText(stop.title)
        self.words.setText(stop.words)
        self.setAccessibleName(f"{stop.title}. {stop.words}")
        self.on_button.setAccessibleDescription(f"{stop.title}. {stop.words}")
        self.back_button.setEnabled(at > 0)
        last = at == count - 1
        self.on_button.setText("Done" if last else "Go on")
        self.skip_button.setHidden(last)
        self.words.setFixedHeight(self.words.heightForWidth(CARD_WIDTH - 4 * RHYTHM))
        self._column.activate()
        self.resize(CARD_WIDTH, self._column.sizeHint().height())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keys that any of the buttons leaves alone."""
        match event.key():
            case Qt.Key.Key_Escape:
                self.skip_button.click() if not self.skip_button.isHidden() else self.on_button.click()
            case Qt.Key.Key_PageDown | Qt.Key.Key_Return | Qt.Key.Key_Enter:
                self.on_button.click()
            case Qt.Key.Key_PageUp:
                self.back_button.click()
            case _:
                super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """A ground and an edge, so that it stands off what is under it."""
        c = colours()
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
            painter.setPen(QPen(QColor(c.lit), 1))
            painter.setBrush(QColor(c.entry))
            painter.drawRoundedRect(self.rect().toRectF().adjusted(0.5, 0.5, -0.5, -0.5), CORNER, CORNER)


class Way(QObject):
    """Leads from stop to stop; `begin` may be called again at any time."""

    def __init__(self, window: Window) -> None:
        super().__init__(window)
        self._window = window
        self.at = -1
        self._stops = list_stops()
        self.ring, self.card = Ring(window), Card(window)
        self.card.on_button.clicked.connect(lambda _on=False: self.go_to(self.at + 1))
        self.card.back_button.clicked.connect(lambda _on=False: self.go_to(self.at - 1))
        self.card.skip_button.clicked.connect(lambda _on=False: self.end())

    @property
    def is_on(self) -> bool:
        """Whether somebody is being led."""
        return self.at >= 0

    def begin(self) -> None:
        """Start at the first stop."""
        self._window.measuring.leave()
        self._window.installEventFilter(self)
        self.go_to(0)

    def begin_by_itself(self) -> None:
        """At the first start; what is to be answered first, such as work left behind, is not covered."""
        if not self._window.notice.text:
            self.begin()

    def go_to(self, at: int) -> None:
        """The stop at place `at`, from 0; past the last one it ends."""
        if at >= len(self._stops):
            self.end()
            return
        self.at = max(at, 0)
        stop = self._stops[self.at]
        stop.prepare(self._window)
        self.card.say(stop, self.at, len(self._stops))
        for shown in (self.ring, self.card):
            shown.show()
            shown.raise_()
        self._place()
        self.card.on_button.setFocus(Qt.FocusReason.PopupFocusReason)  # a field keeps its help meanwhile

    def end(self) -> None:
        """Not to come up again by itself."""
        self.at = -1
        self._window.removeEventFilter(self)
        self.ring.hide()
        self.card.hide()
        self._window.settings.write(WALKED, True)
        self._window.take_cursor()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Stay where what is pointed at is, however the window is laid out anew."""
        if self.is_on and event.type() in (QEvent.Type.Resize, QEvent.Type.LayoutRequest):
            self._place()
        return super().eventFilter(watched, event)

    def _place(self) -> None:
        target = self._stops[self.at].find(self._window)
        box = QRect(target.mapTo(self._window, QPoint(0, 0)), target.size())
        self.ring.setGeometry(box.adjusted(-RING, -RING, RING, RING).intersected(self._window.rect()))
        self.card.move(
            place_beside(box, self.card.size().expandedTo(self.card.sizeHint()), self._window.rect())
        )


def place_beside(box: QRect, size: QSize, room: QRect) -> QPoint:
    """Where a card of that size stands beside `box`, within `room`; over it where it has no place."""
    gap = 2 * RHYTHM
    for x, y in (
        (box.right() + gap, box.top()),
        (box.left() - gap - size.width(), box.top()),
        (box.left(), box.bottom() + gap),
        (box.left(), box.top() - gap - size.height()),
    ):
        x = min(max(x, room.left() + gap), room.right() - gap - size.width())
        y = min(max(y, room.top() + gap), room.bottom() - gap - size.height())
        if not QRect(QPoint(x, y), size).intersects(box):
            return QPoint(x, y)
    middle = box.center() - QPoint(size.width() // 2, size.height() // 2)
    x = min(max(middle.x(), room.left() + gap), room.right() - gap - size.width())
    return QPoint(x, min(max(middle.y(), room.top() + gap), room.bottom() - gap - size.height()))
