"""The plan beside the drawing: when it is asked for, out of which stock list, and where its answer goes."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QWidget

from app.bought_beside import BoughtBeside
from app.buying_table import BuyingTable
from app.menus import Command
from app.notice import Notice
from app.pause import build_pause
from app.plan_view import PlanView
from app.planning import Planning
from app.session import Session
from app.settings import Settings
from app.stock_files import StockFiles

if TYPE_CHECKING:
    from app.stock_window import StockWindow
    from model.cutting.plan import CuttingPlan
    from model.cutting.purchase import Purchase
    from model.cutting.stock_list import StockList

ENOUGH = "Stop looking for a cheaper plan and take the best so far"
LOOKING = "A cheaper plan is still looked for."
SETTLE = 300
"""Milliseconds after the last change of the stock list until plans are made out of it."""


class CuttingBeside(QObject):
    """Plans the session's job while its plan is looked at. `planned` says that another one is shown,
    `list_settled` that the stock list was changed and is left alone for a while.
    """

    planned = Signal()
    list_settled = Signal()

    def __init__(
        self,
        window: QWidget,
        session: Session,
        settings: Settings,
        notice: Notice,
        view: PlanView,
        table: BuyingTable,
    ) -> None:
        super().__init__()
        self._window, self._session, self._notice = window, session, notice
        self._view, self._table = view, table
        self.planning = Planning()
        self.plan: CuttingPlan | None = None
        self.stock = StockFiles(window, settings, notice)
        self.stock_window: StockWindow | None = None
        """Once it was opened."""
        self._settling = build_pause(self, SETTLE, self.list_settled)
        self.stock.session.changed.connect(self._follow_list)
        session.changed.connect(self._follow_style)
        table.stock_asked.connect(self.show_stock)
        self.planning.told.connect(self._tell)
        self.planning.planned.connect(self._show)
        self.planning.failed.connect(self._fail)
        self.enough = Command(self, self.planning.stop)
        self.enough.setShortcut(QKeySequence("Ctrl+Shift+E"))
        view.stop_button.follow(self.enough)
        self.bought = BoughtBeside(session, notice, view, lambda: self.current)
        self._offer()

    @property
    def current(self) -> CuttingPlan | None:
        """The plan that is shown; None while it is not one of the job and the list as they are now."""
        return None if self._view.sheet.is_outdated else self.plan

    def ask(self) -> None:
        """Plan the job as it is now, if it is not planned already; what is shown is out of date till then."""
        stock_list = self.find_list()
        if self.planning.ask(self._session.name, self._session.job, stock_list):
            self._wait("Planning…")

    def mark_outdated(self) -> None:
        """An edit was made; what is shown is no plan of the job as it is, unless only a note was made."""
        job, stock_list = self._session.job, self.stock.session.stock_list
        if (plan := self.current) is not None and self.planning.is_asked(job, stock_list):
            self._show(plan)
        elif self.plan is not None:
            self._wait("Out of date: the job or the stock list was changed since.")

    def wait(self) -> None:
        """End planning before the window goes, and put the stock list's away."""
        self._settling.stop()
        self.planning.end()
        if self.stock_window is not None:
            self.stock_window.close()

    # --- the stock list

    @property
    def list_name(self) -> str:
        """What the list in use is called: a file, or one that is shipped."""
        return self.stock.list_name

    def use_list(self, name: str) -> None:
        """Plan out of the shipped list or the file called `name`; says why where it cannot be read."""
        if self.stock.use(name):
            self.ask()

    def find_list(self) -> StockList:
        """The list in use, as it is edited now."""
        return self.stock.find_list()

    def show_stock(self) -> None:
        """Open the stock list in its own window."""
        from app.dialog_parts import bring_forward
        from app.stock_window import StockWindow

        self.stock.find_list()
        if self.stock_window is None:
            self.stock_window = StockWindow(self._window, self.stock)
        shown = self.stock_window
        shown.show_style(self._session.job.about.length_style)
        bring_forward(shown)

    def may_leave(self) -> bool:
        """Whether the stock list may be put aside; what is being typed into it is entered first."""
        if self.stock_window is not None:
            self.stock_window.commit()
        return self.stock.may_leave()

    def _follow_list(self) -> None:
        """The list was changed: what is shown is outdated at once, and planned anew once typing rests."""
        self.mark_outdated()
        self._settling.start()

    def _follow_style(self) -> None:
        if self.stock_window is not None:
            self.stock_window.show_style(self._session.job.about.length_style)

    # --- what comes back

    def _wait(self, words: str) -> None:
        self._view.show_waiting(words)
        self._table.show_waiting(words)
        self._offer()

    def _offer(self) -> None:
        """Bring the commands up to what is shown and what is still looked for."""
        reason = "" if self.planning.is_busy else "nothing is being planned"
        self.enough.offer("Enough", ENOUGH, reason)
        self.bought.offer()

    def _tell(self, _done: float, words: str) -> None:
        self._wait(f"Planning: {words}…")

    def _show(self, plan: CuttingPlan) -> None:
        from model.cutting.buying import list_buying
        from model.cutting.frozen import list_since_printed, show_bought
        from render.buying_sheet import list_words

        self.plan = plan
        style, buying = self._session.job.about.length_style, list_buying(plan)
        changes = list_since_printed(self._session.job.purchase, buying)
        words = "\n".join(list_words(plan, buying, style, changes, brief=True))
        bought = show_bought(self._session.job.purchase, plan.order)
        if self._session.job.purchase.boards:
            words = f"{_say_bought(self._session.job.purchase)}\n{words}".strip()
        if self.planning.is_busy:
            words = f"{words}\n{LOOKING}".strip()
        cut = self._session.job.purchase.cut
        self._view.show_plan(plan, style, words, bought, cut, self.planning.is_busy)
        self._table.show_buying(buying, style, words, changes)
        self._offer()
        self.planned.emit()

    def _fail(self, trouble: str) -> None:
        self._view.show_trouble(f"No plan: {trouble}")
        self._table.show_waiting(f"No plan: {trouble}")
        self._offer()


def _say_bought(purchase: Purchase) -> str:
    """How many boards and sheets are bought, and how many of them are cut."""
    count, cut = len(purchase.boards), sum(board.is_cut for board in purchase.boards)
    what = "1 board or sheet is" if count == 1 else f"{count} boards and sheets are"
    return f"{what} bought, {cut} of them cut."
