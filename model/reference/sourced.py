"""A number that carries where it comes from. What the numbers mean belongs to the files beside this one."""

from dataclasses import dataclass
from enum import StrEnum

from model.units import MM_PER_INCH


class Standing(StrEnum):
    """How well a figure is known; the same words stand in tests, findings and on sheets.

    ENTERED is what somebody read in a manual and typed in: nothing here has seen that manual.
    """

    PUBLISHED = "published"
    COMMON_PRACTICE = "common practice"
    FROM_MEMORY = "from memory"
    SHOP_CHOICE = "shop choice"
    ENTERED = "entered by the user"
    NOT_ENTERED = "not entered"


@dataclass(frozen=True, slots=True)
class Sourced:
    """A figure with its unit, its standing and the title, edition and clause it was read in."""

    value: float
    unit: str
    standing: Standing
    source: str

    @property
    def inches(self) -> float:
        """A length in inches, also where its source gives millimetres."""
        return self.value / MM_PER_INCH if self.unit == "mm" else self.value
