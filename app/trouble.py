"""What the window does when the program itself fails: says so once in plain words and keeps the work."""

from __future__ import annotations

import sys
import traceback
from collections.abc import Callable
from types import TracebackType

MESSAGE = (
    "Something failed inside the program, and the last action may not have been carried out. Your work is "
    "still here and has been kept. Save it under another name, then start the program again."
)


def catch_faults(tell: Callable[[str], None], keep: Callable[[], None]) -> None:
    """From now on the first fault in any handler keeps the work and is told; all go to standard error."""
    told = False

    def hook(kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        nonlocal told
        traceback.print_exception(kind, error, trace, file=sys.stderr)
        if issubclass(kind, KeyboardInterrupt) or told:
            return
        told = True
        keep()
        tell(MESSAGE)

    sys.excepthook = hook
