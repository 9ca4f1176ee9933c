"""Long work runs beside the window, tells how far it is, and can be stopped."""

from __future__ import annotations

import threading

import pytest

from app.work import Work
from export.progress import Step


@pytest.fixture
def work(qapp) -> Work:
    return Work()


def test_the_result_comes_back_after_what_was_told(work: Work, qtbot):
    told: list[tuple[float, str]] = []
    work.told.connect(lambda done, words: told.append((done, words)))

    def count(step: Step) -> int:
        step(0.25, "one")
        step(0.75, "two")
        return 7

    with qtbot.waitSignal(work.done) as done:
        work.start(count)
    assert done.args == [7]
    assert told == [(0.25, "one"), (0.75, "two")]
    assert not work.is_busy


def test_it_runs_beside_the_window(work: Work, qtbot):
    with qtbot.waitSignal(work.done) as done:
        work.start(lambda _step: threading.current_thread() is threading.main_thread())
    assert done.args == [False]


def test_stopping_ends_it_at_the_next_step(work: Work, qtbot):
    reached = threading.Event()
    released = threading.Event()
    went_on = []

    def wait(step: Step) -> None:
        reached.set()
        released.wait(5)
        step(0.5, "half")
        went_on.append(True)

    work.start(wait)
    assert reached.wait(5)
    with qtbot.waitSignal(work.stopped):
        work.stop()
        released.set()
    assert went_on == []


def test_what_goes_wrong_is_handed_on(work: Work, qtbot):
    def fail(_step: Step) -> None:
        raise ValueError("bad")

    with qtbot.waitSignal(work.failed) as failed:
        work.start(fail)
    assert isinstance(failed.args[0], ValueError)
    assert not work.is_busy


def test_one_thing_at_a_time(work: Work, qtbot):
    go_on = threading.Event()
    work.start(lambda _step: go_on.wait(5))
    with pytest.raises(RuntimeError):
        work.start(lambda _step: None)
    with qtbot.waitSignal(work.done):
        go_on.set()


def test_waiting_stops_what_runs(work: Work):
    def count(step: Step) -> None:
        while True:
            step(0.0, "on and on")

    work.start(count)
    work.wait()
    assert not work.is_busy
