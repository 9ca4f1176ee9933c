"""The fields show the job, hand on what is typed and keep what is refused."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QFocusEvent, QGuiApplication, QWheelEvent
from PySide6.QtWidgets import QScrollArea, QWidget

from app.fields.choice_row import SIGN, ChoiceRow
from app.fields.measuring_list import MeasuringList
from app.fields.row import SIDE, Row
from app.fields.tape_edit import TapeEdit
from app.fields.tape_row import TapeRow
from app.fields.text_area_row import MOST_PASTED, TextAreaRow
from app.fields.yes_no_row import YesNoRow
from app.session import Session
from model.build.layout import lay_out
from model.idle import list_idle
from model.job import default_job, read_value, with_value
from model.parameters import BY_PATH, TABLE


@pytest.fixture
def session(qapp) -> Session:
    return Session()


@pytest.fixture
def fields(qtbot, dressed, session: Session) -> MeasuringList:
    shown = MeasuringList(session)
    qtbot.addWidget(shown)
    shown.resize(344, 700)
    with qtbot.waitExposed(shown):
        shown.show()
    shown.activateWindow()
    qtbot.waitActive(shown)
    return shown


def _tape(fields: MeasuringList, path: str) -> TapeRow:
    row = fields.rows[path]
    assert isinstance(row, TapeRow)
    return row


def _type(qtbot, fields: MeasuringList, path: str, text: str) -> TapeRow:
    row = _tape(fields, path)
    fields.focus_path(path)
    row.edit.selectAll()
    qtbot.keyClicks(row.edit, text)
    return row


def _widget(row: Row) -> QWidget:
    assert row.value_widget is not None
    return row.value_widget


def _port(fields: MeasuringList) -> QWidget:
    """What the groups are seen through."""
    return fields.findChild(QScrollArea)


@pytest.mark.parametrize(
    "path", ["offer.hour", "column.width", "look.paint", "times.clear_hard", "opening.width"]
)
def test_a_field_that_is_gone_to_is_in_sight_though_its_group_was_folded(fields: MeasuringList, path: str):
    for group in fields.groups.values():
        group.fold(True)
    QCoreApplication.processEvents()
    fields.focus_path(path)
    QCoreApplication.processEvents()
    row, port = fields.rows[path], _port(fields)
    top = row.mapTo(port, QPoint(0, 0)).y()
    assert 0 <= top <= top + row.height() <= port.height()


def test_a_group_that_is_gone_to_begins_at_the_top_of_the_list(fields: MeasuringList):
    fields.go_to("Columns")
    QCoreApplication.processEvents()
    top = fields.groups["Columns"].mapTo(_port(fields), QPoint(0, 0)).y()
    assert 0 <= top < 40


def test_every_row_of_the_table_has_one_field_and_a_name_to_be_read_aloud(fields: MeasuringList):
    assert list(fields.rows) == sorted(fields.rows, key=lambda path: (path.startswith("job."), _place(path)))
    assert set(fields.rows) == {row.path for row in TABLE}
    assert all(_widget(row).accessibleName() for row in fields.rows.values())
    assert all(_widget(row).accessibleDescription() for row in fields.rows.values())


def _place(path: str) -> int:
    return [row.path for row in TABLE].index(path)


def test_fields_show_the_job_as_it_writes_lengths(fields: MeasuringList, session: Session):
    assert _tape(fields, "opening.width").edit.text() == "3'-0\""
    session.set_value("job.units", "millimetres")
    assert _tape(fields, "opening.width").edit.text() == "914 mm"


def test_enter_enters_the_text_and_shows_it_as_the_job_does(qtbot, fields: MeasuringList, session: Session):
    row = _type(qtbot, fields, "opening.width", "40 1/2")
    assert read_value(session.job, "opening.width") == 36
    qtbot.keyClick(row.edit, Qt.Key.Key_Return)
    assert read_value(session.job, "opening.width") == 40.5
    assert row.edit.text() == "3'-4 1/2\""
    assert session.stack.count() == 1


def test_leaving_a_field_enters_its_text(qtbot, fields: MeasuringList, session: Session):
    row = _type(qtbot, fields, "opening.width", "40")
    qtbot.keyClick(row.edit, Qt.Key.Key_Tab)
    assert read_value(session.job, "opening.width") == 40
    assert _tape(fields, "opening.height").edit.hasFocus()


def test_passing_through_fields_changes_nothing_however_much_is_rounded(
    qtbot, fields: MeasuringList, session: Session
):
    session.open(with_value(default_job(), "opening.width", 36.03), None)
    before = session.job
    fields.focus_path("opening.width")
    for _ in range(6):
        qtbot.keyClick(fields.window().focusWidget(), Qt.Key.Key_Tab)
    assert session.job is before


def test_a_refused_entry_keeps_its_text_says_what_is_wanted_and_changes_nothing_else(
    qtbot, fields: MeasuringList, session: Session
):
    before, height = session.job, fields.rows["opening.width"].height()
    row = _type(qtbot, fields, "opening.width", "3x")
    qtbot.keyClick(row.edit, Qt.Key.Key_Tab)
    assert row.edit.text() == "3x"
    assert row.message.endswith(".")
    assert "36 1/2" in row.message
    assert row.message in row.edit.accessibleDescription()
    assert row.height() > height
    assert session.job is before
    session.set_text("opening.height", "33")
    assert row.edit.text() == "3x"


def test_an_entry_out_of_bounds_says_the_bounds(qtbot, fields: MeasuringList):
    row = _type(qtbot, fields, "opening.width", "400")
    qtbot.keyClick(row.edit, Qt.Key.Key_Return)
    assert '12"' in row.message
    assert '120"' in row.message


def test_a_refused_entry_put_right_is_entered_and_its_sentence_goes(
    qtbot, fields: MeasuringList, session: Session
):
    row = _type(qtbot, fields, "opening.width", "3x")
    qtbot.keyClick(row.edit, Qt.Key.Key_Return)
    tall = row.height()
    _type(qtbot, fields, "opening.width", "42")
    qtbot.keyClick(row.edit, Qt.Key.Key_Return)
    assert row.message == ""
    assert row.height() < tall
    assert read_value(session.job, "opening.width") == 42


def test_escape_takes_back_what_was_typed(qtbot, fields: MeasuringList, session: Session):
    row = _type(qtbot, fields, "opening.width", "3x")
    qtbot.keyClick(row.edit, Qt.Key.Key_Return)
    qtbot.keyClick(row.edit, Qt.Key.Key_Escape)
    assert row.edit.text() == "3'-0\""
    assert row.message == ""
    assert not session.is_unsaved


def test_another_job_clears_a_refused_entry(qtbot, fields: MeasuringList, session: Session):
    row = _type(qtbot, fields, "opening.width", "3x")
    qtbot.keyClick(row.edit, Qt.Key.Key_Return)
    session.open(default_job(), None)
    assert row.edit.text() == "3'-0\""
    assert row.message == ""


def test_arrow_keys_step_by_the_rows_step_and_undo_as_one(qtbot, fields: MeasuringList, session: Session):
    row = _tape(fields, "opening.width")
    fields.focus_path("opening.width")
    for _ in range(3):
        qtbot.keyClick(row.edit, Qt.Key.Key_Up)
    qtbot.keyClick(row.edit, Qt.Key.Key_Down)
    assert row.edit.text() == "3'-0 1/4\""
    qtbot.keyClick(row.edit, Qt.Key.Key_Up, Qt.KeyboardModifier.ShiftModifier)
    assert read_value(session.job, "opening.width") == 37.25
    assert session.stack.count() == 1
    session.undo()
    assert row.edit.text() == "3'-0\""


def test_stepping_takes_what_is_being_typed_first(qtbot, fields: MeasuringList, session: Session):
    row = _type(qtbot, fields, "opening.width", "40")
    qtbot.keyClick(row.edit, Qt.Key.Key_Up)
    assert read_value(session.job, "opening.width") == 40.125
    _type(qtbot, fields, "opening.width", "x")
    qtbot.keyClick(row.edit, Qt.Key.Key_Up)
    assert row.edit.text() == "x"
    assert read_value(session.job, "opening.width") == 40.125


def _turn(widget: QWidget, notches: float) -> bool:
    at = QPointF(widget.rect().center())
    event = QWheelEvent(
        at, widget.mapToGlobal(at), QPoint(), QPoint(0, round(120 * notches)), Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QCoreApplication.sendEvent(widget, event)
    return event.isAccepted()


def test_the_wheel_steps_only_the_field_that_has_the_cursor(qtbot, fields: MeasuringList, session: Session):
    fields.focus_path("opening.width")
    assert not _turn(_tape(fields, "opening.height").edit, 1)
    _turn(_widget(fields.rows["site.rule"]), 1)
    assert session.stack.count() == 0
    assert _turn(_tape(fields, "opening.width").edit, 2)
    assert read_value(session.job, "opening.width") == 36.25


def test_a_fine_wheel_steps_once_for_each_whole_notch(fields: MeasuringList, session: Session):
    fields.focus_path("opening.width")
    edit = _tape(fields, "opening.width").edit
    for _ in range(3):
        _turn(edit, 0.25)
    assert read_value(session.job, "opening.width") == 36
    _turn(edit, 0.25)
    assert read_value(session.job, "opening.width") == 36.125


def test_a_refused_step_keeps_the_value(qtbot, fields: MeasuringList, session: Session):
    session.set_text("shelf.overhang_front", "0")
    before = session.job
    fields.focus_path("shelf.depth")
    row = _tape(fields, "shelf.depth")
    qtbot.keyClick(row.edit, Qt.Key.Key_Down)
    assert session.job is before
    assert row.message


def test_a_reading_may_be_missing(qtbot, fields: MeasuringList, session: Session):
    row = _type(qtbot, fields, "hearth.thickness", "2")
    qtbot.keyClick(row.edit, Qt.Key.Key_Return)
    row.edit.clear()
    qtbot.keyClick(row.edit, Qt.Key.Key_Return)
    assert read_value(session.job, "hearth.thickness") is None
    assert row.edit.placeholderText() == "not given"


def test_the_field_in_focus_is_told_and_lit_and_explained(qtbot, fields: MeasuringList):
    told: list[str] = []
    fields.focused.connect(told.append)
    fields.focus_path("opening.width")
    assert told[-1] == "opening.width"
    row = _tape(fields, "opening.width")
    qtbot.keyClick(row.edit, Qt.Key.Key_Tab)
    assert told[-1] == "opening.height"


def test_every_field_can_be_reached_with_the_tab_key_in_reading_order(
    qtbot, fields: MeasuringList, session: Session
):
    idle = list_idle(session.job)
    for group in fields.groups.values():
        group.fold(False)
    first = next(iter(fields.rows))
    seen = [first]
    fields.focus_path(first)
    fields.focused.connect(seen.append)
    for _ in range(len(fields.rows) - len(idle) - 1):
        qtbot.keyClick(fields.window().focusWidget(), Qt.Key.Key_Tab)
    assert [path for path in seen if path] == [path for path in fields.rows if path not in idle]


def test_a_group_folds_under_its_heading_and_opens_for_the_cursor(qtbot, fields: MeasuringList):
    group = fields.groups["Columns"]
    qtbot.mouseClick(group.heading, Qt.MouseButton.LeftButton)
    assert group.is_folded
    assert not fields.rows["column.width"].isVisible()
    fields.focus_path("column.width")
    assert fields.rows["column.width"].isVisible()


def test_what_is_further_down_is_made_when_it_is_asked_for(qtbot, dressed):
    """Its values and its derived lines are those of the job as it then is."""
    session = Session()
    fields = MeasuringList(session)
    qtbot.addWidget(fields)
    few = len(fields.findChildren(Row))
    session.set_text("shelf.thickness", "2 1/2")
    fields.show_layout(lay_out(session.job.site, session.job.design))
    fields.build_rest()
    assert len(fields.findChildren(Row)) > few
    assert list(fields.groups) == list(fields.titles)
    assert _tape(fields, "shelf.thickness").edit.text() == '2 1/2"'
    assert fields.derived["shelf.under"].value.text() == "4'-3 1/2\""


def test_every_group_can_be_gone_to(fields: MeasuringList):
    for title, group in fields.groups.items():
        fields.go_to(title)
        inside = fields.window().focusWidget()
        assert inside is not None
        assert group.isAncestorOf(inside), title


def test_a_click_in_a_field_takes_the_whole_text_to_be_typed_over(
    qtbot, fields: MeasuringList, session: Session
):
    edit = _tape(fields, "opening.width").edit
    qtbot.mouseClick(edit, Qt.MouseButton.LeftButton, pos=QPoint(4, 10))
    qtbot.keyClicks(edit, "41")
    qtbot.keyClick(edit, Qt.Key.Key_Return)
    assert read_value(session.job, "opening.width") == 41


def _come_back(edit: TapeEdit) -> None:
    """The program is left for another and returned to."""
    for kind in (QEvent.Type.FocusOut, QEvent.Type.FocusIn):
        QCoreApplication.sendEvent(edit, QFocusEvent(kind, Qt.FocusReason.ActiveWindowFocusReason))


def test_a_field_that_is_come_back_to_is_typed_over_unless_something_is_half_typed(
    qtbot, fields: MeasuringList
):
    edit = _tape(fields, "opening.width").edit
    edit.setFocus()
    edit.deselect()
    _come_back(edit)
    assert edit.selectedText() == edit.text() == "3'-0\""
    qtbot.keyClicks(edit, "51")
    _come_back(edit)
    assert (edit.text(), edit.selectedText()) == ("51", "")


def test_a_choice_is_one_step(qtbot, fields: MeasuringList, session: Session):
    row = fields.rows["site.rule"]
    assert isinstance(row, ChoiceRow)
    row.box.setFocus()
    qtbot.keyClick(row.box, Qt.Key.Key_Down)
    assert read_value(session.job, "site.rule") == "irc"
    session.undo()
    assert row.box.currentText() == "Strictest of IRC and NFPA 211"


LONGEST_SECTIONS = {"bed_mould.profile", "capital.profile"}
"""Rows with a choice or two that have no room beside their name."""


def test_names_and_words_of_choices_are_whole_whichever_is_picked(qtbot, dressed, session: Session):
    rows = [row for row in TABLE if row.choices and row.path not in LONGEST_SECTIONS]
    for parameter in rows:
        for key in parameter.choices or {}:
            row = ChoiceRow(parameter)
            qtbot.addWidget(row)
            row.resize(330, row.height())
            row.show_job(with_value(session.job, parameter.path, key), True)
            row.show()
            for text, room in (
                (row.box.currentText(), row.box.width() - SIGN),
                (row.label, row.box.x() - SIDE - 4),
            ):
                shown = row.fontMetrics().elidedText(text, Qt.TextElideMode.ElideRight, room)
                assert shown == text, (parameter.path, key)


def test_words_of_a_choice_that_are_cut_short_are_told_in_full(qtbot, dressed, session: Session):
    parameter = BY_PATH["bed_mould.profile"]
    longest = max(parameter.choices or {}, key=lambda key: len((parameter.choices or {})[key]))
    row = ChoiceRow(parameter)
    qtbot.addWidget(row)
    row.resize(200, row.height())
    row.show_job(with_value(session.job, parameter.path, longest), True)
    row.show()
    assert row.box.toolTip() == (parameter.choices or {})[longest]
    row.resize(900, row.height())
    assert row.box.toolTip() == ""


def test_a_yes_or_no_is_one_step_and_says_which(qtbot, fields: MeasuringList, session: Session):
    row = fields.rows["bed_mould.on"]
    assert isinstance(row, YesNoRow)
    assert row.box.text() == "Yes"
    row.box.setFocus()
    qtbot.keyClick(row.box, Qt.Key.Key_Space)
    assert read_value(session.job, "bed_mould.on") is False
    assert row.box.text() == "No"


def test_a_value_without_a_say_is_not_in_the_list(fields: MeasuringList, session: Session):
    assert fields.rows["chart.shelf"].isHidden()
    session.set_value("site.rule", "manual")
    assert not fields.rows["chart.shelf"].isHidden()
    session.set_value("bed_mould.on", False)
    assert fields.rows["bed_mould.size"].isHidden()


def test_a_chart_is_written_one_pair_to_a_line(qtbot, fields: MeasuringList, session: Session):
    session.set_value("site.rule", "manual")
    row = fields.rows["chart.shelf"]
    assert isinstance(row, TextAreaRow)
    row.area.setFocus()
    qtbot.keyClicks(row.area, "3/4 : 8")
    qtbot.keyClick(row.area, Qt.Key.Key_Return)
    qtbot.keyClicks(row.area, "2 1/2 : 10")
    assert row.commit()
    assert read_value(session.job, "chart.shelf") == ((0.75, 8.0), (2.5, 10.0))
    assert row.area.toPlainText().count("\n") == 1
    row.area.setPlainText("3/4")
    assert not row.commit()
    assert row.area.toPlainText() == "3/4"
    assert row.message


def test_pending_text_is_entered_on_demand_and_what_is_refused_is_told(
    qtbot, fields: MeasuringList, session: Session
):
    _type(qtbot, fields, "opening.width", "40")
    assert fields.commit_pending()
    assert read_value(session.job, "opening.width") == 40
    _type(qtbot, fields, "opening.width", "x")
    assert not fields.commit_pending()


def test_what_follows_is_shown_and_cannot_be_typed(fields: MeasuringList, session: Session):
    fields.show_layout(lay_out(session.job.site, session.job.design))
    shown = {row.label: row.value for row in fields.derived.values()}
    # opening 36, a margin of 13, a column of 7 1/2 and an overhang of 3 on each side
    assert shown["Overall width"].text() == "6'-11\""
    # shelf top 54, 2 thick, frieze 9, opening 30
    assert shown["Facing showing above"].text() == "1'-1\""
    assert all(label.focusPolicy() is Qt.FocusPolicy.NoFocus for label in shown.values())


def test_a_value_that_cannot_be_built_as_asked_says_so_below(fields: MeasuringList, session: Session):
    session.set_text("column.width", "4")
    session.set_text("column.stile", "2")
    fields.show_layout(lay_out(session.job.site, session.job.design))
    assert 'Built as 1 1/2"' in fields.rows["column.stile"].note
    assert fields.rows["column.width"].note == ""
    session.set_text("column.stile", "1 1/4")
    session.set_text("column.width", "8")
    fields.show_layout(lay_out(session.job.site, session.job.design))
    assert fields.rows["column.stile"].note == ""


def test_letters_that_the_sheets_cannot_print_are_named_below_their_field(
    fields: MeasuringList, session: Session
):
    session.set_text("job.client", "Ms 山田 Žižka")
    fields.show_layout(lay_out(session.job.site, session.job.design))
    assert fields.rows["job.client"].note == "The sheets' typeface has no 山 田; paper shows ?."
    session.set_text("job.client", "Žižka")
    fields.show_layout(lay_out(session.job.site, session.job.design))
    assert fields.rows["job.client"].note == ""


def test_every_field_shows_the_job_after_steps_back_and_forth(fields: MeasuringList, session: Session):
    def check() -> None:
        style = session.job.about.length_style
        for row in TABLE:
            if isinstance(line := fields.rows[row.path], TapeRow):
                assert line.edit.text() == row.format(read_value(session.job, row.path), style)
            assert line.isHidden() == (row.path in list_idle(session.job))

    check()
    session.set_text("column.projection", "2 3/4")
    check()
    session.set_text("site.rule", "local")
    check()
    session.set_text("job.units", "millimetres")
    check()
    for move in (session.undo, session.undo, session.redo, session.undo, session.undo):
        move()
        check()


@pytest.mark.parametrize("path", ["site.rule", "look.paint", "job.units"])
@pytest.mark.parametrize("in_focus", ["job.notes", "site.rule", "look.paint", "job.units"])
def test_the_wheel_turns_no_choice(fields: MeasuringList, session: Session, path: str, in_focus: str):
    fields.focus_path(in_focus)
    box, before = fields.rows[path].value_widget, session.job
    for widget in (box, *(child for child in box.findChildren(QWidget) if isinstance(child, TapeEdit))):
        assert not _turn(widget, 1)
    assert session.job is before


def test_a_clipboard_far_too_long_is_refused_at_once(fields: MeasuringList, session: Session):
    fields.focus_path("job.notes")
    row = fields.rows["job.notes"]
    assert isinstance(row, TextAreaRow)
    QGuiApplication.clipboard().setText("ab\n" * 1_000_000)
    row.area.paste()
    assert len(row.area.toPlainText()) == MOST_PASTED
    assert not row.commit()
    assert "at most" in row.message
    assert session.stack.count() == 0
    QGuiApplication.clipboard().setText("Gate is blue")
    row.area.selectAll()
    row.area.paste()
    assert row.commit()
    assert session.job.about.notes == "Gate is blue"


def test_a_size_that_another_reading_governs_says_so(fields: MeasuringList, session: Session):
    session.set_text("readings.opening_width", "30")
    fields.show_layout(lay_out(session.job.site, session.job.design))
    assert fields.rows["opening.width"].note == "Read again as 2'-6\", which governs."
    session.set_text("opening.width", "29")
    fields.show_layout(lay_out(session.job.site, session.job.design))
    assert fields.rows["opening.width"].note == ""
