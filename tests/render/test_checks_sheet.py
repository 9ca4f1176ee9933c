"""The checks on paper: order, words, sources; guides and cautions apart from them."""

from dataclasses import replace

import pytest

from model.check.finding import Finding, Guide, Status
from model.job import default_job, with_value
from model.reference.sourced import Standing
from model.surround import plan_surround
from model.units import FEET_INCHES_16, INCHES_16, MILLIMETRES
from render.checks_sheet import checks_strips, count_findings, source_text, value_texts
from render.drawing import Drawing
from render.extent import list_texts
from render.tables import pour_strips

WIDTH = 9.5
OVER = Finding(
    check="mantel clearance",
    rule="IRC R1001.11 exception 4",
    standing=Standing.PUBLISHED,
    source="IRC 2018 R1001.11 exception 4",
    status=Status.FAIL,
    part="left column",
    measured=11.0,
    limit=12.0,
    unit="in",
    message="It stands out 5 in.",
    cure="Move the columns out by 1 in.",
)
WITHIN = replace(OVER, status=Status.PASS, part="frieze", cure="")
CLOSE = replace(OVER, status=Status.WARN, part="shelf", cure="")
UNKNOWN = replace(OVER, status=Status.UNKNOWN, part="hearth", measured=None, limit=None)
GUIDE = Guide("Entablature to column", 10.0, 9.0, 11.0, "in", Standing.PUBLISHED, "Vignola, 1673")


@pytest.fixture(scope="module")
def surround():
    return plan_surround(default_job())


def words_of(strips):
    page = pour_strips(strips, (0, 0), 1000)[0]
    return [text.text for text in list_texts(Drawing(page))]


def test_findings_stand_worst_first_whatever_their_order(surround):
    words = words_of(checks_strips(surround, (WITHIN, CLOSE, OVER, UNKNOWN), (), WIDTH))
    places = [words.index(word) for word in ("over", "not known", "close", "within")]
    assert places == sorted(places)


def test_a_finding_says_part_measured_allowed_rule_standing_and_cure(surround):
    words = words_of(checks_strips(surround, (OVER,), (), WIDTH))
    text = " ".join(words)
    for said in (
        "left column",
        '11"',
        '12"',
        "It stands out 5 in.",
        "Cure: Move the columns out by 1 in.",
    ):
        assert said in text
    assert "[published]" in text
    assert "IRC 2018 R1001.11" in text


def test_what_is_not_known_shows_no_figures(surround):
    words = words_of(checks_strips(surround, (UNKNOWN,), (), WIDTH))
    assert "not known" in words
    assert "0" not in words
    assert '0"' not in words


def test_counts_name_every_answer_that_was_given_worst_first():
    assert count_findings((WITHIN, OVER, WITHIN, CLOSE)) == "1 over, 1 close, 2 within"


def test_no_checks_are_not_called_within():
    assert count_findings(()) == "none made"


def test_guides_are_listed_apart_and_called_guides(surround):
    words = words_of(checks_strips(surround, (OVER,), (GUIDE,), WIDTH))
    assert words.index("Guides to proportion") > words.index("over")
    assert "never rules" in " ".join(words)
    assert '9" to 11"' in words


def test_a_guide_with_one_advised_value_shows_it_once(surround):
    words = words_of(checks_strips(surround, (), (replace(GUIDE, advised_high=9.0),), WIDTH))
    assert '9"' in words


def test_notes_of_the_job_are_printed_line_by_line():
    job = with_value(default_job(), "job.notes", "jamb leans\nkeep the grate")
    words = words_of(checks_strips(plan_surround(job), (), (), WIDTH))
    assert words[words.index("Notes for this job") + 1 :][:2] == ["jamb leans", "keep the grate"]


def test_without_notes_no_heading_is_printed(surround):
    assert "Notes for this job" not in words_of(checks_strips(surround, (), (), WIDTH))


def test_values_that_round_alike_and_differ_are_written_in_decimals():
    assert value_texts(11.9999, 12.0, "in", FEET_INCHES_16) == ("11.9999 in.", "12.0000 in.")


def test_equal_values_stay_plain():
    assert value_texts(12.0, 12.0, "in", INCHES_16) == ('12"', '12"')


def test_other_units_are_written_with_their_unit():
    assert value_texts(6.25, 6.0, "sq ft", INCHES_16) == ("6.25 sq ft", "6 sq ft")


def test_clearances_stand_in_inches_as_the_codes_write_them():
    assert value_texts(13.75, 12.0, "in", FEET_INCHES_16) == ('13 3/4"', '12"')
    assert value_texts(13.75, 12.0, "in", MILLIMETRES) == ("349 mm", "305 mm")


def test_one_value_alone_leaves_the_other_empty():
    assert value_texts(13.75, None, "in", INCHES_16) == ('13 3/4"', "")


def test_a_source_that_says_its_rule_is_not_given_it_twice():
    rule, source = "IRC R1001.11 exception 4", "IRC 2018 R1001.11 exception 4 (same text in IRC 2009)"
    assert source_text(rule, source, Standing.PUBLISHED) == f"{source} [published]"
    assert source_text("Manual", "page 12", Standing.PUBLISHED) == "Manual: page 12 [published]"
    assert source_text("Margin", "", Standing.SHOP_CHOICE) == "Margin [shop choice]"
    assert source_text("", "", Standing.COMMON_PRACTICE) == "[common practice]"
