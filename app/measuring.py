"""The measuring mode: asks for one measurement after another and puts each into the job as one step.

What is asked, and in which order, stands in model.measuring_walk.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from app.fields.row import say_wanted
from app.measuring_page import MeasuringPage
from model.check.finding import Status
from model.check.plain import SURVEY
from model.errors import Refused
from model.measuring_walk import list_walk
from model.parameters import find_parameter

if TYPE_CHECKING:
    from app.drafting import Drafting
    from app.session import Session


class Measuring(QObject):
    """`shown` says when the page is to come up or to go; `design_asked` when a first design is wished."""

    shown = Signal(bool)
    design_asked = Signal()

    def __init__(self, session: Session, drafting: Drafting) -> None:
        super().__init__()
        self._session, self._drafting = session, drafting
        self.page = MeasuringPage()
        self.is_on = False
        self.path = ""
        page = self.page
        page.gone_on.connect(self.go_on)
        page.gone_back.connect(self.go_back)
        page.skipped.connect(self.skip)
        page.group_skipped.connect(self.skip_group)
        page.left.connect(self.leave)
        page.design_asked.connect(self._make_design)
        session.replaced.connect(self.leave)
        drafting.drawn.connect(self._follow)
        drafting.checked.connect(self._tell_doubts)

    def begin(self) -> None:
        """Ask for the first measurement, or go on where it was left off."""
        if not self.is_on:
            self.is_on = True
            self.shown.emit(True)
        walk = list_walk(self._session.job)
        self._ask(self.path if self.path in walk else walk[0])

    def leave(self) -> None:
        """Back to the sheet. What was entered stays; what was only typed is given up."""
        if self.is_on:
            self.is_on = False
            self.shown.emit(False)

    def commit(self) -> bool:
        """Enter what is being typed; whether nothing refused stands there."""
        if not (self.is_on and self.path and self.page.entry.is_touched):
            return True
        try:
            self._session.set_text(self.path, self.page.entry.text)
        except Refused as refusal:
            self.page.refuse(say_wanted(refusal))
            return False
        return True

    def go_on(self) -> None:
        """Enter what stands there and ask for the next; a refused entry stays."""
        if self.commit():
            self.skip()
        else:
            self.page.entry.take_cursor()

    def skip(self) -> None:
        """Ask for the next, and after the last show the fireplace."""
        if not self.path:
            return
        walk = list_walk(self._session.job)
        later = walk[walk.index(self.path) + 1 :] if self.path in walk else walk
        self._ask(later[0]) if later else self._end()

    def skip_group(self) -> None:
        """Ask for the first of the next group."""
        if not self.path:
            return
        walk, group = list_walk(self._session.job), find_parameter(self.path).group
        later = [path for path in walk[walk.index(self.path) + 1 :] if find_parameter(path).group != group]
        self._ask(later[0]) if later else self._end()

    def go_back(self) -> None:
        """Ask again for the one before; from the end for the last."""
        walk = list_walk(self._session.job)
        at = walk.index(self.path) if self.path in walk else len(walk)
        if at > 0:
            self._ask(walk[at - 1])

    def _ask(self, path: str) -> None:
        walk = list_walk(self._session.job)
        self.path = path
        self._session.begin_gesture()
        self.page.ask(find_parameter(path), self._session.job, walk.index(path), len(walk))
        self._draw()
        self.page.entry.take_cursor()

    def _end(self) -> None:
        self.path = ""
        self.page.show_end(())
        self._tell_doubts()
        self._draw()

    def _draw(self) -> None:
        """The picture of what is asked; at the end, and of what is no measure, the whole fireplace."""
        surround = self._drafting.surround
        if surround is None:
            return
        from render.field_picture import draw_field_picture
        from render.tape_picture import draw_measured

        picture = draw_field_picture(surround, self.path) if self.path else None
        words = find_parameter(self.path).help if picture else "The fireplace as it was measured"
        self.page.picture.show_picture(picture or draw_measured(surround), words)

    def _follow(self) -> None:
        """An undone step, or what was typed in the list before: show it."""
        if not self.is_on:
            return
        if self.path and not self.page.entry.is_touched:
            self.page.entry.show_row(find_parameter(self.path), self._session.job)
        self._draw()

    def _tell_doubts(self) -> None:
        if self.is_on and not self.path:
            doubts = (
                f.message
                for f in self._drafting.findings
                if f.check == SURVEY and f.status is not Status.PASS
            )
            self.page.show_end(tuple(doubts))

    def _make_design(self) -> None:
        self.leave()
        self.design_asked.emit()
