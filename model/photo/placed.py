"""The camera of a photo that a job keeps. How it is kept stands in model.photo.stored."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from model.photo.camera import focal_of_equivalent
from model.photo.recover import Found, recover_camera
from model.photo.stored import WallPhoto
from model.site import Opening

KNOWN_TO, TYPED_TO = 0.02, 0.05
"""Shares of itself that a focal length is known to, from the photo's data and as somebody says it."""


def opening_corners(opening: Opening) -> NDArray[np.float64]:
    """The opening's corners in the room (4, 3), inches, in the order of a photo's."""
    half, top = opening.width / 2, opening.height
    return np.array([(-half, 0, 0), (half, 0, 0), (half, top, 0), (-half, top, 0)], dtype=np.float64)


def find_camera(photo: WallPhoto, opening: Opening) -> Found:
    """The camera that took the photo. Raises Refused where the corners fit none or do not tell enough."""
    focal = None if photo.equivalent is None else focal_of_equivalent(photo.equivalent, photo.size)
    known_to = TYPED_TO if photo.is_typed else KNOWN_TO
    return recover_camera(photo.corners, opening_corners(opening), photo.size, focal, known_to, photo.noise)
