"""Keeps the picture of the field in focus in step with the job, when nothing more urgent is to be done."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from app.drafting import IDLE_PAUSE, Drafting
from app.pause import build_pause

if TYPE_CHECKING:
    from app.fields.measuring_list import MeasuringList
    from model.surround import Surround
    from render.field_picture import FieldPicture


class Picturing(QObject):
    """Draws after the sheet, never before it: `show` puts off, and the latest wish is what is drawn."""

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
            self._fields.help.show_picture(self.find(self._drafting.surround, self._path))

    def find(self, surround: Surround, path: str) -> FieldPicture | None:
        """The picture of one row; what several rows of one job share is drawn once."""
        from render.field_picture import draw_field_picture

        return draw_field_picture(surround, path)

    def wind_up(self) -> None:
        """Draw nothing more."""
        self._soon.stop()
