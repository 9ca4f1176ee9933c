"""Which of several readings governs. What is wrong with them is model.check.survey's."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from model.site import Site


@dataclass(frozen=True, slots=True)
class Reread:
    """A size that may be read several times: its record and field, and which reading governs."""

    part: str
    size: str
    governs: Callable[..., float]

    @property
    def path(self) -> str:
        """The parameter of the first reading."""
        return f"{self.part}.{self.size}"

    def list_readings(self, site: Site) -> tuple[float, ...]:
        """All readings, the first one first."""
        others: tuple[float, ...] = getattr(site.readings, f"{self.part}_{self.size}")
        return (getattr(getattr(site, self.part), self.size), *others)


REREAD = (
    Reread("opening", "width", min),
    Reread("opening", "height", min),
    Reread("facing", "width", max),
    Reread("facing", "height", max),
    Reread("hearth", "depth", min),
)
"""The smallest opening must clear and the largest facing be covered; of a hearth the least counts."""


def list_governed(site: Site) -> list[tuple[Reread, float]]:
    """The sizes of which another reading governs than the first, with that reading, inches."""
    every = [(reread, reread.list_readings(site)) for reread in REREAD]
    return [(reread, found) for reread, read in every if (found := reread.governs(read)) != read[0]]


def govern_site(site: Site) -> Site:
    """The site with the governing reading of every size; the same object where each was read once."""
    for reread, governing in list_governed(site):
        record = replace(getattr(site, reread.part), **{reread.size: governing})
        site = replace(site, **{reread.part: record})
    return site
