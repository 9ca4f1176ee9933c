"""What to buy for a plan: each size with its count, price, yield, waste and spare, and what it comes to.

Money is in whole hundredths. Rows without a price are listed as missing and add nothing to any total.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from model.board import StockKind
from model.cutting.pieces import Material, Source
from model.cutting.plan import CuttingPlan, GroupPlan, Sawn, Short
from model.cutting.stock_list import HandRow, SoldRow, StockList, describe_row, wood_name
from model.cutting.task import SawnBoard, Wanted
from model.takeoff.cut_list import thickness_style
from model.units import LengthStyle, format_length


@dataclass(frozen=True, slots=True)
class Line:
    """One size: `count` of it for the plan and `spare` over. Areas of face in square units of the tasks.

    `made` is what becomes pieces, `kept` what is left and worth keeping, of `bought` in all, spare boards
    left out. `material` is what the pieces are; a moulding run to order is ordered by it.
    """

    row: SoldRow | HandRow
    material: Material
    count: int
    spare: int
    sources: tuple[Source, ...]
    bought: int
    made: int
    kept: int

    @property
    def price(self) -> int | None:
        """Hundredths for one, None where it is not known; nothing for what lies there."""
        return self.row.price if isinstance(self.row, SoldRow) else 0

    @property
    def cost(self) -> int | None:
        """What `count` of it costs together, None without a price."""
        return None if self.price is None else self.price * self.count

    @property
    def spare_cost(self) -> int | None:
        """What the spare ones cost, None without a price."""
        return None if self.price is None else self.price * self.spare

    @property
    def waste(self) -> float:
        """The part that becomes neither a piece nor an offcut worth keeping, from 0 to 1."""
        return max(0.0, 1 - (self.made + self.kept) / self.bought) if self.bought else 0.0

    @property
    def waste_cost(self) -> int | None:
        """What that part costs, None without a price."""
        return None if self.cost is None else round(self.waste * self.cost)


@dataclass(frozen=True, slots=True)
class Total:
    """What is bought under one heading, spare boards included. `missing` counts lines without a price."""

    heading: str
    count: int
    cost: int
    missing: int


@dataclass(frozen=True, slots=True)
class BuyingList:
    """`lines` are bought, `used` lie there already. `cost` and `spare_cost` are of what has a price.

    `short` are pieces that nothing on the stock list holds: neither on a line nor in any sum. `is_invented`
    where the list's prices are.
    """

    lines: tuple[Line, ...]
    used: tuple[Line, ...]
    totals: tuple[Total, ...]
    currency: str
    short: tuple[Short, ...] = ()
    is_invented: bool = False

    @property
    def cost(self) -> int:
        """Without spare boards: what the plan costs."""
        return sum(line.cost or 0 for line in self.lines)

    @property
    def spare_cost(self) -> int:
        """What all spare boards cost."""
        return sum(line.spare_cost or 0 for line in self.lines)

    @property
    def total(self) -> int:
        """What is paid."""
        return self.cost + self.spare_cost

    @property
    def missing(self) -> tuple[Line, ...]:
        """Lines that no price is known for."""
        return tuple(line for line in self.lines if line.price is None)

    @property
    def waste_cost(self) -> int:
        """What of the cost is neither pieces nor worth keeping."""
        return sum(line.waste_cost or 0 for line in self.lines)


def list_buying(plan: CuttingPlan) -> BuyingList:
    """Everything a plan is cut from, heading by heading in the order of the stock list."""
    lines = [line for group in plan.groups for line in _list_lines(group, plan.order.stock_list)]
    bought = [line for line in lines if isinstance(line.row, SoldRow)]
    used = [line for line in lines if isinstance(line.row, HandRow)]
    headings = list(dict.fromkeys(trade_of(line.row) for line in bought))
    bought.sort(key=lambda line: headings.index(trade_of(line.row)))
    totals = tuple(_total(name, [e for e in bought if trade_of(e.row) == name]) for name in headings)
    stock_list = plan.order.stock_list
    invented = stock_list.is_invented
    return BuyingList(tuple(bought), tuple(used), totals, stock_list.currency, plan.short, invented)


def trade_of(row: SoldRow | HandRow) -> str:
    """The heading a row is bought under, "" for what lies there."""
    return row.trade if isinstance(row, SoldRow) else ""


def _total(heading: str, lines: Sequence[Line]) -> Total:
    return Total(
        heading,
        sum(line.count + line.spare for line in lines),
        sum((line.cost or 0) + (line.spare_cost or 0) for line in lines),
        sum(line.price is None for line in lines),
    )


def _list_lines(group: GroupPlan, stock_list: StockList) -> list[Line]:
    """A line for each row the group is cut from, the narrow before the wide, the short before the long."""
    by_stock: dict[str, list[Sawn]] = {}
    for sawn in group.sawn:
        by_stock.setdefault(sawn.cut.stock, []).append(sawn)
    lines = [_line(group, key, cut, stock_list) for key, cut in by_stock.items()]
    return sorted(lines, key=lambda line: (line.row.width, line.row.length))


def _line(group: GroupPlan, key: str, sawn: Sequence[Sawn], stock_list: StockList) -> Line:
    row = sawn[0].row
    stock = next(each for each in group.task.stock if each.key == key)
    wanted = {each.key: each for each in group.task.wanted}
    return Line(
        row,
        group.group.material,
        len(sawn),
        _spare(row, len(sawn), stock_list),
        tuple(source for each in sawn for source in each.sources),
        stock.length * stock.width * len(sawn),
        sum(_made(each, wanted) for each in sawn),
        sum(left.length * left.width for each in sawn for left in each.left),
    )


def _spare(row: SoldRow | HandRow, count: int, stock_list: StockList) -> int:
    """Whole boards over: the row's own number or else the list's, as far as there are so many."""
    if isinstance(row, HandRow):
        return 0
    spare = stock_list.spare if row.spare is None else row.spare
    return spare if row.limit is None else max(0, min(spare, row.limit - count))


def _made(sawn: Sawn, wanted: dict[str, Wanted]) -> int:
    if isinstance(sawn.cut, SawnBoard):
        return sum(face_of(wanted[key]) for lane in sawn.cut.lanes for key in lane.pieces)
    return sum(piece.length * piece.width for piece in sawn.cut.pieces)


def face_of(piece: Wanted) -> int:
    """Square units of a piece's face: its outline without what its mitres take off."""
    return piece.length * piece.width - piece.width * (piece.mitre_low + piece.mitre_high) // 2


def describe_line(line: Line, style: LengthStyle) -> str:
    """What to ask for: the row, and for a moulding run to order which section in which size."""
    row, material = line.row, line.material
    if row.kind is not StockKind.MOULDING or (row.section and row.width and row.thickness):
        return describe_row(row, style)
    return describe_moulding(row, material, style)


def describe_moulding(row: SoldRow | HandRow, material: Material, style: LengthStyle) -> str:
    """A moulding with its section and size, whether its row names them or not."""
    sides = (material.thickness, material.width)
    size = " x ".join(format_length(side, thickness_style(style)) for side in sides)
    length = format_length(row.length, style)
    return f"{row.name}, {material.section.lower()} {size}, {wood_name(row.wood)}, {length}".lstrip(", ")
