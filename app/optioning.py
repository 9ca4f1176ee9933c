"""Several designs in one job: what passes between the tabs, the session's steps, their checks and prices."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QPoint, Qt, Signal
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QMenu, QWidget

from app.cutting_beside import CuttingBeside
from app.drafting import Drafting
from app.estimating import Estimating
from app.estimating_process import Counted
from app.menus import Command
from app.notice import Notice
from app.option_bar import OptionBar
from app.option_tabs import Shown
from app.pause import build_pause
from app.session import Change, Session
from model.check.finding import Status, count_statuses
from model.errors import Refused
from model.job import Job
from model.options import (
    MOST_OPTIONS,
    Option,
    Options,
    add_option,
    alone,
    bring_back,
    duplicate,
    move,
    rename,
    take_up,
    throw_away,
)

if TYPE_CHECKING:
    from app.side_window import SideWindow
    from model.estimate import Estimate
    from model.price import Price

PAUSE = 700
"""Milliseconds without an edit after which prices are worked out anew."""
SOON = 60
"""Milliseconds without an edit after which what is known of prices is shown again."""
_TAKES_UP = 2**31 - 2
"""Steps that Qt may try to merge: one of them takes up another option."""
ADD, DUPLICATE, RENAME, AWAY = "Add an option", "Duplicate", "Rename", "Throw away"
EARLIER, LATER, BEFORE, AFTER = "Move back", "Move on", "Option before", "Option after"
SIDE = "Side by side"
KEYS = {
    ADD: "Ctrl+Shift+A",
    AWAY: "Ctrl+Shift+Del",
    EARLIER: "Ctrl+Shift+PgUp",
    LATER: "Ctrl+Shift+PgDown",
    BEFORE: "Ctrl+PgUp",
    AFTER: "Ctrl+PgDown",
    SIDE: "Ctrl+Shift+O",
    RENAME: "F2",
}
EXPLAINED = {
    ADD: "A copy of the design in work, to be changed from there",
    DUPLICATE: "A copy of this option beside it",
    RENAME: "Give this option another name",
    AWAY: "Throw this option away; it can be brought back",
    EARLIER: "Move this option one place back",
    LATER: "Move this option one place on",
    BEFORE: "Work on the option before",
    AFTER: "Work on the option after",
    SIDE: "Look at two or three options together, and at what differs",
}
ONLY_ONE = "there is only one design"


class TakeUp(Change):
    """Another option is in work; going back and forth between options is one step."""

    def id(self) -> int:
        """One kind of step."""
        return _TAKES_UP

    def is_continued_by(self, other: Change) -> bool:
        """Whether another option is taken up after this one."""
        return isinstance(other, TakeUp)


class Optioning(QObject):
    """Everything about options in the window. `priced` says that prices are others, or are known now,
    `asked` that someone wants to change the setting at a path.
    """

    priced = Signal()
    asked = Signal(str)

    def __init__(
        self,
        window: QWidget,
        session: Session,
        drafting: Drafting,
        cutting: CuttingBeside,
        notice: Notice,
        commit: Callable[[], object],
    ) -> None:
        super().__init__()
        self._window, self._session, self._drafting = window, session, drafting
        self._cutting, self._notice, self._commit = cutting, notice, commit
        self.bar = OptionBar()
        self.estimating = Estimating()
        self.side_window: SideWindow | None = None
        self._followed: Options | None = None
        self._said_thrown = ""
        self._thrown: tuple[Option, ...] = ()
        self.wants_price = False
        """Whether someone looks at the price of the one in work, though there is no other."""
        self._pause = build_pause(self, PAUSE, self.ask)
        self._later = build_pause(self, SOON, self._tell_priced)
        self.commands = {
            words: Command(self, act)
            for words, act in (
                (ADD, self.add),
                (DUPLICATE, lambda: self.duplicate(self.place)),
                (RENAME, self.rename_here),
                (EARLIER, lambda: self.move(self.place, -1)),
                (LATER, lambda: self.move(self.place, 1)),
                (AWAY, lambda: self.throw_away(self.place)),
                (BEFORE, lambda: self.take_up(self.place - 1)),
                (AFTER, lambda: self.take_up(self.place + 1)),
                (SIDE, self.show_side_by_side),
            )
        }
        for words, keys in KEYS.items():
            self.commands[words].setShortcut(QKeySequence(keys))
        self._connect()
        self._follow()

    def _connect(self) -> None:
        tabs = self.bar.tabs
        tabs.picked.connect(self.take_up)
        tabs.renamed.connect(self.rename)
        tabs.shifted.connect(lambda start, end: self.move(start, end - start))
        tabs.menu_asked.connect(self._open_menu)
        tabs.left.connect(self._offer)
        self.bar.add_button.follow(self.commands[ADD])
        self.bar.side_button.follow(self.commands[SIDE])
        self._session.changed.connect(self._follow)
        self._session.changed.connect(self._take_back_words)
        self._drafting.checked.connect(self._later.start)
        self._cutting.planned.connect(self._tell_priced)
        self._cutting.stock.session.changed.connect(self._follow_list)
        self.estimating.answered.connect(self._tell_priced)

    def add_menu(self, menu: QMenu) -> None:
        """Fill the window's menu."""
        for words in (ADD, DUPLICATE, RENAME):
            menu.addAction(self.commands[words])
        menu.addSeparator()
        for words in (BEFORE, AFTER, EARLIER, LATER):
            menu.addAction(self.commands[words])
        menu.addSeparator()
        menu.addAction(self.commands[AWAY])
        self.back_menu = menu.addMenu("Bring back")
        menu.addSeparator()
        menu.addAction(self.commands[SIDE])
        menu.aboutToShow.connect(lambda: self._fill_back(self.back_menu))
        self.bar.back_menu.aboutToShow.connect(lambda: self._fill_back(self.bar.back_menu))
        self._fill_back(self.back_menu)

    def _fill_back(self, menu: QMenu) -> None:
        menu.clear()
        for which, option in enumerate(self._session.job.options.thrown):
            action = menu.addAction(option.name.replace("&", "&&"))
            action.triggered.connect(lambda _on=False, which=which: self.bring_back(which))
        menu.setEnabled(bool(self._session.job.options.thrown))

    def _open_menu(self, place: int, at: QPoint) -> None:
        """What can be done with the tab that was pointed at."""
        menu = QMenu(self._window)
        for words, act in (
            (RENAME, partial(self.bar.tabs.edit_name, place)),
            (DUPLICATE, partial(self.duplicate, place)),
            (EARLIER, partial(self.move, place, -1)),
            (LATER, partial(self.move, place, 1)),
            (AWAY, partial(self.throw_away, place)),
        ):
            action = menu.addAction(words)
            action.triggered.connect(lambda _on=False, act=act: act())
            ends = {EARLIER: place == 0, LATER: place == self._count - 1, AWAY: self._count == 1}
            action.setEnabled(not ends.get(words, False))
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        menu.popup(at)

    # --- what can be done

    @property
    def place(self) -> int:
        """Where the one in work stands."""
        return self._session.job.options.place

    @property
    def _count(self) -> int:
        return self._session.job.options.count

    def add(self) -> None:
        """A copy of the one in work, whose name can be typed at once."""
        if self._change("adding an option", add_option):
            self.bar.tabs.edit_name(self.place)

    def duplicate(self, place: int) -> None:
        """A copy of the option at a place, beside it."""
        self._change("duplicating an option", lambda job: duplicate(job, place))

    def rename_here(self) -> None:
        """Type another name for the one in work, where it stands."""
        self.bar.setVisible(True)
        self.bar.tabs.edit_name(self.place)

    def rename(self, place: int, name: str) -> None:
        """Another name; one that cannot be stays to be put right, with its sentence."""
        try:
            after = rename(self._session.job, place, name)
        except Refused as refusal:
            self.bar.tabs.refuse(str(refusal))
            self._notice.say(str(refusal), wrong=True)
            return
        self.bar.tabs.refuse("")
        self._notice.put_away()
        self._session.change("name of an option", after)

    def move(self, place: int, way: int) -> None:
        """So many places on, or back."""
        if not self._change("order of the options", lambda job: move(job, place, way)):
            self._follow()

    def take_up(self, place: int) -> None:
        """Work on another one."""
        if not 0 <= place < self._count:
            return
        self._commit()
        job = self._session.job
        if place != job.options.place:
            self._session.begin_gesture()
            words = f"working on {job.options.names[place]}"
            self._session.stack.push(TakeUp(self._session, words, take_up(job, place)))

    def throw_away(self, place: int) -> None:
        """Without being asked, since it is brought back as easily."""
        name = self._session.job.options.names[place]
        if self._change("throwing an option away", lambda job: throw_away(job, place)):
            self._said_thrown = f"“{name}” was thrown away."
            self._thrown = self._session.job.options.thrown
            self._notice.say(self._said_thrown, (("Bring it back", lambda: self.bring_back(0)),))

    def _take_back_words(self) -> None:
        """Nothing is to be brought back once a step was undone or others were thrown away."""
        if self._said_thrown and self._session.job.options.thrown != self._thrown:
            if self._notice.text == self._said_thrown:
                self._notice.put_away()
            self._said_thrown = ""

    def bring_back(self, which: int) -> None:
        """One that was thrown away, put in work."""
        if which < len(self._session.job.options.thrown):
            self._notice.put_away()
            self._change("bringing an option back", lambda job: bring_back(job, which))

    def _change(self, words: str, step: Callable[[Job], Job]) -> bool:
        """One step; whether there was anything to be done."""
        self._commit()
        try:
            after = step(self._session.job)
        except Refused as refusal:
            self._notice.say(str(refusal), wrong=True)
            return False
        if after == self._session.job:
            return False
        self._session.change(words, after)
        return True

    def show_side_by_side(self) -> None:
        """Two or three together, in a window of their own."""
        from app.dialog_parts import bring_forward
        from app.side_window import SideWindow

        if self.side_window is None:
            self.side_window = SideWindow(self._window, self._session, self)
        bring_forward(self.side_window)
        self.ask()

    # --- what is shown

    def _follow(self) -> None:
        """The job is another: names and order at once, what is known of prices soon, the rest after a pause.

        An edit of the one in work is not held up by the others.
        """
        if self._session.job.options is not self._followed:
            self._followed = self._session.job.options
            self._offer()
            self._show()
        self._later.start()
        self._pause.start()

    def _follow_list(self) -> None:
        self.estimating.use_list(self._cutting.stock.session.stock_list)
        self._pause.start()
        self._tell_priced()

    def _tell_priced(self) -> None:
        self._show()
        self.priced.emit()

    def _offer(self) -> None:
        """Bring the commands up to how many options there are and where the one in work stands."""
        place, count = self.place, self._count
        full = f"a job holds at most {MOST_OPTIONS}" if count >= MOST_OPTIONS else ""
        alone_here = ONLY_ONE if count == 1 else ""
        first = alone_here or ("it is the first" if place == 0 else "")
        last = alone_here or ("it is the last" if place == count - 1 else "")
        reasons = {ADD: full, DUPLICATE: full, AWAY: alone_here, SIDE: alone_here}
        reasons |= {EARLIER: first, BEFORE: first, LATER: last, AFTER: last, RENAME: ""}
        for words, reason in reasons.items():
            self.commands[words].offer(words, EXPLAINED[words], reason)
        thrown = self._session.job.options.thrown
        self.bar.offer_back(bool(thrown))
        self.bar.setVisible(count > 1 or bool(thrown) or self.bar.tabs.editing >= 0)

    def _show(self) -> None:
        job = self._session.job
        if self._count == 1 and not self.wants_price:
            self.bar.tabs.show_options([Shown(job.options.name, (), "")], 0)
            return
        prices = [self.find_price(place) for place in range(self._count)]
        base = prices[self.place]
        shown = [
            Shown(name, self.find_counts(place), self._say_price(place, prices[place], base))
            for place, name in enumerate(job.options.names)
        ]
        self.bar.tabs.show_options(shown, self.place)

    def _say_price(self, place: int, price: Price | None, base: Price | None) -> str:
        from model.differences import NO_PRICE, say_price

        if price is None:
            return NO_PRICE if self.find_trouble(place) else "price being worked out"
        return say_price(price, base)

    def _find(self, place: int) -> Counted | str | None:
        return self.estimating.find(alone(self._session.job, place))

    def find_counts(self, place: int) -> tuple[tuple[Status, int], ...] | None:
        """How many findings of each status the option at a place has; None while it is not known."""
        if place == self.place and self._drafting.surround is not None:
            return count_statuses(self._drafting.findings)
        known = self._find(place)
        return known.counts if isinstance(known, Counted) else None

    # --- prices

    def ask(self) -> None:
        """Have worked out what is looked at: the one in work, those side by side, then all others."""
        self._pause.stop()
        looked_at = self.side_window.places if self.side_window and self.side_window.isVisible() else ()
        if self._count == 1 and not self.wants_price:
            return
        self.estimating.use_list(self._cutting.find_list())
        places = dict.fromkeys((self.place, *looked_at, *range(self._count)))
        self.estimating.ask([alone(self._session.job, place) for place in places])

    def find_estimate(self, place: int) -> Estimate | None:
        """What the option at a place takes, None while it is not known. The plan that is shown goes first."""
        from model.cutting.buying import list_buying

        known = self._find(place)
        if not isinstance(known, Counted):
            return None
        plan = self._cutting.current if place == self.place else None
        buying = list_buying(plan) if plan is not None else known.estimate.buying
        currency = self._cutting.find_list().currency
        return replace(known.estimate, buying=replace(buying, currency=currency))

    def find_price(self, place: int) -> Price | None:
        """The price of the option at a place, None while it is not known."""
        from model.price import make_price

        estimate = self.find_estimate(place)
        if estimate is None:
            return None
        offer = alone(self._session.job, place).shop.offer
        return make_price(estimate, offer, self._cutting.find_list().supplies)

    def find_trouble(self, place: int) -> str:
        """Why nothing is known of the option at a place; "" while it is worked out."""
        known = self._find(place)
        return known if isinstance(known, str) else ""

    def wait(self) -> None:
        """End what is being done before the window goes."""
        self._pause.stop()
        self._later.stop()
        self.estimating.end()
        if self.side_window is not None:
            self.side_window.wait()
