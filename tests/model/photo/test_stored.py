"""What a job keeps of a photo is read back, and nothing else is let in."""

from __future__ import annotations

from dataclasses import replace

import pytest

from model.errors import JobRefused, Refused
from model.job import default_job, read_job, write_job
from model.photo.stored import (
    MOST_BYTES,
    WallPhoto,
    first_corners,
    keep_bytes,
    kept_bytes,
    read_photo,
    store_photo,
)

PHOTO = WallPhoto(4000, 3000, first_corners(4000, 3000), 26.0, False, "wall.jpg")


def test_a_photo_beside_the_job_comes_back_with_it():
    job = replace(default_job(), photo=PHOTO)
    assert read_job(write_job(job)) == job
    assert "photo" not in write_job(default_job())


def test_a_picture_kept_in_the_job_comes_back_byte_for_byte():
    data = bytes(range(256)) * 40
    kept = replace(PHOTO, file="", kept=keep_bytes(data))
    assert kept_bytes(read_photo(store_photo(kept))) == data


@pytest.mark.parametrize(
    "name", ["/etc/passwd", "../wall.jpg", "a/b.jpg", "a\\b.jpg", "c:wall.jpg", "..", "a\nb", "x" * 201]
)
def test_no_path_is_taken_from_a_job(name: str):
    with pytest.raises(Refused, match="photo file"):
        read_photo(store_photo(replace(PHOTO, file=name)))


@pytest.mark.parametrize(
    ("change", "word"),
    [
        ({"width": 0}, "size"),
        ({"height": 10**9}, "size"),
        ({"corners": [[1, 2], [3, 4], [5, 6]]}, "photo"),
        ({"corners": [[1, 2], [3, 4], [5, 6], [1e99, 0]]}, "corners"),
        ({"equivalent": 4.0}, "focal length"),
        ({"file": ""}, "not both"),
        ({"kept": "AAAA"}, "not both"),
        ({"file": "", "kept": "no base 64"}, "base 64"),
        ({"wall": 1}, "not known here"),
        ({"file": 3}, "str"),
    ],
)
def test_what_no_photo_can_be_is_refused_by_name(change: dict[str, object], word: str):
    with pytest.raises(Refused, match=word):
        read_photo({**store_photo(PHOTO), **change})


def test_a_job_with_a_spoilt_photo_is_refused_with_all_else_that_is_wrong():
    text = write_job(replace(default_job(), photo=PHOTO)).replace('"wall.jpg"', '"../wall.jpg"')
    with pytest.raises(JobRefused, match="photo file"):
        read_job(text)


def test_a_picture_too_large_for_a_job_is_refused():
    with pytest.raises(Refused, match="at most"):
        keep_bytes(bytes(MOST_BYTES + 1))


@pytest.mark.parametrize("shape", [0.6, 1.0, 1.37, 2.5])
def test_corners_are_set_once_one_of_them_was_moved(shape: float):
    begun = WallPhoto(4000, 3000, first_corners(4000, 3000, shape))
    assert not begun.is_set
    for which in range(4):
        moved = [*begun.corners]
        moved[which] = (moved[which][0] + 1, moved[which][1])
        assert replace(begun, corners=tuple(moved)).is_set
    shifted = tuple((x, y - 1) for x, y in begun.corners)
    assert replace(begun, corners=shifted).is_set
