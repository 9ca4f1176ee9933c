"""What a photo shows of wood, and what of it the light reaches, held against rays that know of neither."""

from __future__ import annotations

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Point

from app.demo import read_demo
from model.board import Board
from model.errors import Refused
from model.job import Job
from model.photo.camera import Camera
from model.surround import plan_surround
from render.perspective import AWAY, DARK, see_solids
from tests.model.photo.test_recover import take
from tests.planned import plan_of
from tests.strategies import jobs
from tests.takeoff_wood import triangles_of

POINTS = 120
CLEAR = 0.6
"""Pixels; points nearer to an edge than this are not asked for."""
ABOUT = (0.0, 15.0, 0.0)
TO_LIGHT = np.array([-1.0, 1.0, 1.0])
OFF = 4e-3


def meet(origin: np.ndarray, way: np.ndarray, triangles: np.ndarray) -> np.ndarray:
    """How far along a ray each triangle is met, infinite where it is not. Moller and Trumbore's test."""
    a = triangles[:, 0]
    first, second = triangles[:, 1] - a, triangles[:, 2] - a
    across = np.cross(way, second)
    size = (first * across).sum(axis=1)
    inverse = 1 / np.where(np.abs(size) > 1e-12, size, np.nan)
    off = origin - a
    u = (off * across).sum(axis=1) * inverse
    turned = np.cross(off, first)
    v = (turned @ way) * inverse
    along = (second * turned).sum(axis=1) * inverse
    hit = (u >= 0) & (v >= 0) & (u + v <= 1) & (along > 1e-9)
    return np.where(hit, along, np.inf)


def check_by_rays(boards: tuple[Board, ...], camera: Camera, seed: int) -> tuple[int, list[str]]:
    seen = list(see_solids(boards, camera, ABOUT))
    triangles = [triangles_of([board]) for board in boards]
    whose = np.concatenate([np.full(len(own), i) for i, own in enumerate(triangles)])
    every = np.concatenate(triangles)
    corners = camera.project(np.concatenate([np.array(b.vertices) for b in boards]))
    edges = shapely.boundary([shape for f in seen for shape in (f.whole, f.shadow) if shape is not None])
    wrong, asked = [], 0
    for x, y in np.random.default_rng(seed).uniform(corners.min(axis=0), corners.max(axis=0), (POINTS, 2)):
        spot = Point(x, y)
        if (shapely.distance(edges, spot) < CLEAR).any():
            continue
        asked += 1
        way = camera.turn.T @ np.array([*((x, y) - camera.centre) / camera.focal, 1.0])
        met = meet(camera.stands_at, way, every)
        shown = [face for face in seen if face.whole.contains(spot)]
        nearest = int(met.argmin())
        expected = {int(whose[nearest])} if np.isfinite(met[nearest]) else set()
        if {face.owner for face in shown} != expected:
            wrong.append(f"({x:.0f}, {y:.0f}) shows {[f.owner for f in shown]}, not {expected}")
        elif shown:
            point = camera.stands_at + met[nearest] * way
            a, b, c = every[nearest]
            normal = np.cross(b - a, c - a)
            normal *= -np.sign(normal @ way)
            is_dark = normal @ TO_LIGHT <= 1e-9 or bool(
                np.isfinite(meet(point + OFF * normal / np.linalg.norm(normal), TO_LIGHT, every)).any()
            )
            face = shown[0]
            shadow = face.shadow is not None and face.shadow.contains(spot)
            if (face.tone in (AWAY, DARK) or shadow) != is_dark:
                wrong.append(f"({x:.0f}, {y:.0f}) {face.tone} {shadow}, dark: {is_dark}")
    return asked, wrong


@pytest.mark.parametrize(
    ("name", "millimetres", "yaw", "pitch"),
    [("brick", 24, 0, 3), ("brick", 28, 40, 12), ("bedroom", 50, -25, -8), ("gas", 80, 15, 5)],
)
def test_a_photo_shows_what_its_rays_meet_first_and_lights_what_the_light_meets_first(
    name, millimetres, yaw, pitch
):
    camera = take(millimetres, yaw, pitch, 130 * millimetres / 28)
    asked, wrong = check_by_rays(plan_surround(read_demo(name)).boards, camera, 3)
    assert asked > POINTS / 3
    assert len(wrong) <= 1, wrong


@settings(max_examples=5, deadline=None)
@given(job=jobs(in_between=False), yaw=st.integers(-40, 40), pitch=st.integers(-12, 15))
def test_rays_meet_the_same_in_a_photo_of_any_design(job: Job, yaw: int, pitch: int):
    boards = plan_of(job).boards
    _, wrong = check_by_rays(boards, take(28, yaw, pitch, 400), 4)
    assert len(wrong) <= 1, wrong


def test_a_camera_within_the_wood_is_refused():
    with pytest.raises(Refused, match="within"):
        list(see_solids(plan_surround(read_demo("brick")).boards, take(28, 0, 0, 7.0), ABOUT))
