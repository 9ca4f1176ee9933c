"""What of the boards is marked out with a paper template: notches, edges and ends askew, holes, flutes.

Mouldings' sections are model.moulding's; how templates stand on pages is render.template_pages'.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import hypot
from typing import TYPE_CHECKING

from model.board import AXES, CROSS, Board, Point2
from model.build.level_backs import PACKING
from model.takeoff.marks import Kind

if TYPE_CHECKING:
    from model.surround import Surround

AROUND = 1.5
"""How much of a board is shown round what is cut, in. Shop choice."""
TOGETHER = 8.0
"""Corners no further apart than this stand on one template, in. Shop choice."""
TO_EDGE = 6.0
"""A template runs on to an edge of the board that is no further off than this, in. Shop choice."""
SHARED = 0.5
"""Two templates of which the smaller shows so much of the other too, as a part of its area, are made one.
Shop choice."""
ALONG = 6.0
"""How far a template follows an edge that is askew, in. Shop choice."""
HAIR = 1e-6

Stroke = tuple[Point2, ...]
Window = tuple[float, float, float, float]


@dataclass(frozen=True, slots=True)
class Template:
    """A shape to lay on a board at full size, inches, its lower left corner at (0, 0).

    `what` says what is cut, `mark` is the kind's, `pieces` how many there are of it, `face` which side of
    the wood it lies on. Saw along `cuts`; `edges` are the board's own, each with its name. `holes` are
    middles and diameters. `off` is how far the middle of a hole lies from an end that the template does not
    reach, and which that is.
    """

    what: str
    mark: str
    pieces: int
    face: str
    size: Point2
    cuts: tuple[Stroke, ...]
    edges: tuple[tuple[Point2, Point2, str], ...] = ()
    holes: tuple[tuple[Point2, float], ...] = ()
    off: tuple[tuple[float, str], ...] = ()


def list_templates(surround: Surround) -> tuple[Template, ...]:
    """Every template that the boards of `surround` want, in the order of their kinds."""
    boards = surround.boards
    return tuple(t for kind in surround.kinds for t in _list_of(boards[kind.pieces[0]], kind))


def _list_of(board: Board, kind: Kind) -> Iterator[Template]:
    if board.worked is not None or board.role in PACKING:
        return
    if board.curved and not board.grain:
        yield _section(board, kind)
    seen_along = _thin_axis(board)
    outline = _outline(board, seen_along)
    cuts = _list_cuts(outline)
    for window in _join_shared(_list_windows(cuts, _bounds(outline))):
        yield _cut_out(board, kind, seen_along, outline, window, _name_cut(cuts, window))
    for bore in board.bores:
        if bore.axis == seen_along:
            yield _hole(board, kind, seen_along, outline, bore.at, bore.size, bore.is_round)


def _thin_axis(board: Board) -> str:
    """The axis that looks at the face a template is laid on."""
    if board.grain:
        return board.axis
    return min((axis for axis in AXES if axis != board.axis), key=board.extent)


def _place(along: str, room: Sequence[float]) -> Point2:
    """A point of the room on the face that is seen along an axis: from the right, from above or the front."""
    x, y, z = room
    return {"x": (-z, y), "y": (x, -z), "z": (x, y)}[along]


def _outline(board: Board, along: str) -> Stroke:
    """The face's outline: of a piece sawn to shape its section, else its four corners as its ends are cut."""
    k, axis = AXES.index(along), AXES.index(board.axis)
    if board.grain:
        rooms = []
        for u, v in board.section:
            room = [0.0, 0.0, 0.0]
            room[CROSS[along][0]], room[CROSS[along][1]] = u, v
            rooms.append(room)
        return tuple(_place(along, room) for room in rooms)
    low, high = board.bounds
    wide = next(i for i in range(3) if i not in (k, axis))
    middle = (low[k] + high[k]) / 2
    corners = []
    for end, across in ((board.low, (low, high)), (board.high, (high, low))):
        for side in across:
            room = [0.0, 0.0, 0.0]
            room[k], room[wide] = middle, side[wide]
            u, v = (room[i] for i in CROSS[board.axis])
            room[axis] = end.position(u, v)
            corners.append(_place(along, room))
    return tuple(corners)


def _bounds(points: Sequence[Point2]) -> Window:
    xs, ys = zip(*points, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def _list_cuts(outline: Stroke) -> tuple[tuple[Point2, Point2], ...]:
    """Edges that are not the straight sides of the board it is sawn from; plain 45 degree mitres neither."""
    left, bottom, right, top = _bounds(outline)

    def is_side(a: Point2, b: Point2) -> bool:
        return any(
            abs(a[k] - side) < HAIR and abs(b[k] - side) < HAIR
            for k, side in ((0, left), (0, right), (1, bottom), (1, top))
        )

    def is_mitre(a: Point2, b: Point2) -> bool:
        return abs(abs(a[0] - b[0]) - abs(a[1] - b[1])) < HAIR

    pairs = pairwise([*outline, outline[0]])
    return tuple((a, b) for a, b in pairs if not is_side(a, b) and not is_mitre(a, b))


def _list_windows(cuts: Sequence[tuple[Point2, Point2]], whole: Window) -> Iterator[Window]:
    """What is shown round each group of corners that lie near each other."""
    groups: list[list[Point2]] = []
    for point in dict.fromkeys(point for cut in cuts for point in cut):
        near = [g for g in groups if any(hypot(point[0] - q[0], point[1] - q[1]) <= TOGETHER for q in g)]
        groups = [g for g in groups if g not in near]
        groups.append([point, *(q for g in near for q in g)])
    for group in groups:
        box = _bounds(group)
        askew = [cut for cut in cuts if _is_askew(cut) and any(point in group for point in cut)]
        met = [point for cut in cuts for point in cut if point in group]
        for cut in askew:
            box = _follow(box, cut, whole)
        if askew or len(met) > len(set(met)):
            yield _widen(box, whole)


def _join_shared(windows: Iterable[Window]) -> list[Window]:
    """Windows with those made one that show much the same: on a short piece one end's reaches the other."""
    apart: list[Window] = []
    for window in windows:
        while (like := next((other for other in apart if _shares(window, other)), None)) is not None:
            apart.remove(like)
            window = _join(window, like)
        apart.append(window)
    return apart


def _shares(one: Window, other: Window) -> bool:
    wide, high = (min(one[k + 2], other[k + 2]) - max(one[k], other[k]) for k in (0, 1))
    smaller = min((x1 - x0) * (y1 - y0) for x0, y0, x1, y1 in (one, other))
    return wide > 0 and high > 0 and wide * high >= SHARED * smaller


def _is_askew(cut: tuple[Point2, Point2]) -> bool:
    (ax, ay), (bx, by) = cut
    return abs(ax - bx) > HAIR and abs(ay - by) > HAIR


def _follow(box: Window, cut: tuple[Point2, Point2], whole: Window) -> Window:
    """The box run on along an edge that is askew, so far that its slope can be laid out."""
    (ax, ay), (bx, by) = cut
    k = 0 if abs(ax - bx) > abs(ay - by) else 1
    low, high = sorted((cut[0][k], cut[1][k]))
    first = max(low, min(box[k], high) if box[k] <= low else box[k] - ALONG)
    last = min(high, box[k + 2] + ALONG)
    grown = list(box)
    grown[k], grown[k + 2] = min(box[k], max(first, whole[k])), max(box[k + 2], min(last, whole[k + 2]))
    return grown[0], grown[1], grown[2], grown[3]


def _widen(box: Window, whole: Window, nearest: bool = False) -> Window:
    """A box with some wood round it, run on to the board's edges where those are near.

    With `nearest` only to the nearer of two edges opposite each other.
    """
    sides = []
    for k in (0, 1):
        low, high = box[k] - AROUND, box[k + 2] + AROUND
        below, above = box[k] - whole[k], whole[k + 2] - box[k + 2]
        to_low = below <= TO_EDGE and not (nearest and above < below)
        to_high = above <= TO_EDGE and not (nearest and to_low)
        first, last = whole[k] if to_low else max(low, whole[k]), min(high, whole[k + 2])
        sides.append((first, whole[k + 2] if to_high else last))
    (x0, x1), (y0, y1) = sides
    return x0, y0, x1, y1


def _name_cut(cuts: Sequence[tuple[Point2, Point2]], window: Window) -> str:
    inside = [cut for cut in cuts if any(_is_inside(point, window) for point in cut)]
    return "edge or end askew" if any(map(_is_askew, inside)) else "notch"


def _is_inside(point: Point2, window: Window) -> bool:
    x0, y0, x1, y1 = window
    return x0 - HAIR <= point[0] <= x1 + HAIR and y0 - HAIR <= point[1] <= y1 + HAIR


def _cut_out(board: Board, kind: Kind, along: str, outline: Stroke, window: Window, what: str) -> Template:
    cuts = [c for a, b in _list_cuts(outline) if (c := _clip((a, b), window)) is not None]
    return _template(board, kind, along, outline, window, what, cuts, ())


def _hole(
    board: Board, kind: Kind, along: str, outline: Stroke, at: Point2, size: Point2, is_round: bool
) -> Template:
    room = [0.0, 0.0, 0.0]
    room[CROSS[along][0]], room[CROSS[along][1]] = at
    x, y = _place(along, room)
    # Seen along x the picture's level is z, which is the second coordinate across that axis.
    wide, high = size[::-1] if along in ("x", "y") else size
    box = (x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)
    window = _join(_widen(box, _bounds(outline), nearest=True), box)
    off = tuple(_list_off(board, along, (x, y), window, _bounds(outline)))
    if is_round:
        hole = _template(board, kind, along, outline, window, "hole", (), (((x, y), wide),))
        return replace(hole, off=off)
    ring = ((box[0], box[1]), (box[2], box[1]), (box[2], box[3]), (box[0], box[3]), (box[0], box[1]))
    return replace(_template(board, kind, along, outline, window, "opening", (ring,), ()), off=off)


def _list_off(
    board: Board, along: str, middle: Point2, window: Window, whole: Window
) -> Iterator[tuple[float, str]]:
    """For each way in which a template reaches no edge of the board: how far off the nearer one is."""
    for k in (0, 1):
        if window[k] > whole[k] + HAIR and window[k + 2] < whole[k + 2] - HAIR:
            ends = {whole[k]: middle[k] - whole[k], whole[k + 2]: whole[k + 2] - middle[k]}
            side = min(ends, key=lambda place: ends[place])
            edge = ((side, whole[1]), (side, whole[3])) if k == 0 else ((whole[0], side), (whole[2], side))
            yield ends[side], _name_edge(board, along, edge, whole)


def _join(one: Window, other: Window) -> Window:
    """The least box that holds both."""
    return (
        min(one[0], other[0]),
        min(one[1], other[1]),
        max(one[2], other[2]),
        max(one[3], other[3]),
    )


def _template(
    board: Board,
    kind: Kind,
    along: str,
    outline: Stroke,
    window: Window,
    what: str,
    cuts: Sequence[Stroke],
    holes: Sequence[tuple[Point2, float]],
) -> Template:
    x0, y0, x1, y1 = window
    own = [pair for pair in pairwise([*outline, outline[0]]) if pair not in _list_cuts(outline)]
    edges = []
    for a, b in own:
        clipped = _clip((a, b), window)
        if clipped is not None:
            edges.append((clipped[0], clipped[1], _name_edge(board, along, (a, b), _bounds(outline))))

    def moved(point: Point2) -> Point2:
        return point[0] - x0, point[1] - y0

    return Template(
        what,
        kind.mark,
        len(kind.pieces),
        _name_face(board, along),
        (x1 - x0, y1 - y0),
        tuple(tuple(moved(p) for p in stroke) for stroke in cuts),
        tuple((moved(a), moved(b), name) for a, b, name in edges),
        tuple((moved(at), diameter) for at, diameter in holes),
    )


def turn(template: Template) -> Template:
    """The same a quarter turn clockwise."""
    width = template.size[0]

    def turned(point: Point2) -> Point2:
        return point[1], width - point[0]

    return replace(
        template,
        size=(template.size[1], width),
        cuts=tuple(tuple(map(turned, stroke)) for stroke in template.cuts),
        edges=tuple((turned(a), turned(b), name) for a, b, name in template.edges),
        holes=tuple((turned(at), diameter) for at, diameter in template.holes),
    )


def _clip(line: tuple[Point2, Point2], window: Window) -> tuple[Point2, Point2] | None:
    """The part of a straight line in a window, None where there is none (Liang and Barsky 1984)."""
    (ax, ay), (bx, by) = line
    dx, dy = bx - ax, by - ay
    start, end = 0.0, 1.0
    for step, room in (
        (-dx, ax - window[0] + HAIR),
        (dx, window[2] + HAIR - ax),
        (-dy, ay - window[1] + HAIR),
        (dy, window[3] + HAIR - ay),
    ):
        if abs(step) < HAIR * HAIR:
            if room < 0:
                return None
        elif step < 0:
            start = max(start, room / step)
        else:
            end = min(end, room / step)
    if (end - start) * hypot(dx, dy) < HAIR * 10:
        return None
    return (ax + start * dx, ay + start * dy), (ax + end * dx, ay + end * dy)


def _name_edge(board: Board, along: str, edge: tuple[Point2, Point2], whole: Window) -> str:
    """``lower end``, ``back edge``: which side of the board a straight edge is."""
    (ax, ay), (_, by) = edge
    level = abs(ay - by) < HAIR
    ahead = (ay > (whole[1] + whole[3]) / 2) if level else (ax > (whole[0] + whole[2]) / 2)
    words = {
        "x": (("front", "back"), ("lower", "upper")),
        "y": (("left", "right"), ("back", "front")),
        "z": (("left", "right"), ("lower", "upper")),
    }[along][1 if level else 0]
    across = {"x": ("z", "y"), "y": ("x", "z"), "z": ("x", "y")}[along][1 if level else 0]
    if along == "y" and level:
        words = words[::-1]
    return f"{words[ahead]} {'end' if across == board.length_axis else 'edge'}"


def _name_face(board: Board, along: str) -> str:
    """Which side of the wood lies up."""
    if along == "z":
        return "front up"
    if along == "y":
        return "top up"
    middle = board.bounds[0][0] + board.bounds[1][0]
    return "right side up" if middle == 0 else "outer side up" if middle > 0 else "inner side up"


def _section(board: Board, kind: Kind) -> Template:
    """A fluted piece across its length, as it is seen from its upper or right end."""
    points = []
    for u, v in board.section:
        room = [0.0, 0.0, 0.0]
        room[CROSS[board.axis][0]], room[CROSS[board.axis][1]] = u, v
        points.append(_place(board.axis, room))
    x0, y0, x1, y1 = _bounds(points)
    ring = tuple((x - x0, y - y0) for x, y in (*points, points[0]))
    return Template("section", kind.mark, len(kind.pieces), "end of the piece", (x1 - x0, y1 - y0), (ring,))
