"""Values that have no say in a job as it stands. They keep what was entered for when they have one again."""

from __future__ import annotations

from model.check.regime import Regime, find_regime
from model.job import Job
from model.units import MILLIMETRES_ONLY


def list_idle(job: Job) -> frozenset[str]:
    """Paths of the rows that change nothing now: a chart that does not govern, the size of no moulding."""
    idle: set[str] = set()
    if find_regime(job.site) is not Regime.CHART:
        idle |= {"chart.shelf", "chart.legs", "chart.source"}
    if not job.design.bed_mould.on:
        idle.add("bed_mould.size")
    if job.about.units == MILLIMETRES_ONLY:
        idle.add("job.precision")
    return frozenset(idle)
