"""What a job leaves on disk: the right files, whole, and nothing when it is stopped."""

from __future__ import annotations

import csv
from dataclasses import replace
from io import BytesIO
from pathlib import Path

import pdfplumber
import pytest

from app.demo import read_demo
from app.files import FileTrouble
from app.outputs import (
    DRAWING,
    LIST,
    LISTS,
    PACKET,
    Output,
    build_outputs,
    file_stem,
    name_output,
    write_outputs,
)
from app.stock_lists import read_shipped_list
from export.progress import Cancelled
from model.errors import Refused
from model.job import default_job, with_value
from model.surround import plan_surround
from model.takeoff.cut_list import list_cuts
from tests.full_disk import files_no_larger_than

DATE = "2026-01-02"


def test_a_packet_a_drawing_and_a_list_are_made_and_agree():
    job = read_demo("bedroom")
    built = build_outputs(job, "letter", DATE)
    outputs = {o.name.rsplit(" - ")[1]: o.data for o in built if "/" not in o.name}
    lists = {f"{part}.csv" for part in LISTS}
    assert set(outputs) == {"packet.pdf", "offer.pdf", "views.dxf"} | lists
    with pdfplumber.open(BytesIO(outputs["packet.pdf"])) as packet:
        text = "\n".join(page.extract_text() for page in packet.pages)
    assert DATE in text
    cuts = list_cuts(plan_surround(job))
    listed = outputs["cut list.csv"].decode()
    assert all(cut.mark in text and cut.mark in listed for cut in cuts)
    planned = outputs["cutting plan.csv"].decode()
    assert all(piece in planned for cut in cuts for piece in cut.pieces)
    assert "Buying list" in text
    assert b"DIMENSION" in outputs["views.dxf"]


def test_strips_that_a_yards_boards_ask_for_are_ripped_and_noted_as_they_are_planned():
    """A shelf top of two strips where boards are no wider than 5 1/2 in., of one where they are 11 1/4."""
    shipped = read_shipped_list()
    narrow = replace(shipped, sold=tuple(row for row in shipped.sold if row.width <= 5.5))
    for stock, glued in ((shipped, False), (narrow, True)):
        built = build_outputs(default_job(), "letter", DATE, LISTS, stock=stock)
        texts = {o.name.rsplit(" - ")[1]: o.data.decode() for o in built}
        cuts, rips, plan = (
            list(csv.DictReader(texts[f"{part}.csv"].splitlines()))
            for part in ("cut list", "saw settings", "cutting plan")
        )
        (top,) = (row for row in cuts if row["name"] == "shelf top")
        ripped = [row for row in rips if f"{top['mark']}x" in row["pieces"] and row["cut"].startswith("rip")]
        strips = [row for row in plan if row["mark"] == top["mark"]]
        assert [row["cut"] for row in ripped] == (["rip", "rip, after gluing"] if glued else ["rip"])
        assert ("edge-glued" in top["notes"]) == glued
        assert len(strips) == (int(top["notes"].split("from ")[1][0]) if glued else 1)
        if glued:
            assert {row["width"] for row in strips} == {ripped[0]["kept"]}


def test_only_what_is_asked_for_is_made():
    (only,) = build_outputs(default_job(), "letter", DATE, (LIST,))
    assert only.name.endswith("cut list.csv")


def test_the_same_job_gives_the_same_bytes():
    job = default_job()
    assert build_outputs(job, "a4", DATE, (LIST, DRAWING)) == build_outputs(job, "a4", DATE, (LIST, DRAWING))


def test_progress_rises_from_nothing_to_all_and_always_says_what_is_done():
    told: list[tuple[float, str]] = []
    build_outputs(default_job(), "letter", DATE, step=lambda done, words: told.append((done, words)))
    parts = [done for done, _ in told]
    assert parts == sorted(parts)
    assert parts[0] == 0
    assert parts[-1] == 1
    assert len(told) > 8
    assert all(words for _, words in told)


@pytest.mark.parametrize("after", [0, 2, 6])
def test_stopping_at_any_step_stops(after: int):
    count = 0

    def stop(_done: float, _words: str) -> None:
        nonlocal count
        count += 1
        if count > after:
            raise Cancelled

    with pytest.raises(Cancelled):
        build_outputs(default_job(), "letter", DATE, step=stop)
    assert count == after + 1


def test_an_unknown_paper_is_refused():
    with pytest.raises(Refused):
        build_outputs(default_job(), "napkin", DATE, (PACKET,))


@pytest.mark.parametrize(
    ("name", "stem"),
    [
        ("", "Fireplace surround"),
        ("  Parlour,  Elm St.  ", "Parlour, Elm St"),
        ("a/b\\c:d*?", "a b c d"),
        ("../../etc", "etc"),
        ("one\ntwo", "one two"),
        ("é" * 100, "é" * 60),
    ],
)
def test_any_job_name_makes_a_file_name(name: str, stem: str):
    assert file_stem(with_value(default_job(), "job.name", name)) == stem


def test_files_are_written_into_a_folder_that_is_made(tmp_path: Path):
    job = default_job()
    paths = write_outputs(tmp_path / "new" / "folder", build_outputs(job, "letter", DATE, (LIST,)))
    assert [p.name for p in paths] == [name_output(job, LIST)]
    assert paths[0].read_bytes().startswith(b"\xef\xbb\xbf") or paths[0].read_text()


def test_a_folder_that_cannot_be_made_is_told(tmp_path: Path):
    (tmp_path / "file").write_text("")
    with pytest.raises(FileTrouble, match="Nothing was written"):
        write_outputs(tmp_path / "file" / "folder", ())


@pytest.mark.parametrize("letter", ["\N{WOOD}", "木", "é", "x"])
def test_a_name_of_any_letters_leaves_room_for_every_ending(letter: str, tmp_path: Path):
    job = with_value(default_job(), "job.name", letter * 100)
    stem = file_stem(job)
    assert set(stem) == {letter}
    for part in LISTS:
        (path,) = write_outputs(tmp_path, (Output(name_output(job, part), b"1"),))
        assert path.read_bytes() == b"1"


def test_a_packet_that_finds_no_room_leaves_the_old_one_whole(tmp_path: Path):
    write_outputs(tmp_path, (Output("a.csv", b"old"), Output("b.csv", b"old")))
    with files_no_larger_than(1000), pytest.raises(FileTrouble, match="untouched"):
        write_outputs(tmp_path, (Output("a.csv", b"new"), Output("b.csv", b"x" * 5000)))
    assert {path.read_bytes() for path in tmp_path.iterdir()} == {b"old"}
