"""Which faces may be seen along which lines, told from the spaces between boards alone."""

from __future__ import annotations

import pytest

from app.demo import list_demos, read_demo
from model.takeoff.air import Air
from model.takeoff.faces import list_faces
from model.takeoff.sight import LINES, list_seen
from tests.bench.drawn import draw_design
from tests.planned import list_faces_of
from tests.takeoff_wood import board

TO_FRONT, TO_RIGHT = ([0.0, 0.0, 1.0], [1.0, 0.0, 0.0])


def _ways(boards, face: int, number: int = 0) -> set[tuple[float, ...]]:
    """Lines along which a face, the `number`th of its board's that turns that way, may be seen."""
    air = Air(boards, (), LINES)
    own = [f for f in list_faces(boards) if f.owner == number and f.normal[face] > 0.9]
    return {tuple(line) for f in own for line in LINES[air.list_ways(f)].tolist()}


BACK = board((2, 18), (2, 18), (0, 1))
FRONT = board((0, 20), (0, 20), (3, 4))
LEFT, RIGHT = board((0, 1), (0, 20), (0, 3)), board((19, 20), (0, 20), (0, 3))


def test_a_face_before_which_nothing_stands_may_be_seen_straight_on():
    assert tuple(TO_FRONT) in _ways([BACK], 2)


def test_what_another_board_stands_before_may_be_seen_from_beside_alone():
    """Two inches free between two boards, open at the sides: out along x or y, never to the front."""
    ways = _ways([BACK, FRONT], 2)
    assert tuple(TO_RIGHT) in ways
    assert tuple(TO_FRONT) not in ways


def test_a_hollow_open_above_and_below_is_left_up_or_down():
    ways = _ways([BACK, FRONT, LEFT, RIGHT], 2)
    assert ways
    assert all(y for _, y, _ in ways)


def test_a_shut_hollow_may_be_seen_along_no_line():
    """Open at the back, where no line leads."""
    ends = board((0, 20), (-1, 0), (0, 4)), board((0, 20), (20, 21), (0, 4))
    assert _ways([BACK, FRONT, LEFT, RIGHT, *ends], 2) == set()


@pytest.mark.parametrize("short", [0.0, 0.001, 0.002, 0.0026, 0.0039, 0.0041, 0.01, 0.1])
def test_a_strip_that_ends_a_hair_before_a_return_hides_neither_of_two_twins(short):
    """Returns behind two faces before a wall, at both ends of a strip, between a floor and a ceiling."""
    strip = board((1 + short, 19 - short), (0, 20), (0, 1))
    fronts = board((0, 2), (0, 20), (3, 4)), board((18, 20), (0, 20), (3, 4))
    boards = [strip, LEFT, RIGHT, *fronts, *(board((0, 20), y, (0, 4)) for y in ((-1, 0), (20, 21)))]
    air = Air(boards, [board((-9, 29), (-9, 29), (-9, 0))], LINES)
    inner = [f for f in list_faces(boards) if f.owner in (1, 2) and (1.5 - f.owner) * f.normal[0] > 0.4]
    assert [f.owner for f in inner] == [1, 2]
    left, right = ({tuple(line) for line in LINES[air.list_ways(f)].tolist()} for f in inner)
    assert left
    assert left == {(-x, y, z) for x, y, z in right}


@pytest.mark.parametrize("job", [*list_demos(), 101, 106, 205])
def test_nothing_is_seen_more_or_less_where_lines_that_lead_nowhere_are_left_out(job):
    """205 has a hole for cords through two layers of its shelf, and is seen into through it."""
    surfaces = list_faces_of(read_demo(job) if isinstance(job, str) else draw_design(job))
    all_ways = list_seen(surfaces.faces, surfaces.bare, surfaces.standing_faces)
    wanted = [shape.area for shape in all_ways]
    assert [shape.area for shape in surfaces.seen] == pytest.approx(wanted, abs=1e-3)
