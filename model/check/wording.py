"""How lengths read in findings: rounded so that a text never promises more than the number does."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, floor

from model.check.clearance import HAIR
from model.units import MILLIMETRES_ONLY, MM_PER_INCH, LengthStyle, format_length, round_length, without_feet


@dataclass(frozen=True, slots=True)
class Wording:
    """Writes lengths for one job. `tape` is the style of its fields."""

    tape: LengthStyle

    @property
    def _short(self) -> LengthStyle:
        """Clearances stand in inches in the codes, also where a job is in feet and inches."""
        return without_feet(self.tape)

    @property
    def _steps_per_inch(self) -> float:
        """Steps of the tape in an inch."""
        return MM_PER_INCH if self.tape.units == MILLIMETRES_ONLY else float(self.tape.denominator)

    @property
    def step(self) -> float:
        """One step of the tape, inches."""
        return 1 / self._steps_per_inch

    def distance(self, value: float) -> str:
        """A clearance or projection, to the nearest step."""
        return format_length(value, self._short)

    def mark(self, value: float) -> str:
        """A height in the room, as it stands in the job's fields."""
        return format_length(value, self.tape)

    def pair(self, measured: float, needed: float) -> tuple[str, str]:
        """A distance and the least it must be, in decimals where rounding would hide which is larger."""
        short = self._short
        seen = round_length(measured, short) - round_length(needed, short)
        if (seen < -HAIR) == (measured - needed < -HAIR):
            return format_length(measured, short), format_length(needed, short)
        if short.units == MILLIMETRES_ONLY:
            return f"{measured * MM_PER_INCH:.2f} mm", f"{needed * MM_PER_INCH:.2f} mm"
        return f"{measured:.4f} in.", f"{needed:.4f} in."

    def at_least(self, value: float) -> str:
        """A value for a field, rounded up to a step of the tape."""
        return format_length(ceil(value * self._steps_per_inch - HAIR) / self._steps_per_inch, self.tape)

    def at_most(self, value: float) -> str:
        """A value for a field, rounded down to a step of the tape."""
        return format_length(floor(value * self._steps_per_inch + HAIR) / self._steps_per_inch, self.tape)
