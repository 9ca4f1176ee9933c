"""A value without a say changes nothing that is built or found, and is named as such."""

from __future__ import annotations

import pytest

from model.check.all import check_surround
from model.idle import list_idle
from model.job import Job, default_job, with_value
from model.surround import plan_surround

CHANGED = {
    "chart.shelf": ((0.75, 30.0),),
    "chart.legs": ((0.75, 30.0),),
    "chart.source": "another page",
    "bed_mould.size": 4.0,
    "job.precision": "32",
}


def _outcome(job: Job) -> object:
    surround = plan_surround(job)
    return surround.boards, check_surround(surround)


def _job(**values: object) -> Job:
    job = default_job()
    for path, value in values.items():
        job = with_value(job, path.replace("__", "."), value)
    return job


@pytest.mark.parametrize(
    ("job", "idle"),
    [
        (_job(), {"chart.shelf", "chart.legs", "chart.source"}),
        (_job(site__rule="manual"), set()),
        (_job(site__rule="manual", bed_mould__on=False), {"bed_mould.size"}),
        (_job(site__rule="manual", job__units="millimetres"), {"job.precision"}),
    ],
)
def test_idle_rows_are_named_and_have_no_say(job: Job, idle: set[str]):
    assert list_idle(job) == idle
    for path in idle:
        assert _outcome(with_value(job, path, CHANGED[path])) == _outcome(job), path


def test_a_row_that_is_not_idle_has_a_say():
    job = _job(site__rule="manual")
    for path in ("chart.shelf", "chart.legs", "bed_mould.size"):
        assert _outcome(with_value(job, path, CHANGED[path])) != _outcome(job), path
