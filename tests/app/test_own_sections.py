"""Own sections in the window: read from files into the job, saved from it, undone like any edit."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtWidgets import QFileDialog

from app.own_sections import PATHS
from app.section_file import read_section_file
from app.window import Window
from export.section_dxf import write_section_dxf
from model.job import read_value
from model.moulding.library import SECTIONS
from model.moulding.notation import format_section, parse_section

COVE = SECTIONS["cove_and_fillets"].section


@pytest.fixture
def drawn(tmp_path: Path) -> Path:
    path = tmp_path / "My cove.dxf"
    path.write_text(write_section_dxf(COVE), encoding="utf-8")
    return path


def own(window: Window, number: int) -> str:
    return str(read_value(window.session.job, PATHS[number]))


def test_a_drawn_section_is_read_into_the_job_and_told_with_its_size(window: Window, drawn: Path):
    assert window.sections.read(1, drawn)
    section = parse_section(own(window, 1))
    assert (section.name, section.elements) == ("My cove", COVE.elements)
    assert "own section 2" in window.notice.text
    assert '1"' in window.notice.text
    window.undo()
    assert own(window, 1) == ""


def test_the_file_is_asked_for(window: Window, drawn: Path, monkeypatch):
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(drawn), ""))
    window.sections.ask_and_read(0)
    assert parse_section(own(window, 0)).elements == COVE.elements


def test_what_is_no_section_is_said_and_changes_nothing(window: Window, tmp_path: Path):
    path = tmp_path / "notes.txt"
    path.write_text("buy glue")
    for file in (path, tmp_path / "none.dxf"):
        assert not window.sections.read(0, file)
        assert file.name in window.notice.text
    assert own(window, 0) == ""
    assert not window.session.is_unsaved


def test_a_drawing_without_units_is_in_the_jobs(window: Window, tmp_path: Path):
    import ezdxf

    document = ezdxf.new("R2010", units=0)
    points = [(25.4 * s.start[0], 25.4 * s.start[1], s.bulge) for s in COVE.outline.strokes]
    document.modelspace().add_lwpolyline(points, format="xyb", close=True)
    path = tmp_path / "metric.dxf"
    document.saveas(path)
    assert not window.sections.read(0, path)
    window.session.set_value("job.units", "millimetres")
    assert window.sections.read(0, path)
    assert parse_section(own(window, 0)).height == pytest.approx(COVE.height, abs=1e-5)


@pytest.mark.parametrize("name", ["mine.dxf", "mine.txt"])
def test_a_section_is_saved_and_read_again(window: Window, tmp_path: Path, monkeypatch, name):
    window.session.set_text(PATHS[2], format_section(COVE))
    assert [window.sections.has(number) for number in range(3)] == [False, False, True]
    path = tmp_path / name
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(path), ""))
    window.sections.ask_and_save(2)
    assert read_section_file(path).elements == COVE.elements
    assert str(path) in window.notice.text


def test_a_section_that_cannot_be_saved_is_said(window: Window, tmp_path: Path):
    assert not window.sections.save(COVE, tmp_path / "no folder" / "mine.dxf")
    assert "could not be saved" in window.notice.text


def test_a_typed_section_that_cannot_be_read_is_refused_in_its_field(window: Window):
    window.session.set_value("bed_mould.profile", "own_1")
    row = window.fields.rows[PATHS[0]]
    assert row.isVisibleTo(window.fields)
    row.entered.emit(PATHS[0], "cavetto 1 down")
    assert row.message.startswith("Line 1: write how far back or out")
    row.entered.emit(PATHS[0], "cavetto 1 down, 1 back\nfoot 1/8")
    assert row.message == ""
    assert own(window, 0) == "cavetto 1 down, 1 back\nfoot 1/8"


def test_an_own_section_shows_only_where_it_is_chosen(window: Window):
    rows = [window.fields.rows[path] for path in PATHS]
    assert not any(row.isVisibleTo(window.fields) for row in rows)
    window.session.set_value("bed_mould.profile", "own_2")
    assert [row.isVisibleTo(window.fields) for row in rows] == [False, True, False]


def test_the_library_is_written_full_size(window: Window, tmp_path: Path, monkeypatch):
    asked = str(tmp_path / "library 1.5")
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (asked, ""))
    window.sections.ask_and_write_library()
    assert (tmp_path / "library 1.5.pdf").read_bytes().startswith(b"%PDF")
    assert "library 1.5.pdf" in window.notice.text
    assert not window.sections.write_library(tmp_path / "no folder" / "library.pdf")
    assert "could not be saved" in window.notice.text
