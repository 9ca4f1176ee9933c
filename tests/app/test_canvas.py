"""The sheet fits, zooms and pans, and knows what is clicked on."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QCoreApplication, QPoint, QPointF, Qt
from PySide6.QtGui import QNativeGestureEvent, QPointingDevice, QWheelEvent
from PySide6.QtTest import QTest

from app.canvas import Canvas
from app.shown import ShownView, set_out
from app.theme import colours
from model.check.finding import Finding, Status
from model.reference.sourced import Standing
from render.drawing import Dimension, Drawing, Fill, Region

FRONT = (
    Region(Fill.WOOD, (((0.0, 0.0), (60.0, 0.0), (60.0, 50.0), (0.0, 50.0)),)),
    Dimension((0.0, 0.0), (60.0, 0.0), False, -8.0, "5'-0\"", (30.0, -6.0), 1.5, stands_for="shelf.across"),
    Dimension((0.0, 0.0), (0.0, 50.0), True, -8.0, "4'-2\"", (-10.0, 25.0), 1.5, stands_for="shelf.height"),
)
SIDE = (Region(Fill.WOOD, (((-8.0, 0.0), (0.0, 0.0), (0.0, 50.0), (-8.0, 50.0)),)),)


def _views(width: float = 60.0) -> list[ShownView]:
    wider = Region(Fill.FACING, (((0.0, 0.0), (width, 0.0), (width, 50.0), (0.0, 50.0)),))
    return set_out([("front", Drawing((wider, *FRONT), 12.0)), ("side", Drawing(SIDE, 12.0))])


@pytest.fixture
def canvas(qtbot, dressed) -> Canvas:
    shown = Canvas()
    qtbot.addWidget(shown)
    shown.resize(900, 600)
    with qtbot.waitExposed(shown):
        shown.show()
    shown.show_views(_views())
    return shown


def _drawn_box(canvas: Canvas) -> tuple[float, float, float, float]:
    box = canvas.content_box()
    low = canvas.place.to_pixels((box.left(), box.top()))
    high = canvas.place.to_pixels((box.right(), box.bottom()))
    return low.x(), high.y(), high.x(), low.y()


def test_views_stand_beside_each_other_on_one_height_line():
    front, side = _views()
    assert front.box.right() < side.box.left()
    assert front.gathered.box.top() != side.gathered.box.top()
    assert front.dx == 0.0


def test_the_whole_drawing_is_in_view_at_first(canvas: Canvas):
    left, top, right, bottom = _drawn_box(canvas)
    assert left >= 0
    assert top >= 0
    assert right <= canvas.width()
    assert bottom <= canvas.height()
    assert canvas.is_fitted


def test_the_sheet_follows_the_windows_size_while_it_is_whole(canvas: Canvas):
    before = canvas.place.scale
    canvas.resize(1400, 1000)
    assert canvas.place.scale > before * 1.2


def test_a_small_edit_does_not_change_the_scale_and_a_large_one_does(canvas: Canvas):
    before = canvas.place
    canvas.show_views(_views(width=60.5))
    assert canvas.place == before
    canvas.show_views(_views(width=120.0))
    assert canvas.place.scale < before.scale * 0.8
    canvas.show_views(_views(width=60.0))
    assert canvas.place.scale == pytest.approx(before.scale)


def test_an_edit_does_not_move_a_sheet_that_is_looked_at_closely(canvas: Canvas):
    canvas.zoom_by(3.0)
    before = canvas.place
    canvas.show_views(_views(width=120.0))
    assert canvas.place == before
    assert not canvas.is_fitted


def test_zooming_keeps_what_is_under_the_pointer(canvas: Canvas):
    at = QPointF(200.0, 150.0)
    before = canvas.place.to_model(at)
    canvas.zoom_by(2.0, at)
    assert canvas.place.to_model(at) == pytest.approx(before)
    canvas.fit()
    assert canvas.is_fitted


def test_zooming_stops_before_everything_is_lost(canvas: Canvas):
    for _ in range(80):
        canvas.zoom_by(1.5)
    closest = canvas.place.scale
    for _ in range(160):
        canvas.zoom_by(1 / 1.5)
    assert 100 < closest < 10_000
    assert canvas.place.scale > 0.1


def test_the_wheel_zooms_and_dragging_moves_the_sheet(canvas: Canvas, qtbot):
    scale = canvas.place.scale
    _turn_wheel(canvas, QPointF(300, 300), 120)
    assert canvas.place.scale > scale
    before = canvas.place
    qtbot.mousePress(canvas, Qt.MouseButton.LeftButton, pos=QPoint(300, 300))
    for x in (310, 330, 350):
        qtbot.mouseMove(canvas, QPoint(x, 320))
    qtbot.mouseRelease(canvas, Qt.MouseButton.LeftButton, pos=QPoint(350, 320))
    assert canvas.place.x == before.x + 50
    assert canvas.place.y == before.y + 20


def test_the_sheet_cannot_be_dragged_out_of_sight(canvas: Canvas):
    for _ in range(100):
        canvas.pan_by(200.0, 0.0)
    assert _drawn_box(canvas)[0] < canvas.width() + 200


def test_keys_move_zoom_and_fit_the_sheet(canvas: Canvas, qtbot):
    before = canvas.place
    qtbot.keyClick(canvas, Qt.Key.Key_Left)
    assert canvas.place.x > before.x
    qtbot.keyClick(canvas, Qt.Key.Key_Plus)
    assert canvas.place.scale > before.scale
    qtbot.keyClick(canvas, Qt.Key.Key_Home)
    assert canvas.place == before


def test_a_click_on_a_dimension_names_its_parameter(canvas: Canvas, qtbot):
    for path in ("shelf.across", "shelf.height"):
        at = canvas.point_of(path)
        assert at is not None
        with qtbot.waitSignal(canvas.dimension_clicked) as clicked:
            qtbot.mouseClick(canvas, Qt.MouseButton.LeftButton, pos=at)
        assert clicked.args == [path, QPointF(at)]


def test_a_dimension_is_reached_by_its_line_as_well_as_its_writing(canvas: Canvas):
    on_line = canvas.place.to_pixels((10.0, -8.0))
    assert canvas.dimension_at(on_line + QPointF(0, 3)) == "shelf.across"
    assert canvas.dimension_at(on_line + QPointF(0, 40)) == ""


def test_a_click_elsewhere_names_the_view_and_the_point(canvas: Canvas, qtbot):
    side = canvas.views[1]
    at = canvas.place.moved(side.dx, 0.0).to_pixels((-4.0, 25.0)).toPoint()
    with qtbot.waitSignal(canvas.view_clicked) as clicked:
        qtbot.mouseClick(canvas, Qt.MouseButton.LeftButton, pos=at)
    name, point = clicked.args
    assert name == "side"
    assert point == pytest.approx((-4.0, 25.0), abs=0.2)


def test_dragging_is_not_clicking(canvas: Canvas, qtbot):
    at = canvas.point_of("shelf.across")
    assert at is not None
    with qtbot.assertNotEmitted(canvas.dimension_clicked):
        qtbot.mousePress(canvas, Qt.MouseButton.LeftButton, pos=at)
        qtbot.mouseMove(canvas, at + QPoint(30, 0))
        qtbot.mouseRelease(canvas, Qt.MouseButton.LeftButton, pos=at + QPoint(30, 0))


def _lit_pixels(canvas: Canvas) -> int:
    """Pixels in the colour of focus."""
    image = canvas.grab().toImage()
    found = 0
    for y in range(image.height()):
        for x in range(image.width()):
            colour = image.pixelColor(x, y)
            found += colour.red() > 140 and colour.red() > colour.blue() + 90
    return found


def test_a_path_in_focus_lights_its_dimension_and_only_then(canvas: Canvas):
    canvas.clearFocus()
    assert _lit_pixels(canvas) == 0
    canvas.light_path("shelf.across")
    assert _lit_pixels(canvas) > 200
    canvas.light_path("")
    assert _lit_pixels(canvas) == 0


def test_a_finding_is_marked_where_it_is(canvas: Canvas):
    finding = Finding("c", "r", Standing.PUBLISHED, "s", Status.FAIL, "shelf", 1.0, 2.0, "in", "m")
    clean = canvas.grab().toImage()
    canvas.show_finding(finding, (("front", (20.0, 30.0)),))
    marked = canvas.grab().toImage()
    at = canvas.place.to_pixels((20.0, 30.0)).toPoint()
    ring = at + QPoint(11, 0)
    assert marked.pixelColor(ring) != clean.pixelColor(ring)
    far = canvas.place.to_pixels((50.0, 10.0)).toPoint()
    assert marked.pixelColor(far) == clean.pixelColor(far)


def test_outlined_boards_are_tinted_in_their_own_view_only(canvas: Canvas):
    clean = canvas.grab().toImage()
    canvas.show_outlines((("front", ((10.0, 10.0), (20.0, 10.0), (20.0, 20.0), (10.0, 20.0))),))
    tinted = canvas.grab().toImage()
    inside = canvas.place.to_pixels((15.0, 15.0)).toPoint()
    side = canvas.place.moved(canvas.views[1].dx, 0.0).to_pixels((-4.0, 15.0)).toPoint()
    assert tinted.pixelColor(inside) != clean.pixelColor(inside)
    assert tinted.pixelColor(side) == clean.pixelColor(side)


def test_the_paper_is_white_on_a_ground_that_is_not(canvas: Canvas):
    image = canvas.grab().toImage()
    box = _drawn_box(canvas)
    assert image.pixelColor(int(box[0]) - 4, int(box[1]) + 4).name() == "#ffffff"
    assert image.pixelColor(2, 2).name() != "#ffffff"


def _turn_wheel(canvas: Canvas, at: QPointF, amount: int) -> None:
    """A wheel with notches, as a mouse has it."""
    event = QWheelEvent(
        at, canvas.mapToGlobal(at), QPoint(), QPoint(0, amount), Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QCoreApplication.sendEvent(canvas, event)
    QTest.qWait(0)


def test_two_fingers_on_a_touch_pad_move_the_sheet_and_with_control_zoom(canvas: Canvas):
    before, at = canvas.place, QPointF(300, 300)
    for keys in (Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.ControlModifier):
        event = QWheelEvent(
            at, canvas.mapToGlobal(at), QPoint(12, 30), QPoint(0, 120), Qt.MouseButton.NoButton,
            keys, Qt.ScrollPhase.ScrollUpdate, False,
        )  # fmt: skip
        QCoreApplication.sendEvent(canvas, event)
        if keys is Qt.KeyboardModifier.NoModifier:
            assert canvas.place.scale == before.scale
            moved = canvas.place.to_pixels((0.0, 0.0)) - before.to_pixels((0.0, 0.0))
            assert (moved.x(), moved.y()) == pytest.approx((12, 30))
    assert canvas.place.scale > before.scale


def test_two_fingers_pulled_apart_zoom_about_the_place_between_them(canvas: Canvas):
    before, at = canvas.place, QPointF(300, 300)
    under = before.to_model(at)
    pad = QPointingDevice.primaryPointingDevice()
    event = QNativeGestureEvent(
        Qt.NativeGestureType.ZoomNativeGesture, pad, 2, at, at, canvas.mapToGlobal(at), 0.25, QPointF()
    )
    QCoreApplication.sendEvent(canvas, event)
    assert canvas.place.scale == pytest.approx(1.25 * before.scale)
    assert canvas.place.to_model(at) == pytest.approx(under)


def test_what_is_drawn_never_reaches_past_the_paper_while_an_edge_is_held(canvas: Canvas):
    canvas.hold_still(("front", "side"))
    canvas.show_views(_views(400.0))
    assert _drawn_box(canvas)[2] > canvas.width(), "what is held still grows past the window's edge here"
    shown = canvas.grab().toImage()
    ground = {shown.pixelColor(canvas.width() - 4, y).name() for y in range(40, canvas.height() - 40)}
    assert ground == {colours().desk}
