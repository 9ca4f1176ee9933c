"""What is drawn keeps its proportion to the sheet, however the window is made larger and smaller."""

from __future__ import annotations

import pytest
from pytestqt.qtbot import QtBot

from app import drafting
from app.window import Window
from model.check.all import check_surround
from model.job import with_value
from render.drawing import Fill, Region, Text
from render.views import ViewOptions, draw_views


@pytest.mark.parametrize("name", ["brick", "gas"])
def test_a_small_window_letters_smaller_before_its_surround_shrinks_away(
    window: Window, qtbot: QtBot, name: str
) -> None:
    window.files.open_example(name)
    for size in ((1366, 768), (960, 540), (1366, 768), (1920, 1080), (960, 540)):
        window.resize(*size)
        qtbot.wait(150)
        canvas = window.canvas
        assert canvas.fit_scale() > 0.2 * canvas.solid_scale(), size
        assert canvas.paper_dots / canvas.fit_scale() < 2.5 * window.drafting.ratio, size


def test_a_window_made_large_again_letters_as_before(window: Window, qtbot: QtBot) -> None:
    window.resize(1366, 768)
    qtbot.wait(150)
    before = window.drafting.ratio
    for size in ((960, 540), (1366, 768)):
        window.resize(*size)
        qtbot.wait(150)
    assert window.drafting.ratio == pytest.approx(before, rel=0.2)


def test_marks_switched_on_are_on_the_sheet_at_once(window: Window) -> None:
    window.drafting.show_marks(True)
    stands_for = {text.stands_for for text in window.canvas.views[0].drawing.marks if hasattr(text, "at")}
    assert stands_for & {mark.rstrip("ab") for mark in window.drafting.surround.marks}


def _list_faults(window: Window) -> list[object]:
    marks = window.canvas.views[0].drawing.marks
    return [mark for mark in marks if isinstance(mark, Region) and mark.fill is Fill.FAULT]


def test_what_fails_is_marked_as_it_is_now_in_the_very_drawing_of_an_edit(
    window: Window, qtbot: QtBot
) -> None:
    window.files.open_example("too-close")
    qtbot.waitUntil(lambda: bool(_list_faults(window)))
    window.session.set_text("shelf.overhang_front", "7 3/16")
    drafting = window.drafting
    findings = check_surround(drafting.surround)
    shown = draw_views(drafting.surround, drafting.views, ViewOptions(drafting.ratio, findings=findings))
    assert tuple(view.drawing for view in window.canvas.views) == shown
    assert _list_faults(window)


def test_what_begins_to_fail_is_marked_once_the_edit_is_painted(window: Window, qtbot: QtBot) -> None:
    window.files.open_example("brick")
    qtbot.waitUntil(lambda: bool(window.drafting.findings))
    assert not _list_faults(window)
    window.session.set_text("column.margin", "0")
    qtbot.waitUntil(lambda: bool(_list_faults(window)))
    words = [m.text for m in window.canvas.views[0].drawing.marks if isinstance(m, Text) and "over" in m.text]
    assert words
    assert window.drafting.findings == check_surround(window.drafting.surround)


def test_what_no_longer_fails_loses_its_marks_in_the_drawing_of_the_edit(
    window: Window, qtbot: QtBot
) -> None:
    window.files.open_example("brick")
    window.session.set_text("column.margin", "0")
    qtbot.waitUntil(lambda: bool(_list_faults(window)))
    window.session.undo()
    assert not _list_faults(window)


def test_findings_do_not_hold_up_an_edge_that_is_dragged_but_follow_when_it_rests(
    window: Window, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(drafting, "TRYING_BEAT", 10_000)
    qtbot.waitUntil(lambda: bool(window.drafting.findings))
    session, told = window.session, []
    window.drafting.checked.connect(lambda: told.append(session.revision))
    for width in (8.0, 8.25, 8.5, 8.75):
        session.try_job(with_value(session.job, "column.width", width))
        window.canvas.painted.emit()
    assert not told
    qtbot.waitUntil(lambda: told == [session.revision])
    assert window.drafting.findings == check_surround(window.drafting.surround)


def test_findings_keep_up_with_a_long_drag(
    window: Window, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(drafting, "TRYING_BEAT", 0)
    qtbot.waitUntil(lambda: bool(window.drafting.findings))
    session, told = window.session, []
    window.drafting.checked.connect(lambda: told.append(session.revision))
    for width in (8.0, 8.25, 8.5, 8.75):
        session.try_job(with_value(session.job, "column.width", width))
        window.canvas.painted.emit()
        assert told[-1] == session.revision
