"""What could not be built as asked, noted while a layout is worked out."""

from __future__ import annotations

from dataclasses import dataclass

NEAR = 1e-9
"""Lengths that differ by less, in inches, are alike."""
LEFT_OUT = ""
"""What is built in place of a choice that had to be left out."""


@dataclass(frozen=True, slots=True)
class Shortfall:
    """A value that could not be built as asked: the parameter, asked and built, and why.

    A choice's are the words a job file keeps, LEFT_OUT for nothing.
    """

    path: str
    asked: float | str
    built: float | str
    reason: str


class Ledger:
    """Collects what could not be built as asked while a layout is worked out."""

    def __init__(self) -> None:
        self.shortfalls: list[Shortfall] = []
        self._known: dict[str, tuple[int, float]] = {}

    def hold(self, path: str, asked: float, built: float, reason: str) -> float:
        """`built`; noted when it is not what was asked, for each path the one that is furthest from it.

        So of two columns that differ the worse one is told, whichever is worked out first.
        """
        if abs(asked - built) > NEAR:
            self._note(Shortfall(path, asked, built, reason), abs(asked - built))
        return built

    def swap(self, path: str, asked: str, built: str, reason: str) -> None:
        """Note, once for each path, that another choice was built than the one asked for."""
        self._note(Shortfall(path, asked, built, reason), 0.0)

    def _note(self, shortfall: Shortfall, lacking: float) -> None:
        """In place of one of the same path that lacks less, or after all others."""
        place, known = self._known.setdefault(shortfall.path, (len(self.shortfalls), lacking))
        if place == len(self.shortfalls):
            self.shortfalls.append(shortfall)
        elif lacking > known + NEAR:
            self.shortfalls[place] = shortfall
            self._known[shortfall.path] = place, lacking
