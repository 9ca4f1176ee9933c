"""A photo of the wall is taken in, marked by mouse and by key, kept, saved, let go of; each is one step."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from PIL import Image
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QPushButton
from shapely import Polygon

from app.demo import read_demo
from app.notice import Notice
from app.photo_canvas import PhotoCanvas
from app.photo_wall import PhotoWall
from app.photo_window import SIZE as SHOWN
from app.photo_window import PhotoWindow
from app.session import Session
from model.photo.placed import opening_corners
from model.photo.stored import WallPhoto
from tests.model.photo.test_recover import SIZE, pinhole, take

HALF = (SIZE[0] // 2, SIZE[1] // 2)


@pytest.fixture
def photo(tmp_path: Path) -> Path:
    """An empty wall in the place of a photo: where the corners are is all that counts."""
    path = tmp_path / "wall.jpg"
    data = Image.Exif()
    data.get_ifd(0x8769)[0xA405] = 28
    Image.new("RGB", HALF, (200, 195, 180)).save(path, exif=data)
    return path


@pytest.fixture
def session(qapp, tmp_path: Path) -> Session:
    return Session(read_demo("bedroom"), tmp_path / "job.mantel")


@pytest.fixture
def wall(qtbot, dressed, session: Session, tmp_path: Path):
    notice = Notice()
    qtbot.addWidget(notice)
    shown = PhotoWall(notice, session, lambda: tmp_path, notice)
    yield shown
    shown.wait()


def put_up(qtbot, wall: PhotoWall) -> PhotoWindow:
    with qtbot.waitActive(wall.show()):
        assert wall.page is not None
    wall.page.resize(SHOWN)  # whatever the screen, so that a pixel of it is less than three of the photo
    return wall.page


def true_corners(session: Session) -> tuple[tuple[float, float], ...]:
    camera = take(28, 22, 9, 150)
    corners = opening_corners(session.job.site.opening)
    return tuple((x / 2, y / 2) for x, y in (pinhole(camera, corner) for corner in corners))


def drag(qtbot, canvas: PhotoCanvas, corner: int, place: tuple[float, float]) -> None:
    start, end = (canvas.to_screen(p).toPoint() for p in (canvas.corners[corner], place))
    qtbot.mousePress(canvas, Qt.MouseButton.LeftButton, pos=start)
    qtbot.mouseMove(canvas, start + QPoint(3, 3))
    qtbot.mouseMove(canvas, end)
    qtbot.mouseRelease(canvas, Qt.MouseButton.LeftButton, pos=end)


def test_corners_are_dragged_one_step_each_and_the_surround_stands_in_the_photo(
    qtbot, wall: PhotoWall, session: Session, photo: Path
):
    page = put_up(qtbot, wall)
    assert wall.take(photo)
    assert session.job.photo is not None
    assert (session.job.photo.file, session.job.photo.equivalent) == ("wall.jpg", 28.0)
    qtbot.waitUntil(lambda: wall.picture is not None, timeout=20_000)
    assert "not set yet" in page.status.text()
    for corner, place in enumerate(true_corners(session)):
        drag(qtbot, page.canvas, corner, place)
    assert session.stack.count() == 5
    assert np.array(session.job.photo.corners) == pytest.approx(np.array(true_corners(session)), abs=3)
    qtbot.waitUntil(lambda: wall.picture is not None, timeout=20_000)
    qtbot.waitUntil(lambda: "outline" in page.status.text(), timeout=20_000)
    session.undo()
    assert session.job.photo.corners[3] != pytest.approx(true_corners(session)[3], abs=3)


def test_corners_are_set_by_key_and_put_back_by_escape(qtbot, wall: PhotoWall, session: Session, photo: Path):
    page = put_up(qtbot, wall)
    wall.take(photo)
    before = session.job.photo.corners  # type: ignore[union-attr]
    canvas = page.canvas
    canvas.setFocus()
    qtbot.keyClick(canvas, Qt.Key.Key_3)
    assert canvas.active == 2
    qtbot.keyClick(canvas, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    qtbot.keyClick(canvas, Qt.Key.Key_Up)
    assert canvas.corners[2] == (before[2][0] + 10, before[2][1] - 1)
    qtbot.keyClick(canvas, Qt.Key.Key_Escape)
    assert canvas.corners == before
    assert session.job.photo.corners == before  # type: ignore[union-attr]
    qtbot.keyClick(canvas, Qt.Key.Key_Left)
    qtbot.waitUntil(lambda: session.job.photo.corners != before)  # type: ignore[union-attr]
    assert session.stack.count() == 2


def test_straight_on_without_a_lens_it_is_asked_for_and_then_typed(
    qtbot, wall: PhotoWall, session: Session, photo: Path
):
    page = put_up(qtbot, wall)
    wall.take(photo)
    page.lens.setText("")
    page.lens_entered.emit("")
    session.change("no lens", replace(session.job, photo=replace(session.job.photo, equivalent=None)))
    qtbot.waitUntil(lambda: "not set yet" in page.status.text(), timeout=20_000)
    wall.set_corners(tuple((x + 40, y - 30) for x, y in session.job.photo.corners))  # type: ignore
    qtbot.waitUntil(lambda: "too straight on" in page.status.text(), timeout=20_000)
    assert wall.picture is None
    page.lens.selectAll()
    qtbot.keyClicks(page.lens, "26")
    qtbot.keyClick(page.lens, Qt.Key.Key_Return)
    assert session.job.photo.equivalent == 26.0  # type: ignore[union-attr]
    qtbot.waitUntil(lambda: wall.picture is not None, timeout=20_000)
    page.lens_entered.emit("a few")
    assert "from 10 to 400" in page.status.text()


def test_the_photo_moves_into_the_job_and_out_of_it_and_is_let_go_of(
    qtbot, wall: PhotoWall, session: Session, photo: Path, tmp_path: Path
):
    page = put_up(qtbot, wall)
    wall.take(photo)
    qtbot.mouseClick(page.keep_button, Qt.MouseButton.LeftButton)
    assert session.job.photo.kept  # type: ignore[union-attr]
    photo.unlink()
    qtbot.mouseClick(page.keep_button, Qt.MouseButton.LeftButton)
    name = session.job.photo.file  # type: ignore[union-attr]
    assert name
    assert b"Exif" not in (tmp_path / name).read_bytes()
    qtbot.mouseClick(page.drop_button, Qt.MouseButton.LeftButton)
    assert session.job.photo is None
    assert (tmp_path / name).exists()
    assert not page.canvas.corners


def test_a_photo_from_elsewhere_is_kept_in_the_job(wall: PhotoWall, session: Session, photo: Path):
    session.open(session.job, None)
    assert wall.take(photo)
    assert session.job.photo is not None
    assert session.job.photo.kept
    assert not session.job.photo.file


def test_a_broken_photo_changes_nothing_and_is_told(qtbot, wall: PhotoWall, session: Session, tmp_path: Path):
    page = put_up(qtbot, wall)
    (tmp_path / "odd.jpg").write_bytes(b"odd")
    assert not wall.take(tmp_path / "odd.jpg")
    assert session.job.photo is None
    assert "odd.jpg" in page.status.text()


def test_the_picture_is_saved_with_the_wood_in_it(
    qtbot, wall: PhotoWall, session: Session, photo: Path, tmp_path: Path
):
    page = put_up(qtbot, wall)
    stored = WallPhoto(*HALF, true_corners(session), 28.0, False, "wall.jpg")
    session.change("take in", replace(session.job, photo=stored))
    qtbot.waitUntil(lambda: wall.picture is not None, timeout=20_000)
    page.band.setChecked(False)
    assert wall.save(tmp_path / "seen")
    with Image.open(tmp_path / "seen.png") as written:
        assert written.size == HALF
        there = Polygon(wall.picture.outline[0]).representative_point()
        assert written.getpixel((5, 5)) != written.getpixel((int(there.x), int(there.y)))


def test_a_photo_that_is_gone_is_told_and_the_page_stays(
    qtbot, wall: PhotoWall, session: Session, photo: Path
):
    wall.take(photo)
    photo.unlink()
    page = put_up(qtbot, wall)
    assert "no such file" in page.status.text()
    assert page.open_button.isVisible()


def test_the_empty_page_has_a_button_that_closes_it(qtbot, wall: PhotoWall):
    page = put_up(qtbot, wall)
    [close] = [button for button in page.findChildren(QPushButton) if button.text() == "Close"]
    qtbot.mouseClick(close, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: wall.page is None)


def test_a_lens_that_there_is_none_of_is_told_and_changes_nothing(
    qtbot, wall: PhotoWall, session: Session, photo: Path
):
    page = put_up(qtbot, wall)
    wall.take(photo)
    before = session.job
    for text in ("wide", "2000", "-3"):
        wall.set_lens(text)
        assert session.job is before
        assert "Write the lens as a number" in page.status.text()
    wall.set_lens("24 mm")
    assert (session.job.photo.equivalent, session.job.photo.is_typed) == (24.0, True)
    wall.set_lens("")
    assert (session.job.photo.equivalent, session.job.photo.is_typed) == (28.0, False)


def test_a_picture_that_cannot_be_saved_is_told(
    qtbot, wall: PhotoWall, session: Session, photo: Path, tmp_path: Path
):
    page = put_up(qtbot, wall)
    assert not wall.save(tmp_path / "seen.png")
    assert "no picture yet" in page.status.text()
    stored = WallPhoto(*HALF, true_corners(session), 28.0, False, "wall.jpg")
    session.change("take in", replace(session.job, photo=stored))
    qtbot.waitUntil(lambda: wall.picture is not None, timeout=20_000)
    assert not wall.save(tmp_path / "no folder" / "seen.png")
    assert "no such file or folder" in page.status.text()


def test_a_photo_stays_in_a_job_that_has_no_folder(qtbot, wall: PhotoWall, session: Session, photo: Path):
    session.open(session.job, None)
    page = put_up(qtbot, wall)
    wall.take(photo)
    kept = session.job.photo
    wall.keep_elsewhere()
    assert session.job.photo is kept
    assert "Save the job first" in page.status.text()


@pytest.mark.parametrize("end", ["escape", "close"])
def test_the_page_opens_again_however_it_was_ended(
    qtbot, wall: PhotoWall, session: Session, photo: Path, end: str
):
    page = put_up(qtbot, wall)
    wall.take(photo)
    if end == "escape":
        qtbot.keyClick(page.open_button, Qt.Key.Key_Escape)
    else:
        page.close()
    assert wall.page is None
    qtbot.wait(20)
    session.set_text("shelf.depth", "8")
    assert put_up(qtbot, wall).canvas.corners
