"""Each way the mitre saw has to be set for a job's mouldings, with the ends that are cut so.

How one end is set stands in model.takeoff.saw_angles; cuts of plain boards are no business of this file.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from model.takeoff.saw_angles import Hand, SawSetting, list_end_cuts, lying_angles, standing_angle

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


def list_setups(surround: Surround, corner: float | None = None) -> tuple[Setup, ...]:
    """Every setup once, sprung mouldings first, then by how the piece lies and the table turns.

    `corner` is what every corner measures, degrees above 0 and below 180, where that is not what was drawn.
    """
    found: dict[tuple[SawSetting, ...], list[Ends]] = {}
    for kind in surround.kinds:
        for cut in list_end_cuts(surround.boards[kind.pieces[0]], corner):
            end = None if cut.kind is None else cut.end
            found.setdefault(cut.settings, []).append(Ends(kind.mark, end, len(kind.pieces)))
    ordered = sorted(found.items(), key=lambda item: _order(item[0]))
    return tuple(Setup(settings, tuple(ends)) for settings, ends in ordered)


def _order(settings: tuple[SawSetting, ...]) -> tuple[bool, str, float, float, str, str]:
    first = settings[0]
    return (not first.bevel, first.lie, first.mitre, first.bevel, first.swing, first.fence)


@dataclass(frozen=True, slots=True)
class Angles:
    """Mitre and bevel of one spring, degrees, for each of the corners asked for; no spring is upright."""

    spring: float
    settings: tuple[tuple[float, float], ...]


def list_corner_angles(surround: Surround, corners: Sequence[float]) -> tuple[Angles, ...]:
    """How the job's mouldings are cut where a corner measures other than it was drawn, sprung ones first.

    Which way the table turns and what lies at the fence stay as they are for the corner as drawn.
    """
    sprung = {
        board.worked.spring or 0.0
        for board in surround.boards
        if board.worked is not None and list_end_cuts(board)
    }
    return tuple(
        Angles(spring, tuple(_angles(spring, corner) for corner in corners))
        for spring in sorted(sprung, reverse=True)
    )


def _angles(spring: float, corner: float) -> tuple[float, float]:
    return lying_angles(spring, corner) if spring else (standing_angle(corner), 0.0)
