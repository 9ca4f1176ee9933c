"""Each board's tightest place by the clearance rules, marked over a view with its distance."""

from __future__ import annotations

from collections.abc import Sequence
from math import isfinite, isnan

from model.check.board_distance import BoardDistance, list_board_distances
from model.check.finding import Status
from model.check.wording import Wording
from model.surround import Surround
from render.board_outline import place_point
from render.dimension_strings import TEXT_HEIGHT
from render.drawing import Anchor, Drawing, Lines, Mark, Pen, Point, Segment, Text
from render.extent import Box, box_of, list_texts, text_corners

ARM = 0.035
"""Half an upright cross at each place, inches on paper. Shop choice."""
SIZE = 0.8
"""Of a dimension's capitals. Shop choice."""
NEAR = 0.02
"""Places nearer to each other than this, inches on paper, are marked once."""
RING = 0.06
"""From a number to the ring round it, inches on paper."""
ELEVATIONS = ("front", "side", "vertical_section")
RANK = (Status.FAIL, Status.UNKNOWN, Status.WARN, Status.PASS)


def draw_distances(surround: Surround, view: str, ratio: float, under: Sequence[Mark]) -> list[Mark]:
    """A cross for every board, and at the tightest of each part its distance, where that strikes no writing.

    Nothing from above, where one board hides another. What every board's distance is stands on the page that
    explains its part.
    """
    if view not in ELEVATIONS:
        return []
    wording = Wording(surround.job.about.length_style)
    taken = [_room(text, ratio) for text in list_texts(Drawing(tuple(under), ratio))]
    seen: list[Point] = []
    said: set[str] = set()
    marks: list[Mark] = []
    for board in sorted(list_board_distances(surround), key=_rank):
        at = place_point(board.at, view)
        if any(abs(at[0] - x) < NEAR * ratio and abs(at[1] - y) < NEAR * ratio for x, y in seen):
            continue
        seen.append(at)
        marks.append(_cross(at, ratio, board))
        if board.part not in said and not isnan(board.measured + board.needed):
            said.add(board.part)
            marks += _write(board, wording.distance(board.measured), at, ratio, taken)
    return marks


def _room(text: Text, ratio: float) -> Box:
    """What a writing takes up, a number with the ring round it."""
    x0, y0, x1, y1 = box_of(text_corners(text))
    ring = RING * ratio if text.text.isdigit() else 0.0
    return x0 - ring, y0 - ring, x1 + ring, y1 + ring


def _rank(board: BoardDistance) -> tuple[int, float]:
    spare = board.measured - board.needed
    return RANK.index(board.status), spare if isfinite(spare) else 0.0


def _cross(at: Point, ratio: float, board: BoardDistance) -> Lines:
    arm, (x, y) = ARM * ratio, at
    strokes: tuple[Segment, ...] = ((x - arm, y, x + arm, y), (x, y - arm, x, y + arm))
    return Lines(Pen.FAULT if board.status is Status.FAIL else Pen.CLEARANCE, strokes, board.mark)


def _write(board: BoardDistance, words: str, at: Point, ratio: float, taken: list[Box]) -> list[Mark]:
    """The distance right, left, over or under the place, where it strikes no other; left out where all do."""
    height = TEXT_HEIGHT * SIZE * ratio
    pen = Pen.FAULT if board.status is Status.FAIL else Pen.CLEARANCE
    clear = 1.5 * ARM * ratio
    x, y = at
    tries = (
        (Anchor.START, (x + clear, y - height / 2)),
        (Anchor.END, (x - clear, y - height / 2)),
        (Anchor.MIDDLE, (x, y + clear)),
        (Anchor.MIDDLE, (x, y - clear - height)),
    )
    for anchor, place in tries:
        text = Text(words, place, height, anchor, pen=pen, stands_for=board.mark)
        box = box_of(text_corners(text))
        if not any(_overlap(box, other) for other in taken):
            taken.append(box)
            return [text]
    return []


def _overlap(one: Box, other: Box) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]
