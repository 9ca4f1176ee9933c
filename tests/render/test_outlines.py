"""The grid for faces as they lie in a picture: what is taken for the same, and what is in which face."""

import numpy as np

from render.arrangement import MOST_LINES
from render.laying import GRAIN, Face
from render.outlines import Outlines, _refine, lay_ground, list_spots, span_faces
from tests.render.test_arrangement import polygon, rectangle

SQUARE = [(0, 0), (4, 0), (4, 4), (0, 4)]
ROOF = [(0, 4), (3, 1), (6, 4), (3, 7)]


def _ground(*faces):
    return lay_ground(Outlines.of(list(faces)), MOST_LINES)


def test_a_line_never_gives_way_to_those_that_sloping_edges_add_beside_it():
    """Nine tenths of a grain lower each time; after two it would be off the corners that it stands for."""
    lines = np.array([0.0, 1.0])
    for time in range(1, 6):
        lines = _refine(lines, np.array([1 - 0.9 * GRAIN * time, 0.5]))
        assert {0.0, 0.5, 1.0} <= set(lines.tolist())
    assert (np.diff(lines) > GRAIN).all()


def test_the_grid_is_made_once_for_faces_that_only_move_nearer_or_further_off():
    near, far = (
        Outlines.of([rectangle(0, 0, 10, 6, depth), polygon(ROOF, (0.25, 0.0, 2 * depth))])
        for depth in (1.0, 5.0)
    )
    assert lay_ground(near, MOST_LINES) is lay_ground(far, MOST_LINES)
    assert span_faces(near) is span_faces(far)
    assert list_spots(near, lay_ground(near, MOST_LINES)) is list_spots(far, lay_ground(far, MOST_LINES))


def test_a_grid_that_was_made_is_not_taken_for_faces_that_lie_otherwise():
    upright, turned = rectangle(0, 0, 4, 4, 1.0), polygon(SQUARE, (0.0, 0.0, 1.0))
    tilted = Face(upright.corners, (0.0, 0.5, 1.0), upright=True)
    holed = Face(np.array([*SQUARE, (1, 1), (1, 2), (2, 1)], dtype=float), (0.0, 0.0, 1.0), False, (4,))
    whole = Face(holed.corners, holed.plane, False)
    assert len({id(_ground(face)) for face in (upright, turned, tilted, holed, whole)}) == 5


def test_spots_of_a_face_cover_its_area_and_upright_ones_have_none():
    faces = [rectangle(-1, 0, 8, 8, 0.0), polygon(ROOF, (0.0, 0.0, 1.0)), polygon(ROOF[:3], (0.0, 0.0, 2.0))]
    outlines = Outlines.of(faces)
    ground = lay_ground(outlines, MOST_LINES)
    cells = np.outer(np.diff(ground.v), np.diff(ground.h)).ravel() / 4
    spots = list_spots(outlines, ground)
    areas = [cells[spots.place[spots.face == i] // 4].sum() for i in range(3)]
    assert np.allclose(areas, [0, 18, 9])
    assert list_spots(Outlines.of(faces[:1]), _ground(faces[0])) is None
