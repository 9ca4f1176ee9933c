"""Records for scripts and tables in words, from made-up findings."""

from __future__ import annotations

from dataclasses import replace

import pytest

from app.records import check_lines, finding_record, guide_record, table_lines
from model.check.finding import Bound, Finding, Guide, Status
from model.reference.sourced import Standing
from model.units import FEET_INCHES_16, INCHES_16, MILLIMETRES
from render.checks_sheet import guide_texts

FAULT = Finding(
    check="mantel clearance",
    rule="invented rule 1",
    standing=Standing.PUBLISHED,
    source="Invented Code 1900",
    status=Status.FAIL,
    part="shelf",
    measured=11.123456789,
    limit=12.0,
    unit="in",
    message="The shelf is too low.",
    cure="Raise the shelf.",
)
UNKNOWN = replace(FAULT, status=Status.UNKNOWN, part="hearth", measured=None, limit=2.0, cure="")
SPAN = Guide(
    "Column width", 9.0, 4.5, 6.4375, "in", Standing.PUBLISHED, "Invented Author, 1700", "column.width"
)


def test_a_record_keeps_numbers_to_a_millionth_and_leaves_what_is_missing_empty():
    assert finding_record(FAULT)["measured"] == 11.123457
    assert finding_record(FAULT)["status"] == "fail"
    assert finding_record(UNKNOWN)["measured"] is None


@pytest.mark.parametrize(("own", "limit"), [(9.0, "most 6.4375"), (2.0, "least 4.5"), (5.0, "least 4.5")])
def test_a_guides_limit_is_the_end_of_the_advised_span_it_is_nearest_to(own, limit):
    guide = Guide(
        "Column width", own, 4.5, 6.4375, "in", Standing.PUBLISHED, "Invented Author", "column.width"
    )
    record = guide_record(guide, INCHES_16)
    said = (record["status"], record["measured"], f"{record['bound']} {record['limit']}", record["part"])
    assert said == ("pass", own, limit, "column")


def test_a_most_is_not_read_as_a_least():
    wide = replace(FAULT, measured=13.0, bound=Bound.MOST)
    assert 'shelf, mantel clearance: 13" measured, at most 12" wanted' in "\n".join(
        check_lines([wide], [], INCHES_16)
    )
    assert finding_record(wide)["bound"] == "most"
    assert finding_record(replace(FAULT, limit=None))["bound"] is None


def test_a_guide_says_its_own_beside_the_advised():
    assert (
        guide_record(SPAN, INCHES_16)["message"] == 'guide: column width: 9" here, 4 1/2" to 6 7/16" advised'
    )
    point = Guide("Shelf", 50.0, 48.0, 48.0, "in", Standing.COMMON_PRACTICE, "", "shelf.height")
    assert guide_texts(point, FEET_INCHES_16) == ("4'-2\"", "4'-0\"")
    assert guide_texts(point, MILLIMETRES) == ("1270 mm", "1219 mm")


def test_the_checks_read_as_sentences_with_their_source():
    text = "\n".join(check_lines([FAULT, UNKNOWN], [], INCHES_16))
    assert text.startswith('OVER       shelf, mantel clearance: 11 1/8" measured, at least 12" wanted\n')
    assert "           Cure: Raise the shelf.\n" in text
    assert "           invented rule 1: Invented Code 1900 [published]\n" in text
    assert 'NOT KNOWN  hearth, mantel clearance: not known measured, at least 2" wanted' in text
    assert "Checks: 1 over, 1 not known." in text
    assert "authority having jurisdiction decide" in " ".join(text.split())


def test_a_table_is_as_wide_as_its_widest_words_and_ends_without_blanks():
    lines = list(table_lines(("A", "Long", ""), [("aaa", "b", ""), ("a", "b", "tail")]))
    assert lines == ["A    Long", "aaa  b", "a    b     tail"]
