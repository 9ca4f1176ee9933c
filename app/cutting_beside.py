"""The plan beside the drawing: when it is asked for, out of which stock list, and where its answer goes."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QFileDialog, QWidget

from app.buying_table import BuyingTable
from app.files import FileTrouble
from app.notice import Notice
from app.plan_view import PlanView
from app.planning import Planning
from app.session import Session
from app.settings import Settings
from model.errors import Refused, StockRefused

if TYPE_CHECKING:
    from model.cutting.plan import CuttingPlan
    from model.cutting.purchase import Purchase
    from model.cutting.stock_list import StockList

KEPT = "stock_list"
"""The setting that keeps which list is in use."""
FILTER = "Stock lists (*.yard *.csv)"
SAVE_FILTER = "Stock list (*.yard);;Table (*.csv)"


class CuttingBeside(QObject):
    """Plans the session's job while its plan is looked at. `planned` says that another one is shown."""

    planned = Signal()

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
        self._window, self._session, self._settings, self._notice = window, session, settings, notice
        self._view, self._table = view, table
        self.planning = Planning()
        self.plan: CuttingPlan | None = None
        self._stock_list: StockList | None = None
        self._name = str(settings.read(KEPT, ""))
        self.planning.told.connect(self._tell)
        self.planning.planned.connect(self._show)
        self.planning.failed.connect(self._fail)
        view.stop_asked.connect(self.planning.stop)
        view.bought_button.clicked.connect(self.keep_plan)
        view.release_button.clicked.connect(self.release_plan)
        view.cut_button.clicked.connect(self.mark_cut)

    def ask(self) -> None:
        """Plan the job as it is now, if it is not planned already; what is shown is out of date till then."""
        stock_list = self.find_list()
        if self.planning.ask(self._session.name, self._session.job, stock_list):
            self._wait("Planning…")

    def mark_outdated(self) -> None:
        """An edit was made; what is shown is no plan of the job as it is."""
        if self.plan is not None:
            self._wait("Out of date: the job was changed since.")

    def wait(self) -> None:
        """End planning before the window goes."""
        self.planning.end()

    # --- what was bought

    def keep_plan(self) -> None:
        """The boards of the plan are bought; from here on edits are planned out of them first."""
        from model.cutting.frozen import freeze_plan

        if self.plan is not None and not self._view.sheet.is_outdated:
            job = self._session.job
            self._session.change(
                "what was bought", replace(job, purchase=freeze_plan(job.purchase, self.plan))
            )

    def release_plan(self) -> None:
        """Boards that are not cut were not bought after all."""
        job = self._session.job
        cut = tuple(board for board in job.purchase.boards if board.is_cut)
        purchase = replace(job.purchase, boards=cut)
        self._session.change("what was bought", replace(job, purchase=purchase))

    def mark_cut(self) -> None:
        """The bought board that the piece in focus comes out of is sawn, or not after all."""
        from model.cutting.frozen import mark_cut

        job, mark = self._session.job, self._view.sheet.mark
        board = next((b for b in job.purchase.boards if any(p.mark == mark for p in b.pieces)), None)
        if board is None:
            self._notice.say("Pick a piece of a bought board first: that board is then marked as cut.")
            return
        purchase = mark_cut(job.purchase, (board.number,), not board.is_cut)
        self._session.change("what was cut", replace(job, purchase=purchase))
        state = "not cut" if board.is_cut else "cut"
        self._notice.say(f"Board {board.number} is marked as {state}.")

    # --- the stock list

    @property
    def list_name(self) -> str:
        """What the list in use is called: a file, or one that is shipped."""
        from app.stock_lists import USUAL

        return self._name or USUAL

    def use_list(self, name: str) -> None:
        """Plan out of the shipped list or the file called `name`; says why where it cannot be read."""
        from app.stock_lists import read_stock_named

        try:
            self._stock_list = read_stock_named(name)
        except StockRefused as refusal:
            self._notice.say(str(refusal), wrong=True)
            return
        self._name = name
        self._settings.write(KEPT, name)
        self._notice.say(f"Plans are made from the stock list “{Path(name).stem}”.")
        self.ask()

    def ask_and_use_list(self) -> None:
        """Ask for a file, and plan out of it."""
        name, _ = QFileDialog.getOpenFileName(self._window, "Open a stock list", self._name, FILTER)
        if name:
            self.use_list(name)

    def ask_and_save_list(self) -> None:
        """Ask for a name, and write the list in use there, as a list or a table."""
        name, kind = QFileDialog.getSaveFileName(self._window, "Save the stock list", "stock", SAVE_FILTER)
        if name:
            ending = ".csv" if "csv" in kind else ".yard"
            self.save_list(Path(name) if Path(name).suffix else Path(name + ending))

    def save_list(self, path: Path) -> None:
        """Write the list in use; says why where it cannot be written."""
        from app.stock_lists import save_stock_list

        try:
            save_stock_list(path, self.find_list())
        except (Refused, FileTrouble) as trouble:
            self._notice.say(str(trouble), wrong=True)
        else:
            self._notice.say(f"Written: {path}")

    def find_list(self) -> StockList:
        """The list in use; the usual sizes, and a word why, where it cannot be read any more."""
        from app.stock_lists import read_shipped_list, read_stock_named

        if self._stock_list is None:
            try:
                self._stock_list = read_stock_named(self.list_name)
            except StockRefused as refusal:
                self._notice.say(f"{refusal}\nThe usual sizes are used instead.", wrong=True)
                self._stock_list = read_shipped_list()
        return self._stock_list

    # --- what comes back

    def _wait(self, words: str) -> None:
        self._view.show_waiting(words)
        self._table.show_waiting(words)

    def _tell(self, _done: float, words: str) -> None:
        self._wait(f"Planning: {words}…")

    def _show(self, plan: CuttingPlan) -> None:
        from model.cutting.buying import list_buying
        from model.cutting.frozen import show_frozen
        from render.buying_sheet import list_words

        self.plan = plan
        style, buying = self._session.job.about.length_style, list_buying(plan)
        words = "\n".join(list_words(plan, buying, style, ()))
        bought = show_frozen(self._session.job.purchase, plan.order)
        if bought.sawn:
            words = f"{_say_bought(self._session.job.purchase)}\n{words}".strip()
        self._view.show_plan(plan, style, words, bought)
        self._table.show_buying(buying, style, words)
        self.planned.emit()

    def _fail(self, trouble: str) -> None:
        self._view.show_trouble(f"No plan: {trouble}")
        self._table.show_waiting(f"No plan: {trouble}")


def _say_bought(purchase: Purchase) -> str:
    """How many boards and sheets are bought, and how many of them are cut."""
    count, cut = len(purchase.boards), sum(board.is_cut for board in purchase.boards)
    what = "1 board or sheet is" if count == 1 else f"{count} boards and sheets are"
    return f"{what} bought, {cut} of them cut; below is what they still lack."
