"""When Python looks through all that is in memory for rings of waste, and when it does not. No work here."""

from __future__ import annotations

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
            gc.enable()
