"""Fit in the room, and what could not be built as asked."""

from __future__ import annotations

import pytest
from hypothesis import given

from model.check.finding import Finding, Status
from model.check.fit import check_fit
from model.job import default_job, with_texts, with_value
from model.surround import plan_surround
from tests.planned import plan_of
from tests.strategies import jobs


def _check(**texts: str) -> list[Finding]:
    pairs = [(path.replace("__", "."), text) for path, text in texts.items()]
    return list(check_fit(plan_surround(with_texts(default_job(), pairs))))


def _failing(**texts: str) -> list[Finding]:
    return [finding for finding in _check(**texts) if finding.status is Status.FAIL]


@given(jobs())
def test_every_shortfall_is_reported_once(job):
    surround = plan_of(job)
    failing = [f for f in check_fit(surround) if "cannot be built" in f.message]
    assert [f.path for f in failing] == [s.path for s in surround.layout.shortfalls]


def test_a_shortfall_says_what_was_asked_and_what_is_drawn():
    (finding,) = _failing(bed_mould__size="4")
    asked, reason = finding.message.split(", since ")
    assert asked == 'Bed mould size 4" cannot be built'
    assert reason.endswith('; 3" is drawn.')
    assert (finding.path, finding.part) == ("bed_mould.size", "mouldings")
    assert (finding.measured, finding.limit, finding.unit) == (4, 3, "in")


def test_a_count_that_cannot_be_built_has_no_unit():
    found = {f.path: f for f in _failing(frieze__panels="7", frieze__stile="8", column__margin="2")}
    finding = found["frieze.panels"]
    assert "panels 7 cannot be built" in finding.message
    assert finding.unit == ""


@pytest.mark.parametrize(("free", "status"), [("23 1/2", Status.PASS), ("23 7/16", Status.FAIL)])
def test_the_surround_fits_between_the_walls_to_a_hair(free, status):
    by_part = {f.part: f for f in _check(room__left=free, room__right="60")}
    assert by_part["left side"].status is status
    assert by_part["right side"].status is Status.PASS
    assert by_part["left side"].measured == 23.5


def test_a_shelf_too_long_is_shortened_first():
    (finding,) = _failing(room__right="22")
    assert (finding.path, finding.cure) == (
        "shelf.overhang_right",
        "Let the shelf's right end overhang no more than 1 1/2\".",
    )


def test_columns_come_in_where_the_shelf_is_not_to_blame():
    (finding,) = _failing(room__left="20")
    assert finding.path == "column.margin"
    assert finding.cure.startswith('Set the columns no more than 9 1/2" from the opening')


def test_columns_get_narrower_where_there_is_no_room_at_all():
    assert {f.path for f in _failing(room__left="5", room__right="5")} == {"column.width"}


def test_a_shelf_above_the_ceiling_does_not_fit():
    (finding,) = _failing(room__ceiling="50", facing__height="40")
    assert (finding.part, finding.measured, finding.limit) == ("shelf", 54, 50)
    assert finding.cure == 'Lower the shelf by at least 4".'
    assert _failing(room__ceiling="54", facing__height="40") == []


def test_heights_against_the_ceiling_count_from_the_floor():
    (finding,) = _failing(room__ceiling="56", hearth__height="4", hearth__width="100", hearth__depth="30")
    assert (finding.measured, finding.limit) == (58, 56)


def test_columns_half_on_a_raised_hearth_do_not_stand():
    (finding,) = _failing(hearth__height="6", hearth__width="72")
    assert finding.part == "plinths"
    assert "half on the raised hearth" in finding.message
    assert finding.cure == (
        "Set the columns at least 1'-6 3/4\" from the opening so that they stand on the floor, "
        "widen the hearth to 6'-6 1/2\", or let the columns step down to the floor."
    )


@pytest.mark.parametrize(
    "clear",
    [
        {"column__margin": "18 3/4"},
        {"hearth__width": "78 1/2"},
        {"hearth__height": "0"},
    ],
)
def test_columns_beside_on_or_level_with_the_hearth_do(clear):
    assert _failing(**({"hearth__height": "6", "hearth__width": "72"} | clear)) == []


def test_plinths_over_the_front_of_a_raised_hearth_do_not_stand():
    (finding,) = _failing(hearth__height="6", hearth__width="90", hearth__depth="4")
    assert (finding.measured, finding.limit, finding.path) == (4.75, 4, "column.projection")
    assert finding.cure == 'Let the columns stand out less, or bring the hearth out to 4 3/4".'


@pytest.mark.parametrize(("height", "status"), [(5.75, None), (5.6875, Status.WARN), (4.0, Status.WARN)])
def test_a_ledger_trimmed_to_a_low_frieze_is_pointed_out_but_fails_nothing(height, status):
    job = with_value(default_job(), "frieze.height", height)
    found = [f for f in check_fit(plan_surround(job)) if f.path == "nailer.ledger"]
    assert [f.status for f in found] == ([status] if status else [])


@pytest.mark.parametrize(
    ("out", "warns"), [(0.75, False), (1.0, False), (1.25, True), (1.4375, True), (1.5, False), (3.0, False)]
)
def test_an_overmantel_with_a_hollow_too_shallow_for_nailers_says_so(out, warns):
    job = with_value(with_value(default_job(), "over.on", True), "over.projection", out)
    surround = plan_surround(job)
    assert any(f.path == "over.projection" for f in check_fit(surround)) == warns
    nailed = any(board.role == "overmantel nailer" for board in surround.boards)
    assert not (warns and nailed)
