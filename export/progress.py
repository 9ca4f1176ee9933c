"""How long work tells how far it is, and how it is called off. Who shows that is app's business."""

from __future__ import annotations

from collections.abc import Callable

from model.errors import MantelwrightError

Progress = Callable[[int, int], None]
"""Called with the steps done and the steps in all."""
Step = Callable[[float, str], None]
"""Told how far it is, from 0 to 1, and what is being done. What it raises stops the work."""


class Cancelled(MantelwrightError):
    """The writing was called off; nothing was handed back."""

    def __init__(self) -> None:
        super().__init__("called off before it was finished; nothing was written")
