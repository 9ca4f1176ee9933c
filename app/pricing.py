"""Keeps the price in the tray in step with the job, while it is looked at."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QObject

from app.optioning import Optioning
from app.rooms import PRICE
from app.session import Session
from app.tray import Tray

FIRST_ROW = "offer.hour"


class Pricing(QObject):
    """Shows what app.optioning knows of the design in work."""

    def __init__(
        self,
        session: Session,
        options: Optioning,
        tray: Tray,
        go_to: Callable[[str], object],
        show_stock: Callable[[], None],
    ) -> None:
        super().__init__()
        self._session, self._options, self._tray = session, options, tray
        tray.turned.connect(lambda _page: self._look())
        tray.folded.connect(lambda _folded: self._look())
        options.priced.connect(self._show)
        tray.price.stock_asked.connect(show_stock)
        tray.price.offer_asked.connect(lambda: go_to(FIRST_ROW))

    def _look(self) -> None:
        """Have it worked out while it is looked at."""
        self._options.wants_price = self._tray.is_shown(PRICE)
        if self._options.wants_price:
            self._options.ask()
            self._show()

    def _show(self) -> None:
        if not self._tray.is_shown(PRICE):
            return
        price = self._options.find_price(self._options.place)
        if price is None:
            self._tray.price.show_waiting(self._options.find_trouble(self._options.place))
        else:
            self._tray.price.show_price(price, self._session.job.shop.offer)
