"""What is put off while a hand moves an edge, and done between two moves where there is time for it.

What it is that waits, and what is done once the hand rests, is said by those who put it off.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from time import perf_counter

BEAT = 1 / 60
"""Seconds from one move of a hand to the next."""
SPARE = 0.0015
"""Seconds left clear before the next move: nothing takes exactly as long as it did before."""
FADING = 0.8
"""What is left, each time, of how long something took when it took longest."""
NEVER = float("inf")


@dataclass(slots=True)
class Waiting:
    """Something put off: no sooner than `soonest` after it was asked for, whatever comes `latest` after.

    Seconds. `takes` is about how long it took lately, 0 before the first time, `leads_to` how long what it
    leads to takes after it, such as painting.
    """

    act: Callable[[], object]
    latest: float
    soonest: float = 0.0
    leads_to: float = 0.0
    takes: float = 0.0
    since: float = NEVER

    def ask(self) -> None:
        """It is wanted; from when it was first, where it is wanted already."""
        self.since = min(self.since, perf_counter())

    def drop(self) -> None:
        """It is not wanted any more."""
        self.since = NEVER

    @property
    def is_asked(self) -> bool:
        """Whether it waits."""
        return self.since < NEVER

    def slack(self, now: float) -> float:
        """How long it can wait yet; less than nothing where it should be done by now."""
        return self.since + self.latest - now

    def do(self) -> None:
        """Do it now, and keep in mind how long that took."""
        self.drop()
        start = perf_counter()
        self.act()
        self.takes = max(perf_counter() - start, FADING * self.takes)


class BetweenMoves:
    """What waits, and how long it is to the next move."""

    def __init__(self) -> None:
        self._all: list[Waiting] = []
        self._next = 0.0

    def add(
        self, act: Callable[[], object], latest: float, soonest: float = 0.0, leads_to: float = 0.0
    ) -> Waiting:
        """Something that can be put off."""
        waiting = Waiting(act, latest, soonest, leads_to)
        self._all.append(waiting)
        return waiting

    def note_move(self) -> None:
        """A move has come: the next one is due a beat from here."""
        self._next = perf_counter() + BEAT

    def use(self) -> None:
        """Do what there is time for before the next move, what can wait least first.

        Of what cannot wait for longer, one thing is done though there is no time: not all in one go.
        """
        now = perf_counter()
        due = [each for each in self._all if now - each.since >= each.soonest]
        can_hold_up = True
        for each in sorted(due, key=lambda each: each.slack(now)):
            now = perf_counter()
            fits = each.takes + each.leads_to <= self._next - SPARE - now
            if fits or (can_hold_up and each.slack(now) <= 0):
                can_hold_up = can_hold_up and fits
                each.do()
