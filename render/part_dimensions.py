"""Which sizes a view of one sub-assembly carries: taken off what is seen of its boards, whatever they are.

Where the strings stand is decided in render.dimension_strings.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from model.board import Board
from render.dimension_strings import Edge, String, measure
from render.drawing import Point, Ring
from render.extent import Box

SAME = 1 / 16 + 1e-6
"""Places no further from each other than this are one, in.: less may be printed as nothing, and where sides
lean it is what the ends of rails differ by."""
LEAST_EDGE = 1 / 16
"""Edges shorter than this, in., are not measured to: they belong to a curve or a rounded corner."""
STRAIGHT = 1e-6
IN_A_ROW = 5
"""From so many pieces alike on, each is measured to on one side only. Shop choice."""

Rings = tuple[tuple[Board, tuple[Ring, ...]], ...]


def list_part_strings(
    seen: Rings,
    known: tuple[frozenset[float], frozenset[float]],
    holes: Sequence[Box] = (),
    one_sided: bool = False,
    within: Box | None = None,
) -> tuple[String, ...]:
    """Strings round a view for what is `seen` in it.

    `known` are the places, level and upright, that another view measures to: they are not measured again.
    With `one_sided` pieces alike in a row are placed by one side each. `holes` are seen end on and placed by
    their middles. Only what lies `within` a box is measured to, where one is given.
    """
    corners = sorted({corner for board, rings in seen for corner in _list_corners(board, rings)})
    if within is not None:
        corners = [p for p in corners if _is_inside(p, within)]
    corners = [p for p in corners if not any(_lies_in(p, hole) for hole in holes)]
    corners += [((left + right) / 2, (low + high) / 2) for left, low, right, high in holes]
    if not corners:
        return ()
    kept = (_thin_out(seen, corners, k) if one_sided else corners for k in (0, 1))
    widths, heights = (_list_side(places, k, known[k]) for k, places in enumerate(kept))
    return (*_as_strings(widths, (Edge.BELOW, Edge.ABOVE)), *_as_strings(heights, (Edge.LEFT, Edge.RIGHT)))


def _is_inside(point: Point, box: Box) -> bool:
    left, low, right, high = box
    return left + SAME < point[0] < right - SAME and low + SAME < point[1] < high - SAME


def _lies_in(point: Point, box: Box) -> bool:
    left, low, right, high = box
    return left - SAME < point[0] < right + SAME and low - SAME < point[1] < high + SAME


def _thin_out(seen: Rings, corners: Sequence[Point], k: int) -> list[Point]:
    """The corners without the far sides of pieces alike that stand in a row: each is placed by one side."""
    spans: dict[tuple[str, float], list[tuple[float, float]]] = {}
    for board, rings in seen:
        values = [p[k] for ring in rings for p in ring]
        size = round((max(values) - min(values)) / SAME)
        spans.setdefault((board.role, size), []).append((min(values), max(values)))
    rows = [row for row in spans.values() if len({round(low / SAME) for low, _ in row}) >= IN_A_ROW]
    far = {high for row in rows for _, high in row if high < max(p[k] for p in corners) - SAME}
    near = {low for row in spans.values() if row not in rows for low, _ in row}
    gone = {value for value in far if all(abs(value - low) >= SAME for low in near)}
    return [p for p in corners if all(abs(p[k] - value) >= SAME for value in gone)]


def _list_corners(board: Board, rings: Sequence[Ring]) -> Iterator[Point]:
    """The places of a board that are measured to: ends of its straight level and plumb edges."""
    if board.worked is not None:
        for ring in rings:
            xs, ys = zip(*ring, strict=True)
            yield from ((x, y) for x in (min(xs), max(xs)) for y in (min(ys), max(ys)))
        return
    for ring in rings:
        for a, b in zip(ring, ring[1:] + ring[:1], strict=True):
            if (abs(a[0] - b[0]) < STRAIGHT) != (abs(a[1] - b[1]) < STRAIGHT):
                long_enough = abs(a[0] - b[0]) + abs(a[1] - b[1]) > LEAST_EDGE
                yield from (a, b) if long_enough else ()


def _list_side(corners: Sequence[Point], k: int, known: frozenset[float]) -> tuple[list[Point], list[Point]]:
    """(along, across) of the places measured along coordinate `k`: on the low side, and on the high side.

    Those on the high side are kept only where they differ. Places that are `known` are left out.
    """
    across = [p[1 - k] for p in corners]
    middle = (min(across) + max(across)) / 2
    low = _merge([(p[k], p[1 - k]) for p in corners if p[1 - k] <= middle], min)
    high = _merge([(p[k], p[1 - k]) for p in corners if p[1 - k] > middle], max)
    low = low if len(low) > 1 else _merge([(p[k], p[1 - k]) for p in corners], min)
    low, high = _without_known(low, known), _without_known(high, known)
    high = _without_known(high, frozenset(place for place, _ in low)) if low else high
    return low, high


def _merge(places: list[Point], nearest: Callable[[float, float], float]) -> list[Point]:
    """One place for all that fall together, measured from the one that lies nearest to the edge."""
    merged: list[Point] = []
    for along, across in sorted(places):
        if merged and along - merged[-1][0] < SAME:
            merged[-1] = (merged[-1][0], nearest(merged[-1][1], across))
        else:
            merged.append((along, across))
    return merged


def _without_known(places: list[Point], known: frozenset[float]) -> list[Point]:
    """The ends, and between them only what is not known yet; nothing where nothing is new."""
    new = [p for p in places if all(abs(p[0] - other) >= SAME for other in known)]
    return [p for p in places if p in new or p in (places[0], places[-1])] if new else []


def _as_strings(sides: tuple[list[Point], list[Point]], edges: tuple[Edge, Edge]) -> Iterator[String]:
    """For each side its places one by one, then the whole, which is given once."""
    told = False
    for places, edge in zip(sides, edges, strict=True):
        if len(places) < 2:
            continue
        yield measure(edge, *((along, across, "") for along, across in places))
        if len(places) > 2 and not told:
            yield measure(edge, (*places[0], ""), (*places[-1], ""))
            told = True
