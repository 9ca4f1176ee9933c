"""Guides: published advice beside a design's own values, never a judgement."""

from __future__ import annotations

from dataclasses import fields
from math import isfinite

import pytest
from hypothesis import given

from model.check.finding import Guide
from model.check.proportion import list_guides
from model.job import default_job
from model.parameters import BY_PATH
from model.surround import plan_surround
from tests.planned import plan_of
from tests.strategies import jobs


@given(jobs())
def test_any_job_has_its_guides(job):
    for guide in list_guides(plan_of(job)):
        assert isfinite(guide.own)
        assert 0 < guide.advised_low <= guide.advised_high
        assert guide.source
        assert guide.path in BY_PATH


def test_guides_have_no_status_to_fail_by():
    assert "status" not in {field.name for field in fields(Guide)}


def test_vignola_and_le_muet_are_among_them_and_names_are_told_apart():
    guides = list_guides(plan_surround(default_job()))
    assert any("Vignola" in guide.source for guide in guides)
    assert any("Le Muet" in guide.source for guide in guides)
    assert len({guide.name for guide in guides}) == len(guides)


def test_own_values_are_those_of_the_design():
    own = {guide.name: guide.own for guide in list_guides(plan_surround(default_job()))}
    assert own["Frieze and shelf to column, a quarter"] == 11
    assert own["Column width to height, by the orders"] == 7.5
    assert own["Frieze to column width, three quarters"] == 7.5
    assert own["Shelf and bed mould to column width"] == 3.5
    assert own["Shelf over the floor"] == 54


def test_lines_lie_where_the_advised_sizes_end():
    """Le Muet: the column's face a sixth to a fifth of the opening; drawn from the column's inner side."""
    surround = plan_surround(default_job())
    guide = next(
        g for g in list_guides(surround) if g.name == "Column width to opening width, as an architrave"
    )
    inner = surround.layout.right.inner
    xs = sorted({abs(x0) for x0, _, _, _ in guide.lines})
    assert xs == pytest.approx([inner + 36 / 6, inner + 36 / 5])
    shelf = next(g for g in list_guides(surround) if g.name == "Shelf over the floor")
    assert sorted(y0 - surround.layout.floor for _, y0, _, _ in shelf.lines) == [48, 60]


@given(jobs())
def test_each_guide_of_any_job_has_its_lines(job):
    for guide in list_guides(plan_of(job)):
        ends = {guide.advised_low, guide.advised_high}
        assert len(guide.lines) == len(ends) * (2 if guide.path in ("column.width", "opening.width") else 1)
