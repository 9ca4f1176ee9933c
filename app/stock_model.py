"""Rows of a stock list as a table that is typed in. What a field may hold is model.cutting's business.

A refused entry stays in its cell with a sentence, and the row keeps what it had, until it is put right.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, fields, replace
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt, Signal

from app.stock_session import StockSession
from model.board import StockKind
from model.cutting.stock_fields import (
    HAND_FIELDS,
    SOLD_FIELDS,
    SUPPLY_FIELDS,
    Field,
    Holds,
    build_hand,
    build_sold,
    build_supply,
)
from model.cutting.stock_list import HEADINGS, HandRow, SoldRow, StockList, wood_name
from model.cutting.supplies import SORTS, Sort, Supply
from model.errors import Refused
from model.sentences import capitalise
from model.units import INCHES_16, LengthStyle, without_feet

Index = QModelIndex | QPersistentModelIndex
StockRow = SoldRow | HandRow | Supply
SOLD, ON_HAND, SUPPLIES = "sold", "on_hand", "supplies"
PAGES = {SOLD: "Sold", ON_HAND: "On hand", SUPPLIES: "Supplies"}
"""What each kind of row is called."""
ORDER = (
    "kind",
    "wood",
    "name",
    "thickness",
    "width",
    "length",
    "pack",
    "price",
    "limit",
    "count",
    "clear",
    "spare",
    "section",
    "heading",
    "bought",
    "whole",
)
"""Columns from left to right."""
FIELDS = {SOLD: SOLD_FIELDS, ON_HAND: HAND_FIELDS, SUPPLIES: SUPPLY_FIELDS}
BUILDS: dict[str, Callable[[dict[str, Any], str], StockRow]] = {
    SOLD: build_sold,
    ON_HAND: build_hand,
    SUPPLIES: build_supply,
}
WORDS = {"limit": "At most", "count": "Number", "clear": "Ends kept clear", "heading": "Bought under"}
"""Headings that say more than the field's own label."""
EXPLAINED = {
    "limit": "How many there are; empty for any number",
    "spare": "Whole boards over; empty for the list's own number",
    "price": "What one costs; empty where it is not known, and nothing is counted then",
    "clear": "What of each end cannot be used: old nail holes, checks",
    "section": "A moulding's section; empty for any",
    "heading": "The heading it is bought under; empty for its kind's",
    "pack": "How much is in one pack, in the unit that stands there",
    "whole": "Whether whole packs are paid for, or only what is used of them",
    "bought": "Whether it is left of what was bought, or lay there before",
}
EMPTY = {"price": "no price", "limit": "any", "section": "", "heading": "", "spare": "as the list"}
"""What an empty cell says, in a lighter voice."""
FINEST = 32
FIRST_SOLD = SoldRow(StockKind.BOARD, "poplar", "1x6", 0.75, 5.5, 96.0)
FIRST_ON_HAND = HandRow(StockKind.BOARD, "poplar", "1x6", 0.75, 5.5, 96.0)
"""What a first row says until it is written over."""


@dataclass(frozen=True, slots=True)
class Wrong:
    """An entry that was refused, and the sentence that says what is wanted."""

    text: str
    sentence: str


class StockModel(QAbstractTableModel):
    """The rows SOLD, ON_HAND or SUPPLIES of a list. `told` says that an entry was refused, or put right."""

    told = Signal()

    def __init__(self, session: StockSession, which: str) -> None:
        super().__init__()
        self._session, self._which = session, which
        known = {field.name: field for field in FIELDS[which]}
        self.fields: tuple[Field, ...] = tuple(known[name] for name in ORDER if name in known)
        self.rows: tuple[StockRow, ...] = ()
        self._style = INCHES_16
        self._wrong: dict[tuple[int, str], Wrong] = {}
        session.changed.connect(self._follow)
        self._follow()

    # --- what is shown

    def show_style(self, style: LengthStyle) -> None:
        """Write lengths in another style."""
        if style != self._style:
            self._style = style
            self._tell_all()

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """One row for each size."""
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """One for each field."""
        return 0 if parent.isValid() else len(self.fields)

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Every cell may be typed in, but the names of supplies, which are those that jobs use up."""
        typed = self.has_own_rows or self.fields[index.column()].name != "name"
        return super().flags(index) | (Qt.ItemFlag.ItemIsEditable if typed else Qt.ItemFlag(0))

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """The text of a cell, or the refused one that stands in it; figures stand to the right."""
        field = self.fields[index.column()]
        wrong = self._wrong.get((index.row(), field.name))
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.EditRole):
            return wrong.text if wrong else self._text(index.row(), field)
        if role in (Qt.ItemDataRole.ToolTipRole, Qt.ItemDataRole.AccessibleDescriptionRole):
            return wrong.sentence if wrong else EXPLAINED.get(field.name)
        return _alignment(field) if role == Qt.ItemDataRole.TextAlignmentRole else None

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> object:
        """The column's name, and what goes into it."""
        if orientation is not Qt.Orientation.Horizontal:
            return None
        field = self.fields[section]
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _alignment(field)
        if role == Qt.ItemDataRole.ToolTipRole:
            return EXPLAINED.get(field.name) or capitalise(field.wanted)
        return (
            WORDS.get(field.name, field.label.capitalize()) if role == Qt.ItemDataRole.DisplayRole else None
        )

    def wrong_at(self, row: int, column: int) -> Wrong | None:
        """The refused entry in a cell, if there is one."""
        return self._wrong.get((row, self.fields[column].name)) if column >= 0 else None

    def first_wrong(self) -> tuple[int, int] | None:
        """Row and column of the first refused entry, None where none was."""
        names = [field.name for field in self.fields]
        places = sorted((row, names.index(name)) for row, name in self._wrong)
        return places[0] if places else None

    def stand_in(self, column: int) -> str:
        """What an empty cell of a column says."""
        return EMPTY.get(self.fields[column].name, "")

    def _text(self, row: int, field: Field) -> str:
        value = getattr(self.rows[row], field.name)
        if field.name == "pack":
            return self._sort(row).format_pack(value, self._style)
        if field.holds is Holds.KIND:
            return HEADINGS[value]
        return wood_name(value) if field.name == "wood" else field.format(value, self._style)

    # --- what is typed

    def setData(self, index: Index, value: object, role: int = Qt.ItemDataRole.EditRole) -> bool:
        """One step: what was typed into a cell. A refused text stays there with its sentence."""
        if role != Qt.ItemDataRole.EditRole:
            return False
        row, field, text = index.row(), self.fields[index.column()], str(value)
        place = (row, field.name)
        if text == self._text(row, field):
            self._settle(place)
            return True
        try:
            changed = self._build(row, field, text)
        except Refused as refusal:
            self._wrong[place] = Wrong(text, str(refusal))
            self._tell(row)
            return True
        self._wrong.pop(place, None)
        self._put(f"{field.label} of a row", (*self.rows[:row], changed, *self.rows[row + 1 :]))
        self._tell(row)
        return True

    def give_up(self, index: Index) -> None:
        """Take back a refused entry."""
        self._settle((index.row(), self.fields[index.column()].name))

    def empty(self, index: Index) -> None:
        """Leave a cell empty, where it may be."""
        field = self.fields[index.column()]
        typed = bool(self.flags(index) & Qt.ItemFlag.ItemIsEditable)
        if typed and (field.optional or (field.holds is Holds.WORD and not field.wants)):
            self.setData(index, "")

    def _settle(self, place: tuple[int, str]) -> None:
        if self._wrong.pop(place, None):
            self._tell(place[0])

    def _build(self, row: int, field: Field, text: str) -> StockRow:
        """The row with what `text` means in that field. Raises Refused."""
        old = self.rows[row]
        where = f"{PAGES[self._which]} row {row + 1}"
        values: dict[str, Any] = {each.name: getattr(old, each.name) for each in fields(old)}
        values[field.name] = self._parse(row, field, text, where)
        return BUILDS[self._which](values, where)

    def _parse(self, row: int, field: Field, text: str, where: str) -> Any:
        if field.name != "pack":
            return field.parse(text, where, self._style)
        amount = self._sort(row).parse_pack(text, f"{where}, {field.label}", self._style)
        return field.check(amount, where)

    def _sort(self, row: int) -> Sort:
        """What the supply of a row is measured in."""
        return SORTS[self.rows[row].name]

    # --- whole rows

    @property
    def has_own_rows(self) -> bool:
        """Whether rows are added and taken out; supplies are always those that a job may use up."""
        return self._which != SUPPLIES

    def add_row(self, after: int) -> int:
        """A row like that of the number `after`, which goes without its price; its own number."""
        first: StockRow = FIRST_SOLD if self._which == SOLD else FIRST_ON_HAND
        row = self.rows[after] if 0 <= after < len(self.rows) else first
        row = replace(row, bought=False) if isinstance(row, HandRow) else replace(row, price=None)
        at = after + 1 if 0 <= after < len(self.rows) else len(self.rows)
        self._put("adding a row", (*self.rows[:at], row, *self.rows[at:]))
        return at

    def remove_rows(self, numbers: Iterable[int]) -> None:
        """Take rows out of the list, in one step."""
        gone = set(numbers)
        kept = tuple(row for i, row in enumerate(self.rows) if i not in gone)
        self._put("taking out rows" if len(gone) > 1 else "taking out a row", kept)

    def _put(self, words: str, rows: Sequence[Any]) -> None:
        before = self._session.stock_list
        changes: dict[str, Any] = {self._which: tuple(rows)}
        after = replace(before, **changes)
        self._session.change(words, after)

    def _follow(self) -> None:
        """Show the session's list; refused entries stay in rows that are as they were."""
        found: tuple[StockRow, ...] = _rows_of(self._session.stock_list, self._which)
        if found == self.rows:
            return
        if len(found) == len(self.rows):
            same = {i for i, (a, b) in enumerate(zip(found, self.rows, strict=True)) if a == b}
            self._wrong = {place: wrong for place, wrong in self._wrong.items() if place[0] in same}
            self.rows = found
            self._tell_all()
            return
        self.beginResetModel()
        self.rows, self._wrong = found, {}
        self.endResetModel()
        self.told.emit()

    def _tell(self, row: int) -> None:
        self.dataChanged.emit(self.index(row, 0), self.index(row, len(self.fields) - 1))
        self.told.emit()

    def _tell_all(self) -> None:
        if self.rows:
            last = self.index(len(self.rows) - 1, len(self.fields) - 1)
            self.dataChanged.emit(self.index(0, 0), last)
        self.told.emit()


def style_of_list(style: LengthStyle) -> LengthStyle:
    """How a list's lengths are written for a job: in its units, without feet, as fine as what is sold."""
    return without_feet(style, FINEST)


def _rows_of(stock_list: StockList, which: str) -> tuple[StockRow, ...]:
    rows: tuple[StockRow, ...] = getattr(stock_list, which)
    return rows


def _alignment(field: Field) -> Qt.AlignmentFlag:
    figures = field.holds in (Holds.LENGTH, Holds.MONEY, Holds.COUNT, Holds.NUMBER)
    side = Qt.AlignmentFlag.AlignRight if figures else Qt.AlignmentFlag.AlignLeft
    return side | Qt.AlignmentFlag.AlignVCenter
