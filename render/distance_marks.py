"""Each board's tightest place by the clearance rules, marked over a view with its distance."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import isfinite, isnan

from model.check.board_distance import BoardDistance, list_board_distances
from model.check.finding import Status
from model.check.wording import Wording
from model.once import once
from model.surround import Surround
from render.board_outline import place_point
from render.drawing import Lines, Mark, Pen, Point, Segment, Text
from render.names import Name, place_names

ARM = 0.035
"""Half an upright cross at each place, inches on paper. Shop choice."""
NEAR = 0.02
"""Places nearer to each other than this, inches on paper, are marked once."""
ELEVATIONS = ("front", "side", "vertical_section")
RANK = (Status.FAIL, Status.UNKNOWN, Status.WARN, Status.PASS)


def draw_distances(surround: Surround, view: str, ratio: float, under: Sequence[Mark]) -> list[Mark]:
    """A cross for every board, and for the tightest of each part its distance, clear of lines and writing.

    Both ways to measure stand there where they do not agree. Nothing from above, where one board hides
    another. What every board's distance is stands on the page that explains its part.
    """
    if view not in ELEVATIONS:
        return []
    wording = Wording(surround.job.about.length_style)
    seen: list[Point] = []
    said: set[str] = set()
    crosses: list[Mark] = []
    names: list[Name] = []
    pens: dict[str, Pen] = {}
    distances = once(surround, "board distances", lambda: sorted(list_board_distances(surround), key=_rank))
    for board in distances:
        at = place_point(board.at, view)
        if any(abs(at[0] - x) < NEAR * ratio and abs(at[1] - y) < NEAR * ratio for x, y in seen):
            continue
        seen.append(at)
        crosses.append(_cross(at, ratio, board))
        if board.part not in said and not isnan(board.measured + board.needed):
            said.add(board.part)
            pens[board.mark] = _pen(board)
            names.append(Name(_say(board, wording), at, 1.5 * ARM * ratio, board.mark))
    return [*crosses, *(_tint(mark, pens) for mark in place_names(names, (*under, *crosses), ratio))]


def _rank(board: BoardDistance) -> tuple[int, float]:
    spare = board.measured - board.needed
    return RANK.index(board.status), spare if isfinite(spare) else 0.0


def _say(board: BoardDistance, wording: Wording) -> str:
    """Its distance; straight to the corner and the larger of level and plumb where only one is enough."""
    straight = wording.distance(board.measured)
    if not board.is_disputed:
        return straight
    return f"{straight} straight, {wording.distance(board.square)} level or plumb"


def _pen(board: BoardDistance) -> Pen:
    return Pen.FAULT if board.status is Status.FAIL else Pen.CLEARANCE


def _cross(at: Point, ratio: float, board: BoardDistance) -> Lines:
    arm, (x, y) = ARM * ratio, at
    strokes: tuple[Segment, ...] = ((x - arm, y, x + arm, y), (x, y - arm, x, y + arm))
    return Lines(_pen(board), strokes, board.mark)


def _tint(mark: Mark, pens: dict[str, Pen]) -> Mark:
    """A distance and what joins it to its place, in the ink of its answer."""
    if isinstance(mark, Lines | Text) and mark.stands_for in pens:
        return replace(mark, pen=pens[mark.stands_for])
    return mark
