"""One step of the work as it is told: what goes on, what is there, what holds it, what to mind, how long.

How steps are found stands in the files beside this one.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Where(StrEnum):
    """Where a step is done."""

    BENCH = "bench"
    SITE = "site"


@dataclass(frozen=True, slots=True)
class Step:
    """Numbers are places in the list of boards.

    `parts` names what is worked on. `boards` are put together here for the first time, `brought` were put
    together in an earlier step and go on here as one, `there` are in their places before either; `tried`
    are set in their places and taken down again. `glued` are made of strips or layers here, `dressed` are
    planed flat and cut to size once that glue has cured. `fixings` are places in the take-off's list of
    fixings, `left_out` those of them that nothing can be driven for, `anchors` in the plan of anchors.
    `hours` is the work of all hands together, `hands` how many people it takes at least, `dries` the hours
    its glue is left alone before the next step.
    """

    where: Where
    title: str
    parts: tuple[str, ...]
    boards: tuple[int, ...] = ()
    brought: tuple[int, ...] = ()
    there: tuple[int, ...] = ()
    tried: tuple[int, ...] = ()
    glued: tuple[int, ...] = ()
    dressed: tuple[int, ...] = ()
    fixings: tuple[int, ...] = ()
    left_out: tuple[int, ...] = ()
    anchors: tuple[int, ...] = ()
    notes: tuple[str, ...] = ()
    hours: float = 0.0
    hands: int = 1
    dries: float = 0.0

    @property
    def driven(self) -> tuple[int, ...]:
        """The fixings that are driven, or glued with nothing driven."""
        return tuple(n for n in self.fixings if n not in self.left_out)

    @property
    def put_on(self) -> tuple[int, ...]:
        """Everything that goes on in this step."""
        return (*self.boards, *self.brought)

    @property
    def wide(self) -> tuple[int, ...]:
        """The pieces that are glued up in this step, of strips or edge to edge, or dressed."""
        own = self.boards if self.where is Where.BENCH and not self.parts else ()
        return (*self.glued, *self.dressed, *own)
