"""Which changes of a job are another question about the boards it takes."""

from __future__ import annotations

from dataclasses import replace

import pytest

from model.bare import bare_job
from model.job import default_job, with_value
from model.photo.stored import WallPhoto

PHOTO = WallPhoto(400, 300, ((100, 200), (200, 200), (200, 100), (100, 100)), kept="aGVhcnRo")


def test_what_is_offered_and_seen_makes_no_other_boards():
    job = default_job()
    dearer = replace(with_value(job, "offer.margin", 10), photo=PHOTO)
    assert dearer != job
    assert bare_job(dearer) == bare_job(job)


@pytest.mark.parametrize(("path", "value"), [("column.width", 8.0), ("opening.width", 40.0)])
def test_a_size_makes_others(path: str, value: float):
    job = default_job()
    assert bare_job(with_value(job, path, value)) != bare_job(job)


def test_a_bare_job_is_bare_already():
    bare = bare_job(default_job())
    assert bare_job(bare) == bare
