"""Random values by number, the same in every run, and the slice of them that a bench is asked for."""

from __future__ import annotations

import sys
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


def read_slice(count: int) -> tuple[int, int]:
    """How many values the command line asks for, `count` if it does not say, and after how many others."""
    numbers = [int(word) for word in sys.argv[1:] if word.isdigit()]
    return numbers[0] if numbers else count, numbers[1] if len(numbers) > 1 else 0
