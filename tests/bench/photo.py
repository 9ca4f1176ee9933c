"""How well the surround lies on a photo: a thousand noisy photos for each camera, and how long one takes.

Run with ``python -m tests.bench.photo``. The everyday tests take a few of the same.
"""

from __future__ import annotations

from collections.abc import Iterator
from time import process_time

import numpy as np

from app.demo import list_demos, read_demo
from model.errors import Refused
from model.photo.placed import opening_corners
from model.photo.recover import Found, recover_camera, spread_of
from model.surround import Surround, plan_surround
from render.photo_picture import draw_on_photo
from render.shaded_front import draw_shaded
from tests.model.photo.test_recover import OPENING, OUTLINE, SIZE, pinhole, take

PHOTOS = 1000
CAMERAS = tuple(
    (millimetres, yaw, pitch)
    for millimetres in (24, 35, 50, 80)
    for yaw, pitch in ((0, 5), (15, 5), (-25, 8), (40, 12))
)


def cover(millimetres: float, yaw: float, pitch: float, is_known: bool) -> tuple[float, float, int]:
    """Of noisy photos the share of points that lie where it is said, the median of that, how many refused."""
    camera = take(millimetres, yaw, pitch, 110 * millimetres / 28)
    random = np.random.default_rng(7)
    corners = np.array([pinhole(camera, point) for point in OPENING])
    truth = np.array([pinhole(camera, point) for point in OUTLINE])
    inside, said, refused = [], [], 0
    for _ in range(PHOTOS):
        # what the data of a photo gives is itself a little off, as much as is allowed for
        focal = camera.focal * float(np.exp(random.normal(0, 0.02))) if is_known else None
        try:
            found = recover_camera(corners + random.normal(0, 1, (4, 2)), OPENING, SIZE, focal=focal)
        except Refused:
            refused += 1
            continue
        spread = spread_of(found, OUTLINE)
        inside.append(np.hypot(*(found.camera.project(OUTLINE) - truth).T) <= spread)
        said.append(float(spread.max()))
    return float(np.mean(inside)) if inside else float("nan"), float(np.median(said or [0.0])), refused


def list_lines() -> Iterator[str]:
    """A line for each camera."""
    for camera in CAMERAS:
        for is_known in (True, False):
            share, said, refused = cover(*camera, is_known)
            millimetres, yaw, pitch = camera
            lens = "lens known" if is_known else "lens found"
            held = f"covered {share:6.1%}, within {said:6.1f} px" if refused < PHOTOS else "nothing told"
            told = f"{held}, refused {refused} of {PHOTOS}"
            yield f"{millimetres:3} mm, yaw {yaw:4}, pitch {pitch:3}, {lens} {told}"


def time_picture(surround: Surround) -> tuple[float, float]:
    """Seconds of processor time for the surround on a photo, and for the shaded front beside it."""
    opening = opening_corners(surround.job.site.opening)
    camera = take(28, 25, 8, 130)
    found: Found = recover_camera([pinhole(camera, p) for p in opening], opening, SIZE, focal=camera.focal)
    start = process_time()
    draw_on_photo(surround, found)
    middle = process_time()
    draw_shaded(surround, 12.0)
    return middle - start, process_time() - middle


if __name__ == "__main__":
    for line in list_lines():
        print(line, flush=True)
    for name in list_demos():
        on_photo, front = time_picture(plan_surround(read_demo(name)))
        print(f"{name:10} on a photo {on_photo:5.2f} s, shaded front {front:5.2f} s")
