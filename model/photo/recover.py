"""The camera that took a photo, from the four corners of a rectangle whose size and place are known.

The corners fit a camera best where the squares of what they are off, in pixels, sum up to least. How far off
corners are set by hand spreads to everything that is found from them, and is kept with it.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import exp, log, sqrt

import numpy as np
from numpy.typing import ArrayLike, NDArray

from model.errors import Refused
from model.photo.camera import Camera, equivalent_of_focal, focal_of_equivalent
from model.photo.homography import find_homography
from model.photo.stored import LONGEST, SHORTEST

Real = NDArray[np.float64]
MOST_SPREAD = 0.12
"""Share of itself by which a focal length found from corners may be off, one standard deviation. Past it the
few photos that tell one tell a wrong one too surely. Shop choice, from a thousand noisy photos each."""
MOST_OFF = 4.0
"""How many times the noise of corners their places may miss those of a camera. Shop choice."""
STEPS, STILL = 30, 1e-10
"""Steps of the search at most, and the part of what corners are off that ends it once no step mends more."""
ORDER = "mark them in their order: lower left, lower right, upper right, upper left"


class FocalUnknown(Refused):
    """These corners do not tell the focal length."""

    def __init__(self) -> None:
        wanted = "give it, as the equivalent on 36 x 24 mm film"
        super().__init__("focal length", "not to be had from these corners", wanted)


@dataclass(frozen=True, slots=True, eq=False)
class Found:
    """A camera, and how surely it is known.

    `spread` (7, 7) is the covariance of what `vary` takes. `off` is by how many pixels, in the mean, corners
    miss the places that the camera gives them.
    """

    camera: Camera
    spread: Real
    off: float


def recover_camera(
    corners: ArrayLike,
    rectangle: ArrayLike,
    size: tuple[int, int],
    focal: float | None = None,
    focal_spread: float = 0.02,
    noise: float = 1.0,
) -> Found:
    """The camera that saw the corners of `rectangle` (4, 3) of the room, inches, at `corners` (4, 2) pixels.

    The rectangle stands upright in a plane of equal z, its corners lower left, lower right, upper right,
    upper left. `size` is the photo's width and height in pixels. `focal` in pixels is known to a share
    `focal_spread` of itself, or found from the corners. `noise` is how far off a corner is, in pixels, one
    standard deviation.

    Raises Refused for corners that fit no camera, FocalUnknown where they do not tell the focal length.
    """
    pixels = np.asarray(corners, dtype=np.float64)
    places = np.asarray(rectangle, dtype=np.float64)
    if _area(pixels) >= 0:
        raise Refused("corners", "in another order", ORDER)
    centre = np.array(size, dtype=np.float64) / 2
    flat = find_homography(places[:, :2], pixels - centre)
    start = focal if focal is not None else _find_focal(flat, size)
    known = None if focal is None else (focal, focal_spread)
    camera, slopes, off = _fit(_stand(flat, start, centre, places[0, 2]), pixels, places, known, noise)
    if np.linalg.cond(slopes) > 1 / STILL:
        raise FocalUnknown()
    spread = np.linalg.inv(slopes.T @ slopes)
    found = Found(camera, np.asarray(spread), off)
    _check(found, size, noise, focal is None)
    return found


def vary(camera: Camera, by: Real) -> Camera:
    """A camera a little off: by radians turned (3), inches shifted (3), and the focal length's logarithm."""
    return Camera(
        camera.focal * exp(by[6]), camera.centre, _turn_by(by[:3]) @ camera.turn, camera.shift + by[3:6]
    )


def spread_of(found: Found, points: ArrayLike) -> Real:
    """Pixels (n,) round each point of the room (n, 3) within which it lies in 95 of 100 photos.

    The longer half axis of the ellipse that a normal spread of corners gives, 2.448 standard deviations.
    """
    slopes = _slopes(found.camera, np.atleast_2d(np.asarray(points, dtype=np.float64)))
    each = slopes.reshape(-1, 2, 7)
    covariances = each @ found.spread @ each.transpose(0, 2, 1)
    return np.asarray(2.448 * np.sqrt(np.linalg.eigvalsh(covariances)[:, -1]))


def _area(pixels: Real) -> float:
    x, y = pixels.T
    return float(np.sum(x * np.roll(y, -1) - np.roll(x, -1) * y))


def _find_focal(flat: Real, size: tuple[int, int]) -> float:
    """From the rectangle's sides being square to each other and at one scale; both in least squares."""
    one, two = flat[:, 0], flat[:, 1]
    near = np.array([one[:2] @ two[:2], one[:2] @ one[:2] - two[:2] @ two[:2]])
    far = np.array([one[2] * two[2], one[2] ** 2 - two[2] ** 2])
    squared = -(near @ near) / (near @ far) if near @ far else -1.0
    if squared <= 0 or not _is_usual(sqrt(squared), size):
        raise FocalUnknown()
    return sqrt(squared)


def _is_usual(focal: float, size: tuple[int, int]) -> bool:
    return focal_of_equivalent(SHORTEST, size) <= focal <= focal_of_equivalent(LONGEST, size)


def _stand(flat: Real, focal: float, centre: Real, depth: float) -> Camera:
    """Where a camera of this focal length stands, near enough to begin with."""
    axes = flat * np.array([[1 / focal], [1 / focal], [1.0]])
    scale = sqrt(float(np.linalg.norm(axes[:, 0]) * np.linalg.norm(axes[:, 1])))
    axes = axes / (scale if axes[2, 2] > 0 else -scale)
    left, _, right = np.linalg.svd(np.column_stack([axes[:, :2], np.cross(axes[:, 0], axes[:, 1])]))
    turn = left @ np.diag([1.0, 1.0, float(np.sign(np.linalg.det(left @ right)))]) @ right
    return Camera(focal, centre, np.asarray(turn), np.asarray(axes[:, 2] - depth * turn[:, 2]))


def _fit(
    camera: Camera, pixels: Real, places: Real, known: tuple[float, float] | None, noise: float
) -> tuple[Camera, Real, float]:
    """The camera that fits best, what it misses changes by, in parts of the noise, and the mean miss."""

    def miss(one: Camera) -> Real:
        rows = (pixels - one.project(places)).ravel() / noise
        return rows if known is None else np.append(rows, log(known[0] / one.focal) / known[1])

    def slopes(one: Camera) -> Real:
        rows = _slopes(one, places) / noise
        if known is None:
            return rows
        return np.vstack([rows, [0, 0, 0, 0, 0, 0, 1 / known[1]]])

    now = miss(camera)
    if not np.isfinite(now).all():
        raise Refused("corners", "those of no rectangle before a camera", ORDER)
    damping = 1e-6
    for _ in range(STEPS):
        rows = slopes(camera)
        normal = rows.T @ rows
        by = np.linalg.lstsq(normal + damping * np.diag(np.diag(normal)), rows.T @ now, rcond=None)[0]
        other = vary(camera, np.asarray(by, dtype=np.float64))
        then = miss(other)
        if np.isfinite(then).all() and then @ then <= now @ now:
            camera, damping = other, damping / 10
            is_still = now @ now - then @ then <= STILL * max(1.0, float(now @ now))
            now = then
            if is_still:
                break
        else:
            damping = max(damping, STILL) * 10
    off = float(np.sqrt(np.mean(np.sum((pixels - camera.project(places)) ** 2, axis=1))))
    return camera, slopes(camera), off


def _slopes(camera: Camera, points: Real) -> Real:
    """How pixels (2 n, 7) change with each part of `vary`."""
    seen = camera.place(points)
    right, down, away = seen.T
    by_seen = np.zeros((len(seen), 2, 3))
    by_seen[:, 0, 0] = by_seen[:, 1, 1] = camera.focal / away
    by_seen[:, 0, 2] = -camera.focal * right / away**2
    by_seen[:, 1, 2] = -camera.focal * down / away**2
    turned = seen - camera.shift
    by_turn = np.zeros((len(seen), 3, 3))
    by_turn[:, 0, 1], by_turn[:, 0, 2] = turned[:, 2], -turned[:, 1]
    by_turn[:, 1, 0], by_turn[:, 1, 2] = -turned[:, 2], turned[:, 0]
    by_turn[:, 2, 0], by_turn[:, 2, 1] = turned[:, 1], -turned[:, 0]
    by_focal = (camera.project(points) - camera.centre)[:, :, None]
    return np.concatenate([by_seen @ by_turn, by_seen, by_focal], axis=2).reshape(-1, 7)


def _turn_by(radians: Real) -> Real:
    """A small turn as a matrix: O. Rodrigues' formula."""
    angle = float(np.linalg.norm(radians))
    if angle == 0:
        return np.eye(3)
    x, y, z = radians / angle
    cross = np.array([[0, -z, y], [z, 0, -x], [-y, x, 0]])
    return np.asarray(np.eye(3) + np.sin(angle) * cross + (1 - np.cos(angle)) * cross @ cross)


def _check(found: Found, size: tuple[int, int], noise: float, is_found: bool) -> None:
    """Raise Refused for what no photo of this rectangle can be, or one that does not tell enough."""
    if not _is_usual(found.camera.focal, size) or (
        is_found and sqrt(float(found.spread[6, 6])) > MOST_SPREAD
    ):
        if is_found:
            raise FocalUnknown()
        millimetres = equivalent_of_focal(found.camera.focal, size)
        wanted = f"give one from {SHORTEST:.0f} to {LONGEST:.0f} mm, or set the corners anew"
        raise Refused("focal length", f"{millimetres:.0f} mm", wanted)
    if found.off > MOST_OFF * noise:
        raise Refused(
            "corners",
            f"{found.off:.1f} pixels off those of a rectangle of this size",
            "set them anew, check the size, and take a photo that is not cropped",
        )
