"""What the window does when the program itself fails: keeps the work, says so in plain words, and goes on."""

from __future__ import annotations

import sys
import traceback
from collections.abc import Callable
from pathlib import Path
from types import TracebackType

HAPPENED = "Something failed inside the program, and the last action may not have been carried out."
KEPT = "Your work is still here, and a copy of it is kept in {}."
NOT_KEPT = "Your work is still here, but no copy of it could be kept."
UNCHANGED = "Nothing of your work is unsaved."
NEXT = "Save it under another name, then start the program again."


def catch_faults(tell: Callable[[BaseException], None], keep: Callable[[], object]) -> None:
    """From now on a fault in any handler keeps the work and is told, once for each place it happens at.

    All go to standard error, where there is one.
    """
    told: set[tuple[str, int]] = set()

    def hook(kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        if sys.stderr is not None:
            traceback.print_exception(kind, error, trace)
        place = _find_place(trace)
        if issubclass(kind, KeyboardInterrupt) or place in told:
            return
        told.add(place)
        try:
            keep()
        except Exception:  # what cannot be kept must not keep the fault from being told
            if sys.stderr is not None:
                traceback.print_exc()
        tell(error)

    sys.excepthook = hook


def _find_place(trace: TracebackType | None) -> tuple[str, int]:
    """File and line that raised."""
    frames = traceback.extract_tb(trace)
    return (frames[-1].filename, frames[-1].lineno or 0) if frames else ("", 0)


def say_fault(is_unsaved: bool, kept_in: Path | None) -> str:
    """What happened, what is safe and what to do."""
    if not is_unsaved:
        return f"{HAPPENED} {UNCHANGED}"
    safe = KEPT.format(kept_in) if kept_in is not None else NOT_KEPT
    return f"{HAPPENED} {safe} {NEXT}"
