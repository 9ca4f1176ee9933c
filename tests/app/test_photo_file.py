"""Photos come in upright, small enough and bare; what is no photo is refused by its path."""

from __future__ import annotations

import struct
import zlib
from pathlib import Path

import pytest
from PIL import Image
from PySide6.QtGui import QImage

from app.files import FileTrouble
from app.photo_file import (
    LONGEST_SHOWN,
    encode_jpeg,
    find_photo,
    is_cut_short,
    read_photo_file,
    save_picture,
)
from model.photo.stored import WallPhoto, first_corners, keep_bytes

EXIF, GPS, ORIENTATION, FOCAL = 0x8769, 0x8825, 0x0112, 0xA405


def take(path: Path, size=(60, 40), orientation: int = 1, focal: object = None) -> Path:
    """A photo with a red corner up on the left, with data of its own."""
    picture = Image.new("RGB", size, "white")
    picture.paste("red", (0, 0, size[0] // 4, size[1] // 4))
    data = Image.Exif()
    data[ORIENTATION] = orientation
    data.get_ifd(GPS)[1] = "N"
    data.get_ifd(GPS)[2] = (51.0, 28.0, 38.0)
    if focal is not None:
        data.get_ifd(EXIF)[FOCAL] = focal
    picture.save(path, quality=95, exif=data)
    return path


def is_red(image: QImage, x: int, y: int) -> bool:
    colour = image.pixelColor(x, y)
    return colour.red() > 200 and colour.green() < 90


def test_a_photo_is_turned_as_it_says_and_tells_its_lens(tmp_path: Path, application):
    upright = read_photo_file(take(tmp_path / "a.jpg", focal=26))
    assert (upright.size, upright.equivalent) == ((60, 40), 26.0)
    assert is_red(upright.image, 4, 4)
    turned = read_photo_file(take(tmp_path / "b.jpg", orientation=6))
    assert turned.size == (40, 60)
    assert is_red(turned.image, 36, 4)
    assert turned.equivalent is None


@pytest.mark.parametrize("focal", [0, 5, 9000])
def test_a_lens_that_cannot_be_is_not_believed(tmp_path: Path, application, focal: int):
    assert read_photo_file(take(tmp_path / "a.jpg", focal=focal)).equivalent is None


def test_a_large_photo_is_worked_with_smaller(tmp_path: Path, application):
    photo = read_photo_file(take(tmp_path / "a.jpg", size=(4800, 3200)))
    assert photo.size == (LONGEST_SHOWN, LONGEST_SHOWN * 2 // 3)


def bomb() -> bytes:
    """A PNG of a few thousand bytes that says it is 19,000 by 13,000 pixels."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    head = struct.pack(">IIBBBBB", 19_000, 13_000, 8, 6, 0, 0, 0)
    rows = zlib.compress(b"\0" * 3_000_000)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", rows) + chunk(b"IEND", b"")


@pytest.mark.parametrize(
    ("data", "word"),
    [
        (b"", "no JPEG"),
        (b"not a picture at all", "no JPEG"),
        (b"<svg xmlns='http://www.w3.org/2000/svg' width='9' height='9'/>", "no JPEG"),
        (b"\xff\xd8\xff\xe0\x00\x10JFIF" + bytes(40), "broken"),
        (bomb(), "too large|too many"),
    ],
)
def test_what_is_no_photo_is_refused_by_its_path(tmp_path: Path, application, data: bytes, word: str):
    path = tmp_path / "odd.jpg"
    path.write_bytes(data)
    with pytest.raises(FileTrouble, match=word) as refused:
        read_photo_file(path)
    assert str(path) in str(refused.value)
    assert "Nothing was changed." in str(refused.value)


@pytest.mark.parametrize("name", ["a.jpg", "a.png", "a.webp"])
def test_a_photo_cut_short_is_refused(tmp_path: Path, application, name: str):
    whole = take(tmp_path / name, size=(600, 400)).read_bytes()
    path = tmp_path / f"cut{name}"
    for length in range(0, len(whole) - 2, 97):
        path.write_bytes(whole[:length])
        with pytest.raises(FileTrouble, match=r"broken|no JPEG"):
            read_photo_file(path)


@pytest.mark.parametrize("how", [{}, {"progressive": True}, {"subsampling": 0, "quality": 100}])
def test_a_whole_photo_is_read_whatever_follows_its_end(tmp_path: Path, application, how: dict):
    noise = Image.effect_noise((300, 200), 90).convert("RGB")
    small = Image.Exif()
    small[ORIENTATION] = 1
    noise.save(tmp_path / "a.jpg", exif=small, **how)
    whole = (tmp_path / "a.jpg").read_bytes()
    for more in (b"", b"\0" * 50, b"\xff\xda\xff\xe1moving"):
        (tmp_path / "b.jpg").write_bytes(whole + more)
        assert read_photo_file(tmp_path / "b.jpg").size == (300, 200)
    cut = whole[: len(whole) // 2]
    assert is_cut_short(cut)


def test_a_file_that_is_not_there_is_refused_by_its_path(tmp_path: Path, application):
    with pytest.raises(FileTrouble, match="no such file"):
        read_photo_file(tmp_path / "none.jpg")


@pytest.mark.parametrize("name", ["out.png", "out.jpg"])
def test_nothing_but_the_picture_is_written(tmp_path: Path, application, name: str):
    photo = read_photo_file(take(tmp_path / "a.jpg", focal=26))
    save_picture(tmp_path / name, photo.image)
    with Image.open(tmp_path / name) as written:
        assert written.size == (60, 40)
        assert not dict(written.getexif())
    assert b"Exif" not in encode_jpeg(photo.image)
    assert b"Exif" not in (tmp_path / name).read_bytes()


def test_the_photo_beside_a_job_is_found_and_another_in_its_place_is_refused(tmp_path: Path, application):
    take(tmp_path / "wall.jpg")
    stored = WallPhoto(60, 40, first_corners(60, 40), file="wall.jpg")
    assert find_photo(stored, tmp_path).size == (60, 40)
    take(tmp_path / "wall.jpg", size=(80, 40))
    with pytest.raises(FileTrouble, match="not the photo"):
        find_photo(stored, tmp_path)
    with pytest.raises(FileTrouble, match="not saved"):
        find_photo(stored, None)


def test_the_photo_kept_in_a_job_needs_no_folder(tmp_path: Path, application):
    image = read_photo_file(take(tmp_path / "a.jpg")).image
    stored = WallPhoto(60, 40, first_corners(60, 40), kept=keep_bytes(encode_jpeg(image)))
    assert find_photo(stored, None).size == (60, 40)
