"""What a job keeps of a photo of its wall: where the file is, its opening's corners, its angle of view.

Loaded with every job, so numpy stays out. What camera follows from it stands in model.photo.placed.
"""

from __future__ import annotations

import re
from base64 import b64decode, b64encode
from binascii import Error
from collections.abc import Iterator
from dataclasses import dataclass
from math import hypot, isfinite
from typing import Any

from model.errors import Refused

Pixel = tuple[float, float]
Corners = tuple[Pixel, Pixel, Pixel, Pixel]
MOST_SIDE = 20_000
"""Pixels; the longest side of a photo that is read."""
SHORTEST, LONGEST = 10.0, 400.0
"""Focal lengths, equivalent on 36 x 24 mm, outside of which no camera for rooms is. Shop choice."""
MOST_BYTES = 4_000_000
"""Of a picture that is kept in the job."""
LEAST_MOVED = 0.01
"""Pixels; corners nearer than that to where all of them begin were not moved."""
LONGEST_NAME = 200
NAME = re.compile(r"[^/\\:\x00-\x1f\x7f]+")
OFF_BY, LEAST_OFF = 0.5, 1.0
"""Pixels that a corner is set off by, one standard deviation: for each thousand of the photo's width, and at
least. Shop choice: what a hand does with a loupe."""


@dataclass(frozen=True, slots=True)
class WallPhoto:
    """A photo of `width` x `height` pixels, turned upright, and the opening's `corners` in it.

    Corners are lower left, lower right, upper right, upper left, in pixels from the upper left, y down.
    `equivalent` is the focal length on a 36 x 24 mm frame; None where the corners are to tell it. `is_typed`
    where somebody said it. `file` is the name of a file beside the job, or "" with `kept` its bytes, a JPEG
    in base 64.
    """

    width: int
    height: int
    corners: Corners
    equivalent: float | None = None
    is_typed: bool = False
    file: str = ""
    kept: str = ""

    @property
    def size(self) -> tuple[int, int]:
        """Width and height in pixels."""
        return self.width, self.height

    @property
    def is_set(self) -> bool:
        """Whether any corner was moved from where all of them begin; see `first_corners`."""
        (left, low), (right, _), (_, high), _ = self.corners
        if left >= right or high >= low:
            return True
        begun = first_corners(self.width, self.height, (right - left) / (low - high))
        moved = (hypot(x - a, y - b) for (x, y), (a, b) in zip(self.corners, begun, strict=True))
        return max(moved) > LEAST_MOVED

    @property
    def noise(self) -> float:
        """Pixels that a corner is off, one standard deviation."""
        return max(LEAST_OFF, OFF_BY * self.width / 1000)


def first_corners(width: int, height: int, shape: float = 1.2) -> Corners:
    """Where the corners stand before they are set: a rectangle in the photo's lower middle, so many times as
    wide as high as the opening is."""
    half = min(0.15 * width, 0.2 * height * shape)
    left, right, low = width / 2 - half, width / 2 + half, 0.8 * height
    high = low - 2 * half / shape
    return (left, low), (right, low), (right, high), (left, high)


def keep_bytes(data: bytes) -> str:
    """A JPEG's bytes as a job keeps them. Raises Refused for more than MOST_BYTES."""
    if len(data) > MOST_BYTES:
        raise Refused("photo", f"{len(data):,} bytes", f"a job keeps at most {MOST_BYTES:,}")
    return b64encode(data).decode("ascii")


def kept_bytes(photo: WallPhoto) -> bytes:
    """The bytes that the job keeps."""
    return b64decode(photo.kept)


def store_photo(photo: WallPhoto) -> dict[str, Any]:
    """`photo` as plain data for a job file."""
    import msgspec

    stored: dict[str, Any] = msgspec.to_builtins(photo)
    return stored


def read_photo(data: object) -> WallPhoto:
    """The photo that a job file's data stands for. Raises Refused for the first fault."""
    import msgspec

    try:
        photo = msgspec.convert(data, WallPhoto)
    except msgspec.ValidationError as fault:
        raise Refused("photo", data, f"{fault}; leave it as it was written") from None
    known = set(WallPhoto.__dataclass_fields__)
    if isinstance(data, dict) and not set(data) <= known:
        raise Refused("photo", ", ".join(sorted(set(data) - known)), "not known here")
    for refusal in _list_faults(photo):
        raise refusal
    return photo


def _list_faults(photo: WallPhoto) -> Iterator[Refused]:
    if not (0 < photo.width <= MOST_SIDE and 0 < photo.height <= MOST_SIDE):
        yield Refused(
            "photo size", f"{photo.width} x {photo.height}", f"write 1 to {MOST_SIDE} pixels a side"
        )
    most = 10 * MOST_SIDE
    if not all(isfinite(place) and abs(place) <= most for corner in photo.corners for place in corner):
        yield Refused("photo corners", photo.corners, "write pixels of the photo")
    if photo.equivalent is not None and not SHORTEST <= photo.equivalent <= LONGEST:
        yield Refused("photo focal length", photo.equivalent, f"write {SHORTEST:g} to {LONGEST:g} mm")
    if photo.file and not is_plain(photo.file):
        yield Refused("photo file", photo.file, "write the plain name of a file beside the job")
    if bool(photo.file) == bool(photo.kept):
        yield Refused("photo", photo.file, "name a file beside the job, or keep the picture in it, not both")
    yield from _list_kept_faults(photo.kept)


def is_plain(name: str) -> bool:
    """Whether it is the name of a file and nothing of a path."""
    return len(name) <= LONGEST_NAME and NAME.fullmatch(name) is not None and name.strip(". ") != ""


def _list_kept_faults(kept: str) -> Iterator[Refused]:
    try:
        size = len(b64decode(kept, validate=True)) if len(kept) <= 2 * MOST_BYTES else MOST_BYTES + 1
    except (Error, ValueError):
        yield Refused("photo kept", kept, "write a picture in base 64")
        return
    if size > MOST_BYTES:
        yield Refused("photo kept", f"{len(kept):,} letters", f"a job keeps at most {MOST_BYTES:,} bytes")
