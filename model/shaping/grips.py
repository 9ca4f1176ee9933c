"""Every edge of the elevations that can be taken hold of. Where a view has its edges stands beside this."""

from __future__ import annotations

from collections.abc import Iterator

from model.idle import list_idle
from model.job import Job
from model.shaping.front_edges import list_front_edges
from model.shaping.grip import Edge, Grip, read_built
from model.shaping.side_edges import list_side_edges
from model.surround import Surround

VIEWS = {"front": list_front_edges, "side": list_side_edges}
"""The views that can be shaped, and where their edges are listed."""
LEAST_EDGE = 1 / 8
"""An edge shorter than this, in., is no edge to take hold of. Shop choice."""


def list_grips(surround: Surround, view: str) -> tuple[Grip, ...]:
    """The edges of `view` from the floor up, the wider parts first; none for views that are not shaped."""
    if view not in VIEWS:
        return ()
    return tuple(_grips(surround.asked or surround.job, surround, view))


def _grips(job: Job, surround: Surround, view: str) -> Iterator[Grip]:
    idle = list_idle(job)
    for edge in VIEWS[view](surround):
        value = read_built(job, surround.layout, edge.path)
        drawn = tuple(segment for segment in edge.segments if _length(segment) >= LEAST_EDGE)
        if value is not None and drawn and edge.path not in idle:
            yield _grip(edge, view, drawn, value)


def _grip(edge: Edge, view: str, drawn: tuple[tuple[float, float, float, float], ...], value: float) -> Grip:
    return Grip(edge.path, view, edge.name, drawn, edge.way, edge.factor, value, edge.also)


def _length(segment: tuple[float, float, float, float]) -> float:
    x0, y0, x1, y1 = segment
    return abs(x1 - x0) + abs(y1 - y0)


def find_grip(grips: tuple[Grip, ...], key: tuple[str, str, str]) -> Grip | None:
    """The grip with that key, None where there is none any more."""
    return next((grip for grip in grips if grip.key == key), None)
