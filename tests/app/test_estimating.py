"""Options worked out in a process of their own, and what becomes of questions when that process is gone."""

from __future__ import annotations

from pytestqt.qtbot import QtBot

from app.demo import read_demo
from app.estimating import Estimating
from app.estimating_process import Counted
from app.stock_lists import read_shipped_list

PATIENCE = 60_000


def test_a_process_that_went_while_nothing_was_asked_costs_no_answer(qtbot: QtBot):
    estimating = Estimating()
    estimating.use_list(read_shipped_list("example"))
    try:
        with qtbot.waitSignal(estimating.answered, timeout=PATIENCE):
            estimating.ask([read_demo("bedroom")])
        process = estimating._process._process
        process.kill()
        process.join()
        with qtbot.waitSignal(estimating.answered, timeout=PATIENCE):
            estimating.ask([read_demo("brick")])
        assert isinstance(estimating.find(read_demo("brick")), Counted)
    finally:
        estimating.end()


def test_a_process_that_ends_at_work_costs_that_answer_alone(qtbot: QtBot):
    estimating, (first, second) = Estimating(), (read_demo("bedroom"), read_demo("brick"))
    estimating.use_list(read_shipped_list("example"))
    try:
        with qtbot.waitSignal(estimating.answered, timeout=PATIENCE):
            estimating.ask([first, second])
            estimating._process._process.kill()
        assert "ended unexpectedly" in estimating.find(first)
        qtbot.waitUntil(lambda: isinstance(estimating.find(second), Counted), timeout=PATIENCE)
    finally:
        estimating.end()


def test_where_no_process_can_be_started_each_question_is_answered_so(qapp, monkeypatch):
    estimating, jobs = Estimating(), (read_demo("bedroom"), read_demo("brick"))
    estimating.use_list(read_shipped_list("example"))

    def refuse(_message: object) -> None:
        raise OSError

    monkeypatch.setattr(estimating._process, "send", refuse)
    estimating.ask(jobs)
    assert all("ended unexpectedly" in estimating.find(job) for job in jobs)
    assert not estimating.is_busy
