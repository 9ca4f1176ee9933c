"""A set over the shelf is held to how far one looks up; worked figures by hand."""

from __future__ import annotations

import pytest

from model.check.finding import Status
from model.check.television import check_television
from model.job import default_job, with_texts
from model.surround import plan_surround


def _find(**texts: str):
    pairs = [(path.replace("__", "."), text) for path, text in texts.items()]
    return list(check_television(plan_surround(with_texts(default_job(), pairs))))


def test_without_a_set_nothing_is_said():
    assert _find() == []


def test_a_55_inch_set_over_a_shelf_at_54_inches():
    """26.96 in. high, 2 in. over the shelf: its middle is at 69.48, 12.9 degrees up from an eye at 42."""
    (found,) = _find(tv__diagonal="55")
    assert found.measured == pytest.approx(12.9, abs=0.05)
    assert found.status is Status.PASS
    assert "top edge 18.8" in found.message
    assert "manual" in found.message


def test_nearer_by_it_is_too_high_and_the_cure_brings_it_down():
    (found,) = _find(tv__diagonal="55", tv__away="84")
    assert found.status is Status.WARN
    assert found.cure.startswith("Bring its middle down to")
