"""A slice of the feeding of readers, and all that is kept of it."""

from __future__ import annotations

import importlib.util
import json
from pathlib import Path

import pytest

from tests.fuzz.__main__ import CORPUS, main
from tests.fuzz.json_mutator import spoil_json
from tests.fuzz.targets import TARGETS, feed

SLICE = "200"
KEPT = [(name, path) for name in TARGETS for path in sorted((CORPUS / name).glob("*"))]


@pytest.mark.parametrize(("name", "path"), KEPT, ids=lambda part: getattr(part, "name", part))
def test_what_is_kept_is_read_or_refused(name: str, path: Path):
    feed(TARGETS[name], path.read_bytes())


@pytest.mark.parametrize("name", TARGETS)
def test_whole_inputs_are_taken(name: str):
    assert all(feed(TARGETS[name], data) for data in TARGETS[name].seeds() if name != "typed")


@pytest.mark.skipif(importlib.util.find_spec("atheris") is None, reason="atheris is there for Linux alone")
@pytest.mark.parametrize("name", TARGETS)
def test_a_slice_of_spoilt_input_breaks_no_reader(name: str, tmp_path: Path, monkeypatch, capsys):
    monkeypatch.setattr("sys.argv", ["fuzz", name, "--runs", SLICE, "--into", str(tmp_path)])
    assert main() == 0, capsys.readouterr().out
    assert "no fault" in capsys.readouterr().out
    assert list(tmp_path.iterdir()) == []


def test_a_reader_that_breaks_is_told():
    """What is no refusal comes through."""
    broken = type(TARGETS["job"])(lambda data: json.loads(data), list)
    with pytest.raises(ValueError, match="Expecting value"):
        feed(broken, b"")


def test_spoilt_jobs_differ_from_whole_ones_and_from_each_other():
    (whole, *_) = TARGETS["job"].seeds()
    spoilt = {spoil_json(whole, seed) for seed in range(50)}
    assert whole not in spoilt
    assert len(spoilt) > 45
