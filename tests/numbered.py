"""Random values by number, the same in every run, for benches that go through many of them in slices."""

from __future__ import annotations

from typing import TypeVar

from hypothesis import HealthCheck, Phase, given, seed, settings
from hypothesis import strategies as st

T = TypeVar("T")
DRAWN = 4
"""How many values are drawn for a number; the last is taken, since the first ones are simple."""


def draw_numbered(strategy: st.SearchStrategy[T], number: int) -> T:
    """The value of a strategy that goes with a number."""
    found: list[T] = []

    @seed(number)
    @settings(
        max_examples=DRAWN,
        database=None,
        deadline=None,
        phases=[Phase.generate],
        suppress_health_check=list(HealthCheck),
    )
    @given(strategy)
    def keep(value: T) -> None:
        found.append(value)

    keep()
    return found[-1]
