"""Options in a job file: a file with one design stays as it was; what is wrong is named by its path."""

from __future__ import annotations

import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from model.errors import JobRefused
from model.job import ONE_DESIGN, Job, default_job, list_own_rows, read_job, with_value, write_job
from model.options import (
    MOST_OPTIONS,
    MOST_THROWN,
    add_option,
    bring_back,
    duplicate,
    rename,
    take_up,
    throw_away,
)
from tests.strategies import jobs


def _three() -> Job:
    job = rename(with_value(default_job(), "column.width", 7), 0, "Seven")
    job = add_option(with_value(job, "offer.colour", "white"))
    job = add_option(with_value(rename(job, 1, "Eight"), "column.width", 8))
    return throw_away(take_up(job, 1), 2)


def _faults(entries: object, **groups: object) -> tuple[str, ...]:
    with pytest.raises(JobRefused) as caught:
        read_job(json.dumps({"mantelwright": 2, "options": entries, **groups}))
    return caught.value.faults


def test_a_job_with_one_design_is_written_as_before_there_were_options():
    data = json.loads(write_job(default_job()))
    assert data["mantelwright"] == ONE_DESIGN == 1
    assert "options" not in data


def test_all_options_come_back_in_order_with_those_thrown_away():
    job = _three()
    text = write_job(job)
    assert json.loads(text)["mantelwright"] == 2
    assert read_job(text) == job
    assert write_job(read_job(text)) == text
    assert bring_back(read_job(text), 0).options.names == ("Seven", "Eight", "Option 3")


def test_an_entry_holds_only_the_rows_that_are_an_options_own():
    first, in_work, thrown = json.loads(write_job(_three()))["options"]
    assert in_work == {"name": "Eight", "in_work": True}
    assert thrown["thrown_away"] is True
    assert "opening" not in first
    assert first["column"]["width"] == 7
    assert set(first["offer"]) == {row.path.split(".")[1] for row in list_own_rows() if row.group == "Offer"}


@settings(max_examples=15)
@given(st.lists(jobs(), min_size=1, max_size=4), st.integers(0, 3))
def test_whatever_the_designs_are_they_read_back(drawn, place):
    job = drawn[0]
    for i, other in enumerate(drawn[1:]):
        from dataclasses import replace

        job = replace(duplicate(job, i), design=other.design)
    job = take_up(job, place % job.options.count)
    assert read_job(write_job(job)) == job


def test_a_name_alone_is_kept():
    job = rename(default_job(), 0, "As built")
    assert read_job(write_job(job)) == job


def test_a_missing_row_takes_its_default_in_an_option_too():
    job = read_job(
        json.dumps({"mantelwright": 2, "options": [{"name": "A"}, {"name": "B", "in_work": True}]})
    )
    assert take_up(job, 0).design == default_job().design
    assert job.options.names == ("A", "B")


@pytest.mark.parametrize(
    ("entries", "fault"),
    [
        ({}, "options {}: write a list"),
        ([], "options []: write a list"),
        (None, "options null: write a list"),
        ([{"name": "A"}], "options: 0 of them are in work"),
        ([{"name": "A", "in_work": True}, {"name": "B", "in_work": True}], "options: 2 of them are in work"),
        ([3, {"name": "A", "in_work": True}], "options[0] 3: write an object"),
        ([{"in_work": True}], "options[0].name: option name null: write a line of text"),
        ([{"name": "", "in_work": True}], 'options[0].name: option name "": write a name'),
        ([{"name": "A", "in_work": True}, {"name": "a"}], 'options[1].name: option name "a": another option'),
        ([{"name": "x" * 61, "in_work": True}], "write at most 60 characters"),
        ([{"name": "A", "in_work": 1}], "options[0].in_work 1: write true or leave it out"),
        ([{"name": "A", "in_work": True, "thrown_away": True}], "options[0]: it cannot be in work and"),
        ([{"name": "A", "in_work": True, "column": {"width": 7}}], "options[0]: it is in work, so its rows"),
        (
            [{"name": "A", "in_work": True}, {"name": "B", "column": {"width": 900}}],
            "options[1].column.width: column width 900: write a length",
        ),
        (
            [{"name": "A", "in_work": True}, {"name": "B", "column": {"wdith": 7}}],
            "options[1].column.wdith: not known here; did you mean column.width",
        ),
        (
            [{"name": "A", "in_work": True}, {"name": "B", "opening": {"width": 36}}],
            "options[1].opening.width: not known here",
        ),
        ([{"name": "A", "in_work": True}, {"name": "B", "column": 3}], "options[1].column 3: write an"),
        ([{"name": "A", "in_work": True}, {"name": "B", "cellar": {}}], "options[1].cellar: not known here"),
    ],
)  # fmt: skip
def test_what_is_wrong_is_named_by_its_path(entries, fault: str):
    assert any(fault in each for each in _faults(entries)), _faults(entries)


def test_faults_of_options_and_of_the_design_in_work_are_told_together():
    entries = [{"name": "A", "in_work": True}, {"name": "B", "column": {"width": -1}}]
    assert len(_faults(entries, opening={"width": 1})) == 2


@pytest.mark.parametrize(("mark", "most"), [({}, MOST_OPTIONS), ({"thrown_away": True}, MOST_THROWN)])
def test_more_than_a_job_holds_are_refused(mark, most: int):
    entries = [{"name": "first", "in_work": True}, *({"name": f"n{i}", **mark} for i in range(most + 1))]
    assert any("keep at most" in fault or "at most" in fault for fault in _faults(entries))


def test_those_thrown_away_may_be_called_alike():
    entries = [
        {"name": "A", "in_work": True},
        {"name": "A", "thrown_away": True},
        {"name": "A", "thrown_away": True},
    ]
    job = read_job(json.dumps({"mantelwright": 2, "options": entries}))
    assert [each.name for each in job.options.thrown] == ["A", "A"]
    assert read_job(write_job(job)) == job
