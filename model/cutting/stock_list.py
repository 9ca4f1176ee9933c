"""What the yard sells and what lies there already: rows with sizes in inches, and how they are worked with.

Its text as a file stands in model.cutting.stock_file, as a table for spreadsheets in export.stock_csv.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from model.board import StockKind
from model.cutting.supplies import USUAL_SUPPLIES, Supply
from model.parameters import SPECIES
from model.units import LengthStyle, format_length

HEADINGS: Mapping[StockKind, str] = {
    StockKind.BOARD: "Boards",
    StockKind.MOULDING: "Mouldings",
    StockKind.FRAMING: "Framing",
    StockKind.PANEL: "Panels",
}
"""What each kind is sold under, where a row says nothing else."""
ANY_SIZE = 0.0
"""The thickness or width of a moulding that is run to any size."""


@dataclass(frozen=True, slots=True)
class SoldRow:
    """One size that is sold, in one length. `price` is hundredths for one, None where it is not known.

    `limit` is how many there are, None for any number. `wood` is a species' word, or what framing and
    panels are called. `section` names a moulding's section, "" for any; a moulding's thickness and width
    are ANY_SIZE where it is run to order. `spare` is in whole boards, None for the list's own.
    """

    kind: StockKind
    wood: str
    name: str
    thickness: float
    width: float
    length: float
    price: int | None = None
    limit: int | None = None
    section: str = ""
    heading: str = ""
    spare: int | None = None

    @property
    def trade(self) -> str:
        """The heading it is bought under."""
        return self.heading or HEADINGS[self.kind]


@dataclass(frozen=True, slots=True)
class HandRow:
    """Boards or part sheets that lie there, `count` alike. `clear` is what of each end cannot be used.

    `bought` tells what is left of a purchase from what was there before.
    """

    kind: StockKind
    wood: str
    name: str
    thickness: float
    width: float
    length: float
    count: int = 1
    clear: float = 0.0
    section: str = ""
    bought: bool = False


INVENTED = "all prices invented"
"""How the name of a list ends whose prices are for trying out only."""


@dataclass(frozen=True, slots=True)
class StockList:
    """Rows, and what is common to them. Inches; `spare` whole boards over of each size that is bought.

    `trim_end` comes off each end of what is bought by length, `trim_sheet` off all four edges of a sheet.
    `keep` is the least length of an offcut worth keeping. `currency` is as for model.money; `supplies` has
    every one of model.cutting.supplies once, in their order.
    """

    sold: tuple[SoldRow, ...] = ()
    on_hand: tuple[HandRow, ...] = ()
    name: str = ""
    currency: str = "$"
    trim_end: float = 0.5
    trim_sheet: float = 0.0
    keep: float = 12.0
    spare: int = 0
    supplies: tuple[Supply, ...] = USUAL_SUPPLIES

    @property
    def is_invented(self) -> bool:
        """Whether its name says that nobody sells at its prices; so does a copy's until it is renamed."""
        return self.name.endswith(INVENTED)


def wood_name(wood: str) -> str:
    """What a wood is called in a list: ``yellow poplar``, ``plywood``."""
    return SPECIES.get(wood, wood.replace("_", " ")).lower()


def describe_row(row: SoldRow | HandRow, style: LengthStyle) -> str:
    """What to ask for at the yard: ``1x6 yellow poplar, 8'-0"``; a sheet's width comes before its length."""
    words = [row.name, row.section.lower() if row.kind is StockKind.MOULDING else "", wood_name(row.wood)]
    what = " ".join(dict.fromkeys(word for word in words if word))
    length = format_length(row.length, style)
    if row.kind is StockKind.PANEL:
        length = f"{format_length(row.width, style)} x {length}"
    return f"{what}, {length}"
