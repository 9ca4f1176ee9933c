"""The picture for the homeowner, on the whole screen: what it will look like, and the few sizes that matter.

What is stepped here goes through the session like any other step. No working drawing is shown.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import (
    QCloseEvent,
    QColor,
    QFontMetrics,
    QKeyEvent,
    QKeySequence,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
)
from PySide6.QtWidgets import QHBoxLayout, QLabel, QScrollArea, QVBoxLayout, QWidget

from app.buttons import PlainButton
from app.finish_bar import FinishBar
from app.latest import Latest
from app.painter import Gathered, gather_drawing, paint_drawing, place_within
from app.session import Session
from app.theme import RHYTHM, colours, text_font
from app.thin_bar import ThinBar
from app.words import Words
from export.progress import Step
from model.check.finding import Status
from model.errors import Refused
from model.job import Job, read_value, with_value
from model.survey import govern_site
from model.units import format_length

if TYPE_CHECKING:
    from render.drawing import Drawing

SIDES = ((1600, 900, 56), (1060, 0, 40), (0, 0, 32))
"""Pixels: from which width and height of a screen on its controls have which side."""
LINE_DOTS = 3.4
CLEAR = 3 * RHYTHM
RATIO = 12.0


def find_side(screen: QSize) -> int:
    """The side of a control on a screen of that size, in pixels."""
    fits = (side for wide, high, side in SIDES if screen.width() >= wide and screen.height() >= high)
    return next(fits)


@dataclass(frozen=True, slots=True)
class Size:
    """A size with big controls: its words, the row it steps, by how many of the row's steps at a time."""

    words: str
    path: str
    count: int


MARGIN = "column.margin"
"""The margin beside the opening carries the width over all, twice for each step."""
SIZES = (
    Size("Shelf height", "shelf.height", 4),
    Size("Shelf depth", "shelf.depth", 2),
    Size("Width over all", MARGIN, 2),
    Size("Columns", "column.width", 2),
    Size("Frieze", "frieze.height", 2),
)


@dataclass(frozen=True, slots=True)
class Shown:
    """What is shown of a job: its picture, its width over all, and the parts that break a rule."""

    drawing: Drawing
    width: float
    failing_parts: tuple[str, ...]


def show_job(job: Job) -> Shown:
    """The picture and what stands beside it."""
    from model.check.all import check_surround
    from model.surround import plan_surround
    from render.shaded_front import draw_shaded

    surround = plan_surround(job)
    ends = [(board.bounds[0][0], board.bounds[1][0]) for board in surround.boards]
    width = max(high for _, high in ends) - min(low for low, _ in ends)
    failing = [finding.part for finding in check_surround(surround) if finding.status is Status.FAIL]
    return Shown(draw_shaded(surround, RATIO), width, tuple(dict.fromkeys(failing)))


class _Showing(Latest):
    """Draws beside the window."""

    ready = Signal(object, object)

    def ask(self, job: Job) -> None:
        self._ask(job)

    def answer(self, asked: Job, _step: Step) -> Shown:
        return show_job(asked)

    def hand_on(self, asked: Job, answer: Shown) -> None:
        self.ready.emit(asked, answer)


class PictureView(QWidget):
    """The picture alone, as large as fits, on the wall's own colour."""

    def __init__(self) -> None:
        super().__init__()
        self._gathered: Gathered | None = None
        self.setMinimumSize(320, 200)
        self.setAccessibleName("Picture of the surround")

    def show_drawing(self, drawing: Drawing) -> None:
        """Put up another picture."""
        self._gathered = gather_drawing(drawing)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The ground, and the picture in its middle."""
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), QColor(colours().desk))
            if self._gathered is None:
                return
            place = place_within(self._gathered.box, self.rect().adjusted(CLEAR, CLEAR, -CLEAR, -CLEAR))
            paint_drawing(painter, self._gathered, place, LINE_DOTS)


class BigButton(PlainButton):
    """A sign on a large square: less, more, before, after, close."""

    def __init__(self, sign: str, explained: str, side: int) -> None:
        super().__init__(sign, explained)
        self.setAccessibleName(explained)
        self.setAccessibleDescription("")
        font = text_font(side * 0.36, bold=True)
        self.setFont(font)
        wide = max(side, QFontMetrics(font).horizontalAdvance(sign) + 2 * RHYTHM)
        self.setFixedSize(wide, side)


class SizeControl(QWidget):
    """A size's words and value between less and more. `stepped` hands on its row and how far."""

    stepped = Signal(str, int)

    def __init__(self, size: Size, side: int) -> None:
        super().__init__()
        self.size_ = size
        self.value = QLabel()
        self.value.setFont(text_font(side * 0.34, bold=True))
        self.value.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.value.setMinimumWidth(round(side * 2.1))
        self.value.setAccessibleName(size.words)
        words = QLabel(size.words)
        words.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.less = BigButton("\N{MINUS SIGN}", f"{size.words}: less", side)
        self.more = BigButton("+", f"{size.words}: more", side)
        for button, way in ((self.less, -1), (self.more, 1)):
            button.clicked.connect(lambda _on=False, way=way: self.stepped.emit(size.path, way * size.count))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(RHYTHM // 2)
        row = QHBoxLayout()
        row.setSpacing(RHYTHM // 2)
        for part in (self.less, self.value, self.more):
            row.addWidget(part)
        column.addWidget(words)
        column.addLayout(row)


class ShowWindow(QWidget):
    """The homeowner's view of the session's job; Escape ends it.

    `take_up` puts the option at a place in work.
    """

    gone = Signal()

    def __init__(
        self,
        session: Session,
        take_up: Callable[[int], object],
        side: int = SIDES[0][2],
    ) -> None:
        super().__init__(None, Qt.WindowType.Window)
        self._session, self._take_up = session, take_up
        self.setWindowTitle("For the homeowner")
        self._is_gone = False
        self.picture = PictureView()
        self.warning = Words()
        self.opening = QLabel()
        self.controls = [SizeControl(size, side) for size in SIZES]
        self.finish = FinishBar(side)
        self._broken = ""
        self.name = QLabel()
        self.name.setTextFormat(Qt.TextFormat.PlainText)
        self.name.setFont(text_font(side * 0.3, bold=True))
        self.before = BigButton("\N{BLACK LEFT-POINTING TRIANGLE}", "The option before", side)
        self.after = BigButton("\N{BLACK RIGHT-POINTING TRIANGLE}", "The option after", side)
        self.alone = BigButton("Picture alone", "Hide the controls; any key or click brings them back", side)
        self.close_ = BigButton("Close", "Back to the work (Escape)", side)
        for button in (self.alone, self.close_):
            button.setFont(text_font(side * 0.22, bold=True))
            button.setFixedWidth(
                QFontMetrics(button.font()).horizontalAdvance(self.alone.text()) + 3 * RHYTHM
            )
        self.bar = self._build_bar(side)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.picture, 1)
        foot = QHBoxLayout()
        foot.setSpacing(0)
        foot.addWidget(self._wrap_bar(), 1)
        foot.addWidget(self._build_ends())
        column.addLayout(foot)
        self._connect()
        self._follow()

    def _build_bar(self, side: int) -> QWidget:
        bar = QWidget()
        column = QVBoxLayout(bar)
        column.setContentsMargins(2 * RHYTHM, RHYTHM, RHYTHM, 2 * RHYTHM)
        column.setSpacing(RHYTHM)
        top = QHBoxLayout()
        top.setSpacing(RHYTHM)
        for part in (self.before, self.name, self.after):
            top.addWidget(part)
        top.addWidget(self.opening)
        top.addWidget(self.warning, 1)
        top.addWidget(self.finish)
        column.addLayout(top)
        low = QHBoxLayout()
        low.setSpacing(2 * RHYTHM)
        for control in self.controls:
            low.addWidget(control)
        low.addStretch(1)
        column.addLayout(low)
        return bar

    def _build_ends(self) -> QWidget:
        """What ends the controls or the page: always in sight, however narrow the screen."""
        self.ends = QWidget()
        column = QVBoxLayout(self.ends)
        column.setContentsMargins(RHYTHM, RHYTHM, 2 * RHYTHM, 2 * RHYTHM)
        column.setSpacing(RHYTHM)
        column.addWidget(self.close_)
        column.addStretch(1)
        column.addWidget(self.alone)
        return self.ends

    def _wrap_bar(self) -> QScrollArea:
        """The controls, to be moved sideways where a screen is too narrow for them all."""
        area = self.area = QScrollArea()
        area.setFrameShape(QScrollArea.Shape.NoFrame)
        area.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        area.setHorizontalScrollBar(ThinBar(Qt.Orientation.Horizontal))
        area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        area.setWidgetResizable(True)
        area.setWidget(self.bar)
        area.setAccessibleName("Sizes and colours")
        area.setFixedHeight(self.bar.sizeHint().height() + area.horizontalScrollBar().sizeHint().height())
        return area

    def _connect(self) -> None:
        self._drawing = _Showing()
        self._drawing.ready.connect(self._take)
        self._session.changed.connect(self._follow)
        for control in self.controls:
            control.stepped.connect(self._step)
        self.finish.picked.connect(self._finish)
        self.before.clicked.connect(lambda: self._turn(-1))
        self.after.clicked.connect(lambda: self._turn(1))
        self.alone.clicked.connect(lambda: self._hide_bar(True))
        self.close_.clicked.connect(self.close)

    def _follow(self) -> None:
        """Show the job as it is now."""
        job = self._session.job
        style = job.about.length_style
        for control in self.controls:
            if control.size_.path != MARGIN:
                control.value.setText(format_length(float(read_value(job, control.size_.path)), style))
        opening = govern_site(job.site).opening
        wide, high = (format_length(value, style) for value in (opening.width, opening.height))
        self.opening.setText(f"Opening {wide} wide,\n{high} high")
        self.finish.show_look(job.design.look)
        self._name_option(job)
        self._drawing.ask(job)

    def _name_option(self, job: Job) -> None:
        several = job.options.count > 1
        self.name.setText(job.options.name if several else "")
        for part in (self.before, self.name, self.after):
            part.setVisible(several)

    def _take(self, job: Job, shown: Shown) -> None:
        if job is not self._session.job:
            return
        self.picture.show_drawing(shown.drawing)
        style = job.about.length_style
        for control in self.controls:
            if control.size_.path == MARGIN:
                control.value.setText(format_length(shown.width, style))
        failing = "; ".join(shown.failing_parts)
        self._broken = f"Not within the rules: {failing}." if failing else ""
        self._warn(self._broken)

    def _warn(self, words: str) -> None:
        """Say `words` beside the opening's size; the controls stay whole below a text of many lines."""
        self.warning.setText(words)
        self._fit_bar()

    def _fit_bar(self) -> None:
        layout = self.bar.layout()
        assert layout is not None
        layout.activate()
        room, least = self.width() - self.ends.sizeHint().width(), self.bar.minimumSizeHint().width()
        wide = max(room, least)
        height = max(layout.totalHeightForWidth(wide), layout.totalMinimumSize().height())
        moved = self.area.horizontalScrollBar().sizeHint().height() if least > room else 0
        self.area.setFixedHeight(height + moved)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another width for the words."""
        super().resizeEvent(event)
        self._fit_bar()

    def _step(self, path: str, count: int) -> None:
        try:
            self._session.step(path, count)
        except Refused:
            words = next(size.words for size in SIZES if size.path == path)
            self._warn(f"{words}: no further this way. {self._broken}".rstrip())

    def _finish(self, path: str, key: str) -> None:
        """Give the wood another finish, or another colour of the one that it has."""
        self._session.change("finish the wood", with_value(self._session.job, path, key))
        self.finish.show_look(self._session.job.design.look)  # picked once more, its frame would go

    def _turn(self, way: int) -> None:
        options = self._session.job.options
        self._take_up((options.place + way) % options.count)

    def _hide_bar(self, hide: bool) -> None:
        for part in (self.area, self.ends):
            part.setHidden(hide)
        if hide:
            self.setFocus(Qt.FocusReason.OtherFocusReason)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape ends it, Page up and down turn through the options, undo and redo are the window's; any key
        brings the controls back.
        """
        key = event.key()
        if event.matches(QKeySequence.StandardKey.Undo):
            self._session.undo()
        elif event.matches(QKeySequence.StandardKey.Redo):
            self._session.redo()
        elif key in (Qt.Key.Key_Escape, Qt.Key.Key_F11):
            self.close()
        elif self.area.isHidden():
            self._hide_bar(False)
        elif key in (Qt.Key.Key_PageUp, Qt.Key.Key_PageDown):
            self._turn(1 if key == Qt.Key.Key_PageDown else -1)
        else:
            super().keyPressEvent(event)

    def mousePressEvent(self, _event: QMouseEvent) -> None:
        """A click brings the controls back."""
        self._hide_bar(False)

    def closeEvent(self, event: QCloseEvent) -> None:
        """Nothing is drawn any more."""
        if not self._is_gone:
            self._is_gone = True
            self._session.changed.disconnect(self._follow)
            self._drawing.wait()
            self.gone.emit()
        super().closeEvent(event)
