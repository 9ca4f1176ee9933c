"""Where windows are shown while they are measured: nowhere, and on a virtual X server where there is one."""

from __future__ import annotations

import os
import shutil
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager

SIZE = (1920, 1080)
Surroundings = dict[str, str]
QUIET = "default.warning=false"
"""Qt says of every window that it shows nowhere that its size is no hint to anybody."""


@contextmanager
def open_displays() -> Iterator[dict[str, Surroundings]]:
    """Environments by name; the X server, if any, ends with the block."""
    own = _list_surroundings()
    shown = {"offscreen": own | {"QT_QPA_PLATFORM": "offscreen"}}
    if shutil.which("Xvfb") is None:
        yield shown
        return
    with _run_server() as display:
        yield shown | {"xcb": own | {"QT_QPA_PLATFORM": "xcb", "DISPLAY": display}}


def _list_surroundings() -> Surroundings:
    """This process's own, but that modules stay compiled, as they do for whoever uses the program."""
    own = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    return {"QT_LOGGING_RULES": QUIET} | own


@contextmanager
def _run_server() -> Iterator[str]:
    """A virtual X server on the first free display."""
    told, tell = os.pipe()
    screen = f"{SIZE[0]}x{SIZE[1]}x24"
    command = ["Xvfb", "-displayfd", str(tell), "-screen", "0", screen, "-nolisten", "tcp"]
    server = subprocess.Popen(command, pass_fds=[tell], stderr=subprocess.DEVNULL)
    os.close(tell)
    try:
        with os.fdopen(told) as answer:
            yield f":{answer.readline().strip()}"
    finally:
        server.terminate()
        server.wait()
