"""A one-line entry that leaves the window's undo alone and hands on steps. It knows no lengths."""

from __future__ import annotations

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent, QPalette, QWheelEvent
from PySide6.QtWidgets import QLineEdit

from app.fields.window_keys import leave_to_window

FINE_STEP, COARSE_STEP = 1, 8
_WHEEL_NOTCH = 120


class TapeEdit(QLineEdit):
    """Shows a text; `entered` follows Enter or leaving when the text is no longer the one shown."""

    entered = Signal(str)
    stepped = Signal(int)
    given_up = Signal()
    focused = Signal()
    left = Signal()

    def __init__(self, steps: bool) -> None:
        super().__init__()
        self._steps = steps
        self._shown = ""
        self._wheel = 0
        self._just_clicked = False
        self.setFrame(False)
        palette = QPalette()
        palette.setColor(QPalette.ColorRole.Base, Qt.GlobalColor.transparent)
        self.setPalette(palette)
        self.setAlignment(Qt.AlignmentFlag.AlignRight)
        self.returnPressed.connect(self._enter_and_select)

    @property
    def is_touched(self) -> bool:
        """Whether something was typed that has not been taken."""
        return self.text() != self._shown

    def show_text(self, text: str) -> None:
        """Show `text` as the value that holds now."""
        self._shown = text
        if self.text() == text:
            return
        self.setText(text)
        if self.hasFocus():
            self.selectAll()
        else:
            self.setCursorPosition(0)

    def commit(self) -> None:
        """Send off the text if it was changed; typed back to what holds, it is given up."""
        if self.is_touched:
            self.entered.emit(self.text())
        else:
            self.given_up.emit()

    def _enter_and_select(self) -> None:
        self.commit()
        self.selectAll()

    def event(self, event: QEvent) -> bool:
        """Undo and redo belong to the window unless something is being typed here."""
        if not self.is_touched and leave_to_window(event):
            return False
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows step, with Shift eight steps at once; Escape takes back what was typed."""
        ways = {Qt.Key.Key_Up: 1, Qt.Key.Key_Down: -1}
        if self._steps and event.key() in ways:
            coarse = event.modifiers() & Qt.KeyboardModifier.ShiftModifier
            self._step(ways[Qt.Key(event.key())] * (COARSE_STEP if coarse else FINE_STEP))
        elif event.key() == Qt.Key.Key_Escape and self.is_touched:
            self.setText(self._shown)
            self.selectAll()
            self.given_up.emit()
        else:
            super().keyPressEvent(event)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """The wheel steps only where the cursor already is; elsewhere it moves the list."""
        if not (self._steps and self.hasFocus()):
            event.ignore()
            return
        self._wheel += event.angleDelta().y() or event.angleDelta().x()
        notches = int(self._wheel / _WHEEL_NOTCH)
        self._wheel -= notches * _WHEEL_NOTCH
        coarse = event.modifiers() & Qt.KeyboardModifier.ShiftModifier
        if notches:
            self._step(notches * (COARSE_STEP if coarse else FINE_STEP))
        event.accept()

    def _step(self, count: int) -> None:
        self.commit()
        if not self.is_touched:
            self.stepped.emit(count)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The whole text is ready to be typed over."""
        super().focusInEvent(event)
        self.focused.emit()
        if event.reason() == Qt.FocusReason.MouseFocusReason:
            self._just_clicked = True
        elif event.reason() == Qt.FocusReason.ActiveWindowFocusReason and self.is_touched:
            return  # what is half typed is gone on with
        elif event.reason() != Qt.FocusReason.PopupFocusReason:
            self.selectAll()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Remember whether this click brings the cursor, also into a window that was behind another."""
        self._just_clicked = self._just_clicked or not self.hasFocus()
        super().mousePressEvent(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """The click that brings the cursor takes the whole text, unless it was drawn over a part of it."""
        super().mouseReleaseEvent(event)
        if self._just_clicked and not self.hasSelectedText():
            self.selectAll()
        self._just_clicked = False

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Leaving enters what was typed; another window or a menu in front is not leaving."""
        super().focusOutEvent(event)
        if event.reason() in (Qt.FocusReason.PopupFocusReason, Qt.FocusReason.ActiveWindowFocusReason):
            return
        self._wheel = 0
        self.commit()
        self.setCursorPosition(0)
        self.left.emit()
