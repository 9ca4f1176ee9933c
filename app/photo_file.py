"""Photos on disk and in jobs: bounded before they are decoded, turned upright, stripped to the picture.

Which camera took one is model.photo's business.
"""

from __future__ import annotations

import re
import warnings
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QSize
from PySide6.QtGui import QImage, QImageReader, QPainter

from app.files import UNCHANGED, FileTrouble, read_bytes, save_bytes
from app.picture import encode_picture
from model.photo.stored import LONGEST, MOST_SIDE, SHORTEST, WallPhoto, kept_bytes

LARGEST_FILE = 120_000_000
"""Bytes of a photo's file."""
MOST_PIXELS = 260_000_000
LONGEST_SHOWN = 2400
"""Pixels along the longer side that a photo is worked with; a larger one is read smaller. Shop choice."""
FORMATS = ("jpeg", "png", "webp")
FILTER = "Photos (*.jpg *.jpeg *.png *.webp)"
QUALITY = 90
EXIF, FOCAL_EQUIVALENT = 0x8769, 0xA405
"""Tags of the photo's own data: its Exif part, and in it FocalLengthIn35mmFilm. Exif 2.3, 4.6."""
SEGMENT, END = re.compile(rb"\xff[^\x00\x01\xff\xd0-\xd7]"), 0xD9
"""A JPEG's markers that begin a segment, and the one at its end. ITU-T T.81, table B.1."""


@dataclass(frozen=True, slots=True)
class Photo:
    """A picture turned upright, and the focal length on a 36 x 24 mm frame that its data gives, if any."""

    image: QImage
    equivalent: float | None = None

    @property
    def size(self) -> tuple[int, int]:
        """Width and height in pixels."""
        return self.image.width(), self.image.height()


def read_photo_file(path: Path) -> Photo:
    """The photo at `path`. Raises FileTrouble for one that is no photo, broken or too large."""
    too_large = f"it is larger than {LARGEST_FILE // 1_000_000} MB"
    return read_photo_bytes(read_bytes(path, LARGEST_FILE, too_large), path)


def read_photo_bytes(data: bytes, path: Path) -> Photo:
    """The photo that `data` holds; `path` is what to call it. Raises FileTrouble as for a file."""
    buffer = QBuffer()
    buffer.setData(QByteArray(data))
    buffer.open(QIODevice.OpenModeFlag.ReadOnly)
    reader = QImageReader(buffer)
    reader.setDecideFormatFromContent(True)
    reader.setAutoTransform(True)
    kind = bytes(reader.format().data()).decode("ascii", "replace")
    if kind not in FORMATS:
        raise FileTrouble(path, "opened", "it is no JPEG, PNG or WebP picture", UNCHANGED)
    if kind == "jpeg" and is_cut_short(data):
        raise FileTrouble(
            path, "opened", "the picture in it is broken: a part of the file is missing", UNCHANGED
        )
    _bound(path, reader)
    image = reader.read()
    if image.isNull():
        raise FileTrouble(path, "opened", "the picture in it is broken or too large to unpack", UNCHANGED)
    return Photo(_bare(image), _read_equivalent(data))


def is_cut_short(data: bytes) -> bool:
    """Whether the end of a JPEG is missing. Decoders fill up with grey what is not there, and say nothing."""
    at = 2
    while (marker := SEGMENT.search(data, at)) is not None:
        at = marker.end()
        if data[at - 1] == END:
            return False
        at += max(2, int.from_bytes(data[at : at + 2]))
    return True


def _bound(path: Path, reader: QImageReader) -> None:
    """Refuse what is too large before anything of it is unpacked; have what is large read smaller."""
    size = reader.size()
    wide, high = size.width(), size.height()
    if wide <= 0 or high <= 0:
        raise FileTrouble(path, "opened", "the picture in it is broken", UNCHANGED)
    if max(wide, high) > MOST_SIDE or wide * high > MOST_PIXELS:
        raise FileTrouble(path, "opened", f"its {wide} by {high} pixels are too many", UNCHANGED)
    longest = max(wide, high)
    if longest > LONGEST_SHOWN:
        scale = LONGEST_SHOWN / longest
        reader.setScaledSize(QSize(max(1, round(wide * scale)), max(1, round(high * scale))))


def _bare(image: QImage) -> QImage:
    """The pixels alone: place, time and whatever else a photo says of itself stay behind."""
    bare = QImage(image.size(), QImage.Format.Format_RGB32)
    bare.fill(0xFFFFFFFF)
    with QPainter(bare) as painter:
        painter.drawImage(0, 0, image)
    return bare


def _read_equivalent(data: bytes) -> float | None:
    """FocalLengthIn35mmFilm of a photo's own data, where there is one that can be."""
    from PIL import Image

    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            with Image.open(BytesIO(data), formats=[name.upper() for name in FORMATS]) as picture:
                found = picture.getexif().get_ifd(EXIF).get(FOCAL_EQUIVALENT)
        value = float(found) if found is not None else 0.0
    except Exception:  # data of its own that is spoilt in whatever way tells nothing; the picture is whole
        return None
    return value if SHORTEST <= value <= LONGEST else None


def find_photo(photo: WallPhoto, folder: Path | None) -> Photo:
    """The picture a job's photo stands for; `folder` is the job's. Raises FileTrouble where it is not there.

    Only a plain name in the job's own folder is followed.
    """
    if photo.kept:
        path = Path("The photo kept in the job")
        found = read_photo_bytes(kept_bytes(photo), path)
    elif folder is None:
        raise FileTrouble(Path(photo.file), "found", "the job is not saved yet", UNCHANGED)
    else:
        path = folder / photo.file
        found = read_photo_file(path)
    if found.size != photo.size:
        raise FileTrouble(path, "used", "it is not the photo that the corners were set in", UNCHANGED)
    return found


def encode_jpeg(image: QImage, quality: int = QUALITY) -> bytes:
    """The picture as a JPEG, with nothing in it but the picture."""
    return encode_picture(image, "jpeg", quality)


def save_picture(path: Path, image: QImage) -> None:
    """Write a picture as PNG, or as JPEG where the name says so. Raises FileTrouble."""
    is_png = path.suffix.lower() == ".png"
    save_bytes(path, encode_picture(image, "png") if is_png else encode_jpeg(image))
