"""The state before the last step, or before what is moved, shown while a key or a button is held."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QAbstractButton

from app.canvas import Canvas
from app.drafting import Drafting
from app.session import Session

KEY = Qt.Key.Key_Space
SHOWN, NOTHING = "As it was before", "Nothing was changed yet"
_TAKEN = (QEvent.Type.MouseMove, QEvent.Type.MouseButtonPress, QEvent.Type.Wheel)
"""What the sheet does not see while it shows another state."""


class Before(QObject):
    """Watches the key on the canvas, and the button."""

    def __init__(self, session: Session, canvas: Canvas, drafting: Drafting, button: QAbstractButton) -> None:
        super().__init__(canvas)
        self._session, self._canvas, self._drafting = session, canvas, drafting
        self._held: Mapping[str, float] | None = None
        self.is_shown = False
        button.pressed.connect(self.show)
        button.released.connect(self.end)
        session.changed.connect(self.end)
        canvas.installEventFilter(self)

    def show(self) -> None:
        """Put the state before on the sheet, at the same scale and place."""
        self.end()
        job, self.is_shown = self._session.before, True
        self._canvas.overlay.banner = NOTHING if job is None else SHOWN
        self._held = self._canvas.held
        self._canvas.hold_still([view.name for view in self._canvas.views])
        self._drafting.show_other(job or self._session.job)

    def end(self) -> None:
        """Show the job as it is again."""
        if self.is_shown:
            self.is_shown = False
            self._canvas.overlay.banner = ""
            self._canvas.let_go(self._held)
            self._drafting.show_again()

    def eventFilter(self, _watched: QObject, event: QEvent) -> bool:
        """The key held down shows it, letting it up or going elsewhere ends it."""
        match event.type():
            case QEvent.Type.KeyPress | QEvent.Type.KeyRelease if isinstance(event, QKeyEvent):
                return self._key(event)
            case QEvent.Type.FocusOut if isinstance(event, QFocusEvent):
                self.end()
            case QEvent.Type.MouseButtonRelease:
                self.end()
            case kind if kind in _TAKEN:
                return self.is_shown
        return False

    def _key(self, event: QKeyEvent) -> bool:
        if event.key() != KEY or event.modifiers() & ~Qt.KeyboardModifier.ShiftModifier:
            return self.is_shown and event.type() is QEvent.Type.KeyPress
        if not event.isAutoRepeat():
            if event.type() is QEvent.Type.KeyPress:
                self.show()
            else:
                self.end()
        return True
