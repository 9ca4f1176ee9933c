"""Keeps the sheet and the lists in step with the job: front and side at once, the rest when there is time.

While a hand moves an edge, the view it is in goes before all else.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QElapsedTimer, QObject, Signal

from app.between_moves import BetweenMoves
from app.canvas import Canvas
from app.lettering import letter_sheet
from app.pause import build_pause
from app.session import Session
from app.shown import ShownView, put_in, set_out
from app.working import (
    Wish,
    Worked,
    check_plan,
    draw_plan,
    find_in_view,
    list_plan_cuts,
    list_plan_guides,
    mark_plan,
    outline_in_views,
    point_in_views,
    work_out,
)
from model.build.lines import Layout
from model.job import Job
from render.drawing import Point, Ring

if TYPE_CHECKING:
    from app.ahead import Ahead
    from model.check.finding import Finding, Guide
    from model.surround import Surround
    from model.takeoff.cut_list import Cut

UNSEEN_PAUSE = 40
"""Milliseconds after which findings follow when the sheet is not painted, as in a hidden window."""
TRYING_BEAT = 100
"""Milliseconds from one list of findings to the next while an edge is dragged: they must not hold it up. When
it rests they follow as after any edit."""
CHECKED_LATEST, TOLD_LATEST, LAID_LATEST = 150, 50, 100
"""Milliseconds after which, even if that holds up the next, a move of a hand is checked, what was found is
listed, and values are shown that only follow from others."""
LIST_PAINTED = 0.002
"""Seconds that painting the list of findings takes, about."""
BEHIND_LATEST = 50
"""Milliseconds that the other views may be behind the one that a hand moves an edge in."""
BEHIND_FRAMES = 33
"""The same after which they are drawn between two moves even if that holds up the next: two frames, so that
they are on the sheet with the third."""
IDLE_PAUSE, TRYING_PAUSE = 60, 400
"""Milliseconds without an edit after which the slower lists follow, and without a move of what is dragged."""


class Drafting(QObject):
    """Works out each new state of the session and puts it on the canvas.

    While a hand moves an edge, only the view it is in is drawn with each move; the others follow, each whole,
    between two moves. `whole` is the surround that they show: the same as `surround` once the hand rests.

    `drawn` follows when it is on the sheet, `laid_out` when there is time for what only follows from its
    lines, `checked` when it has been painted and there is time for the list of findings, `spared` when it has
    been painted and they are not due, `listed` when guides and cut list are there.
    """

    drawn = Signal()
    laid_out = Signal()
    checked = Signal()
    spared = Signal()
    listed = Signal()

    def __init__(self, session: Session, canvas: Canvas, wish: Wish) -> None:
        super().__init__()
        self._session = session
        self._canvas = canvas
        self._started = False
        self._wish = wish
        self._ahead: Ahead | None = None
        self._faults: tuple[Finding, ...] | None = None
        self.surround: Surround | None = None
        self.whole: Surround | None = None
        self.between = BetweenMoves()
        self._lead = ""
        self._behind = self.between.add(self._catch_up, BEHIND_FRAMES / 1000)
        self._unlaid = self.between.add(self.laid_out.emit, LAID_LATEST / 1000)
        self._unchecked = self.between.add(self._check, CHECKED_LATEST / 1000, TRYING_BEAT / 1000)
        self._untold = self.between.add(self._tell_found, TOLD_LATEST / 1000, leads_to=LIST_PAINTED)
        self.layout: Layout | None = None
        self.findings: tuple[Finding, ...] = ()
        self.guides: tuple[Guide, ...] = ()
        self.cuts: tuple[Cut, ...] = ()
        self._idle = build_pause(self, IDLE_PAUSE, self.list_rest)
        self._lettering = build_pause(self, 0, self._letter_again)
        self._marks_boards = False
        self._marking = build_pause(self, IDLE_PAUSE, self.mark_boards)
        self._telling = build_pause(self, UNSEEN_PAUSE, self._tell_rest)
        self._catching = build_pause(self, BEHIND_LATEST, self._catch_up)
        self._told = QElapsedTimer()
        self._told.start()
        canvas.painted.connect(self._tell_when_painted)
        session.changed.connect(self._work_out)
        session.replaced.connect(canvas.forget_fit)
        canvas.fitted.connect(self._lettering.start)

    @property
    def ratio(self) -> float:
        """Model inches to an inch of paper that the sheet is lettered for."""
        return self._wish.ratio

    @property
    def views(self) -> tuple[str, ...]:
        """Names of the views on the sheet."""
        return self._wish.views

    def start(self, ahead: Ahead | None = None) -> None:
        """Draw for the first time; until then edits are kept but not drawn.

        `ahead` draws for as long as this process has not loaded what drawing needs; see `take_over`.
        """
        self._ahead = ahead
        self._started = True
        self._work_out()
        self._letter_again()

    def take_over(self) -> None:
        """From here on draw in this process."""
        if self._ahead is not None:
            self.let_go()
            self._work_out()

    def let_go(self) -> None:
        """End the second process, if there is one."""
        if self._ahead is not None:
            self._ahead.end()
            self._ahead = None

    def wind_up(self) -> None:
        """Do nothing of what was put off, and end the second process."""
        for timer in (self._idle, self._lettering, self._marking, self._telling, self._catching):
            timer.stop()
        self.let_go()

    def choose_views(self, views: tuple[str, ...]) -> None:
        """Show other views, whole."""
        self._wish = Wish(views, self._wish.ratio, self._wish.clearance)
        self._canvas.forget_fit()
        self._draw()

    def show_clearance(self, on: bool) -> None:
        """Draw the keep-out or leave it away."""
        self._wish = Wish(self._wish.views, self._wish.ratio, on)
        self._draw()

    def show_marks(self, on: bool) -> None:
        """Mark the boards as in the cut list, or leave the marks away."""
        self._marks_boards = on
        if on and self.surround is not None:
            self.mark_boards()
        else:
            self._draw()

    def mark_boards(self) -> None:
        """Put the marks of the boards onto the sheet as it is. The writing keeps its size."""
        self._marking.stop()
        if not self._marks_boards or self.surround is None:
            return
        bare = draw_plan(self.surround, self._wish, self._faults or ())
        self._show_whole(set_out(mark_plan(self.surround, bare, self._wish.ratio)))
        self._lettering.stop()

    def _work_out(self) -> None:
        """Draw at once. While anything is marked on the sheet, what the marks tell is checked first."""
        if not self._started:
            return
        marked = self._ahead is not None or bool(self._faults)
        is_led = self._is_led
        worked = self._ask(marked, replace(self._wish, views=(self._lead,)) if is_led else self._wish)
        self.surround, self.layout, self._faults = worked.plan, worked.layout, worked.faults
        if is_led:
            self._canvas.show_views(put_in(worked.drawings, self._canvas.views))
            self._fall_behind()
        else:
            self._show_whole(set_out(worked.drawings, self._canvas.views))
        self.drawn.emit()
        if is_led:
            self._unlaid.ask()
        else:
            self._lay_out()
        if worked.plan is not None:
            self._telling.start()
            self._unchecked.ask()
            self._idle.start(self._pause)
            self._mark_later()

    def _lay_out(self) -> None:
        self._unlaid.drop()
        self.laid_out.emit()

    def lead(self, view: str) -> None:
        """From here on draw this view at once when something is tried, the others after it; "" for all."""
        self._lead = view

    def note_move(self) -> None:
        """A hand has moved: what waits for it to rest goes on waiting."""
        self.between.note_move()
        if self._telling.isActive():
            self._telling.start()

    @property
    def _is_led(self) -> bool:
        """Whether one view goes before the others."""
        shown = tuple(view.name for view in self._canvas.views)
        led = self._ahead is None and self._session.is_trying and self._lead in shown
        return led and shown == self._wish.views and not self._canvas.shows_another

    def _fall_behind(self) -> None:
        """The other views are to follow."""
        if len(self._wish.views) == 1:
            self.whole = self.surround
            return
        self._behind.ask()
        if not self._catching.isActive():
            self._catching.start()

    def _catch_up(self) -> None:
        """Draw the views that are behind."""
        self._behind.drop()
        self._catching.stop()
        if self.surround is None or self.whole is self.surround or self._canvas.shows_another:
            return
        others = tuple(view for view in self._wish.views if view != self._lead)
        drawn = draw_plan(self.surround, replace(self._wish, views=others), self._faults or ())
        led = [(v.name, v.drawing) for v in self._canvas.views if v.name == self._lead]
        new = dict((*led, *drawn))
        drawings = [(name, new[name]) for name in self._wish.views]
        self._canvas.lay_ready(set_out(drawings, self._canvas.views))
        self.whole = self.surround

    def _show_whole(self, views: list[ShownView]) -> None:
        """Show all views of the job as it is now."""
        self._behind.drop()
        self._catching.stop()
        self._canvas.show_views(views)
        self.whole = self.surround

    def _tell_when_painted(self) -> None:
        if self._lead:
            self.between.use()
            return
        hurried = self._session.is_trying and not self._told.hasExpired(TRYING_BEAT)
        if hurried or not self._telling.isActive():
            self.spared.emit()
        else:
            self._telling.stop()
            self._tell_rest()

    def _tell_rest(self) -> None:
        """All that waits of what is drawn; no view is behind what is told of it."""
        self._catch_up()
        if self._unlaid.is_asked:
            self._lay_out()
        if self._unchecked.is_asked:
            self._check()
        if self._untold.is_asked:
            self._tell_found()

    def _check(self) -> None:
        """Find what is to be told. What it marks is drawn."""
        self._unchecked.drop()
        self._untold.ask()
        if self.surround is not None:
            self.findings, faults = check_plan(self.surround)
            if self._faults is None:
                self._faults = faults
                if faults:
                    self._draw()

    def _tell_found(self) -> None:
        """No view that the findings point into is behind."""
        self._untold.drop()
        if self._canvas.overlay.points_out:
            self._catch_up()
        self._told.start()
        self.checked.emit()

    def _ask(self, marked: bool, wish: Wish) -> Worked:
        if self._ahead is not None:
            worked = self._ahead.work_out(self._session.job, wish)
            if worked is not None:
                return worked
            self.let_go()
        return work_out(self._session.job, wish, marked)

    def _draw(self) -> None:
        """Draw the same job as it is now wished."""
        if self.surround is None:
            self._work_out()
        else:
            self._show_whole(set_out(draw_plan(self.surround, self._wish, self._faults or ())))
            self._mark_later()

    def show_other(self, job: Job) -> None:
        """Draw another state of the job in place of the one that is edited, until `show_again`."""
        self._marking.stop()
        self._catching.stop()
        worked = work_out(job, self._wish)
        self._canvas.show_views(set_out(worked.drawings))

    def show_again(self) -> None:
        """Draw the job that is edited again."""
        self._draw()

    def _mark_later(self) -> None:
        """Marks take several times as long as the drawing: they follow when no edit does."""
        if self._marks_boards:
            self._marking.start(self._pause)

    @property
    def _pause(self) -> int:
        """Milliseconds until the slower things follow."""
        return TRYING_PAUSE if self._session.is_trying else IDLE_PAUSE

    def _letter_again(self) -> None:
        """Draw with writing of the right size for the scale at which the sheet now fits."""
        letter_sheet(self._canvas, self._wish.ratio, self._draw_for)
        self._lettering.stop()

    def _draw_for(self, ratio: float) -> None:
        self._wish = replace(self._wish, ratio=ratio)
        self._draw()

    def place_finding(self, finding: Finding) -> tuple[tuple[str, Point], ...]:
        """Where a finding is in each view that is shown; nothing when it has no one place."""
        return point_in_views(finding.at, self._wish.views) if finding.at is not None else ()

    def outline_boards(self, marks: frozenset[str]) -> tuple[tuple[str, Ring], ...]:
        """Outlines of boards in each view that is shown."""
        return outline_in_views(self.surround, marks, self._wish.views) if self.surround and marks else ()

    def find_board(self, view: str, point: Point) -> str:
        """The mark of the board seen at a point of a view, "" for none."""
        return find_in_view(self.surround, view, point) if self.surround else ""

    def list_rest(self) -> None:
        """Work out guides and cut list for the job as it is now."""
        self._idle.stop()
        if self.surround is None:
            return
        self.guides = list_plan_guides(self.surround)
        self.cuts = list_plan_cuts(self.surround)
        self.listed.emit()
