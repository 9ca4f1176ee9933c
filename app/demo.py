"""The jobs that are shipped, by name. All are invented; what is in them stands in assets/jobs.

The window asks for names before it can read a job, so that what reads one is loaded with the first.
"""

from __future__ import annotations

import os
from typing import TYPE_CHECKING, NoReturn

if TYPE_CHECKING:
    from model.job import Job

DEFAULT = "demo"
"""Another name for the first of `list_demos`."""
_NAMES = ("brick", "bedroom", "gas", "too-close")
"""The first three keep within their rules; the last is there to show what the checks say."""


def list_demos() -> tuple[str, ...]:
    """Names of the shipped jobs, the one that DEFAULT stands for first."""
    return _NAMES


def names_demo(name: str) -> bool:
    """Whether `name` means a shipped job: a file of that name comes first, on the command line as well."""
    return name in (DEFAULT, *_NAMES) and not os.path.isfile(name)


def read_demo(name: str = DEFAULT) -> Job:
    """The shipped job of that name. Raises Refused, with the names there are, for any other."""
    from importlib.resources import files

    from model.job import read_job

    if name not in (DEFAULT, *_NAMES):
        _refuse(name)
    stored = _NAMES[0] if name == DEFAULT else name
    return read_job(files("assets").joinpath("jobs", f"{stored}.mantel").read_bytes())


def _refuse(name: str) -> NoReturn:
    from difflib import get_close_matches

    from model.errors import Refused

    near = get_close_matches(name, _NAMES, n=1)
    raise Refused("shipped job", name, f"write {near[0] if near else ', '.join((DEFAULT, *_NAMES))}")
