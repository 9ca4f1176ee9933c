"""Edges of the drawing are moved by pointer and by keys, one step each, and put back as easily."""

from __future__ import annotations

from random import Random

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.demo import list_demos, read_demo
from app.edge_hold import EdgeHold
from app.rooms import PROPORTIONS
from app.shown import ELEVATIONS
from app.window import Window
from model.check.fire import check_fire, list_placed_faults
from model.job import Job, read_value, with_value
from model.shaping.grip import Grip
from model.shaping.marks import list_marks
from model.shaping.snap import Mark
from model.surround import plan_surround
from render.drawing import Drawing
from render.views import ViewOptions, draw_views

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def brick(window: Window) -> Window:
    window.resize(1366, 768)
    window.session.open(read_demo("brick"), None)
    QApplication.processEvents()
    return window


def _grip(window: Window, name: str, view: str = "front") -> Grip:
    return next(grip for grip in window.shaping.grips if grip.name == name and grip.view == view)


def _pixel(window: Window, name: str, view: str = "front") -> QPoint:
    """A pixel on that edge, off the lines of dimensions."""
    grip = _grip(window, name, view)
    place = window.canvas.place_of(view)
    for segment in grip.segments:
        for part in (0.5, 0.3, 0.7, 0.15, 0.85, 0.4, 0.6):
            x0, y0, x1, y1 = segment
            at = place.to_pixels((x0 + part * (x1 - x0), y0 + part * (y1 - y0)))
            found = window.shaping.find_grip(at)
            if found is not None and found.key == grip.key:
                return at.toPoint()
    raise AssertionError(f"{name} cannot be reached")


def _send(window: Window, kind: QEvent.Type, at: QPoint, shift: bool = False) -> None:
    """A mouse event as the system would send it; QTest's own moves have no button down."""
    down = kind is not QEvent.Type.MouseButtonRelease
    button = LEFT if kind is not QEvent.Type.MouseMove else Qt.MouseButton.NoButton
    keys = Qt.KeyboardModifier.ShiftModifier if shift else Qt.KeyboardModifier.NoModifier
    spot = QPointF(at)
    event = QMouseEvent(
        kind, spot, window.canvas.mapToGlobal(spot), button, LEFT if down else Qt.MouseButton.NoButton, keys
    )
    QApplication.sendEvent(window.canvas, event)


def _press(window: Window, at: QPoint) -> None:
    window.canvas.setFocus()
    _send(window, QEvent.Type.MouseButtonPress, at)


def _drag(window: Window, at: QPoint, to: QPoint, shift: bool = False) -> None:
    _press(window, at)
    for part in (0.3, 0.6, 1.0):
        _send(window, QEvent.Type.MouseMove, at + (to - at) * part, shift)


def _let_go(window: Window, at: QPoint) -> None:
    _send(window, QEvent.Type.MouseButtonRelease, at)


def _value(window: Window, path: str) -> float:
    return float(read_value(window.session.job, path))


def test_pointing_at_an_edge_says_what_it_moves_and_to_which_value_it_is_set(brick: Window):
    at = _pixel(brick, "outer side of the right column")
    QTest.mouseMove(brick.canvas, at)
    mark = brick.canvas.overlay.grip
    assert mark is not None
    assert (mark.label, mark.value) == ("Column width", '9"')
    assert mark.note == "outer side of the right column"
    assert brick.canvas.cursor().shape() is Qt.CursorShape.SizeHorCursor
    assert brick.canvas.overlay.hover == "column.width"
    QTest.mouseMove(brick.canvas, _pixel(brick, "lower edge of the frieze"))
    assert brick.canvas.cursor().shape() is Qt.CursorShape.SizeVerCursor
    QTest.mouseMove(brick.canvas, QPoint(4, 4))
    assert brick.canvas.overlay.grip is None
    assert brick.canvas.cursor().shape() is Qt.CursorShape.ArrowCursor


@pytest.mark.parametrize(
    ("name", "view", "path", "way"),
    [("outer side of the right column", "front", "column.width", (30, 0)),
     ("outer side of the left column", "front", "column.width", (-30, 0)),
     ("lower edge of the frieze", "front", "frieze.height", (0, 7)),
     ("top of the shelf", "front", "shelf.height", (0, -20)),
     ("right end of the shelf", "front", "shelf.overhang_end", (15, 0)),
     ("top of the right plinth", "front", "plinth.height", (0, -12)),
     ("lower edge of the frieze's panels", "front", "frieze.rail", (0, -6)),
     ("front of the shelf", "side", "shelf.overhang_front", (-15, 0)),
     ("front of the column", "side", "column.projection", (-7, 0))],
)  # fmt: skip
def test_an_edge_follows_the_pointer_and_is_one_step(
    brick: Window, name: str, view: str, path: str, way: tuple[int, int]
):
    before, at = _value(brick, path), _pixel(brick, name, view)
    to = at + QPoint(*way)
    _drag(brick, at, to)
    assert _value(brick, path) > before
    assert brick.session.stack.count() == 0
    _let_go(brick, to)
    assert brick.session.stack.count() == 1
    after = _value(brick, path)
    assert after > before
    brick.undo()
    assert _value(brick, path) == before
    brick.redo()
    assert _value(brick, path) == after


def test_the_edge_stays_under_the_pointer_within_what_it_may_settle_by(brick: Window):
    at = _pixel(brick, "outer side of the right column")
    to = at + QPoint(40, 0)
    _drag(brick, at, to, shift=False)
    grip, place = _grip(brick, "outer side of the right column"), brick.canvas.place_of("front")
    lies = place.to_pixels((grip.segments[0][0], 0.0)).x()
    assert abs(lies - to.x()) < 10
    _let_go(brick, to)


def test_a_dragged_value_is_on_the_jobs_fraction_and_shown_as_the_tape_has_it(brick: Window):
    at = _pixel(brick, "outer side of the right column")
    for off in (21, 26, 33):
        _drag(brick, at, at + QPoint(off, 0))
        mark = brick.canvas.overlay.grip
        assert mark is not None
        value = _value(brick, "column.width")
        assert value * 16 == round(value * 16)
        assert mark.value.endswith('"')
        assert mark.was == '9"'
        assert mark.is_held
        qkey(brick, Qt.Key.Key_Escape)
        _let_go(brick, at + QPoint(off, 0))


def qkey(window: Window, key: Qt.Key, modifier: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier) -> None:
    QTest.keyClick(window.canvas, key, modifier)


def test_escape_puts_a_dragged_edge_back_and_leaves_no_step(brick: Window):
    job, at = brick.session.job, _pixel(brick, "lower edge of the frieze")
    to = at + QPoint(0, 20)
    _drag(brick, at, to)
    assert brick.session.job != job
    qkey(brick, Qt.Key.Key_Escape)
    assert brick.session.job is job
    _send(brick, QEvent.Type.MouseMove, to + QPoint(0, 10))
    _let_go(brick, to + QPoint(0, 10))
    assert brick.session.job is job
    assert brick.session.stack.count() == 0
    assert not brick.isWindowModified()


def test_an_edge_let_go_where_it_was_taken_is_no_step(brick: Window):
    job, at = brick.session.job, _pixel(brick, "lower edge of the frieze")
    _drag(brick, at, at + QPoint(0, 20))
    _send(brick, QEvent.Type.MouseMove, at)
    _let_go(brick, at)
    assert brick.session.job == job
    assert brick.session.stack.count() == 0


def test_a_limit_of_a_clearance_holds_the_edge_and_says_so(qtbot: QtBot, brick: Window):
    at = _pixel(brick, "lower edge of the frieze")
    scale = brick.canvas.place.scale
    _drag(brick, at, at + QPoint(0, 6))
    qtbot.waitUntil(lambda: any(m.over for m in brick.shaping.hold.marks))
    limit = next(m for m in brick.shaping.hold.marks if m.over)
    to = at + QPoint(0, round((limit.value - 11.5 + 0.6) * scale))
    _send(brick, QEvent.Type.MouseMove, to)
    mark = brick.canvas.overlay.grip
    assert mark is not None
    assert _value(brick, "frieze.height") == limit.value == 12.75
    assert mark.note == "clearance limit of the frieze"
    assert mark.is_stopped
    further = at + QPoint(0, round((limit.value - 11.5 + 3.0) * scale))
    _send(brick, QEvent.Type.MouseMove, further)
    mark = brick.canvas.overlay.grip
    assert _value(brick, "frieze.height") > limit.value + 1
    assert mark.note == "past the clearance limit of the frieze, 1'-0 3/4\""
    assert mark.is_over
    _let_go(brick, further)


def test_a_boards_width_pulls_the_edge_and_says_so(brick: Window):
    at = _pixel(brick, "inner edge of the right column's panel")
    brick.canvas.zoom_by(4.0, QPointF(at))
    at = _pixel(brick, "inner edge of the right column's panel")
    to = at + QPoint(round(1.5 * brick.canvas.place.scale) + 2, 0)
    _drag(brick, at, to)
    mark = brick.canvas.overlay.grip
    assert mark is not None
    assert _value(brick, "column.stile") == 3.5
    assert mark.note == "column stile as wide as a 1x4 is sold"
    _let_go(brick, to)


def test_the_proportion_in_focus_pulls_the_edges_it_hangs_on(brick: Window):
    brick.drafting.list_rest()
    brick.tray.turn_to(PROPORTIONS)
    table = brick.tray.guides
    row = next(
        i for i in range(table.model().rowCount()) if "three quarters" in table.model().index(i, 0).data()
    )
    table.setCurrentIndex(table.model().index(row, 0))
    at = _pixel(brick, "lower edge of the frieze")
    _drag(brick, at, at + QPoint(0, -8))
    assert brick.shaping.hold is not None
    guided = {m.reason for m in brick.shaping.hold.marks if m.reason.startswith("proportion")}
    assert guided == {"proportion: frieze to column width, three quarters"}
    _let_go(brick, at)


def test_with_shift_the_edge_goes_one_fraction_for_a_pixel(brick: Window):
    at = _pixel(brick, "outer side of the right column")
    _press(brick, at)
    _send(brick, QEvent.Type.MouseMove, at + QPoint(5, 0), shift=True)
    first = _value(brick, "column.width")
    for i in range(1, 4):
        _send(brick, QEvent.Type.MouseMove, at + QPoint(5 + i, 0), shift=True)
        assert _value(brick, "column.width") == pytest.approx(first + i / 16)
    _let_go(brick, at + QPoint(8, 0))
    assert brick.session.stack.count() == 1


def test_a_click_on_an_edge_still_picks_the_board(qtbot: QtBot, brick: Window):
    at = _pixel(brick, "outer side of the right column")
    with qtbot.waitSignal(brick.canvas.view_clicked):
        _press(brick, at)
        _let_go(brick, at)
    assert brick.session.stack.count() == 0


def test_beside_the_edges_the_sheet_itself_is_dragged(brick: Window):
    at = brick.canvas.place.to_pixels((0.0, 10.0)).toPoint()
    assert brick.shaping.find_grip(QPointF(at)) is None
    before = brick.canvas.place
    _drag(brick, at, at + QPoint(40, 0))
    _let_go(brick, at + QPoint(40, 0))
    assert brick.canvas.place.x > before.x
    assert brick.session.stack.count() == 0


def test_the_sheet_keeps_its_scale_while_an_edge_is_moved_and_fits_again_after(brick: Window):
    before, at = brick.canvas.place, _pixel(brick, "top of the shelf")
    to = at - QPoint(0, 100)
    _drag(brick, at, to)
    assert brick.canvas.place == before
    _let_go(brick, to)
    assert brick.canvas.place != before
    assert brick.canvas.is_fitted


def test_the_view_whose_edge_is_moved_stands_still(brick: Window):
    at = _pixel(brick, "front of the shelf", "side")
    dx = brick.canvas.place_of("side").x
    _drag(brick, at, at + QPoint(-40, 0))
    assert brick.canvas.place_of("side").x == dx
    _let_go(brick, at + QPoint(-40, 0))


def test_findings_follow_a_dragged_edge(qtbot: QtBot, brick: Window):
    at = _pixel(brick, "lower edge of the frieze")
    _drag(brick, at, at + QPoint(0, 60))
    qtbot.waitUntil(lambda: any(f.status.value == "fail" for f in brick.drafting.findings))
    qkey(brick, Qt.Key.Key_Escape)
    qtbot.waitUntil(lambda: not any(f.status.value == "fail" for f in brick.drafting.findings))


def test_only_the_elevations_have_edges(brick: Window):
    assert brick.shaping.grips
    brick.choose_views(("plan",))
    assert brick.shaping.grips == ()
    brick.choose_views(("front", "side"))
    assert brick.shaping.grips


# --- by keys


def _pick(window: Window, name: str) -> None:
    window.shaping.pick()
    for _ in window.shaping.grips:
        assert window.shaping.hold is not None
        if window.shaping.hold.grip.name == name:
            return
        qkey(window, Qt.Key.Key_Tab)
    raise AssertionError(f"{name} is not among the edges")


def test_keys_reach_every_edge_and_go_round(brick: Window):
    brick.canvas.setFocus()
    qkey(brick, Qt.Key.Key_Return)
    met = []
    for _ in brick.shaping.grips:
        assert brick.shaping.hold is not None
        met.append(brick.shaping.hold.grip.key)
        qkey(brick, Qt.Key.Key_Tab)
    assert met == [grip.key for grip in brick.shaping.grips]
    assert brick.shaping.hold.grip.key == met[0]
    qkey(brick, Qt.Key.Key_Backtab)
    assert brick.shaping.hold.grip.key == met[-1]
    assert brick.canvas.hasFocus()


def test_arrows_move_the_edge_they_point_along_by_one_fraction_or_eight(brick: Window):
    _pick(brick, "outer side of the left column")
    qkey(brick, Qt.Key.Key_Left)
    assert _value(brick, "column.width") == 9.0625
    qkey(brick, Qt.Key.Key_Right)
    qkey(brick, Qt.Key.Key_Right)
    assert _value(brick, "column.width") == 8.9375
    qkey(brick, Qt.Key.Key_Up)
    assert _value(brick, "column.width") == 8.9375
    qkey(brick, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    assert _value(brick, "column.width") == 8.4375
    assert brick.session.stack.count() == 0
    qkey(brick, Qt.Key.Key_Return)
    assert brick.session.stack.count() == 1
    assert brick.shaping.hold is None
    brick.undo()
    assert _value(brick, "column.width") == 9.0


def test_escape_puts_an_edge_back_that_was_moved_by_keys(brick: Window):
    job = brick.session.job
    _pick(brick, "lower edge of the frieze")
    qkey(brick, Qt.Key.Key_Down)
    assert _value(brick, "frieze.height") == 11.5625
    qkey(brick, Qt.Key.Key_Escape)
    assert brick.session.job is job
    assert brick.shaping.hold is None
    assert brick.session.stack.count() == 0


def test_page_keys_go_from_one_stop_to_the_next(brick: Window):
    _pick(brick, "lower edge of the frieze")
    qkey(brick, Qt.Key.Key_PageDown)
    assert _value(brick, "frieze.height") == 12.75
    mark = brick.canvas.overlay.grip
    assert mark is not None
    assert mark.note == "clearance limit of the frieze"
    qkey(brick, Qt.Key.Key_PageUp)
    assert _value(brick, "frieze.height") < 11.5
    assert brick.canvas.overlay.grip.note.startswith("proportion: ")
    qkey(brick, Qt.Key.Key_Escape)


def test_the_next_edge_takes_what_was_moved_as_a_step(brick: Window):
    _pick(brick, "top of the shelf")
    qkey(brick, Qt.Key.Key_Up)
    qkey(brick, Qt.Key.Key_Tab)
    assert brick.session.stack.count() == 1
    assert _value(brick, "shelf.height") == 59.0625


def test_leaving_the_sheet_takes_what_was_moved(brick: Window):
    _pick(brick, "top of the shelf")
    qkey(brick, Qt.Key.Key_Up)
    brick.fields.focus_path("opening.width")
    assert brick.shaping.hold is None
    assert brick.session.stack.count() == 1


def test_undo_while_an_edge_is_held_undoes_what_was_moved(brick: Window):
    _pick(brick, "top of the shelf")
    qkey(brick, Qt.Key.Key_Up)
    brick.undo()
    assert _value(brick, "shelf.height") == 59.0
    assert brick.shaping.hold is None


def test_what_is_moved_is_in_the_file_that_is_saved(brick: Window, tmp_path):
    from app.files import read_job_file

    brick.session.mark_saved(tmp_path / "job.mantel")
    _pick(brick, "top of the shelf")
    qkey(brick, Qt.Key.Key_Up)
    assert brick.files.save()
    assert read_job_file(tmp_path / "job.mantel").design.shelf.height == 59.0625
    assert not brick.session.is_unsaved


def test_another_job_lets_go_of_the_edge(brick: Window):
    _pick(brick, "top of the shelf")
    qkey(brick, Qt.Key.Key_Up)
    brick.session.open(read_demo("bedroom"), None)
    assert brick.shaping.hold is None
    assert brick.session.stack.count() == 0
    assert brick.session.job == read_demo("bedroom")


def test_typing_a_figure_types_over_the_edges_dimension(brick: Window):
    _pick(brick, "top of the shelf")
    QTest.keyClick(brick.canvas, "6")
    assert brick.sheet_field.path == "shelf.height"
    assert brick.sheet_field.edit.text() == "6"
    QTest.keyClicks(brick.sheet_field.edit, "0 1/2")
    QTest.keyClick(brick.sheet_field.edit, Qt.Key.Key_Return)
    assert _value(brick, "shelf.height") == 60.5
    assert brick.canvas.hasFocus()


def test_the_words_of_an_edge_can_be_read_out(brick: Window):
    _pick(brick, "top of the shelf")
    qkey(brick, Qt.Key.Key_Up)
    mark = brick.canvas.overlay.grip
    assert mark is not None
    assert mark.words.startswith("Shelf height 4'-11 1/16\", was 4'-11\". ")


def test_a_value_that_is_not_built_is_taken_up_from_what_is(brick: Window):
    brick.session.open(with_value(read_demo("brick"), "column.stile", 8.0), None)
    edge = _grip(brick, "inner edge of the right column's panel")
    assert edge.value == 4.0
    _pick(brick, edge.name)
    qkey(brick, Qt.Key.Key_Left)
    assert _value(brick, "column.stile") == 3.9375


@pytest.mark.parametrize("clearance", [False, True])
@pytest.mark.parametrize("name", list_demos())
def test_what_is_shown_of_a_dragged_edge_is_what_is_drawn_afresh(
    window: Window, qtbot: QtBot, name: str, clearance: bool
):
    window.resize(1366, 768)
    window.session.open(read_demo(name), None)
    window.drafting.show_clearance(clearance)
    chance, moved = Random(name), 0
    QApplication.processEvents()
    for grip in chance.sample(window.shaping.grips, 5):
        at = _pixel(window, grip.name, grip.view)
        _press(window, at)
        for _ in range(3):
            job, off = window.session.job, chance.randint(-40, 40)
            _send(window, QEvent.Type.MouseMove, at + (QPoint(0, off) if grip.way else QPoint(off, 0)))
            if window.session.job is not job:
                qtbot.waitSignal(window.drafting.checked, timeout=3000).wait()
                moved += 1
                assert [view.drawing for view in window.canvas.views] == _draw_afresh(window, clearance)
                assert _paints_alike(window)
        window.shaping.put_back()
        _let_go(window, at)
        QApplication.processEvents()
        assert [view.drawing for view in window.canvas.views] == _draw_afresh(window, clearance)
    assert moved > 5


def _draw_afresh(window: Window, clearance: bool) -> list[Drawing]:
    surround = plan_surround(window.session.job)
    findings = list_placed_faults(check_fire(surround))
    options = ViewOptions(window.drafting.ratio, clearance=clearance, findings=findings)
    return list(draw_views(surround, ELEVATIONS, options))


def _paints_alike(window: Window) -> bool:
    """Whether the sheet looks the same painted straight away and from the picture that is kept of it."""
    window.canvas.show_views(list(window.canvas.views))
    straight, kept = (window.canvas.grab().toImage() for _ in range(2))
    return straight == kept


def test_limits_are_looked_for_while_an_edge_is_moved_and_go_on_when_it_rests(brick: Window, qtbot: QtBot):
    at = _pixel(brick, "inner side of the left column")
    _drag(brick, at, at + QPoint(6, 0))
    qtbot.waitUntil(lambda: any("clearance limit" in mark.reason for mark in brick.shaping.hold.marks))
    brick.shaping.put_back()
    _let_go(brick, at)


SIDEWAYS, IN_SIDE = "outer side of the right column", "front of the shelf"


def _views(window: Window) -> dict[str, Drawing]:
    return {view.name: view.drawing for view in window.canvas.views}


def _afresh(window: Window) -> dict[str, Drawing]:
    return dict(zip(ELEVATIONS, _draw_afresh(window, clearance=False), strict=True))


def _leave_no_time(window: Window) -> None:
    """As on a machine on which nothing fits between two moves."""
    for waiting in window.drafting.between._all:
        waiting.takes = 10.0


@pytest.mark.parametrize(("edge", "led", "other"), [(SIDEWAYS, "front", "side"), (IN_SIDE, "side", "front")])
@pytest.mark.parametrize("hurried", [False, True])
def test_each_move_is_shown_where_the_hand_is_and_the_other_view_is_always_of_one_job(
    brick: Window, edge: str, led: str, other: str, hurried: bool
):
    whole = [_views(brick)[other]]
    at = _pixel(brick, edge, led)
    way = QPoint(0, -1) if _grip(brick, edge, led).way else QPoint(1, 0)
    stood = brick.canvas.place_of(led)
    _press(brick, at)
    for step in range(8, 80, 8):
        if hurried:
            _leave_no_time(brick)
        _send(brick, QEvent.Type.MouseMove, at + way * step)
        afresh = _afresh(brick)
        whole.append(afresh[other])
        assert _views(brick)[led] == afresh[led]
        assert _views(brick)[other] in whole
        QApplication.processEvents()
        assert _views(brick)[led] == afresh[led]
        assert _views(brick)[other] in whole
        assert brick.canvas.place_of(led) == stood
    brick.shaping.put_back()
    _let_go(brick, at)
    assert len({id(drawing) for drawing in whole}) > 3


def test_while_an_edge_goes_on_moving_the_other_view_is_soon_of_a_later_job(brick: Window, qtbot: QtBot):
    at = _pixel(brick, SIDEWAYS)
    _press(brick, at)
    seen = set()
    for step in range(8, 80, 4):
        _leave_no_time(brick)
        _send(brick, QEvent.Type.MouseMove, at + QPoint(step, 0))
        qtbot.wait(8)
        seen.add(id(brick.drafting.whole))
    assert len(seen) >= 3
    brick.shaping.put_back()
    _let_go(brick, at)


def test_an_edge_that_rests_in_the_hand_leaves_no_view_behind(brick: Window, qtbot: QtBot):
    _leave_no_time(brick)
    at = _pixel(brick, SIDEWAYS)
    _drag(brick, at, at + QPoint(40, 0))
    qtbot.waitUntil(lambda: brick.drafting.whole is brick.drafting.surround)
    assert brick.session.is_trying
    assert _views(brick) == _afresh(brick)
    brick.shaping.put_back()
    _let_go(brick, at)


@pytest.mark.parametrize("ends", ["release", "escape", "entered"])
def test_the_end_of_a_drag_leaves_no_view_behind(brick: Window, ends: str):
    at = _pixel(brick, SIDEWAYS)
    before = _views(brick)
    _drag(brick, at, at + QPoint(40, 0))
    assert _views(brick)["side"] == before["side"]
    if ends == "release":
        _let_go(brick, at + QPoint(40, 0))
    elif ends == "escape":
        QTest.keyClick(brick.canvas, Qt.Key.Key_Escape)
        assert _views(brick) == before
    else:
        assert brick.commit_pending()
    assert not brick.session.is_trying
    assert brick.drafting.whole is brick.drafting.surround
    assert brick.drafting.surround.job == brick.session.job
    assert _views(brick) == _afresh(brick)
    _let_go(brick, at)


def test_keys_move_an_edge_in_all_views_at_once(brick: Window):
    _pick(brick, SIDEWAYS)
    QTest.keyClick(brick.canvas, Qt.Key.Key_Right)
    assert brick.session.is_trying
    assert _views(brick) == _afresh(brick)
    brick.shaping.put_back()


def test_a_place_that_is_pointed_at_is_never_told_of_a_view_that_is_behind(brick: Window, qtbot: QtBot):
    qtbot.waitUntil(lambda: bool(brick.drafting.findings))
    placed = next(finding for finding in brick.drafting.findings if finding.at is not None)
    brick.canvas.show_finding(placed, brick.drafting.place_finding(placed))
    brick.drafting.checked.connect(lambda: told.append(brick.drafting.whole is brick.drafting.surround))
    told: list[bool] = []
    at = _pixel(brick, SIDEWAYS)
    _press(brick, at)
    for step in range(8, 160, 4):
        brick.drafting._behind.takes = 10.0
        _send(brick, QEvent.Type.MouseMove, at + QPoint(step, 0))
        qtbot.wait(8)
    assert told
    assert all(told)
    brick.shaping.put_back()
    _let_go(brick, at)


def test_the_state_before_stays_on_the_sheet_though_a_view_was_behind(brick: Window, qtbot: QtBot):
    before = _views(brick)
    _leave_no_time(brick)
    at = _pixel(brick, SIDEWAYS)
    _drag(brick, at, at + QPoint(40, 0))
    brick.before.show()
    qtbot.wait(120)
    assert _views(brick) == before
    brick.before.end()
    assert _views(brick) == _afresh(brick)
    brick.shaping.put_back()
    _let_go(brick, at)


def test_limits_and_findings_come_while_a_hand_never_rests_though_there_is_no_time(
    brick: Window, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
):
    told: list[bool] = []
    looked: list[int] = []
    brick.drafting.checked.connect(lambda: told.append(brick.session.is_trying))
    look_on = EdgeHold.look_on
    monkeypatch.setattr(EdgeHold, "look_on", lambda hold: looked.append(turn) or look_on(hold))
    at = _pixel(brick, "inner side of the left column")
    _press(brick, at)
    for turn in range(60):
        _leave_no_time(brick)
        _send(brick, QEvent.Type.MouseMove, at + QPoint(6 + turn % 20, 0))
        qtbot.wait(8)
    assert any(told)
    assert len(set(looked)) > 3
    brick.shaping.put_back()
    _let_go(brick, at)


def test_values_that_follow_from_a_dragged_edge_are_right_once_it_rests(brick: Window, qtbot: QtBot):
    def read_shown() -> dict[str, str]:
        return {key: row.value.text() for key, row in brick.fields.derived.items() if not row.isHidden()}

    before = read_shown()
    _leave_no_time(brick)
    at = _pixel(brick, "top of the shelf")
    _drag(brick, at, at - QPoint(0, 40))
    qtbot.waitUntil(lambda: not brick.drafting._unlaid.is_asked)
    shown = read_shown()
    assert shown != before
    brick.shaping.take()
    assert read_shown() == shown
    _let_go(brick, at)


def test_what_is_worth_stopping_at_is_known_before_a_pressed_edge_is_moved(
    brick: Window, monkeypatch: pytest.MonkeyPatch
):
    asked: list[float] = []

    def list_counted(job: Job, grip: Grip, *others: object) -> tuple[Mark, ...]:
        asked.append(read_value(job, grip.path))
        return list_marks(job, grip, *others)

    monkeypatch.setattr("model.shaping.marks.list_marks", list_counted)
    at = _pixel(brick, SIDEWAYS)
    _press(brick, at)
    QApplication.processEvents()
    assert len(asked) == 1
    _send(brick, QEvent.Type.MouseMove, at + QPoint(20, 0))
    assert len(asked) == 1
    assert brick.shaping.hold.marks
    brick.shaping.put_back()
    _let_go(brick, at)
    _press(brick, at)
    QApplication.processEvents()
    width = _value(brick, "column.width")
    brick.session.set_value("column.width", width + 1)
    _send(brick, QEvent.Type.MouseMove, at + QPoint(20, 0))
    assert asked == [width, width, width + 1]
    brick.shaping.put_back()
    _let_go(brick, at)


def test_an_edge_that_is_moved_before_the_program_could_get_ready_stops_all_the_same(brick: Window):
    at = _pixel(brick, SIDEWAYS)
    _press(brick, at)
    _send(brick, QEvent.Type.MouseMove, at + QPoint(20, 0))
    marks = brick.shaping.hold.marks
    QApplication.processEvents()
    assert marks
    assert set(marks) <= set(brick.shaping.hold.marks)
    brick.shaping.put_back()
    _let_go(brick, at)
