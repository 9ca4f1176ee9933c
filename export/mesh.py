"""Boards as closed triangle meshes in Wavefront OBJ text, for a look in 3-D or a check by another library."""

from __future__ import annotations

from collections.abc import Sequence

from model.board import Board, Point2
from model.surround import Surround

Triangle = tuple[int, int, int]

HEADING = (
    "# Inches. x to the viewer's right from the opening's centre, y up from the hearth, z to the viewer.\n"
    "# Pieces are unbored: holes for cords, and what is sawn out for them, stand in the cut list."
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
        lines += [f"v {x!r} {y!r} {z!r}" for x, y, z in board.vertices]
        lines += [f"f {a + count + 1} {b + count + 1} {c + count + 1}" for a, b, c in list_triangles(board)]
        count += len(board.vertices)
    return "\n".join(lines) + "\n"


def list_triangles(board: Board) -> tuple[Triangle, ...]:
    """Triangles of `board`'s surface, indices into `board.vertices`, counter-clockwise seen from outside."""
    size = len(board.section)
    cap = triangulate(board.section)
    low = tuple((c, b, a) for a, b, c in cap)
    high = tuple((a + size, b + size, c + size) for a, b, c in cap)
    sides: list[Triangle] = []
    for i in range(size):
        j = (i + 1) % size
        sides += [(i, j, j + size), (i, j + size, i + size)]
    return low + high + tuple(sides)


def triangulate(ring: Sequence[Point2]) -> tuple[Triangle, ...]:
    """Triangles that fill a simple counter-clockwise ring, by clipping ears; indices into `ring`.

    Every corner is used, also one that lies on a line with its neighbours, so that meshes stay closed.
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
    return not any(_covers(a, b, c, ring[i]) for i in left if i not in ear)


def _covers(a: Point2, b: Point2, c: Point2, p: Point2) -> bool:
    return _turn(a, b, p) >= -FLAT and _turn(b, c, p) >= -FLAT and _turn(c, a, p) >= -FLAT


def _turn(a: Point2, b: Point2, c: Point2) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
