"""A second process does what is asked of it; whatever becomes of it, the work is done and nothing is left."""

from __future__ import annotations

import os
import time
from multiprocessing import active_children
from multiprocessing.context import SpawnProcess

import pytest

from app import second_process
from app.demo import read_demo
from app.outputs import DRAWINGS, LIST, LISTS, PACKET, build_outputs, open_second_for
from app.second_process import SecondProcess, open_second
from export.progress import Cancelled

SET = (PACKET, *DRAWINGS, LIST)


def _nothing() -> None:
    """Nobody watches."""


def _say_where(word: str) -> tuple[str, int]:
    return word, os.getpid()


def _fail_beside(first: int, deadly: bool) -> int:
    if os.getpid() != first:
        if deadly:
            os._exit(1)
        raise ValueError("only here")
    return first


def test_things_are_done_elsewhere_and_each_gets_its_own_answer():
    with open_second() as second:
        if second is None:
            pytest.skip("one core")
        asked = [second.ask(_say_where, word) for word in "abc"]
        answers = [one.wait(_nothing) for one in asked[::-1]]
        assert [word for word, _ in answers] == ["c", "b", "a"]
        assert asked[0].wait(_nothing) == answers[2]
        (where,) = {place for _, place in answers}
        assert where != os.getpid()
    assert not active_children()


@pytest.mark.parametrize("deadly", [False, True])
def test_what_fails_there_is_done_here(deadly: bool):
    second = SecondProcess()
    try:
        asked = [second.ask(_fail_beside, os.getpid(), deadly) for _ in range(2)]
        assert [one.wait(_nothing) for one in asked] == [os.getpid()] * 2
    finally:
        second.end()


def test_what_fails_everywhere_fails_here_as_it_would_have():
    second = SecondProcess()
    try:
        with pytest.raises(ZeroDivisionError):
            second.ask(divmod, 1, 0).wait(_nothing)
    finally:
        second.end()


def test_who_waits_may_stop_and_the_process_is_gone_at_once():
    start, told = time.monotonic(), 0

    def stop() -> None:
        nonlocal told
        told += 1
        if told > 2:
            raise Cancelled

    second = SecondProcess()
    asked = second.ask(time.sleep, 600)
    with pytest.raises(Cancelled):
        asked.wait(stop)
    second.end()
    assert told == 3
    assert time.monotonic() - start < 60
    assert not active_children()


def test_there_is_none_on_one_core(monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setattr(second_process, "count_cores", lambda: 1)
    with open_second() as second:
        assert second is None


def test_none_is_started_for_what_one_alone_is_soon_done_with():
    with open_second_for(LISTS) as second:
        assert second is None
    assert not active_children()


def test_no_room_for_a_process_is_no_trouble(monkeypatch: pytest.MonkeyPatch):
    def refuse(_process: object) -> None:
        raise BlockingIOError(11, "Resource temporarily unavailable")

    monkeypatch.setattr(SpawnProcess, "start", refuse)
    second = SecondProcess()
    asked = [second.ask(_say_where, "here") for _ in range(2)]
    assert [one.wait(_nothing) for one in asked] == [("here", os.getpid())] * 2
    second.end()


def test_files_are_the_same_whoever_makes_them():
    job, told = read_demo("gas"), list[float]()
    second = SecondProcess()
    try:
        shared = build_outputs(
            job, "letter", "", SET, lambda done, _: told.append(done), dxf_version="R12", second=second
        )
    finally:
        second.end()
    assert shared == build_outputs(job, "letter", "", SET, dxf_version="R12")
    assert told == sorted(told)


@pytest.mark.parametrize("after", [3, 9])
def test_stopping_leaves_no_process(after: int):
    told = 0

    def stop(_done: float, _words: str) -> None:
        nonlocal told
        told += 1
        if told > after:
            raise Cancelled

    with pytest.raises(Cancelled), open_second() as second:
        build_outputs(read_demo("gas"), "letter", "", SET, stop, second=second)
    assert not active_children()
