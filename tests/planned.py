"""The last designs that tests asked for, worked out once for all of them. No claims.

What comes out is never changed, so whoever asks after another gets what they would have worked out. The
benches that hold every claim against each design spend most of their time here.
"""

from __future__ import annotations

from functools import lru_cache

from model.job import Job
from model.surround import Surround, plan_surround
from model.takeoff.surfaces import Surfaces
from model.takeoff.takeoff import Takeoff, take_off

KEPT = 2
"""Designs kept; two, for claims that hold one against another."""


@lru_cache(KEPT)
def plan(job: Job) -> Surround:
    """`job` worked out."""
    return plan_surround(job)


@lru_cache(KEPT)
def take(job: Job) -> Takeoff:
    """All lists of `job`."""
    return take_off(plan(job))


def list_faces_of(job: Job) -> Surfaces:
    """The surfaces of `job`'s boards."""
    return take(job).surfaces
