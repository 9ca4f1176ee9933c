"""Words for materials and for what could not be had, the same on paper, screen and the command line."""

from __future__ import annotations

from model.board import Stock, StockKind
from model.cutting.pieces import Material
from model.cutting.plan import Short
from model.takeoff.cut_list import describe_stock
from model.units import LengthStyle, format_length


def describe_material(material: Material, style: LengthStyle) -> str:
    """``3/4" yellow poplar board``; a moulding with its section."""
    words = describe_stock(Stock(material.kind, material.thickness, material.wood), style)
    return f"{words}, {material.section.lower()}" if material.kind is StockKind.MOULDING else words


def describe_short(short: Short, marks: str, style: LengthStyle) -> str:
    """Whose pieces they are, what of, why they are not to be had, and the least that would hold one."""
    width, length = (format_length(size, style) for size in (short.wants_width, short.wants_length))
    size = f"{width} wide and {length} long"
    return f"{marks}, {describe_material(short.material, style)}: {short.why}. One takes {size} at least."
