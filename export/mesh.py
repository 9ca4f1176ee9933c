"""Boards as closed triangle meshes in Wavefront OBJ text, for a look in 3-D or a check by another library."""

from __future__ import annotations

from collections.abc import Sequence
from math import dist

from model.board import CROSS, Board, Point2, Point3
from model.bore import Bore
from model.carving import find_sides
from model.surround import Surround

Triangle = tuple[int, int, int]

HEADING = (
    "# Inches. x to the viewer's right from the opening's centre, y up from the hearth, z to the viewer.\n"
    "# Round holes are polygons as large as the circle."
)
FLAT = 1e-12
"""Twice the area under which three corners lie on a line, sq in."""


def write_obj(surround: Surround) -> str:
    """One object for each board, named by its mark: closed, its triangles turned outwards.

    Inches and the room's axes. No two boards share a vertex; the same surround gives the same text.
    """
    lines = [HEADING]
    count = 0
    for mark, board in zip(surround.marks, surround.boards, strict=True):
        lines.append(f"o {mark}")
        vertices, triangles = build_mesh(board)
        lines += [f"v {x!r} {y!r} {z!r}" for x, y, z in vertices]
        lines += [f"f {a + count + 1} {b + count + 1} {c + count + 1}" for a, b, c in triangles]
        count += len(vertices)
    return "\n".join(lines) + "\n"


def build_mesh(board: Board) -> tuple[tuple[Point3, ...], tuple[Triangle, ...]]:
    """Corners and triangles of a board's surface with its holes, counter-clockwise seen from outside."""
    board = board.carved
    vertices, rims = list(board.vertices), _Rims()
    walls: list[Triangle] = []
    for bore in board.bores:
        rims_of_bore = []
        for along in bore.span:
            rims_of_bore.append(list(range(len(vertices), len(vertices) + len(bore.ring))))
            vertices += [bore.place(point, along) for point in bore.ring]
        rims.add(board, bore, rims_of_bore)
        walls += [(c, b, a) for a, b, c in _sides(*rims_of_bore)]
    size = len(board.section)
    bottom, top = list(range(size)), list(range(size, 2 * size))
    quads = [[i, (i + 1) % size, (i + 1) % size + size, i + size] for i in range(size)]
    rings = [*quads, bottom[::-1], top]
    flat = {i: _fill(rings[i], rims.holes[i], *rims.planes[i], vertices) for i in rims.holes}
    sides = [t for i, pair in enumerate(_pairs(bottom, top)) for t in flat.get(i, pair)]
    cap = triangulate(board.section)
    low = flat.get(size, tuple((c, b, a) for a, b, c in cap))
    high = flat.get(size + 1, tuple((a + size, b + size, c + size) for a, b, c in cap))
    return tuple(vertices), (*low, *high, *sides, *walls)


class _Rims:
    """By a pierced face's number: the corners of its holes, its axis and whether it looks along that."""

    def __init__(self) -> None:
        self.holes: dict[int, list[list[int]]] = {}
        self.planes: dict[int, tuple[str, bool]] = {}

    def add(self, board: Board, bore: Bore, rims: Sequence[list[int]]) -> None:
        """Note where `bore` enters and leaves."""
        sides = find_sides(board, bore)
        assert sides is not None
        for side, rim, ahead in zip(sides, rims, (False, True), strict=True):
            self.holes.setdefault(side, []).append(rim)
            self.planes[side] = (bore.axis, ahead)


def _pairs(first: Sequence[int], second: Sequence[int]) -> list[tuple[Triangle, Triangle]]:
    """Two triangles for each side between two rings that run the same way round."""
    size = len(first)
    onward = [(i, (i + 1) % size) for i in range(size)]
    return [((first[i], first[j], second[j]), (first[i], second[j], second[i])) for i, j in onward]


def _sides(first: Sequence[int], second: Sequence[int]) -> list[Triangle]:
    return [triangle for pair in _pairs(first, second) for triangle in pair]


def _fill(
    ring: Sequence[int], holes: Sequence[Sequence[int]], axis: str, ahead: bool, vertices: Sequence[Point3]
) -> tuple[Triangle, ...]:
    """Triangles of a face across `axis`, which looks along it or against it, with holes in it."""
    iu, iv = CROSS[axis] if ahead else CROSS[axis][::-1]
    flat = [(p[iu], p[iv]) for p in vertices]
    path = list(ring)
    for hole in holes:
        path = _slit(path, list(hole)[::-1] if ahead else list(hole), flat)
    return tuple((path[a], path[b], path[c]) for a, b, c in triangulate([flat[i] for i in path]))


def _slit(ring: list[int], hole: list[int], flat: Sequence[Point2]) -> list[int]:
    """One way round `ring` and, along the shortest slit that crosses nothing, round `hole` the other way."""
    edges = [(way[k - 1], way[k]) for way in (ring, hole) for k in range(len(way))]
    ways = sorted(
        (dist(flat[ring[i]], flat[hole[j]]), i, j) for i in range(len(ring)) for j in range(len(hole))
    )
    for _, i, j in ways:
        ends = ring[i], hole[j]
        others = [edge for edge in edges if not {flat[k] for k in edge} & {flat[k] for k in ends}]
        if not any(_cross(flat[ends[0]], flat[ends[1]], flat[a], flat[b]) for a, b in others):
            return [*ring[: i + 1], *hole[j:], *hole[: j + 1], *ring[i:]]
    raise ValueError("the hole lies outside the ring")


def _cross(a: Point2, b: Point2, c: Point2, d: Point2) -> bool:
    return _turn(a, b, c) * _turn(a, b, d) <= 0 and _turn(c, d, a) * _turn(c, d, b) <= 0


def triangulate(ring: Sequence[Point2]) -> tuple[Triangle, ...]:
    """Triangles that fill a simple counter-clockwise ring, by clipping ears; indices into `ring`.

    Every corner is used, also one that lies on a line with its neighbours, so that meshes stay closed. A
    ring may come back along its own way, as round a hole.
    Raises ValueError when no ear is left to clip, as in a ring that runs clockwise.

    >>> triangulate([(0, 0), (2, 0), (2, 1), (1, 1), (1, 2), (0, 2)])
    ((0, 1, 2), (0, 2, 3), (5, 0, 3), (3, 4, 5))
    """
    left = list(range(len(ring)))
    triangles = []
    while len(left) > 3:
        for k in range(len(left)):
            ear = (left[k - 1], left[k], left[(k + 1) % len(left)])
            if _is_ear(ring, ear, left):
                triangles.append(ear)
                del left[k]
                break
        else:
            raise ValueError("the ring runs clockwise or crosses itself")
    return (*triangles, (left[0], left[1], left[2]))


def _is_ear(ring: Sequence[Point2], ear: Triangle, left: Sequence[int]) -> bool:
    a, b, c = (ring[i] for i in ear)
    if _turn(a, b, c) <= FLAT:
        return False
    return not any(_covers(a, b, c, p) for i in left if (p := ring[i]) not in (a, b, c))


def _covers(a: Point2, b: Point2, c: Point2, p: Point2) -> bool:
    return _turn(a, b, p) >= -FLAT and _turn(b, c, p) >= -FLAT and _turn(c, a, p) >= -FLAT


def _turn(a: Point2, b: Point2, c: Point2) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
