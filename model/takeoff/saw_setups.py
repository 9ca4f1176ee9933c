"""Each way the mitre saw has to be set for a job's mouldings, with the ends that are cut so.

How one end is set stands in model.takeoff.saw_angles; cuts of plain boards are no business of this file.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from model.takeoff.marks import list_kinds
from model.takeoff.saw_angles import Hand, SawSetting, list_end_cuts

if TYPE_CHECKING:
    from model.surround import Surround


@dataclass(frozen=True, slots=True)
class Ends:
    """Ends that are cut alike: of all `count` pieces of the kind `mark`; `end` is None for frames."""

    mark: str
    end: Hand | None
    count: int

    def describe(self) -> str:
        """``M2 left, 2 pieces``; the count is left out for one."""
        words = f"{self.mark} {self.end}" if self.end else self.mark
        return f"{words}, {self.count} pieces" if self.count > 1 else words


@dataclass(frozen=True, slots=True)
class Setup:
    """`settings` are ways to make the same cut, the best first; `ends` are made so."""

    settings: tuple[SawSetting, ...]
    ends: tuple[Ends, ...]


def list_setups(surround: Surround) -> tuple[Setup, ...]:
    """Every setup once, sprung mouldings first, then by how the piece lies and the table turns."""
    found: dict[tuple[SawSetting, ...], list[Ends]] = {}
    for kind in list_kinds(surround.boards):
        for cut in list_end_cuts(surround.boards[kind.pieces[0]]):
            end = None if cut.kind is None else cut.end
            found.setdefault(cut.settings, []).append(Ends(kind.mark, end, len(kind.pieces)))
    ordered = sorted(found.items(), key=lambda item: _order(item[0]))
    return tuple(Setup(settings, tuple(ends)) for settings, ends in ordered)


def _order(settings: tuple[SawSetting, ...]) -> tuple[bool, str, float, float, str, str]:
    first = settings[0]
    return (not first.bevel, first.lie, first.mitre, first.bevel, first.swing, first.fence)
