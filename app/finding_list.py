"""The findings in words, worst first. What they say is model.check's business."""

from __future__ import annotations

from functools import lru_cache

from PySide6.QtCore import (
    QAbstractListModel,
    QModelIndex,
    QPersistentModelIndex,
    QRect,
    QRectF,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import QColor, QFocusEvent, QFontMetrics, QPainter, QResizeEvent
from PySide6.QtWidgets import QListView, QStyle, QStyledItemDelegate, QStyleOptionViewItem

from app.status_shape import paint_shape
from app.theme import RHYTHM, SMALL_POINTS, TEXT_POINTS, colours, status_colour, text_font
from app.thin_bar import ThinBar
from model.check.finding import STATUS_WORD, Finding
from model.sentences import capitalise
from model.units import LengthStyle
from render.lettering import tie_fractions

Index = QModelIndex | QPersistentModelIndex
WORD, PART, VALUES, SOURCE = 104, 128, 140, 216
"""Widths in pixels of all columns but the message's, which takes the rest."""
NARROW = 560
"""Pixels below which a line has its message under its part instead of beside it."""
_TALL = 400
_WRAP = int(Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)


class FindingModel(QAbstractListModel):
    """Findings with the style their lengths are written in."""

    def __init__(self) -> None:
        super().__init__()
        self.findings: tuple[Finding, ...] = ()
        self.values: tuple[tuple[str, str], ...] = ()

    def show(self, findings: tuple[Finding, ...], style: LengthStyle) -> None:
        """Take other findings; where rules and parts are the same as before, tell only what changed."""
        from render.checks_sheet import value_texts

        values = tuple(value_texts(f.measured, f.limit, f.unit, style) for f in findings)
        before = list(zip(self.findings, self.values, strict=True))
        if [_identity(f) for f in findings] != [_identity(f) for f in self.findings]:
            self.beginResetModel()
            self.findings, self.values = findings, values
            self.endResetModel()
            return
        self.findings, self.values = findings, values
        for row, (old, new) in enumerate(zip(before, zip(findings, values, strict=True), strict=True)):
            if old != new:
                self.dataChanged.emit(self.index(row), self.index(row))

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """One row for each finding."""
        return 0 if parent.isValid() else len(self.findings)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> str | None:
        """The whole finding as one sentence, for screen readers and for searching by typing."""
        if role not in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
            return None
        finding = self.findings[index.row()]
        measured, limit = self.values[index.row()]
        held = f", measured {measured}, at {finding.bound} {limit}" if measured and limit else ""
        return (
            f"{STATUS_WORD[finding.status]}: {finding.part}{held}. {finding.message} {finding.cure}".strip()
        )


_Laid = tuple[tuple[int, tuple[Finding, ...], tuple[tuple[str, str], ...]], tuple[int, ...]]
"""A width, findings with their figures, and how high their lines are."""


class FindingLine(QStyledItemDelegate):
    """Paints one finding: shape and word, part, measured and its limit, what it means, and the source."""

    def __init__(self, model: FindingModel) -> None:
        super().__init__()
        self._model = model
        self._laid: _Laid = (0, (), ()), ()

    def message_width(self, whole: int) -> int:
        """What is left for the message in a line `whole` pixels wide; a narrow line does without sources."""
        if whole < NARROW:
            return whole - 4 * RHYTHM
        source = SOURCE if self.shows_source(whole) else 0
        return max(120, whole - WORD - PART - VALUES - source - 4 * RHYTHM)

    def shows_source(self, whole: int) -> bool:
        """Whether a line is wide enough for a column of sources."""
        return whole > 3.4 * SOURCE

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """High enough for the whole message; nothing is cut off."""
        view = option.widget
        whole = view.viewport().width() if isinstance(view, QListView) else option.rect.width()
        return QSize(whole, self.list_heights(whole)[index.row()])

    def list_heights(self, whole: int) -> tuple[int, ...]:
        """Pixels that each line needs when it is `whole` pixels wide; worked out once for what is shown."""
        state = whole, self._model.findings, self._model.values
        if self._laid[0] != state:
            self._laid = state, tuple(self.height_of(row, whole) for row in range(len(self._model.findings)))
        return self._laid[1]

    def height_of(self, row: int, whole: int) -> int:
        """Pixels that a line needs when it is `whole` pixels wide."""
        finding = self._model.findings[row]
        message = _height(_say(finding), self.message_width(whole), TEXT_POINTS)
        if whole < NARROW:
            return self._head_height(row) + message + 2 * RHYTHM
        shown = self.shows_source(whole)
        source = _height(_source(finding), SOURCE - RHYTHM, SMALL_POINTS) if shown else 0
        values = 2 * QFontMetrics(text_font()).lineSpacing() if self._model.values[row][0] else 0
        return max(message, source, values) + 2 * RHYTHM

    def _head_height(self, row: int) -> int:
        """Pixels over the message of a narrow line: the part, and what was measured where anything was."""
        lines = 2 if self._model.values[row][0] else 1
        return lines * QFontMetrics(text_font()).lineSpacing()

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """One line; the one in focus stands on the colour that marks its place on the sheet."""
        c = colours()
        finding = self._model.findings[index.row()]
        box = option.rect
        painter.save()
        if option.state & QStyle.StateFlag.State_Selected:
            painter.fillRect(box, QColor(c.lit_ground))
            painter.fillRect(QRect(box.left(), box.top(), 3, box.height()), QColor(c.lit))
        painter.setPen(QColor(c.rule))
        painter.drawLine(box.bottomLeft(), box.bottomRight())
        inner = box.adjusted(2 * RHYTHM, RHYTHM, -2 * RHYTHM, -RHYTHM)
        self._paint_status(painter, finding, inner)
        if box.width() < NARROW:
            self._paint_narrow(painter, index.row(), inner)
            painter.restore()
            return
        left = inner.left() + WORD
        painter.setPen(QColor(c.ink))
        painter.drawText(
            QRect(left, inner.top(), PART - RHYTHM, inner.height()), _WRAP, capitalise(finding.part)
        )
        left += PART
        texts = zip(("measured", f"at {finding.bound}"), self._model.values[index.row()], strict=True)
        self._paint_values(painter, tuple(texts), QRect(left, inner.top(), VALUES, inner.height()))
        left += VALUES
        width = self.message_width(box.width())
        painter.setFont(text_font())
        painter.setPen(QColor(c.ink))
        painter.drawText(QRect(left, inner.top(), width, inner.height()), _WRAP, _say(finding))
        if self.shows_source(box.width()):
            self._paint_source(
                painter, finding, QRect(left + width + RHYTHM, inner.top(), SOURCE, inner.height())
            )
        painter.restore()

    def _paint_narrow(self, painter: QPainter, row: int, box: QRect) -> None:
        """The part beside the status, what was measured below them, and the message over the whole width."""
        c, finding = colours(), self._model.findings[row]
        line = QFontMetrics(text_font()).lineSpacing()
        painter.setPen(QColor(c.ink))
        beside = QRect(box.left() + WORD, box.top(), box.width() - WORD, line)
        part = QFontMetrics(painter.font()).elidedText(
            capitalise(finding.part), Qt.TextElideMode.ElideRight, beside.width()
        )
        painter.drawText(beside, int(Qt.AlignmentFlag.AlignVCenter), part)
        measured, limit = self._model.values[row]
        if measured:
            held = f"measured {measured}" + (f", at {finding.bound} {limit}" if limit else "")
            painter.setFont(text_font(SMALL_POINTS))
            painter.setPen(QColor(c.soft))
            painter.drawText(beside.translated(0, line), int(Qt.AlignmentFlag.AlignVCenter), held)
        painter.setFont(text_font())
        painter.setPen(QColor(c.ink))
        painter.drawText(box.adjusted(0, self._head_height(row), 0, 0), _WRAP, _say(finding))

    def _paint_status(self, painter: QPainter, finding: Finding, box: QRect) -> None:
        colour = status_colour(finding.status, colours())
        font = text_font(bold=True)
        line = QFontMetrics(font).height()
        paint_shape(painter, finding.status, QRectF(box.left(), box.top() + (line - 11) / 2, 11, 11), colour)
        painter.setFont(font)
        painter.setPen(colour)
        painter.drawText(QRect(box.left() + 20, box.top(), WORD, line), _WRAP, STATUS_WORD[finding.status])
        painter.setFont(text_font(bold=True))

    def _paint_values(self, painter: QPainter, values: tuple[tuple[str, str], ...], box: QRect) -> None:
        c = colours()
        line = QFontMetrics(text_font()).lineSpacing()
        for i, (word, value) in enumerate(values):
            if not value:
                continue
            top = box.top() + i * line
            painter.setFont(text_font(SMALL_POINTS))
            painter.setPen(QColor(c.soft))
            painter.drawText(QRect(box.left(), top, 60, line), int(Qt.AlignmentFlag.AlignVCenter), word)
            painter.setFont(text_font())
            painter.setPen(QColor(c.ink))
            painter.drawText(
                QRect(box.left() + 60, top, box.width() - 60, line), int(Qt.AlignmentFlag.AlignVCenter), value
            )

    def _paint_source(self, painter: QPainter, finding: Finding, box: QRect) -> None:
        painter.setFont(text_font(SMALL_POINTS))
        painter.setPen(QColor(colours().soft))
        painter.drawText(box.adjusted(0, 1, -RHYTHM, 0), _WRAP, _source(finding))


def _identity(finding: Finding) -> tuple[str, str, str]:
    """What stays the same about a finding while the design changes."""
    return finding.check, finding.rule, finding.part


def _say(finding: Finding) -> str:
    return tie_fractions(" ".join(text for text in (finding.message, finding.cure) if text))


def _source(finding: Finding) -> str:
    from render.checks_sheet import source_text

    return source_text(finding.rule, finding.source, finding.standing)


@lru_cache(maxsize=512)
def _height(text: str, width: int, points: float) -> int:
    """Of a text broken into lines; most texts are still the same after an edit."""
    metrics = QFontMetrics(text_font(points))
    return metrics.boundingRect(QRect(0, 0, width, _TALL), _WRAP, text).height()


class FindingList(QListView):
    """The list. `chosen` hands on the finding in focus, or None; `asked` the parameter that would cure it."""

    chosen = Signal(object)
    asked = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self._findings = FindingModel()
        self.setModel(self._findings)
        self._line = FindingLine(self._findings)
        self._laid: tuple[int, ...] = ()
        self.setItemDelegate(self._line)
        self.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setResizeMode(QListView.ResizeMode.Adjust)
        self.setFrameShape(QListView.Shape.NoFrame)
        self.setVerticalScrollBar(ThinBar(Qt.Orientation.Vertical))
        self.setAccessibleName("Findings")
        self.setToolTip(
            "Choose a line to see its place on the sheet; Enter goes to the measurement that cures it."
        )
        self.selectionModel().currentChanged.connect(self._choose)
        self.activated.connect(self._ask)
        self.doubleClicked.connect(self._ask)

    def show_findings(self, findings: tuple[Finding, ...], style: LengthStyle) -> None:
        """Show other findings; the same rule and part stay in focus if they are still there."""
        before, laid = self.current(), self._laid
        self._findings.show(findings, style)
        self._laid = self._line.list_heights(self.viewport().width())
        if self._laid != laid:
            self.scheduleDelayedItemsLayout()
        if before is None or self.current() == before:
            return
        same = [i for i, finding in enumerate(findings) if _identity(finding) == _identity(before)]
        if not same:
            self.chosen.emit(None)
        elif self.currentIndex().row() == same[0]:
            self.chosen.emit(self.current())
        else:
            self.setCurrentIndex(self._findings.index(same[0]))

    def height_of_current(self) -> int:
        """Pixels that the line in focus needs beside a scroll bar; 0 where none is."""
        row, beside = self.currentIndex().row(), self.verticalScrollBar().sizeHint().width()
        return self._line.height_of(row, self.width() - beside) if row >= 0 else 0

    def current(self) -> Finding | None:
        """The finding in focus, None where none is."""
        index = self.currentIndex()
        return self._findings.findings[index.row()] if index.isValid() else None

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The line that the keyboard comes to is marked, also when it is the first one ever."""
        super().focusInEvent(event)
        if self.currentIndex().isValid() and not self.selectionModel().hasSelection():
            self.setCurrentIndex(self.currentIndex())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another width breaks the messages otherwise; the line in focus stays in sight."""
        super().resizeEvent(event)
        self.scheduleDelayedItemsLayout()
        if self.currentIndex().isValid():
            self.scrollTo(self.currentIndex())

    def _choose(self, _index: QModelIndex, _before: QModelIndex) -> None:
        self.chosen.emit(self.current())

    def _ask(self, _index: QModelIndex) -> None:
        finding = self.current()
        if finding is not None and finding.path:
            self.asked.emit(finding.path)
