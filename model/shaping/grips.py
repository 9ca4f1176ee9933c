"""Every edge of the elevations that can be taken hold of. Where a view has its edges stands beside this."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from model.idle import list_idle
from model.shaping.front_edges import list_front_edges
from model.shaping.grip import Edge, Grip, Key, read_built
from model.shaping.side_edges import list_side_edges
from model.surround import Surround

VIEWS = {"front": list_front_edges, "side": list_side_edges}
"""The views that can be shaped, and where their edges are listed."""
LEAST_EDGE = 1 / 8
"""An edge shorter than this, in., is no edge to take hold of. Shop choice."""


def list_grips(surround: Surround, view: str) -> tuple[Grip, ...]:
    """The edges of `view` from the floor up, the wider parts first; none for views that are not shaped."""
    return tuple(_grips(surround, view, VIEWS[view](surround))) if view in VIEWS else ()


def follow_grip(surround: Surround, key: Key) -> Grip | None:
    """The edge with that key alone, None where it has none any more; it must be one of a shaped view."""
    view, name, path = key
    edges = (edge for edge in VIEWS[view](surround) if (edge.name, edge.path) == (name, path))
    return next(_grips(surround, view, edges), None)


def _grips(surround: Surround, view: str, edges: Iterable[Edge]) -> Iterator[Grip]:
    job = surround.asked or surround.job
    idle = list_idle(job)
    for edge in edges:
        value = read_built(job, surround.layout, edge.path)
        drawn = tuple(segment for segment in edge.segments if _length(segment) >= LEAST_EDGE)
        if value is not None and drawn and edge.path not in idle:
            yield _grip(edge, view, drawn, value)


def _grip(edge: Edge, view: str, drawn: tuple[tuple[float, float, float, float], ...], value: float) -> Grip:
    return Grip(edge.path, view, edge.name, drawn, edge.way, edge.factor, value, edge.also)


def _length(segment: tuple[float, float, float, float]) -> float:
    x0, y0, x1, y1 = segment
    return abs(x1 - x0) + abs(y1 - y0)


def find_grip(grips: tuple[Grip, ...], key: Key) -> Grip | None:
    """The grip with that key, None where there is none any more."""
    return next((grip for grip in grips if grip.key == key), None)
