"""The way in: a job or nothing opens the window, anything else is a command."""

from __future__ import annotations

import os.path
import sys
from collections.abc import Callable
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from app.ahead import Ahead


def main(arguments: list[str] | None = None) -> int:
    """Run the program: the exit code of a command; 0 for a window that was closed, 2 when none can open."""
    if getattr(
        sys, "frozen", False
    ):  # one file or folder with Python in it, whose processes start in the same way
        from multiprocessing import freeze_support

        freeze_support()
    given = sys.argv[1:] if arguments is None else arguments
    if not given or _names_a_job(given):
        return open_window(given[0] if given else "")
    from app.cli import main as run_command
    from app.sweeping import end_unswept

    end_unswept()
    return run_command(given)


def _names_a_job(given: list[str]) -> bool:
    """One word that is neither an option nor a command. The commands are looked at only when need be."""
    if len(given) != 1 or given[0].startswith("-"):
        return False
    if os.path.isfile(given[0]):  # unlike a Path's, it takes a name that is too long for none
        return True
    from app.arguments import is_command

    return not is_command(given)


def open_window(name: str) -> int:
    """Open the window, with the job file or shipped job called `name` if one is given, until it is closed."""
    import gc

    from app.ahead import start_ahead

    gc.disable()  # nothing that is made while the window is built is thrown away; on again once it stands
    ahead = start_ahead(name)
    from app.preflight import explain_import, find_obstacle

    obstacle = find_obstacle()
    if obstacle:
        print(obstacle, file=sys.stderr)
        return 2
    try:
        run_window = load_window()
    except ImportError as error:
        if not (error.name or "").startswith(("PySide6", "shiboken6")) and ".so" not in str(error):
            raise
        print(explain_import(error), file=sys.stderr)
        return 2
    return run_window(name, ahead)


def load_window() -> Callable[[str, Ahead | None], int]:
    """What runs the window; its library is loaded here. Raises ImportError where it cannot be."""
    from app.gui import run_window

    return run_window
