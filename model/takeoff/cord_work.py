"""What a cord way asks of single pieces: holes to bore and a cut-out to saw, in words for the cut list."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.board import AXES, Board
from model.build.access_panel import ACCESS_PANEL, LIP
from model.build.cord_way import Hole, Way, is_within, list_pierced, plan_cord_way
from model.units import LengthStyle, format_length

if TYPE_CHECKING:
    from model.surround import Surround

LOW_END = {"x": "left", "y": "lower", "z": "back"}
"""Which end of a piece in place lies low on each axis."""
FASTENING = "held with hook-and-loop tape on the lip"


def list_cord_work(surround: Surround) -> dict[int, list[str]]:
    """Words for each board that is worked on, by its index; empty without a way."""
    way = plan_cord_way(surround)
    style = surround.job.about.length_style
    work: dict[int, list[str]] = {}
    if way is None:
        return work
    for hole in way.holes:
        for i in list_pierced(surround.boards, hole):
            work.setdefault(i, []).append(_describe_hole(surround.boards[i], hole, style))
    if way.loose is not None and way.sheet is not None and way.cut_out is not None:
        free = format_length(surround.job.design.cord.panel_clearance, style)
        work.setdefault(way.loose, []).append(f"loose, {free} free on each side, {FASTENING}")
        work.setdefault(way.sheet, []).append(_describe_cut_out(surround, way, style))
    return work


def _describe_hole(board: Board, hole: Hole, style: LengthStyle) -> str:
    size = f"{format_length(hole.diameter, style)} dia."
    along = board.length_axis if board.length_axis != hole.axis else ""
    first, second = sorted((a for a in AXES if a != hole.axis), key=lambda axis: axis != along)
    places = [f"{_off(board, hole, axis, style)} from its {LOW_END[axis]} edge" for axis in (first, second)]
    if along:
        places[0] = places[0].replace(" edge", " end")
    verb = f"bore {size}" if is_within(board, hole, 0.0) else f"notch for a hole of {size}"
    return f"{verb} for cords, centre {' and '.join(places)}"


def _off(board: Board, hole: Hole, axis: str, style: LengthStyle) -> str:
    i = AXES.index(axis)
    return format_length(hole.centre[i] - board.bounds[0][i], style)


def _describe_cut_out(surround: Surround, way: Way, style: LengthStyle) -> str:
    assert way.loose is not None
    assert way.sheet is not None
    assert way.cut_out is not None
    panel, sheet = surround.boards[way.loose].bounds[0], surround.boards[way.sheet].bounds[0]
    wide, high = (format_length(size, style) for size in way.cut_out)
    left, up = (format_length(panel[i] + LIP - sheet[i], style) for i in (0, 1))
    role = ACCESS_PANEL
    return (
        f"saw out {wide} wide, {high} high behind the {role}, {left} from its left edge, {up} from its lower"
    )
