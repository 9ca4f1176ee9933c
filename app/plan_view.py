"""The cutting plans below the sheet: every board and sheet drawn as on paper; a piece can be picked.

What is drawn is render.cutting_sheet's. While an edit is planned anew the old plan stays, visibly out of
date.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QPoint, QPointF, QRectF, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QColor, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen, QPolygonF, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QScrollArea, QVBoxLayout, QWidget

from app.buttons import PlainButton
from app.hairline import ThinBar
from app.painter import Gathered, Place, gather_drawing, paint_drawing
from app.theme import RHYTHM, colours
from model.units import MM_PER_INCH
from render.drawing import Drawing, Region

if TYPE_CHECKING:
    from model.cutting.plan import CuttingPlan
    from model.units import LengthStyle

DOTS = 100.0
"""Pixels to an inch of paper: small capitals are as high as the window's own small type."""
EDGE = 2 * RHYTHM
LEAST_WIDTH, MOST_WIDTH = 4.0, 11.0
"""Paper inches that a plan is drawn wide."""
SETTLE = 60
PALE = 150
"""How far paper covers a plan that is out of date, of 255."""
WAITING = "No plan yet."

Draw = Callable[[float], Drawing]


class PlanSheet(QWidget):
    """Paints one long drawing. `chosen` hands on the mark of the piece in focus, "" for none."""

    chosen = Signal(str)
    shown_at = Signal(QPoint)

    def __init__(self) -> None:
        super().__init__()
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Cutting plans")
        self._draw: Draw | None = None
        self._gathered: Gathered | None = None
        self._pieces: list[tuple[str, QPolygonF]] = []
        self._mark = ""
        self.is_outdated = False
        self._drawn_width = 0.0
        self._settling = QTimer(self)
        self._settling.setSingleShot(True)
        self._settling.setInterval(SETTLE)
        self._settling.timeout.connect(self._draw_again)

    def show_drawing(self, draw: Draw | None) -> None:
        """Show what `draw` makes for a width in paper inches."""
        self._draw, self.is_outdated = draw, False
        self._drawn_width = 0.0
        self._draw_again()

    def show_outdated(self) -> None:
        """Pale what is shown until another drawing comes."""
        if not self.is_outdated:
            self.is_outdated = True
            self.update()

    def _paper_width(self) -> float:
        return min(max((self.width() - 2 * EDGE) / DOTS, LEAST_WIDTH), MOST_WIDTH)

    def _draw_again(self) -> None:
        width = self._paper_width()
        if width == self._drawn_width:
            return
        self._drawn_width = width
        drawing = self._draw(width) if self._draw is not None else Drawing(())
        self._gathered = gather_drawing(drawing)
        self._pieces = [
            (mark.stands_for, QPolygonF([self._place.to_pixels(point) for point in mark.rings[0]]))
            for mark in drawing.marks
            if isinstance(mark, Region) and mark.stands_for
        ]
        self.setMinimumHeight(round(-self._gathered.box.top() * DOTS) + 2 * EDGE)
        self.update()

    @property
    def _place(self) -> Place:
        return Place(DOTS, float(EDGE), float(EDGE))

    @property
    def mark(self) -> str:
        """The mark of the piece in focus."""
        return self._mark

    def focus_mark(self, mark: str) -> None:
        """Outline the pieces of a mark; `shown_at` says where the first one is."""
        self._mark = mark
        box = self.box_of(mark)
        if not box.isNull():
            self.shown_at.emit(box.center().toPoint())
        self.update()

    def box_of(self, mark: str) -> QRectF:
        """Where the first piece of a mark is drawn; null where none is."""
        return next((p.boundingRect() for each, p in self._pieces if mark and each == mark), QRectF())

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paper, the plan, and the pieces in focus."""
        if self._gathered is None:
            return
        c = colours()
        with QPainter(self) as painter:
            painter.fillRect(event.rect(), QColor("#ffffff"))
            paint_drawing(painter, self._gathered, self._place, DOTS / MM_PER_INCH)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(QPen(QColor(c.lit), 3.0))
            for mark, outline in self._pieces:
                if mark == self._mark:
                    painter.drawPolygon(outline)
            if self.is_outdated:
                painter.fillRect(event.rect(), QColor(255, 255, 255, PALE))

    def resizeEvent(self, _event: QResizeEvent) -> None:
        """Draw for the new width once it is settled."""
        self._settling.start()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Pick the piece under the pointer; beside all of them let go."""
        if event.button() == Qt.MouseButton.LeftButton:
            self._choose(self.piece_at(event.position()))

    def piece_at(self, at: QPointF) -> str:
        """The mark of the piece drawn there, "" for none."""
        inside = (mark for mark, p in self._pieces if p.containsPoint(at, Qt.FillRule.OddEvenFill))
        return next(inside, "")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Left and right go from piece to piece; Escape lets go."""
        steps = {Qt.Key.Key_Right: 1, Qt.Key.Key_Left: -1}
        key = Qt.Key(event.key())
        if key in steps and self._pieces:
            marks = list(dict.fromkeys(mark for mark, _ in self._pieces))
            at = marks.index(self._mark) if self._mark in marks else (-1 if steps[key] > 0 else 0)
            self._choose(marks[(at + steps[key]) % len(marks)])
        elif key == Qt.Key.Key_Escape and self._mark:
            self._choose("")
        else:
            super().keyPressEvent(event)

    def _choose(self, mark: str) -> None:
        self.focus_mark(mark)
        self.chosen.emit(mark)

    def sizeHint(self) -> QSize:
        """As high as the plan."""
        return QSize(600, self.minimumHeight())


class PlanView(QWidget):
    """The plans, and above them how far planning is, with a way to stop it."""

    chosen = Signal(str)
    stop_asked = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.sheet = PlanSheet()
        self.words = QLabel(WAITING)
        self.words.setWordWrap(True)
        self.stop_button = PlainButton("Enough", "Stop looking for a cheaper plan and take the best so far")
        self.stop_button.clicked.connect(self.stop_asked)
        self.bought_button = PlainButton(
            "Bought", "Keep this plan: its boards are bought, and edits are planned out of them first"
        )
        self.release_button = PlainButton(
            "Not bought", "Let go of the plan that was kept; boards that are cut already stay on hand"
        )
        self.cut_button = PlainButton("Cut", "The board of the piece in focus is sawn, or not after all")
        head = QHBoxLayout()
        head.setContentsMargins(RHYTHM, RHYTHM // 2, 2 * RHYTHM, RHYTHM // 2)
        head.addWidget(self.words, 1)
        for button in (self.stop_button, self.cut_button, self.bought_button, self.release_button):
            head.addWidget(button)
            button.hide()
        scroll = QScrollArea()
        scroll.setFrameShape(QScrollArea.Shape.NoFrame)
        scroll.setWidgetResizable(True)
        scroll.setVerticalScrollBar(ThinBar(Qt.Orientation.Vertical))
        scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        scroll.setWidget(self.sheet)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(head)
        column.addWidget(scroll, 1)
        self.setFocusProxy(self.sheet)
        self.sheet.chosen.connect(self.chosen)
        self.sheet.shown_at.connect(lambda at: scroll.ensureVisible(at.x(), at.y(), 0, 6 * RHYTHM))

    def show_plan(
        self,
        plan: CuttingPlan,
        style: LengthStyle,
        words: str,
        bought: CuttingPlan | None,
        may_improve: bool = False,
    ) -> None:
        """Show another plan, and what is `bought`; the piece in focus stays it if it is still there.

        While it `may_improve` the search can be stopped.
        """
        from render.cutting_sheet import draw_cutting

        self.words.setText(words)
        self.stop_button.setVisible(may_improve)
        self.bought_button.setVisible(bool(plan.sawn))
        self.release_button.setVisible(bought is not None)
        self.cut_button.setVisible(bought is not None)
        self.sheet.show_drawing(lambda width: draw_cutting(plan, style, width, bought))
        self.sheet.focus_mark(self.sheet.mark)

    def show_waiting(self, words: str) -> None:
        """What is shown is out of date; say what is being planned."""
        self.words.setText(words)
        self.stop_button.show()
        self._hide_marking()
        self.sheet.show_outdated()

    def _hide_marking(self) -> None:
        """A plan that is out of date cannot be bought or cut."""
        for button in (self.bought_button, self.release_button, self.cut_button):
            button.hide()

    def marks(self) -> frozenset[str]:
        """The mark of the piece in focus, if any."""
        return frozenset({self.sheet.mark} - {""})

    def show_trouble(self, words: str) -> None:
        """There is no plan, and this is why."""
        self.words.setText(words)
        self.stop_button.hide()
        self._hide_marking()
        self.sheet.show_outdated()

    def changeEvent(self, event: QEvent) -> None:
        """Other colours, other outlines."""
        if event.type() == QEvent.Type.PaletteChange:
            self.sheet.update()
        super().changeEvent(event)
