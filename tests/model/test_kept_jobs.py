"""Job files of every age are read: what they say holds, what they could not say takes its default.

The files in ``tests/kept_jobs`` were written by the program as it was: ``1-1`` by the first one that shipped
jobs, later ones as rows were added, ``2-1`` by the first with options and a photo. A new format adds a file
and takes none away.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from model.errors import JobRefused
from model.job import (
    FORMAT_KEY,
    FORMAT_VERSION,
    Job,
    list_stored,
    read_job,
    read_job_and_missing,
    read_value,
    write_job,
)
from model.options import list_options, take_up
from model.surround import plan_surround

FOLDER = Path(__file__).parents[1] / "kept_jobs"
KEPT = sorted(FOLDER.glob("*.mantel"))
NOT_ROWS = {FORMAT_KEY, "options", "photo", "purchase"}


def _values(data: dict[str, Any]) -> dict[str, Any]:
    """What a file says, by path."""
    groups = {first: fields for first, fields in data.items() if first not in NOT_ROWS}
    return {f"{first}.{last}": value for first, fields in groups.items() for last, value in fields.items()}


def _plain(value: Any) -> Any:
    """As JSON has it."""
    return [_plain(part) for part in value] if isinstance(value, (tuple, list)) else value


@pytest.mark.parametrize("path", KEPT, ids=lambda path: path.stem)
def test_what_a_kept_file_says_holds(path: Path):
    text = path.read_bytes()
    job, missing = read_job_and_missing(text)
    said = _values(json.loads(text))
    for name, value in said.items():
        assert _plain(read_value(job, name)) == value, name
    defaults = {row.path: row.default for row in missing}
    assert not set(defaults) & set(said)
    for name, value in defaults.items():
        assert read_value(job, name) == value, name
    assert set(defaults) | set(said) >= {row.path for row in list_stored()}


@pytest.mark.parametrize("path", KEPT, ids=lambda path: path.stem)
def test_a_kept_file_is_built_and_is_written_as_one_of_today(path: Path):
    job = read_job(path.read_bytes())
    assert plan_surround(job).boards
    assert read_job(write_job(job)) == job


def test_every_format_there_ever_was_has_a_kept_file():
    versions = {json.loads(path.read_bytes())[FORMAT_KEY] for path in KEPT}
    assert versions == set(range(1, FORMAT_VERSION + 1))
    assert all(path.stem.split("-")[0] == str(json.loads(path.read_bytes())[FORMAT_KEY]) for path in KEPT)


def test_options_and_photo_of_a_kept_file_are_there():
    job = read_job((FOLDER / "2-1.mantel").read_bytes())
    assert [option.name for option in list_options(job)] == ["Framed", "Plain"]
    assert _kinds(job) == ["framed", "plain"]
    assert len(job.options.thrown) == 1
    assert job.photo is not None
    assert job.photo.file == "wall.jpg"


def _kinds(job: Job) -> list[str]:
    return [take_up(job, place).design.column.kind for place in range(2)]


def test_a_file_of_a_later_format_is_refused_and_left():
    later = json.dumps({FORMAT_KEY: FORMAT_VERSION + 1, "opening": {"width": 36}})
    with pytest.raises(JobRefused, match="written by a newer program"):
        read_job(later)
