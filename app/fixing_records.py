"""How the surround is fixed and where cords run, as the command line prints it. No files, no arguments."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from app.records import PLACES, table_lines
from model.build.cord_way import Way, list_pierced, plan_cord_way
from model.surround import Surround
from model.takeoff.anchor_materials import list_bought
from model.takeoff.anchors import list_order, plan_anchors
from model.takeoff.cord_work import list_cord_work
from render.fixing_sheet import COLUMNS, describe_loads, list_said, row_texts


def fixing_record(surround: Surround) -> dict[str, Any]:
    """Everything for a script: pounds and inches; `cord_way` is None where no cords run."""
    plan, way = plan_anchors(surround), plan_cord_way(surround)
    return {
        "weight": _rounded(plan.weight),
        "lever": _rounded(plan.lever),
        "drop": _rounded(plan.drop),
        "tension_each": _rounded(plan.tension),
        "shear_each": _rounded(plan.shear),
        "used": _rounded(plan.used),
        "needed": plan.needed,
        "anchors": [
            {
                "x": _rounded(anchor.x),
                "y": _rounded(anchor.y),
                "piece": surround.marks[anchor.board],
                "into": anchor.into,
                "upper": anchor.upper,
            }
            for anchor in plan.anchors
        ],
        "not_held": [surround.marks[i] for i in plan.loose],
        "held_in_part": [surround.marks[i] for i in plan.partly],
        "take": [
            {"into": each.into, "length": _rounded(each.length), "count": each.count}
            for each in list_bought(surround)
        ],
        "cord_way": way and _way_record(surround, way),
        "order": list(list_order(surround)),
    }


def _way_record(surround: Surround, way: Way) -> dict[str, Any]:
    return {
        "part": way.part,
        "free": [_rounded(size) for size in way.free],
        "plug": [_rounded(size) for size in way.plug],
        "passes": way.passes,
        "holes": [
            {
                "name": hole.name,
                "axis": hole.axis,
                "centre": [_rounded(place) for place in hole.centre],
                "diameter": _rounded(hole.diameter),
                "pieces": [surround.marks[i] for i in list_pierced(surround.boards, hole)],
            }
            for hole in way.holes
        ],
        "loose_panel": None if way.loose is None else surround.marks[way.loose],
    }


def _rounded(value: float) -> float:
    return round(value, PLACES)


def fixing_lines(surround: Surround) -> Iterable[str]:
    """The same in words: loads, the table of anchors, the work for cords, the order of fitting."""
    plan = plan_anchors(surround)
    yield describe_loads(surround, plan)
    yield ""
    yield from table_lines(
        COLUMNS, [row_texts(surround, n, anchor) for n, anchor in enumerate(plan.anchors, start=1)]
    )
    for said in list_said(surround):
        yield ""
        yield said
    for i, words in list_cord_work(surround).items():
        yield ""
        yield from (f"{surround.marks[i]} {surround.boards[i].role}: {line}" for line in words)
    yield ""
    yield from list_order(surround)
