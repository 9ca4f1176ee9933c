"""Values of strategies by number, one at a time, without a search for simpler ones round each."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from random import Random
from typing import Any, TypeVar

from hypothesis import strategies as st
from hypothesis.control import BuildContext
from hypothesis.errors import StopTest, UnsatisfiedAssumption
from hypothesis.internal.conjecture.data import ConjectureData

import tests.conftest  # noqa: F401  numbers that stand in the code are not drawn more often
from model.job import Job
from tests.strategies import jobs

T = TypeVar("T")


class Drawing:
    """Values that are drawn one after another; begun with the same words, they are the same ones."""

    def __init__(self, *words: object) -> None:
        self._data = ConjectureData(random=Random(" ".join(map(str, words))))

    def draw(self, strategy: st.SearchStrategy[T]) -> T:
        """The next value. Raises UnsatisfiedAssumption where what was drawn before leads to none."""
        try:
            return self._data.draw(strategy)
        except StopTest as stop:
            raise UnsatisfiedAssumption from stop

    @contextmanager
    def going_on(self) -> Iterator[None]:
        """While this lasts, a test may draw more values itself."""
        with BuildContext(self._data, wrapped_test=self.draw):
            yield


def draw_design(number: int) -> Job:
    """The design that goes with a number, in every run as long as the rows and their bounds are the same."""
    drawing: Any = Drawing("design", number)
    with drawing.going_on():
        design: Job = drawing.draw(jobs())
    return design
