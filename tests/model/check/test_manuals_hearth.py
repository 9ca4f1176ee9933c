"""An appliance's hearth is held against the figures typed in from its manual, and against nothing else."""

from __future__ import annotations

import pytest

from model.check.finding import Finding, Status
from model.check.hearth import check_hearth
from model.job import default_job, with_texts, with_value
from model.surround import plan_surround

ASKED = {"chart__hearth_front": "18", "chart__hearth_side": "6", "chart__hearth_thickness": "1"}


def _check(**texts: str) -> dict[str, Finding]:
    pairs = [("site.fireplace", "gas")]
    pairs += [(path.replace("__", "."), text) for path, text in texts.items()]
    return {f.part: f for f in check_hearth(plan_surround(with_texts(default_job(), pairs)))}


def test_each_figure_is_held_against_the_hearth_as_measured():
    """20 in. before the facing; (72 - 36) / 2 = 18 in. beyond each side."""
    found = _check(**ASKED, hearth__thickness="1")
    assert {part: (f.status, f.measured, f.limit) for part, f in found.items()} == {
        "hearth, front": (Status.PASS, 20, 18),
        "hearth, sides": (Status.PASS, 18, 6),
        "hearth, thickness": (Status.PASS, 1, 1),
    }


@pytest.mark.parametrize(
    ("part", "texts", "path", "cure"),
    [
        (
            "hearth, front",
            {"hearth__depth": "17 15/16"},
            "hearth.depth",
            "Bring the hearth out to at least 1'-6\".",
        ),
        ("hearth, sides", {"hearth__width": "40"}, "hearth.width", "Widen the hearth to at least 4'-0\"."),
        (
            "hearth, thickness",
            {"hearth__thickness": "3/4"},
            "hearth.thickness",
            'Lay a hearth at least 1" thick.',
        ),
    ],
)
def test_what_is_too_small_fails_and_the_cure_passes(part, texts, path, cure):
    """The sides need 36 + 2 x 6 = 48 in. of width."""
    finding = _check(**ASKED, **texts)[part]
    assert (finding.status, finding.path, finding.cure) == (Status.FAIL, path, cure)
    assert finding.rule == "the appliance's manual"


def test_slips_to_be_laid_take_from_what_counts_from_the_facing():
    """18 1/2 in. of hearth, 3/4 in. of slips: 17 3/4 in. are left of the 18, and 18 3/4 would do."""
    finding = _check(**ASKED, hearth__depth="18 1/2", facing__added="3/4")["hearth, front"]
    assert (finding.status, finding.measured) == (Status.FAIL, 17.75)
    assert "the slips to be laid" in finding.message
    assert finding.cure == "Bring the hearth out to at least 1'-6 3/4\"."
    assert _check(**ASKED, hearth__depth="18 3/4", facing__added="3/4")["hearth, front"].status is Status.PASS


def test_what_was_not_looked_up_is_asked_for_beside_what_was():
    found = _check(chart__hearth_front="18")
    assert found["hearth, front"].status is Status.PASS
    sides = found["hearth, sides"]
    assert (sides.status, sides.path, sides.limit) == (Status.UNKNOWN, "chart.hearth_side", None)


def test_none_asked_for_is_within_whatever_the_hearth_is():
    found = _check(chart__hearth_front="0", chart__hearth_side="0", chart__hearth_thickness="0")
    assert {f.status for f in found.values()} == {Status.PASS}


def test_a_figure_in_decimals_ends_its_sentence_with_one_stop():
    """As wide as is asked for but for a hair, so that only decimals tell."""
    job = with_texts(default_job(), [("site.fireplace", "gas")])
    job = with_value(with_value(job, "hearth.depth", 19.999), "chart.hearth_front", 20.001)
    found = {f.part: f for f in check_hearth(plan_surround(job))}["hearth, front"]
    assert found.message.endswith("asks for 20.0010 in.")


def test_a_thickness_that_was_not_measured_is_not_known():
    finding = _check(**ASKED)["hearth, thickness"]
    assert (finding.status, finding.path) == (Status.UNKNOWN, "hearth.thickness")


def test_the_manual_is_named_as_it_was_typed():
    assert _check(**ASKED, chart__source="Manual A, page 12")["hearth, front"].source == "Manual A, page 12"
    assert "not named" in _check(**ASKED)["hearth, front"].source


def test_masonry_asks_the_code_and_not_the_manual():
    found = _check(**ASKED, site__fireplace="masonry")
    assert found["hearth, front"].rule.startswith("IRC")


def test_a_manual_that_asks_for_no_hearth_is_content_where_what_was_added_reaches_beyond_it():
    texts = {"hearth__depth": "0", "facing__added": "3", "chart__hearth_front": "0", "site__rule": "manual"}
    front = _check(**texts)["hearth, front"]
    assert (front.status, front.measured, front.limit) == (Status.PASS, 0, 0)
