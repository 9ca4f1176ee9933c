"""A disk that takes no more, for tests of what is told and kept then."""

from __future__ import annotations

import resource
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def files_no_larger_than(size: int) -> Iterator[None]:
    """The system refuses to write more, as a full disk does."""
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (size, hard))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))
