"""The homeowner's offer shows the surround on the photo of the wall, and tells nothing else of the photo."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pdfplumber
import pytest
from PIL import Image

from app.demo import read_demo
from app.outputs import OFFER, build_outputs
from app.photo_beside import picture_of
from app.photo_carried import FITS_NO_CAMERA, NOT_SET, carry_photo
from app.sheet_painter import make_ready, picture_sheet
from model.job import Job, with_value
from model.photo.placed import opening_corners
from model.photo.stored import WallPhoto, first_corners, keep_bytes
from tests.model.photo.test_recover import SIZE, pinhole, take

HALF = (SIZE[0] // 2, SIZE[1] // 2)


@pytest.fixture
def job(tmp_path: Path, application) -> Job:
    """The bedroom's job with a photo beside it that says where it was taken."""
    data = Image.Exif()
    data.get_ifd(0x8825)[1] = "N"
    data.get_ifd(0x8825)[2] = (51.0, 28.0, 38.0)
    Image.new("RGB", HALF, (210, 40, 40)).save(tmp_path / "wall.jpg", exif=data)
    job = read_demo("bedroom")
    camera = take(28, 22, 9, 150)
    corners = tuple(
        (x / 2, y / 2) for x, y in (pinhole(camera, c) for c in opening_corners(job.site.opening))
    )
    return replace(job, photo=WallPhoto(*HALF, corners, 28.0, False, "wall.jpg"))


def test_the_offer_has_a_sheet_with_the_photo_and_nothing_of_its_data(job: Job, tmp_path: Path):
    carried, trouble = carry_photo(job, tmp_path)
    assert not trouble
    (output,) = build_outputs(carried, "letter", "2000-01-01", (OFFER,))
    assert b"Exif" not in output.data
    path = tmp_path / "offer.pdf"
    path.write_bytes(output.data)
    with pdfplumber.open(path) as document:
        page = document.pages[1]
        assert "On your wall" in page.extract_text()
        assert "19 times in 20" in page.extract_text()
        (picture,) = page.images
        wide, high = picture["x1"] - picture["x0"], picture["bottom"] - picture["top"]
        assert wide / high == pytest.approx(HALF[0] / HALF[1], rel=0.01)
        assert picture["x0"] > 0
        assert picture["x1"] < page.width
        assert len(document.pages) == 1 + _count_pages(replace(job, photo=None), tmp_path / "plain.pdf")


def test_screen_and_paper_are_scaled_by_the_opening_that_governs(job: Job, tmp_path: Path):
    """Typed larger, and read again as it was: the reading that governs is the one the photo was taken of."""
    width = job.site.opening.width
    again = with_value(with_value(job, "opening.width", width + 1), "readings.opening_width", (width,))
    assert carry_photo(again, tmp_path)[1] == ""
    pictures = [picture_of(each) for each in (job, again)]
    assert pictures[0] == pictures[1]


def _count_pages(job: Job, path: Path) -> int:
    (output,) = build_outputs(job, "letter", "2000-01-01", (OFFER,))
    path.write_bytes(output.data)
    with pdfplumber.open(path) as document:
        return len(document.pages)


def test_the_preview_shows_the_photo_too(job: Job, tmp_path: Path):
    from app.outputs import build_offer_sheets

    carried, _ = carry_photo(job, tmp_path)
    sheet = build_offer_sheets(carried, "letter", "2000-01-01")[1]
    shown = picture_sheet(make_ready(sheet), 800).toImage()
    reds = [shown.pixelColor(x, shown.height() // 4).red() > 180 for x in range(100, 700, 20)]
    blues = [shown.pixelColor(x, shown.height() // 4).blue() < 90 for x in range(100, 700, 20)]
    assert any(red and blue for red, blue in zip(reds, blues, strict=True))


def test_a_photo_that_is_gone_leaves_the_offer_without_it_and_is_told(job: Job, tmp_path: Path):
    (tmp_path / "wall.jpg").unlink()
    carried, trouble = carry_photo(job, tmp_path)
    assert carried.photo is None
    assert "wall.jpg" in trouble


def test_an_unsaved_job_has_nothing_beside_it(job: Job):
    carried, trouble = carry_photo(job, None)
    assert carried.photo is None
    assert "not saved" in trouble


def test_a_photo_whose_corners_were_never_set_stays_out_of_the_offer_and_is_told(job: Job, tmp_path: Path):
    begun = replace(job.photo, corners=first_corners(*HALF, 1.4))
    for photo in (begun, replace(begun, file="", kept=keep_bytes((tmp_path / "wall.jpg").read_bytes()))):
        carried, trouble = carry_photo(replace(job, photo=photo), tmp_path)
        assert carried.photo is None
        assert trouble == f"The offer has no photo: {NOT_SET}"


def test_a_photo_whose_corners_fit_no_camera_is_told_of_too(job: Job, tmp_path: Path):
    straight = tuple((x + 50, y) for x, y in first_corners(*HALF, 1.4))
    carried, trouble = carry_photo(
        replace(job, photo=replace(job.photo, corners=straight, equivalent=None)), tmp_path
    )
    assert carried.photo is None
    assert trouble == f"The offer has no photo: {FITS_NO_CAMERA}"
