"""Looking for waste stops while files are built, and goes on after."""

from __future__ import annotations

import gc
import subprocess
import sys

import pytest

from app.demo import read_demo
from app.outputs import SITE, build_outputs
from app.sweeping import unswept


def test_nothing_is_swept_while_it_is_open_whatever_ends_it() -> None:
    assert gc.isenabled()
    with pytest.raises(KeyboardInterrupt):
        _interrupt()
    assert gc.isenabled()


def _interrupt() -> None:
    with unswept():
        assert not gc.isenabled()
        raise KeyboardInterrupt


def test_who_had_stopped_it_before_finds_it_stopped() -> None:
    gc.disable()
    try:
        with unswept():
            pass
        assert not gc.isenabled()
    finally:
        gc.enable()


def test_what_was_made_meanwhile_is_not_looked_through_at_once() -> None:
    gc.unfreeze()  # a window that an earlier test has put up sets aside what is there
    with unswept():
        kept = [[number] for number in range(10 * gc.get_threshold()[0])]
        looks = gc.get_stats()[0]["collections"]
    more = [[number] for number in range(10)]
    assert gc.get_stats()[0]["collections"] == looks
    assert len(kept) > len(more)


def test_files_are_built_unswept() -> None:
    seen: list[bool] = []
    build_outputs(read_demo(), "letter", "", (SITE,), step=lambda *_: seen.append(gc.isenabled()))
    assert len(seen) > 2
    assert not any(seen[1:-1])
    assert gc.isenabled()


@pytest.mark.parametrize(("first", "told"), [("", "swept"), ("end_unswept()", "")])
def test_a_program_that_ends_unswept_does_not_look_for_waste_once_more(first: str, told: str) -> None:
    ring = "class Ring:\n    def __del__(self): print('swept')\nring = Ring()\nring.own = ring\ndel ring"
    code = f"from app.sweeping import end_unswept\n{first}\n{ring}"
    ended = subprocess.run([sys.executable, "-c", code], check=True, capture_output=True, text=True)
    assert ended.stdout.strip() == told
