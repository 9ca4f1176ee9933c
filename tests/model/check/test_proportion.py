"""Guides: published advice beside a design's own values, never a judgement."""

from __future__ import annotations

from dataclasses import fields
from math import isfinite

from hypothesis import given

from model.check.finding import Guide
from model.check.proportion import list_guides
from model.job import default_job
from model.parameters import BY_PATH
from model.surround import plan_surround
from tests.strategies import jobs


@given(jobs())
def test_any_job_has_its_guides(job):
    for guide in list_guides(plan_surround(job)):
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
