"""Job files are written whole or not at all."""

from __future__ import annotations

import errno
import os
import stat
from pathlib import Path
from random import Random

import pytest

from app.files import (
    LARGEST_JOB,
    FileTrouble,
    open_job_file,
    read_bytes,
    read_job_file,
    save_bytes,
    save_job_file,
    save_together,
)
from model.errors import JobRefused, MantelwrightError
from model.job import default_job, list_stored, with_value
from tests.full_disk import files_no_larger_than
from tests.kills import kill_once, list_broken, list_there, list_whole


def test_a_saved_job_comes_back_the_same(tmp_path: Path):
    job = with_value(default_job(), "opening.width", 41.0625)
    save_job_file(tmp_path / "parlour.mantel", job)
    assert read_job_file(tmp_path / "parlour.mantel") == job


def test_no_more_of_a_file_is_read_than_is_allowed(tmp_path: Path):
    path = tmp_path / "long.txt"
    path.write_bytes(b"x" * 11)
    assert read_bytes(path, 11, "it is too large") == b"x" * 11
    with pytest.raises(FileTrouble, match=r"long\.txt could not be opened: it is too large\. Nothing was"):
        read_bytes(path, 10, "it is too large")


def test_saving_leaves_nothing_else_in_the_folder(tmp_path: Path):
    save_job_file(tmp_path / "parlour.mantel", default_job())
    save_job_file(tmp_path / "parlour.mantel", default_job())
    assert [p.name for p in tmp_path.iterdir()] == ["parlour.mantel"]


def test_a_disk_that_refuses_keeps_the_old_file_and_nothing_half_written(tmp_path: Path):
    path = tmp_path / "parlour.mantel"
    save_bytes(path, b"the old one")
    with files_no_larger_than(1000), pytest.raises(FileTrouble, match="untouched") as trouble:
        save_bytes(path, b"x" * 5000)
    assert path.read_bytes() == b"the old one"
    assert [p.name for p in tmp_path.iterdir()] == ["parlour.mantel"]
    assert trouble.value.path == path
    assert "cannot hold" in trouble.value.cause


def test_a_new_file_that_cannot_be_written_is_not_there_afterwards(tmp_path: Path):
    with files_no_larger_than(1000), pytest.raises(FileTrouble, match="Nothing was written"):
        save_bytes(tmp_path / "parlour.mantel", b"x" * 5000)
    assert list(tmp_path.iterdir()) == []


def test_trouble_is_one_of_ours_and_of_the_systems():
    assert issubclass(FileTrouble, MantelwrightError)
    assert issubclass(FileTrouble, OSError)


def test_a_missing_file_is_named_with_its_cause(tmp_path: Path):
    with pytest.raises(FileTrouble, match="no such file") as trouble:
        read_job_file(tmp_path / "gone.mantel")
    assert str(tmp_path / "gone.mantel") in str(trouble.value)


def test_a_folder_is_neither_read_nor_written_over(tmp_path: Path):
    for attempt in (lambda: read_job_file(tmp_path), lambda: save_bytes(tmp_path, b"")):
        with pytest.raises(FileTrouble, match="that is a folder"):
            attempt()


def test_a_folder_that_is_not_there_is_told(tmp_path: Path):
    with pytest.raises(FileTrouble, match="no such file or folder"):
        save_bytes(tmp_path / "none" / "parlour.mantel", b"")


def test_permissions_of_an_existing_file_stay(tmp_path: Path):
    path = tmp_path / "parlour.mantel"
    save_bytes(path, b"1")
    path.chmod(0o640)
    save_bytes(path, b"2")
    assert stat.S_IMODE(path.stat().st_mode) == 0o640


def test_a_new_file_may_be_read_as_the_system_is_set_up(tmp_path: Path):
    mask = os.umask(0o027)
    try:
        save_bytes(tmp_path / "parlour.mantel", b"1")
    finally:
        os.umask(mask)
    assert stat.S_IMODE((tmp_path / "parlour.mantel").stat().st_mode) == 0o640


def test_a_disk_that_knows_no_permissions_is_written_all_the_same(tmp_path: Path, monkeypatch):
    def refuse(*_: object) -> None:
        raise OSError(errno.EOPNOTSUPP, os.strerror(errno.EOPNOTSUPP))

    monkeypatch.setattr(Path, "chmod", refuse)
    save_bytes(tmp_path / "parlour.mantel", b"1")
    assert [p.read_bytes() for p in tmp_path.iterdir()] == [b"1"]


def test_a_link_keeps_pointing_at_the_file_that_is_written(tmp_path: Path):
    real, link = tmp_path / "real.mantel", tmp_path / "link.mantel"
    real.write_bytes(b"1")
    link.symlink_to(real)
    save_bytes(link, b"2")
    assert link.is_symlink()
    assert real.read_bytes() == b"2"


def test_a_file_far_too_large_is_not_read(tmp_path: Path):
    path = tmp_path / "film.mantel"
    with path.open("wb") as file:
        file.truncate(LARGEST_JOB + 1)
    with pytest.raises(FileTrouble, match="too large"):
        read_job_file(path)


@pytest.mark.parametrize("data", [b"", b"\x00\xff\xfe", b"[1, 2]", b'{"opening": {}}', b"{" * 100_000])
def test_what_is_no_job_is_refused_and_not_thrown(tmp_path: Path, data: bytes):
    path = tmp_path / "other.mantel"
    path.write_bytes(data)
    with pytest.raises(JobRefused):
        read_job_file(path)


def test_a_file_that_lacks_values_says_how_many_and_which_first(tmp_path):
    path = tmp_path / "bare.mantel"
    path.write_text('{"mantelwright": 1}')
    job, told = open_job_file(path)
    assert job == default_job()
    count, first = len(list_stored()), list_stored()[0].name
    assert f"{count} of the {count} values of a job are not in it" in told
    assert f"defaults: {first}, " in told
    save_job_file(path, job)
    assert open_job_file(path) == (job, "")


def test_what_a_killed_program_left_is_cleared_away_by_the_next_save(tmp_path: Path):
    left, fresh, others = (
        tmp_path / f".{name}.part" for name in ("a[1].mantel.x", "a[1].mantel.y", "b.mantel.x")
    )
    for part in (left, fresh, others):
        part.write_bytes(b"half")
    for part in (left, others):
        os.utime(part, (0, 0))
    save_bytes(tmp_path / "a[1].mantel", b"1")
    assert sorted(p.name for p in tmp_path.iterdir()) == [fresh.name, others.name, "a[1].mantel"]


def test_a_program_killed_while_it_saves_leaves_old_or_new_files(tmp_path: Path):
    chance, whole = Random(7), list_whole()
    kills = 0
    while kills < 12 or (list_there(tmp_path, whole) < frozenset(whole) and kills < 120):
        before = list_there(tmp_path, whole)
        kill_once(tmp_path, chance)
        assert not list(list_broken(tmp_path, whole, before))
        kills += 1  # more of them where a slow machine has not come round to every file yet
    assert list_there(tmp_path, whole) == frozenset(whole)
    (tmp_path / "parlour.mantel").write_bytes(b"{")
    (tmp_path / "again.bin").unlink()
    assert len(list(list_broken(tmp_path, whole, frozenset(whole)))) == 2


def test_a_write_that_a_disk_cuts_short_without_a_word_is_told(tmp_path: Path, monkeypatch):
    path = tmp_path / "parlour.mantel"
    save_bytes(path, b"the old one")
    monkeypatch.setattr(os, "fsync", lambda handle: os.ftruncate(handle, 3))
    with pytest.raises(FileTrouble, match=r"the disk is full\. What was there before is untouched"):
        save_bytes(path, b"the new one")
    assert [p.read_bytes() for p in tmp_path.iterdir()] == [b"the old one"]


def test_a_protected_file_is_not_replaced(tmp_path: Path, monkeypatch):
    path = tmp_path / "parlour.mantel"
    save_bytes(path, b"the old one")
    monkeypatch.setattr(os, "access", lambda *_: False)
    with pytest.raises(FileTrouble, match="may not be opened or written by you"):
        save_bytes(path, b"the new one")
    assert path.read_bytes() == b"the old one"


@pytest.mark.parametrize("number", [errno.EACCES, errno.EIO, errno.ENOTCONN, errno.ESTALE])
def test_a_drive_that_went_away_is_told_and_not_thrown(tmp_path: Path, monkeypatch, number: int):
    gone, stat_of = tmp_path / "gone" / "parlour.mantel", os.stat

    def refuse(path, *rest, **more):
        if str(path).startswith(str(gone.parent)):
            raise OSError(number, os.strerror(number))
        return stat_of(path, *rest, **more)

    monkeypatch.setattr(os, "stat", refuse)
    with pytest.raises(FileTrouble, match="Nothing was written") as trouble:
        save_bytes(gone, b"1")
    assert trouble.value.path == gone


def test_a_name_that_is_too_long_is_named(tmp_path: Path):
    with pytest.raises(FileTrouble, match=r"n{300}\.mantel could not be saved: the name is too long"):
        save_bytes(tmp_path / f"{'n' * 300}.mantel", b"1")


def test_files_that_belong_together_are_all_as_they_were_where_the_disk_refuses_one(tmp_path: Path):
    paths = [tmp_path / name for name in "abc"]
    save_together([(path, b"old") for path in paths])
    with files_no_larger_than(1000), pytest.raises(FileTrouble, match="untouched") as trouble:
        save_together([(paths[0], b"new"), (paths[1], b"new"), (paths[2], b"x" * 5000)])
    assert trouble.value.path == paths[2]
    assert [path.read_bytes() for path in paths] == [b"old"] * 3
    assert sorted(tmp_path.iterdir()) == paths


def test_what_is_new_is_named_where_files_cannot_all_be_put_in_place(tmp_path: Path, monkeypatch):
    paths = [tmp_path / name for name in "abc"]
    save_together([(path, b"old") for path in paths])
    replace_file = os.replace

    def refuse(beside, target):
        if Path(target) == paths[1].resolve():
            raise OSError(errno.EIO, os.strerror(errno.EIO))
        replace_file(beside, target)

    monkeypatch.setattr(os, "replace", refuse)
    with pytest.raises(FileTrouble, match=r"untouched\. Already new: a\. All others are still as they were"):
        save_together([(path, b"new") for path in paths])
    assert [path.read_bytes() for path in paths] == [b"new", b"old", b"old"]
    assert sorted(tmp_path.iterdir()) == paths


def test_a_job_that_could_not_be_opened_again_is_not_saved(tmp_path: Path, monkeypatch):
    path = tmp_path / "parlour.mantel"
    save_job_file(path, default_job())
    monkeypatch.setattr("app.files.LARGEST_JOB", path.stat().st_size)
    before = path.read_bytes()
    with pytest.raises(FileTrouble, match=r"could not be opened again; take out options.*untouched"):
        save_job_file(path, with_value(default_job(), "job.notes", "Gate is blue"))
    assert path.read_bytes() == before
    save_job_file(path, default_job())
