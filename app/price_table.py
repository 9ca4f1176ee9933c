"""What the design in work costs, and what of it the homeowner sees. How it is added up is model.price's."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QTableView, QVBoxLayout, QWidget

from app.buttons import PlainButton
from app.table_parts import TextModel, dress_table
from app.theme import RHYTHM, ROW_HEIGHT
from app.words import Words

if TYPE_CHECKING:
    from collections.abc import Iterator

    from model.price import Price, PriceLine, ShownLine
    from model.shop import Offer

HEADINGS = ("For", "Resting on", "Cost", "The homeowner sees", "")
WIDTHS = (208, 176, 112, 192)
FIGURES = (2, 3)
WORKING = "The price is being worked out."
FAILED = "No price: {}."
WANTED = "No price yet. Wanted for it: {}."
SEEN = "The offer prints the last column."
NOT_KNOWN = "no price"


class PriceTable(QWidget):
    """The table, what is missing for a price, and the ways to it."""

    stock_asked = Signal()
    offer_asked = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._texts = TextModel(HEADINGS, FIGURES)
        self.table = QTableView()
        self.table.setModel(self._texts)
        dress_table(self.table)
        self.table.setAccessibleName("Price")
        self.table.setMinimumHeight(2 * ROW_HEIGHT)
        header = self.table.horizontalHeader()
        header.setMinimumSectionSize(RHYTHM)  # the empty last one may all but go
        for column, width in enumerate((*WIDTHS, RHYTHM)):
            self.table.setColumnWidth(column, width)
        header.setStretchLastSection(True)
        self.words = Words(WORKING)
        self.words.setContentsMargins(RHYTHM, RHYTHM // 2, 2 * RHYTHM, RHYTHM // 2)
        self.offer_button = PlainButton("Hours and margin", "Go to the rows of the offer in the list")
        self.stock_button = PlainButton("Stock list…", "Show and change what is sold, and at which price")
        self.offer_button.clicked.connect(self.offer_asked)
        self.stock_button.clicked.connect(self.stock_asked)
        head = QHBoxLayout()
        head.setContentsMargins(0, RHYTHM // 2, 2 * RHYTHM, RHYTHM // 2)
        head.setSpacing(RHYTHM)
        head.addWidget(self.words, 1)
        head.addWidget(self.offer_button)
        head.addWidget(self.stock_button)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        layout.addLayout(head)
        layout.addWidget(self.table, 1)
        self.setFocusProxy(self.table)

    def show_price(self, price: Price, offer: Offer) -> None:
        """Show another price; the line in focus stays."""
        row = self.table.currentIndex().row()
        texts = list(_list_texts(price, offer))
        self._texts.show_texts(texts)
        self.words.setText(_say_words(price))
        self.table.setEnabled(True)
        if 0 <= row < len(texts):
            self.table.setCurrentIndex(self._texts.index(row, 0))

    def show_waiting(self, trouble: str = "") -> None:
        """What is shown is out of date, and looks it; nothing of it stays where there was `trouble`."""
        self.words.setText(FAILED.format(trouble.removesuffix(".")) if trouble else WORKING)
        self.table.setEnabled(False)
        if trouble:
            self._texts.show_texts([])


def _say_words(price: Price) -> str:
    """The total at once, or what is wanted for one; and where it is no price."""
    from model.money import format_money
    from model.price import INVENTED

    if price.total is None:
        return WANTED.format("; ".join(price.missing))
    total = f"Total {format_money(price.total, price.currency)}. {SEEN}"
    return f"{total} {INVENTED}" if price.is_invented else total


def _list_texts(price: Price, offer: Offer) -> Iterator[tuple[str, ...]]:
    """A line for each line of the price, then the total where there is one."""
    from model.money import format_money
    from model.price import TOTAL, list_price

    seen = {} if price.total is None else {line.name: line for line in list_price(price, offer)}
    for line in price.lines:
        cost = NOT_KNOWN if line.cost is None else format_money(line.cost, price.currency)
        yield line.name, line.how, cost, _say_seen(line, seen, price, offer), ""
    if price.total is not None:
        total = format_money(price.total, price.currency)
        yield TOTAL, seen[TOTAL].how, total, total, ""


def _say_seen(line: PriceLine, seen: dict[str, ShownLine], price: Price, offer: Offer) -> str:
    """What the homeowner sees of a line: a sum, or where it went."""
    from model.money import format_money
    from model.price import MATERIALS, WORK, Part

    if price.total is None:
        return ""
    if offer.shows == "total":
        return "in the total"
    groups = {Part.MATERIAL: MATERIALS, Part.WORK: WORK}
    if offer.shows == "groups" and line.part in groups:
        group = groups[line.part]
        return f"in {group.lower()}, {format_money(seen[group].cost, price.currency)}"
    return format_money(seen[line.name].cost, price.currency) if line.name in seen else "spread"
