"""When Python looks through all that is in memory for rings of waste, and when it does not. No work here."""

from __future__ import annotations

import atexit
import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def unswept() -> Iterator[None]:
    """While open, no waste is looked for, as it was before afterwards, also after an error or Ctrl-C.

    For work that makes hundreds of thousands of values and ends soon, and while a hand moves an edge: they
    would be looked through again and again, a twentieth of its time. What is in no ring goes at once all the
    same.
    """
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            _count_as_old()
            gc.enable()


def _count_as_old() -> None:
    """What was made meanwhile would be looked through at once now; so it is left to the next look at all."""
    if not gc.get_freeze_count():
        gc.freeze()
        gc.unfreeze()


def end_unswept() -> None:
    """When the program ends, waste is not looked for once more: all memory goes back at once, in a fifth of
    the time. Nothing that must still be done may hang on it; files are closed by whoever wrote them.
    """
    atexit.register(gc.freeze)
