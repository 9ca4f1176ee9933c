"""The cutting plans below the sheet: every board and sheet drawn as on paper; a piece can be picked.

What is drawn is render.cutting_sheet's. While an edit is planned anew the old plan stays, visibly out of
date.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QPoint, QPointF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen, QPolygonF, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from app.buttons import PlainButton
from app.painter import Gathered, Place, gather_drawing, paint_drawing
from app.pause import build_pause
from app.theme import RHYTHM, colours
from app.thin_bar import ThinBar
from app.words import Words
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


@dataclass(frozen=True, slots=True)
class DrawnPiece:
    """A piece as drawn: its mark on every board that is cut alike, the first one's number, its outline."""

    marks: tuple[str, ...]
    number: int
    outline: QPolygonF


class PlanSheet(QWidget):
    """Paints one long drawing. `chosen` hands on the marks of the piece in focus, none for no piece;
    `picked_anew` says that another piece is in focus, whoever put it there.
    """

    chosen = Signal(object)
    picked_anew = Signal()
    shown_at = Signal(QPoint)

    def __init__(self) -> None:
        super().__init__()
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Cutting plans")
        self._draw: Draw | None = None
        self._gathered: Gathered | None = None
        self.pieces: tuple[DrawnPiece, ...] = ()
        self._marks: tuple[str, ...] = ()
        self._number = 0
        self.is_outdated = False
        self._drawn_width = 0.0
        self._settling = build_pause(self, SETTLE, self._draw_again)

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
        self.pieces = tuple(self._list_pieces(drawing))
        self.setMinimumHeight(round(-self._gathered.box.top() * DOTS) + 2 * EDGE)
        self.update()

    @property
    def _place(self) -> Place:
        return Place(DOTS, float(EDGE), float(EDGE))

    def _list_pieces(self, drawing: Drawing) -> Iterator[DrawnPiece]:
        from render.board_bar import read_pieces

        for mark in drawing.marks:
            if isinstance(mark, Region) and mark.stands_for:
                outline = QPolygonF([self._place.to_pixels(point) for point in mark.rings[0]])
                yield DrawnPiece(*read_pieces(mark.stands_for), outline)

    @property
    def marks(self) -> tuple[str, ...]:
        """The marks of the piece in focus: several where boards are cut alike."""
        return self._marks

    @property
    def mark(self) -> str:
        """The first of them, "" where no piece is in focus."""
        return self._marks[0] if self._marks else ""

    @property
    def number(self) -> int:
        """Of the board on which the piece in focus was picked; 0 where it was not picked here."""
        return self._number

    def focus_mark(self, mark: str) -> None:
        """Outline the pieces of a mark; `shown_at` says where the first one is."""
        self._put_in_focus((mark,) if mark else (), 0)

    def _put_in_focus(self, marks: tuple[str, ...], number: int) -> None:
        self._marks, self._number = marks, number
        first = next((piece for piece in self.pieces if self._is_in_focus(piece)), None)
        if first is not None:
            self.shown_at.emit(first.outline.boundingRect().center().toPoint())
        self.setAccessibleDescription(self._say_focus())
        self.picked_anew.emit()
        self.update()

    def _say_focus(self) -> str:
        if not self._marks:
            return ""
        return f"{' / '.join(self._marks)}" + (f" on {self._number}" if self._number else "")

    def _is_in_focus(self, piece: DrawnPiece) -> bool:
        """Whether it is the one that was picked; any of the mark where none was."""
        if self._number:
            return piece.number == self._number and piece.marks == self._marks
        return bool(set(self._marks) & set(piece.marks))

    def stay_in_focus(self) -> None:
        """Keep the piece in focus on another drawing; where its board is not there, any piece of its mark."""
        if not any(self._is_in_focus(piece) for piece in self.pieces):
            self._number = 0
        self._put_in_focus(self._marks, self._number)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paper, the plan, and the pieces in focus."""
        if self._gathered is None:
            return
        c = colours()
        with QPainter(self) as painter:
            painter.fillRect(event.rect(), QColor("#ffffff"))
            paint_drawing(painter, self._gathered, self._place, DOTS / MM_PER_INCH)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            for piece in self.pieces:
                if set(self._marks) & set(piece.marks):
                    painter.setPen(QPen(QColor(c.lit), 3.0 if self._is_in_focus(piece) else 1.5))
                    painter.drawPolygon(piece.outline)
            if self.is_outdated:
                painter.fillRect(event.rect(), QColor(255, 255, 255, PALE))

    def resizeEvent(self, _event: QResizeEvent) -> None:
        """Draw for the new width once it is settled."""
        self._settling.start()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Pick the piece under the pointer; beside all of them let go."""
        if event.button() == Qt.MouseButton.LeftButton:
            self.choose(self.piece_at(event.position()))

    def piece_at(self, at: QPointF) -> DrawnPiece | None:
        """The piece drawn at a place of the widget, None beside all of them."""
        inside = (p for p in self.pieces if p.outline.containsPoint(at, Qt.FillRule.OddEvenFill))
        return next(inside, None)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Left and right go from piece to piece; Escape lets go."""
        steps = {Qt.Key.Key_Right: 1, Qt.Key.Key_Left: -1}
        key = Qt.Key(event.key())
        if key in steps and self.pieces:
            places = [i for i, piece in enumerate(self.pieces) if self._is_in_focus(piece)]
            at = places[0] if places else (-1 if steps[key] > 0 else 0)
            self.choose(self.pieces[(at + steps[key]) % len(self.pieces)])
        elif key == Qt.Key.Key_Escape and self._marks:
            self.choose(None)
        else:
            super().keyPressEvent(event)

    def choose(self, piece: DrawnPiece | None) -> None:
        """Pick a piece, or let go of what is picked."""
        self._put_in_focus(piece.marks if piece else (), piece.number if piece else 0)
        self.chosen.emit(frozenset(self._marks))

    def sizeHint(self) -> QSize:
        """As high as the plan."""
        return QSize(600, self.minimumHeight())


class PlanView(QWidget):
    """The plans, and above them how far planning is, with a way to stop it."""

    chosen = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.sheet = PlanSheet()
        self.has_plan = False
        """Whether a plan is drawn, be it out of date."""
        self.words = Words(WAITING)
        self.stop_button, self.cut_button, self.bought_button, self.release_button = (
            PlainButton("", "") for _ in range(4)
        )
        head = QHBoxLayout()
        head.setContentsMargins(RHYTHM, RHYTHM // 2, 2 * RHYTHM, RHYTHM // 2)
        head.addWidget(self.words, 1)
        for button in (self.stop_button, self.cut_button, self.bought_button, self.release_button):
            head.addWidget(button)
        self.stop_button.hide()
        scroll = QScrollArea()
        scroll.setFrameShape(QScrollArea.Shape.NoFrame)
        scroll.setWidgetResizable(True)
        scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
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
        cut: tuple[int, ...] = (),
        may_improve: bool = False,
    ) -> None:
        """Show another plan, what is `bought` and what of it is `cut`; the piece in focus stays in focus.

        While it `may_improve` the search can be stopped.
        """
        from render.cutting_sheet import draw_cutting

        self.words.setText(words)
        self.stop_button.setVisible(may_improve)
        self.has_plan = True
        self.sheet.show_drawing(lambda width: draw_cutting(plan, style, width, bought, cut))
        self.sheet.stay_in_focus()

    def show_waiting(self, words: str) -> None:
        """What is shown is out of date; say what is being planned."""
        self.words.setText(words)
        self.stop_button.show()
        self.sheet.show_outdated()

    def leave_buttons(self) -> None:
        """Have the keyboard on the plan: a button that is pressed out hands it to its neighbour."""
        if any(b.hasFocus() for b in (self.cut_button, self.bought_button, self.release_button)):
            self.sheet.setFocus(Qt.FocusReason.OtherFocusReason)

    def marks(self) -> frozenset[str]:
        """The marks of the piece in focus."""
        return frozenset(self.sheet.marks)

    def show_trouble(self, words: str) -> None:
        """There is no plan, and this is why."""
        self.words.setText(words)
        self.stop_button.hide()
        self.sheet.show_outdated()

    def changeEvent(self, event: QEvent) -> None:
        """Other colours, other outlines."""
        if event.type() == QEvent.Type.PaletteChange:
            self.sheet.update()
        super().changeEvent(event)
