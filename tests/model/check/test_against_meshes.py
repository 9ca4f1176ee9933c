"""Clearances agree with points all over the boards' meshes; `tests.bench.clearances` tries hundreds."""

from __future__ import annotations

from hypothesis import given, settings

from tests.brute_clearance import list_disagreements
from tests.wrong_designs import designs


@settings(max_examples=25)
@given(designs())
def test_no_point_of_any_mesh_says_otherwise_than_the_findings(job):
    assert list(list_disagreements(job)) == []
