"""Many jobs in one run: a folder each, a line on each that fails, the rest done, the exit code telling."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from time import monotonic, sleep
from typing import TypeVar

import pytest

from app import many_jobs
from app.cli import main
from app.commands import SheetWish
from app.demo import read_demo
from app.many_jobs import BROKEN, ENDED, ManyWish, Told, name_folders, run_many
from app.outputs import DRAWINGS, LIST
from app.stock_lists import read_shipped_list
from app.terminal import Terminal
from model.job import UNTITLED, write_job

Happened = TypeVar("Happened")


def _write(path: Path, name: str) -> str:
    path.parent.mkdir(exist_ok=True)
    path.write_text(write_job(read_demo(name)), "utf-8")
    return str(path)


def test_each_job_has_a_folder_of_its_own_and_one_that_fails_fails_alone(tmp_path: Path, capsys):
    torn = tmp_path / "torn.mantel"
    torn.write_text("{")
    jobs = [
        _write(tmp_path / "one" / "hall.mantel", "bedroom"),
        str(torn),
        _write(tmp_path / "two" / "Hall.mantel", "gas"),
    ]
    out = tmp_path / "out"
    assert main(["drawings", *jobs, "--out", str(out), "--date", "2001-02-03"]) == 2
    told = capsys.readouterr()
    assert {path.name for path in out.iterdir()} == {"hall", "Hall (2)"}
    assert all(any(folder.glob("*.dxf")) for folder in out.iterdir())
    assert sorted(told.out.splitlines()) == sorted(str(out / name) for name in ("hall", "Hall (2)"))
    (fault, count) = [line for line in told.err.splitlines() if "torn" in line or "of 3" in line]
    assert "torn.mantel" in fault
    assert "1 of 3 jobs failed" in count


@pytest.mark.parametrize("name", ["..mantel", "...mantel", "a/. .mantel"])
def test_no_folder_is_called_as_another_folder_is(name: str):
    assert name_folders([name, "hall..mantel"]) == (UNTITLED, "hall")


def test_a_full_disk_weighs_more_than_a_refusal(tmp_path: Path, capsys):
    taken = tmp_path / "out"
    taken.write_text("a file where the folder should be")
    jobs = [_write(tmp_path / "hall.mantel", "bedroom"), str(tmp_path / "gone.mantel")]
    assert main(["drawings", *jobs, "--out", str(taken)]) == 3
    assert "2 of 2 jobs failed" in capsys.readouterr().err


def test_paper_that_there_is_none_of_is_refused_once(tmp_path: Path, capsys):
    assert main(["packet", "brick", "gas", "--out", str(tmp_path), "--paper", "a5"]) == 2
    assert capsys.readouterr().err.count("a5") == 1


def test_folders_are_named_after_files_and_never_alike():
    names = name_folders(["a/x.mantel", "b/X.mantel", "c/x.mantel", "brick", "x (2).mantel"])
    assert names == ("x", "X (2)", "x (3)", "brick", "x (2) (2)")
    assert len({name.casefold() for name in names}) == len(names)


def _die(wish: ManyWish, name: str, folder: str) -> Told:
    if name == "deadly":
        os._exit(1)
    return Told(0, ())


def _wish(tmp_path: Path, *jobs: str) -> ManyWish:
    sheets = SheetWish("letter", "2001-02-03", "R2010")
    return ManyWish(jobs, (), "", tmp_path, sheets, read_shipped_list(), DRAWINGS, False)


def test_a_process_that_dies_takes_its_own_job_alone(tmp_path: Path, monkeypatch, capsys):
    monkeypatch.setattr(many_jobs, "write_one", _die)
    assert run_many(_wish(tmp_path, "a", "deadly", "b", "c"), Terminal()) == BROKEN
    told = capsys.readouterr()
    assert sorted(told.out.splitlines()) == [str(tmp_path / name) for name in "abc"]
    assert f"deadly: {ENDED}" in told.err


def _fail(wish: ManyWish, name: str, folder: str) -> Told:
    return many_jobs._told(many_jobs._Notes(), lambda: 1 / 0)  # type: ignore[arg-type, return-value]


def test_a_fault_of_the_program_is_told_and_not_thrown(tmp_path: Path, monkeypatch, capsys):
    monkeypatch.setattr(many_jobs, "write_one", _fail)
    assert run_many(_wish(tmp_path, "a", "b"), Terminal()) == BROKEN
    assert "a: the program itself failed (ZeroDivisionError" in capsys.readouterr().err


def test_buying_for_many_leaves_out_what_cannot_be_read_and_says_so(tmp_path: Path, capsys):
    jobs = ["bedroom", str(tmp_path / "gone.mantel"), "gas"]
    assert main(["cutting", *jobs, "--stock", "example", "--seconds", "2", "--csv"]) == 2
    told = capsys.readouterr()
    assert "gone.mantel" in told.err
    assert "1 of 3 jobs could not be read" in told.err
    assert len(told.out.splitlines()) > 3


@pytest.mark.parametrize("names", [["gone.mantel"], ["gone.mantel", "lost.mantel"]])
def test_nothing_is_bought_where_no_job_can_be_read(names: list[str], tmp_path: Path, capsys):
    assert main(["cutting", *(str(tmp_path / name) for name in names)]) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert names[-1] in told.err


@pytest.mark.skipif(not Path("/proc/self/task").is_dir(), reason="processes are looked up in /proc")
def test_when_the_first_process_is_killed_no_other_goes_on_alone(tmp_path: Path):
    command = [sys.executable, "-m", "app", "packet", *["brick"] * 4, "--out", str(tmp_path / "out")]
    with subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL) as first:
        others = _await(lambda: [pid for pid in _list_started(first.pid) if _works(pid)])
        first.kill()
    assert others
    _await(lambda: not any(map(_works, others)))


def _await(happens: Callable[[], Happened]) -> Happened:
    """What has happened within half a minute, or what there is instead."""
    end = monotonic() + 30
    while not (found := happens()) and monotonic() < end:
        sleep(0.05)
    assert found
    return found


def _list_started(pid: int) -> list[int]:
    return [int(word) for word in Path(f"/proc/{pid}/task/{pid}/children").read_text("ascii").split()]


def _works(pid: int) -> bool:
    """Whether it is one of those that write packets, and lives."""
    try:
        return b"spawn_main" in Path(f"/proc/{pid}/cmdline").read_bytes()
    except OSError:
        return False


def test_what_is_warned_of_one_job_is_told_with_its_name(tmp_path: Path, monkeypatch, capsys):
    bare = tmp_path / "bare.mantel"
    bare.write_text('{"mantelwright": 1}')
    wish = replace(_wish(tmp_path / "out", str(bare)), parts=(LIST,))
    told = many_jobs.write_one(wish, str(bare), "bare")
    assert (told.code, len(told.warnings)) == (0, 1)
    assert list((tmp_path / "out" / "bare").iterdir())
    monkeypatch.setattr(many_jobs, "_work_through", lambda *_: iter([(0, told)]))
    assert run_many(wish, Terminal()) == 0
    assert f"mantelwright: {bare}: " in capsys.readouterr().err
