"""What is given on the command line decides between window and command."""

from __future__ import annotations

import gc
import os
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from app import main as way_in

HOUSE = Path(__file__).parents[2]


@pytest.fixture
def opened(monkeypatch) -> list[str]:
    names: list[str] = []
    monkeypatch.setattr(way_in, "open_window", lambda name: names.append(name) or 0)
    return names


def test_nothing_opens_an_empty_window(opened: list[str]):
    assert way_in.main([]) == 0
    assert opened == [""]


def test_a_job_file_or_a_shipped_job_opens_in_the_window(opened: list[str], tmp_path: Path):
    (tmp_path / "check").write_text("a file that is called like a command")
    for name in (str(tmp_path / "check"), "parlour.mantel", "bedroom"):
        assert way_in.main([name]) == 0
    assert opened == [str(tmp_path / "check"), "parlour.mantel", "bedroom"]


def test_commands_and_options_never_open_a_window(opened: list[str], capsys):
    assert way_in.main(["check", "bedroom"]) == 0
    assert way_in.main(["--help"]) == 0
    assert way_in.main(["--nonsense"]) == 2
    assert way_in.main(["nonsense", "more"]) == 2
    assert opened == []


def _run(code: str, **environment: str) -> subprocess.CompletedProcess[str]:
    names = ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")
    bare = {k: v for k, v in os.environ.items() if k not in names} | environment
    return subprocess.run(
        [sys.executable, *code.split("|")], cwd=HOUSE, env=bare, capture_output=True, text=True
    )


def test_without_a_display_the_program_says_so_and_ends():
    ended = _run("-m|app")
    assert ended.returncode == 2
    assert "no display" in ended.stderr
    assert "Traceback" not in ended.stderr


@pytest.fixture
def swept() -> Iterator[None]:
    """The window's way in turns it off until the window stands."""
    was_on = gc.isenabled()
    yield
    if was_on:
        gc.enable()


@pytest.mark.usefixtures("swept")
@pytest.mark.parametrize(
    ("fault", "told"),
    [
        (ImportError("libEGL.so.1: cannot open shared object file"), "apt-get install"),
        (ModuleNotFoundError("No module named 'PySide6'", name="PySide6"), "with pip"),
    ],
)
def test_a_window_library_that_cannot_be_loaded_is_told_with_what_to_install(
    fault: ImportError, told: str, monkeypatch, capsys
):
    def load_window() -> None:
        raise fault

    monkeypatch.setattr("app.ahead.start_ahead", lambda _name: None)
    monkeypatch.setattr(way_in, "load_window", load_window)
    assert way_in.open_window("") == 2
    assert told in capsys.readouterr().err


@pytest.mark.usefixtures("swept")
def test_a_fault_of_our_own_is_not_taken_for_a_missing_library(monkeypatch):
    def load_window() -> None:
        raise ImportError("no such name", name="app.gui")

    monkeypatch.setattr("app.ahead.start_ahead", lambda _name: None)
    monkeypatch.setattr(way_in, "load_window", load_window)
    with pytest.raises(ImportError, match="no such name"):
        way_in.open_window("")


def test_nothing_heavy_is_loaded_before_the_window():
    code = (
        "import app.main, app.gui, sys; "
        "late = {'numpy', 'shapely', 'ezdxf', 'reportlab', 'pint'} & set(sys.modules); assert not late, late"
    )
    assert _run(f"-c|{code}", QT_QPA_PLATFORM="offscreen").returncode == 0


def test_the_first_look_loads_neither_the_job_nor_what_stands_round_the_sheet():
    code = (
        "import app.gui, sys; "
        "late = {'model.job', 'model.surround', 'app.session', 'app.tray', 'app.fields.measuring_list', "
        "'app.window_parts'} & set(sys.modules); assert not late, late"
    )
    assert _run(f"-c|{code}", QT_QPA_PLATFORM="offscreen").returncode == 0


def test_a_name_that_no_file_can_have_is_a_job_to_open_and_to_be_told_of(opened: list[str]):
    assert way_in.main(["n" * 300]) == 0
    assert opened == ["n" * 300]
