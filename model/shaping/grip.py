"""What an edge is that can be taken hold of, and the job that comes of moving it.

Which edges there are stands in front_edges and side_edges beside this.
"""

from __future__ import annotations

from dataclasses import dataclass

from model.build.lines import Layout
from model.job import Job, read_value, with_value
from model.parameters import find_parameter
from model.sentences import capitalise

Segment = tuple[float, float, float, float]
Key = tuple[str, str, str]
"""An edge's view, its name in that and its row."""
ACROSS, UP = 0, 1
"""Which way an edge is moved: along the first coordinate of its view, or along the second."""


@dataclass(frozen=True, slots=True)
class Grip:
    """An edge of a view: where it is drawn, which way it moves, and the parameter that moves it.

    `segments` are x0, y0, x1, y1 in the view's inches, `way` is ACROSS or UP. `factor` is how many inches
    the parameter changes for each that the edge moves along its way. `value` is what the parameter is built
    as now. `name` is the edge in the trade's words; no other edge of its view has it. `also` are rows that
    change by as much as `path` does.
    """

    path: str
    view: str
    name: str
    segments: tuple[Segment, ...]
    way: int
    factor: float
    value: float
    also: tuple[str, ...] = ()

    @property
    def key(self) -> Key:
        """What tells it from any other edge, before and after it was moved."""
        return self.view, self.name, self.path

    @property
    def label(self) -> str:
        """What moving it changes, as a sentence begins: ``Column width``."""
        return capitalise(find_parameter(self.path).name)

    def place_of(self, value: float) -> float:
        """Where along its way the edge would lie with that value, off where it lies now."""
        return (value - self.value) / self.factor


@dataclass(frozen=True, slots=True)
class Edge:
    """A place of a grip in a view, before it is known what its parameter holds."""

    path: str
    name: str
    segments: tuple[Segment, ...]
    way: int
    factor: float
    also: tuple[str, ...] = ()


def read_built(job: Job, layout: Layout, path: str) -> float | None:
    """What `path` is built as: its value, or what the layout could make of it; None where it has none."""
    for short in layout.shortfalls:
        if short.path == path and isinstance(short.built, int | float):
            return float(short.built)
    value = read_value(job, path)
    return float(value) if isinstance(value, int | float) else None


def move_edge(job: Job, grip: Grip, value: float) -> Job:
    """The job with the grip's parameter at `value` and what moves along moved as far. Raises Refused.

    What moves along stops at its own bounds.
    """
    moved = with_value(job, grip.path, value)
    for path in grip.also:
        row = find_parameter(path)
        low, high = row.lowest or 0.0, row.highest or 0.0
        moved = with_value(moved, path, min(max(read_value(job, path) + value - grip.value, low), high))
    return moved
