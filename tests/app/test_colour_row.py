"""A colour is picked by name, or typed; what is none is kept and told about."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt

from app.fields.choice_row import SIGN
from app.fields.colour_row import INNER, SWATCH, ColourRow
from app.fields.measuring_list import MeasuringList
from app.session import Session
from model.parameters import find_parameter


@pytest.fixture
def session(qapp) -> Session:
    return Session()


@pytest.fixture
def row(qtbot, dressed, session: Session) -> ColourRow:
    fields = MeasuringList(session)
    qtbot.addWidget(fields)
    fields.resize(344, 700)
    with qtbot.waitExposed(fields):
        fields.show()
    fields.activateWindow()
    qtbot.waitActive(fields)
    fields.focus_path("look.paint")
    found = fields.rows["look.paint"]
    assert isinstance(found, ColourRow)
    found.fields = fields  # type: ignore[attr-defined]  # kept alive with the row
    return found


def test_a_colour_of_ones_own_is_typed(qtbot, row: ColourRow, session: Session):
    row.box.edit.selectAll()
    qtbot.keyClicks(row.box.edit, "#7C8F93")
    qtbot.keyClick(row.box.edit, Qt.Key.Key_Return)
    assert session.job.design.look.paint == "#7c8f93"
    assert row.box.edit.text() == "#7c8f93"
    assert not row.message


def test_arrow_keys_go_through_the_names(qtbot, row: ColourRow, session: Session):
    qtbot.keyClick(row.box, Qt.Key.Key_Down)
    assert session.job.design.look.paint == "oat"
    session.undo()
    assert session.job.design.look.paint == "milk"
    assert row.box.edit.text() == "Milk"


def test_what_is_no_colour_stays_with_a_sentence_and_changes_nothing(qtbot, row: ColourRow, session: Session):
    row.box.edit.selectAll()
    qtbot.keyClicks(row.box.edit, "#7c8")
    qtbot.keyClick(row.box.edit, Qt.Key.Key_Return)
    assert session.job.design.look.paint == "milk"
    assert "a colour such as #7c8f93" in row.message
    assert row.box.edit.text() == "#7c8"


def test_the_colour_itself_is_shown_beside_its_name_and_one_of_ones_own_too(row: ColourRow, session: Session):
    def left_middle() -> str:
        return row.box.grab().toImage().pixelColor(SWATCH // 2, row.box.height() // 2).name()

    for words, colour in (("moss", find_parameter("look.paint").swatches["moss"]), ("#7c8f93", "#7c8f93")):
        session.set_value("look.paint", words)
        assert left_middle() == colour.lower()


def test_the_entry_leaves_room_for_the_colour_and_the_sign(row: ColourRow, session: Session):
    session.set_value("look.paint", "moss")
    at = row.box.edit.geometry()
    assert at.left() >= SWATCH
    assert at.right() <= row.box.width() - SIGN + INNER
