"""The clearance as it is marked over a view on request: the keep-out and the allowed projection.

Parts that fail are marked in render.fault_marks.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

import numpy as np

from model.check.keep_out import list_allowed_beside, list_allowed_slope, list_keep_out_rings
from model.surround import Surround
from render.dimension_strings import TEXT_HEIGHT
from render.drawing import (
    Anchor,
    Dimension,
    Fill,
    Hatch,
    Mark,
    Pen,
    Point,
    Polyline,
    Region,
    Ring,
    Text,
)
from render.extent import Box, box_of, box_ring, list_words, text_corners
from render.lettering import text_width
from render.names import Name, list_dark, place_names
from render.number_places import Paper, find_first_free, list_strokes

KEEP_OUT_HATCH = (60.0, 0.22)
"""Angle in degrees and spacing in inches on paper of the keep-out's hatch. Shop choice."""
RING_WORDS = ("no wood inside", "projection limited inside")
"""What the inner and the outer outline of the keep-out mean."""
BESIDE_WORDS = "wood beside the opening stays out of this shape"
SLOPE_WORDS = ("wood over the opening", "stays above and", "behind this line")
REACH = 12.0
"""So far up and down places are tried for words, in their capitals. Shop choice."""
NOTE_SIZE = 0.85
"""Notes over a view beside its dimensions. Shop choice."""


def draw_clearance(surround: Surround, view: str, ratio: float, under: Sequence[Mark] = ()) -> list[Mark]:
    """The band that no wood may enter (front), how far wood may come forward at each height (side) or at each
    distance beside the opening (from above).

    What is said of them stands clear of words, dimensions and faults `under` it; words that they run through
    get a ground, and are laid over it later.
    """
    if view == "front":
        marks = _keep_out(surround, ratio, under)
    elif view in ("side", "vertical_section"):
        marks = _slope(surround, ratio, under)
    else:
        marks = _beside(surround, ratio, under)
    return [*marks, *_list_grounds(under, marks, ratio)]


def _list_grounds(under: Sequence[Mark], over: Sequence[Mark], ratio: float) -> list[Mark]:
    """Paper under dimensions' words that lines `over` them run through."""
    words = list_words(mark for mark in under if isinstance(mark, Dimension))
    if not words:
        return []
    free = Paper(list_strokes(over, ratio)).is_free(np.array(words))
    return [_ground(box) for box, is_free in zip(words, free, strict=True) if not is_free]


def _ground(box: Box) -> Region:
    return Region(Fill.PAPER, (box_ring(box),), "keep-out")


def _keep_out(surround: Surround, ratio: float, under: Sequence[Mark]) -> list[Mark]:
    """What no wood may enter and where its projection is limited, round the opening from the front."""
    rings = list_keep_out_rings(surround.job.site)
    if not rings:
        return []
    mouth, top = surround.layout.opening_side, surround.layout.opening_top
    opening = ((-mouth, 0.0), (mouth, 0.0), (mouth, top), (-mouth, top))
    outlines = [Polyline(Pen.CLEARANCE, ring, closed=True, stands_for="keep-out") for ring in rings]
    kept = [mark for mark in under if isinstance(mark, Dimension) or getattr(mark, "pen", None) is Pen.FAULT]
    paper = Paper(list_strokes(kept, ratio), (), list_words(under))
    feet = (top, *(_top_of(ring) for ring in rings))
    words: list[Mark] = []
    for ring, foot, text in zip(rings, feet, RING_WORDS, strict=False):
        words += _ring_words(ring, foot, text, ratio, paper) or _name(
            text, (0.0, _top_of(ring)), (*under, *outlines, *words), ratio
        )
    return [_no_wood(rings[0], opening, ratio), *outlines, *words]


def _top_of(ring: Ring) -> float:
    return max(y for _, y in ring)


def _no_wood(ring: Ring, opening: Ring, ratio: float) -> Hatch:
    angle, spacing = KEEP_OUT_HATCH
    return Hatch(Pen.CLEARANCE, (ring, opening), angle, spacing * ratio, "keep-out")


def _ring_words(ring: Ring, foot: float, text: str, ratio: float, paper: Paper) -> list[Mark]:
    """What an outline of the keep-out means, under its top and over `foot`, on a ground that keeps lines off.

    Nothing where there is no such place.
    """
    height = TEXT_HEIGHT * NOTE_SIZE * ratio
    top = _top_of(ring)
    at = 0.0, top - 1.6 * height
    said = Text(text, at, height, Anchor.MIDDLE, pen=Pen.CLEARANCE, stands_for="keep-out")
    aside = max(x for x, y in ring if y >= foot) - text_width(text, height) / 2 - height
    down = top - 2 * height - foot
    found = _find_place((said,), max(aside, 0.0), max(down, 0.0), paper)
    return _on_paper(found) if found else []


def _on_paper(texts: Iterable[Text]) -> list[Mark]:
    return [mark for text in texts for mark in (_ground(box_of(text_corners(text))), text)]


def _name(words: str, spot: Point, under: Sequence[Mark], ratio: float) -> list[Mark]:
    """Words joined to what they are about from where there is room for them."""
    marks = place_names([Name(words, spot, TEXT_HEIGHT * ratio / 2, "keep-out")], under, ratio)
    return [
        *(mark for mark in marks if not isinstance(mark, Text)),
        *_on_paper(replace(mark, pen=Pen.CLEARANCE) for mark in marks if isinstance(mark, Text)),
    ]


def _find_place(
    texts: tuple[Text, ...], aside: float, down: float, paper: Paper, up: float = 0.0
) -> tuple[Text, ...] | None:
    """Lines of writing where nothing is in their way, up to so far from where they stand, as near as can be.

    The place they have is taken from `paper`. None where no place is free.
    """
    step = texts[0].height / 2
    xs = np.arange(-int(aside / step), int(aside / step) + 1) * step
    ys = np.arange(-int(down / step), int(up / step) + 1) * step
    moves = np.stack(np.meshgrid(xs, ys), axis=2).reshape(-1, 2)
    moves = moves[np.lexsort((-moves[:, 0], np.abs(moves[:, 1]), np.hypot(moves[:, 0], moves[:, 1])))]
    box = np.array(box_of(corner for text in texts for corner in text_corners(text)))
    found = find_first_free(box + np.hstack([moves, moves]), paper)
    if found is None:
        return None
    x, y = moves[found].tolist()
    moved = tuple(replace(text, at=(text.at[0] + x, text.at[1] + y)) for text in texts)
    for text in moved:
        paper.write(box_of(text_corners(text)))
    return moved


def _slope(surround: Surround, ratio: float, under: Sequence[Mark]) -> list[Mark]:
    """Over the opening, the line that wood may reach but not pass."""
    slope = list_allowed_slope(surround.job.site)
    if len(slope) < 2:
        return []
    top = surround.layout.opening_top
    line = tuple((-projection, top + above) for above, projection in slope)
    x, y = min(line)
    height = TEXT_HEIGHT * NOTE_SIZE * ratio
    limit = Polyline(Pen.CLEARANCE, line, stands_for="keep-out")
    words, paper = _set_words((x - 0.08 * ratio, y), height), _bare_paper((*under, limit), ratio)
    notes = _find_place(words, 0.0, REACH * height, paper, REACH * height)
    return [limit, *(notes or _name(" ".join(SLOPE_WORDS), (x, y), (*under, limit), ratio))]


def _bare_paper(marks: Sequence[Mark], ratio: float) -> Paper:
    """What no line and no writing of `marks` stands on; hatches may."""
    lines = list_strokes([mark for mark in marks if not isinstance(mark, Hatch)], ratio)
    return Paper(lines, list_dark(marks), list_words(marks))


def _beside(surround: Surround, ratio: float, under: Sequence[Mark]) -> list[Mark]:
    """From above, the shape before and beside the opening that wood in front of the masonry stays out of."""
    boundary = list_allowed_beside(surround.job.site)
    if len(boundary) < 2:
        return []
    mouth = surround.layout.opening_side
    right = tuple((mouth + beside, -out) for beside, out in boundary)
    ring = (*right, *((-x, y) for x, y in reversed(right)))
    angle, spacing = KEEP_OUT_HATCH
    height = TEXT_HEIGHT * NOTE_SIZE * ratio
    low, wide = min(y for _, y in ring), max(x for x, _ in ring)
    shape = Polyline(Pen.CLEARANCE, ring, closed=True, stands_for="keep-out")
    words = (Text(BESIDE_WORDS, (0.0, low - 1.6 * height), height, Anchor.MIDDLE, pen=Pen.CLEARANCE),)
    found = _find_place(words, wide, REACH * height, _bare_paper((*under, shape), ratio))
    notes = found or _name(BESIDE_WORDS, (0.0, low), (*under, shape), ratio)
    return [Hatch(Pen.CLEARANCE, (ring,), angle, spacing * ratio, "keep-out"), shape, *notes]


def _set_words(at: Point, height: float) -> tuple[Text, ...]:
    return tuple(
        Text(text, (at[0], at[1] + (0.3 - 1.6 * row) * height), height, Anchor.END, pen=Pen.CLEARANCE)
        for row, text in enumerate(SLOPE_WORDS)
    )
