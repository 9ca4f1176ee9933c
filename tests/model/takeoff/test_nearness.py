"""How much nearer one face is than another: bounds held against places in both pictures."""

from __future__ import annotations

import numpy as np
import pytest

from app.demo import read_demo
from model.surround import plan_surround
from model.takeoff.faces import list_faces
from model.takeoff.nearness import Nearness, Outlines
from tests.takeoff_wood import board

FRONT = np.eye(3)


def _turned(turn: float) -> np.ndarray:
    """Right, up and towards an eye that stands `turn` radians round to the right."""
    return np.array([[np.cos(turn), 0, -np.sin(turn)], [0, 1, 0], [np.sin(turn), 0, np.cos(turn)]])


def test_a_board_before_another_is_nearer_by_what_is_between_their_faces():
    faces = list_faces([board((0, 4), (0, 4), (0, 1)), board((1, 3), (1, 3), (2, 5))])
    fronts = [i for i, face in enumerate(faces) if face.normal[2] == 1]
    low, high = Nearness(Outlines(faces), FRONT, 0.0).bound_ahead(np.array(fronts), np.array(fronts[::-1]))
    assert low == pytest.approx([4, -4])
    assert high == pytest.approx([4, -4])


@pytest.mark.parametrize("turn", [0.3, -0.7, 1.2])
def test_no_place_in_both_pictures_is_out_of_the_bounds(turn: float):
    basis = _turned(turn)
    faces = list_faces(plan_surround(read_demo("brick")).boards)
    faces = tuple(face for face in faces if face.normal @ basis[2] > 1e-3)
    nearness = Nearness(Outlines(faces), basis, 0.0)
    random = np.random.default_rng(3)
    asked = 0
    for far, near in random.integers(0, len(faces), (4000, 2)):
        shapes = [faces[i].ring @ basis[:2].T for i in (far, near)]
        low_corner = np.max([shape.min(axis=0) for shape in shapes], axis=0)
        high_corner = np.min([shape.max(axis=0) for shape in shapes], axis=0)
        if far == near or (low_corner > high_corner).any() or max(map(len, shapes)) > 4:
            continue
        low, high = nearness.bound_ahead(np.array([far]), np.array([near]))
        for spot in random.uniform(low_corner, high_corner, (20, 2)):
            if all(_is_inside(shape, spot) for shape in shapes):
                a, b, c = nearness.planes[near] - nearness.planes[far]
                assert low[0] - 1e-9 <= a * spot[0] + b * spot[1] + c <= high[0] + 1e-9
                asked += 1
    assert asked > 200


def _is_inside(ring: np.ndarray, spot: np.ndarray) -> bool:
    """Whether a place lies in a convex ring that runs counter-clockwise."""
    way, off = np.roll(ring, -1, axis=0) - ring, spot - ring
    return bool((way[:, 0] * off[:, 1] - way[:, 1] * off[:, 0] >= 0).all())


def test_of_no_pairs_nothing_is_said():
    none = np.zeros(0, dtype=np.intp)
    low, high = Nearness(Outlines(()), FRONT, 0.0).bound_ahead(none, none)
    assert len(low) == len(high) == 0
