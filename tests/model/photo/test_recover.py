"""The camera of a photo is found again from four corners, as surely as is said."""

from __future__ import annotations

from contextlib import suppress
from math import cos, radians, sin

import numpy as np
import pytest

from model.errors import Refused
from model.photo.camera import Camera, equivalent_of_focal, focal_of_equivalent
from model.photo.recover import FocalUnknown, Found, recover_camera, spread_of, vary

SIZE = (4000, 3000)
OPENING = np.array([(-18, 0, 0), (18, 0, 0), (18, 29, 0), (-18, 29, 0)], dtype=float)
"""Corners of an opening of 36 x 29 in the masonry's face."""
OUTLINE = np.array(
    [(x, y, z) for x in (-35, 35) for y in (-8, 52) for z in (0, 7)] + [(0, 52, 7), (-32, 20, 4)], dtype=float
)
"""Corners of a surround: columns, a shelf, and how far they stand out."""


def take(millimetres: float, yaw: float, pitch: float, away: float = 110.0) -> Camera:
    """A camera that looks at the middle of the opening from `away` inches, turned by degrees."""
    a, b = radians(yaw), radians(pitch)
    level = np.array([(cos(a), 0, -sin(a)), (0, 1, 0), (sin(a), 0, cos(a))])
    nod = np.array([(1, 0, 0), (0, cos(b), -sin(b)), (0, sin(b), cos(b))])
    turn = np.diag([1.0, -1.0, -1.0]) @ nod @ level
    middle = np.array([0.0, 20.0, 0.0])
    return Camera(
        focal_of_equivalent(millimetres, SIZE),
        np.array(SIZE) / 2,
        turn,
        np.array([0, 0, away]) - turn @ middle,
    )


def pinhole(camera: Camera, point: np.ndarray) -> tuple[float, float]:
    """A point's pixel by similar triangles, written out for itself."""
    right, down, ahead = camera.turn
    off = point - camera.stands_at
    return (
        float(camera.focal * (off @ right) / (off @ ahead) + SIZE[0] / 2),
        float(camera.focal * (off @ down) / (off @ ahead) + SIZE[1] / 2),
    )


@pytest.mark.parametrize("millimetres", [24, 28, 35, 50, 80])
@pytest.mark.parametrize("yaw", [-40, -25, -10, 5, 15, 40])
@pytest.mark.parametrize("pitch", [-10, 4, 15])
def test_exact_corners_give_the_outline_to_a_fraction_of_a_pixel(millimetres, yaw, pitch):
    camera = take(millimetres, yaw, pitch, 110 * millimetres / 28)
    corners = [pinhole(camera, point) for point in OPENING]
    truth = np.array([pinhole(camera, point) for point in OUTLINE])
    found = recover_camera(corners, OPENING, SIZE, noise=0.05)
    assert found.camera.project(OUTLINE) == pytest.approx(truth, abs=0.01)
    assert found.camera.stands_at == pytest.approx(camera.stands_at, rel=1e-4, abs=0.01)
    assert equivalent_of_focal(found.camera.focal, SIZE) == pytest.approx(millimetres, rel=1e-4)


def test_straight_on_the_focal_length_is_asked_for_and_then_depth_is_right():
    camera = take(28, 0, 0)
    corners = [pinhole(camera, point) for point in OPENING]
    with pytest.raises(FocalUnknown, match="focal length"):
        recover_camera(corners, OPENING, SIZE)
    found = recover_camera(corners, OPENING, SIZE, focal=camera.focal)
    truth = np.array([pinhole(camera, point) for point in OUTLINE])
    assert found.camera.project(OUTLINE) == pytest.approx(truth, abs=0.01)


def test_nearly_straight_on_the_corners_tell_too_little_to_be_believed():
    camera = take(28, 0.7, 0.5)
    noise = np.random.default_rng(5).normal(0, 1, (200, 4, 2))
    corners = np.array([pinhole(camera, point) for point in OPENING])
    told = 0
    for each in noise:
        with suppress(Refused):
            recover_camera(corners + each, OPENING, SIZE)
            told += 1
    assert told < 10


def _draw(camera: Camera, seed: int, photos: int = 1000, **known: float) -> tuple[float, float]:
    """With corners 1 pixel off: how often the outline lies where it is said to, and the widest it says."""
    random = np.random.default_rng(seed)
    corners = np.array([pinhole(camera, point) for point in OPENING])
    truth = np.array([pinhole(camera, point) for point in OUTLINE])
    inside, widest = [], 0.0
    for _ in range(photos):
        found = recover_camera(corners + random.normal(0, 1, (4, 2)), OPENING, SIZE, **known)
        off = np.hypot(*(found.camera.project(OUTLINE) - truth).T)
        said = spread_of(found, OUTLINE)
        inside.append(off <= said)
        widest = max(widest, float(said.max()))
    return float(np.mean(inside)), widest


@pytest.mark.parametrize(("millimetres", "yaw", "pitch"), [(28, 25, 8), (50, 40, 12)])
def test_what_is_said_to_be_uncertain_covers_what_is_wrong(millimetres, yaw, pitch):
    covered, widest = _draw(take(millimetres, yaw, pitch, 110 * millimetres / 28), 1)
    assert covered >= 0.9
    assert widest < 120


@pytest.mark.parametrize(("millimetres", "yaw", "pitch"), [(24, 4, 3), (35, 5, 5), (50, 0, 8)])
def test_of_photos_that_hardly_tell_the_lens_none_is_taken_that_misleads(millimetres, yaw, pitch):
    camera = take(millimetres, yaw, pitch, 110 * millimetres / 28)
    random = np.random.default_rng(3)
    corners = np.array([pinhole(camera, point) for point in OPENING])
    truth = np.array([pinhole(camera, point) for point in OUTLINE])
    inside = []
    for _ in range(120):
        with suppress(Refused):
            found = recover_camera(corners + random.normal(0, 1, (4, 2)), OPENING, SIZE)
            off = np.hypot(*(found.camera.project(OUTLINE) - truth).T)
            inside.append(off <= spread_of(found, OUTLINE))
    assert not inside or np.mean(inside) >= 0.9


def test_a_known_focal_length_makes_it_surer():
    camera = take(28, 12, 5)
    covered, sure = _draw(camera, 2, 200, focal=camera.focal, focal_spread=0.001)
    assert covered >= 0.9
    assert sure < _draw(camera, 2, 200)[1]


def test_slopes_are_those_of_small_steps():
    from model.photo.recover import _slopes

    camera = take(35, 20, -7)
    step = 1e-6
    for i in range(7):
        by = np.zeros(7)
        by[i] = step
        change = (vary(camera, by).project(OUTLINE) - camera.project(OUTLINE)).ravel() / step
        assert _slopes(camera, OUTLINE)[:, i] == pytest.approx(change, rel=1e-4, abs=1e-2)


def test_a_rectangle_further_out_is_taken_where_it_stands():
    camera = take(28, 20, 5)
    proud = OPENING + np.array([0, 0, 4])
    found = recover_camera([pinhole(camera, point) for point in proud], proud, SIZE)
    assert found.camera.stands_at == pytest.approx(camera.stands_at, abs=0.01)


def test_corners_in_another_order_are_refused():
    corners = [pinhole(take(28, 20, 5), point) for point in OPENING]
    with pytest.raises(Refused, match="lower left, lower right"):
        recover_camera(corners[::-1], OPENING, SIZE)


def test_corners_of_another_shape_are_refused():
    """A cropped photo, or a size that was typed wrongly: no camera of the known focal length sees it so."""
    camera = take(28, 25, 5)
    corners = [pinhole(camera, point) for point in OPENING * (1.6, 1, 1)]
    with pytest.raises(Refused, match="cropped"):
        recover_camera(corners, OPENING, SIZE, focal=camera.focal, focal_spread=0.01)


def test_any_four_corners_are_taken_or_refused():
    """Also where a camera would have to have some of them behind it."""
    random = np.random.default_rng(0)
    for width, height in ((1, 1), (3, 2000), (2400, 40), (2400, 1800)):
        for known in (None, *(focal_of_equivalent(each, (width, height)) for each in (10.0, 26.0, 400.0))):
            for _ in range(15):
                corners = random.uniform((0, 0), (width, height), (4, 2))
                with suppress(Refused):
                    found = recover_camera(corners, OPENING, (width, height), focal=known)
                    assert np.isfinite(found.spread).all()
                    assert np.isfinite(found.camera.project(OPENING)).all()


def test_found_says_how_far_corners_miss():
    camera = take(28, 20, 5)
    corners = np.array([pinhole(camera, point) for point in OPENING])
    found: Found = recover_camera(corners + np.array([(2, 0), (-2, 0), (2, 0), (-2, 0)]), OPENING, SIZE)
    assert 0 <= found.off < 3
    assert recover_camera(corners, OPENING, SIZE).off == pytest.approx(0, abs=1e-6)
