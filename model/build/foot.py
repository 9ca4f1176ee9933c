"""Where each column stands, before anything over it is known.

Whether it steps down over a hearth's end is model.build.hearth_step's.
"""

from __future__ import annotations

from dataclasses import dataclass

from model.build.hearth_step import OUT_OF_LEVEL, HearthStep, fit_hearth_step
from model.build.ledger import Ledger
from model.build.lines import LEFT
from model.design import Design
from model.site import Site


@dataclass(frozen=True, slots=True)
class Foot:
    """One column's foot, as if it stood on the right: x of its sides and y of what it stands on.

    `on_hearth` is whether the hearth carries it whole, `step` where it steps down from there to the floor.
    """

    name: str
    inner: float
    outer: float
    base: float
    on_hearth: bool
    step: HearthStep | None = None

    @property
    def width(self) -> float:
        """Side to side."""
        return self.outer - self.inner

    @property
    def lowest(self) -> float:
        """y of its lowest part."""
        return self.step.floor if self.step else self.base


def place_foot(site: Site, design: Design, name: str, ledger: Ledger) -> Foot:
    """On the hearth that carries it whole, else beside it on the floor; then as its level reading says.

    `name` is LEFT or RIGHT.
    """
    own = design.column.width_left if name == LEFT else design.column.width_right
    inner = site.opening.width / 2 + design.column.margin
    outer = inner + (design.column.width if own is None else own)
    around, side = design.plinth.projection if design.plinth.on else 0.0, site.hearth.width / 2
    on_hearth = outer + around <= side and design.column.projection + around <= site.hearth.depth
    expected = -site.hearth.height if not on_hearth and inner - around >= side else 0.0
    base = _read_base(site, name, expected, ledger)
    step = fit_hearth_step(site, design, name, (inner, outer), base, ledger)
    return Foot(name, inner, outer, base, on_hearth, step)


def _read_base(site: Site, name: str, expected: float, ledger: Ledger) -> float:
    """y of what a column stands on: as read off the level line, else where it is expected."""
    reading = site.level.left if name == LEFT else site.level.right
    if reading is None or site.level.centre is None:
        return expected
    measured = site.level.centre - reading
    held = min(max(measured, expected - OUT_OF_LEVEL), expected + OUT_OF_LEVEL)
    reason = f"that is more than {OUT_OF_LEVEL:g} in. out of level; measure again"
    ledger.hold(f"level.{name}", reading, reading + measured - held, reason)
    return held
