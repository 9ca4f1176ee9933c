"""The measuring mode's page: what is asked, where the tape goes, one large entry. What is asked for when is
app.measuring's business."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPalette
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QLabel, QProgressBar, QVBoxLayout, QWidget

from app.buttons import PlainButton, QuietButton, StrongButton, quiet_button
from app.fields.picture_view import PictureView
from app.measuring_entry import MeasuringEntry
from app.theme import RHYTHM, SMALL_POINTS, colours, text_font
from app.words import Words
from model.job import Job
from model.parameters import Kind, Parameter
from model.sentences import capitalise

ASKING_WIDTH = 320
TITLE_POINTS = 16.0
HINT = "Tape text such as 64 1/2, 5' 4-1/2\" or 1638 mm. Enter goes on and keeps what stands there."
PLAIN_HINT = "Enter goes on and keeps what stands there."
PICK_HINT = "Arrow keys choose, Enter goes on."


class MeasuringPage(QWidget):
    """Says what was pressed; shows what it is given. All of it is reached by keys alone."""

    gone_on = Signal()
    gone_back = Signal()
    skipped = Signal()
    group_skipped = Signal()
    left = Signal()
    design_asked = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.entry = MeasuringEntry()
        self.picture = PictureView(largest=2.4)
        self.progress = QProgressBar()
        self.progress.setTextVisible(False)
        self.progress.setFixedHeight(RHYTHM)
        self.progress.setAccessibleName("How much is measured")
        self.place_label, self.title = QLabel(), Words()
        self.help_label, self.note = _wrapped(SMALL_POINTS + 0.5), _wrapped(SMALL_POINTS)
        self.message = _wrapped(SMALL_POINTS + 0.5)
        self.title.setFont(text_font(TITLE_POINTS, bold=True))
        self.place_label.setFont(text_font(SMALL_POINTS))
        self.on_button: QuietButton = StrongButton("Go on", "Take what stands there and go on (Enter)")
        self.back_button = PlainButton("Back", "To the measurement before (Page Up)")
        self.skip_button = PlainButton("Skip", "Leave this one as it was (Page Down)")
        self.group_button = quiet_button("Skip", "Leave the rest of this group as it was (Ctrl+Page Down)")
        self.leave_button = quiet_button("Leave", "To the sheet; what was entered stays (Escape)")
        self.design_button: QuietButton = StrongButton(
            "Make a first design", "Size a surround from the measurements alone; one step to undo"
        )
        self._wire()
        self._lay_out()
        self.entry.confirmed.connect(self.gone_on)

    def _wire(self) -> None:
        for button, signal in (
            (self.on_button, self.gone_on),
            (self.back_button, self.gone_back),
            (self.skip_button, self.skipped),
            (self.group_button, self.group_skipped),
            (self.leave_button, self.left),
            (self.design_button, self.design_asked),
        ):
            button.clicked.connect(lambda _on=False, signal=signal: signal.emit())

    def _lay_out(self) -> None:
        asking = QWidget()
        asking.setFixedWidth(ASKING_WIDTH)
        column = QVBoxLayout(asking)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(RHYTHM)
        for widget in (self.title, self.help_label, self.entry, self.message, self.note):
            column.addWidget(widget)
        column.addStretch(1)
        column.addLayout(_in_a_row(self.back_button, self.skip_button, self.on_button, self.design_button))
        column.addLayout(_in_a_row(self.group_button, None, self.leave_button))
        head = _in_a_row(self.place_label, None, self.progress)
        middle = QHBoxLayout()
        middle.setSpacing(3 * RHYTHM)
        middle.addWidget(self.picture, 1)
        middle.addWidget(asking)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(3 * RHYTHM, 2 * RHYTHM, 3 * RHYTHM, 2 * RHYTHM)
        whole.setSpacing(RHYTHM)
        whole.addLayout(head)
        whole.addLayout(middle, 1)
        self.progress.setMinimumWidth(120)

    def ask(self, row: Parameter, job: Job, at: int, count: int) -> None:
        """Ask for `row`, which is the one at place `at`, from 0, of `count`."""
        self._show_asking(True)
        self.place_label.setText(f"{row.group}, {at + 1} of {count}")
        self.progress.setRange(0, count)
        self.progress.setValue(at)
        self.title.setText(capitalise(row.name))
        self.help_label.setText(row.help)
        self.entry.show_row(row, job)
        self.note.setText(_hint(row) if self.entry.inner is self.entry.edit else PICK_HINT)
        self.back_button.setEnabled(at > 0)
        self.group_button.setText(f"Skip all of {row.group.lower()}")
        self.group_button.updateGeometry()
        self.refuse("")

    def refuse(self, message: str) -> None:
        """Keep what was typed and say what is wanted; nothing where `message` is empty."""
        self.message.setText(message)
        self.message.setVisible(bool(message))
        palette = self.message.palette()
        palette.setColor(QPalette.ColorRole.WindowText, QColor(colours().wrong))
        self.message.setPalette(palette)
        self.entry.show_wrong(bool(message))
        self.entry.inner.setAccessibleDescription(f"{message} {self.help_label.text()}".strip())

    def show_end(self, doubts: tuple[str, ...]) -> None:
        """All was asked; `doubts` are measurements that cannot all be true, a sentence each."""
        self._show_asking(False)
        self.place_label.setText("Measured")
        self.progress.setValue(self.progress.maximum())
        self.title.setText("Here is the fireplace")
        self.help_label.setText("\n\n".join(doubts) or "Nothing that was measured disagrees.")
        self.note.setText(
            "A first design is sized from these measurements alone: it keeps every clearance that is known, "
            "and stock widths where it can. All of it can be changed afterwards."
        )
        self.message.hide()
        self.design_button.setFocus(Qt.FocusReason.OtherFocusReason)

    def _show_asking(self, asking: bool) -> None:
        for widget in (self.entry, self.skip_button, self.on_button, self.group_button):
            widget.setVisible(asking)
        self.design_button.setVisible(not asking)
        self.back_button.setEnabled(True)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Page keys go forth and back, with Ctrl over a whole group; Escape leaves."""
        whole = bool(event.modifiers() & Qt.KeyboardModifier.ControlModifier)
        match event.key():
            case Qt.Key.Key_PageUp:
                self.gone_back.emit()
            case Qt.Key.Key_PageDown:
                (self.group_skipped if whole else self.skipped).emit()
            case Qt.Key.Key_Escape:
                self.left.emit()
            case _:
                super().keyPressEvent(event)


def _hint(row: Parameter) -> str:
    return HINT if row.kind in (Kind.LENGTH, Kind.READINGS) else PLAIN_HINT


def _wrapped(points: float) -> Words:
    label = Words()
    label.setFont(text_font(points))
    return label


def _in_a_row(*widgets: QWidget | None) -> QBoxLayout:
    """Widgets beside each other; None is room between."""
    row = QHBoxLayout()
    row.setSpacing(RHYTHM)
    for widget in widgets:
        if widget is None:
            row.addStretch(1)
        else:
            row.addWidget(widget)
    return row
