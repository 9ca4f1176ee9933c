"""What waits for the time between two moves is done where it fits, and at the latest when it must be."""

from __future__ import annotations

import pytest

from app import between_moves
from app.between_moves import BEAT, BetweenMoves


class Clock:
    """A clock that goes on when it is told to."""

    def __init__(self) -> None:
        self.now = 100.0

    def __call__(self) -> float:
        return self.now


@pytest.fixture
def clock(monkeypatch: pytest.MonkeyPatch) -> Clock:
    clock = Clock()
    monkeypatch.setattr(between_moves, "perf_counter", clock)
    return clock


class Work:
    """Takes so many seconds by the clock each time; counts how often it was done."""

    def __init__(self, clock: Clock, seconds: float) -> None:
        self.clock, self.seconds, self.count = clock, seconds, 0

    def __call__(self) -> None:
        self.clock.now += self.seconds
        self.count += 1


def _move_and_paint(between: BetweenMoves, clock: Clock, seconds: float) -> None:
    """A move whose painting takes so long, and what is done before the next one."""
    start = clock.now
    between.note_move()
    clock.now += seconds
    between.use()
    clock.now = max(clock.now, start + BEAT)


def test_nothing_is_done_that_was_not_asked_for(clock: Clock):
    between, work = BetweenMoves(), Work(clock, 0.001)
    between.add(work, 0.05)
    _move_and_paint(between, clock, 0.005)
    assert work.count == 0


def test_what_fits_before_the_next_move_is_done_with_every_move(clock: Clock):
    between, work = BetweenMoves(), Work(clock, 0.004)
    waiting = between.add(work, 0.05)
    for _ in range(5):
        waiting.ask()
        _move_and_paint(between, clock, 0.010)
    assert work.count == 5


def test_what_does_not_fit_holds_up_a_move_no_more_often_than_it_must(clock: Clock):
    between, work = BetweenMoves(), Work(clock, 0.009)
    waiting = between.add(work, 0.045)
    waiting.ask()
    _move_and_paint(between, clock, 0.010)  # how long it takes is not known yet
    counts = []
    for _ in range(6):
        waiting.ask()
        _move_and_paint(between, clock, 0.010)
        counts.append(work.count - 1)
    assert counts == [0, 0, 0, 1, 1, 1]


def test_what_can_wait_least_goes_first_and_the_rest_only_where_it_still_fits(clock: Clock):
    between = BetweenMoves()
    patient, pressing = Work(clock, 0.004), Work(clock, 0.004)
    waiting = between.add(patient, 0.2), between.add(pressing, 0.05)
    for each in waiting:
        each.takes = 0.004
        each.ask()
    _move_and_paint(between, clock, 0.010)
    assert (patient.count, pressing.count) == (0, 1)
    _move_and_paint(between, clock, 0.010)
    assert (patient.count, pressing.count) == (1, 1)


def test_of_what_cannot_wait_for_longer_only_one_thing_holds_up_a_move(clock: Clock):
    between = BetweenMoves()
    works = [Work(clock, 0.008) for _ in range(3)]
    for work in works:
        waiting = between.add(work, 0.0)
        waiting.takes = 0.008
        waiting.ask()
    totals = []
    for _ in range(4):
        _move_and_paint(between, clock, 0.012)
        totals.append(sum(work.count for work in works))
    assert totals == [1, 2, 3, 3]


def test_what_leads_to_painting_needs_time_for_that_too(clock: Clock):
    between, work = BetweenMoves(), Work(clock, 0.003)
    waiting = between.add(work, 0.2, leads_to=0.004)
    waiting.takes = 0.003
    waiting.ask()
    _move_and_paint(between, clock, 0.010)
    assert work.count == 0
    _move_and_paint(between, clock, 0.006)
    assert work.count == 1


def test_what_is_not_to_come_so_often_waits_although_it_would_fit(clock: Clock):
    between, work = BetweenMoves(), Work(clock, 0.001)
    waiting = between.add(work, latest=0.2, soonest=0.04)
    counts = []
    for _ in range(6):
        waiting.ask()
        _move_and_paint(between, clock, 0.005)
        counts.append(work.count)
    assert counts == [0, 0, 0, 1, 1, 1]


def test_what_was_dropped_is_not_done(clock: Clock):
    between, work = BetweenMoves(), Work(clock, 0.001)
    waiting = between.add(work, 0.05)
    waiting.ask()
    waiting.drop()
    _move_and_paint(between, clock, 0.005)
    assert work.count == 0
    assert not waiting.is_asked


def test_one_slow_time_is_forgotten(clock: Clock):
    between, work = BetweenMoves(), Work(clock, 0.060)
    waiting = between.add(work, 0.02)
    waiting.ask()
    _move_and_paint(between, clock, 0.005)
    work.seconds = 0.002
    for _ in range(12):
        waiting.ask()
        _move_and_paint(between, clock, 0.005)
        _move_and_paint(between, clock, 0.005)
    assert waiting.takes < 0.006
