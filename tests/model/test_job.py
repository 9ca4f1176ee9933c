"""A job and its text: what a round trip keeps, what is refused, and how values are set by path."""

from __future__ import annotations

import json
import re
from dataclasses import FrozenInstanceError
from time import process_time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.errors import MOST_FAULTS, JobRefused, MantelwrightError
from model.job import (
    FORMAT_KEY,
    FORMAT_VERSION,
    ONE_DESIGN,
    build_job,
    default_job,
    list_changed,
    list_stored,
    read_job,
    read_job_and_missing,
    read_value,
    with_texts,
    with_value,
    write_job,
)
from model.parameters import BY_PATH, TABLE, Kind
from tests.strategies import jobs, values


def _faults(text: str | bytes) -> tuple[str, ...]:
    with pytest.raises(JobRefused) as caught:
        read_job(text)
    return caught.value.faults


def _text(**groups: object) -> str:
    return json.dumps({FORMAT_KEY: FORMAT_VERSION, **groups})


@given(jobs())
def test_a_written_job_reads_back_as_the_same_job(job):
    text = write_job(job)
    assert read_job(text) == job
    assert read_job(text.encode()) == job
    assert write_job(read_job(text)) == text


def test_the_default_job_is_written_as_it_reads_back():
    text = write_job(default_job())
    assert read_job(text) == default_job()
    assert write_job(read_job(text)) == text


def test_a_job_file_is_plain_json_that_names_the_table_paths():
    data = json.loads(write_job(default_job()))
    assert data.pop(FORMAT_KEY) == ONE_DESIGN
    assert {f"{first}.{last}" for first, fields in data.items() for last in fields} == {
        row.path for row in TABLE if not row.linked
    }
    assert data["opening"]["width"] == 36


def test_a_file_ends_in_a_newline_and_can_be_read_by_a_person():
    text = write_job(default_job())
    assert text.endswith("}\n")
    assert '\n  "opening": {\n    "width": 36.0,' in text


def test_rows_that_are_missing_take_their_default():
    assert read_job(_text()) == default_job()
    assert read_job(_text(opening={"width": 40})) == with_value(default_job(), "opening.width", 40)


def test_every_fault_is_reported_at_once_by_its_path():
    faults = _faults(
        _text(
            opening={"width": 3, "height": "30", "wdith": 30},
            shelf={"depth": 10, "height_from": "ceiling"},
            column={"panels": 2.5},
            bed_mould={"on": 1},
            chart={"shelf": [[1, 8], [1, 9]]},
            plinth=5,
            roof={"pitch": 3},
            cellar={},
        )
    )
    assert [re.split("[: ]", fault)[0] for fault in faults] == [
        "opening.width",
        "opening.height",
        "opening.wdith",
        "shelf.depth",
        "shelf.height_from",
        "column.panels",
        "bed_mould.on",
        "chart.shelf",
        "plinth",
        "roof.pitch",
        "cellar",
    ]
    assert 'opening.width: opening width 3: write a length from 12" to 120"' in faults
    assert "opening.wdith: not known here; did you mean opening.width" in faults
    assert any(f.startswith("plinth ") and "write an object of fields" in f for f in faults)


def test_a_refused_job_names_all_its_faults_in_its_text():
    with pytest.raises(JobRefused) as caught:
        read_job(_text(opening={"width": 3, "height": 3}))
    assert isinstance(caught.value, MantelwrightError)
    assert isinstance(caught.value, ValueError)
    assert str(caught.value).count("\n") == 1


def test_a_file_of_a_newer_version_is_refused_and_left_alone():
    newer = json.dumps({FORMAT_KEY: FORMAT_VERSION + 1, "opening": {"new_field": 3}})
    assert _faults(newer) == (
        f"written by a newer program (file version {FORMAT_VERSION + 1}, this one reads {FORMAT_VERSION}); "
        "left as it is",
    )


@pytest.mark.parametrize("version", ["1", None, 1.5, True, 0, -3, [1], {}])
def test_a_version_that_is_no_whole_number_is_refused(version):
    assert "write a whole version number" in _faults(json.dumps({FORMAT_KEY: version}))[0]


@pytest.mark.parametrize(
    "text",
    [
        "", " ", "{", "}", "[]", "null", "3", '"text"', "{}", '{"opening": {"width": 36}}', "{'a': 1}",
        b"\xff\xfe\x00", b"%PDF-1.7", b"\x89PNG\r\n", b"PK\x03\x04", "\x00", "\ud800",
        '{"mantelwright": NaN}', '{"mantelwright": 1, "opening": {"width": Infinity}}',
        '{"mantelwright": 1e999}', '{"mantelwright": 1} x', "[" * 100000, '{"a":' * 100000,
        '{"mantelwright": 1, "job": {"name": "\\ud800"}}',
        "9" * 5000, '{"mantelwright": 1, "opening": {"width": 1' + "0" * 5000 + "}}",
    ],
)  # fmt: skip
def test_what_is_no_job_file_is_refused_in_words(text):
    faults = _faults(text)
    assert len(faults) == 1
    assert faults[0].startswith("not a job file: ")


def test_deep_nesting_inside_a_field_is_refused_by_its_path():
    deep: object = 1
    for _ in range(200):
        deep = [deep]
    faults = _faults(_text(opening={"width": deep}, chart={"shelf": deep}, job={"name": deep}))
    assert [re.split("[: ]", fault)[0] for fault in faults] == ["opening.width", "chart.shelf", "job.name"]
    assert all(len(fault) < 300 for fault in faults)


def test_a_field_written_twice_is_refused_rather_than_lost():
    twice = '{"mantelwright": 1, "opening": {"width": 36, "width": 40}}'
    assert _faults(twice) == ("width: written twice in one object; keep one of them",)
    groups = '{"mantelwright": 1, "opening": {"width": 36}, "opening": {"height": 30}}'
    assert _faults(groups) == ("opening: written twice in one object; keep one of them",)


def test_a_byte_order_mark_does_not_stop_a_file_from_being_read():
    assert read_job("\ufeff" + write_job(default_job())) == default_job()
    assert read_job(b"\xef\xbb\xbf" + write_job(default_job()).encode()) == default_job()


def test_thousands_of_unknown_fields_are_all_named_in_good_time():
    faults = _faults(_text(opening={f"field_{i}": i for i in range(5000)}))
    assert len(faults) == 5000
    assert max(map(len, faults)) < 200


def test_names_as_long_as_a_book_are_cut_in_messages():
    assert max(map(len, _faults(_text(**{"x" * 10**6: {}, "y" * 10**6: 3, "z" * 10**6: {"w": 1}})))) < 200


@given(st.binary(max_size=60))
def test_any_bytes_are_a_job_or_are_refused(data):
    try:
        job = read_job(data)
    except JobRefused:
        return
    assert read_job(write_job(job)) == job


@given(st.data())
def test_a_damaged_job_text_is_a_job_or_is_refused(data):
    text = write_job(default_job())
    start = data.draw(st.integers(0, len(text)))
    length = data.draw(st.integers(0, 40))
    damaged = text[:start] + data.draw(st.text(max_size=5)) + text[start + length :]
    try:
        job = read_job(damaged)
    except JobRefused:
        return
    assert read_job(write_job(job)) == job


def test_every_stored_row_can_be_set_and_read_by_its_path():
    job = default_job()
    for row in list_stored():
        value = row.highest if row.kind in (Kind.LENGTH, Kind.NUMBER) else row.default
        assert read_value(with_value(job, row.path, value), row.path) == value


@given(st.data(), jobs(), st.sampled_from(list_stored()))
def test_setting_one_row_changes_no_other(data, job, row):
    value = data.draw(values(row))
    changed = with_value(job, row.path, value)
    assert read_value(changed, row.path) == value
    for other in list_stored():
        if other.path != row.path:
            assert read_value(changed, other.path) == read_value(job, other.path)


@given(st.data(), jobs(), st.sampled_from(list_stored()))
def test_every_row_that_reads_otherwise_is_among_those_that_changed(data, job, row):
    after = with_value(job, row.path, data.draw(values(row)))
    changed = list_changed(job, after)
    assert {r.path for r in TABLE if read_value(job, r.path) != read_value(after, r.path)} <= changed
    assert {path.split(".")[0] for path in changed} <= {row.path.split(".")[0], "shelf", "site"}


def test_a_job_is_never_altered_in_place():
    job = default_job()
    with_value(job, "opening.width", 48)
    assert job == default_job()
    with pytest.raises(FrozenInstanceError):
        job.site.opening.width = 3  # type: ignore[misc]


def test_settings_are_read_as_tape_text():
    job = with_texts(
        default_job(), [("opening.width", "3' 6\""), ("site.rule", "irc"), ("bed_mould.on", "no")]
    )
    assert read_value(job, "opening.width") == 42
    assert read_value(job, "site.rule") == "irc"
    assert read_value(job, "bed_mould.on") is False


def test_all_faulty_settings_are_reported_at_once():
    good_and_bad = ["opening.width=3x", "opning.width=36", "shelf.height=55", "shelf.depth=40"]
    with pytest.raises(JobRefused) as caught:
        with_texts(default_job(), [(path, text) for path, text in (s.split("=") for s in good_and_bad)])
    paths = [fault.split(":")[0] for fault in caught.value.faults]
    assert paths == ["opening.width", "opning.width", "shelf.depth"]


def test_shelf_depth_is_another_handle_on_the_front_overhang():
    job = with_texts(
        default_job(), [("column.projection", "5"), ("frieze.projection", "3"), ("shelf.depth", "11")]
    )
    assert read_value(job, "shelf.depth") == 11
    assert read_value(job, "shelf.overhang_front") == 6
    deeper = with_value(job, "shelf.overhang_front", 7)
    assert read_value(deeper, "shelf.depth") == 12


def test_shelf_depth_governs_whatever_the_order_of_settings():
    settings = [("shelf.depth", "11"), ("shelf.overhang_front", "1"), ("column.projection", "5")]
    for order in (settings, settings[::-1]):
        assert read_value(with_texts(default_job(), order), "shelf.depth") == 11


def test_a_shelf_shallower_than_what_it_lies_on_is_refused_with_the_bounds():
    with pytest.raises(JobRefused) as caught:
        with_texts(default_job(), [("shelf.depth", "2")])
    assert caught.value.faults == (
        'shelf.depth: shelf depth 2.0: write a depth from 4" to 20": '
        'the part below the shelf already stands out 4"',
    )


def test_the_same_path_set_twice_takes_the_last():
    assert (
        read_value(
            with_texts(default_job(), [("opening.width", "30"), ("opening.width", "40")]), "opening.width"
        )
        == 40
    )


def test_a_linked_row_is_not_stored():
    assert "depth" not in json.loads(write_job(default_job()))["shelf"]
    assert BY_PATH["shelf.depth"].linked


def test_a_job_built_of_nothing_is_the_default():
    assert build_job({}) == default_job()


@pytest.mark.parametrize(
    ("text", "where"),
    [
        ('{"mantelwright": 1,\n "opening": {width: 36}}', 'line 2, from character 14 on, "width: 36}}"'),
        ('{"mantelwright": 1', "line 1 ends too early"),
        ('{"mantelwright": NaN}', "a number or a letter that is not allowed"),
        (b"\xff\xfe\x00", "its bytes are no text in UTF-8"),
        ("[" * 100_000, "its brackets lie too deep"),
    ],
)
def test_text_that_is_no_json_is_refused_in_words_of_our_own(text, where):
    (fault,) = _faults(text)
    assert where in fault
    assert "wanted" in fault
    assert not any(word in fault for word in ("codec", "recursion", "malformed", "Expecting"))


def test_what_a_text_lacks_is_told_in_the_order_of_the_table():
    job, missing = read_job_and_missing('{"mantelwright": 1, "opening": {"width": 40}}')
    assert job == with_value(default_job(), "opening.width", 40.0)
    assert missing == tuple(row for row in list_stored() if row.path != "opening.width")
    assert read_job_and_missing(write_job(job)) == (job, ())


def test_a_job_without_a_name_is_still_called_something_on_what_is_made_of_it():
    assert default_job().about.name == ""
    assert default_job().about.title == "Fireplace surround"
    assert with_value(default_job(), "job.name", "Parlour").about.title == "Parlour"


def test_a_file_of_nothing_but_faults_is_refused_soon_with_the_first_of_them():
    for text in (
        '{"mantelwright": 1, "opening": {' + ", ".join(f'"{i}": 1, "{i}": 1' for i in range(60_000)) + "}}",
        '{"mantelwright": 1, ' + ", ".join(f'"{i}": {{}}' for i in range(60_000)) + "}",
    ):
        begun = process_time()
        with pytest.raises(JobRefused) as refusal:
            read_job(text)
        assert len(refusal.value.faults) == 60_000
        assert len(str(refusal.value).splitlines()) == MOST_FAULTS + 1
        assert str(refusal.value).endswith("\nand 59,950 more")
        assert process_time() - begun < 10  # counted name by name it was minutes
