"""Looking for waste stops while files are built, and goes on after."""

from __future__ import annotations

import gc

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


def test_files_are_built_unswept() -> None:
    seen: list[bool] = []
    build_outputs(read_demo(), "letter", "", (SITE,), step=lambda *_: seen.append(gc.isenabled()))
    assert len(seen) > 2
    assert not any(seen[1:-1])
    assert gc.isenabled()
