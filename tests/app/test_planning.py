"""Planning in a process of its own: it answers, hears that it is enough, and prefers a newer question."""

from __future__ import annotations

import errno
from multiprocessing import Pipe
from threading import Thread

import pytest
from pytestqt.qtbot import QtBot

from app.demo import read_demo
from app.planning import Planning
from app.planning_process import Planned, Question, Stop, Told, serve
from app.stock_lists import read_shipped_list
from model.cutting.stock_list import StockList
from model.job import default_job

PATIENCE = 60_000


@pytest.fixture
def pipe():
    """The asking end of a pipe that is served, and closed after."""
    ours, theirs = Pipe()
    server = Thread(target=serve, args=(theirs,))
    server.start()
    yield ours
    ours.close()
    server.join(20)
    assert not server.is_alive()
    theirs.close()


def _answer(pipe) -> Planned:
    while isinstance(message := pipe.recv(), Told):
        pass
    assert isinstance(message, Planned)
    return message


def test_a_question_is_answered_with_its_plan(pipe):
    pipe.send(Question(7, "bedroom", read_demo("bedroom"), read_shipped_list("example")))
    answer = _answer(pipe)
    assert (answer.number, answer.trouble) == (7, "")
    assert answer.plan.cost > 0
    assert answer.plan.order.jobs == ("bedroom",)


def test_a_plan_is_shown_soon_and_a_better_one_follows(pipe):
    pipe.send(Question(1, "brick", read_demo("brick"), read_shipped_list("example")))
    first = _answer(pipe)
    assert first.may_improve
    assert {g.group.is_sheet for g in first.plan.groups} == {True, False}
    pipe.send(Stop())
    last = _answer(pipe)
    assert not last.may_improve
    assert last.plan.bound <= last.plan.cost <= first.plan.cost


def test_enough_brings_the_best_plan_so_far(pipe):
    pipe.send(Question(1, "brick", read_demo("brick"), read_shipped_list("example")))
    pipe.send(Stop())
    answer = _answer(pipe)
    assert answer.plan.cost >= answer.plan.bound
    assert not answer.plan.short


def test_a_newer_question_takes_the_place_of_the_one_at_hand(pipe):
    stock_list = read_shipped_list("example")
    pipe.send(Question(1, "brick", read_demo("brick"), stock_list))
    pipe.send(Question(2, "bedroom", read_demo("bedroom"), stock_list))
    answer = _answer(pipe)
    assert answer.number == 2
    assert answer.plan.order.jobs == ("bedroom",)


def test_an_empty_list_is_answered_with_what_could_not_be_had(pipe):
    pipe.send(Question(1, "job", default_job(), StockList()))
    answer = _answer(pipe)
    assert answer.plan.short
    assert not answer.plan.sawn


def test_planning_that_is_killed_says_so_and_starts_again(qtbot: QtBot):
    planning = Planning()
    job, stock_list = read_demo("brick"), read_shipped_list("example")
    try:
        planning.ask("brick", job, stock_list)
        with qtbot.waitSignal(planning.failed, timeout=PATIENCE):
            planning._process._process.kill()
        assert not planning.is_busy
        with qtbot.waitSignal(planning.planned, timeout=PATIENCE) as planned:
            planning.ask("brick", job, stock_list)
            planning.stop()
        assert planned.args[0].cost > 0
    finally:
        planning.end()


def test_the_same_question_is_asked_once(qtbot: QtBot):
    planning = Planning()
    job, stock_list = read_demo("bedroom"), read_shipped_list("example")
    try:
        assert planning.ask("bedroom", job, stock_list)
        assert not planning.ask("bedroom", job, stock_list)
    finally:
        planning.end()


def test_planning_that_cannot_be_started_says_why_and_is_tried_again(qapp, monkeypatch):
    planning, troubles = Planning(), []
    planning.failed.connect(troubles.append)
    job, stock_list = read_demo("bedroom"), read_shipped_list("example")

    def refuse(_message: object) -> None:
        raise OSError(errno.EAGAIN, "Resource temporarily unavailable")

    monkeypatch.setattr(planning._process, "send", refuse)
    assert planning.ask("bedroom", job, stock_list)
    assert troubles == ["no process could be started for it: Resource temporarily unavailable"]
    assert not planning.is_busy
    assert planning.ask("bedroom", job, stock_list)
