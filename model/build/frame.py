"""A frame of stiles and rails with its panels; a column's and a frieze's are made alike."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

from model.board import Board, End, Point2, Stock, StockKind, block
from model.build.groove import Groove
from model.build.lines import LEAST_LAYER, PANEL_LAP, Frame, Rect

Cut = Callable[[Point2, Point2, bool, bool], tuple[Point2, ...]]
"""A member's section by its width, its z, and whether a panel lies at its lower and at its higher edge."""
HAIR = 1e-6
"""A rebate no deeper than this is none, in.: thicknesses that are worked out differ by rounding."""


@dataclass(frozen=True, slots=True)
class FrameWords:
    """What the members are called and lifted with."""

    assembly: str
    name: str


def build_frame(
    frame: Frame, words: FrameWords, stock: Stock, sheet: Stock, sheet_area: Rect, lap: float = PANEL_LAP
) -> tuple[Board, ...]:
    """Stiles, rails and panels of `frame`.

    Solid panels float in grooves; how deep and how large is model.build.groove's. Of sheets each sits in a
    rebate, lapping `lap` behind the members, where the reveal is less than the boards' thickness. Otherwise
    one sheet over `sheet_area` lies behind the whole frame, on packing where the reveal is deeper than the
    boards are thick.
    """
    if frame.groove is not None:
        cut = partial(_groove, frame.groove.depth, frame.front - frame.reveal, sheet.thickness)
        return _members(frame, words, stock, cut) + _floating_panels(frame, frame.groove, words, stock, sheet)
    rebate = stock.thickness - frame.reveal
    rebate = rebate if rebate > HAIR else 0.0
    members = _members(frame, words, stock, partial(_rebate, rebate, lap))
    if rebate:
        return members + _rebated_panels(frame, words, sheet, lap)
    return members + _packing(frame, words, stock, sheet_area) + _sheet(frame, words, sheet, sheet_area)


def _members(frame: Frame, words: FrameWords, stock: Stock, cut: Cut) -> tuple[Board, ...]:
    """Stiles, then rails, each with the section that `cut` gives it."""
    z = (frame.front - stock.thickness, frame.front)
    boards = []
    for i, (x0, y0, x1, y1) in enumerate(frame.stiles):
        section = cut((x0, x1), z, i > 0, i < len(frame.stiles) - 1)
        role = f"{words.name} stile"
        # Grain up: the section runs over (z, x).
        boards.append(
            Board(
                role,
                words.assembly,
                stock,
                "y",
                tuple((w, x) for x, w in reversed(section)),
                End(y0),
                End(y1),
            )
        )
    for i, (x0, y0, x1, y1) in enumerate(frame.rails):
        section = cut((y0, y1), z, i > 0, i < len(frame.rails) - 1)
        role = f"{words.name} {_rail_name(i, len(frame.rails))}"
        boards.append(Board(role, words.assembly, stock, "x", section, End(x0), End(x1)))
    return tuple(boards)


def _rail_name(i: int, count: int) -> str:
    return "bottom rail" if i == 0 else "top rail" if i == count - 1 else "middle rail"


def _rebate(
    rebate: float, lap: float, across: Point2, z: Point2, left: bool, right: bool
) -> tuple[Point2, ...]:
    """Rectangle `across` by `z`, counter-clockwise, its back corners rebated where a panel lies."""
    (a0, a1), (z0, z1) = across, z
    front = [(a1, z1), (a0, z1)]
    if not rebate:
        return ((a0, z0), (a1, z0), *front)
    back_left = [(a0, z0 + rebate), (a0 + lap, z0 + rebate), (a0 + lap, z0)] if left else [(a0, z0)]
    back_right = [(a1 - lap, z0), (a1 - lap, z0 + rebate), (a1, z0 + rebate)] if right else [(a1, z0)]
    return (*back_left, *back_right, *front)


def _groove(
    depth: float, face: float, thick: float, across: Point2, z: Point2, left: bool, right: bool
) -> tuple[Point2, ...]:
    """Rectangle `across` by `z`, counter-clockwise, its edges grooved for a panel that begins at `face`."""
    (a0, a1), (z0, z1), back = across, z, face - thick
    on_right = ((a1, back), (a1 - depth, back), (a1 - depth, face), (a1, face)) if right else ()
    on_left = ((a0, face), (a0 + depth, face), (a0 + depth, back), (a0, back)) if left else ()
    return ((a0, z0), (a1, z0), *on_right, (a1, z1), (a0, z1), *on_left)


def _floating_panels(
    frame: Frame, groove: Groove, words: FrameWords, stock: Stock, sheet: Stock
) -> tuple[Board, ...]:
    """Of the boards' wood, planed to the panels' thickness."""
    wood, face = Stock(StockKind.BOARD, sheet.thickness, stock.wood), frame.front - frame.reveal
    boards = []
    for opening in frame.openings:
        x, y, axis = groove.cut(opening)
        z = (face - sheet.thickness, face)
        boards.append(block(f"{words.name} panel", words.assembly, wood, axis, x, y, z))
    return tuple(boards)


def _rebated_panels(frame: Frame, words: FrameWords, sheet: Stock, lap: float) -> tuple[Board, ...]:
    face = frame.front - frame.reveal
    return tuple(
        block(
            f"{words.name} panel", words.assembly, sheet, "y" if y1 - y0 >= x1 - x0 else "x",
            (x0 - lap, x1 + lap), (y0 - lap, y1 + lap), (face - sheet.thickness, face),
        )
        for x0, y0, x1, y1 in frame.openings
    )  # fmt: skip


def _sheet(frame: Frame, words: FrameWords, sheet: Stock, area: Rect) -> tuple[Board, ...]:
    x0, y0, x1, y1 = area
    face = frame.front - frame.reveal
    axis = "y" if y1 - y0 >= x1 - x0 else "x"
    z = (face - sheet.thickness, face)
    return (block(f"{words.name} panel", words.assembly, sheet, axis, (x0, x1), (y0, y1), z),)


def _packing(frame: Frame, words: FrameWords, stock: Stock, area: Rect) -> tuple[Board, ...]:
    back = frame.front - stock.thickness
    face = frame.front - frame.reveal
    if back - face < LEAST_LAYER / 8:
        return ()
    boards = []
    for axis, word, members in (("y", "stile", frame.stiles), ("x", "rail", frame.rails)):
        for member in members:
            x0, y0, x1, y1 = _overlap(member, area)
            if x1 - x0 > LEAST_LAYER and y1 - y0 > LEAST_LAYER:
                role = f"{words.name} {word} packing"
                boards.append(block(role, words.assembly, stock, axis, (x0, x1), (y0, y1), (face, back)))
    return tuple(boards)


def _overlap(one: Rect, other: Rect) -> Rect:
    return (max(one[0], other[0]), max(one[1], other[1]), min(one[2], other[2]), min(one[3], other[3]))
