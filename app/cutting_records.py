"""What the cutting command prints for scripts; what it says in words stands in app.cutting_lines."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from model.cutting.buying import BuyingList, Line, describe_line
from model.cutting.frozen import Outgrown, list_outgrown
from model.cutting.order import Taken
from model.cutting.pieces import Source
from model.cutting.places import Place, list_places
from model.cutting.plan import CuttingPlan, GroupPlan, Sawn, Short
from model.cutting.printed import Change
from model.cutting.stock_list import HandRow, SoldRow, describe_row
from model.cutting.task import SawnSheet, to_inches
from model.money import HUNDREDTHS
from model.units import LengthStyle


def cutting_record(
    plan: CuttingPlan,
    buying: BuyingList,
    changes: Sequence[Change] | None,
    style: LengthStyle,
    bought: Sequence[CuttingPlan] = (),
) -> dict[str, Any]:
    """Everything for a script: lengths in inches, money in the list's currency, None where not known."""
    return {
        "jobs": list(plan.order.jobs),
        "stock_list": plan.order.stock_list.name,
        "currency": buying.currency,
        "kerf": plan.order.kerf,
        "cost": _money(plan.cost),
        "bound": _money(plan.bound),
        "proven": plan.is_proven,
        "spare_cost": _money(buying.spare_cost),
        "total": _money(buying.total),
        "waste_cost": _money(buying.waste_cost),
        "plans": [_group_record(group, style) for group in plan.groups],
        "bought": [_group_record(group, style) for each in bought for group in each.groups],
        "smaller_since": [_outgrown_record(p) for each in bought for p in list_outgrown(each, plan.order)],
        "buy": [_line_record(line, style) for line in buying.lines],
        "use": [_line_record(line, style) for line in buying.used],
        "totals": [
            {"heading": t.heading, "count": t.count, "cost": _money(t.cost), "missing_prices": t.missing}
            for t in buying.totals
        ],
        "missing_prices": [describe_line(line, style) for line in buying.missing],
        "offcuts": [_offcut_record(sawn, style) for sawn in plan.sawn for _ in sawn.left[:1]],
        "short": [_short_record(short) for short in plan.short],
        "from_pieces_on_hand": [_taken_record(taken) for taken in plan.order.taken],
        "from_bought_boards": [_taken_record(taken) for taken in plan.order.settled],
        "notes": list(plan.order.notes),
        "changes": None
        if changes is None
        else [{"item": c.item, "before": c.before, "now": c.now} for c in changes],
    }


def _outgrown_record(piece: Outgrown) -> dict[str, Any]:
    sizes = zip(("length", "width", "length_now", "width_now"), (*piece.planned, *piece.now), strict=True)
    return {"board": piece.number, **_source_record(piece.source), **dict(sizes)}


def _money(hundredths: int | None) -> float | None:
    return None if hundredths is None else hundredths / HUNDREDTHS


def _group_record(group: GroupPlan, style: LengthStyle) -> dict[str, Any]:
    material, proof = group.group.material, group.proof
    scale = {"cost": proof.cost / HUNDREDTHS, "bound": proof.bound / HUNDREDTHS}
    wood = {f"{name}_board_feet": value for name, value in scale.items()}
    return {
        "kind": str(material.kind),
        "wood": material.wood,
        "thickness": material.thickness,
        "section": material.section,
        "priced": group.is_priced,
        **(scale if group.is_priced else {"cost": None, "bound": None, **wood}),
        "proven": proof.is_proven,
        "sheets" if group.group.is_sheet else "boards": [_sawn_record(s, group, style) for s in group.sawn],
    }


def _sawn_record(sawn: Sawn, group: GroupPlan, style: LengthStyle) -> dict[str, Any]:
    row = sawn.row
    places = list_places(sawn, group)
    record: dict[str, Any] = {
        "number": sawn.number,
        "stock": describe_row(row, style),
        "length": row.length,
        "width": row.width or group.group.material.width,
        "price": _money(row.price) if isinstance(row, SoldRow) else 0.0,
        "on_hand": isinstance(row, HandRow),
    }
    if isinstance(sawn.cut, SawnSheet):
        record["pieces"] = [_place_record(place) for place in places]
        record["cuts"] = [
            {
                "number": number,
                "axis": cut.axis,
                "at": to_inches(cut.at),
                "from": [to_inches(cut.x0), to_inches(cut.y0)],
                "to": [to_inches(cut.x1), to_inches(cut.y1)],
            }
            for number, cut in enumerate(sawn.cut.cuts, start=1)
        ]
    else:
        record["lanes"] = [
            {
                "width": to_inches(lane.width),
                "pieces": [_place_record(place) for place in places if place.lane == number],
            }
            for number, lane in enumerate(sawn.cut.lanes, start=1)
        ]
    record["offcuts"] = [
        {"length": to_inches(left.length), "width": to_inches(left.width)} for left in sawn.left
    ]
    return record


def _place_record(place: Place) -> dict[str, Any]:
    return {
        **_source_record(place.source),
        "along": to_inches(place.along),
        "across": to_inches(place.across),
        "length": to_inches(place.length),
        "width": to_inches(place.width),
        "turned": place.turned,
    }


def _source_record(source: Source) -> dict[str, Any]:
    return {
        "job": source.job,
        "mark": source.mark,
        "name": source.name,
        "assembly": source.assembly,
        "part": source.part,
    }


def _taken_record(taken: Taken) -> dict[str, Any]:
    return {**_source_record(taken.source), "out_of": taken.out_of}


def _line_record(line: Line, style: LengthStyle) -> dict[str, Any]:
    row = line.row
    return {
        "heading": row.trade if isinstance(row, SoldRow) else "On hand",
        "item": describe_line(line, style),
        "kind": str(row.kind),
        "wood": row.wood,
        "name": row.name,
        "length": row.length,
        "width": row.width or line.material.width,
        "thickness": row.thickness or line.material.thickness,
        "count": line.count,
        "spare": line.spare,
        "price": _money(line.price),
        "cost": _money(line.cost),
        "spare_cost": _money(line.spare_cost),
        "yields": [_source_record(source) for source in line.sources],
        "waste_percent": round(100 * line.waste, 1),
        "waste_cost": _money(line.waste_cost),
    }


def _offcut_record(sawn: Sawn, style: LengthStyle) -> dict[str, Any]:
    return {
        "number": sawn.number,
        "stock": describe_row(sawn.row, style),
        "parts": [{"length": to_inches(left.length), "width": to_inches(left.width)} for left in sawn.left],
    }


def _short_record(short: Short) -> dict[str, Any]:
    return {
        "pieces": [_source_record(source) for source in short.sources],
        "kind": str(short.material.kind),
        "wood": short.material.wood,
        "thickness": short.material.thickness,
        "why": short.why,
        "wants_length": short.wants_length,
        "wants_width": short.wants_width,
    }
