"""What each field of a stock list may hold: once for its file, for spreadsheets and for tables on screen."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import MISSING, dataclass, fields, replace
from enum import StrEnum
from typing import Any

from model.board import StockKind
from model.cutting.stock_list import HEADINGS, HandRow, SoldRow
from model.cutting.supplies import USUAL_SUPPLIES, Supply
from model.errors import Refused
from model.money import HUNDREDTHS, WANTED, parse_currency
from model.parameters import SPECIES
from model.units import INCHES_16, LengthStyle, format_length, parse_length

HAIR = 1e-6
LONGEST_WORD = 80
DEAREST = 1_000_000
"""Most that one board may cost, in the currency."""


class Holds(StrEnum):
    """What sort of value a field has."""

    KIND = "kind"
    WORD = "word"
    LENGTH = "length"
    MONEY = "money"
    COUNT = "count"
    YES_NO = "yes or no"
    NUMBER = "number"
    CURRENCY = "currency"


@dataclass(frozen=True, slots=True)
class Field:
    """One field: its name in files, its words for people, and what it may be; lengths in inches.

    `optional` ones may be empty, which is None. Money is whole hundredths inside, and in the currency in
    files and texts.
    """

    name: str
    label: str
    holds: Holds
    lowest: float = 0.0
    highest: float = 0.0
    optional: bool = False
    wants: str = ""

    def check(self, value: object, where: str) -> Any:
        """What a file's `value` stands for. Raises Refused, with `where` before the field's label."""
        match self.holds:
            case _ if value is None and self.optional:
                return None
            case Holds.KIND if isinstance(value, str) and value in set(HEADINGS):
                return StockKind(value)
            case Holds.WORD if isinstance(value, str):
                return self._check_word(value, where)
            case Holds.CURRENCY if isinstance(value, str):
                return self._check_currency(value, where)
            case Holds.NUMBER if _is_number(value) and self._within(value):
                return float(value)  # type: ignore[arg-type]
            case Holds.YES_NO if isinstance(value, bool):
                return value
            case Holds.LENGTH if _is_number(value) and self._within(value):
                return float(value)  # type: ignore[arg-type]
            case Holds.COUNT if isinstance(value, int) and _is_number(value) and self._within(value):
                return value
            case Holds.MONEY if _is_number(value):
                return self._check_money(float(value), value, where)  # type: ignore[arg-type]
        raise Refused(self._at(where), value, self.wanted)

    def parse(self, text: str, where: str, style: LengthStyle = INCHES_16) -> Any:
        """What typed `text` means; a bare length has the style's unit. Raises Refused."""
        plain = text.strip()
        if not plain and self.optional:
            return None
        match self.holds:
            case Holds.KIND:
                words = {heading.lower(): kind for kind, heading in HEADINGS.items()}
                return self.check(words.get(plain.lower(), plain.lower()), where)
            case Holds.LENGTH:
                return self._parse_length(plain, where, style)
            case Holds.MONEY:
                return self._parse_number(plain, where, _plain_amount(plain))
            case Holds.NUMBER:
                return self._parse_number(plain, where, plain)
            case Holds.COUNT:
                whole = plain.isascii() and plain.isdigit() and len(plain) < 7
                return self.check(int(plain) if whole else text, where)
            case Holds.YES_NO:
                return self.check({"yes": True, "no": False, "": False}.get(plain.lower(), text), where)
        return self.check(text, where)

    def format(self, value: Any, style: LengthStyle) -> str:
        """Text for a field, read back by `parse` to within the style's step; "" for what is empty."""
        if value is None:
            return ""
        match self.holds:
            case Holds.LENGTH:
                return format_length(value, style) if value else ""
            case Holds.MONEY:
                return f"{value / HUNDREDTHS:.2f}"
            case Holds.YES_NO:
                return "yes" if value else "no"
        return str(value)

    @property
    def wanted(self) -> str:
        """What may be written, with an example."""
        if self.wants:
            return self.wants
        match self.holds:
            case Holds.KIND:
                return "write one of " + ", ".join(HEADINGS)
            case Holds.WORD:
                return f"write up to {LONGEST_WORD} characters of text"
            case Holds.LENGTH:
                low, high = (format_length(end, INCHES_16) for end in (self.lowest, self.highest))
                return f"write a length from {low} to {high}"
            case Holds.MONEY:
                return "write what one costs, such as 12.40, or leave it empty where it is not known"
            case Holds.COUNT:
                return f"write a whole number from {self.lowest:g} to {self.highest:g}"
            case Holds.NUMBER:
                return f"write a number from {self.lowest:g} to {self.highest:g}"
            case Holds.CURRENCY:
                return WANTED
        return "write yes or no"

    def _parse_length(self, plain: str, where: str, style: LengthStyle) -> Any:
        if not plain and self.lowest == 0:
            return 0.0
        try:
            return self.check(parse_length(plain, self._at(where), style), where)
        except Refused as refusal:
            raise Refused(self._at(where), plain, refusal.wanted) from None

    def _parse_number(self, plain: str, where: str, bare: str) -> Any:
        try:
            if not all(c in "0123456789." for c in bare) or len(bare) > 12:
                raise ValueError
            return self.check(float(bare), where)
        except (ValueError, Refused) as fault:
            raise Refused(
                self._at(where), plain, fault.wanted if isinstance(fault, Refused) else self.wanted
            ) from None

    def _check_word(self, value: str, where: str) -> str:
        plain = " ".join(value.split())
        if len(plain) > LONGEST_WORD or not plain.isprintable():
            raise Refused(self._at(where), value, self.wanted)
        if not plain and self.wants:
            raise Refused(self._at(where), value, self.wants)
        return plain

    def _check_currency(self, value: str, where: str) -> str:
        plain = value.strip()
        parse_currency(plain, self._at(where))
        return plain

    def _check_money(self, amount: float, read: object, where: str) -> int:
        hundredths = round(amount * HUNDREDTHS) if 0 <= amount <= DEAREST else 0
        if hundredths <= 0 or abs(amount * HUNDREDTHS - hundredths) > HAIR * max(1.0, amount):
            raise Refused(self._at(where), read, self.wanted)
        return hundredths

    def _within(self, value: object) -> bool:
        return isinstance(value, int | float) and self.lowest <= value <= self.highest

    def _at(self, where: str) -> str:
        return f"{where}, {self.label}" if where else self.label


def _plain_amount(text: str) -> str:
    """An amount with a point before its decimals; thousands may be parted by commas where it has one."""
    whole, comma, decimals = text.partition(",")
    if comma and whole.isdigit() and decimals.isdigit() and len(decimals) < 3:
        return f"{whole}.{decimals}"
    return text.replace(",", "") if "." in text else text


def _is_number(value: object) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)


_KIND = Field("kind", "kind", Holds.KIND)
_WOOD = Field("wood", "wood", Holds.WORD, wants="write a wood, such as poplar, framing or plywood")
_NAME = Field("name", "name", Holds.WORD)
_THICKNESS = Field("thickness", "thickness", Holds.LENGTH, 0, 16)
_WIDTH = Field("width", "width", Holds.LENGTH, 0, 120)
_LENGTH = Field("length", "length", Holds.LENGTH, 1, 600)
_SECTION = Field("section", "section", Holds.WORD)

SOLD_FIELDS = (
    Field("heading", "heading", Holds.WORD),
    _KIND,
    _WOOD,
    _NAME,
    _THICKNESS,
    _WIDTH,
    _LENGTH,
    Field("price", "price", Holds.MONEY, optional=True),
    Field("limit", "limit", Holds.COUNT, 0, 99999, optional=True),
    _SECTION,
    Field("spare", "spare", Holds.COUNT, 0, 999, optional=True),
)
HAND_FIELDS = (
    _KIND,
    _WOOD,
    _NAME,
    _THICKNESS,
    _WIDTH,
    _LENGTH,
    Field("count", "count", Holds.COUNT, 0, 99999),
    Field("clear", "ends kept clear", Holds.LENGTH, 0, 300),
    _SECTION,
    Field("bought", "bought", Holds.YES_NO),
)
LIST_FIELDS = (
    Field("name", "name of the list", Holds.WORD),
    Field("currency", "currency", Holds.CURRENCY),
    Field("trim_end", "trim at each end", Holds.LENGTH, 0, 12),
    Field("trim_sheet", "trim at a sheet's edges", Holds.LENGTH, 0, 12),
    Field("keep", "length worth keeping", Holds.LENGTH, 0, 600),
    Field("spare", "spare boards", Holds.COUNT, 0, 999),
)
SUPPLY_FIELDS = (
    Field("name", "name", Holds.WORD),
    Field("pack", "in a pack", Holds.NUMBER, 0.001, 1_000_000),
    Field("price", "price", Holds.MONEY, optional=True),
    Field("whole", "whole packs", Holds.YES_NO),
)
WOODS = {**{label.lower(): word for word, label in SPECIES.items()}, **{word: word for word in SPECIES}}
"""What a wood may be called, to the word that a job keeps."""


def build_sold(values: Mapping[str, Any], where: str) -> SoldRow:
    """A row of checked values by field; what is missing takes its default. Raises Refused."""
    row = SoldRow(**_with_all(SoldRow, values, where))
    _check_size(row, where)
    return row


def build_hand(values: Mapping[str, Any], where: str) -> HandRow:
    """As `build_sold`, of what lies there."""
    row = HandRow(**_with_all(HandRow, values, where))
    _check_size(row, where)
    if 2 * row.clear >= row.length:
        wanted = f"write less than half of the length {format_length(row.length, INCHES_16)}"
        raise Refused(f"{where}, ends kept clear", row.clear, wanted)
    return row


def build_supply(values: Mapping[str, Any], where: str) -> Supply:
    """A supply of checked values by field; what is missing is as usual. Raises Refused."""
    usual = {supply.name: supply for supply in USUAL_SUPPLIES}
    name = values.get("name", "")
    if name not in usual:
        raise Refused(f"{where}, name", name, f"write one of {', '.join(usual)}")
    return replace(usual[name], **values)


def _with_all(record: type, values: Mapping[str, Any], where: str) -> dict[str, Any]:
    found = {"name": "", **values}
    for field in fields(record):
        if field.name not in found and field.default is MISSING:
            raise Refused(where, field.name, "is missing; write it in this row")
    wood = str(found["wood"])
    plain = wood.lower().replace("_", " ")
    found["wood"] = WOODS.get(plain, WOODS.get(plain.replace(" ", "_"), plain))
    return found


def _check_size(row: SoldRow | HandRow, where: str) -> None:
    for name, size in (("thickness", row.thickness), ("width", row.width)):
        run_to_order = row.kind is StockKind.MOULDING and isinstance(row, SoldRow)
        if size <= 0 and not run_to_order:
            raise Refused(f"{where}, {name}", size, "write a length above 0; only a moulding's may be empty")
    if row.section and row.kind is not StockKind.MOULDING:
        raise Refused(f"{where}, section", row.section, "leave it empty; only a moulding has a section")
