"""Values worth stopping at while an edge is moved: proportions, and boards as they are sold.

They hold as long as nothing but the edge's own parameter changes. Clearances are limits' beside this.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from model.board import StockKind
from model.check.finding import Guide
from model.check.proportion import list_guides
from model.cutting.pieces import Piece, list_pieces
from model.cutting.serving import Serving
from model.cutting.stock_list import StockList
from model.errors import Refused
from model.job import Job
from model.shaping.grip import Grip, move_edge
from model.shaping.snap import SAME, Mark, is_built
from model.surround import Surround, plan_surround
from model.units import round_length

TRIED = 1 / 16
"""How far an edge is moved to see what follows it, inches. Shop choice."""
LEAST_RATE, MOST_RATE = 1e-3, 2.0
"""Inches that a size changes for one of the parameter where it follows it; more is a piece made otherwise."""
Pieces = Mapping[tuple[int, str], Piece]


def list_marks(job: Job, grip: Grip, stock_list: StockList, guide: str = "") -> tuple[Mark, ...]:
    """Every mark of `grip`; some 20 ms of work.

    With the name of a `guide` only that proportion counts, on whatever edge it hangs; else those that are
    advised for the grip's own parameter.
    """
    pair = _try_both(job, grip)
    if pair is None:
        return ()
    return (*_list_stock_marks(job, grip, pair, stock_list), *_list_guide_marks(job, grip, pair, guide))


@dataclass(frozen=True, slots=True)
class _Pair:
    """The surround as it is and with the parameter moved by `moved`."""

    here: Surround
    there: Surround
    moved: float


def _try_both(job: Job, grip: Grip) -> _Pair | None:
    """None where the parameter can be moved neither way."""
    here = plan_surround(move_edge(job, grip, grip.value))
    for moved in (TRIED, -TRIED):
        try:
            there = plan_surround(move_edge(job, grip, grip.value + moved))
        except Refused:
            continue
        if there.layout.shortfalls == here.layout.shortfalls:
            return _Pair(here, there, moved)
    return None


def _list_guide_marks(job: Job, grip: Grip, pair: _Pair, wanted: str) -> Iterator[Mark]:
    """Where the design's own size would be the advised one: both go straight as the parameter moves."""
    for here, there in zip(list_guides(pair.here), list_guides(pair.there), strict=True):
        if not (here.name == wanted if wanted else here.path == grip.path):
            continue
        single = here.advised_low == here.advised_high
        for which in ("advised_low",) if single else ("advised_low", "advised_high"):
            advised = getattr(here, which)
            rate = (there.own - here.own - getattr(there, which) + advised) / pair.moved
            if abs(rate) > LEAST_RATE:
                value = grip.value + (advised - here.own) / rate
                yield from _mark(job, grip, round_length(value, job.about.length_style), _say_guide(here))


def _say_guide(guide: Guide) -> str:
    return f"proportion: {guide.name[:1].lower()}{guide.name[1:]}"


def _list_stock_marks(job: Job, grip: Grip, pair: _Pair, stock_list: StockList) -> Iterator[Mark]:
    """Where a piece is as wide as a board is sold, so that it need not be ripped; each value once."""
    serving = Serving(stock_list)
    here, there = _list_sawn(pair.here, serving), _list_sawn(pair.there, serving)
    told: set[float] = set()
    for key, piece in here.items():
        rate = (there[key].bare - piece.bare) / pair.moved if key in there and piece.bare else 0.0
        if not LEAST_RATE < abs(rate) <= MOST_RATE + SAME:
            continue
        for width, name in _list_widths(serving, piece):
            value = grip.value + (width - piece.bare) / rate
            if round(value, 6) not in told:
                told.add(round(value, 6))
                yield from _mark(job, grip, value, f"{piece.source.name} as wide as a {name} is sold")


def _list_sawn(surround: Surround, serving: Serving) -> Pieces:
    """Solid pieces by the place of their board and their part of it."""
    return {
        (piece.source.board, piece.source.part): piece
        for piece in list_pieces("", surround, serving.widest)
        if piece.material.kind is StockKind.BOARD
    }


def _list_widths(serving: Serving, piece: Piece) -> dict[tuple[float, str], None]:
    """Widths in which what a piece is cut from is sold or lies there, each with its name."""
    rows = (serving.rows[key] for key in serving.keys_for(serving.listed(piece.material)))
    return dict.fromkeys((row.width, row.name) for row in rows)


def _mark(job: Job, grip: Grip, value: float, reason: str) -> Iterator[Mark]:
    """A mark at `value`, none where that cannot be built."""
    if is_built(job, grip, value):
        yield Mark(value, reason)
