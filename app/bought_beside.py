"""What is bought and what is cut, noted from the window: three commands, and why one of them cannot be given.

How it is kept is model.cutting's business; the plan itself is app.cutting_beside's.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtGui import QKeySequence

from app.menus import Command
from app.notice import Notice
from app.plan_view import PlanView
from app.session import Session

if TYPE_CHECKING:
    from model.cutting.plan import CuttingPlan
    from model.cutting.purchase import BoughtBoard, Purchase

BOUGHT, NOT_BOUGHT, CUT, NOT_CUT = "Bought", "Not bought", "Cut", "Not cut"
KEPT = "Keep this plan: its boards are bought, and edits are planned out of them first"
RELEASED = "Let go of the plan that was kept; boards that are cut already stay on hand"
SAWN = "The board of the piece in focus is sawn"
NOT_SAWN = "The board of the piece in focus is not sawn after all"
NOTHING_BOUGHT = "nothing is bought"
KEYS = {BOUGHT: "Ctrl+Shift+B", NOT_BOUGHT: "Ctrl+Shift+N", CUT: "Ctrl+Shift+X"}


class BoughtBeside(QObject):
    """The session's purchase, and the commands that change it. `find_plan` gives the plan shown, if it is one
    of the job as it is.
    """

    def __init__(
        self, session: Session, notice: Notice, view: PlanView, find_plan: Callable[[], CuttingPlan | None]
    ) -> None:
        super().__init__()
        self._session, self._notice, self._view, self._find_plan = session, notice, view, find_plan
        self.keep = Command(self, self.keep_plan)
        self.release = Command(self, self.release_plan)
        self.cut = Command(self, self.mark_cut)
        for command, words in ((self.keep, BOUGHT), (self.release, NOT_BOUGHT), (self.cut, CUT)):
            command.setShortcut(QKeySequence(KEYS[words]))
        for command, button in (
            (self.keep, view.bought_button),
            (self.release, view.release_button),
            (self.cut, view.cut_button),
        ):
            button.follow(command)
        view.sheet.picked_anew.connect(self.offer)
        session.changed.connect(self.offer)
        self.offer()

    @property
    def _purchase(self) -> Purchase:
        return self._session.job.purchase

    def offer(self) -> None:
        """Bring what the commands say up to the job, the plan and the piece in focus."""
        self.keep.offer(BOUGHT, KEPT, self._why_not_keep())
        self.release.offer(NOT_BOUGHT, RELEASED, self._why_not_release())
        board = self._board()
        undone = board is not None and board.is_cut
        words, explained = (NOT_CUT, NOT_SAWN) if undone else (CUT, SAWN)
        self.cut.offer(words, explained, "" if board else self._why_not_cut())

    # --- why not

    def _why_not_keep(self) -> str:
        plan = self._find_plan()
        if plan is None:
            return "the plan is out of date" if self._view.has_plan else "no plan is shown yet"
        if plan.sawn:
            return ""
        return "all of it is bought" if self._purchase.boards else "there is nothing to buy"

    def _why_not_release(self) -> str:
        if not self._purchase.boards:
            return NOTHING_BOUGHT
        return "" if any(not board.is_cut for board in self._purchase.boards) else "all of it is cut"

    def _why_not_cut(self) -> str:
        if not self._purchase.boards:
            return NOTHING_BOUGHT
        if not (mark := self._view.sheet.mark):
            return "pick a piece of a bought board first"
        numbers = [str(board.number) for board in self._boards_of(mark)]
        if not numbers:
            return f"{mark} is on no bought board"
        return f"{mark} is on boards {', '.join(numbers)}: pick it on the plan"

    # --- which board

    def _boards_of(self, mark: str) -> list[BoughtBoard]:
        return [board for board in self._purchase.boards if any(p.mark == mark for p in board.pieces)]

    def _board(self) -> BoughtBoard | None:
        """The bought board that was picked, or the only one that gives the piece in focus."""
        sheet = self._view.sheet
        found = self._boards_of(sheet.mark)
        picked = [board for board in found if board.number == sheet.number]
        return picked[0] if picked else found[0] if len(found) == 1 and not sheet.number else None

    # --- the commands

    def keep_plan(self) -> None:
        """The boards of the plan are bought; from here on edits are planned out of them first."""
        from model.cutting.frozen import freeze_plan, note_printed

        if (plan := self._find_plan()) is not None and plan.sawn:
            self._change("what was bought", note_printed(freeze_plan(self._purchase, plan)))

    def release_plan(self) -> None:
        """Boards that are not cut were not bought after all."""
        cut = tuple(board for board in self._purchase.boards if board.is_cut)
        self._change("what was bought", replace(self._purchase, boards=cut))

    def mark_cut(self) -> None:
        """The bought board that the piece in focus comes out of is sawn, or not after all."""
        from model.cutting.frozen import mark_cut

        if (board := self._board()) is None:
            return
        self._change("what was cut", mark_cut(self._purchase, (board.number,), not board.is_cut))
        state = "not cut" if board.is_cut else "cut"
        self._notice.say(f"Board {board.number} is marked as {state}.")

    def _change(self, what: str, purchase: Purchase) -> None:
        self._view.leave_buttons()
        self._session.change(what, replace(self._session.job, purchase=purchase))
