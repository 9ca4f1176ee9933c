"""The homeowner's view: by mouse and by key, each step the session's own."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QApplication

from app.demo import read_demo
from app.finish_bar import Swatch
from app.session import Session
from app.show_window import SIDES, ShowWindow, find_side
from model.job import read_value, with_texts
from model.options import add_option, take_up

BIG, LARGE = SIDES[0][2], SIDES[1][2]


@pytest.fixture
def session(qapp) -> Session:
    return Session(add_option(read_demo("bedroom")))


@pytest.fixture
def page(qtbot, dressed, session: Session):
    shown = ShowWindow(session, lambda i: session.change("turn", take_up(session.job, i)), LARGE)
    qtbot.addWidget(shown)
    shown.resize(1366, 768)
    shown.show()
    shown.activateWindow()
    qtbot.waitActive(shown)
    return shown


def control(page: ShowWindow, path: str):
    return next(each for each in page.controls if each.size_.path == path)


def test_a_size_is_stepped_by_mouse_and_by_key_and_undone(qtbot, page: ShowWindow, session: Session):
    before = read_value(session.job, "shelf.height")
    shelf = control(page, "shelf.height")
    qtbot.mouseClick(shelf.more, Qt.MouseButton.LeftButton)
    assert read_value(session.job, "shelf.height") == before + 0.5
    shelf.less.setFocus()
    qtbot.keyClick(shelf.less, Qt.Key.Key_Space)
    assert read_value(session.job, "shelf.height") == before


def test_the_width_over_all_is_read_off_the_boards(qtbot, page: ShowWindow, session: Session):
    wide = control(page, "column.margin")
    qtbot.waitUntil(lambda: wide.value.text() != "", timeout=20_000)
    before = wide.value.text()
    qtbot.mouseClick(wide.more, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: wide.value.text() != before, timeout=20_000)


def test_the_opening_is_the_one_that_governs(page: ShowWindow, session: Session):
    typed = [("opening.width", "41 1/4"), ("readings.opening_width", "40 1/4")]
    session.open(with_texts(session.job, [*typed, ("job.units", "inches")]), None)
    assert page.opening.text().startswith('Opening 40 1/4" wide')


def _swatch(page: ShowWindow, key: str, path: str = "look.paint") -> Swatch:
    return page.finish.swatches[path, key]


def _list_offered(page: ShowWindow) -> set[str]:
    return {path for (path, _), swatch in page.finish.swatches.items() if not swatch.isHidden()}


def test_a_paint_is_picked(qtbot, page: ShowWindow, session: Session):
    session.set_value("look.finish", "painted")
    qtbot.mouseClick(_swatch(page, "moss"), Qt.MouseButton.LeftButton)
    look = session.job.design.look
    assert (look.finish, look.paint) == ("painted", "moss")
    assert [key for (_, key), one in page.finish.swatches.items() if one.isChecked() and one.isVisible()] == [
        "moss"
    ]


def test_one_goes_from_paint_to_stain_to_a_clear_coat_and_back_with_the_colours_of_each(
    qtbot, page: ShowWindow, session: Session
):
    session.set_value("look.finish", "painted")
    seen = []
    for _ in range(3):
        seen.append((page.finish.next_.text(), _list_offered(page)))
        qtbot.mouseClick(page.finish.next_, Qt.MouseButton.LeftButton)
    assert seen == [("Painted", {"look.paint"}), ("Stained", {"look.stain"}), ("Clear coat", set())]
    assert session.job.design.look.finish == "painted"
    qtbot.keyClick(page.finish.next_, Qt.Key.Key_Return)
    qtbot.keyClick(_swatch(page, "peat", "look.stain"), Qt.Key.Key_Space)
    assert (session.job.design.look.finish, session.job.design.look.stain) == ("stained", "peat")
    assert _swatch(page, "peat", "look.stain").isChecked()


def test_a_colour_of_ones_own_is_no_swatchs(page: ShowWindow, session: Session):
    session.set_value("look.paint", "#123456")
    assert not any(swatch.isChecked() for swatch in page.finish.swatches.values() if swatch.isVisible())


def test_a_step_is_taken_back_and_done_again_by_key(qtbot, page: ShowWindow, session: Session):
    before = session.job.design.look.paint
    qtbot.mouseClick(_swatch(page, "moss"), Qt.MouseButton.LeftButton)
    qtbot.keyClick(page.focusWidget(), Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert session.job.design.look.paint == before
    redo = QKeySequence.keyBindings(QKeySequence.StandardKey.Redo)[0][0]
    qtbot.keyClick(page.focusWidget(), redo.key(), redo.keyboardModifiers())
    assert session.job.design.look.paint == "moss"


def test_a_colour_is_picked_by_enter(qtbot, page: ShowWindow, session: Session):
    qtbot.keyClick(_swatch(page, "moss"), Qt.Key.Key_Return)
    assert session.job.design.look.paint == "moss"


def test_options_are_turned_through_by_mouse_and_by_key(qtbot, page: ShowWindow, session: Session):
    assert page.name.text() == session.job.options.name
    first = session.job.options.place
    qtbot.mouseClick(page.after, Qt.MouseButton.LeftButton)
    assert session.job.options.place != first
    qtbot.keyClick(page, Qt.Key.Key_PageUp)
    assert session.job.options.place == first


def test_a_step_too_far_is_said_without_a_word_about_typing(qtbot, page: ShowWindow, session: Session):
    session.open(read_demo("too-close"), None)
    qtbot.waitUntil(lambda: page.warning.text().startswith("Not within the rules:"), timeout=20_000)
    session.set_value("shelf.overhang_front", 0)
    qtbot.waitUntil(lambda: page.warning.text().startswith("Not within the rules:"), timeout=20_000)
    depth = read_value(session.job, "shelf.depth")
    qtbot.mouseClick(control(page, "shelf.depth").less, Qt.MouseButton.LeftButton)
    assert read_value(session.job, "shelf.depth") == depth
    assert page.warning.text().startswith("Shelf depth: no further this way. Not within the rules:")


def test_what_breaks_a_rule_is_said(qtbot, page: ShowWindow, session: Session):
    session.open(read_demo("too-close"), None)
    qtbot.waitUntil(lambda: page.warning.text().startswith("Not within the rules:"), timeout=20_000)


def test_the_picture_can_stand_alone_and_any_key_brings_the_controls_back(qtbot, page: ShowWindow):
    qtbot.mouseClick(page.alone, Qt.MouseButton.LeftButton)
    assert page.area.isHidden()
    qtbot.keyClick(page, Qt.Key.Key_A)
    assert not page.area.isHidden()


def test_escape_ends_it(qtbot, page: ShowWindow):
    with qtbot.waitSignal(page.gone):
        qtbot.keyClick(page, Qt.Key.Key_Escape)


def test_everything_fits_a_laptop_and_has_a_name(qtbot, page: ShowWindow, session: Session):
    assert page.bar.sizeHint().width() <= 1366
    assert page.minimumSizeHint().height() <= 768 / 2
    assert page.minimumSizeHint().width() <= 1366 / 2
    buttons = [
        page.finish.next_,
        *page.finish.swatches.values(),
        page.before,
        page.after,
        page.alone,
        page.close_,
    ]
    buttons += [b for c in page.controls for b in (c.less, c.more)]
    assert all(button.accessibleName() for button in buttons)


def test_on_a_large_screen_controls_are_larger_and_one_design_has_none_beside_it(qtbot, dressed):
    big = ShowWindow(Session(read_demo("bedroom")), lambda _i: None, BIG)
    qtbot.addWidget(big)
    assert big.controls[0].less.size() == QSize(BIG, BIG)
    assert not big.before.isVisibleTo(big)
    big.close()


@pytest.mark.parametrize("width", [1100, 1366])
def test_a_long_warning_cuts_no_control_short(qtbot, page: ShowWindow, width: int):
    page.resize(width, 768)
    page._warn("Not within the rules: " + "; ".join(["left column nailers"] * 14) + ".")
    QApplication.processEvents()
    for each in page.controls:
        assert each.height() >= each.minimumSizeHint().height()
        assert each.geometry().bottom() < page.area.viewport().height()


@pytest.mark.parametrize(("scale", "side"), [(1.0, 40), (1.25, 40), (1.5, 32), (2.0, 32)])
def test_close_is_in_sight_on_a_laptop_at_every_enlargement(
    qtbot, dressed, session: Session, scale: float, side: int
):
    screen = QSize(round(1366 / scale), round(768 / scale))
    assert find_side(screen) == side
    page = ShowWindow(session, lambda _i: None, side)
    qtbot.addWidget(page)
    page.resize(screen)
    page.show()
    qtbot.waitExposed(page)
    for button in (page.close_, page.alone):
        assert page.rect().contains(QRect(button.mapTo(page, QPoint()), button.size()))
    if scale < 2.0:
        assert page.area.horizontalScrollBar().maximum() == 0
        assert not page.close_.geometry().intersects(page.alone.geometry())


def test_a_large_screen_has_the_largest_controls():
    assert find_side(QSize(1920, 1080)) == BIG
    assert find_side(QSize(1920, 800)) == LARGE
