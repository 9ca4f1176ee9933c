"""A dimension typed over on the sheet itself. What it may hold and how it is refused is as in the list."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QPointF, QRect, QRectF, Qt, Signal
from PySide6.QtGui import QColor, QFontMetrics, QKeyEvent, QPainter, QPaintEvent, QPalette, QPen
from PySide6.QtWidgets import QWidget

from app.canvas import Canvas
from app.fields.row import say_wanted
from app.fields.tape_edit import TapeEdit
from app.session import Session
from app.theme import ON_PAPER, RHYTHM, SMALL_POINTS, text_font
from model.errors import Refused
from model.job import read_value
from model.parameters import Parameter, find_parameter
from render.lettering import tie_fractions

WIDTH, HEIGHT = 14 * RHYTHM, 3 * RHYTHM + 2
SENTENCE = 26 * RHYTHM
"""Pixels that a sentence below the entry may be wide."""
PAD = RHYTHM // 2


class SheetField(QWidget):
    """Lies over a dimension while it is typed over. `opened` names the parameter, "" when it is closed."""

    opened = Signal(str)

    def __init__(self, session: Session, canvas: Canvas) -> None:
        super().__init__(canvas)
        self._session, self._canvas = session, canvas
        self._row: Parameter | None = None
        self._message = ""
        self._spot: tuple[str, tuple[float, float]] = ("", (0.0, 0.0))
        self.edit = TapeEdit(steps=True)
        self.edit.setParent(self)
        self.edit.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.edit.setPalette(_paper_palette())
        self.edit.entered.connect(self._enter)
        self.edit.stepped.connect(self._step)
        self.edit.given_up.connect(self._settle)
        self.edit.left.connect(self._close_when_taken)
        self.edit.returnPressed.connect(self._close_when_taken)
        canvas.laid.connect(self._follow)
        session.changed.connect(self._show_value)
        session.replaced.connect(self.close_field)
        self.hide()

    @property
    def path(self) -> str:
        """The parameter that is typed over, "" while none is."""
        return self._row.path if self._row is not None else ""

    @property
    def message(self) -> str:
        """The sentence below the entry, "" while nothing is wrong."""
        return self._message

    def open(self, path: str, at: QPointF, text: str = "") -> None:
        """Type over the dimension of `path` at a pixel, beginning with `text` where that is given."""
        self.commit()
        self._row = row = find_parameter(path)
        self._spot = self._find_spot(path, at)
        self._settle()
        self.edit.setAccessibleName(row.name)
        self.edit.setAccessibleDescription(row.about)
        self.edit.setPlaceholderText("not given" if row.optional else "")
        self._show_value()
        self._follow()
        self.show()
        self.raise_()
        self.opened.emit(path)
        self.edit.setFocus(Qt.FocusReason.OtherFocusReason)
        self.edit.selectAll()
        if text:
            self.edit.insert(text)

    def commit(self) -> bool:
        """Enter what is being typed; what is refused then is given up. Whether nothing was."""
        if self._row is None:
            return True
        self.edit.commit()
        is_taken = not self._message
        self.close_field()
        return is_taken

    def close_field(self) -> None:
        """Let the dimension be."""
        if self._row is None:
            return
        had = self.edit.hasFocus()
        self._row = None
        self.hide()
        self.opened.emit("")
        if had:
            self._canvas.setFocus(Qt.FocusReason.OtherFocusReason)

    def _find_spot(self, path: str, at: QPointF) -> tuple[str, tuple[float, float]]:
        """The view and the point of it that the field keeps to: its dimension's writing, if any."""
        found = self._canvas.find_dimension(at)
        if found is not None and found[1].stands_for == path:
            return found[0].name, found[1].text_at
        for view in self._canvas.views:
            for dimension in view.list_dimensions(path):
                return view.name, dimension.text_at
        return "", self._canvas.place.to_model(at)

    def _enter(self, text: str) -> None:
        self._ask(lambda row: self._session.set_text(row.path, text))

    def _step(self, count: int) -> None:
        self._ask(lambda row: self._session.step(row.path, count))

    def _ask(self, change: Callable[[Parameter], None]) -> None:
        if self._row is None:
            return
        try:
            change(self._row)
        except Refused as refusal:
            self._say(say_wanted(refusal))
        else:
            self._settle()
            self._show_value()

    def _say(self, message: str) -> None:
        self._message = message
        about = self._row.about if self._row is not None else ""
        self.edit.setAccessibleDescription(f"{message} {about}".strip())
        self._follow()
        self.update()

    def _settle(self) -> None:
        if self._message:
            self._say("")

    def _show_value(self) -> None:
        if self._row is None or self._message:
            return
        value = read_value(self._session.job, self._row.path)
        self.edit.show_text(self._row.format(value, self._session.job.about.length_style))

    def _close_when_taken(self) -> None:
        """Enter and going elsewhere close it; what was refused stays to be put right."""
        if not self._message:
            self.close_field()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape, when nothing typed is left to be taken back, lets the dimension be."""
        if event.key() == Qt.Key.Key_Escape:
            self.close_field()
        event.accept()  # Enter, too, is not the sheet's

    # --- where it lies and how it looks

    def _follow(self) -> None:
        """Lie over the dimension wherever the sheet has it, the whole field within the window."""
        if self._row is None:
            return
        name, point = self._spot
        for view in self._canvas.views:
            near = sorted(view.list_dimensions(self.path), key=lambda d: _away(d.text_at, point))
            if view.name == name and near:
                point = near[0].text_at
                self._spot = (name, point)
        middle = self._canvas.place_of(name).to_pixels(point)
        sentence = self._sentence_box()
        width = max(WIDTH, sentence.width() + 2 * PAD)
        height = HEIGHT + (sentence.height() + PAD if self._message else 0)
        room = QRectF(self._canvas.rect())
        x = min(max(middle.x() - width / 2, 0.0), room.width() - width)
        y = min(max(middle.y() - HEIGHT / 2, 0.0), room.height() - height)
        self.setGeometry(round(x), round(y), width, height)
        self.edit.setGeometry(PAD, 1, width - 2 * PAD, HEIGHT - 2)

    def _sentence_box(self) -> QRect:
        if not self._message:
            return QRect()
        metrics = QFontMetrics(text_font(SMALL_POINTS))
        return metrics.boundingRect(
            QRect(0, 0, SENTENCE, 400), int(Qt.TextFlag.TextWordWrap), tie_fractions(self._message)
        )

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paper with a line round it in the colour of what is in focus, or of what is wrong."""
        wrong = bool(self._message)
        with QPainter(self) as painter:
            painter.setPen(QPen(QColor(ON_PAPER.wrong if wrong else ON_PAPER.lit), 2))
            painter.setBrush(QColor(ON_PAPER.wrong_ground if wrong else ON_PAPER.lit_ground))
            painter.drawRect(self.rect().adjusted(1, 1, -1, -1))
            if wrong:
                painter.setFont(text_font(SMALL_POINTS))
                painter.setPen(QColor(ON_PAPER.wrong))
                box = self._sentence_box().translated(PAD, HEIGHT)
                painter.drawText(box, int(Qt.TextFlag.TextWordWrap), tie_fractions(self._message))


def _away(a: tuple[float, float], b: tuple[float, float]) -> float:
    return abs(a[0] - b[0]) + abs(a[1] - b[1])


def _paper_palette() -> QPalette:
    """Ink on paper, whatever ground the window has."""
    palette = QPalette()
    palette.setColor(QPalette.ColorRole.Base, Qt.GlobalColor.transparent)
    palette.setColor(QPalette.ColorRole.Text, QColor(ON_PAPER.ink))
    palette.setColor(QPalette.ColorRole.PlaceholderText, QColor(ON_PAPER.faint))
    palette.setColor(QPalette.ColorRole.Highlight, QColor(ON_PAPER.marked))
    palette.setColor(QPalette.ColorRole.HighlightedText, QColor(ON_PAPER.ink))
    return palette
