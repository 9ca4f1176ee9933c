"""Standard scales and sheet sizes, from published lists; never worked out by the program."""

import pytest

from model.units import MM_PER_INCH
from render.scales import ARCHITECTURAL, METRIC
from render.sheets import PAPERS

# Name, ratio, and a 60 x 54 in. surround on paper (inches, to 1/1000) at that scale.
# Set of scales: "Fundamentals - Drawings and Specifications" (Workforce LibreTexts), architect's scale
# rulers; ratio of the 1/4 in. scale: US Navy construction drafting manual, NAVEDTRA 14027. Paper sizes are
# arithmetic on them.
ARCHITECTS_RULE = [
    ("Full size", 1, 60.0, 54.0),
    ('6" = 1\'-0"', 2, 30.0, 27.0),
    ('3" = 1\'-0"', 4, 15.0, 13.5),
    ('1 1/2" = 1\'-0"', 8, 7.5, 6.75),
    ('1" = 1\'-0"', 12, 5.0, 4.5),
    ('3/4" = 1\'-0"', 16, 3.75, 3.375),
    ('1/2" = 1\'-0"', 24, 2.5, 2.25),
    ('3/8" = 1\'-0"', 32, 1.875, 1.688),
    ('1/4" = 1\'-0"', 48, 1.25, 1.125),
    ('3/16" = 1\'-0"', 64, 0.938, 0.844),
    ('1/8" = 1\'-0"', 96, 0.625, 0.563),
    ('1/16" = 1\'-0"', 192, 0.313, 0.281),  # from memory
]

# EN ISO 5455:1994, clauses 3 to 5: full size and reductions, and their decimal multiples.
ISO_REDUCTIONS = [
    ("1:1", 1),
    ("1:2", 2),
    ("1:5", 5),
    ("1:10", 10),
    ("1:20", 20),
    ("1:50", 50),
    ("1:100", 100),
    ("1:200", 200),
]

# ANSI/ASME Y14.1 sizes A and B in inches; ISO 216 sizes A4 and A3 in millimetres. Long side first.
SHEETS_IN = [("letter", 11, 8.5), ("tabloid", 17, 11)]
SHEETS_MM = [("a4", 297, 210), ("a3", 420, 297)]


@pytest.mark.parametrize(("name", "ratio", "width", "height"), ARCHITECTS_RULE)
def test_each_scale_of_an_architects_rule_is_offered_at_its_ratio(name, ratio, width, height):
    scale = {scale.name: scale for scale in ARCHITECTURAL}[name]
    assert scale.ratio == ratio
    assert round(60 / scale.ratio + 1e-9, 3) == width
    assert round(54 / scale.ratio + 1e-9, 3) == height


def test_no_scale_is_offered_that_no_architects_rule_has():
    assert {scale.name for scale in ARCHITECTURAL} == {row[0] for row in ARCHITECTS_RULE}


def test_metric_scales_are_the_reductions_of_iso_5455():
    assert [(scale.name, scale.ratio) for scale in METRIC] == ISO_REDUCTIONS


@pytest.mark.parametrize(("paper", "width", "height"), SHEETS_IN)
def test_inch_sheets_have_their_standard_size(paper, width, height):
    assert PAPERS[paper] == (width, height)


@pytest.mark.parametrize(("paper", "width", "height"), SHEETS_MM)
def test_metric_sheets_have_their_standard_size(paper, width, height):
    assert PAPERS[paper][0] * MM_PER_INCH == pytest.approx(width, abs=1e-9)
    assert PAPERS[paper][1] * MM_PER_INCH == pytest.approx(height, abs=1e-9)
