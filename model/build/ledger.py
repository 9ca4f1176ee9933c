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

    def hold(self, path: str, asked: float, built: float, reason: str) -> float:
        """`built`; noted, once for each path, when it is not what was asked."""
        if abs(asked - built) > NEAR:
            self._note(Shortfall(path, asked, built, reason))
        return built

    def swap(self, path: str, asked: str, built: str, reason: str) -> None:
        """Note, once for each path, that another choice was built than the one asked for."""
        self._note(Shortfall(path, asked, built, reason))

    def _note(self, shortfall: Shortfall) -> None:
        if not any(known.path == shortfall.path for known in self.shortfalls):
            self.shortfalls.append(shortfall)
