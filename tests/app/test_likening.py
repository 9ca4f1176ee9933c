"""A picture of another surround is marked by mouse and key, and its proportions become one step."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from PIL import Image
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtWidgets import QPushButton

from app.demo import read_demo
from app.likeness_window import CLEAR, LikenessCanvas, LikenessWindow
from app.likening import NAMES, Likening
from app.notice import Notice
from app.session import Session
from model.job import with_value
from model.photo.likeness import ACROSS, INNER_LEFT, OUTER_LEFT
from tests.model.photo.test_likeness import TRUE, picture
from tests.model.photo.test_recover import SIZE, take

HALF = (SIZE[0] // 2, SIZE[1] // 2)


@pytest.fixture
def session(qapp):
    shown = Session(read_demo("brick"))
    yield shown
    shown.stack.clear()  # steps and stack hold each other, and go in no order of their own


@pytest.fixture
def likening(qtbot, dressed, session: Session, tmp_path: Path):
    Image.new("RGB", HALF, (190, 180, 170)).save(tmp_path / "other.jpg")
    notice = Notice()
    qtbot.addWidget(notice)
    shown = Likening(notice, session, lambda: tmp_path)
    with qtbot.waitActive(shown.show()):
        assert shown.page is not None
    assert shown.take(tmp_path / "other.jpg")
    yield shown
    shown.wait()


def page_of(likening: Likening) -> LikenessWindow:
    assert likening.page is not None
    return likening.page


def drag(qtbot, page: LikenessWindow, mark: int, place) -> None:
    canvas = page.canvas
    start, end = (canvas.to_screen(tuple(p)).toPoint() for p in (canvas.corners[mark], place))
    qtbot.mousePress(canvas, Qt.MouseButton.LeftButton, pos=start)
    qtbot.mouseMove(canvas, start + QPoint(2, 2))
    qtbot.mouseMove(canvas, end)
    qtbot.mouseRelease(canvas, Qt.MouseButton.LeftButton, pos=end)


def mark_all(likening: Likening) -> None:
    """Marks set where a known surround has them."""
    corners, marks = picture(take(28, 25, 8, 150))
    places = [*corners, *(marks[name] for name in NAMES)]
    page = page_of(likening)
    assert likening.photo is not None
    page.canvas.show_photo(likening.photo.image, [(float(x) / 2, float(y) / 2) for x, y in places])
    page.canvas.moved.emit(page.canvas.corners)


def test_what_the_marks_tell_is_read_while_they_are_dragged(qtbot, likening: Likening):
    page = page_of(likening)
    before = page.sizes.text()
    assert "Columns, width" in before
    mark = 4 + NAMES.index(OUTER_LEFT)
    x, y = page.canvas.corners[mark]
    drag(qtbot, page, mark, (x - 60, y))
    assert page.sizes.text() != before


def test_marks_are_picked_and_moved_by_key(qtbot, likening: Likening):
    page = page_of(likening)
    page.canvas.setFocus()
    for _ in range(4 + NAMES.index(INNER_LEFT)):
        qtbot.keyClick(page.canvas, Qt.Key.Key_PageDown)
    assert INNER_LEFT in page.picked.text()
    before = page.canvas.corners
    qtbot.keyClick(page.canvas, Qt.Key.Key_Left, Qt.KeyboardModifier.ShiftModifier)
    moved = np.array(page.canvas.corners) - np.array(before)
    assert np.argwhere(moved).tolist() == [[page.canvas.active, 0]]


def test_the_proportions_become_one_step_and_what_gave_is_told(qtbot, likening: Likening, session: Session):
    mark_all(likening)
    page, before = page_of(likening), session.job
    qtbot.mouseClick(page.apply_button, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: session.job is not before, timeout=60_000)
    assert session.stack.count() == 1
    width = before.site.opening.width
    assert session.job.design.column.width == pytest.approx(TRUE["column.width"] * width, abs=1 / 8)
    assert "sizes are as in the picture" in page.told.text()
    qtbot.mouseClick(page.undo_button, Qt.MouseButton.LeftButton)
    assert session.job == before


def test_an_edit_made_while_sizes_are_tried_is_not_overwritten(qtbot, likening: Likening, session: Session):
    mark_all(likening)
    page = page_of(likening)
    likening.apply()
    session.change("another name", with_value(session.job, "job.name", "Another"))
    since = session.job
    qtbot.waitUntil(page.apply_button.isEnabled, timeout=60_000)
    assert session.job is since
    assert "was changed while sizes were tried" in page.told.text()


def test_undo_takes_back_no_other_step_that_was_made_since(qtbot, likening: Likening, session: Session):
    mark_all(likening)
    page, before = page_of(likening), session.job
    qtbot.mouseClick(page.apply_button, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: session.job is not before, timeout=60_000)
    session.change("another name", with_value(session.job, "job.name", "Another"))
    since = session.job
    qtbot.mouseClick(page.undo_button, Qt.MouseButton.LeftButton)
    assert session.job is since
    assert "since" in page.told.text()


def test_marks_in_an_order_that_no_surround_has_cannot_be_applied(qtbot, likening: Likening):
    page = page_of(likening)
    outer = 4 + NAMES.index(OUTER_LEFT)
    inner = page.canvas.corners[4 + NAMES.index(INNER_LEFT)]
    drag(qtbot, page, outer, (inner[0] + 80, inner[1] + 60))
    assert not page.apply_button.isEnabled()
    assert "past the" in page.sizes.text()


def test_a_broken_picture_is_told_and_the_one_before_stays(likening: Likening, tmp_path: Path):
    (tmp_path / "odd.jpg").write_bytes(b"odd")
    before = likening.photo
    assert not likening.take(tmp_path / "odd.jpg")
    assert likening.photo is before
    assert "odd.jpg" in page_of(likening).told.text()


def test_the_page_has_a_button_that_closes_it_and_keeps_the_job(qtbot, likening: Likening, session: Session):
    before = session.job
    [close] = [button for button in page_of(likening).findChildren(QPushButton) if button.text() == "Close"]
    qtbot.mouseClick(close, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: likening.page is None)
    assert session.job == before


@pytest.mark.parametrize("end", ["escape", "close"])
def test_the_page_opens_again_however_it_was_ended(qtbot, likening: Likening, end: str):
    before = page_of(likening)
    if end == "escape":
        qtbot.keyClick(before.open_button, Qt.Key.Key_Escape)
    else:
        before.close()
    assert likening.page is None
    qtbot.wait(20)
    with qtbot.waitActive(likening.show()):
        assert page_of(likening).isVisible()


def test_every_line_has_its_name_beside_it(qtbot, likening: Likening, monkeypatch):
    canvas, painted = page_of(likening).canvas, []
    paint = LikenessCanvas._paint_name

    def note(self, painter, at: QPointF, name: str, upright: bool) -> None:
        painted.append((name, upright, at.toPoint()))
        paint(self, painter, at, name, upright)

    monkeypatch.setattr(LikenessCanvas, "_paint_name", note)
    shown = canvas.grab().toImage()
    assert [name for name, _, _ in painted] == list(NAMES)
    for name, upright, at in painted:
        assert upright == (name in ACROSS)
        beside = at + (QPoint(-4, -CLEAR - 2) if upright else QPoint(CLEAR + 2, -4))
        assert shown.pixelColor(beside).lightness() < 120  # the picture itself is light there
