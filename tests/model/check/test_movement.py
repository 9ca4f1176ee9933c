"""A solid shelf's movement is named with the way to fix it; a built-up one has none."""

import pytest

from model.check.finding import Status
from model.check.movement import check_movement
from model.job import default_job, with_texts
from model.surround import plan_surround


def find(**texts):
    settings = [(path.replace("__", "."), text) for path, text in texts.items()]
    return list(check_movement(plan_surround(with_texts(default_job(), settings))))


def test_a_built_up_shelf_is_not_asked():
    assert find() == []


def test_a_planks_movement_follows_its_depth_and_wood():
    # 11 1/4 in. of flat-sawn yellow poplar, 6 to 10 %: 11.25 * 0.00289 * 4 = 0.130 in.
    (finding,) = find(shelf__kind="plank", shelf__depth="11 1/4")
    assert finding.measured == pytest.approx(0.130, abs=0.0005)
    assert finding.status is Status.PASS
    assert "1/8" in finding.message or "3/16" in finding.message
    (oak,) = find(shelf__kind="plank", shelf__depth="11 1/4", board__species="red_oak")
    assert oak.measured > finding.measured


def test_a_plank_too_deep_for_slotted_holes_is_cautioned():
    (finding,) = find(shelf__kind="plank", column__projection="16", shelf__depth="24")
    assert finding.status is Status.WARN
    assert finding.cure
