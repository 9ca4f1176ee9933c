"""Measurements that contradict each other."""

from __future__ import annotations

import pytest

from model.check.finding import Status
from model.check.survey import check_survey
from model.job import default_job, with_texts
from model.surround import plan_surround


def _check(**texts: str):
    pairs = [(path.replace("__", "."), text) for path, text in texts.items()]
    return check_survey(plan_surround(with_texts(default_job(), pairs)))


def test_measurements_that_agree_raise_nothing():
    assert _check() == ()


@pytest.mark.parametrize(
    ("texts", "path", "message"),
    [
        (
            {"facing__width": "30"},
            "facing.width",
            'The facing is 30" wide, less than the opening, which is 36".',
        ),
        (
            {"facing__height": "29"},
            "facing.height",
            'The facing is 29" high, less than the opening, which is 30".',
        ),
        (
            {"hearth__width": "35"},
            "hearth.width",
            'The hearth is 35" wide, less than the opening, which is 36".',
        ),
        (
            {"facing__width": "100", "room__left": "30"},
            "facing.width",
            'The facing is 100" wide, but centred on the opening there is room for 96" only.',
        ),
        (
            {"hearth__width": "98", "room__right": "30"},
            "hearth.width",
            'The hearth is 98" wide, but centred on the opening there is room for 96" only.',
        ),
        (
            {"facing__height": "95", "hearth__height": "4"},
            "facing.height",
            "The facing's top lies 8'-3\" over the floor, above the ceiling at 8'-0\".",
        ),
    ],
)
def test_a_contradiction_is_named_with_both_readings(texts, path, message):
    (finding,) = _check(**texts)
    assert (finding.status, finding.check) == (Status.FAIL, "survey")
    assert (finding.path, finding.message, finding.cure) == (path, message, "Measure again.")


def test_readings_that_just_agree_do_not_contradict():
    assert _check(facing__width="36", facing__height="30", hearth__width="36") == ()
    assert _check(facing__width="96", room__left="30") == ()
    assert _check(facing__height="96") == ()
