"""Every edit is one step that can be taken back, and the session knows what is saved."""

from __future__ import annotations

from pathlib import Path

import pytest

from app.session import Session
from model.errors import Refused
from model.job import default_job, read_value, with_value

PATH = Path("parlour.mantel")


@pytest.fixture
def session(qapp) -> Session:
    return Session()


def _width(session: Session) -> float:
    return read_value(session.job, "opening.width")


def test_one_entry_is_one_step(session: Session):
    session.set_text("opening.width", "40")
    session.set_text("opening.width", "41")
    assert session.stack.count() == 2
    session.undo()
    assert _width(session) == 40
    session.undo()
    assert _width(session) == 36
    session.redo()
    assert _width(session) == 40


def test_the_text_is_read_in_the_jobs_own_unit(session: Session):
    session.set_value("job.units", "millimetres")
    session.set_text("opening.width", "1000")
    assert _width(session) == pytest.approx(1000 / 25.4)


def test_a_refused_entry_changes_nothing(session: Session):
    before = session.job
    with pytest.raises(Refused):
        session.set_text("opening.width", "3x")
    with pytest.raises(Refused):
        session.set_text("shelf.depth", "2")
    assert session.job is before
    assert session.stack.count() == 0
    assert not session.is_unsaved


def test_entering_what_holds_already_is_no_step(session: Session):
    session.set_text("opening.width", "3'-0\"")
    assert session.stack.count() == 0


def test_stepping_in_one_visit_to_a_field_is_one_step(session: Session):
    session.begin_gesture()
    for _ in range(5):
        session.step("opening.width", 1)
    assert session.stack.count() == 1
    assert _width(session) == 36.625
    session.begin_gesture()
    session.step("opening.width", 1)
    assert session.stack.count() == 2
    session.undo()
    assert _width(session) == 36.625


def test_stepping_another_row_is_another_step(session: Session):
    session.begin_gesture()
    session.step("opening.width", 1)
    session.step("opening.height", 1)
    assert session.stack.count() == 2


def test_stepping_there_and_back_leaves_no_step_and_nothing_unsaved(session: Session):
    session.begin_gesture()
    session.step("opening.width", 1)
    session.step("opening.width", -1)
    assert session.stack.count() == 0
    assert not session.is_unsaved


def test_stepping_after_an_undo_does_not_reach_back_into_the_step_before(session: Session):
    session.begin_gesture()
    session.step("opening.width", 1)
    session.set_text("opening.height", "31")
    session.undo()
    session.step("opening.width", 1)
    session.undo()
    assert _width(session) == 36.125


def test_a_typed_entry_never_merges_with_stepping(session: Session):
    session.begin_gesture()
    session.step("opening.width", 1)
    session.set_text("opening.width", "40")
    session.step("opening.width", 1)
    assert session.stack.count() == 3


def test_stepping_stops_at_the_rows_bound(session: Session):
    session.set_text("plinth.projection", "1/4")
    session.begin_gesture()
    session.step("plinth.projection", -1)
    assert read_value(session.job, "plinth.projection") == 0.25
    assert session.stack.count() == 1


def test_a_linked_row_sets_the_row_it_stands_for(session: Session):
    session.set_text("shelf.depth", "8")
    assert read_value(session.job, "shelf.overhang_front") == 4
    session.undo()
    assert read_value(session.job, "shelf.overhang_front") == 3


def test_undoing_back_to_what_was_saved_is_saved_again(session: Session):
    session.set_text("opening.width", "40")
    session.mark_saved(PATH)
    assert not session.is_unsaved
    session.set_text("opening.width", "41")
    assert session.is_unsaved
    session.undo()
    assert not session.is_unsaved
    session.undo()
    assert session.is_unsaved


def test_stepping_across_a_save_keeps_the_saved_state_reachable(session: Session):
    session.begin_gesture()
    session.step("opening.width", 1)
    session.mark_saved(PATH)
    session.step("opening.width", 1)
    assert session.is_unsaved
    session.undo()
    assert not session.is_unsaved


def test_another_job_starts_without_steps(session: Session):
    session.set_text("opening.width", "40")
    session.open(with_value(default_job(), "opening.width", 50.0), PATH)
    assert _width(session) == 50
    assert not session.stack.canUndo()
    assert not session.is_unsaved
    assert session.name == "parlour"


def test_recovered_work_is_unsaved_until_it_is_saved(session: Session):
    session.open(default_job(), None, recovered=True)
    assert session.is_unsaved
    session.mark_saved(PATH)
    assert not session.is_unsaved


def test_a_new_job_is_called_by_its_name_once_it_has_one(session: Session):
    assert session.name == "New job"
    session.set_text("job.name", "Parlour")
    assert session.name == "Parlour"


def test_each_new_state_is_told_once_and_counted(session: Session, qtbot):
    told = []
    session.changed.connect(lambda: told.append(session.revision))
    session.set_text("opening.width", "40")
    session.undo()
    session.redo()
    assert told == [1, 2, 3]


def test_what_is_tried_is_shown_and_is_no_step_until_it_is_taken(session: Session):
    session.try_job(with_value(session.job, "opening.width", 40.0))
    session.try_job(with_value(session.job, "opening.width", 41.0))
    assert _width(session) == 41
    assert session.is_trying
    assert not session.is_unsaved
    session.take("opening.width")
    assert session.stack.count() == 1
    assert session.stack.undoText() == "opening width"
    session.undo()
    assert _width(session) == 36


def test_what_is_tried_is_put_back_without_a_step(session: Session):
    job = session.job
    session.try_job(with_value(job, "opening.width", 40.0))
    session.put_back()
    assert session.job is job
    assert not session.is_trying
    assert not session.stack.canUndo()


def test_trying_that_leads_nowhere_is_no_step(session: Session):
    job = session.job
    session.try_job(with_value(job, "opening.width", 40.0))
    session.try_job(job)
    session.take("opening.width")
    assert not session.stack.canUndo()
    assert not session.is_unsaved


def test_any_step_ends_what_is_tried(session: Session):
    session.set_text("opening.height", "30")
    for act in (
        lambda: session.set_text("opening.height", "31"),
        session.undo,
        session.redo,
        lambda: session.open(default_job(), None),
    ):
        session.try_job(with_value(session.job, "opening.width", 40.0))
        act()
        assert not session.is_trying
        assert _width(session) == 36


def test_the_state_before_is_that_of_the_last_step_or_of_what_is_tried(session: Session):
    assert session.before is None
    session.set_text("opening.width", "40")
    session.set_text("opening.width", "50")
    assert session.before is not None
    assert session.before.site.opening.width == 40
    session.try_job(with_value(session.job, "opening.width", 60.0))
    assert session.before.site.opening.width == 50
    session.put_back()
    session.undo()
    session.undo()
    assert session.before is None
