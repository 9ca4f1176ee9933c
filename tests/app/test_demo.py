"""The shipped jobs: whole files, buildable as asked, and within their rules except the one that is not."""

from __future__ import annotations

from importlib.resources import files

import pytest

from app.demo import DEFAULT, list_demos, read_demo
from model.check.all import check_surround
from model.check.finding import Finding, Status
from model.errors import Refused
from model.job import Job, write_job
from model.surround import plan_surround

TOO_CLOSE = "too-close"
KEEPING = tuple(name for name in list_demos() if name != TOO_CLOSE)


def _list_findings(name: str) -> tuple[Finding, ...]:
    return check_surround(plan_surround(read_demo(name)))


def test_demo_is_the_first_of_them():
    assert read_demo() == read_demo(DEFAULT) == read_demo(list_demos()[0])


def test_every_shipped_file_has_a_name_to_ask_for_it_by():
    stored = {path.name for path in files("assets").joinpath("jobs").iterdir()}
    assert stored == {f"{name}.mantel" for name in list_demos()}


@pytest.mark.parametrize("name", list_demos())
def test_the_file_is_what_saving_the_job_would_write(name: str):
    stored = files("assets").joinpath("jobs", f"{name}.mantel").read_text("utf-8")
    assert write_job(read_demo(name)) == stored


@pytest.mark.parametrize("name", list_demos())
def test_the_job_says_that_it_is_invented(name: str):
    about = read_demo(name).about
    assert "invented" in about.notes.lower()
    assert "invented" in about.client.lower()


@pytest.mark.parametrize("name", list_demos())
def test_everything_is_built_as_asked(name: str):
    assert plan_surround(read_demo(name)).layout.shortfalls == ()


@pytest.mark.parametrize("name", KEEPING)
def test_no_check_fails(name: str):
    assert [f.message for f in _list_findings(name) if f.status is Status.FAIL] == []


@pytest.mark.parametrize("name", KEEPING)
def test_clearance_and_hearth_are_known_and_within(name: str):
    found = {f.status for f in _list_findings(name) if f.limit is not None}
    assert Status.PASS in found
    assert Status.UNKNOWN not in found


def test_too_close_fails_in_several_ways_and_says_what_would_cure_each():
    failing = [f for f in _list_findings(TOO_CLOSE) if f.status is Status.FAIL]
    assert len({(f.check, f.part) for f in failing}) >= 3
    assert len({f.check for f in failing}) >= 2
    for finding in failing:
        assert finding.cure
        assert finding.source


def test_the_jobs_differ_in_size_and_character():
    jobs = [read_demo(name) for name in KEEPING]
    assert len({job.about.units for job in jobs}) == len(jobs)
    assert len({job.site.fireplace for job in jobs}) > 1
    widths = sorted(_find_width(job) for job in jobs)
    assert widths[-1] > 1.3 * widths[0]


def _find_width(job: Job) -> float:
    return 2 * plan_surround(job).layout.right.shelf_side


def test_another_name_is_refused_with_the_names_there_are():
    with pytest.raises(Refused, match="write too-close"):
        read_demo("too-clos")
    with pytest.raises(Refused, match="demo, brick, bedroom, gas, too-close"):
        read_demo("xyz")
