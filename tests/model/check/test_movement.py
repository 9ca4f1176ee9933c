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
    # 11 1/4 in. of flat-sawn yellow poplar, shrinking 8.2 %; air of 30 and 55 % at 70 degrees F makes 6.2
    # and 10.1 % moisture. Put out of use: 11.25 * (10.1 - 6.2) / (3000 / 8.2 - 30 + 6.2) = 0.128 in.;
    # with a fire that dries it to 4 %: 11.25 * (10.1 - 4) / (3000 / 8.2 - 30 + 4) = 0.202 in.
    (cold,) = find(shelf__kind="plank", shelf__depth="11 1/4", site__fireplace="not_in_use")
    assert cold.measured == pytest.approx(0.128, abs=0.002)
    (finding,) = find(shelf__kind="plank", shelf__depth="11 1/4")
    assert finding.measured == pytest.approx(0.202, abs=0.002)
    assert finding.status is Status.PASS
    assert "1/8" in finding.message or "3/16" in finding.message
    (oak,) = find(shelf__kind="plank", shelf__depth="11 1/4", board__species="red_oak")
    assert oak.measured > finding.measured


def test_a_plank_too_deep_for_slotted_holes_is_cautioned():
    (finding,) = find(shelf__kind="plank", column__projection="16", shelf__depth="24")
    assert finding.status is Status.WARN
    assert finding.cure


def test_a_plain_frieze_moves_with_its_height_and_a_framed_one_is_not_asked():
    low, high = (find(frieze__kind="plain", frieze__height=h)[0] for h in ("6", "14"))
    assert (low.status, high.status) == (Status.PASS, Status.WARN)
    assert "slide" in high.cure


def test_a_damper_room_moves_wood_more():
    usual, damp = (find(frieze__kind="plain", room__dampest=h)[0].measured for h in ("55", "75"))
    assert damp > usual
