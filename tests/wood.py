"""Single pieces of wood at given places round an opening, held against the rules. No expectations here."""

from __future__ import annotations

from collections.abc import Sequence

from model.board import Board, End, Point2, Stock, StockKind, block
from model.check.all import check_surround
from model.check.finding import Finding
from model.job import default_job, with_texts
from model.surround import Surround, plan_surround

PINE = Stock(StockKind.BOARD, 0.75, "white_pine")
WIDTH, HEIGHT = 36.0, 30.0
"""The opening of the worked figures, in."""
LONG = 60.0


def place_above(projection: float, distance: float) -> Board:
    """A long shelf across the opening: its underside `distance` above it, its front `projection` out."""
    y = (HEIGHT + distance, HEIGHT + distance + 2)
    return block("shelf top", "shelf", PINE, "x", (-LONG / 2, LONG / 2), y, (0.0, projection))


def place_beside(projection: float, distance: float) -> Board:
    """An upright from the hearth to well over the opening, its inner face `distance` to the right of it."""
    x = (WIDTH / 2 + distance, WIDTH / 2 + distance + 6)
    return block("column stile", "right column", PINE, "y", x, (0.0, 60.0), (0.0, projection))


def place_at_corner(projection: float, beside: float, above: float) -> Board:
    """A block off the upper right corner."""
    x, y = (WIDTH / 2 + beside, WIDTH / 2 + beside + 4), (HEIGHT + above, HEIGHT + above + 4)
    return block("block", "corner block", PINE, "x", x, y, (0.0, projection))


def place_moulding(profile: Sequence[Point2]) -> Board:
    """A moulding across the opening; `profile` is (projection, distance above) from its foot up."""
    faces = [(HEIGHT + distance, out) for out, distance in profile]
    section = ((HEIGHT + profile[0][1], 0.0), (HEIGHT + profile[-1][1], 0.0), *reversed(faces))
    stock = Stock(StockKind.MOULDING, 1.5, "white_pine")
    return Board("bed mould", "bed mould", stock, "x", section, End(-LONG / 2), End(LONG / 2))


def surround_of(*boards: Board, **texts: str) -> Surround:
    """`boards` in place of a whole surround, before an opening 36 by 30 in. with thick enough hearth."""
    settings = {"hearth.thickness": "2"} | {path.replace("__", "."): text for path, text in texts.items()}
    planned = plan_surround(with_texts(default_job(), settings.items()))
    return Surround(planned.job, planned.layout, boards)


def hold(board: Board, **texts: str) -> Finding:
    """The one clearance finding for `board`."""
    findings = check_surround(surround_of(board, **texts))
    (finding,) = (f for f in findings if f.check == "mantel clearance")
    return finding
