"""What the program remembers comes back as it went in, also in another window."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import QByteArray

from app.settings import MOST_RECENT, Settings


@pytest.mark.parametrize("value", [True, False, 3, 1.5, "true", "", [], ["one"], {"a": [1]}, None])
def test_a_value_comes_back_with_its_own_type(tmp_path: Path, value: object):
    Settings(tmp_path / "s.ini").write("it", value)
    back = Settings(tmp_path / "s.ini").read("it", "nothing")
    assert back == value
    assert type(back) is type(value)


def test_what_was_never_written_is_the_default(settings: Settings):
    assert settings.read("none", 7) == 7
    assert settings.read_bytes("none").isEmpty()
    assert settings.list_recent() == ()


def test_a_damaged_value_is_the_default(tmp_path: Path):
    (tmp_path / "s.ini").write_text("[General]\nit={oh\nrecent=3\n")
    damaged = Settings(tmp_path / "s.ini")
    assert damaged.read("it", 7) == 7
    assert damaged.list_recent() == ()


def test_bytes_come_back(settings: Settings):
    settings.write_bytes("state", QByteArray(b"\x00\xff7"))
    assert settings.read_bytes("state").data() == b"\x00\xff7"


def test_the_file_used_last_comes_first_and_once(settings: Settings):
    for name in ("a", "b", "a"):
        settings.add_recent(Path(name))
    assert settings.list_recent() == (Path("a"), Path("b"))


def test_only_so_many_files_are_remembered(settings: Settings):
    for n in range(MOST_RECENT + 3):
        settings.add_recent(Path(str(n)))
    assert len(settings.list_recent()) == MOST_RECENT
    assert settings.list_recent()[0] == Path(str(MOST_RECENT + 2))


def test_two_windows_add_to_one_list(tmp_path: Path):
    one, other = Settings(tmp_path / "s.ini"), Settings(tmp_path / "s.ini")
    one.add_recent(Path("a"))
    other.add_recent(Path("b"))
    one.add_recent(Path("c"))
    assert set(other.list_recent()) == {Path("a"), Path("b"), Path("c")}


def test_files_can_be_forgotten(settings: Settings):
    settings.add_recent(Path("a"))
    settings.add_recent(Path("b"))
    settings.drop_recent(Path("a"))
    assert settings.list_recent() == (Path("b"),)
    settings.clear_recent()
    assert settings.list_recent() == ()
