"""What is drawn keeps its proportion to the sheet, however the window is made larger and smaller."""

from __future__ import annotations

import pytest
from pytestqt.qtbot import QtBot

from app.window import Window


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
