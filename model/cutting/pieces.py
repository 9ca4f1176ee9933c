"""The pieces a surround asks of the yard, each with the mark it is traced by. What is sold is not known here.

A glue-up is asked for as its strips and layers. Sizes are rough ones, in inches.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from model.board import AXES, CROSS, Board, End, StockKind
from model.takeoff.naming import name_kinds
from model.takeoff.on_hand import list_yields
from model.takeoff.rough import Rough, glue_up, plan_whole

if TYPE_CHECKING:
    from model.surround import Surround

COLUMNS, FRIEZE, BOTH = "columns", "frieze", "both"
"""Words of the row board.match: whose frames' long members come out of one board each."""


@dataclass(frozen=True, slots=True)
class Source:
    """Where a piece belongs: the job, the board's mark, name and sub-assembly, and its place in the boards.

    `part` says which strip or layer of a glue-up it is, "" for a whole board.
    """

    job: str
    mark: str
    name: str
    assembly: str
    board: int
    part: str = ""


@dataclass(frozen=True, slots=True)
class Material:
    """What a piece is cut from, as the surround says it. `width` is a moulding's own, 0 for all others."""

    kind: StockKind
    wood: str
    thickness: float
    section: str = ""
    width: float = 0.0


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece of rough `length` by `width`. `bare` is its width where it needs no rip of its own, else 0.

    `mitres` are how far each end's cut runs back across the face from the long point; 0 is square.
    """

    source: Source
    material: Material
    length: float
    width: float
    bare: float = 0.0
    mitres: tuple[float, float] = (0.0, 0.0)
    batch: str = ""
    may_turn: bool = False


Widest = Callable[[Material], float]
"""How wide boards of a material are to be had; 0 where none is."""


def list_pieces(job_name: str, surround: Surround, widest: Widest) -> tuple[Piece, ...]:
    """Every piece of `surround`, boards in the order of its kinds; what needs gluing up is in strips."""
    kinds = surround.kinds
    rough, names = plan_glued(surround, widest), name_kinds(surround.boards, kinds)
    return tuple(
        piece
        for kind in kinds
        for board in kind.pieces
        for piece in _list_of(job_name, surround, board, names[kind.mark], rough[kind.mark])
    )


def plan_glued(surround: Surround, widest: Widest) -> dict[str, Rough]:
    """The rough size of each kind, by its mark, in as many strips as boards are to be had wide enough for.

    What comes out of a piece on hand is not parted any further: that was found to be wide enough.
    """
    whole, allow = plan_whole(surround), surround.job.shop.allow
    on_hand = {i for found in list_yields(surround) for i in found.taken}
    return {
        kind.mark: whole[kind.mark]
        if on_hand.issuperset(kind.pieces)
        else glue_up(whole[kind.mark], allow, widest(_material(surround.boards[kind.pieces[0]])))
        for kind in surround.kinds
    }


def _list_of(job: str, surround: Surround, at: int, name: str, made: Rough) -> Iterator[Piece]:
    board = surround.boards[at]
    material = _material(board)
    source = Source(job, surround.marks[at], name, board.assembly, at)
    turns = material.kind is StockKind.PANEL and surround.job.design.panel.grain == "free"
    if made.strips * made.layers == 1:
        bare = 0.0 if made.is_glued else made.width.to_saw
        batch = _batch(job, board, surround.job.design.board.match)
        width = material.width or made.width.rough
        yield Piece(source, material, made.length.rough, width, bare, list_mitres(board), batch, turns)
        return
    for i in range(made.strips * made.layers):
        part = Source(job, source.mark, name, board.assembly, at, _part(made, i))
        yield Piece(part, material, made.length.rough, made.strip_width)


def _material(board: Board) -> Material:
    section = board.worked.name if board.worked is not None else ""
    stock = board.stock
    if stock.kind is StockKind.MOULDING:
        return Material(stock.kind, stock.wood, stock.thickness, section, board.width)
    return Material(stock.kind, stock.wood, stock.thickness)


def _part(glued: Rough, i: int) -> str:
    layer, strip = divmod(i, glued.strips)
    words = []
    if glued.strips > 1:
        words.append(f"strip {strip + 1} of {glued.strips}")
    if glued.layers > 1:
        words.append(f"layer {layer + 1} of {glued.layers}")
    return ", ".join(words)


def _batch(job: str, board: Board, match: str) -> str:
    """The name of what a piece shares a board with, "" where it may come out of any."""
    column = board.role == "column stile" and match in (COLUMNS, BOTH)
    rail = board.role.startswith("frieze ") and board.role.endswith("rail") and match in (FRIEZE, BOTH)
    words = "stiles" if column else "rails"
    return f"{job}: {board.assembly}, {words}" if column or rail else ""


def list_mitres(board: Board) -> tuple[float, float]:
    """How far the mitres at both ends of a flat board run back over its face from their long points.

    Only where both lie across the width with their long points on one edge, as on a picture frame's
    pieces: other ends are bevels, or share no cut with a neighbour turned half round.
    """
    if board.stock.kind is not StockKind.BOARD or board.length_axis != board.axis or len(board.section) != 4:
        return (0.0, 0.0)
    low, high = (_run_back(board, end, way) for end, way in ((board.low, -1), (board.high, 1)))
    if low * high < 0:
        return (0.0, 0.0)
    return (abs(low), abs(high))


def _run_back(board: Board, end: End, way: int) -> float:
    """Inches that an end's cut runs over the width, its sign telling the long point's edge; 0 for others."""
    if end.is_square or end.is_near_square or bool(end.slope_u) == bool(end.slope_v):
        return 0.0
    across = 0 if end.slope_u else 1
    axis = AXES[CROSS[board.axis][across]]
    if abs(board.extent(axis) - board.width) > abs(board.extent(axis) - board.thickness):
        return 0.0
    return way * (end.slope_u or end.slope_v) * board.extent(axis)
