"""Values that have no say in a job as it stands. They keep what was entered for when they have one again."""

from __future__ import annotations

from model.build.mouldings import SQUARE
from model.check.regime import Regime, find_regime
from model.design import Design
from model.job import Job
from model.moulding.library import OWN
from model.units import MILLIMETRES_ONLY


def list_idle(job: Job) -> frozenset[str]:
    """Paths of the rows that change nothing now: a chart that does not govern, the size of no moulding."""
    idle: set[str] = set()
    if find_regime(job.site) is not Regime.CHART:
        idle |= {"chart.shelf", "chart.legs", "chart.source"}
    idle |= _list_idle_mouldings(job.design)
    if job.about.units == MILLIMETRES_ONLY:
        idle.add("job.precision")
    return frozenset(idle)


MOULDINGS = ("bed_mould", "capital", "plinth_cap", "panel_mould", "back_band")


def _list_idle_mouldings(design: Design) -> set[str]:
    """Rows of mouldings that are off, sizes of sections that keep their own, own sections not made use of."""
    idle: set[str] = set()
    used: set[str] = set()
    for path in MOULDINGS:
        moulding = getattr(design, path)
        if not moulding.on:
            idle |= {f"{path}.profile", f"{path}.size"}
            continue
        used.add(moulding.profile)
        if moulding.profile in OWN:
            idle.add(f"{path}.size")
    edge = design.shelf.edge_profile
    used.add(edge)
    if edge == SQUARE or edge in OWN:
        idle.add("shelf.edge_size")
    paths = ("own_section.first", "own_section.second", "own_section.third")
    return idle | {path for path, key in zip(paths, OWN, strict=True) if key not in used}
