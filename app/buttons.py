"""The buttons of the window: quiet ones, and the one strong one on a screen."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QAction, QColor, QFontMetrics, QKeyEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QPushButton

from app.theme import RHYTHM, Colours, colours

HEIGHT = 4 * RHYTHM
CORNER = 4.0


def press_by_enter(button: QPushButton, event: QKeyEvent) -> bool:
    """Press the button if Enter is what came; held down, it presses once. Whether Enter it was."""
    if event.key() not in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
        return False
    if not event.isAutoRepeat():
        button.click()
    return True


class QuietButton(QPushButton):
    """A button that keeps to the background until it is wanted; one that is down stands out like paper."""

    padding = RHYTHM

    def __init__(self, text: str, explained: str) -> None:
        super().__init__(text)
        self.setToolTip(explained)
        self.setAccessibleDescription(explained)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def follow(self, action: QAction) -> None:
        """Give the action's command, under its short words, whenever and only while it can be given."""
        self.clicked.connect(lambda _on=False: action.trigger())
        action.changed.connect(lambda: self._take_after(action))
        self._take_after(action)

    def _take_after(self, action: QAction) -> None:
        keys = action.shortcut().toString()
        self.setText(action.iconText())
        self.setAccessibleDescription(action.toolTip())
        self.setToolTip(f"{action.toolTip()} ({keys})" if keys else action.toolTip())
        self.setEnabled(action.isEnabled())
        self.updateGeometry()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter presses the button in focus as the space bar does; held down, only once."""
        if not press_by_enter(self, event):
            super().keyPressEvent(event)

    def sizeHint(self) -> QSize:
        """As wide as its words."""
        return QSize(QFontMetrics(self.font()).horizontalAdvance(self.text()) + 2 * self.padding + 2, HEIGHT)

    def minimumSizeHint(self) -> QSize:
        """Words are never cut off."""
        return self.sizeHint()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Ground, edge and words."""
        c = colours()
        ground, edge, ink = self._dress(c)
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
            box = self.rect().toRectF().adjusted(0.5, 0.5, -0.5, -0.5)
            painter.setPen(QPen(QColor(edge), 1) if edge else Qt.PenStyle.NoPen)
            painter.setBrush(QColor(ground) if ground else Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(box, CORNER, CORNER)
            if self.hasFocus():
                painter.setPen(QPen(QColor(c.lit), 2))
                painter.setBrush(Qt.BrushStyle.NoBrush)
                painter.drawRoundedRect(box.adjusted(1, 1, -1, -1), CORNER, CORNER)
            painter.setPen(QColor(ink))
            painter.drawText(self.rect(), int(Qt.AlignmentFlag.AlignCenter), self.text())

    def _dress(self, c: Colours) -> tuple[str, str, str]:
        """Colours of ground, edge and words."""
        if not self.isEnabled():
            return "", "", c.faint
        if self.isChecked() or self.isDown():
            return c.entry, c.rule, c.ink
        return (c.rule, "", c.ink) if self.underMouse() else ("", "", c.soft)


class PlainButton(QuietButton):
    """A button with an edge, for a choice among others."""

    padding = 2 * RHYTHM

    def _dress(self, c: Colours) -> tuple[str, str, str]:
        if not self.isEnabled():
            return "", c.rule, c.faint
        return (c.rule, c.faint, c.ink) if self.isDown() or self.underMouse() else (c.entry, c.faint, c.ink)


class StrongButton(QuietButton):
    """The button for what the screen is for; no more than one on a screen."""

    padding = 2 * RHYTHM

    def _dress(self, c: Colours) -> tuple[str, str, str]:
        if not self.isEnabled():
            return c.rule, "", c.faint
        return (c.ink if self.isDown() else c.strong), "", c.on_strong


def quiet_button(text: str, explained: str, checkable: bool = False) -> QuietButton:
    """A quiet button; `explained` says what it does."""
    button = QuietButton(text, explained)
    button.setCheckable(checkable)
    return button
