"""Lead in old paint.

Sources: 40 CFR 745.83 (minor repair: up to 6 sq ft of painted surface in a room, jobs within 30 days add up);
40 CFR 745 subpart E as a housing page has it (houses built before 1978); EPA's answers on what is measured.
"""

from __future__ import annotations

import pytest

from model.check.finding import Status
from model.check.house import check_house
from model.job import default_job, with_texts
from model.reference.cautions import LEAD_AREA, LEAD_DAYS, LEAD_YEAR
from model.reference.sourced import Standing
from model.surround import plan_surround


def test_the_lead_rule_is_about_houses_before_1978_six_square_feet_and_thirty_days():
    assert (LEAD_YEAR.value, LEAD_AREA.value, LEAD_DAYS.value) == (1978, 6, 30)
    assert {figure.standing for figure in (LEAD_YEAR, LEAD_AREA, LEAD_DAYS)} == {Standing.PUBLISHED}


@pytest.mark.parametrize(
    ("faces", "area", "applies"),
    # Whole faces of what comes off, in.: two column faces, a frieze and a shelf top; one column face; and a
    # strip of 1 in. sawn off a door 36 in. wide, which EPA counts as 36 sq in. Arithmetic.
    [
        ([(8, 48), (8, 48), (12, 60), (8, 72)], 14.33, True),
        ([(8, 48)], 2.67, False),
        ([(1, 36)], 0.25, False),
        ([(12, 72)], 6.0, False),
    ],
)
def test_the_renovation_rule_applies_over_six_square_feet(faces, area, applies):
    painted = sum(wide * tall for wide, tall in faces) / 144
    assert painted == pytest.approx(area, abs=0.005)
    job = with_texts(default_job(), [("house.year", "1960"), ("house.painted", f"{painted:.2f}")])
    (finding,) = check_house(plan_surround(job))
    assert (finding.status is Status.WARN) is applies


def test_a_house_of_1978_is_not_asked():
    """Built before 1978."""
    job = with_texts(default_job(), [("house.year", "1978"), ("house.painted", "14")])
    assert list(check_house(plan_surround(job))) == []
