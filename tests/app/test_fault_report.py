"""A report says where the program failed and on what; no text of the job and no place of the machine."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import pytest

from app.fault_report import DEEPEST, LEFT_OUT, LONGEST, write_report
from app.telling_faults import COPY, SAVE, list_personal, tell_fault
from app.trouble import NOT_KEPT, UNCHANGED
from app.version import program_version
from model.job import default_job, with_texts
from model.parameters import find_parameter


def _fault(words: str = "inside", cause: BaseException | None = None) -> BaseException:
    try:
        raise ValueError(words) from cause
    except ValueError as error:
        return error


def _nested(depth: int) -> BaseException:
    error = _fault("0")
    for number in range(1, depth):
        error = _fault(str(number), error)
    return error


def test_it_says_version_system_place_and_fault():
    report = write_report(_fault(), ())
    assert report.startswith(f"Mantelwright {program_version()}\nPython ")
    assert "tests/app/test_fault_report.py:" in report
    assert report.endswith("_fault\nValueError: inside\n")


def test_it_names_what_the_fault_came_of_and_stops_in_time():
    assert "which came of" in write_report(_nested(2), ())
    assert write_report(_nested(30), ()).count("ValueError") == DEEPEST


def test_places_on_the_disk_are_left_out():
    places = (str(Path(__file__).resolve()), "C:\\Jobs\\Elm street\\a.mantel", "~/jobs/elm.mantel")
    for place in places:
        report = write_report(_fault(f"cannot open '{place}'"), ())
        assert place not in report
        assert LEFT_OUT in report
    assert str(Path(__file__).resolve().parents[2]) not in write_report(_fault(), ())


def test_texts_of_the_job_are_left_out_however_they_are_cased():
    report = write_report(_fault("no room for ROWAN Aster in 'Rowan Aster, hall'"), ("Rowan Aster", "x"))
    assert "aster" not in report.lower()
    assert "no room for" in report


def test_figures_stay():
    assert "36.03125" in write_report(_fault("opening.width 36.03125"), ("Rowan",))


def test_a_fault_that_says_much_is_cut():
    assert len(write_report(_fault("y" * 10_000), ())) < LONGEST + 1000


def test_what_is_told_offers_the_report_and_the_way_to_save(window, qapp):
    job = with_texts(
        default_job(), [("job.client", "Rowan Aster"), ("job.notes", "Gate is blue\nCall first")]
    )
    window.session.open(job, Path("elm", "hall.mantel").absolute(), recovered=True)
    window.recovery.keep()
    assert {"Rowan Aster", "hall"} <= set(list_personal(window))
    tell_fault(window, _fault("Rowan Aster: gate is blue"))
    assert [button.text() for button in window.notice.buttons] == [COPY, SAVE]
    assert str(window.recovery.kept_in) in window.notice.text
    window.notice.buttons[0].click()
    report = qapp.clipboard().text()
    assert "ValueError: [left out]: [left out]" in report
    assert window.notice.buttons[0].text() == SAVE
    assert "clipboard" in window.notice.text


@pytest.mark.parametrize("path", ["job.client", "job.name", "job.notes"])
def test_every_text_row_is_personal(path: str, window):
    window.session.set_text(path, "Rowan")
    assert find_parameter(path).kind == "text"
    assert "Rowan" in list_personal(window)


def test_of_files_that_are_not_ours_no_more_than_the_last_folder_is_named():
    with pytest.raises(json.JSONDecodeError) as caught:
        json.loads("{")
    report = write_report(caught.value, ())
    assert "\njson/decoder.py:" in report
    assert str(Path(json.__file__).parents[1]) not in report


def test_a_stock_list_that_is_not_saved_is_told_with_its_copy_too(window):
    tell_fault(window, _fault())
    assert UNCHANGED in window.notice.text
    stock = window.cutting.stock
    stock.session.change("a name", replace(stock.find_list(), name="Yard"))
    tell_fault(window, _fault())
    assert NOT_KEPT in window.notice.text
    window.keep_unsaved()
    tell_fault(window, _fault())
    assert str(window.stock_recovery.kept_in) in window.notice.text


def test_a_report_is_written_where_the_system_knows_nobody(window, monkeypatch):
    def know_nobody() -> str:
        raise KeyError("getpwuid(): uid not found: 4711")

    monkeypatch.setattr("getpass.getuser", know_nobody)
    window.session.open(with_texts(default_job(), [("job.client", "Rowan")]), None)
    assert {"Rowan", Path.home().name} <= set(list_personal(window))
