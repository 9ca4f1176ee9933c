"""What is sawn first: the finished size and what is left on it for scribing, trimming and gluing up.

Each allowance is kept apart, since each comes off at its own time: trim in the shop, a glue-up's once it
is dry, scribe stock at the fireplace. Finished sizes are the board's own.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from math import ceil, hypot
from typing import TYPE_CHECKING

import numpy as np

from model.board import AXES, Board, Point2, Stock, StockKind
from model.build.level_backs import PACKING, gap_left, list_level_tapers
from model.once import once
from model.reference.lumber import WIDEST_BOARD
from model.shop import Allowances
from model.takeoff.marks import Kind
from model.takeoff.standing import FACING, list_room, list_seats
from model.takeoff.tapers import list_tapers

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from model.job import Job
    from model.surround import Surround

CLOSE = 1 / 128
"""Sizes that differ by less are equal, in. Shop choice."""
ON_SITE = 1 / 512
"""A side no further from masonry, wall or floor than this is fitted to it, in."""
TRIMMED = (StockKind.BOARD, StockKind.MOULDING, StockKind.FRAMING)
"""Bought longer than needed and with rough ends; sheets are cut to size at once."""
MOST_STRIPS = 40
"""More strips than this are no glue-up. Shop choice."""


Box = tuple[tuple[float, float, float], tuple[float, float, float]]
"""Low and high corner."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """One dimension in inches: the finished size and each allowance over it."""

    finished: float
    scribe: float = 0.0
    trim: float = 0.0
    glue_up: float = 0.0

    @property
    def to_saw(self) -> float:
        """What the last cut in the shop leaves: finished, with scribe stock on."""
        return self.finished + self.scribe

    @property
    def rough(self) -> float:
        """What is taken from the rack."""
        return self.finished + self.scribe + self.trim + self.glue_up


@dataclass(frozen=True, slots=True)
class Rough:
    """Length and width of a piece, and how many strips side by side and layers over each other make it.

    `is_solid` tells boards and framing from sheets and mouldings.
    """

    length: Stretch
    width: Stretch
    strips: int
    layers: int
    is_solid: bool

    @property
    def strip_width(self) -> float:
        """Rough width of each strip of a glue-up; the piece's own where it is none."""
        return (self.width.rough - self.width.trim) / self.strips + self.width.trim

    @property
    def too_wide(self) -> float:
        """Inches by which what is left on makes a piece that is glued up wider than boards are stocked.

        0 where it is wider when finished, or comes out of one board.
        """
        over = self.width.rough - self.width.glue_up - WIDEST_BOARD
        return over if self.strips > 1 and self.width.finished <= WIDEST_BOARD and over > CLOSE else 0.0

    @property
    def is_glued(self) -> bool:
        """Whether it is trimmed after gluing, so that no piece may be taken as it is sold."""
        return self.strips * self.layers > 1 or self.width.glue_up > 0


def plan_rough(surround: Surround) -> dict[str, Rough]:
    """The rough size of each kind of piece, by its mark, out of boards as wide as are commonly stocked.

    Like pieces all get what any of them needs.
    """
    return once(surround, "rough", lambda: _plan_rough(surround))


def _plan_rough(surround: Surround) -> dict[str, Rough]:
    allow = surround.job.shop.allow
    return {mark: glue_up(rough, allow, WIDEST_BOARD) for mark, rough in plan_whole(surround).items()}


def plan_whole(surround: Surround) -> dict[str, Rough]:
    """The same where boards are to be had as wide as the rough sizes want them.

    What is wider than boards are stocked even when it is finished is in strips.
    """
    return once(surround, "whole", lambda: _plan_whole(surround))


def _plan_whole(surround: Surround) -> dict[str, Rough]:
    touched = list_touched(surround)
    parts = list_glue_ups(surround.boards)
    allow = surround.job.shop.allow
    rough = {}
    for kind in surround.kinds:
        board = surround.boards[kind.pieces[0]]
        largest = _largest([surround.boards[i] for i in kind.pieces])
        rough[kind.mark] = _rough(board, largest, allow, *_most(kind, touched, parts))
        gap = max(gap_left(surround.layout, surround.boards[i]) for i in kind.pieces)
        if gap:
            rough[kind.mark] = _reach_back(board, rough[kind.mark], gap)
    return rough


def glue_up(rough: Rough, allow: Allowances, widest: float) -> Rough:
    """`rough` in more strips where boards are narrower than a strip of it: no wider than `widest` in.

    As it is where none are known, `widest` 0, and where it would take more than MOST_STRIPS.
    """
    trim = rough.width.trim
    if not rough.is_solid or widest <= trim or _fits(rough, widest):
        return rough
    width = replace(rough.width, glue_up=rough.width.glue_up or allow.glue_width)
    length = replace(rough.length, glue_up=rough.length.glue_up or allow.glue_length)
    strips = ceil((width.rough - trim) / (widest - trim) - CLOSE)
    return replace(rough, length=length, width=width, strips=strips) if strips <= MOST_STRIPS else rough


def _fits(rough: Rough, widest: float) -> bool:
    """Whether a strip is to be had: as wide as planned, or a whole piece as wide as a board is sold."""
    as_sold = not rough.is_glued and abs(rough.width.to_saw - widest) <= CLOSE
    return rough.strip_width <= widest + CLOSE or as_sold


def _reach_back(board: Board, rough: Rough, gap: float) -> Rough:
    """With so much more to scribe on the side behind which masonry falls back that it does not follow."""
    if board.length_axis == "z":
        return replace(rough, length=replace(rough.length, scribe=rough.length.scribe + gap))
    return replace(rough, width=replace(rough.width, scribe=rough.width.scribe + gap))


def _most(
    kind: Kind, touched: Mapping[int, tuple[int, int]], parts: Mapping[int, int]
) -> tuple[int, int, int]:
    ends, edges = zip(*(touched[i] for i in kind.pieces), strict=True)
    return max(ends), max(edges), max(parts[i] for i in kind.pieces)


def _largest(boards: Sequence[Board]) -> Point2:
    """Length and width that serve each of a kind: like pieces may differ by less than a mark shows."""
    return max(board.length for board in boards), max(board.width for board in boards)


def _rough(board: Board, size: Point2, allow: Allowances, ends: int, edges: int, parts: int) -> Rough:
    """Of finished `size`; `ends` and `edges` are fitted on site; it is one of `parts` glued edge to edge."""
    layers = max(1, ceil(board.thickness / board.stock.thickness - CLOSE)) if _is_solid(board) else 1
    strips = max(1, ceil(board.width / WIDEST_BOARD - CLOSE)) if _is_solid(board) else 1
    glued = strips > 1 or layers > 1 or parts > 1
    length = Stretch(
        size[0],
        ends * allow.scribe,
        2 * allow.trim_end if board.stock.kind in TRIMMED else 0.0,
        allow.glue_length if glued else 0.0,
    )
    width = Stretch(
        size[1],
        edges * allow.scribe,
        2 * allow.trim_edge if board.stock.kind is StockKind.BOARD else 0.0,
        allow.glue_width / parts if glued else 0.0,
    )
    return Rough(length, width, strips, layers, _is_solid(board))


def _is_solid(board: Board) -> bool:
    return board.stock.kind in (StockKind.BOARD, StockKind.FRAMING)


def find_stock(job: Job, board: Board) -> Stock:
    """What a piece is sawn out of: wood thinner than the job's boards is planed out of one of those."""
    stock, usual = board.stock, job.design.board.thickness
    is_thin = stock.kind is StockKind.BOARD and stock.thickness < usual
    return replace(stock, thickness=usual) if is_thin else stock


def list_touched(surround: Surround) -> dict[int, tuple[int, int]]:
    """For each board how many of its ends and of its edges lie against masonry, wall, floor or ceiling.

    Broad faces do not count, nor do framing and packing: neither is scribed, framing is shimmed.
    """
    lies_on = _list_sides_on_standing(surround)
    touched = {}
    for i, board in enumerate(surround.boards):
        if board.role in PACKING:
            touched[i] = 0, 0
            continue
        framing = board.stock.kind is StockKind.FRAMING
        sides = set() if framing else lies_on[i]
        axes = [axis for axis, _ in sides]
        touched[i] = axes.count(board.length_axis), axes.count(_width_axis(board))
    return touched


def _list_sides_on_standing(surround: Surround) -> list[set[tuple[str, int]]]:
    """Axis and way of each side of each board that lies on what stands there; pads and backings count
    for the one board that they are for."""
    boards, layout = surround.boards, surround.layout
    room, seats = list_room(boards, layout), list_seats(boards, layout)
    counts = np.zeros((len(boards), len(room) + len(seats)), dtype=bool)
    counts[:, : len(room)] = True
    for k, (i, _) in enumerate(seats, len(room)):
        counts[i, k] = True
    standing = [solid.bounds for solid in (*room, *(solid for _, solid in seats))]
    sides = _list_sides([board.bounds for board in boards], standing, counts)
    for i, solid in seats:
        if solid.role == FACING and _follows(boards[i]):
            sides[i].add(("z", -1))
    return sides


def _follows(board: Board) -> bool:
    """Whether its back is cut askew to what it lies on, which bounds do not tell."""
    return board.is_scribed or bool(list_tapers(board) or list_level_tapers(board))


def _list_sides(
    boxes: Sequence[Box], standing: Sequence[Box], counts: NDArray[np.bool_]
) -> list[set[tuple[str, int]]]:
    """Axis and way of each side of each box that lies on one of those that stand there and count for it."""
    low, high = np.moveaxis(np.array(boxes), 1, 0)[:, :, None]
    from_low, from_high = np.moveaxis(np.array(standing), 1, 0)[:, None]
    x, y, z = np.moveaxis((low < from_high - ON_SITE) & (from_low + ON_SITE < high), 2, 0)
    beside = np.stack([y & z, x & z, x & y], axis=2) & counts[:, :, None]
    sides: list[set[tuple[str, int]]] = [set() for _ in boxes]
    for way, gap in ((-1, low - from_high), (1, high - from_low)):
        lies_on = (beside & (np.abs(gap) <= ON_SITE)).any(axis=1)
        for i, axis in np.argwhere(lies_on).tolist():
            sides[i].add((AXES[axis], way))
    return sides


def _width_axis(board: Board) -> str:
    """The room axis that a board's width lies along, as nearly as any does."""
    across = [axis for axis in AXES if axis != board.length_axis]
    width = board.width
    return min(across, key=lambda axis: abs(board.extent(axis) - width))


def list_glue_ups(boards: Sequence[Board]) -> dict[int, int]:
    """For each board how many like ones lie edge to edge with it, itself included: a shelf's layer, say."""
    runs: dict[tuple[object, ...], list[int]] = {}
    for i, board in enumerate(boards):
        axis = _width_axis(board)
        rest = [board.bounds[end][k] for end in (0, 1) for k in range(3) if AXES[k] != axis]
        key = (board.role, board.assembly, board.stock, board.length_axis, axis, *(round(r, 3) for r in rest))
        runs.setdefault(key, []).append(i)
    joined = (
        group for key, run in runs.items() for group in _list_joined(boards, run, AXES.index(str(key[4])))
    )
    return {i: len(group) for group in joined for i in group}


def _list_joined(boards: Sequence[Board], run: Sequence[int], k: int) -> list[list[int]]:
    """The boards of a run in groups that hang together, edge on edge along axis `k`."""
    groups: list[list[int]] = []
    for i in sorted(run, key=lambda i: boards[i].bounds[0][k]):
        joined = groups and abs(boards[groups[-1][-1]].bounds[1][k] - boards[i].bounds[0][k]) <= ON_SITE
        if joined:
            groups[-1].append(i)
        else:
            groups.append([i])
    return groups


def shortest_line(board: Board) -> float:
    """Inches along the grain between the two ends where they are nearest: the short points of its mitres."""
    if board.lean:
        return board.extent(board.length_axis) * hypot(1.0, board.lean)
    if board.length_axis != board.axis:
        return board.length
    return min(board.high.position(u, v) - board.low.position(u, v) for u, v in board.section)
