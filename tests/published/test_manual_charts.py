"""Tables of appliances' manuals, read as they are printed. Illustrations of their shapes: none is a default.

Published second-hand, from stored copies of manuals whose makers are not named here: an insert with a facing
(shelf to 6 in. deep 7 in. up, to 12 in. as high as deep; legs to 3 in. 6 in. aside, to 12 in. 12 in.); a gas
unit measured from its outlet (8 in. deep 22 in. up; deeper 14 in. and the depth); logs without a hood; a
heater without and with one; a factory-built unit.
"""

from __future__ import annotations

from math import inf

import numpy as np
import pytest

from model.check.chart import read_chart
from model.job import default_job, with_texts
from model.parameters import BY_PATH

INSERT = [("chart.shelf", "6 : 7; 12 : 12"), ("chart.legs", "3 : 6; 12 : 12")]
OUTLET = [
    ("chart.shelf", "8 : 22"),
    ("chart.datum", "outlet"),
    ("chart.datum_height", "27"),
    ("chart.plus", "14"),
]
LOGS = [("chart.shelf", "2 1/2 : 18; 6 : 20; 8 : 22; 10 : 24")]
HEATER = [
    ("chart.shelf", "2 1/2 : 14; 6 : 20 1/2; 8 : 24 5/8; 10 : 28"),
    ("chart.shelf_hood", "2 1/2 : 8; 6 : 14 1/2; 8 : 18 5/8; 10 : 22 1/2; 12 : 26"),
]
FACTORY = [("chart.shelf", "1 1/2 : 6; 12 : 12")]


def _least(rows, projection: float, which: str = "above") -> float:
    texts = [("site.rule", "manual"), ("opening.height", "30"), *rows]
    chart = read_chart(with_texts(default_job(), texts).site)
    return float(getattr(chart, which).least(np.array([projection]))[0])


@pytest.mark.parametrize(
    ("rows", "projection", "height"),
    [
        (INSERT, 6, 7),
        (INSERT, 12, 12),
        (INSERT, 12.25, inf),
        (LOGS, 2.5, 18),
        (LOGS, 8, 22),
        (LOGS, 9, 24),
        (LOGS, 10.5, inf),
        (HEATER, 6, 20.5),
        (HEATER, 10, 28),
        (HEATER, 12, inf),
        ([*HEATER, ("chart.hood", "yes")], 8, 18.625),
        ([*HEATER, ("chart.hood", "yes")], 12, 26),
        (FACTORY, 1.5, 6),
        (FACTORY, 8, 12),
    ],
)
def test_heights_over_the_opening_are_those_that_are_printed(rows, projection, height):
    assert _least(rows, projection) == pytest.approx(height)


@pytest.mark.parametrize(("projection", "aside"), [(3, 6), (8, 12), (12, 12), (12.5, inf)])
def test_legs_stand_off_as_it_is_printed(projection, aside):
    assert _least(INSERT, projection, "beside") == pytest.approx(aside)


@pytest.mark.parametrize(("depth", "over_outlet"), [(8, 22), (12, 26), (10, 24)])
def test_heights_from_the_outlet_are_those_from_its_top(depth, over_outlet):
    """The outlet's top is 27 in. up, the opening's 30: 22 over the outlet is 49 over the unit's floor."""
    assert _least(OUTLET, depth) + 30 == pytest.approx(27 + over_outlet)


def test_one_shelf_8_in_deep_has_no_height_that_all_would_take():
    """8, 22 and 24 5/8 in. by three manuals and 12 in. by the masonry rule: so no chart is shipped."""
    found = {_least(rows, 8) for rows in (LOGS, HEATER)} | {12.0}
    assert len(found) == 3
    assert BY_PATH["chart.shelf"].default == ()
    assert BY_PATH["chart.legs"].default == ()
    assert BY_PATH["chart.shelf_hood"].default == ()
