"""The last designs that tests asked for, worked out once for all of them. No claims.

What comes out is never changed, so whoever asks after another gets what they would have worked out. The
benches that hold every claim against each design spend most of their time here.
"""

from __future__ import annotations

from functools import lru_cache

from model.check.all import check_surround
from model.check.finding import Finding
from model.job import Job
from model.surround import Surround, plan_surround
from model.takeoff.cut_list import Cut, list_cuts
from model.takeoff.surfaces import Surfaces
from model.takeoff.takeoff import Takeoff, take_off
from render.drawing import Drawing
from render.explained import draw_explanation

KEPT = 2
"""Designs kept; two, for claims that hold one against another."""


@lru_cache(KEPT)
def plan_of(job: Job) -> Surround:
    """`job` worked out."""
    return plan_surround(job)


@lru_cache(KEPT)
def findings_of(job: Job) -> tuple[Finding, ...]:
    """What the rules say of `job`."""
    return check_surround(plan_of(job))


@lru_cache(KEPT)
def pictures_of(job: Job) -> tuple[Drawing, ...]:
    """The drawings that go with what the rules say."""
    return tuple(draw_explanation(plan_of(job), finding) for finding in findings_of(job))


@lru_cache(KEPT)
def cuts_of(job: Job) -> tuple[Cut, ...]:
    """The cut list of `job`."""
    return list_cuts(plan_of(job))


@lru_cache(KEPT)
def take(job: Job) -> Takeoff:
    """All lists of `job`."""
    return take_off(plan_of(job))


def list_faces_of(job: Job) -> Surfaces:
    """The surfaces of `job`'s boards."""
    return take(job).surfaces
