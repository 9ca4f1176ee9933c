"""The caution for hidden framing on the masonry's front."""

from __future__ import annotations

import pytest

from app.demo import read_demo
from model.board import Stock, StockKind, block
from model.check.concealed import BESIDE, check_concealed
from model.check.finding import Status
from model.job import default_job, with_texts
from model.surround import plan_surround
from tests.wood import surround_of

FRAMING = Stock(StockKind.FRAMING, 1.5, "framing")


def _check(**texts: str):
    pairs = [(path.replace("__", "."), text) for path, text in texts.items()]
    return check_concealed(plan_surround(with_texts(default_job(), pairs)))


def test_nailers_on_the_masonry_are_a_caution_naming_every_one():
    (finding,) = _check()
    assert (finding.status, finding.measured, finding.limit) == (Status.WARN, 0, 2)
    assert finding.rule == "IRC R1001.11"
    surround = plan_surround(default_job())
    framing = {
        m for m, b in zip(surround.marks, surround.boards, strict=True) if b.stock.kind is StockKind.FRAMING
    }
    assert set(finding.boards) == framing
    assert "authority" in finding.cure


@pytest.mark.parametrize(("rule", "count"), [("irc", 1), ("strictest", 1), ("nfpa211", 0), ("manual", 0)])
def test_the_caution_comes_with_the_irc_only(rule, count):
    assert len(_check(site__rule=rule)) == count


def test_nailers_on_the_wall_beside_a_narrow_facing_are_no_concern():
    assert _check(facing__width="60") != ()
    beside = block("column nailer", "nailers", FRAMING, "y", (40, 41.5), (0, 50), (0, 1.5))
    assert check_concealed(surround_of(beside)) == ()


@pytest.mark.parametrize(("off", "count"), [(0, 1), (1.9, 1), (2, 0)])
def test_two_inches_of_air_are_enough(off, count):
    piece = block("column nailer", "nailers", FRAMING, "y", (30, 31.5), (0, 50), (off, off + 1.5))
    found = check_concealed(surround_of(piece))
    assert len(found) == count
    assert all(finding.measured == off for finding in found)


def test_framing_beside_a_breast_that_stands_proud_keeps_two_inches_off_its_sides():
    """IRC R1001.11: 2 in. from front faces and sides. Nailers on the wall 1 3/4 in. off, and 2 in. off."""

    def beside(wide):
        job = with_texts(read_demo("brick"), [("facing.proud", "3"), ("facing.width", wide)])
        return [f for f in check_concealed(plan_surround(job)) if f.part == BESIDE]

    (own,) = beside("84")
    assert (own.status, own.measured, own.limit) == (Status.WARN, 1.75, 2)
    assert "1 3/4" in own.message
    (nearer,) = beside("84 1/2")
    assert nearer.measured == 1.5
    assert beside("83 1/2") == []


def test_a_facing_flush_with_the_wall_has_no_sides():
    job = with_texts(read_demo("brick"), [("facing.proud", "0")])
    assert [f for f in check_concealed(plan_surround(job)) if f.part == BESIDE] == []
