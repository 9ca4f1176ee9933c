"""The jobs that are shipped, by name. All are invented; what is in them stands in assets/jobs."""

from __future__ import annotations

from difflib import get_close_matches
from importlib.resources import files
from pathlib import Path

from model.errors import Refused
from model.job import Job, read_job

DEFAULT = "demo"
"""Another name for the first of `list_demos`."""
_NAMES = ("brick", "bedroom", "gas", "too-close")
"""The first three keep within their rules; the last is there to show what the checks say."""


def list_demos() -> tuple[str, ...]:
    """Names of the shipped jobs, the one that DEFAULT stands for first."""
    return _NAMES


def names_demo(name: str) -> bool:
    """Whether `name` means a shipped job: a file of that name comes first, on the command line as well."""
    return name in (DEFAULT, *_NAMES) and not Path(name).is_file()


def read_demo(name: str = DEFAULT) -> Job:
    """The shipped job of that name. Raises Refused, with the names there are, for any other."""
    if name not in (DEFAULT, *_NAMES):
        near = get_close_matches(name, _NAMES, n=1)
        raise Refused("shipped job", name, f"write {near[0] if near else ', '.join((DEFAULT, *_NAMES))}")
    stored = _NAMES[0] if name == DEFAULT else name
    return read_job(files("assets").joinpath("jobs", f"{stored}.mantel").read_bytes())
