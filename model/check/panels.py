"""Whether solid panels stay in their grooves through the year and never press their frame apart.

How deep the grooves are and how large the panels are cut is model.build.groove's.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from model.build.groove import Groove, measure_across
from model.check.clearance import HAIR
from model.check.finding import Bound, Finding, Status
from model.check.joinery import list_frames
from model.check.wording import Wording
from model.reference.moisture import WIDE_RANGE
from model.reference.panels import FREE, LEAST_HELD
from model.surround import Surround

CHECK = "panels"


@dataclass(frozen=True, slots=True)
class Floating:
    """The solid panel of one frame that is held least: its opening `across` the grain, and its groove."""

    part: str
    path: str
    across: float
    groove: Groove

    @property
    def width(self) -> float:
        """As it is cut, in."""
        return self.groove.width(self.across)

    @property
    def grows(self) -> float:
        """From the bench to the dampest, in."""
        return self.width * self.groove.swing.swells

    @property
    def loses(self) -> float:
        """From the bench to the driest, in."""
        return self.width * self.groove.swing.shrinks

    @property
    def free(self) -> float:
        """Left of both grooves together at the dampest, in."""
        return self.groove.free(self.across)

    @property
    def held(self) -> float:
        """In one groove at the driest, pushed to the bottom of the other, in."""
        return self.groove.held(self.across)


def list_floating(surround: Surround) -> Iterator[Floating]:
    """The solid panel that is held least in each frame that has any."""
    for part, path, frame in list_frames(surround):
        if frame.groove is not None:
            across = min(map(measure_across, frame.openings), key=frame.groove.held)
            yield Floating(part, path, across, frame.groove)


def check_panels(surround: Surround) -> Iterator[Finding]:
    """How solid panels move in their frames and what holds them; nothing of sheets."""
    wording = Wording(surround.job.about.length_style)
    for floating in list_floating(surround):
        yield _report(surround, floating, wording)


def _report(surround: Surround, floating: Floating, wording: Wording) -> Finding:
    swing, groove = floating.groove.swing, floating.groove
    fits = floating.held >= LEAST_HELD.value - HAIR and floating.free >= -HAIR
    message = (
        f"The {floating.part}'s solid panels lie in grooves {wording.distance(groove.depth)} deep, cut "
        f"{wording.distance(floating.width)} across the grain at {swing.built:g} % moisture. They grow by "
        f"{floating.grows:.3f} in. to {swing.damp:.1f} % and leave {floating.free:.3f} in. free; they lose "
        f"{floating.loses:.3f} in. to {swing.dry:.1f} % and, pushed to one side, are still "
        f"{floating.held:.3f} in. in the other groove. No glue; one pin in the middle of each end."
    )
    return Finding(
        check=CHECK,
        rule="movement of solid panels",
        standing=LEAST_HELD.standing,
        source=f"{LEAST_HELD.source}; {FREE}; movement: {WIDE_RANGE}",
        status=Status.PASS if fits else Status.FAIL,
        part=floating.part,
        measured=round(floating.held, 4),
        limit=LEAST_HELD.value,
        unit="in",
        message=message,
        cure="" if fits else "Make the panels of sheet, or more and narrower ones.",
        path="panel.kind",
        boards=surround.marks_of(lambda b: b.assembly == floating.part and b.role.endswith(" panel")),
        bound=Bound.LEAST,
    )
