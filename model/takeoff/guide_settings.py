"""Rips and crosscuts with a hand-held circular saw along a guide: equal cuts once, in the order of making.

How far the guide is set off from the cut comes from the job's own saw. Mitre saws and mouldings are
model.takeoff.saw_setups' business.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from math import atan, degrees
from typing import TYPE_CHECKING

from model.board import CROSS, Board, End, Stock, StockKind
from model.reference.lumber import DRESSED_WIDTHS
from model.takeoff.leaning import list_askew
from model.takeoff.marks import Kind
from model.takeoff.materials import Rate, find_rate
from model.takeoff.rough import Rough, find_stock, plan_rough

if TYPE_CHECKING:
    from model.job import Job
    from model.surround import Surround

BEARING = 1.5
"""Least wood beyond the guide's line that a guide is clamped on, in. Shop choice."""
STEPS = 512
"""Sizes are equal when they fall on the same of so many steps to the inch."""


class Action(StrEnum):
    """What is done."""

    RIP = "rip"
    GLUED_RIP = "rip, after gluing"
    TAPER = "rip, tapered"
    CROSSCUT = "crosscut"
    MITRE = "crosscut, mitred"
    BEVEL = "crosscut, blade tilted"


ORDER = (Action.RIP, Action.GLUED_RIP, Action.TAPER, Action.CROSSCUT, Action.MITRE, Action.BEVEL)
"""Along the grain first, so that crosscuts part clean edges; tilting the blade last."""


@dataclass(frozen=True, slots=True)
class Guide:
    """Where the guide lies for one cut, inches, as seen from behind the saw.

    `set_off` is from the cut line to the guide, `on_piece` whether it lies on the wood that is kept,
    `shoe` the shoe's edge that runs along it, `keep` the side of the blade on which the piece lies. `line`
    is the guide's place measured from the piece's reference edge or end.
    """

    set_off: float
    on_piece: bool
    shoe: str
    keep: str
    line: float


@dataclass(frozen=True, slots=True)
class GuideSaw:
    """The saw: shoe to blade on both sides, kerf; `measured` is False while any of them is the usual one."""

    left: Rate
    right: Rate
    kerf: Rate
    measured: bool


@dataclass(frozen=True, slots=True)
class Setting:
    """Equal cuts. `size` is what is kept, in inches; `angle` degrees off square of the guide or the blade,
    of a tapered rip off the straight edge.

    `pieces` are kinds' marks with how many pieces of each. `guide` is None where the blade is tilted: the
    set-off is then found on scrap. `inward` is how far the edge of a tapered rip comes in up the piece, in.,
    below nothing how far it goes out, and `edges` how many edges are sawn so; the size is then what is left
    at the narrow end up to the other edge as it was ripped before.
    """

    action: Action
    stock: Stock
    size: float
    angle: float
    pieces: tuple[tuple[str, int], ...]
    guide: Guide | None
    inward: float = 0.0
    edges: int = 1

    @property
    def count(self) -> int:
        """How many pieces are cut so."""
        return sum(count for _, count in self.pieces)


def find_saw(job: Job) -> GuideSaw:
    """The job's saw, the usual one for whatever was not measured."""
    left, right, kerf = (find_rate(job, f"saw.{name}") for name in ("shoe_left", "shoe_right", "kerf"))
    own = job.shop.saw
    return GuideSaw(left, right, kerf, None not in (own.shoe_left, own.shoe_right, own.kerf))


def place_guide(size: float, saw: GuideSaw) -> Guide:
    """The guide for a cut that keeps `size` inches: on the piece where it is wide enough, else on the waste.

    With the guide on the piece the blade's near side is the cut; on the waste its far side, so that the
    kerf comes on top. The wider side of the shoe is taken where the piece carries it.
    """
    shoes = sorted((("left", saw.left.value), ("right", saw.right.value)), key=lambda shoe: -shoe[1])
    for shoe, off in shoes:
        if size >= off + BEARING:
            return Guide(off, True, shoe, shoe, size - off)
    shoe, off = shoes[0]
    set_off = off + saw.kerf.value
    return Guide(set_off, False, shoe, "right" if shoe == "left" else "left", size + set_off)


@dataclass(frozen=True, slots=True)
class _Sawn:
    """One cut of a piece; fields as in Setting."""

    action: Action
    size: float
    angle: float = 0.0
    inward: float = 0.0
    edges: int = 1

    @property
    def rounded(self) -> _Sawn:
        """The same to STEPS, equal for equal cuts."""
        size, angle, inward = (round(v * STEPS) / STEPS for v in (self.size, self.angle, self.inward))
        return _Sawn(self.action, size, angle, inward, self.edges)


def list_guide_settings(surround: Surround, rough: Mapping[str, Rough] | None = None) -> tuple[Setting, ...]:
    """Each setting once: stock by stock, rips before crosscuts, the largest first, mitres last.

    What is sawn to is the finished size with scribe stock on. Mouldings are left out. `rough` are the rough
    sizes by mark, those out of boards as wide as are commonly stocked where none are given.
    """
    saw = find_saw(surround.job)
    rough = rough or plan_rough(surround)
    found: dict[tuple[Stock, _Sawn], list[tuple[str, int]]] = {}
    for kind in surround.kinds:
        board = surround.boards[kind.pieces[0]]
        stock = find_stock(surround.job, board)
        for cut in dict.fromkeys(cut.rounded for cut in _list_cuts(board, rough[kind.mark])):
            pieces = kind.mark, _pieces(kind, rough[kind.mark], cut.action)
            found.setdefault((stock, cut), []).append(pieces)
    stocks = list(dict.fromkeys(stock for stock, _ in found))
    keys = sorted(found, key=lambda key: (stocks.index(key[0]), *_order(key[1])))
    return tuple(_setting(*key, found[key], saw) for key in keys)


def _order(cut: _Sawn) -> tuple[float, ...]:
    return ORDER.index(cut.action), cut.angle, -cut.size


def _setting(stock: Stock, cut: _Sawn, pieces: Sequence[tuple[str, int]], saw: GuideSaw) -> Setting:
    guide = None if cut.action is Action.BEVEL else place_guide(cut.size, saw)
    return Setting(cut.action, stock, cut.size, cut.angle, tuple(pieces), guide, cut.inward, cut.edges)


def _pieces(kind: Kind, rough: Rough, action: Action) -> int:
    """How many pieces are cut: each strip and layer of a glue-up is one until it is glued."""
    each = rough.strips * rough.layers if action is Action.RIP else 1
    return len(kind.pieces) * each


def _list_cuts(board: Board, rough: Rough) -> Iterator[_Sawn]:
    """Each cut that a piece takes along a guide."""
    if board.stock.kind is StockKind.MOULDING:
        return
    if rough.strips > 1:
        yield _Sawn(Action.RIP, rough.strip_width)
        yield _Sawn(Action.GLUED_RIP, rough.width.to_saw)
    elif not _is_dressed(board, rough):
        yield _Sawn(Action.RIP, rough.width.to_saw)
    yield from _list_tapers(board, rough.width.to_saw)
    angles = list(dict.fromkeys(_end_cut(board, end) for end in (board.low, board.high)))
    for action, angle in angles:
        if action is not Action.CROSSCUT or len(angles) == 1:
            yield _Sawn(action, rough.length.to_saw, angle)


def _list_tapers(board: Board, ripped: float) -> Iterator[_Sawn]:
    """A tapered rip for each edge that is sawn askew of a piece `ripped` inches wide; one for two alike."""
    rips = [_Sawn(Action.TAPER, ripped - abs(e.inward), e.angle, e.inward).rounded for e in list_askew(board)]
    for rip in dict.fromkeys(rips):
        yield replace(rip, edges=rips.count(rip))


def _is_dressed(board: Board, rough: Rough) -> bool:
    """Whether framing is as wide as it is sold, and needs no rip."""
    framing = board.stock.kind is StockKind.FRAMING
    return framing and any(abs(rough.width.to_saw - width) < 1 / STEPS for width in DRESSED_WIDTHS.values())


def _end_cut(board: Board, end: End) -> tuple[Action, float]:
    """A mitre runs over the width, the guide at an angle; a bevel over the thickness, the blade tilted."""
    if board.lean:
        return Action.BEVEL, degrees(atan(abs(board.lean)))
    follows_masonry = board.is_scribed and end == board.low
    if end.is_square or follows_masonry or board.length_axis != board.axis:
        return Action.CROSSCUT, 0.0
    iu, iv = CROSS[board.axis]
    low, high = board.bounds
    across = {"u": high[iu] - low[iu], "v": high[iv] - low[iv]}
    sloped = "u" if abs(end.slope_u) > abs(end.slope_v) else "v"
    over_width = abs(across[sloped] - board.width) < abs(across[sloped] - board.thickness)
    return Action.MITRE if over_width else Action.BEVEL, end.mitre
