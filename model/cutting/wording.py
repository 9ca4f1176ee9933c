"""Words for materials, for how good a plan is and for what is not to be had, the same wherever they stand."""

from __future__ import annotations

from math import ceil

from model.board import Stock, StockKind
from model.cutting.frozen import Outgrown
from model.cutting.pieces import Material
from model.cutting.plan import CuttingPlan, Short
from model.money import format_money
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


def describe_outgrown(piece: Outgrown, style: LengthStyle) -> str:
    """The piece, its board, its size as planned and as it is wanted now, rough both."""
    planned, now = (
        " x ".join(format_length(size, style) for size in sizes) for sizes in (piece.planned, piece.now)
    )
    part = f" ({piece.source.part})" if piece.source.part else ""
    return f"{piece.source.mark}{part} on board {piece.number}: {planned}, now {now}"


def describe_bound(plan: CuttingPlan, currency: str) -> str:
    """How good the plan is, in money: proven, or how far off it may be at most."""
    cost, bound = (format_money(value, currency) for value in (plan.cost, plan.bound))
    if plan.is_proven:
        return f"Proven: no plan costs less than {cost}." if plan.cost else "Proven: no plan takes less wood."
    if plan.cost == plan.bound:
        return "What has no price may be had out of less wood; the rest is proven."
    off = ceil((plan.cost - plan.bound) * 1000 / max(plan.bound, 1)) / 10
    gap = format_money(plan.cost - plan.bound, currency)
    return f"Within {gap} ({off:g} %) of the best there can be: no plan costs less than {bound}, this {cost}."
