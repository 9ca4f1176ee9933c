"""Keeps the picture of the field in focus in step with the job, when nothing more urgent is to be done."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from app.drafting import IDLE_PAUSE, Drafting
from app.pause import build_pause

if TYPE_CHECKING:
    from app.fields.measuring_list import MeasuringList


class Picturing(QObject):
    """Draws after the sheet, never before it, and of several wishes the latest alone."""

    def __init__(self, drafting: Drafting, fields: MeasuringList) -> None:
        super().__init__()
        self._drafting, self._fields = drafting, fields
        self._path = ""
        self._soon = build_pause(self, 0, self.draw_now)
        fields.focused.connect(self._focus)
        drafting.drawn.connect(lambda: self._soon.start(2 * IDLE_PAUSE) if self._path else None)

    def _focus(self, path: str) -> None:
        self._path = path
        self._soon.start(0) if path else self._soon.stop()

    def draw_now(self) -> None:
        """Draw the picture of the row in focus for the job as it is on the sheet."""
        self._soon.stop()
        if self._path and self._drafting.surround is not None:
            from render.field_picture import draw_field_picture

            self._fields.help.show_picture(draw_field_picture(self._drafting.surround, self._path))

    def wind_up(self) -> None:
        """Draw nothing more."""
        self._soon.stop()
